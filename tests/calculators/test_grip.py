"""Margin of a slimmed grip, from typed inputs to the answer."""

import math
import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.grip import CALCULATOR
from calc.outcome import say

INCH = 0.0254
POUND_FORCE = 4.4482216152605
PSI = 6894.757293168


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def sections(*lines):
    """Return typed sections before and after from (height, width, depth, width after, depth after)."""
    return {"before": ";".join(f"{line[0]} in:{line[1]} in:{line[2]} in" for line in lines),
            "after": ";".join(f"{line[3]} in:{line[4]} in" for line in lines)}


ONE = sections((0, 1.25, 2, 1.125, 1.875))
UNTOUCHED = sections((0, 1.25, 2, 1.25, 2))
SAME = {"lived_weight": ""}
"""One weight before and after: how links from before there were two are read."""


def test_stress_by_hand():
    """Statics and a square section, worked here: 45 lb, 120 degrees at the nock, 26 1/4 in to it."""
    values, _ = run(**ONE, shape="square", between="120", wood="own", own_strength="15000 psi",
                    draw_weight="45 lb", draw_length="28 in")
    tangent = math.tan(math.radians(30))
    moment = 45 / 2 * (26.25 + 1.875 / 2) / tangent
    thrust = 45 / 2 / tangent
    stress = moment / (1.125 * 1.875**2 / 6) + thrust / (1.125 * 1.875)
    assert values["stress_after"] / PSI == pytest.approx(stress, rel=1e-9)
    assert values["margin_after"] == pytest.approx(15000 / stress, rel=1e-9)
    assert values["string_tension"] / POUND_FORCE == pytest.approx(45, rel=1e-9)  # 2 T sin 30 = F
    assert values["throat_moment"] / POUND_FORCE / INCH == pytest.approx(22.5 * 26.25 / tangent, rel=1e-9)


@given(st.floats(20, 80), st.floats(1.05, 1.5))
def test_stress_is_proportional_to_the_draw(pounds, factor):
    one, _ = run(draw_weight=f"{pounds:.6f} lb")
    other, _ = run(draw_weight=f"{pounds * factor:.6f} lb")
    assert other["stress_after"] / one["stress_after"] == pytest.approx(factor, rel=1e-5)


@given(st.floats(0.9, 1.25), st.floats(1.3, 2.0), st.floats(0.01, 0.3))
def test_taking_more_off_never_helps(width, depth, more):
    one, _ = run(**sections((0, 1.25, 2, f"{width:.6f}", f"{depth:.6f}")))
    other, _ = run(**sections((0, 1.25, 2, f"{width:.6f}", f"{depth - more:.6f}")))
    assert other["margin_after"] < one["margin_after"]


@pytest.mark.parametrize("shape", ["rounded", "square"])
def test_the_least_depth_has_just_the_margin_asked_for(shape):
    values, _ = run(**ONE, shape=shape)
    depth = values["least_depth"] / INCH
    again, outcome = run(**sections((0, 1.25, 2, 1.125, f"{depth:.9f}")), shape=shape, factor="3.9999")
    assert again["margin_after"] == pytest.approx(4, rel=1e-6)
    assert levels(outcome)["margin"] == "ok"


@pytest.mark.parametrize("shape", ["rounded", "square"])
def test_the_equal_depth_keeps_the_margin(shape):
    values, _ = run(**ONE, **SAME, shape=shape)
    depth = values["equal_depth"] / INCH
    assert depth > 2  # narrower, so deeper than before
    again, _ = run(**sections((0, 1.125, f"{depth:.9f}", 1.125, f"{depth:.9f}")), **SAME, shape=shape)
    assert again["margin_after"] == pytest.approx(values["margin_before"], rel=1e-6)


def test_nothing_taken_off_changes_nothing():
    values, outcome = run(**UNTOUCHED, **SAME)
    assert values["margin_after"] == values["margin_before"]
    assert values["equal_depth"] / INCH == pytest.approx(2, rel=1e-9)
    assert levels(outcome)["loss"] == "ok"


SLIMMED = (1.05, 1.8484)
"""Inches: takes 28 % of the margin of a square throat of 1 1/4 by 2 in, at one weight."""


def slimmed_at(lived, now):
    """Return values and checks of a slimmed square throat, lived with at one weight, drawn at another."""
    values, outcome = run(**sections((0, 1.25, 2, *SLIMMED)), shape="square", between="120", wood="own",
                          own_strength="15000 psi", draw_length="28 in", lived_weight=lived, draw_weight=now)
    return values, {each.id: (each.level, say(each.text, "imperial")) for each in outcome.checks}


def stress_of(pounds, width, depth):
    """Return the stress of a square throat in psi by statics, worked here as above."""
    tangent = math.tan(math.radians(30))
    return (pounds / 2 * (26.25 + depth / 2) / tangent / (width * depth**2 / 6)
            + pounds / 2 / tangent / (width * depth))


def test_the_margin_it_has_lived_with_is_at_the_weight_it_has_lived_with():
    """54.6 lb before and 43.4 lb after: about a tenth less, where one weight for both says 28 %."""
    before, after = stress_of(54.6, 1.25, 2), stress_of(43.4, *SLIMMED)
    assert 1 - stress_of(43.4, 1.25, 2) / after == pytest.approx(0.28, abs=0.002)
    assert 1 - before / after == pytest.approx(0.10, abs=0.01)
    values, checks = slimmed_at("54.6 lb", "43.4 lb")
    assert values["stress_before"] / PSI == pytest.approx(before, rel=1e-9)
    assert values["stress_after"] / PSI == pytest.approx(after, rel=1e-9)
    level, text = checks["loss"]
    assert level == "ok"
    assert "the margin is 9 % less than the one the bow has lived with" in text
    assert "At 43.4 lb alone the work would take away 28 %" in text
    level, text = slimmed_at("", "43.4 lb")[1]["loss"]
    assert level == "watch"
    assert "At 43.4 lb before and after, the work takes away 28 %" in text


def test_one_weight_for_both_is_said_and_a_heavier_draw_is_warned_of():
    _, checks = slimmed_at("", "43.4 lb")
    assert checks["lived"][0] == "watch"
    assert "At 43.4 lb before and after" in checks["loss"][1]
    _, checks = slimmed_at("43.4 lb", "54.6 lb")
    assert checks["lived"][0] == "watch"
    assert "has never borne that" in checks["lived"][1]
    assert checks["loss"][0] == "watch"
    assert "lived" not in slimmed_at("54.6 lb", "43.4 lb")[1]


def test_a_riser_strained_too_far_before_may_pass_at_the_lighter_draw():
    """3.7 at the old weight, 4.6 at the new one with nothing taken off: it is the new weight that counts."""
    before, now = stress_of(54.6, 1.25, 2), stress_of(43.4, 1.25, 2)
    strength = f"{4.6 * now:.3f} psi"
    assert 4.6 * now / before == pytest.approx(3.66, abs=0.01)
    values, outcome = run(**UNTOUCHED, shape="square", between="120", wood="own", own_strength=strength,
                          draw_length="28 in", lived_weight="54.6 lb", draw_weight="43.4 lb")
    assert values["margin_after"] == pytest.approx(4.6, rel=1e-6)
    assert levels(outcome)["margin"] == "ok"


def test_a_rounded_section_bears_three_fifths_of_a_square_one():
    """(pi / 32) / (1 / 6) = 0.589 of the section modulus; geometry."""
    rounded, _ = run(**ONE, shape="rounded")
    square, _ = run(**ONE, shape="square")
    assert square["stress_after"] / rounded["stress_after"] == pytest.approx(0.589, abs=0.005)


def test_a_hole_on_the_middle_takes_little_and_one_through_the_depth_much():
    """1 - (d/h)^3 and (b - w)/b of the section, exact, apart from the thrust of some per cent."""
    plain, _ = run(**UNTOUCHED, shape="square")
    common = UNTOUCHED | {"shape": "square", "hole_height": "0", "hole_diameter": "3/8"}
    side, _ = run(hole="side", hole_from_back="1 in", **common)
    depth, _ = run(hole="depth", **common)
    assert plain["stress_after"] / side["stress_after"] == pytest.approx(1 - (0.375 / 2) ** 3, abs=0.005)
    assert plain["stress_after"] / depth["stress_after"] == pytest.approx((1.25 - 0.375) / 1.25, rel=1e-9)
    assert depth["weakest"] == "the hole"


def test_a_hole_near_the_back_is_worse_than_one_in_the_middle():
    common = ONE | {"hole": "side", "hole_height": "0", "hole_diameter": "3/8"}
    near, _ = run(hole_from_back="3/8", **common)
    middle, _ = run(hole_from_back="0.9375", **common)
    assert near["margin_after"] < middle["margin_after"]


def test_too_slim_is_a_stop_before_and_after():
    _, outcome = run(**sections((0, 1.25, 2, 0.9, 1.4)))
    assert levels(outcome)["margin"] == "stop"
    assert levels(outcome)["loss"] == "watch"
    assert "leave more wood" in say(outcome.headline, "imperial")
    _, outcome = run(**sections((0, 0.9, 1.4, 0.9, 1.4)))
    assert levels(outcome)["margin"] == "stop"


def test_it_never_calls_itself_a_certificate():
    _, outcome = run(factor="1.5")
    assert levels(outcome)["screen"] == "watch"
    assert any("not a certificate" in say(each.text, "imperial") for each in outcome.checks)


def test_a_measured_angle_goes_before_the_estimate():
    estimated, _ = run()
    measured, _ = run(between="130")
    assert measured["string_angle"] == pytest.approx(25)
    assert measured["string_tension"] > estimated["string_tension"]


@pytest.mark.parametrize(
    ("typed", "field", "row", "column"),
    [
        (sections((2, 1.2, 2, 1.1, 1.9), (1, 1.2, 2, 1.1, 1.9)), "before", 1, "height"),
        (sections((0, 1.2, 2, 1.3, 1.9)), "after", 0, "width"),
        (sections((0, 1.2, 2, 1.1, 2.1)), "after", 0, "depth"),
        ({"after": "1.1 in:1.9 in"}, "after", None, None),
        ({"hole": "side", "hole_from_back": "1/16"}, "hole_diameter", None, None),
        ({"hole": "depth", "hole_diameter": "1.2"}, "hole_diameter", None, None),
        ({"draw_length": "34", "bow_length": "40", "riser_length": "30", "brace_height": "3.5"},
         "draw_length", None, None),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(typed, field, row, column):
    (found,) = work_out(CALCULATOR, list(typed.items())).problems
    assert (found.field, found.row, found.column) == (field, row, column)


def test_the_headline_leads_with_what_to_leave():
    values, outcome = run(**ONE, **SAME)
    least = values["least_depth"]
    assert values["leave_depth"] >= least
    assert values["leave_depth"] - least < INCH / 32
    assert values["leave_depth"] / INCH * 32 == pytest.approx(round(values["leave_depth"] / INCH * 32))
    text = say(outcome.headline, "imperial")
    assert text.startswith("Leave 1 ")
    assert "of depth or more at section 1, where it is 1 1/8 in wide." in text


def test_leaving_that_much_keeps_the_margin_and_a_step_less_does_not():
    values, _ = run(**ONE, **SAME, factor="4")
    kept = values["leave_depth"] / INCH
    for depth, enough in ((kept, True), (kept - 1 / 32, False)):
        found, _ = run(**sections((0, 1.25, 2, 1.125, depth)), **SAME, factor="4")
        assert (found["margin_after"] >= 4) == enough


def test_where_the_old_grip_is_too_weak_nothing_comes_off():
    _, outcome = run(**ONE, **SAME, factor="20")
    assert say(outcome.headline, "imperial").startswith("Take nothing off. At full draw")


def test_a_hand_and_the_girth_that_suits_it():
    # 0.197 of the hand's length across (Kong and Lowe, 2005, from memory): 190 mm: 37.4 mm, 117.6 mm round
    values, outcome = run(**ONE, hand_length="190 mm")
    assert values["girth_hand"] == pytest.approx(math.pi * 0.197 * 0.190)
    assert levels(outcome)["hand"] == "ok"  # an oval of 1 1/8 by 1 7/8 in is 121 mm round
    assert levels(run(**ONE, hand_length="150 mm")[1])["hand"] == "watch"
    assert "hand" not in levels(run(**ONE)[1])
    assert run(**ONE)[0]["girth_hand"] is None
    square, _ = run(**sections((0, 1.25, 2, 1.0, 1.5)), shape="square")
    assert square["girth_after"] / INCH == pytest.approx(5.0)


def template(**typed):
    [file] = run(**typed)[1].files
    assert (file.name, file.media_type) == ("grip-template.svg", "image/svg+xml")
    return ET.fromstring(file.text)


def test_the_template_is_in_millimetres_of_paper():
    sheet = template(**ONE, **SAME)
    # a user unit is a millimetre where width and view box agree (SVG 1.1, 7.2)
    view = [float(each) for each in sheet.get("viewBox").split()]
    assert (sheet.get("width"), sheet.get("height")) == (f"{view[2]:.2f}mm", f"{view[3]:.2f}mm")
    assert view[2] == 210
    name = "{http://www.w3.org/2000/svg}"
    old, new = [(2 * float(each.get("rx")), 2 * float(each.get("ry")))
                for each in sheet.iter(name + "ellipse")]
    assert old == pytest.approx((1.25 * 25.4, 2 * 25.4), abs=0.02)
    assert new == pytest.approx((1.125 * 25.4, 1.875 * 25.4), abs=0.02)
    bars = [[float(part) for part in each.get("d").replace("M", "").replace("L", "").split()]
            for each in sheet.iter(name + "path")]
    lengths = {round(abs(x1 - x0), 2) for x0, y0, x1, y1 in bars if y0 == y1}
    assert {50.0, 50.8} <= lengths


def test_the_template_never_shows_less_than_must_stay():
    thin = sections((0, 1.25, 2, 1.125, 0.6), (2, 1.25, 2, 1.25, 2))
    values, _ = run(**thin, **SAME)
    sheet = template(**thin, **SAME, shape="square")
    rectangles = [float(each.get("height")) for each in sheet.iter("{http://www.w3.org/2000/svg}rect")]
    assert values["margin_after"] < 4
    assert min(rectangles) > 0.6 * 25.4
    assert len(rectangles) == 4


def test_many_sections_go_on_in_a_new_row():
    wide = sections(*[(index, 3.5, 4, 3.4, 3.9) for index in range(4)])
    sheet = template(**wide, **SAME)
    tops = {each.get("cy") for each in sheet.iter("{http://www.w3.org/2000/svg}ellipse")}
    assert len(tops) == 4
    assert float(sheet.get("height").removesuffix("mm")) > 4 * 4 * 25.4


def test_hinged_limbs_are_assumed_only_where_the_angle_was_not_measured():
    for between, assumed in (("", True), ("120", False)):
        told = [say(each, "imperial") for each in run(between=between)[1].assumptions]
        assert any("limbs as levers on hinges" in each for each in told) is assumed
