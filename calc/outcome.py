"""What a calculator answers: sentences, checks, tables, charts, drawings and files."""


from collections import namedtuple

from calc.declaring import (
    COUNT,
)
from calc.quantities import show

TEXT = "text"

Sentence = namedtuple("Sentence", "template amounts")
Amount = namedtuple("Amount", "kind value decimals")

Link = namedtuple("Link", "text page")
"""Words in a sentence that lead to a page of the book: its address from the root of the site."""

Check = namedtuple("Check", "id level text")
Table = namedtuple("Table", "id caption columns rows")
Column = namedtuple("Column", "id label kind")
Chart = namedtuple("Chart", "id title x y lines")
Axis = namedtuple("Axis", "label kind")
Line = namedtuple("Line", "label style xs ys")
Drawing = namedtuple("Drawing", "id title description width height shapes")

File = namedtuple("File", "name label media_type text")
"""A file that comes with a result: its name, what its link says, and its text.

media_type: one of FILE_TYPES. The page offers a file for saving and never opens it.
"""

CALENDAR = "text/calendar"
PLAIN_TEXT = "text/plain"
FILE_TYPES = (CALENDAR, PLAIN_TEXT)

OK = "ok"
WATCH = "watch"
STOP = "stop"

Problem = namedtuple("Problem", "field row column message")
"""What is wrong with one input. row (from 0) and column only for ROWS, else None."""


class Outcome:
    """What compute returns. values: pairs of (result id, SI value), every declared result once."""

    def __init__(
        self,
        *,
        headline: Sentence | str,
        values: tuple[tuple[str, float | str | None], ...],
        checks: tuple[Check, ...],
        assumptions: tuple[Sentence | str, ...],
        tables: tuple[Table, ...] = (),
        charts: tuple[Chart, ...] = (),
        drawings: tuple[Drawing, ...] = (),
        files: tuple[File, ...] = (),
    ) -> None:
        self.headline = headline
        self.values = values
        self.checks = checks
        self.tables = tables
        self.charts = charts
        self.drawings = drawings
        self.assumptions = assumptions
        self.files = files
        for file in files:
            if file.media_type not in FILE_TYPES:
                raise ValueError("a result's file must be one of " + ", ".join(FILE_TYPES) + ", not "
                                 + file.media_type)

    def with_checks(self, more: tuple[Check, ...]) -> "Outcome":
        """Return the same outcome with further checks."""
        return self.replacing_checks(self.checks + more)

    def replacing_checks(self, checks: tuple[Check, ...]) -> "Outcome":
        """Return the same outcome with these checks instead of its own."""
        return Outcome(headline=self.headline, values=self.values, checks=checks, tables=self.tables,
                       charts=self.charts, drawings=self.drawings, assumptions=self.assumptions,
                       files=self.files)


class Refused(ValueError):
    """Inputs that each can be read but do not go together; names the field to mend."""

    def __init__(self, field: str, message: str, row: int | None = None, column: str | None = None):
        super().__init__(message)
        self.problem = Problem(field, row, column, message)


# Answering -------------------------------------------------------------------


def amount(kind: str, value: float, decimals: int | None = None) -> Amount:
    """Return a quantity to be written once the reader's unit system is known."""
    return Amount(kind, value, decimals)


def link(text: str, page: str) -> Link:
    """Return words that lead to a page of the book, such as `safety/#stored-energy`."""
    return Link(text, page)


def sentence(template: str, *amounts: Amount | Link | str) -> Sentence:
    """Return a sentence whose `{}` are filled with amounts, links or words when it is shown."""
    return Sentence(template, amounts)


def say(text: Sentence | str, system: str) -> str:
    """Return a sentence as text in a unit system."""
    if isinstance(text, str):
        return text
    parts = text.template.split("{}")
    shown = [parts[0]]
    for index, each in enumerate(text.amounts):
        shown.append(write(each, system))
        shown.append(parts[index + 1])
    return "".join(shown)


def write(each: Amount | Link | str, system: str) -> str:
    """Return one amount, link or word as text in a unit system."""
    if isinstance(each, str):
        return each
    if isinstance(each, Link):
        return each.text
    if each.kind == TEXT:
        return str(each.value)
    if each.kind == COUNT:
        return str(int(each.value))
    return show(each.value, each.kind, system, each.decimals)


def write_cell(column: Column, cell: object, system: str) -> str:
    """Return a table's cell as text; an amount in it is of its own kind, whatever the column's."""
    if cell is None:
        return ""
    return write(cell if isinstance(cell, Amount) else Amount(column.kind, cell, None), system)


def check(id: str, level: str, text: Sentence | str) -> Check:
    """Return a check: level OK, WATCH or STOP, and what it found."""
    return Check(id, level, text)
