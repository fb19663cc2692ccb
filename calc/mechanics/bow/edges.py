"""What rounded edges, narrower sides and thinner faces cost a limb's section in stiffness."""

import math

from calc.checks import require_not_negative, require_positive
from calc.mechanics.bow.laminate import Layer
from calc.mechanics.bow.thinning import Build, Station, layers_of


class Finishing:
    """What the last work takes off a limb [m]: the radius its four edges are rounded to and the one they had
    before, how much narrower both sides together become, and what comes off each face, glass only."""

    def __init__(self, radius: float, radius_before: float, width: float, faces: float) -> None:
        self.radius = radius
        self.radius_before = radius_before
        self.width = width
        self.faces = faces


def rounded_rigidity(width: float, layers: tuple[Layer, ...], radius: float) -> float:
    """Return the bending stiffness E I of a laminated limb whose four edges are rounded.

    At u = radius - depth below a face, each edge lacks radius - sqrt(radius^2 - u^2) of its width. With
    S_n the integral of E b(z) z^n over the depth: E I = S_2 - S_1^2 / S_0.

    Args:
        width [m]: between the sides, > 0.
        layers: from back to belly, each with thickness [m] > 0 and modulus [Pa] > 0.
        radius [m]: of the edges, 0 to half of the thickness and half of the width.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: a size is not positive, or the radius does not fit the section.

    Limits:
        Sections stay plane; layers do not slip.

    Source: beam-theory, derived here: the transformed section less its corners.
    """
    require_positive("width", width, "m")
    require_not_negative("edge radius", radius, "m")
    if not layers:
        raise ValueError("a laminate must have at least one layer, got none")
    thickness = 0.0
    for layer in layers:
        require_positive("layer thickness", layer.thickness, "m")
        require_positive("layer modulus", layer.modulus, "Pa")
        thickness += layer.thickness
    if radius > min(width, thickness) / 2:
        raise ValueError(f"the edge radius must be at most half of width and thickness, got {radius} m")
    zeroth = first = second = top = 0.0
    for layer in layers:
        bottom = top + layer.thickness
        gone = _gone(top, bottom, thickness, radius)
        zeroth += layer.modulus * (width * (bottom - top) - gone[0])
        first += layer.modulus * (width * (bottom**2 - top**2) / 2.0 - gone[1])
        second += layer.modulus * (width * (bottom**3 - top**3) / 3.0 - gone[2])
        top = bottom
    return second - first**2 / zeroth


def _gone(top: float, bottom: float, thickness: float, radius: float) -> tuple[float, float, float]:
    """Return the integrals of the missing width times z^n, n = 0 to 2, from top to bottom of a layer."""
    back = _corner(min(top, radius), min(bottom, radius), radius)
    belly = _corner(min(thickness - bottom, radius), min(thickness - top, radius), radius)
    return (
        back[0] + belly[0],
        back[1] + thickness * belly[0] - belly[1],
        back[2] + thickness**2 * belly[0] - 2 * thickness * belly[1] + belly[2],
    )


def _corner(start: float, end: float, radius: float) -> tuple[float, float, float]:
    """Return the integrals over depths below one face of what both its edges lack times depth^n."""
    if end <= start:
        return 0.0, 0.0, 0.0
    high, low = _moments(radius - start, radius), _moments(radius - end, radius)
    zeroth, first, second = high[0] - low[0], high[1] - low[1], high[2] - low[2]
    return (2 * zeroth, 2 * (radius * zeroth - first),
            2 * (radius**2 * zeroth - 2 * radius * first + second))


def _moments(u: float, radius: float) -> tuple[float, float, float]:
    """Return antiderivatives of (radius - sqrt(radius^2 - u^2)) u^n, n = 0 to 2."""
    root = math.sqrt(max(0.0, radius**2 - u**2))
    angle = math.asin(max(-1.0, min(1.0, u / radius)))
    return (
        radius * u - (u * root + radius**2 * angle) / 2,
        radius * u**2 / 2 + root**3 / 3,
        radius * u**3 / 3 - u * (2 * u**2 - radius**2) * root / 8 - radius**4 * angle / 8,
    )


def finished_share(station: Station, build: Build, finishing: Finishing) -> float:
    """Return which part of a section's stiffness is left once edges, sides and faces are finished.

    Args:
        station: the section before, its faces as the strokes leave them.
        build: the limb's lay-up there.
        finishing: what the last work takes.

    Returns:
        [1] stiffness after over stiffness before.

    Raises:
        ValueError: no glass, no width or no room for the radius is left.

    Limits:
        Alike on all four edges and on both faces.

    Source: beam-theory, the quotient of two `rounded_rigidity`.
    """
    before = rounded_rigidity(station.width, layers_of(station, build), finishing.radius_before)
    thinner = Build(build.back - finishing.faces, build.belly - finishing.faces,
                    build.glass_modulus, build.core_modulus)
    left = Station(station.position, station.width - finishing.width,
                   station.thickness - 2 * finishing.faces)
    return rounded_rigidity(left.width, layers_of(left, thinner), finishing.radius) / before
