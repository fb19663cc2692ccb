"""Where something changes, and two equations at once."""

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable


def halved(low: float, high: float, is_before: "Callable[[float], bool]") -> float:
    """Return where a condition ends that holds at the low end, by halving until floats end.

    Args:
        low, high [any]: ends of the stretch; the condition holds at low and no longer at high.
        is_before: whether it holds at a place.

    Returns:
        [any] the place, as near as floats lie.

    Source: interpolation, derived here: halving.
    """
    while True:
        middle = (low + high) / 2.0
        if not low < middle < high:
            return middle
        if is_before(middle):
            low = middle
        else:
            high = middle


def crossing(
    ends: tuple[float, float], at_ends: tuple[float, float], value: "Callable[[float], float]",
    tolerance: float, most: int = 60
) -> float:
    """Return where a value that changes its sign over a stretch comes to nothing.

    Args:
        ends [any]: of the stretch.
        at_ends [any]: the value at either end, one of them not positive and the other not negative.
        value: at a place.
        tolerance [any]: of the value, > 0.
        most: places tried.

    Returns:
        [any] a place where the value is within the tolerance.

    Raises:
        ValueError: the value has one sign at both ends, or it does not come down to the tolerance.

    Source: interpolation, false position with the value of the end that stays halved (Illinois), from memory.
    """
    (low, high), (at_low, at_high) = ends, at_ends
    if at_low * at_high > 0.0:
        raise ValueError("the value must change its sign over the stretch, got "
                         + str(at_low) + " and " + str(at_high))
    if at_low == at_high:
        return low
    stayed = 0
    for _ in range(most):
        place = low - at_low * (high - low) / (at_high - at_low)
        found = value(place)
        if abs(found) <= tolerance:
            return place
        if (found > 0.0) == (at_high > 0.0):
            high, at_high = place, found
            at_low = at_low / 2.0 if stayed == 1 else at_low
            stayed = 1
        else:
            low, at_low = place, found
            at_high = at_high / 2.0 if stayed == -1 else at_high
            stayed = -1
    raise ValueError("the value does not come down to " + str(tolerance))


def solved(
    first: tuple[float, float], second: tuple[float, float], right: tuple[float, float]
) -> tuple[float, float] | None:
    """Return what solves two linear equations.

    Args:
        first, second: the factors of both unknowns in either equation.
        right: what the equations come to.

    Returns:
        Both unknowns; None where the equations do not tell them apart.

    Source: interpolation, derived here: Cramer's rule.
    """
    (a, b), (c, d) = first, second
    determinant = a * d - b * c
    if determinant == 0.0 or determinant != determinant:
        return None
    return (d * right[0] - b * right[1]) / determinant, (a * right[1] - c * right[0]) / determinant
