"""Rounded edges, narrower sides and thinner faces: what they cost a section."""

import math

import pytest

from calc.mechanics.bow.edges import Finishing, finished_share, rounded_rigidity
from calc.mechanics.bow.laminate import Layer, flexural_rigidity
from calc.mechanics.bow.thinning import Build, Station
from tests.sentences import whole

INCH = 0.0254
GLASS, CORE = 39e9, 12e9


def limb(thickness, glass):
    return (Layer(glass, GLASS), Layer(thickness - 2 * glass, CORE), Layer(glass, GLASS))


def by_strips(width, layers, radius, count=60000):
    """A second route: each layer cut into thin strips, each as wide as the rounding leaves it."""
    total = sum(layer.thickness for layer in layers)
    sums, top = [0.0, 0.0, 0.0], 0.0
    for layer in layers:
        strip = layer.thickness / count
        for i in range(count):
            z = top + (i + 0.5) * strip
            from_face = min(z, total - z)
            lack = 0.0
            if from_face < radius:
                lack = radius - math.sqrt(radius**2 - (radius - from_face) ** 2)
            for power in range(3):
                sums[power] += layer.modulus * (width - 2 * lack) * z**power * strip
        top += layer.thickness
    return sums[2] - sums[1] ** 2 / sums[0]


@pytest.mark.parametrize("radius", [0.005, 1 / 32, 0.043, 1 / 16, 0.12])
@pytest.mark.parametrize(("thickness", "back", "belly"), [(0.28, 0.043, 0.043), (0.30, 0.05, 0.03)])
def test_rounded_edges_against_strips(radius, thickness, back, belly):
    """The radius inside the glass, as deep as the glass and into the core; glass alike and not."""
    layers = (Layer(back * INCH, GLASS), Layer((thickness - back - belly) * INCH, CORE),
              Layer(belly * INCH, GLASS))
    assert rounded_rigidity(1.5 * INCH, layers, radius * INCH) == pytest.approx(
        by_strips(1.5 * INCH, layers, radius * INCH), rel=2e-6)


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
