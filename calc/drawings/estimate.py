"""Hours of each task as a bar from low to high with a tick at the likely."""

from calc.drawings.marks import at
from calc.outcome import Drawing, amount, sentence

WIDTH = 440
LEFT = 180
RIGHT = 420
TOP = 14
ROW = 28


def estimate_drawing(tasks: list[tuple[str, float, float, float]]) -> Drawing:
    """Return the drawing of tasks: name, low, likely, high [s]."""
    most = max([high for _, _, _, high in tasks]) or 1.0
    shapes: list[object] = []
    for index, (name, low, likely, high) in enumerate(tasks):
        y = TOP + index * ROW
        start, tick, end = [at(LEFT + (RIGHT - LEFT) * each / most) for each in (low, likely, high)]
        shapes += [
            ["text", {"class": "rb-label", "x": str(LEFT - 12), "y": str(y + 15), "text-anchor": "end"},
             name],
            ["path", {"class": "rb-limb", "d": f"M {start} {y + 10} H {end}"}],
            ["path", {"class": "rb-ink", "d": f"M {tick} {y + 1} V {y + 19}"}],
        ]
    foot = TOP + len(tasks) * ROW
    shapes += [
        ["path", {"class": "rb-quiet", "d": f"M {LEFT} {foot} H {RIGHT}"}],
        ["text", {"class": "rb-label", "x": str(LEFT), "y": str(foot + 18), "text-anchor": "start"}, "0"],
        ["text", {"class": "rb-label", "x": str(RIGHT), "y": str(foot + 18), "text-anchor": "end"},
         sentence("{}", amount("hours", most))],
    ]
    return Drawing("estimate", "Hours of each task: from low to high, a tick at the likely",
                   sentence("A bar for each task from its low to its high hours, with a tick at the likely. "
                            "The longest ends at {}.", amount("hours", most)),
                   WIDTH, foot + 28, shapes)

