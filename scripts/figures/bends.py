"""A good bend against a hinge, a stiff tip and a whip: one limb, its stiffness shifted along it."""

import math
from collections.abc import Callable

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import LimbShape
from calc.quantities import INCH
from scripts.figures.invented import as_it_came, setup
from scripts.figures.picture import Picture, Point

SCALE = 6.6 / INCH
BESIDE, BELOW = 180, 234
BENDING = 13.0
"""Height in the picture of a bending of 1 / m."""

FOOT = 1.5 * INCH
"""Of the riser, how much is shown beside the fadeout."""


def _around(along: float, place: float, factor: float) -> float:
    """Return a factor that holds about one place of a limb and fades to 1 on both sides."""
    return 1 + (factor - 1) * math.exp(-(((along - place) / 0.06) ** 2))


def _beyond(along: float, place: float, factor: float) -> float:
    """Return a factor that holds beyond a place of a limb and fades to 1 before it."""
    share: float = factor ** (1 / (1 + math.exp((place - along) / 0.04)))
    return share


SHIFTED: tuple[tuple[str, str, Callable[[float], float]], ...] = (
    ("good", "bends all along", lambda _: 1.0),
    ("a hinge", "one place gives", lambda along: _around(along, 0.42, 0.22)),
    ("a stiff tip", "outer half stands", lambda along: _beyond(along, 0.4, 8.0)),
    ("a whip", "outer half does it all", lambda along: _beyond(along, 0.38, 0.36)),
)
"""Name, what is seen, and the factor [1] on stiffness at a share of the way from fadeout to nock."""


def bends() -> str:
    """Return four limbs of one bow, braced and drawn, and how sharply each bends along its length."""
    picture = Picture(
        "limb-bends", "A good bend against a hinge, a stiff tip and a whip",
        "Four upper limbs computed from the same bow, seen from the side, back up, the fadeout at the"
        " left: thin as braced, thick as drawn, and below each how sharply it bends from place to "
        "place. Good: an even curve that fades toward the tip. A hinge: one sharp peak in the middle,"
        " straight on both sides of it. A stiff tip: all the bending beside the fadeout, the outer "
        "half straight. A whip: little beside the fadeout, a peak in the outer half. Over each faulty"
        " limb the good one is dashed.", 360, 462)
    good = _shapes(SHIFTED[0][2])
    for index, (name, seen, factor) in enumerate(SHIFTED):
        left, top = 8 + index % 2 * BESIDE, index // 2 * BELOW
        shapes = _shapes(factor)
        picture.text((left, top + 16), name)
        picture.text((left, top + 33), seen)
        _limb(picture, shapes, (left, top + 52))
        if index:
            _line(picture, good[1], (left, top + 52), "rb-after")
        _bending(picture, shapes[1], (left, top + 222))
    return picture.svg()


def _shapes(factor: Callable[[float], float]) -> tuple[LimbShape, LimbShape]:
    """Return the upper limb braced and drawn, on a bow whose limbs are alike."""
    base = as_it_came().bow.upper
    last = len(base.stiffness) - 1
    limb = base.stiffened([factor(i / last) for i in range(last + 1)])
    bow, reading = Bow(limb, limb), setup()
    return bow.brace(reading.brace_height).upper, bow.draw(reading.draw).upper


def _place(x: float, y: float, origin: Point) -> Point:
    return origin[0] + (y - as_it_came().bow.upper.base[1] + FOOT) * SCALE, origin[1] + x * SCALE


def _line(picture: Picture, shape: LimbShape, origin: Point, kind: str) -> None:
    points = list(zip(shape.x, shape.y, strict=True))
    picture.path([_place(x, y, origin) for x, y in points], kind)


def _limb(picture: Picture, shapes: tuple[LimbShape, LimbShape], origin: Point) -> None:
    braced, drawn = shapes
    root = drawn.x[0], drawn.y[0]
    picture.path([_place(root[0], root[1] - FOOT, origin), _place(*root, origin)], "rb-limb")
    _line(picture, braced, origin, "rb-quiet")
    _line(picture, drawn, origin, "rb-limb")


def _bending(picture: Picture, shape: LimbShape, origin: Point) -> None:
    """Add how sharply a limb bends, over a line that is as long as the limb."""
    heights = [(FOOT + along) * SCALE for along in shape.arc_length]
    points = [(origin[0] + x, origin[1] - BENDING * abs(bent))
              for x, bent in zip(heights, shape.bending, strict=True)]
    picture.path([(points[0][0], origin[1]), *points, (points[-1][0], origin[1])], "rb-mark")
