"""Metric threads with their tap drills."""

from calc.lookups.declare import column, lookup, row
from calc.shop.threads import basic_minor_diameter, share_of_thread
from calc.tables import drills
from calc.tables.threads import METRIC, Thread


def _cells(thread: Thread) -> tuple[object, ...]:
    drill = drills.find(thread.drill)
    return (thread.name, thread.major, thread.pitch, basic_minor_diameter(thread.major, thread.pitch),
            drill.name, share_of_thread(thread.major, thread.pitch, drill.diameter))


LOOKUP = lookup(
    "threads-metric",
    "Metric threads and their tap drills",
    "Coarse threads. Per cent of thread by the same 1.299 rule as for the inch threads.",
    (column("Thread"), column("Outside diameter", "thickness"), column("Pitch", "thickness"),
     column("Basic minor diameter", "thickness"), column("Tap drill"), column("Thread with it", "ratio")),
    tuple([row(_cells(each), each.source, each.drill_status) for each in METRIC]),
)
