"""How a bow's weight and tiller answer to the stiffness of each stretch of its limbs, to first order.

What a stretch less stiff does to a limb under a held pull is known all along the limb by one look back from
where string and limb meet (`Limb.stiffness_rates`). The equations of brace and draw, varied, carry that on to
tension, tilt and string, and to the draw force. So bows that differ a little from one that was computed need
not be computed one by one.
"""

import math

from calc.mechanics.bow.bow import Braced, Drawn
from calc.mechanics.bow.elastica import Limb, StiffnessRates
from calc.numerics.interpolation import gathered
from calc.numerics.roots import solved


class PlaceRates:
    """Weight [N] and tiller [m] of a bow by the logarithm of stiffness: of either limb, at each half step
    from fadeout to nock.
    """

    def __init__(
        self, upper: tuple[list[float], list[float]], lower: tuple[list[float], list[float]]
    ) -> None:
        self._limbs = upper, lower

    def gain(self, limb: int, changes: list[float]) -> tuple[float, float]:
        """Return what a small change of one limb's stiffness does.

        Args:
            limb: 0 the upper, 1 the lower.
            changes [1]: of the logarithm of its stiffness, one value per step of the integration.

        Returns:
            The gain of weight [N] and that of tiller [m].

        Limits:
            First order in the changes.

        Source: elastica, a sum of the rates.
        """
        weight = tiller = 0.0
        for by_weight, by_tiller, change in zip(self._limbs[limb][0], self._limbs[limb][1], changes):
            weight += by_weight * change
            tiller += by_tiller * change
        return weight, tiller

    def whole(self, limb: int) -> tuple[float, float]:
        """Return what a limb does that is stiffer by a share all along.

        Args:
            limb: 0 the upper, 1 the lower.

        Returns:
            The rates of weight [N] and of tiller [m] by the share.

        Source: elastica, a sum of the rates.
        """
        return sum(self._limbs[limb][0]), sum(self._limbs[limb][1])


def place_rates(
    braced: Braced, drawn: Drawn, from_end: float | None, alike: bool = False
) -> PlaceRates:
    """Return how weight and tiller answer to stiffness, the brace height held by twisting the string.

    Args:
        braced: a bow, braced.
        drawn: the same where its weight is read.
        from_end [m]: along the string from its ends, where tiller is read; None at the fadeouts.
        alike: tell only how they answer to each limb as a whole, which costs less.

    Returns:
        PlaceRates.

    Raises:
        ValueError: the bow stands where it tips or a tip lets go, so that there are no rates.

    Limits:
        Fourth order in the step of the integration, as `Limb.stiffness_rates`; of limbs as a whole second.

    Source: elastica, derived here: the equations of brace and draw, varied.
    """
    brace, force = _BraceRates(braced, from_end, alike), _ForceRates(braced, drawn, alike)
    limbs = []
    for limb in (0, 1):
        by_gap, by_way = brace.of_gap(limb), brace.of_way(limb)
        at_brace, at_draw, place = brace.limbs[limb], force.limbs[limb], brace.readings[limb].along
        force_by_gap = force.strings[0] * by_gap[0] + force.strings[1] * by_gap[1]
        force_by_way = force.strings[0] * by_way[0] + force.strings[1] * by_way[1]
        weights, tillers = [], []
        for i in range(len(at_brace.gaps)):
            weights.append(force_by_gap * at_brace.gaps[i] + force_by_way * at_brace.ways[i]
                           + force.gaps[limb] * at_draw.gaps[i] + force.ways[limb] * at_draw.ways[i])
            tillers.append(by_gap[2] * at_brace.gaps[i] + by_way[2] * at_brace.ways[i]
                           + (place[i] if place else 0.0))
        limbs.append((weights, tillers) if alike else (gathered(weights), gathered(tillers)))
    return PlaceRates(limbs[0], limbs[1])


def _limb_rates(
    limb: Limb, tension: float, angle: float, point: tuple[float, float], alike: bool,
    place: float | None = None,
) -> StiffnessRates:
    """Return a limb's rates by its stiffness at each place; alike: by that of all places together."""
    if alike and place is None:
        pull = limb.pull(tension, angle, point)  # a limb softer all along is one that is pulled harder
        return StiffnessRates([-tension * pull.gap_rates[0]], [-tension * pull.length_rates[0]],
                              pull.gap_rates, pull.length_rates, 0.0)
    found = limb.stiffness_rates(tension, angle, point, place)
    if not alike:
        return found
    return StiffnessRates([sum(found.gaps)], [sum(found.ways)], found.gap_rates, found.way_rates, found.angle)


def _solution(
    first: tuple[float, float], second: tuple[float, float], right: tuple[float, float]
) -> tuple[float, float]:
    found = solved(first, second, right)
    if found is None:
        raise ValueError("a bow that is about to tip, or to let go of a tip, has no rates")
    return found


class _ReadingRates:
    """A distance from string to limb by tension, the limb's own string angle and the length of its string
    half; and along the limb by the logarithm of stiffness, nothing where that does not count.
    """

    def __init__(self, by_tension: float, by_angle: float, by_length: float, along: list[float]) -> None:
        self.by_tension = by_tension
        self.by_angle = by_angle
        self.by_length = by_length
        self.along = along


class _BraceRates:
    """How the lengths of both string halves, unstretched, and tiller answer to gap and way of either limb."""

    def __init__(self, braced: Braced, from_end: float | None, alike: bool) -> None:
        bow = braced.bow
        self._braced = braced
        sides = ((bow.upper, braced.tilt), (bow.lower, -braced.tilt))
        self.limbs = [_limb_rates(limb, braced.tension, angle, (braced.height, 0.0), alike)
                      for limb, angle in sides]
        self.readings = [_reading_rates(limb, braced, angle, braced.reading_place(which, from_end),
                                        1.0 - 2.0 * which, alike)
                         for which, (limb, angle) in enumerate(sides)]

    def of_gap(self, limb: int) -> tuple[float, float, float]:
        """Return the rates of both lengths and of tiller by a limb's gap, which tension and tilt close."""
        upper, lower = self.limbs
        more, turn = _solution((upper.gap_rates[0], upper.gap_rates[1]),
                               (lower.gap_rates[0], -lower.gap_rates[1]),
                               (-1.0, 0.0) if limb == 0 else (0.0, -1.0))
        lengths, tiller = [], 0.0
        halves = self._braced.upper_length, self._braced.lower_length
        for each, reading, turned, half in zip(self.limbs, self.readings, (turn, -turn), halves):
            length = each.way_rates[0] * more + each.way_rates[1] * turned
            tiller += reading.by_tension * more + reading.by_angle * turned + reading.by_length * length
            lengths.append((length - half * self._braced.bow.string_yield * more) / self._stretch())
        return lengths[0], lengths[1], tiller

    def of_way(self, limb: int) -> tuple[float, float, float]:
        """Return the rates of both lengths and of tiller by a limb's way along the string."""
        length, tiller = 1.0 / self._stretch(), self.readings[limb].by_length
        return (length, 0.0, tiller) if limb == 0 else (0.0, length, tiller)

    def _stretch(self) -> float:
        return 1.0 + self._braced.tension * self._braced.bow.string_yield


def _reading_rates(
    limb: Limb, braced: Braced, angle: float, place: float | None, side: float, alike: bool
) -> _ReadingRates:
    """Return the rates of a reading of tiller, times the side on which it counts.

    place [m]: arc length where it is read, None at the fadeout.
    """
    point = (braced.height, 0.0)
    if place is None:
        ahead, above = point[0] - limb.base[0], limb.base[1]
        return _ReadingRates(0.0, -side * (ahead * math.sin(angle) + above * math.cos(angle)), 0.0, [])
    at = _limb_rates(limb, braced.tension, angle, point, alike, place)
    lean = side * math.tan(at.angle)
    return _ReadingRates(
        side * at.gap_rates[0] + lean * at.way_rates[0], side * at.gap_rates[1] + lean * at.way_rates[1],
        -lean, [side * gap + lean * way for gap, way in zip(at.gaps, at.ways)])


class _ForceRates:
    """How the draw force answers to gap and way of either limb (gaps, ways) and to the lengths of both string
    halves, unstretched (strings).
    """

    def __init__(self, braced: Braced, drawn: Drawn, alike: bool) -> None:
        bow = braced.bow
        x, y = drawn.nock
        self.limbs = (
            _limb_rates(bow.upper, drawn.tension_upper, drawn.string_angle_upper, (x, y), alike),
            _limb_rates(bow.lower, drawn.tension_lower, drawn.string_angle_lower, (x, -y), alike))
        across, along = drawn.distance * math.sin(drawn.angle), drawn.distance * math.cos(drawn.angle)
        upper = _Half(self.limbs[0], drawn.tension_upper, drawn.string_angle_upper - drawn.angle, 1.0,
                      braced.upper_length, bow.string_yield, (-across, along))
        lower = _Half(self.limbs[1], drawn.tension_lower, drawn.string_angle_lower + drawn.angle, -1.0,
                      braced.lower_length, bow.string_yield, (-across, -along))
        swung = upper.force(upper.swung) + lower.force(lower.swung)
        stays = drawn.force + upper.across(upper.swung) + lower.across(lower.swung)
        if stays == 0.0:
            raise ValueError("a bow that is about to tip has no rates")
        self.gaps, self.ways, self.strings = [], [], []
        for half in (upper, lower):
            by_gap, by_way = half.answer(1.0, 0.0), half.answer(0.0, 1.0)
            self.gaps.append(half.force(by_gap) - half.across(by_gap) / stays * swung)
            self.ways.append(half.force(by_way) - half.across(by_way) / stays * swung)
            self.strings.append(-self.ways[-1] * half.stretch)


class _Half:
    """One half of a drawn string: how its tension and angle answer, and what they do to the draw force.

    angle [rad]: from the string to the line square to the draw. side: 1 the upper, -1 the lower. toward [m]:
    how the nock moves, in the limb's frame, as the draw turns.
    """

    def __init__(
        self, limb: StiffnessRates, tension: float, angle: float, side: float, length: float,
        string_yield: float, toward: tuple[float, float],
    ) -> None:
        gap_k, gap_a, gap_x, gap_y = limb.gap_rates
        way_k, way_a, way_x, way_y = limb.way_rates
        self._gap = gap_k, gap_a
        self._way = way_k - length * string_yield, way_a
        self._tension = tension
        self._sine, self._cosine = math.sin(angle), math.cos(angle)
        self._side = side
        self.stretch = 1.0 + tension * string_yield
        self.swung = self.answer(gap_x * toward[0] + gap_y * toward[1], way_x * toward[0] + way_y * toward[1])

    def answer(self, gap: float, way: float) -> tuple[float, float]:
        """Return the changes of tension and angle that make up a gap and a way."""
        return _solution(self._gap, self._way, (-gap, -way))

    def force(self, change: tuple[float, float]) -> float:
        """Return what changes of tension and angle add to the draw force."""
        return self._sine * change[0] + self._tension * self._cosine * change[1]

    def across(self, change: tuple[float, float]) -> float:
        """Return what they add to the force across the draw."""
        return self._side * (self._cosine * change[0] - self._tension * self._sine * change[1])
