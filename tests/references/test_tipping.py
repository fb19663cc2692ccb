"""Whether a braced bow stays upright, against an energy that knows nothing of string lines."""

import math

import numpy as np
import pytest
from scipy.optimize import minimize

from calc.mechanics.bow.bow import Bow, Limb
from tests.sentences import whole

LENGTH, BASE, HEIGHT, LINKS = 0.62, (-0.01, 0.24), 0.17, 24
STIFFNESS = (26.0, 24.0, 21.5, 19.0, 16.5, 14.0, 11.5, 9.0, 7.0)


def angles(reflex):
    return [0.1 - 0.2 * i / 8 - reflex * max(0.0, i / 8 - 0.4) for i in range(9)]


def braced_chain(reflex):
    """Say whether two chains of links, braced by a string, find a shape of less energy than upright.

    Links with springs between them; the string's length is that which braces the bow upright; least energy
    is sought from a shape that leans a little.
    """
    step = LENGTH / LINKS
    middles = (np.arange(LINKS) + 0.5) / LINKS
    places = np.linspace(0, 1, 9)
    rest = np.interp(middles, places, angles(reflex))
    joints = np.arange(LINKS) / LINKS
    springs = np.exp(np.interp(joints, places, np.log(STIFFNESS))) / np.where(joints == 0, step / 2, step)

    def tips(turned):
        return [
            (BASE[0] + step * np.sin(half).sum(), BASE[1] + step * np.cos(half).sum())
            for half in (turned[:LINKS], turned[LINKS:])
        ]

    def energy(turned):
        bends = [np.diff(half - rest, prepend=0.0) for half in (turned[:LINKS], turned[LINKS:])]
        return sum(0.5 * (springs * bend**2).sum() for bend in bends)

    def moments(turned):
        """Return the derivatives of `energy`; without them SciPy tries every link anew at each step."""
        pulls = [springs * np.diff(half - rest, prepend=0.0)
                 for half in (turned[:LINKS], turned[LINKS:])]
        return np.concatenate([pull - np.append(pull[1:], 0.0) for pull in pulls])

    def upright(half):
        return np.concatenate([half, half])

    # braced upright: least energy with both nocks at the height of the string
    even = minimize(
        lambda half: energy(upright(half)), rest + 0.6 * middles, method="SLSQP",
        jac=lambda half: 2 * moments(upright(half))[:LINKS],
        constraints={"type": "eq", "fun": lambda half: 10 * (tips(upright(half))[0][0] - HEIGHT),
                     "jac": lambda half: 10 * step * np.cos(half)},
        options={"ftol": 1e-12, "maxiter": 300},
    ).x
    (x, y), (other_x, other_y) = tips(upright(even))
    string = math.hypot(x - other_x, y + other_y)

    def excess(turned):
        (x, y), (other_x, other_y) = tips(turned)
        return 10 * (math.hypot(x - other_x, y + other_y) - string)

    def excess_rates(turned):
        (x, y), (other_x, other_y) = tips(turned)
        along = np.array([x - other_x, y + other_y]) / math.hypot(x - other_x, y + other_y)
        upper, lower = turned[:LINKS], turned[LINKS:]
        return 10 * step * np.concatenate([
            along[0] * np.cos(upper) - along[1] * np.sin(upper),
            -along[0] * np.cos(lower) - along[1] * np.sin(lower),
        ])

    lean = 0.02 * middles
    found = minimize(
        energy, np.concatenate([even + lean, even - lean]), method="SLSQP", jac=moments,
        constraints={"type": "eq", "fun": excess, "jac": excess_rates},
        options={"ftol": 1e-12, "maxiter": 500},
    )
    return found.fun < 0.9 * energy(upright(even))


@pytest.mark.parametrize(("reflex", "tips_over"), [(0.5, False), (0.9, False), (1.0, True), (1.2, True)])
def test_tipping(reflex, tips_over):
    # Least energy of a chain of rigid links, by SciPy: it finds its way out of a bow that is not steady.
    # The string is free to the nocks in all four; where it lies on the tips, more reflex is steady again.
    assert braced_chain(reflex) == tips_over
    limb = Limb(LENGTH, BASE, angles(reflex), STIFFNESS)
    if tips_over:
        with pytest.raises(ValueError, match=whole(
                "no steady balance was found at a brace height of 170 mm (6 11/16 in): the limbs cannot "
                "reach the string line, are too unequal, or are so reflexed for this riser that it tips "
                "over")):
            Bow(limb, limb).brace(HEIGHT)
    else:
        assert Bow(limb, limb).brace(HEIGHT).tilt == pytest.approx(0.0, abs=1e-9)
