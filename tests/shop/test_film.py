"""Films: inverses, the bow's surface, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from calc.shop import film
from tests.sentences import whole

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
        (lambda: film.dry_film_thickness(-1e-6, 0.5),
         "wet film thickness must not be negative, got -1e-06 m"),
        (lambda: film.dry_film_thickness(1e-4, 0.0),
         "volume solids must be more than 0 and at most 1, got 0.0"),
        (lambda: film.dry_film_thickness(1e-4, 1.1),
         "volume solids must be more than 0 and at most 1, got 1.1"),
        (lambda: film.wet_film_thickness(1e-4, 0.5, -0.1), "reducer must not be negative, got -0.1"),
        (lambda: film.volume_to_mix(1.0, 1e-4, 0.0),
         "transfer efficiency must be more than 0 and at most 1, got 0.0"),
        (lambda: film.coverage(0.0, 0.5), "dry film thickness must be positive, got 0.0 m"),
        (lambda: film.bow_surface(1.0, 1.0, 0.1, 0.04, 0.01, 0.008),
         "bow length must be more than riser length, got 1.0 m and 1.0 m"),
        (lambda: film.bow_surface(1.0, 0.5, 0.1, 0.0, 0.01, 0.008),
         "width at the fadeout must be positive, got 0.0 m"),
        (lambda: film.time_factor_doubling(20, 20, 0.0), "step must be positive, got 0.0 K"),
        (lambda: film.coverage(math.inf, 0.5), "dry film thickness must be a finite number, got inf m"),
    ],
)
def test_what_makes_no_sense_is_refused(call, message):
    with pytest.raises(ValueError, match=whole(message)):
        call()


def test_without_reducer_none_is_reckoned():
    assert film.dry_film_thickness(1e-4, 0.4) == pytest.approx(4e-5)
    assert film.wet_film_thickness(4e-5, 0.4) == pytest.approx(1e-4)


def test_a_strip_as_wide_as_the_fan_gets_all_of_it():
    assert film.strip_share(0.05, 0.05) == 1
    assert film.strip_share(0.06, 0.05) == 1
    assert film.strip_share(0.05, 0.10) == pytest.approx(0.5)


def test_a_whole_takes_what_its_parts_take():
    # half of the surface at a half and half at a quarter: 1 / (0.5 / 0.5 + 0.5 / 0.25) = 1/3
    assert film.mean_share((1.0, 1.0), (0.5, 0.25)) == pytest.approx(1 / 3)
    assert film.mean_share((2.0, 0.0), (0.5, 0.25)) == pytest.approx(0.5)


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: film.strip_share(0.0, 1.0), "width must be positive, got 0.0 m"),
        (lambda: film.strip_share(1.0, 0.0), "fan must be positive, got 0.0 m"),
        (lambda: film.mean_share((-1.0,), (0.5,)), "area must not be negative, got -1.0 m2"),
        (lambda: film.mean_share((1.0,), (0.0,)), "share must be more than 0 and at most 1, got 0.0"),
        (lambda: film.mean_share((0.0,), (0.5,)), "sum of areas must be positive, got 0.0 m2"),
    ],
)
def test_no_strip_and_no_whole_are_refused(ask, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        ask()


@given(st.floats(0, 1e-3), SOLIDS, REDUCERS)
def test_what_evaporates_and_what_stays_are_all_of_it(volume, solids, reducer):
    gone = film.solvent_in(volume, solids, reducer)
    assert gone + volume * solids / (1 + reducer) == pytest.approx(volume)


def test_of_a_litre_with_a_tenth_of_thinner_what_evaporates():
    # 1.1 L of 45 % solids with 10 % reducer: 0.45 L stay, by hand
    assert film.solvent_in(1.1e-3, 0.45, 0.1) == pytest.approx(0.65e-3)
