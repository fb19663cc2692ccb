"""What the drawn string does to the riser: angle, tension, bending moment.

x runs from the pivot point to the archer, y up, as everywhere. The bow is drawn alike on both sides, so the
string meets the line of the draw at its middle.
"""

import math

from calc.checks import require_not_negative, require_positive
from calc.mechanics.lever import LEVER_SHARE, half_string_length

RIGHT_ANGLE = math.pi / 2


def string_angle_at_draw(
    bow_length: float, riser_length: float, brace_height: float, draw_to_pivot: float
) -> float:
    """Return the angle of the drawn string from the y axis, limbs pictured as levers on elastic hinges.

    The tip lies on the circle of the lever about its hinge and on the circle of half the string about the
    nocking point; where the two meet is where it is.

    Args:
        bow_length [m]: nock to nock along the unstrung bow.
        riser_length [m]: fadeout to fadeout; shorter than the bow.
        brace_height [m]: > 0, less than the lever.
        draw_to_pivot [m]: from the pivot point to the nocking point, more than the brace height.

    Returns:
        [rad] from 0 (string along the bow) to a right angle.

    Raises:
        ValueError: the lengths make no bow, or it cannot be drawn so far.

    Limits:
        Straight limbs; a recurve that unrolls has a longer string at full draw and a smaller angle than
        this, and with it more tension.

    Source: lever-estimate, derived here: the law of cosines in the triangle of lever, half string and hinge
        to nock.
    """
    if not 0.0 < riser_length < bow_length:
        raise ValueError(f"riser_length must be positive and less than {bow_length} m, got {riser_length} m")
    lever = LEVER_SHARE * (bow_length - riser_length) / 2.0
    if not 0.0 < brace_height < min(lever, draw_to_pivot):
        raise ValueError(f"brace_height must be positive and less than lever and draw, got {brace_height} m")
    hinge = bow_length / 2.0 - lever
    string = half_string_length(bow_length, riser_length, brace_height)
    across = math.sqrt(hinge**2 + draw_to_pivot**2)
    if across >= lever + string:
        raise ValueError(f"draw_to_pivot must be less than limbs and string reach, got {draw_to_pivot} m")
    cosine = (across**2 + string**2 - lever**2) / (2.0 * across * string)
    at_nock = math.acos(min(1.0, cosine))
    to_hinge = math.atan2(hinge, draw_to_pivot)
    return RIGHT_ANGLE - (to_hinge + at_nock)


def string_tension(force: float, angle: float) -> float:
    """Return the tension in each half of a drawn string.

    F / (2 sin alpha).

    Args:
        force [N]: draw force, > 0.
        angle [rad]: of the string from the y axis, more than 0, at most a right angle.

    Returns:
        [N] tension.

    Raises:
        ValueError: force is not positive, or the angle is outside its range.

    Source: newtonian-mechanics, derived here: the forces at the nock balance.
    """
    require_positive("force", force, "N")
    _require_angle(angle)
    return force / (2.0 * math.sin(angle))


def bending_moment(force: float, angle: float, draw_to_pivot: float, height: float, behind: float) -> float:
    """Return the bending moment in a section of the riser at full draw.

    Tension times the lever arm of the string's line: F / 2 ((b + c) / tan alpha - y).

    Args:
        force [N]: draw force, > 0.
        angle [rad]: of the string from the y axis, more than 0, at most a right angle.
        draw_to_pivot [m]: b, from the pivot point to the nocking point, > 0.
        height [m]: y, of the section above the pivot point, >= 0.
        behind [m]: c, of the section's middle from the pivot point toward the back, >= 0.

    Returns:
        [N m] moment; positive stretches the back.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        Static; the knock of the shot, a fall or a dry fire asks for more.

    Source: newtonian-mechanics, derived here: the moment of one half of the string about the section.
    """
    require_positive("force", force, "N")
    _require_angle(angle)
    require_positive("draw_to_pivot", draw_to_pivot, "m")
    require_not_negative("height", height, "m")
    require_not_negative("behind", behind, "m")
    return force / 2.0 * ((draw_to_pivot + behind) / math.tan(angle) - height)


def _require_angle(angle: float) -> None:
    if not 0.0 < angle <= RIGHT_ANGLE:
        raise ValueError(f"angle must be more than 0 and at most a right angle, got {angle} rad")
