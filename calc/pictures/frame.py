"""The bow's own frame on the board: a straight edge through both fadeouts, and what is read from it."""

import math

from calc.pictures.course import Course
from calc.pictures.picture import Marks, Reading, added

ROUNDS = 30


class End:
    """An end of the straight edge: a limb's fadeout, on its course where it has one."""

    def __init__(self, marks: Marks, first: int, course: Course | None) -> None:
        self.first = first
        self.count = len(marks.points)
        self.course = course
        if course is None:
            self.place = marks.points[first].along, marks.points[first].up
        else:
            self.place = course.point(course.start)

    def moves(self, direction: tuple[float, float]) -> list[float]:
        """Return the shift of the end in a direction."""
        if self.course is None:
            shift = [0.0] * (2 * self.count)
            shift[2 * self.first], shift[2 * self.first + 1] = direction
            return shift
        t = self.course.start
        along, square = self.course.tangent(t), self.course.normal(t)
        return added([(_dot(direction, along), self.course.slides(0, t)),
                      (_dot(direction, square), self.course.moves(t))])


class Frame:
    """A straight edge through both fadeouts.

    out: its direction, from the lower fadeout to the upper. belly: the direction square to it, toward the
    belly. riser: its length between them, as a reading [m].
    """

    def __init__(self, marks: Marks, upper: End, lower: End, toward: tuple[float, float]) -> None:
        self.marks = marks
        self.ends = upper, lower
        run = upper.place[0] - lower.place[0], upper.place[1] - lower.place[1]
        length = math.sqrt(_dot(run, run))
        self.out = run[0] / length, run[1] / length
        left = -self.out[1], self.out[0]
        self.side = 1.0 if _dot(left, toward) > 0 else -1.0
        self.belly = self.side * left[0], self.side * left[1]
        self.lean = abs(_dot(left, toward)) / math.sqrt(_dot(toward, toward))
        self.riser = Reading(marks, length, added([(1.0, upper.moves(self.out)),
                                                   (-1.0, lower.moves(self.out))]))
        self.turns = added([(1 / length, upper.moves(left)), (-1 / length, lower.moves(left))])

    def outward(self, limb: int) -> tuple[float, float]:
        """Return the direction along the edge that leads out along a limb: upper 0, lower 1."""
        return self.out if limb == 0 else (-self.out[0], -self.out[1])

    def reach(self, limb: int, t: float) -> float:
        """Return how far along the edge from the fadeout a limb's course is at a part of its chord [m]."""
        course = self._course(limb)
        return _dot(_less(course.point(t), self.ends[limb].place), self.outward(limb))

    def part_at(self, limb: int, along: float) -> float:
        """Return the part of a limb's chord that lies so far along the edge from the fadeout [m]."""
        course, outward = self._course(limb), self.outward(limb)
        low, high = course.start, course.end
        t = along / max(self.reach(limb, high), 1e-9)
        for _ in range(ROUNDS):
            rise = _dot(course.on, outward) + course.slope(t) * _dot(course.across, outward)
            step = (along - self.reach(limb, t)) / (course.chord * max(rise, 0.05))
            t = min(max(t + step, low - 0.02), high + 0.02)
            if abs(step) < 1e-12:
                break
        return t

    def offset(self, limb: int, along: float) -> Reading:
        """Return how far toward the belly a limb lies off the edge, so far along it from the fadeout [m]."""
        course, end = self._course(limb), self.ends[limb]
        t = self.part_at(limb, along)
        point, square = course.point(t), course.normal(t)
        away = _less(point, end.place)
        shift = added([(1.0, course.moves(t)), (-1.0, end.moves(square)),
                       (-(square[1] * away[0] - square[0] * away[1]), self.turns)])
        lean = _dot(square, self.belly)
        return Reading(self.marks, _dot(away, self.belly), [each / lean for each in shift])

    def angle(self, limb: int, t: float) -> Reading:
        """Return a limb's angle against the edge at a part of its chord [rad], toward the belly positive."""
        course, outward = self._course(limb), self.outward(limb)
        tangent = course.tangent(t)
        value = math.atan2(_dot(tangent, self.belly), _dot(tangent, outward))
        sign = self.side * (1.0 if limb == 0 else -1.0)
        return Reading(self.marks, value, added([(sign, course.turns(t)), (-sign, self.turns)]))

    def length(self, limb: int) -> Reading:
        """Return a limb's length along its belly, from fadeout to nock [m]."""
        value, shift = self._course(limb).length()
        return Reading(self.marks, value, shift)

    def behind(self, first: int, count: int) -> Reading:
        """Return how far the edge lies behind the middle of some marks, toward the belly [m].

        Args:
            first: the place of the first of them among all marks.
            count: how many.
        """
        points = self.marks.points[first:first + count]
        place = sum([each.along for each in points]) / count, sum([each.up for each in points]) / count
        away = _less(place, self.ends[0].place)
        shift = added([(1.0, self.ends[0].moves(self.belly)),
                       (self.side * _dot(away, self.out), self.turns)])
        for index in range(first, first + count):
            shift[2 * index] -= self.belly[0] / count
            shift[2 * index + 1] -= self.belly[1] / count
        return Reading(self.marks, -_dot(away, self.belly), shift)

    def _course(self, limb: int) -> Course:
        course = self.ends[limb].course
        if course is None:
            raise ValueError("too few marks along this limb for its shape")
        return course


class Line:
    """A straight line through marks: the string."""

    def __init__(self, marks: Marks, first: int, count: int) -> None:
        self.marks = marks
        self.first = first
        points = marks.points[first:first + count]
        self.middle = (sum([each.along for each in points]) / count,
                       sum([each.up for each in points]) / count)
        xx = sum([(each.along - self.middle[0]) ** 2 for each in points])
        xy = sum([(each.along - self.middle[0]) * (each.up - self.middle[1]) for each in points])
        yy = sum([(each.up - self.middle[1]) ** 2 for each in points])
        angle = 0.5 * math.atan2(2 * xy, xx - yy)
        self.on = math.cos(angle), math.sin(angle)
        self.square = -self.on[1], self.on[0]
        self.places = [_dot(_less((each.along, each.up), self.middle), self.on) for each in points]

    def distance(
        self, place: tuple[float, float], toward: tuple[float, float], moved: list[float]
    ) -> Reading:
        """Return how far the line lies from a place, square to the line [m].

        Args:
            place [m]: on the board.
            toward: the side on which the line should lie.
            moved: shift of the place, square to the line in the direction of `facing`.
        """
        sign = self.facing(toward)
        away = _less(self.middle, place)
        shift = [-each for each in moved]
        at = -_dot(away, self.on)
        spread = sum([each * each for each in self.places])
        for index, own in enumerate(self.places):
            weight = sign * (1 / len(self.places) + at * own / spread)
            shift[2 * (self.first + index)] += weight * self.square[0]
            shift[2 * (self.first + index) + 1] += weight * self.square[1]
        return Reading(self.marks, sign * _dot(away, self.square), shift)

    def facing(self, toward: tuple[float, float]) -> float:
        """Return 1 where the line's own square points to a side, else -1."""
        return 1.0 if _dot(self.square, toward) > 0 else -1.0


def _dot(a: tuple[float, float], b: tuple[float, float]) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _less(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    return a[0] - b[0], a[1] - b[1]
