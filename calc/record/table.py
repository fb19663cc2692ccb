"""Readings and batches of a record as a table of numbers, one row each, for a spreadsheet (RFC 4180)."""

from calc.declaring import (
    COUNT,
    ROWS,
    SWITCH,
    Input,
)
from calc.quantities import in_shown_unit, kind_of, show_number, shown_unit
from calc.record import sheets
from calc.record.declare import NOTE, Sheet
from calc.record.derive import strokes_in
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import is_off, is_on, number_in

LINE_END = "\r\n"
FORMULA_MARKS = "=+-@\t\r"
"""A cell of words that begins with one of these would be worked out by a spreadsheet."""

TOLD = ("reading", "strokes")
UNIT_NAMES = (("°F", "degF"), ("°C", "degC"), ("%", "percent"), ("°", "deg"))
DECIMALS = 6


def csv(entries: list[Entry], system: str) -> str:
    """Return the readings and batches of a record as comma-separated values.

    Args:
        entries: of one record.
        system: "imperial" or "metric", the units of the columns; each column's head names its own.

    Returns:
        text of the file. Nothing private is in it.
    """
    state = State(entries)
    columns = [(sheet, each) for sheet in TOLD for each in sheets.inputs_of(_sheet(sheet)) if _has_cell(each)]
    head = ["moment", "sheet", "since_start_strokes"] + [_head(each, system) for _, each in columns]
    lines = [head]
    done: list[Entry] = []
    for entry in state.entries:
        if entry.sheet not in TOLD:
            continue
        if entry.sheet == "strokes":
            done.append(entry)
        cells = [_cell(entry, each, system) if sheet == entry.sheet else "" for sheet, each in columns]
        lines.append([entry.at, entry.sheet, str(sum(strokes_in(done)))] + cells)
    return "".join([",".join([_quoted(cell) for cell in line]) + LINE_END for line in lines])


def _sheet(id: str) -> Sheet:
    found = sheets.find(id)
    if found is None:
        raise ValueError("no sheet is called " + id)
    return found


def _has_cell(each: Input) -> bool:
    return each.kind != ROWS


def _head(each: Input, system: str) -> str:
    if each.kind in (NOTE, COUNT, SWITCH) or each.choices:
        return str(each.id)
    name = shown_unit(each.kind, system).name
    for mark, word in UNIT_NAMES:
        name = name.replace(mark, word)
    return each.id + "_" + name.replace(" ", "_").replace("/", "_per_") if name else str(each.id)


def _cell(entry: Entry, each: Input, system: str) -> str:
    text = entry.fact(each.id)
    if not text or each.kind == NOTE or each.choices:
        return _harmless(text)
    if each.kind == SWITCH:
        return "yes" if is_on(entry, each.id) else "no" if is_off(entry, each.id) else _harmless(text)
    number = number_in(entry, each.id)
    if number is None:
        return _harmless(text)
    return _decimal(number if each.kind == COUNT else in_shown_unit(number, kind_of(each.kind).id, system))


def _decimal(number: float) -> str:
    """Return a number without trailing zeros."""
    text = show_number(number, DECIMALS).rstrip("0")
    return text[:-1] if text.endswith(".") else text


def _harmless(text: str) -> str:
    return "'" + text if text[:1] and text[0] in FORMULA_MARKS else text


def _quoted(text: str) -> str:
    if any(mark in text for mark in ',"\r\n'):
        return '"' + text.replace('"', '""') + '"'
    return text
