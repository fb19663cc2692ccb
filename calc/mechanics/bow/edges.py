"""What rounded or flattened edges, narrower sides and thinner faces cost a limb's section in stiffness."""

import math

from calc.checks import require_not_negative, require_positive
from calc.mechanics.bow.laminate import Layer
from calc.mechanics.bow.thinning import Build, Station, layers_of, section_rigidity
from calc.quantities import INCH

FADE = 2 * INCH
"""Over so much, beyond the stretch done in full, work on edges and sides fades out."""


class Corner:
    """How far both edges of a face are cut back [m]: the radius they are rounded to or, where flat, how far a
    flat at 45 degrees reaches on face and side."""

    def __init__(self, reach: float, flat: bool = False) -> None:
        self.reach = reach
        self.flat = flat


class Finishing:
    """What the last work takes off a limb [m]: the radius (where flat, the reach) its edges are brought to
    and the radius all four had before, how much narrower both sides together become, and what comes off each
    face, glass only.

    faces_edged: whose edges are done, "both", "back" or "belly". start, end: edges and sides are done in full
    from start to end, from the fadeout, and less and less over FADE beyond.
    """

    def __init__(
        self, radius: float, radius_before: float, width: float, faces: float, flat: bool = False,
        faces_edged: str = "both", start: float = 0.0, end: float = math.inf,
    ) -> None:
        self.radius = radius
        self.radius_before = radius_before
        self.width = width
        self.faces = faces
        self.flat = flat
        self.faces_edged = faces_edged
        self.start = start
        self.end = end


def section_integrals(
    width: float, thicknesses: tuple[float, ...], weights: tuple[float, ...], back: Corner,
    belly: Corner,
) -> tuple[float, float, float]:
    """Return the integrals of w b(z) z^n over the depth z, n = 0 to 2, of a layered section less its corners.

    With w = 1 the first is the area, with a modulus E A. At a depth d below a face each of its edges lacks
    r - sqrt(r^2 - (r - d)^2) of the width where rounded to r, and r - d where flat.

    Args:
        width [m]: between the sides, > 0.
        thicknesses [m]: one per layer from back to belly, > 0.
        weights [any]: w, one per layer.
        back, belly: the edges of either face, reach 0 to half of the thickness and half of the width.

    Returns:
        [any] w m^2, w m^3 and w m^4, z from the back face.

    Raises:
        ValueError: a size is not positive, or the corners do not fit the section.

    Source: geometry, derived here: a rectangle less its corners, layer by layer in closed form.
    """
    require_positive("width", width, "m")
    require_not_negative("edge radius", min(back.reach, belly.reach), "m")
    if not thicknesses:
        raise ValueError("a laminate must have at least one layer, got none")
    whole = 0.0
    for each in thicknesses:
        require_positive("layer thickness", each, "m")
        whole += each
    most = max(back.reach, belly.reach)
    if most > min(width, whole) / 2:
        raise ValueError(f"the edge radius must be at most half of width and thickness, got {most} m")
    zeroth = first = second = top = 0.0
    for thickness, weight in zip(thicknesses, weights):
        bottom = top + thickness
        square_top, square_bottom = top * top, bottom * bottom
        zeroth += weight * width * (bottom - top)
        first += weight * width * (square_bottom - square_top) / 2.0
        second += weight * width * (square_bottom * bottom - square_top * top) / 3.0
        if top < back.reach or whole - bottom < belly.reach:
            gone = _gone(top, bottom, whole, back, belly)
            zeroth -= weight * gone[0]
            first -= weight * gone[1]
            second -= weight * gone[2]
        top = bottom
    return zeroth, first, second


def edged_rigidity(width: float, layers: tuple[Layer, ...], back: Corner, belly: Corner) -> float:
    """Return the bending stiffness E I of a laminated limb whose edges are rounded or flat.

    With S_n the integral of E b(z) z^n over the depth: E I = S_2 - S_1^2 / S_0.

    Args:
        width [m]: between the sides, > 0.
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.
        back, belly: the edges of either face, reach 0 to half of the thickness and half of the width.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: a size is not positive, or the corners do not fit the section.

    Limits:
        Sections stay plane; layers do not slip. Both edges of a face are alike, so that the limb bends
        straight.

    Source: beam-theory, derived here: the transformed section less its corners.
    """
    for layer in layers:
        require_positive("layer modulus", layer.modulus, "Pa")
    zeroth, first, second = section_integrals(
        width, tuple([each.thickness for each in layers]), tuple([each.modulus for each in layers]), back,
        belly)
    return second - first**2 / zeroth


def _gone(
    top: float, bottom: float, thickness: float, back: Corner, belly: Corner
) -> tuple[float, float, float]:
    """Return the integrals of the missing width times z^n, n = 0 to 2, from top to bottom of a layer."""
    near = _lacking(top, bottom, back)
    far = _lacking(thickness - bottom, thickness - top, belly)
    if far[0] == 0.0:
        return near
    return (
        near[0] + far[0],
        near[1] + thickness * far[0] - far[1],
        near[2] + thickness**2 * far[0] - 2 * thickness * far[1] + far[2],
    )


def _lacking(start: float, end: float, corner: Corner) -> tuple[float, float, float]:
    """Return the integrals over depths below one face of what both its edges lack times depth^n."""
    reach = corner.reach
    if min(end, reach) <= start:
        return 0.0, 0.0, 0.0
    far, near = reach - start, reach - min(end, reach)
    high, low = ((_of_flat(far), _of_flat(near)) if corner.flat
                 else (_of_round(far, reach), _of_round(near, reach)))
    zeroth, first, second = high[0] - low[0], high[1] - low[1], high[2] - low[2]
    return (2 * zeroth, 2 * (reach * zeroth - first),
            2 * (reach**2 * zeroth - 2 * reach * first + second))


def _of_flat(u: float) -> tuple[float, float, float]:
    """Return antiderivatives of u u^n, n = 0 to 2."""
    return u**2 / 2, u**3 / 3, u**4 / 4


def _of_round(u: float, radius: float) -> tuple[float, float, float]:
    """Return antiderivatives of (radius - sqrt(radius^2 - u^2)) u^n, n = 0 to 2."""
    root = math.sqrt(max(0.0, radius**2 - u**2))
    angle = math.asin(max(-1.0, min(1.0, u / radius)))
    return (
        radius * u - (u * root + radius**2 * angle) / 2,
        radius * u**2 / 2 + root**3 / 3,
        radius * u**3 / 3 - u * (2 * u**2 - radius**2) * root / 8 - radius**4 * angle / 8,
    )


def finished_share(station: Station, build: Build, finishing: Finishing, part: float = 1.0) -> float:
    """Return which part of a section's stiffness is left once edges, sides and faces are finished.

    Args:
        station: the section before, its faces as the strokes leave them.
        build: the limb's lay-up there.
        finishing: what the last work takes.
        part [1]: of it that is done to edges and sides here, 0 to 1; an edge is never less round than before.

    Returns:
        [1] stiffness after over stiffness before.

    Raises:
        ValueError: no glass, no width or no room for the radius is left.

    Limits:
        Alike on both edges of a face and on both faces' depth.

    Source: beam-theory, the quotient of two `edged_rigidity`.
    """
    old = Corner(finishing.radius_before)
    if old.reach == 0.0:
        before = section_rigidity(station, build, 0.0, 0.5)
    else:
        before = edged_rigidity(station.width, layers_of(station, build), old, old)
    thinner = Build(build.back - finishing.faces, build.belly - finishing.faces,
                    build.glass_modulus, build.core_modulus)
    left = Station(station.position, station.width - part * finishing.width,
                   station.thickness - 2 * finishing.faces)
    cut = Corner(part * finishing.radius, finishing.flat)
    new = cut if cut.reach > old.reach else old
    return edged_rigidity(left.width, layers_of(left, thinner),
                          old if finishing.faces_edged == "belly" else new,
                          old if finishing.faces_edged == "back" else new) / before
