"""How the trade chooses a shaft's spine from the draw weight: rules of thumb, one named function each.

Every one of them is common practice; none was published as a standard, and shops differ.
"""

from calc.quantities import GRAIN, INCH, POUND_FORCE

PLAIN_LENGTH = 28 * INCH
PLAIN_POINT = 125 * GRAIN
HALF_CLASS = 2.5 * POUND_FORCE
"""Half of a class of shafts as they are sold, 5 lb apart."""


def spine_for_length(length: float) -> float:
    """Return the spine that a longer shaft asks for: 5 lb for each inch beyond 28 in.

    Args:
        length [m]: from the nock's throat to the front end of the shaft.

    Returns:
        [N] to be added to the draw weight; negative for a shorter shaft.

    Source: bench-practice, 5 lb an inch.
    """
    return 5 * POUND_FORCE / INCH * (length - PLAIN_LENGTH)


def spine_for_point(mass: float) -> float:
    """Return the spine that a heavier front asks for: 5 lb for each 25 gr beyond 125 gr.

    Args:
        mass [kg]: of point and insert.

    Returns:
        [N] to be added to the draw weight; negative for a lighter point.

    Source: bench-practice, 5 lb for 25 gr.
    """
    return 5 * POUND_FORCE / (25 * GRAIN) * (mass - PLAIN_POINT)


def spine_for_string(material: str) -> float:
    """Return the spine that a string's material asks for: 5 lb more for one that hardly stretches.

    Args:
        material: "polyester" or "low_stretch".

    Returns:
        [N] to be added to the draw weight.

    Raises:
        ValueError: material is neither.

    Source: bench-practice, 5 lb for a string that hardly stretches.
    """
    if material == "polyester":
        return 0.0
    elif material == "low_stretch":
        return 5 * POUND_FORCE
    else:
        raise ValueError("string material must be polyester or low_stretch, got " + material)


def spine_for_window(cut: str) -> float:
    """Return the spine that a window asks for: 5 lb less before centre, 5 lb more past it.

    Args:
        cut: "before", "centre" or "past".

    Returns:
        [N] to be added to the draw weight.

    Raises:
        ValueError: cut is none of these.

    Source: bench-practice, 5 lb either way of centre.
    """
    if cut == "before":
        return -5 * POUND_FORCE
    elif cut == "centre":
        return 0.0
    elif cut == "past":
        return 5 * POUND_FORCE
    else:
        raise ValueError("a window must be cut before, centre or past, got " + cut)
