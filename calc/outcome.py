"""What a calculator answers: sentences, checks, tables, charts, drawings and files."""

from calc.declaring import COUNT
from calc.quantities import show

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

TEXT = "text"


class Amount:
    """A quantity in SI, or a word where `kind` is TEXT. decimals: None for what its kind shows."""

    def __init__(self, kind: str, value: float | str, decimals: int | None) -> None:
        self.kind = kind
        self.value = value
        self.decimals = decimals


class Link:
    """Words in a sentence that lead to a page of the book: its address from the root of the site."""

    def __init__(self, text: str, page: str) -> None:
        self.text = text
        self.page = page


class Sentence:
    """A sentence whose `{}` stand for amounts, links or words."""

    def __init__(self, template: str, amounts: tuple[Amount | Link | str, ...]) -> None:
        self.template = template
        self.amounts = amounts


class Check:
    """What was found, and how grave it is: OK, WATCH or STOP."""

    def __init__(self, id: str, level: str, text: Sentence | str) -> None:
        self.id = id
        self.level = level
        self.text = text


class Column:
    """A column of a table; `kind` is that of its figures."""

    def __init__(self, id: str, label: str, kind: str) -> None:
        self.id = id
        self.label = label
        self.kind = kind


class Table:
    """A table: rows of texts, figures in SI and amounts."""

    def __init__(
        self, id: str, caption: Sentence | str, columns: tuple[Column, ...],
        rows: tuple[tuple[object, ...], ...],
    ) -> None:
        self.id = id
        self.caption = caption
        self.columns = columns
        self.rows = rows


class Axis:
    """An axis of a chart."""

    def __init__(self, label: str, kind: str) -> None:
        self.label = label
        self.kind = kind


class Line:
    """A line of a chart, figures in SI. style: "line" or "points"."""

    def __init__(self, label: str, style: str, xs: "Sequence[float]", ys: "Sequence[float]") -> None:
        self.label = label
        self.style = style
        self.xs = xs
        self.ys = ys


class Chart:
    """A chart."""

    def __init__(self, id: str, title: Sentence | str, x: Axis, y: Axis, lines: tuple[Line, ...]) -> None:
        self.id = id
        self.title = title
        self.x = x
        self.y = y
        self.lines = lines


class Drawing:
    """A drawing as a tree of shapes: `[name, {attribute: text}, child, ...]`, texts may be sentences."""

    def __init__(
        self, id: str, title: Sentence | str, description: Sentence | str, width: int, height: int,
        shapes: list[object],
    ) -> None:
        self.id = id
        self.title = title
        self.description = description
        self.width = width
        self.height = height
        self.shapes = shapes


class File:
    """A file that comes with a result: its name, what its link says, and its text.

    media_type: one of FILE_TYPES. The page offers a file for saving and never opens it.
    """

    def __init__(self, name: str, label: str, media_type: str, text: str) -> None:
        self.name = name
        self.label = label
        self.media_type = media_type
        self.text = text


CALENDAR = "text/calendar"
PLAIN_TEXT = "text/plain"
SVG = "image/svg+xml"
FILE_TYPES = (CALENDAR, PLAIN_TEXT, SVG)

OK = "ok"
WATCH = "watch"
STOP = "stop"


class Problem:
    """What is wrong with one input. row (from 0) and column only for ROWS, else None.

    unfinished: typing on behind what stands there can mend it, so that whoever is typing is not told yet.
    """

    def __init__(self, field: str | None, row: int | None, column: str | None, message: str) -> None:
        self.field = field
        self.row = row
        self.column = column
        self.message = message
        self.unfinished = False


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


def link_with(text: str, calculator: str, figures: list[tuple[str, str]]) -> Link:
    """Return words that lead to a calculator with figures on its form, each (input, text as it is typed)."""
    pairs = [name + "=" + figure.replace("%", "%25").replace(" ", "+") for name, figure in figures]
    return Link(text, "calculators/" + calculator + "/#" + "&".join(pairs))


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
    if each.kind == TEXT or isinstance(each.value, str):
        return str(each.value)
    if each.kind == COUNT:
        return str(int(each.value))
    return show(each.value, each.kind, system, each.decimals)


def write_cell(column: Column, cell: object, system: str) -> str:
    """Return a table's cell as text; an amount in it is of its own kind, whatever the column's."""
    if cell is None:
        return ""
    if isinstance(cell, Amount):
        return write(cell, system)
    if isinstance(cell, (str, int, float)):
        return write(Amount(column.kind, cell, None), system)
    raise ValueError("a table holds texts, figures and amounts only")


def check(id: str, level: str, text: Sentence | str) -> Check:
    """Return a check: level OK, WATCH or STOP, and what it found."""
    return Check(id, level, text)
