"""A limb bent in its plane by a string, moved a little sideways: bending across it, and twist.

Axes as in `elastica`, with z square to its plane and the tangent t = z x n, where n points to the archer.
The sidewise place w, the turn b about n and the twist q about t of a slender limb follow, to first order,

    dw/ds = b,    db/ds = u + m_n / A - k q,    dq/ds = v + m_t / C + k b,

with the rigidity A of bending across, the torsional rigidity C, the curvature k in the plane, and a
sidewise bend u and a twist rate v that the limb has at rest. The string pulls with K at the tip, X and Y
ahead; its end lies at W, M = K h is the moment in the plane, phi = theta + alpha, and F is the string's
force toward z:

    m_n = K (W - w) cos(phi) + F (Y cos(theta) + X sin(theta)) + M q,
    m_t = K (W - w) sin(phi) + F (Y sin(theta) - X cos(theta)) - M b.

All of it is linear, so three marches from the fadeout, one for what the limb has at rest, one for W and one
for F, give every answer; W = w + groove at the tip and F = -K W / length of string close them.
"""

import math

from calc.checks import require_positive
from calc.numerics.interpolation import curve_at, station_slopes

FEWEST_STATIONS = 5


class Standing:
    """A limb in balance in its plane, at equally spaced stations from fadeout to where the string leaves it.

    length [m]: along the limb. x, y [m], angle [rad] and moment [N m], one per station. tension [N] and
    string_angle [rad], as `elastica` has them.
    """

    def __init__(
        self, length: float, x: list[float], y: list[float], angle: list[float], moment: list[float],
        tension: float, string_angle: float
    ) -> None:
        self.length = length
        self.x = x
        self.y = y
        self.angle = angle
        self.moment = moment
        self.tension = tension
        self.string_angle = string_angle


class Across:
    """What a limb is sideways, one value per station: bending across [N m^2] and torsion [N m^2], both > 0,
    and at rest bend [1/m] about n and twist [1/m] about t.
    """

    def __init__(
        self, bending: list[float], torsion: list[float], bend: list[float], twist: list[float]
    ) -> None:
        self.bending = bending
        self.torsion = torsion
        self.bend = bend
        self.twist = twist


class Sideways:
    """A limb's answer: place [m], turn [rad] and twist [rad] per station; string_end [m], where the string's
    end lies, and force [N] of the string, all toward z; firmness [1], as the function of that name has it.
    """

    def __init__(
        self, place: list[float], turn: list[float], twist: list[float], string_end: float, force: float,
        firmness: float
    ) -> None:
        self.place = place
        self.turn = turn
        self.twist = twist
        self.string_end = string_end
        self.force = force
        self.firmness = firmness


class _Place:
    """Everything the equations ask at one half step."""

    def __init__(self, standing: Standing, across: Across, curves: list[list[float]], at: float) -> None:
        last = len(standing.x) - 1
        lists = (standing.x, standing.y, standing.angle, standing.moment,
                 across.bending, across.torsion, across.bend, across.twist)
        read = [curve_at(tuple(lists[i]), curves[i], at) for i in range(len(lists))]
        ahead, above = standing.x[-1] - read[0][0], standing.y[-1] - read[1][0]
        angle = read[2][0]
        phi, sine, cosine = angle + standing.string_angle, math.sin(angle), math.cos(angle)
        self.curvature = read[2][1] * last / standing.length
        self.moment = read[3][0]
        self.softness = 1.0 / read[4][0], 1.0 / read[5][0]
        self.rest = read[6][0], read[7][0]
        self.pull = standing.tension * math.cos(phi), standing.tension * math.sin(phi)
        self.arm = above * cosine + ahead * sine, above * sine - ahead * cosine


def _slopes(
    here: _Place, state: tuple[float, ...], string_end: float, force: float, rest: float
) -> tuple[float, ...]:
    """Return the three equations at the top of this module."""
    place, turn, twist = state
    off = string_end - place
    across = here.pull[0] * off + here.arm[0] * force + here.moment * twist
    along = here.pull[1] * off + here.arm[1] * force - here.moment * turn
    return (
        turn,
        rest * here.rest[0] + across * here.softness[0] - here.curvature * twist,
        rest * here.rest[1] + along * here.softness[1] + here.curvature * turn,
    )


def _marched(
    places: list[_Place], step: float, string_end: float, force: float, rest: float
) -> list[tuple[float, ...]]:
    """Integrate from the fadeout by the classical fourth-order Runge-Kutta method."""
    state: tuple[float, ...] = (0.0, 0.0, 0.0)
    states = [state]
    for k in range(0, len(places) - 1, 2):
        start, middle, end = places[k], places[k + 1], places[k + 2]
        first = _slopes(start, state, string_end, force, rest)
        second = _slopes(middle, _moved(state, first, 0.5 * step), string_end, force, rest)
        third = _slopes(middle, _moved(state, second, 0.5 * step), string_end, force, rest)
        fourth = _slopes(end, _moved(state, third, step), string_end, force, rest)
        state = tuple([
            state[i] + step * (first[i] + 2.0 * (second[i] + third[i]) + fourth[i]) / 6.0 for i in range(3)
        ])
        states.append(state)
    return states


def _moved(state: tuple[float, ...], slopes: tuple[float, ...], step: float) -> tuple[float, ...]:
    return tuple([state[i] + step * slopes[i] for i in range(3)])


def _marches(
    standing: Standing, across: Across, string_length: float
) -> tuple[tuple[list[tuple[float, ...]], ...], float]:
    """Return the three marches of the limb, and its firmness."""
    if not string_length > 0.0:
        raise ValueError(f"string_length must be positive, got {string_length} m")
    if len(standing.x) < FEWEST_STATIONS:
        raise ValueError(f"a limb must have at least {FEWEST_STATIONS} stations, got {len(standing.x)}")
    for rigidity in across.bending + across.torsion:
        require_positive("limb rigidity", rigidity, "N m^2")
    cells = len(standing.x) - 1
    lists = (standing.x, standing.y, standing.angle, standing.moment,
             across.bending, across.torsion, across.bend, across.twist)
    curves = [station_slopes(tuple(each)) for each in lists]
    places = [_Place(standing, across, curves, 0.5 * k) for k in range(2 * cells + 1)]
    step = standing.length / cells
    rest = _marched(places, step, 0.0, 0.0, 1.0)
    end = _marched(places, step, 1.0, 0.0, 0.0)
    side = _marched(places, step, 0.0, 1.0, 0.0)
    firm = 1.0 - end[-1][0] + standing.tension / string_length * side[-1][0]
    return (rest, end, side), firm


def firmness(standing: Standing, across: Across, string_length: float) -> float:
    """Return how far a limb is from buckling sideways under its string.

    Args:
        standing: the limb in its plane.
        across: what it is sideways, at the same stations.
        string_length [m]: as `sideways` has it, > 0.

    Returns:
        [1] 1 without a string; at 0 the limb buckles sideways.

    Raises:
        ValueError: a rigidity is not positive, or there are fewer than five stations.

    Limits:
        As `sideways`.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    return _marches(standing, across, string_length)[1]


def sideways(standing: Standing, across: Across, groove: float, string_length: float) -> Sideways:
    """Return how a limb and its string lie sideways, from what the limb has at rest and from its groove.

    Args:
        standing: the limb in its plane.
        across: what it is sideways, at the same stations.
        groove [m]: of the string's seat from the middle of the tip, toward z.
        string_length [m]: from the tip to the point in the limb's plane that the string runs to, > 0;
            infinite for a pull that keeps its direction.

    Returns:
        Sideways.

    Raises:
        ValueError: a rigidity is not positive, there are fewer than five stations, or the limb buckles
            sideways under its string.

    Limits:
        Small sidewise movement; firm at the fadeout; torsion without warping; the string pulls at the last
        station. Not to be trusted where firmness is near 0: a little more pull and the limb does not stand.

    Source: elastica, its equations in space to first order, derived at the top of this module.
    """
    marches, firm = _marches(standing, across, string_length)
    if not firm > 0.0:
        raise ValueError(f"the limb must stand sideways under its string; its firmness is {firm}")
    rest, end, side = marches
    string_end = (rest[-1][0] + groove) / firm
    force = -standing.tension / string_length * string_end
    told = [[rest[i][j] + string_end * end[i][j] + force * side[i][j] for i in range(len(rest))]
            for j in range(3)]
    return Sideways(told[0], told[1], told[2], string_end, force, firm)
