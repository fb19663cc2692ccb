"""Wood movement: a piece, a joint, a hole; and whether to wait."""

import pytest

from calc.answer import work_out
from calc.calculators.wood_movement import CALCULATOR
from calc.outcome import say

# 21.1 °C, 30 to 65 %: 6.170 to 11.958 % of moisture (Simpson's equation); coefficients of the Wood Handbook's
# table 13-5, read in a copy.
MAPLE = {"job": "piece", "size": "45 mm", "wood": "sugar-maple", "temperature": "21.1 C",
         "humidity_from": "30 %", "humidity_to": "65 %"}


def answered(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def said(outcome):
    return say(outcome.headline, "metric")


def texts(outcome):
    return {each.id: say(each.text, "metric") for each in outcome.checks}


def test_a_hard_maple_riser_from_a_dry_house_to_a_damp_one():
    values, outcome = answered(**MAPLE)
    assert 1000 * values["tangential"] == pytest.approx(0.919, abs=0.0007)  # its moisture rounded to 5.788 %
    assert 1000 * values["radial"] == pytest.approx(0.430, abs=0.0007)
    assert values["change"] == values["tangential"]
    assert said(outcome) == "From 6.2 % to 12.0 % of moisture the piece swells by 0.92 mm across the grain."


def test_quarter_sawn_wood_moves_as_across_its_rings():
    values, _ = answered(**MAPLE, cut="radial")
    assert values["change"] == values["radial"]


def test_the_way_back_shrinks_it_by_nearly_as_much():
    values, outcome = answered(**{**MAPLE, "humidity_from": "65 %", "humidity_to": "30 %"})
    assert 1000 * values["tangential"] == pytest.approx(-0.919, abs=0.0007)
    assert "shrinks by 0.92 mm" in said(outcome)


def test_two_woods_of_one_kind_cut_alike_do_not_part():
    values, outcome = answered(**{**MAPLE, "job": "joint"}, other_wood="sugar-maple", other_cut="tangential")
    assert values["apart"] == 0
    assert dict(texts(outcome))["movement"].startswith("The two woods move apart by 0.00 mm, within")


def test_a_joint_bears_the_difference_of_both():
    values, outcome = answered(**{**MAPLE, "job": "joint"}, other_wood="black-walnut", other_cut="radial")
    # 45 mm x (0.00353 - 0.00190) x 5.788 %
    assert 1000 * values["apart"] == pytest.approx(45 * (0.00353 - 0.00190) * 5.788, rel=1e-3)
    assert said(outcome).endswith("0.42 mm more than what it is glued to: the joint has to bear that.")
    values, outcome = answered(**{**MAPLE, "job": "joint", "cut": "radial", "wood": "black-cherry"},
                               other_wood="beech", other_cut="tangential")
    assert "less than what it is glued to" in said(outcome)


def test_a_hole_in_wood_that_swells_opens_and_lets_go():
    # 9.5 mm x 0.00353 x 5.788 % = 0.19 mm, more than the 0.10 mm of interference
    values, outcome = answered(**{**MAPLE, "job": "hole", "size": "9.5 mm"}, interference="0.10 mm")
    assert 1000 * values["interference_left"] == pytest.approx(0.10 - 9.5 * 0.00353 * 5.788, rel=1e-3)
    assert said(outcome).startswith("Do not count on the press fit: from 6.2 % to 12.0 % of moisture the "
                                    "hole opens by 0.19 mm.")
    assert texts(outcome)["fit"].startswith("The wood takes away all of the interference")


def test_a_hole_in_wood_that_dries_closes_on_its_insert():
    typed = {**MAPLE, "job": "hole", "size": "9.5 mm", "humidity_from": "65 %", "humidity_to": "30 %"}
    values, outcome = answered(**typed, interference="0.10 mm")
    assert values["interference_left"] > 0.0001
    assert said(outcome).endswith("the hole closes by 0.19 mm. The interference becomes 0.29 mm.")
    _, without = answered(**typed, interference="")
    assert "fit" not in texts(without)
    assert said(without).endswith("the hole closes by 0.19 mm.")


def test_wet_wood_waits_and_the_page_says_how_far_it_still_moves():
    values, outcome = answered(**MAPLE, moisture_now="12 %")
    assert texts(outcome)["rest"].startswith(
        "Wait before you glue or drill: the wood reads 12.0 % and settles at 6.2 % here.")
    assert 1000 * values["still_to_move"] == pytest.approx(-45 * 0.00353 * (12 - 6.170), rel=1e-3)


def test_steady_air_moves_nothing():
    _, outcome = answered(**{**MAPLE, "humidity_to": "30 %"})
    assert said(outcome) == "Nothing moves: the wood stays at 6.2 % of moisture."


def test_another_wood_by_its_shrinkage_and_a_meter():
    # 100 mm of a wood that shrinks 2.8 %: a tenth of a per cent for each per cent of moisture
    values, outcome = answered(job="piece", size="100 mm", wood="own", own_tangential="2.8 %",
                               own_radial="1.4 %", known="meter", moisture_from="8 %", moisture_to="9 %")
    assert 1000 * values["tangential"] == pytest.approx(0.1)
    assert 1000 * values["radial"] == pytest.approx(0.05)
    assert "rest" not in texts(outcome)


def test_a_figure_from_memory_says_so():
    _, outcome = answered(**{**MAPLE, "wood": "bubinga"})
    assert "Figures for bubinga are from memory: check them where it matters." in outcome.assumptions
    _, outcome = answered(**MAPLE)
    assert not [each for each in outcome.assumptions if "from memory" in say(each, "metric")]
