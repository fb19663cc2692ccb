"""Ranges of an arrow's match against a Monte Carlo: readings drawn at random, all computed anew."""

import random

import pytest

from calc.answer import work_out
from calc.bows.arrow_ranges import ArrowRanges, Reading, ranges_table
from calc.calculators import arrow_match
from calc.calculators.arrow_match import CALCULATOR
from calc.numerics.normal import NORMAL_95
from calc.outcome import amount
from calc.quantities import POUND_FORCE

SAMPLES = 2000
RESULTS = ("spine_pounds", "speed", "moving_mass", "wanted_low")
ERRORS = {"spine_pounds": "spine_pounds_error", "speed": "arrow_speed_error",
          "moving_mass": "moving_mass_error", "wanted_low": "wanted_error"}


def answered(typed, monkeypatch):
    """Return the figures that an answer was computed from, and its results."""
    kept = {}
    compute = CALCULATOR.compute

    def keeping(**values):
        kept.update(values)
        return compute(**values)

    monkeypatch.setattr(CALCULATOR, "compute", keeping)
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, [each.message for each in job.problems]
    monkeypatch.setattr(CALCULATOR, "compute", compute)
    return kept, dict(job.outcome.values)


def finished(steps):
    """Return what a computation returns."""
    while True:
        try:
            next(steps)
        except StopIteration as end:
            return end.value


def without_drawings(monkeypatch):
    """Leave out what a sample is not asked for: the drawings and charts take most of the time."""
    for name in ("arrow_shape", "speed_chart", "force_chart", "comparison", "conventions", "ranges_drawing"):
        monkeypatch.setattr(arrow_match, name, lambda *_: None)


@pytest.mark.parametrize("typed", [
    {"curve": "assumed", "losses": "estimate"},
    {"curve": "assumed", "losses": "chronograph"},
    {"curve": "assumed", "losses": "chronograph_before", "test_mass": "540 gr"},
    {"curve": "computed", "losses": "chronograph", "energy_error": "0 %", "test_mass": "400 gr"},
])
def test_the_ranges_cover_95_of_100(typed, monkeypatch):
    read, nominal = answered(typed, monkeypatch)
    without_drawings(monkeypatch)
    chance = random.Random(7)
    inside = dict.fromkeys(RESULTS, 0)
    samples = SAMPLES if typed["curve"] == "assumed" else SAMPLES // 2

    def off(error):
        return chance.gauss(0, read[error] or 0)

    for _ in range(samples):
        bow = {**read, "new_weight": read["new_weight"] + off("weight_error"),
               "old_weight": read["old_weight"] + off("weight_error"),
               "draw_length": read["draw_length"] + off("draw_error"),
               "spine": read["spine"] * (1 + off("spine_error")),
               "shaft_mass": read["shaft_mass"] + off("mass_error")}
        if typed["curve"] == "assumed":
            bow["fullness"] = read["fullness"] * (1 + off("energy_error"))
        if typed["losses"] == "estimate":
            bow["virtual_mass"] = read["virtual_mass"] * (1 + off("moving_error"))
        else:
            bow["test_speed"] = read["test_speed"] * (1 + off("speed_error"))
            bow["test_mass"] = read["test_mass"] + off("mass_error")
        values = dict(finished(arrow_match.compute(**bow)).values)
        for each in RESULTS:
            inside[each] += abs(values[each] - nominal[each]) <= nominal[ERRORS[each]]
    for each in RESULTS:
        assert 0.93 <= inside[each] / samples <= 0.97, (each, inside[each] / samples)


def test_a_wood_that_is_only_known_by_name_scatters_as_its_species_does():
    # ASTM D2555: the modulus of single pieces of one species has a standard deviation of 19 %; read.
    values = dict(work_out(CALCULATOR, [("shaft_known", "species")], standing={}).outcome.values)
    assert values["spine_pounds_error"] == pytest.approx(NORMAL_95 * 0.19 * values["spine_pounds"])


@pytest.mark.parametrize(("pounds", "said"), [(48.0, False), (48.2, True), (49.6, True), (50.6, True),
                                             (52.0, True), (52.2, False)])
def test_a_shaft_near_the_edge_of_its_range_cannot_be_told(pounds, said):
    """The range runs from 45 to 50 lb; only the shaft is read badly, by 1 lb or so."""
    job = work_out(CALCULATOR, list({
        "new_weight": "47.5 lb", "draw_length": "28 in", "length": "28 in", "point_mass": "125 gr",
        "spine": f"{pounds} lb", "spine_error": "2 %", "weight_error": "0.02 lb", "draw_error": "0 in",
    }.items()), standing={})
    checks = {each.id: each for each in job.outcome.checks}
    assert ("spine-doubt" in checks) == said
    if said:
        assert checks["spine-doubt"].text.amounts[0].value == pytest.approx(
            abs(pounds - 50) * POUND_FORCE, rel=1e-6)
        assert checks["spine-doubt"].level == "watch"


def test_readings_without_any_error_make_no_range():
    still = ArrowRanges([Reading("The shaft's spine", amount("ratio", 0.0))])
    assert [row[-1] for row in ranges_table(still).rows] == [0.0]


def test_readings_stand_by_the_larger_of_what_they_make_of_the_ranges_of_match_and_speed():
    shaft, string = (Reading(of, amount("ratio", 0.01), **made) for of, made in (
        ("The shaft", {"spine": 3.0, "wanted": 3.5}), ("The string", {"speed": 2.0})))
    cup = Reading("The draw", amount("ratio", 0.01), spine=1.5, wanted=-1.5, speed=0.5)
    assert [row[0] for row in ranges_table(ArrowRanges([shaft, cup, string])).rows] == [
        "The draw", "The string", "The shaft"]
