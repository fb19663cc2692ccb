"""Properties of laminated sections, with numerical integration as the reference."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.mechanics.bow import laminate
from tests.sentences import whole

layer = st.builds(
    laminate.Layer,
    thickness=st.floats(0.0003, 0.01),
    modulus=st.floats(1e9, 80e9),
)
laminates = st.lists(layer, min_size=1, max_size=6).map(tuple)
widths = st.floats(0.01, 0.06)


def integrated_rigidity(width, layers):
    """Return E I by Gauss points in each layer (exact for a square), about the axis they give."""
    points, weights = np.polynomial.legendre.leggauss(4)
    depth, stiffness = [], []
    top = 0.0
    for each in layers:
        depth.append(top + each.thickness * (points + 1) / 2)
        stiffness.append(weights * each.thickness / 2 * each.modulus)
        top += each.thickness
    z, e = np.concatenate(depth), np.concatenate(stiffness)
    axis = np.sum(e * z) / np.sum(e)
    return width * np.sum(e * (z - axis) ** 2), axis


@given(widths, laminates)
def test_rigidity_and_axis_agree_with_numerical_integration(width, layers):
    rigidity, axis = integrated_rigidity(width, layers)
    assert laminate.flexural_rigidity(width, layers) == pytest.approx(rigidity, rel=1e-9)
    assert laminate.neutral_axis(layers) == pytest.approx(axis, rel=1e-9)


@given(widths, laminates)
def test_turning_the_limb_over_changes_nothing_but_the_side(width, layers):
    over = tuple(reversed(layers))
    assert laminate.flexural_rigidity(width, over) == pytest.approx(
        laminate.flexural_rigidity(width, layers), rel=1e-9
    )
    there = laminate.neutral_axis(layers) + laminate.neutral_axis(over)
    assert there == pytest.approx(laminate.total_thickness(layers), rel=1e-9)


@given(widths, laminates, st.floats(0.5, 2.0))
def test_rigidity_goes_with_the_cube_of_all_thicknesses(width, layers, scale):
    scaled = tuple(laminate.Layer(each.thickness * scale, each.modulus) for each in layers)
    ratio = laminate.flexural_rigidity(width, scaled) / laminate.flexural_rigidity(width, layers)
    assert ratio == pytest.approx(scale**3, rel=1e-8)


@given(widths, laminates)
def test_splitting_a_layer_changes_nothing(width, layers):
    half = laminate.Layer(layers[0].thickness / 2, layers[0].modulus)
    split = (half, half) + layers[1:]
    assert laminate.flexural_rigidity(width, split) == pytest.approx(
        laminate.flexural_rigidity(width, layers), rel=1e-9
    )


@given(laminates)
def test_shares_add_up_to_one(layers):
    shares = laminate.rigidity_shares(layers)
    assert len(shares) == len(layers)
    assert sum(shares) == pytest.approx(1, rel=1e-12)
    assert all(share > 0 for share in shares)


@given(laminates, st.floats(0.0, 0.45), st.floats(0.0, 0.45), st.floats(0.001, 0.4))
def test_more_removal_always_softens(layers, back, belly, more):
    back *= layers[0].thickness
    belly *= layers[-1].thickness
    further = belly + more * layers[-1].thickness
    before = laminate.flexural_rigidity(0.04, laminate.sanded(layers, back, belly))
    if len(layers) == 1 and back + further >= layers[0].thickness:
        return
    assert laminate.flexural_rigidity(0.04, laminate.sanded(layers, back, further)) < before


@pytest.mark.parametrize("face", ["back", "belly"])
def test_going_through_the_glass_is_refused(face):
    layers = (laminate.Layer(0.001, 40e9), laminate.Layer(0.005, 12e9), laminate.Layer(0.001, 40e9))
    assert laminate.sanded(layers, **{face: 0.000999})
    with pytest.raises(ValueError, match=whole(
            f"removal at the {face} must be less than the outer layer's 0.001 m, got 0.001 m")):
        laminate.sanded(layers, **{face: 0.001})
    with pytest.raises(ValueError, match=whole(f"removal at the {face} must not be negative, got -1e-06 m")):
        laminate.sanded(layers, **{face: -1e-6})


@pytest.mark.parametrize(
    ("layers", "sentence"),
    [
        ((), "a laminate must have at least one layer, got none"),
        ((laminate.Layer(0.0, 1e9),), "layer thickness must be positive, got 0.0 m"),
        ((laminate.Layer(0.001, float("nan")),), "layer modulus must be a finite number, got nan Pa"),
    ],
)
def test_impossible_layers_are_refused(layers, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        laminate.flexural_rigidity(0.04, layers)
    with pytest.raises(ValueError, match=whole("width must be positive, got 0.0 m")):
        laminate.flexural_rigidity(0.0, layers)
