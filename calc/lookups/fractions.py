"""Fractions of an inch by 64ths, as decimals and in millimetres."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import INCH

PARTS = 64


def _name(top: int) -> str:
    bottom = PARTS
    while top % 2 == 0 and bottom > 1:
        top //= 2
        bottom //= 2
    return str(top) if bottom == 1 else str(top) + "/" + str(bottom)


LOOKUP = lookup(
    "fractions",
    "Fractions of an inch",
    "By 64ths up to 1 in. The decimals are exact; millimetres are to the thousandth.",
    (column("Fraction"), column("Inches", "thickness", "imperial", 6),
     column("Millimetres", "thickness", "metric", 3)),
    tuple([row((_name(top), top / PARTS * INCH, top / PARTS * INCH), "international-inch",
               "read second-hand") for top in range(1, PARTS + 1)]),
)
