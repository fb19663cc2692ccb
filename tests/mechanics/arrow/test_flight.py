"""The flight of an arrow, with SciPy's integration as the reference for the power stroke."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from calc.mechanics import draw_curve
from calc.mechanics.arrow import flight
from tests.sentences import whole

masses = st.floats(0.005, 0.06)
strokes = st.floats(0.2, 0.7)
peaks = st.floats(50.0, 400.0)
fullnesses = st.floats(0.34, 0.66)


@given(peaks, strokes, masses)
def test_a_straight_line_pushes_for_a_quarter_of_a_period(peak, stroke, mass):
    time = flight.power_stroke_time((0.0, stroke), (0.0, peak), mass)
    assert time == pytest.approx(math.pi / 2 * math.sqrt(mass * stroke / peak), rel=1e-12)


@given(peaks, strokes, masses)
def test_a_steady_force_pushes_as_in_free_fall(peak, stroke, mass):
    time = flight.power_stroke_time((0.0, stroke), (peak, peak), mass)
    assert time == pytest.approx(math.sqrt(2 * stroke * mass / peak), rel=1e-12)


@given(peaks, strokes, masses, st.floats(0.2, 0.9), st.floats(0.2, 1.5))
def test_any_curve_agrees_with_scipy(peak, stroke, mass, place, height):
    draws = (0.0, place * stroke, stroke)
    forces = (0.0, height * peak, peak)

    def speed_squared(gone):
        x = np.linspace(stroke - gone, stroke, 2)
        knots = np.unique(np.concatenate([x, [d for d in draws if x[0] < d < x[1]]]))
        return 2 / mass * np.trapezoid(np.interp(knots, draws, forces), knots)

    # With gone = u^2 the slow start no longer makes the integrand endless.
    reference, _ = integrate.quad(
        lambda u: 2 * u / math.sqrt(speed_squared(u * u)), 0, math.sqrt(stroke),
        points=[math.sqrt(stroke - draws[1])], epsrel=1e-10,
    )  # fmt: skip
    assert flight.power_stroke_time(draws, forces, mass) == pytest.approx(reference, rel=1e-7)


@given(peaks, strokes, masses, fullnesses)
def test_cutting_a_curve_finer_changes_nothing(peak, stroke, mass, fullness):
    draws, forces = draw_curve.assumed_draw_curve(peak, stroke, fullness, 8)
    fine = np.interp(np.linspace(0, stroke, 33), draws, forces)
    time = flight.power_stroke_time(draws, forces, mass)
    fine_time = flight.power_stroke_time(tuple(np.linspace(0, stroke, 33)), tuple(fine), mass)
    assert fine_time == pytest.approx(time, rel=1e-7)


@given(peaks, strokes, fullnesses)
def test_the_assumed_curve_keeps_its_ends_its_rise_and_its_energy(peak, stroke, fullness):
    draws, forces = draw_curve.assumed_draw_curve(peak, stroke, fullness, 20)
    assert (draws[0], forces[0]) == (0.0, 0.0)
    assert draws[-1] == pytest.approx(stroke)
    assert forces[-1] == pytest.approx(peak)
    assert all(later > earlier for earlier, later in itertools.pairwise(forces))
    short = (fullness - 0.5) / 20**2
    stored = draw_curve.stored_energy(draws, forces)
    assert stored / (peak * stroke) == pytest.approx(fullness - short, rel=1e-9)


@given(st.lists(st.floats(0.0, 300.0), min_size=2, max_size=30))
def test_energy_agrees_with_numpy(forces):
    draws = np.linspace(0.1, 0.7, len(forces))
    found = draw_curve.stored_energy(tuple(draws), tuple(forces))
    assert found == pytest.approx(float(np.trapezoid(forces, draws)), rel=1e-9, abs=1e-9)


@given(st.floats(10.0, 100.0), masses, st.floats(0.0, 0.03))
def test_energy_is_shared_between_arrow_and_virtual_mass(energy, arrow, virtual):
    speed = flight.arrow_speed(energy, arrow, virtual)
    carried = flight.kinetic_energy(arrow, speed)
    assert carried == pytest.approx(energy * flight.efficiency(arrow, virtual), rel=1e-12)
    assert flight.momentum(arrow, speed) == pytest.approx(2 * carried / speed, rel=1e-12)


@given(st.floats(10.0, 100.0), masses, st.floats(0.001, 0.03))
def test_a_chronograph_reading_gives_the_virtual_mass_back(energy, arrow, virtual):
    speed = flight.arrow_speed(energy, arrow, virtual)
    assert flight.virtual_mass_from_speed(energy, arrow, speed) == pytest.approx(virtual, rel=1e-9)


@given(st.floats(10.0, 100.0), masses, st.floats(0.001, 0.03), st.floats(0.001, 0.02))
def test_a_heavier_arrow_is_slower_but_carries_more(energy, arrow, virtual, more):
    light, heavy = (flight.arrow_speed(energy, each, virtual) for each in (arrow, arrow + more))
    assert heavy < light
    assert flight.kinetic_energy(arrow + more, heavy) > flight.kinetic_energy(arrow, light)
    assert flight.momentum(arrow + more, heavy) > flight.momentum(arrow, light)


def test_draw_weight_along_a_line_goes_both_ways():
    there = draw_curve.draw_weight_at(0.74, 200.0, 0.7112, 400.0)
    assert draw_curve.draw_weight_at(0.7112, there, 0.74, 400.0) == pytest.approx(200.0)


def test_an_arrow_that_carries_all_the_energy_leaves_no_virtual_mass():
    assert flight.virtual_mass_from_speed(50.0, 1.0, 10.0) == 0.0


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: draw_curve.draw_weight_at(0.1, 200.0, 0.7, 400.0),
         "draw_length must be where the bow still pulls, got -40.0 N at 0.1 m"),
        (lambda: draw_curve.draw_weight_at(0.25, 100.0, 0.75, 200.0),
         "draw_length must be where the bow still pulls, got 0.0 N at 0.25 m"),
        (lambda: draw_curve.draw_weight_at(0.7, 200.0, 0.7, 0.0), "slope must be positive, got 0.0 N/m"),
        (lambda: draw_curve.stored_energy((0.0,), (1.0,)),
         "a curve must have two or more readings of both kinds, got 1 and 1"),
        (lambda: draw_curve.stored_energy((0.0, 0.1), (1.0,)),
         "a curve must have two or more readings of both kinds, got 2 and 1"),
        (lambda: draw_curve.stored_energy((0.1, 0.1), (1.0, 2.0)), "draws must rise, got 0.1 m after 0.1 m"),
        (lambda: draw_curve.stored_energy((0.0, 0.1), (1.0, float("nan"))),
         "force must be a finite number, got nan N"),
        (lambda: flight.power_stroke_time((0.0, 0.1), (1.0, 0.0), 0.03),
         "force at full draw must be positive, got 0.0 N"),
        (lambda: flight.power_stroke_time((0.0, 0.1), (0.0, 1.0), 0.0),
         "moving_mass must be positive, got 0.0 kg"),
        (lambda: draw_curve.assumed_draw_curve(200.0, 0.5, 0.7, 10),
         "fullness must be from 1/3 to 2/3, got 0.7"),
        (lambda: draw_curve.assumed_draw_curve(200.0, 0.5, 0.5, 0), "steps must be positive, got 0"),
        (lambda: flight.arrow_speed(0.0, 0.03, 0.01), "energy must be positive, got 0.0 J"),
        (lambda: flight.efficiency(0.03, -0.01), "virtual_mass must not be negative, got -0.01 kg"),
        (lambda: flight.virtual_mass_from_speed(10.0, 0.03, 100.0),
         "the arrow must not carry more than the 10.0 J stored, got 150.0 J"),
        (lambda: flight.kinetic_energy(0.0, 1.0), "mass must be positive, got 0.0 kg"),
        (lambda: flight.momentum(1.0, 0.0), "speed must be positive, got 0.0 m/s"),
        (lambda: flight.mass_per_draw_weight(0.03, 0.0), "draw_weight must be positive, got 0.0 N"),
    ],
)
def test_impossible_flights_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
