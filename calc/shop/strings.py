"""Bowstrings: length from the bow's marked length, strands from strength."""

import math

from calc.checks import require_not_negative, require_positive
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


def strands_for(
    draw_weight: float, factor: float, strand_strength: float, fewest: int, bundles: int = 2
) -> int:
    """Return the least count of strands, alike in all bundles, whose strength is a factor times the weight.

    Args:
        draw_weight [N]: > 0.
        factor [1]: strength of the whole string over draw weight, > 0.
        strand_strength [N]: breaking force of one strand, > 0.
        fewest [1]: never less than this.
        bundles [1]: of which the string is laid, 1 or more; an endless one has two halves.

    Returns:
        [1] strands, a multiple of the bundles.

    Raises:
        ValueError: draw_weight, factor, strand_strength or bundles is not positive.

    Limits:
        Breaking force of new straight strands; twist, wear and the knock of the shot are in the factor.

    Source: bench-practice, strength as a factor of draw weight and bundles that are alike.
    """
    if not (0.0 < draw_weight < math.inf and 0.0 < factor < math.inf and 0.0 < strand_strength < math.inf):
        raise ValueError(f"draw_weight, factor and strand_strength must be positive, got {draw_weight} N, "
                         f"{factor}, {strand_strength} N")
    if bundles < 1:
        raise ValueError(f"bundles must be 1 or more, got {bundles}")
    needed = max(draw_weight * factor / strand_strength * (1.0 - 1e-12), float(fewest))
    return bundles * math.ceil(needed / bundles)


def twist_take_up(length: float, diameter: float, pitch: float) -> float:
    """Return by how much strands are longer than the string that they are twisted into.

    Strands lie on helices of all radii up to R: mean length over the string's
    2 ((1 + k^2)^(3/2) - 1) / (3 k^2), k = 2 pi R / pitch; what is more than 1 of it, written without a
    difference of nearly equal numbers: k^2 (2 s + 1) / (3 (s + 1)^2), s = sqrt(1 + k^2).

    Args:
        length [m]: of the twisted string, >= 0.
        diameter [m]: of the string, > 0.
        pitch [m]: of string for one twist, > 0.

    Returns:
        [m] more strand than string.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        Twist alone. Strands that are laid over one another in bundles, and stretch, change it by as much.

    Source: geometry, derived here: helices averaged over a round section.
    """
    require_not_negative("length", length, "m")
    require_positive("diameter", diameter, "m")
    require_positive("pitch", pitch, "m")
    k = math.pi * diameter / pitch
    s = math.sqrt(1.0 + k * k)
    return length * k * k * (2.0 * s + 1.0) / (3.0 * (s + 1.0) * (s + 1.0))


def serving_thread_length(served: float, string_diameter: float, thread_diameter: float) -> float:
    """Return the thread that a close serving takes.

    served / thread x pi (string + thread).

    Args:
        served [m]: length of string that is served, >= 0.
        string_diameter [m]: > 0.
        thread_diameter [m]: > 0.

    Returns:
        [m] thread, its ends not counted.

    Raises:
        ValueError: an argument is outside its range.

    Source: geometry, derived here: turns side by side round a cylinder.
    """
    require_not_negative("served", served, "m")
    require_positive("string diameter", string_diameter, "m")
    require_positive("thread diameter", thread_diameter, "m")
    return served / thread_diameter * math.pi * (string_diameter + thread_diameter)
