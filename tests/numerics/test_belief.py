"""What readings add to a belief, against NumPy's least squares and the normal spread of SciPy."""

import numpy as np
import pytest
from scipy.stats import norm

from calc.numerics.belief import independent, learnt, product, share_below, variance

ROWS = [[1.0, 0.5, 0.0], [1.0, -0.3, 2.0], [0.0, 1.0, 1.0], [2.0, 0.1, -1.0]]
READ = [3.0, 1.5, -0.4, 5.1]
ERRORS = [0.1, 0.2, 0.05, 0.3]
BEFORE = [(0.5, 2.0), (-1.0, 0.7), (0.0, 1.3)]


def read_all(order):
    belief = independent(BEFORE)
    for i in order:
        belief = learnt(belief, ROWS[i], READ[i] - product(ROWS[i], belief.mean), ERRORS[i])
    return belief


@pytest.mark.parametrize("order", [(0, 1, 2, 3), (3, 1, 0, 2)])
def test_one_after_another_is_all_at_once(order):
    """The normal equations with what is known before as three readings more (NumPy)."""
    rows = np.array(ROWS + np.eye(3).tolist()) / np.array(ERRORS + [e for _, e in BEFORE])[:, None]
    right = np.array(READ + [v for v, _ in BEFORE]) / np.array(ERRORS + [e for _, e in BEFORE])
    belief = read_all(order)
    assert belief.mean == pytest.approx(np.linalg.lstsq(rows, right, rcond=None)[0], rel=1e-9)
    covariance = np.linalg.inv(rows.T @ rows)
    assert np.array(belief.covariance) == pytest.approx(covariance, rel=1e-9, abs=1e-15)
    row = [0.3, -2.0, 1.0]
    assert variance(belief, row) == pytest.approx(np.array(row) @ covariance @ np.array(row), rel=1e-9)


def test_what_is_known_for_sure_learns_nothing():
    belief = independent([(2.0, 0.0)])
    assert learnt(belief, [1.0], 5.0, 0.0) is belief
    assert learnt(belief, [1.0], 5.0, 0.1).mean == [2.0]


@pytest.mark.parametrize("z", [-7.0, -5.9, -2.0, -0.3, 0.0, 0.7, 1.959964, 4.0, 6.1])
def test_share_below_is_the_normal_spread(z):
    assert share_below(3.0 + 2.0 * z, 3.0, 2.0) == pytest.approx(norm.cdf(z), abs=2e-9)


def test_without_an_error_all_lies_on_one_side():
    assert share_below(1.0, 0.9, 0.0) == 1.0
    assert share_below(1.0, 1.0, 0.0) == 0.0
