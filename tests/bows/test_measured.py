"""Sections as they were measured, against the limb that they are of."""

import pytest

from calc.bows.measured import Build, stations_of
from calc.outcome import Refused

LENGTH = 0.5
BUILD = Build(0.001, 0.001, 40e9, 12e9)
GLASS = 1.2 * 0.002  # a fifth more than both layers of glass, and no core to speak of


@pytest.mark.parametrize(("rows", "column"), [
    (((0.1, 0.04, 0.01), (0.5, 0.02, 0.006)), None),  # the last may stand at the nock itself
    (((0.1, 0.04, 0.01), (0.5001, 0.02, 0.006)), "position"),
    (((0.1, 0.04, 0.01), (0.1, 0.03, 0.009)), "position"),
    (((0.1, 0.04, 0.01), (0.1001, 0.03, 0.009)), None),
    (((0.1, 0.04, GLASS),), "thickness"),
    (((0.1, 0.04, GLASS + 1e-6),), None),
])
def test_sections_stand_in_order_up_to_the_nock_and_hold_a_core(rows, column):
    if column is None:
        assert [(each.position, each.width, each.thickness)
                for each in stations_of("upper_stations", rows, LENGTH, BUILD)] == list(rows)
    else:
        with pytest.raises(Refused) as refused:
            stations_of("upper_stations", rows, LENGTH, BUILD)
        found = refused.value.problem
        assert (found.field, found.row, found.column) == ("upper_stations", len(rows) - 1, column)
