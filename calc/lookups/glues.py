"""What glue holds what."""

from calc.lookups.declare import column, lookup, row
from calc.tables.bench_values import GLUES

LOOKUP = lookup(
    "glues",
    "What holds what: glass, wood, horn, leather, metal",
    "The maker's sheet goes first, for times as well. Resin and hardener make allergic for life: gloves, "
    "fresh air. No glue here makes a parted limb safe.",
    (column("Glue"), column("Holds"), column("Not for"), column("Open time"), column("Clamp time"),
     column("Undone by")),
    tuple([row((each.name, each.holds, each.not_for, each.open, each.clamp, each.remove), each.source,
               each.status) for each in GLUES]),
)
