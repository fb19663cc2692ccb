"""The unstrung shape through measured offsets, beside recurves that are known everywhere."""

import functools
import math
import random

import pytest

from calc.bows.measured import TYPICAL_LIMB
from calc.mechanics.bow.limb import Profile, laminated_limb
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tiller import tiller_by_stiffness
from calc.mechanics.bow.unstrung import measured_profile
from calc.quantities import INCH
from tests.mechanics.bow.measured_recurves import (
    EIGHT,
    EVEN,
    FIVE,
    LENGTH,
    RECURVES,
    known_shape,
    offsets,
)

ALLOWED = {FIVE: (0.021, 3.0), EIGHT: (0.009, 1.0), EVEN: (0.10, 12.0)}
"""How far tiller per stiffness [1] and the tip's angle [degrees] may be out, by where offsets are taken."""


def tiller_per_stiffness(profile: Profile) -> float:
    stations = tuple([Station(at * LENGTH, width, thickness) for at, width, thickness in TYPICAL_LIMB])
    limb = laminated_limb(profile, (0.03 * LENGTH, 9.5 * INCH), stations, Build(0.15, 0.15, 1.0, 1.0))
    return tiller_by_stiffness(limb, 8.25 * INCH, None).slope_at(0.0)


@functools.cache
def known(name):
    profile, rows = known_shape(name)
    return profile, rows, tiller_per_stiffness(profile)


@pytest.mark.parametrize("name", RECURVES)
def test_a_recurve_is_found_again_from_its_offsets(name):
    """Invented shapes; the truth is the shape that the offsets were taken from."""
    profile, rows, tiller = known(name)
    for places, (share, degrees) in ALLOWED.items():
        found = measured_profile(offsets(rows, places), LENGTH)
        assert tiller_per_stiffness(found) == pytest.approx(tiller, rel=share), len(places)
        tip = math.degrees(found.angles[-1] - profile.angles[-1])
        assert abs(tip) <= degrees, len(places)


@pytest.mark.parametrize("radius", [0.8, -0.35])
def test_a_circle_is_followed_and_carried_on(radius):
    """Closed form: on an arc the tangent turns in proportion to the arc."""
    points = tuple([(abs(radius) * math.sin(turn), radius * (1 - math.cos(turn)))
                    for turn in (0.1 * i for i in range(1, 10))])
    profile = measured_profile(points, 1.1 * abs(radius))
    for i, angle in enumerate(profile.angles):
        assert angle == pytest.approx(math.copysign(1.1 * i / 20, radius), abs=2e-3)


def test_a_straight_limb_at_an_angle_stays_straight():
    for points in (((0.1, 0.02),), ((0.1, 0.02), (0.3, 0.06)), ((0.1, 0.02), (0.3, 0.06), (0.4, 0.08))):
        assert measured_profile(points, 0.5).angles == pytest.approx([math.atan(0.2)] * 21)


def test_a_turned_limb_turns_as_a_whole():
    """Invariant: the straight edge is no part of the shape."""
    _, rows = known_shape("hook")
    turn = 0.05
    points = offsets(rows, FIVE)
    turned = tuple([(y * math.cos(turn) - x * math.sin(turn), x * math.cos(turn) + y * math.sin(turn))
                    for y, x in points])
    plain, moved = measured_profile(points, LENGTH), measured_profile(turned, LENGTH)
    assert [angle - turn for angle in moved.angles] == pytest.approx(plain.angles, abs=1e-9)


def test_any_offsets_that_rise_give_angles_that_are_numbers():
    chance = random.Random(1)
    for _ in range(200):
        places = sorted({round(chance.uniform(0.007, 0.57), 4) for _ in range(chance.randint(1, 8))})
        points = tuple([(y, chance.uniform(-1, 1) * (0.8 * y + INCH)) for y in places])
        assert all(math.isfinite(angle) for angle in measured_profile(points, LENGTH).angles)


@pytest.mark.parametrize(
    ("points", "length", "sentence"),
    [
        ((), 0.5, "the profile must have one point or more besides the fadeout"),
        (((0.2, 0.0), (0.1, 0.0)), 0.5,
         "the profile must rise along the straight edge, got 0.1 m after 0.2 m"),
        (((0.1, 0.0),), 0.0, "limb length must be positive, got 0.0 m"),
    ],
)
def test_what_is_no_profile_is_refused(points, length, sentence):
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        measured_profile(points, length)
