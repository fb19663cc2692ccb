"""One limb, bending as far as it likes, under the pull of a straight string.

Axes, in the limb's own frame: x toward the archer, y from the riser to the tip. Arc length s runs from the
fadeout (0) to the nock. The tangent angle theta is measured from the y axis, positive toward the archer:
dx/ds = sin(theta), dy/ds = cos(theta).

The string runs along a straight line through a point (b, n), away from the archer by `string_angle` alpha
from the y axis. Two lengths say where the limb is, seen from that line: the gap h, square to the line,

    h = (b - x) cos(alpha) - (y - n) sin(alpha),        dh/ds = -sin(theta + alpha),

and the way p along it, dp/ds = cos(theta + alpha). The tension K bends the limb by the moment K h:

    E I (dtheta/ds - dtheta0/ds) = K h.

So a limb under a known pull is an initial-value problem from the fadeout. Where the angle
phi = theta + alpha falls through zero the gap is least: there a recurved tip takes the string onto its
belly. Beyond that point string and limb carry no moment between them and the limb keeps its rest curvature.
"""

import math

from calc.checks import require_positive
from calc.numerics import cubic
from calc.numerics.interpolation import curve_at, halves, station_slopes

FEWEST_STEPS = 20
MOST_STATION_STEPS = 48
MOST_HOLLOW = 0.035  # [rad], about two degrees


class Pull:
    """What a string line meets on a limb.

    gap [m]: the least distance from the line to the limb where they come together; zero in balance, negative
    where the limb stands through the line. length [m]: of the string from the line's point to the nock.
    departure [m]: arc length where the string leaves the limb. The rates are derivatives of gap and length by
    tension, string angle and the point's x and y.
    """

    def __init__(
        self, gap: float, length: float, departure: float, gap_rates: tuple[float, ...],
        length_rates: tuple[float, ...]
    ) -> None:
        self.gap = gap
        self.length = length
        self.departure = departure
        self.gap_rates = gap_rates
        self.length_rates = length_rates


class StiffnessRates:
    """How a limb under a pull answers, with the line held, to its stiffness along its length.

    gaps, ways [m]: of the gap and of the way along the line, at a place of the limb, by the logarithm of
    stiffness at each half step from fadeout to nock. gap_rates, way_rates: of the same by tension, string
    angle and the point's x and y. angle [rad]: of the limb to the line there.
    """

    def __init__(
        self, gaps: list[float], ways: list[float], gap_rates: tuple[float, ...],
        way_rates: tuple[float, ...], angle: float
    ) -> None:
        self.gaps = gaps
        self.ways = ways
        self.gap_rates = gap_rates
        self.way_rates = way_rates
        self.angle = angle


class LimbShape:
    """A limb's shape, each list with one value per station of `arc_length` [m].

    x, y [m] and tangent angle [rad]; bending moment [N m]; bending [1/m], the change of curvature from rest;
    departure [m], the arc length where the string leaves the limb; strain_energy [J].
    """

    def __init__(
        self, arc_length: list[float], x: list[float], y: list[float], angle: list[float],
        moment: list[float], bending: list[float], departure: float, strain_energy: float
    ) -> None:
        self.arc_length = arc_length
        self.x = x
        self.y = y
        self.angle = angle
        self.moment = moment
        self.bending = bending
        self.departure = departure
        self.strain_energy = strain_energy


class _Path:
    """A limb under a pull, by station: gap to the line [m], angle to it [rad], its sine and cosine."""

    def __init__(
        self, gaps: list[float], turns: list[float], sines: list[float], cosines: list[float]
    ) -> None:
        self.gaps = gaps
        self.turns = turns
        self.sines = sines
        self.cosines = cosines


class _Meeting:
    """Where string and limb meet: the cell, the fraction of it [1] and the gap there [m]."""

    def __init__(self, cell: int, fraction: float, gap: float) -> None:
        self.cell = cell
        self.fraction = fraction
        self.gap = gap


class _Rest:
    """What a limb is like at rest: slopes of its angles per station, its angle at every half step [rad] and
    its curvature at every step [1/m]. slack: gaps to an upright string at a height [m] while nothing pulls.
    """

    def __init__(self, angles: tuple[float, ...], length: float, steps: int) -> None:
        self.slopes = station_slopes(angles)
        self.half_angles: list[float] = []
        self.curvatures: list[float] = []
        self.slack: dict[float, float] = {}
        cells = len(angles) - 1
        for k in range(2 * steps + 1):
            angle, slope = curve_at(angles, self.slopes, k * 0.5 / steps * cells)
            self.half_angles.append(angle)
            if k % 2 == 0:
                self.curvatures.append(slope * cells / length)


def _lowest(start: float, end: float, leave: float, arrive: float) -> float:
    """Return where, from 0 to 1, a cubic is least that leaves falling and arrives rising."""
    rise = end - start
    square = 3.0 * rise - 2.0 * leave - arrive
    cube = leave + arrive - 2.0 * rise
    divisor = square + math.sqrt(max(0.0, square * square - 3.0 * cube * leave))
    return min(1.0, -leave / divisor) if divisor > 0.0 else 1.0


def _finite(values: tuple[float, ...]) -> bool:
    return all(-math.inf < value < math.inf for value in values)


class Limb:
    """An elastic limb: what it is like at rest and how stiff it is along its length."""

    def __init__(
        self,
        length: float,
        base: tuple[float, float],
        rest_angles: tuple[float, ...] | list[float],
        stiffness: tuple[float, ...] | list[float],
        steps: int | None = None,
        like: "Limb | None" = None,
        softness: float | None = None,
    ) -> None:
        """Describe a limb from fadeout to nock.

        Args:
            length [m]: along the limb, > 0.
            base [m]: (x, y) of the fadeout in the limb's own frame.
            rest_angles [rad]: tangent angles of the unstrung limb at equally spaced stations from fadeout
                to nock, at least two.
            stiffness [N m^2]: E I at equally spaced stations from fadeout to nock, at least two, all > 0.
                The two lists may differ in length.
            steps: steps of the integration; by default at least 20, so that stations fall on steps.
            like: a limb of the same length, base, rest angles and steps, which knows what those come to.
            softness [1]: as many times as soft as that one all along, where the stiffness is so.

        Raises:
            ValueError: a length or stiffness is not positive, a number is not finite, or there are fewer
                than two stations.

        Limits:
            Slender, without stretch or shear, bending in one plane only. Between stations angles and the
            logarithm of stiffness follow `interpolation.curve_at`.

        Source: elastica, derived at the top of this module.
        """
        require_positive("limb length", length, "m")
        angles, rigidities = tuple(rest_angles), tuple(stiffness)
        if len(angles) < 2 or len(rigidities) < 2:
            raise ValueError("a limb must have at least two stations of rest angle and of stiffness")
        for rigidity in rigidities:
            require_positive("limb stiffness", rigidity, "N m^2")
        if not _finite(angles) or len(base) != 2 or not _finite(tuple(base)):
            raise ValueError("rest angles and base point of a limb must be finite numbers")
        self.length = length
        self.base = (base[0], base[1])
        self.rest_angles = angles
        self.stiffness = rigidities
        self.steps = steps or _usual_steps(max(len(angles), len(rigidities)) - 1)
        self._step = length / self.steps
        self._rest: _Rest = _Rest(angles, length, self.steps) if like is None else like._rest
        self._half_angles = half_angles = self._rest.half_angles
        self._rest_curvatures = self._rest.curvatures
        if like is None or softness is None:
            self._yields: list[float] = self._tabulated()  # step / (E I) at every half step
        else:
            self._yields = [softness * each for each in like._yields]
        yields = self._yields
        steps = self.steps
        self._rows = [
            (half_angles[k + 1], half_angles[k + 2], yields[k + 1], yields[k + 2])
            for k in range(0, 2 * steps, 2)
        ]

    def _tabulated(self) -> list[float]:
        """Return a step's length over the stiffness at every half step [1/(N m)]."""
        logarithms = tuple([math.log(rigidity) for rigidity in self.stiffness])
        slopes = station_slopes(logarithms)
        cells = len(logarithms) - 1
        if cells == self.steps:
            along = halves(logarithms, slopes)
        else:
            along = [curve_at(logarithms, slopes, k * 0.5 / self.steps * cells)[0]
                     for k in range(2 * self.steps + 1)]
        return [self._step * math.exp(-each) for each in along]

    def stiffened(self, factors: float | tuple[float, ...] | list[float]) -> "Limb":
        """Return the same limb with its stiffness multiplied.

        Args:
            factors [1]: one for the whole limb, or one per station of `stiffness`; > 0.

        Returns:
            The new limb.

        Raises:
            ValueError: a factor is not positive, or their number is not that of the stations.

        Source: elastica, its E I as a factor.
        """
        if isinstance(factors, (int, float)):
            require_positive("stiffness factor", factors, "")
            stiffness = [rigidity * factors for rigidity in self.stiffness]
            return Limb(self.length, self.base, self.rest_angles, stiffness, self.steps, self, 1 / factors)
        if len(factors) != len(self.stiffness):
            raise ValueError(
                f"stiffness factors must be one per station, {len(self.stiffness)}, got {len(factors)}"
            )
        stiffness = [self.stiffness[i] * factors[i] for i in range(len(factors))]
        return Limb(self.length, self.base, self.rest_angles, stiffness, self.steps, self)

    def slack_gap(self, height: float) -> float:
        """Return the least distance from an upright string line to the unstrung limb.

        Args:
            height [m]: x of the line.

        Returns:
            [m] the gap, negative where the limb stands through the line.

        Source: elastica, `pull` without tension.
        """
        known = self._rest.slack
        if height not in known:
            known[height] = self.pull(0.0, 0.0, (height, 0.0)).gap
        return known[height]

    def rest_angle(self, arc_length: float) -> float:
        """Return the tangent angle of the unstrung limb.

        Args:
            arc_length [m]: from the fadeout, 0 to the limb's length.

        Returns:
            [rad] tangent angle from the y axis.

        Source: interpolation, by `curve_at`.
        """
        stations = len(self.rest_angles) - 1
        return curve_at(self.rest_angles, self._rest.slopes, arc_length / self.length * stations)[0]

    def _march(self, tension: float, string_angle: float, gap: float) -> _Path:
        """Integrate from the fadeout to the nock by the classical fourth-order Runge-Kutta method.

        What is carried along is the gap and the turn psi = phi - theta0, so that the rest shape enters as
        it is, without being differentiated.
        """
        sin, cos, step = math.sin, math.cos, self._step
        turn = string_angle
        angle = turn + self._half_angles[0]
        sine = sin(angle)
        end_yield = tension * self._yields[0]
        gaps, turns, sines, cosines = [gap], [turn], [sine], [cos(angle)]
        for mid_angle, end_angle, mid_yield, next_yield in self._rows:
            start_yield, mid_yield, end_yield = end_yield, tension * mid_yield, tension * next_yield
            turn_1 = start_yield * gap
            fall_1 = step * sine
            turn_2 = mid_yield * (gap - 0.5 * fall_1)
            fall_2 = step * sin(turn + 0.5 * turn_1 + mid_angle)
            turn_3 = mid_yield * (gap - 0.5 * fall_2)
            fall_3 = step * sin(turn + 0.5 * turn_2 + mid_angle)
            turn_4 = end_yield * (gap - fall_3)
            fall_4 = step * sin(turn + turn_3 + end_angle)
            turn += (turn_1 + 2.0 * (turn_2 + turn_3) + turn_4) / 6.0
            gap -= (fall_1 + 2.0 * (fall_2 + fall_3) + fall_4) / 6.0
            angle = turn + end_angle
            sine = sin(angle)
            gaps.append(gap)
            turns.append(turn)
            sines.append(sine)
            cosines.append(cos(angle))
        return _Path(gaps, turns, sines, cosines)

    def _meeting(self, path: _Path) -> _Meeting:
        """Find where string line and limb come together: at the nock, or where the belly is nearest.

        A belly that keeps off by more than half the gap at the fadeout is not being touched.
        """
        gaps, sines, cosines, step = path.gaps, path.sines, path.cosines, self._step
        best = _Meeting(self.steps - 1, 1.0, gaps[-1])
        near = 0.5 * gaps[0]
        for cell in range(self.steps):
            if sines[cell + 1] < 0.0 <= sines[cell] and cosines[cell] > 0.0:
                ends = gaps[cell], gaps[cell + 1], -step * sines[cell], -step * sines[cell + 1]
                fraction = _lowest(*ends)
                gap = cubic.value(*ends, fraction)
                if gap < best.gap and gap < near:
                    best = _Meeting(cell, fraction, gap)
        return best

    def _way(self, tension: float, path: _Path, meeting: _Meeting) -> float:
        """Return how far along the string line the limb reaches from the fadeout to the meeting point.

        The trapezoidal rule with its end correction: error of fourth order in the step.
        """
        cosines, sines, step, cell = path.cosines, path.sines, self._step, meeting.cell
        total = 0.0
        for station in range(1, cell + 1):
            total += cosines[station]
        total += 0.5 * (cosines[0] - cosines[cell])
        bends = []
        for station in (0, cell, cell + 1):
            bent = tension * self._yields[2 * station] * path.gaps[station]
            bends.append(sines[station] * (step * self._rest_curvatures[station] + bent))
        before = step * (total + (bends[1] - bends[0]) / 12.0)
        within = step * (0.5 * (cosines[cell] + cosines[cell + 1]) + (bends[2] - bends[1]) / 12.0)
        ends = 0.0, within, step * cosines[cell], step * cosines[cell + 1]
        return before + cubic.value(*ends, meeting.fraction)

    def _rates(self, tension: float, path: _Path, meeting: _Meeting) -> tuple[float, ...]:
        """Return the derivatives of gap and way at the meeting point by base gap, turn and tension.

        The varied equations, stepped by the leapfrog rule over the path already found and read backwards:
        what a little turn and a little gap come to at the meeting point. They steer Newton's method only, so
        their small error costs an iteration at worst and never accuracy.
        """
        gaps, sines, cosines, yields = path.gaps, path.sines, path.cosines, self._yields
        half_step = 0.5 * self._step
        part = half_step * meeting.fraction
        gap_by_turn, gap_by_gap, gap_k = 0.0, 1.0, 0.0
        way_by_turn, way_by_gap, way_k = 0.0, 0.0, 0.0
        for cell in range(meeting.cell, -1, -1):
            softness = yields[2 * cell + 2]
            turned = softness * gaps[cell + 1]
            gap_k += turned * gap_by_turn
            way_k += turned * way_by_turn
            pull = tension * softness
            gap_by_gap += pull * gap_by_turn
            way_by_gap += pull * way_by_turn
            cosine = part * (cosines[cell] + cosines[cell + 1])
            gap_by_turn -= cosine * gap_by_gap
            way_by_turn -= cosine * way_by_gap + part * (sines[cell] + sines[cell + 1])
            part = half_step
        half_yield = 0.5 * yields[0]
        turned = half_yield * gaps[0]
        pull = tension * half_yield
        return (gap_by_gap + pull * gap_by_turn, gap_by_turn, gap_k + turned * gap_by_turn,
                way_by_gap + pull * way_by_turn, way_by_turn, way_k + turned * way_by_turn)

    def pull(
        self, tension: float, string_angle: float, point: tuple[float, float], nearby: Pull | None = None
    ) -> Pull:
        """Bend the limb by a string of known tension along a known line, and say how they meet.

        Args:
            tension [N]: >= 0.
            string_angle [rad]: of the line from the y axis, positive away from the archer.
            point [m]: (x, y) on the line.
            nearby: a Pull so close to this one that its rates will do, which spares working them out.

        Returns:
            A Pull; limb and string are in balance when its gap is zero.

        Limits:
            The string may touch the belly from one point to the nock, without friction.

        Source: elastica, derived at the top of this module.
        """
        sine, cosine, base_gap, base_way = self._line(string_angle, point)
        path = self._march(tension, string_angle, base_gap)
        meeting = self._meeting(path)
        touching = (self.steps - meeting.cell - meeting.fraction) * self._step
        departure = self.length - touching
        length = base_way + self._way(tension, path, meeting) + touching
        if nearby is not None:
            return Pull(meeting.gap, length, departure, nearby.gap_rates, nearby.length_rates)
        rates = self._rates(tension, path, meeting)
        gap_rates, length_rates = _by_line(rates, sine, cosine, base_gap, base_way)
        return Pull(meeting.gap, length, departure, gap_rates, length_rates)

    def _line(self, string_angle: float, point: tuple[float, float]) -> tuple[float, float, float, float]:
        """Return sine and cosine of a string line, and the fadeout's gap and way seen from it."""
        sine, cosine = math.sin(string_angle), math.cos(string_angle)
        ahead, above = point[0] - self.base[0], self.base[1] - point[1]
        return sine, cosine, ahead * cosine - above * sine, ahead * sine + above * cosine

    def stiffness_rates(
        self, tension: float, string_angle: float, point: tuple[float, float], arc_length: float | None = None
    ) -> StiffnessRates:
        """Say how gap and way answer to the stiffness of each stretch, the pull and its line held.

        Args:
            tension [N]: >= 0.
            string_angle [rad]: of the line from the y axis, positive away from the archer.
            point [m]: (x, y) on the line.
            arc_length [m]: of the place asked of; None for where limb and string come together.

        Returns:
            StiffnessRates.

        Limits:
            Fourth order in the step.

        Source: elastica, derived here: the varied equations read backwards from the place.
        """
        sine, cosine, base_gap, base_way = self._line(string_angle, point)
        path = self._march(tension, string_angle, base_gap)
        if arc_length is None:
            meeting = self._meeting(path)
        else:
            cell = min(int(arc_length / self._step), self.steps - 1)
            meeting = _Meeting(cell, arc_length / self._step - cell, 0.0)
        back = self._looked_back(tension, path, meeting)
        gaps, ways = self._softened(path, meeting, back)
        rates = back[0][0], back[0][1], sum(gaps), back[0][2], back[0][3], sum(ways)
        gap_rates, way_rates = _by_line(rates, sine, cosine, base_gap, base_way)
        return StiffnessRates(
            [-tension * each for each in gaps], [-tension * each for each in ways], gap_rates, way_rates,
            self._angle_between(tension, path, meeting.cell, meeting.fraction))

    def _softened(
        self, path: _Path, meeting: _Meeting, back: list[tuple[float, ...]]
    ) -> tuple[list[float], list[float]]:
        """Return what softness at each half step does to gap and way at a place, over the tension: Simpson's
        rule, cell by cell. back: as `_looked_back` gives it.
        """
        yields, step = self._yields, self._step
        gaps, ways = [0.0] * (2 * self.steps + 1), [0.0] * (2 * self.steps + 1)
        for cell in range(meeting.cell + 1):
            part = meeting.fraction if cell == meeting.cell else 1.0
            begin, middle, end = 2 * cell, 2 * cell + 1, 2 * cell + 2
            (gap_g, gap_t, way_g, way_t), (next_g, next_t, next_way, next_way_t) = back[cell], back[cell + 1]
            sines, cosines = path.sines[cell:cell + 2], path.cosines[cell:cell + 2]
            bent = part / 6.0 * yields[begin] * path.gaps[cell]
            gaps[begin] += bent * gap_t
            ways[begin] += bent * way_t
            bent = 4.0 * part / 6.0 * (yields[begin] + part * (yields[middle] - yields[begin])) * cubic.value(
                path.gaps[cell], path.gaps[cell + 1], -step * sines[0], -step * sines[1], 0.5 * part)
            reach = part * step
            gap_t = bent * cubic.value(gap_t, next_t, reach * cosines[0] * gap_g, reach * cosines[1] * next_g,
                                       0.5)
            way_t = bent * cubic.value(
                way_t, next_way_t, reach * (cosines[0] * way_g + sines[0]),
                reach * (cosines[1] * next_way + sines[1]), 0.5)
            gaps[begin] += (1.0 - part) * gap_t
            ways[begin] += (1.0 - part) * way_t
            gaps[middle] += part * gap_t
            ways[middle] += part * way_t
            bent = part / 6.0 * yields[end] * path.gaps[cell + 1]
            gaps[end] += bent * next_t
            ways[end] += bent * next_way_t
        return gaps, ways

    def _angle_between(self, tension: float, path: _Path, cell: int, part: float) -> float:
        """Return the angle to the line at a part of a step past a station."""
        rest, yields, turns, gaps = self._half_angles, self._yields, path.turns, path.gaps
        ends = 2 * cell, 2 * cell + 2
        return cubic.value(turns[cell] + rest[ends[0]], turns[cell + 1] + rest[ends[1]],
                           tension * yields[ends[0]] * gaps[cell] + self._step * self._rest_curvatures[cell],
                           tension * yields[ends[1]] * gaps[cell + 1]
                           + self._step * self._rest_curvatures[cell + 1], part)

    def _looked_back(self, tension: float, path: _Path, meeting: _Meeting) -> list[tuple[float, ...]]:
        """Return what a little gap and a little turn add to gap and way at a place: gap by gap, gap by turn,
        way by gap and way by turn, at each station before the place and there.

        The varied equations, from the place back, by the method of Runge and Kutta.
        """
        yields, step, part = self._yields, self._step, meeting.fraction
        back: list[tuple[float, ...]] = [(1.0, 0.0, 0.0, 0.0)]
        angle = self._angle_between(tension, path, meeting.cell, part)
        softness = yields[2 * meeting.cell]
        softness += part * (yields[2 * meeting.cell + 2] - softness)
        place = step * math.sin(angle), step * math.cos(angle), tension * softness
        for cell in range(meeting.cell, -1, -1):
            angle = self._angle_between(tension, path, cell, 0.5 * part)
            softness = yields[2 * cell]
            softness += part * (yields[2 * cell + 1] - softness)
            middle = step * math.sin(angle), step * math.cos(angle), tension * softness
            before = step * path.sines[cell], step * path.cosines[cell], tension * yields[2 * cell]
            back.append(_stepped_back(back[-1], (place, middle, middle, before), part))
            place, part = before, 1.0
        back.reverse()
        return back

    def shape(self, tension: float, string_angle: float, point: tuple[float, float]) -> LimbShape:
        """Return the limb's shape under a string of known tension along a known line.

        Args:
            tension [N]: >= 0.
            string_angle [rad]: of the line from the y axis, positive away from the archer.
            point [m]: (x, y) on the line.

        Returns:
            A LimbShape, at every step of the integration.

        Raises:
            ValueError: the belly is hollow where the string lies on it, so that the string would span it.

        Source: elastica, derived at the top of this module.
        """
        _, _, base_gap, _ = self._line(string_angle, point)
        path = self._march(tension, string_angle, base_gap)
        meeting = self._meeting(path)
        departure = self.length - (self.steps - meeting.cell - meeting.fraction) * self._step
        turns = self._settled_turns(tension, path, meeting)
        steps, step, rest = self.steps, self._step, self._half_angles
        self.require_no_hollow(departure)
        arc_length = [self.length * i / steps for i in range(steps + 1)]
        angle = [turns[2 * i] + rest[2 * i] - string_angle for i in range(steps + 1)]
        xs, ys = [self.base[0]], [self.base[1]]
        for i in range(steps):
            start, middle, end = angle[i], turns[2 * i + 1] + rest[2 * i + 1] - string_angle, angle[i + 1]
            xs.append(xs[i] + step * (math.sin(start) + 4.0 * math.sin(middle) + math.sin(end)) / 6.0)
            ys.append(ys[i] + step * (math.cos(start) + 4.0 * math.cos(middle) + math.cos(end)) / 6.0)
        moment, energy = self._moments_and_energy(tension, path, meeting)
        bending = [moment[i] * self._yields[2 * i] / step for i in range(steps + 1)]
        return LimbShape(arc_length, xs, ys, angle, moment, bending, departure, energy)

    def _settled_turns(self, tension: float, path: _Path, meeting: _Meeting) -> list[float]:
        """Return the turn at every half step, held from the meeting point on."""
        turns, rates = path.turns, [
            tension * self._yields[2 * i] * path.gaps[i] for i in range(self.steps + 1)
        ]
        settled = []
        for k in range(2 * self.steps + 1):
            position = min(0.5 * k, meeting.cell + meeting.fraction)
            cell = min(int(position), self.steps - 1)
            settled.append(
                cubic.value(turns[cell], turns[cell + 1], rates[cell], rates[cell + 1], position - cell)
            )
        return settled

    def _moments_and_energy(
        self, tension: float, path: _Path, meeting: _Meeting
    ) -> tuple[list[float], float]:
        """Return the moment at every step and the strain energy, half the integral of M^2 / (E I)."""
        gaps, sines, step, yields = path.gaps, path.sines, self._step, self._yields
        last = meeting.cell + meeting.fraction
        moment = [tension * gaps[i] if i <= last else 0.0 for i in range(self.steps + 1)]
        energy = 0.0
        for i in range(meeting.cell + 1):
            part = meeting.fraction if i == meeting.cell else 1.0
            ends = gaps[i], gaps[i + 1], -step * sines[i], -step * sines[i + 1]
            middle, end = tension * cubic.value(*ends, 0.5 * part), tension * cubic.value(*ends, part)
            energy += part / 12.0 * (
                yields[2 * i] * moment[i] ** 2
                + 4.0 * yields[2 * i + 1] * middle**2
                + yields[2 * i + 2] * end**2
            )
        return moment, energy

    def require_no_hollow(self, departure: float) -> None:
        """Refuse a belly that turns back toward the string where the string lies on it.

        Args:
            departure [m]: arc length where the string comes to lie on the limb.

        Raises:
            ValueError: beyond that the limb turns back toward the archer by more than two degrees.

        Source: geometry, derived here: the sign of the change of angle along the limb.
        """
        lowest = self.rest_angle(departure)
        for k in range(len(self._half_angles)):
            if 0.5 * k * self._step > departure:
                angle = self._half_angles[k]
                if angle > lowest + MOST_HOLLOW:
                    raise ValueError(
                        "the belly must not be hollow where the string lies on it: "
                        "the tip turns back toward the string, which would span the hollow"
                    )
                lowest = min(lowest, angle)


def _stepped_back(
    after: tuple[float, ...], places: tuple[tuple[float, float, float], ...], part: float
) -> tuple[float, ...]:
    """Return what a little gap and a little turn come to, one step nearer to the fadeout.

    after: gap by gap, gap by turn, way by gap, way by turn. places: sine, cosine and pull, each for a whole
    step, where the rule of Runge and Kutta asks for them. part [1]: of a step that is gone.
    """
    total, slopes = list(after), (0.0, 0.0, 0.0, 0.0)
    for place, reach, share in ((0, 0.0, 1.0), (1, 0.5, 2.0), (2, 0.5, 2.0), (3, 1.0, 1.0)):
        gap_g, gap_t, way_g, way_t = [value + reach * slope for value, slope in zip(after, slopes)]
        sine, cosine, pull = places[place]
        slopes = (part * pull * gap_t, -part * cosine * gap_g,
                  part * pull * way_t, -part * (cosine * way_g + sine))
        for i in range(4):
            total[i] += share / 6.0 * slopes[i]
    return tuple(total)


def _by_line(
    rates: tuple[float, ...], sine: float, cosine: float, base_gap: float, base_way: float
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the derivatives of gap and way by tension, string angle and the x and y of the line's point,
    from those by base gap, turn and tension.
    """
    gap_g, gap_a, gap_k, way_g, way_a, way_k = rates
    return ((gap_k, gap_a - gap_g * base_way, gap_g * cosine, gap_g * sine),
            (way_k, way_a - way_g * base_way + base_gap, way_g * cosine + sine, way_g * sine - cosine))


def _usual_steps(cells: int) -> int:
    """Return steps for so many cells between stations: a multiple of them unless they are very many."""
    if cells > MOST_STATION_STEPS:
        return MOST_STATION_STEPS
    return cells * -(-FEWEST_STEPS // cells)
