"""Halving, and two equations at once: closed forms and a reference library."""

import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.numerics.roots import halved, solved

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
