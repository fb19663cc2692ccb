"""Weight and tiller: sensitivities against differences, calibration, and meeting a target."""

import math

import pytest

from calc.mechanics.bow import tuning
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.tuning import (
    MOST_AMISS,
    Setup,
    Unmet,
    bending_shares,
    calibrate,
    meet,
    meet_steps,
    read,
)
from calc.numerics.interpolation import curve_at, station_slopes
from calc.quantities import INCH, POUND_FORCE
from tests.mechanics.bows import longbow, recurve
from tests.mechanics.lever_estimate import tiller_per_stiffness_lost
from tests.sentences import whole

DRAW = 26.25 * INCH
BENCH = Setup(brace_height=0.2, draw=DRAW, from_end=0.25)


def with_same_string(bow, upper, lower):
    """Return a bow with other limbs and the string of the first, cut and nocked alike."""
    other = Bow(upper, lower, bow.pivot, bow.string_stiffness)
    other.brace(bow.braced.height)
    other.braced.upper_length = bow.braced.upper_length
    other.braced.lower_length = bow.braced.lower_length
    return other


@pytest.mark.parametrize("station", range(9))
@pytest.mark.parametrize("string_stiffness", [None, 25000.0])
def test_shares_match_differences(station, string_stiffness):
    bow = recurve(1.03, (0.0, 0.02), string_stiffness, steps=96)
    bow.brace(0.2)
    shares = bending_shares(bow, DRAW)
    change = 1e-3
    factors = [math.exp(change) if i == station else 1.0 for i in range(9)]
    logarithms = tuple(change if i == station else 0.0 for i in range(9))
    slopes = station_slopes(logarithms)
    spread = [curve_at(logarithms, slopes, 8 * i / 96)[0] for i in range(97)]
    force = bow.draw(DRAW).force

    stiffer = with_same_string(bow, bow.upper.stiffened(factors), bow.lower).draw(DRAW).force
    by_shares = sum(share * part for share, part in zip(shares.upper, spread))
    assert math.log(stiffer / force) == pytest.approx(by_shares, rel=5e-3, abs=2e-6)

    stiffer = with_same_string(bow, bow.upper, bow.lower.stiffened(factors)).draw(DRAW).force
    by_shares = sum(share * part for share, part in zip(shares.lower, spread))
    assert math.log(stiffer / force) == pytest.approx(by_shares, rel=5e-3, abs=2e-6)


def test_shares_just_past_the_brace_height_are_those_a_little_farther():
    """So near to it the bow cannot be held a step back, and is drawn a step on only."""
    bow = recurve(1.03, (0.0, 0.02))
    bow.brace(0.2)
    near, far = bow.braced.distance * 1.0004, bow.braced.distance * 1.0011
    for limb in ("upper", "lower"):
        gains = [sum(getattr(bending_shares(bow, each), limb)) * bow.draw(each).force for each in (near, far)]
        assert gains[0] == pytest.approx(gains[1], rel=0.03)


def test_shares_of_a_string_that_does_not_stretch_add_up_without_it():
    bow = longbow(1.02)
    bow.brace(0.17)
    shares = bending_shares(bow, DRAW)
    assert shares.string == pytest.approx(0.0, abs=2e-3)
    assert sum(shares.upper) == pytest.approx(0.5, abs=0.05)
    assert min(*shares.upper, *shares.lower) > -1e-9


def test_a_stretching_string_carries_its_share():
    bow = recurve(string_stiffness=25000.0)
    bow.brace(0.2)
    shares, change = bending_shares(bow, DRAW), 1e-3
    other = recurve(string_stiffness=25000.0 * math.exp(change))
    other.brace(0.2)
    other.braced.upper_length, other.braced.lower_length = bow.braced.upper_length, bow.braced.lower_length
    stiffer = other.draw(DRAW).force
    assert math.log(stiffer / bow.draw(DRAW).force) / change == pytest.approx(shares.string, abs=3e-3)


@pytest.mark.parametrize("string_stiffness", [None, 25000.0])
def test_calibration_gives_back_what_was_measured(string_stiffness):
    bow = recurve(1.0, (0.0, 0.01), string_stiffness)
    found = calibrate(bow, BENCH, 45 * POUND_FORCE, 0.25 * INCH)
    again = read(found.bow, BENCH)
    assert again.weight == pytest.approx(45 * POUND_FORCE, rel=1e-6)
    assert again.tiller == pytest.approx(0.25 * INCH, abs=1e-6)
    assert found.lower_factor > found.upper_factor  # upper stands off farther: the lower limb is the stiffer
    assert found.misfits == ()


def test_calibration_finds_factors_that_were_put_in():
    bow = recurve(1.0, (0.0, 0.01))
    made = Bow(bow.upper.stiffened(1.31), bow.lower.stiffened(1.34), bow.pivot)
    state = read(made, BENCH)
    readings = tuple((draw, made.draw(draw).force + 1.0) for draw in (0.4, 0.5, 0.6))
    found = calibrate(bow, BENCH, state.weight, state.tiller, readings)
    assert found.upper_factor == pytest.approx(1.31, rel=1e-5)
    assert found.lower_factor == pytest.approx(1.34, rel=1e-5)
    assert found.misfits == pytest.approx([-1.0] * 3, abs=1e-3)


def test_a_bow_comes_down_by_a_sixth_with_its_tiller_put_right():
    # Common practice: a sixth of the weight at 28 in, and a quarter inch of tiller error corrected meanwhile.
    heavy = calibrate(recurve(), BENCH, 54 * POUND_FORCE, -0.125 * INCH).bow

    def thinned(upper, lower):
        return Bow(heavy.upper.stiffened(1 - upper), heavy.lower.stiffened(1 - lower), heavy.pivot)

    met = meet(thinned, (0.1, 0.1), (0.01, 0.01), BENCH, 45 * POUND_FORCE, 0.125 * INCH)
    assert met.state.weight == pytest.approx(45 * POUND_FORCE, rel=1e-6)
    assert met.state.tiller == pytest.approx(0.125 * INCH, abs=1e-6)
    upper, lower = met.amounts
    assert 0.5 * (upper + lower) == pytest.approx(1 / 6, abs=0.01)
    # Before, the upper limb stood closer: it was the stiffer, and more comes off it.
    assert upper > lower

    more, less = met.rates
    step = 0.005
    softer = read(thinned(upper + step, lower), BENCH)
    assert softer.weight - met.state.weight == pytest.approx(more[0] * step, rel=0.1)
    assert softer.tiller - met.state.tiller == pytest.approx(less[0] * step, rel=0.1)
    softer = read(thinned(upper, lower + step), BENCH)
    assert softer.weight - met.state.weight == pytest.approx(more[1] * step, rel=0.1)
    assert softer.tiller - met.state.tiller == pytest.approx(less[1] * step, rel=0.1)


def test_meeting_a_target_takes_few_bows():
    bow = recurve()
    trials = list(meet_steps(
        lambda upper, lower: Bow(bow.upper.stiffened(upper), bow.lower.stiffened(lower)),
        (1.0, 1.0), (-0.02, -0.02), BENCH, 0.85 * read(bow, BENCH).weight, 0.005,
    ))
    assert len(trials) <= 6


@pytest.mark.parametrize(("bow_length", "riser", "brace"), [(60, 18, 8), (66, 13, 6.5), (70, 14, 6.5)])
def test_straight_limbs_answer_in_tiller_much_as_rigid_levers_do(bow_length, riser, brace):
    # Two models that share nothing: bending limbs against levers on hinges, for limbs that taper evenly.
    fadeout = riser / 2 * INCH
    limb = Limb((bow_length - riser) / 2 * INCH, (0.0, fadeout), (0.0, 0.0, 0.0), (20.0, 14.0, 8.0))
    whole = Bow(limb, limb).brace(brace * INCH)
    softer = Bow(limb.stiffened(0.99), limb).brace(brace * INCH)
    gained = softer.tiller_at_fadeouts().difference - whole.tiller_at_fadeouts().difference
    lever = 0.01 * tiller_per_stiffness_lost(bow_length * INCH, riser * INCH, brace * INCH, fadeout)
    assert gained == pytest.approx(lever, rel=0.15)


def test_targets_that_cannot_be_met():
    bow = recurve()

    def of_one_amount(first, second):
        factor = math.exp(first + second)
        return Bow(bow.upper.stiffened(factor), bow.lower.stiffened(factor))

    with pytest.raises(ValueError, match=whole(
            "the two amounts must act differently on weight and tiller; these do not")):
        meet(of_one_amount, (0.0, 0.0), (0.01, 0.01), BENCH, 150.0, 0.01)
    with pytest.raises(ValueError, match=whole("wanted weight must be positive, got 0.0 N")):
        meet(of_one_amount, (0.0, 0.0), (0.01, 0.01), BENCH, 0.0, 0.01)
    with pytest.raises(ValueError, match=whole("measured weight must be positive, got -1.0 N")):
        calibrate(bow, BENCH, -1.0, 0.0)


def test_tiller_that_no_two_limbs_show_is_said_and_nothing_overflows():
    # The search once doubled the logarithms until exp overflowed.
    for tiller in (-0.2, 0.2, 1.0):
        with pytest.raises(Unmet):
            calibrate(recurve(), Setup(0.2, DRAW, None), 200.0, tiller)


def test_a_search_stays_within_what_it_is_given():
    bow, seen = recurve(), []

    def bow_with(upper, lower):
        seen.append((upper, lower))
        return Bow(bow.upper.stiffened(upper), bow.lower.stiffened(lower))

    weight = read(bow, BENCH).weight
    with pytest.raises(Unmet):
        meet(bow_with, (1.0, 1.0), (-0.02, -0.02), BENCH, 0.5 * weight, 0.0, ((0.8, 1.0), (0.8, 1.0)))
    assert all(0.8 <= amount <= 1.0 for pair in seen for amount in pair)
    met = meet(bow_with, (1.0, 1.0), (-0.02, -0.02), BENCH, 0.5 * weight, 0.0, None, 0.1)
    assert met.state.weight == pytest.approx(0.5 * weight, rel=1e-6)


def test_tiller_at_the_fadeouts_can_be_the_target_too():
    setup = Setup(0.2, DRAW, None)
    found = calibrate(recurve(), setup, 200.0, 0.004)
    assert found.state.braced.tiller_at_fadeouts().difference == pytest.approx(0.004, abs=1e-6)


def test_a_limb_may_be_twenty_times_as_stiff_beside_the_other_as_reckoned_and_no_more():
    assert math.exp(MOST_AMISS) == pytest.approx(20, rel=0.01)


def test_calibration_stays_within_twenty_times(monkeypatch):
    asked = {}

    def watched(*arguments):
        asked["start"], asked["within"] = arguments[1], arguments[6]
        raise ValueError("far enough")

    monkeypatch.setattr(tuning, "meet", watched)
    bow = recurve()
    weight = 3 * read(bow, BENCH).weight
    with pytest.raises(Unmet, match=whole("far enough")):
        calibrate(bow, BENCH, weight, 0.0)
    common, difference = asked["within"]
    assert asked["start"] == (pytest.approx(math.log(3), abs=1e-6), 0.0)
    assert [math.exp(each) / 3 for each in common] == pytest.approx([1 / 20, 20], rel=0.01)
    assert [math.exp(each) for each in difference] == pytest.approx([1 / 20, 20], rel=0.01)


def test_weight_once_calibrated_comes_back_whatever_it_was_reckoned():
    # A bow reckoned nine times too soft is within what is searched.
    bow = recurve().upper
    soft = Bow(bow.stiffened(1 / 9), bow.stiffened(1 / 9))
    found = calibrate(soft, BENCH, read(Bow(bow, bow), BENCH).weight, 0.0)
    assert (found.upper_factor, found.lower_factor) == pytest.approx((9, 9), rel=1e-5)


def test_the_first_rates_are_differences_about_the_start():
    bow = recurve()

    def bow_with(upper, lower):
        return Bow(bow.upper.stiffened(upper), bow.lower.stiffened(lower))

    first = next(meet_steps(bow_with, (1.0, 0.9), (1e-3, 1e-3), BENCH, 100.0, 0.0))
    here = read(bow_with(1.0, 0.9), BENCH)
    by_upper, by_lower = read(bow_with(1.001, 0.9), BENCH), read(bow_with(1.0, 0.901), BENCH)
    weights = [(each.weight - here.weight) / 1e-3 for each in (by_upper, by_lower)]
    tillers = [(each.tiller - here.tiller) / 1e-3 for each in (by_upper, by_lower)]
    assert first.rates[0] == pytest.approx(weights, rel=1e-4)
    assert first.rates[1] == pytest.approx(tillers, rel=1e-4)
    assert first.amounts == (1.0, 0.9)


def test_a_step_to_a_bow_that_cannot_be_computed_is_halved():
    bow, seen = recurve(), []

    def bow_with(upper, lower):
        seen.append((upper, lower))
        if upper < 0.8:
            raise ValueError("it cannot be braced")
        return Bow(bow.upper.stiffened(upper), bow.lower.stiffened(lower))

    start = (1.0, 0.98)
    with pytest.raises(Unmet):
        meet(bow_with, start, (0.01, 0.01), BENCH, 0.5 * read(bow, BENCH).weight, 0.0)
    refused = next(i for i, pair in enumerate(seen) if pair[0] < 0.8)
    for before, after in zip(seen[refused:], seen[refused + 1:]):
        if before[0] >= 0.8:
            break
        assert after == pytest.approx([(a + b) / 2 for a, b in zip(start, before)])
