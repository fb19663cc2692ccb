"""Declaring a calculator once: what it asks, what it answers, what it warns of.

The form, the link, the command line, the validation, the tables in the book
and the tests are all made from these declarations.
"""

from collections import namedtuple

from calc.dates import parse_date, show_date
from calc.quantities import could_be_a_share, kind_of, parse, show, show_number

Calculator = namedtuple(
    "Calculator", "id title purpose groups results cautions sources example compute"
)
"""A calculator.

purpose: one sentence. example: one sentence about the invented bow whose
figures are the defaults. sources: keys of `calc.bibliography`. compute: takes
every input by its id, returns an Outcome; or is a generator function that
yields how far it is (0 to 1) and returns the Outcome.
"""

Group = namedtuple("Group", "title note inputs")
"""Inputs that belong together on the form."""

Input = namedtuple(
    "Input",
    "id label kind default low high usual_low usual_high help measure choices columns optional when role",
)
"""One thing a calculator asks for.

kind: a quantity kind, or CHOICE, SWITCH, COUNT, DATE, ROWS. default: text as typed;
the defaults together are the worked example. low, high: hard bounds in SI (rows:
how many). usual_low, usual_high: outside these a caution is shown. when: None,
or (id of a choice, its values for which this input matters). role: FACT, SHOP, RULE
or TRIAL.
"""

FACT = "fact"
"""Of this bow, archer, arrow, product or room, or agreed with the owner: the example's stands for nobody."""

SHOP = "shop"
"""Of the shop's tools, habits and prices: the same from one bow to the next."""

RULE = "rule"
"""A rule of the trade or a known figure of a material: as usual, unless somebody knows better."""

TRIAL = "trial"
"""A step to try or to plan."""

Choice = namedtuple("Choice", "id label")
Result = namedtuple("Result", "id label kind help")
"""A declared result; `kind` is a quantity kind, or TEXT for a word."""

BY_UNITS = "units"
"""An option of this id stands for the reader's unit system: it is read as "imperial" or "metric"."""

CHOICE = "choice"
SWITCH = "switch"
COUNT = "count"
DATE = "date"
ROWS = "rows"
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
"""A file that comes with a result: its name, what its link says, and its text."""

OK = "ok"
WATCH = "watch"
STOP = "stop"

Problem = namedtuple("Problem", "field row column message")
"""What is wrong with one input. row (from 0) and column only for ROWS, else None."""

LONGEST_ECHO = 40
LONGEST_ROWS_TEXT = 2000
CELL_MARK = ":"
ROW_MARK = ";"


class Outcome:
    """What compute returns. values: pairs of (result id, SI value), every declared result once."""

    def __init__(
        self,
        headline: Sentence | str,
        values: tuple[tuple[str, float | str | None], ...],
        checks: tuple[Check, ...],
        tables: tuple[Table, ...],
        charts: tuple[Chart, ...],
        drawings: tuple[Drawing, ...],
        assumptions: tuple[Sentence | str, ...],
        files: tuple[File, ...] = (),
    ):
        self.headline = headline
        self.values = values
        self.checks = checks
        self.tables = tables
        self.charts = charts
        self.drawings = drawings
        self.assumptions = assumptions
        self.files = files

    def with_checks(self, more: tuple[Check, ...]) -> "Outcome":
        """Return the same outcome with further checks."""
        return self.replacing_checks(self.checks + more)

    def replacing_checks(self, checks: tuple[Check, ...]) -> "Outcome":
        """Return the same outcome with these checks instead of its own."""
        return Outcome(self.headline, self.values, checks, self.tables, self.charts,
                       self.drawings, self.assumptions, self.files)


class Refused(ValueError):
    """Inputs that each can be read but do not go together; names the field to mend."""

    def __init__(self, field: str, message: str, row: int | None = None, column: str | None = None):
        super().__init__(message)
        self.problem = Problem(field, row, column, message)


# Declaring -------------------------------------------------------------------


def group(title: str, *inputs: Input, note: str = "") -> Group:
    """Return a group of inputs under one title."""
    return Group(title, note, inputs)


def quantity(
    id: str,
    label: str,
    kind: str,
    default: str,
    low: str,
    high: str,
    usual: tuple[str, str] | None = None,
    help: str = "",
    measure: str = "",
    optional: bool = False,
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare an input that is a quantity; the bounds are texts with their unit."""
    bounds = usual or (low, high)
    return Input(
        id, label, kind, default, parse(low, kind), parse(high, kind),
        parse(bounds[0], kind), parse(bounds[1], kind), help, measure, (), (), optional, when, role,
    )


def count(
    id: str,
    label: str,
    default: int,
    low: int,
    high: int,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare an input that is a whole number of things."""
    return Input(id, label, COUNT, str(default), low, high, low, high, help, "", (), (), False, when,
                 role)


def date(
    id: str, label: str, default: str, low: str, high: str, help: str = "", role: str = FACT
) -> Input:
    """Declare an input that is a date, typed as year-month-day."""
    first, last = parse_date(low), parse_date(high)
    return Input(id, label, DATE, default, first, last, first, last, help, "", (), (), False, None, role)


def choice(
    id: str,
    label: str,
    choices: tuple[tuple[str, str], ...],
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    default: str | None = None,
    role: str = FACT,
) -> Input:
    """Declare a choice from (id, label) pairs; the first is the default unless another is named."""
    options = tuple([Choice(option[0], option[1]) for option in choices])
    return Input(id, label, CHOICE, default or options[0].id, None, None, None, None, help, "",
                 options, (), False, when, role)


def switch(
    id: str,
    label: str,
    default: bool = False,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare something that is either on or off."""
    return Input(id, label, SWITCH, "yes" if default else "no", None, None, None, None,
                 help, "", (), (), False, when, role)


def rows(
    id: str,
    label: str,
    columns: tuple[Input, ...],
    default: str,
    fewest: int,
    most: int,
    help: str = "",
    measure: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare a small table of quantities and choices: cells apart by `:`, rows by `;`."""
    return Input(id, label, ROWS, default, fewest, most, fewest, most, help, measure,
                 (), columns, fewest == 0, when, role)


def result(id: str, label: str, kind: str, help: str = "") -> Result:
    """Declare a result."""
    return Result(id, label, kind, help)


def inputs_of(calculator: Calculator) -> list[Input]:
    """Return all inputs of a calculator in the order of its form."""
    return [each for part in calculator.groups for each in part.inputs]


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


# Reading what was typed ------------------------------------------------------


def read(
    calculator: Calculator, pairs: list[tuple[str, str]], system: str
) -> tuple[dict[str, object], list[Problem], list[str]]:
    """Return the values of all inputs, what is wrong with them, and notes.

    Args:
        calculator: whose inputs are read.
        pairs: (input id, text as typed); inputs left out take their default.
        system: unit system for numbers without a unit.

    Returns:
        values by input id (None where an optional input is empty or an input
        does not matter), problems (values are unusable if there are any), notes
        on names that were not understood or do not count. What was given is read
        even where it does not count.
    """
    typed, notes = _sort_pairs(calculator, pairs)
    values: dict[str, object] = {}
    problems: list[Problem] = []
    for each in inputs_of(calculator):
        counts = matters(each, values)
        values[each.id] = None
        if not counts and each.id not in typed:
            continue
        try:
            value = read_input(each, typed.get(each.id, each.default), system)
        except Refused as refused:
            problems.append(refused.problem)
            continue
        if counts:
            values[each.id] = value
        else:
            notes.append(_does_not_count(calculator, each, values))
    return values, problems, notes


def matters(each: Input, values: dict[str, object]) -> bool:
    """Return whether an input is asked for, given the choices read before it."""
    return each.when is None or values.get(each.when[0]) in each.when[1]


def _does_not_count(calculator: Calculator, each: Input, values: dict[str, object]) -> str:
    """Return the note on an input that was given and does not count, naming the choice that decides."""
    decides = each
    while decides.when is not None and values.get(decides.when[0]) is None:
        decides = next(other for other in inputs_of(calculator) if other.id == decides.when[0])
    if decides.when is None:  # the choice itself could not be read
        return "“" + each.id + "” was left out."
    name = decides.when[0]
    return ("“" + each.id + "” does not count while “" + name + "” is “" + str(values[name])
            + "”; it was left out.")


def _sort_pairs(
    calculator: Calculator, pairs: list[tuple[str, str]]
) -> tuple[dict[str, str], list[str]]:
    known = [each.id for each in inputs_of(calculator)]
    typed: dict[str, str] = {}
    notes = []
    for name, text in pairs:
        if name not in known:
            notes.append("“" + echo(name) + "” is not something this page asks for; it was left out.")
        elif name in typed:
            notes.append(given_twice(name))
        else:
            typed[name] = text
    return typed, notes


def given_twice(name: str) -> str:
    """Return the note on a name that a link or a command gives more than once."""
    return "“" + name + "” was given more than once; the first one counts."


def echo(text: str) -> str:
    """Return typed text short enough to repeat in a message."""
    plain = "".join([mark if mark >= " " else " " for mark in text[: LONGEST_ECHO + 1]])
    return plain if len(plain) <= LONGEST_ECHO else plain[:LONGEST_ECHO] + "…"


def read_input(each: Input, text: str, system: str) -> object:
    """Return the value of one input from what was typed; raises Refused where it cannot be used."""
    if each.kind == CHOICE:
        chosen = _read_choice(each, text, each.id, None, None)
        return system if chosen == BY_UNITS else chosen
    if each.kind == SWITCH:
        return _read_switch(each, text)
    if each.kind == COUNT:
        return _read_count(each, text)
    if each.kind == DATE:
        return _read_date(each, text)
    if each.kind == ROWS:
        return _read_rows(each, text, system)
    return _read_quantity(each, text, system, each.id, None, None)


def _read_choice(each: Input, text: str, field: str, row: int | None, column: str | None) -> str:
    ids = [option.id for option in each.choices]
    if text.strip() not in ids:
        label = each.label if row is None else each.label + " in row " + str(row + 1)
        raise Refused(field, label + " must be one of: " + ", ".join(ids)
                      + ". You gave “" + echo(text) + "”.", row, column)
    return text.strip()


def _read_switch(each: Input, text: str) -> bool:
    word = text.strip().lower()
    if word in ("yes", "on", "true", "1"):
        return True
    if word in ("no", "off", "false", "0"):
        return False
    raise Refused(each.id, each.label + " must be yes or no. You gave “" + echo(text) + "”.")


def _read_count(each: Input, text: str) -> int:
    try:
        number = parse(text, "number")
    except ValueError:
        number = 0.5
    if number != int(number) or not each.low <= number <= each.high:
        raise Refused(each.id, each.label + " must be a whole number from " + str(each.low)
                      + " to " + str(each.high) + "; you typed “" + echo(text) + "”.")
    return int(number)


def _read_date(each: Input, text: str) -> int:
    mend = " Type year, month and day, for example " + each.default + "."
    if not text.strip():
        raise Refused(each.id, each.label + " is empty." + mend)
    try:
        number = parse_date(text)
    except ValueError as error:
        raise Refused(each.id, each.label + ": “" + echo(text) + "” " + str(error) + "." + mend) from None
    if not each.low <= number <= each.high:
        raise Refused(each.id, each.label + " must be from " + show_date(each.low) + " to "
                      + show_date(each.high) + "; you typed “" + echo(text) + "”. Check the year.")
    return number


def _read_quantity(
    each: Input, text: str, system: str, field: str, row: int | None, column: str | None
) -> float | None:
    label = each.label if row is None else each.label + " in row " + str(row + 1)
    allowed = show(each.low, each.kind, system) + " to " + show(each.high, each.kind, system)
    kind = kind_of(each.kind)
    mend = "Type " + kind.noun + " from " + allowed + ", for example " + each.default + "."
    if not text.strip():
        if each.optional:
            return None
        raise Refused(field, label + " is empty. " + mend, row, column)
    try:
        value = parse(text, each.kind, system)
    except ValueError as error:
        message = label + ": “" + echo(text) + "” " + str(error) + ". " + mend
        raise Refused(field, message, row, column) from None
    if each.kind == "ratio" and could_be_a_share(text):
        bare = text.strip()
        raise Refused(field, label + ": does “" + echo(bare) + "” mean " + echo(bare) + " % or "
                      + _plain_number(100 * value * 100) + " %? Type the percent sign behind the number.",
                      row, column)
    if not each.low <= value <= each.high:
        raise Refused(field, label + " must be from " + allowed + "; you typed “" + echo(text)
                      + "”. Check the number and its unit.", row, column)
    return value


def _plain_number(number: float) -> str:
    """Return a number with at most two decimals and no noughts behind them."""
    return show_number(number, 2).rstrip("0").rstrip(".")


def _read_rows(each: Input, text: str, system: str) -> tuple[tuple[float | str | None, ...], ...]:
    if len(text) > LONGEST_ROWS_TEXT:
        raise Refused(each.id, each.label + ": the table is too long to read; give at most "
                      + str(each.high) + " rows.")
    lines = [line.split(CELL_MARK) for line in text.split(ROW_MARK)]
    lines = [cells for cells in lines if "".join(cells).strip()]
    if not each.low <= len(lines) <= each.high:
        raise Refused(each.id, each.label + " needs from " + str(each.low) + " to " + str(each.high)
                      + " rows; you gave " + str(len(lines)) + ". Add or remove rows.")
    return tuple([_read_row(each, cells, index, system) for index, cells in enumerate(lines)])


def _read_row(each: Input, cells: list[str], index: int, system: str) -> tuple[float | str | None, ...]:
    if len(cells) > len(each.columns):
        raise Refused(each.id, each.label + " in row " + str(index + 1) + " has more than "
                      + str(len(each.columns)) + " cells. Take some out.", index)
    values: list[float | str | None] = []
    for position, column in enumerate(each.columns):
        cell = cells[position] if position < len(cells) else ""
        if column.kind == CHOICE and position >= len(cells):
            cell = column.default  # a row from before there was this column
        if column.kind == CHOICE:
            values.append(_read_choice(column, cell, each.id, index, column.id))
        else:
            values.append(_read_quantity(column, cell, system, each.id, index, column.id))
    return tuple(values)


# Usual ranges ----------------------------------------------------------------


def unusual(calculator: Calculator, values: dict[str, object], system: str) -> list[Check]:
    """Return a caution for every value outside its usual range."""
    found = []
    for each in inputs_of(calculator):
        value = values[each.id]
        if isinstance(value, float):
            found += _unusual_quantity(each, each.label, value, "usual-" + each.id, system)
        elif isinstance(value, tuple):
            for index, row in enumerate(value):
                for position, column in enumerate(each.columns):
                    if isinstance(row[position], float):
                        name = column.label + " in row " + str(index + 1) + " of " + each.label
                        found += _unusual_quantity(column, name, row[position], "usual-" + each.id, system)
    return found


def _unusual_quantity(each: Input, label: str, value: float, id: str, system: str) -> list[Check]:
    if each.usual_low <= value <= each.usual_high:
        return []
    return [Check(id, WATCH, label + " of " + show(value, each.kind, system) + " is outside the usual "
                  + show(each.usual_low, each.kind, system) + " to "
                  + show(each.usual_high, each.kind, system) + ": check the reading.")]
