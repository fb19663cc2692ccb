"""A bow as two rigid limbs on elastic hinges: where nock and string are, roughly.

Each limb is a rigid lever of three quarters of its length that turns about an elastic hinge (Hickman's
picture of a limb), the string is straight and does not stretch.
"""

import math

LEVER_SHARE = 0.75


def half_string_length(bow_length: float, riser_length: float, brace_height: float) -> float:
    """Return half the braced string's length in the lever picture.

    Args:
        bow_length [m]: nock to nock along the unstrung bow.
        riser_length [m]: fadeout to fadeout.
        brace_height [m]: less than three quarters of a limb.

    Returns:
        [m] from mid bow to the nock, along the string.

    Source: lever-estimate, derived here: the right triangle of lever and brace height.
    """
    lever = LEVER_SHARE * (bow_length - riser_length) / 2
    return bow_length / 2 - lever + math.sqrt(lever**2 - brace_height**2)
