"""Published limits for breathing, as they were read."""

from calc.lookups.declare import column, lookup, row
from calc.tables.exposure_limits import LIMITS, Limit


def _row(limit: Limit, twins: int) -> tuple[object, ...]:
    name = limit.stuff + ", " + limit.body + (" (" + str(twins) + ")" if twins > 1 else "")
    return (name, limit.value, limit.averaging, limit.recorded)


def _twins(index: int) -> int:
    """Return which of the rows with one stuff and one body a row is, from 1."""
    this = LIMITS[index]
    return 1 + len([each for each in LIMITS[:index] if (each.stuff, each.body) == (this.stuff, this.body)])


LOOKUP = lookup(
    "exposure-limits",
    "Published limits for breathing",
    "For information only, and never a verdict on a room: limits change and differ by country, a measurement "
    "in the breathing zone is the only test, and for several of these the aim is none at all. Check the "
    "current list of the body named, and the safety data sheet.",
    (column("What, set by"), column("Limit"), column("Averaged over"), column("Set down here")),
    tuple([row(_row(each, _twins(index)), each.source, each.status) for index, each in enumerate(LIMITS)]),
)
