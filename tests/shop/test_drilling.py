import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop import drilling
from tests.sentences import whole

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
    ("attempt", "sentence"),
    [
        (lambda: drilling.cone_length(0.0, 118), "diameter must be positive, got 0.0 m"),
        (lambda: drilling.cone_length(math.inf, 118), "diameter must be a finite number, got inf m"),
        (lambda: drilling.cone_length(0.01, 0.0),
         "included_angle must be more than 0 and at most 180 deg, got 0.0"),
        (lambda: drilling.cone_length(0.01, 180.1),
         "included_angle must be more than 0 and at most 180 deg, got 180.1"),
        (lambda: drilling.cone_length(math.nan, 118), "diameter must be a finite number, got nan m"),
        (lambda: drilling.wall_left(0.0, 0.01, 0.0),
         "thickness must be positive, depth and error not negative, got 0.0 m, 0.01 m, 0.0 m"),
        (lambda: drilling.wall_left(0.02, -0.01, 0.0),
         "thickness must be positive, depth and error not negative, got 0.02 m, -0.01 m, 0.0 m"),
        (lambda: drilling.wall_left(0.02, 0.01, -0.001),
         "thickness must be positive, depth and error not negative, got 0.02 m, 0.01 m, -0.001 m"),
        (lambda: drilling.spacing_from_edges(0.02, 0.02),
         "inside must not be negative and must be less than outside, got 0.02 m and 0.02 m"),
        (lambda: drilling.spacing_from_edges(0.02, -0.001),
         "inside must not be negative and must be less than outside, got -0.001 m and 0.02 m"),
        (lambda: drilling.hole_from_edges(0.01, 0.02),
         "inside must not be negative and must be less than outside, got 0.02 m and 0.01 m"),
        (lambda: drilling.least_edge_distance(0.0, 0.01, 0.0),
         "diameter must be positive, length and row_spacing not negative, got 0.0 m, 0.01 m, 0.0 m"),
        (lambda: drilling.least_edge_distance(0.01, -0.01, 0.0),
         "diameter must be positive, length and row_spacing not negative, got 0.01 m, -0.01 m, 0.0 m"),
    ],
)
def test_impossible_holes_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()


@given(st.floats(0, 0.05), st.floats(0.001, 0.05), st.floats(0, 0.005), st.floats(0, 0.005))
def test_a_screw_at_its_longest_just_stays_off_the_bottom(held, depth, error, more):
    longest = drilling.longest_screw(held, depth, error)
    assert longest - held == pytest.approx(depth - error, abs=1e-12)
    assert drilling.longest_screw(held, depth, error + more) <= longest
    assert drilling.longest_screw(held + more, depth, error) >= longest


@pytest.mark.parametrize(("arguments", "said"), [
    ((-0.001, 0.01, 0), "0.01 m, -0.001 m, 0 m"),
    ((0, 0, 0), "0 m, 0 m, 0 m"),
    ((0, 0.01, -0.001), "0.01 m, 0 m, -0.001 m"),
    ((0, math.nan, 0), "nan m, 0 m, 0 m"),
])
def test_a_screw_without_a_hole_is_refused(arguments, said):
    with pytest.raises(ValueError, match=whole(
            f"depth must be positive, held and error not negative, got {said}")):
        drilling.longest_screw(*arguments)
