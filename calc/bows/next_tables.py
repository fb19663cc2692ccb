"""The next batch and what the log taught, as tables and a chart."""

import math

from calc.bows.learning import FIRST_PAPER, Told
from calc.bows.next_step import Left
from calc.numerics.belief import Belief
from calc.numerics.normal import NORMAL_95
from calc.outcome import TEXT, Axis, Chart, Column, Line, Table

HUNDRED = 100.0


def by_face(strokes: float, belly_share: float) -> tuple[float, float]:
    """Return the strokes of a limb on its belly and on its back."""
    belly = float(int(strokes * belly_share + 0.5))
    return belly, strokes - belly


def batch_table(batch: tuple[float, float], belly_share: float, each: float, left: Left) -> Table:
    """Return the next batch by limb and face, what it takes [m a stroke], and what is left in all."""
    lines = []
    for place, limb in ((0, "upper"), (1, "lower")):
        belly, back = by_face(batch[place], belly_share)
        error = NORMAL_95 * left.errors[place]
        lines.append((limb, belly, back, batch[place] * each, left.strokes[place],
                      max(0.0, left.strokes[place] - error), left.strokes[place] + error))
    return Table("batch", "The next batch by limb and face, and what is left in all with its 95 % range", (
        Column("limb", "Limb", TEXT), Column("belly", "On the belly", "strokes"),
        Column("back", "On the back", "strokes"), Column("takes", "Takes about", "thickness"),
        Column("left", "Left in all", "strokes"), Column("fewest", "Fewest", "strokes"),
        Column("most", "Most", "strokes"),
    ), tuple(lines))


def papers_table(belief: Belief, names: list[str], read: list[int]) -> Table:
    """Return what a hundred strokes take with each paper, with the range of 95 %; read: batches of each."""
    lines = []
    for paper, name in enumerate(names):
        place = FIRST_PAPER + paper
        middle, error = belief.mean[place], NORMAL_95 * belief.error(place)
        lines.append((name, read[paper], HUNDRED * math.exp(middle), HUNDRED * math.exp(middle - error),
                      HUNDRED * math.exp(middle + error)))
    return Table("papers", "What 100 strokes with each paper take off a limb's thickness", (
        Column("paper", "Paper", TEXT), Column("batches", "Batches", "count"),
        Column("likely", "Most likely", "thickness"), Column("least", "At least", "thickness"),
        Column("most", "At most", "thickness"),
    ), tuple(lines))


def told_tables(told: list[Told]) -> tuple[Table, ...]:
    """Return what was foretold of weight and of tiller beside what was read; none before the first batch."""
    found = []
    for name, kind in (("weight", "force"), ("tiller", "length")):
        lines = []
        for number, each in enumerate(told):
            spoken = each.weight if name == "weight" else each.tiller
            lines.append((str(number + 2), each.batch.upper, each.batch.lower, spoken.foretold, spoken.low,
                          spoken.high, spoken.read, "measure again" if spoken.beyond else "as foretold"))
        found.append(Table("foretold-" + name, "The " + name + " foretold and read, row by row", (
            Column("row", "Row", TEXT), Column("upper", "Strokes, upper", "strokes"),
            Column("lower", "Strokes, lower", "strokes"), Column("foretold", "Foretold", kind),
            Column("least", "At least", kind), Column("most", "At most", kind), Column("read", "Read", kind),
            Column("said", "So", TEXT),
        ), tuple(lines)))
    return tuple(found) if told else ()


def weight_chart(first: float, told: list[Told], after: Told | None, aim: float) -> Chart:
    """Return the weight by strokes: foretold with its range, read, and the aim; after: the next batch."""
    strokes, done = [], 0.0
    for each in told + ([] if after is None else [after]):
        done += each.batch.upper + each.batch.lower
        strokes.append(done)
    spoken = [each.weight for each in told] + ([] if after is None else [after.weight])
    read = [0.0] + strokes[:len(told)]
    return Chart("weight", "Weight against strokes, foretold and read", Axis("Strokes", "strokes"),
                 Axis("Weight", "force"), (
        Line("Read", "points", read, [first] + [each.weight.read for each in told]),
        Line("Foretold", "line", strokes, [each.foretold for each in spoken]),
        Line("Foretold, at least", "line", strokes, [each.low for each in spoken]),
        Line("Foretold, at most", "line", strokes, [each.high for each in spoken]),
        Line("Aim of the faces", "line", [0.0, done], [aim, aim]),
    ))
