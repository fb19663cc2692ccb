"""Finish and spray air look at one table: what is too cold for the one is too cold for the other."""

import pytest

from calc.answer import work_out
from calc.calculators import finish, spray_air
from calc.tables.finish_families import FAMILIES

DRY = {"humidity": "20 %"}


def is_too_cold(calculator, **typed):
    job = work_out(calculator, list(typed.items()))
    assert not job.problems, job.problems
    return "cold" in {each.id for each in job.outcome.checks if each.level == "stop"}


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.id)
def test_both_say_the_same_at_every_degree(family):
    answers = set()
    for fahrenheit in range(50, 71):
        typed = {"family": family.id}
        cold = is_too_cold(finish.CALCULATOR, temperature=f"{fahrenheit} F", **typed)
        assert cold == is_too_cold(spray_air.CALCULATOR, air_temperature=f"{fahrenheit} F", **typed, **DRY)
        assert cold == (fahrenheit < family.least_temperature * 1.8 + 32)
        answers.add(cold)
    assert answers == {True, False}


def test_lacquer_at_57_degrees_is_too_cold_for_both():
    # 18 °C (64 °F) for catalysed lacquer: common practice.
    assert is_too_cold(finish.CALCULATOR, family="catalysed-lacquer", temperature="57 F")
    assert is_too_cold(spray_air.CALCULATOR, family="catalysed-lacquer", air_temperature="57 F", **DRY)


@pytest.mark.parametrize("fahrenheit", range(40, 81, 4))
def test_both_take_the_sheet_before_the_table(fahrenheit):
    sheet = {"family": "catalysed-lacquer", "least_temperature": "60 F"}
    expected = fahrenheit < 60
    assert is_too_cold(finish.CALCULATOR, temperature=f"{fahrenheit} F", **sheet) == expected
    assert is_too_cold(spray_air.CALCULATOR, air_temperature=f"{fahrenheit} F", **sheet, **DRY) == expected
