"""The site's style sheets and the theme's, joined into one small file.

They are written one a part of the page; on a slow line every further file costs a wait of its own. Of the
theme's only what some page can use goes in.
"""

import re
import subprocess
from collections.abc import Iterable
from pathlib import Path

from scripts.building import spare_rules, style_attributes
from scripts.building.errors import BuildError

ASSETS = "assets/"
OURS, THEIRS = "css/", "stylesheets/"
JOINED = OURS + "site.css"
LINK = re.compile(rf'[ \t]*<link rel="stylesheet" href="[^"]*?{ASSETS}'
                  rf'(?P<name>(?:{OURS}|{THEIRS})[\w.-]+\.css)">\n?')
NAMES = re.compile(r'\b(?:class|id)="?([^">]*)')
WORDS = re.compile(r"md-[\w-]+|js\b|focus-visible")
"""What scripts and pages that Python makes in the browser may call by the theme's names."""
SCRIPTS = (ASSETS + "javascripts/*.js", ASSETS + "js/**/*.mjs")


def join(node_modules: Path, site: Path) -> None:
    """Replace the style sheets that every page of a built site names by a single one, in their order.

    Raises:
        BuildError: pages name different sheets, or none, or a sheet has faults.
    """
    texts = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    orders = {tuple(link["name"] for link in LINK.finditer(text)) for text in texts.values()}
    if len(orders) != 1 or () in orders:
        raise BuildError(f"all pages must name the same style sheets of {ASSETS}, in one order; "
                         f"found {sorted(orders)}")
    [names] = orders
    sheets = {name: site / ASSETS / name for name in names}
    classes = style_attributes.styles_in(texts.values())
    ours = _text(path for name, path in sheets.items() if name.startswith(OURS))
    theirs = _text(path for name, path in sheets.items() if name.startswith(THEIRS))
    scripts = _text(path for pattern in SCRIPTS for path in sorted(site.glob(pattern)))
    theirs = spare_rules.trimmed(theirs, _names_in(texts.values(), scripts), ours + scripts)
    for path in sheets.values():
        path.unlink()
    joined = _minified(node_modules, theirs + ours + style_attributes.sheet(classes))
    (site / ASSETS / JOINED).write_text(joined, encoding="utf-8")
    for path, text in texts.items():
        path.write_text(style_attributes.with_classes(_with_one_link(text), classes), encoding="utf-8")


def _text(paths: Iterable[Path]) -> str:
    return "\n".join(path.read_text(encoding="utf-8") for path in paths)


def _names_in(pages: Iterable[str], scripts: str) -> set[str]:
    """Return the classes and ids of pages, and what scripts may add to them."""
    found = {name for page in pages for names in NAMES.findall(page) for name in names.split()}
    return found.union(WORDS.findall(scripts))


def _minified(node_modules: Path, styles: str) -> str:
    command = [str(node_modules / ".bin" / "esbuild"), "--loader=css", "--minify", "--charset=utf8",
               "--log-level=warning"]
    done = subprocess.run(command, input=styles, capture_output=True, text=True, check=False)
    if done.returncode or done.stderr:
        raise BuildError("style sheets have faults:\n" + done.stderr)
    return done.stdout


def _with_one_link(text: str) -> str:
    """Return a page that names the joined sheet where it named its last one."""
    *others, last = LINK.finditer(text)
    one = text[last.start():last.end()].replace(ASSETS + last["name"], ASSETS + JOINED)
    text = text[:last.start()] + one + text[last.end():]
    for link in reversed(others):
        text = text[:link.start()] + text[link.end():]
    return text
