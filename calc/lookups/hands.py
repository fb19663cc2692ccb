"""Published sizes of hands."""

from calc.lookups.declare import column, lookup, row
from calc.tables.bench_values import HANDS

LOOKUP = lookup(
    "hands",
    "Breadth of hands across the knuckles, without the thumb",
    "Of a hundred people 5 are smaller than the first figure and 5 larger than the last. The source rounds "
    "to 5 mm. Measure the archer's own hand where you can.",
    (column("Who"), column("5 of 100 below", "length", "metric", 0), column("Middle", "length", "metric", 0),
     column("95 of 100 below", "length", "metric", 0), column("Middle, inches", "length", "imperial")),
    tuple([row((each.who, each.fifth, each.middle, each.ninety_fifth, each.middle), each.source, each.status)
           for each in HANDS]),
)
