"""The curve through points of a plane, beside a reference library's cubics."""

import math

import pytest
from scipy.interpolate import CubicSpline

from calc.numerics.plane_curve import angles_along, curve_through

POINTS = [(0.0, 0.0), (0.02, 0.2), (0.03, 0.35), (-0.01, 0.45), (-0.1, 0.52), (-0.13, 0.53)]


@pytest.mark.parametrize("count", [3, 4, 5, 6])
def test_its_pieces_are_those_of_the_library_with_the_same_ends(count):
    curve = curve_through(POINTS[:count])
    ends = ((2, curve.bends[0]), (2, curve.bends[-1]))
    reference = CubicSpline(curve.knots, curve.points, bc_type=ends)
    for cell in range(count - 1):
        for part in (0.0, 0.4, 1.0):
            into = part * (curve.knots[cell + 1] - curve.knots[cell])
            there = reference(curve.knots[cell] + into, 1)
            assert curve.direction(cell, into) == pytest.approx(tuple(there), abs=1e-9)
            place = reference(curve.knots[cell] + into)
            assert curve.place(cell, part) == pytest.approx(tuple(place), abs=1e-9)
    assert curve.bends[0] == curve.bends[1]
    thirds = [(curve.bends[i + 1][0] - curve.bends[i][0]) / (curve.knots[i + 1] - curve.knots[i])
              for i in (count - 3, count - 2)]
    assert thirds[0] == pytest.approx(thirds[1], abs=1e-6)


def test_its_parameter_is_its_length():
    curve = curve_through(POINTS)
    for cell in range(len(POINTS) - 1):
        for part in (0.1, 0.5, 0.9):
            size = math.hypot(*curve.direction(cell, part * (curve.knots[cell + 1] - curve.knots[cell])))
            assert size == pytest.approx(1.0, abs=0.05)


def test_two_points_make_a_straight_line():
    line = curve_through([(0.0, 0.0), (0.1, 0.1)])
    assert angles_along(line, 1.0, 5, 3) == pytest.approx([math.pi / 4] * 5)


def test_beyond_the_last_point_it_turns_on_at_its_last_curvature():
    curve = curve_through(POINTS)
    angles = angles_along(curve, 2.0 * curve.knots[-1], 5, 200)
    turn = curve.curvature_at_end() * curve.knots[-1] / 2
    assert [angles[3] - angles[2], angles[4] - angles[3]] == pytest.approx([turn, turn], rel=2e-2)
