import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.strings import (
    serving_thread_length,
    standard_string_length,
    strands_for,
    twist_take_up,
)
from calc.tables import string_materials
from tests.sentences import whole


@given(st.floats(10, 700), st.floats(1, 30), st.floats(50, 1000), st.integers(2, 30))
def test_strands_are_even_enough_and_no_more(weight, factor, strength, fewest):
    strands = strands_for(weight, factor, strength, fewest)
    assert strands % 2 == 0
    assert strands >= fewest
    assert strands * strength >= weight * factor * (1 - 1e-9)
    assert strands - 2 < max(weight * factor / strength, fewest)


@given(st.floats(10, 700), st.integers(2, 30), st.integers(1, 4))
def test_bundles_are_alike(weight, fewest, bundles):
    strands = strands_for(weight, 12.0, 220.0, fewest, bundles)
    assert strands % bundles == 0
    assert strands - bundles < max(weight * 12.0 / 220.0, fewest) <= strands * (1 + 1e-9)


def test_twist_by_adding_up_rings_of_helices():
    # the same mean by a sum over a thousand rings of the section, worked out apart from calc
    length, diameter, pitch = 1.5, 0.0023, 0.038
    radii = [(index + 0.5) / 1000 * diameter / 2 for index in range(1000)]
    mean = (sum(r * math.hypot(1, 2 * math.pi * r / pitch) for r in radii) / sum(radii))
    assert twist_take_up(length, diameter, pitch) == pytest.approx(length * (mean - 1), rel=1e-4)


def test_a_loose_twist_takes_up_hardly_anything():
    assert twist_take_up(1.5, 0.0023, 1e6) == pytest.approx(0, abs=1e-9)
    # k^2 / 4 for small k
    assert twist_take_up(1.0, 0.002, math.pi * 0.002 / 1e-4) == pytest.approx(1e-4**2 / 4)


def test_serving_thread_is_its_turns_round_the_string():
    # 100 turns of 0.5 mm thread over 50 mm of a string of 2.5 mm: each pi x 3 mm, by hand
    assert serving_thread_length(0.050, 0.0025, 0.0005) == pytest.approx(100 * math.pi * 0.003)


def test_an_exact_count_is_not_rounded_up():
    assert strands_for(100.0, 12.0, 100.0, 2) == 12
    assert strands_for(100.0, 12.0001, 100.0, 2) == 14


@pytest.mark.parametrize("wrong", [0.0, -1.0, math.inf, math.nan])
@pytest.mark.parametrize("place", range(3))
def test_strands_want_three_figures_that_are_positive_and_finite(place, wrong):
    figures = [200.0, 12.0, 220.0]
    figures[place] = wrong
    weight, factor, strength = figures
    with pytest.raises(ValueError, match=whole("draw_weight, factor and strand_strength must be positive, "
                                               f"got {weight} N, {factor}, {strength} N")):
        strands_for(weight, factor, strength, 2)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: standard_string_length(0.07),
         "bow_length must be finite and more than 76 mm (3 in), got 70 mm (2 3/4 in)"),
        (lambda: standard_string_length(math.inf),
         "bow_length must be finite and more than 76 mm (3 in), got inf m"),
        (lambda: strands_for(0.0, 12, 200, 10),
         "draw_weight, factor and strand_strength must be positive, got 0.0 N, 12, 200 N"),
        (lambda: strands_for(200, 12, 200, 10, 0), "bundles must be 1 or more, got 0"),
        (lambda: twist_take_up(-1.0, 1.0, 1.0), "length must not be negative, got -1.0 m"),
        (lambda: twist_take_up(1.0, 0.0, 1.0), "diameter must be positive, got 0.0 m"),
        (lambda: twist_take_up(1.0, 1.0, 0.0), "pitch must be positive, got 0.0 m"),
        (lambda: serving_thread_length(-1.0, 1.0, 1.0), "served must not be negative, got -1.0 m"),
        (lambda: serving_thread_length(1.0, 0.0, 1.0), "string diameter must be positive, got 0.0 m"),
        (lambda: serving_thread_length(1.0, 1.0, 0.0), "thread diameter must be positive, got 0.0 m"),
        (lambda: strands_for(200, 0, 200, 10),
         "draw_weight, factor and strand_strength must be positive, got 200 N, 0, 200 N"),
        (lambda: strands_for(200, 12, math.nan, 10),
         "draw_weight, factor and strand_strength must be positive, got 200 N, 12, nan N"),
    ],
)
def test_impossible_strings_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()


def test_unknown_material():
    with pytest.raises(ValueError, match=whole("no string material is called gut")):
        string_materials.find("gut")
