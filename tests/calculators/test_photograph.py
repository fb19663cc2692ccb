"""Reading a photograph: pictures of invented bows by a camera of the tests' own."""

import pytest

from calc import catalog
from calc.answer import work_out
from calc.quantities import INCH


def values(**typed):
    job = work_out(catalog.find("photograph"), list(typed.items()))
    assert not job.problems
    return dict(job.outcome.values)


@pytest.mark.parametrize("target", ["sheets", "rules"])
def test_the_examples_riser_is_that_of_the_invented_bow(target):
    found = values(target=target)
    assert found["riser_length"] == pytest.approx(19 * INCH, abs=found["riser_length_error"])
