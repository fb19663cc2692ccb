"""A section getting thinner."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.mechanics.bow.laminate import Layer, flexural_rigidity, sanded
from calc.mechanics.bow.thinning import (
    Build,
    Station,
    most_removal,
    section_at,
    section_rates,
    section_rigidity,
)
from tests.sentences import whole

BUILD = Build(0.00114, 0.00114, 39e9, 12.6e9)
STATIONS = (Station(0.05, 0.044, 0.0104), Station(0.20, 0.041, 0.0095), Station(0.35, 0.033, 0.0086),
            Station(0.50, 0.020, 0.0079))

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


@given(st.floats(0, 6e-4), st.floats(1e-7, 1e-4), share)
def test_more_removal_never_raises_stiffness(removal, more, belly_share):
    station = STATIONS[1]
    assert section_rigidity(station, BUILD, removal + more, belly_share) < section_rigidity(
        station, BUILD, removal, belly_share)


def test_one_material_follows_the_cube_rule():
    """Width once, thickness cubed: Klopsteg, Getting the most out of the bowstave, part 2 (read)."""
    solid = Build(0.001, 0.001, 12e9, 12e9)
    whole = section_rigidity(Station(0.1, 0.04, 0.01), solid, 0, 0.5)
    assert section_rigidity(Station(0.1, 0.04, 0.01), solid, 0.0005, 0.5) / whole == pytest.approx(0.95**3)
    assert section_rigidity(Station(0.1, 0.044, 0.01), solid, 0, 0.5) / whole == pytest.approx(1.1)


def test_taking_glass_costs_more_than_the_cube_rule_says():
    station = STATIONS[1]
    left = section_rigidity(station, BUILD, 3e-4, 0.5) / section_rigidity(station, BUILD, 0, 0.5)
    assert left < (1 - 3e-4 / station.thickness) ** 3


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
    ("call", "sentence"),
    [
        (lambda: section_rigidity(STATIONS[0], BUILD, 0.003, 0.5),
         "removal at the back must be less than the outer layer's 0.00114 m, got 0.0015 m"),
        (lambda: section_rigidity(Station(0, 0.04, 0.002), BUILD, 0.0, 0.5),
         "the section must be thicker than its glass, got 0.002 m"),
    ],
)
def test_what_cannot_be_is_refused(call, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        call()


@given(thickness, glass, glass, st.floats(0, 0.0004), share)
def test_section_rates_are_the_limits_of_differences(total, back, belly, removal, belly_share):
    """Central differences of the stiffness itself, by each of the measures in turn."""
    station, build = Station(0.1, 0.03, total), Build(back, belly, 39e9, 12.6e9)
    rates = section_rates(station, build, removal, belly_share)
    size = 1e-7

    def seen(changed, step):
        higher, lower = [math.log(section_rigidity(*changed(way * step), belly_share)) for way in (1, -1)]
        return (higher - lower) / (2 * step)

    assert rates.thickness == pytest.approx(
        seen(lambda more: (Station(0.1, 0.03, total + more), build, removal), size), rel=1e-5)
    assert rates.back == pytest.approx(
        seen(lambda more: (station, Build(back + more, belly, 39e9, 12.6e9), removal), size), rel=1e-4,
        abs=1e-3)
    assert rates.belly == pytest.approx(
        seen(lambda more: (station, Build(back, belly + more, 39e9, 12.6e9), removal), size), rel=1e-4,
        abs=1e-3)
    assert rates.core == pytest.approx(
        seen(lambda more: (station, Build(back, belly, 39e9, 12.6e9 * (1 + more)), removal), 1e-5), rel=1e-5)
    assert rates.removal == pytest.approx(
        seen(lambda more: (station, build, removal + 2 * size + more), size), rel=1e-3)
