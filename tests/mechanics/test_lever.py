"""The lever estimate of tiller against the two levers solved in full."""

import math

import pytest
from scipy.optimize import brentq

from calc.mechanics.lever import LEVER_SHARE, half_string_length
from calc.quantities import INCH
from tests.mechanics.lever_estimate import tiller_per_stiffness_lost
from tests.sentences import whole

BOW, RISER, BRACE = 1.524, 0.4572, 0.2032
FADEOUT = RISER / 2


def braced_tiller(upper, lower, brace, reading):
    """Return upper minus lower distance of two levers on hinges, solved without linearising.

    For a tilt of the string each lever angle p follows from k p = T lever sin(p - tilt), and the string
    line has to pass through both nocks and through the brace height at mid bow.
    """
    lever = LEVER_SHARE * (BOW - RISER) / 2
    hinge = BOW / 2 - lever

    def nock_on_string(angle, slope):
        return lever * math.sin(angle) - brace - slope * (hinge + lever * math.cos(angle))

    def angle(slope):
        return brentq(nock_on_string, 0.01, 1.4, args=(slope,))

    def tension(stiffness, angle, slope):
        return stiffness * angle / (lever * math.sin(angle - math.atan(slope)))

    def unbalance(slope):
        return tension(upper, angle(slope), slope) - tension(lower, angle(-slope), -slope)

    slope = brentq(unbalance, -0.05, 0.05, xtol=1e-15)

    def distance(side):
        limb = max(0.0, reading - hinge) * math.tan(angle(side * slope))
        return brace + side * slope * reading - limb

    return distance(1) - distance(-1)


@pytest.mark.parametrize("reading", [FADEOUT, 0.30, 0.45])
def test_first_order_matches_the_full_solution(reading):
    lost = 1e-4
    change = braced_tiller(1 - lost, 1, BRACE, reading) - braced_tiller(1, 1, BRACE, reading)
    assert change / lost == pytest.approx(
        tiller_per_stiffness_lost(BOW, RISER, BRACE, reading), rel=2e-3)


def test_a_symmetric_bow_has_no_tiller():
    assert braced_tiller(1, 1, BRACE, FADEOUT) == pytest.approx(0, abs=1e-12)


def test_tiller_scales_with_the_bow():
    one = tiller_per_stiffness_lost(BOW, RISER, BRACE, FADEOUT)
    double = tiller_per_stiffness_lost(2 * BOW, 2 * RISER, 2 * BRACE, 2 * FADEOUT)
    assert double == pytest.approx(2 * one, rel=1e-12)


@pytest.mark.parametrize(
    ("measures", "sentence"),
    [
        ((1.5, 1.6, 0.2, 0.2), "the riser must be shorter than the bow"),
        ((1.5, 0.4, 0.5, 0.2), "the brace height must be less than three quarters of a limb"),
        ((1.5, 0.4, 0.2, 0.9), "the reading must be taken between the middle of the string and its end"),
        ((1.5, 0.4, -0.1, 0.2), "the brace height must be less than three quarters of a limb"),
        ((math.nan, 0.4, 0.2, 0.2), "the riser must be shorter than the bow"),
    ],
)
def test_what_is_no_bow_is_refused(measures, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        tiller_per_stiffness_lost(*measures)


def test_half_string_of_a_72_inch_bow():
    # Hickman's levers for a handle of 8 in and a brace of 6 in, calculated separately: a cross-check.
    assert half_string_length(72 * INCH, 8 * INCH, 6 * INCH) / INCH == pytest.approx(35.237900, abs=5e-7)


def test_half_string_of_the_lever_model():
    """A right triangle of 3, 4, 5: lever 5, brace 3, so the lever reaches 4 along the string."""
    assert half_string_length(2 * 10 / LEVER_SHARE / 2 + 4, 4, 3) == pytest.approx(
        (10 / LEVER_SHARE + 4) / 2 - 5 + 4)
