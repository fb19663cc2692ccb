"""The vibrating shaft, with a determinant solved by SciPy and a finite-element beam as references."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import linalg, optimize

from calc.mechanics.arrow import vibration
from calc.mechanics.arrow.vibration import Beam, Mode
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
    assert vibration.wave_number(mode, Beam(rear, front)) == pytest.approx(reference, rel=1e-10)


def finite_element_wave_numbers(beam, elements=60):
    """Return the wave numbers of a free beam of unit length, mass and stiffness by Hermite elements.

    Nodes of the mesh fall on the ends of the stretch that carries the spread mass.
    """
    rear, front, spread, start, end = beam
    stretches = [each for each in ((0.0, start), (start, end), (end, 1.0)) if each[0] < each[1]]
    places = [0.0]
    for low, high in stretches:
        places += list(np.linspace(low, high, max(1, round(elements * (high - low))) + 1)[1:])
    size = 2 * len(places)
    stiffness, mass = np.zeros((size, size)), np.zeros((size, size))
    for i, h in enumerate(np.diff(places)):
        k = np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                      [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]]) / h**3  # fmt: skip
        m = np.array([[156.0, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h],
                      [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]])  # fmt: skip
        density = 1 + spread / (end - start) * (start <= places[i] < end)
        place = slice(2 * i, 2 * i + 4)
        stiffness[place, place] += k
        mass[place, place] += density * m * h / 420
    mass[0, 0] += rear
    mass[-2, -2] += front
    squares = linalg.eigh(stiffness, mass, eigvals_only=True)
    return squares[2:5] ** 0.25  # the first two are moving and turning as a whole


feathered = st.builds(
    lambda rear, front, spread, start, length: (rear, front, spread, start / 200, (start + length) / 200),
    st.floats(0.0, 2.0), st.floats(0.0, 5.0), st.floats(0.0, 2.0), st.integers(0, 40), st.integers(10, 100),
)


@settings(max_examples=10)
@given(end_masses, end_masses)
def test_roots_agree_with_finite_elements(rear, front):
    reference = finite_element_wave_numbers((rear, front, 0.0, 0.0, 1.0))
    for mode in (1, 2, 3):
        assert vibration.wave_number(mode, Beam(rear, front)) == pytest.approx(reference[mode - 1], rel=2e-5)


@settings(max_examples=20)
@given(feathered)
def test_a_feathered_beam_agrees_with_finite_elements(beam):
    reference = finite_element_wave_numbers(beam)
    for mode in (1, 2, 3):
        assert vibration.wave_number(mode, Beam(*beam)) == pytest.approx(reference[mode - 1], rel=5e-5)


def test_feathers_where_they_are_swing_faster_than_at_the_nock():
    """An arrow of 305 gr and 28 1/4 in, its 28 gr of feathers from 1 to 5 in: 6 % in frequency."""
    shaft = 305.0
    spread = Beam(10 / shaft, 125 / shaft, 28 / shaft, 1 / 28.25, 5 / 28.25)
    at_the_nock = Beam(38 / shaft, 125 / shaft)
    faster = (vibration.wave_number(1, spread) / vibration.wave_number(1, at_the_nock)) ** 2
    assert faster == pytest.approx(1.065, abs=0.002)


@given(modes, end_masses, end_masses, st.floats(0.0, 5.0))
def test_a_mass_spread_all_along_is_a_heavier_beam(mode, rear, front, spread):
    all_along = vibration.wave_number(mode, Beam(rear, front, spread))
    heavier = vibration.wave_number(mode, Beam(rear / (1 + spread), front / (1 + spread)))
    assert all_along * (1 + spread) ** 0.25 == pytest.approx(heavier, rel=1e-9)


@given(end_masses, st.floats(0.0, 2.0))
def test_feathers_close_to_the_nock_are_a_mass_there(front, feathers):
    close = vibration.wave_number(1, Beam(0.0, front, feathers, 0.0, 1e-7))
    assert close == pytest.approx(vibration.wave_number(1, Beam(feathers, front)), rel=1e-5)


@given(modes, feathered)
def test_turning_the_arrow_round_changes_nothing(mode, beam):
    rear, front, spread, start, end = beam
    there = vibration.wave_number(mode, Beam(rear, front, spread, start, end))
    back = vibration.wave_number(mode, Beam(front, rear, spread, 1 - end, 1 - start))
    assert there == pytest.approx(back, rel=1e-11)


@given(modes, end_masses, end_masses)
def test_turning_a_shaft_without_feathers_round_changes_nothing(mode, rear, front):
    there = vibration.wave_number(mode, Beam(rear, front))
    assert there == pytest.approx(vibration.wave_number(mode, Beam(front, rear)), rel=1e-12)


@given(modes, feathered, st.floats(0.001, 5.0))
def test_more_mass_never_raises_a_frequency(mode, beam, more):
    rear, front, spread, start, end = beam
    light = vibration.wave_number(mode, Beam(*beam))
    assert vibration.wave_number(mode, Beam(rear, front + more, spread, start, end)) <= light
    assert vibration.wave_number(mode, Beam(rear + more, front, spread, start, end)) <= light
    assert vibration.wave_number(mode, Beam(rear, front, spread + more, start, end)) <= light


@given(modes, feathered)
def test_a_mode_has_one_node_more_than_its_number(mode, beam):
    shape = Mode(vibration.wave_number(mode, Beam(*beam)), Beam(*beam))
    places = shape.nodes()
    assert len(places) == mode + 1
    assert list(places) == sorted(places)
    for place in places:
        assert abs(shape.at(place)) < 1e-7


@given(modes, feathered)
def test_a_free_vibration_carries_no_momentum(mode, beam):
    rear, front, spread, start, end = beam
    shape = Mode(vibration.wave_number(mode, Beam(*beam)), Beam(*beam))
    points, weights = np.polynomial.legendre.leggauss(60)

    def total(low, high, power):
        """Return the integral of shape times place to a power, from low to high."""
        x = low + (high - low) * (points + 1) / 2
        return (high - low) / 2 * np.sum(weights * np.array([shape.at(each) for each in x]) * x**power)

    for power in (0, 1):  # shift, turn
        carried = (total(0, start, power) + total(start, end, power) * (1 + spread / (end - start))
                   + total(end, 1, power) + (rear if power == 0 else 0) + front * shape.at(1.0))
        assert abs(carried) < 1e-6 * (1 + rear + front + spread)


@given(st.floats(1.0, 20.0), st.floats(0.005, 0.05), st.floats(0.5, 0.9), st.floats(1.1, 3.0))
def test_frequency_scales_as_the_formula_says(rigidity, mass, length, factor):
    start = vibration.frequency(4.73, rigidity, mass, length)
    assert vibration.frequency(4.73, factor**2 * rigidity, mass, length) == pytest.approx(factor * start)
    assert vibration.frequency(4.73, rigidity, factor**2 * mass, length) == pytest.approx(start / factor)
    assert vibration.frequency(4.73, rigidity, mass, factor**2 * length) == pytest.approx(start / factor**3)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: vibration.wave_number(0, Beam(0, 0)), "mode must be 1, 2 or 3, got 0"),
        (lambda: vibration.wave_number(4, Beam(0, 0)), "mode must be 1, 2 or 3, got 4"),
        (lambda: Beam(-0.1, 0), "rear_mass must not be negative, got -0.1"),
        (lambda: vibration.characteristic(0, Beam(0, 0)), "wave_number must be positive, got 0"),
        (lambda: Beam(0, -1), "front_mass must not be negative, got -1"),
        (lambda: Mode(0, Beam(0, 0)), "wave_number must be positive, got 0"),
        (lambda: Beam(0, 0, -1), "spread_mass must not be negative, got -1"),
        (lambda: Beam(0, 0, 1, 0.3, 0.3), "the spread mass must lie on the beam, 0 to 1, got 0.3 to 0.3"),
        (lambda: Beam(0, 0, 1, 0.3, 1.1), "the spread mass must lie on the beam, 0 to 1, got 0.3 to 1.1"),
        (lambda: vibration.frequency(4.73, 1, 0, 1), "beam_mass must be positive, got 0 kg"),
    ],
)
def test_impossible_beams_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
