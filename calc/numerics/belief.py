"""What is known of several figures at once, and what a reading adds to it: linear, errors spread normally."""

import math

from calc.numerics.normal import NORMAL_95

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

TERMS = 200  # of a series that ends long before


class Belief:
    """Most likely values and their covariance, one row a value."""

    def __init__(self, mean: list[float], covariance: list[list[float]]) -> None:
        self.mean = mean
        self.covariance = covariance

    def error(self, place: int) -> float:
        """Return the standard error of one of the values.

        Args:
            place [1]: which one, from 0.

        Returns:
            [any] its standard error, in its unit.

        Source: least-squares, the diagonal of the covariance.
        """
        return math.sqrt(max(0.0, self.covariance[place][place]))


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


def product(left: "Sequence[float]", right: "Sequence[float]") -> float:
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


def moved(belief: Belief, place: int, row: list[float], value: float, error: float) -> Belief:
    """Return the belief once one of the values has become a sum of them all.

    Args:
        belief: before.
        place: of the value that changes.
        row [any]: what of each value it takes, itself among them.
        value [any]: most likely afterwards.
        error [any]: standard error that comes with the change.

    Returns:
        The belief after it.

    Source: least-squares, the covariance of a sum.
    """
    hang = times(belief, row)
    spread = product(row, hang) + error * error
    covariance = [list(line) for line in belief.covariance]
    for other in range(len(hang)):
        covariance[place][other] = covariance[other][place] = hang[other]
    covariance[place][place] = spread
    mean = list(belief.mean)
    mean[place] = value
    return Belief(mean, covariance)


def with_another(belief: Belief, value: float, error: float) -> Belief:
    """Return the belief with one value more that hangs together with none of the others.

    Args:
        belief: before.
        value [any]: most likely.
        error [any]: its standard error.

    Returns:
        The belief with the value at its end.

    Source: least-squares, a diagonal block.
    """
    rows = [line + [0.0] for line in belief.covariance]
    return Belief(belief.mean + [value], rows + [[0.0] * len(belief.mean) + [error * error]])


def given(belief: Belief, place: int) -> tuple[Belief, list[float]]:
    """Return the belief were one of the values known, and what one standard error of it moves the others.

    Args:
        belief: in the values.
        place: of the one taken as known, at its most likely.

    Returns:
        The belief, and [any] one shift a value; that of the known value is its standard error.

    Source: least-squares, a normal spread with one of its values given.
    """
    error = belief.error(place)
    if error == 0.0:
        return belief, [0.0] * len(belief.mean)
    hang = [line[place] / error for line in belief.covariance]
    covariance = [[held - each * other for held, other in zip(line, hang)]
                  for line, each in zip(belief.covariance, hang)]
    return Belief(belief.mean, covariance), hang


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


def stretched(error: float, up: bool) -> float:
    """Return the end of the 95 % range of a figure known by its logarithm, beside the first-order one.

    Args:
        error [1]: standard error of the logarithm, >= 0.
        up: the upper end, else the lower one.

    Returns:
        [1] how far the end lies from the most likely, over how far the first order has it.

    Source: least-squares, derived here: the ends of the range of a logarithm.
    """
    far = NORMAL_95 * error
    if far < 1e-9:
        return 1.0
    return (math.exp(far) - 1) / far if up else (1 - math.exp(-far)) / far
