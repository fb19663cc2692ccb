"""A bow strung with a stringer: a moving picture, its limbs computed at each height that they reach."""

import math

from calc.quantities import INCH
from scripts.figures.film import film, shapes_of
from scripts.figures.invented import as_it_came, outline, setup, unstrung
from scripts.figures.picture import Picture, Point, path_through

WIDTH, HEIGHT = 360, 240
MIDDLE, GROUND, SCALE = 180, 228, 3.1 / INCH
HALF_CORD = 37 * INCH
STRING = 57 * INCH
LOWEST, HIGHEST, LIFTS = 3 * INCH, 9.25 * INCH, 9
"""Heights between grip and string as far as the cord bends the limbs, and in how many steps."""

LOOP_WAITS, LOOP_SLIDES = 7, 5
"""Computed places of the limb between nock and waiting loop, and frames in which the loop comes up."""

SHOULDER, REACH, TRUNK = 53 * INCH, 24.5 * INCH, 19 * INCH
HAND = 5


class Moment:
    """The bow as one line [m], the height of its grip [m], where the upper loop is, whether it is pushed."""

    def __init__(self, bow: list[Point], loop: int, pushed: bool) -> None:
        self.bow = bow
        self.loop = loop
        self.pushed = pushed
        drop, half = bow[0][0], -bow[0][1]
        self.grip = drop + math.sqrt(HALF_CORD**2 - half**2)


def stringing() -> str:
    """Return the lift, the loop's way up the limb, and the way down onto the string."""
    picture = Picture(
        "stringing-moving", "Pulling a bow up on a stringer",
        "An archer with glasses stands behind the bow, one foot on the middle of the cord. The grip goes "
        "straight up and the limbs bend down; the other hand pushes the upper loop along the limb into its "
        "groove; then the grip goes down slowly until the string holds the limbs.", WIDTH, HEIGHT)
    picture.path([(8, GROUND), (WIDTH - 8, GROUND)], "rb-quiet")
    moments = _moments()
    frames = [_frame(each) for each in moments]
    still = Picture("", "", "", WIDTH, HEIGHT)
    still.path(_placed(moments[0], moments[0].bow), "rb-after")
    pushed = _frame(moments[LIFTS + LOOP_SLIDES - 2])
    picture.shapes += film(frames, shapes_of(still) + "\n" + pushed, WIDTH, 9, there_and_back=False)
    return picture.svg()


def _moments() -> list[Moment]:
    bow = as_it_came().bow
    heights = [LOWEST + (HIGHEST - LOWEST) * i / (LIFTS - 1) for i in range(LIFTS)]
    lifted = [outline((each.upper, each.lower)) for each in map(bow.brace, heights)]
    waits = [Moment(shape, -LOOP_WAITS, False) for shape in (unstrung(bow), unstrung(bow), *lifted)]
    slides = [Moment(lifted[-1], -LOOP_WAITS + i, True) for i in range(1, LOOP_SLIDES + 1)]
    home = -LOOP_WAITS + LOOP_SLIDES
    braced = bow.brace(setup().brace_height)
    down = [Moment(shape, home, False) for shape in (lifted[-1], lifted[-2])]
    return waits + slides + down + [Moment(outline((braced.upper, braced.lower)), home, False)] * 3


def _placed(moment: Moment, points: list[Point]) -> list[Point]:
    """Return where points of the bow lie on the sheet, back up."""
    return [(MIDDLE + y * SCALE, GROUND - (moment.grip - x) * SCALE) for x, y in points]


def _frame(moment: Moment) -> str:
    sheet = Picture("", "", "", WIDTH, HEIGHT)
    bow = _placed(moment, moment.bow)
    grip = (MIDDLE - 2.0, GROUND - moment.grip * SCALE)
    loop = bow[moment.loop]
    shoulder = GROUND - min(SHOULDER, moment.grip + REACH) * SCALE
    _person(sheet, shoulder, grip, loop if moment.pushed else (MIDDLE + 20.0, shoulder + 60))
    foot = (float(MIDDLE), GROUND - 3.0)
    sheet.path([bow[0], foot, bow[-1]], "rb-mark")
    sheet.path(_hanging(bow[2], loop), "rb-string")
    sheet.path(bow[::2], "rb-limb")
    for tip in (bow[0], bow[-1]):
        sheet.circle(tip, 4.5, "rb-pocket")
    sheet.circle(grip, HAND, "rb-fill")
    if moment.pushed:
        sheet.circle(loop, HAND, "rb-fill")
    return shapes_of(sheet)


def _hanging(start: Point, end: Point) -> list[Point]:
    """Return the string between two places, hanging where it is longer than the way between them."""
    drop = math.sqrt(max(0.0, (STRING * SCALE) ** 2 - math.dist(start, end) ** 2)) / 2
    shares = [i / 8 for i in range(9)]
    return [(start[0] + (end[0] - start[0]) * share,
             start[1] + (end[1] - start[1]) * share + 4 * drop * share * (1 - share)) for share in shares]


def _person(sheet: Picture, shoulder: float, grip: Point, other: Point) -> None:
    hip = shoulder + TRUNK * SCALE
    for foot, side in ((-16.0, -1), (2.0, 1)):
        ankle = (MIDDLE + foot, GROUND - 4.0)
        _stroke(sheet, _bent((MIDDLE + 9.0 * side, hip), ankle, 18 * INCH * SCALE, side), 13)
    _stroke(sheet, [(MIDDLE, hip - 3), (MIDDLE, shoulder + 8)], 32)
    _stroke(sheet, _bent((MIDDLE - 16, shoulder + 8), grip, 13 * INCH * SCALE, -1), 10)
    _stroke(sheet, _bent((MIDDLE + 16, shoulder + 8), other, 13 * INCH * SCALE, 1), 10)
    head = (float(MIDDLE), shoulder - 20)
    sheet.circle(head, 12, "rb-head")
    sheet.path([(head[0] - 11, head[1] - 1), (head[0] + 11, head[1] - 1)], "rb-ink")
    for eye in (-5, 5):
        sheet.circle((head[0] + eye, head[1]), 3.5, "rb-ink")


def _bent(start: Point, end: Point, part: float, side: int) -> list[Point]:
    """Return an arm or a leg of two parts of one length between its ends, its joint on a side."""
    way = math.dist(start, end)
    out = math.sqrt(max(0.0, part**2 - way**2 / 4))
    across = ((end[1] - start[1]) / way, (start[0] - end[0]) / way)
    x, y = ((one + other) / 2 + side * out * aside
            for one, other, aside in zip(start, end, across, strict=True))
    return [start, (x, y), end]


def _stroke(sheet: Picture, points: list[Point], width: int) -> None:
    sheet.shapes.append(f'<path class="rb-body" style="stroke-width:{width}" d="{path_through(points)}"/>')
