"""Minutes until a room has cleared, by air changes an hour."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import shown_unit
from calc.shop.air import clearing_time

CHANGES = (0.5, 1, 2, 3, 4, 5, 6, 8, 10, 12, 13, 15, 20, 25, 30, 40, 50)
_PER_HOUR = shown_unit("air_changes", "metric").factor


def _row(changes: float) -> tuple[object, ...]:
    rate = changes * _PER_HOUR
    return (rate, clearing_time(rate, 0.1), clearing_time(rate, 0.01), clearing_time(rate, 0.001))


LOOKUP = lookup(
    "air-changes",
    "Minutes until the air has cleared",
    "How long a room takes to lose 90, 99 and 99.9 % of what is in its air, once nothing more is given off "
    "and if fresh air mixes at once. In a real shop times are about three times as long, in one with dead "
    "corners up to ten times. Worked out from the formula behind the published table; the two agree to the "
    "minute.",
    (column("Air changes", "air_changes"), column("90 % gone", "minutes", decimals=0),
     column("99 % gone", "minutes", decimals=0), column("99.9 % gone", "minutes", decimals=0)),
    tuple([row(_row(changes), "cdc-air-changes", "calculated") for changes in CHANGES]),
)
