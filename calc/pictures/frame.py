"""The bow's own frame on the board: a straight edge through both fadeouts, and what is read from it."""

import math

from calc.pictures.course import Course
from calc.pictures.picture import Marks, Reading, added
from calc.pictures.plane import best_line, dot, less

ROUNDS = 30


class End:
    """An end of the straight edge: a limb's fadeout, on its course where it has one."""

    def __init__(self, marks: Marks, first: int, course: Course | None) -> None:
        self.first = first
        self.count = len(marks.points)
        self.course = course
        if course is None:
            self.place = marks.points[first].place
        else:
            t = course.start
            self.place = course.point(t)
            self._on, self._square = course.tangent(t), course.normal(t)
            self._slides, self._lifts = course.start_slides(), course.moves(t)

    def moves(self, direction: tuple[float, float]) -> list[float]:
        """Return the shift of the end in a direction."""
        if self.course is None:
            shift = [0.0] * (2 * self.count)
            shift[2 * self.first], shift[2 * self.first + 1] = direction
            return shift
        return added([(dot(direction, self._on), self._slides), (dot(direction, self._square), self._lifts)])


class Frame:
    """A straight edge through both fadeouts.

    out: its direction, from the lower fadeout to the upper. belly: the direction square to it, toward the
    belly. riser: its length between them, as a reading [m].
    """

    def __init__(self, marks: Marks, upper: End, lower: End, toward: tuple[float, float]) -> None:
        self.marks = marks
        self.ends = upper, lower
        run = upper.place[0] - lower.place[0], upper.place[1] - lower.place[1]
        length = math.sqrt(dot(run, run))
        self.out = run[0] / length, run[1] / length
        left = -self.out[1], self.out[0]
        self.side = 1.0 if dot(left, toward) > 0 else -1.0
        self.belly = self.side * left[0], self.side * left[1]
        self.lean = abs(dot(left, toward)) / math.sqrt(dot(toward, toward))
        self.riser = Reading(marks, length, added([(1.0, upper.moves(self.out)),
                                                   (-1.0, lower.moves(self.out))]))
        self._lengths: list[Reading | None] = [None, None]
        self.turns = added([(1 / length, upper.moves(left)), (-1 / length, lower.moves(left))])

    def outward(self, limb: int) -> tuple[float, float]:
        """Return the direction along the edge that leads out along a limb: upper 0, lower 1."""
        return self.out if limb == 0 else (-self.out[0], -self.out[1])

    def reach(self, limb: int, t: float) -> float:
        """Return how far along the edge from the fadeout a limb's course is at a part of its chord [m]."""
        course = self._course(limb)
        return dot(less(course.point(t), self.ends[limb].place), self.outward(limb))

    def part_at(self, limb: int, along: float) -> float:
        """Return the part of a limb's chord that lies so far along the edge from the fadeout [m]."""
        course, outward = self._course(limb), self.outward(limb)
        low, high = course.start, course.end
        t = along / max(self.reach(limb, high), 1e-9)
        for _ in range(ROUNDS):
            rise = dot(course.on, outward) + course.slope(t) * dot(course.across, outward)
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
        away = less(point, end.place)
        shift = added([(1.0, course.moves(t)), (-1.0, end.moves(square)),
                       (-(square[1] * away[0] - square[0] * away[1]), self.turns)])
        lean = dot(square, self.belly)
        return Reading(self.marks, dot(away, self.belly), [each / lean for each in shift])

    def angle(self, limb: int, t: float) -> Reading:
        """Return a limb's angle against the edge at a part of its chord [rad], toward the belly positive."""
        course, outward = self._course(limb), self.outward(limb)
        tangent = course.tangent(t)
        value = math.atan2(dot(tangent, self.belly), dot(tangent, outward))
        sign = self.side * (1.0 if limb == 0 else -1.0)
        return Reading(self.marks, value, added([(sign, course.turns(t)), (-sign, self.turns)]))

    def length(self, limb: int) -> Reading:
        """Return a limb's length along its belly, from fadeout to nock [m]."""
        known = self._lengths[limb]
        if known is None:
            value, shift = self._course(limb).length()
            known = self._lengths[limb] = Reading(self.marks, value, shift)
        return known

    def behind(self, first: int, count: int) -> Reading:
        """Return how far the edge lies behind the middle of some marks, toward the belly [m].

        Args:
            first: the place of the first of them among all marks.
            count: how many.
        """
        place, moves = self.marks.middle(first, count, self.belly)
        away = less(place, self.ends[0].place)
        return Reading(self.marks, -dot(away, self.belly), added([
            (1.0, self.ends[0].moves(self.belly)), (self.side * dot(away, self.out), self.turns),
            (-1.0, moves)]))

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
        places = [each.place for each in marks.points[first:first + count]]
        self.middle, self.on = best_line(places)
        self.square = -self.on[1], self.on[0]
        self.places = [dot(less(each, self.middle), self.on) for each in places]

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
        away = less(self.middle, place)
        shift = [-each for each in moved]
        at = -dot(away, self.on)
        spread = sum([each * each for each in self.places])
        for index, own in enumerate(self.places):
            weight = sign * (1 / len(self.places) + at * own / spread)
            shift[2 * (self.first + index)] += weight * self.square[0]
            shift[2 * (self.first + index) + 1] += weight * self.square[1]
        return Reading(self.marks, sign * dot(away, self.square), shift)

    def facing(self, toward: tuple[float, float]) -> float:
        """Return 1 where the line's own square points to a side, else -1."""
        return 1.0 if dot(self.square, toward) > 0 else -1.0
