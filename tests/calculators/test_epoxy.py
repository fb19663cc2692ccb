"""Epoxy: amounts by volume and by weight, and the times in the shop."""

import pytest

from calc.answer import work_out
from calc.calculators.epoxy import CALCULATOR
from calc.outcome import say

# 100 mL of film on 0.1 m2, 2 to 1 by volume, 1.15 and 0.97 kg/L
JOINT = {"length": "1000 mm", "width": "100 mm", "film": "1 mm", "waste": "0 %", "part_a": "2", "part_b": "1",
         "density_a": "1.15 kg/L", "density_b": "0.97 kg/L"}


def answered(**typed):
    job = work_out(CALCULATOR, list((JOINT | typed).items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def test_a_film_on_an_area_is_a_volume_and_waste_comes_on_top():
    # 0.1 m2 x 1 mm = 100 mL; half of what is mixed is left over: 200 mL, by hand
    values, _ = answered()
    assert values["mix"] == pytest.approx(100e-6)
    assert answered(waste="50 %")[0]["mix"] == pytest.approx(200e-6)
    assert answered(pieces="3")[0]["area"] == pytest.approx(0.3)


def test_two_to_one_by_volume_is_another_ratio_by_weight():
    # 66.7 mL of resin at 1.15 are 76.7 g; 33.3 mL of hardener at 0.97 are 32.3 g: 100 to 42.2, by hand
    values, outcome = answered()
    assert values["resin"] * 1e6 == pytest.approx(66.667, abs=1e-3)
    assert values["resin_mass"] * 1e3 == pytest.approx(76.667, abs=1e-3)
    assert values["hardener_mass"] * 1e3 == pytest.approx(32.333, abs=1e-3)
    assert (values["by_volume"], values["by_weight"]) == ("100 : 50.0", "100 : 42.2")
    text = say(outcome.headline, "metric")
    assert text.startswith("Mix 100.0 mL: 66.7 mL of resin and 33.3 mL of hardener, by weight 76.7 g and "
                           "32.3 g.")


def test_a_ratio_by_weight_comes_to_the_same_masses():
    # 100 to 42.174 by weight is 2 to 1 by volume with these densities: 0.5 x 0.97 / 1.15, by hand
    values, _ = answered(parts_by="weight", part_a="100", part_b=f"{50 * 0.97 / 1.15:.6f}")
    assert values["by_volume"] == "100 : 50.0"
    assert values["resin"] * 1e6 == pytest.approx(66.667, abs=1e-3)


def test_without_densities_it_is_by_volume_only():
    values, outcome = answered(density_b="")
    assert values["hardener_mass"] is None
    assert values["by_weight"] is None
    [found] = [each for each in outcome.checks if each.id == "measure"]
    assert found.level == "watch"
    assert "by weight" not in say(outcome.headline, "metric")


@pytest.mark.parametrize(("celsius", "factor"), [(25, 1), (15, 2), (35, 0.5)])
def test_times_double_for_each_10_degrees_colder(celsius, factor):
    # a rule of coatings and pot lives, read in a copy of a guide specification
    values, _ = answered(temperature=f"{celsius} C", label_at="25 C", pot_life="30 min", open_time="60 min",
                         clamp_time="12 h", cure="5 d", doubling="10 K", work_time="5 min")
    assert values["pot_life_here"] / 60 == pytest.approx(30 * factor)
    assert values["open_here"] / 60 == pytest.approx(60 * factor)
    assert values["clamp_here"] / 3600 == pytest.approx(12 * factor)
    assert values["cure_here"] / 86400 == pytest.approx(5 * factor)
    assert values["time_factor"] == pytest.approx(factor)


def test_the_table_tells_the_times_of_shops_from_55_to_90_degrees():
    """Times for 75 °F that double for each 10 °F colder: 30 min in the cup become 60 at 65 °F."""
    _, outcome = answered(label_at="75 F", doubling="10 F", pot_life="30 min", open_time="60 min",
                          clamp_time="12 h", cure="5 d", work_time="5 min")
    (table,) = outcome.tables
    assert [row[0].value * 1.8 + 32 for row in table.rows] == pytest.approx(range(55, 91, 5))
    by_warmth = {round(row[0].value * 1.8 + 32): row[1:] for row in table.rows}
    for fahrenheit, factor in ((55, 4), (65, 2), (75, 1), (85, 0.5)):
        assert by_warmth[fahrenheit] == pytest.approx(
            [each * factor for each in (30 * 60, 60 * 60, 12 * 3600, 5 * 86400)])


def test_why_not_to_mix():
    _, cold = answered(temperature="50 F", least_temperature="60 F")
    assert say(cold.headline, "metric") == "Do not glue here: it is too cold, and the joint may never cure."
    _, long = answered(work_time="90 min", temperature="77 F", label_at="77 F", pot_life="30 min")
    assert say(long.headline, "metric") == (
        "Do not mix yet: the work takes longer than the glue stays open, 30 min here.")


def test_a_coarse_scale_says_how_much_more_to_mix():
    # 1 mL of 2 to 1: 0.323 g of hardener; 0.1 g is 5 % of 2 g, so 6.19 mL in all, by hand
    _, outcome = answered(length="100 mm", width="10 mm")
    [found] = [each for each in outcome.checks if each.id == "measure"]
    assert found.level == "watch"
    assert "at least 6.2 mL in all" in say(found.text, "metric")
