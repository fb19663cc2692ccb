"""Arrow mass by draw weight: never less, light, usual."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import POUND_FORCE
from calc.tables.practice import find

_NEVER = find("arrow-never").low
_USUAL = find("arrow-usual")


def _cells(pounds: int) -> tuple[object, ...]:
    weight = pounds * POUND_FORCE
    never, light, usual = weight * _NEVER, weight * _USUAL.low, weight * _USUAL.high
    return (str(pounds) + " lb", never, light, usual, never, light, usual)


LOOKUP = lookup(
    "arrow-mass",
    "Arrow mass by draw weight at the archer's draw",
    "Whole arrow, point and feathers included: under 5 grains a pound never, under 8 not from an old bow and "
    "not for hunting, 8 to 10 usual.",
    (column("Draw weight"), column("Never under", "mass", "imperial"),
     column("Usual from", "mass", "imperial"), column("Usual to", "mass", "imperial"),
     column("Never under, metric", "mass"), column("Usual from, metric", "mass"),
     column("Usual to, metric", "mass")),
    tuple([row(_cells(pounds), _USUAL.source, _USUAL.status) for pounds in range(20, 85, 5)]),
)
