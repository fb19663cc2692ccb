"""A limb getting thinner."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from calc.mechanics.laminate import Layer, flexural_rigidity, sanded
from calc.mechanics.thinning import (
    Build,
    Station,
    most_removal,
    removal_for,
    section_at,
    section_rigidity,
    sections_along,
    tip_stiffness,
)

BUILD = Build(0.00114, 0.00114, 39e9, 12.6e9)
STATIONS = (Station(0.05, 0.044, 0.0104), Station(0.20, 0.041, 0.0095), Station(0.35, 0.033, 0.0086),
            Station(0.50, 0.020, 0.0079))
LENGTH = 0.533
SECTIONS = sections_along(STATIONS, LENGTH)

thickness = st.floats(0.004, 0.02)
glass = st.floats(0.0005, 0.0015)
share = st.floats(0, 1)


@given(thickness, glass, glass, st.floats(0, 0.0004), share)
def test_section_equals_the_laminate_of_its_layers(total, back, belly, removal, belly_share):
    """Two routes to one stiffness: the written-out sandwich and the general laminate."""
    layers = (Layer(back, 39e9), Layer(total - back - belly, 12.6e9), Layer(belly, 39e9))
    left = sanded(layers, (1 - belly_share) * removal, belly_share * removal)
    assert section_rigidity(Station(0, 0.04, total), Build(back, belly, 39e9, 12.6e9), removal, belly_share
                            ) == pytest.approx(flexural_rigidity(0.04, left), rel=1e-9)


def test_a_uniform_limb_is_the_textbook_cantilever():
    """Stiffness 3 E I / L^3 (beam theory); midpoint slices leave 1/(4 n^2) of it."""
    station = Station(0.1, 0.04, 0.01)
    expected = 3 * section_rigidity(station, BUILD, 0, 0.5) / 0.5**3
    assert tip_stiffness(sections_along((station,), 0.5), BUILD) == pytest.approx(expected, rel=1.1e-3)


def test_share_left_agrees_with_adaptive_quadrature():
    def compliance(removal):
        def integrand(s):
            return (LENGTH - s) ** 2 / section_rigidity(section_at(STATIONS, s), BUILD, removal, 0.6)

        return quad(integrand, 0, LENGTH, points=[each.position for each in STATIONS])[0]

    ours = tip_stiffness(SECTIONS, BUILD, 4e-4, 0.6) / tip_stiffness(SECTIONS, BUILD)
    assert ours == pytest.approx(compliance(0) / compliance(4e-4), rel=1e-4)


@given(st.floats(0, 6e-4), st.floats(1e-7, 1e-4), share)
def test_more_removal_never_raises_stiffness(removal, more, belly_share):
    assert tip_stiffness(SECTIONS, BUILD, removal + more, belly_share) < tip_stiffness(
        SECTIONS, BUILD, removal, belly_share)


@given(st.floats(0.75, 0.999), st.floats(0.3, 0.7))
def test_solving_then_predicting_returns_the_share(wanted, belly_share):
    removal = removal_for(wanted, SECTIONS, BUILD, belly_share, 9e-4)
    left = tip_stiffness(SECTIONS, BUILD, removal, belly_share) / tip_stiffness(SECTIONS, BUILD)
    assert left == pytest.approx(wanted, rel=2e-9)
    reference = brentq(lambda d: tip_stiffness(SECTIONS, BUILD, d, belly_share)
                       / tip_stiffness(SECTIONS, BUILD) - wanted, 0, 9e-4, xtol=1e-15)
    assert removal == pytest.approx(reference, abs=1e-10)


def test_one_material_follows_the_cube_rule():
    """Width once, thickness cubed: Klopsteg, Getting the most out of the bowstave, part 2 (read)."""
    solid = Build(0.001, 0.001, 12e9, 12e9)
    sections = sections_along((Station(0.1, 0.04, 0.01),), 0.5)
    thinner = tip_stiffness(sections, solid, 0.0005, 0.5) / tip_stiffness(sections, solid)
    assert thinner == pytest.approx(0.95**3, rel=1e-12)
    wider = tip_stiffness(sections_along((Station(0.1, 0.044, 0.01),), 0.5), solid)
    assert wider / tip_stiffness(sections, solid) == pytest.approx(1.1, rel=1e-12)


def test_taking_glass_costs_more_than_the_cube_rule_says():
    left = tip_stiffness(SECTIONS, BUILD, 3e-4, 0.5) / tip_stiffness(SECTIONS, BUILD)
    mean = np.mean([each.thickness for each in SECTIONS])
    assert left < (1 - 3e-4 / mean) ** 3


@pytest.mark.parametrize(
    ("belly_share", "expected"),
    [(0.5, 0.0008), (1.0, 0.0004), (0.0, 0.0004), (0.8, 0.0005)],  # the belly's 0.0004 / 0.8 comes first
)
def test_the_thinner_margin_limits_the_removal(belly_share, expected):
    build = Build(0.001, 0.001, 39e9, 12e9)
    assert most_removal(build, belly_share, 0.0006, 0.0006) == pytest.approx(expected)
    assert most_removal(build, belly_share, 0.002, 0.002) == 0


def test_between_stations_sections_lie_on_straight_lines():
    assert section_at(STATIONS, 0.125).thickness == pytest.approx((0.0104 + 0.0095) / 2)
    assert section_at(STATIONS, 0.0).thickness == 0.0104
    assert section_at(STATIONS, 0.53).width == 0.020


@pytest.mark.parametrize(
    "call",
    [
        lambda: removal_for(1.01, SECTIONS, BUILD, 0.5, 5e-4),
        lambda: removal_for(0.5, SECTIONS, BUILD, 0.5, 5e-4),
        lambda: section_rigidity(STATIONS[0], BUILD, 0.003, 0.5),
        lambda: section_rigidity(Station(0, 0.04, 0.002), BUILD, 0.0, 0.5),
        lambda: tip_stiffness(SECTIONS, BUILD, -1e-4),
        lambda: sections_along(STATIONS, 0.0),
    ],
)
def test_what_cannot_be_is_refused(call):
    with pytest.raises(ValueError, match=r"must|cannot"):
        call()
