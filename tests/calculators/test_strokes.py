"""Strokes: from a log to what is left."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.strokes import CALCULATOR
from calc.fields import say

POUND_FORCE = 4.4482216152605
INCH = 0.0254


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()))
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


@settings(deadline=None)
@given(st.floats(0.005, 0.1), st.floats(0.0005, 0.005))
def test_an_exact_log_gives_its_own_rates(per_stroke, tiller_per_stroke):
    lines, together, lead = [], 0, 0
    for upper, lower in ((0, 0), (40, 20), (30, 20), (20, 20)):
        together += upper + lower
        lead += upper - lower
        lines.append(f"{upper}:{lower}:{58 - per_stroke * together:.9f}lb:"
                     f"{-0.125 + tiller_per_stroke * lead:.9f}in")
    values, _ = run(log=";".join(lines), weight_wanted="30 lb")
    assert values["weight_per_stroke"] == pytest.approx(per_stroke * POUND_FORCE, rel=1e-5)
    assert values["tiller_per_stroke"] == pytest.approx(tiller_per_stroke * INCH, rel=1e-3)
    both = values["upper_left"] + values["lower_left"]
    assert both == pytest.approx((values["weight_now"] - 31 * POUND_FORCE) / values["weight_per_stroke"])


def test_doing_the_strokes_reaches_both_targets():
    values, _ = run()
    upper, lower = values["upper_left"], values["lower_left"]
    weight = values["weight_now"] - values["weight_per_stroke"] * (upper + lower)
    tiller = values["tiller_now"] + values["tiller_per_stroke"] * (upper - lower)
    assert weight == pytest.approx(49 * POUND_FORCE)
    assert tiller == pytest.approx(3 * INCH / 16)


def test_the_next_batch_is_less_than_what_is_left():
    values, _ = run()
    assert 0 < values["upper_batch"] < values["upper_left"]
    assert 0 < values["lower_batch"] < values["lower_left"]


def test_even_strokes_say_nothing_of_tiller():
    values, outcome = run(log="0:0:58lb:0in;30:30:56.5lb:0in;30:30:55lb:0in")
    assert values["tiller_per_stroke"] is None
    assert levels(outcome)["lead"] == "watch"
    assert values["upper_left"] == pytest.approx(values["lower_left"])


def test_at_the_aim_it_says_stop():
    _, outcome = run(weight_wanted="53 lb")
    assert levels(outcome)["weight"] == "stop"
    assert say(outcome.headline, "imperial").startswith("Stop: weight is at")


def test_tiller_out_of_reach_puts_all_strokes_on_one_limb():
    values, outcome = run(weight_wanted="51 lb", tiller_wanted="3/4 in")
    assert levels(outcome)["tiller"] == "watch"
    assert values["lower_left"] == 0
    assert values["weight_now"] - values["weight_per_stroke"] * values["upper_left"] == pytest.approx(
        52 * POUND_FORCE)


def test_scatter_beyond_the_stated_error_is_said_and_widens_the_range():
    calm, _ = run()
    wild, outcome = run(log="0:0:58lb:-1/8in;40:20:55lb:-1/16in;40:20:55.9lb:0in;40:30:52lb:1/16in")
    assert levels(outcome)["scatter"] == "watch"
    assert wild["weight_per_stroke_error"] > 2 * calm["weight_per_stroke_error"]


@pytest.mark.parametrize(
    ("log", "row"),
    [("0:0:58lb:0in;30:30:59lb:0in", 1), ("0:0:58lb:0in;0:0:57lb:0in", None), ("0:0:58lb:0in", None)],
)
def test_a_log_that_says_nothing_is_refused(log, row):
    (found,) = work_out(CALCULATOR, [("log", log)]).problems
    assert (found.field, found.row) == ("log", row)
