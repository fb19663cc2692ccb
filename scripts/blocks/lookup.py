"""A look-up table as a section of HTML, and as CSV.

Every row has an anchor of its own. The page's script adds finding and sorting; without it
the table is complete.
"""

import csv
import io
import re

from calc import bibliography, quantities
from calc.lookups import glossary
from calc.lookups.declare import GRID, LIST, PAGE, TEXT, Lookup, LookupColumn
from calc.report import TO_ROOT
from scripts.blocks.tree import Node, element

MOST_ON_A_SHEET = 55
"""Rows that one column of a printed sheet holds."""

MANY, LONG = "many", "long"
"""More rows than that: short ones are printed in columns beside each other, long ones in small type."""

MOST_UNFOLDED = 12
"""Rows beyond which a phone shows those of a list by their names, one unfolded at a time."""

SHORT = "short"
MOST_SHORT_COLUMNS = 4
LONGEST_SHORT_CELL = 10


def lookup_section(table: Lookup) -> Node:
    """Return the whole table with its tools, its sources and the address of its CSV."""
    keys = sorted({each.source for each in table.rows})
    file = table.id + ".csv"
    title = table.id + "-title"
    return element(
        "section", {"class": "rb-lookup", "data-lookup": table.id, "data-layout": _layout(table),
                    "data-rows": _rows(table), "data-folds": _folds(table)},
        element("p", {"class": "rb-lookup-note"}, table.note),
        _tools(table),
        element("p", {"class": "rb-lookup-title", "id": title}, table.title),
        element("div", {"class": "rb-lookup-frame", "role": "region", "tabindex": "0",
                        "aria-labelledby": title}, _table(table, keys)),
        element("p", {"class": "rb-lookup-file"},
                element("a", {"href": file, "download": file}, "This table as CSV")),
        element("ol", {"class": "rb-lookup-sources"}, *(_source(table, key) for key in keys)),
    )


def _rows(table: Lookup) -> str | None:
    """Return how a table with more rows than one column of a sheet holds is printed."""
    if len(table.rows) <= MOST_ON_A_SHEET:
        return None
    return MANY if _short(table) else LONG


def _short(table: Lookup) -> bool:
    return all(len(_shown(each, cell)) <= LONGEST_SHORT_CELL
               for row in table.rows for each, cell in zip(table.columns, row.cells))


def _layout(table: Lookup) -> str:
    """Return how a table is laid out: one of few short cells keeps its shape on a phone."""
    few = len(table.columns) + (_shared_origin(table) is None) <= MOST_SHORT_COLUMNS
    short = _short(table)
    return SHORT if table.layout == LIST and few and short else table.layout


def _folds(table: Lookup) -> str | None:
    return "" if _layout(table) == LIST and len(table.rows) > MOST_UNFOLDED else None


def _tools(table: Lookup) -> Node:
    key = table.id + "-find"
    return element(
        "div", {"class": "rb-lookup-tools", "hidden": ""},
        element("label", {"for": key}, "Find in this table"),
        element("input", {"id": key, "type": "search", "autocomplete": "off", "autocapitalize": "off",
                          "spellcheck": "false"}),
        element("span", {"class": "rb-lookup-count", "role": "status"}),
    )


def _table(table: Lookup, keys: list[str]) -> Node:
    shared = _shared_origin(table)
    heads = [element("th", {"scope": "col"}, _head(table, each)) for each in table.columns]
    if shared is None:
        heads.append(element("th", {"scope": "col"}, "Source"))
    lines = []
    for row in table.rows:
        name, *cells = [_shown(each, cell) for each, cell in zip(table.columns, row.cells)]
        anchor = row_anchor(table, name)
        line = [element("th", {"scope": "row", "data-sort": _sort_key(table.columns[0], row.cells[0])},
                        element("a", {"href": "#" + anchor}, name))]
        line += [element("td", {"data-label": _head(table, each), "data-sort": _sort_key(each, cell)},
                         _linked(each, cell, text))
                 for each, cell, text in zip(table.columns[1:], row.cells[1:], cells)]
        if shared is None:
            origin = "[" + str(keys.index(row.source) + 1) + "] " + row.status
            line.append(element("td", {"data-label": "Source"}, origin))
        others = " ".join(glossary.others_of(" ".join([name, *cells])))
        lines.append(element("tr", {"id": anchor, "data-words": others or None}, *line))
    return element("table", {"class": "rb-lookup-table", "aria-labelledby": table.id + "-title"},
                   element("thead", {}, element("tr", {}, *heads)), element("tbody", {}, *lines))


def _linked(each: LookupColumn, cell: object, text: str) -> Node:
    if each.kind != PAGE:
        return text
    assert isinstance(cell, tuple)
    return element("a", {"href": TO_ROOT + cell[1]}, text)


def _shared_origin(table: Lookup) -> tuple[str, str] | None:
    """Return source and status where all rows share them."""
    origins = {(each.source, each.status) for each in table.rows}
    return origins.pop() if len(origins) == 1 else None


def _source(table: Lookup, key: str) -> Node:
    source = bibliography.find(key)
    shared = _shared_origin(table)
    status = shared[1] if shared else source.status
    return element("li", {}, source.text + " ", element("em", {}, "(" + status + ")"))


def row_anchor(table: Lookup, name: str) -> str:
    """Return the id of a row: the table's id and the row's name in plain letters."""
    return table.id + "-" + re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")


def _head(table: Lookup, each: LookupColumn) -> str:
    """Return a column's head with its unit; a grid's title names the unit of all its columns."""
    return each.label if table.layout == GRID else ", ".join([each.label, *_unit(each)])


def _unit(each: LookupColumn) -> list[str]:
    if each.kind in (TEXT, PAGE):
        return []
    name = quantities.raised(quantities.shown_unit(each.kind, each.system).name)
    return [name] if name else []


def _shown(each: LookupColumn, cell: object) -> str:
    """Return a cell as text, its unit left to the column's head."""
    if cell is None:
        return ""
    if isinstance(cell, tuple):
        return str(cell[0])
    if each.kind == TEXT or isinstance(cell, str):
        return str(cell)
    assert isinstance(cell, int | float)
    text = quantities.show(cell, each.kind, each.system, each.decimals)
    unit = quantities.shown_unit(each.kind, each.system).name
    return text.removesuffix(unit).strip() if unit else text


def _sort_key(each: LookupColumn, cell: object) -> str | None:
    """Return what a cell sorts by, if that is a number."""
    return repr(float(cell)) if isinstance(cell, int | float) and each.kind != TEXT else None


def csv_text(table: Lookup) -> str:
    """Return a table as CSV with the figures that its page shows."""
    written = io.StringIO()
    writer = csv.writer(written)
    writer.writerow([*(_head(table, each) for each in table.columns), "Source", "Status"])
    for row in table.rows:
        cells = [_shown(each, cell) for each, cell in zip(table.columns, row.cells)]
        writer.writerow([*cells, row.source, row.status])
    return written.getvalue()
