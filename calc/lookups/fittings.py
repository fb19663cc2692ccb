"""Inserts, bushings and plungers: thread, outside and hole."""

from calc.lookups.declare import column, lookup, row
from calc.tables.bench_values import FITTINGS

LOOKUP = lookup(
    "fittings",
    "Inserts, bushings and plungers",
    "What is met on older bows. Makers differ: measure the piece in your hand, and drill scrap first.",
    (column("Piece"), column("Thread inside"), column("Outside", "thickness", "imperial", 4),
     column("Outside, metric", "thickness", "metric", 2), column("Hole in wood", "thickness", "imperial", 4),
     column("Hole, metric", "thickness", "metric", 2), column("Note")),
    tuple([row((each.name, each.thread, each.outside, each.outside, each.hole, each.hole, each.note),
               each.source, each.status) for each in FITTINGS]),
)
