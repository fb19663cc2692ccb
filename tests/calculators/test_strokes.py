"""Strokes: from a log to what is left."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import catalog
from calc.answer import work_out
from calc.calculators.strokes import CALCULATOR
from calc.outcome import say

POUND_FORCE = 4.4482216152605
INCH = 0.0254


ONE_PAPER = {"log": "0:0:53lb:-1/8in;40:20:51.4lb:-1/16in;40:20:49.9lb:0in;40:30:48.3lb:1/16in",
             "weight_wanted": "43 lb", "reserve": "1 lb", "tiller_wanted": "3/16 in"}
"""A log of one paper, four cells a row; a test changes what it is about."""


def run(**typed):
    job = work_out(CALCULATOR, list({**ONE_PAPER, **typed}.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


@given(st.floats(0.005, 0.1), st.floats(0.0005, 0.005))
def test_an_exact_log_gives_its_own_rates(per_stroke, tiller_per_stroke):
    lines, together, lead = [], 0, 0
    for upper, lower in ((0, 0), (40, 20), (30, 20), (20, 20)):
        together += upper + lower
        lead += upper - lower
        lines.append(f"{upper}:{lower}:{53 - per_stroke * together:.9f}lb:"
                     f"{-0.125 + tiller_per_stroke * lead:.9f}in")
    values, _ = run(log=";".join(lines), weight_wanted="25 lb")
    assert values["weight_per_stroke"] == pytest.approx(per_stroke * POUND_FORCE, rel=1e-5)
    assert values["tiller_per_stroke"] == pytest.approx(tiller_per_stroke * INCH, rel=1e-3)
    both = values["upper_left"] + values["lower_left"]
    assert both == pytest.approx((values["weight_now"] - 26 * POUND_FORCE) / values["weight_per_stroke"])


def test_the_log_stands_row_by_row_beside_its_lines():
    """A log on two lines exactly: 0.05 lb and 1/320 in a stroke."""
    _, outcome = run(log="0:0:53lb:-1/8in;40:20:50lb:-1/16in;40:20:47lb:0in;30:10:45lb:1/16in")
    (log,) = [each for each in outcome.tables if each.id == "log"]
    for row, strokes, weight, tiller in zip(log.rows, (0, 60, 120, 160), (53, 50, 47, 45), (-2, -1, 0, 1),
                                            strict=True):
        assert row[0] == strokes
        assert row[2:4] == pytest.approx((weight * POUND_FORCE,) * 2)
        assert row[4:] == pytest.approx((tiller * INCH / 16,) * 2)


def test_doing_the_strokes_reaches_both_targets():
    values, _ = run()
    upper, lower = values["upper_left"], values["lower_left"]
    weight = values["weight_now"] - values["weight_per_stroke"] * (upper + lower)
    tiller = values["tiller_now"] + values["tiller_per_stroke"] * (upper - lower)
    assert weight == pytest.approx(44 * POUND_FORCE)
    assert tiller == pytest.approx(3 * INCH / 16)


def test_the_next_batch_is_less_than_what_is_left():
    values, _ = run()
    assert 0 < values["upper_batch"] < values["upper_left"]
    assert 0 < values["lower_batch"] < values["lower_left"]


def test_even_strokes_say_nothing_of_tiller():
    values, outcome = run(log="0:0:53lb:0in;30:30:51.5lb:0in;30:30:50lb:0in")
    assert values["tiller_per_stroke"] is None
    assert levels(outcome)["lead"] == "watch"
    assert values["upper_left"] == pytest.approx(values["lower_left"])


def test_at_the_aim_it_says_stop():
    _, outcome = run(weight_wanted="48 lb")
    assert levels(outcome)["weight"] == "stop"
    assert say(outcome.headline, "imperial").startswith("Stop: weight is at")


def test_tiller_out_of_reach_puts_all_strokes_on_one_limb():
    values, outcome = run(weight_wanted="46 lb", tiller_wanted="3/4 in")
    assert levels(outcome)["tiller"] == "watch"
    assert values["upper_batch"] > values["lower_batch"] == 0
    assert values["lower_left"] == 0
    assert values["weight_now"] - values["weight_per_stroke"] * values["upper_left"] == pytest.approx(
        47 * POUND_FORCE)


# The upper limb alone was sanded, and the upper distance shrank: sanding a limb makes it bend more, so its
# distance grows (common practice).
BACKWARDS = "0:0:53lb:-1/8in;60:0:51.5lb:-3/16in;60:0:50lb:-1/4in"


def test_tiller_driven_the_wrong_way_stops_without_a_batch():
    values, outcome = run(log=BACKWARDS)
    assert levels(outcome)["backwards"] == "stop"
    assert say(outcome.headline, "imperial").startswith("Stop")
    told = next(say(each.text, "imperial") for each in outcome.checks if each.id == "backwards")
    assert "Upper and lower, or the sign of tiller, may be mixed up" in told
    assert values["tiller_per_stroke"] < 0
    assert [values[id] for id in ("upper_left", "lower_left", "upper_batch", "lower_batch")] == [None] * 4
    assert "left" not in [each.id for each in outcome.tables]
    assert not {"lead", "tiller", "even"} & set(levels(outcome))


@pytest.mark.parametrize(
    "log",
    [
        "0:0:53lb:1/4in;0:60:51.5lb:5/16in;0:60:50lb:3/8in",  # lower alone, upper distance grows
        "0:0:53lb:-1/8in;60:0:51.5lb:-3/16in;60:0:43lb:-1/4in",  # weight at its aim beside it
    ],
)
def test_the_wrong_way_is_seen_from_either_limb_and_at_any_weight(log):
    assert levels(run(log=log)[1])["backwards"] == "stop"


def test_limbs_put_right_give_a_plan():
    swapped = run(log="0:0:53lb:-1/8in;0:60:51.5lb:-3/16in;0:60:50lb:-1/4in")
    turned = run(log="0:0:53lb:1/8in;60:0:51.5lb:3/16in;60:0:50lb:1/4in")
    for values, outcome in (swapped, turned):
        assert "backwards" not in levels(outcome)
        assert values["tiller_per_stroke"] > 0
        assert values["upper_left"] + values["lower_left"] > 0


def test_a_step_back_within_the_error_says_nothing_of_tiller():
    values, outcome = run(log="0:0:53lb:0in;30:30:51.5lb:0in;40:20:50lb:-1/64in")
    assert values["tiller_per_stroke"] is None
    assert levels(outcome)["lead"] == "watch"
    assert "backwards" not in levels(outcome)


def test_the_wrong_way_is_not_compared_with_the_model():
    assert "model-tiller" not in levels(run(log=BACKWARDS, model="compare")[1])


def test_weight_at_its_aim_still_says_what_tiller_lacks_and_would_cost():
    values, outcome = run(weight_wanted="49 lb", tiller_wanted="3/8 in")
    assert (levels(outcome)["weight"], levels(outcome)["tiller"]) == ("stop", "watch")
    (text,) = [each.text for each in outcome.checks if each.id == "tiller"]
    lacking, strokes, cost, after = (text.amounts[place].value for place in (1, 3, 4, 5))
    assert lacking == pytest.approx(3 * INCH / 8 - values["tiller_now"])
    assert strokes == pytest.approx(lacking / values["tiller_per_stroke"])
    assert cost == pytest.approx(strokes * values["weight_per_stroke"])
    assert after == pytest.approx(values["weight_now"] - cost)
    assert "on the upper limb alone" in say(text, "imperial")


def test_weight_at_its_aim_with_tiller_in_says_nothing_of_tiller():
    assert "tiller" not in levels(run(weight_wanted="49 lb", tiller_wanted="1/16 in")[1])


def test_a_log_that_is_silent_on_tiller_says_so_at_the_aim():
    _, outcome = run(log="0:0:53lb:0in;30:30:51.5lb:0in;30:30:42lb:1/16in", tiller_wanted="3/16 in")
    assert levels(outcome)["tiller"] == "watch"
    [said] = [each.text for each in outcome.checks if each.id == "tiller"]
    assert said.amounts[0].value == pytest.approx(INCH / 16)  # as it was last read
    assert "lead" not in levels(outcome)  # no more strokes are asked for


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"log": "0:0:45lb:0in;500:500:44.9lb:0in"}, "after a larger change of weight"),
        ({"log": "0:0:53lb:0in;62:60:49.9lb:0.005in"}, "after a larger change of tiller"),
        ({"weight_wanted": "47 lb"}, "too few to tell apart from none"),
    ],
)
def test_a_wide_range_and_a_small_count_are_told_apart(typed, said):
    values, outcome = run(**typed)
    assert values["upper_batch"] == values["lower_batch"] == 0
    headline = say(outcome.headline, "imperial")
    assert said in headline
    assert ("too few" in headline) != ("too wide" in headline)


def test_scatter_beyond_the_stated_error_is_said_and_widens_the_range():
    calm, _ = run()
    wild, outcome = run(log="0:0:53lb:-1/8in;40:20:50lb:-1/16in;40:20:50.9lb:0in;40:30:47lb:1/16in")
    assert levels(outcome)["scatter"] == "watch"
    assert wild["weight_per_stroke_error"] > 2 * calm["weight_per_stroke_error"]


@pytest.mark.parametrize(
    ("log", "row"),
    [("0:0:53lb:0in;30:30:54lb:0in", 1), ("0:0:53lb:0in;0:0:52lb:0in", None), ("0:0:53lb:0in", None)],
)
def test_a_log_that_says_nothing_is_refused(log, row):
    (found,) = work_out(CALCULATOR, [("log", log)]).problems
    assert (found.field, found.row) == ("log", row)


# The model beside the log ----------------------------------------------------

COMPARE = {"model": "compare"}


def table(outcome, id):
    (found,) = [each for each in outcome.tables if each.id == id]
    return {row[0]: [cell.value for cell in row[1:]] for row in found.rows}


def test_the_model_is_left_out_unless_asked_for():
    values, outcome = run()
    assert values["model_weight_per_stroke"] is None
    assert values["model_tiller_per_stroke"] is None
    assert "model" not in [each.id for each in outcome.tables]
    assert not [each for each in outcome.checks if each.id.startswith("model")]
    assert {**run(**COMPARE)[0], **values} == values  # nothing else moves


def test_both_figures_that_are_compared_are_told():
    values, outcome = run(**COMPARE)
    told = {each.id: [amount.value for amount in each.text.amounts] for each in outcome.checks}
    for of in ("weight", "tiller"):
        assert told["model-" + of] == [values[of + "_per_stroke"], values[f"model_{of}_per_stroke"]]


def test_the_line_of_weight_goes_on_to_where_it_meets_its_aim():
    values, outcome = run()
    [weight] = [each for each in outcome.charts if each.id == "weight"]
    fitted, aim = weight.lines[0], weight.lines[1]
    assert fitted.ys[-1] == pytest.approx(44 * POUND_FORCE)
    assert aim.ys == pytest.approx([44 * POUND_FORCE] * 2)
    assert fitted.xs == pytest.approx([0, 190 + values["upper_left"] + values["lower_left"]])
    assert fitted.ys[0] == pytest.approx(44 * POUND_FORCE + fitted.xs[1] * values["weight_per_stroke"])
    assert len(fitted.ys) == 2
    [weight] = [each for each in run(weight_wanted="50 lb")[1].charts if each.id == "weight"]
    assert weight.lines[0].xs[-1] == 190  # past its aim, up to the last reading


def test_the_forecast_by_hand():
    # 190 strokes took 0.010 + 0.006 in; 0.6 lb for 0.001 in off both is 0.3 lb off either.
    values, _ = run(**COMPARE, upper_lost="0.010 in", lower_lost="0.006 in", model_weight="0.6 lb",
                    model_tiller="0.041 in")
    thousandths = 16 / 190
    assert values["thickness_per_hundred"] == pytest.approx(100 * thousandths * INCH / 1000)
    assert values["model_weight_per_stroke"] == pytest.approx(0.3 * thousandths * POUND_FORCE)
    assert values["model_tiller_per_stroke"] == pytest.approx(0.041 * thousandths * INCH)


def test_the_sign_that_the_other_page_shows_does_not_matter():
    plus, _ = run(**COMPARE, model_weight="0.6 lb", model_tiller="0.041 in")
    minus, _ = run(**COMPARE, model_weight="-0.6 lb", model_tiller="-0.041 in")
    assert plus == minus


@pytest.mark.parametrize(
    ("typed", "weight", "tiller"),
    [
        ({}, "ok", "ok"),
        ({"model_weight": "1.2 lb"}, "watch", "ok"),
        ({"model_weight": "0.3 lb"}, "watch", "ok"),
        ({"model_tiller": "0.2 in"}, "ok", "watch"),
        ({"upper_lost": "0.03 in", "lower_lost": "0.02 in"}, "watch", "watch"),
        # a loose micrometer forgives
        ({"model_weight": "1.2 lb", "thickness_error": "0.005 in"}, "ok", "ok"),
    ],
)
def test_agreement_is_judged_by_both_ranges(typed, weight, tiller):
    found = levels(run(**COMPARE, **typed)[1])
    assert (found["model-weight"], found["model-tiller"]) == (weight, tiller)


def test_both_ranges_are_shown():
    values, outcome = run(**COMPARE)
    fitted, expected = table(outcome, "model")["Weight by a stroke"]
    fitted_error, expected_error = table(outcome, "model")["Weight, give or take"]
    assert (fitted, expected) == (values["weight_per_stroke"], values["model_weight_per_stroke"])
    assert fitted_error == pytest.approx(values["weight_per_stroke_error"])
    # Four readings of 0.0005 in: 0.001 in of 0.016 in is one standard error.
    assert expected_error / expected == pytest.approx(1.96 * 0.001 / 0.016, rel=1e-3)


def test_a_log_that_is_silent_on_tiller_is_compared_by_weight_alone():
    _, outcome = run(log="0:0:53lb:0in;30:30:51.5lb:0in;30:30:50lb:0in", **COMPARE, upper_lost="0.005 in",
                     lower_lost="0.005 in")
    assert "model-tiller" not in levels(outcome)
    assert list(table(outcome, "model")) == ["Weight by a stroke", "Weight, give or take"]


@pytest.mark.parametrize("family", ["recurve", "reflex-deflex", "straight"])
def test_a_bow_sanded_by_the_model_agrees_with_its_rates(family):
    # Bows computed after each stage of a plan that takes a sixtieth of the weight make the log, at
    # 0.0001 in a stroke; the rates of the first thousandth, which the plan shows beside them, foretell it
    # to 5 %: calculated.
    plan = work_out(catalog.find("weight-reduction"), [
        ("family", family), ("weight_wanted", "51.2 lb"), ("reserve", "1 lb"), ("tiller_now", "-1/16 in"),
        ("tiller_wanted", "0 in")]).outcome
    tables = {each.id: each.rows for each in plan.tables}
    rates = {row[0]: row for row in tables["feel"]}
    weight, tiller = abs(rates["both"][2].value), abs(rates["upper"][3])
    lines, before = ["0:0:53lb:-1/16in"], (0.0, 0.0)
    for _, upper, lower, force, difference in tables["stages"]:
        strokes = [(now - then) / (INCH / 10000) for now, then in zip((upper, lower), before, strict=True)]
        lines.append(f"{strokes[0]:.6f}:{strokes[1]:.6f}:{force:.6f}N:{difference * 1000:.6f}mm")
        before = (upper, lower)
    values, outcome = run(log=";".join(lines), weight_wanted="43 lb", **COMPARE,
                          upper_lost=f"{before[0] * 1000:.6f} mm", lower_lost=f"{before[1] * 1000:.6f} mm",
                          model_weight=f"{weight:.9f} N", model_tiller=f"{tiller * 1000:.9f} mm")
    assert values["thickness_per_hundred"] == pytest.approx(0.01 * INCH, rel=1e-4)
    assert values["model_weight_per_stroke"] == pytest.approx(values["weight_per_stroke"], rel=0.05)
    assert values["model_tiller_per_stroke"] == pytest.approx(values["tiller_per_stroke"], rel=0.05)
    assert levels(outcome)["model-weight"] == levels(outcome)["model-tiller"] == "ok"


# A change of paper -----------------------------------------------------------

# Our own log, made by 0.02 lb a stroke with P120 and 0.0075 lb with P180, to an aim of 46 lb.
COARSE = "0:0:53lb:5/16in:p120;30:45:51.5lb:1/4in:same;30:45:50lb:3/16in:same;30:45:48.5lb:1/8in:same"
TO_46 = {"weight_wanted": "45 lb", "reserve": "1 lb", "tiller_wanted": "1/16 in"}


def told(outcome):
    return say(outcome.headline, "imperial")


def test_each_paper_has_its_own_slope_and_the_newest_foretells():
    values, outcome = run(log=COARSE + ";50:50:47.75lb:1/8in:p180;50:50:47lb:1/8in:same", **TO_46)
    assert values["weight_per_stroke"] == pytest.approx(0.0075 * POUND_FORCE, rel=1e-6)
    assert values["weight_now"] == pytest.approx(47 * POUND_FORCE, rel=1e-6)
    left = values["upper_left"] + values["lower_left"]
    assert left == pytest.approx(1 / 0.0075, rel=1e-4)
    (papers,) = [each for each in outcome.tables if each.id == "papers"]
    assert [row[0] for row in papers.rows] == ["P120", "P180"]
    assert papers.rows[0][1] == pytest.approx(0.02 * POUND_FORCE, rel=1e-6)
    (chart,) = [each for each in outcome.charts if each.id == "weight"]
    assert list(chart.lines[0].ys) == pytest.approx(
        [each * POUND_FORCE for each in (53, 51.5, 50, 48.5, 47.75, 47, 46)], rel=1e-6)
    assert 0 < values["upper_batch"] + values["lower_batch"] < left / 2


def test_a_line_through_both_papers_never_stops_what_the_scale_does_not():
    """The same log with the change of paper told and not told: the single line is a pound below the scale."""
    fine = ";120:120:47.6lb:1/8in:{};120:120:46.7lb:1/8in"
    _, told_so = run(log=COARSE + fine.format("p180"), **TO_46)
    assert "Stop" not in told(told_so)
    _, not_told = run(log=COARSE + fine.format("same"), **TO_46, weight_error="0.1 lb")
    assert not told(not_told).startswith("Stop")
    assert levels(not_told).get("weight") != "stop"
    assert levels(not_told)["scatter"] == "watch"
    assert told(not_told).startswith("Measure again: the scale says 46.7 lb")


def test_a_scale_below_the_aim_stops_whatever_the_line_says():
    _, outcome = run(log="0:0:53lb:0in;30:30:51.5lb:0in;30:30:50lb:0in;30:30:44lb:0in", **TO_46)
    assert levels(outcome)["weight"] == "stop"


@pytest.mark.parametrize("row", ["0:0:48.5lb:1/8in:p180", "0:0:48.5lb:1/8in:new", "10:10:48.6lb:1/8in:p180"])
def test_a_paper_without_a_reading_asks_for_a_small_batch(row):
    values, outcome = run(log=COARSE + ";" + row, **TO_46)
    name = "P180" if "p180" in row else "P120, sheet 2"
    assert told(outcome).startswith(f"Nothing is known of {name} yet: measure after a small batch.")
    assert values["upper_left"] is None
    assert levels(outcome)["paper"] == "watch"
    # safe if it takes three times as much as P120 did
    strokes = values["upper_batch"] + values["lower_batch"]
    assert 0 < strokes * 3 * 0.02 < 48.5 - 46


def test_one_reading_on_a_new_paper_gives_a_batch_that_is_safe_and_not_nothing():
    values, outcome = run(log=COARSE + ";20:20:48.2lb:1/8in:p180", **TO_46)
    assert "0 and 0" not in told(outcome)
    assert values["upper_batch"] + values["lower_batch"] > 0
    steepest = values["weight_per_stroke"] + values["weight_per_stroke_error"]
    batch = values["upper_batch"] + values["lower_batch"]
    assert batch * steepest < values["weight_now"] - 46 * POUND_FORCE


def test_a_new_paper_at_the_aim_stops():
    _, outcome = run(log=COARSE + ";0:0:48.5lb:1/8in:p180", weight_wanted="48 lb", reserve="1 lb")
    assert told(outcome).startswith("Stop")
    assert levels(outcome)["weight"] == "stop"


def test_four_cells_and_five_say_the_same():
    """Rows from before there was a column for paper, and the same with the paper named once."""
    plain, _ = run()
    named, _ = run(log=";".join(row + ":" + ("p120" if place == 0 else "same")
                                for place, row in enumerate(ONE_PAPER["log"].split(";"))))
    assert plain == named


def test_back_to_a_paper_is_the_same_paper_and_a_new_sheet_is_another():
    back = COARSE + ";50:50:47.75lb:1/8in:p180;10:15:47.25lb:7/64in:p120"
    _, outcome = run(log=back, **TO_46)
    (papers,) = [each for each in outcome.tables if each.id == "papers"]
    assert [row[0] for row in papers.rows] == ["P120", "P180"]
    _, outcome = run(log=COARSE + ";30:30:46.9lb:1/8in:new", **TO_46)
    (papers,) = [each for each in outcome.tables if each.id == "papers"]
    assert [row[0] for row in papers.rows] == ["P120", "P120, sheet 2"]


def test_two_papers_are_not_compared_with_the_model():
    _, outcome = run(log=COARSE + ";50:50:47.75lb:1/8in:p180;50:50:47lb:1/8in", **TO_46, model="compare")
    assert levels(outcome)["model-papers"] == "watch"


# What the page says of straight lines ----------------------------------------


@pytest.mark.parametrize("family", ["recurve", "reflex-deflex", "straight"])
def test_how_straight_the_lines_are_on_the_examples_limbs(family):
    """What the page says of the example's limbs, coming down from 53 lb with tiller kept (calculated)."""
    first = None
    for drop, low, high in ((0, 0, 0), (2, 0.03, 0.03), (5, 0.08, 0.08), (8, 0.13, 0.14)):
        typed = {"family": family, "weight_now": "53 lb", "weight_wanted": f"{53 - drop} lb",
                 "reserve": "0 lb", "tiller_now": "0 in", "tiller_wanted": "0 in"}
        values, rows = plan_of(typed)
        feel = {row[0]: row for row in rows["feel"]}
        if first is None:
            first = abs(feel["both"][2].value), abs(feel["upper"][3] - feel["lower"][3])
            continue
        removal = (values["upper_removal"] + values["lower_removal"]) / 2
        assert drop * POUND_FORCE * INCH / 1000 / removal == pytest.approx(first[0], rel=0.01)
        _, rows = plan_of({**typed, "weight_now": f"{53 - drop} lb", **as_sanded(rows["stations"])})
        feel = {row[0]: row for row in rows["feel"]}
        more = abs(feel["upper"][3] - feel["lower"][3]) / first[1] - 1
        assert low <= round(more, 2) <= high, (drop, more)


def plan_of(typed):
    outcome = work_out(catalog.find("weight-reduction"), list(typed.items()), standing={}).outcome
    return dict(outcome.values), {each.id: each.rows for each in outcome.tables}


def as_sanded(stations):
    """Return the sections and glass that a plan leaves, widths as the example has them."""
    widths = {2: 1.625, 7: 1.5625, 13: 1.375, 19: 0.8125}
    typed = {}
    for limb in ("upper", "lower"):
        typed[limb + "_stations"] = ";".join(
            f"{row[1] / INCH:.3f}in:{widths[round(row[1] / INCH)]}in:{row[3] / INCH:.6f}in"
            for row in stations if row[0] == limb)
    for face, place in (("back", 4), ("belly", 5)):
        typed["glass_" + face] = f"{min(row[place] for row in stations) / INCH:.6f} in"
    return typed


def test_readings_that_stay_alike_show_no_slope_whichever_way_rounding_goes():
    # The weight stayed at 49.3 lb over the strokes on two papers: nothing is known of the newest one.
    values, outcome = run(units="metric", log=(
        "0:0:225.1 N:5/16in:p120;30:45:51.4lb:6.1 mm:p60;30:40:50.2lb:3/16in:same;30:40:48.1 lb:1/8in:same;"
        "40:50:49.3 lb:3/32in:p180;40:50:49.3 lb:1.5 mm:p120"))
    assert not outcome.charts
    assert values["weight_per_stroke"] == pytest.approx(0.0, abs=1e-9)
