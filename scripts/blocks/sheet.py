"""Parts of the forms of entries, as the page of bows has them."""

from calc.declaring import CHOICE, ROWS, SWITCH, Choice, Group, Input
from calc.record import sheets
from calc.record.declare import LONGEST_NOTE, Sheet
from scripts.blocks.form import changed
from scripts.blocks.tree import Node, doer, element

NOT_SAID = Choice("", "Not said")
YES_OR_NO = (NOT_SAID, Choice("yes", "Yes"), Choice("no", "No"))
TICKED = (sheets.LOOKING.id,)
"""Sheets whose switches say what was done; one that is not ticked says nothing."""


def units() -> list[Node]:
    """Return the unit system of a form, which follows the reader's choice on the calculators."""
    return [element("input", {"type": "radio", "name": "units", "value": system, "hidden": "",
                              "checked": "" if system == "imperial" else None})
            for system in ("imperial", "metric")]


def when(name: str) -> list[Node]:
    """Return what every entry asks for beside its facts: its moment, and a note."""
    at, note = "rb-" + name + "-at", "rb-" + name + "-note"
    return [element(
        "div", {"class": "rb-when"},
        element("label", {"for": at}, "When it was so"),
        element("input", {"id": at, "name": "at", "type": "datetime-local"}),
        element("label", {"for": note}, "Note"),
        element("input", {"id": note, "name": "note", "type": "text", "maxlength": str(LONGEST_NOTE)}),
    )]


def closing(*further: Node) -> Node:
    """Return the buttons that end a form."""
    return element("div", {"class": "rb-bows-actions"},
                   element("button", {"type": "submit", "class": "rb-main"}, "Save"), *further,
                   doer("close", "Close"))


def emptied(sheet: Sheet) -> Sheet:
    """Return a sheet as a form shows it: its examples stand beside the fields, never in them."""
    groups = [Group(each.title, each.note, tuple(_empty(sheet, one) for one in each.inputs))
              for each in sheet.groups]
    return sheet._replace(groups=tuple(groups))


def _empty(sheet: Sheet, each: Input) -> Input:
    if each.kind == CHOICE:
        return changed(each, choices=(NOT_SAID, *each.choices), default="")
    if each.kind == SWITCH:
        if sheet.id.removeprefix("sheet-") in TICKED:
            return changed(each, default="no")
        return changed(each, kind=CHOICE, choices=YES_OR_NO, default="")
    if each.kind == ROWS:
        return changed(each, default="")
    example = " Such as " + each.default.rstrip(".") + "."
    return changed(each, default="", help=(each.help + example).strip())
