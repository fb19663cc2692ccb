"""The index behind the search box: readers' words, telling titles, and words that do not run together."""

import json
import re
from pathlib import Path

import pytest
from mkdocs.utils.meta import get_data

from calc.lookups import glossary
from calc.reading import ROW_MARK
from scripts.building import search
from scripts.building.errors import BuildError
from tests.book.pages import DOCS
from tests.book.test_words import VARIANTS
from tests.sentences import whole

SITE = Path(__file__).parents[2] / "site"


def draft(tmp_path, *addresses):
    """Return a folder of pages and a built site with an entry in its index for each address."""
    docs, site = tmp_path / "docs", tmp_path / "site"
    (docs / "calculators").mkdir(parents=True)
    (docs / "calculators" / "grip.md").write_text("---\ntitle: Grip\nwords: [slim it, hand hurts]\n---\n# Grip\n")
    (site / "search").mkdir(parents=True)
    entries = [{"location": address, "title": "Grip", "text": ""} for address in addresses]
    (site / search.THEME_INDEX).write_text(json.dumps({"config": {}, "docs": entries}))
    (site / "index.html").write_text('{"search": "./assets/javascripts/workers/search.a1.min.js"}')
    return docs, site


def test_a_page_gets_its_words_and_a_calculator_its_kind(tmp_path):
    docs, site = draft(tmp_path, "calculators/grip/", "calculators/grip/#limits", "shape/grip/")
    search.write(docs, site)
    entries = json.loads((site / search.INDEX).read_text())["docs"]
    assert entries[0] == {"location": "calculators/grip/", "title": "Grip calculator", "text": "",
                          "words": "slim it; hand hurts"}
    assert [each["title"] for each in entries[1:]] == ["Grip", "Grip"]
    assert not (site / "search").exists()
    assert (site / "index.html").read_text() == '{"search": "./assets/js/search-worker.mjs"}'


def test_a_title_that_tells_its_calculator_stays():
    assert search.telling_title("calculators/grip/", "Grip calculator") == "Grip calculator"


def test_words_of_a_page_that_is_not_in_the_index_stop_the_build(tmp_path):
    docs, site = draft(tmp_path, "shape/grip/")
    with pytest.raises(BuildError, match=whole(
            "no page of the index has the readers' words of calculators/grip/")):
        search.write(docs, site)


@pytest.mark.parametrize(("file", "address"), [
    ("index.md", ""), ("glossary.md", "glossary/"), ("tune/index.md", "tune/"),
    ("tune/weight.md", "tune/weight/")])
def test_addresses_are_those_of_the_site(file, address):
    assert search.address_of(Path(file)) == address


def test_every_page_that_tells_or_works_something_out_has_readers_words():
    without = [path.relative_to(DOCS).as_posix() for path in DOCS.rglob("*.md")
               if not get_data(path.read_text("utf-8"))[1].get("words")]
    assert sorted(without) == ["calculators/index.md", "glossary.md", "lookup/index.md", "sources.md"]


def test_other_words_lead_to_words_of_the_glossary():
    names = {each.name for each in glossary.terms()}
    assert {name for name, _ in glossary.OTHER_WORDS} <= names
    others = [other for _, words in glossary.OTHER_WORDS for other in words]
    assert len(set(others)) == len(others)
    assert all(re.fullmatch(r"[a-z0-9 ]+", other) for other in others)


def test_words_that_the_book_avoids_find_the_words_that_it_uses():
    others = search.other_words()
    assert {variant.replace("-", " ") for variant in VARIANTS} <= set(others)


def test_no_word_of_the_index_runs_into_the_next():
    """A table's cells, a list's items and a glossary's words were one long word each time."""
    [path] = SITE.glob("assets/search-*/index.json")
    index = json.loads(path.read_text("utf-8"))
    texts = [re.sub(r"<[^>]*>", " ", each["text"]) for each in index["docs"]]
    joined = [word for text in texts for word in text.split()
              if re.search(r"[a-z)][.:]?\d+[.,]\d+[a-z]", word) and ROW_MARK not in word]  # rows as typed
    assert not joined
