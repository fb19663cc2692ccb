"""Spray air: go or wait, by both published margins."""

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.spray_air import CALCULATOR
from calc.outcome import say


def results(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def headline(outcome, system="metric"):
    return say(outcome.headline, system)


@given(st.integers(5, 40), st.integers(20, 100))
def test_dew_point_against_the_handbook_library(celsius, percent):
    # psychrolib (ASHRAE); the Magnus form is stated within 0.35 °C.
    psychrolib.SetUnitSystem(psychrolib.SI)
    expected = psychrolib.GetTDewPointFromRelHum(celsius, percent / 100)
    values, _ = results(air_temperature=f"{celsius} C", humidity=f"{percent} %")
    if expected > 0:
        assert values["dew_point"] == pytest.approx(expected, abs=0.35)
    assert values["margin"] == pytest.approx(celsius - values["dew_point"])


@pytest.mark.parametrize(
    ("surface", "level", "word"),
    [
        # 20 °C and 60 %: dew point 12.00 °C. Rules of 3 °C (read second-hand) and 5 °F (read in a copy).
        ("15.1 C", "ok", "Go"), ("14.9 C", "watch", "Wait, or warm the work"), ("14.7 C", "stop", "Wait:"),
        ("11 C", "stop", "Wait"),
    ],
)
def test_both_margins(surface, level, word):
    values, outcome = results(air_temperature="20 C", humidity="60 %", surface_temperature=surface)
    assert levels(outcome)["margin"] == level
    assert headline(outcome).startswith(word)
    assert "12.0 °C" in headline(outcome)
    assert values["over_imperial"] - values["over_metric"] == pytest.approx(3 - 25 / 9)


def test_below_the_dew_point_water_condenses():
    _, outcome = results(air_temperature="20 C", humidity="60 %", surface_temperature="11 C")
    assert headline(outcome) == ("Wait: the dew point is 12.0 °C and the surface 1.0 °C below it, so water "
                                 "condenses on it. It is too cold.")
    [found] = [each for each in outcome.checks if each.id == "margin"]
    assert say(found.text, "metric").startswith("The surface is 1.0 °C below the dew point")


def test_at_50_degrees_a_bow_still_goes():
    _, outcome = results(air_temperature="50 C", humidity="20 %")
    assert "hot" not in levels(outcome)
    assert headline(outcome).startswith("Go")


@pytest.mark.parametrize(
    ("typed", "check", "reason"),
    [
        ({"humidity": "86 %", "surface_temperature": "36 C"}, "humidity", "too damp"),
        ({"air_temperature": "8 C"}, "cold", "too cold"),
        ({"surface_temperature": "12.6 C", "humidity": "40 %"}, "cold", "too cold"),
        # 50 °C for an old bow: common practice.
        ({"air_temperature": "125 F", "humidity": "20 %"}, "hot", "too hot"),
        ({"surface_temperature": "51 C"}, "hot", "too hot"),
        ({"air_temperature": "35 F", "surface_temperature": "0 F"}, "cold", "too cold"),
    ],
)
def test_why_to_wait(typed, check, reason):
    _, outcome = results(**typed)
    assert levels(outcome)[check] == "stop"
    assert reason in headline(outcome)


def test_at_the_humidity_limit_it_still_goes():
    # 85 %: coating inspection texts, read second-hand.
    _, outcome = results(humidity="85 %", surface_temperature="80 F")
    assert levels(outcome)["humidity"] == "ok"


def test_a_product_of_its_own_says_what_it_needs():
    assert levels(results(family="own")[1])["least"] == "watch"
    values, outcome = results(family="own", least_temperature="75 F")
    assert levels(outcome)["cold"] == "stop"
    assert values["least_temperature_used"] == pytest.approx((75 - 32) / 1.8)


@pytest.mark.parametrize("family", ["two-part-urethane", "one-part-urethane", "catalysed-lacquer", "own"])
def test_a_go_still_tells_what_the_product_gives_off(family):
    found = levels(results(family=family)[1])
    assert "watch" in (found.get("isocyanate"), found.get("formaldehyde"))


@pytest.mark.parametrize(
    ("humidity", "error"),
    # psychrolib at 15 °C (59 °F), 5 % of humidity too much or too little; below freezing it counts over ice.
    [("50 %", 1.5), ("40 %", 1.9), ("30 %", 2.5)],
)
def test_how_far_a_household_hygrometer_moves_the_dew_point(humidity, error):
    values, outcome = results(air_temperature="15 C", humidity=humidity)
    assert values["dew_point_error"] == pytest.approx(error, abs=0.07)
    [said] = [say(each, "metric") for each in outcome.assumptions if "hygrometer" in say(each, "metric")]
    assert f"to {values['dew_point_error']:.1f} °C" in said
    assert "1.5 °C of dew point" not in said


def test_a_margin_that_a_poor_hygrometer_would_eat_is_said():
    assert levels(results(humidity="80 %", air_temperature="20 C")[1])["hygrometer"] == "watch"
    assert "hygrometer" not in levels(results(humidity="60 %", air_temperature="20 C")[1])


def test_a_surface_at_the_dew_point_is_said_to_be_at_it():
    _, outcome = results(air_temperature="20 C", humidity="60 %", surface_temperature="12.01 C")
    assert headline(outcome) == ("Wait: the surface is at the dew point, 12.0 °C, and water condenses on it. "
                                 "It is too cold.")


def test_the_rule_that_says_and_rising():
    _, outcome = results(rising="no")
    assert levels(outcome)["falling"] == "watch"


@pytest.mark.parametrize(
    ("reading", "level", "word"),
    [("11 %", "ok", "near enough"), ("16 %", "watch", "drying"), ("7 %", "watch", "taking up")],
)
def test_wood_against_what_it_settles_at(reading, level, word):
    # 68 °F and 60 % settle at 11.0 %: Wood Handbook, table 4-2, 70 °F row: read in a copy.
    values, outcome = results(wood_moisture=reading)
    assert values["moisture_content"] == pytest.approx(0.110, abs=0.001)
    [found] = [each for each in outcome.checks if each.id == "moisture"]
    assert found.level == level
    assert word in say(found.text, "metric")


def test_a_go_does_not_promise_safe_breathing():
    assert any("breathe" in caution for caution in CALCULATOR.cautions)
