"""Sections as they were measured, against the limb that they are of."""

import pytest

from calc.bows.measured import Build, glass_to_stay, stations_of
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


MIL = 25.4e-6
THIN = Build(40 * MIL, 30 * MIL, 39e9, 12e9)
"""Glass of 0.040 in on the back and 0.030 in on the belly."""


@pytest.mark.parametrize(("when_new", "came", "back", "belly"), [
    (None, (None, None), 24, 18),  # three fifths of what is there
    (50, (None, None), 30, 30),  # of what was laid up
    (None, (45, None), 27, 18),  # of what was there when the bow came
    (None, (None, 35), 24, 21),
    (50, (45, 55), 30, 33),  # of the more
    (None, (40, 30), 24, 18),  # nothing was taken yet
])
def test_a_share_of_the_most_glass_known_has_to_stay(when_new, came, back, belly):
    found = glass_to_stay(THIN, 0.6, when_new and when_new * MIL,
                          tuple([each and each * MIL for each in came]))
    assert found == pytest.approx((back * MIL, belly * MIL))


@pytest.mark.parametrize(("came", "field"), [((39, 35), "came_back"), ((45, 29), "came_belly")])
def test_glass_does_not_grow_while_a_bow_is_sanded(came, field):
    with pytest.raises(Refused) as refused:
        glass_to_stay(THIN, 0.6, None, (came[0] * MIL, came[1] * MIL))
    assert refused.value.problem.field == field
