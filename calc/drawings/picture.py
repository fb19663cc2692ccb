"""A photograph's marks as they are understood: lines of its board, curves of its bow."""

from calc.outcome import Drawing
from calc.quantities import show_number

WIDTH = 640


def picture_drawing(
    width: float, height: float, board: list[list[tuple[float, float]]], bow: list[list[tuple[float, float]]]
) -> Drawing:
    """Return the picture's frame with lines on the board and curves of the bow; all in the picture's pixels.

    The page lays the same lines over the picture itself.
    """
    scale = WIDTH / width
    return Drawing(
        "picture", "The marks as they are understood",
        "The frame of the picture. Thin: lines on the board, around the sheets or along the rules and "
        "through their middles. Thick: the edge of the belly of each limb, and the string where one was "
        "marked.",
        WIDTH, int(height * scale + 0.5),
        [["polyline", {"class": name, "points": _points(line, scale)}]
         for name, lines in (("rb-quiet", board), ("rb-mark", bow)) for line in lines if line],
    )


def _points(line: list[tuple[float, float]], scale: float) -> str:
    return " ".join([show_number(x * scale, 2) + "," + show_number(y * scale, 2) for x, y in line])
