"""Two limbs on a rigid riser, strung and drawn: tension, tilt, draw force, tiller and stored energy.

Riser frame: x toward the archer, y up. The upper limb is computed in this frame, the lower one in its
mirror image (y down), so that both limbs obey the same equations.

The nocking point, where the braced string crosses y = 0, parts the string in two halves of fixed unstretched
length. The string stretches by its tension over `string_stiffness` and lies on a recurved tip without
friction. The riser is free to turn, as in the hand: the line of the draw force passes through the pivot
point of the grip.
"""

import math

from calc.checks import require_positive
from calc.mechanics.bow.elastica import Limb, LimbShape, Pull
from calc.numerics import cubic
from calc.numerics.roots import solved
from calc.quantities import ROUNDING, in_both

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no collections.abc
    from collections.abc import Iterator

__all__ = ["Bow", "Braced", "Drawn", "Limb", "Tiller", "TipLetsGo"]

CLOSE_ENOUGH = 1e-7  # of the last correction; what is left is a thousandth of it
RATES_STILL_GOOD = 0.01  # corrections below this leave the derivatives as good as they were
MOST_CORRECTIONS = 24
MOST_TILT = 0.5  # [rad]
LONGEST_STRIDE = 0.1  # of the shorter string half, from one draw position to the next
SHORTEST_STRIDE = 0.01  # of the longest
SAME_PLACE = 1e-10  # of the longest
SAME_DRAW = 1e-9  # [m]; a draw that falls short of the one before, or of brace height, by less is the same
MOST_STRIDES = 100
LEAP_REACHES = (0.02, 0.15, 0.8)  # of the longest stride: how far past the last balance the next is sought
SEARCH_STEP = 0.01  # [rad], of string and draw while a balance is sought beyond a leap
SEARCH_GROWTH = 1.4  # of a step sideways after each
CLOSE_TO_SEARCH = 0.01  # of the tension
MOST_SEARCH_STEPS = 40
MOST_SIDEWAYS = 24


class Tiller:
    """Distances from string to limb [m]; positive difference: the upper limb stands farther off."""

    def __init__(self, upper: float, lower: float, difference: float) -> None:
        self.upper = upper
        self.lower = lower
        self.difference = difference


class _Balance:
    """Tensions [N] and string angles [rad] at a distance [m] from the pivot point, and the direction of draw
    [rad].
    """

    def __init__(
        self, distance: float, upper_tension: float, upper_angle: float, lower_tension: float,
        lower_angle: float, direction: float
    ) -> None:
        self.distance = distance
        self.upper_tension = upper_tension
        self.upper_angle = upper_angle
        self.lower_tension = lower_tension
        self.lower_angle = lower_angle
        self.direction = direction


class TipLetsGo(ValueError):
    """The string leaves a stiff tip all at once, and no balance lies beyond."""


class _NoBalance(Exception):
    """Newton's method did not settle."""


def _solve_two(a: float, b: float, c: float, d: float, right: tuple[float, float]) -> tuple[float, float]:
    """Return the solution of [[a, b], [c, d]] x = right."""
    found = solved((a, b), (c, d), right)
    if found is None:
        raise _NoBalance
    return found


class _Strung:
    """A bow in balance: a tension and an angle of the string for each limb, and the nocking point."""

    def __init__(
        self, bow: "Bow", balance: _Balance, nock: tuple[float, float], string_lengths: tuple[float, float]
    ) -> None:
        self.bow = bow
        self._balance = balance
        self._string_lengths = string_lengths
        self._upper: LimbShape | None = None
        self._lower: LimbShape | None = None
        self.distance = balance.distance
        self.nock = nock

    @property
    def upper(self) -> LimbShape:
        """The upper limb's shape, in the riser frame."""
        if self._upper is None:
            self._upper = self.bow.upper.shape(
                self._balance.upper_tension, self._balance.upper_angle, self.nock
            )
        return self._upper

    @property
    def lower(self) -> LimbShape:
        """The lower limb's shape, in the riser frame (y negative); its angle is that of its own frame."""
        if self._lower is None:
            shape = self.bow.lower.shape(
                self._balance.lower_tension, self._balance.lower_angle, (self.nock[0], -self.nock[1])
            )
            self._lower = LimbShape(
                shape.arc_length, shape.x, [-y for y in shape.y], shape.angle, shape.moment, shape.bending,
                shape.departure, shape.strain_energy,
            )
        return self._lower

    @property
    def strain_energy(self) -> float:
        """Energy [J] held by both limbs and the string, reckoned from the unstrung bow."""
        balance, lengths = self._balance, self._string_lengths
        string = balance.upper_tension**2 * lengths[0] + balance.lower_tension**2 * lengths[1]
        limbs: float = self.upper.strain_energy + self.lower.strain_energy
        return limbs + 0.5 * self.bow.string_yield * string


class Braced(_Strung):
    """A braced bow.

    height [m]: where the string crosses y = 0, and distance [m] from there to the pivot point.
    tension [N]. tilt [rad]: of the string from the y axis, positive when its upper end leans away from the
    archer. string_length [m], and of it upper_length and lower_length from the nocking point: unstretched.
    contact_upper, contact_lower [m]: arc length where the string leaves the limb; the limb's length where
    the string is free to the nock.
    """

    def __init__(
        self, bow: "Bow", height: float, tension: float, tilt: float, pulls: tuple[Pull, Pull]
    ) -> None:
        pivot_x, pivot_y = bow.pivot
        away = height - pivot_x
        distance = math.sqrt(away * away + pivot_y * pivot_y)
        balance = _Balance(distance, tension, tilt, tension, -tilt, math.atan2(-pivot_y, away))
        stretch = 1.0 + tension * bow.string_yield
        lengths = pulls[0].length / stretch, pulls[1].length / stretch
        super().__init__(bow, balance, (height, 0.0), lengths)
        self.height = height
        self.tension = tension
        self.tilt = tilt
        self.upper_length, self.lower_length = lengths
        self.string_length = self.upper_length + self.lower_length
        self.contact_upper = pulls[0].departure
        self.contact_lower = pulls[1].departure

    def tiller(self, from_end: float) -> Tiller:
        """Return string to limb, square to the string, at equal distances from the string's ends.

        Args:
            from_end [m]: along the string from the nock of each limb, > 0.

        Returns:
            [m] a Tiller, to the middle of each limb's thickness.

        Raises:
            ValueError: the string there does not stand over the limb.

        Source: bench-practice, how tiller is read with a square on the string.
        """
        require_positive("distance from the string's end", from_end, "m")
        upper, lower = self._place_read(0, from_end)[2], self._place_read(1, from_end)[2]
        return Tiller(upper, lower, upper - lower)

    def _place_read(self, limb: int, from_end: float) -> tuple[int, float, float]:
        """Return where tiller is read on the upper (0) or lower (1) limb, and what is read, as `_place`."""
        stretch = 1.0 + self.tension * self.bow.string_yield
        if limb == 0:
            return _place(self.upper, 1.0, self.height, self.tilt, self.upper_length * stretch - from_end)
        return _place(self.lower, -1.0, self.height, -self.tilt, self.lower_length * stretch - from_end)

    def reading_place(self, limb: int, from_end: float | None) -> float | None:
        """Return how far along a limb tiller is read.

        Args:
            limb: 0 the upper, 1 the lower.
            from_end [m]: along the string from its ends, > 0; None where it is read at the fadeouts.

        Returns:
            [m] arc length from the fadeout, at most to where the string leaves the limb; None at fadeouts.

        Raises:
            ValueError: the string there does not stand over the limb.

        Source: bench-practice, how tiller is read with a square on the string.
        """
        if from_end is None:
            return None
        station, part, _ = self._place_read(limb, from_end)
        shape, contact = (self.upper, self.contact_upper) if limb == 0 else (self.lower, self.contact_lower)
        return min((station + part) * shape.arc_length[1], contact)

    def furthest_reading(self) -> float:
        """Return how far from the string's ends tiller can be read before the string stands over the riser.

        Returns:
            [m] along the string to square to the nearer fadeout, the less of both limbs.

        Source: geometry, derived here: the foot of the square on the string, from similar triangles.
        """
        stretch = 1.0 + self.tension * self.bow.string_yield
        upper = _along_and_off(self.bow.upper.base, self.height, self.tilt)[0]
        lower = _along_and_off(self.bow.lower.base, self.height, -self.tilt)[0]
        return min(self.upper_length * stretch - upper, self.lower_length * stretch - lower)

    def tiller_at_fadeouts(self) -> Tiller:
        """Return string to limb, square to the string, at the fadeout of each limb.

        Returns:
            [m] a Tiller, to the middle of each limb's thickness.

        Source: bench-practice, how tiller is read at the fadeouts.
        """
        upper = _along_and_off(self.bow.upper.base, self.height, self.tilt)[1]
        lower = _along_and_off(self.bow.lower.base, self.height, -self.tilt)[1]
        return Tiller(upper, lower, upper - lower)


class Drawn(_Strung):
    """A drawn bow.

    distance [m]: pivot point to nocking point. force [N]: at the nocking point, along that line.
    tension_upper, tension_lower [N]. angle [rad]: of that line from the x axis, positive when the nocking
    point rises. string_angle_upper, string_angle_lower [rad]: of each string half from the y axis, in its
    limb's frame.
    """

    def __init__(self, bow: "Bow", balance: _Balance, braced: Braced) -> None:
        nock = bow.nock_at(balance.distance, balance.direction)
        super().__init__(bow, balance, nock, (braced.upper_length, braced.lower_length))
        self._braced = braced
        self.tension_upper = balance.upper_tension
        self.tension_lower = balance.lower_tension
        self.string_angle_upper = balance.upper_angle
        self.string_angle_lower = balance.lower_angle
        self.angle = balance.direction
        self.force = _force(balance)

    def balance_at(self, distance: float, harder: float = 1.0) -> _Balance:
        """Return this state's tensions and angles as a guess for another distance and another bow.

        Args:
            distance [m]: from the pivot point to the nocking point.
            harder [1]: as many times as stiff as this bow.

        Returns:
            What `Bow.draw` starts from.

        Source: geometry, nothing but the distance is changed; elastica, tension goes with stiffness.
        """
        balance = self._balance
        return _Balance(
            distance, harder * balance.upper_tension, balance.upper_angle,
            harder * balance.lower_tension, balance.lower_angle, balance.direction,
        )

    @property
    def stored_energy(self) -> float:
        """Energy [J] put in since the braced bow: the gain of strain energy in limbs and string."""
        return self.strain_energy - self._braced.strain_energy


def _resultant(balance: _Balance) -> tuple[float, float]:
    """Return the force that holds the nocking point against both string halves."""
    return (
        balance.upper_tension * math.sin(balance.upper_angle)
        + balance.lower_tension * math.sin(balance.lower_angle),
        balance.lower_tension * math.cos(balance.lower_angle)
        - balance.upper_tension * math.cos(balance.upper_angle),
    )


def _force(balance: _Balance) -> float:
    """Return the part of that force along the draw."""
    toward_x, toward_y = _resultant(balance)
    return toward_x * math.cos(balance.direction) + toward_y * math.sin(balance.direction)


def _along_and_off(
    place: tuple[float, float], height: float, tilt: float
) -> tuple[float, float]:
    """Return the way along the braced string to a place (x, y) of a limb's own frame, and how far it is off
    the string [m].
    """
    ahead, above = height - place[0], place[1]
    sine, cosine = math.sin(tilt), math.cos(tilt)
    return ahead * sine + above * cosine, ahead * cosine - above * sine


def _place(
    shape: LimbShape, side: float, height: float, tilt: float, along: float
) -> tuple[int, float, float]:
    """Return where a limb stands square to the string at a way along it from its crossing of y = 0: the
    station before, the part of the way to the next [1], and the distance from string to limb [m].
    """
    after = _along_and_off((shape.x[0], side * shape.y[0]), height, tilt)
    if along <= after[0]:
        raise ValueError("tiller must be read between the fadeout and the string's end, not over the riser")
    for station in range(1, len(shape.x)):
        place = shape.x[station], side * shape.y[station]
        before, after = after, _along_and_off(place, height, tilt)
        if after[0] >= along:
            t = (along - before[0]) / (after[0] - before[0])
            slopes = [math.tan(shape.angle[i] + tilt) for i in (station - 1, station)]
            width = after[0] - before[0]
            return station - 1, t, cubic.value(before[1], after[1], -width * slopes[0], -width * slopes[1], t)
    return len(shape.x) - 1, 0.0, 0.0


class Bow:
    """Two limbs on a rigid riser, with a string."""

    def __init__(
        self,
        upper: Limb,
        lower: Limb,
        pivot: tuple[float, float] = (0.0, 0.0),
        string_stiffness: float | None = None,
    ) -> None:
        """Put a bow together.

        Args:
            upper: the upper limb, in the riser frame.
            lower: the lower limb, in its mirror image, y down.
            pivot [m]: (x, y) of the grip's pivot point in the riser frame.
            string_stiffness [N]: tension per unit strain, > 0; None for a string that does not stretch.

        Raises:
            ValueError: string_stiffness is not positive, or the pivot is not a finite point.

        Limits:
            Slow drawing in one plane; no friction, no twist of the limbs, no give in the riser.

        Source: elastica, derived at the top of this module and of `elastica`.
        """
        if string_stiffness is not None:
            require_positive("string stiffness", string_stiffness, "N")
        if not (-math.inf < pivot[0] < math.inf and -math.inf < pivot[1] < math.inf):
            raise ValueError("the pivot point must have finite coordinates")
        self.upper = upper
        self.lower = lower
        self.pivot = (pivot[0], pivot[1])
        self.string_stiffness = string_stiffness
        self.string_yield = 0.0 if string_stiffness is None else 1.0 / string_stiffness
        self.braced: Braced | None = None

    def nock_at(self, distance: float, direction: float) -> tuple[float, float]:
        """Return where a nocking point is.

        Args:
            distance [m]: from the pivot point.
            direction [rad]: from the x axis, positive upward.

        Returns:
            [m] (x, y) in the riser frame.

        Source: geometry, derived here: polar to rectangular coordinates.
        """
        return (
            self.pivot[0] + distance * math.cos(direction),
            self.pivot[1] + distance * math.sin(direction),
        )

    def brace(self, height: float, near: Braced | None = None, harder: float = 1.0) -> Braced:
        """String the bow, so that the string crosses y = 0 at x = height, and keep that string on it.

        Args:
            height [m]: x of the string where it crosses y = 0.
            near: the braced state of a bow much like this one, to start from.
            harder [1]: as many times as stiff as that one, about.

        Returns:
            The braced bow.

        Raises:
            ValueError: the bow cannot be braced to this height, in a sentence that says why.

        Source: elastica, derived here: both limbs meet one line under one tension.
        """
        self._require_bracing_room(height)
        braced = near and self._brace_from(height, harder * near.tension, near.tilt)
        if braced is None:
            guess = self._first_guess(height)
            braced = guess and self._brace_from(height, *guess)
        if braced is None:
            raise ValueError(
                f"no steady balance was found at a brace height of {in_both(height)}: the limbs cannot "
                "reach the string line, are too unequal, or are so reflexed for this riser that it tips over"
            )
        self.upper.require_no_hollow(braced.contact_upper)
        self.lower.require_no_hollow(braced.contact_lower)
        self.braced = braced
        return braced

    def _require_bracing_room(self, height: float) -> None:
        """Raise ValueError where the height alone shows that the bow cannot be braced to it."""
        if not -math.inf < height < math.inf:
            raise ValueError("brace height must be a finite length")
        if height <= self.pivot[0]:
            raise ValueError(
                f"brace height must put the string behind the pivot point, at {in_both(self.pivot[0])}; "
                f"it is {in_both(height)}"
            )
        for name, limb in (("upper", self.upper), ("lower", self.lower)):
            if height <= limb.base[0]:
                raise ValueError(
                    f"brace height must put the string behind the {name} fadeout, at "
                    f"{in_both(limb.base[0])}; it is {in_both(height)}"
                )
            if limb.slack_gap(height) <= 0.0:
                raise ValueError(
                    f"brace height must lie behind the unstrung {name} limb, or the string hangs slack; "
                    f"{in_both(height)} does not"
                )

    def _first_guess(self, height: float) -> tuple[float, float] | None:
        """Return the tension that brings the limbs to an upright string, each by itself, between the two."""
        product = 1.0
        for limb in (self.upper, self.lower):
            tension = 0.5 * limb.stiffness[0] / limb.length**2
            for _ in range(MOST_CORRECTIONS):
                pull = limb.pull(tension, 0.0, (height, 0.0))
                if not pull.gap_rates[0] < 0.0:
                    return None
                correction = -pull.gap / pull.gap_rates[0]
                tension += max(-0.5 * tension, min(correction, tension))
                if abs(correction) < 0.02 * tension:
                    break
            product *= tension
        return math.sqrt(product), 0.0

    def _brace_from(self, height: float, tension: float, tilt: float) -> Braced | None:
        """Return the braced bow, by Newton's method on tension and tilt, or None if there is no such bow."""
        point = (height, 0.0)
        for _ in range(MOST_CORRECTIONS):
            upper = self.upper.pull(tension, tilt, point)
            lower = self.lower.pull(tension, -tilt, point)
            try:
                more, turn = _solve_two(
                    upper.gap_rates[0], upper.gap_rates[1], lower.gap_rates[0], -lower.gap_rates[1],
                    (-upper.gap, -lower.gap),
                )
            except _NoBalance:
                return None
            if max(abs(more) / tension, abs(turn)) < CLOSE_ENOUGH:
                if not (_stays_upright(upper, lower) and self._stands_clear(height, tilt)):
                    return None
                pulls = _moved(upper, more, turn), _moved(lower, more, -turn)
                if not (0.0 < pulls[0].length < math.inf and 0.0 < pulls[1].length < math.inf):
                    return None  # a limb folded up past its own fadeout
                return Braced(self, height, tension + more, tilt + turn, pulls)
            damping = 1.0 / max(1.0, 2.0 * abs(more) / tension, 5.0 * abs(turn))
            tension += damping * more
            tilt += damping * turn
        return None

    def _stands_clear(self, height: float, tilt: float) -> bool:
        """Say whether the string passes behind both fadeouts and leans no more than a braced string can."""
        for limb, angle in ((self.upper, tilt), (self.lower, -tilt)):
            if (height - limb.base[0]) * math.cos(angle) <= limb.base[1] * math.sin(angle):
                return False
        return abs(tilt) < MOST_TILT

    def draw(self, distance: float, near: Drawn | None = None, harder: float = 1.0) -> Drawn:
        """Draw the braced bow.

        Args:
            distance [m]: from the pivot point to the nocking point, not less than when braced.
            near: a drawn state, at about this distance, of a bow much like this one, to start from.
            harder [1]: as many times as stiff as that one, about.

        Returns:
            The drawn bow.

        Raises:
            ValueError: the bow is not braced, or cannot be drawn to this distance.

        Source: elastica, derived here: the five equations of `_settle`.
        """
        braced = self._require_drawable(distance)
        if near is not None:
            try:
                return Drawn(self, self._settle(braced, near.balance_at(distance, harder)), braced)
            except _NoBalance:
                pass
        return Drawn(self, self._follow(braced, [braced._balance], distance), braced)

    def curve(self, distances: list[float] | tuple[float, ...]) -> list[Drawn]:
        """Draw the braced bow to one distance after another.

        Args:
            distances [m]: as for `draw`, each not less than the one before.

        Returns:
            The drawn bow at each distance.

        Raises:
            ValueError: as for `draw`, or the distances do not rise.

        Source: elastica, as for `draw`.
        """
        return list(self.curve_steps(distances))

    def curve_steps(self, distances: list[float] | tuple[float, ...]) -> "Iterator[Drawn]":
        """Yield what `curve` returns, one drawn bow at a time, so that a long task can be stopped.

        Args:
            distances [m]: as for `curve`.

        Returns:
            The drawn bows, one by one.

        Raises:
            ValueError: as for `curve`.

        Source: elastica, as for `draw`.
        """
        trail: list[_Balance] = []
        for distance in distances:
            braced = self._require_drawable(distance)
            trail = trail or [braced._balance]
            if distance < trail[-1].distance - SAME_DRAW:
                raise ValueError("the distances of a draw curve must rise from each to the next")
            yield Drawn(self, self._follow(braced, trail, distance), braced)

    def _require_drawable(self, distance: float) -> Braced:
        """Return the braced state, or raise ValueError if there is none or the distance is less than its."""
        braced = self.braced
        if braced is None:
            raise ValueError("a bow must be braced before it is drawn")
        if not braced.distance - SAME_DRAW <= distance < math.inf:
            raise ValueError(
                f"draw must be at least the distance of the braced string, {in_both(braced.distance)}; "
                f"it is {in_both(distance)}"
            )
        return braced

    def _follow(self, braced: Braced, trail: list[_Balance], distance: float) -> _Balance:
        """Return the balance at a distance, going there from the trail's end in strides that settle."""
        longest = LONGEST_STRIDE * min(braced.upper_length, braced.lower_length)
        stride = longest
        for _ in range(MOST_STRIDES):
            left = distance - trail[-1].distance
            if abs(left) < SAME_PLACE * longest:
                return trail[-1]
            pieces = math.ceil(abs(left) / stride - ROUNDING)
            reach = left / max(1, pieces)
            try:
                found = self._settle(braced, _foreseen(braced, trail, trail[-1].distance + reach))
            except _NoBalance:
                stride = 0.5 * min(stride, abs(reach))
                if stride < SHORTEST_STRIDE * longest:
                    if not self._lets_go(trail):
                        break
                    reaches = [min(share * longest, left) for share in LEAP_REACHES]
                    leapt = self._leap(braced, trail[-1], reaches)
                    if leapt is None:
                        raise TipLetsGo(
                            f"the bow cannot be drawn to {in_both(distance)}: at "
                            f"{in_both(trail[-1].distance)} the string leaves a stiff tip all at once, and "
                            "limbs and string find no balance close beyond"
                        ) from None
                    trail[:] = [leapt]
                    stride = SHORTEST_STRIDE * longest
                continue
            if len(trail) > 1 and abs(reach) < SHORTEST_STRIDE * longest:
                trail.pop()  # too close a pair would spoil the foresight
            trail.append(found)
            if len(trail) > 3:
                trail.pop(0)
            stride = min(longest, 2.0 * stride)
        raise ValueError(
            f"the bow cannot be drawn to {in_both(distance)}: past "
            f"{in_both(trail[-1].distance)} limbs and string find no balance"
        )

    def _lets_go(self, trail: list[_Balance]) -> bool:
        """Say whether a tip that held the string lets go of it at the trail's end.

        There the bow pulls ever harder until no balance is left; one that tips over pulls less and less.
        """
        last = trail[-1]
        if len(trail) < 2 or not _force(last) > _force(trail[-2]) or abs(last.direction) > MOST_TILT:
            return False
        x, y = self.nock_at(last.distance, last.direction)
        return (
            self.upper.pull(last.upper_tension, last.upper_angle, (x, y)).departure < self.upper.length
            or self.lower.pull(last.lower_tension, last.lower_angle, (x, -y)).departure < self.lower.length
        )

    def _leap(self, braced: Braced, last: _Balance, reaches: list[float]) -> _Balance | None:
        """Return the balance beyond a leap, at the first of some reaches past the last one that has it."""
        for reach in reaches:
            found = self._fall(braced, last, last.distance + reach)
            if found is not None:
                return found
        return None

    def _fall(self, braced: Braced, last: _Balance, distance: float) -> _Balance | None:
        """Return the balance into which a bow falls, held at a distance just past where its balance ended.

        Each limb goes to the nearest place at which it stays by itself, the nock sideways as far as the
        force across the draw drives it.
        """
        here, way, step = last, 0.0, SEARCH_STEP
        for _ in range(MOST_SIDEWAYS):
            x, y = self.nock_at(distance, here.direction)
            upper = _nearest(self.upper, here.upper_tension, here.upper_angle, (x, y), braced.upper_length,
                             self.string_yield)
            lower = _nearest(self.lower, here.lower_tension, here.lower_angle, (x, -y), braced.lower_length,
                             self.string_yield)
            if upper is None or lower is None:
                return None
            here = _Balance(distance, upper[0], upper[1], lower[0], lower[1], here.direction)
            toward_x, toward_y = _resultant(here)
            across = toward_x * math.sin(here.direction) - toward_y * math.cos(here.direction)
            toward = 1.0 if across > 0.0 else -1.0
            if toward != way:
                try:
                    return self._settle(braced, here)
                except _NoBalance:
                    step *= 0.5 if way else 1.0
            else:
                step *= SEARCH_GROWTH
            way = toward
            here.direction += way * step
            if abs(here.direction) > MOST_TILT:
                break
        return None

    def _settle(self, braced: Braced, guess: _Balance) -> _Balance:
        """Return the balance at the guess's distance, by Newton's method on its five unknowns.

        Two equations a limb: the gap closes, and the string is as long as it is. They are solved for the
        limb's tension and string angle as they depend on the direction of draw; the fifth, that the force
        passes through the pivot point, then gives the direction.
        """
        distance, direction = guess.distance, guess.direction
        tension_u, angle_u = guess.upper_tension, guess.upper_angle
        tension_l, angle_l = guess.lower_tension, guess.lower_angle
        string_yield = self.string_yield
        pull_u = pull_l = None
        for _ in range(MOST_CORRECTIONS // 2):
            x, y = self.nock_at(distance, direction)
            along, across = math.cos(direction), math.sin(direction)
            step_x, step_y = -distance * across, distance * along
            pull_u = self.upper.pull(tension_u, angle_u, (x, y), pull_u)
            pull_l = self.lower.pull(tension_l, angle_l, (x, -y), pull_l)
            upper = _corrections(pull_u, braced.upper_length, string_yield, tension_u, step_x, step_y)
            lower = _corrections(pull_l, braced.lower_length, string_yield, tension_l, step_x, -step_y)
            sine_u, cosine_u = math.sin(angle_u), math.cos(angle_u)
            sine_l, cosine_l = math.sin(angle_l), math.cos(angle_l)
            force_x = tension_u * sine_u + tension_l * sine_l
            force_y = tension_l * cosine_l - tension_u * cosine_u
            # the part of the force across the draw, and its derivatives
            by_tension_u = sine_u * across + cosine_u * along
            by_angle_u = tension_u * (cosine_u * across - sine_u * along)
            by_tension_l = sine_l * across - cosine_l * along
            by_angle_l = tension_l * (cosine_l * across + sine_l * along)
            amiss = (
                force_x * across - force_y * along
                + by_tension_u * upper[0] + by_angle_u * upper[1]
                + by_tension_l * lower[0] + by_angle_l * lower[1]
            )
            slope = (
                force_x * along + force_y * across
                + by_tension_u * upper[2] + by_angle_u * upper[3]
                + by_tension_l * lower[2] + by_angle_l * lower[3]
            )
            if slope == 0.0 or slope != slope:
                raise _NoBalance
            swing = -amiss / slope
            more_u, turn_u = upper[0] + swing * upper[2], upper[1] + swing * upper[3]
            more_l, turn_l = lower[0] + swing * lower[2], lower[1] + swing * lower[3]
            pull_change = max(abs(more_u) / tension_u, abs(more_l) / tension_l)
            turn = max(abs(turn_u), abs(turn_l), abs(swing))
            damping = 1.0 / max(1.0, 2.0 * pull_change, 4.0 * turn)
            tension_u += damping * more_u
            tension_l += damping * more_l
            angle_u += damping * turn_u
            angle_l += damping * turn_l
            direction += damping * swing
            if pull_change < CLOSE_ENOUGH and turn < CLOSE_ENOUGH:
                if slope > 0.0:  # a nock that strays sideways would be driven farther
                    raise _NoBalance
                if not (_is_steady(pull_u, braced.upper_length * string_yield)
                        and _is_steady(pull_l, braced.lower_length * string_yield)):
                    raise _NoBalance
                return _checked(_Balance(distance, tension_u, angle_u, tension_l, angle_l, direction))
            if not max(pull_change, turn) < RATES_STILL_GOOD:
                pull_u = pull_l = None
        raise _NoBalance


def _moved(pull: Pull, more: float, turn: float) -> Pull:
    """Return a pull with its length carried over a last small correction of tension and angle."""
    length = pull.length + pull.length_rates[0] * more + pull.length_rates[1] * turn
    return Pull(pull.gap, length, pull.departure, pull.gap_rates, pull.length_rates)


def _stays_upright(upper: Pull, lower: Pull) -> bool:
    """Say whether a little tilt would die away: the limb the string leans away from must pull less."""
    if upper.gap_rates[0] == 0.0 or lower.gap_rates[0] == 0.0:
        return False
    return bool(upper.gap_rates[1] / upper.gap_rates[0] + lower.gap_rates[1] / lower.gap_rates[0] > 0.0)


def _is_steady(pull: Pull, string_give: float) -> bool:
    """Say whether a limb stays by itself where it is, its string held at a point: the greater the string's
    angle, the longer the string that fits, and no tip is about to let go.
    """
    gap_k, gap_a = pull.gap_rates[0], pull.gap_rates[1]
    return bool(gap_k * pull.length_rates[1] < gap_a * (pull.length_rates[0] - string_give))


def _nearest(
    limb: Limb, tension: float, angle: float, point: tuple[float, float], string_length: float,
    string_yield: float
) -> tuple[float, float] | None:
    """Return the nearest steady tension and string angle of a limb whose string is drawn to a point, roughly.

    A string that is too long for the angle lets the limb go on to a lesser one, one too short to a greater:
    where that changes, the limb stays.
    """
    way, before = 0.0, 0.0
    for _ in range(MOST_SEARCH_STEPS):
        pull = limb.pull(tension, angle, point)
        gap_k, gap_a = pull.gap_rates[0], pull.gap_rates[1]
        if not gap_k < 0.0:
            return None
        more = max(-0.5 * tension, min(-pull.gap / gap_k, tension))
        tension += more
        if abs(more) > CLOSE_TO_SEARCH * tension:
            continue
        excess = pull.length + pull.length_rates[0] * more - string_length * (1.0 + tension * string_yield)
        toward = -1.0 if excess > 0.0 else 1.0
        turn = toward * SEARCH_STEP
        if way and toward != way:
            turn *= excess / (excess - before)
        tension -= gap_a / gap_k * turn
        angle += turn
        if way and toward != way:
            return tension, angle
        way, before = toward, excess
    return None


def _corrections(
    pull: Pull, string_length: float, string_yield: float, tension: float, step_x: float, step_y: float
) -> tuple[float, float, float, float]:
    """Return one limb's corrections of tension and angle, and how both follow the direction of draw."""
    gap_k, gap_a, gap_x, gap_y = pull.gap_rates
    length_k, length_a, length_x, length_y = pull.length_rates
    length_k -= string_length * string_yield
    excess = pull.length - string_length * (1.0 + tension * string_yield)
    still = _solve_two(gap_k, gap_a, length_k, length_a, (-pull.gap, -excess))
    moved = _solve_two(
        gap_k, gap_a, length_k, length_a,
        (-(gap_x * step_x + gap_y * step_y), -(length_x * step_x + length_y * step_y)),
    )
    return still[0], still[1], moved[0], moved[1]


def _checked(balance: _Balance) -> _Balance:
    """Return the balance if the string pulls and the bow pulls back."""
    pulled = balance.upper_tension + balance.lower_tension
    if not (balance.upper_tension > 0.0 and balance.lower_tension > 0.0 and _force(balance) > -1e-6 * pulled):
        raise _NoBalance
    if not max(abs(balance.upper_angle), abs(balance.lower_angle)) < 0.5 * math.pi:
        raise _NoBalance
    return balance


def _foreseen(braced: Braced, trail: list[_Balance], distance: float) -> _Balance:
    """Return a guess at the balance at a distance, from up to three already found."""
    last = trail[-1]
    if len(trail) == 1:
        further = distance - last.distance
        return _Balance(
            distance, last.upper_tension, last.upper_angle + further / braced.upper_length,
            last.lower_tension, last.lower_angle + further / braced.lower_length, last.direction,
        )
    rows = [
        (each.upper_tension, each.upper_angle, each.lower_tension, each.lower_angle, each.direction)
        for each in trail
    ]
    values = []
    for field in range(5):
        total = 0.0
        for i in range(len(trail)):
            part = rows[i][field]
            for j in range(len(trail)):
                if j != i:
                    part *= (distance - trail[j].distance) / (trail[i].distance - trail[j].distance)
            total += part
        values.append(total)
    upper_tension, upper_angle, lower_tension, lower_angle, direction = values
    return _Balance(
        distance, max(upper_tension, 0.3 * last.upper_tension), upper_angle,
        max(lower_tension, 0.3 * last.lower_tension), lower_angle, direction,
    )
