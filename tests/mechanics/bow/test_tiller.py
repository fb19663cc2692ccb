"""Tiller against the two limbs' stiffness: the curve against bows computed for themselves."""

import math

import pytest

from calc.mechanics.bow.bow import Bow, Limb
from calc.mechanics.bow.tiller import ratio_for, tiller_by_stiffness
from calc.quantities import INCH
from tests.mechanics.bows import RECURVE_ANGLES, RECURVE_STIFFNESS
from tests.mechanics.lever_estimate import tiller_per_stiffness_lost
from tests.sentences import whole

LIMB = Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, RECURVE_STIFFNESS)
STRAIGHT = Limb(0.68, (0.0, 0.17), (0.0, 0.0, 0.0), (40.0, 26.0, 12.0))


def tiller_of(limb, ratio, from_end):
    braced = Bow(limb.stiffened(math.exp(-ratio / 2)), limb.stiffened(math.exp(ratio / 2))).brace(0.2)
    return (braced.tiller_at_fadeouts() if from_end is None else braced.tiller(from_end)).difference


@pytest.mark.parametrize("from_end", [None, 0.25])
@pytest.mark.parametrize("limb", [LIMB, STRAIGHT], ids=["recurve", "straight"])
def test_the_curve_is_the_tiller_of_bows_computed_for_themselves(limb, from_end):
    curve = tiller_by_stiffness(limb, 0.2, from_end)
    for ratio in (-0.2, -0.03, 0.01, 0.07, 0.13, 0.25, 0.5):
        tiller = tiller_of(limb, ratio, from_end)
        assert curve.tiller_at(ratio) == pytest.approx(tiller, rel=5e-3)
        assert ratio_for(curve, tiller) == pytest.approx(ratio, rel=5e-3)


@pytest.mark.parametrize("limb", [LIMB, STRAIGHT], ids=["recurve", "straight"])
def test_its_slope_at_nought_is_that_of_limbs_which_hardly_differ(limb):
    slope = tiller_by_stiffness(limb, 0.2, None).slope_at(0.0)
    assert slope == pytest.approx(tiller_of(limb, 0.001, None) / 0.001, rel=5e-3)


def test_the_curve_passes_through_nought_and_is_odd():
    curve = tiller_by_stiffness(LIMB, 0.2, None)
    assert curve.tiller_at(0.0) == 0.0
    assert curve.ratios == pytest.approx([-ratio for ratio in reversed(curve.ratios)])
    assert curve.tillers == pytest.approx([-tiller for tiller in reversed(curve.tillers)])
    assert list(curve.tillers) == sorted(curve.tillers)


def test_the_stiffer_lower_limb_shows_as_larger_upper_tiller():
    # Common practice: the limb that stands closer to the string is the stiffer one.
    assert tiller_by_stiffness(LIMB, 0.2, None).tiller_at(0.1) > 0


def test_its_slope_at_nought_is_that_of_rigid_levers_for_straight_limbs():
    # Two models that share nothing; 15 % apart at most for even tapers.
    slope = tiller_by_stiffness(STRAIGHT, 6.5 * INCH, None).slope_at(0.0)
    length, riser = 2 * (0.68 + 0.17), 2 * 0.17
    assert slope == pytest.approx(tiller_per_stiffness_lost(length, riser, 6.5 * INCH, 0.17), rel=0.15)


def test_it_reaches_limbs_of_which_one_is_1_8_times_as_stiff_and_no_farther():
    # exp(0.6) = 1.82, where every bow up to there can be braced, as for these straight limbs.
    curve = tiller_by_stiffness(STRAIGHT, 0.2, None)
    assert len(curve.ratios) == 15
    assert math.exp(curve.ratios[-1]) == pytest.approx(1.82, abs=0.005)
    assert ratio_for(curve, curve.tillers[-1]) == pytest.approx(curve.ratios[-1], abs=1e-9)
    assert ratio_for(curve, curve.tillers[0]) == pytest.approx(curve.ratios[0], abs=1e-9)
    assert ratio_for(curve, curve.tillers[-1] * 1.001) is None
    assert ratio_for(curve, curve.tillers[0] * 1.001) is None


def test_it_ends_where_tiller_no_longer_shows_where_it_is_read():
    # Read 0.5475 m from the string's ends, the string stands over the riser once the limbs differ by 0.3.
    curve = tiller_by_stiffness(LIMB, 0.2, 0.5475)
    assert curve.ratios[-1] == pytest.approx(0.2, abs=0.01)
    assert len(curve.ratios) == 7
    with pytest.raises(ValueError, match=whole(
            "a bow of these measures cannot be braced once its limbs differ a little, or tiller does not "
            "show where it is read")):
        tiller_by_stiffness(LIMB, 0.2, 0.5703)
