"""Recurves whose straight tip ends let go of the string all at once: followed over the leap, or refused."""

import math

import pytest

from calc.bows.measured import cannot_be_drawn
from calc.mechanics.bow.bow import TipLetsGo
from calc.mechanics.bow.tuning import Setup, calibrate
from tests.mechanics.tipped_bows import NONE_BEYOND, TIPPED, tipped
from tests.sentences import whole

LETS_GO = whole(
    "the bow cannot be drawn to ", " mm (", " in): at 252 mm (", " in) the string leaves a stiff tip all at "
    "once, and limbs and string find no balance close beyond")


@pytest.mark.parametrize("name", TIPPED)
def test_a_bow_is_followed_over_the_leap(name):
    bow, height = tipped(*TIPPED[name])
    start = bow.brace(height).distance
    curve = bow.curve([start + 0.015 * i for i in range(1, 31)])
    falls = [i for i in range(1, 30) if curve[i].force < curve[i - 1].force]
    before, after = curve[falls[0] - 1], curve[falls[0]]
    assert max(before.upper.departure, before.lower.departure) < bow.upper.length
    assert min(after.upper.departure, after.lower.departure) < bow.upper.length
    assert max(after.upper.departure, after.lower.departure) == bow.upper.length
    assert abs(before.angle) < 0.01
    assert 0.05 < abs(after.angle) < 0.2
    assert abs(curve[-1].angle) < 0.04
    assert all(math.isfinite(each.force) and each.force > 0 for each in curve)


@pytest.mark.parametrize("name", TIPPED)
def test_one_draw_beyond_the_leap_and_a_curve_end_alike(name):
    bow, height = tipped(*TIPPED[name])
    start = bow.brace(height).distance
    draw = start + 0.45
    drawn = bow.draw(draw)
    along = bow.curve([start + 0.45 * i / 30 for i in range(1, 31)])[-1]
    assert drawn.force == pytest.approx(along.force, rel=1e-6)
    assert drawn.angle == pytest.approx(along.angle, abs=1e-6)


def test_a_tip_that_lets_go_with_no_balance_close_beyond_is_named_as_the_cause():
    bow, height = tipped(*NONE_BEYOND)
    bow.brace(height)
    with pytest.raises(TipLetsGo, match=LETS_GO):
        bow.draw(0.6)


def test_a_search_for_stiffness_hands_that_cause_on():
    bow, height = tipped(*NONE_BEYOND)
    with pytest.raises(TipLetsGo, match=LETS_GO):
        calibrate(bow, Setup(height, 0.6, None), 150.0, 0.0)


def test_the_refusal_stands_at_brace_height_and_sends_to_the_tips():
    bow, height = tipped(*NONE_BEYOND)
    bow.brace(height)
    with pytest.raises(TipLetsGo) as caught:
        bow.draw(0.6)
    refused = cannot_be_drawn(0.6, caught.value)
    assert refused.problem.field == "brace_height"
    assert str(refused).endswith(
        " find no balance close beyond. Check the unstrung shape near the tips first; a string braced higher "
        "or lower meets them elsewhere.")
    other = cannot_be_drawn(0.6, ValueError("it is too far"))
    assert other.problem.field == "draw_length"
    assert str(other).endswith(": it is too far. Check draw, brace height, unstrung shape and lengths.")
