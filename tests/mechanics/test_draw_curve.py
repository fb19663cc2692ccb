"""The curve through draw-force readings, against SciPy and against curves known in closed form."""


import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import PchipInterpolator, make_smoothing_spline
from scipy.optimize import isotonic_regression

from calc.mechanics.draw_curve import (
    curve_from_readings,
    energy_to,
    force_at,
    middle_slope,
    monotone_slopes,
    pooled,
    slope_at,
    smoothed,
    spline_values,
    stacking_onset,
)
from tests.sentences import whole

DRAWS = (0.20, 0.28, 0.33, 0.40, 0.47, 0.52, 0.61, 0.66)
FORCES = (0.0, 46.0, 71.0, 98.0, 121.0, 139.5, 170.0, 190.0)
ERRORS = (0.0, 1.0, 1.0, 0.5, 1.0, 2.0, 1.0, 1.0)
EXACT = (0.0,) * 8

rising = st.lists(st.floats(0.02, 0.1), min_size=2, max_size=12).map(
    lambda gaps: tuple(np.cumsum([0.2, *gaps]).tolist()))


@pytest.mark.parametrize("weight", [1e-9, 1e-7, 1e-5, 1e-3])
def test_smoothing_spline_matches_scipy(weight):
    """SciPy minimises the same sum; its weights are the inverse squares of the errors."""
    errors = (1.0, *ERRORS[1:])
    reference = make_smoothing_spline(DRAWS, FORCES, w=1 / np.square(errors), lam=weight)
    assert spline_values(DRAWS, FORCES, errors, weight) == pytest.approx(reference(DRAWS), rel=1e-6, abs=1e-6)


def test_smoothing_uses_up_the_errors():
    fitted = np.array(smoothed(DRAWS, FORCES, ERRORS))
    misfit = sum(((fitted - FORCES)[1:] / ERRORS[1:]) ** 2)
    assert misfit == pytest.approx(7, rel=1e-3)
    assert fitted[0] == 0


def test_exact_readings_stay():
    assert smoothed(DRAWS, FORCES, EXACT) == FORCES


def test_a_straight_line_within_its_errors_stays_straight():
    noisy = tuple(100 * d + (0.2 if i % 2 else -0.2) for i, d in enumerate(DRAWS))
    fitted = smoothed(DRAWS, noisy, (1.0,) * 8)
    assert np.polyfit(DRAWS, fitted, 1, full=True)[1] == pytest.approx(0, abs=1e-6)


@given(st.lists(st.floats(-100, 100), min_size=1, max_size=20))
def test_pooling_matches_scipy(values):
    assert pooled(tuple(values)) == pytest.approx(isotonic_regression(values).x, abs=1e-9)


@given(rising, st.data())
def test_monotone_cubic_matches_scipy(draws, data):
    forces = tuple(np.cumsum([0.0, *data.draw(st.lists(
        st.floats(0.1, 50), min_size=len(draws) - 1, max_size=len(draws) - 1))]).tolist())
    curve = curve_from_readings(draws, forces, (0.0,) * len(draws))
    reference = PchipInterpolator(draws, forces)
    places = np.linspace(draws[0], draws[-1], 17).clip(draws[0], draws[-1])
    assert [force_at(curve, x) for x in places] == pytest.approx(reference(places), rel=1e-9, abs=1e-9)
    assert [slope_at(curve, x) for x in places] == pytest.approx(
        reference.derivative()(places), rel=1e-6, abs=1e-6)
    assert energy_to(curve, draws[-1]) == pytest.approx(reference.integrate(draws[0], draws[-1]), rel=1e-9)


@given(rising, st.data())
def test_the_curve_never_falls(draws, data):
    count = len(draws)
    forces = tuple(data.draw(st.lists(st.floats(0, 300), min_size=count, max_size=count)))
    curve = curve_from_readings(draws, forces, (2.0,) * count)
    along = [force_at(curve, min(x, draws[-1])) for x in np.linspace(draws[0], draws[-1], 60)]
    assert all(after >= before - 1e-6 for before, after in zip(along, along[1:], strict=False))


def test_a_spring_stores_half_of_weight_times_stroke():
    """Closed form: a straight line from brace."""
    draws = tuple(np.linspace(0.2, 0.7, 6))
    curve = curve_from_readings(draws, tuple(400 * (x - 0.2) for x in draws), EXACT[:6])
    assert energy_to(curve, 0.7) == pytest.approx(0.5 * 200 * 0.5)
    assert middle_slope(curve) == pytest.approx(400)
    assert stacking_onset(curve, 1.2) is None


def test_stacking_begins_where_a_parabola_says():
    """f = x + a x^2: slope 1 + 2 a x passes k times its mean over the middle third, 1 + a, at a known x."""
    a, k = 1.0, 1.2
    draws = tuple(np.linspace(0, 1, 41))
    curve = curve_from_readings(draws, tuple(x + a * x * x for x in draws), (0.0,) * 41)
    assert stacking_onset(curve, k) == pytest.approx((k * (1 + a) - 1) / (2 * a), abs=0.01)


def test_two_readings_make_a_line():
    assert monotone_slopes((0.0, 2.0), (1.0, 5.0)) == (2.0, 2.0)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: curve_from_readings((0.2,), (0.0,), (0.0,)),
         "two readings or more are needed, each with its error, got 1"),
        (lambda: curve_from_readings((0.2, 0.2), (0.0, 1.0), (0.0, 0.0)),
         "the draws must rise, got 0.2 m after 0.2 m"),
        (lambda: curve_from_readings((0.2, 0.3), (0.0,), (0.0, 0.0)),
         "two readings or more are needed, each with its error, got 2"),
        (lambda: force_at(curve_from_readings(DRAWS, FORCES, EXACT), 0.1),
         "the draw must lie from 0.2 to 0.66 m, got 0.1 m"),
        (lambda: energy_to(curve_from_readings(DRAWS, FORCES, EXACT), 0.7),
         "the draw must lie from 0.2 to 0.66 m, got 0.7 m"),
        (lambda: stacking_onset(curve_from_readings(DRAWS, FORCES, EXACT), 1.0),
         "the factor must be above 1, got 1.0"),
    ],
)
def test_what_is_no_curve_is_refused(call, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        call()
