"""Dew point by air temperature and relative humidity, in degrees Fahrenheit."""

from calc.lookups.declare import GRID, Lookup, column, lookup, row
from calc.quantities import show, shown_unit
from calc.shop.air import dew_point

HUMIDITIES = (0.3, 0.4, 0.5, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95)


def dew_point_grid(id: str, system: str, airs: tuple[int, ...]) -> Lookup:
    """Return the grid in the unit of a system, for air temperatures in that unit."""
    unit = shown_unit("temperature", system)
    rows = []
    for air in airs:
        celsius = unit.offset + air * unit.factor
        cells = [str(air) + " " + unit.name] + [dew_point(celsius, each) for each in HUMIDITIES]
        rows.append(row(tuple(cells), "alduchov-eskridge-1996", "calculated"))
    return lookup(
        id,
        "Dew point in " + unit.name + ", by air temperature and relative humidity",
        "The air's temperature stands at the left, its relative humidity at the top. The work should be at "
        "least 3 °C (5.4 °F) warmer than the figure; the other published rule, 5 °F and rising, is looser.",
        (column("Air"),) + tuple([column(show(each, "ratio", system, 0), "temperature", system)
                                  for each in HUMIDITIES]),
        tuple(rows),
        GRID,
    )


LOOKUP = dew_point_grid("dew-point", "imperial", (50, 55, 60, 65, 70, 75, 80, 85, 90, 95))
