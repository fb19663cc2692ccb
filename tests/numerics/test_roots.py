"""Halving, a crossing, and two equations at once: closed forms and a reference library."""

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.numerics.roots import crossing, halved, solved
from tests.sentences import whole

numbers = st.floats(-1000, 1000)


def test_halving_ends_where_floats_do():
    assert halved(0.0, 2.0, lambda place: place * place < 2.0) == pytest.approx(math.sqrt(2.0), abs=5e-16)
    assert halved(3.0, 4.0, lambda place: math.sin(place) > 0.0) == pytest.approx(math.pi, abs=1e-15)
    assert halved(1.0, 1.0, lambda _: True) == 1.0


@given(numbers, numbers, numbers, numbers, numbers, numbers)
def test_two_equations_are_solved_as_numpy_solves_them(a, b, c, d, e, f):
    assume(abs(a * d - b * c) > 1e-3 * (abs(a * d) + abs(b * c) + 1.0))
    assert solved((a, b), (c, d), (e, f)) == pytest.approx(
        tuple(np.linalg.solve([[a, b], [c, d]], [e, f])), rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(("first", "second"), [
    ((1.0, 2.0), (2.0, 4.0)), ((0.0, 0.0), (1.0, 1.0)), ((math.nan, 1.0), (1.0, 1.0)),
])
def test_equations_that_say_the_same_have_no_answer(first, second):
    assert solved(first, second, (1.0, 1.0)) is None


@pytest.mark.parametrize(("ends", "value", "root"), [
    ((0.0, 2.0), lambda x: x**2 - 2.0, math.sqrt(2.0)),
    ((3.0, 4.0), math.sin, math.pi),
    ((0.0, 1.0), lambda x: math.exp(-20 * x) - 0.01, math.log(100.0) / 20),
    ((-1.0, 4.0), lambda x: 0.5 * x - 1.0, 2.0),
])
def test_a_crossing_is_where_the_value_comes_to_nothing(ends, value, root):
    asked = []

    def counted(x):
        asked.append(x)
        return value(x)

    found = crossing(ends, (value(ends[0]), value(ends[1])), counted, 1e-12)
    assert found == pytest.approx(root, rel=1e-9)
    assert len(asked) < 24
    assert all(ends[0] <= x <= ends[1] for x in asked)


def test_a_crossing_that_is_not_there_is_refused():
    with pytest.raises(ValueError, match=whole(
            "the value must change its sign over the stretch, got 1.0 and 2.0")):
        crossing((0.0, 1.0), (1.0, 2.0), lambda x: 1.0 + x, 1e-6)
    with pytest.raises(ValueError, match=whole("the value does not come down to 1e-06")):
        crossing((0.0, 1.0), (-1.0, 1.0), lambda x: -1.0 if x < 0.3 else 1.0, 1e-6, 12)
    assert crossing((2.0, 3.0), (0.0, 0.0), lambda _: 0.0, 1e-6) == 2.0
