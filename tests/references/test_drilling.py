"""Drill points, edge distances and blind holes against published values."""

import math

import pytest
from scipy import optimize

from calc.quantities import INCH
from calc.shop import drilling
from tests.references.printed import printed


@pytest.mark.parametrize(
    ("angle", "share"),
    [
        (90, "0.50000"), (118, "0.30043"), (130, "0.23315"), (135, "0.20711"), (140, "0.18199"),  # geometry
        (90, "0.500"), (118, "0.300"), (135, "0.207"),  # a calculator of drill points prints these, read
    ],
)
def test_length_of_the_point_over_diameter(angle, share):
    assert drilling.cone_length(0.010, angle) / 0.010 == printed(share)


@pytest.mark.parametrize(
    ("inches", "angle", "length"),
    [
        (0.104, 118, "0.031"),  # a machinists' thread, #37 drill: read
        (13 / 32, 135, "0.0841"),  # the same, .203 x tan 22.5: read
        (1 / 2, 118, "0.150"),  # the same: read
    ],
)
def test_worked_points(inches, angle, length):
    assert drilling.cone_length(inches * INCH, angle) / INCH == printed(length)


def test_a_three_eighths_drill_one_inch_deep():
    # Arithmetic from the formula: 1.1127 in to the point at 118 degrees, 1.0777 in at 135.
    for angle, depth in ((118, "1.1127"), (135, "1.0777")):
        assert 1 + drilling.cone_length(3 / 8 * INCH, angle) / INCH == printed(depth)


def test_the_rule_of_three_tenths():
    # Shop rule, common practice: 0.14 % below the cone at 118 degrees.
    assert abs(0.3 - drilling.cone_length(1.0, 118)) < 0.0005


def test_a_flat_bottom_has_no_point():
    assert drilling.cone_length(0.01, 180) == 0  # limit case
    assert drilling.cone_length(0.01, 179.999) == pytest.approx(0, abs=1e-7)


def test_the_cone_by_root_finding():
    # SciPy: the length whose half angle opens to the radius.
    found = optimize.brentq(lambda length: math.atan2(0.5, length) - math.radians(59), 1e-6, 10)
    assert drilling.cone_length(1.0, 118) == pytest.approx(found, rel=1e-12)


def test_edge_distance_of_timber_design():
    # NDS 2005, table 11.5.1A, read second-hand: 1.5 D to the middle for l/D up to 6.
    d = 3 / 8 * INCH
    assert drilling.least_edge_distance(d, 6 * d, 10.0) / INCH == printed("0.5625")
    assert drilling.least_edge_distance(d, 6 * d, 10.0) - d / 2 == pytest.approx(d, rel=1e-12)  # wall 1.0 D


def test_edge_distance_of_a_slender_fastener():
    # The same table: beyond 6 D the larger of 1.5 D and half the spacing of rows.
    d = 3 / 8 * INCH
    assert drilling.least_edge_distance(d, 6.01 * d, 4 * d) == pytest.approx(2 * d, rel=1e-12)
    assert drilling.least_edge_distance(d, 6.01 * d, 2 * d) == pytest.approx(1.5 * d, rel=1e-12)


def test_a_hole_in_a_one_inch_member_fails_the_edge_wall():
    # Arithmetic: W 25.4 mm, D 9.525 mm leave 7.94 mm a side, 0.83 D, where the table asks for 1.0 D.
    assert drilling.least_edge_distance(0.009525, 0.03, 0.0) > 0.0254 / 2


def test_accessory_holes_by_their_edges():
    # 1 5/16 in (33.34 mm) centre to centre, from memory: 3/8 in holes measure 1 11/16 over, 15/16 between.
    spacing = drilling.spacing_from_edges(27 / 16 * INCH, 15 / 16 * INCH)
    assert spacing == pytest.approx(21 / 16 * INCH, rel=1e-12)
    assert spacing * 1000 == printed("33.34")
    assert drilling.hole_from_edges(27 / 16 * INCH, 15 / 16 * INCH) == pytest.approx(3 / 8 * INCH, rel=1e-12)
