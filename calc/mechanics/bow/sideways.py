"""A limb bent in its plane by a string, moved a little sideways: bending across it, and twist.

Axes as in `elastica`, with z square to its plane and the tangent t = z x n, where n points to the archer.
The sidewise place w, the turn b about n and the twist q about t of a slender limb follow, to first order,

    dw/ds = b,    db/ds = u + m_n / A - k q,    dq/ds = v + m_t / C + k b,

with the rigidity A of bending across, the torsional rigidity C, the curvature k in the plane, and what a
fault brings: a sidewise bend u, a twist rate v, and a shift c of the elastic middle toward z. The string
pulls with K at the tip, X and Y ahead; its end lies at W, M = K h is the moment in the plane,
phi = theta + alpha, and F is the string's force toward z:

    m_n = K (W - w - c) cos(phi) + F (Y cos(theta) + X sin(theta)) + M q,
    m_t = K (W - w - c) sin(phi) + F (Y sin(theta) - X cos(theta)) - M b.

All of it is linear: one march from the fadeout for W, one for F and one for each fault give every answer. A
groove holds the string at W = w + g at the tip; what the string's other end does gives F.

The mirror image of a limb obeys the same equations. So z may be the archer's right in both limbs of a bow,
with q > 0 where the face is turned so that its right edge comes nearer to the archer.
"""

import math

from calc.checks import require_positive
from calc.mechanics.bow.elastica import LimbShape
from calc.numerics.interpolation import curve_at, station_slopes
from calc.numerics.roots import solved

FEWEST_PLACES = 9
PLACES = 41


class Standing:
    """A limb in balance in its plane, at an odd number of equally spaced places from fadeout to where the
    string leaves it.

    length [m]: along the limb. x, y [m], angle [rad], curvature [1/m], moment [N m] and bending [1/m], the
    change of curvature from rest, one per place. tension [N] and string_angle [rad], as `elastica` has them.
    """

    def __init__(
        self, length: float, x: list[float], y: list[float], angle: list[float], curvature: list[float],
        moment: list[float], bending: list[float], tension: float, string_angle: float
    ) -> None:
        self.length = length
        self.x = x
        self.y = y
        self.angle = angle
        self.curvature = curvature
        self.moment = moment
        self.bending = bending
        self.tension = tension
        self.string_angle = string_angle


class Across:
    """What a limb is sideways, one value per place: rigidity of bending across [N m^2] and of torsion
    [N m^2], all > 0.
    """

    def __init__(self, bending: list[float], torsion: list[float]) -> None:
        self.bending = bending
        self.torsion = torsion


class Fault:
    """What a limb has at rest, or has once it is sanded, one value per place: bend [1/m] about n, twist [1/m]
    about t, and shift [m] of its elastic middle toward z.
    """

    def __init__(self, bend: list[float], twist: list[float], shift: list[float]) -> None:
        self.bend = bend
        self.twist = twist
        self.shift = shift


class States:
    """Place [m], turn [rad] and twist [rad], one for each second place of the limb."""

    def __init__(self, place: list[float], turn: list[float], twist: list[float]) -> None:
        self.place = place
        self.turn = turn
        self.twist = twist


class Marches:
    """A limb's answers to the string's end moved by one metre, to a force of one newton on it, and to each
    fault; with the tension [N].
    """

    def __init__(self, end: States, side: States, faults: list[States], tension: float) -> None:
        self.end = end
        self.side = side
        self.faults = faults
        self.tension = tension


class Sideways:
    """A limb's answer: its states, string_end [m], where the string's end lies, and force [N] of the string,
    all toward z.
    """

    def __init__(self, states: States, string_end: float, force: float) -> None:
        self.states = states
        self.string_end = string_end
        self.force = force


def standing(shape: LimbShape, mirrored: bool, tension: float, string_angle: float) -> Standing:
    """Return a limb of a bow in balance, cut where the string leaves it.

    Args:
        shape: in the riser frame.
        mirrored: whether it is the lower limb, whose own frame has y down.
        tension [N]: of the string.
        string_angle [rad]: of the string in the limb's own frame.

    Returns:
        Standing, at `PLACES` places.

    Source: interpolation, by `curve_at` between the steps of the limb.
    """
    cells = len(shape.arc_length) - 1
    along = [shape.departure / shape.arc_length[-1] * cells * k / (PLACES - 1) for k in range(PLACES)]

    def read(values: list[float]) -> list[tuple[float, float]]:
        slopes = station_slopes(tuple(values))
        return [curve_at(tuple(values), slopes, at) for at in along]

    side = -1.0 if mirrored else 1.0
    angles = read(shape.angle)
    return Standing(
        shape.departure,
        [each[0] for each in read(shape.x)],
        [side * each[0] for each in read(shape.y)],
        [each[0] for each in angles],
        [each[1] * cells / shape.arc_length[-1] for each in angles],
        [each[0] for each in read(shape.moment)],
        [each[0] for each in read(shape.bending)],
        tension, string_angle,
    )


class _Place:
    """The equations at one place, with one source (of db/ds, of dq/ds) for each march: db/ds = by_place w +
    by_twist q + source, dq/ds = to_place w + by_turn b + source.
    """

    def __init__(self, limb: Standing, across: Across, faults: tuple[Fault, ...], at: int) -> None:
        angle = limb.angle[at]
        phi, sine, cosine = angle + limb.string_angle, math.sin(angle), math.cos(angle)
        ahead, above = limb.x[-1] - limb.x[at], limb.y[-1] - limb.y[at]
        bending, torsion = 1.0 / across.bending[at], 1.0 / across.torsion[at]
        pull = limb.tension * math.cos(phi) * bending, limb.tension * math.sin(phi) * torsion
        self.by_place = -pull[0]
        self.to_place = -pull[1]
        self.by_twist = limb.moment[at] * bending - limb.curvature[at]
        self.by_turn = limb.curvature[at] - limb.moment[at] * torsion
        self.sources = [pull, ((above * cosine + ahead * sine) * bending,
                               (above * sine - ahead * cosine) * torsion)]
        for each in faults:
            self.sources.append((each.bend[at] - pull[0] * each.shift[at],
                                 each.twist[at] - pull[1] * each.shift[at]))

    def slopes(self, which: int, place: float, turn: float, twist: float) -> tuple[float, float]:
        """Return db/ds and dq/ds."""
        source = self.sources[which]
        return (source[0] + self.by_place * place + self.by_twist * twist,
                source[1] + self.to_place * place + self.by_turn * turn)


def _marched(places: list[_Place], step: float, which: int) -> States:
    """Integrate from the fadeout by the classical fourth-order Runge-Kutta method, over pairs of places."""
    w = b = q = 0.0
    states = States([w], [b], [q])
    half = 0.5 * step
    for k in range(0, len(places) - 1, 2):
        start, middle, end = places[k], places[k + 1], places[k + 2]
        b1, q1 = start.slopes(which, w, b, q)
        b2, q2 = middle.slopes(which, w + half * b, b + half * b1, q + half * q1)
        b3, q3 = middle.slopes(which, w + half * (b + half * b1), b + half * b2, q + half * q2)
        b4, q4 = end.slopes(which, w + step * (b + half * b2), b + step * b3, q + step * q3)
        w += step * (b + step * (b1 + b2 + b3) / 6.0)
        b += step * (b1 + 2.0 * (b2 + b3) + b4) / 6.0
        q += step * (q1 + 2.0 * (q2 + q3) + q4) / 6.0
        states.place.append(w)
        states.turn.append(b)
        states.twist.append(q)
    return states


def marches(limb: Standing, across: Across, faults: tuple[Fault, ...] = ()) -> Marches:
    """Return a limb's answers to its string and to faults, each by itself.

    Args:
        limb: in its plane.
        across: what it is sideways, at the same places.
        faults: at the same places.

    Returns:
        Marches.

    Raises:
        ValueError: a rigidity is not positive, or the places are even in number or fewer than nine.

    Limits:
        Small sidewise movement; firm at the fadeout; torsion without warping; the string pulls at the last
        place.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    count = len(limb.x)
    if count < FEWEST_PLACES or count % 2 == 0:
        raise ValueError(f"a limb must have an odd number of places, {FEWEST_PLACES} or more, got {count}")
    for rigidity in across.bending + across.torsion:
        require_positive("limb rigidity", rigidity, "N m^2")
    places = [_Place(limb, across, faults, at) for at in range(count)]
    step = 2.0 * limb.length / (count - 1)
    return Marches(_marched(places, step, 0), _marched(places, step, 1),
                   [_marched(places, step, 2 + i) for i in range(len(faults))], limb.tension)


def firmness(limb: Marches, string_length: float) -> float:
    """Return how far a limb is from buckling sideways under a string that runs to a point in its plane.

    Args:
        limb: its marches.
        string_length [m]: from the tip to that point, > 0; infinite for a pull that keeps its direction.

    Returns:
        [1] 1 without a string; at 0 the limb buckles sideways.

    Raises:
        ValueError: the string's length is not positive.

    Limits:
        As `marches`.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    if not string_length > 0.0:
        raise ValueError(f"string_length must be positive, got {string_length} m")
    return 1.0 - limb.end.place[-1] + _yielding(limb, string_length)


def pair_firmness(upper: Marches, lower: Marches, string_length: float) -> float:
    """Return how far two limbs joined by their string are from buckling sideways.

    Args:
        upper: the marches of one limb.
        lower: of the other.
        string_length [m]: from tip to tip, > 0.

    Returns:
        [1] 1 without a string; not above 0 where the limbs do not stand.

    Raises:
        ValueError: the string's length is not positive.

    Limits:
        As `marches`; the string is straight from tip to tip.

    Source: elastica, derived here: the determinant of both limbs' equations.
    """
    first, second = firmness(upper, string_length), firmness(lower, string_length)
    whole = first * second - _yielding(upper, string_length) * _yielding(lower, string_length)
    return min(whole, first, second)


def sideways(limb: Marches, fault: int | None, groove: float, string_length: float) -> Sideways:
    """Return how a limb lies sideways under a string that runs to a point in its plane.

    Args:
        limb: its marches.
        fault: which of its faults it has; None: none.
        groove [m]: of the string's seat from the middle of the tip, toward z.
        string_length [m]: from the tip to that point, > 0; infinite for a pull that keeps its direction.

    Returns:
        Sideways.

    Raises:
        ValueError: the string's length is not positive, or the limb buckles sideways.

    Limits:
        As `marches`. Not to be trusted where firmness is near 0: with a little more pull the limb does not
        stand.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    firm = firmness(limb, string_length)
    if not firm > 0.0:
        raise ValueError(f"the limb must stand sideways under its string; its firmness is {firm}")
    end = (_moved(limb, fault) + groove) / firm
    return _answer(limb, fault, end, -limb.tension / string_length * end)


def joined(
    upper: Marches, lower: Marches, faults: tuple[int | None, int | None], grooves: tuple[float, float],
    string_length: float
) -> tuple[Sideways, Sideways]:
    """Return how two limbs lie sideways that are joined by one straight string.

    Args:
        upper: the marches of one limb.
        lower: of the other.
        faults: which of its faults each limb has; None: none.
        grooves [m]: of the string's seat from the middle of each tip, toward z.
        string_length [m]: from tip to tip, > 0.

    Returns:
        Sideways of the upper and of the lower limb.

    Raises:
        ValueError: the string's length is not positive, or the limbs buckle sideways.

    Limits:
        As `marches`; both limbs leave one plane at the riser, and z is the same side in both.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    firm = pair_firmness(upper, lower, string_length)
    if not firm > 0.0:
        raise ValueError(f"the limbs must stand sideways under their string; their firmness is {firm}")
    found = solved(
        (firmness(upper, string_length), -_yielding(upper, string_length)),
        (-_yielding(lower, string_length), firmness(lower, string_length)),
        (_moved(upper, faults[0]) + grooves[0], _moved(lower, faults[1]) + grooves[1]),
    )
    if found is None:
        raise ValueError("the limbs must stand sideways under their string; they are about to buckle")
    force = upper.tension / string_length * (found[1] - found[0])
    return _answer(upper, faults[0], found[0], force), _answer(lower, faults[1], found[1], -force)


def _yielding(limb: Marches, string_length: float) -> float:
    """Return how far the string's pull to its other end moves the tip back, over how far the tip is off."""
    return limb.tension / string_length * limb.side.place[-1]


def _moved(limb: Marches, fault: int | None) -> float:
    """Return how far a fault alone moves the tip."""
    return 0.0 if fault is None else limb.faults[fault].place[-1]


def _answer(limb: Marches, fault: int | None, end: float, force: float) -> Sideways:
    parts = [(end, limb.end), (force, limb.side)]
    if fault is not None:
        parts.append((1.0, limb.faults[fault]))
    every = range(len(limb.end.place))
    states = States(
        [sum([factor * each.place[i] for factor, each in parts]) for i in every],
        [sum([factor * each.turn[i] for factor, each in parts]) for i in every],
        [sum([factor * each.twist[i] for factor, each in parts]) for i in every],
    )
    return Sideways(states, end, force)
