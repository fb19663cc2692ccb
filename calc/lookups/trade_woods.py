"""Woods of risers and laminations by the names of the trade, with silica and what their dust does."""

from calc.lookups.declare import column, lookup, row
from calc.tables.bench_values import TIMBERS

LOOKUP = lookup(
    "trade-woods",
    "Riser and lamination woods by their trade names",
    "Means of clear pieces. Silica dulls tools and, as dust, harms lungs. What dust does is what lists for "
    "woodworkers tell: no wood is harmless, and a wood without a word is not safe to breathe.",
    (column("Wood"), column("Also called"), column("Density", "density"),
     column("Modulus", "modulus", "imperial"), column("Bending strength", "stress", "imperial"),
     column("Bending strength, metric", "stress", decimals=0), column("Silica"),
     column("What its dust does")),
    tuple([row((each.trade, each.other, each.density, each.modulus, each.strength, each.strength, each.silica,
                each.hazard), each.source, each.status) for each in TIMBERS]),
)
