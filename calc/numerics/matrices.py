"""Small symmetric matrices: split into two triangles, solved, and what the split says of errors."""

import math


def triangle(matrix: list[list[float]]) -> list[list[float]]:
    """Return the lower triangle whose product with its own transpose is a matrix.

    Args:
        matrix [any]: symmetric and positive definite, one list a row; nothing above the diagonal is read.

    Returns:
        [any] the triangle, each row as long as it is filled.

    Raises:
        ValueError: the matrix is not positive definite: what it holds does not fix all unknowns.

    Source: least-squares, the Cholesky factor of the normal equations.
    """
    lower: list[list[float]] = []
    for i in range(len(matrix)):
        row: list[float] = []
        for j in range(i):
            left = matrix[i][j]
            other = lower[j]
            for k in range(j):
                left -= row[k] * other[k]
            row.append(left / other[j])
        rest = matrix[i][i]
        for each in row:
            rest -= each * each
        if not rest > 1e-13 * matrix[i][i]:
            raise ValueError(f"unknown {i} is not fixed by what is given")
        row.append(math.sqrt(rest))
        lower.append(row)
    return lower


def solved(lower: list[list[float]], right: list[float]) -> list[float]:
    """Return the unknowns of a matrix that was split, for one right side.

    Args:
        lower [any]: as `triangle` gives it.
        right [any]: one value a row.

    Returns:
        [any] one unknown a row.

    Source: least-squares, the normal equations through two triangles.
    """
    size = len(lower)
    found = list(right)
    for i in range(size):
        row = lower[i]
        total = found[i]
        for k in range(i):
            total -= row[k] * found[k]
        found[i] = total / row[i]
    return _back(lower, found, 0)


def spreads(lower: list[list[float]], count: int) -> list[list[float]]:
    """Return independent causes of the errors of the last unknowns of a matrix that was split.

    Args:
        lower [any]: the triangle of the inverse of a covariance.
        count [1]: how many of the last unknowns.

    Returns:
        [any] one row a cause: what one standard error of it does to each of these unknowns. The sum of the
        rows' products with themselves is the covariance of these unknowns, all the others being free.

    Source: least-squares, the covariance through the Cholesky factor of its inverse.
    """
    first = len(lower) - count
    return [_back(lower, [0.0] * (first + each) + [1.0] + [0.0] * (count - each - 1), first)[first:]
            for each in range(count)]


def _back(lower: list[list[float]], found: list[float], first: int) -> list[float]:
    """Return the unknowns from the last up to one, through the transpose of the triangle."""
    for i in range(len(lower) - 1, first - 1, -1):
        value = found[i] / lower[i][i]
        found[i] = value
        if value:
            row = lower[i]
            for k in range(first, i):
                found[k] -= row[k] * value
    return found
