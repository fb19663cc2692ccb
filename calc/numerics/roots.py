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
