"""The cubic through two values and two slopes, beside a reference library's."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import CubicHermiteSpline

from calc.numerics import cubic

numbers = st.floats(-100, 100)
parts = st.floats(0, 1)


@given(numbers, numbers, numbers, numbers, parts)
def test_value_slope_and_area_are_those_of_scipy(start, end, leave, arrive, part):
    curve = CubicHermiteSpline([0, 1], [start, end], [leave, arrive])
    near = {"rel": 1e-9, "abs": 1e-9}
    whole = float(curve.integrate(0, part))
    assert cubic.value(start, end, leave, arrive, part) == pytest.approx(float(curve(part)), **near)
    assert cubic.slope(end - start, leave, arrive, part) == pytest.approx(float(curve(part, 1)), **near)
    assert cubic.area(start, end, leave, arrive, part) == pytest.approx(whole, **near)


def test_a_straight_line_stays_one():
    assert cubic.value(2.0, 5.0, 3.0, 3.0, 0.25) == 2.75
    assert cubic.slope(3.0, 3.0, 3.0, 0.7) == pytest.approx(3.0, rel=1e-15)
    assert cubic.area(2.0, 5.0, 3.0, 3.0, 1.0) == pytest.approx(3.5, rel=1e-15)  # the trapezium
