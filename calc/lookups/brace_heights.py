"""Usual brace heights by family and marked length."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import show
from calc.tables.bench_values import BRACES

LOOKUP = lookup(
    "brace-heights",
    "Usual brace heights",
    "Where to begin when the maker's figure is lost. A figure on the limb or in its papers goes first. From "
    "the string to the throat of the grip, square to the string.",
    (column("Bow"), column("Marked length"), column("From", "length", "imperial"),
     column("to", "length", "imperial"), column("Metric")),
    tuple([row((each.family + ", " + each.lengths, each.lengths, each.low, each.high,
                show(each.low, "length", "metric", 0) + " to " + show(each.high, "length", "metric", 0)),
               each.source, each.status) for each in BRACES]),
)
