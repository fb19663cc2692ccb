"""Wood moisture: limits and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.moisture import (
    HIGHEST,
    LOWEST,
    coefficient_from_shrinkage,
    dimensional_change,
    equilibrium_moisture_content,
)
from tests.sentences import whole


@given(st.floats(LOWEST, HIGHEST), st.floats(1e-6, 1))
def test_moisture_is_finite_and_positive_everywhere(temperature, humidity):
    assert 0 < equilibrium_moisture_content(temperature, humidity) < 0.4


@given(st.floats(LOWEST, HIGHEST), st.floats(0.01, 1), st.floats(0.01, 1))
def test_damper_air_makes_wetter_wood(temperature, one, other):
    drier, damper = sorted((one, other))
    contents = [equilibrium_moisture_content(temperature, humidity) for humidity in (drier, damper)]
    assert contents == sorted(contents)


def test_bone_dry_air_leaves_nothing():
    assert equilibrium_moisture_content(20, 1e-9) < 1e-6


@pytest.mark.parametrize(
    ("temperature", "humidity", "sentence"),
    [
        (-1.3, 0.5, "temperature must be from -1.2 to 94 degC, got -1.3 degC"),
        (94.1, 0.5, "temperature must be from -1.2 to 94 degC, got 94.1 degC"),
        (20, 0.0, "relative humidity must be more than 0 and at most 1, got 0.0"),
        (20, 1.01, "relative humidity must be more than 0 and at most 1, got 1.01"),
        (20, -0.1, "relative humidity must be more than 0 and at most 1, got -0.1"),
    ],
)
def test_outside_its_range_it_is_refused(temperature, humidity, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        equilibrium_moisture_content(temperature, humidity)


def test_a_change_is_undone_by_the_way_back_and_grows_with_size():
    out = dimensional_change(0.05, 0.353, 0.08, 0.12)
    assert out == pytest.approx(-dimensional_change(0.05, 0.353, 0.12, 0.08))
    assert dimensional_change(0.10, 0.353, 0.08, 0.12) == pytest.approx(2 * out)
    assert out > 0


def test_wood_that_is_full_of_water_swells_no_more():
    # About 30 % is where the handbook draws the line (from memory).
    assert dimensional_change(1, 0.3, 0.30, 0.40) == 0
    assert dimensional_change(1, 0.3, 0.29, 0.40) == pytest.approx(0.003)
    assert dimensional_change(1, 0.3, 0.40, 0.29) == pytest.approx(-0.003)


@pytest.mark.parametrize(
    ("asked", "sentence"),
    [
        ((0.0, 0.3, 0.1, 0.1), "size must be positive, got 0.0 m"),
        ((1.0, -0.1, 0.1, 0.1), "coefficient must not be negative, got -0.1"),
        ((1.0, 0.3, -0.01, 0.1), "moisture from must not be negative, got -0.01"),
        ((1.0, 0.3, 0.1, -0.01), "moisture to must not be negative, got -0.01"),
    ],
)
def test_a_change_of_nothing_sensible_is_refused(asked, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        dimensional_change(*asked)


def test_a_negative_shrinkage_is_refused():
    with pytest.raises(ValueError, match=whole("shrinkage must not be negative, got -0.1")):
        coefficient_from_shrinkage(-0.1)
