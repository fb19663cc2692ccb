"""Where the string lies over a limb: lean, twist, and how a groove points.

Seen from the belly with the upper tip up; to the right is positive.
"""

import math

from calc.checks import require_positive


def lean(offset: float, height: float) -> float:
    """Return the angle between a limb's face and the plane of the string at one place.

    atan(offset / height). True where the middle of the limb lies in the plane of the string; a limb that
    bends sideways adds to it.

    Args:
        offset [m]: of the string from the middle of the limb's width, to the right positive.
        height [m]: of the string above the belly there, > 0.

    Returns:
        [deg] lean, positive where the string lies to the right.

    Raises:
        ValueError: height is not positive.

    Source: geometry, derived here: the angle of a right triangle.
    """
    require_positive("height", height, "m")
    return math.atan2(offset, height) * 180.0 / math.pi


def groove_angle(offset_outer: float, offset_inner: float, length: float) -> float:
    """Return how far a string groove points away from the middle line of its limb.

    atan((inner - outer) / length).

    Args:
        offset_outer [m]: of the groove from the middle of the tip, at the end by the nock, right positive.
        offset_inner [m]: the same at its other end.
        length [m]: of the groove between both, > 0.

    Returns:
        [deg] angle, positive where the groove points to the right on its way to the riser.

    Raises:
        ValueError: length is not positive.

    Source: geometry, derived here: the angle of a right triangle.
    """
    require_positive("length", length, "m")
    return math.atan2(offset_inner - offset_outer, length) * 180.0 / math.pi
