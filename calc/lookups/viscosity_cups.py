"""Viscosity by the seconds of Ford and Zahn cups."""

from calc.lookups.declare import GRID, column, lookup, row
from calc.shop.viscosity import time_within
from calc.tables.viscosity_cups import CUPS

VISCOSITIES = (15, 20, 25, 30, 40, 50, 60, 80, 100, 120, 150, 200, 250, 300, 400, 500)
MM2_PER_S = 1e-6


def _cells(viscosity: int) -> tuple[object, ...]:
    return (str(viscosity) + " mm2/s",) + tuple([
        time_within(viscosity * MM2_PER_S, cup.slope, cup.offset, cup.least, cup.most) for cup in CUPS])


LOOKUP = lookup(
    "viscosity-cups",
    "Seconds that a viscosity cup runs, by the liquid's viscosity at 25 °C",
    "One mm2/s is one centistokes. A cell is empty where the cup is not made for that liquid. Cups of one "
    "number differ by several per cent: check yours with a liquid of known viscosity.",
    (column("Viscosity"),) + tuple([column(each.name, "seconds", decimals=0) for each in CUPS]),
    tuple([row(_cells(each), "viscosity-cups", "read second-hand") for each in VISCOSITIES]),
    GRID,
)
