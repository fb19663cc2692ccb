"""Fractions of an inch and the rule of reading, against published rules."""

import pytest
from scipy import constants

from calc.lookups import fractions
from calc.quantities import INCH, show_fraction

BY_NAME = {row.cells[0]: row.cells[1] for row in fractions.LOOKUP.rows}


def test_the_inch():
    assert constants.inch == INCH  # SciPy's constants


@pytest.mark.parametrize(
    ("name", "inches"),
    [("45/64", 0.703125), ("1/64", 0.015625), ("3/8", 0.375), ("17/64", 0.265625), ("1", 1.0)])
def test_fractions_are_exact(name, inches):
    assert BY_NAME[name] / INCH == pytest.approx(inches, rel=1e-15)


@pytest.mark.parametrize(
    ("sixty_fourths", "shown"),
    [(1, "0"), (3, "1/16"), (5, "1/16"), (7, "1/8"), (9, "1/8"), (29, "7/16"), (31, "1/2")],
)
def test_midway_goes_to_the_even_graduation(sixty_fourths, shown):
    # NIST Handbook 44, 10.3, read in a copy: exactly midway, the even graduation. On a 1/32 in scale.
    assert show_fraction(sixty_fourths / 64) == shown


@pytest.mark.parametrize(
    ("inches", "shown"), [(0.1495, "5/32"), (0.201, "3/16"), (0.272, "9/32")])
def test_nearest_thirty_second(inches, shown):
    # Arithmetic: 0.1495 is 5/32 on this scale (1/8 on sixteenths).
    assert show_fraction(inches) == shown
