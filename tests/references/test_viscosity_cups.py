"""Viscosity cups against the liquids that a laboratory sells to check them."""

import pytest

from calc.shop.viscosity import efflux_time, kinematic_viscosity
from calc.tables.viscosity_cups import CUPS, find

# Standard liquids by their viscosity in mm2/s at 25 °C, with the drain times that a laboratory for viscosity
# standards prints for each cup; read in a copy of its page.
LIQUIDS = [
    ("zahn-1", 34, 60), ("zahn-2", 66, 33), ("zahn-2", 120, 48), ("zahn-3", 230, 27), ("zahn-3", 460, 47),
    ("zahn-4", 460, 36), ("zahn-4", 850, 62), ("zahn-5", 850, 37), ("zahn-5", 1600, 70),
    ("ford-2", 34, 42), ("ford-3", 66, 35), ("ford-3", 120, 58), ("ford-4", 120, 36), ("ford-4", 230, 64),
    ("ford-5", 460, 40), ("ford-5", 850, 70),
]


@pytest.mark.parametrize(("id", "viscosity", "seconds"), LIQUIDS)
def test_drain_times_of_the_standard_liquids(id, viscosity, seconds):
    # A maker of cups compares within 2 to 5 % (its leaflet, read in a copy); 4 % here.
    cup = find(id)
    assert efflux_time(viscosity * 1e-6, cup.slope, cup.offset) == pytest.approx(seconds, rel=0.04)


def test_an_example_of_the_ford_equations():
    # 46 s, worked out on a page on testing (read second-hand). Its 151.767 for cup 4 is a slip: 3.85 x 41.51
    # is 159.81.
    found = [kinematic_viscosity(46, cup.slope, cup.offset) * 1e6 for cup in CUPS[:5]]
    assert found == pytest.approx([5.39, 40.32, 91.06, 159.81, 532.4], abs=0.01)


def test_zahn_cups_reach_the_printed_ranges():
    # 5 to 60, 20 to 250, 100 to 800, 200 to 1200, 400 to 1800 mm2/s (the same laboratory): rounded there.
    for id, least, most in (("zahn-1", 5, 60), ("zahn-2", 20, 250), ("zahn-3", 100, 800),
                            ("zahn-4", 200, 1200), ("zahn-5", 400, 1800)):
        cup = find(id)
        assert kinematic_viscosity(cup.least, cup.slope, cup.offset) * 1e6 == pytest.approx(least, rel=0.5)
        assert kinematic_viscosity(cup.most, cup.slope, cup.offset) * 1e6 == pytest.approx(most, rel=0.1)
