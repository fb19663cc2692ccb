"""A laminated limb across its width: torsion, bending to the side, and what a wedge or an edge does to it.

z runs toward the side that is worked, n toward the archer. A wedge takes nothing off one edge and all of
its depth off the other, on one face.
"""

import math

from calc.checks import require_positive
from calc.mechanics.bow.laminate import Layer, flexural_rigidity, neutral_axis, total_thickness

MOST_TERMS = 15


def rectangle_share(thickness: float, width: float) -> float:
    """Return how much of a thin strip's torsional rigidity a rectangle of finite width has.

    1 - (192 / pi^5) (t / b) sum over odd n of tanh(n pi b / (2 t)) / n^5.

    Args:
        thickness [m]: t, > 0.
        width [m]: b, > 0.

    Returns:
        [1] times G b t^3 / 3; 0.4217 for a square.

    Raises:
        ValueError: thickness or width is not positive.

    Source: saint-venant-torsion, the series for the rectangle.
    """
    require_positive("thickness", thickness, "m")
    require_positive("width", width, "m")
    total = 0.0
    for n in range(1, MOST_TERMS, 2):
        total += math.tanh(0.5 * n * math.pi * width / thickness) / n**5
    return 1.0 - 192.0 / math.pi**5 * thickness / width * total


def torsional_rigidity(width: float, layers: tuple[Layer, ...]) -> float:
    """Return the torsional rigidity of a laminated limb.

    4 b times the integral of G z^2 about the middle that G gives, times `rectangle_share`.

    Args:
        width [m]: the same for all layers, > 0.
        layers: from back to belly, each with thickness [m] > 0 and its shear modulus [Pa] > 0.

    Returns:
        [N m^2] moment for each unit of twist.

    Raises:
        ValueError: width, a thickness or a modulus is not positive, or there is no layer.

    Limits:
        Saint-Venant's torsion: free to warp. The share of the edges is that of one material all through.

    Source: saint-venant-torsion, derived here: a thin strip of layers, and the rectangle's series.
    """
    return 4.0 * flexural_rigidity(width, layers) * rectangle_share(total_thickness(layers), width)


def _pull(layers: tuple[Layer, ...]) -> float:
    """Return the integral of E over the depth, for one unit of width."""
    return sum([layer.modulus * layer.thickness for layer in layers])


def rigidity_across(width: float, layers: tuple[Layer, ...]) -> float:
    """Return the bending stiffness of a laminated limb to the side.

    Args:
        width [m]: the same for all layers, > 0.
        layers: from back to belly, each with thickness [m] and modulus [Pa] along the limb.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: width is not positive.

    Source: beam-theory, the second moment of a rectangle about its short middle line.
    """
    require_positive("width", width, "m")
    return _pull(layers) * width**3 / 12.0


def wedge_bend(width: float, layers: tuple[Layer, ...], depth: float, face: str) -> float:
    """Return how much a limb bends to the side that a wedge was taken from, over how much it is bent.

    A wedge tilts the section's own axes: with P the integral of E z n, a limb bent by a change of curvature
    in its plane bends sideways by -P over the rigidity across. P = -E n_face depth b^2 / 12.

    Args:
        width [m]: > 0.
        layers: from back to belly, before the wedge.
        depth [m]: taken off the outer layer at the edge of side z.
        face: "belly" or "back".

    Returns:
        [1] positive toward z; negative where the wedge comes off the back.

    Raises:
        ValueError: width is not positive, or the face is neither.

    Limits:
        First order in depth over thickness.

    Source: beam-theory, derived here: unsymmetrical bending by the product moment of the section.
    """
    require_positive("width", width, "m")
    axis = neutral_axis(layers)
    if face == "belly":
        outer, off = layers[-1], total_thickness(layers) - axis
    elif face == "back":
        outer, off = layers[0], -axis
    else:
        raise ValueError("a face must be belly or back, got " + face)
    return outer.modulus * off * depth / (_pull(layers) * width)


def axis_tilt(width: float, layers: tuple[Layer, ...], depth: float, face: str) -> float:
    """Return by how much a wedge tilts the axis along which a section is wide.

    -P / (E I across - E I in the plane) with the product moment P of `wedge_bend`.

    Args:
        width [m]: > 0.
        layers: from back to belly, before the wedge.
        depth [m]: taken off the outer layer at the edge of side z.
        face: "belly" or "back".

    Returns:
        [rad] positive where the axis leans toward the back on side z.

    Raises:
        ValueError: width is not positive, the face is neither, or the section is not wider than thick.

    Limits:
        First order in depth over thickness.

    Source: beam-theory, derived here: the principal axes of the section by its product moment.
    """
    across, flat = rigidity_across(width, layers), flexural_rigidity(width, layers)
    if across <= flat:
        raise ValueError("a limb must be stiffer across than in its plane")
    return wedge_bend(width, layers, depth, face) * across / (across - flat)


def wedge_shift(width: float, layers: tuple[Layer, ...], depth: float, face: str) -> float:
    """Return how far the elastic middle moves as a wedge is taken off.

    Args:
        width [m]: > 0.
        layers: from back to belly, before the wedge.
        depth [m]: taken off the outer layer at the edge of side z.
        face: "belly" or "back".

    Returns:
        [m] toward z: negative, away from the side that is worked.

    Raises:
        ValueError: the face is neither belly nor back.

    Limits:
        First order in depth over thickness. Torsion's own middle moves farther by as much again or twice.

    Source: beam-theory, derived here: the centroid of the transformed section.
    """
    if face not in ("belly", "back"):
        raise ValueError("a face must be belly or back, got " + face)
    outer = layers[-1] if face == "belly" else layers[0]
    return -outer.modulus * depth * width / (12.0 * _pull(layers))
