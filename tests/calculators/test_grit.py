"""Grit: the ladder that is shown, and its edges."""

import pytest

from calc.answer import work_out
from calc.calculators.grit import CALCULATOR
from calc.outcome import say
from calc.tables.grits import between_coats, find


def results(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def rows(outcome, id):
    [table] = [each for each in outcome.tables if each.id == id]
    return [dict(zip([column.id for column in table.columns], row, strict=True)) for row in table.rows]


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def test_the_ladder_of_the_example():
    values, outcome = results()
    ladder = rows(outcome, "ladder")
    # Grain sizes: trade tables, read second-hand. Limit of 1.65: common practice.
    assert [(each["grade"], each["size"]) for each in ladder] == [
        (grade, find(grade.lower()).size) for grade in ("P120", "P180", "P240", "P320", "P400")]
    assert all(each["ratio"] <= 1.65 for each in ladder[1:])
    assert values["largest_ratio"] == max(each["ratio"] for each in ladder[1:])
    assert values["other_scale"] == "CAMI 320"


def test_each_grade_removes_the_scratches_of_the_one_before():
    values, outcome = results(slope="20 %")
    ladder = rows(outcome, "ladder")
    assert ladder[0]["remove"] is None
    for before, after in zip(ladder, ladder[1:], strict=False):
        assert before["scratch"] == pytest.approx(0.2 * before["size"])
        assert after["remove"] == before["scratch"]
    assert values["removed"] == pytest.approx(sum(each["remove"] for each in ladder[1:]))
    assert values["final_scratch"] == ladder[-1]["scratch"]


def test_one_grade_alone():
    values, outcome = results(start_p="p220", finish_p="p220")
    assert values["steps"] == 1
    assert values["removed"] == 0
    assert values["largest_ratio"] == 1
    assert "P220" in say(outcome.headline, "imperial")


def test_all_grades_of_the_scale_allow_fewer_steps_than_the_drawer():
    few, _ = results(shelf="all")
    usual, _ = results(shelf="shop")
    assert few["steps"] <= usual["steps"]


def test_a_step_that_no_grade_can_halve_is_said():
    values, outcome = results(step_limit="1.1", shelf="all")
    assert values["largest_ratio"] > 1.1
    assert levels(outcome)["ratio"] == "watch"


def test_the_cami_scale():
    values, outcome = results(scale="cami", start_cami="c80", finish_cami="c400")
    assert rows(outcome, "ladder")[0]["grade"] == "80"
    # CAMI 400 is nearest P800 by size: calculated from the trade tables.
    assert values["other_scale"] == "P800"


@pytest.mark.parametrize(
    ("typed", "check"),
    [
        # Advice of trade pages, read second-hand, and common practice.
        ({"material": "wood", "wet": "no", "finish_p": "p320"}, "too-fine"),
        ({"material": "wood", "wet": "yes", "finish_p": "p220"}, "wet-wood"),
        ({"material": "glass", "wet": "no"}, "dry-glass"),
        ({"material": "glass"}, "glass-counts"),
    ],
)
def test_cautions_by_material(typed, check):
    assert levels(results(**typed)[1])[check] == "watch"


def test_bare_wood_to_220_dry_raises_no_caution():
    _, outcome = results(material="wood", wet="no", start_p="p80", finish_p="p220")
    assert set(levels(outcome).values()) == {"ok"}


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"start_p": "p400", "finish_p": "p120"}, "finish_p"),
        ({"scale": "cami", "start_cami": "c320", "finish_cami": "c80"}, "finish_cami"),
    ],
)
def test_a_ladder_that_goes_coarser_is_refused_at_its_field(typed, field):
    assert [each.field for each in work_out(CALCULATOR, list(typed.items())).problems] == [field]


def test_the_cami_drawer_makes_a_ladder_within_the_limit():
    """Grain sizes: trade tables, read second-hand. 240 is an ordinary grade (common practice)."""
    _, outcome = results(scale="cami", material="glass", start_cami="c120", finish_cami="c320")
    assert "240" in [each["grade"] for each in rows(outcome, "ladder")]
    assert levels(outcome)["ratio"] == "ok"


@pytest.mark.parametrize(
    ("typed", "words"),
    [({"shelf": "shop", "start_p": "p400"}, "no grade at hand lies between (the scale has P500)."),
     ({"shelf": "all", "start_p": "p500", "step_limit": "1.1"}, "no grade at hand lies between.")],
)
def test_a_step_too_large_names_what_the_scale_has(typed, words):
    _, outcome = results(**{"step_limit": "1.2", "finish_p": "p600", **typed})
    [found] = [each for each in outcome.checks if each.id == "ratio"]
    assert found.level == "watch"
    assert words in say(found.text, "metric")


def test_grades_between_coats_are_those_of_the_book():
    _, outcome = results()
    shown = {each["place"]: each["grade"] for each in rows(outcome, "between")}
    assert shown == {each.work: each.grades for each in between_coats()}
    assert shown["Before the last coat"].startswith("P400 to P600")
