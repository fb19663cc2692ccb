"""What readings add to a belief, against NumPy's least squares and the normal spread of SciPy."""

import math

import numpy as np
import pytest
from scipy.stats import norm

from calc.numerics.belief import (
    Belief,
    given,
    independent,
    learnt,
    moved,
    product,
    share_below,
    stretched,
    variance,
    with_another,
)
from calc.numerics.normal import NORMAL_95

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


def a_belief(size, seed):
    chance = np.random.default_rng(seed)
    root = chance.normal(size=(size, size))
    return Belief(list(chance.normal(size=size)), (root @ root.T + np.eye(size)).tolist()), chance


@pytest.mark.parametrize("size", [2, 5, 9])
def test_readings_one_by_one_give_the_posterior_of_all_at_once(size):
    # numpy: mean and covariance of a linear model with errors that spread normally
    belief, chance = a_belief(size, size)
    rows, errors = chance.normal(size=(4, size)), np.array([0.1, 0.5, 1.0, 2.0])
    read = chance.normal(size=4)
    precision = np.linalg.inv(belief.covariance) + rows.T @ np.diag(errors**-2) @ rows
    covariance = np.linalg.inv(precision)
    mean = covariance @ (np.linalg.inv(belief.covariance) @ belief.mean + rows.T @ (read / errors**2))
    for row, value, error in zip(rows.tolist(), read, errors, strict=True):
        belief = learnt(belief, row, value - np.dot(row, belief.mean), error)
    assert belief.mean == pytest.approx(mean, rel=1e-9)
    assert np.array(belief.covariance) == pytest.approx(covariance, rel=1e-8)
    assert belief.error(1) == pytest.approx(math.sqrt(covariance[1, 1]))


def test_a_reading_of_what_is_known_for_sure_teaches_nothing():
    known = independent([(3.0, 0.0), (1.0, 0.0)])
    assert learnt(known, [1.0, 1.0], 5.0, 0.0) is known


def test_a_value_that_becomes_a_sum_of_all_has_its_covariance():
    belief, _ = a_belief(4, 3)
    change = np.eye(4)
    change[2] = [0.5, 0.0, 1.0, -2.0]
    after = moved(belief, 2, change[2].tolist(), 7.0, 0.3)
    expected = change @ np.array(belief.covariance) @ change.T
    expected[2, 2] += 0.09
    assert np.array(after.covariance) == pytest.approx(expected)
    assert after.mean == [belief.mean[0], belief.mean[1], 7.0, belief.mean[3]]


def test_a_value_more_hangs_together_with_none():
    belief, _ = a_belief(3, 4)
    after = with_another(belief, 2.0, 0.5)
    assert after.mean == [*belief.mean, 2.0]
    assert after.covariance[3] == [0.0, 0.0, 0.0, 0.25]
    assert [line[3] for line in after.covariance] == [0.0, 0.0, 0.0, 0.25]
    assert [line[:3] for line in after.covariance[:3]] == belief.covariance


def test_with_a_value_given_the_rest_is_that_of_the_conditional_spread():
    belief, _ = a_belief(3, 5)
    known, shifts = given(belief, 1)
    whole = np.array(belief.covariance)
    assert known.covariance[0][2] == pytest.approx(whole[0, 2] - whole[0, 1] * whole[1, 2] / whole[1, 1])
    assert known.covariance[1] == pytest.approx([0.0, 0.0, 0.0], abs=1e-12)
    assert shifts == pytest.approx(whole[:, 1] / math.sqrt(whole[1, 1]))
    sure = independent([(1.0, 0.0), (2.0, 1.0)])
    assert given(sure, 0) == (sure, [0.0, 0.0])


def test_a_sum_has_the_variance_of_the_library():
    belief, _ = a_belief(3, 6)
    row = np.array([1.0, -2.0, 0.5])
    assert variance(belief, row.tolist()) == pytest.approx(row @ np.array(belief.covariance) @ row)


@pytest.mark.parametrize("z", [-6.5, -5.9, -3.0, -1.959964, -0.1, 0.0, 0.5, 2.0, 4.5, 6.0, 7.0])
def test_the_share_below_is_that_of_the_library(z):
    assert share_below(10.0 + 2.0 * z, 10.0, 2.0) == pytest.approx(norm.cdf(z), abs=2e-9)


def test_without_an_error_the_share_below_is_all_or_nothing():
    assert [share_below(1.0, mean, 0.0) for mean in (0.9, 1.0, 1.1)] == [1.0, 0.0, 0.0]


def test_the_ends_of_the_range_of_a_logarithm():
    far = NORMAL_95 * 0.3
    assert stretched(0.3, True) * far == pytest.approx(math.exp(far) - 1)
    assert stretched(0.3, False) * far == pytest.approx(1 - math.exp(-far))
    assert stretched(0.0, True) == stretched(0.0, False) == 1.0
