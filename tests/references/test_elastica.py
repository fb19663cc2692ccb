"""Large bending of a single limb: published tables and elliptic integrals."""

import math

import pytest
from scipy.optimize import brentq
from scipy.special import ellipe, ellipeinc, ellipk, ellipkinc

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from tests.references.printed import printed


def cantilever(load, steps=None):
    """Return the tip's sideways and lengthwise movement and angle, for a load across a unit cantilever.

    A load that keeps its direction is a string line square to the limb; it must pass through the tip.
    """
    limb = Limb(1.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), steps)

    def gap(height):
        return limb.pull(load, math.pi / 2, (5.0, height)).gap

    height = brentq(gap, 0.05, 1.0, xtol=1e-14, rtol=1e-14)
    shape = limb.shape(load, math.pi / 2, (5.0, height))
    return shape.x[-1], 1.0 - shape.y[-1], shape.angle[-1]


def cantilever_by_elliptic_integrals(load):
    """Return the same by the classical solution, K. E. Bisshopp and D. C. Drucker, 1945: from memory,
    confirmed by calculation (its differential equation is solved by these integrals)."""
    root = math.sqrt(load)

    def lack(modulus_squared):
        start = math.asin(1 / math.sqrt(2 * modulus_squared))
        return ellipk(modulus_squared) - ellipkinc(start, modulus_squared) - root

    squared = brentq(lack, 0.5 + 1e-13, 1 - 1e-13, xtol=1e-15)
    start = math.asin(1 / math.sqrt(2 * squared))
    angle = math.asin(2 * squared - 1)
    sideways = 1 - 2 / root * (ellipe(squared) - ellipeinc(start, squared))
    lengthwise = 1 - math.sqrt(2 * math.sin(angle)) / root
    return sideways, lengthwise, angle


@pytest.mark.parametrize("load", [0.2, 0.5, 1, 2, 3, 5, 10])
def test_cantilever_against_elliptic_integrals(load):
    assert cantilever(load, 48) == pytest.approx(cantilever_by_elliptic_integrals(load), abs=1e-6)


@pytest.mark.parametrize("load", [0.2, 0.5, 1, 2, 3])
def test_cantilever_with_the_usual_steps(load):
    assert cantilever(load) == pytest.approx(cantilever_by_elliptic_integrals(load), abs=1e-6)


@pytest.mark.parametrize(
    ("load", "sideways", "lengthwise", "angle"),
    [
        # K. Mattiasson, Int. J. Numer. Methods Eng. 17 (1981) 145: from memory, confirmed by calculation.
        (1, "0.30172", "0.05643", "0.46135"),
        (2, "0.49346", "0.16064", "0.78175"),
        (5, "0.71379", "0.38763", "1.21537"),
        (10, "0.81061", "0.55500", "1.43029"),
    ],
)
def test_cantilever_as_tabulated(load, sideways, lengthwise, angle):
    found = cantilever(load, 48)
    assert found[0] == printed(sideways)
    assert found[1] == printed(lengthwise)
    assert found[2] == printed(angle)


def column(tip_angle):
    """Return the load, and how far along and aside the tip is, of a buckled cantilever column.

    P = K^2, x = 2 E / K - 1, y = 2 k / K, with the modulus k = sin(alpha / 2).
    """
    modulus = math.sin(math.radians(tip_angle) / 2)
    whole = ellipk(modulus**2)
    return whole**2, 2 * ellipe(modulus**2) / whole - 1, 2 * modulus / whole


@pytest.mark.parametrize("tip_angle", [20, 40, 60, 80, 100, 120, 140, 160, 176])
def test_buckled_column(tip_angle):
    # S. Timoshenko and J. Gere, Theory of Elastic Stability, 2nd ed., tabulate this: from memory; the
    # figures are worked out here from the integrals.
    load, along, aside = column(tip_angle)
    limb = Limb(1.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), 192)
    pull = limb.pull(load, 0.0, (aside, 0.0))
    assert pull.gap == pytest.approx(0.0, abs=1e-6)
    assert pull.length == pytest.approx(along, abs=1e-6)
    assert limb.shape(load, 0.0, (aside, 0.0)).angle[-1] == pytest.approx(math.radians(tip_angle), abs=1e-6)


@pytest.mark.parametrize("tip_angle", [20, 40, 60, 80, 100])
def test_a_braced_bow_without_a_grip_is_such_a_column(tip_angle):
    load, along, aside = column(tip_angle)
    limb = Limb(1.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), 96)
    braced = Bow(limb, limb).brace(aside)
    assert braced.tension == pytest.approx(load, rel=1e-6)
    assert braced.upper_length == pytest.approx(along, abs=1e-6)


def test_column_as_calculated_elsewhere():
    # The 40 degree row: a separate calculation by shooting that agreed with the integrals to 1e-11.
    limb = Limb(1.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), 96)
    braced = Bow(limb, limb).brace(0.4222403401)
    assert braced.tension == pytest.approx(2.6244839138, rel=1e-7)
    assert braced.upper_length == pytest.approx(0.8812035117, rel=1e-8)
