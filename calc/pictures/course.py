"""The course of a limb through its marks, and how each mark moves what is read from it.

Across the straight line from the first mark to the last the limb is a cubic spline of the distance along that
line, nearest to the marks by least squares. A shift is a list of two numbers a mark, right and up on the
board: how far a reading goes when that mark's point goes by one.
"""

import math

from calc.numerics.matrices import solved, triangle
from calc.pictures.picture import Point, added
from calc.pictures.plane import dot, less

FEWEST_FOR_SHAPE = 8
"""Marks along a limb from which its shape is told."""

MARKS_A_PIECE = 3
MOST_PIECES = 6
"""Pieces of the spline: one for every three marks, and no more than a recurve's shape needs."""

WALK = 60
"""Pieces in which a share of a limb's length is sought."""

STEPS = 4
"""Of the sum along each piece; an even number."""


class Course:
    """A limb's course.

    points: of its marks, in order; again: of those that mark its fadeout once more, together its start.
    first, first_again: the places of the first of each among all marks of the picture, of which there are so
    many in all: count.
    """

    def __init__(
        self, points: list[Point], first: int, count: int, again: list[Point], first_again: int
    ) -> None:
        self.points = points
        self.all = points + again
        self.indices = ([first + i for i in range(len(points))]
                        + [first_again + i for i in range(len(again))])
        self.starts = [0] + [len(points) + i for i in range(len(again))]
        self.count = count
        run = less(points[-1].place, points[0].place)
        self.chord = math.sqrt(dot(run, run))
        self.on = run[0] / self.chord, run[1] / self.chord
        self.across = -self.on[1], self.on[0]
        self.places = [self._along(each) / self.chord for each in self.all]
        self.heights = [self._across(each) / self.chord for each in self.all]
        pieces = max(1, min(MOST_PIECES, len(points) // MARKS_A_PIECE))
        self.knots = [_spaced(i / pieces) for i in range(1, pieces)]
        self.slopes = [0.0] * len(self.all)
        rows = [self._shapes(t) for t in self.places]
        for _ in range(3):
            weighted, lower = self._fit(rows)
            self.slopes = [self.slope(t) for t in self.places]
        self.weights = [solved(lower, row) for row in weighted]
        """What each mark's height does to each of the spline's parts."""
        self.start = sum([self._foot(index) for index in self.starts]) / len(self.starts)
        self.end = self._foot(len(points) - 1)

    def _along(self, point: Point) -> float:
        return dot(less(point.place, self.points[0].place), self.on)

    def _across(self, point: Point) -> float:
        return dot(less(point.place, self.points[0].place), self.across)

    def _off(self, slope: float) -> tuple[float, float]:
        """Return how a mark moves its height over the course, where that goes on with a slope."""
        return self.across[0] - slope * self.on[0], self.across[1] - slope * self.on[1]

    def _shapes(self, t: float) -> list[float]:
        return [1.0, t, t * t, t * t * t] + [(t - knot) ** 3 if t > knot else 0.0 for knot in self.knots]

    def _leans(self, t: float) -> list[float]:
        return [0.0, 1.0, 2 * t, 3 * t * t] + [3 * (t - knot) ** 2 if t > knot else 0.0 for knot in
        self.knots]

    def _fit(self, rows: list[list[float]]) -> tuple[list[list[float]], list[list[float]]]:
        """Set the spline's parts, and return the rows by their weights, and the triangle of the equations."""
        weights = [(self.chord / each.error(self._off(slope))) ** 2
                   for each, slope in zip(self.all, self.slopes)]
        weighted = [[weight * each for each in row] for weight, row in zip(weights, rows)]
        size = len(rows[0])
        lower = triangle([[sum([own[i] * row[j] for own, row in zip(weighted, rows)]) for j in range(i + 1)]
                          for i in range(size)])
        self.parts = solved(lower, [sum([own[i] * height for own, height in zip(weighted, self.heights)])
                                    for i in range(size)])
        return weighted, lower

    def height(self, t: float) -> float:
        """Return how far the course lies off the chord at a part of it, both by the chord's length."""
        return sum([a * b for a, b in zip(self.parts, self._shapes(t))])

    def slope(self, t: float) -> float:
        """Return the course's slope against the chord at a part of it."""
        return sum([a * b for a, b in zip(self.parts, self._leans(t))])

    def bend(self, t: float) -> float:
        """Return the second derivative of the height at a part of the chord."""
        return 2 * self.parts[2] + 6 * self.parts[3] * t + sum(
            [6 * part * (t - knot) for part, knot in zip(self.parts[4:], self.knots) if t > knot])

    def _foot(self, index: int) -> float:
        """Return the part of the chord at which the course comes nearest to a mark."""
        t, slope = self.places[index], self.slopes[index]
        return t + slope * (self.heights[index] - self.height(t)) / (1 + slope * slope)

    def point(self, t: float) -> tuple[float, float]:
        """Return the course's point at a part of the chord [m]: to the right and up on the board."""
        on, off = t * self.chord, self.height(t) * self.chord
        return (self.points[0].along + on * self.on[0] + off * self.across[0],
                self.points[0].up + on * self.on[1] + off * self.across[1])

    def tangent(self, t: float) -> tuple[float, float]:
        """Return the direction in which the course goes on."""
        slope = self.slope(t)
        size = math.sqrt(1 + slope * slope)
        return ((self.on[0] + slope * self.across[0]) / size, (self.on[1] + slope * self.across[1]) / size)

    def normal(self, t: float) -> tuple[float, float]:
        """Return the direction square to the course, to its left."""
        along, up = self.tangent(t)
        return -up, along

    def _moves(self, parts: list[float]) -> list[float]:
        """Return the shift of a sum of the spline's parts."""
        shift = [0.0] * (2 * self.count)
        for index, column, slope in zip(self.indices, self.weights, self.slopes):
            weight = sum([a * b for a, b in zip(parts, column)])
            off = self._off(slope)
            shift[2 * index], shift[2 * index + 1] = weight * off[0], weight * off[1]
        return shift

    def moves(self, t: float) -> list[float]:
        """Return the shift of the course square to itself at a part of the chord."""
        slope = self.slope(t)
        size = math.sqrt(1 + slope * slope)
        return [each / size for each in self._moves(self._shapes(t))]

    def turns(self, t: float) -> list[float]:
        """Return the shift of the course's angle at a part of the chord [rad/m]."""
        slope = self.slope(t)
        size = (1 + slope * slope) * self.chord
        return [each / size for each in self._moves(self._leans(t))]

    def start_slides(self) -> list[float]:
        """Return the shift of the course's start along it."""
        return self._slides(self.starts, self.start)

    def end_slides(self) -> list[float]:
        """Return the shift of the course's end along it."""
        return self._slides([len(self.points) - 1], self.end)

    def _slides(self, marks: list[int], t: float) -> list[float]:
        """Return the shift of the middle of some marks along the course."""
        along, up = self.tangent(t)
        shift = [0.0] * (2 * self.count)
        for mark in marks:
            place = 2 * self.indices[mark]
            shift[place], shift[place + 1] = along / len(marks), up / len(marks)
        return shift

    def misses(self) -> list[float]:
        """Return how far each mark lies off the course, in its own standard errors across it."""
        return [self.chord * (height - self.height(t)) / each.error(self._off(slope))
                for each, height, t, slope in zip(self.points, self.heights, self.places, self.slopes)]

    def length(self) -> tuple[float, list[float]]:
        """Return the length of the course from its first mark to its last [m], and its shift."""
        total = 0.0
        inward = [0.0] * len(self.parts)
        ends = [self.start] + self.knots + [self.end]
        for start, end in zip(ends, ends[1:]):
            step = (end - start) / STEPS
            for i in range(STEPS + 1):
                t = start + i * step
                weight = (1 if i in (0, STEPS) else 2 + 2 * (i % 2)) * step / 3
                square = 1 + self.slope(t) ** 2
                total += weight * math.sqrt(square)
                turned = weight * self.bend(t) / square**1.5
                inward = [a + turned * b for a, b in zip(inward, self._shapes(t))]
        return total * self.chord, added([
            (1.0, self.end_slides()), (-1.0, self.start_slides()), (-1.0, self._moves(inward))])

    def part_of_length(self, share: float) -> float:
        """Return the part of the chord at which a share of the course's length lies behind."""
        step = (self.end - self.start) / WALK
        ways = [0.0]
        for i in range(WALK):
            slope = self.slope(self.start + (i + 0.5) * step)
            ways.append(ways[-1] + math.sqrt(1 + slope * slope))
        aim = share * ways[-1]
        for i in range(WALK):
            if aim <= ways[i + 1]:
                return self.start + (i + (aim - ways[i]) / (ways[i + 1] - ways[i])) * step
        return self.end


def _spaced(part: float) -> float:
    """Return where a piece ends: the pieces get shorter toward the nock, where a recurve bends most."""
    return part * (1.4 - 0.4 * part)
