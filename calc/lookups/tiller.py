"""Tiller by hold on the string."""

from calc.lookups.declare import column, lookup, row
from calc.tables.practice import find

_HOLDS = (
    ("Split finger", "tiller-split", "upper larger"),
    ("Three fingers under", "tiller-under", "equal, or upper larger"),
    ("Error put right while weight comes off", "tiller-correctable", "either way, up to this"),
)

LOOKUP = lookup(
    "tiller",
    "Tiller by hold: upper minus lower distance",
    "Each distance from string to belly, square to the string, at the same place on its limb.",
    (column("Hold"), column("Which way"), column("Least", "length", "imperial"),
     column("Most", "length", "imperial"), column("Least, metric", "length"),
     column("Most, metric", "length")),
    tuple([row((name, way, find(id).low, find(id).high, find(id).low, find(id).high), find(id).source,
               find(id).status) for name, id, way in _HOLDS]),
)
