"""What is known of several figures at once, and what a reading adds to it: linear, errors spread normally."""

import math

TERMS = 200  # of a series that ends long before


class Belief:
    """Most likely values and their covariance, one row a value."""

    def __init__(self, mean: list[float], covariance: list[list[float]]) -> None:
        self.mean = mean
        self.covariance = covariance


def independent(values: list[tuple[float, float]]) -> Belief:
    """Return a belief in values that do not hang together.

    Args:
        values [any]: each with its standard error.

    Returns:
        Belief.

    Source: least-squares, a diagonal covariance.
    """
    size = len(values)
    return Belief([value for value, _ in values],
                  [[values[i][1] ** 2 if i == j else 0.0 for j in range(size)] for i in range(size)])


def product(left: list[float], right: list[float]) -> float:
    """Return the sum of the products of two rows.

    Args:
        left [any]: a row.
        right [any]: another one of the same length.

    Returns:
        [any] their product.

    Source: geometry, the product of two vectors.
    """
    total = 0.0
    for a, b in zip(left, right):
        if a != 0.0:
            total += a * b
    return total


def times(belief: Belief, row: list[float]) -> list[float]:
    """Return how each value hangs together with a sum of them.

    Args:
        belief: in the values.
        row [any]: what of each value the sum takes.

    Returns:
        [any] covariances, one a value.

    Source: least-squares, a covariance by a row.
    """
    return [product(row, each) for each in belief.covariance]


def variance(belief: Belief, row: list[float]) -> float:
    """Return the variance of a sum of the values.

    Args:
        belief: in the values.
        row [any]: what of each value the sum takes.

    Returns:
        [any] its variance.

    Source: least-squares, the error of a sum from the covariance.
    """
    return max(0.0, product(row, times(belief, row)))


def learnt(belief: Belief, row: list[float], lack: float, error: float) -> Belief:
    """Return the belief once a sum of the values has been read.

    Args:
        belief: before the reading.
        row [any]: what of each value the sum takes.
        lack [any]: the reading less what was foretold of it.
        error [any]: standard error of the reading.

    Returns:
        The belief after it; the same where neither the values nor the reading have an error.

    Source: least-squares, one reading added to the normal equations.
    """
    hang = times(belief, row)
    total = product(row, hang) + error * error
    if not total > 0.0:
        return belief
    mean = [value + each / total * lack for value, each in zip(belief.mean, hang)]
    covariance = [[held - each / total * other for held, other in zip(line, hang)]
                  for line, each in zip(belief.covariance, hang)]
    return Belief(mean, covariance)


def share_below(value: float, mean: float, error: float) -> float:
    """Return which share of a normal spread lies below a value.

    Args:
        value [any]: the border.
        mean [any]: of the spread.
        error [any]: its standard error, >= 0.

    Returns:
        [1] from 0 to 1; with no error 1 where the mean lies below.

    Source: least-squares, derived here: the normal spread integrated as a series.
    """
    if error <= 0.0:
        return 1.0 if mean < value else 0.0
    z = (value - mean) / error
    if abs(z) > 6.0:
        return 1.0 if z > 0 else 0.0
    term = total = z
    for i in range(1, TERMS):
        term *= z * z / (2 * i + 1)
        total += term
        if abs(term) < 1e-12:
            break
    return min(1.0, max(0.0, 0.5 + total * density(z)))


def density(z: float) -> float:
    """Return the density of the standard normal spread.

    Args:
        z [1]: standard errors from the middle.

    Returns:
        [1] density.

    Source: least-squares, the normal spread.
    """
    return math.exp(-z * z / 2) / math.sqrt(2 * math.pi)
