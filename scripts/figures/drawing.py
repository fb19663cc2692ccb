"""Limbs through the draw, with the draw curve growing beside them: a moving picture."""

from calc.bows.lengths import BEYOND_PIVOT
from calc.mechanics.bow.bow import Braced, Drawn
from calc.quantities import INCH, POUND_FORCE
from scripts.figures.film import film, shapes_of
from scripts.figures.invented import as_it_came, outline, setup
from scripts.figures.picture import Picture, Point

WIDTH, HEIGHT = 360, 336
SCALE = 4.7 / INCH
BACK, MIDDLE = 16, 168
"""Where on the sheet the grip's throat and the middle of the bow lie."""

FRAMES = 18

SHOWN_STILL = (0, 6, 12, 17)
LEFT, BOTTOM = 206, 292
ACROSS, UP = 6.6 / INCH, 4.3 / POUND_FORCE
FIRST = 8 * INCH


def drawing() -> str:
    """Return the bow as it came from brace to full draw, with force against draw beside it."""
    states = _states()
    picture = Picture(
        "limbs-through-the-draw", "Limbs through the draw, and the draw curve beside them",
        "Left: the invented bow of this book from the side, computed from brace height to full draw; "
        "the limbs bend back and inward as the string is drawn to the right. Right: force against "
        "draw. The curve climbs steeply at first, then nearly straight, to 53 lb at 28 in; a dot "
        "marks where the bow on the left is.", WIDTH, HEIGHT)
    _axes(picture)
    frames = [_frame(states, index, "rb-limb") for index in range(FRAMES)]
    still = Picture("", "", "", WIDTH, HEIGHT)
    for index in SHOWN_STILL:
        _bow(still, states[index], "rb-string")
        still.circle(_on_curve(states[index]), 4, "rb-mark")
    _curve(still, states)
    picture.shapes += film(frames, shapes_of(still), WIDTH, 5, there_and_back=True)
    return picture.svg()


def _states() -> list[Braced | Drawn]:
    bow, reading = as_it_came().bow, setup()
    braced = bow.brace(reading.brace_height)
    step = (reading.draw - braced.distance) / (FRAMES - 1)
    return [braced, *bow.curve([braced.distance + step * i for i in range(1, FRAMES)])]


def _frame(states: list[Braced | Drawn], index: int, kind: str) -> str:
    sheet = Picture("", "", "", WIDTH, HEIGHT)
    _bow(sheet, states[index], kind)
    _curve(sheet, states[:index + 1])
    sheet.circle(_on_curve(states[index]), 4, "rb-mark")
    return shapes_of(sheet)


def _bow(sheet: Picture, state: Braced | Drawn, kind: str) -> None:
    def place(point: Point) -> Point:
        return BACK + point[0] * SCALE, MIDDLE - point[1] * SCALE

    points = outline((state.upper, state.lower))
    sheet.path(map(place, [points[0], state.nock, points[-1]]), "rb-string")
    sheet.path(map(place, points[::2]), kind)


def _on_curve(state: Braced | Drawn) -> Point:
    force = state.force if isinstance(state, Drawn) else 0.0
    return LEFT + (state.distance + BEYOND_PIVOT - FIRST) * ACROSS, BOTTOM - force * UP


def _curve(sheet: Picture, states: list[Braced | Drawn]) -> None:
    if len(states) > 1:
        sheet.path(map(_on_curve, states), "rb-ink")


def _axes(picture: Picture) -> None:
    picture.path([(LEFT, BOTTOM - 58 * POUND_FORCE * UP), (LEFT, BOTTOM), (WIDTH - 8, BOTTOM)], "rb-quiet")
    for inches in (10, 20, 28):
        x = LEFT + (inches * INCH - FIRST) * ACROSS
        picture.path([(x, BOTTOM), (x, BOTTOM + 5)], "rb-quiet")
        picture.text((x, BOTTOM + 20), f"{inches} in" if inches == 28 else str(inches), "middle")
    for pounds in (20, 40):
        y = BOTTOM - pounds * POUND_FORCE * UP
        picture.path([(LEFT - 5, y), (LEFT, y)], "rb-quiet")
        picture.text((LEFT - 8, y + 5), str(pounds), "end")
    picture.text((LEFT + 6, BOTTOM - 56 * POUND_FORCE * UP), "lb")
    picture.text((LEFT + 72, BOTTOM + 38), "draw", "middle")
