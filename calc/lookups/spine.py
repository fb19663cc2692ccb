"""Both tests of a shaft's spine and its spine weight, side by side."""

from calc.lookups.declare import GRID, column, lookup, row
from calc.mechanics.arrow.shaft import (
    TEST_26_INCH,
    TEST_28_INCH,
    flexural_rigidity_from_spine_weight,
    static_deflection,
)
from calc.quantities import POUND_FORCE

POUNDS = tuple(range(25, 86, 5))


def _cells(pounds: int) -> tuple[object, ...]:
    rigidity = flexural_rigidity_from_spine_weight(pounds * POUND_FORCE)
    short, long = static_deflection(rigidity, TEST_26_INCH), static_deflection(rigidity, TEST_28_INCH)
    return (str(pounds) + " lb", short, long, long)


LOOKUP = lookup(
    "spine",
    "Spine weight, and the bend in both tests",
    "The trade in wooden shafts hangs 2 lb on a span of 26 in and writes 26 over the bend. The standard for "
    "all shafts hangs 1.94 lb (880 g) on 28 in; a thousand times its inches is the number on carbon and "
    "aluminium. One and the same shaft has both.",
    (column("Spine weight"), column("Bend, 2 lb on 26 in, inches", "thickness", "imperial", 3),
     column("Bend, 1.94 lb on 28 in, inches", "thickness", "imperial", 3),
     column("Bend, 880 g on 28 in, mm", "thickness", "metric", 2)),
    tuple([row(_cells(each), "spine-weight-rule", "calculated") for each in POUNDS]),
    GRID,
)
