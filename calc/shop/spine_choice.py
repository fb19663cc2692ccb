"""How the trade chooses a shaft's spine from the draw weight: rules of thumb, one named function each.

Every one of them is common practice; none was published as a standard, and shops differ. They are told in
fixed pounds, as on bows of 45 to 60 lb, and are taken here as shares of the weight at the draw:

- A shaft that must not buckle under a push P needs E I in proportion to P L^2; P grows with the draw weight.
- A shaft that is to swing equally often while the string pushes it needs E I in proportion to m L^3 / t^2,
  with t^2 in proportion to (m + K) / (draw weight over stroke): once more with the draw weight, and with L^3
  to L^4, as the stroke grows with L or not.

So whatever multiplies E I on a bow of one weight multiplies it on a bow of another, and 5 lb on 50 lb is a
tenth of any weight. An inch more on 28 in, asking for a tenth more, is the power 2.8 of the length: between
buckling's 2 and the swing's 3 to 4.
"""

import math

from calc.checks import require_positive
from calc.quantities import GRAIN, INCH, POUND_FORCE

PLAIN_LENGTH = 28 * INCH
PLAIN_POINT = 125 * GRAIN
POINT_STEP = 25 * GRAIN
HALF_CLASS = 2.5 * POUND_FORCE
"""Half of a class of shafts as they are sold, 5 lb apart."""

RULE_WEIGHT = 50 * POUND_FORCE
"""Draw weight at which the rules' shares are their fixed pounds."""

LIGHTEST_RULED, HEAVIEST_RULED = 45 * POUND_FORCE, 60 * POUND_FORCE
"""Draw weights for which the rules are told in fixed pounds."""

WEAKEST_STOCKED, STIFFEST_STOCKED = 25 * POUND_FORCE, 75 * POUND_FORCE
"""Spine weights in which shafts of cedar are offered."""


def share_for_length(length: float, power: float) -> float:
    """Return what a longer shaft asks for more, as a share: its length over 28 in, to a power, less one.

    Args:
        length [m]: from the nock's throat to the front end of the shaft, > 0.
        power [1]: 2.8 where an inch more asks for 5 lb on 50 lb.

    Returns:
        [1] share of the spine to be added; negative for a shorter shaft.

    Raises:
        ValueError: length is not positive.

    Source: bench-practice, 5 lb an inch; beam-theory, E I in proportion to P L^2 for buckling and to m L^3
        over the square of the time for a swing.
    """
    require_positive("length", length, "m")
    return math.pow(length / PLAIN_LENGTH, power) - 1.0


def share_for_point(mass: float, share: float) -> float:
    """Return what a heavier front asks for more, as a share: one for each 25 gr beyond 125 gr.

    Args:
        mass [kg]: of point and insert.
        share [1]: for 25 gr; a tenth where they ask for 5 lb on 50 lb.

    Returns:
        [1] share of the spine to be added; negative for a lighter point.

    Limits:
        At one mass of the whole arrow. Where a light bow's arrow is lighter in proportion, 25 gr are a larger
        part of it and may ask for up to their full 5 lb.

    Source: bench-practice, 5 lb for 25 gr; beam-theory, the push of the point in proportion to the weight.
    """
    return share * (mass - PLAIN_POINT) / POINT_STEP


def share_for_string(material: str, share: float) -> float:
    """Return what a string's material asks for more, as a share: nothing unless it hardly stretches.

    Args:
        material: "polyester" or "low_stretch".
        share [1]: for one that hardly stretches; a tenth where it asks for 5 lb on 50 lb.

    Returns:
        [1] share of the spine to be added.

    Raises:
        ValueError: material is neither.

    Source: bench-practice, 5 lb for a string that hardly stretches.
    """
    if material == "polyester":
        return 0.0
    elif material == "low_stretch":
        return share
    else:
        raise ValueError("string material must be polyester or low_stretch, got " + material)


def share_for_window(cut: str, share: float) -> float:
    """Return what a window asks for more, as a share: one less before centre, one more past it.

    Args:
        cut: "before", "centre" or "past".
        share [1]: either way; a tenth where it is 5 lb on 50 lb.

    Returns:
        [1] share of the spine to be added.

    Raises:
        ValueError: cut is none of these.

    Source: bench-practice, 5 lb either way of centre.
    """
    if cut == "before":
        return -share
    elif cut == "centre":
        return 0.0
    elif cut == "past":
        return share
    else:
        raise ValueError("a window must be cut before, centre or past, got " + cut)
