"""Sections of a grip between those that were measured."""

import pytest

from calc.bows.grip_sections import Place, Size, _between

PLACES = (Place(0.00, Size(0.030, 0.050), Size(0.028, 0.046)),
          Place(0.04, Size(0.026, 0.042), Size(0.024, 0.040)),
          Place(0.10, Size(0.020, 0.060), Size(0.018, 0.058)))


@pytest.mark.parametrize(("height", "before", "after"), [
    (-0.01, (0.030, 0.050), (0.028, 0.046)),  # the nearest holds beyond the ends
    (0.00, (0.030, 0.050), (0.028, 0.046)),
    (0.01, (0.029, 0.048), (0.027, 0.0445)),  # a quarter of the way
    (0.04, (0.026, 0.042), (0.024, 0.040)),
    (0.07, (0.023, 0.051), (0.021, 0.049)),  # half way
    (0.20, (0.020, 0.060), (0.018, 0.058)),
])
def test_a_size_lies_on_a_straight_line_between_its_neighbours(height, before, after):
    assert tuple(_between(PLACES, height, 1)) == pytest.approx(before)
    assert tuple(_between(PLACES, height, 2)) == pytest.approx(after)
