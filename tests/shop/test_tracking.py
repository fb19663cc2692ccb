import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.tracking import groove_angle, lean
from tests.sentences import whole

OFFSETS = st.floats(-0.03, 0.03)


def test_known_triangles():
    """Geometry: 45 degrees where offset and height are equal; 1/8 in at 2 in is 3.576 degrees."""
    assert lean(0.01, 0.01) == pytest.approx(45)
    assert lean(1 / 8, 2) == pytest.approx(math.degrees(math.atan(1 / 16)), rel=1e-12)
    assert groove_angle(0.0, 0.01, 0.01) == pytest.approx(45)


@given(OFFSETS, st.floats(0.005, 0.3))
def test_left_and_right_mirror(offset, height):
    assert lean(-offset, height) == pytest.approx(-lean(offset, height), abs=1e-12)


@given(OFFSETS, OFFSETS, st.floats(0.005, 0.3))
def test_a_groove_read_from_its_other_end_turns_round(outer, inner, length):
    assert groove_angle(inner, outer, length) == pytest.approx(-groove_angle(outer, inner, length), abs=1e-12)


@given(st.floats(-20, 20), st.floats(-20, 20), st.floats(0.02, 0.1), st.floats(0.1, 0.25))
def test_a_limb_turned_by_so_much_shows_it(twist, at_riser, height_tip, height_riser):
    """Build the offsets of a limb whose face leans by known angles, and read them back."""
    offset_riser = height_riser * math.tan(math.radians(at_riser))
    offset_tip = height_tip * math.tan(math.radians(at_riser + twist))
    found = lean(offset_tip, height_tip) - lean(offset_riser, height_riser)
    assert found == pytest.approx(twist, abs=1e-9)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: lean(0.01, 0.0), "height must be positive, got 0.0 m"),
        (lambda: lean(0.01, math.inf), "height must be a finite number, got inf m"),
        (lambda: groove_angle(0, 0, -0.01), "length must be positive, got -0.01 m"),
    ],
)
def test_no_height_no_angle(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
