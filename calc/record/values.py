"""From what was typed into an entry to numbers."""

from calc import outcome, reading
from calc.dates import DAY, day_number
from calc.quantities import SYSTEMS
from calc.record import sheets
from calc.record.declare import LONGEST_NOTE, NOTE
from calc.record.entries import Entry, written_at
from calc.record.fold import Latest, State

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Rows = tuple[tuple[float, ...], ...]

FIRST_DAY = day_number(1970, 1, 1)
"""From which ids count."""

WHERE_TYPED = SYSTEMS[0]
"""Facts are kept with their unit; a number without one means what it means on an imperial form."""


def value_of(fact: str, text: str) -> object:
    """Return what a fact's text says.

    Args:
        fact: such as `reading.brace`.
        text: as typed.

    Returns:
        a number in SI, a word, true or false, or rows of them; None where this release knows no such fact.

    Raises:
        Refused: the text cannot be read, or lies outside the fact's bounds.
    """
    asked = sheets.input_of(fact)
    if asked is None:
        return None
    if asked.kind == NOTE:
        if len(text) > LONGEST_NOTE:
            raise outcome.Refused(asked.id, asked.label + " must be at most " + str(LONGEST_NOTE)
                                 + " letters; yours has " + str(len(text)) + ".")
        return text
    return reading.read_input(asked, text, WHERE_TYPED)


def number_in(entry: Entry | None, name: str) -> float | None:
    """Return a number that an entry holds.

    Args:
        entry: any, or None.
        name: of the fact in the entry's own sheet.

    Returns:
        [SI] the number; None where the entry holds none that can be read.
    """
    value = _read(entry, name) if entry else None
    return float(value) if isinstance(value, (int, float)) else None


def rows_of(entry: Entry, name: str) -> "Rows":
    """Return the rows that an entry holds.

    Args:
        entry: any.
        name: of the fact in the entry's own sheet.

    Returns:
        rows of numbers in SI; none where it holds none that can be read.
    """
    if not entry.fact(name):
        return ()
    try:
        found = value_of(entry.sheet + "." + name, entry.fact(name))
    except ValueError:
        return ()
    return found if isinstance(found, tuple) else ()


def is_on(entry: Entry, name: str) -> bool:
    """Return whether a switch of an entry is on; one that was not touched or cannot be read is not.

    Args:
        entry: any.
        name: of the fact in the entry's own sheet.

    Returns:
        true or false.
    """
    return _read(entry, name) is True


def is_off(entry: Entry, name: str) -> bool:
    """Return whether a switch of an entry is off; untouched it is; unreadable it is not.

    Args:
        entry: any.
        name: of the fact in the entry's own sheet.

    Returns:
        true or false.
    """
    return not entry.fact(name) or _read(entry, name) is False


def latest_number(state: State, fact: str) -> float | None:
    """Return the newest number known of a fact.

    Args:
        state: of a record.
        fact: such as `reading.brace`.

    Returns:
        [SI] the number, or None.
    """
    return _number(fact, state.latest(fact))


def latest_day(state: State, fact: str) -> int | None:
    """Return the newest day known of a fact.

    Args:
        state: of a record.
        fact: such as `handover.next_look`.

    Returns:
        number of the day, as `calc.dates` counts; None where none is known, or it cannot be read.
    """
    found = state.latest(fact)
    day = _read(found.entry, fact.partition(".")[2]) if found else None
    return day if isinstance(day, int) else None


def first_number(state: State, fact: str) -> float | None:
    """Return the oldest number known of a fact.

    Args:
        state: of a record.
        fact: such as `reading.weight`.

    Returns:
        [SI] the number, or None.
    """
    return _number(fact, state.first(fact))


def problems_of(entry: Entry) -> list[str]:
    """Return what of an entry this release does not understand, in sentences.

    Args:
        entry: any.

    Returns:
        one sentence a fact; none where all of it can be read.
    """
    if sheets.find(entry.sheet) is None:
        return ["This release knows no sheet called “" + entry.sheet + "”; the entry is kept as it is."]
    found = []
    for name, text in entry.facts:
        if sheets.input_of(entry.sheet + "." + name) is None:
            found.append("This release knows no “" + name + "” on this sheet; it is kept as it is.")
            continue
        try:
            value_of(entry.sheet + "." + name, text)
        except ValueError as error:
            found.append(str(error))
    return found


def odd_of(entry: Entry) -> list[str]:
    """Return what is odd about the moment of an entry: it is so before it can have been.

    Args:
        entry: any.

    Returns:
        a sentence, or none. The clock of the device may have been wrong.
    """
    written = FIRST_DAY * DAY + written_at(entry.id) // 1000
    if entry.moment - written <= DAY:
        return []
    return ["It is of a later day than the one on which it was written down: check its day, and the clock of "
            "the device."]


def _read(entry: Entry, name: str) -> object:
    """Return what a fact of an entry says; None where it holds none that can be read."""
    text = entry.fact(name)
    try:
        return value_of(entry.sheet + "." + name, text) if text else None
    except ValueError:
        return None


def _number(fact: str, found: Latest | None) -> float | None:
    return number_in(found.entry, fact.partition(".")[2]) if found else None
