"""A bow that was handed over and is read again: what differs by more than both readings can be out.

Readings after the newest hand-over are held against the last ones before it. Work done between two of them
makes a difference of its own, so they are not compared.
"""

from calc.numerics.normal import NORMAL_95
from calc.outcome import STOP, TEXT, WATCH, Check, Column, Table, amount, check, say, sentence
from calc.quantities import INCH, ROUNDING
from calc.record import derive, sheets
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.moments import show_local
from calc.record.values import is_on, latest_number, number_in, rows_of, value_of
from calc.tables import practice

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    Number = Callable[[Entry], float | None]

SAME_PLACE = INCH / 32
"""Sections read as near as this are read at one place."""

WEIGHT_MOVES = practice.find("return-weight").high
TILLER_MOVES = practice.find("return-tiller").high

LIMBS = ("upper", "lower")
OFFSETS = (("riser", "at the fadeout"), ("tip", "near the tip"))
RULE, SCALE, MICROMETER, GLASS = (
    "shop.tiller_error", "shop.weight_error", "shop.thickness_error", "shop.glass_error")

COLUMNS = (("what", "What"), ("before", "Handed over"), ("after", "Today"), ("change", "Change"),
           ("allowed", "Errors allow"), ("verdict", "Is it more?"))


class Figure:
    """A figure that may be compared.

    fact: by which work is known that changes it. error: the shop's error of one reading. number: reads it
    from an entry. most: change for which a bow is brought back; None where practice names none. place: length
    that fills the gap of its label.
    """

    def __init__(
        self, label: str, fact: str, kind: str, error: str, number: "Number", most: float | None = None,
        place: float | None = None,
    ):
        self.label = label
        self.fact = fact
        self.kind = kind
        self.error = error
        self.number = number
        self.most = most
        self.place = place

    def named(self, system: str) -> str:
        """Return its label in a unit system."""
        if self.place is None:
            return self.label
        return say(sentence(self.label, amount("length", self.place)), system)


class Difference:
    """A figure at the hand-over and today; allowed: how far both readings lie apart by their errors alone."""

    def __init__(self, figure: Figure, before: float, after: float, allowed: float):
        self.figure = figure
        self.before = before
        self.after = after
        self.allowed = allowed

    @property
    def is_real(self) -> bool:
        """Return whether it is more than the errors of both readings allow."""
        return abs(self.after - self.before) > self.allowed * (1 + ROUNDING)

    @property
    def is_too_much(self) -> bool:
        """Return whether it is real, and a bow is brought back for it."""
        most = self.figure.most
        return self.is_real and most is not None and abs(self.after - self.before) > most * (1 + ROUNDING)


class Returned:
    """What readings after a hand-over show; worked_on: what work since has changed."""

    def __init__(self, handed: Entry, read: Entry, differences: list[Difference], worked_on: list[Figure]):
        self.handed = handed
        self.read = read
        self.differences = differences
        self.worked_on = worked_on


def returned(state: State) -> Returned | None:
    """Return the readings of today against those of the hand-over.

    Args:
        state: of a record.

    Returns:
        what can be compared; None where the bow was not handed over or not read since.
    """
    handed = state.of("handover")
    read = state.since("reading", handed[-1]) if handed else []
    if not read:
        return None
    before = [each for each in state.of("reading") if _mark(each) < _mark(handed[-1])]
    differences: list[Difference] = []
    worked_on: list[Figure] = []
    for figure in _figures(state, read):
        then, now = _newest(before, figure.number), _newest(read, figure.number)
        if then is None or now is None:
            continue
        if _was_worked_on(state, figure.fact, then[1], now[1]):
            worked_on.append(figure)
        else:
            allowed = NORMAL_95 * 2.0**0.5 * error_of(state, figure.error)
            differences.append(Difference(figure, then[0], now[0], allowed))
    return Returned(handed[-1], read[-1], differences, worked_on)


def error_of(state: State, fact: str) -> float:
    """Return the standard error of a reading: the shop's own, else the usual one.

    Args:
        state: of a record.
        fact: such as `shop.weight_error`.

    Returns:
        [SI] the error.
    """
    own = latest_number(state, fact)
    asked = sheets.input_of(fact)
    usual = value_of(fact, asked.default) if asked is not None else None
    return own if own is not None else float(str(usual))


def _mark(entry: Entry) -> tuple[int, str]:
    return entry.moment, entry.id


def _newest(entries: list[Entry], number: "Number") -> tuple[float, Entry] | None:
    for entry in reversed(entries):
        found = number(entry)
        if found is not None:
            return found, entry
    return None


def _was_worked_on(state: State, fact: str, then: Entry, now: Entry) -> bool:
    return any(any(derive.is_deed(each) and _mark(each) < _mark(now) for each in state.since(deed, then))
               for deed in derive.deeds_on(fact, then))


# What is said of it --------------------------------------------------------------


def told(found: Returned) -> Check | None:
    """Return the check of a bow that differs by more than the errors allow; None where none of it does.

    Args:
        found: what can be compared.

    Returns:
        to be stopped where a bow is brought back for it, else to be watched.
    """
    real = [each for each in found.differences if each.is_real]
    if not real:
        return None
    parts, amounts = [], []
    for each in real:
        figure, change = each.figure, each.after - each.before
        parts.append(figure.label[:1].lower() + figure.label[1:] + " {} " + ("more" if change > 0 else "less")
                     + " (the errors allow {})")
        if figure.place is not None:
            amounts.append(amount("length", figure.place))
        amounts += [amount(figure.kind, abs(change)), amount(figure.kind, each.allowed)]
    stops = any(each.is_too_much for each in real)
    words = ("A bow is brought back for less: nobody draws it before it has been inspected as at intake."
             if stops else "Look it over as at intake, and find out why, before it is drawn.")
    return check("returned", STOP if stops else WATCH, sentence(
        "Read again since it was handed over: " + "; ".join(parts) + ". " + words, *amounts))


def table(found: Returned, system: str) -> Table:
    """Return what was read at the hand-over and today, side by side.

    Args:
        found: what can be compared.
        system: of units.

    Returns:
        a row a figure.
    """
    rows: list[tuple[object, ...]] = []
    for each in found.differences:
        numbers = (each.before, each.after, each.after - each.before, each.allowed)
        cells = tuple([amount(each.figure.kind, number) for number in numbers])
        rows.append((each.figure.named(system),) + cells + ("more" if each.is_real else "no more",))
    rows += [(one.named(system), None, None, None, None, "worked on since") for one in found.worked_on]
    caption = ("Handed over " + show_local(found.handed.at) + ", read again " + show_local(found.read.at)
               + ": is it more than the errors of both readings allow?")
    return Table("returned", caption, tuple([Column(id, label, TEXT) for id, label in COLUMNS]), tuple(rows))


# What is compared ----------------------------------------------------------------


def _figures(state: State, read: list[Entry]) -> list[Figure]:
    figures = _weights(state) + [
        Figure("Tiller, upper minus lower", "reading.upper", "length", RULE, _tiller_like(read),
               TILLER_MOVES),
        _of("Brace height", "brace", "length", RULE),
        _of("Glass on the back", "glass_back", "thickness", GLASS),
        _of("Glass on the belly", "glass_belly", "thickness", GLASS),
    ]
    for limb in LIMBS:
        figures += [_of("String off the middle, " + limb + " limb " + words, limb + "_offset_" + place,
                        "length", RULE) for place, words in OFFSETS]
        figures += _sections(limb, read)
    return figures


def _of(label: str, name: str, kind: str, error: str) -> Figure:
    return Figure(label, "reading." + name, kind, error, lambda entry: number_in(entry, name))


def _weights(state: State) -> list[Figure]:
    """Return the weight at the draw at which it was read last."""
    read = derive.weights(state)
    if not read:
        return []
    draw = read[-1].draw

    def number(entry: Entry) -> float | None:
        at_draw = number_in(entry, "at_draw")
        return number_in(entry, "weight") if at_draw is not None and (
            abs(at_draw - draw) <= derive.SAME_DRAW) else None

    return [Figure("Draw weight at {}", "reading.weight", "force", SCALE, number, WEIGHT_MOVES, draw)]


def _tiller_like(read: list[Entry]) -> "Number":
    """Return what reads a tiller taken where the newest was: at the fadeouts, or from the string's ends."""
    newest = _newest(read, derive.tiller)
    measured = _place_of(newest[1]) if newest else ""
    return lambda entry: derive.tiller(entry) if _place_of(entry) == measured else None


def _place_of(entry: Entry) -> str:
    return entry.fact("measured") + entry.fact("from_string_end")


def _sections(limb: str, read: list[Entry]) -> list[Figure]:
    """Return the thicknesses of a limb where its newest sections were read, with finish as there."""
    name = "stations_" + limb
    newest = _newest(read, lambda entry: 1.0 if rows_of(entry, name) else None)
    if newest is None:
        return []
    finished = is_on(newest[1], "with_finish")
    return [_section(limb, row[0], finished) for row in rows_of(newest[1], name)]


def _section(limb: str, place: float, finished: bool) -> Figure:
    name = "stations_" + limb

    def number(entry: Entry) -> float | None:
        near = [row[2] for row in rows_of(entry, name) if abs(row[0] - place) <= SAME_PLACE]
        return near[0] if near and is_on(entry, "with_finish") == finished else None

    return Figure("Thickness of the " + limb + " limb {} from the fadeout", "reading." + name, "thickness",
                  MICROMETER, number, place=place)
