"""The string's line beside the log of strokes: what each batch did to it."""

from calc.bows.stroke_log import Log
from calc.declaring import Input, count, quantity, rows
from calc.outcome import (
    OK,
    TEXT,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Refused,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH, ROUNDING
from calc.tables.practice import find
from calc.tables.string_places import PLACES

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Rows = tuple[tuple[int, float | None, float | None, float | None, float | None], ...]
    Offsets = list[tuple[float | None, ...] | None]

MOST_ROWS = 40
"""Of the log, and so of its offsets."""

REPEATED = INCH / 64
"""Within which two rounds of offsets repeat (common practice): a smaller change is none."""

MOST_AT_ONCE = INCH / 32
"""By which one batch may move the string (common practice)."""

MOST_OFF = find("string-offset").high
"""What is accepted at a fadeout."""

FADEOUTS = ("upper_riser", "lower_riser")


def offsets_input() -> Input:
    """Declare the offsets of the string, each row with the row of the log after whose strokes it was read."""
    def offset(id: str, label: str, most: str) -> Input:
        return quantity(id, label, "length", default="0 in", low="-" + most, high=most,
                        usual=("-3/8 in", "3/8 in"), optional=True)

    return rows(
        "offsets", "The string off the middle of each limb",
        (count("row", "Row of the log", default=1, low=1, high=MOST_ROWS),)
        + tuple([offset(id, label, "1 1/2 in" if id in FADEOUTS else "1 in") for id, _, label in PLACES]),
        default="", fewest=0, most=MOST_ROWS,
        help="Left is negative. Leave empty what was not read.",
        measure="As Tracking asks for them: from the belly, upper tip up, by the archer's left and right.",
    )


def line_of(given: "Rows", log: Log) -> "Offsets":
    """Return the offsets row by row of the log, None where a row has none.

    Raises:
        Refused: a row names none of the log, or one that another names too.
    """
    found: Offsets = [None] * len(log.rows)
    for index, row in enumerate(given):
        number = row[0]
        if number > len(log.rows):
            raise Refused("offsets", "The log has " + str(len(log.rows)) + " rows, so no offsets can belong "
                          "to its row " + str(number) + ": give the number of the row after whose strokes "
                          "they were read.", index, "row")
        if found[number - 1] is not None:
            raise Refused("offsets", "Row " + str(number) + " of the log has its offsets twice: take one of "
                          "them out.", index, "row")
        found[number - 1] = row[1:]
    return found


def _read(line: "Offsets") -> list[int]:
    """Return the rows of the log that have at least one offset."""
    return [place for place, each in enumerate(line) if each is not None
            and any(value is not None for value in each)]


def line_charts(line: "Offsets", log: Log) -> tuple[Chart, ...]:
    """Return tiller and offsets over all strokes, in one chart."""
    lines = []
    for which, (_, _, label) in enumerate(PLACES):
        at = [place for place in _read(line) if _at(line, place, which) is not None]
        if at:
            lines.append(Line(label, "line", [log.together[place] for place in at],
                              [float(_at(line, place, which) or 0.0) for place in at]))
    if not lines:
        return ()
    tiller = Line("Tiller", "points", log.together, [row[3] for row in log.rows])
    return (Chart("line", "Tiller and the string's line over all strokes; right of the middle is positive",
                  Axis("Strokes on both limbs", "strokes"), Axis("Tiller and offsets", "thickness"),
                  tuple(lines) + (tiller,)),)


def _at(line: "Offsets", place: int, which: int) -> float | None:
    offsets = line[place]
    return None if offsets is None else offsets[which]


def line_tables(line: "Offsets", log: Log) -> tuple[Table, ...]:
    """Return what each batch between two readings of the line did to weight, tiller and line."""
    read = _read(line)
    lines = []
    for before, after in zip(read, read[1:]):
        moved = [_moved(line, before, after, which) for which in range(len(PLACES))]
        done = log.rows[before + 1:after + 1]
        lines.append((
            str(before + 1) + " to " + str(after + 1), float(sum([row[0] for row in done])),
            float(sum([row[1] for row in done])), log.rows[after][2] - log.rows[before][2],
            log.rows[after][3] - log.rows[before][3]) + tuple(moved))
    if not lines:
        return ()
    return (Table("line", "What the strokes between two readings did; the string to the right is positive", (
        Column("rows", "Rows", TEXT), Column("upper", "On the upper", "strokes"),
        Column("lower", "On the lower", "strokes"), Column("weight", "Weight", "force"),
        Column("tiller", "Tiller", "thickness"),
    ) + tuple([Column(id, label, "thickness") for id, _, label in PLACES]), tuple(lines)),)


def _moved(line: "Offsets", before: int, after: int, which: int) -> float | None:
    first, then = _at(line, before, which), _at(line, after, which)
    return None if first is None or then is None else then - first


def line_checks(line: "Offsets") -> tuple[Check, ...]:
    """Return whether the string lies where practice accepts it, and what the last strokes did to it."""
    found = []
    known = False
    for which, (id, _, label) in enumerate(PLACES):
        values = [value for place in _read(line) for value in [_at(line, place, which)] if value is not None]
        if not values:
            continue
        where = _where(label)
        if id in FADEOUTS:
            known = True
            found += _limit(id, where, values[-1])
        if len(values) > 1:
            found += _last_move(id, where, values[-2], values[-1])
    if known and not found:
        found.append(check("line", OK, sentence(
            "At the fadeouts the string lies within {} of the middle, and the last strokes did not lead it "
            "away.",
            amount("length", MOST_OFF))))
    return tuple(found)


def _limit(id: str, where: str, offset: float) -> list[Check]:
    if abs(offset) <= MOST_OFF * (1 + ROUNDING):
        return []
    return [check(id + "-off", WATCH, sentence(
        where + " the string lies {} to the " + _side(offset) + " of the middle; practice accepts {}. "
        "Tracking says what brings it back.",
        amount("thickness", abs(offset)), amount("length", MOST_OFF)))]


def _last_move(id: str, where: str, before: float, now: float) -> list[Check]:
    farther = abs(now) - abs(before)
    moved = abs(now - before)
    if farther > REPEATED * (1 + ROUNDING):
        return [check(id + "-astray", WATCH, sentence(
            where + " the last strokes led the string {} farther from the middle, to {} on the " + _side(now)
            + ". Left and right, or the limbs, may be mixed up: measure again before the next stroke.",
            amount("thickness", farther), amount("thickness", abs(now))))]
    if moved > MOST_AT_ONCE * (1 + ROUNDING):
        return [check(id + "-leap", WATCH, sentence(
            where + " the string moved {} since the reading before; one batch should move it by no more "
            "than {} (common practice). Do fewer strokes at a time on that side.",
            amount("thickness", moved), amount("length", MOST_AT_ONCE)))]
    return []


def _where(label: str) -> str:
    limb, _, place = label.partition(", ")
    return "On the " + limb.lower() + " limb, " + place + ","


def _side(offset: float) -> str:
    return "left" if offset < 0 else "right"
