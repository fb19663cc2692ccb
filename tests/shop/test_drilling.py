import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop import drilling

SIZES = st.floats(0.0005, 0.05)
ANGLES = st.floats(20, 180)


@given(SIZES, ANGLES, st.floats(1.01, 4))
def test_a_point_grows_with_its_drill(diameter, angle, factor):
    """Dimension check: proportional to the diameter, whatever the angle."""
    assert drilling.cone_length(diameter * factor, angle) == pytest.approx(
        factor * drilling.cone_length(diameter, angle), rel=1e-9, abs=1e-15)


@given(SIZES, ANGLES, st.floats(0.1, 10))
def test_a_flatter_point_is_shorter(diameter, angle, less):
    assert drilling.cone_length(diameter, max(10, angle - less)) > drilling.cone_length(diameter, angle)


@given(st.floats(0.005, 0.1), st.floats(0, 0.1), st.floats(0, 0.01), st.floats(0, 0.01))
def test_more_error_never_leaves_more_wall(thickness, depth, error, more):
    assert (drilling.wall_left(thickness, depth, error + more)
            <= drilling.wall_left(thickness, depth, error))


@given(st.floats(0.001, 0.02), st.floats(0.001, 0.02), st.floats(0.03, 0.2))
def test_edges_give_back_spacing_and_size(one, other, spacing):
    """Round trip, for holes of unlike diameters."""
    outside = spacing + one / 2 + other / 2
    inside = spacing - one / 2 - other / 2
    assert drilling.spacing_from_edges(outside, inside) == pytest.approx(spacing, rel=1e-9)
    assert drilling.hole_from_edges(outside, inside) == pytest.approx((one + other) / 2, rel=1e-6)


@pytest.mark.parametrize(
    "attempt",
    [
        lambda: drilling.cone_length(0.0, 118),
        lambda: drilling.cone_length(math.inf, 118),
        lambda: drilling.cone_length(0.01, 0.0),
        lambda: drilling.cone_length(0.01, 180.1),
        lambda: drilling.cone_length(math.nan, 118),
        lambda: drilling.wall_left(0.0, 0.01, 0.0),
        lambda: drilling.wall_left(0.02, -0.01, 0.0),
        lambda: drilling.wall_left(0.02, 0.01, -0.001),
        lambda: drilling.spacing_from_edges(0.02, 0.02),
        lambda: drilling.spacing_from_edges(0.02, -0.001),
        lambda: drilling.hole_from_edges(0.01, 0.02),
        lambda: drilling.least_edge_distance(0.0, 0.01, 0.0),
        lambda: drilling.least_edge_distance(0.01, -0.01, 0.0),
    ],
)
def test_impossible_holes_are_refused(attempt):
    with pytest.raises(ValueError, match="must"):
        attempt()
