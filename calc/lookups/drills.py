"""Drill sizes by diameter: fractions, numbers, letters and metric in one list."""

from calc.lookups.declare import column, lookup, row
from calc.tables.drills import DRILLS

LOOKUP = lookup(
    "drills",
    "Drill sizes by diameter",
    "Fractions of an inch by 64ths up to 1/2 in, number sizes #38 to #1 with #80, letters A to Z, and metric "
    "sizes by 0.1 mm to 10 mm and by 0.5 mm to 13 mm, small first. E and 1/4 in are the same hole.",
    (column("Drill"), column("Series"), column("Inches", "thickness", "imperial", 4),
     column("Millimetres", "thickness", "metric", 3)),
    tuple([row((each.name, each.series, each.diameter, each.diameter), each.source, each.status)
           for each in DRILLS]),
)
