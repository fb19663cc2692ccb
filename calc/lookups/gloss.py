"""Gloss levels."""

from calc.lookups.declare import column, lookup, row
from calc.tables.gloss import HIGHEST, LEVELS, GlossLevel


def _row(level: GlossLevel) -> tuple[object, ...]:
    return (level.id, level.name, _range(level.low, level.high), _range(level.sheen_low, level.sheen_high))


def _range(low: float | None, high: float | None) -> str | None:
    if low is None or high is None:
        return None
    if high == HIGHEST:
        return "at least " + str(int(low))
    return str(int(low)) + " to " + str(int(high)) if low else "at most " + str(int(high))


LOOKUP = lookup(
    "gloss",
    "Gloss levels in gloss units",
    "Between 20 and 25 GU at 60 degrees a film can be G3 or G4, and up to 10 GU it can be G1 or G2: the "
    "reading at 85 degrees decides.",
    (column("Level"), column("Called"), column("At 60 degrees, GU"), column("At 85 degrees, GU")),
    tuple([row(_row(each), each.source, each.status) for each in LEVELS]),
)
