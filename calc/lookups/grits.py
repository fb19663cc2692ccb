"""Grades of abrasive, coarse to fine, both scales in one list."""

from calc.lookups.declare import column, lookup, row
from calc.shop.abrasives import nearest
from calc.tables.grits import CAMI_GRITS, FINER, GRITS, P_GRITS, Grit, P, name_of


def _row(grit: Grit) -> tuple[object, ...]:
    other = nearest(grit.size, CAMI_GRITS if grit.scale == P else P_GRITS)
    name = name_of(grit) if grit.scale == P else "CAMI " + name_of(grit)
    near = name_of(other) if other.scale == P else "CAMI " + name_of(other)
    return (name, grit.size, near, other.size / grit.size)


def _in_order() -> list[Grit]:
    return sorted(GRITS + FINER, key=lambda grit: (-grit.size, 0 if grit.scale == P else 1))


LOOKUP = lookup(
    "grits",
    "Abrasive grades by grain size",
    "P grades (FEPA, ISO 6344) and CAMI grades in one order, coarse first. Nearest means nearest by ratio of "
    "size. CAMI figures differ by up to 2 % from table to table. P3000 to P5000 are makers' names beyond the "
    "scale: their sizes are from memory and differ by maker.",
    (column("Grade"), column("Mean grain size", "particle"), column("Nearest on the other scale"),
     column("its size against this", "ratio", decimals=0)),
    tuple([row(_row(grit), grit.source, grit.status) for grit in _in_order()]),
)
