"""The cubic between two places that has given values and given slopes at both.

Places run from 0 to 1 along the piece; slopes are per piece. Values, slopes and the area may be of any unit.
"""


def value(start: float, end: float, leave: float, arrive: float, part: float) -> float:
    """Return the cubic's value.

    Args:
        start, end [any]: values at both ends.
        leave, arrive [any]: slopes there, per piece.
        part [1]: place from 0 to 1.

    Returns:
        [any] the value.

    Source: interpolation, the cubic through two values and two slopes.
    """
    rise = end - start
    return start + part * (
        leave + part * (3.0 * rise - 2.0 * leave - arrive + part * (leave + arrive - 2.0 * rise)))


def slope(rise: float, leave: float, arrive: float, part: float) -> float:
    """Return the cubic's slope per piece.

    Args:
        rise [any]: end value less start value.
        leave, arrive [any]: slopes at both ends, per piece.
        part [1]: place from 0 to 1.

    Returns:
        [any] the slope, per piece.

    Source: interpolation, the cubic through two values and two slopes.
    """
    return leave + part * (
        2.0 * (3.0 * rise - 2.0 * leave - arrive) + 3.0 * part * (leave + arrive - 2.0 * rise))


def area(start: float, end: float, leave: float, arrive: float, part: float) -> float:
    """Return the area under the cubic from its start to a place, for a piece of unit width.

    Args:
        start, end [any]: values at both ends.
        leave, arrive [any]: slopes there, per piece.
        part [1]: place from 0 to 1.

    Returns:
        [any] the area.

    Source: interpolation, the cubic through two values and two slopes, integrated here.
    """
    rise = end - start
    bend, twist = 3.0 * rise - 2.0 * leave - arrive, leave + arrive - 2.0 * rise
    return part * (start + part * (leave / 2 + part * (bend / 3 + part * twist / 4)))
