"""What it takes to pull a screw out of wood, straight out of side grain."""

import math

from calc.checks import require_positive

WOOD_SCREW = 108.25
LAG_SCREW = 125.4
"""Constants of the handbook's equations, for newtons and millimetres."""

MILLIMETRE = 1e-3

ROOT_OF_SHANK = 2.0 / 3.0
"""Root of a wood screw's thread over its shank (wood-handbook-fasteners)."""

LEAD_HARD, LEAD_SOFT = 0.90, 0.70
"""Lead hole over the root, in hard and in soft wood."""


def screw_withdrawal(specific_gravity: float, diameter: float, length: float) -> float:
    """Return the pull at which a wood screw comes out of side grain.

    108.25 G^2 D L, D and L in mm, the pull in N.

    Args:
        specific_gravity [1]: of the wood, oven-dry mass over volume at 12 % moisture, > 0.
        diameter [m]: of the shank, > 0.
        length [m]: of thread in the wood, > 0.

    Returns:
        [N] ultimate pull, of short duration.

    Raises:
        ValueError: an argument is not positive.

    Limits:
        Sound seasoned wood, a lead hole that fits, and no end grain: there screws are not loaded this way. In
        use about a fifth of it is allowed.

    Source: wood-handbook-fasteners, its equation for wood screws.
    """
    _require(specific_gravity, diameter, length)
    return WOOD_SCREW * specific_gravity**2 * (diameter / MILLIMETRE) * (length / MILLIMETRE)


def lag_screw_withdrawal(specific_gravity: float, diameter: float, length: float) -> float:
    """Return the pull at which a lag screw comes out of side grain.

    125.4 G^(3/2) D^(3/4) L, D and L in mm, the pull in N.

    Args:
        specific_gravity [1]: of the wood, oven-dry mass over volume at 12 % moisture, > 0.
        diameter [m]: over the thread, > 0.
        length [m]: of thread in the wood, > 0.

    Returns:
        [N] ultimate pull, of short duration.

    Raises:
        ValueError: an argument is not positive.

    Limits:
        Made for long screws with deep threads. For a short insert with a shallow thread it is an upper guess.

    Source: wood-handbook-fasteners, its equation for lag screws (from memory).
    """
    _require(specific_gravity, diameter, length)
    return (LAG_SCREW * math.pow(specific_gravity, 1.5) * math.pow(diameter / MILLIMETRE, 0.75)
            * (length / MILLIMETRE))


def lead_hole(diameter: float, share: float) -> float:
    """Return the hole to drill for a wood screw, as a share of the root of its thread.

    Args:
        diameter [m]: of the shank, > 0.
        share [1]: of the root, LEAD_HARD or LEAD_SOFT, > 0.

    Returns:
        [m] diameter of the hole.

    Raises:
        ValueError: an argument is not positive.

    Source: wood-handbook-fasteners, root of 2/3 of the shank, 90 % of it in hard wood and 70 % in soft.
    """
    require_positive("diameter", diameter, "m")
    require_positive("share", share, "")
    return diameter * ROOT_OF_SHANK * share


def _require(specific_gravity: float, diameter: float, length: float) -> None:
    require_positive("specific gravity", specific_gravity, "")
    require_positive("diameter", diameter, "m")
    require_positive("length", length, "m")
