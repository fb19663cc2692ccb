"""The vibrating shaft, with a determinant solved by SciPy and a finite-element beam as references."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import linalg, optimize

from calc.mechanics.arrow import vibration
from tests.sentences import whole

end_masses = st.floats(0.0, 20.0)
modes = st.sampled_from([1, 2, 3])


def determinant(z, rear, front):
    """Return the determinant of the four end conditions on sin, cos, sinh, cosh, rows scaled."""
    s, c, sh, ch = math.sin(z), math.cos(z), math.sinh(z), math.cosh(z)
    rows = np.array(
        [
            [0, -1, 0, 1],
            [-1, -rear * z, 1, -rear * z],
            [-s, -c, sh, ch],
            [-c + front * z * s, s + front * z * c, ch + front * z * sh, sh + front * z * ch],
        ]
    )
    rows[2:] /= ch
    return np.linalg.det(rows)


@given(modes, end_masses, end_masses)
def test_roots_agree_with_scipy_on_the_plain_determinant(mode, rear, front):
    low, high = mode * math.pi - 1e-3, (mode + 0.5) * math.pi + 0.02
    reference = optimize.brentq(determinant, low, high, args=(rear, front), xtol=1e-14)
    assert vibration.wave_number(mode, rear, front) == pytest.approx(reference, rel=1e-10)


def finite_element_wave_numbers(rear, front, elements=60):
    """Return the wave numbers of a free beam of unit length, mass and stiffness by Hermite elements."""
    h = 1 / elements
    k = np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                  [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]]) / h**3  # fmt: skip
    m = np.array([[156.0, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h],
                  [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]])  # fmt: skip
    m *= h / 420
    size = 2 * elements + 2
    stiffness, mass = np.zeros((size, size)), np.zeros((size, size))
    for i in range(elements):
        place = slice(2 * i, 2 * i + 4)
        stiffness[place, place] += k
        mass[place, place] += m
    mass[0, 0] += rear
    mass[-2, -2] += front
    squares = linalg.eigh(stiffness, mass, eigvals_only=True)
    return squares[2:5] ** 0.25  # the first two are moving and turning as a whole


@settings(max_examples=10)
@given(end_masses, end_masses)
def test_roots_agree_with_finite_elements(rear, front):
    reference = finite_element_wave_numbers(rear, front)
    for mode in (1, 2, 3):
        assert vibration.wave_number(mode, rear, front) == pytest.approx(reference[mode - 1], rel=2e-5)


@given(modes, end_masses, end_masses)
def test_turning_the_arrow_round_changes_nothing(mode, rear, front):
    there, back = vibration.wave_number(mode, rear, front), vibration.wave_number(mode, front, rear)
    assert there == pytest.approx(back, rel=1e-12)


@given(modes, end_masses, end_masses, st.floats(0.001, 5.0))
def test_more_mass_never_raises_a_frequency(mode, rear, front, more):
    start = vibration.wave_number(mode, rear, front)
    assert vibration.wave_number(mode, rear, front + more) <= start
    assert vibration.wave_number(mode, rear + more, front) <= start


@given(modes, end_masses, end_masses)
def test_a_mode_has_one_node_more_than_its_number(mode, rear, front):
    root = vibration.wave_number(mode, rear, front)
    places = vibration.nodes(root, rear, front)
    assert len(places) == mode + 1
    assert list(places) == sorted(places)
    for place in places:
        assert abs(vibration.mode_shape(place, root, rear, front)) < 1e-7


@given(modes, end_masses, end_masses)
def test_a_free_vibration_carries_no_momentum(mode, rear, front):
    root = vibration.wave_number(mode, rear, front)
    points, weights = np.polynomial.legendre.leggauss(60)
    x = (points + 1) / 2
    shape = np.array([vibration.mode_shape(each, root, rear, front) for each in x])
    end = vibration.mode_shape(1.0, root, rear, front)
    push = np.sum(weights / 2 * shape) + rear + front * end
    turn = np.sum(weights / 2 * shape * x) + front * end
    assert abs(push) < 1e-6 * (1 + rear + front)
    assert abs(turn) < 1e-6 * (1 + rear + front)


@given(st.floats(1.0, 20.0), st.floats(0.005, 0.05), st.floats(0.5, 0.9), st.floats(1.1, 3.0))
def test_frequency_scales_as_the_formula_says(rigidity, mass, length, factor):
    start = vibration.frequency(4.73, rigidity, mass, length)
    assert vibration.frequency(4.73, factor**2 * rigidity, mass, length) == pytest.approx(factor * start)
    assert vibration.frequency(4.73, rigidity, factor**2 * mass, length) == pytest.approx(start / factor)
    assert vibration.frequency(4.73, rigidity, mass, factor**2 * length) == pytest.approx(start / factor**3)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: vibration.wave_number(0, 0, 0), "mode must be 1, 2 or 3, got 0"),
        (lambda: vibration.wave_number(4, 0, 0), "mode must be 1, 2 or 3, got 4"),
        (lambda: vibration.wave_number(1, -0.1, 0), "rear_mass must not be negative, got -0.1"),
        (lambda: vibration.characteristic(0, 0, 0), "wave_number must be positive, got 0"),
        (lambda: vibration.mode_shape(0.5, 4.7, 0, -1), "front_mass must not be negative, got -1"),
        (lambda: vibration.nodes(0, 0, 0), "wave_number must be positive, got 0"),
        (lambda: vibration.frequency(4.73, 1, 0, 1), "beam_mass must be positive, got 0 kg"),
    ],
)
def test_impossible_beams_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
