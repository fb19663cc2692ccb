"""Limbs from bench measures, and after sanding."""

import math

import pytest

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.laminate import Layer, flexural_rigidity, sanded
from calc.mechanics.bow.limb import Sanding, laminated_limb, limb_places, sanded_share
from calc.mechanics.bow.thinning import Build, Station, section_at
from calc.mechanics.bow.tuning import (
    Setup,
    calibrate,
    meet,
    read,
)
from calc.mechanics.bow.unstrung import unstrung_profile
from calc.quantities import INCH, POUND_FORCE, in_both
from tests.sentences import whole

BUILD = Build(back=0.04 * INCH, belly=0.04 * INCH, glass_modulus=40e9, core_modulus=12.6e9)
STATIONS = (
    Station(0.0, 1.625 * INCH, 0.36 * INCH),
    Station(12 * INCH, 1.4 * INCH, 0.31 * INCH),
    Station(24 * INCH, 0.6 * INCH, 0.26 * INCH),
)
PROFILE = unstrung_profile(
    tuple((23.5 / 8 * INCH * i, INCH * x)
          for i, x in enumerate((0.35, 0.6, 0.75, 0.7, 0.45, -0.1, -1.0, -2.4), 1)),
    23.9 * INCH,
)
SANDING = Sanding(2 * INCH, 20 * INCH, 2 * INCH, 0.6)


def test_stiffness_is_that_of_the_laminate():
    limb = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD)
    core = 0.36 * INCH - 0.08 * INCH
    layers = (Layer(0.04 * INCH, 40e9), Layer(core, 12.6e9), Layer(0.04 * INCH, 40e9))
    assert limb.stiffness[0] == pytest.approx(flexural_rigidity(1.625 * INCH, layers))


def test_sanding_stays_within_its_stretch_and_is_feathered():
    assert sanded_share(SANDING, 2 * INCH) == 0.0 == sanded_share(SANDING, 20 * INCH)
    assert sanded_share(SANDING, 3 * INCH) == pytest.approx(0.5)
    assert sanded_share(SANDING, 10 * INCH) == 1.0
    depth = 0.01 * INCH
    whole = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, 0.0)
    after = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, depth)
    assert after.stiffness[0] == whole.stiffness[0]
    assert after.stiffness[-1] == whole.stiffness[-1]
    # in the middle, by the laminate's own functions
    section = section_at(STATIONS, PROFILE.length / 2)
    layers = (
        Layer(BUILD.back, 40e9), Layer(section.thickness - 0.08 * INCH, 12.6e9), Layer(BUILD.belly, 40e9)
    )
    left = sanded(layers, back=0.4 * depth, belly=0.6 * depth)
    assert after.stiffness[10] == pytest.approx(flexural_rigidity(section.width, left))


@pytest.mark.parametrize(("part", "share"), [(0.1, 0.028), (0.25, 0.15625), (0.75, 0.84375), (0.9, 0.972)])
def test_a_feather_rises_by_3_t_squared_less_2_t_cubed(part, share):
    # The smooth step, level at both ends: its own values at four places, at either end of the stretch.
    assert sanded_share(SANDING, (2 + 2 * part) * INCH) == pytest.approx(share)
    assert sanded_share(SANDING, (20 - 2 * part) * INCH) == pytest.approx(share)


def test_without_a_feather_the_stretch_has_edges():
    hard = Sanding(2 * INCH, 20 * INCH, 0.0, 0.6)
    assert sanded_share(hard, 2 * INCH) == 0.0
    assert sanded_share(hard, 2.001 * INCH) == 1.0
    assert sanded_share(hard, 19.999 * INCH) == 1.0
    assert sanded_share(hard, 1.999 * INCH) == sanded_share(hard, 20.001 * INCH) == 0.0


def test_a_pound_takes_a_few_thousandths():
    # Common practice, from memory: 0.002 to 0.004 in of limb thickness per pound on a 50 lb laminated
    # recurve, both limbs alike. This one was made stout for its weight, to lie within; for the bow of the
    # book's example see tests/calculators/test_unchanged_thousandths_a_pound.py.
    limb = laminated_limb(PROFILE, (-0.01, 0.24), STATIONS, BUILD)
    setup = Setup(8 * INCH, 26.25 * INCH, None)
    factors = calibrate(Bow(limb, limb), setup, 50 * POUND_FORCE, 0.0)

    def thinned(*depths):
        limbs = [
            laminated_limb(PROFILE, (-0.01, 0.24), STATIONS, BUILD, SANDING, depth) for depth in depths
        ]
        return Bow(limbs[0].stiffened(factors.upper_factor), limbs[1].stiffened(factors.lower_factor))

    met = meet(thinned, (0.002 * INCH,) * 2, (0.001 * INCH,) * 2, setup, 49 * POUND_FORCE, 0.0)
    assert met.amounts[0] == pytest.approx(met.amounts[1], rel=1e-4)
    assert 0.002 * INCH <= met.amounts[0] <= 0.004 * INCH
    assert read(met.bow, setup).weight == pytest.approx(49 * POUND_FORCE, rel=1e-6)


def test_what_cannot_be_sanded():
    with pytest.raises(ValueError, match=whole(
            f"the stretch to be sanded must lie between fadeout and nock, 0 to {in_both(PROFILE.length)}; "
            "it runs from 100 mm (3 15/16 in) to 2000 mm (78 3/4 in)")):
        laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, Sanding(0.1, 2.0, 0.05, 0.5), 1e-4)
    with pytest.raises(ValueError, match=whole(
            "removal at the belly must be less than the outer layer's 0.001016 m, got ", " m")):
        laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, 0.1 * INCH)
    with pytest.raises(ValueError, match=whole("removal must not be negative, got -0.0001 m")):
        laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, -1e-4)


def test_a_stretch_may_begin_at_the_fadeout_and_end_at_the_nock():
    stretch = Sanding(0.0, PROFILE.length, INCH, 0.5)
    after = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, stretch, 1e-4)
    before = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD)
    assert after.stiffness[0] == before.stiffness[0]
    assert after.stiffness[10] < before.stiffness[10]
    with pytest.raises(ValueError, match=whole(
            f"the stretch to be sanded must lie between fadeout and nock, 0 to {in_both(PROFILE.length)}; "
            "it runs from -1 mm (-1/32 in) to 300 mm (11 13/16 in)")):
        laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, Sanding(-0.001, 0.3, 0.01, 0.5), 1e-4)
    with pytest.raises(ValueError, match=whole(
            f"the stretch to be sanded must lie between fadeout and nock, 0 to {in_both(PROFILE.length)}; "
            "it runs from 300 mm (11 13/16 in) to 300 mm (11 13/16 in)")):
        laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, Sanding(0.3, 0.3, 0.01, 0.5), 1e-4)


def test_a_limb_that_is_to_be_sanded_has_lost_nothing_yet():
    before, planned = (laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, sanding)
                       for sanding in (None, SANDING))
    assert planned.stiffness == before.stiffness


@pytest.mark.parametrize("section", range(3))
def test_places_say_what_one_section_s_thickness_and_the_removal_do(section):
    """Against limbs made anew: a section a little thicker, and a little more taken off."""
    depth, more = 0.01 * INCH, 1e-7
    places = limb_places(PROFILE.length, STATIONS, BUILD, SANDING, depth)
    limb = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, depth)
    was = STATIONS[section]
    stations = list(STATIONS)
    stations[section] = Station(was.position, was.width, was.thickness + more)
    thicker = laminated_limb(PROFILE, (0.0, 0.24), tuple(stations), BUILD, SANDING, depth)
    thinner = laminated_limb(PROFILE, (0.0, 0.24), STATIONS, BUILD, SANDING, depth + more)
    stiffnesses = zip(limb.stiffness, thicker.stiffness, thinner.stiffness)
    for place, (before, after, sanded_more) in zip(places, stiffnesses):
        assert place.rates.thickness * place.shares[section] == pytest.approx(
            math.log(after / before) / more, rel=1e-4, abs=1e-3)
        assert place.rates.removal * place.sanded == pytest.approx(
            math.log(sanded_more / before) / more, rel=1e-4, abs=1e-3)
        assert sum(place.shares) == pytest.approx(1.0)
