"""Wood moisture: limits and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.moisture import HIGHEST, LOWEST, equilibrium_moisture_content
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
