"""A limb's cross section as layers glued from back to belly, and what taking material off its faces does.

Layers are listed from the back (the face away from the archer) to the belly. Depth is measured from the
back face. Positive curvature bends the limb as drawing does: the back is stretched, the belly compressed.
"""

from calc.checks import require_not_negative, require_positive


class Layer:
    """Thickness [m] and modulus [Pa] along the limb."""

    def __init__(self, thickness: float, modulus: float) -> None:
        self.thickness = thickness
        self.modulus = modulus


class Faces:
    """One value for each face of the limb."""

    def __init__(self, back: float, belly: float) -> None:
        self.back = back
        self.belly = belly


def _moments(layers: tuple[Layer, ...]) -> tuple[float, float, float]:
    """Return the integrals of E, E z and E z^2 over the depth, for one unit of width."""
    if not layers:
        raise ValueError("a laminate must have at least one layer, got none")
    zeroth = first = second = top = 0.0
    for layer in layers:
        require_positive("layer thickness", layer.thickness, "m")
        require_positive("layer modulus", layer.modulus, "Pa")
        bottom = top + layer.thickness
        zeroth += layer.modulus * (bottom - top)
        first += layer.modulus * (bottom**2 - top**2) / 2.0
        second += layer.modulus * (bottom**3 - top**3) / 3.0
        top = bottom
    return zeroth, first, second


def total_thickness(layers: tuple[Layer, ...]) -> float:
    """Return the thickness of all layers together.

    Args:
        layers: from back to belly.

    Returns:
        [m] total thickness.

    Source: geometry, a sum of lengths.
    """
    thickness = 0.0
    for layer in layers:
        thickness += layer.thickness
    return thickness


def neutral_axis(layers: tuple[Layer, ...]) -> float:
    """Return how deep below the back face the neutral axis lies.

    The centroid of the transformed section: sum of E z dz over sum of E dz.

    Args:
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.

    Returns:
        [m] depth from the back face.

    Raises:
        ValueError: there is no layer, or a thickness or modulus is not positive.

    Source: beam-theory, the centroid of the transformed section.
    """
    zeroth, first, _ = _moments(layers)
    return first / zeroth


def flexural_rigidity(width: float, layers: tuple[Layer, ...]) -> float:
    """Return the bending stiffness E I of a laminated limb about its own neutral axis.

    With S_n the integral of E z^n over the depth: E I = b (S_2 - S_1^2 / S_0).

    Args:
        width [m]: the same for all layers, > 0.
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: width, a thickness or a modulus is not positive, or there is no layer.

    Limits:
        Sections stay plane and layers do not slip: no shear between layers, no rounded corners.

    Source: beam-theory, derived here: the parallel axis theorem on the transformed section.
    """
    require_positive("width", width, "m")
    zeroth, first, second = _moments(layers)
    return width * (second - first**2 / zeroth)


class Section:
    """A limb of glass, core and glass, one wide: depths from the back face [m] of the core's upper and lower
    face, of the belly face and of the neutral axis, and the bending stiffness about that [N].
    """

    def __init__(self, back: float, core: float, belly: float, glass: float, within: float) -> None:
        """Say what a section is like.

        Args:
            back, core, belly [m]: thickness of the layers, > 0.
            glass, within [Pa]: moduli of the glass and of the core, > 0.

        Source: beam-theory, `flexural_rigidity` of three layers, the outer two alike.
        """
        upper, lower, face = back, back + core, back + core + belly
        self.upper, self.lower, self.face = upper, lower, face
        more = glass - within
        square_upper, square_lower, square_face = upper * upper, lower * lower, face * face
        zeroth = glass * face - more * core
        first = (glass * square_face - more * (square_lower - square_upper)) / 2.0
        second = (glass * square_face * face - more * (square_lower * lower - square_upper * upper)) / 3.0
        self.axis = first / zeroth
        self.rigidity = second - first * self.axis


def rigidity_shares(layers: tuple[Layer, ...]) -> tuple[float, ...]:
    """Return the part of the bending stiffness that each layer carries.

    Args:
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.

    Returns:
        [1] one share per layer, from back to belly; they add up to 1.

    Raises:
        ValueError: there is no layer, or a thickness or modulus is not positive.

    Source: beam-theory, the integral of E z^2 layer by layer.
    """
    axis = neutral_axis(layers)
    parts = []
    top = -axis
    for layer in layers:
        bottom = top + layer.thickness
        parts.append(layer.modulus * (bottom**3 - top**3) / 3.0)
        top = bottom
    whole = sum(parts)
    return tuple([part / whole for part in parts])


def face_strains(layers: tuple[Layer, ...], curvature: float) -> Faces:
    """Return the strain at the back and at the belly face.

    Args:
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.
        curvature [1/m]: change from the rest shape; positive as in drawing.

    Returns:
        [1] strain at the back (stretched, positive) and at the belly (compressed, negative).

    Raises:
        ValueError: there is no layer, or a thickness or modulus is not positive.

    Source: beam-theory, strain is curvature times the distance from the neutral axis.
    """
    axis = neutral_axis(layers)
    return Faces(back=curvature * axis, belly=curvature * (axis - total_thickness(layers)))


def _thinned(layer: Layer, removal: float, face: str) -> Layer:
    """Return the layer with removal taken off it."""
    if removal >= layer.thickness:
        raise ValueError(
            f"removal at the {face} must be less than the outer layer's {layer.thickness} m, got {removal} m"
        )
    return Layer(layer.thickness - removal, layer.modulus)


def sanded(layers: tuple[Layer, ...], back: float = 0.0, belly: float = 0.0) -> tuple[Layer, ...]:
    """Return the layers left after material has come off one or both faces.

    Args:
        layers: from back to belly.
        back [m]: taken off the back face, >= 0.
        belly [m]: taken off the belly face, >= 0.

    Returns:
        The layers, from back to belly.

    Raises:
        ValueError: a removal is negative, or would go through the outer layer of its face.

    Source: geometry, a difference of lengths.
    """
    require_not_negative("removal at the back", back, "m")
    require_not_negative("removal at the belly", belly, "m")
    if not layers:
        raise ValueError("a laminate must have at least one layer, got none")
    left = list(layers)
    left[0] = _thinned(left[0], back, "back")
    left[-1] = _thinned(left[-1], belly, "belly")
    return tuple(left)
