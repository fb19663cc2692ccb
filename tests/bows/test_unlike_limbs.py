"""The tiller that unlike shapes make, against an independent solution of the same bow, and its limits."""

import math

import numpy as np
import pytest
from scipy.integrate import cumulative_trapezoid

from calc.bows.measured import TYPICAL_LIMB
from calc.bows.unlike_limbs import BRACED, tiller_per_offset
from calc.pictures.shape import PLACES
from calc.quantities import INCH
from tests.references.independent_bow import IndependentBow
from tests.references.test_independent_bow import form

LENGTH, RISER = 22.5 * INCH, 19 * INCH
BASE = (0.0, RISER / 2)
PARTS = np.linspace(0.0, 1.0, 2001)


def stiffness(taper):
    """Return how a limb's stiffness goes along it, by beam theory: width times the cube of thickness."""
    places, widths, depths = zip(*taper, strict=True)
    return lambda part: 3e2 * np.interp(part, places, widths) * np.interp(part, places, depths) ** 3


def recurve(recurved, deflex=-0.12, start=0.06, taper=TYPICAL_LIMB):
    return form(LENGTH, BASE, start, deflex, recurved, 1.0, 1.0)._replace(stiffness=stiffness(taper))


def offset_at(limb, along):
    angles = np.array([limb.angle(part) for part in PARTS])
    x, y = (LENGTH * cumulative_trapezoid(way(angles), PARTS, initial=0.0) for way in (np.sin, np.cos))
    return np.interp(along, y, x)


def tiller(upper, lower, braced=BRACED):
    """Return string to fadeout, upper less lower, of the bow that SciPy braces, the string on both tips."""
    height = braced * LENGTH
    bow = IndependentBow(upper, lower)
    guess = [1.0, 0.08, BASE[1] + 0.9 * LENGTH, 0.95 * LENGTH] * 2
    sides, _ = bow.brace(height, guess, (True, True))
    distances = []
    for side in sides:
        tilt = math.atan2(height - side.x, side.y)
        distances.append(height * math.cos(tilt) - BASE[1] * math.sin(tilt))
    return distances[0] - distances[1]


def by_shape(upper, lower):
    along = np.array(PLACES) * 0.94 * LENGTH
    uppers, lowers = offset_at(upper, along), offset_at(lower, along)
    shares = tiller_per_offset(list(zip(along, (uppers + lowers) / 2, strict=True)), LENGTH, RISER)
    return float(np.dot(shares, uppers - lowers))


UNLIKE = [
    (recurve(1.10), recurve(1.20)),
    (recurve(1.10, deflex=-0.10), recurve(1.10, deflex=-0.13)),
]


@pytest.mark.parametrize(("upper", "lower"), UNLIKE)
def test_it_is_that_of_an_independent_solution_of_the_bow(upper, lower):
    """Seven offsets a limb stand for its shape: 5 % (`measured_profile`), and 1/100 in."""
    expected = tiller(upper, lower)
    assert abs(expected) > INCH / 32
    assert by_shape(upper, lower) == pytest.approx(expected, rel=0.05, abs=INCH / 100)


def test_taper_and_brace_height_change_it_by_no_more_than_half():
    upper, lower = UNLIKE[0]
    told = by_shape(upper, lower)
    assert tiller(upper, lower, 0.28) == pytest.approx(told, rel=1 / 2)
    for depths in ((1.0, 0.92, 0.80, 0.72), (1.0, 0.97, 0.93, 0.90)):
        taper = [(place, width, depth) for (place, width, _), depth in
                 zip(TYPICAL_LIMB, depths, strict=True)]
        other = [limb._replace(stiffness=stiffness(taper)) for limb in (upper, lower)]
        assert tiller(*other) == pytest.approx(told, rel=1 / 2)


def test_limbs_exchanged_make_it_the_other_way_round():
    upper, lower = UNLIKE[0]
    assert by_shape(lower, upper) == pytest.approx(-by_shape(upper, lower))


@pytest.mark.parametrize(("lean", "why"), [(-0.2, "no steady balance was found"), (0.3, "hangs slack")])
def test_limbs_that_cannot_be_braced_are_refused(lean, why):
    """So far toward the back that the bow tips over, so far toward the belly that the string hangs slack."""
    with pytest.raises(ValueError, match=why):
        tiller_per_offset([(0.2, 0.2 * lean), (0.35, 0.5 * lean), (0.42, 0.8 * lean)], LENGTH, RISER)
