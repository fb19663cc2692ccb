"""Strings: length, strands, and which tips bear what."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.string import CALCULATOR
from calc.outcome import say

INCH = 0.0254


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


@pytest.mark.parametrize("material", ["aramid", "polyethylene"])
@pytest.mark.parametrize(
    ("tips", "old", "level"),
    [("plain", "yes", "stop"), ("plain", "no", "stop"), ("reinforced", "yes", "stop"),
     ("reinforced", "no", "watch")],
)
def test_low_stretch_only_on_new_reinforced_tips(material, tips, old, level):
    """Common practice: old bows and tips without reinforcement, polyester only."""
    assert levels(run(material=material, tips=tips, old=old)[1])["tips"] == level


@pytest.mark.parametrize("material", ["aramid", "polyethylene"])
@pytest.mark.parametrize(("tips", "old"), [("plain", "yes"), ("plain", "no"), ("reinforced", "yes")])
def test_a_string_that_must_not_be_made_gets_no_recipe(material, tips, old):
    values, outcome = run(material=material, tips=tips, old=old)
    polyester, _ = run(material="polyester", tips=tips, old=old)
    text = say(outcome.headline, "imperial")
    assert text.startswith("Do not make this string")
    assert f"polyester only: {polyester['strands']} strands" in text
    assert values["strands"] is None
    assert "strands" not in levels(outcome)


@pytest.mark.parametrize("tips", ["plain", "reinforced"])
@pytest.mark.parametrize("old", ["yes", "no"])
def test_polyester_on_everything(tips, old):
    assert levels(run(material="polyester", tips=tips, old=old)[1])["tips"] == "ok"


@given(st.floats(10, 140), st.floats(4, 29))
def test_a_heavier_bow_never_takes_fewer_strands(pounds, factor):
    one, _ = run(draw_weight=f"{pounds:.6f} lb", factor=f"{factor:.6f}")
    other, _ = run(draw_weight=f"{pounds + 5:.6f} lb", factor=f"{factor:.6f}")
    assert other["strands"] >= one["strands"]
    assert one["strands"] % 2 == 0
    assert one["string_strength"] >= factor * pounds * 4.448 * 0.999


def test_the_fewest_strands_decide_on_a_light_bow():
    values, _ = run(draw_weight="20 lb")
    assert values["strands"] == 10
    assert run(draw_weight="20 lb", fewest="11")[0]["strands"] == 12


def test_a_difference_of_ones_own():
    values, _ = run(bow_length="60 in", pattern="own", own_shorter="3 1/2")
    assert values["length"] / INCH == pytest.approx(56.5)
    assert values["length_least"] is values["length_most"] is None  # no range that says 56.5 to 56.5


def test_the_table_says_no_where_tips_do_not_bear_it():
    _, outcome = run()
    suits = {row[0]: row[-1] for row in outcome.tables[0].rows}
    assert list(suits.values()) == ["yes", "no", "no"]


def test_an_empty_difference_is_refused():
    (found,) = work_out(CALCULATOR, [("pattern", "own"), ("own_shorter", "")]).problems
    assert found.field == "own_shorter"
