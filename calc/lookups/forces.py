"""Pounds, kilograms and newtons of draw weight."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import POUND_FORCE, STANDARD_GRAVITY

KILOGRAM = STANDARD_GRAVITY
POUNDS = (1, 2, 3, 4, 5, 10, 15) + tuple(range(20, 81))


def _cells(pounds: int) -> tuple[object, ...]:
    force = pounds * POUND_FORCE
    return (str(pounds) + " lb", force / KILOGRAM, force)


LOOKUP = lookup(
    "forces",
    "Draw weight in pounds, kilograms and newtons",
    "A pound is 0.45359237 kg exactly; the force of a kilogram is 9.80665 N by definition. Scales in "
    "kilograms show the second column.",
    (column("Pounds"), column("Kilograms", "number", decimals=2), column("Newtons", "force", "metric", 1)),
    tuple([row(_cells(each), "si-units", "calculated") for each in POUNDS]),
)
