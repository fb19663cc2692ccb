"""What strokes of the sanding block do, learnt from a log of strokes and readings."""

import math

from calc.numerics.normal import NORMAL_95


class FittedLine:
    """A straight line fitted to readings. misfit: mean square of reading less line over error squared."""

    def __init__(
        self, start: float, slope: float, start_variance: float, slope_variance: float, covariance: float,
        misfit: float
    ) -> None:
        self.start = start
        self.slope = slope
        self.start_variance = start_variance
        self.slope_variance = slope_variance
        self.covariance = covariance
        self.misfit = misfit


class StrokesLeft:
    """Strokes still to do on each limb, and the standard error of each."""

    def __init__(self, upper: float, lower: float, upper_error: float, lower_error: float) -> None:
        self.upper = upper
        self.lower = lower
        self.upper_error = upper_error
        self.lower_error = lower_error


class Papers:
    """Readings explained by one start and one slope for each paper. lines: one FittedLine a paper over all
    strokes, as it would go on from the last reading, None where the paper has no strokes between readings.
    fitted: one value a reading. now: value and standard error at the last reading. misfit: as of a line.
    """

    def __init__(
        self, lines: tuple[FittedLine | None, ...], fitted: tuple[float, ...], now: tuple[float, float],
        misfit: float
    ) -> None:
        self.lines = lines
        self.fitted = fitted
        self.now = now
        self.misfit = misfit


def line_through(xs: tuple[float, ...], ys: tuple[float, ...], error: float) -> FittedLine:
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

    Source: least-squares, a straight line and its covariance.
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
    return FittedLine(
        start,
        slope,
        variance * (1 / count + mean * mean / spread),
        variance / spread,
        -variance * mean / spread,
        misfit,
    )


def lines_by_paper(
    counts: tuple[tuple[float, ...], ...], ys: tuple[float, ...], error: float
) -> Papers:
    """Return one start and one slope a paper, nearest to readings that all have one standard error.

    y = start + sum over papers of slope x strokes on it: no jump at a change. With one paper this is
    `line_through`.

    Args:
        counts [1]: strokes so far on each paper, one row per reading.
        ys [any]: one per row.
        error [any]: standard error of each y, > 0, in the same unit.

    Returns:
        Papers.

    Raises:
        ValueError: no paper has strokes between readings, or the lists do not match.

    Limits:
        Each paper cuts alike from its first stroke to its last.

    Source: least-squares, the normal equations with a slope for each paper.
    """
    if not counts or len(counts) != len(ys):
        raise ValueError(f"there must be one row of counts for each reading, got {len(counts)}")
    used = [paper for paper in range(len(counts[0]))
            if max([row[paper] for row in counts]) > min([row[paper] for row in counts])]
    lines: list[FittedLine | None] = [None] * len(counts[0])
    if len(used) <= 1:
        xs = tuple([sum(row) for row in counts])
        line = line_through(xs, ys, error)
        lines[used[0]] = line
        return Papers(tuple(lines), tuple([value_on(line, x)[0] for x in xs]), value_on(line, xs[-1]),
                      line.misfit)
    if not 0 < error < math.inf:
        raise ValueError(f"the error must be positive, got {error}")
    design = [[1.0] + [row[paper] for paper in used] for row in counts]
    size = len(used) + 1
    normal = [[sum([row[i] * row[j] for row in design]) for j in range(size)] for i in range(size)]
    inverse = _inverse(normal)
    right = [sum([row[i] * y for row, y in zip(design, ys)]) for i in range(size)]
    found = [_dot(inverse[i], right) for i in range(size)]
    fitted = [_dot(found, row) for row in design]
    squares = sum([((y - value) / error) ** 2 for y, value in zip(ys, fitted)])
    misfit = squares / (len(ys) - size) if len(ys) > size else 0.0
    variance = error * error * max(1.0, misfit)
    covariance = [[variance * each for each in row] for row in inverse]
    last, total = design[-1], sum(counts[-1])
    for place, paper in enumerate(used):
        # at x strokes in all, those beyond today's are on this paper
        at_none = list(last)
        at_none[place + 1] -= total
        level = [_dot(row, at_none) for row in covariance]
        lines[paper] = FittedLine(_dot(found, at_none), found[place + 1], _dot(at_none, level),
                                  covariance[place + 1][place + 1], level[place + 1], misfit)
    error_now = math.sqrt(max(0.0, _dot(last, [_dot(row, last) for row in covariance])))
    return Papers(tuple(lines), tuple(fitted), (fitted[-1], error_now), misfit)


def _dot(left: list[float], right: list[float]) -> float:
    return float(sum([a * b for a, b in zip(left, right)]))


def _inverse(matrix: list[list[float]]) -> list[list[float]]:
    """Return the inverse of a small matrix, by elimination with the largest pivot of each column."""
    size = len(matrix)
    rows = [list(row) + [1.0 if i == j else 0.0 for j in range(size)]
            for i, row in enumerate(matrix)]
    for column in range(size):
        best = column
        for i in range(column + 1, size):
            if abs(rows[i][column]) > abs(rows[best][column]):
                best = i
        if rows[best][column] == 0:
            raise ValueError("the readings do not tell the papers apart")
        rows[column], rows[best] = rows[best], rows[column]
        pivot = rows[column][column]
        rows[column] = [each / pivot for each in rows[column]]
        for i in range(size):
            if i != column:
                part = rows[i][column]
                rows[i] = [each - part * other for each, other in zip(rows[i], rows[column])]
    return [row[size:] for row in rows]


def safe_batch(line: FittedLine, now: tuple[float, float], aim: float) -> float:
    """Return strokes that do not take a falling line below its aim, by the ends of both 95 % ranges.

    The gap at its least over the slope at its steepest.

    Args:
        line: as `line_through` or `lines_by_paper` gives it.
        now [any]: value by the fit, and its standard error.
        aim [any]: to be reached from above.

    Returns:
        [1] strokes; 0 where the gap may be none already.

    Source: least-squares, ranges of 95 % from the covariance.
    """
    gap = now[0] - NORMAL_95 * now[1] - aim
    steepest = -line.slope + NORMAL_95 * math.sqrt(line.slope_variance)
    return gap / steepest if gap > 0 and steepest > 0 else 0.0


def value_on(line: FittedLine, x: float) -> tuple[float, float]:
    """Return the line's value at a place, and its standard error there.

    Args:
        line: as `line_through` gives it.
        x [1]: the place.

    Returns:
        [any] value and standard error, in the unit of the readings.

    Source: least-squares, the error of a value from the covariance.
    """
    variance = line.start_variance + 2 * x * line.covariance + x * x * line.slope_variance
    return line.start + line.slope * x, math.sqrt(max(0.0, variance))


def place_of(line: FittedLine, value: float, now: float) -> tuple[float, float]:
    """Return how far beyond `now` a line reaches a value, and the standard error of that.

    Args:
        line: as `line_through` gives it, with a slope that is not 0.
        value [any]: to be reached, in the unit of the readings.
        now [1]: the place counted from.

    Returns:
        [1] distance and its standard error, to first order.

    Raises:
        ValueError: the line is level.

    Source: least-squares, the error of a place from the covariance.
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

    Source: least-squares, errors that do not depend on one another add as squares.
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

    Source: least-squares, errors that do not depend on one another add as squares.
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

    Source: least-squares, the range of 95 % of a difference.
    """
    return abs(one[0] - other[0]) <= NORMAL_95 * math.sqrt(one[1] ** 2 + other[1] ** 2)
