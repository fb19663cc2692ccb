"""Bowstrings: length from the bow's marked length, strands from strength."""

import math

from calc.quantities import INCH, in_both

SHORTER_THAN_BOW = 3 * INCH
"""The standard string under its test load is this much shorter than the marked bow length."""


def standard_string_length(bow_length: float) -> float:
    """Return the length of the standard string of a bow, under its test load.

    Marked bow length less 3 in.

    Args:
        bow_length [m]: as marked, more than 3 in.

    Returns:
        [m] over both loops, under 100 lb.

    Raises:
        ValueError: bow_length is not more than 3 in.

    Source: amo-bow-length, 3 in less than the marked length.
    """
    if not SHORTER_THAN_BOW < bow_length < math.inf:
        raise ValueError(f"bow_length must be finite and more than {in_both(SHORTER_THAN_BOW)}, "
                         f"got {in_both(bow_length)}")
    return bow_length - SHORTER_THAN_BOW


def strands_for(draw_weight: float, factor: float, strand_strength: float, fewest: int) -> int:
    """Return the least even count of strands whose strength is a factor times the draw weight.

    Args:
        draw_weight [N]: > 0.
        factor [1]: strength of the whole string over draw weight, > 0.
        strand_strength [N]: breaking force of one strand, > 0.
        fewest [1]: never less than this.

    Returns:
        [1] strands, even, so that two bundles are alike.

    Raises:
        ValueError: draw_weight, factor or strand_strength is not positive.

    Limits:
        Breaking force of new straight strands; twist, wear and the knock of the shot are in the factor.

    Source: bench-practice, strength as a factor of draw weight and an even count.
    """
    if not (0.0 < draw_weight < math.inf and 0.0 < factor < math.inf and 0.0 < strand_strength < math.inf):
        raise ValueError(f"draw_weight, factor and strand_strength must be positive, got {draw_weight} N, "
                         f"{factor}, {strand_strength} N")
    needed = max(draw_weight * factor / strand_strength * (1.0 - 1e-12), float(fewest))
    return 2 * math.ceil(needed / 2.0)
