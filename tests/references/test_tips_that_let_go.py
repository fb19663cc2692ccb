"""Recurves whose straight tip ends let go of the string all at once: held against a least of their energy."""

import numpy as np
import pytest

from tests.mechanics.tipped_bows import TIPPED, tipped
from tests.references.chained_bow import MIDDLES, ChainedBow, ChainedLimb

CLOSE_BEYOND = {  # [m] from the pivot point, a few millimetres past the leap
    "unlike limbs": 0.218, "short and stiff": 0.241, "long tips": 0.256, "a string that gives": 0.239,
}


def chained(bow, drawn):
    """Return the same bow as a chain, and the links as the package has them."""
    limbs, unknowns, braced = [], [], bow.braced
    for limb, shape, string in (
        (bow.upper, drawn.upper, braced.upper_length), (bow.lower, drawn.lower, braced.lower_length)
    ):
        places = np.array(shape.arc_length) / limb.length
        unknowns.append(np.interp(MIDDLES, places, shape.angle))
        limbs.append(ChainedLimb(
            limb.length, limb.base, limb.rest_angle, limb.stiffness, bow.string_stiffness / string, string))
    return ChainedBow(limbs[0], limbs[1], drawn.distance), np.concatenate([*unknowns, [drawn.angle]])


@pytest.mark.parametrize("name", TIPPED)
@pytest.mark.parametrize("far", [False, True], ids=["close beyond", "full draw"])
def test_the_balance_beyond_the_leap_is_a_least_of_the_energy(name, far):
    bow, height = tipped(*TIPPED[name])
    bow.brace(height)
    drawn = bow.draw(0.66 if far else CLOSE_BEYOND[name])
    chain, here = chained(bow, drawn)
    least = chain.least(here)
    assert np.abs(chain.energy(least)[1]).max() < 1e-6
    assert np.linalg.eigvalsh(chain.second(least))[0] > 0
    assert np.abs(least - here).max() < 0.06
    assert least[-1] == pytest.approx(drawn.angle, abs=1e-3)
    assert chain.force(least) == pytest.approx(drawn.force, rel=0.01)
