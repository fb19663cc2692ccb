"""A first-order estimate of tiller from two rigid levers on hinges, to hold the bending bow against.

It shares nothing with the computed bow: straight, rigid limbs, a straight string that does not stretch.
"""

import math


def tiller_per_stiffness_lost(
    bow_length: float, riser_length: float, brace_height: float, reading_height: float
) -> float:
    """Return how fast tiller changes as one limb of a braced bow loses stiffness.

    With the bow near balance: limb angle p at brace (sin p = brace / lever),
    half string H, c = lever cos p / H, a = 1/2 p / (1 - p cot p (1 - c)) the
    turn of each limb per unit of relative stiffness lost by one of them. The
    string then tilts by c a, which at height y changes upper minus lower
    distance by 2 c a y, less 2 a (y - hinge) / cos^2 p beyond the hinge.

    Args:
        bow_length [m]: nock to nock along the unstrung bow.
        riser_length [m]: fadeout to fadeout; shorter than the bow.
        brace_height [m]: > 0, less than the lever.
        reading_height [m]: where the distances are read, from mid bow along the string.

    Returns:
        [m] change of (upper - lower) per unit of relative stiffness lost by the upper limb.

    Raises:
        ValueError: the lengths do not make a bow that can be braced to this height.

    Limits:
        First order in the stiffness lost; straight limbs without reflex.

    """
    if not 0 < riser_length < bow_length:
        raise ValueError("the riser must be shorter than the bow")
    lever = 0.75 * (bow_length - riser_length) / 2
    if not 0 < brace_height < lever:
        raise ValueError("the brace height must be less than three quarters of a limb")
    hinge = bow_length / 2 - lever
    turn = math.asin(brace_height / lever)
    half_string = hinge + lever * math.cos(turn)
    if not 0 < reading_height < half_string:
        raise ValueError("the reading must be taken between the middle of the string and its end")
    tilt = lever * math.cos(turn) / half_string
    swing = 0.5 * turn / (1 - turn / math.tan(turn) * (1 - tilt))
    beyond_hinge = max(0.0, reading_height - hinge)
    return 2 * swing * (tilt * reading_height - beyond_hinge / math.cos(turn) ** 2)
