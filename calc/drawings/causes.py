"""What makes a range: a bar for each reading."""

from calc.drawings.marks import at
from calc.outcome import Amount, Drawing, sentence

WIDTH = 480
LEFT = 230
RIGHT = 400
TOP = 8
ROW = 24


def causes_drawing(causes: list[tuple[str, Amount, float]], to_what: str = "the weight") -> Drawing:
    """Return the drawing of causes: name, what it does as it is to be written, and the same as a number."""
    most = max([size for _, _, size in causes]) or 1.0
    shapes: list[object] = []
    for index, (name, shown, size) in enumerate(causes):
        y = TOP + index * ROW
        end = at(LEFT + (RIGHT - LEFT) * size / most)
        shapes += [
            ["text", {"class": "rb-label", "x": str(LEFT - 10), "y": str(y + 15), "text-anchor": "end"},
             name],
            ["path", {"class": "rb-limb", "d": f"M {LEFT} {y + 10} H {end}"}],
            ["text", {"class": "rb-label", "x": str(RIGHT + 10), "y": str(y + 15)}, sentence("{}", shown)],
        ]
    return Drawing("causes", "What one standard error of each reading does to " + to_what,
                   "A bar for each reading, as long as what its error does to " + to_what + ".",
                   WIDTH, TOP + len(causes) * ROW + 8, shapes)
