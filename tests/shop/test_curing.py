"""Drying in a shop whose warmth was read now and then."""

import pytest

from calc.shop.curing import moment_after
from tests.sentences import whole

HOUR = 3600


@pytest.mark.parametrize(
    ("speeds", "expected"),
    # By hand: 10 h as stated; half as fast it takes 20 h; 4 h at half speed are 2 h of it, 8 h follow;
    # the first speed holds before it was read, too.
    [((), 10), (((0, 1.0),), 10), (((0, 0.5),), 20), (((0, 0.5), (4 * HOUR, 1.0)), 12),
     (((5 * HOUR, 2.0), (6 * HOUR, 1.0)), 5), (((-9 * HOUR, 0.1), (-HOUR, 1.0)), 10),
     (((0, 1.0), (2 * HOUR, 0.0), (5 * HOUR, 1.0)), 13)],
)
def test_the_shares_of_the_time_add_up(speeds, expected):
    assert moment_after(speeds, 0, 10 * HOUR) == expected * HOUR


def test_where_it_stands_still_no_moment_is_told():
    assert moment_after(((0, 1.0), (HOUR, 0.0)), 0, 2 * HOUR) is None
    assert moment_after(((0, 0.0),), 7, 0) == 7


def test_time_does_not_run_backward():
    with pytest.raises(ValueError, match=whole("times and speeds of drying must not be negative")):
        moment_after((), 0, -1)
