"""Abrasive grades: which are near each other, and how to climb from coarse to fine."""

import math

from calc.quantities import ROUNDING
from calc.tables.grits import Grit


def step_ratio(coarser: float, finer: float) -> float:
    """Return how many times larger the grains of one grade are than those of the next.

    Args:
        coarser [m]: mean grain size, > 0.
        finer [m]: mean grain size of the grade that follows, > 0.

    Returns:
        [1] coarser over finer.

    Raises:
        ValueError: a size is not positive.

    Source: grit-sizes, mean particle sizes.
    """
    if coarser <= 0 or finer <= 0:
        raise ValueError("grain sizes must be positive, got " + str(coarser) + " and " + str(finer) + " m")
    return coarser / finer


def nearest(size: float, grits: tuple[Grit, ...]) -> Grit:
    """Return the grade whose grains are nearest in size, by ratio.

    Args:
        size [m]: mean grain size, > 0.
        grits: grades to choose from, at least one.

    Returns:
        the grade; the coarser one of two that are equally near.

    Raises:
        ValueError: size is not positive, or there is no grade to choose from.

    Source: grit-sizes, mean particle sizes.
    """
    if size <= 0:
        raise ValueError("a grain size must be positive, got " + str(size) + " m")
    if not grits:
        raise ValueError("there must be a grade to choose from")

    def distance(grit: Grit) -> tuple[float, float]:
        return abs(math.log(grit.size / size)), -grit.size

    return min(grits, key=distance)


def ladder(grits: tuple[Grit, ...], start: Grit, finish: Grit, limit: float) -> list[Grit]:
    """Return the grades to use, from start to finish, each step's ratio within the limit.

    Takes as few steps as the limit allows, and of those ladders the most even one: that with the least sum
    of squared logarithms of its ratios. Where no grade lies within the limit, the next one has to do.

    Args:
        grits: grades at hand, of one scale.
        start: the first grade used.
        finish: the last, as fine as start or finer.
        limit [1]: largest ratio of one grade's grains to the next one's, > 1.

    Returns:
        the grades, start first and finish last; the same grade stands once.

    Raises:
        ValueError: finish is coarser than start, or the limit is not above 1.

    Limits:
        The limit is a house rule; no standard gives one.

    Source: grit-sizes, mean particle sizes; bench-practice, a house rule for the largest step.
    """
    if limit <= 1:
        raise ValueError("the step limit must be above 1, got " + str(limit))
    if finish.size > start.size:
        raise ValueError("the finish grade must not be coarser than the start")
    between = [grit for grit in grits if finish.size < grit.size < start.size]
    chain = [start]
    chain += sorted(between, key=_fineness)
    if finish.size < start.size:
        chain.append(finish)
    return _fewest_steps(chain, limit)


def _fineness(grit: Grit) -> float:
    return -grit.size


def _fewest_steps(chain: list[Grit], limit: float) -> list[Grit]:
    """Return the best way along a chain of ever finer grades, worked out from its fine end.

    Ways are compared by steps beyond the limit, then by steps, then by unevenness.
    """
    last = len(chain) - 1
    best: list[tuple[int, int, float, int]] = [(0, 0, 0.0, last)] * len(chain)
    for index in range(last - 1, -1, -1):
        ways = []
        for then in range(index + 1, last + 1):
            ratio = chain[index].size / chain[then].size
            beyond = ratio > limit * (1 + ROUNDING)
            if beyond and then > index + 1:
                break
            ways.append((best[then][0] + (1 if beyond else 0), best[then][1] + 1,
                         math.log(ratio) ** 2 + best[then][2], then))
        best[index] = min(ways)
    steps = [chain[0]]
    index = 0
    while index < last:
        index = best[index][3]
        steps.append(chain[index])
    return steps


def scratch_depth(size: float, slope: float) -> float:
    """Return how deep a grade's scratches are, if depth is in proportion to grain size.

    depth = slope x size.

    Args:
        size [m]: mean grain size, >= 0.
        slope [1]: depth for one unit of grain size, >= 0; an assumption of whoever sands.

    Returns:
        [m] depth of the scratches.

    Raises:
        ValueError: size or slope is negative.

    Limits:
        That depth grows in proportion was published for P60 to P150 on beech; the slope was not. It differs
        with pressure, wood, coating and wear of the sheet.

    Source: scratch-and-grain, the proportion only.
    """
    if size < 0 or slope < 0:
        raise ValueError("size and slope must not be negative, got " + str(size) + " m and " + str(slope))
    return slope * size


def removed_by(steps: list[Grit], slope: float) -> float:
    """Return what climbing a ladder of grades takes off a face.

    Each grade sands until the scratches of the one before are gone, so that all depths but the last add up.

    Args:
        steps: the grades, coarse to fine; the first has left its scratches already.
        slope [1]: scratch depth for one unit of grain size, >= 0; an assumption of whoever sands.

    Returns:
        [m] off one face; 0 where there is no finer grade.

    Raises:
        ValueError: slope is negative.

    Limits:
        As for `scratch_depth`: the slope is not published.

    Source: scratch-and-grain, the proportion only; bench-practice, each grade sands out the scratches before
        it.
    """
    return sum([scratch_depth(each.size, slope) for each in steps[:-1]])
