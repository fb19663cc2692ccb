import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.strings import standard_string_length, strands_for
from calc.tables import string_materials
from tests.sentences import whole


@given(st.floats(10, 700), st.floats(1, 30), st.floats(50, 1000), st.integers(2, 30))
def test_strands_are_even_enough_and_no_more(weight, factor, strength, fewest):
    strands = strands_for(weight, factor, strength, fewest)
    assert strands % 2 == 0
    assert strands >= fewest
    assert strands * strength >= weight * factor * (1 - 1e-9)
    assert strands - 2 < max(weight * factor / strength, fewest)


def test_an_exact_count_is_not_rounded_up():
    assert strands_for(100.0, 12.0, 100.0, 2) == 12
    assert strands_for(100.0, 12.0001, 100.0, 2) == 14


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: standard_string_length(0.07),
         "bow_length must be finite and more than 76 mm (3 in), got 70 mm (2 3/4 in)"),
        (lambda: standard_string_length(math.inf),
         "bow_length must be finite and more than 76 mm (3 in), got inf m"),
        (lambda: strands_for(0.0, 12, 200, 10),
         "draw_weight, factor and strand_strength must be positive, got 0.0 N, 12, 200 N"),
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
