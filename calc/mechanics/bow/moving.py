"""What of a bow's energy its limbs keep: each limb as a chain of rigid links, let go at full draw.

Axes as in `elastica`: x toward the archer, y along the limb; a link's angle is that of its middle from the y
axis. Mass sits at the joints, springs between the links bend as the limb does. Both limbs are alike, so that
half a bow shoots half an arrow. A third of the string goes with the arrow and the rest with the tips. The
string stretches; it runs straight from the arrow to the joint that it touches first and on along the links.

The links' tensions follow from each link keeping its length: one tridiagonal set of equations for each
moment. Time goes on by the fourth-order rule of Runge and Kutta.
"""

import math

from calc.checks import require_positive

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

LINKS = 12
STRIDE = 1.8  # phase of the fastest swing in one step; the rule of Runge and Kutta stands 2.8
MOST_STEPS = 3000
STEPS_AT_ONCE = 20


class Chain:
    """Half a bow as a chain of links.

    base [m]: (x, y) of the fadeout. link [m]: length of each. rest [rad]: angle of each at rest, behind that
    of the fadeout. springs [N m]: at the joint before each link. masses [kg]: at the end of each link, the
    last with its part of the string.
    """

    def __init__(
        self, base: tuple[float, float], link: float, rest: list[float], springs: list[float],
        masses: list[float],
    ) -> None:
        self.base = base
        self.link = link
        self.rest = rest
        self.springs = springs
        self.masses = masses


class Strung:
    """Half a string: unstretched length [m], stiffness [N] for each unit of strain, mass [kg]."""

    def __init__(self, length: float, stiffness: float, mass: float) -> None:
        self.length = length
        self.stiffness = stiffness
        self.mass = mass


def chain_of(
    base: tuple[float, float], length: float, fadeout: float, rest: list[float], rigidity: list[float],
    density: list[float], tip: float,
) -> Chain:
    """Return the chain that stands for a limb.

    Args:
        base [m]: (x, y) of the fadeout.
        length [m]: of the limb, > 0.
        fadeout [rad]: the limb's angle there.
        rest [rad]: unstrung angle in the middle of each link.
        rigidity [N m^2]: one per joint, from the fadeout to the one before the last link.
        density [kg/m]: mass per length in the middle of each link.
        tip [kg]: mass at the nock beside that of the last link.

    Returns:
        A Chain.

    Raises:
        ValueError: length is not positive.

    Source: beam-theory, each spring bends as the half links beside it; newtonian-mechanics, half of a link's
        mass at either end.
    """
    require_positive("length", length, "m")
    links = len(rest)
    link = length / links
    springs = [2.0 * rigidity[0] / link] + [each / link for each in rigidity[1:]]
    masses = [link * (density[k] + density[k + 1]) / 2.0 for k in range(links - 1)]
    masses.append(link * density[-1] / 2.0 + tip)
    return Chain(base, link, [fadeout] + rest, springs, masses)


def let_go(
    chain: Chain, string: Strung, angles: list[float], nock: float, half_arrow: float
) -> "Generator[float, None, float]":
    """Find the speed of an arrow that leaves the bow, from full draw on.

    Yields how far the string has come, from 0 to 1.

    Args:
        chain: half a bow.
        string: half of it.
        angles [rad]: of the links at full draw.
        nock [m]: x of the nocking point there.
        half_arrow [kg]: half of the arrow's mass, > 0.

    Returns:
        [m/s] speed at which the string no longer pushes.

    Raises:
        ValueError: half_arrow is not positive, or the arrow never leaves.

    Limits:
        No friction in string, limbs or air, and no give in riser and hand: a real bow gives a few per cent
        less. With 12 links the energy of the arrow is 1 % less than with 45.

    Source: newtonian-mechanics, derived here: the chain of links of Kooi's bows, lumped at the joints.
    """
    require_positive("half_arrow", half_arrow, "kg")
    carried = half_arrow + string.mass / 3.0
    links = len(angles)
    fastest = 0.0
    for k in range(links):
        beside = min(chain.masses[k], chain.masses[k - 1] if k else chain.masses[k])
        fastest = max(fastest, 4.0 * math.sqrt(chain.springs[k] / beside) / chain.link)
    lightest = min(chain.masses[-1], carried)
    fastest = max(fastest, 2.0 * math.sqrt(string.stiffness / (string.length * lightest)))
    step = STRIDE / fastest
    state = list(angles) + [0.0] * links + [nock, 0.0]
    start = nock
    for count in range(MOST_STEPS):
        rates, push = _rates(chain, string, carried, state)
        if push <= 0.0 and state[-1] < 0.0:
            return -state[-1]
        state = _stepped(chain, string, carried, state, rates, step)
        if count % STEPS_AT_ONCE == 0:
            yield min(0.99, max(0.0, 1.0 - state[-2] / start))
    raise ValueError("the arrow must leave the string; it does not")


def _stepped(
    chain: Chain, string: Strung, carried: float, state: list[float], first: list[float], step: float
) -> list[float]:
    second, _ = _rates(chain, string, carried, [a + 0.5 * step * b for a, b in zip(state, first)])
    third, _ = _rates(chain, string, carried, [a + 0.5 * step * b for a, b in zip(state, second)])
    fourth, _ = _rates(chain, string, carried, [a + step * b for a, b in zip(state, third)])
    return [state[i] + step / 6.0 * (first[i] + 2.0 * (second[i] + third[i]) + fourth[i])
            for i in range(len(state))]


def _rates(
    chain: Chain, string: Strung, carried: float, state: list[float]
) -> tuple[list[float], float]:
    """Return the rates of angles, their rates, nock and its rate; and what pushes the arrow [N]."""
    links = len(chain.masses)
    link, masses = chain.link, chain.masses
    sines = [math.sin(state[k]) for k in range(links)]
    cosines = [math.cos(state[k]) for k in range(links)]
    xs: list[float] = []
    ys: list[float] = []
    x, y = chain.base
    for k in range(links):
        x += link * sines[k]
        y += link * cosines[k]
        xs.append(x)
        ys.append(y)
    nock, pace = state[-2], state[-1]
    first = links - 1  # the joint that the string touches first
    for k in range(links - 2, 0, -1):
        if (xs[k] - nock) * ys[first] > (xs[first] - nock) * ys[k]:
            first = k
    away_x, away_y = xs[first] - nock, ys[first]
    free = math.sqrt(away_x * away_x + away_y * away_y)
    strain = (free + link * (links - 1 - first)) / string.length - 1.0
    tension = string.stiffness * strain if strain > 0.0 else 0.0
    along_x, along_y = away_x / free, away_y / free
    # forces at the joints: springs as couples on the links, the string where it touches
    moments = []
    before = chain.rest[0]
    for k in range(links):
        moments.append(chain.springs[k] * (state[k] - before - chain.rest[k + 1] + chain.rest[k]))
        before = state[k]
    moments.append(0.0)
    fx, fy = [0.0] * links, [0.0] * links
    for k in range(links):
        couple = (moments[k + 1] - moments[k]) / link
        fx[k] += couple * cosines[k]
        fy[k] -= couple * sines[k]
        if k:
            fx[k - 1] -= couple * cosines[k]
            fy[k - 1] += couple * sines[k]
    # and from there on it only presses each link along itself, which moves nothing
    fx[first] -= tension * along_x
    fy[first] -= tension * along_y
    # tensions of the links, from the tip of the equations to the fadeout
    diagonal: list[float] = []
    right: list[float] = []
    above = [0.0] * links
    for k in range(links):
        value = 1.0 / masses[k]
        pull = (fx[k] * sines[k] + fy[k] * cosines[k]) / masses[k]
        pull += link * state[links + k] * state[links + k]
        if k:
            value += 1.0 / masses[k - 1]
            pull -= (fx[k - 1] * sines[k] + fy[k - 1] * cosines[k]) / masses[k - 1]
            factor = above[k - 1] / diagonal[k - 1]
            value -= factor * above[k - 1]
            pull -= factor * right[k - 1]
        if k < links - 1:
            above[k] = -(sines[k] * sines[k + 1] + cosines[k] * cosines[k + 1]) / masses[k]
        diagonal.append(value)
        right.append(pull)
    held = [0.0] * (links + 1)
    for k in range(links - 1, -1, -1):
        held[k] = (right[k] - above[k] * held[k + 1]) / diagonal[k]
    turning = []
    ax = ay = 0.0
    for k in range(links):
        after = held[k + 1]
        next_sine, next_cosine = (sines[k + 1], cosines[k + 1]) if k < links - 1 else (0.0, 0.0)
        here_x = (fx[k] + after * next_sine - held[k] * sines[k]) / masses[k]
        here_y = (fy[k] + after * next_cosine - held[k] * cosines[k]) / masses[k]
        turning.append(((here_x - ax) * cosines[k] - (here_y - ay) * sines[k]) / link)
        ax, ay = here_x, here_y
    push = -tension * along_x
    return state[links:2 * links] + turning + [pace, -push / carried], push
