"""Reading the book as its reader does: prose without code, tables of figures and markup."""

import re
from collections import namedtuple
from functools import cache
from html.parser import HTMLParser
from pathlib import Path

import markdown
from mkdocs.utils.meta import get_data

from scripts.blocks.figures import filled

DOCS = Path(__file__).parents[2] / "docs"
STAGES = ("begin", "inspect", "measure", "tune", "shape", "drill", "repair", "finish", "arrows", "handover")
"""Folders whose pages tell a reader to do something with hands and tools."""

EXTENSIONS = ["abbr", "admonition", "attr_list", "def_list", "footnotes", "md_in_html", "pymdownx.details",
              "pymdownx.superfences", "tables"]
GENERATED = re.compile(r"^(?::::|--8<--).*$", re.MULTILINE)
SILENT = ("code", "pre", "script", "style", "svg")
BLOCKS = ("p", "li", "td", "th", "dd", "dt", "h1", "h2", "h3", "h4", "figcaption")
SENTENCES = ("p", "li", "dd", "figcaption")

Page = namedtuple("Page", "name meta source blocks")
"""A page. name: its path below docs; meta: its front matter; blocks: what is read, in order."""

Block = namedtuple("Block", "tag section caution title text")
"""One block of text. section: the h2 above it; caution and title: kind and title of the box around it."""


class _Reader(HTMLParser):
    """Collects blocks of text with the section and the box that they stand in."""

    def __init__(self):
        super().__init__()
        self.blocks = []
        self._open = []
        self._texts = []
        self._section = ""
        self._title = ""

    def handle_starttag(self, tag, attrs):
        if tag in ("img", "br", "hr", "input", "wbr", "col"):
            self._texts.append(" ")
            return
        classes = (dict(attrs).get("class") or "").split()
        if tag in BLOCKS:
            self._flush()
        self._open.append((tag, classes))

    def handle_endtag(self, tag):
        if tag in BLOCKS:
            self._flush()
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data):
        if not any(tag in SILENT for tag, _ in self._open):
            self._texts.append(data)

    def _flush(self):
        text = " ".join("".join(self._texts).split())
        self._texts = []
        tags = [tag for tag, _ in self._open if tag in BLOCKS]
        if not text or not tags:
            return
        if tags[-1] == "h2":
            self._section = text
        caution = next((name for _, classes in self._open if "admonition" in classes
                        for name in ("danger", "warning", "note", "tip") if name in classes), None)
        if "admonition-title" in self._open[-1][1]:
            self._title = text
        self.blocks.append(Block(tags[-1], self._section, caution, self._title if caution else "", text))


def read(path):
    """Return one page."""
    source, meta = get_data(path.read_text("utf-8"))
    source = filled(source)
    reader = _Reader()
    reader.feed(markdown.markdown(GENERATED.sub("", source), extensions=EXTENSIONS))
    return Page(path.relative_to(DOCS).as_posix(), meta, source, reader.blocks)


@cache
def all_pages():
    """Return every page of the book."""
    return [read(path) for path in sorted(DOCS.rglob("*.md"))]


def is_stage(page):
    """Return whether a page tells its reader to do something with hands and tools."""
    return page.name.split("/")[0] in STAGES


def prose(page):
    """Return the blocks that are this book's own sentences, sources left out."""
    return [each for each in page.blocks if each.tag in SENTENCES and each.section != "Sources"]


def words_file(name):
    """Return the entries of a list beside the tests: one a line, without comments."""
    lines = (Path(__file__).parent / name).read_text("utf-8").splitlines()
    return [line.split("#")[0].strip() for line in lines if line.split("#")[0].strip()]
