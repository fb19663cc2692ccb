"""Strands by draw weight and material, by the rule of the calculator String."""

from calc.lookups.declare import GRID, column, lookup, row
from calc.quantities import POUND_FORCE
from calc.shop.strings import strands_for
from calc.tables.practice import find as find_limit
from calc.tables.string_materials import MATERIALS

FEWEST = 10
WEIGHTS = tuple(range(20, 81, 5))


def _factor() -> float:
    least = find_limit("string-strength").low
    if least is None:
        raise ValueError("no least strength of a string is known")
    return float(least)


def _cells(pounds: int) -> tuple[object, ...]:
    force = pounds * POUND_FORCE
    counts = [strands_for(force, _factor(), each.strand_strength, FEWEST, bundles)
              for each in MATERIALS for bundles in (2, 3)]
    return (str(pounds) + " lb",) + tuple([str(each) for each in counts])


LOOKUP = lookup(
    "strands",
    "Strands by draw weight at your draw, and material",
    "Strength of 12 times the draw weight and at least 10 strands (common practice), in two bundles and in "
    "three. Low-stretch only on tips that their maker reinforced for it; an old bow gets polyester.",
    (column("Draw weight"),) + tuple([
        column(each.name.split(",")[0] + (", two bundles" if bundles == 2 else ", three"))
        for each in MATERIALS for bundles in (2, 3)]),
    tuple([row(_cells(each), "bench-practice", "calculated") for each in WEIGHTS]),
    GRID,
)
