"""What follows from the entries of a record: figures that nobody typed."""

from calc.quantities import INCH
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import first_number, latest_number, number_in

SAME_DRAW = INCH / 16
"""Weights read at draws as near as this are weights at one draw."""

COUNTED = ("upper_belly", "upper_back", "lower_belly", "lower_back")

MADE_STALE = (
    ("strokes", ("reading.weight", "reading.upper", "reading.lower", "reading.curve",
                 "reading.stations_upper", "reading.stations_lower", "reading.glass_back",
                 "reading.glass_belly", "reading.upper_offset_tip", "reading.lower_offset_tip",
                 "reading.upper_offset_riser", "reading.lower_offset_riser", "first_draw.to_draw")),
    ("string", ("reading.brace", "reading.upper", "reading.lower", "reading.weight")),
)
"""Which deed makes which facts stale, read before it."""


class Weight:
    """A draw weight with the draw at which it was read, and the reading that holds both."""

    def __init__(self, force: float, draw: float, entry: Entry):
        self.force = force
        self.draw = draw
        self.entry = entry


class Batch:
    """Strokes that came off between two readings, on one paper."""

    def __init__(self, upper: int, lower: int, paper: str):
        self.upper = upper
        self.lower = lower
        self.paper = paper


def weights(state: State) -> list[Weight]:
    """Return the draw weights of a record, oldest first; a weight without its draw is none.

    Args:
        state: of a record.

    Returns:
        the readings that hold both.
    """
    found = []
    for entry in state.of("reading"):
        force, draw = number_in(entry, "weight"), number_in(entry, "at_draw")
        if force is not None and draw is not None:
            found.append(Weight(force, draw, entry))
    return found


def weight_as_it_came(state: State) -> Weight | None:
    """Return the first draw weight that was read at the draw of the newest.

    Args:
        state: of a record.

    Returns:
        the weight before anything was taken off; None where none was read.
    """
    read = weights(state)
    if not read:
        return None
    alike = [each for each in read if abs(each.draw - read[-1].draw) <= SAME_DRAW]
    return alike[0]


def tiller(entry: Entry) -> float | None:
    """Return upper less lower distance of one reading; distances of two readings are no tiller.

    Args:
        entry: a reading.

    Returns:
        [m] positive where the upper distance is larger; None where the reading lacks one of them.
    """
    upper, lower = number_in(entry, "upper"), number_in(entry, "lower")
    return None if upper is None or lower is None else upper - lower


def newest_tiller(state: State) -> tuple[float, Entry] | None:
    """Return the newest tiller and its reading.

    Args:
        state: of a record.

    Returns:
        [m] and the reading; None where no reading holds both distances.
    """
    for entry in reversed(state.of("reading")):
        found = tiller(entry)
        if found is not None:
            return found, entry
    return None


def strokes_in(entries: list[Entry]) -> tuple[int, int]:
    """Return how many strokes batches hold.

    Args:
        entries: of the sheet `strokes`.

    Returns:
        [1] on the upper and on the lower limb, both faces together.
    """
    counts = [[int(number_in(entry, name) or 0) for name in COUNTED] for entry in entries]
    return (sum([each[0] + each[1] for each in counts]), sum([each[2] + each[3] for each in counts]))


def strokes_since(state: State, fact: str) -> int:
    """Return how many strokes came off since a fact was last read.

    Args:
        state: of a record.
        fact: such as `reading.glass_belly`.

    Returns:
        [1] on both limbs together; 0 where the fact was never read.
    """
    found = state.latest(fact)
    if found is None:
        return 0
    upper, lower = strokes_in(state.since("strokes", found.entry))
    return upper + lower


def is_stale(state: State, fact: str) -> bool:
    """Return whether a deed came after the newest reading of a fact that makes it untrue.

    Args:
        state: of a record.
        fact: such as `reading.weight`.

    Returns:
        true where it has to be read again; false where it was never read.
    """
    found = state.latest(fact)
    if found is None:
        return False
    return any(fact in facts and state.since(deed, found.entry) for deed, facts in MADE_STALE)


def stroke_log(state: State) -> list[tuple[Batch | None, Entry]]:
    """Return the readings that carry weight and tiller with what came off before each.

    Strokes on two papers between two readings cannot be told apart; the log then begins anew at the later
    reading.

    Args:
        state: of a record.

    Returns:
        (batch, reading), oldest first; no batch with the first one.
    """
    log: list[tuple[Batch | None, Entry]] = []
    before: Entry | None = None
    for weight in weights(state):
        entry = weight.entry
        if tiller(entry) is None:
            continue
        batch = _between(state, before, entry) if before else None
        if before and batch is None:
            log = []
        log.append((batch, entry))
        before = entry
    return log


def _between(state: State, before: Entry, after: Entry) -> Batch | None:
    """Return the strokes between two readings; None where they were made on more than one paper."""
    mark = (after.moment, after.id)
    batches = [each for each in state.since("strokes", before) if (each.moment, each.id) < mark]
    papers = sorted({each.fact("paper") for each in batches})
    if len(papers) > 1:
        return None
    upper, lower = strokes_in(batches)
    return Batch(upper, lower, papers[0] if papers else "")


def least_glass_allowed(state: State, face: str, share: float) -> float | None:
    """Return the least glass that may stay on a face, from the glass as it came, whatever is read now.

    Args:
        state: of a record.
        face: `back` or `belly`.
        share [1]: that must stay.

    Returns:
        [m] thickness; None where the glass was never read.
    """
    new = latest_number(state, "bow.glass_" + face + "_new")
    came = first_number(state, "reading.glass_" + face)
    known = [each for each in (new, came) if each is not None]
    return share * max(known) if known else None
