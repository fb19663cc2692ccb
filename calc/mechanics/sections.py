"""Areas, second moments and section moduli of the cross sections met at the bench."""

import math

from calc.checks import require_not_negative, require_positive
from calc.quantities import ROUNDING


def rectangle_area(width: float, thickness: float) -> float:
    """Return the area of a rectangle.

    Args:
        width [m]: > 0.
        thickness [m]: > 0.

    Returns:
        [m^2] width times thickness.

    Raises:
        ValueError: width or thickness is not positive.

    Source: geometry, width times thickness.
    """
    require_positive("width", width, "m")
    require_positive("thickness", thickness, "m")
    return width * thickness


def rectangle_second_moment_of_area(width: float, thickness: float) -> float:
    """Return the second moment of a rectangle about its middle, for bending through the thickness.

    b t^3 / 12: ten per cent more width is ten per cent stiffer, ten per cent more thickness a third.

    Args:
        width [m]: along the bending axis, > 0.
        thickness [m]: across it, > 0.

    Returns:
        [m^4] second moment of area.

    Raises:
        ValueError: width or thickness is not positive.

    Source: beam-theory, the integral of z^2 over the rectangle.
    """
    return rectangle_area(width, thickness) * thickness**2 / 12.0


def round_area(diameter: float) -> float:
    """Return the area of a solid round section.

    Args:
        diameter [m]: > 0.

    Returns:
        [m^2] pi d^2 / 4.

    Raises:
        ValueError: diameter is not positive.

    Source: geometry, the area of a circle.
    """
    require_positive("diameter", diameter, "m")
    return math.pi * diameter**2 / 4.0


def round_second_moment_of_area(diameter: float) -> float:
    """Return the second moment of a solid round section about any diameter.

    Args:
        diameter [m]: > 0.

    Returns:
        [m^4] pi d^4 / 64.

    Raises:
        ValueError: diameter is not positive.

    Source: beam-theory, the integral of z^2 over the circle.
    """
    return round_area(diameter) * diameter**2 / 16.0


def bore_of_tube(diameter: float, wall: float) -> float:
    """Return the inside diameter of a round tube.

    Args:
        diameter [m]: outside, > 0.
        wall [m]: > 0 and less than half the diameter.

    Returns:
        [m] inside diameter.

    Raises:
        ValueError: diameter or wall is not positive, or the wall fills the tube.

    Source: geometry, a difference of lengths.
    """
    require_positive("diameter", diameter, "m")
    require_positive("wall", wall, "m")
    if 2.0 * wall >= diameter:
        raise ValueError(f"wall must be less than half the diameter of {diameter} m, got {wall} m")
    return diameter - 2.0 * wall


def tube_area(diameter: float, wall: float) -> float:
    """Return the area of the wall of a round tube.

    Args:
        diameter [m]: outside, > 0.
        wall [m]: > 0 and less than half the diameter.

    Returns:
        [m^2] pi (D^2 - d^2) / 4.

    Raises:
        ValueError: diameter or wall is not positive, or the wall fills the tube.

    Source: geometry, a circle less a circle.
    """
    bore = bore_of_tube(diameter, wall)
    return math.pi * (diameter - bore) * (diameter + bore) / 4.0


def tube_second_moment_of_area(diameter: float, wall: float) -> float:
    """Return the second moment of a round tube about any diameter.

    Args:
        diameter [m]: outside, > 0.
        wall [m]: > 0 and less than half the diameter.

    Returns:
        [m^4] pi (D^4 - d^4) / 64.

    Raises:
        ValueError: diameter or wall is not positive, or the wall fills the tube.

    Source: beam-theory, a circle less a circle.
    """
    bore = bore_of_tube(diameter, wall)
    return tube_area(diameter, wall) * (diameter**2 + bore**2) / 16.0


def section_modulus(second_moment_of_area: float, distance_to_face: float) -> float:
    """Return the section modulus: bending moment over this is the stress at the face.

    Args:
        second_moment_of_area [m^4]: about the neutral axis, > 0.
        distance_to_face [m]: from the neutral axis to the face asked about, > 0.

    Returns:
        [m^3] I / c.

    Raises:
        ValueError: an argument is not positive.

    Source: beam-theory, stress is moment times distance over second moment.
    """
    require_positive("second_moment_of_area", second_moment_of_area, "m^4")
    require_positive("distance_to_face", distance_to_face, "m")
    return second_moment_of_area / distance_to_face


def ellipse_area(width: float, depth: float) -> float:
    """Return the area of an ellipse.

    Args:
        width [m]: whole, > 0.
        depth [m]: whole, > 0.

    Returns:
        [m^2] pi w d / 4.

    Raises:
        ValueError: width or depth is not positive.

    Source: geometry, the area of an ellipse.
    """
    return rectangle_area(width, depth) * math.pi / 4.0


def ellipse_second_moment_of_area(width: float, depth: float) -> float:
    """Return the second moment of an ellipse about its width.

    Args:
        width [m]: whole, along the bending axis, > 0.
        depth [m]: whole, across it, > 0.

    Returns:
        [m^4] pi w d^3 / 64.

    Raises:
        ValueError: width or depth is not positive.

    Source: beam-theory, the integral of z^2 over the ellipse.
    """
    return ellipse_area(width, depth) * depth**2 / 16.0


class Section:
    """A section about its own neutral axis: area [m^2], second moment [m^4], distance to the farther face
    [m].
    """

    def __init__(self, area: float, second_moment_of_area: float, distance_to_face: float) -> None:
        self.area = area
        self.second_moment_of_area = second_moment_of_area
        self.distance_to_face = distance_to_face


def without_strip(section: Section, strip_width: float, strip_depth: float, offset: float) -> Section:
    """Return what is left of a section that is alike on both sides of its axis, less a rectangular strip.

    The neutral axis moves away from the strip.

    Args:
        section [Section]: whole; its axis in the middle.
        strip_width [m]: along the bending axis, >= 0.
        strip_depth [m]: across it, >= 0.
        offset [m]: of the strip's middle from the section's middle; strip inside the section.

    Returns:
        [Section] the net section about its own axis.

    Raises:
        ValueError: the strip sticks out of the section or takes nearly all of it.

    Source: beam-theory, the parallel axis theorem.
    """
    require_not_negative("strip_width", strip_width, "m")
    require_not_negative("strip_depth", strip_depth, "m")
    if abs(offset) + strip_depth / 2.0 > section.distance_to_face * (1.0 + ROUNDING):
        raise ValueError(f"the strip must lie inside the section, got an offset of {offset} m and a depth "
                         f"of {strip_depth} m")
    taken = strip_width * strip_depth
    area = section.area - taken
    if area < 0.05 * section.area:
        raise ValueError(f"the strip must leave some of the section, got {taken} m^2 of {section.area} m^2")
    shift = -taken * offset / area
    second_moment = (section.second_moment_of_area - strip_width * strip_depth**3 / 12.0
                     - taken * offset**2 - area * shift**2)
    if second_moment <= 0.0:
        raise ValueError(f"the strip must leave some of the section, got {taken} m^2 of {section.area} m^2")
    return Section(area, second_moment, section.distance_to_face + abs(shift))


def ellipse_girth(width: float, depth: float) -> float:
    """Return the distance round an oval.

    Ramanujan: pi / 2 (w + d) (1 + 3 h / (10 + sqrt(4 - 3 h))), h = ((w - d) / (w + d))^2.

    Args:
        width [m]: > 0.
        depth [m]: > 0.

    Returns:
        [m] girth, within 0.05 % however flat the oval.

    Raises:
        ValueError: width or depth is not positive.

    Source: geometry, derived by Ramanujan: the second of his approximations.
    """
    require_positive("width", width, "m")
    require_positive("depth", depth, "m")
    h = ((width - depth) / (width + depth)) ** 2
    return math.pi / 2.0 * (width + depth) * (1.0 + 3.0 * h / (10.0 + math.sqrt(4.0 - 3.0 * h)))
