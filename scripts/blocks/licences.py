"""What others wrote and the site hands out: a table, and below it the notices that go with it."""

from scripts.blocks.tree import UNSEARCHED, Node, element
from scripts.licences import Shipped, shipped


def section() -> Node:
    """Return the table and the notices."""
    found = shipped()
    return element("div", {}, _table(found), *(_notice(each) for each in found if each.text))


def _table(found: list[Shipped]) -> Node:
    head = element("tr", {}, *(element("th", {}, each) for each in ("What", "Licence", "What it does here")))
    rows = [element("tr", {}, element("td", {}, f"{each.name} {each.version}".strip()),
                    element("td", {}, each.licence), element("td", {}, each.use)) for each in found]
    return element("table", UNSEARCHED, element("thead", {}, head), element("tbody", {}, *rows))


def _notice(each: Shipped) -> Node:
    return element("details", UNSEARCHED, element("summary", {}, "Licence of " + each.name),
                   element("pre", {"class": "rb-licence", "tabindex": "0"}, each.text.strip()))
