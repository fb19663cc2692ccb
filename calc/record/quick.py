"""What an entry at the bench begins with: the last texts, and the steps by which they are changed."""

from calc.quantities import INCH, parse, show
from calc.record import derive, sheets
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.values import value_of
from calc.tables.string_places import PLACES

STEPS = (("force", "imperial", "0.1 lb"), ("force", "metric", "0.5 N"), ("length", "imperial", "1/32 in"),
         ("length", "metric", "1 mm"))
"""What one tap changes, by kind and unit system."""

FINE_STEPS = (("length", "imperial", "1/64 in"), ("length", "metric", "0.5 mm"))
"""What one tap changes of an offset of the string, which is read that well."""

OFFSETS = tuple(["reading." + name for _, name, _ in PLACES])
LASTING = ("reading.weight", "reading.at_draw", "reading.upper", "reading.lower", "strokes.paper") + OFFSETS
HALF = 0.5
HELD = (("Draw weight", "reading.weight", "agreed.weight"),
        ("At a draw of", "reading.at_draw", "agreed.at_draw"),
        ("Upper distance", "reading.upper", ""), ("Lower distance", "reading.lower", ""),
        ("Brace height", "reading.brace", "")) + tuple(
            [("String off the middle: " + label[:1].lower() + label[1:], "reading." + name, "")
             for _, name, label in PLACES])
EMPTY = "-"


def last_texts(state: State) -> list[list[str]]:
    """Return the newest text of each fact that an entry at the bench asks for.

    Args:
        state: of a record.

    Returns:
        (fact, text) pairs; the text is empty where nothing is known.
    """
    return [[fact, state.text(fact)] for fact in LASTING]


def stepped(fact: str, text: str, count: int, system: str) -> str:
    """Return a text changed by some steps, on the grid of those steps.

    Args:
        fact: such as `reading.weight`.
        text: as typed, or as the last step left it.
        count [1]: steps; less than nothing makes it smaller.
        system: of units, in which the text is written and in which a bare number is read.

    Returns:
        the text with its unit.

    Raises:
        ValueError: the text is empty or cannot be read, or the fact has no steps.
    """
    asked = sheets.input_of(fact)
    if asked is None:
        raise ValueError("this release knows no “" + fact + "”")
    if not text.strip():
        raise ValueError("nothing has been read yet: type the first figure")
    for kind, known, step in FINE_STEPS if fact in OFFSETS else STEPS:
        if (kind, known) == (asked.kind, system):
            size = parse(step, kind)
            number = parse(text, kind, system) / size + HALF
            whole = int(number) if number >= 0 else int(number) - 1
            stepped_to = (whole + count) * size
            exact = fact in OFFSETS and system == "imperial"
            changed = exact_text(stepped_to, kind, "in", INCH) if exact else show(stepped_to, kind, system)
            value_of(fact, changed)
            return changed
    raise ValueError("“" + asked.label + "” has no steps")


def columns(state: State, system: str) -> list[list[str]]:
    """Return how a bow came, what was agreed and how it is now.

    Args:
        state: of a record.
        system: of units, for what is worked out; what was typed stays as typed.

    Returns:
        rows of four texts: what, came, agreed, now. Rows of which nothing is known are left out.
    """
    rows = [[label, _first(state, fact), state.text(agreed) if agreed else "", state.text(fact)]
            for label, fact, agreed in HELD]
    rows.insert(2, _tiller_row(state, system))
    return [[cell or EMPTY for cell in row] for row in rows if any(row[1:])]


def _tiller_row(state: State, system: str) -> list[str]:
    both = [derive.tiller(each) for each in state.of("reading")]
    read = [each for each in both if each is not None]
    came, now = (show(read[0], "length", system), show(read[-1], "length", system)) if read else ("", "")
    return ["Tiller, upper minus lower", came, state.text("agreed.tiller"), now]


def _first(state: State, fact: str) -> str:
    found = state.first(fact)
    return found.text if found else ""
