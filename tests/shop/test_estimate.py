
import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calc.shop import estimate
from tests.sentences import whole

PARTS = st.tuples(st.floats(0, 100), st.floats(0, 100), st.floats(0.01, 100)).map(
    lambda parts: (parts[0], parts[0] + parts[1], parts[0] + parts[1] + parts[2]))


def beta(low, likely, high):
    """Return the distribution of the three-point estimate, in SciPy."""
    span = high - low
    return stats.beta(1 + 4 * (likely - low) / span, 1 + 4 * (high - likely) / span, loc=low, scale=span)


@given(PARTS)
def test_the_mean_is_that_of_the_beta_distribution(parts):
    """SciPy's beta distribution with shapes 1 + 4 (m - a)/(b - a) and 1 + 4 (b - m)/(b - a): exact."""
    assert estimate.expected(*parts) == pytest.approx(beta(*parts).mean(), rel=1e-9)


@given(PARTS)
def test_the_spread_is_near_that_of_the_beta_distribution(parts):
    """A sixth of the span is the planners' approximation: from 1.19 times to 0.84 times that of the beta."""
    assert 0.83 < beta(*parts).std() / estimate.spread(*parts) < 1.2


def test_the_range_of_a_sum_holds_19_times_in_20():
    """Monte Carlo with NumPy: five tasks that do not depend on one another."""
    random = np.random.default_rng(1)
    tasks = [(0.5, 1, 1.5), (2, 3, 6), (2, 3, 5), (3, 4, 6), (0.3, 0.5, 1)]
    sums = sum(beta(*each).rvs(20_000, random_state=random) for each in tasks)
    mean = sum(estimate.expected(*each) for each in tasks)
    spread = estimate.spread_of_sum([estimate.spread(*each) for each in tasks])
    inside = np.mean(np.abs(sums - mean) < 2 * spread)
    assert inside == pytest.approx(0.95, abs=0.03)


@given(PARTS, st.floats(0.1, 10))
def test_hours_in_other_units_are_the_same_hours(parts, factor):
    scaled = [each * factor for each in parts]
    assert estimate.expected(*scaled) == pytest.approx(factor * estimate.expected(*parts), rel=1e-9)
    assert estimate.spread(*scaled) == pytest.approx(factor * estimate.spread(*parts), rel=1e-9, abs=1e-9)


def test_certain_hours_have_no_spread():
    assert estimate.expected(3, 3, 3) == 3
    assert estimate.spread(3, 3, 3) == 0
    assert estimate.spread_of_sum([]) == 0


def test_spreads_add_like_sides_of_a_right_angle():
    assert estimate.spread_of_sum([3.0, 4.0]) == 5.0


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: estimate.expected(2, 1, 3), "low, likely and high must be in order, got 2, 1, 3"),
        (lambda: estimate.spread(1, 3, 2), "low, likely and high must be in order, got 1, 3, 2"),
        (lambda: estimate.spread_of_sum([1.0, -1.0]), "spreads must not be negative"),
    ],
)
def test_figures_out_of_order_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
