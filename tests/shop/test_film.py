"""Films: inverses, the bow's surface, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from calc.shop import film

THICKNESSES = st.floats(0, 1e-3)
SOLIDS = st.floats(0.03, 1)
REDUCERS = st.floats(0, 2)


@given(THICKNESSES, SOLIDS, REDUCERS)
def test_wet_and_dry_are_inverse(wet, solids, reducer):
    dry = film.dry_film_thickness(wet, solids, reducer)
    assert dry <= wet
    assert film.wet_film_thickness(dry, solids, reducer) == pytest.approx(wet)


@given(THICKNESSES, SOLIDS, st.floats(0.05, 1))
def test_solids_balance(wet, solids, efficiency):
    # what lands as solids is what was mixed, times what lands, times its solids
    mixed = film.volume_to_mix(0.2, wet, efficiency)
    assert mixed * efficiency * solids == pytest.approx(0.2 * film.dry_film_thickness(wet, solids), abs=1e-15)


def test_surface_of_tapered_limbs_by_integration():
    # two faces and two edges of a limb that tapers evenly, integrated along it
    length, fadeout, tip, thickness = 0.55, 0.041, 0.013, 0.008
    one_limb, _ = quad(lambda s: 2 * (fadeout + (tip - fadeout) * s / length) + 2 * thickness, 0, length)
    riser = 0.45
    surface = film.bow_surface(2 * length + riser, riser, 0.15, fadeout, tip, thickness)
    assert surface == pytest.approx(2 * one_limb + riser * 0.15)


@given(st.floats(0, 45), st.floats(0, 45), st.floats(3, 30))
def test_doubling_composes_and_is_one_at_the_reference(one, other, step):
    assert film.time_factor_doubling(one, one, step) == 1.0
    there = film.time_factor_doubling(one, other, step)
    assert there * film.time_factor_doubling(other, one, step) == pytest.approx(1.0)
    assert film.time_factor_doubling(one, one + step, step) == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: film.dry_film_thickness(-1e-6, 0.5), "must not be negative"),
        (lambda: film.dry_film_thickness(1e-4, 0.0), "more than 0"),
        (lambda: film.dry_film_thickness(1e-4, 1.1), "at most 1"),
        (lambda: film.wet_film_thickness(1e-4, 0.5, -0.1), "must not be negative"),
        (lambda: film.volume_to_mix(1.0, 1e-4, 0.0), "more than 0"),
        (lambda: film.coverage(0.0, 0.5), "must be positive"),
        (lambda: film.bow_surface(1.0, 1.0, 0.1, 0.04, 0.01, 0.008), "more than riser length"),
        (lambda: film.bow_surface(1.0, 0.5, 0.1, 0.0, 0.01, 0.008), "must be positive"),
        (lambda: film.time_factor_doubling(20, 20, 0.0), "must be positive"),
        (lambda: film.coverage(math.inf, 0.5), "must be positive"),
    ],
)
def test_what_makes_no_sense_is_refused(call, message):
    with pytest.raises(ValueError, match=message):
        call()


def test_without_reducer_none_is_reckoned():
    assert film.dry_film_thickness(1e-4, 0.4) == pytest.approx(4e-5)
    assert film.wet_film_thickness(4e-5, 0.4) == pytest.approx(1e-4)
