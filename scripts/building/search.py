"""What the search finds: the theme's index with the words that readers use, and a worker of our own.

The theme's index has a section of a page in each entry. An entry that is a whole
page also gets the words of its front matter; words that readers have for what the
glossary calls otherwise are turned into the glossary's by the worker.
"""

import json
import re
import shutil
from pathlib import Path

from mkdocs.utils.meta import get_data

from calc import catalog
from calc.lookups import glossary
from scripts.building.errors import BuildError

THEME_INDEX = "search/search_index.json"
INDEX = "assets/search/index.json"
"""Where it goes: among the files that are named by their content, so that who kept it waits for no line."""
WORKER = "assets/js/search-worker.mjs"
THEME_WORKERS = "assets/javascripts/workers"
THEME_WORKER = re.compile(re.escape(THEME_WORKERS) + r"/search\.[\w.]+\.js")
CALCULATORS = "calculators/"
KIND = " calculator"
READERS_WORDS = "words"
"""In a page's front matter: what readers may type who want this page."""


def write(docs: Path, site: Path) -> None:
    """Add readers' words and telling titles to a built site's index, and name the worker that reads it."""
    index = json.loads((site / THEME_INDEX).read_text(encoding="utf-8"))
    words = readers_words(docs)
    for entry in index["docs"]:
        address = entry["location"]
        if address in words:
            entry[READERS_WORDS] = words.pop(address)
        entry["title"] = telling_title(address, entry["title"])
    if words:
        raise BuildError("no page of the index has the readers' words of " + ", ".join(words))
    index["config"]["others"] = other_words()
    shutil.rmtree((site / THEME_INDEX).parent)
    (site / INDEX).parent.mkdir(parents=True)
    (site / INDEX).write_text(json.dumps(index, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")
    for page in site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        page.write_text(THEME_WORKER.sub(WORKER, text), encoding="utf-8")


def readers_words(docs: Path) -> dict[str, str]:
    """Return by address what the front matter of each page says that readers may type."""
    found = {}
    for path in sorted(docs.rglob("*.md")):
        _, meta = get_data(path.read_text(encoding="utf-8"))
        if READERS_WORDS in meta:
            found[address_of(path.relative_to(docs))] = "; ".join(meta[READERS_WORDS])
    return found


def address_of(path: Path) -> str:
    """Return the address of a page of the book, counted from the root of the site."""
    folder = path.parent if path.stem == "index" else path.with_suffix("")
    return "" if folder == Path() else folder.as_posix() + "/"


def telling_title(address: str, title: str) -> str:
    """Return a title that tells a calculator from the page of the same name."""
    is_calculator = address.startswith(CALCULATORS) and address[len(CALCULATORS):].rstrip("/") in catalog.IDS
    return title + KIND if is_calculator and not title.endswith(KIND) else title


def other_words() -> dict[str, str]:
    """Return what readers call otherwise, by their word."""
    return {other: name for name, others in glossary.OTHER_WORDS for other in others}
