"""What is made for print: the blank record sheet of the book, and the view of the page of bows for print."""

from calc.record.fold import State
from calc.record.record_sheet import sheet_tree
from scripts.blocks.tree import UNSEARCHED, Node, doer, element


def record_sheet() -> Node:
    """Return the record sheet of a bow of which nothing is known."""
    return element("div", {"class": "rb-paper-sheet"}, *sheet_tree(State([]), "", "", "imperial"))


def view() -> Node:
    """Return the view in which a page of bows shows what it prints, and nothing beside it."""
    return element(
        "div", {"class": "rb-paper", "hidden": "", **UNSEARCHED},
        element("div", {"class": "rb-bows-actions"}, doer("print", "Print", "rb-main"), doer("back", "Back")),
        element("h2", {"tabindex": "-1"}),
        element("div", {"class": "rb-paper-sheet"}),
    )
