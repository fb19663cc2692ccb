"""What wood settles at, by air temperature and relative humidity."""

from calc.lookups.declare import GRID, column, lookup, row
from calc.quantities import parse, show
from calc.shop.moisture import equilibrium_moisture_content

FAHRENHEIT = (30, 40, 50, 60, 70, 80, 90, 100, 110, 120)
HUMIDITIES = (0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9)


def _row(fahrenheit: int) -> tuple[object, ...]:
    air = parse(str(fahrenheit) + " F", "temperature")
    name = str(fahrenheit) + " °F, " + show(air, "temperature", "metric")
    return (name,) + tuple([equilibrium_moisture_content(air, humidity) for humidity in HUMIDITIES])


LOOKUP = lookup(
    "emc",
    "Equilibrium moisture content of wood in percent of dry mass",
    "Find the air's temperature at the left and its relative humidity at the top. A practical estimate for "
    "any wood that has lain in that air long enough; within 0.06 of the published table.",
    (column("Air"),) + tuple([column(show(each, "ratio", "metric", 0), "ratio") for each in HUMIDITIES]),
    tuple([row(_row(each), "simpson-1998", "calculated") for each in FAHRENHEIT]),
    GRID,
)
