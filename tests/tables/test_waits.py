"""Waits that a timer counts: each has its length, or names the result that says it."""

import pytest

from calc import catalog
from calc.bibliography import SOURCES
from calc.tables.waits import LONGEST, WAITS, find


def test_ten_minutes_at_brace_are_ten_minutes_and_a_cure_is_a_day_to_be_changed():
    """Common practice: as the chapter on the first draw says."""
    assert find("brace").seconds == 600
    assert find("glue").seconds == 86_400
    assert find("glue").status == "assumption to edit"
    assert LONGEST == 14 * 86_400


@pytest.mark.parametrize("wait", WAITS, ids=lambda wait: wait.id)
def test_a_wait_has_its_length_or_a_result_that_says_it(wait):
    assert (wait.seconds is None) == bool(wait.result)
    if wait.result:
        assert wait.result in [each.id for each in catalog.find("clear-air").results]
    assert wait.source in {source.key for source in SOURCES}


def test_a_wait_that_there_is_not_is_refused():
    with pytest.raises(ValueError, match=r"^there is no wait called tea$"):
        find("tea")
