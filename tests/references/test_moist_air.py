"""Dew points against reference libraries, printed examples and published rules."""

import metpy.calc
import numpy as np
import psychrolib
import pytest
from metpy.units import units
from scipy.optimize import brentq

from calc.calculators.spray_air import IMPERIAL_MARGIN, METRIC_MARGIN
from calc.shop.air import dew_point, dew_point_error, relative_humidity_from_dew_point
from tests.references.printed import printed
from tests.sentences import whole


@pytest.fixture(autouse=True)
def _si_units():
    psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize(
    ("temperature", "humidity", "value"),
    [(25, 0.5, "13.858"), (20, 0.6, "12.000"), (20, 0.8, "16.444"), (20, 0.4, "5.988"), (25, 0.85, "22.302")],
)
def test_magnus_form_with_its_published_constants(temperature, humidity, value):
    # 17.625 and 243.04 °C (Alduchov and Eskridge 1996): constants read second-hand; values calculated
    # separately from them.
    assert dew_point(temperature, humidity) == printed(value)


@pytest.mark.parametrize("temperature", range(0, 41, 5))
@pytest.mark.parametrize("humidity", [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 1.0])
def test_agrees_with_the_handbook_library_within_the_stated_error(temperature, humidity):
    # psychrolib (ASHRAE Handbook 2017, chapter 1). Its authors state the Magnus form within 0.35 °C; below
    # freezing the library counts over ice.
    expected = psychrolib.GetTDewPointFromRelHum(temperature, humidity)
    if expected > 0:
        assert dew_point(temperature, humidity) == pytest.approx(expected, abs=0.35)


@pytest.mark.parametrize(
    ("temperature", "humidity"), [(25, 0.5), (20, 0.6), (20, 0.8), (20, 0.4), (25, 0.85)]
)
def test_agrees_with_two_libraries_in_an_ordinary_shop(temperature, humidity):
    # psychrolib within 0.02 °C; metpy (another form and other constants) within 0.04 °C.
    handbook = psychrolib.GetTDewPointFromRelHum(temperature, humidity)
    weather = metpy.calc.dewpoint_from_relative_humidity(temperature * units.degC, humidity)
    assert dew_point(temperature, humidity) == pytest.approx(handbook, abs=0.02)
    assert dew_point(temperature, humidity) == pytest.approx(weather.to("degC").magnitude, abs=0.04)


def test_printed_example_with_other_constants():
    # 22 °C, 78 %: 17.98 °C, worked with 17.27 and 237.7 (stated within 0.4 °C): read second-hand.
    assert dew_point(22, 0.78) == pytest.approx(17.98, abs=0.02)


@pytest.mark.parametrize(("fahrenheit", "humidity", "expected"), [(70, 0.5, 50.53), (80, 0.6, 64.88)])
def test_imperial_figures_of_the_handbook_library(fahrenheit, humidity, expected):
    # psychrolib in °F, calculated separately.
    air = (fahrenheit - 32) / 1.8
    assert dew_point(air, humidity) * 1.8 + 32 == pytest.approx(expected, abs=0.04)


@pytest.mark.parametrize(("temperature", "limit"), [(20, 82.9), (25, 83.4), (10, 81.6)])
def test_humidity_that_leaves_three_degrees(temperature, limit):
    # Calculated separately to a tenth, and by psychrolib: 85 % is the looser rule where surface and air are
    # equally warm.
    found = brentq(lambda rh: temperature - dew_point(temperature, rh) - METRIC_MARGIN, 0.3, 1.0)
    assert found * 100 == pytest.approx(limit, abs=0.06)
    library = psychrolib.GetRelHumFromTDewPoint(temperature, temperature - METRIC_MARGIN)
    assert found == pytest.approx(library, abs=0.0005)
    assert relative_humidity_from_dew_point(temperature, temperature - 3) == pytest.approx(found, rel=1e-9)
    assert 2.40 < temperature - dew_point(temperature, 0.85) < 2.71


@pytest.mark.parametrize("temperature", [15, 20, 25])
@pytest.mark.parametrize(("humidity", "error"), [(0.6, 1.3), (0.5, 1.5), (0.4, 1.9), (0.3, 2.5)])
def test_five_per_cent_of_humidity_in_degrees(temperature, humidity, error):
    # psychrolib; to the nearest tenth at 15 °C, up to a tenth more at 25 °C: calculated separately.
    library = psychrolib.GetTDewPointFromRelHum
    if library(temperature, humidity - 0.05) > 0:
        expected = library(temperature, humidity) - library(temperature, humidity - 0.05)
        assert dew_point_error(temperature, humidity, 0.05) == pytest.approx(expected, abs=0.02)
    assert -0.07 < dew_point_error(temperature, humidity, 0.05) - error < 0.13


def test_a_reading_that_may_be_nothing_has_no_error():
    with pytest.raises(ValueError, match=whole(
            "humidity error must not be negative and less than the humidity, got 0.05 of 0.05")):
        dew_point_error(20, 0.05, 0.05)


def test_the_two_published_margins_disagree():
    # 3 °C: coating inspection texts, read second-hand. 5 °F: US MIL-HDBK-1110, 9.6.6, read in a copy.
    assert METRIC_MARGIN == 3.0
    assert printed("2.7778") == IMPERIAL_MARGIN
    margin = 14.9 - dew_point(20, 0.6)  # the printed example: 2.90 °C, 5.22 °F
    assert margin == printed("2.90")
    assert IMPERIAL_MARGIN < margin < METRIC_MARGIN


@pytest.mark.parametrize("temperature", np.linspace(-40, 60, 21))
def test_saturated_air_is_at_its_dew_point(temperature):
    assert dew_point(temperature, 1.0) == pytest.approx(temperature, abs=1e-9)
