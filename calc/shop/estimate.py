"""Three-point estimates: a likely figure with a low and a high one, and what sums of them do."""

import math


def expected(low: float, likely: float, high: float) -> float:
    """Return the mean of a three-point estimate.

    (low + 4 likely + high) / 6, the mean of the beta distribution that project planners use.

    Args:
        low [any]: if all goes well; in any one unit.
        likely [any]: most likely, from low to high.
        high [any]: if much goes wrong.

    Returns:
        [same] mean.

    Raises:
        ValueError: the three are not in order.

    Source: three-point-estimate, its mean.
    """
    _require_order(low, likely, high)
    return (low + 4.0 * likely + high) / 6.0


def spread(low: float, likely: float, high: float) -> float:
    """Return the standard deviation of a three-point estimate.

    (high - low) / 6.

    Args:
        low [any]: if all goes well; in any one unit.
        likely [any]: most likely, from low to high.
        high [any]: if much goes wrong.

    Returns:
        [same] standard deviation.

    Raises:
        ValueError: the three are not in order.

    Source: three-point-estimate, its standard deviation.
    """
    _require_order(low, likely, high)
    return (high - low) / 6.0


def spread_of_sum(spreads: list[float]) -> float:
    """Return the standard deviation of a sum of figures that do not depend on one another.

    Args:
        spreads [any]: standard deviation of each, >= 0, all in one unit.

    Returns:
        [same] root of the sum of squares.

    Raises:
        ValueError: a spread is negative.

    Source: three-point-estimate, variances of independent figures add.
    """
    if any(each < 0.0 for each in spreads):
        raise ValueError("spreads must not be negative")
    return math.sqrt(sum([each**2 for each in spreads]))


def _require_order(low: float, likely: float, high: float) -> None:
    if not low <= likely <= high:
        raise ValueError(f"low, likely and high must be in order, got {low}, {likely}, {high}")
