"""The weight that a bow came with, as far as somebody knows it."""

import pytest

from calc.bows.gone import weight_as_it_came
from calc.outcome import Refused


@pytest.mark.parametrize(("came", "read", "before"), [
    (None, None, 200.0), (220.0, None, 220.0), (None, 210.0, 210.0), (220.0, 210.0, 220.0),
    (220.0, 220.0, 220.0), (200.0, 200.0, 200.0),  # read as it came; nothing has gone yet
])
def test_the_earliest_weight_that_is_known_is_the_one_it_came_with(came, read, before):
    assert weight_as_it_came(200.0, came, read) == before


@pytest.mark.parametrize(("came", "read", "field"), [
    (199.9, None, "weight_came"), (None, 199.9, "weight_read"), (220.0, 220.1, "weight_read"),
])
def test_sanding_only_takes(came, read, field):
    with pytest.raises(Refused) as refused:
        weight_as_it_came(200.0, came, read)
    assert refused.value.problem.field == field
