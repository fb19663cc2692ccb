"""Glass, sections, edges and heights of the limbs, and what they lost, from what was read of them."""

from calc.quantities import INCH
from calc.record import derive
from calc.record.derived_fact import Derived, Told
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.values import latest_number, rows_of

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    Rows = tuple[tuple[float, ...], ...]

SAME_PLACE = INCH / 32
NEAR_FADEOUT = 3 * INCH
"""Sections as near to the fadeout as this show the width there."""

SECTIONS = "Read the sections of both limbs on the sheet “A reading”, with a micrometer."
GLASS = "Read the glass at the limb's edge with a lens"


def _glass_came(face: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        found = state.first("reading.glass_" + face)
        return Told() if found is None else Told(found.text, found.entry)
    return work


def _glass_new(state: State) -> Told:
    """Return the glass of the bow when it was new; of two faces the thicker, which leaves more standing."""
    best = Told()
    most = 0.0
    for fact in ("bow.glass_back_new", "bow.glass_belly_new"):
        found, number = state.latest(fact), latest_number(state, fact)
        if found is not None and number is not None and number > most:
            best, most = Told(found.text, found.entry), number
    return best


def _width_fadeout(state: State) -> Told:
    typed = state.latest("reading.width_fadeout")
    if typed is not None:
        return Told(typed.text, typed.entry, derive.is_stale(state, "reading.width_fadeout"))
    widths, entry = [], None
    for limb in ("upper", "lower"):
        found = state.latest("reading.stations_" + limb)
        rows = rows_of(found.entry, "stations_" + limb) if found else ()
        if found is not None and rows and rows[0][0] <= NEAR_FADEOUT:
            widths.append(rows[0][1])
            entry = found.entry
    if entry is None:
        return Told()
    return Told(exact_text(sum(widths) / len(widths), "length", "in", INCH), entry, False,
                "from the sections next to the fadeout")


def _limb_thickness(state: State) -> Told:
    """Return the mean thickness of both limbs along the stretch over which they were read."""
    means, entry, stale = [], None, False
    for limb in ("upper", "lower"):
        fact = "reading.stations_" + limb
        found = state.latest(fact)
        mean = _mean_thickness(rows_of(found.entry, "stations_" + limb)) if found else None
        if found is None or mean is None:
            return Told()
        means.append(mean)
        entry, stale = found.entry, stale or derive.is_stale(state, fact)
    return Told(_thousandths(sum(means) / len(means)), entry, stale, "mean of the sections of both limbs")


def _mean_thickness(rows: "Rows") -> float | None:
    stretch = rows[-1][0] - rows[0][0] if rows else 0.0
    if stretch <= 0 or any(after[0] <= before[0] for before, after in zip(rows, rows[1:])):
        return None
    return sum([(after[0] - before[0]) * (before[2] + after[2]) / 2
                for before, after in zip(rows, rows[1:])]) / stretch


def _thousandths(value: float) -> str:
    step = INCH / 10000
    return exact_text(step * int(value / step + 0.5), "thickness", "in", INCH)


def _edge_now(state: State) -> Told:
    found = state.latest("edges.radius") or state.latest("bow.edge_radius")
    return Told() if found is None else Told(found.text, found.entry)


def _height_riser(limb: str) -> "Callable[[State], Told]":
    """Return the work: the height typed or the tiller distance at the fadeout, whichever is the newer."""
    def work(state: State) -> Told:
        typed, read = state.latest("reading." + limb + "_height_riser"), state.latest("reading." + limb)
        if read is not None and _place_of(state, read.entry) == "fadeout" and (
                typed is None or _is_later(read.entry, typed.entry)):
            return Told(read.text, read.entry, derive.is_stale(state, "reading." + limb),
                        "the tiller distance, read at the fadeout")
        if typed is None:
            return Told()
        return Told(typed.text, typed.entry, derive.is_stale(state, "reading." + limb + "_height_riser"))
    return work


def _place_of(state: State, reading: Entry) -> str:
    """Return where the tiller distances of a reading were taken: as before, where it does not say."""
    said = [each.fact("measured") for each in state.of("reading")
            if each.fact("measured") and not _is_later(each, reading)]
    return said[-1] if said else ""


def _is_later(one: Entry, other: Entry) -> bool:
    return (one.moment, one.id) > (other.moment, other.id)


def _thickness_lost(limb: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        fact = "reading.stations_" + limb
        first, newest = state.first(fact), state.latest(fact)
        if first is None or newest is None:
            return Told()
        return lost_between(state, limb, first.entry, newest.entry)
    return work


def lost_between(state: State, limb: str, first: Entry, newest: Entry) -> Told:
    """Return the mean thickness that a limb lost between two readings of its sections."""
    lost = []
    for before in rows_of(first, "stations_" + limb):
        for after in rows_of(newest, "stations_" + limb):
            if abs(before[0] - after[0]) <= SAME_PLACE:
                lost.append(before[2] - after[2])
    if not lost or sum(lost) < 0 or first.id == newest.id:
        return Told()
    return Told(_thousandths(sum(lost) / len(lost)), newest,
                derive.is_stale(state, "reading.stations_" + limb),
                "mean of " + str(len(lost)) + " places read twice")


LIMBS: dict[str, Derived] = {
    "upper_lost": Derived("thickness", _thickness_lost("upper"), SECTIONS + " Read the same places again."),
    "lower_lost": Derived("thickness", _thickness_lost("lower"), SECTIONS + " Read the same places again."),
    "glass_back_came": Derived("thickness", _glass_came("back"), GLASS + " before anything comes off."),
    "glass_belly_came": Derived("thickness", _glass_came("belly"), GLASS + " before anything comes off."),
    "glass_new": Derived("thickness", _glass_new, "Only where it is known: sheet “The bow”."),
    "width_fadeout": Derived("length", _width_fadeout, SECTIONS),
    "limb_thickness": Derived("thickness", _limb_thickness, SECTIONS),
    "edge_now": Derived("length", _edge_now, "Try radius gauges on the edges: sheet “The bow”; 0 while they "
                        "are sharp."),
    "upper_height_riser": Derived("length", _height_riser("upper"), "Read the upper tiller distance at the "
                                  "fadeout, and say so."),
    "lower_height_riser": Derived("length", _height_riser("lower"), "Read the lower tiller distance at the "
                                  "fadeout, and say so."),
}
