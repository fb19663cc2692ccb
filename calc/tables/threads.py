"""Unified and metric threads met on a bow, with the drill that charts give for tapping them."""

from calc.quantities import INCH


class Thread:
    """One thread: major diameter [m], pitch [m], name of its chart drill.

    status: of diameter and pitch; drill_status: of the chart drill.
    """

    def __init__(
        self, id: str, name: str, major: float, pitch: float, drill: str, source: str, status: str,
        drill_status: str,
    ) -> None:
        self.id = id
        self.name = name
        self.major = major
        self.pitch = pitch
        self.drill = drill
        self.source = source
        self.status = status
        self.drill_status = drill_status


_READ = "read second-hand"
MILLIMETRE = 1e-3


def machine_screw_major(number: int) -> float:
    """Return the outside diameter of a numbered machine screw in inches.

    0.060 + 0.013 n.

    Args:
        number [1]: of the screw, 0 or more.

    Returns:
        [in] diameter, the unit in which the rule is exact.

    Raises:
        ValueError: number is negative.

    Source: thread-charts.
    """
    if number < 0:
        raise ValueError(f"number must not be negative, got {number}")
    return 0.060 + 0.013 * number


def _thread(id: str, name: str, inches: float, per_inch: int, drill: str, drill_status: str) -> Thread:
    return Thread(id, name, inches * INCH, INCH / per_inch, drill, "thread-charts", _READ, drill_status)


def _metric(id: str, name: str, millimetres: float, pitch: float, drill: str) -> Thread:
    return Thread(id, name, millimetres * MILLIMETRE, pitch * MILLIMETRE, drill, "metric-threads",
                  "from memory", "from memory")


UNIFIED = (
    _thread("8-32", "#8-32 UNC", machine_screw_major(8), 32, "#29", _READ),
    _thread("8-36", "#8-36 UNF", machine_screw_major(8), 36, "#29", _READ),
    _thread("10-24", "#10-24 UNC", machine_screw_major(10), 24, "#25", _READ),
    _thread("10-32", "#10-32 UNF", machine_screw_major(10), 32, "#21", _READ),
    _thread("1/4-20", "1/4-20 UNC", 0.250, 20, "#7", _READ),
    _thread("1/4-28", "1/4-28 UNF", 0.250, 28, "#3", _READ),
    _thread("5/16-18", "5/16-18 UNC", 0.3125, 18, "F", _READ),
    _thread("5/16-24", "5/16-24 UNF", 0.3125, 24, "I", _READ),
    _thread("3/8-16", "3/8-16 UNC", 0.375, 16, "5/16 in", _READ),
    _thread("3/8-24", "3/8-24 UNF", 0.375, 24, "Q", _READ),
)

METRIC = (
    _metric("m3", "M3", 3.0, 0.5, "2.5 mm"),
    _metric("m4", "M4", 4.0, 0.7, "3.3 mm"),
    _metric("m5", "M5", 5.0, 0.8, "4.2 mm"),
    _metric("m6", "M6", 6.0, 1.0, "5 mm"),
    _metric("m8", "M8", 8.0, 1.25, "6.8 mm"),
    _metric("m10", "M10", 10.0, 1.5, "8.5 mm"),
)

THREADS = UNIFIED + METRIC


def find(id: str) -> Thread:
    """Return the thread with this id.

    Args:
        id: such as "10-24".

    Returns:
        its row.

    Raises:
        ValueError: no thread has this id.

    Source: thread-charts; metric-threads.
    """
    for thread in THREADS:
        if thread.id == id:
            return thread
    raise ValueError("no thread is called " + id)
