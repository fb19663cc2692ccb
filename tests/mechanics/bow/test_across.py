"""Torsion of rectangles and laminates, and what a wedge does: tables, closed forms, strips."""

import numpy as np
import pytest

from calc.mechanics.bow.across import (
    axis_tilt,
    rectangle_share,
    rigidity_across,
    torsional_rigidity,
    wedge_bend,
    wedge_shift,
)
from calc.mechanics.bow.laminate import Layer, flexural_rigidity
from tests.sentences import whole

LAMINATE = (Layer(1.1e-3, 39e9), Layer(5.0e-3, 12e9), Layer(0.9e-3, 39e9))
WIDTH = 38e-3


@pytest.mark.parametrize(("ratio", "factor"), [
    (1.0, 0.141), (1.5, 0.196), (2.0, 0.229), (2.5, 0.249), (3.0, 0.263), (4.0, 0.281), (5.0, 0.291),
    (10.0, 0.312),
])
def test_rectangles_twist_as_the_tables_of_handbooks_say(ratio, factor):
    """J = factor b t^3: the table in torsion-of-rectangles, to its printed digits."""
    assert rectangle_share(1.0, ratio) / 3.0 == pytest.approx(factor, abs=6e-4)


def test_a_laminate_of_one_material_twists_as_a_rectangle():
    one = (Layer(2e-3, 4e9), Layer(3e-3, 4e9), Layer(2e-3, 4e9))
    whole = 4e9 * WIDTH * 7e-3**3 / 3 * rectangle_share(7e-3, WIDTH)
    assert torsional_rigidity(WIDTH, one) == pytest.approx(whole, rel=1e-12)


def by_strips(width, layers, taken, face):
    """Return product moment over rigidity across, and the middle, of a section cut into strips."""
    count = 4000
    pull = first = second = deep = 0.0
    strips = []
    for k in range(count):
        z = width * ((k + 0.5) / count - 0.5)
        off = taken * (0.5 + z / width)
        top = 0.0
        for i, layer in enumerate(layers):
            low, high = top, top + layer.thickness
            top = high
            if face == "belly" and i == len(layers) - 1:
                high -= off
            if face == "back" and i == 0:
                low += off
            strips.append((layer.modulus * (high - low) * width / count, z, 0.5 * (low + high)))
    for stiff, z, n in strips:
        pull += stiff
        first += stiff * z
        deep += stiff * n
    middle = first / pull
    depth = deep / pull
    product = sum(stiff * (z - middle) * (n - depth) for stiff, z, n in strips)
    second = sum(stiff * (z - middle) ** 2 for stiff, z, n in strips)
    return -product / second, middle


@pytest.mark.parametrize("face", ["belly", "back"])
def test_a_wedge_tilts_the_axes_as_strips_of_the_section_say(face):
    depth = 0.02e-3
    bend, middle = by_strips(WIDTH, LAMINATE, depth, face)
    assert wedge_bend(WIDTH, LAMINATE, depth, face) == pytest.approx(bend, rel=0.01)
    assert wedge_shift(WIDTH, LAMINATE, depth, face) == pytest.approx(middle, rel=0.01)


def test_a_wedge_off_the_back_works_against_one_off_the_belly():
    even = (LAMINATE[0], LAMINATE[1], LAMINATE[0])
    belly, back = (wedge_bend(WIDTH, even, 1e-4, face) for face in ("belly", "back"))
    assert belly > 0.0
    assert back == pytest.approx(-belly, rel=1e-12)


def test_bending_across_is_that_of_layers_side_by_side():
    parts = sum(layer.modulus * layer.thickness * WIDTH**3 / 12 for layer in LAMINATE)
    assert rigidity_across(WIDTH, LAMINATE) == pytest.approx(parts, rel=1e-12)
    assert rigidity_across(WIDTH, LAMINATE) > 10 * flexural_rigidity(WIDTH, LAMINATE)


def test_what_is_no_section_is_refused():
    with pytest.raises(ValueError, match=whole("thickness must be positive, got 0.0 m")):
        rectangle_share(0.0, 1.0)
    with pytest.raises(ValueError, match=whole("width must be positive, got 0.0 m")):
        rigidity_across(0.0, LAMINATE)
    for relation in (wedge_bend, wedge_shift):
        with pytest.raises(ValueError, match=whole("a face must be belly or back, got side")):
            relation(WIDTH, LAMINATE, 1e-4, "side")
    assert np.isfinite(rectangle_share(1.0, 100.0))


@pytest.mark.parametrize(("face", "sign"), [("belly", 1.0), ("back", -1.0)])
def test_a_wedge_tilts_the_principal_axes_by_the_product_moment(face, sign):
    """Principal axes of a symmetric tensor: the eigenvectors of the section's moments, cut into strips."""
    depth, count = 2e-6, 4000
    parts = []
    for k in range(count):
        z = WIDTH * ((k + 0.5) / count - 0.5)
        top = 0.0
        for i, layer in enumerate(LAMINATE):
            low, high = top, top + layer.thickness
            top = high
            high -= depth * (0.5 + z / WIDTH) if (face, i) == ("belly", 2) else 0.0
            low += depth * (0.5 + z / WIDTH) if (face, i) == ("back", 0) else 0.0
            parts.append((layer.modulus * (high - low), z, 0.5 * (low + high), high - low))
    stiff, z, n, thick = np.array(parts).T
    z, n = z - np.sum(stiff * z) / np.sum(stiff), n - np.sum(stiff * n) / np.sum(stiff)
    product = np.sum(stiff * z * n)
    tensor = np.array([[np.sum(stiff * z * z), product],
                       [product, np.sum(stiff * (n * n + thick * thick / 12))]])
    long = np.linalg.eigh(tensor)[1][:, 1]
    tilt = axis_tilt(WIDTH, LAMINATE, depth, face)
    assert tilt == pytest.approx(-long[1] / long[0], rel=2e-3)
    assert tilt * sign > 0


def test_a_section_as_deep_as_wide_has_no_long_axis():
    with pytest.raises(ValueError, match=whole("a limb must be stiffer across than in its plane")):
        axis_tilt(3e-3, (Layer(3e-3, 4e9),), 1e-6, "belly")
