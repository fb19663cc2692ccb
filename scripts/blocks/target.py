"""The sheet of dots, drawn to print at true scale: a unit of the drawing is a millimetre of the paper."""

from calc.pictures.target import DOTS, HALF_HEIGHT, HALF_WIDTH
from calc.quantities import INCH, show_number
from scripts.blocks.tree import UNSEARCHED, Node, element

MILLIMETRE = 0.001
EDGE = 11.0
"""From a dot's middle to the sheet's edge [mm]: a printer's margins and more stay free around it."""
RADIUS = 8.0
PEEPHOLE = 1.5
"""The white middle of a dot [mm]: some pixels wide from 10 ft."""
BAR_INCHES = 8
BAR_MILLIMETRES = 200
LETTER_SIZE = 7.0


def sheet() -> Node:
    """Return the sheet as a drawing, its size in millimetres."""
    width, height = 2 * (HALF_WIDTH / MILLIMETRE + EDGE), 2 * (HALF_HEIGHT / MILLIMETRE + EDGE)
    return element(
        "figure", {"class": "rb-target", **UNSEARCHED},
        element("svg", {"viewBox": " ".join(map(_at, (-width / 2, -height / 2, width, height))),
                        "width": _at(width) + "mm", "height": _at(height) + "mm", "role": "img",
                        "aria-labelledby": "rb-target-title rb-target-text"},
                element("title", {"id": "rb-target-title"}, "Sheet of dots"),
                element("desc", {"id": "rb-target-text"},
                        "Four black dots at the corners of a rectangle of 9 by 6 inches and one in its "
                        "middle, each with a small white middle and a letter from A to M. Two bars to check, "
                        "of 8 inches and of 200 millimetres. A line for the sheet's number."),
                *(node for id, _, place in DOTS for node in _dot(id.upper(), place)),
                *_bar(-58.0, BAR_INCHES, INCH / MILLIMETRE, "8 in"),
                *_bar(58.0, BAR_MILLIMETRES // 10, 10.0, "200 mm"),
                _words(0, -24, "This side up"),
                _words(0, 28, "Sheet no. ______")),
    )


def _dot(letter: str, place: tuple[float, float]) -> list[Node]:
    x, y = place[0] / MILLIMETRE, -place[1] / MILLIMETRE
    inward = -1 if x > 0 else 1
    return [
        element("circle", {"class": "rb-target-dot", "data-dot": letter.lower(), "cx": _at(x), "cy": _at(y),
                           "r": _at(RADIUS)}),
        element("circle", {"class": "rb-target-middle", "cx": _at(x), "cy": _at(y), "r": _at(PEEPHOLE)}),
        _words(x + inward * (RADIUS + 6), y + LETTER_SIZE / 3, letter),
    ]


def _bar(y: float, steps: int, step: float, label: str) -> list[Node]:
    """Return a bar with a tick at each step, across the sheet's middle."""
    left = -steps * step / 2
    ticks = " ".join("M" + _at(left + index * step) + " " + _at(y - 2) + "v4" for index in range(steps + 1))
    return [
        element("path", {"class": "rb-target-bar", "data-bar": label,
                         "d": "M" + _at(left) + " " + _at(y) + "h" + _at(steps * step)}),
        element("path", {"class": "rb-target-bar", "d": ticks}),
        _words(0, y - 4, "This bar is " + label + " long"),
    ]


def _words(x: float, y: float, text: str) -> Node:
    return element("text", {"x": _at(x), "y": _at(y), "text-anchor": "middle"}, text)


def _at(number: float) -> str:
    return show_number(number, 2)
