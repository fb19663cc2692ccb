"""Tiller: the rules of practice, and the estimate's own consistency."""

import random
from copy import copy

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc.answer import work_out
from calc.bows.measured import (
    TYPICAL_LIMB,
    MeasuredBow,
    family_profile,
    family_throat,
)
from calc.calculators import tiller
from calc.calculators.tiller import CALCULATOR
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.thinning import Build, Station
from calc.outcome import say
from calc.quantities import parse

INCH = 0.0254
POUND_FORCE = 4.4482216152605


SPLIT = {"upper": "7 3/16 in", "lower": "7 7/16 in", "hold": "split", "draw_weight": "50 lb",
         "bow_length": "62 in", "riser_length": "17 in", "brace_height": "8 in"}
"""A bow shot split finger, for the bounds written below; a test changes what it is about."""


def results(**typed):
    job = work_out(CALCULATOR, list({**SPLIT, **typed}.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


@pytest.mark.parametrize(
    ("hold", "low", "high"),
    [
        ("split", 1 / 8, 1 / 4),  # common practice: upper larger by 1/8 to 1/4 in
        ("under", 0, 1 / 8),  # common practice: three fingers under, 0 to 1/8 in
    ],
)
def test_target_bands(hold, low, high):
    values, _ = results(hold=hold)
    assert values["target_low"] == pytest.approx(low * INCH)
    assert values["target_high"] == pytest.approx(high * INCH)


@pytest.mark.parametrize(
    ("upper", "lower", "stiff"),
    [
        # common practice: the limb with the smaller distance is the stiffer
        ("7 3/16", "7 9/16", "upper"), ("7 9/16", "7 3/16", "lower"), ("7 1/4", "7 1/4", "neither"),
    ],
)
def test_the_smaller_distance_is_the_stiffer_limb(upper, lower, stiff):
    values, _ = results(upper=upper, lower=lower)
    assert values["stiff_limb"] == stiff


@pytest.mark.parametrize(
    ("upper", "lower", "take_from"),
    [("7 3/16", "7 7/16", "upper"), ("7 7/16", "7 1/4", "neither"), ("7 9/16", "7 1/8", "lower"),
     ("7 1/4", "7 1/4", "upper")],  # equal is below the band of split finger
)
def test_material_comes_off_the_limb_that_is_stiff_for_the_target(upper, lower, take_from):
    values, _ = results(upper=upper, lower=lower)
    assert values["take_from"] == take_from


@pytest.mark.parametrize(
    ("lower", "level"),
    [("7 5/16", "ok"), ("7 7/8", "watch"), ("8", "stop")],  # common practice: 3/8 in is correctable
)
def test_how_far_out_is_too_far(lower, level):
    _, outcome = results(upper="7 1/2", lower=lower)
    assert levels(outcome)["band"] == level


@pytest.mark.parametrize(
    "typed",
    [{"upper": "8 in", "lower": "6 in"}, {"upper": "16 in", "lower": "2 in"}, {"brace_height": "3 in"},
     {"upper": "7 in", "lower": "7 13/32 in"}],
)
def test_a_stop_says_to_look_for_a_cause_and_what_to_take_only_in_the_table(typed):
    values, outcome = results(**typed)
    assert "stop" in levels(outcome).values()
    said = say(outcome.headline, "imperial")
    assert "Look for a cause first, and sand nothing" in said
    assert "%" not in said
    assert "lb" not in said
    assert "rb-mark" not in str(outcome.drawings[0].shapes)  # neither limb is pointed at
    (aims,) = outcome.tables
    middle = next(row for row in aims.rows if row[0].startswith("Middle"))
    assert middle[2] == (None if values["stiffness_change"] is None else -values["stiffness_change"])


def test_without_a_stop_the_headline_says_what_to_take():
    said = say(results(upper="7", lower="7 3/8")[1].headline, "imperial")
    assert "of its stiffness from the upper limb" in said


def test_in_the_band_nothing_is_taken():
    values, outcome = results(upper="7 7/16", lower="7 1/4")
    assert values["stiffness_change"] == 0
    assert values["weight_cost"] == 0
    assert "leave it" in say(outcome.headline, "imperial")


def test_a_bow_that_cannot_be_braced_names_its_field_in_both_units():
    typed = {"family": "reflex-deflex", "bow_length": "48 in", "riser_length": "17 in",
             "brace_height": "3 in"}
    (found,) = work_out(CALCULATOR, list({**SPLIT, **typed}.items())).problems
    assert found.field == "brace_height"
    assert "cannot be braced to 3 in (76.2 mm)" in found.message
    assert "at a brace height of 76 mm (3 in)" in found.message


def test_own_target_needs_its_ends_in_order():
    job = work_out(CALCULATOR, [("hold", "own"), ("own_low", "1/4 in"), ("own_high", "1/8 in")])
    assert job.problems[0].field == "own_high"


@pytest.mark.parametrize("family", ["recurve", "reflex-deflex", "straight"])
@pytest.mark.parametrize("thirty_seconds", [-16, -8, 16])
def test_taking_what_is_said_brings_the_computed_bow_to_the_middle_of_the_band(family, thirty_seconds):
    """The bow with that tiller, found by SciPy; then the limb loses what the page says, and is braced."""
    values, _ = results(upper=f"{7 * 32 + thirty_seconds}/32", lower="7", family=family)
    length, riser = 22.5 * INCH, 17 * INCH
    stations = tuple(Station(at * length, w, t) for at, w, t in TYPICAL_LIMB)
    limb = MeasuredBow(family_profile(family, length), (family_throat(family, length), riser / 2),
                    (stations, stations), Build(0.15, 0.15, 1.0, 1.0), None).limb(0)

    def tiller(upper, lower):
        braced = Bow(limb.stiffened(upper), limb.stiffened(lower)).brace(8 * INCH)
        return braced.tiller_at_fadeouts().difference

    lower = brentq(lambda factor: tiller(1.0, factor) - values["difference"], 0.7, 1.4)
    left = 1 + values["stiffness_change"]
    reached = tiller(left, lower) if values["take_from"] == "upper" else tiller(1.0, lower * left)
    assert reached == pytest.approx((values["target_low"] + values["target_high"]) / 2, abs=0.01 * INCH)


@pytest.mark.parametrize("family", ["recurve", "reflex-deflex", "straight"])
def test_half_of_the_weight_rests_on_each_limb(family):
    """Taking a share from one limb costs what the computed bow says, within a twentieth of it."""
    values, _ = results(upper="7", lower="7 3/8", family=family)
    length, riser = 22.5 * INCH, 17 * INCH
    stations = tuple(Station(at * length, w, t) for at, w, t in TYPICAL_LIMB)
    limb = MeasuredBow(family_profile(family, length), (family_throat(family, length), riser / 2),
                    (stations, stations), Build(0.15, 0.15, 1.0, 1.0), None).limb(0)

    def weight(upper):
        bow = Bow(limb.stiffened(upper), limb)
        bow.brace(8 * INCH)
        return bow.draw(26.25 * INCH).force

    lost = 1 - weight(1 + values["stiffness_change"]) / weight(1.0)
    assert values["weight_cost"] / (50 * POUND_FORCE) == pytest.approx(lost, rel=0.05)


@given(st.integers(-48, 48))
def test_swapping_the_limbs_swaps_the_answer(thirty_seconds):
    own = {"hold": "own", "own_low": "0", "own_high": "0"}
    one, _ = results(upper=f"{7 * 32 + thirty_seconds}/32", lower="7", **own)
    other, _ = results(upper="7", lower=f"{7 * 32 + thirty_seconds}/32", **own)
    swapped = {"upper": "lower", "lower": "upper", "neither": "neither"}
    assert one["difference"] == pytest.approx(-other["difference"], abs=1e-12)
    assert one["take_from"] == swapped[other["take_from"]]
    assert one["stiffness_change"] == pytest.approx(other["stiffness_change"], abs=1e-12)


def test_a_reading_over_the_riser_names_its_field_its_value_and_the_range():
    typed = [("measured", "string_end"), ("from_string_end", "24 in")]
    (found,) = work_out(CALCULATOR, typed).problems
    assert found.field == "from_string_end"
    assert "you gave 24 in" in found.message
    most = found.message.split(" to ")[1].split(" in ")[0]
    assert not work_out(CALCULATOR, [typed[0], ("from_string_end", most + " in")]).problems


def test_an_impossible_bow_is_refused_at_its_field():
    for typed, field in (
        ([("riser_length", "34 in"), ("bow_length", "50 in")], "riser_length"),
        ([("brace_height", "12 in"), ("bow_length", "50 in")], "brace_height"),
        ([("measured", "string_end"), ("from_string_end", "27 in")], "from_string_end"),
    ):
        assert [each.field for each in work_out(CALCULATOR, typed).problems] == [field]


def test_95_of_100_true_bows_lie_within_the_ranges():
    """A Monte Carlo of 2,000 bows of which the figures typed are a reading, each worked out exactly."""
    typed = {"upper": "7 5/8 in", "lower": "7 5/16 in", "hold": "under", "draw_weight": "53 lb"}
    told, outcome = results(**typed)
    chance, held = random.Random(3), {"difference": 0, "stiffness_change": 0, "weight_after": 0}
    for _ in range(2000):
        upper, weight = 7.625 + chance.gauss(0, 1 / 32), 53 + chance.gauss(0, 0.25)
        upper, weight = f"{upper:.6f} in", f"{weight:.6f} lb"
        true = tiller.compute(**{**standing_of(typed), "upper": parse(upper, "length"),
                                 "draw_weight": parse(weight, "force")})
        for name, value in true.values:
            if name in held:
                held[name] += abs(value - told[name]) <= told[name + "_error"]
    for name, count in held.items():
        assert 0.93 <= count / 2000 <= 0.97, name
    assert outcome.drawings[1].id == "causes"


def standing_of(typed):
    """Return what a calculation is made of, as `compute` is given it."""
    kept = {}

    def caught(**given):
        kept.update(given)
        return tiller.compute(**given)

    with_it = copy(CALCULATOR)
    with_it.compute = caught
    assert not work_out(with_it, list({**SPLIT, **typed}.items()), standing={}).problems
    return kept


@pytest.mark.parametrize(("error", "first"), [("1/8 in", "The tiller now"), ("1/32 in", "The weight now")])
def test_the_larger_cause_of_the_range_comes_first(error, first):
    _, outcome = results(upper="7 5/8 in", lower="7 5/16 in", hold="under", tiller_error=error)
    assert next(shape[2] for shape in outcome.drawings[1].shapes if shape[0] == "text") == first


def test_nothing_to_take_has_no_range():
    values, outcome = results(upper="7 3/8 in", lower="7 5/16 in", hold="under")
    assert (values["stiffness_change_error"], values["weight_after_error"]) == (None, None)
    assert len(outcome.drawings) == 1
    assert values["difference_error"] == pytest.approx(1.959964 / 32 * INCH)
