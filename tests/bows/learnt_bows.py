"""Invented bows of which a plan is learnt, prepared once, and the work of a bench on them in numbers."""

import math
import random
from functools import cache

import pytest

from calc.answer import work_out
from calc.bows import learning, next_step
from calc.bows.learning import Batch
from calc.bows.measured import calibrated
from calc.calculators import next_batch
from calc.mechanics.bow.tuning import read
from calc.numerics.belief import variance
from calc.numerics.normal import NORMAL_95
from calc.quantities import INCH
from tests.bows.test_ranges import bow_as_it_may_be

SHAPE = "9 in:0.2 in;14.5 in:-0.1 in;18 in:-0.9 in;20 in:-1.7 in;22.3 in:-2.9 in"

BOWS = {
    "recurve": {"log": "0:0:53lb:5/16in:p120"},
    "shape": {"log": "0:0:53lb:5/16in:p120", "profile": SHAPE},
    "light": {
        "log": "0:0:34lb:-1/8in:p120", "weight_wanted": "30 lb", "tiller_wanted": "1/8 in",
        "family": "reflex-deflex", "bow_length": "60 in", "riser_length": "15 in", "brace_height": "7 in",
        "glass_back": "0.030 in", "glass_belly": "0.030 in", "core": "sugar-maple",
    },
}


@cache
def prepared(name, **typed):
    """Return the plan of a bow, the model that learns from it, and its aim."""
    kept = {}
    with pytest.MonkeyPatch.context() as patch:
        def model_of(planned, *others):
            kept["model"] = learning.model_of(planned, *others)
            kept["planned"] = planned
            return kept["model"]

        def left_of(model, belief, aim, paper):
            kept["aim"] = aim
            return next_step.left_of(model, belief, aim, paper)

        patch.setattr(next_batch, "model_of", model_of)
        patch.setattr(next_batch, "left_of", left_of)
        job = work_out(next_batch.CALCULATOR, list((BOWS[name] | typed).items()), standing={})
    assert not job.problems, [each.message for each in job.problems]
    return kept["planned"], kept["model"], kept["aim"]


TAKES = 0.004 * INCH / 100
"""What a stroke takes before any reading, as the form has it."""


class Bench:
    """What became of many bows, batch by batch: counts of how often a range held what it should."""

    def __init__(self):
        self.batches = 0
        self.held = {"weight": 0, "tiller": 0, "weight read": 0, "tiller read": 0}
        self.below = 0
        self.risks = 0.0
        self.gaps = []


def worked(name, bows, seed, share):
    """Sand bows with hidden measures, each batch as it is named, until none is."""
    planned, model, aim = prepared(name)
    chance, bench = random.Random(seed), Bench()
    for _ in range(bows):
        bow = bow_as_it_may_be(planned.bow, model.errors, chance)
        weight = planned.before.weight + chance.gauss(0, model.errors.weight)
        tiller = planned.before.tiller + chance.gauss(0, model.errors.tiller)
        found = calibrated(bow.bow(), planned.setup, weight, "log", tiller)
        near, lean = found.state, 1 + chance.gauss(0, model.lean)
        stroke = TAKES * math.exp(chance.gauss(0, learning.PAPER_DOUBT))
        belief = learning.with_paper(learning.first_belief(model), TAKES)
        off, unread = [0.0, 0.0], True
        while True:
            left = next_step.left_of(model, belief, aim, 0)
            batch, risk = next_step.next_of(model, belief, aim, left, 0, share, unread)
            if batch.upper + batch.lower == 0:
                break
            for limb, strokes in ((0, batch.upper), (1, batch.lower)):
                off[limb] += strokes * stroke * (1 + chance.gauss(0, model.scatter))
            near = read(bow.bow((found.upper_factor, found.lower_factor), planned.sanding, tuple(off)),
                        planned.setup, near)
            true = near.weight, tiller + lean * (near.tiller - tiller)
            belief, told = learning.after_batch(model, belief, Batch(
                batch.upper, batch.lower, 0, true[0] + chance.gauss(0, model.errors.weight),
                true[1] + chance.gauss(0, model.errors.tiller)))
            unread = False
            for which, known, spoken in ((0, "weight", told.weight), (1, "tiller", told.tiller)):
                value, row = model.reading(belief.mean)[which]
                bench.held[known] += abs(value - true[which]) <= NORMAL_95 * math.sqrt(variance(belief, row))
                bench.held[known + " read"] += not spoken.beyond
            bench.batches += 1
            bench.below += true[0] < aim.weight
            bench.risks += risk.whole
        bench.gaps.append(near.weight - aim.weight)
    return bench
