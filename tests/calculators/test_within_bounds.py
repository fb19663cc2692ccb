"""The computed bow within the bounds written here: each question is answered, or refused at a field in words.

Eighty of each here. More:
REBRACE_RUNS=3000 pytest tests/calculators/test_within_bounds.py
"""

import math
import os

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc import catalog
from calc.answer import page_answer, work_out
from calc.declaring import inputs_of

RUNS = int(os.environ.get("REBRACE_RUNS", "80"))
INCH, POUND_FORCE = 0.0254, 4.4482216152605

# Inches, pounds and parts of one; all of it is inside what the forms take.
BOW = {
    "brace_height": (3, 12), "bow_length": (40, 80), "riser_length": (6, 34), "throat": (-3, 5),
    "from_string_end": (6, 36), "glass_back": (0.010, 0.120), "glass_belly": (0.010, 0.120),
    "string_stiffness": (600, 250000), "belly_share": (0, 1), "least_glass": (0.3, 1),
}
BOUNDS = {
    "bow-model": {"weight": (5, 150), "draw_length": (14, 34), "tiller": (-1.5, 1.5), "sanded_from": (0, 35),
                  "sanded_to": (1, 40), "sanded_depth": (0, 0.1), **BOW},
    "weight-reduction": {"weight_now": (5, 150), "weight_wanted": (5, 150), "reserve": (0, 5),
                         "draw_length": (16, 34), "tiller_now": (-1.5, 1.5), "tiller_wanted": (-1, 1),
                         "zone_start": (0, 12), "zone_end": (0, 20), "feather": (0, 8), **BOW},
}
CHOICES = {
    "bow-model": {"measured": ("fadeout", "string_end"), "family": ("recurve", "reflex-deflex", "straight"),
                  "sanded_limb": ("upper", "lower", "both", "none")},
    "weight-reduction": {"measured": ("fadeout", "string_end"),
                         "family": ("recurve", "reflex-deflex", "straight")},
}
PLACES = (0.09, 0.36, 0.62, 0.89)  # of the limb, where it is measured
WIDTHS, THICKNESSES = (1.6, 1.5, 1.2, 0.7), (0.300, 0.285, 0.265, 0.250)
CELLS = (0.75, 1.5)  # times the example's widths and thicknesses
READINGS = (0.2, 0.35, 0.5, 0.65, 0.8, 0.9)  # of the way from brace to full draw
UNITS = {"length": ("in", INCH), "thickness": ("in", INCH), "force": ("lb", POUND_FORCE), "ratio": ("", 1.0)}


@st.composite
def questions(draw, id):
    """Return what a reader might type: some figures from anywhere in the bounds, the others left alone."""
    defaults = {each.id: each.default for each in inputs_of(catalog.find(id))}
    kinds = {each.id: each.kind for each in inputs_of(catalog.find(id))}
    typed = {name: draw(st.sampled_from(words)) for name, words in CHOICES[id].items() if draw(st.booleans())}
    for name in draw(st.lists(st.sampled_from(sorted(BOUNDS[id])), unique=True, max_size=8)):
        typed[name] = f"{draw(st.floats(*BOUNDS[id][name])):.5f} {UNITS[kinds[name]][0]}"

    def number(name):
        return float((typed.get(name) or defaults[name]).split()[0])

    limb = (number("bow_length") - number("riser_length")) / 2
    factors = draw(st.lists(st.floats(*CELLS), min_size=8, max_size=8)) if draw(st.booleans()) else [1.0] * 8
    for rows in ("upper_stations", "lower_stations"):
        cells = zip(PLACES, WIDTHS, THICKNESSES, factors[:4], factors[4:], strict=True)
        typed[rows] = ";".join(f"{place * limb:.5g} in:{width * wide:.5g} in:{thickness * thick:.5g} in"
                               for place, width, thickness, wide, thick in cells)
        factors.reverse()
    if id == "bow-model":
        start, stroke = number("brace_height") + 1.75, number("draw_length") - number("brace_height") - 1.75
        power = draw(st.floats(0.6, 1.3))
        typed["readings"] = "" if stroke < 2 or draw(st.booleans()) else ";".join(
            f"{start + stroke * part:.5g} in:{number('weight') * part**power:.5g} lb" for part in READINGS)
    return list(typed.items())


@pytest.mark.parametrize("id", sorted(BOUNDS))
def test_these_bounds_are_inside_what_the_form_takes(id):
    declared = {each.id: each for each in inputs_of(catalog.find(id))}
    for name, (low, high) in BOUNDS[id].items():
        scale = UNITS[declared[name].kind][1]
        assert declared[name].low <= low * scale + 1e-12
        assert high * scale <= declared[name].high + 1e-9


def check(id, pairs):
    job = work_out(catalog.find(id), pairs)
    page_answer(job)
    if job.outcome is None:
        for problem in job.problems:
            assert problem.field in {each.id for each in inputs_of(catalog.find(id))}, problem
            assert problem.message[0].isupper()
            assert problem.message.endswith(".")
    else:
        assert all(math.isfinite(value) for _, value in job.outcome.values if isinstance(value, float))


many = settings(max_examples=RUNS, suppress_health_check=[HealthCheck.too_slow])


@many
@given(questions("bow-model"))
def test_the_bow_model_answers_or_refuses(pairs):
    check("bow-model", pairs)


@many
@given(questions("weight-reduction"))
def test_weight_reduction_answers_or_refuses(pairs):
    check("weight-reduction", pairs)


@pytest.mark.parametrize(("id", "typed"), [
    # each once ended in an error of the engine or a sentence that named no field
    ("bow-model", {"family": "reflex-deflex", "throat": "2.25 in", "brace_height": "7.5 in"}),
    ("bow-model", {"tiller": "1.3 in", "brace_height": "3.4 in", "throat": "1.2 in"}),
    ("weight-reduction", {"draw_length": "21 in", "tiller_now": "-0.54 in", "brace_height": "4.42 in",
                          "throat": "3.386 in"}),
    ("weight-reduction", {"measured": "string_end", "from_string_end": "24 in"}),
    ("bow-model", {"measured": "string_end", "from_string_end": "24 in"}),
    ("weight-reduction", {"zone_start": "12 in", "zone_end": "10.4 in", "feather": "0"}),
    ("weight-reduction", {"weight_wanted": "6.6 lb", "least_glass": "35 %", "glass_back": "0.068 in"}),
])
def test_these_answer_or_refuse_too(id, typed):
    check(id, list(typed.items()))
