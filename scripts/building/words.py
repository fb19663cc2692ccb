"""The words of the glossary, marked where a page uses them first.

A marked word is a link to its entry with the meaning as its title: it can be
read by pointing at it, by keyboard, and by following it.
"""

import html
import re
from collections.abc import Sequence
from html.parser import HTMLParser
from pathlib import Path

from calc.lookups import glossary

GLOSSARY = "glossary/"
TEXT = ("p", "li", "td", "dd")
"""Marks stand in running text only, within these."""
UNTOUCHED = ("a", "button", "code", "dt", "figure", "form", "h1", "h2", "h3", "h4", "label", "nav", "pre",
             "script", "style", "summary", "svg")
UNTOUCHED_CLASSES = ("rb-calculator", "rb-path", "rb-lookup", "rb-sources", "rb-example", "rb-findings",
                     "admonition-title", "md-button", "footnote", "rb-hero")
CONTENT = "article"
WITHOUT_END = ("br", "col", "hr", "img", "input", "link", "meta", "source", "wbr")


def mark(site: Path) -> None:
    """Mark the words on every page of a built site but the glossary itself."""
    for path in sorted(site.rglob("index.html")):
        depth = len(path.relative_to(site).parts) - 1
        if path.parent.relative_to(site).as_posix() + "/" != GLOSSARY:
            text = path.read_text(encoding="utf-8")
            path.write_text(with_marks(text, "../" * depth + GLOSSARY), encoding="utf-8")


def with_marks(page: str, address: str) -> str:
    """Return a page with the first use of each word tied to its entry in the glossary."""
    marker = _Marker(address)
    marker.feed(page)
    marker.close()
    return "".join(marker.written)


def _pattern(terms: Sequence[glossary.Term]) -> re.Pattern[str]:
    """Return what finds any form of any word, the longest first."""
    forms = sorted((form for each in terms for form in each.seen_as), key=len, reverse=True)
    return re.compile(r"(?<![\w-])(?:" + "|".join(map(re.escape, forms)) + r")(?![\w-])", re.IGNORECASE)


class _Marker(HTMLParser):
    """Writes a page as it was read, with marks."""

    def __init__(self, address: str) -> None:
        super().__init__(convert_charrefs=False)
        self.written: list[str] = []
        self._address = address
        self._open: list[tuple[str, bool]] = []
        self._by_form = {form.lower(): each for each in glossary.terms() for form in each.seen_as}
        self._pattern = _pattern(glossary.terms())
        self._marked: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.written.append(self.get_starttag_text() or "")
        if tag not in WITHOUT_END:
            classes = (dict(attrs).get("class") or "").split()
            self._open.append((tag, tag in UNTOUCHED or any(name in UNTOUCHED_CLASSES for name in classes)))

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:  # noqa: ARG002
        self.written.append(self.get_starttag_text() or "")

    def handle_endtag(self, tag: str) -> None:
        self.written.append(f"</{tag}>")
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        self.written.append(self._pattern.sub(self._link, data) if self._is_running_text() else data)

    def _is_running_text(self) -> bool:
        tags = [tag for tag, _ in self._open]
        return (CONTENT in tags and any(tag in TEXT for tag in tags)
                and not any(untouched for _, untouched in self._open))

    def _link(self, found: re.Match[str]) -> str:
        term = self._by_form[found[0].lower()]
        if term.id in self._marked:
            return found[0]
        self._marked.add(term.id)
        return (f'<a class="rb-term" href="{self._address}#{term.id}" title="{html.escape(term.text)}">'
                f"{found[0]}</a>")

    def handle_entityref(self, name: str) -> None:
        self.written.append(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.written.append(f"&#{name};")

    def handle_comment(self, data: str) -> None:
        self.written.append(f"<!--{data}-->")

    def handle_decl(self, decl: str) -> None:
        self.written.append(f"<!{decl}>")
