"""Profiles of a limb's edge, and what each costs the bow of the edge calculator's worked example."""

import math
from fractions import Fraction

from calc import answer, catalog
from calc.outcome import Amount
from calc.quantities import INCH, POUND_FORCE
from scripts.figures.invented import example_of
from scripts.figures.picture import Picture, Point

SCALE = 620 / INCH
BESIDE, BELOW = 180, 176
LONG = 140
STEPS = 24

ROUND = "rounded"
NAMES = {
    "as they are": "square",
    "broken: a flat": "a flat, {}",
    ROUND: "round, {}",
    "square, so much off each side": "{} off each side",
    "full round": "full round",
}
"""What the rows of the calculator's table are called here, with how far they reach in."""


def edges() -> str:
    """Return the profiles of one edge, enlarged, each with what all eight edges of that kind take."""
    rows = _rows()
    said = " ".join(f"{name[:1].upper()}{name[1:]}: {takes}, {glass}." for name, _, _, takes, glass in rows)
    picture = Picture(
        "edge-profiles", "Profiles of a limb's edge, and what each costs",
        "Corners of a limb cut across, much enlarged, glass on top and the core below. " + said,
        360, BELOW * math.ceil(len(rows) / 2))
    for index, (name, kind, reach, takes, glass) in enumerate(rows):
        left, top = 8 + index % 2 * BESIDE, index // 2 * BELOW
        for line, text in enumerate((name, takes, glass)):
            picture.text((left, top + 16 + 17 * line), text)
        _corner(picture, kind, reach, (left, top + 62))
    return picture.svg()


def _rows() -> list[tuple[str, str, float, str, str]]:
    """Return of each profile its name here, its name in the table, its reach, what it takes and leaves."""
    outcome = answer.work_out(catalog.find("edges"), []).outcome
    if outcome is None:
        raise ValueError("the worked example of the edges does not compute")
    rows = []
    for kind, reach, takes, _, glass in outcome.tables[0].rows:
        if not (isinstance(kind, str) and isinstance(reach, float) and isinstance(takes, Amount)
                and isinstance(takes.value, float) and isinstance(glass, float)):
            raise ValueError(f"the table of the edges has changed its columns: {kind}")
        weight = f"takes {takes.value / POUND_FORCE:.2f} lb" if takes.value else "takes nothing"
        left = f"{glass / INCH:.3f} in of glass left" if glass else "the core shows"
        rows.append((NAMES[kind].format(_inches(reach)), kind, reach, weight, left))
    return rows


def _inches(length: float) -> str:
    """Return a length in the nearest 64th of an inch."""
    return f"{Fraction(round(length / INCH * 64), 64)} in"


def _corner(picture: Picture, kind: str, reach: float, origin: Point) -> None:
    """Add a corner: the glass of its face, and the core down to the middle of the thickness."""
    glass = min(example_of("edges")[name] for name in ("glass_back", "glass_belly"))
    half = min(row[2] for row in example_of("edges")["upper_stations"]) / 2
    off = reach if kind.startswith("square,") else 0.0

    def side(start: float, end: float) -> list[Point]:
        depths = [start + (end - start) * i / STEPS for i in range(STEPS + 1)]
        return [(origin[0] + LONG - (off + _lacking(kind, reach, depth)) * SCALE, origin[1] + depth * SCALE)
                for depth in depths]

    for start, end, layer in ((glass, half, "rb-fill"), (0.0, glass, "rb-glass")):
        picture.path([(origin[0], origin[1] + start * SCALE), *side(start, end),
                      (origin[0], origin[1] + end * SCALE)], layer)
    if kind != "as they are":
        picture.path([(origin[0] + LONG - (off or reach) * SCALE, origin[1]), (origin[0] + LONG, origin[1]),
                      (origin[0] + LONG, origin[1] + (half if off else reach) * SCALE)], "rb-after")


def _lacking(kind: str, reach: float, depth: float) -> float:
    """Return how much of the width an edge lacks at a depth below its face [m]."""
    if kind in ("as they are", "square, so much off each side") or depth >= reach:
        return 0.0
    if kind == "broken: a flat":
        return reach - depth
    return reach - math.sqrt(reach**2 - (reach - depth) ** 2)
