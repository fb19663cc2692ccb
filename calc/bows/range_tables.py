"""How far a plan may be out, in words, a table, a drawing and a chart."""

from calc.bows.ranges import Cause, Ranges
from calc.drawings.causes import causes_drawing
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    STOP,
    TEXT,
    Check,
    Column,
    Drawing,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH

SHAVING = INCH / 1000
NO_SHARE = 1e-12
"""Shares below it come from rounding, which differs from engine to engine [1]."""


def _size(cause: Cause, ranges: Ranges) -> float:
    """Return the larger of a cause's shares of the range of weight and of that of tiller [1]."""
    shares = [0.0]
    for part, whole in ((cause.weight, ranges.weight), (cause.tiller, ranges.tiller)):
        if whole > 0:
            shares.append((part / whole) ** 2)
    largest = max(shares)
    return largest if largest > NO_SHARE else 0.0


def _by_size(ranges: Ranges) -> list[Cause]:
    sized = [(-_size(each, ranges), place) for place, each in enumerate(ranges.causes)]
    return [ranges.causes[place] for _, place in sorted(sized)]  # the small engine's sort mixes what is alike


def causes_tables(ranges: Ranges | None) -> tuple[Table, ...]:
    """Return what makes the range, the most first; nothing where the range is not known."""
    if ranges is None:
        return ()
    lines = []
    for each in _by_size(ranges):
        lines.append((each.name, each.error, amount("force", abs(each.weight), 2), abs(each.tiller),
                      _size(each, ranges)))
    return (Table("causes", "What makes the range: measure the first of these again first", (
        Column("cause", "Reading", TEXT), Column("error", "One standard error", TEXT),
        Column("weight", "Of it in weight", "force"), Column("tiller", "Of it in tiller", "thickness"),
        Column("share", "Share of a range", "ratio"),
    ), tuple(lines)),)


def causes_drawings(ranges: Ranges | None, to_what: str = "the weight") -> tuple[Drawing, ...]:
    """Return the drawing of what makes the range of weight; nothing where the range is not known."""
    if ranges is None:
        return ()
    return (causes_drawing([(each.name, amount("force", abs(each.weight), 2), abs(each.weight))
                            for each in _by_size(ranges)], to_what),)


def least_left(left: tuple[float, float], errors: tuple[float, float]) -> tuple[float, float]:
    """Return the lower ends of the ranges of glass left on back and belly [m]."""
    return left[0] - NORMAL_95 * errors[0], left[1] - NORMAL_95 * errors[1]


def by_range(
    found: Check, least: tuple[float, float], left: tuple[float, float], ranges: Ranges | None
) -> Check:
    """Return a check of the glass left, or a stop where it may be less than must stay by the lower end of its
    range.
    """
    if found.level == STOP or ranges is None:
        return found
    low = least_left(left, ranges.glass)
    if low[0] >= least[0] and low[1] >= least[1]:
        return found
    return check("glass", STOP, sentence(
        "The glass may come out too thin: {} is left at the thinnest on the back and {} on the belly, by "
        "your reading errors perhaps only {} and {}, and no less than {} and {} may stay. Read the glass "
        "again at several places, or take less.",
        amount("thickness", left[0]), amount("thickness", left[1]), amount("thickness", low[0]),
        amount("thickness", low[1]), amount("thickness", least[0]), amount("thickness", least[1])))


def what_counts(ranges: Ranges | None) -> tuple[Sentence | str, ...]:
    """Return which readings decide the plan, in figures of this bow."""
    if ranges is None:
        return ("How far this may be out could not be worked out: a bow much like it cannot be computed.",)
    weight, tiller = [SHAVING * max(abs(each[0]), abs(each[1])) for each in ranges.taken]
    sections = ranges.causes[-1]
    return (
        sentence("What is really taken off counts most: {} more off one limb is {} of weight and {} of "
                 "tiller. Measure what you take off, to {}. A wrong thickness of a section hardly counts, "
                 "since the model is set to your weight and tiller: {} in each moves the weight by {}.",
                 amount("thickness", SHAVING, 3), amount("force", weight, 2), amount("thickness", tiller),
                 amount("thickness", SHAVING / 2, 4), sections.error, amount("force", sections.weight, 2)),
        "The ranges hold in 95 of 100 such plans, carried out in one go, where the errors are as said under "
        "“How well you read” and do not hang together. They do not hold what the model leaves out. "
        "Measuring between the stages makes them smaller.",
    )
