"""Trees of plain lists, `[tag, {attribute: text}, child, ...]`, written as HTML.

Results come from `calc.answer` in this form and the forms are built in it, so
that all text passes one escaping.
"""

from collections.abc import Mapping
from typing import Any
from xml.etree.ElementTree import Element, tostring

Node = str | list[Any]

ON_ITS_OWN = ("dd", "dt", "h3", "li", "p", "td", "th")
"""Elements that end a line, so that the search index does not run the last word into the next."""

UNSEARCHED = {"data-search-exclude": ""}
"""Keeps an element out of the search index, which every visitor fetches: the form has the same words."""


def element(tag: str, attributes: Mapping[str, str | None] | None = None, *children: Node | None) -> Node:
    """Return a node; attributes and children that are None are left out."""
    kept = {name: text for name, text in (attributes or {}).items() if text is not None}
    return [tag, kept, *(child for child in children if child is not None)]


def doer(name: str, title: str, kind: str | None = None) -> Node:
    """Return a button that does what a page's script knows by this name."""
    return element("button", {"type": "button", "data-do": name, "class": kind}, title)


def html_of(node: Node) -> str:
    """Return a tree as HTML, every text and attribute escaped."""
    return tostring(_built(node), encoding="unicode", method="html")


def _built(node: Node) -> Element:
    if isinstance(node, str):
        raise ValueError("a tree starts with an element, not with text: " + node[:40])
    tag, attributes, *children = node
    built = Element(tag, attributes)
    last: Element | None = None
    for child in children:
        if not isinstance(child, str):
            last = _built(child)
            built.append(last)
        elif last is None:
            built.text = (built.text or "") + child
        else:
            last.tail = (last.tail or "") + child
    for each in built:
        if each.tag in ON_ITS_OWN and not each.tail:
            each.tail = "\n"
    return built
