"""The unstrung shape from offsets off a straight edge."""

import math

import pytest

from calc.mechanics.bow.unstrung import unstrung_profile
from tests.sentences import whole


@pytest.mark.parametrize("radius", [1.5, 0.8, -0.8])
def test_a_circle_keeps_its_angles(radius):
    """Closed form: on an arc the tangent turns in proportion to the arc."""
    points = tuple((y, radius - math.copysign(math.sqrt(radius**2 - y**2), radius))
                   for y in (0.04 * i for i in range(1, 13)))
    profile = unstrung_profile(points, 0.45)
    for i, angle in enumerate(profile.angles[1:-1], 1):
        assert angle == pytest.approx(0.45 * i / 20 / radius, abs=2e-3)


def test_a_straight_limb_at_an_angle_stays_straight():
    profile = unstrung_profile(((0.1, 0.02), (0.3, 0.06)), 0.5)
    assert profile.angles == pytest.approx([math.atan(0.2)] * 21)


def test_beyond_the_last_point_it_goes_on_straight():
    profile = unstrung_profile(((0.1, 0.0), (0.2, -0.02)), 0.5)
    assert profile.angles[10:] == pytest.approx([profile.angles[-1]] * 11)


@pytest.mark.parametrize(
    ("points", "length", "sentence"),
    [
        ((), 0.5, "the profile must have one point or more besides the fadeout"),
        (((0.2, 0.0), (0.1, 0.0)), 0.5,
         "the profile must rise along the straight edge, got 0.1 m after 0.2 m"),
        (((0.0, 0.0),), 0.5, "the profile must rise along the straight edge, got 0.0 m after 0.0 m"),
        (((0.1, 0.0),), 0.0, "limb length must be positive, got 0.0 m"),
    ],
)
def test_what_is_no_profile_is_refused(points, length, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        unstrung_profile(points, length)
