"""Rates of weight and tiller by stiffness, against differences of bows computed one by one."""

import math

import pytest

from calc.mechanics.bow.bow import Bow, Limb
from calc.mechanics.bow.place_rates import place_rates
from calc.mechanics.bow.tuning import Setup, read
from calc.numerics.interpolation import curve_at, station_slopes
from calc.quantities import INCH
from tests.mechanics.bows import longbow, recurve

DRAW = 26.25 * INCH
CHANGE = 1e-3

BOWS = {
    "recurve": lambda steps: recurve(1.03, (0.0, 0.02), 25000.0, steps=steps),
    "string that does not stretch": lambda steps: recurve(1.03, steps=steps),
    "longbow": lambda steps: longbow(1.1, string_stiffness=20000.0, steps=steps),
}


def stiffened(bow, limb, factors):
    limbs = [bow.upper, bow.lower]
    limbs[limb] = limbs[limb].stiffened(factors)
    return Bow(limbs[0], limbs[1], bow.pivot, bow.string_stiffness)


def differences(bow, setup, state, limb, logarithms):
    """Return the central difference of (weight, tiller) by a change of stiffness."""
    ends = []
    for way in (CHANGE, -CHANGE):
        changed = stiffened(bow, limb, tuple(math.exp(way * each) for each in logarithms))
        ends.append(read(changed, setup, state))
    higher, lower = ends
    return (higher.weight - lower.weight) / (2 * CHANGE), (higher.tiller - lower.tiller) / (2 * CHANGE)


def along_steps(logarithms, steps):
    """Return the values at each step of what a limb makes of values at its stations."""
    slopes = station_slopes(logarithms)
    cells = len(logarithms) - 1
    return [curve_at(logarithms, slopes, cells * i / steps)[0] for i in range(steps + 1)]


def worst(make, steps, from_end):
    """Return the largest error over all stations, of weight and of tiller, as part of the largest rate."""
    bow, setup = make(steps), Setup(0.18, DRAW, from_end)
    state = read(bow, setup)
    rates = place_rates(state.braced, state.drawn, from_end)
    count = len(bow.upper.stiffness)
    found = []
    for limb in (0, 1):
        for station in range(count):
            logarithms = tuple(1.0 if i == station else 0.0 for i in range(count))
            told = rates.gain(limb, along_steps(logarithms, steps))
            found.append((told, differences(bow, setup, state, limb, logarithms)))
    return [max(abs(told[which] - seen[which]) for told, seen in found)
            / max(abs(seen[which]) for _, seen in found) for which in (0, 1)]


@pytest.mark.parametrize("from_end", [None, 0.25])
@pytest.mark.parametrize("name", BOWS)
def test_rates_are_the_limits_of_differences(name, from_end):
    """By each of the stations alone; at forty steps what is left is that of the differences themselves."""
    weight, tiller = worst(BOWS[name], 40, from_end)
    assert weight < 1e-5
    assert tiller < 5e-5


@pytest.mark.parametrize("from_end", [None, 0.25])
@pytest.mark.parametrize("limb", [0, 1])
def test_a_limb_as_a_whole_is_all_its_places_together(limb, from_end):
    bow, setup = recurve(1.03, (0.0, 0.02), 25000.0), Setup(0.18, DRAW, from_end)
    state = read(bow, setup)
    whole = place_rates(state.braced, state.drawn, from_end).whole(limb)
    alike = place_rates(state.braced, state.drawn, from_end, alike=True).whole(limb)
    seen = differences(bow, setup, state, limb, (1.0,) * 9)
    assert whole == pytest.approx(seen, rel=2e-4)
    assert alike == pytest.approx(seen, rel=2e-3)


def test_a_common_factor_scales_the_weight_and_leaves_tiller_alone():
    """Elastica: with a string that does not stretch the force goes with a factor common to both limbs."""
    bow, setup = recurve(1.05), Setup(0.18, DRAW, None)
    state = read(bow, setup)
    rates = place_rates(state.braced, state.drawn, None)
    upper, lower = rates.whole(0), rates.whole(1)
    assert upper[0] + lower[0] == pytest.approx(state.weight, rel=2e-5)
    assert upper[1] + lower[1] == pytest.approx(0.0, abs=1e-6)


def test_a_limb_that_is_not_bent_answers_to_nothing():
    limb = Limb(0.6, (0.0, 0.2), (0.0, 0.0), (20.0, 10.0))
    found = limb.stiffness_rates(0.0, 0.0, (0.2, 0.0))
    assert set(found.gaps) == {0.0}
    assert set(found.ways) == {0.0}
