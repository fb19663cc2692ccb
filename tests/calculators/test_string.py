"""Strings: length, strands, and which tips bear what."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.string import CALCULATOR
from calc.outcome import say
from tests.outcomes import table

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


def test_three_bundles_are_alike():
    # 42 1/2 lb x 12 over 49.6 lb asks for 10.3 strands: 12 in two bundles and in three
    values, outcome = run(loops="three", draw_weight="55 lb")  # 13.3 strands
    assert (values["strands"], values["strands_bundle"]) == (15, 5)
    kinds = [(each["strands"], each["each"]) for each in table(outcome, "making")]
    assert kinds == [(14, 7), (14, 7), (15, 5)]
    assert "lay 3 bundles of 5" in say(outcome.headline, "imperial")


def test_a_laid_string_is_cut_longer_by_twist_and_both_ends():
    values, outcome = run(loops="two", loop_allowance="9 in", twist_pitch="1 1/2 in",
                          string_diameter="0.090 in")
    # helices averaged over the section: k = pi x 0.09 / 1.5, first term k^2 / 4 of the length
    take_up = 60.5 * (3.14159265 * 0.09 / 1.5) ** 2 / 4
    assert values["take_up"] / INCH == pytest.approx(take_up, rel=0.01)
    assert values["cut_length"] / INCH == pytest.approx(60.5 + 18 + take_up, abs=0.01)
    assert values["twists"] == pytest.approx(60.5 / 1.5)
    assert values["yarn"] == pytest.approx(12 * values["cut_length"])
    assert [each["place"] for each in table(outcome, "serving")] == ["Middle, where the arrow nocks"]


def test_an_endless_string_goes_round_posts_and_is_served_at_its_loops():
    values, outcome = run(loops="endless", loop_upper="2 in", loop_lower="1 in", serving_above="3 in",
                          serving_below="4 in")
    assert values["cut_length"] is None
    assert values["yarn"] == pytest.approx(12 * (60.5 * INCH + values["take_up"]))
    served = [each["served"] / INCH for each in table(outcome, "serving")]
    assert served == pytest.approx([5.5, 3.5, 7])  # twice the loop and 1 1/2 in of throat (common practice)
    assert "lay 6 turns round posts" in say(outcome.headline, "imperial")


def test_no_making_for_a_string_that_must_not_be_made():
    values, outcome = run(material="aramid", tips="plain")
    assert values["cut_length"] is None
    assert values["yarn"] is None
    assert [each.id for each in outcome.tables] == ["materials"]
