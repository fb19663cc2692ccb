"""How sure a draw curve is, against computed curves of invented bows that its shapes were not made from."""

import random

import numpy as np
import pytest

from calc.mechanics import likely_curve as module
from calc.mechanics.draw_curve import curve_from_readings, energy_to, force_at, slope_at, stacking_onset
from calc.mechanics.likely_curve import (
    REACH,
    as_curve,
    best_further_draw,
    likely_curve,
    likely_energy,
    likely_force,
    stacking_probability,
)
from calc.numerics.normal import NORMAL_95
from tests.mechanics.curves_of_bows import INCH, POUND_FORCE, curve_of_bow, read, shapes
from tests.sentences import whole

FACTOR = 1.25
QUARTER = POUND_FORCE / 4
OTHERS = range(1000, 1667)
"""Seeds of bows whose curves the shapes do not know."""
SOME = OTHERS[:200]


def trials(gap, error, times, seeds=SOME):
    """Return (bow, readings, likely curve) of each bow, read so many times."""
    chance = random.Random(5)
    for seed in seeds:
        bow = curve_of_bow(seed)
        for _ in range(times):
            draws, forces = read(bow, gap, error, chance)
            yield bow, (draws, forces), likely_curve(draws, forces, bow.start, error)


@pytest.fixture(scope="module")
def two_thousand():
    """Return of 2,000 curves read every 2 in to a quarter of a pound: whether it stacks, how likely."""
    return np.array([(bow.steepness() > FACTOR, stacking_probability(likely, FACTOR))
                     for bow, _, likely in trials(2 * INCH, QUARTER, 3, OTHERS)])


def test_before_a_smoothed_curve_alone_called_one_bow_in_five_wrongly():
    """A smoothing spline within the errors shows less steepness than there is: stacking is missed."""
    chance, wrong, missed = random.Random(5), [], []
    for seed in SOME:
        bow = curve_of_bow(seed)
        draws, forces = read(bow, 2 * INCH, QUARTER, chance)
        curve = curve_from_readings((bow.start, *draws), (0.0, *forces), (0.0,) + (QUARTER,) * len(draws))
        called = stacking_onset(curve, FACTOR) is not None
        wrong.append(called != (bow.steepness() > FACTOR))
        if FACTOR < bow.steepness() < 1.5:
            missed.append(not called)
    assert 0.15 < np.mean(wrong) < 0.25
    assert 0.3 < np.mean(missed) < 0.5


def test_what_is_told_is_seldom_wrong(two_thousand):
    stacks, likely = two_thousand.T
    told = (likely >= 0.8) | (likely <= 0.2)
    assert np.mean(told) > 0.65
    assert np.mean((likely[told] > 0.5) != stacks[told]) < 0.06


def test_of_ten_bows_said_to_stack_by_so_much_so_many_do(two_thousand):
    """Reliability: within a few hundredths on the whole, and 0.1 in a fifth that holds few bows."""
    stacks, likely = two_thousand.T
    amiss = []
    for low in (0.0, 0.2, 0.4, 0.6, 0.8):
        inside = (likely >= low) & (likely < low + 0.2 + 1e-9)
        assert inside.sum() > 100
        off = abs(np.mean(likely[inside]) - np.mean(stacks[inside]))
        assert off < 0.1, low
        amiss.append(off * inside.mean())
    assert sum(amiss) < 0.04
    assert np.mean((likely - stacks) ** 2) < 0.09


@pytest.mark.parametrize(("gap", "pounds", "times"), [(2, 0.25, 5), (1, 0.125, 2), (4, 0.5, 5)])
def test_ranges_hold_what_they_say(gap, pounds, times):
    """Weight among the readings, at the end, one and two inches beyond it, and the energy: 93 to 98.5 %."""
    inside = {name: [] for name in ("within", "end", "inch", "reach", "energy")}
    for bow, _, likely in trials(gap * INCH, pounds * POUND_FORCE, times):
        for name, draw in (("within", bow.end - 1.5 * INCH), ("end", bow.end), ("inch", bow.end + INCH),
                           ("reach", bow.end + REACH)):
            force, error = likely_force(likely, draw)
            inside[name].append(abs(force - bow.force(draw)) <= NORMAL_95 * error)
        work, error = likely_energy(likely, bow.end)
        inside["energy"].append(abs(work - bow.force.integrate(bow.start, bow.end)) <= NORMAL_95 * error)
    for name, held in inside.items():
        assert 0.93 <= np.mean(held) <= 0.985, (name, np.mean(held))


def test_an_inch_beyond_is_no_longer_low():
    """A straight line from the last reading was up to a pound low; the likely curve is high as often."""
    straight, likely_off = [], []
    for bow, (draws, forces), likely in trials(2 * INCH, QUARTER, 1):
        curve = curve_from_readings((bow.start, *draws), (0.0, *forces), (0.0,) + (QUARTER,) * len(draws))
        line = force_at(curve, draws[-1]) + INCH * slope_at(curve, draws[-1])
        true = float(bow.force(bow.end + INCH))
        straight.append((line - true) / POUND_FORCE)
        likely_off.append((likely_force(likely, bow.end + INCH)[0] - true) / POUND_FORCE)
    assert np.mean(straight) < -0.2
    assert min(straight) < -1
    assert abs(np.mean(likely_off)) < 0.06
    assert np.std(likely_off) < 0.4


def test_ranges_grow_further_out():
    for _, _, likely in list(trials(2 * INCH, QUARTER, 1))[:20]:
        errors = [likely_force(likely, likely.end + part * REACH)[1] for part in (0, 0.25, 0.5, 0.75, 1)]
        assert errors == sorted(errors)
        assert errors[-1] > 2 * errors[0]


def test_the_shapes_are_those_of_a_thousand_invented_bows():
    """Mean and spread of curves computed anew, of a seventh of them to be quick, at every place."""
    parts, rows = shapes([curve_of_bow(seed) for seed in range(0, 1000, 7)], 5)
    held = np.array([[sum(c * u ** (i + 1) for i, c in enumerate(shape)) for u in parts]
                     for shape in module.SHAPES])
    assert held[0] == pytest.approx(rows[0], abs=0.03)
    assert np.sqrt(np.sum(held[1:] ** 2, axis=0)) == pytest.approx(
        np.sqrt(np.sum(rows[1:] ** 2, axis=0)), rel=0.2, abs=0.004)


def some_curve(error=QUARTER):
    bow = curve_of_bow(1003)
    draws, forces = read(bow, 2 * INCH, 0.0, random.Random(1))
    return bow, draws, forces, likely_curve(draws, forces, bow.start, error)


def test_slope_and_energy_go_with_the_force():
    """By differences and by Simpson's rule of SciPy."""
    from scipy.integrate import quad

    _, _, _, likely = some_curve()
    curve = as_curve(likely, 40)
    assert len(curve.draws) == 41
    assert (curve.draws[0], curve.draws[-1], curve.forces[0]) == (likely.start, likely.end, 0.0)
    for draw in (likely.start + INCH, likely.start + 7.3 * INCH, likely.end - INCH / 3):
        assert force_at(curve, draw) == pytest.approx(likely_force(likely, draw)[0], rel=1e-5)
        rate = (likely_force(likely, draw + 1e-5)[0] - likely_force(likely, draw - 1e-5)[0]) / 2e-5
        assert slope_at(curve, draw) == pytest.approx(rate, rel=1e-3)
    work, _ = quad(lambda draw: likely_force(likely, draw)[0], likely.start, likely.end)
    assert likely_energy(likely, likely.end)[0] == pytest.approx(work, rel=1e-9)
    assert energy_to(curve, likely.end) == pytest.approx(work, rel=1e-5)


def test_readings_without_scatter_are_met():
    bow, draws, forces, likely = some_curve(0.01 * POUND_FORCE)
    for draw, force in zip(draws, forces, strict=True):
        assert likely_force(likely, draw)[0] == pytest.approx(force, abs=0.05 * POUND_FORCE)
    assert likely.error == pytest.approx(np.hypot(0.01 * POUND_FORCE, 0.0005 * forces[-1]))
    assert (likely.start, likely.end) == (bow.start, bow.end)


def test_readings_that_scatter_more_than_said_raise_the_error():
    _, draws, forces, calm = some_curve()
    wild = [force + (2 if i % 2 else -2) * POUND_FORCE for i, force in enumerate(forces)]
    likely = likely_curve(draws, wild, calm.start, QUARTER)
    assert calm.error == pytest.approx(np.hypot(QUARTER, 0.0005 * forces[-1]))
    assert 1.2 * POUND_FORCE < likely.error < 2.2 * POUND_FORCE
    assert likely_force(likely, likely.end)[1] > 3 * likely_force(calm, calm.end)[1]


def test_one_more_reading_where_it_tells_the_most_leaves_as_much_doubt_as_was_said():
    bow, draws, forces, likely = some_curve()
    offered = tuple(likely.end - INCH * (1 + 2 * i) for i in range(5))
    draw, left = best_further_draw(likely, FACTOR, offered)

    def doubt(added):
        order = np.argsort([*draws, added])
        with_it = np.array([*draws, added])[order], np.array([*forces, bow.force(added)])[order]
        fitted = module._fitted(tuple(with_it[0]), tuple(with_it[1]), bow.start, likely.error)
        row = np.array(module._stacking_row(fitted, FACTOR))
        return np.sqrt(row @ np.array(fitted.known.covariance) @ row)

    row = np.array(module._stacking_row(likely, FACTOR))
    now = np.sqrt(row @ np.array(likely.known.covariance) @ row)
    assert left == pytest.approx(doubt(draw) / now, rel=1e-6)
    assert doubt(draw) == pytest.approx(min(map(doubt, offered)), rel=1e-9)
    assert best_further_draw(likely, FACTOR, ()) is None


def test_an_error_must_be_positive():
    with pytest.raises(ValueError, match=whole("error must be positive, got 0.0 N")):
        likely_curve((0.4, 0.5), (50.0, 90.0), 0.2, 0.0)
