"""The worked examples are one invented bow and its archer: what two calculators state of it agrees.

The figures are the project's own invention; nothing here is measured.
"""

import pytest

from calc import catalog
from calc.answer import work_out
from calc.bows.readings import CURVE_AFTER, CURVE_AS_IT_CAME
from calc.declaring import inputs_of
from calc.quantities import INCH, POUND_FORCE, parse

LENGTHS = {"bow_length": "64 in", "riser_length": "19 in", "brace_height": "8 1/4 in"}
DRAW = "27 in"
EXAMPLES = ("arrow-match", "bow-model", "draw-curve", "edges", "grip", "inspection", "photograph", "string",
            "tiller", "tracking", "weight-reduction")


def default(calculator, field):
    (asked,) = [each for each in inputs_of(catalog.find(calculator)) if each.id == field]
    return parse(asked.default, asked.kind, "imperial")


def weight_at(readings, draw):
    job = work_out(catalog.find("draw-curve"), [("readings", readings), ("draw_asked", draw)])
    return dict(job.outcome.values)["weight_at"]


@pytest.mark.parametrize("calculator", EXAMPLES)
def test_its_lengths_are_the_same_everywhere(calculator):
    asked = {each.id: each for each in inputs_of(catalog.find(calculator))}
    for field, figure in LENGTHS.items():
        if field in asked:
            assert default(calculator, field) == pytest.approx(parse(figure, "length")), field


@pytest.mark.parametrize(("calculator", "field"), [
    ("grip", "draw_length"), ("arrow-match", "draw_length"), ("draw-curve", "draw_asked")])
def test_its_archer_draws_as_far_everywhere(calculator, field):
    assert default(calculator, field) == pytest.approx(parse(DRAW, "length"))


@pytest.mark.parametrize(("calculator", "field", "readings", "draw"), [
    ("arrow-match", "old_weight", CURVE_AS_IT_CAME, "28 in"),
    ("bow-model", "weight", CURVE_AS_IT_CAME, "28 in"),
    ("tiller", "draw_weight", CURVE_AS_IT_CAME, "28 in"),
    ("weight-reduction", "weight_now", CURVE_AS_IT_CAME, "28 in"),
    ("weight-reduction", "weight_wanted", CURVE_AFTER, "28 in"),
    ("strokes", "weight_wanted", CURVE_AFTER, "28 in"),
    ("arrow-match", "new_weight", CURVE_AFTER, "28 in"),
    ("grip", "lived_weight", CURVE_AS_IT_CAME, DRAW),
    ("grip", "draw_weight", CURVE_AFTER, DRAW),
    ("string", "draw_weight", CURVE_AFTER, DRAW),
])
def test_each_weight_is_read_off_its_curves(calculator, field, readings, draw):
    stated = default(calculator, field) / POUND_FORCE
    assert stated == pytest.approx(weight_at(readings, draw) / POUND_FORCE, abs=0.25)


def test_the_slope_near_full_draw_is_that_of_its_curve():
    rise = weight_at(CURVE_AFTER, "28 in") - weight_at(CURVE_AFTER, DRAW)
    assert default("arrow-match", "slope") == pytest.approx(rise / INCH, abs=0.1 * POUND_FORCE / INCH)


def test_the_string_stands_as_high_at_the_fadeouts_as_its_tiller_was():
    """Upper less lower is 5/16 in, as it came."""
    upper, lower = (default("tracking", limb + "_height_riser") for limb in ("upper", "lower"))
    assert upper - lower == pytest.approx(5 / 16 * INCH)


def test_its_tiller_is_one():
    assert default("tiller", "upper") - default("tiller", "lower") == pytest.approx(5 / 16 * INCH)
    for calculator, field in (("weight-reduction", "tiller_now"), ("bow-model", "tiller")):
        assert default(calculator, field) == pytest.approx(5 / 16 * INCH)
    for calculator in ("weight-reduction", "strokes"):
        assert default(calculator, "tiller_wanted") == pytest.approx(INCH / 16)


def test_the_log_keeps_what_the_plan_keeps_for_the_edges():
    kept = dict(work_out(catalog.find("weight-reduction"), []).outcome.values)["reserve"]
    assert default("strokes", "reserve") == pytest.approx(kept, abs=0.05 * POUND_FORCE)


@pytest.mark.parametrize("calculator", EXAMPLES)
def test_each_example_says_that_it_is_invented(calculator):
    assert catalog.find(calculator).example.startswith("An invented 64 in recurve") or (
        catalog.find(calculator).example.startswith("An invented old 64 in recurve"))
