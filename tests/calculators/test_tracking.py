"""Tracking: twist, strong side, grooves."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators import tracking
from calc.calculators.tracking import CALCULATOR
from calc.declaring import inputs_of
from calc.outcome import say

STRAIGHT = {limb + "_" + what: figure for limb in ("upper", "lower") for what, figure in (
    ("offset_tip", "0"), ("offset_riser", "0"), ("height_tip", "2"), ("height_riser", "7"),
    ("groove_outer", "0"), ("groove_inner", "0"))}


def run(**typed):
    """Return values and outcome of limbs that are straight but for what is typed."""
    job = work_out(CALCULATOR, list((STRAIGHT | typed).items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def test_twist_by_hand():
    """Geometry: arctan(1/8 in over 2 in) less arctan(1/16 in over 7 in)."""
    values, _ = run(upper_offset_tip="1/8", upper_offset_riser="1/16")
    expected = math.degrees(math.atan(1 / 16) - math.atan(1 / 16 / 7))
    assert values["upper_twist"] == pytest.approx(expected, rel=1e-9)
    assert values["lower_twist"] == 0


def test_the_example_by_hand():
    """Geometry: arctan(3/32 in over 2 1/8 in) less arctan(1/32 in over 7 5/16 in), to the left."""
    values = dict(work_out(CALCULATOR, []).outcome.values)
    expected = math.degrees(math.atan(3 / 32 / 2.125) - math.atan(1 / 32 / 7.3125))
    assert values["lower_twist"] == pytest.approx(-expected, rel=1e-9)
    assert values["lower_strong"] == "right"


def test_a_twist_beyond_practice_is_not_drawn_while_anything_is_in_doubt():
    [told] = [say(each.text, "imperial") for each in run(upper_offset_tip="1/8")[1].checks
              if each.id == "upper-twist"]
    for word in ("Draw it only if", "fadeouts", "groove"):
        assert word in told


def test_the_string_lies_away_from_the_strong_side():
    """Common practice: the string moves toward the side that material is taken from."""
    right, outcome = run(upper_offset_tip="1/8", upper_offset_riser="0")
    assert right["upper_strong"] == "left"
    assert "material comes off there" in say(outcome.headline, "imperial")
    left, _ = run(upper_offset_tip="-1/8", upper_offset_riser="0")
    assert left["upper_strong"] == "right"


@given(st.floats(-0.4, 0.4), st.floats(-0.4, 0.4))
def test_a_mirrored_bow_has_mirrored_answers(tip, riser):
    one, _ = run(upper_offset_tip=f"{tip:.6f}", upper_offset_riser=f"{riser:.6f}")
    other, _ = run(upper_offset_tip=f"{-tip:.6f}", upper_offset_riser=f"{-riser:.6f}")
    assert other["upper_twist"] == pytest.approx(-one["upper_twist"], abs=1e-9)
    sides = {"left": "right", "right": "left", "neither": "neither"}
    assert other["upper_strong"] == sides[one["upper_strong"]]


@given(st.floats(-0.4, 0.4), st.floats(-0.4, 0.4))
def test_both_limbs_are_treated_alike(tip, riser):
    one, _ = run(upper_offset_tip=f"{tip:.6f}", upper_offset_riser=f"{riser:.6f}")
    other, _ = run(lower_offset_tip=f"{tip:.6f}", lower_offset_riser=f"{riser:.6f}")
    assert other["lower_twist"] == one["upper_twist"]
    assert other["lower_strong"] == one["upper_strong"]


def test_straight_limbs_are_left_alone():
    values, outcome = run()
    assert values["upper_strong"] == values["lower_strong"] == "neither"
    assert set(levels(outcome).values()) == {"ok"}
    assert "leave them" in say(outcome.headline, "imperial")


def test_less_than_can_be_read_names_no_side():
    assert run(upper_offset_tip="1/128", upper_offset_riser="0")[0]["upper_strong"] == "neither"
    assert run(upper_offset_tip="1/32", upper_offset_riser="0")[0]["upper_strong"] == "left"


def test_limits_of_practice_at_their_edge():
    """Common practice, editable: 2 degrees of twist, 1/8 in at the fadeout, 1 degree of groove."""
    two = f"{2 * math.tan(math.radians(2)):.9f}"
    more = f"{2 * math.tan(math.radians(2.05)):.9f}"
    assert levels(run(upper_offset_tip=two)[1])["upper-twist"] == "ok"
    assert levels(run(upper_offset_tip=more)[1])["upper-twist"] == "watch"
    far = f"{2 * math.tan(math.radians(6.1)):.9f}"
    _, outcome = run(upper_offset_tip=far)
    assert levels(outcome)["upper-twist"] == "stop"
    assert "material comes off" not in say(outcome.headline, "imperial")
    assert "upper-offset" not in levels(run(upper_offset_riser="1/8")[1])
    assert levels(run(upper_offset_riser="5/32")[1])["upper-offset"] == "watch"
    assert levels(run(upper_groove_inner="0.030")[1])["upper-groove"] == "watch"


def test_the_same_side_at_both_fadeouts_points_at_the_riser():
    both = {"upper_offset_riser": "3/16", "lower_offset_riser": "3/16"}
    assert levels(run(**both)[1])["riser"] == "watch"
    assert "riser" not in levels(run(upper_offset_riser="3/16", lower_offset_riser="-3/16")[1])


def test_an_untwisted_limb_under_an_offset_string_is_not_sanded():
    """The string lies off both readings by the same lean: no twist in this limb."""
    values, outcome = run(upper_offset_tip="1/16", upper_height_tip="2", upper_offset_riser="7/32",
                          upper_height_riser="7")
    assert values["upper_strong"] == "neither"
    assert "look at the riser" in say(outcome.headline, "imperial")


def places(text, *words):
    """Return where words stand in a text, all of them there."""
    assert all(each in text for each in words), text
    return [text.index(each) for each in words]


def test_the_groove_goes_before_the_limb():
    """Common practice: what leads the string aside is put right before the limb is sanded."""
    _, outcome = run(upper_offset_tip="1/8", upper_groove_inner="0.08 in")
    text = say(outcome.headline, "imperial")
    assert levels(outcome)["upper-groove"] == "watch"
    found = places(text, "The upper groove points", "file strokes", "Measure again", "material comes off")
    assert found == sorted(found)


def test_a_crooked_groove_on_straight_limbs_is_all_there_is_to_do():
    text = say(run(upper_groove_inner="-0.08 in")[1].headline, "imperial")
    assert text.startswith("The upper groove points 3.1° to the left")
    assert "material comes off" not in text
    assert "leave them" not in text


def test_the_order_is_groove_riser_limb():
    text = say(run(upper_offset_riser="3/16", lower_offset_riser="3/16", upper_offset_tip="1/4",
                   lower_groove_inner="0.05 in")[1].headline, "imperial")
    found = places(text, "lower groove", "sight along the riser", "upper limb is twisted")
    assert found == sorted(found)


def test_a_twist_that_asks_for_its_cause_leads():
    text = say(run(upper_offset_tip="1/2", upper_groove_inner="0.08 in")[1].headline, "imperial")
    found = places(text, "look for the cause", "upper groove")
    assert found == sorted(found)


EXAMPLE = [(each.id, each.default) for each in inputs_of(CALCULATOR)]
FACTS = ("weight", "draw_length", "brace_height", "bow_length", "riser_length", "family", "upper_stations",
         "lower_stations", "glass_back", "glass_belly", "core", "profile", "throat")


def without(*ids):
    """Return values and outcome of the example with some of its facts not known."""
    job = work_out(CALCULATOR, [(id, "" if id in ids else text) for id, text in EXAMPLE])
    assert not job.problems, [each.message for each in job.problems]
    return dict(job.outcome.values), job.outcome


def width_of(outcome, column):
    """Return how wide the range of the first wedge is."""
    table = next(each for each in outcome.tables if each.id == "remedies")
    at = [each.id for each in table.columns].index(column)
    row = next(each for each in table.rows if each[1].startswith("wedge"))
    return row[at + 2] - row[at + 1]


@pytest.mark.parametrize("id", FACTS)
def test_a_fact_that_is_not_known_never_stops_the_answer(id):
    values, outcome = without(id)
    known, _ = without()
    assert values["lower_twist"] == known["lower_twist"]
    if id in ("bow_length", "riser_length"):
        assert values["remedy"] is None
        assert levels(outcome)["lacking"] == "watch"
    else:
        assert values["remedy"] == known["remedy"] == "groove, right"
        assert ("lacking" in levels(outcome)) == (id not in ("profile", "throat"))
        assert ("glass" in levels(outcome)) == (id not in ("glass_back", "glass_belly"))


def test_ranges_are_wider_where_sections_were_not_read():
    _, known = without()
    _, sections = without("upper_stations", "lower_stations")
    _, both = without("upper_stations", "lower_stations", "glass_back", "glass_belly", "core")
    widths = [width_of(each, "offset") for each in (known, sections, both)]
    assert widths[0] < widths[1] < widths[2]


def test_all_facts_unknown_still_tell_twist_and_side():
    values, _ = without(*FACTS)
    assert values["lower_strong"] == "right"
    assert values["remedy"] is None


@pytest.mark.parametrize(("face", "of_the_belly"), [("belly", 1.0), ("back", 0.0)])
def test_a_stretch_is_worked_on_one_face_and_runs_out_over_a_quarter(face, of_the_belly):
    sanding = tracking._stretch(0.05, 0.25, face, 0.5).sanding
    assert (sanding.start, sanding.end, sanding.belly_share) == (0.05, 0.25, of_the_belly)
    assert sanding.feather == pytest.approx(0.05)
