"""Declaring a look-up table: its columns, its rows, and where each row comes from."""


class LookupColumn:
    """A column. kind: a quantity kind, TEXT or PAGE; system: in whose unit it stands; decimals: or None."""

    def __init__(self, label: str, kind: str, system: str, decimals: int | None) -> None:
        self.label = label
        self.kind = kind
        self.system = system
        self.decimals = decimals


class Row:
    """A row. cells: one a column, SI numbers or texts, None for an empty one; source: key of
    `calc.bibliography`; status: how far this row was read, in the bibliography's words."""

    def __init__(self, cells: tuple[object, ...], source: str, status: str) -> None:
        self.cells = cells
        self.source = source
        self.status = status


class Lookup:
    """A table.

    note: a sentence or two that stand above it. The first column names the row, and
    no two rows share a name. layout: LIST or GRID.
    """

    def __init__(
        self, id: str, title: str, note: str, columns: tuple[LookupColumn, ...], rows: tuple[Row, ...],
        layout: str,
    ) -> None:
        self.id = id
        self.title = title
        self.note = note
        self.columns = columns
        self.rows = rows
        self.layout = layout


TEXT = "text"
PAGE = "page"
"""Cells are a page's title and its address from the root of the site."""

LIST = "list"
GRID = "grid"
"""A grid of numbers keeps its shape on a phone and scrolls; a list becomes cards there."""


def lookup(
    id: str, title: str, note: str, columns: tuple[LookupColumn, ...], rows: tuple[Row, ...],
    layout: str = LIST,
) -> Lookup:
    """Return a table.

    Raises:
        ValueError: a row has not one cell for each column.
    """
    for each in rows:
        if len(each.cells) != len(columns):
            raise ValueError("a row of " + id + " has " + str(len(each.cells)) + " cells for "
                             + str(len(columns)) + " columns: " + str(each.cells[0]))
    return Lookup(id, title, note, columns, rows, layout)


def column(label: str, kind: str = TEXT, system: str = "metric", decimals: int | None = None) -> LookupColumn:
    """Return a column."""
    return LookupColumn(label, kind, system, decimals)


def row(cells: tuple[object, ...], source: str, status: str) -> Row:
    """Return a row."""
    return Row(cells, source, status)
