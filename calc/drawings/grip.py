"""A section of the grip before and after, to scale, the back up."""

from calc.drawings.marks import at, label
from calc.outcome import Drawing, amount, sentence

WIDTH = 440
MIDDLE = 150
TOP = 44
ROOM = 190
"""Most room either way."""


def grip_drawing(
    name: str,
    rounded: bool,
    before: tuple[float, float],
    after: tuple[float, float],
    hole: tuple[str, float, float] | None,
) -> Drawing:
    """Return the drawing of one section.

    Args:
        name: of the section.
        rounded: an oval, else a rectangle.
        before, after: width and depth [m].
        hole: how it runs ("side" or "depth"), its diameter and its middle's distance from the section's
            middle toward the back [m]; or None.
    """
    scale = ROOM / max(before[0], before[1])
    height = before[1] * scale
    middle = TOP + height / 2
    shapes: list[object] = [
        _outline("rb-fill", rounded, after, scale, middle),
        _outline("rb-quiet", rounded, before, scale, middle),
    ]
    if hole is not None:
        shapes.append(_hole(after, hole, scale, middle))
    right = MIDDLE + before[0] * scale / 2 + 22
    shapes += [
        label(MIDDLE, TOP - 12, "middle", "back"),
        label(MIDDLE, TOP + height + 24, "middle", "belly"),
        label(right, middle - 20, "start", sentence("before {} wide", amount("length", before[0]))),
        label(right, middle - 2, "start", sentence("and {} deep", amount("length", before[1]))),
        label(right, middle + 24, "start", sentence("after {} wide", amount("length", after[0]))),
        label(right, middle + 42, "start", sentence("and {} deep", amount("length", after[1]))),
    ]
    return Drawing(
        "grip", "The most strained section, to scale: " + name,
        sentence("A section of the riser, its back up. Before: {} wide and {} deep, the thin outline. After: "
                 "{} wide and {} deep, filled.", amount("length", before[0]), amount("length", before[1]),
                 amount("length", after[0]), amount("length", after[1])),
        WIDTH, int(TOP + height + 40), shapes,
    )


def _outline(
    name: str, rounded: bool, size: tuple[float, float], scale: float, middle: float
) -> list[object]:
    width, depth = size[0] * scale, size[1] * scale
    if rounded:
        return ["ellipse", {"class": name, "cx": str(MIDDLE), "cy": at(middle), "rx": at(width / 2),
                            "ry": at(depth / 2)}]
    return ["rect", {"class": name, "x": at(MIDDLE - width / 2), "y": at(middle - depth / 2),
                     "width": at(width), "height": at(depth)}]


def _hole(
    size: tuple[float, float], hole: tuple[str, float, float], scale: float, middle: float
) -> list[object]:
    runs, diameter, from_middle = hole
    if runs == "side":
        half = size[0] * scale / 2
        return ["rect", {"class": "rb-mark", "x": at(MIDDLE - half),
                         "y": at(middle - (from_middle + diameter / 2) * scale),
                         "width": at(2 * half), "height": at(diameter * scale)}]
    half = size[1] * scale / 2
    return ["rect", {"class": "rb-mark", "x": at(MIDDLE - diameter / 2 * scale),
                     "y": at(middle - half), "width": at(diameter * scale),
                     "height": at(2 * half)}]


