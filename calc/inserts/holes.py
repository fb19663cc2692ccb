"""The hole that an insert asks for: depths, drills, spacing."""

from collections import namedtuple

from calc.outcome import Refused
from calc.quantities import INCH, ROUNDING
from calc.shop import drilling, threads
from calc.tables import drills
from calc.tables import threads as thread_table

FIT_ERROR = 0.005 * INCH
"""A bit further than this from the hole that the insert asks for is worth a second look."""

NO_DRILL = 0.5e-3  # m
"""A drill farther than this from the hole is none for it: the table ends before."""


class Depths:
    """How deep shoulder, point and tip go, and the wall left as measured and at worst [m]."""

    def __init__(self, shoulder: float, point: float, tip: float, wall: float, worst: float) -> None:
        self.shoulder = shoulder
        self.point = point
        self.tip = tip
        self.wall = wall
        self.worst = worst


class WantedHole:
    """The hole that an insert asks for: its diameter, the insert's own outside (over knurls or thread), and
    fit, PRESS or THREADED."""

    def __init__(self, wanted: float, outside: float, fit: str) -> None:
        self.wanted = wanted
        self.outside = outside
        self.fit = fit


PRESS = "press"
THREADED = "threaded"

Screw = namedtuple("Screw", "length reach longest major")
"""Length under the head, or None; how far it goes into the hole, or None; the longest that stays off its
bottom; outside diameter."""


def depths_of(shoulder: float, point: float, thickness: float, error: float) -> Depths:
    """Return how deep shoulder and tip go, and the wall that is left."""
    tip = shoulder + point
    return Depths(shoulder, point, tip, drilling.wall_left(thickness, tip, 0.0),
                  drilling.wall_left(thickness, tip, error))


def spacing_of(outside: float | None, inside: float | None) -> float | None:
    """Return the distance between two holes' middles; None where it was not measured [m]."""
    if outside is None and inside is None:
        return None
    if outside is None or inside is None:
        raise Refused("inside" if inside is None else "outside",
                      "Give both measures over the holes' edges, or leave both empty.")
    if inside >= outside:
        raise Refused("inside", "The distance between the near edges must be less than that over the far "
                      "edges: swap the two, or measure again.")
    return drilling.spacing_from_edges(outside, inside)


def hole_wanted(
    fit: str, diameter: float | None, interference: float | None, outer_thread: str | None,
    share: float | None,
) -> WantedHole:
    """Return the hole that an insert asks for."""
    if fit == THREADED:
        thread = thread_table.find(outer_thread or "")
        return WantedHole(threads.tap_hole(thread.major, thread.pitch, share or 0.0), thread.major, fit)
    return WantedHole((diameter or 0.0) - (interference or 0.0), diameter or 0.0, fit)


def widest(hole: WantedHole) -> float:
    """Return the hole that leaves half of the interference or thread that is wanted."""
    return float((hole.wanted + hole.outside) / 2)


def drill_for(hole: WantedHole, sizes: tuple[drills.Drill, ...]) -> drills.Drill | None:
    """Return the drill at hand nearest to the hole of those in which the insert still holds, or None."""
    found = drills.nearest_below(hole.wanted, min(widest(hole) + ROUNDING, hole.outside - ROUNDING), sizes)
    return found if found is not None and abs(found.diameter - hole.wanted) <= NO_DRILL else None


def tap_drill(thread: thread_table.Thread, sizes: tuple[drills.Drill, ...]) -> drills.Drill:
    """Return the drill that charts give, or of those at hand the nearest to three quarters of thread."""
    chart = drills.find(thread.drill)
    if chart in sizes:
        return chart
    return drills.nearest(threads.tap_hole(thread.major, thread.pitch, threads.CHART_SHARE), sizes)
