"""The bow model from bench measures."""

import math

import pytest

from calc.answer import work_out
from calc.calculators.bow_model import CALCULATOR
from calc.calculators.draw_curve import CALCULATOR as DRAW_CURVE
from calc.calculators.weight_reduction import CALCULATOR as WEIGHT_REDUCTION
from calc.declaring import inputs_of
from calc.outcome import say
from calc.quantities import parse
from calc.tables import practice
from calc.tables.bow_families import FAMILIES

POUND_FORCE = 4.4482216152605
SURELY_READ = {"glass_error": "0 in", "thickness_error": "0 in"}
INCH = 0.0254
ALIKE = "2 in:1.6 in:0.3 in;8 in:1.5 in:0.285 in;14 in:1.2 in:0.265 in;20 in:0.7 in:0.25 in"
PLAIN = {"readings": "", "sanded_limb": "none"}


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def test_the_model_is_set_to_weight_and_tiller():
    values, _ = run()
    assert values["weight"] == pytest.approx(53 * POUND_FORCE, rel=1e-6)
    assert values["tiller"] == pytest.approx(5 * INCH / 16, abs=1e-6)


def test_alike_limbs_without_tiller_are_calibrated_alike():
    values, _ = run(upper_stations=ALIKE, lower_stations=ALIKE, tiller="0", **PLAIN)
    assert values["upper_factor"] == pytest.approx(values["lower_factor"], rel=1e-6)


@pytest.mark.parametrize(
    ("family", "brace", "low", "high"),
    [
        # Stored energy over weight times stroke of four measured recurves: 0.581, 0.581, 0.582, 0.595
        # (Tuijn and Kooi 1992, read); the invented family must come out near them.
        ("recurve", "8 in", 0.55, 0.61),
        # 0.407 of draw times weight for a published straight-end bow (from memory, confirmed by
        # calculation) is 0.51 of stroke times weight with its brace height of 0.214.
        ("straight", "6 1/2 in", 0.46, 0.53),
        ("reflex-deflex", "7 in", 0.48, 0.58),  # between the two
    ],
)
def test_families_are_as_full_as_measured_bows(family, brace, low, high):
    values, _ = run(family=family, brace_height=brace, bow_length="66 in", riser_length="19 in",
                    weight="45 lb", **PLAIN)
    assert low < values["fullness"] < high


@pytest.mark.parametrize("bow_length", [60, 62, 66])
def test_a_recurves_string_is_three_to_four_inches_shorter_than_the_bow(bow_length):
    """Actual strings, measured under tension, are often 3 to 4 in shorter than the bow's marked length
    (trade pages, read). The invented shape was chosen among others for it: no evidence for the mechanics."""
    values, _ = run(bow_length=f"{bow_length} in", **PLAIN)
    braced = values["string_length"] * (1 + values["string_tension"] / 25e3)
    assert 2.8 < bow_length - braced / INCH < 4.2


def test_the_string_lies_on_a_recurves_tip_only():
    assert run(**PLAIN)[0]["contact"] > INCH
    straight, _ = run(family="straight", brace_height="6 1/2 in", **PLAIN)
    assert straight["contact"] == pytest.approx(0, abs=1e-9)


def test_readings_are_met_by_scaling_the_familys_shape():
    values, outcome = run()
    assert 0.5 <= values["profile_scale"] <= 1.5
    assert values["misfit"] < 0.5 * POUND_FORCE
    assert levels(outcome)["misfit"] == "ok"
    unfitted, _ = run(profile="6.75in:0.7in;13.5in:1in;17.55in:0.4in;20.2in:-1in;21.6in:-2.4in")
    assert unfitted["profile_scale"] is None
    assert unfitted["misfit"] > values["misfit"]


def test_a_bow_at_the_limit_of_its_scale_is_computed():
    """The search comes to the same limit twice here, and once divided by their difference."""
    values, _ = run(family="reflex-deflex", throat="2.25 in", brace_height="7.5 in")
    assert 0.5 <= values["profile_scale"] <= 1.5


def test_a_trial_that_cannot_be_computed_refuses_nothing():
    measures = {"family": "reflex-deflex", "throat": "1.207 in", "brace_height": "6.082 in"}
    values, outcome = run(**measures)
    assert levels(outcome)["scale"] == "watch"
    assert values["profile_scale"] > 1
    assert run(readings="", **measures)[0]["weight"] == pytest.approx(values["weight"], rel=1e-5)


def test_a_straight_shape_has_nothing_to_scale():
    values, outcome = run(family="straight", brace_height="6 1/2 in")
    assert values["profile_scale"] is None
    assert "scale" not in levels(outcome)


def test_a_fit_that_ends_at_its_limit_is_said():
    readings = "12in:8.8lb;15in:18.4lb;18in:27.9lb;21in:37.0lb;24in:43.5lb;26in:49.2lb"
    values, outcome = run(weight="55 lb", readings=readings)
    assert values["profile_scale"] == pytest.approx(0.5, abs=0.005)
    assert levels(outcome)["scale"] == "watch"
    assert "scale" not in levels(run()[1])


def test_sanding_leaves_the_glass_that_must_stay():
    """House rule, an assumption: no less than 60 % of the glass when new."""
    values, outcome = run(sanded_limb="both", sanded_depth="0.06 in")
    assert levels(outcome)["glass"] == "stop"
    assert "Do not sand that" in say(outcome.headline, "imperial")
    assert values["sanded_belly_glass"] == pytest.approx((0.043 - 0.6 * 0.06) * INCH)
    assert values["sanded_back_glass"] == pytest.approx((0.043 - 0.4 * 0.06) * INCH)
    assert levels(run()[1])["glass"] == "ok"
    # just so much, and a little more, off the belly: 0.4 of 0.043 in is 0.0172 in, with 60 % of the depth
    assert levels(run(sanded_depth="0.0286 in", **SURELY_READ)[1])["glass"] == "ok"
    assert levels(run(sanded_depth="0.0287 in", **SURELY_READ)[1])["glass"] == "stop"
    assert levels(run(sanded_depth="0.0287 in", least_glass="50 %", **SURELY_READ)[1])["glass"] == "ok"
    assert levels(run(glass_new="0.055 in", sanded_depth="0.0167 in")[1])["glass"] == "stop"
    assert "glass" not in levels(run(sanded_limb="none")[1])


@pytest.mark.parametrize(("depth", "level"), [("0.0187 in", "ok"), ("0.0188 in", "stop")])
def test_glass_stops_where_the_lower_end_of_its_range_passes_the_floor(depth, level):
    """0.6 times the depth comes off 0.043 in of belly glass, read to 0.003 in, the depth to sqrt(2) times
    0.0005 in; 1.96 standard errors below that must be 0.0258 in.
    """
    values, outcome = run(sanded_depth=depth)
    half = 1.96 * math.hypot(0.003, 0.6 * math.sqrt(2) * 0.0005) * INCH
    assert values["sanded_belly_glass_error"] == pytest.approx(half, rel=1e-4)
    assert values["sanded_back_glass_error"] == pytest.approx(
        1.96 * math.hypot(0.003, 0.4 * math.sqrt(2) * 0.0005) * INCH, rel=1e-4)
    assert (values["sanded_belly_glass"] - half < 0.6 * 0.043 * INCH) == (level == "stop")
    assert levels(outcome)["glass"] == level
    said = say(outcome.headline, "imperial")
    assert said.startswith("Do not sand that: it may leave 0.030 in of glass on the back and 0.026 in on the "
                           "belly, less than may stay." if level == "stop" else "Sanding that stretch takes")


def test_what_a_trial_changes_is_told_with_what_makes_its_range():
    values, outcome = run()
    causes = next(table.rows for table in outcome.tables if table.id == "causes")
    assert causes[0][0] == "What is taken off the lower limb"
    shares = {row[0]: row[4] for row in causes}
    # the scale and the rule err on the bow before and after alike
    assert max(shares["The weight now"], shares["The tiller now"]) < 0.01
    assert [each.id for each in outcome.drawings] == ["limbs", "causes"]
    half = values["sanded_weight_change_error"] / POUND_FORCE
    lost = -values["sanded_weight_change"] / POUND_FORCE
    assert f"takes {lost:.1f} lb ({lost - half:.1f} lb to {lost + half:.1f} lb) of draw weight" in say(
        outcome.headline, "imperial")
    exact = {"weight_error": "0.02 lb", "tiller_error": "0.005 in", "core_error": "0 %"} | SURELY_READ
    assert run(**exact)[0]["sanded_weight_change_error"] < 0.01 * values["sanded_weight_change_error"]
    none, untried = run(sanded_limb="none")
    assert none["sanded_weight_change_error"] is None
    assert "causes" not in [table.id for table in untried.tables] + [each.id for each in untried.drawings]


def test_how_the_shape_was_fitted_is_no_part_of_the_range():
    """Offsets a tenth smaller, four times what readings to 1/8 lb leave open, change what sanding does by
    less than a twentieth of its range."""
    values, _ = run()
    straighter, _ = run(readings="12in:10.2lb;14in:17.6lb;16in:23.6lb;18in:28.4lb;20in:33.3lb;22in:37.8lb;"
                                 "24in:42.4lb;26in:47.3lb")
    assert straighter["profile_scale"] < values["profile_scale"] - 0.1
    for name in ("sanded_weight_change", "sanded_tiller_change"):
        assert abs(straighter[name] - values[name]) < 0.05 * values[name + "_error"]


@pytest.mark.parametrize(("error", "level"), [("1/8 lb", "watch"), ("1/2 lb", "watch"), ("0.01 lb", "watch")])
def test_stacking_is_judged_as_by_the_draw_curve(error, level):
    """One bow, one judgement: the same readings give both pages the same probability, sentence and energy."""
    values, outcome = run(reading_error=error)
    job = work_out(DRAW_CURVE, [("reading_error", error)], standing={})
    told = dict(job.outcome.values)
    for name in ("stacking_probability", "stacking_onset", "stored_energy_error"):
        assert values[name] == pytest.approx(told[name]) if told[name] else values[name] is None, name
    mine, theirs = [next(say(each.text, "imperial") for each in found.checks if each.id == "stacking")
                    for found in (outcome, job.outcome)]
    assert mine == theirs
    assert levels(outcome)["stacking"] == level


def test_stacking_of_a_bow_that_does_not_is_told_too():
    values, outcome = run(readings="12in:13lb;14in:21lb;16in:27lb;18in:32lb;20in:36.5lb;22in:41lb;24in:45lb;"
                                   "26in:49lb")
    assert values["stacking_probability"] < 0.2
    assert values["stacking_onset"] is None
    assert levels(outcome)["stacking"] == "ok"


@pytest.mark.parametrize("typed", [{"readings": ""}, {"readings": "20in:33.4lb"}, {"reading_error": "0 lb"}],
                         ids=["no reading", "one reading", "readings without error"])
def test_too_few_readings_leave_stacking_to_the_computed_curve(typed):
    values, outcome = run(**typed)
    assert values["stacking_probability"] is None
    assert values["stacking_onset"] == pytest.approx(27.5 * INCH, abs=0.3 * INCH)
    (said,) = [say(each.text, "imperial") for each in outcome.checks if each.id == "stacking"]
    assert said == ("The computed curve stacks near the end of the draw. Whether the bow does cannot be told "
                    "without readings at two other draws or more, and their error.")
    half = 1.96 * 0.25 / 53 * values["stored_energy"]
    assert values["stored_energy_error"] == pytest.approx(half, rel=1e-3)
    assert run(readings="16in:24.2lb;20in:33.4lb")[0]["stacking_probability"] is not None


def test_readings_beyond_the_draw_of_the_weight_are_judged_in_order():
    values, _ = run(weight="47.3 lb", draw_length="26 in", readings="20in:33.4lb;24in:42.3lb;28in:53lb")
    again, _ = run(readings="20in:33.4lb;24in:42.3lb;26in:47.3lb")
    assert values["stacking_probability"] == pytest.approx(again["stacking_probability"])
    assert values["stacking_onset"] == pytest.approx(again["stacking_onset"])


def test_the_computed_curve_has_a_band_where_nothing_is_tried():
    _, outcome = run(sanded_limb="none")
    lines = {each.label: each for each in outcome.charts[0].lines}
    assert set(lines) == {"Computed", "Computed, at least", "Computed, at most", "Readings"}
    for name, sign in (("Computed, at least", -1), ("Computed, at most", 1)):
        assert lines[name].ys[-1] == pytest.approx((53 + sign * 1.96 * 0.25) * POUND_FORCE, rel=1e-4)


def test_glass_as_it_came_and_glass_older_than_strokes():
    """Worked on already: the least that may stay goes by the glass as it came, and stale glass is no OK."""
    sanded = {"glass_belly": "0.030 in", "sanded_depth": "0.010 in"}
    assert levels(run(**sanded)[1])["glass"] == "ok"
    assert levels(run(**sanded, came_belly="0.043 in")[1])["glass"] == "stop"
    assert levels(run(strokes_since="40")[1])["glass"] == "watch"


def test_through_the_glass_is_refused_only_where_it_goes_through():
    (found,) = work_out(CALCULATOR, [("sanded_depth", "0.0718 in")]).problems
    assert found.field == "sanded_depth"
    assert "less than 0.072 in (1.82 mm); you gave 0.072 in" in found.message
    assert levels(run(sanded_depth="0.0715 in")[1])["glass"] == "stop"


@pytest.mark.parametrize("calculator", [CALCULATOR, WEIGHT_REDUCTION], ids=lambda each: each.id)
def test_the_share_of_glass_that_stays_is_that_of_practice(calculator):
    (share,) = [each.default for each in inputs_of(calculator) if each.id == "least_glass"]
    assert parse(share, "ratio") == practice.find("glass-left").low


def test_without_readings_it_says_that_the_curve_is_unchecked():
    values, outcome = run(readings="")
    assert values["misfit"] is None
    assert levels(outcome)["misfit"] == "watch"


def test_a_curve_that_does_not_fit_is_said():
    readings = "12in:5lb;15in:10lb;18in:15lb;21in:22lb;24in:33lb;26in:45lb"
    assert levels(run(readings=readings)[1])["misfit"] == "watch"


def test_measures_that_do_not_explain_the_weight_are_said():
    assert levels(run(weight="25 lb", **PLAIN)[1])["calibration"] == "watch"


def test_sanding_the_upper_limb_lowers_weight_and_raises_tiller():
    upper, _ = run(sanded_limb="upper", readings="")
    lower, _ = run(sanded_limb="lower", readings="")
    both, _ = run(sanded_limb="both", readings="")
    assert upper["sanded_weight_change"] < 0 < upper["sanded_tiller_change"]
    assert lower["sanded_weight_change"] < 0 > lower["sanded_tiller_change"]
    assert both["sanded_weight_change"] == pytest.approx(
        upper["sanded_weight_change"] + lower["sanded_weight_change"], rel=0.02)


def test_sanding_near_the_fadeout_does_more_than_near_the_tip():
    near, _ = run(sanded_from="1 in", sanded_to="7 in", readings="")
    far, _ = run(sanded_from="14 in", sanded_to="20 in", readings="")
    assert near["sanded_weight_change"] < 3 * far["sanded_weight_change"] < 0


def test_the_shares_of_the_weight_foretell_what_sanding_costs():
    """First order: the relative loss of weight is the share times the relative loss of stiffness. The string
    itself carries the rest of 1 where it stretches."""
    _, outcome = run(string_stiffness="1000 kN", **PLAIN)
    rows = outcome.tables[-1].rows
    assert sum(row[-1] for row in rows) == pytest.approx(1, abs=0.03)
    assert [row[-1] for row in rows[:5]] == sorted([row[-1] for row in rows[:5]], reverse=True)


def test_a_thin_place_works_hardest_and_is_pointed_out():
    thin = ALIKE.replace("14 in:", "11 in:1.35 in:0.17 in;14 in:")
    _, outcome = run(upper_stations=thin, weight="45 lb", **PLAIN)
    assert levels(outcome)["works-upper"] == "watch"


def test_the_drawing_is_to_scale():
    """The braced string is as far from the grip as the brace height, on the bow's own scale."""
    _, outcome = run(**PLAIN)
    drawing = outcome.drawings[0]

    def points(shape):
        numbers = [float(word) for word in shape[1]["d"].replace("M", "").replace("L", "").split()]
        return list(zip(numbers[::2], numbers[1::2], strict=True))

    unstrung, brace_string = points(drawing.shapes[0]), points(drawing.shapes[1])
    grip = unstrung[len(unstrung) // 2]
    length = sum(math.dist(a, b) for a, b in zip(unstrung, unstrung[1:], strict=False))
    scale = length / (64 * INCH)
    middle = (brace_string[0][1] + brace_string[1][1]) / 2
    assert (middle - grip[1]) / scale == pytest.approx(8.25 * INCH, rel=0.06)


@pytest.mark.parametrize(
    ("typed", "field", "row"),
    [
        ({"draw_length": "14 in", "brace_height": "12 in"}, "draw_length", None),
        ({"readings": "12in:14lb;11in:20lb"}, "readings", 1),
        ({"readings": "9in:2lb"}, "readings", 0),
        ({"readings": "12in:14lb;33in:80lb"}, "readings", 1),
        ({"sanded_from": "10 in", "sanded_to": "6 in"}, "sanded_to", None),
        ({"sanded_to": "30 in"}, "sanded_to", None),
        ({"sanded_depth": "0.09 in"}, "sanded_depth", None),
        ({"profile": "8in:0.5in;6in:0.4in"}, "profile", 1),
        ({"profile": "8in:0.5in;30in:0.4in"}, "profile", 1),
        ({"profile": "3in:6in"}, "profile", 0),
        ({"sanded_from": "6.2 in", "sanded_to": "6.9 in"}, "sanded_to", None),
        ({"measured": "string_end", "from_string_end": "24 in"}, "from_string_end", None),
        ({"tiller": "1.3 in", "brace_height": "3.4 in", "throat": "1.2 in"}, "tiller", None),
        ({"brace_height": "4 in", "throat": "5 in", "readings": ""}, "brace_height", None),
    ],
)
def test_measures_that_do_not_go_together_name_their_field(typed, field, row):
    (found,) = work_out(CALCULATOR, list(typed.items())).problems
    assert (found.field, found.row) == (field, row)


def test_shapes_are_data():
    assert [family.id for family in FAMILIES] == ["recurve", "reflex-deflex", "straight"]
