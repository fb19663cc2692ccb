"""Next batch: it agrees with the two pages whose work it does, and says what a log asks for."""

import math

import pytest

from calc.answer import work_out
from calc.bows.stroke_log import FRESH
from calc.calculators import next_batch, strokes, weight_reduction
from calc.mechanics.bow.limb import sanded_share
from calc.mechanics.bow.tuning import read
from calc.outcome import OK, STOP, WATCH, say
from calc.quantities import INCH, POUND_FORCE
from tests.bows.learnt_bows import prepared

EXACT = {"weight_error": "0.02 lb", "tiller_error": "1/200 in", "scatter": "0 %"}
FIRST = "0:0:53lb:5/16in:p120"


def run(calculator=next_batch, **typed):
    job = work_out(calculator.CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, [each.message for each in job.problems]
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def text(outcome, id):
    return next(say(each.text, "imperial") for each in outcome.checks if each.id == id)


def log_of(batches, per_stroke):
    """Return the log of the computed bow sanded so, a stroke taking so much [in], read without error."""
    planned, _, _ = prepared("recurve")
    rows, off = [FIRST], [0.0, 0.0]
    near = planned.before
    for upper, lower in batches:
        off = [off[0] + upper * per_stroke * INCH, off[1] + lower * per_stroke * INCH]
        near = read(planned.bow.bow(planned.factors, planned.sanding, tuple(off)), planned.setup, near)
        rows.append(f"{upper}:{lower}:{near.weight / POUND_FORCE:.5f}lb:{near.tiller / INCH:.6f}in:same")
    return ";".join(rows), off


# It does the work of two pages ---------------------------------------------------


def test_exact_readings_give_the_strokes_left_of_the_page_that_knows_no_bow():
    """Strokes fits straight lines; what the computed bow bends from them over a pound is left as 3 %."""
    log, _ = log_of([(20, 30), (20, 20), (10, 15)], 4e-5)
    typed = {"log": log, "weight_wanted": "50 lb", "reserve": "0.5 lb", "tiller_wanted": "1/4 in",
             "weight_error": "0.02 lb", "tiller_error": "1/200 in"}
    plain, _ = run(strokes, **typed)
    learnt, _ = run(scatter="0 %", **typed)
    for name in ("upper_left", "lower_left"):
        assert learnt[name] == pytest.approx(plain[name], rel=0.03)
    assert learnt["hundred_take"] == pytest.approx(0.004 * INCH, rel=0.01)


def test_readings_as_they_are_agree_with_strokes_within_its_range():
    """The log of the worked example's first paper: what is left on Strokes lies in the range here."""
    typed = {"log": "0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;"
                    "30:40:48.7lb:1/8in:same", "reserve": "0.7 lb"}
    plain, _ = run(strokes, **typed)
    learnt, outcome = run(**typed)
    for name in ("upper_left", "lower_left"):
        assert abs(learnt[name] - plain[name]) <= learnt[name + "_error"]
    assert learnt["weight_now"] == pytest.approx(plain["weight_now"], abs=0.2 * POUND_FORCE)
    assert levels(outcome)["foretold"] == OK


def test_before_any_batch_it_is_the_plan_of_weight_reduction():
    plan, _ = run(weight_reduction)
    learnt, outcome = run(log=FIRST)
    assert learnt["upper_removal_left"] == pytest.approx(plan["upper_removal"], rel=1e-4)
    assert learnt["lower_removal_left"] == pytest.approx(plan["lower_removal"], rel=1e-4)
    assert learnt["reserve"] == pytest.approx(plan["reserve"])
    assert learnt["upper_left"] == pytest.approx(plan["upper_removal"] / (4e-5 * INCH), rel=1e-4)
    assert 0 < learnt["upper_batch"] < learnt["upper_left"] / (2 * FRESH) * 1.2
    assert levels(outcome)["paper"] == WATCH
    assert learnt["weight_now_error"] == pytest.approx(1.959964 * 0.25 * POUND_FORCE)


def test_readings_too_rough_to_tell_anything_leave_the_plan_less_what_strokes_took():
    log, _ = log_of([(40, 50), (40, 50)], 6e-5)
    plan, _ = run(weight_reduction)
    learnt, _ = run(log=log, weight_error="3 lb", tiller_error="1/4 in", hundred="0.004 in", scatter="0 %",
                    core_error="0 %", glass_error="0 in")
    took = 80 * learnt["hundred_take"] / 100, 100 * learnt["hundred_take"] / 100
    assert learnt["upper_off"] == pytest.approx(took[0], rel=0.02)
    assert learnt["lower_off"] == pytest.approx(took[1], rel=0.02)
    assert learnt["upper_removal_left"] + learnt["upper_off"] == pytest.approx(plan["upper_removal"], rel=0.1)
    assert learnt["lower_removal_left"] + learnt["lower_off"] == pytest.approx(plan["lower_removal"], rel=0.1)


def test_after_a_batch_it_leaves_what_a_second_visit_to_weight_reduction_plans():
    """The second visit measures glass and sections again, thinner by what came off, and weight and tiller."""
    log, off = log_of([(60, 90)], 5e-5)
    row = log.split(";")[1].split(":")
    learnt, _ = run(log=log, upper_lost=f"{off[0] / INCH:.6f} in", lower_lost=f"{off[1] / INCH:.6f} in",
                    thickness_error="0 in", reserve="0.7 lb", **EXACT)
    assert learnt["upper_off"] == pytest.approx(off[0], rel=1e-6)
    for limb, name, which in (("upper", "upper_stations", 0), ("lower", "lower_stations", 1)):
        planned, _, _ = prepared("recurve")
        share = [min(1.0, each) for each in _shares(planned)]
        rows = [f"{each.position / INCH} in:{each.width / INCH} in:"
                f"{(each.thickness - off[which] * part) / INCH:.6f} in"
                for each, part in zip(planned.bow.stations[which], share, strict=True)]
        off_face = (off[0] + off[1]) / 2
        again, _ = run(weight_reduction, weight_now=row[2], tiller_now=row[3], reserve="0.7 lb",
                       came_back="0.043 in", came_belly="0.043 in",
                       glass_back=f"{0.043 - 0.4 * off_face / INCH:.6f} in",
                       glass_belly=f"{0.043 - 0.6 * off_face / INCH:.6f} in", **{name: ";".join(rows)})
        assert learnt[limb + "_removal_left"] == pytest.approx(again[limb + "_removal"], rel=0.05)


def _shares(planned):
    return [sanded_share(planned.sanding, each.position) for each in planned.bow.stations[0]]


# What it says --------------------------------------------------------------------


def test_a_reading_beyond_the_errors_asks_for_another_before_the_next_stroke():
    first = "0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;"
    values, outcome = run(log=first + "30:40:47.4lb:1/8in:same")
    said = text(outcome, "foretold-weight")
    assert said.startswith("The weight is 1.")
    assert "lb less than foretold, beyond what the errors allow (" in said
    assert said.endswith("measure again before the next stroke, and look both limbs over.")
    assert say(outcome.headline, "imperial").endswith(
        "less than foretold, beyond what the errors allow: measure again before the next stroke.")
    assert (values["upper_batch"], values["lower_batch"]) == (0, 0)
    assert values["weight_next"] is None
    again, outcome = run(log=first + "30:40:47.4lb:1/8in:same;0:0:48.3lb:1/8in:same;0:0:48.5lb:1/8in:same")
    assert text(outcome, "earlier-weight").startswith("In row 4 the weight was 1.")
    assert again["upper_batch"] > 0


def test_tiller_beyond_the_errors_is_told_as_well():
    _, outcome = run(log="0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:1/2in:same")
    assert levels(outcome)["foretold-tiller"] == WATCH
    assert say(outcome.headline, "imperial").startswith("The tiller is ")
    assert " more than foretold" in text(outcome, "foretold-tiller")


def test_both_sides_of_what_the_errors_allow():
    log = "0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;30:40:{}lb:1/8in:same"
    values, outcome = run(log=log.format("48.7"))
    told = next(each for each in outcome.tables if each.id == "foretold-weight").rows[-1]
    for sign in (-1, 1):
        edge = told[4 if sign < 0 else 5] / POUND_FORCE
        _, inside = run(log=log.format(f"{edge - sign * 0.01:.4f}"))
        _, outside = run(log=log.format(f"{edge + sign * 0.01:.4f}"))
        assert "foretold-weight" not in levels(inside)
        assert levels(outside)["foretold-weight"] == WATCH
    assert values["batch_risk"] <= 0.025


@pytest.mark.parametrize("share", ["0.5 %", "2.5 %", "10 %"])
def test_the_batch_is_the_largest_of_no_more_risk_than_allowed(share):
    values, outcome = run(risk=share)
    allowed = float(share.split()[0]) / 100
    assert values["batch_risk"] <= allowed
    if values["upper_batch"] == 0:
        assert levels(outcome)["weight"] == STOP
    else:
        assert values["batch_risk"] > 0.6 * allowed


def test_more_risk_is_a_larger_batch():
    batches = [run(risk=share)[0]["upper_batch"] for share in ("1 %", "2.5 %", "10 %")]
    assert batches == sorted(set(batches))


def test_at_the_aim_the_faces_are_done():
    values, outcome = run(weight_wanted="46.6 lb", reserve="0.7 lb")
    assert text(outcome, "weight") == ("The weight is where it should be, the reserve for the edges "
                                       "included: stop sanding the faces and go on to the edges.")
    assert levels(outcome)["weight"] == STOP
    assert (values["upper_batch"], values["lower_batch"]) == (0, 0)


def test_just_above_the_aim_it_stops_for_the_edges():
    values, outcome = run(weight_wanted="46.3 lb", reserve="0.7 lb")
    assert values["weight_now"] > 47.0 * POUND_FORCE
    assert text(outcome, "weight").startswith("Stop for the edges: 0.")
    assert levels(outcome)["weight"] == STOP
    assert values["batch_risk"] > 0.025


def test_glass_that_may_be_too_thin_stops():
    values, outcome = run(glass_now_back="0.031 in", glass_now_belly="0.029 in", glass_new="0.050 in")
    assert levels(outcome)["glass"] == STOP
    assert text(outcome, "glass").startswith("Stop: the glass may be too thin already.")
    assert values["upper_batch"] == 0
    assert values["belly_glass_left"] < run()[0]["belly_glass_left"]


def test_glass_and_thickness_that_are_not_as_foretold_ask_for_another_reading():
    values, outcome = run(glass_now_belly="0.027 in")
    assert text(outcome, "foretold-glass-belly").startswith(
        "The glass on the belly is 0.009 in less than foretold, beyond what the errors allow (")
    assert say(outcome.headline, "imperial") == (
        "The glass on the belly is 0.009 in less than foretold, beyond what the errors allow: measure again "
        "before the next stroke.")
    assert values["upper_batch"] == 0
    _, outcome = run(upper_lost="0.015 in", lower_lost="0.011 in")
    assert levels(outcome)["foretold-lost-upper"] == WATCH
    assert "foretold-lost-lower" not in levels(outcome)


def test_a_weight_that_glass_does_not_allow_is_told():
    _, outcome = run(weight_wanted="38 lb", least_glass="75 %")
    assert levels(outcome)["glass"] == STOP


def test_batches_by_face_add_up_and_go_by_the_share_of_the_belly():
    values, _ = run(belly_share="75 %")
    for limb in ("upper", "lower"):
        whole, belly = values[limb + "_batch"], values[limb + "_batch_belly"]
        assert belly + values[limb + "_batch_back"] == whole
        assert belly == pytest.approx(0.75 * whole, abs=0.5)


def test_another_paper_for_the_next_batch_is_unknown():
    known, _ = run()
    fresh, outcome = run(next_paper="p150")
    assert levels(outcome)["paper"] == WATCH
    assert fresh["hundred_take"] == pytest.approx(known["hundred_take"])
    assert fresh["hundred_take_most"] == pytest.approx(FRESH * fresh["hundred_take"])
    assert fresh["hundred_take_least"] == pytest.approx(fresh["hundred_take"] / FRESH)
    assert 0 < fresh["upper_batch"] < known["upper_batch"]
    back, outcome = run(next_paper="p120")
    assert "paper" not in levels(outcome)
    assert back["hundred_take"] > 1.5 * known["hundred_take"]


def test_the_factors_move_with_what_is_learnt_of_the_first_reading():
    """Three readings half a pound lower than the first one draw both factors down, by less than that."""
    before, _ = run(log=FIRST)
    after, _ = run(log=FIRST + ";0:0:52.5lb:5/16in:same" * 3)
    shares = [after[limb + "_factor"] / before[limb + "_factor"] for limb in ("upper", "lower")]
    assert shares == pytest.approx([1 - 0.375 / 53] * 2, abs=0.003)
    assert after["weight_now"] == pytest.approx(52.625 * POUND_FORCE, abs=1e-6 * POUND_FORCE)
    assert after["weight_now_error"] == pytest.approx(1.959964 * 0.125 * POUND_FORCE)
    assert after["upper_factor_error"] < before["upper_factor_error"]


def test_tiller_that_cannot_come_in_is_told():
    _, outcome = run(tiller_wanted="1 in")
    assert levels(outcome)["tiller"] == WATCH
    assert text(outcome, "tiller").startswith("Tiller will not come in with the weight: ")


@pytest.mark.parametrize(("typed", "field", "sentence"), [
    ({"weight_wanted": "54 lb"}, "weight_wanted", "The weight wanted is more than that of the first row: "
     "taking material off only brings weight down. Mend one of them."),
    ({"least_glass": "100 %"}, "glass_belly", "The glass is at the least that may stay, finish sanding "
     "included: nothing may come off it. Take nothing off, or read the glass again at several places."),
])
def test_what_does_not_go_together_is_refused(typed, field, sentence):
    job = work_out(next_batch.CALCULATOR, list(typed.items()), standing={})
    assert [(each.field, each.message) for each in job.problems] == [(field, sentence)]


def test_the_cautions_name_glass_dust_the_glass_and_experience():
    said = " ".join(say(each, "imperial") for each in next_batch.CALCULATOR.cautions)
    assert "Glass dust harms lungs" in said
    assert "Never sand through the glass" in said
    assert "somebody experienced" in said
    assert math.isclose(FRESH, 3.0)
