"""A blind hole cut open along its middle, to scale: wood, insert, cone of the drill, wall behind it."""

from calc.drawings.marks import at, label
from calc.outcome import (
    Drawing,
    Sentence,
    amount,
    sentence,
)

WIDTH = 440
LEFT = 20
TOP = 16
REACH = 400
"""Most room along the hole."""

TALLEST = 150
"""Most room for the diameter."""

ROW = 40


def hole_drawing(
    thickness: float, diameter: float, point: float, insert: float, shoulder: float, tip: float, wall: float
) -> Drawing:
    """Return the drawing of a hole, drilled from the left.

    Args:
        thickness: of the riser along the hole [m].
        diameter: of the bit [m].
        point: width of the point where it starts, over the diameter: 1 for a cone, less for a spur.
        insert: length of the insert, from the face [m].
        shoulder: depth at full diameter [m].
        tip: depth to the point of the bit [m].
        wall: behind the point in the worst case [m].
    """
    scale = min(REACH / max(thickness, tip), TALLEST / diameter)
    half = diameter / 2 * scale
    block = max(4 * half, 70.0)
    middle = TOP + block / 2
    far = LEFT + thickness * scale
    through = tip >= thickness
    end = LEFT + shoulder * scale
    hole = [(LEFT, middle + half), (end, middle + half), (end, middle + half * point),
            (LEFT + tip * scale, middle), (end, middle - half * point), (end, middle - half),
            (LEFT, middle - half)]
    shapes: list[object] = [["path", {"class": "rb-fill", "d": _wood(far, block, hole, through)}]]
    shapes.append(["rect", {"class": "rb-glass", "x": str(LEFT), "y": at(middle - half),
                            "width": at(insert * scale), "height": at(2 * half)}])
    if through:
        shapes.append(["path", {"class": "rb-mark", "d": _path(hole)}])
    shapes.append(["path", {"class": "rb-quiet",
                            "d": f"M 6 {at(middle)} H {at(LEFT + tip * scale)}"}])
    bottom = TOP + block
    shapes += _measure(0, bottom, LEFT, LEFT + shoulder * scale, "rb-ink",
                       sentence("to the shoulder {}", amount("depth", shoulder)))
    shapes += _measure(1, bottom, LEFT, LEFT + tip * scale, "rb-ink",
                       sentence("to the point {}", amount("depth", tip)))
    if wall > 0:
        shapes += _measure(2, bottom, far - wall * scale, far, "rb-mark",
                           sentence("wall in the worst case {}", amount("thickness", wall)))
    else:
        shapes.append(label(LEFT, bottom + 2 * ROW + 26, "start", "can come through the far side"))
    return Drawing(
        "hole", "The hole cut open, to scale, drilled from the left",
        sentence("A riser {} thick, drilled {} to the shoulder and {} to the point of the bit. The insert "
                 "sits at the left, the drill's point is at the right.", amount("thickness", thickness),
                 amount("thickness", shoulder), amount("thickness", tip)),
        WIDTH, int(bottom + 3 * ROW + 10), shapes,
    )


def _wood(far: float, block: float, hole: list[tuple[float, float]], through: bool) -> str:
    corners = [(LEFT, TOP), (far, TOP), (far, TOP + block), (LEFT, TOP + block)]
    return _path(corners + ([] if through else hole)) + " Z"


def _path(points: list[tuple[float, float]]) -> str:
    return "M " + " L ".join([at(x) + " " + at(y) for x, y in points])


def _measure(row: int, bottom: float, start: float, end: float, name: str, text: Sentence) -> list[object]:
    """Return a measuring line below the drawing with its text under it, kept inside the drawing."""
    y = bottom + 12 + row * ROW
    line = (f"M {at(start)} {at(y - 5)} V {at(y + 5)} M {at(start)} {at(y)} "
            f"H {at(end)} M {at(end)} {at(y - 5)} V {at(y + 5)}")
    right = start > WIDTH / 2 - LEFT
    return [["path", {"class": name, "d": line}],
            label(max(end, WIDTH / 2 + LEFT) if right else start, y + 19, "end" if right else "start", text)]


