"""Fittings and their holes, against each other and against drills and threads that stand elsewhere."""

import pytest

from calc.quantities import INCH
from calc.tables.bench_values import FITTINGS
from calc.tables.drills import INCH_DRILLS, find

BY_NAME = {each.name: each for each in FITTINGS}
FRACTIONS = [each.diameter for each in INCH_DRILLS if each.series == "fraction"]


@pytest.mark.parametrize("name", ["Stabiliser bushing", "Plunger or rest bushing", "Cushion plunger, barrel"])
def test_a_plain_barrel_has_a_hole_of_its_own_size_drilled_by_a_fraction(name):
    # common practice: glued in, a barrel needs no more room than a fraction drill leaves
    fitting = BY_NAME[name]
    assert fitting.hole == fitting.outside
    assert min(abs(fitting.hole - each) for each in FRACTIONS) < 1e-9


def test_what_is_screwed_in_finds_wood_between_the_two_drills_of_its_note():
    fitting = BY_NAME["Accessory insert, screwed in"]
    assert find("P").diameter <= fitting.hole <= find("Q").diameter
    assert fitting.outside == pytest.approx(3 / 8 * INCH)


def test_what_is_pressed_in_has_a_hole_a_few_thousandths_small():
    # common practice: 2 to 5 thousandths of an inch
    fitting = BY_NAME["Accessory insert, pressed"]
    assert 0.002 * INCH <= fitting.outside - fitting.hole <= 0.005 * INCH


def test_a_wood_screw_is_of_its_number_and_its_lead_hole_smaller_than_its_root():
    # a number's diameter is 0.060 in and 0.013 in more for each number (ASME B18.6.1, from memory); the root
    # is some two thirds of it, and a lead hole in hard wood nine tenths of the root (common practice)
    fitting = BY_NAME["Wood screw for a rest or plate"]
    assert fitting.outside == pytest.approx((0.060 + 6 * 0.013) * INCH)
    assert fitting.hole == pytest.approx(0.9 * 2 / 3 * fitting.outside, rel=0.02)
