"""Mean air speed across the open face of a spray booth with manual air guns."""

from calc.quantities import FOOT


class FaceSpeed:
    """A row. design, low, high [m/s]; draught: how strongly air crosses the face; size: of the booth."""

    def __init__(
        self, draught: str, size: str, design: float, low: float, high: float, source: str, status: str,
    ) -> None:
        self.draught = draught
        self.size = size
        self.design = design
        self.low = low
        self.high = high
        self.source = source
        self.status = status


_FPM = FOOT / 60

QUIET = "quiet"
DRAUGHTY = "draughty"

FACE_SPEEDS = tuple([
    FaceSpeed(draught, size, design * _FPM, low * _FPM, high * _FPM, "spray-booth-velocities", "read")
    for draught, size, design, low, high in (
        (QUIET, "large", 100.0, 75.0, 125.0), (QUIET, "small", 150.0, 125.0, 175.0),
        (DRAUGHTY, "large", 150.0, 125.0, 175.0), (DRAUGHTY, "small", 200.0, 150.0, 250.0),
    )
])


def face_speed(draught: str, size: str) -> FaceSpeed:
    """Return the row for a draught and a size.

    Raises:
        ValueError: there is no such row.
    """
    for row in FACE_SPEEDS:
        if row.draught == draught and row.size == size:
            return row
    raise ValueError("no face speed is known for a " + size + " booth in a " + draught + " room")
