"""Normal spreads against the standard library's own."""

from statistics import NormalDist

import pytest

from calc.numerics.normal import NORMAL_95, spread


def test_95_percent_lie_within():
    assert NormalDist().cdf(NORMAL_95) - NormalDist().cdf(-NORMAL_95) == pytest.approx(0.95, abs=1e-7)


def test_errors_add_as_squares():
    """3, 4, 5: the oldest right triangle; and two that are alike."""
    assert spread([3.0, -4.0]) == 5.0
    assert spread([1.0, 1.0]) == pytest.approx(2**0.5)
    assert spread([]) == 0.0
