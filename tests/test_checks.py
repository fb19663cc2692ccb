"""What relations ask of their arguments: both sides of each bound, and what is no number at all."""

import math

import pytest

from calc.checks import require_not_negative, require_positive, require_share
from tests.sentences import whole

LEAST = 5e-324  # the smallest float that is more than nothing


@pytest.mark.parametrize("value", [LEAST, 1.0, 1e308])
def test_a_positive_value_is_taken(value):
    require_positive("span", value, "m")
    require_not_negative("span", value, "m")


def test_nothing_is_not_negative_and_not_positive():
    require_not_negative("span", 0.0, "m")
    with pytest.raises(ValueError, match=whole("span must be positive, got 0.0 m")):
        require_positive("span", 0.0, "m")


@pytest.mark.parametrize("require", [require_positive, require_not_negative])
@pytest.mark.parametrize("value", [math.inf, -math.inf, math.nan])
def test_what_is_no_finite_number_is_refused(require, value):
    with pytest.raises(ValueError, match=whole(f"span must be a finite number, got {value} m")):
        require("span", value, "m")


def test_a_negative_value_is_refused():
    with pytest.raises(ValueError, match=whole(f"span must not be negative, got {-LEAST} m")):
        require_not_negative("span", -LEAST, "m")
    with pytest.raises(ValueError, match=whole("ratio must be positive, got -1.0")):
        require_positive("ratio", -1.0, "")


def test_a_share_is_more_than_nothing_and_at_most_all():
    require_share("rest", LEAST)
    require_share("rest", 1.0)
    for value in (0.0, math.nextafter(1.0, 2.0)):
        with pytest.raises(ValueError, match=whole(f"rest must be more than 0 and at most 1, got {value}")):
            require_share("rest", value)
    with pytest.raises(ValueError, match=whole("rest must be a finite number, got nan")):
        require_share("rest", math.nan)
