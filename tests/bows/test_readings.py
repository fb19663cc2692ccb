"""The curves of the invented bow that stands in all worked examples."""

import pytest

from calc.answer import work_out
from calc.bows.readings import CURVE_AFTER, CURVE_AS_IT_CAME
from calc.calculators.bow_model import CALCULATOR as BOW_MODEL
from calc.calculators.weight_reduction import CALCULATOR as WEIGHT_REDUCTION
from calc.quantities import parse

POUND_FORCE = 4.4482216152605
BOW = {
    "upper_stations": "2in:1 5/8in:0.291in;7in:1 9/16in:0.279in;13in:1 3/8in:0.263in;19in:13/16in:0.247in",
    "lower_stations": "2in:1 5/8in:0.296in;7in:1 9/16in:0.283in;13in:1 3/8in:0.267in;19in:13/16in:0.250in",
    "glass_back": "0.043 in", "glass_belly": "0.043 in", "core": "white-ash", "glass_modulus": "5.65 Mpsi",
    "bow_length": "64 in", "riser_length": "19 in", "brace_height": "8 1/4 in", "draw_length": "28 in",
}


def pairs(rows):
    return [(parse(draw, "length"), parse(weight, "force"))
            for draw, weight in (row.split(":") for row in rows.split(";"))]


def test_the_curve_as_it_came_is_that_of_the_invented_bow():
    """Within what a scale is out by, a quarter of a pound: so that the examples agree with one another."""
    readings, full = CURVE_AS_IT_CAME.rsplit(";", 1)
    assert full == "28in:53lb"
    job = work_out(BOW_MODEL, list({**BOW, "weight": "53 lb", "tiller": "5/16 in", "readings": readings,
                                    "sanded_limb": "none"}.items()))
    misses = [line[3] / POUND_FORCE for line in job.outcome.tables[0].rows]
    assert len(misses) == len(pairs(readings))
    assert max(map(abs, misses)) < 0.25


def test_the_curve_after_is_that_of_the_bow_once_planned():
    """Faces by the plan and the rest by edges: the planned curve, brought to the weight agreed."""
    job = work_out(WEIGHT_REDUCTION, list({**BOW, "weight_now": "53 lb", "weight_wanted": "45 lb",
                                           "tiller_now": "5/16 in", "tiller_wanted": "1/16 in"}.items()))
    then = job.outcome.charts[0].lines[1]
    planned = dict(zip([round(x, 4) for x in then.xs], then.ys))
    read = pairs(CURVE_AFTER)
    assert read[-1][1] == pytest.approx(45 * POUND_FORCE)
    for draw, weight in read:
        expected = planned[round(draw, 4)] * 45 * POUND_FORCE / then.ys[-1]
        assert abs(weight - expected) < 0.25 * POUND_FORCE
