"""Rules and shares that an answer rests on, held by figures worked out another way."""

import math

import pytest

from calc import catalog
from calc.answer import work_out
from calc.bows.measured import family_limb
from calc.declaring import inputs_of
from calc.mechanics.bow.bow import Bow
from calc.quantities import INCH, POUND_FORCE, parse


def outcome_of(id, **typed):
    calculator = catalog.find(id)
    whole = {each.id: each.default for each in inputs_of(calculator)} | typed
    job = work_out(calculator, list(whole.items()))
    assert not job.problems, job.problems
    return job.outcome


def values_of(id, **typed):
    return dict(outcome_of(id, **typed).values)


def test_the_cube_rule_is_that_of_the_mean_thickness():
    # Thickness cubed: Klopsteg, Getting the most out of the bowstave, part 2 (read).
    values = values_of("weight-reduction", weight_now="50 lb", weight_wanted="40 lb", reserve="1 lb")
    thickness = (0.291 + 0.279 + 0.263 + 0.247 + 0.296 + 0.283 + 0.267 + 0.250) / 8 * INCH
    assert values["cube_rule"] == pytest.approx(thickness * (1 - (41 / 50) ** (1 / 3)), rel=1e-6)


def test_stages_take_six_tenths_of_what_is_left_and_the_last_all():
    outcome = outcome_of("weight-reduction")
    values = dict(outcome.values)
    [table] = [each for each in outcome.tables if each.id == "stages"]
    for column, limb in ((1, "upper"), (2, "lower")):
        shares = [row[column] / values[limb + "_removal"] for row in table.rows]
        assert shares == pytest.approx([0.6, 0.84, 1.0], rel=1e-6)
    assert table.rows[-1][3] == pytest.approx(values["predicted_weight"], rel=1e-6)


@pytest.mark.parametrize("family", ["recurve", "straight"])
def test_the_sensitivity_of_tiller_is_that_of_two_bows_one_per_cent_apart(family):
    limb = family_limb(family, 64 * INCH, 19 * INCH)
    softer, stiffer = limb.stiffened(math.exp(-0.005)), limb.stiffened(math.exp(0.005))
    tiller = Bow(softer, stiffer).brace(8.25 * INCH).tiller_at_fadeouts().difference
    assert values_of("tiller", family=family)["sensitivity"] == pytest.approx(tiller, rel=0.01)


def test_what_tiller_costs_is_half_of_what_one_limb_gives():
    # Two limbs in a row: with one softer by a share, the bow is softer by half of it, to first order.
    values = values_of("tiller", upper="7 5/8 in", lower="7 5/16 in", hold="under", draw_weight="50 lb")
    share = -values["stiffness_change"]
    assert 0 < share < 0.15
    assert values["weight_cost"] / (50 * POUND_FORCE) == pytest.approx(share / 2, rel=0.05)
    assert values["weight_after"] + values["weight_cost"] == pytest.approx(50 * POUND_FORCE)


@pytest.mark.parametrize(("place", "refused"), [("33.5 in", False), ("33.7 in", True)])
def test_tiller_is_not_read_in_the_middle_of_the_string(place, refused):
    # 0.42 of a straight bow of 80 in is 33.6 in; its riser is short, so that the string still stands free.
    typed = {"family": "straight", "bow_length": "80 in", "riser_length": "6 in", "measured": "string_end",
             "from_string_end": place}
    calculator = catalog.find("tiller")
    whole = {each.id: each.default for each in inputs_of(calculator)} | typed
    job = work_out(calculator, list(whole.items()))
    assert [each.field for each in job.problems] == (["from_string_end"] if refused else [])
    if refused:
        assert "near the middle of the string" in job.problems[0].message


@pytest.mark.parametrize(
    ("family", "solids"),
    [("two-part-urethane", 0.45), ("one-part-urethane", 0.45), ("oil-varnish", 0.45),
     ("catalysed-lacquer", 0.30), ("shellac", 0.15)],
)
def test_a_family_leaves_its_solids(family, solids):
    # Typical solids by volume: common practice, an assumption to edit.
    values = values_of("finish", family=family, wet_film="1.5 mil", reducer="0 %")
    assert values["dry_film"] == pytest.approx(solids * 1.5e-3 * INCH, rel=1e-9)


@pytest.mark.parametrize(
    ("insert", "interference", "drill"),
    [("0.316 in", "0.004 in", "5/16 in"), ("0.254 in", "0.004 in", "1/4 in"),
     ("10 mm", "0.1 mm", "25/64 in")],
)
def test_the_drill_named_is_the_nearest_in_which_the_insert_holds(insert, interference, drill):
    # By the published drill charts: 0.3125 in for 0.312, 0.250 in for 0.250, 0.3906 in for 9.9 mm.
    values = values_of("insert", insert_diameter=insert, interference=interference, drill_set="imperial")
    hole = parse(insert, "thickness") - parse(interference, "thickness")
    assert values["hole_diameter"] == pytest.approx(hole, rel=1e-9)
    assert values["drill"] == drill
    assert values["drill_diameter"] == pytest.approx(hole, abs=0.1e-3)
