"""Air speed across the face of a spray booth."""

from calc.lookups.declare import column, lookup, row
from calc.tables.booths import DRAUGHTY, FACE_SPEEDS, QUIET, FaceSpeed

_ROOMS = {QUIET: "Draught up to 50 ft/min", DRAUGHTY: "Draught up to 100 ft/min"}


def _row(speed: FaceSpeed) -> tuple[object, ...]:
    return (_ROOMS[speed.draught] + ", " + speed.size + " booth", speed.design, speed.low, speed.high)


LOOKUP = lookup(
    "face-speeds",
    "Air speed at a booth's open face",
    "For manual air guns, as the mean over the open face with clean filters. A loaded filter can halve it, "
    "so measure.",
    (column("Room and booth"), column("Design", "air_speed", "imperial"),
     column("From", "air_speed", "imperial"), column("To", "air_speed", "imperial")),
    tuple([row(_row(each), each.source, each.status) for each in FACE_SPEEDS]),
)
