"""Reading what was typed: one value an input, or one error that says how to mend it."""



from calc.dates import parse_date, show_date, ways_to_a_date
from calc.declaring import (
    BY_UNITS,
    CHOICE,
    COUNT,
    DATE,
    ROWS,
    SWITCH,
    Calculator,
    Input,
    folds_of,
    inputs_of,
)
from calc.outcome import WATCH, Check, Problem, Refused
from calc.quantities import (
    LONGEST_TEXT,
    SYSTEMS,
    could_be_a_share,
    is_open_number,
    kind_of,
    parse,
    show,
    show_number,
    ways_to_end,
)

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Mapping

LONGEST_ECHO = 40
LONGEST_ROWS_TEXT = 2000
CELL_MARK = ":"
ROW_MARK = ";"
MOST_HELD = 2
"""How many of the figures that a fold holds are written on it before the rest is counted."""


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


def matters(each: Input, values: "Mapping[str, object]") -> bool:
    """Return whether an input is asked for, given the choices read before it."""
    return each.when is None or values.get(each.when[0]) in each.when[1]


def held_in_folds(calculator: Calculator, typed: "Mapping[str, str]") -> list[str]:
    """Return what to write on each fold of a form, in their order: what is typed behind it."""
    texts = {each.id: typed.get(each.id, each.default) for each in inputs_of(calculator)}
    return [_held(fold.inputs, texts) for fold in folds_of(calculator)]


def _held(folded: tuple[Input, ...], texts: dict[str, str]) -> str:
    said = [_holds(each, texts[each.id]) for each in folded if matters(each, texts)]
    given = [text for text in said if text]
    if not given:
        return "nothing ticked" if folded[0].kind == SWITCH else "nothing given"
    rest = len(given) - MOST_HELD
    return "; ".join(given[:MOST_HELD]) + (" and " + str(rest) + " more" if rest > 0 else "")


def _holds(each: Input, text: str) -> str:
    """Return what an input holds as its reader sees it; empty where that is nothing."""
    if each.kind == SWITCH:
        return each.label if text == "yes" else ""
    if not text.strip():
        return ""
    if each.kind == ROWS:
        count = len([row for row in text.split(ROW_MARK) if row.replace(CELL_MARK, "").strip()])
        return each.label + ": " + str(count) + (" row" if count == 1 else " rows") if count else ""
    if each.kind == CHOICE:
        return ", ".join([option.label for option in each.choices if option.id == text])
    return each.label + " " + echo(text)


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
    if each.kind == ROWS:
        return _read_rows(each, text, system)
    if each.kind == SWITCH:
        return _read_switch(each, text)
    value = _read_one(each, text, system, each.id, None, None)
    return system if each.kind == CHOICE and value == BY_UNITS else value


def _read_one(
    each: Input, text: str, system: str, field: str, row: int | None, column: str | None
) -> float | str | None:
    """Return the value of a field or a cell; where it cannot be used, say whether typing on can mend it."""
    try:
        return _read_whole(each, text, system, field, row, column)
    except Refused as refused:
        refused.problem.unfinished = _goes_on(each, text, system)
        raise


def _read_whole(
    each: Input, text: str, system: str, field: str, row: int | None, column: str | None
) -> float | str | None:
    if each.kind == CHOICE:
        return _read_choice(each, text, field, row, column)
    if each.kind == COUNT:
        return _read_count(each, text, field, row, column)
    if each.kind == DATE:
        return _read_date(each, text, field, row, column)
    return _read_quantity(each, text, system, field, row, column)


# What is still being typed ---------------------------------------------------


def _goes_on(each: Input, text: str, system: str) -> bool:
    """Return whether typing on behind a text can make it another value that can be used.

    A number without a unit counts as such: digits, a fraction or a small unit may bring it anywhere.
    """
    if each.kind == CHOICE or len(text) > LONGEST_TEXT:
        return False
    if each.kind != DATE and is_open_number(text):
        return each.bounds()[0] <= 0 or not text.strip().startswith("-")
    so_far = _usable(each, text, system)
    return any(_usable(each, text + more, system) not in ([], so_far) for more in _ways_to_end(each, text))


def _usable(each: Input, text: str, system: str) -> "list[float | str | None]":
    """Return the value of a text in a list, or an empty one where it cannot be used."""
    try:
        return [_read_whole(each, text, system, each.id, None, None)]
    except Refused:
        return []


def _ways_to_end(each: Input, text: str) -> list[str]:
    if each.kind == DATE:
        first, last = each.bounds()
        return ways_to_a_date(text, int(first), int(last))
    return [] if each.kind == COUNT else ways_to_end(text, each.kind)


def mark_unfinished(
    calculator: Calculator, pairs: list[tuple[str, str]], system: str, problem: Problem
) -> None:
    """Say of a problem between inputs whether typing on where it is told can mend it."""
    typed, _ = _sort_pairs(calculator, pairs)
    for each in inputs_of(calculator):
        if each.id == problem.field and each.kind != SWITCH:
            text = typed.get(each.id, each.default)
            cell = _cell(each, text, problem) if each.kind == ROWS else (each, text)
            problem.unfinished = cell is not None and _goes_on(cell[0], cell[1], system)


def _cell(each: Input, text: str, problem: Problem) -> tuple[Input, str] | None:
    """Return column and text of the cell that a problem is told at; None where that is no single one."""
    lines = _lines(text)
    for position, column in enumerate(each.columns):
        if problem.row is not None and problem.row < len(lines) and column.id == problem.column:
            cells = lines[problem.row]
            return column, cells[position] if position < len(cells) else column.default
    return None


# Each kind of input ----------------------------------------------------------


def _labelled(each: Input, row: int | None) -> str:
    return each.label if row is None else each.label + " in row " + str(row + 1)


def _read_choice(each: Input, text: str, field: str, row: int | None, column: str | None) -> str:
    ids = [option.id for option in each.choices]
    if text.strip() not in ids:
        raise Refused(field, _labelled(each, row) + " must be one of: "
                      + ", ".join([id for id in ids if id]) + ". You gave “" + echo(text) + "”.", row, column)
    return text.strip()


def _read_switch(each: Input, text: str) -> bool:
    word = text.strip().lower()
    if word in ("yes", "on", "true", "1"):
        return True
    if word in ("no", "off", "false", "0"):
        return False
    raise Refused(each.id, each.label + " must be yes or no. You gave “" + echo(text) + "”.")


def _read_count(each: Input, text: str, field: str, row: int | None, column: str | None) -> int:
    try:
        number = parse(text, "number")
    except ValueError:
        number = 0.5
    low, high = each.bounds()
    if number != int(number) or not low <= number <= high:
        raise Refused(field, _labelled(each, row) + " must be a whole number from " + str(low)
                      + " to " + str(high) + "; you typed “" + echo(text) + "”.", row, column)
    return int(number)


def _read_date(each: Input, text: str, field: str, row: int | None, column: str | None) -> int | None:
    label = _labelled(each, row)
    mend = " Type year, month and day, for example " + each.default + "."
    if not text.strip():
        if each.optional:
            return None
        raise Refused(field, label + " is empty." + mend, row, column)
    try:
        number = parse_date(text)
    except ValueError as error:
        raise Refused(field, label + ": “" + echo(text) + "” " + str(error) + "." + mend, row,
                      column) from None
    first, last = each.bounds()
    if not first <= number <= last:
        raise Refused(field, label + " must be from " + show_date(int(first)) + " to "
                      + show_date(int(last)) + "; you typed “" + echo(text) + "”. Check the year.", row,
                      column)
    return number


def _read_quantity(
    each: Input, text: str, system: str, field: str, row: int | None, column: str | None
) -> float | None:
    label = _labelled(each, row)
    if not text.strip():
        if each.optional:
            return None
        raise Refused(field, label + " is empty. " + _how_to_type(each, system), row, column)
    try:
        value = parse(text, each.kind, system)
    except ValueError as error:
        message = label + ": “" + echo(text) + "” " + str(error) + ". " + _how_to_type(each, system)
        raise Refused(field, message, row, column) from None
    if each.kind == "ratio" and could_be_a_share(text):
        bare = text.strip()
        raise Refused(field, label + ": does “" + echo(bare) + "” mean " + echo(bare) + " % or "
                      + _plain_number(100 * value * 100) + " %? Type the percent sign behind the number.",
                      row, column)
    low, high = each.bounds()
    if not low <= value <= high:
        raise Refused(field, label + " must be from " + _allowed(each, system) + "; you typed “" + echo(text)
                      + "”. Check the number and its unit.", row, column)
    return value


def _allowed(each: Input, system: str) -> str:
    low, high = each.bounds()
    return show(low, each.kind, system) + " to " + show(high, each.kind, system)


def _how_to_type(each: Input, system: str) -> str:
    return ("Type " + kind_of(each.kind).noun + " from " + _allowed(each, system)
            + _for_example(each, system) + ".")


def _for_example(each: Input, system: str) -> str:
    """Return words with the example's text in the reader's units; nothing where the example is empty."""
    if not each.default:
        return ""
    shown = show(parse(each.default, each.kind), each.kind, system)
    return ", for example " + (each.default if system == SYSTEMS[0] else shown)


def _plain_number(number: float) -> str:
    """Return a number with at most two decimals and no noughts behind them."""
    return show_number(number, 2).rstrip("0").rstrip(".")


def _read_rows(each: Input, text: str, system: str) -> tuple[tuple[float | str | None, ...], ...]:
    fewest, most = each.bounds()
    if len(text) > LONGEST_ROWS_TEXT:
        raise Refused(each.id, each.label + ": the table is too long to read; give at most "
                      + str(most) + " rows.")
    lines = _lines(text)
    if not fewest <= len(lines) <= most:
        raise Refused(each.id, each.label + " needs from " + str(fewest) + " to " + str(most)
                      + " rows; you gave " + str(len(lines)) + ". Add or remove rows.")
    return tuple([_read_row(each, cells, index, system) for index, cells in enumerate(lines)])


def _lines(text: str) -> list[list[str]]:
    """Return the cells of each row in which something stands."""
    lines = [line.split(CELL_MARK) for line in text.split(ROW_MARK)]
    return [cells for cells in lines if "".join(cells).strip()]


def _read_row(each: Input, cells: list[str], index: int, system: str) -> tuple[float | str | None, ...]:
    if len(cells) > len(each.columns):
        raise Refused(each.id, each.label + " in row " + str(index + 1) + " has more than "
                      + str(len(each.columns)) + " cells. Take some out.", index)
    values: list[float | str | None] = []
    for position, column in enumerate(each.columns):
        cell = cells[position] if position < len(cells) else ""
        if column.kind == CHOICE and position >= len(cells):
            cell = column.default  # a row from before there was this column
        values.append(_read_one(column, cell, system, each.id, index, column.id))
    return tuple(values)


# Usual ranges ----------------------------------------------------------------


def unusual(calculator: Calculator, values: dict[str, object], system: str) -> list[Check]:
    """Return a caution for every value outside its usual range."""
    found = []
    for each in inputs_of(calculator):
        value = values[each.id]
        if isinstance(value, float):
            found += _unusual_quantity(each, "", value, "usual-" + each.id, system)
        elif isinstance(value, tuple):
            for index, row in enumerate(value):
                for position, column in enumerate(each.columns):
                    if isinstance(row[position], float):
                        found += _unusual_quantity(
                            column, " in row " + str(index + 1) + " of " + each.label, row[position],
                            "usual-" + each.id, system)
    return found


def _unusual_quantity(each: Input, place: str, value: float, id: str, system: str) -> list[Check]:
    low, high = each.usual()
    if low <= value <= high:
        return []
    return [Check(id, WATCH, each.label + place + " of " + show(value, each.kind, system)
                  + " is outside the usual " + show(low, each.kind, system) + " to "
                  + show(high, each.kind, system) + ": check the reading.")]
