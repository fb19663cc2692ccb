"""Drill sizes by diameter: fractions, numbers and letters in one list."""

from calc.lookups.declare import column, lookup, row
from calc.tables.drills import DRILLS

LOOKUP = lookup(
    "drills",
    "Drill sizes by diameter",
    "Fractions of an inch by 64ths up to 1/2 in, number sizes #38 to #1 with #80, and letters A to Z, small "
    "first. E and 1/4 in are the same hole.",
    (column("Drill"), column("Series"), column("Inches", "thickness", "imperial", 4),
     column("Millimetres", "thickness", "metric", 3)),
    tuple([row((each.name, each.series, each.diameter, each.diameter), each.source, each.status)
           for each in DRILLS]),
)
