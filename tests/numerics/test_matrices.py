"""Triangles of symmetric matrices, against NumPy's linear algebra."""

import numpy as np
import pytest

from calc.numerics.matrices import solved, spreads, triangle

ROWS = np.random.default_rng(7).normal(size=(12, 6))
MATRIX = ROWS.T @ ROWS
RIGHT = [1.0, -2.0, 0.5, 3.0, 0.0, 4.0]


def test_the_triangle_is_that_of_the_library():
    lower = triangle(MATRIX.tolist())
    assert [len(row) for row in lower] == [1, 2, 3, 4, 5, 6]
    for row, other in zip(lower, np.linalg.cholesky(MATRIX), strict=True):
        assert row == pytest.approx(other[:len(row)].tolist(), rel=1e-12)


def test_unknowns_are_those_of_the_library():
    assert solved(triangle(MATRIX.tolist()), RIGHT) == pytest.approx(np.linalg.solve(MATRIX, RIGHT).tolist())


@pytest.mark.parametrize("count", [1, 3, 6])
def test_causes_come_to_the_covariance_of_the_last_unknowns(count):
    causes = np.array(spreads(triangle(MATRIX.tolist()), count))
    assert causes.shape == (count, count)
    assert causes.T @ causes == pytest.approx(np.linalg.inv(MATRIX)[-count:, -count:], rel=1e-9)


def test_what_fixes_too_little_is_refused():
    with pytest.raises(ValueError, match=r"^unknown 2 is not fixed by what is given$"):
        triangle([[2.0, 0.0, 1.0], [0.0, 1.0, 1.0], [1.0, 1.0, 1.5]])
