import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.strings import standard_string_length, strands_for
from calc.tables import string_materials


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
    "attempt",
    [
        lambda: standard_string_length(0.07),
        lambda: standard_string_length(math.inf),
        lambda: strands_for(0.0, 12, 200, 10),
        lambda: strands_for(200, 0, 200, 10),
        lambda: strands_for(200, 12, math.nan, 10),
    ],
)
def test_impossible_strings_are_refused(attempt):
    with pytest.raises(ValueError, match="must be"):
        attempt()


def test_unknown_material():
    with pytest.raises(ValueError, match="is called"):
        string_materials.find("gut")
