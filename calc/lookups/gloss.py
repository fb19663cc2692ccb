"""Gloss levels."""

from calc.lookups.declare import column, lookup, row
from calc.tables.gloss import HIGHEST, LEVELS, GlossLevel


def _row(level: GlossLevel) -> tuple[object, ...]:
    return (level.id, level.name, _range(level.low, level.high), _range(level.sheen_low, level.sheen_high))


def _range(low: float | None, high: float | None) -> str | None:
    if low is None or high is None:
        return None
    if high == HIGHEST:
        return ("more than " if low == LEVELS[-1].low else "at least ") + str(int(low))
    return str(int(low)) + " to " + str(int(high)) if low else "at most " + str(int(high))


LOOKUP = lookup(
    "gloss",
    "Gloss levels in gloss units",
    "Gloss is the figure at 60 degrees, sheen the one at 85. From 20 to 25 GU of gloss a film can be G3 or "
    "G4, and up to 5 GU G1 or G2: there the sheen decides. On a border, as 10, 35 or 70 GU, a film can bear "
    "either name, whatever its sheen.",
    (column("Level"), column("Called"), column("Gloss at 60 degrees, GU"),
     column("Sheen at 85 degrees, GU")),
    tuple([row(_row(each), each.source, each.status) for each in LEVELS]),
)
