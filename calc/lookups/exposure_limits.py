"""Published limits for breathing, as they were read."""

from calc.lookups.declare import column, lookup, row
from calc.tables.exposure_limits import LIMITS, ExposureLimit, value_of


def _row(limit: ExposureLimit) -> tuple[object, ...]:
    return (limit.stuff + ", " + limit.body, value_of(limit), limit.averaging, limit.recorded)


LOOKUP = lookup(
    "exposure-limits",
    "Published limits for breathing",
    "For information only, and never a verdict on a room: limits change and differ by country, a measurement "
    "in the breathing zone is the only test, and for several of these the aim is none at all. Being below "
    "the figure for HDI monomer clears no spray: most of its isocyanate is polyisocyanate. Check the current "
    "list of the body named, and the safety data sheet.",
    (column("What, set by"), column("Limit"), column("Averaged over"), column("Set down here")),
    tuple([row(_row(each), each.source, each.status) for each in LIMITS]),
)
