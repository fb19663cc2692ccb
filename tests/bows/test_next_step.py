"""The next batch as a decision: against closed forms and sums worked out another way, on a bow that answers
in a straight line.
"""

import math
from statistics import NormalDist
from types import SimpleNamespace

import pytest
from scipy import integrate

from calc.bows.learning import (
    BACK,
    BELLY,
    FIRST_PAPER,
    PAPER_DOUBT,
    Batch,
    Model,
    first_belief,
    with_paper,
)
from calc.bows.next_step import Aim, largest_batch, left_of, next_of, risk_of
from calc.bows.reading_errors import ReadingErrors
from calc.mechanics.bow.response import Response
from calc.numerics.belief import independent

WEIGHT, TILLER = 200.0, 0.004
LESS = 1e5  # [N/m] of weight by a metre off either limb
TILTS = 20.0  # [m/m] of tiller by a metre off the upper limb, and as much the other way off the lower
EACH = 1e-6  # [m] a stroke
GLASS = (1.0e-3, 1.1e-3)
FAR = 1.0  # [m] of glass: no floor near
NORMAL = NormalDist()


def straight(scatter=0.0, weight_error=1.0, glass_error=0.0):
    """Return a computed bow whose weight and tiller go in a straight line with what is taken off."""
    rates = (-LESS, -LESS), (TILTS, -TILTS)
    response = Response((1e-4, 1e-4), (WEIGHT, TILLER), (WEIGHT - 2e-4 * LESS, TILLER), rates, rates)
    names = "Glass on the back", "Glass on the belly", "The core's modulus", "Thickness of the sections"
    causes = [SimpleNamespace(name=name, weight=0.0, tiller=0.0) for name in names]
    ranges = SimpleNamespace(carried=((1.0, 0.0), (0.0, 1.0)), causes=causes)
    return Model(response, ranges, ReadingErrors(weight_error, 1e-4, 1e-5, glass_error, 0.0), scatter, 0.0)


def known_paper(model):
    """Return what is believed where it is known what a stroke takes."""
    belief = first_belief(model)
    values = list(zip(belief.mean, [belief.error(place) for place in range(FIRST_PAPER)]))
    return independent([*values, (math.log(EACH), 0.0)])


def aim(weight, tiller=TILLER, most=1.0, glass=(FAR, FAR), least=(0.0, 0.0), belly_share=0.6):
    return Aim(weight, tiller, most, glass, least, belly_share)


# What is left --------------------------------------------------------------------


def test_both_limbs_come_to_weight_and_tiller_together():
    """Two straight equations: 20 N by their sum, 0.001 m of tiller by their difference."""
    model = straight()
    left = left_of(model, known_paper(model), aim(WEIGHT - 20.0, TILLER + 0.001), 0)
    both, more = 20.0 / LESS, 0.001 / TILTS
    assert left.removals == pytest.approx(((both + more) / 2, (both - more) / 2))
    assert left.strokes == pytest.approx((left.removals[0] / EACH, left.removals[1] / EACH))
    assert not left.glass
    # a reading of 1 N and one of 1e-4 m tiller, each half on either limb
    expected = math.hypot(1.0 / LESS / 2, 1e-4 / TILTS / 2) / EACH
    assert left.errors == pytest.approx((expected, expected))


def test_an_unknown_paper_adds_its_share_of_what_is_left():
    model = straight(weight_error=1e-9)
    belief = with_paper(first_belief(model), EACH)
    left = left_of(model, belief, aim(WEIGHT - 20.0), 0)
    by_tiller = 1e-4 / TILTS / 2 / EACH
    assert left.errors == pytest.approx(
        tuple(math.hypot(strokes * PAPER_DOUBT, by_tiller) for strokes in left.strokes), rel=1e-6)


@pytest.mark.parametrize(("tiller", "alone"), [(0.99, None), (1.01, 0), (-0.99, None), (-1.01, 1)])
def test_a_limb_that_would_have_to_gain_stays_and_the_weight_decides(tiller, alone):
    """20 N are 2e-4 m, which off one limb alone move tiller by 0.004 m: just less or just more is wanted."""
    model = straight()
    left = left_of(model, known_paper(model), aim(WEIGHT - 20.0, TILLER + tiller * 0.004), 0)
    if alone is None:
        assert min(left.removals) == pytest.approx(1e-6)
        assert min(left.errors) > 0
        return
    assert left.removals[alone] == pytest.approx(2e-4)
    assert left.removals[1 - alone] == 0.0
    assert left.errors[1 - alone] == 0.0
    assert left.errors[alone] == pytest.approx(1.0 / LESS / EACH)


def test_at_the_aim_and_below_nothing_is_left():
    model = straight()
    for weight in (WEIGHT, WEIGHT + 5.0):
        left = left_of(model, known_paper(model), aim(weight), 0)
        assert left.removals == pytest.approx((0.0, 0.0), abs=1e-12)


@pytest.mark.parametrize(("most", "stands"), [(1.001e-4, False), (0.999e-4, True)])
def test_glass_stands_in_the_way_where_more_is_wanted_than_may_come_off(most, stands):
    model = straight()
    left = left_of(model, known_paper(model), aim(WEIGHT - 20.0, most=most), 0)
    assert left.glass == stands
    assert left.removals == pytest.approx((min(most, 1e-4),) * 2)


# The risk ------------------------------------------------------------------------


@pytest.mark.parametrize("strokes", [(0, 0), (50, 70), (100, 100)])
def test_the_risk_with_a_known_paper_is_that_of_one_normal_spread(strokes):
    model = straight(scatter=0.2)
    risk = risk_of(model, known_paper(model), aim(WEIGHT - 15.0), Batch(*map(float, strokes), 0, 0.0, 0.0))
    end = WEIGHT - LESS * EACH * sum(strokes)
    error = math.sqrt(1.0 + sum((0.2 * LESS * EACH * each) ** 2 for each in strokes))
    assert risk.weight == pytest.approx(NORMAL.cdf((WEIGHT - 15.0 - end) / error), abs=1e-9)
    assert (risk.back, risk.belly) == (0.0, 0.0)
    assert risk.whole == risk.weight


def test_the_risk_with_an_unknown_paper_is_the_integral_over_what_a_stroke_takes():
    """Summed up in strides of half a standard error it is met to a fiftieth."""
    model = straight(scatter=0.1)
    belief = with_paper(first_belief(model), EACH)
    risk = risk_of(model, belief, aim(WEIGHT - 15.0), Batch(40.0, 30.0, 0, 0.0, 0.0))

    def part(z):
        each = EACH * math.exp(PAPER_DOUBT * z)
        error = math.sqrt(1.0 + (0.1 * LESS * each) ** 2 * (40**2 + 30**2))
        return NORMAL.pdf(z) * NORMAL.cdf((-15.0 + LESS * each * 70) / error)

    assert risk.weight == pytest.approx(integrate.quad(part, -8, 8)[0], rel=0.02)


@pytest.mark.parametrize(("face", "share", "which"), [("back", 0.4, 0), ("belly", 0.6, 1)])
def test_glass_is_risked_on_the_limb_that_has_lost_the_most(face, share, which):
    model = straight(glass_error=2e-5)
    least = tuple(GLASS[place] - 4e-5 if place == which else 0.0 for place in (0, 1))
    goal = aim(0.0, glass=GLASS, least=least)
    assert [goal.share_of(each) for each in (BACK, BELLY)] == [0.4, 0.6]
    risk = risk_of(model, known_paper(model), goal, Batch(60.0, 80.0, 0, 0.0, 0.0))
    assert getattr(risk, face) == pytest.approx(NORMAL.cdf((share * 80 * EACH - 4e-5) / 2e-5), rel=1e-6)
    assert risk.whole == pytest.approx(risk.weight + risk.back + risk.belly)


def test_the_risk_is_never_more_than_all():
    model = straight(glass_error=1e-9)
    risk = risk_of(model, known_paper(model), aim(WEIGHT + 50, glass=GLASS, least=(1.0, 1.0)),
                   Batch(0.0, 0.0, 0, 0.0, 0.0))
    assert (risk.weight, risk.back, risk.belly) == pytest.approx((1.0, 1.0, 1.0))
    assert risk.whole == 1.0


# The batch -----------------------------------------------------------------------


@pytest.mark.parametrize("share", [0.001, 0.025, 0.2])
def test_the_largest_batch_is_the_last_within_the_share(share):
    """Alike limbs, a paper that is known: n strokes on each end at 200 - 0.2 n, read to 1 N, so that the
    largest n keeps 0.2 n - 20 from rising above the normal quantile of the share."""
    model = straight()
    belief, goal = known_paper(model), aim(WEIGHT - 20.0)
    left = left_of(model, belief, goal, 0)
    batch, risk = largest_batch(model, belief, goal, left, 0, share)
    expected = math.floor((20.0 + NORMAL.inv_cdf(share)) / 0.2)
    assert (batch.upper, batch.lower) == (expected, expected)
    assert risk.whole <= share < risk_of(
        model, belief, goal, Batch(expected + 1.0, expected + 1.0, 0, 0.0, 0.0)).whole


def test_all_that_is_left_is_done_where_the_risk_allows():
    model = straight(weight_error=1e-6)
    belief, goal = known_paper(model), aim(WEIGHT - 20.0)
    left = left_of(model, belief, goal, 0)
    batch, risk = largest_batch(model, belief, goal, left, 0, 0.6)
    assert (batch.upper, batch.lower) == tuple(float(int(each)) for each in left.strokes)
    assert risk.whole <= 0.6


def test_no_batch_where_the_bow_is_beyond_the_share_already():
    """Read to 1 N at 1 N above the aim, 16 % of bows lie below it; a stroke on each limb makes that 21 %."""
    model = straight()
    belief, goal = known_paper(model), aim(WEIGHT - 1.0)
    left = left_of(model, belief, goal, 0)
    for share, strokes, expected in ((0.15, 0.0, -1.0), (0.17, 0.0, -1.0), (0.22, 1.0, -0.8)):
        batch, risk = largest_batch(model, belief, goal, left, 0, share)
        assert (batch.upper, batch.lower) == (strokes, strokes)
        assert risk.whole == pytest.approx(NORMAL.cdf(expected), abs=1e-9)


def test_of_a_paper_without_a_reading_half_is_done():
    model = straight()
    belief, goal = known_paper(model), aim(WEIGHT - 20.0)
    left = left_of(model, belief, goal, 0)
    whole, risk = next_of(model, belief, goal, left, 0, 0.025, False)
    half, less = next_of(model, belief, goal, left, 0, 0.025, True)
    assert (half.upper, half.lower) == (whole.upper // 2, whole.lower // 2)
    assert less.whole < risk.whole
