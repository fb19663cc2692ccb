"""Threads with their tap drills and what share of thread each leaves."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import INCH
from calc.shop.threads import CHART_SHARE, basic_minor_diameter, share_of_thread, tap_hole
from calc.tables import drills
from calc.tables.threads import UNIFIED, Thread


def _cells(thread: Thread) -> tuple[object, ...]:
    hole = tap_hole(thread.major, thread.pitch, CHART_SHARE)
    drill = drills.find(thread.drill)
    return (thread.name, thread.major, INCH / thread.pitch, basic_minor_diameter(thread.major, thread.pitch),
            hole, drill.name, drill.diameter, share_of_thread(thread.major, thread.pitch, drill.diameter))


LOOKUP = lookup(
    "threads",
    "Unified threads and their tap drills",
    "Per cent of thread by the 1.299 rule that shop charts follow: hole = D - 1.299 x pitch x share. The "
    "other convention in use, 1.0825, gives wider holes for the same per cent.",
    (column("Thread"), column("Outside diameter", "thickness", "imperial", 4),
     column("Threads per inch", "number", decimals=0),
     column("Basic minor diameter", "thickness", "imperial", 4),
     column("Hole for 75 %", "thickness", "imperial", 4), column("Chart drill"),
     column("Its diameter", "thickness", "imperial", 4), column("Thread with it", "ratio")),
    tuple([row(_cells(each), each.source, each.drill_status) for each in UNIFIED]),
)
