"""Removals on two limbs: the target met, or the nearest that may be had."""

import math

import pytest

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.reduction import reduction_steps
from calc.mechanics.bow.tuning import Setup, read
from calc.quantities import INCH
from tests.mechanics.bows import recurve

BENCH = Setup(0.2, 26.25 * INCH, None)
MOST = 5e-4
WHOLE = recurve(1.02)
BEFORE = read(recurve(1.02), BENCH)


def thinned(upper, lower):
    """Return the bow after removals: 1 % of stiffness goes with 0.01 mm."""
    return Bow(WHOLE.upper.stiffened(math.exp(-1000 * upper)), WHOLE.lower.stiffened(math.exp(-1000 * lower)))


def reduce(weight_left, tiller, most=MOST):
    """Return the reduction to a share of the weight, and how far along it said it was."""
    search = reduction_steps(thinned, BENCH, weight_left * BEFORE.weight, tiller, most)
    along = []
    while True:
        try:
            along.append(next(search))
        except StopIteration as end:
            return end.value, along


def test_a_target_inside_is_met_to_the_last_digit():
    found, along = reduce(0.9, 0.002)
    after = read(thinned(found.upper, found.lower), BENCH)
    assert after.weight == pytest.approx(0.9 * BEFORE.weight, rel=1e-6)
    assert after.tiller == pytest.approx(0.002, abs=1e-6)
    assert found.state.weight == pytest.approx(after.weight, rel=1e-9)
    assert (found.too_heavy, found.off_tiller, found.lower_weight_helps) == (False, False, False)
    assert 0 < found.upper < MOST
    assert 0 < found.lower < MOST
    assert along == sorted(along)
    assert all(0 <= each <= 1 for each in along)


def test_rates_are_those_of_the_whole_bow():
    found, _ = reduce(0.9, 0.002)
    (heavy_upper, heavy_lower), (tiller_upper, tiller_lower) = found.rates
    step = 1e-6
    by_upper, by_lower = read(thinned(step, 0.0), BENCH), read(thinned(0.0, step), BENCH)
    assert (by_upper.weight - BEFORE.weight) / step == pytest.approx(heavy_upper, rel=0.02)
    assert (by_lower.weight - BEFORE.weight) / step == pytest.approx(heavy_lower, rel=0.02)
    assert (by_upper.tiller - BEFORE.tiller) / step == pytest.approx(tiller_upper, rel=0.02)
    assert (by_lower.tiller - BEFORE.tiller) / step == pytest.approx(tiller_lower, rel=0.02)


@pytest.mark.parametrize("wanted", [0.0, BEFORE.tiller, 0.01])
def test_where_weight_cannot_be_had_tiller_is_kept(wanted):
    found, _ = reduce(0.5, wanted)
    assert found.too_heavy
    assert not found.off_tiller
    assert found.state.tiller == pytest.approx(wanted, abs=1e-5)
    assert max(found.upper, found.lower) == pytest.approx(MOST, abs=1e-7)
    assert min(found.upper, found.lower) >= 0
    # nothing lighter has that tiller: more off the other limb would bring it out again
    assert found.state.weight > 0.5 * BEFORE.weight


@pytest.mark.parametrize(("wanted", "worked"), [(0.045, "upper"), (-0.035, "lower"), (0.2, "upper")])
def test_where_a_limb_would_have_to_gain_weight_is_kept(wanted, worked):
    found, _ = reduce(0.95, wanted)
    assert found.off_tiller
    assert not found.too_heavy
    assert found.state.weight == pytest.approx(0.95 * BEFORE.weight, rel=1e-5)
    assert (found.lower if worked == "upper" else found.upper) == 0.0
    assert (found.upper if worked == "upper" else found.lower) > 0.0
    # a lower weight helps where the most off that limb alone goes past the tiller wanted
    alone = read(thinned(MOST, 0.0) if worked == "upper" else thinned(0.0, MOST), BENCH).tiller
    assert found.lower_weight_helps == (alone > wanted if worked == "upper" else alone < wanted)


def test_a_lower_weight_that_is_said_to_help_does():
    found, _ = reduce(0.95, 0.045)
    assert found.off_tiller
    assert found.lower_weight_helps
    lighter, _ = reduce(0.85, 0.045)
    assert not lighter.off_tiller
    assert not lighter.too_heavy


def test_where_both_stand_in_the_way_the_limb_tiller_wants_weaker_gives_all():
    found, _ = reduce(0.3, 0.06, 1e-4)
    assert (found.upper, found.lower) == (1e-4, 0.0)
    assert found.too_heavy
    assert found.off_tiller
    assert not found.lower_weight_helps
    found, _ = reduce(0.3, -0.05, 1e-4)
    assert (found.upper, found.lower) == (0.0, 1e-4)


def test_where_nothing_may_come_off_the_bow_stays_as_it_is():
    found, _ = reduce(0.9, 0.002, 0.0)
    assert (found.upper, found.lower) == (0.0, 0.0)
    assert found.state.weight == pytest.approx(BEFORE.weight)
    assert found.too_heavy
    assert found.off_tiller


def test_weight_that_is_there_already_takes_nothing():
    found, _ = reduce(1.0, BEFORE.tiller)
    assert max(found.upper, found.lower) < 1e-7
    assert not found.too_heavy
    assert not found.off_tiller


def test_limbs_that_give_little_at_first_are_brought_in_too():
    # Rates before any removal promise next to nothing, so that the first guess lies far out.
    def slowly(upper, lower):
        return Bow(WHOLE.upper.stiffened(1 - 0.5 * (upper / MOST) ** 2),
                   WHOLE.lower.stiffened(1 - 0.5 * (lower / MOST) ** 2))

    search = reduction_steps(slowly, BENCH, 0.8 * BEFORE.weight, 0.002, MOST)
    while True:
        try:
            next(search)
        except StopIteration as end:
            found = end.value
            break
    assert found.state.weight == pytest.approx(0.8 * BEFORE.weight, rel=1e-5)
    assert found.state.tiller == pytest.approx(0.002, abs=1e-5)
    assert 0 < min(found.upper, found.lower) < max(found.upper, found.lower) < MOST
