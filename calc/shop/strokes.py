"""What strokes of the sanding block do, learnt from a log of strokes and readings."""

import math
from collections import namedtuple

Line = namedtuple("Line", "start slope start_variance slope_variance covariance misfit")
"""A straight line fitted to readings. misfit: mean square of reading less line over error squared."""

StrokesLeft = namedtuple("StrokesLeft", "upper lower upper_error lower_error")

NORMAL_95 = 1.959964
"""Standard errors on either side that hold 95 % of a normal spread."""


def line_through(xs: tuple[float, ...], ys: tuple[float, ...], error: float) -> Line:
    """Return the straight line nearest to readings that all have one standard error.

    Where the readings scatter more than their error says, the variances are
    raised by as much.

    Args:
        xs [1]: at least two different ones.
        ys [any]: one per x.
        error [any]: standard error of each y, > 0, in the same unit.

    Returns:
        The line: y = start + slope x, with its variances.

    Raises:
        ValueError: the xs are all the same, or the lists do not match.

    Source: least-squares
    """
    count = len(xs)
    if not 2 <= count == len(ys):
        raise ValueError(f"a line needs two readings or more, got {count}")
    if not 0 < error < math.inf:
        raise ValueError(f"the error must be positive, got {error}")
    mean = sum(xs) / count
    spread = 0.0
    product = 0.0
    for x, y in zip(xs, ys):
        spread += (x - mean) ** 2
        product += (x - mean) * y
    if spread <= 0:
        raise ValueError("a line needs readings at two different places, got one")
    slope = product / spread
    start = sum(ys) / count - slope * mean
    squares = 0.0
    for x, y in zip(xs, ys):
        squares += ((y - start - slope * x) / error) ** 2
    misfit = squares / (count - 2) if count > 2 else 0.0
    variance = error * error * max(1.0, misfit)
    return Line(
        start,
        slope,
        variance * (1 / count + mean * mean / spread),
        variance / spread,
        -variance * mean / spread,
        misfit,
    )


def value_on(line: Line, x: float) -> tuple[float, float]:
    """Return the line's value at a place, and its standard error there.

    Args:
        line: as `line_through` gives it.
        x [1]: the place.

    Returns:
        [any] value and standard error, in the unit of the readings.

    Source: least-squares
    """
    variance = line.start_variance + 2 * x * line.covariance + x * x * line.slope_variance
    return line.start + line.slope * x, math.sqrt(max(0.0, variance))


def place_of(line: Line, value: float, now: float) -> tuple[float, float]:
    """Return how far beyond `now` a line reaches a value, and the standard error of that.

    Args:
        line: as `line_through` gives it, with a slope that is not 0.
        value [any]: to be reached, in the unit of the readings.
        now [1]: the place counted from.

    Returns:
        [1] distance and its standard error, to first order.

    Raises:
        ValueError: the line is level.

    Source: least-squares
    """
    if line.slope == 0:
        raise ValueError("a level line reaches no other value, got slope 0")
    reached, _ = value_on(line, now)
    far = (value - reached) / line.slope
    _, error = value_on(line, now + far)
    return far, error / abs(line.slope)


def strokes_left(together: tuple[float, float], lead: tuple[float, float]) -> StrokesLeft:
    """Return the strokes for each limb from the sum and the difference of both.

    Args:
        together [1]: strokes on both limbs together, and their standard error.
        lead [1]: strokes on the upper limb more than on the lower, and their standard error.

    Returns:
        [1] strokes on each limb, and their standard errors; a negative count would put material back.

    Source: least-squares
    """
    error = math.sqrt(together[1] ** 2 + lead[1] ** 2) / 2
    return StrokesLeft((together[0] + lead[0]) / 2, (together[0] - lead[0]) / 2, error, error)


def thickness_per_stroke(
    lost: tuple[float, float], strokes: float, reading_error: float
) -> tuple[float, float]:
    """Return what a stroke takes off a limb's thickness, and the standard error of that.

    Each loss is the difference of two readings of a micrometer, so four readings go into it.

    Args:
        lost [m]: thickness that the upper and the lower limb lost over the log.
        strokes [1]: on both limbs together meanwhile, > 0.
        reading_error [m]: standard error of one reading, >= 0.

    Returns:
        [m] thickness for each stroke and its standard error.

    Raises:
        ValueError: there were no strokes.

    Limits:
        The same for both limbs.

    Source: least-squares
    """
    if not strokes > 0:
        raise ValueError(f"a stroke's share needs strokes, got {strokes}")
    return (lost[0] + lost[1]) / strokes, 2 * reading_error / strokes


def agree(one: tuple[float, float], other: tuple[float, float]) -> bool:
    """Return whether two estimates differ by no more than chance explains in 95 of 100 cases.

    Args:
        one [any]: estimate and its standard error.
        other [any]: the same, in the same unit.

    Returns:
        Whether they agree.

    Source: least-squares
    """
    return abs(one[0] - other[0]) <= NORMAL_95 * math.sqrt(one[1] ** 2 + other[1] ** 2)
