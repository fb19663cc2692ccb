"""Rounded edges and flats, narrower sides and thinner faces: what they cost a section."""

import math
import random

import numpy as np
import pytest

from calc.mechanics.bow.edges import (
    FADE,
    Corner,
    Finishing,
    edged_rigidity,
    finished_share,
    section_integrals,
)
from calc.mechanics.bow.laminate import Layer, flexural_rigidity
from calc.mechanics.bow.limb import Profile, laminated_limb
from calc.mechanics.bow.thinning import Build, Station
from tests.sentences import whole

INCH = 0.0254
GLASS, CORE = 39e9, 12e9


def limb(thickness, glass):
    return (Layer(glass, GLASS), Layer(thickness - 2 * glass, CORE), Layer(glass, GLASS))


def strips(width, thicknesses, weights, back, belly, count=20000):
    """A second route: each layer cut into thin strips, each as wide as two corners leave it."""
    whole, top, sums = sum(thicknesses), 0.0, np.zeros(3)
    for thickness, weight in zip(thicknesses, weights, strict=True):
        z = top + (np.arange(count) + 0.5) * thickness / count
        for power in range(3):
            left = width - 2 * lacks(z, back) - 2 * lacks(whole - z, belly)
            sums[power] += weight * (left * z**power).sum() * thickness / count
        top += thickness
    return sums


def lacks(depth, corner):
    inside = np.clip(corner.reach - depth, 0.0, None)
    if corner.flat:
        return inside
    return corner.reach - np.sqrt(corner.reach**2 - inside**2)


def rounded_rigidity(width, layers, radius):
    return edged_rigidity(width, layers, Corner(radius), Corner(radius))


def by_strips(width, layers, radius):
    zeroth, first, second = strips(width, [each.thickness for each in layers],
                                   [each.modulus for each in layers], Corner(radius), Corner(radius))
    return second - first**2 / zeroth


@pytest.mark.parametrize("radius", [0.005, 1 / 32, 0.043, 1 / 16, 0.12])
@pytest.mark.parametrize(("thickness", "back", "belly"), [(0.28, 0.043, 0.043), (0.30, 0.05, 0.03)])
def test_rounded_edges_against_strips(radius, thickness, back, belly):
    """The radius inside the glass, as deep as the glass and into the core; glass alike and not."""
    layers = (Layer(back * INCH, GLASS), Layer((thickness - back - belly) * INCH, CORE),
              Layer(belly * INCH, GLASS))
    assert rounded_rigidity(1.5 * INCH, layers, radius * INCH) == pytest.approx(
        by_strips(1.5 * INCH, layers, radius * INCH), rel=2e-6)


@pytest.mark.parametrize("seed", range(20))
def test_area_and_stiffness_of_random_sections_against_strips(seed):
    """Glass unlike on both faces, edges unlike, round or flat, from nothing to half of the section."""
    draw = random.Random(seed)
    width = draw.uniform(0.4, 2.0) * INCH
    thicknesses = [draw.uniform(0.02, 0.06) * INCH, draw.uniform(0.1, 0.4) * INCH,
                   draw.uniform(0.02, 0.06) * INCH]
    most = min(width, sum(thicknesses)) / 2
    back, belly = (Corner(draw.choice((0.0, draw.random(), 0.999999)) * most, draw.random() < 0.5)
                   for _ in range(2))
    moduli = [draw.uniform(30e9, 50e9), draw.uniform(5e9, 15e9), draw.uniform(30e9, 50e9)]
    for weights in ((1.0, 1.0, 1.0), moduli):
        found = section_integrals(width, tuple(thicknesses), tuple(weights), back, belly)
        assert found == pytest.approx(strips(width, thicknesses, weights, back, belly), rel=2e-6)
    zeroth, first, second = strips(width, thicknesses, moduli, back, belly)
    layers = tuple(Layer(*each) for each in zip(thicknesses, moduli, strict=True))
    assert edged_rigidity(width, layers, back, belly) == pytest.approx(second - first**2 / zeroth, rel=1e-5)
    # turned over it is as stiff
    assert edged_rigidity(width, layers[::-1], belly, back) == pytest.approx(
        edged_rigidity(width, layers, back, belly), rel=1e-12)


def test_corners_of_one_material_by_the_handbook():
    """A rectangle less four corners, each moved by Steiner's theorem. A spandrel of a quarter circle has the
    area (1 - pi/4) r^2, its centroid (10 - 3 pi) / (12 - 3 pi) r from either straight side, and about that
    side the second moment (1 - 5 pi/16) r^4; a triangle has s^2 / 2, s / 3 and s^4 / 12: handbook tables of
    plane areas, from memory, and each the integral of a square less a quarter circle."""
    width, thickness, reach = 0.040, 0.010, 0.003
    rows = (
        (False, (1 - math.pi / 4) * reach**2, (10 - 3 * math.pi) / (12 - 3 * math.pi) * reach,
         (1 - 5 * math.pi / 16) * reach**4),
        (True, reach**2 / 2, reach / 3, reach**4 / 12),
    )
    for flat, area, centroid, about_the_side in rows:
        own = about_the_side - area * centroid**2
        expected = (width * thickness**3 / 12
                    - 4 * (own + area * (thickness / 2 - centroid) ** 2))
        corner = Corner(reach, flat)
        assert section_integrals(width, (thickness,), (1.0,), corner, corner)[0] == pytest.approx(
            width * thickness - 4 * area, rel=1e-12)
        assert edged_rigidity(width, (Layer(thickness, 1.0),), corner, corner) == pytest.approx(
            expected, rel=1e-12)


def test_belly_or_back_alone_takes_half_of_what_both_take_on_a_limb_alike_on_both():
    layers = limb(0.28 * INCH, 0.043 * INCH)
    square, round_ = Corner(0.0), Corner(INCH / 32)
    whole_ = edged_rigidity(0.04, layers, square, square)
    both = whole_ - edged_rigidity(0.04, layers, round_, round_)
    belly = whole_ - edged_rigidity(0.04, layers, square, round_)
    assert belly == pytest.approx(whole_ - edged_rigidity(0.04, layers, round_, square), rel=1e-9)
    assert belly == pytest.approx(both / 2, rel=0.02)
    # a little more than half of it: alone, it moves the neutral axis away from its own face
    assert belly > both / 2


def test_without_a_radius_it_is_the_square_section():
    layers = limb(0.28 * INCH, 0.043 * INCH)
    assert rounded_rigidity(0.04, layers, 0.0) == pytest.approx(flexural_rigidity(0.04, layers), rel=1e-12)


def test_a_rod_of_one_material_is_a_rod():
    """Closed form: a square section rounded by half of its side is a circle, I = pi d^4 / 64."""
    side = 0.01
    assert rounded_rigidity(side, (Layer(side, 1e9),), side / 2) == pytest.approx(
        1e9 * math.pi * side**4 / 64, rel=1e-9)


@pytest.mark.parametrize(("radius", "low", "high"), [(1 / 32, 0.004, 0.008), (1 / 16, 0.018, 0.028)])
def test_what_rounding_takes_of_a_usual_limb(radius, low, high):
    """Of 50 lb about 0.3 lb and 0.9 to 1.4 lb, as the book says for limbs of these sizes: calculated."""
    for width in (1.25, 1.5, 1.75):
        for thickness in (0.33, 0.40):
            station = Station(0.1, width * INCH, thickness * INCH)
            build = Build(0.045 * INCH, 0.045 * INCH, GLASS, CORE)
            lost = 1 - finished_share(station, build, Finishing(radius * INCH, 0.0, 0.0, 0.0))
            assert low < lost < high, (width, thickness, lost)


def test_sides_cost_in_proportion_and_edges_round_already_cost_less():
    station = Station(0.1, 0.04, 0.28 * INCH)
    build = Build(0.043 * INCH, 0.043 * INCH, GLASS, CORE)
    assert finished_share(station, build, Finishing(0.0, 0.0, 0.002, 0.0)) == pytest.approx(0.95, rel=1e-9)
    square = finished_share(station, build, Finishing(INCH / 16, 0.0, 0.0, 0.0))
    round_already = finished_share(station, build, Finishing(INCH / 16, INCH / 32, 0.0, 0.0))
    assert square < round_already < 1
    assert finished_share(station, build, Finishing(INCH / 16, INCH / 16, 0.0, 0.0)) == pytest.approx(1)


def test_only_the_edges_done_are_done_and_none_gets_less_round():
    station = Station(0.1, 0.04, 0.28 * INCH)
    build = Build(0.043 * INCH, 0.035 * INCH, GLASS, CORE)

    def share(radius, before, **more):
        return finished_share(station, build, Finishing(radius * INCH, before * INCH, 0.0, 0.0, **more))

    layers = (Layer(0.043 * INCH, GLASS), Layer(0.202 * INCH, CORE), Layer(0.035 * INCH, GLASS))
    square, old, new = Corner(0.0), Corner(INCH / 64), Corner(INCH / 16)
    whole_ = edged_rigidity(0.04, layers, square, square)
    assert share(1 / 16, 0.0, faces_edged="belly") == pytest.approx(
        edged_rigidity(0.04, layers, square, new) / whole_)
    assert share(1 / 16, 0.0, faces_edged="back", flat=True) == pytest.approx(
        edged_rigidity(0.04, layers, Corner(INCH / 16, True), square) / whole_)
    assert share(1 / 16, 1 / 64, faces_edged="belly") == pytest.approx(
        edged_rigidity(0.04, layers, old, new) / edged_rigidity(0.04, layers, old, old))
    assert share(1 / 64, 1 / 32) == share(1 / 32, 1 / 32, flat=True) == pytest.approx(1.0)
    assert share(1 / 31, 1 / 32, flat=True) < 0.999


def test_work_on_edges_fades_out_beyond_its_stretch():
    """In full from start to end; half of the radius and of the width in the middle of the fade."""
    length = 20 * INCH
    stations = (Station(0.0, 0.04, 0.28 * INCH), Station(length, 0.04, 0.28 * INCH))
    build = Build(0.043 * INCH, 0.043 * INCH, GLASS, CORE)
    profile = Profile(length, (0.0, 0.0))

    def stiffness(finishing=None):
        return laminated_limb(profile, (0.0, 0.0), stations, build, finishing=finishing).stiffness

    work = Finishing(INCH / 16, 0.0, 0.001, 0.0001 * INCH, start=4 * INCH, end=16 * INCH)
    found = [after / before for after, before in zip(stiffness(work), stiffness(), strict=True)]
    alone = Finishing(0.0, 0.0, 0.0, 0.0001 * INCH)
    half = Finishing(INCH / 32, 0.0, 0.0005, 0.0001 * INCH)
    here = stations[0]
    assert FADE == 2 * INCH  # the stations of this limb lie an inch apart
    for place, expected in ((0, alone), (2, alone), (3, half), (4, work), (16, work), (17, half),
                            (18, alone)):
        assert found[place] == pytest.approx(finished_share(here, build, expected), rel=1e-9), place
    everywhere = Finishing(INCH / 16, 0.0, 0.001, 0.0001 * INCH)
    assert stiffness(everywhere)[0] / stiffness()[0] == pytest.approx(found[4], rel=1e-9)
    assert stiffness(everywhere)[20] / stiffness()[20] == pytest.approx(found[4], rel=1e-9)


def test_faces_cost_what_the_thinner_section_lacks():
    station = Station(0.1, 0.04, 0.28 * INCH)
    build = Build(0.043 * INCH, 0.043 * INCH, GLASS, CORE)
    off = 0.0005 * INCH
    thinner = flexural_rigidity(0.04, (
        Layer(build.back - off, GLASS), Layer(0.28 * INCH - 2 * 0.043 * INCH, CORE),
        Layer(build.belly - off, GLASS)))
    before = flexural_rigidity(0.04, limb(0.28 * INCH, 0.043 * INCH))
    assert finished_share(station, build, Finishing(0.0, 0.0, 0.0, off)) == pytest.approx(thinner / before)


@pytest.mark.parametrize(("width", "radius", "sentence"), [
    (0.04, -1e-4, "edge radius must not be negative, got -0.0001 m"),
    (0.04, 0.004, "the edge radius must be at most half of width and thickness, got 0.004 m"),
    (0.002, 0.0012, "the edge radius must be at most half of width and thickness, got 0.0012 m"),
    (0.0, 0.0, "width must be positive, got 0.0 m"),
])
def test_a_section_that_cannot_be(width, radius, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        rounded_rigidity(width, limb(0.007, 0.001), radius)
