"""A picture with marks: each mark as a point of the bow, with what moves it."""

import math

from calc.numerics.normal import NORMAL_95
from calc.pictures.board import Board
from calc.pictures.lens import Lens
from calc.pictures.plane import dot, middle_of
from calc.pictures.sought import EDGE, HAND

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Wobble = tuple[tuple[float, float], tuple[float, float]]


class Picture:
    """A picture's size in pixels, and how marks are made in it: their errors in pixels, of those set by hand
    and of those drawn to what the picture shows.
    """

    def __init__(self, width: float, height: float, error: float, found_error: float) -> None:
        self.middle = width / 2, height / 2
        self.half = math.sqrt(width * width + height * height) / 2
        self.error = error / self.half
        self.found_error = found_error / self.half
        self.width = width
        self.height = height

    def seen(self, x: float, y: float) -> tuple[float, float]:
        """Return a mark as a point of the picture, counted from its middle in half diagonals."""
        return (x - self.middle[0]) / self.half, (y - self.middle[1]) / self.half

    def mark(self, seen: tuple[float, float]) -> tuple[float, float]:
        """Return where a point of the picture lies in pixels: what `seen` undoes."""
        return self.middle[0] + seen[0] * self.half, self.middle[1] + seen[1] * self.half


def evenly(error: float) -> "Wobble":
    """Return the errors of a mark that is as unsure to the right as down."""
    return (error, 0.0), (0.0, error)


def wobbles_along(picture: Picture, marks: list[tuple[float, float, str]]) -> "list[Wobble]":
    """Return the errors of marks along a limb: two directions each, independent, of the half diagonal.

    A mark drawn to the edge is out by the hand along the limb, and across it by what the picture leaves
    unsure.
    """
    found = []
    for index, (_, _, how) in enumerate(marks):
        if how == EDGE:
            before, after = marks[max(index - 1, 0)], marks[min(index + 1, len(marks) - 1)]
            way = after[0] - before[0], after[1] - before[1]
            size = math.sqrt(dot(way, way)) or 1.0
            along = way[0] / size, way[1] / size
            found.append(((picture.error * along[0], picture.error * along[1]),
                          (-picture.found_error * along[1], picture.found_error * along[0])))
        else:
            found.append(evenly(error_of(picture, how)))
    return found


def error_of(picture: Picture, how: str) -> float:
    """Return the error of a mark either way, of the half diagonal."""
    return picture.error if how == HAND else picture.found_error


class Point:
    """A mark as a point of the bow in the board's measure: along and up [m], and what moves it.

    own: what one standard error of the mark does, in two directions, each (along, up) [m]. common: what
    one standard error of each cause that all marks share does.
    """

    def __init__(
        self, along: float, up: float, own: tuple[tuple[float, float], tuple[float, float]],
        common: list[tuple[float, float]],
    ) -> None:
        self.along = along
        self.up = up
        self.place = along, up
        self.own = own
        self.common = common

    def error(self, direction: tuple[float, float]) -> float:
        """Return the standard error of the mark itself in a direction on the board [m], of length one."""
        return math.sqrt(sum([dot(each, direction) ** 2 for each in self.own]))


class Standing:
    """How far in front of the board a marked edge stands [m], and its standard error."""

    def __init__(self, at_fadeout: float, at_nock: float, error: float) -> None:
        self.at_fadeout = at_fadeout
        self.at_nock = at_nock
        self.error = error

    def at(self, part: float) -> float:
        """Return how far it stands in front at a part of the way from fadeout to nock [m]."""
        return self.at_fadeout + part * (self.at_nock - self.at_fadeout)


def point_of(
    picture: Picture, board: Board, lens: Lens, mark: tuple[float, float], wobble: "Wobble", out: float,
    out_error: float,
) -> Point:
    """Return the point of the bow that a mark shows, so far in front of the board [m].

    wobble: the mark's errors, of the half diagonal.

    The line from the lens to where the mark lies on the board passes it: it lies nearer to the place that the
    lens stands before, by its own share of the lens's distance.
    """
    seen = picture.seen(mark[0], mark[1])
    x, y = board.place(seen)
    along, up = board.moves(seen)
    share = out / lens.distance
    nearer = 1 - share
    to_foot = lens.foot[0] - x, lens.foot[1] - y
    common = [(nearer * a, nearer * b) for a, b in zip(along[2:], up[2:])]
    common.append((to_foot[0] * out_error / lens.distance, to_foot[1] * out_error / lens.distance))
    common.append((-to_foot[0] * share * lens.distance_error, -to_foot[1] * share * lens.distance_error))
    first, second = [(nearer * (along[0] * right + along[1] * down), nearer * (up[0] * right + up[1] * down))
                     for right, down in wobble]
    return Point(x + share * to_foot[0], y + share * to_foot[1], (first, second), common)


def pixels_of(
    picture: Picture, board: Board, lens: Lens, place: tuple[float, float], out: float
) -> tuple[float, float]:
    """Return the pixels at which a place shows that stands so far in front of the board [m]."""
    share = out / lens.distance
    return picture.mark(board.seen(((place[0] - share * lens.foot[0]) / (1 - share),
                                      (place[1] - share * lens.foot[1]) / (1 - share))))


class Marks:
    """All marks of a bow, as points; scale: what all their errors are multiplied by.

    A shift is a list of two numbers a mark, right and up on the board: how far a reading goes when that
    mark's point goes by one.
    """

    def __init__(self, points: list[Point], scale: float) -> None:
        self.points = points
        self.scale = scale

    def middle(
        self, first: int, count: int, direction: tuple[float, float]
    ) -> tuple[tuple[float, float], list[float]]:
        """Return the middle of some marks [m], and its shift in a direction.

        Args:
            first: the place of the first of them among all.
            count: how many.
            direction: of length one.
        """
        moves = [0.0] * (2 * len(self.points))
        for index in range(first, first + count):
            moves[2 * index], moves[2 * index + 1] = direction[0] / count, direction[1] / count
        return middle_of([each.place for each in self.points[first:first + count]]), moves

    def error(self, shift: list[float]) -> float:
        """Return the standard error of a reading from its shift, to first order."""
        square = 0.0
        common = [0.0] * len(self.points[0].common)
        for index, point in enumerate(self.points):
            right, up = shift[2 * index], shift[2 * index + 1]
            if right == 0 and up == 0:
                continue
            for along, across in point.own:
                square += (right * along + up * across) ** 2
            for cause, (along, across) in enumerate(point.common):
                common[cause] += right * along + up * across
        return self.scale * math.sqrt(square + sum([each * each for each in common]))


class Reading:
    """What is read from marks: a value, its shift and its standard error, in one unit."""

    def __init__(self, marks: Marks, value: float, shift: list[float]) -> None:
        self.marks = marks
        self.value = value
        self.shift = shift
        self.error = marks.error(shift)

    @property
    def half_range(self) -> float:
        """Half of the range that holds 95 % of such readings."""
        return NORMAL_95 * self.error


def weighed(marks: Marks, parts: list[tuple[float, Reading]]) -> Reading:
    """Return the sum of readings, each times a factor."""
    return Reading(marks, sum([factor * each.value for factor, each in parts]),
                   added([(factor, each.shift) for factor, each in parts]))


def added(parts: list[tuple[float, list[float]]]) -> list[float]:
    """Return the sum of shifts, each times a factor."""
    factor, shift = parts[0]
    total = [factor * each for each in shift]
    for factor, shift in parts[1:]:
        if factor:
            total = [a + factor * b for a, b in zip(total, shift)]
    return total
