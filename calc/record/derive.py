"""What follows from the entries of a record: figures that nobody typed."""

from calc.dates import DAY, parse_date
from calc.quantities import INCH, ROUNDING
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import first_number, is_on, latest_number, number_in
from calc.tables.string_places import PLACES

SAME_DRAW = INCH / 16 + ROUNDING
"""Weights read at draws as near as this are weights at one draw."""

COUNTED = ("upper_belly", "upper_back", "lower_belly", "lower_back")

TUNED = ("reading.weight", "reading.upper", "reading.lower", "reading.curve", "reading.upper_offset_tip",
         "reading.lower_offset_tip", "reading.upper_offset_riser", "reading.lower_offset_riser",
         "reading.upper_height_tip", "reading.lower_height_tip", "reading.upper_height_riser",
         "reading.lower_height_riser", "reading.shot_speed", "reading.string_angle", "first_draw.to_draw")
"""What changes with any wood or glass that a limb loses."""

SECTIONS = ("reading.stations_upper", "reading.stations_lower", "reading.glass_back", "reading.glass_belly")
WITH_FINISH = ("reading.stations_upper", "reading.stations_lower")
"""What a coat makes untrue only where it was read with the finish on."""

LIMB_LOOKS = ("look.seen_faces", "look.seen_edges", "look.seen_tapped", "look.seen_line")

MADE_STALE = (
    ("strokes", TUNED + SECTIONS),
    ("edges", TUNED + ("reading.width_fadeout", "reading.width_tip")),
    ("repair", LIMB_LOOKS + ("look.seen_tips", "look.seen_riser", "first_draw.to_draw")),
    ("fill", LIMB_LOOKS + ("look.seen_tips", "look.seen_riser", "first_draw.to_draw")),
    ("section", ("section.before", "bow.riser_girth", "look.seen_riser", "first_draw.to_draw")),
    ("hole", ("look.seen_riser", "first_draw.to_draw")),
    ("coat", ("reading.curve",) + WITH_FINISH),
    ("string", ("reading.brace", "reading.upper", "reading.lower", "reading.weight", "reading.curve",
                "reading.upper_height_riser", "reading.lower_height_riser", "reading.shot_speed")),
)
"""Which deed makes which facts stale, read before it."""

ASKS_FOR_PROOF = ("strokes", "edges", "repair", "fill", "section", "hole")
"""Deeds after which a bow is drawn from a distance before anybody draws it by hand."""

A_YEAR = 365 * DAY
"""After which a bow that has lain is read anew, whatever was done to it (common practice)."""

AGED = ("reading", "look", "first_draw")
"""Sheets of what was seen or read at one time, and may have changed by itself since."""

PLACED = (("riser", ("look.seen_riser",)), ("tip", ("look.seen_tips",)))
"""Looks that a mending makes stale by its place; all other looks are of limbs."""


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
    """Return the first draw weight that was read at the draw of the weight now.

    Args:
        state: of a record.

    Returns:
        the weight before anything was taken off; None where none was read.
    """
    now = weight_now(state)
    return first_at(state, now.draw) if now is not None else None


def first_at(state: State, draw: float) -> Weight | None:
    """Return the first draw weight that was read at a draw.

    Args:
        state: of a record.
        draw [m]: as bows are marked.

    Returns:
        the weight before anything was taken off; None where none was read there.
    """
    return next((each for each in weights(state) if abs(each.draw - draw) <= SAME_DRAW), None)


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


def strokes_between(state: State, first: Entry, second: Entry) -> bool:
    """Return whether strokes were written down after one entry and not after another.

    Args:
        state: of a record.
        first: the earlier entry.
        second: the later one.

    Returns:
        true or false; false where the second is the earlier.
    """
    return len(state.since("strokes", first)) > len(state.since("strokes", second))


def paper_of(batch: Entry) -> str:
    """Return the paper of a batch, however it was written.

    Args:
        batch: of the sheet `strokes`.

    Returns:
        such as `P120`; empty where none is named.
    """
    return batch.fact("paper").strip().upper()


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
    """Return whether the newest reading of a fact is to be taken again: a deed came since, or a year.

    Args:
        state: of a record.
        fact: such as `reading.weight`.

    Returns:
        true where it has to be read again; false where it was never read.
    """
    found = state.latest(fact)
    return found is not None and is_stale_in(state, fact, found.entry)


def is_stale_in(state: State, fact: str, entry: Entry) -> bool:
    """Return whether a fact that an entry holds is to be read again: a deed came since, or a year.

    Args:
        state: of a record.
        fact: such as `reading.weight`.
        entry: in which it was read.

    Returns:
        true or false.
    """
    return _is_undone_in(state, fact, entry) or (
        entry.sheet in AGED and state.entries[-1].moment - entry.moment > A_YEAR)


def is_undone(state: State, fact: str) -> bool:
    """Return whether a deed came after the newest reading of a fact that makes it untrue.

    Args:
        state: of a record.
        fact: such as `reading.weight`.

    Returns:
        true or false; false where it was never read.
    """
    found = state.latest(fact)
    return found is not None and _is_undone_in(state, fact, found.entry)


def _is_undone_in(state: State, fact: str, entry: Entry) -> bool:
    return any(any(_touches(each, fact) for each in state.since(deed, entry))
               for deed in deeds_on(fact, entry))


def deeds_on(fact: str, entry: Entry) -> list[str]:
    """Return the sheets of the deeds that make a fact of an entry untrue.

    Args:
        fact: such as `reading.weight`.
        entry: that holds it.

    Returns:
        ids of sheets.
    """
    return [deed for deed, facts in MADE_STALE if fact in facts and (
        deed != "coat" or fact not in WITH_FINISH or is_on(entry, "with_finish"))]


def is_deed(entry: Entry) -> bool:
    """Return whether an entry tells of work done, not of work planned or of what was there before.

    Args:
        entry: of a sheet that can be a deed.

    Returns:
        true or false.
    """
    if entry.sheet == "section":
        return is_on(entry, "done")
    return entry.sheet != "hole" or entry.fact("standing") in ("new", "filled")


def _touches(entry: Entry, fact: str) -> bool:
    """Return whether a deed makes a fact stale, by where on the bow it was done."""
    if not is_deed(entry):
        return False
    if entry.sheet not in ("repair", "fill") or not fact.startswith("look."):
        return True
    places = (entry.fact("limb"), entry.fact("face"))
    if not places[0] and not places[1]:
        return True
    for place, looks in PLACED:
        if fact in looks:
            return place in places
    return "riser" not in places and "tip" not in places


def deeds(state: State, since: Entry | None = None) -> list[Entry]:
    """Return the deeds that ask for a draw from a distance.

    Args:
        state: of a record.
        since: entry after which they count; None: all.

    Returns:
        oldest first in each of their sheets.
    """
    return [each for sheet in ASKS_FOR_PROOF
            for each in (state.of(sheet) if since is None else state.since(sheet, since)) if is_deed(each)]


def weight_now(state: State) -> Weight | None:
    """Return the newest draw weight at the draw that was agreed; where none was, the newest of all.

    Args:
        state: of a record.

    Returns:
        the weight with its draw, both of one reading.
    """
    read = weights(state)
    agreed = latest_number(state, "agreed.at_draw")
    alike = [each for each in read if agreed is not None and abs(each.draw - agreed) <= SAME_DRAW]
    found = alike or read
    return found[-1] if found else None


def stroke_log(state: State) -> list[tuple[Batch | None, Entry]]:
    """Return the readings that carry tiller and the weight at one draw with what came off before each.

    Strokes on two papers between two readings cannot be told apart; the log then begins anew at the later
    reading.

    Args:
        state: of a record.

    Returns:
        (batch, reading), oldest first; no batch with the first one.
    """
    log: list[tuple[Batch | None, Entry]] = []
    before: Entry | None = None
    newest = weight_now(state)
    for weight in weights(state):
        entry = weight.entry
        if tiller(entry) is None or newest is None or abs(weight.draw - newest.draw) > SAME_DRAW:
            continue
        batch = between(state, before, entry) if before else None
        if before and batch is None:
            log = []
        log.append((batch, entry))
        before = entry
    return log


def between(state: State, before: Entry, after: Entry | None) -> Batch | None:
    """Return the strokes between two readings.

    Args:
        state: of a record.
        before: the earlier reading.
        after: the later one; None: what has been done to this day.

    Returns:
        all of them together; None where they were made on more than one paper.
    """
    batches = [each for each in state.since("strokes", before)
               if after is None or (each.moment, each.id) < (after.moment, after.id)]
    papers = sorted({paper_of(each) for each in batches})
    if len(papers) > 1:
        return None
    upper, lower = strokes_in(batches)
    return Batch(upper, lower, papers[0] if papers else "")


def line_of_log(state: State, log: list[Entry]) -> list[dict[str, Entry]]:
    """Return for each reading of a log where the string ran, from all readings between the same strokes.

    A reading of the string belongs to the last row before it, or else to the first one after it.

    Args:
        state: of a record.
        log: readings, oldest first.

    Returns:
        row by row the entry that holds each offset, by the offset's name.
    """
    found: list[dict[str, Entry]] = [{} for _ in log]
    made = [len(state.since("strokes", row)) for row in log]
    for entry in state.of("reading"):
        names = [name for _, name, _ in PLACES if number_in(entry, name) is not None]
        left = len(state.since("strokes", entry)) if names else 0
        alike = [place for place, count in enumerate(made) if names and count == left]
        if not alike:
            continue
        before = [place for place in alike if (log[place].moment, log[place].id) <= (entry.moment, entry.id)]
        for name in names:
            found[before[-1] if before else alike[0]][name] = entry
    return found


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


def due(state: State) -> int | None:
    """Return the day by which a bow is to be ready: the one that was agreed, else the one on its tag.

    Args:
        state: of a record.

    Returns:
        number of the day, as `calc.dates` counts; None where none is known.
    """
    text = due_text(state)
    try:
        return parse_date(text) if text else None
    except ValueError:
        return None


def due_text(state: State) -> str:
    """Return the day by which a bow is to be ready, as it was typed.

    Args:
        state: of a record.

    Returns:
        the text; empty where none is known.
    """
    return state.text("agreed.ready_by") or state.text("bow.due")
