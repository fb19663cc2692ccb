"""A smooth curve through points of a plane, followed by its own length.

Both coordinates are cubics of one parameter between two points, with the same first and second derivatives
where they meet. The parameter is at first the chords' length, then the length of the curve itself. In the
first piece the second derivative stays the same; in the last two the third does.
"""

import math

LENGTHENINGS = 4
"""How often the parameter is set to the length of the curve just found; more change a bow by less than a
ten-thousandth."""

HALVES = 8
"""Pieces of the sum that gives a cubic's length; an even number."""


class PlaneCurve:
    """A curve through points (across, along) [any]; knots: the parameter at each, bends: both second
    derivatives there.
    """

    def __init__(self, points: list[tuple[float, float]], knots: list[float]) -> None:
        self.points = points
        self.knots = knots
        self.bends = _bends(points, knots)

    def place(self, cell: int, part: float) -> tuple[float, float]:
        """Return a place of a piece.

        Args:
            cell: the piece, from 0.
            part [1]: of the piece's parameter, 0 at its start and 1 at its end.

        Returns:
            [any] across and along.

        Source: interpolation, the cubic between two second derivatives.
        """
        gap = self.knots[cell + 1] - self.knots[cell]
        rest = 1.0 - part
        first, second = [
            rest * self.points[cell][which] + part * self.points[cell + 1][which]
            + gap * gap / 6.0 * ((rest ** 3 - rest) * self.bends[cell][which]
                                 + (part ** 3 - part) * self.bends[cell + 1][which])
            for which in (0, 1)]
        return first, second

    def direction(self, cell: int, into: float) -> tuple[float, float]:
        """Return both first derivatives at a place of a piece.

        Args:
            cell: the piece, from 0.
            into [any]: the parameter, counted from the piece's start.

        Returns:
            [1] the derivative across, and that along.

        Source: interpolation, the cubic between two second derivatives.
        """
        gap = self.knots[cell + 1] - self.knots[cell]
        first, second = self._along(0, cell, gap, into), self._along(1, cell, gap, into)
        return first, second

    def _along(self, which: int, cell: int, gap: float, into: float) -> float:
        start, end = self.bends[cell][which], self.bends[cell + 1][which]
        chord = (self.points[cell + 1][which] - self.points[cell][which]) / gap
        return chord - gap * (2.0 * start + end) / 6.0 + into * (start + 0.5 * (end - start) * into / gap)

    def curvature_at_end(self) -> float:
        """Return the curvature at the last point.

        Returns:
            [any] one over the radius, positive where the curve turns toward the first coordinate's axis.

        Source: geometry, the curvature of a curve in two coordinates.
        """
        last = len(self.points) - 2
        across, along = self.direction(last, self.knots[-1] - self.knots[-2])
        bend_across, bend_along = self.bends[-1]
        return (bend_across * along - bend_along * across) / _size(across, along) ** 3


def curve_through(points: list[tuple[float, float]]) -> PlaneCurve:
    """Return the curve through points, its parameter near its own length.

    Args:
        points [any]: (across, along), two or more, no two in a row in one place.

    Returns:
        The curve; a straight line through two points.

    Source: interpolation, a cubic spline in two coordinates by chord length, then by its own length.
    """
    knots = [0.0]
    for i in range(1, len(points)):
        knots.append(knots[-1] + _size(points[i][0] - points[i - 1][0], points[i][1] - points[i - 1][1]))
    curve = PlaneCurve(points, knots)
    for _ in range(LENGTHENINGS):
        curve = PlaneCurve(points, _lengths(curve))
    return curve


def angles_along(curve: PlaneCurve, length: float, stations: int, pieces: int) -> list[float]:
    """Return the curve's angle at equal steps of its length, beyond the last point at its last curvature.

    Args:
        curve: as `curve_through` gives it.
        length [any]: to be followed, > 0.
        stations: of the angles returned, both ends among them; two or more.
        pieces: steps between two stations.

    Returns:
        [rad] angles from the second coordinate's axis, positive toward the first; without a jump.

    Source: interpolation, the midpoint rule along the curve.
    """
    step = length / (pieces * (stations - 1))
    last, end, onward = len(curve.points) - 2, curve.knots[-1], curve.curvature_at_end()
    across, along = curve.direction(0, 0.0)
    angle = math.atan2(across, along)
    angles = [angle]
    place, cell = 0.0, 0
    for piece in range(1, pieces * (stations - 1) + 1):
        if place < end:
            middle = place + 0.5 * step / _size(across, along)
            while cell < last and middle > curve.knots[cell + 1]:
                cell += 1
            half = curve.direction(cell, min(middle, end) - curve.knots[cell])
            reached = place + step / _size(half[0], half[1])
            place = min(reached, end)
            while cell < last and place > curve.knots[cell + 1]:
                cell += 1
            now = curve.direction(cell, place - curve.knots[cell])
            angle += math.atan2(now[0] * along - now[1] * across, now[1] * along + now[0] * across)
            angle += onward * (reached - place)
            across, along = now
        else:
            angle += onward * step
        if piece % pieces == 0:
            angles.append(angle)
    return angles


def _size(across: float, along: float) -> float:
    return math.sqrt(across * across + along * along)


def _lengths(curve: PlaneCurve) -> list[float]:
    """Return the length of the curve from its start to each point, by Simpson's rule."""
    lengths = [0.0]
    for cell in range(len(curve.points) - 1):
        step = (curve.knots[cell + 1] - curve.knots[cell]) / HALVES
        total = 0.0
        for i in range(HALVES + 1):
            weight = 1.0 if i in (0, HALVES) else 2.0 + 2.0 * (i % 2)
            across, along = curve.direction(cell, i * step)
            total += weight * _size(across, along)
        lengths.append(lengths[-1] + total * step / 3.0)
    return lengths


def _bends(points: list[tuple[float, float]], knots: list[float]) -> list[tuple[float, float]]:
    """Return the second derivatives at the points: three unknowns a row, eliminated from the first on."""
    last = len(points) - 1
    if last == 1:
        return [(0.0, 0.0), (0.0, 0.0)]
    gaps = [knots[i + 1] - knots[i] for i in range(last)]
    stretch = gaps[-1] / gaps[-2]
    rows: list[tuple[float, float, float]] = []  # a bend is the first times the next, plus the others
    for i in range(1, last):
        before, middle, after = gaps[i - 1], 2.0 * (gaps[i - 1] + gaps[i]), gaps[i]
        if i == last - 1:  # the bend at the end lies on the line through the two before it
            before, middle, after = before - after * stretch, middle + after * (1.0 + stretch), 0.0
        right = [6.0 * ((points[i + 1][k] - points[i][k]) / gaps[i]
                        - (points[i][k] - points[i - 1][k]) / gaps[i - 1]) for k in (0, 1)]
        if i == 1:  # the bend at the start is that at the next point
            divisor, carried = middle + before, (0.0, 0.0)
        else:
            divisor, carried = middle + before * rows[-1][0], rows[-1][1:]
        rows.append((-after / divisor, (right[0] - before * carried[0]) / divisor,
                     (right[1] - before * carried[1]) / divisor))
    found = [(0.0, 0.0)] * (last + 1)
    for i in range(last - 1, 0, -1):
        factor, across, along = rows[i - 1]
        found[i] = (factor * found[i + 1][0] + across, factor * found[i + 1][1] + along)
    found[0] = found[1]
    found[last] = (found[last - 1][0] + stretch * (found[last - 1][0] - found[last - 2][0]),
                   found[last - 1][1] + stretch * (found[last - 1][1] - found[last - 2][1]))
    return found
