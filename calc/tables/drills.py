"""Drill sizes: fractions, numbers and letters by the inch, and the metric ones."""

from calc.quantities import INCH, show_number


class Drill:
    """One drill size: its name as the shop says it, diameter [m], series (fraction, number, letter or
    metric)."""

    def __init__(self, name: str, diameter: float, series: str, source: str, status: str) -> None:
        self.name = name
        self.diameter = diameter
        self.series = series
        self.source = source
        self.status = status


LARGEST_FRACTION = 32
"""Fractions go up to this many 64ths."""

_NUMBERS = (
    (80, 0.0135),
    (38, 0.1015), (37, 0.1040), (36, 0.1065), (35, 0.1100), (34, 0.1110), (33, 0.1130), (32, 0.1160),
    (31, 0.1200), (30, 0.1285), (29, 0.1360), (28, 0.1405), (27, 0.1440), (26, 0.1470), (25, 0.1495),
    (24, 0.1520), (23, 0.1540), (22, 0.1570), (21, 0.1590), (20, 0.1610), (19, 0.1660), (18, 0.1695),
    (17, 0.1730), (16, 0.1770), (15, 0.1800), (14, 0.1820), (13, 0.1850), (12, 0.1890), (11, 0.1910),
    (10, 0.1935), (9, 0.1960), (8, 0.1990), (7, 0.2010), (6, 0.2040), (5, 0.2055), (4, 0.2090),
    (3, 0.2130), (2, 0.2210), (1, 0.2280),
)
_LETTERS = (
    ("A", 0.234), ("B", 0.238), ("C", 0.242), ("D", 0.246), ("E", 0.250), ("F", 0.257), ("G", 0.261),
    ("H", 0.266), ("I", 0.272), ("J", 0.277), ("K", 0.281), ("L", 0.290), ("M", 0.295), ("N", 0.302),
    ("O", 0.316), ("P", 0.323), ("Q", 0.332), ("R", 0.339), ("S", 0.348), ("T", 0.358), ("U", 0.368),
    ("V", 0.377), ("W", 0.386), ("X", 0.397), ("Y", 0.404), ("Z", 0.413),
)
METRIC_TENTHS = tuple(range(10, 101)) + (102,) + tuple(range(105, 131, 5))
"""Metric sizes in tenths of a millimetre: each tenth to 10 mm, beyond it the halves that shops keep and the
tap size of 10.2 mm."""


def _fraction(parts: int) -> Drill:
    bottom = 64
    top = parts
    while top % 2 == 0:
        top //= 2
        bottom //= 2
    name = str(top) + "/" + str(bottom) + " in"
    return Drill(name, parts / 64 * INCH, "fraction", "geometry", "calculated")


def _sizes() -> list[Drill]:
    sizes = [_fraction(parts) for parts in range(1, LARGEST_FRACTION + 1)]
    sizes += [Drill("#" + str(number), inches * INCH, "number", "drill-charts", "read second-hand")
              for number, inches in _NUMBERS]
    sizes += [Drill(letter, inches * INCH, "letter", "drill-charts", "read second-hand")
              for letter, inches in _LETTERS]
    return sizes


def _metric(tenths: int) -> Drill:
    name = show_number(tenths / 10, 0 if tenths % 10 == 0 else 1) + " mm"
    return Drill(name, tenths / 10_000, "metric", "metric-drill-sizes", "read second-hand")


def _in_order(sizes: list[Drill]) -> tuple[Drill, ...]:
    return tuple(sorted(sizes, key=lambda drill: drill.diameter))


INCH_DRILLS = _in_order(_sizes())
"""Sizes by the inch, the smallest first. Numbers 39 to 79 are left out: too small for this book's holes."""

METRIC_DRILLS = _in_order([_metric(tenths) for tenths in METRIC_TENTHS])

DRILLS = _in_order(list(INCH_DRILLS) + list(METRIC_DRILLS))
"""All of them, the smallest first."""


def find(name: str) -> Drill:
    """Return the drill of this name.

    Args:
        name: as in DRILLS, such as "#7", "F", "3/8 in" or "9.5 mm".

    Returns:
        its row.

    Raises:
        ValueError: no drill has this name.

    Source: drill-charts.
    """
    for drill in DRILLS:
        if drill.name == name:
            return drill
    raise ValueError("no drill is called " + name)


def nearest_below(diameter: float, widest: float, sizes: tuple[Drill, ...] = INCH_DRILLS) -> Drill | None:
    """Return the drill nearest to a diameter of those that are not too wide.

    Args:
        diameter [m]: wanted.
        widest [m]: no drill of this diameter or more will do.
        sizes: drills at hand, the smallest first.

    Returns:
        the row, or None where every drill is too wide; of two equally near, the smaller.

    Source: drill-charts.
    """
    narrow = tuple([drill for drill in sizes if drill.diameter < widest])
    return nearest(diameter, narrow) if narrow else None


def nearest(diameter: float, sizes: tuple[Drill, ...] = INCH_DRILLS) -> Drill:
    """Return the drill whose diameter is nearest.

    Args:
        diameter [m]: wanted.
        sizes: drills at hand, the smallest first.

    Returns:
        the row; of two equally near, the smaller.

    Source: drill-charts.
    """
    best = sizes[0]
    for drill in sizes:
        if abs(drill.diameter - diameter) < abs(best.diameter - diameter):
            best = drill
    return best
