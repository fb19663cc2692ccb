"""A calculator's inputs from a record: what is known, from when, what is stale, what is missing."""

from calc.quantities import INCH, parse, show_fraction, show_number
from calc.record import derive
from calc.record.bindings import BOUND
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import latest_number

DECIMALS = 4
MOST_DECIMALS = 12
SIXTY_FOURTHS = 64
WHOLE = 1e-9


class Filled:
    """What a record knows of one input.

    text: as a form takes it; empty where the record does not know. entry: that it comes from. stale: whether
    a deed has come since.
    """

    def __init__(self, input: str, fact: str, text: str, entry: Entry | None, stale: bool):
        self.input = input
        self.fact = fact
        self.text = text
        self.entry = entry
        self.stale = stale


def fill(state: State, calculator: str) -> list[Filled]:
    """Return what a record knows of each bound input of a calculator.

    Args:
        state: of a record.
        calculator: id.

    Returns:
        one a bound input, in the order of the bindings.
    """
    return [_filled(state, input, fact) for input, fact in BOUND.get(calculator, ())]


def _filled(state: State, input: str, fact: str) -> Filled:
    sheet, _, name = fact.partition(".")
    if sheet == "derived":
        text, entry, stale = DERIVED[name](state)
        return Filled(input, fact, text, entry, stale)
    found = state.latest(fact)
    if found is None:
        return Filled(input, fact, "", None, False)
    return Filled(input, fact, found.text, found.entry, derive.is_stale(state, fact))


def _tiller(state: State) -> "tuple[str, Entry | None, bool]":
    found = derive.newest_tiller(state)
    if found is None:
        return "", None, False
    stale = derive.is_stale(state, "reading.upper")
    return exact_text(found[0], "length", "in", INCH), found[1], stale


def _weight_at_draw(state: State) -> "tuple[str, Entry | None, bool]":
    """Return the weight at the archer's own draw: read there, or nothing; a slope would be a guess."""
    draw = latest_number(state, "archer.draw")
    for weight in reversed(derive.weights(state)):
        if draw is not None and abs(weight.draw - draw) <= derive.SAME_DRAW:
            return weight.entry.fact("weight"), weight.entry, derive.is_stale(state, "reading.weight")
    return "", None, False


def _weight_as_it_came(state: State) -> "tuple[str, Entry | None, bool]":
    came = derive.weight_as_it_came(state)
    return (came.entry.fact("weight"), came.entry, False) if came else ("", None, False)


def _stroke_log(state: State) -> "tuple[str, Entry | None, bool]":
    """Return the log as Strokes takes it: strokes on both limbs, weight and tiller, a row a reading."""
    rows = []
    log = derive.stroke_log(state)
    for batch, entry in log:
        tiller = derive.tiller(entry) or 0.0
        counts = [str(batch.upper), str(batch.lower)] if batch else ["0", "0"]
        rows.append(":".join(counts + [entry.fact("weight"), exact_text(tiller, "length", "in", INCH)]))
    return ";".join(rows), log[-1][1] if log else None, derive.is_stale(state, "reading.weight")


DERIVED = {
    "tiller": _tiller,
    "weight_at_archers_draw": _weight_at_draw,
    "weight_as_it_came": _weight_as_it_came,
    "stroke_log": _stroke_log,
}


def exact_text(value: float, kind: str, unit: str, size: float) -> str:
    """Return a number that was worked out as text that a form reads back as the same number.

    Args:
        value [SI]: any.
        kind: of the quantity.
        unit: in which it is written.
        size [SI]: of that unit.

    Returns:
        a fraction where it is one of 64ths, else as many decimals as it takes, at least four.
    """
    number = value / size
    parts = number * SIXTY_FOURTHS
    whole = int(parts + 0.5 if parts >= 0 else parts - 0.5)
    if size == INCH and abs(parts - whole) < WHOLE:
        return show_fraction(number, SIXTY_FOURTHS) + " " + unit
    text = ""
    for decimals in range(DECIMALS, MOST_DECIMALS + 1):
        text = show_number(number, decimals) + " " + unit
        if abs(parse(text, kind) - value) <= 1e-12 * abs(value):
            return text
    return text
