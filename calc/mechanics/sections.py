"""Areas, second moments and section moduli of the cross sections met at the bench."""

import math

from calc.mechanics.checks import require_positive


def rectangle_area(width: float, thickness: float) -> float:
    """Return the area of a rectangle.

    Args:
        width [m]: > 0.
        thickness [m]: > 0.

    Returns:
        [m^2] width times thickness.

    Raises:
        ValueError: width or thickness is not positive.

    Source: geometry.
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

    Source: beam-theory.
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

    Source: geometry.
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

    Source: beam-theory.
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

    Source: geometry.
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

    Source: geometry.
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

    Source: beam-theory.
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

    Source: beam-theory.
    """
    require_positive("second_moment_of_area", second_moment_of_area, "m^4")
    require_positive("distance_to_face", distance_to_face, "m")
    return second_moment_of_area / distance_to_face
