"""A bow in a picture: its marks as points, its frame, and where each kind of mark stands among them."""

import math

from calc.outcome import Refused
from calc.pictures.board import Board
from calc.pictures.course import FEWEST_FOR_SHAPE, Course
from calc.pictures.frame import End, Frame
from calc.pictures.lens import Lens
from calc.pictures.picture import (
    Marks,
    Picture,
    Point,
    Standing,
    evenly,
    point_of,
    wobbles_along,
)
from calc.pictures.plane import dot, less

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Mark = tuple[float, float, str]
    """A mark [px], and how it was set: HAND, EDGE or CORNER."""

RAISED_FROM = 1.5
"""Times the stated errors: where the known points miss by more, all errors are raised by as much."""

LEAST_LEAN = 0.3
"""The cosine of what lies between the way the belly is said to face and the square to the fadeouts' line."""

LIMBS = ("upper_limb", "lower_limb")
DRAWN_LIMBS = ("drawn_upper", "drawn_lower")
"""The fields of the marks along the limbs."""

LIMB_NAMES = ("upper", "lower")


class Photographed:
    """A bow as it stands in a picture.

    courses: of the upper and the lower limb, None where there are too few marks for one. throat, string: the
    place of the first of their marks among all, and how many there are. pixels: of all marks.
    """

    def __init__(
        self, board: Board, lens: Lens, marks: Marks, frame: Frame,
        courses: tuple[Course | None, Course | None], throat: tuple[int, int], string: tuple[int, int],
        pixels: list[tuple[float, float]],
    ) -> None:
        self.board = board
        self.lens = lens
        self.marks = marks
        self.frame = frame
        self.courses = courses
        self.throat = throat
        self.string = string
        self.pixels = pixels


def raised(board: Board) -> float:
    """Return what all errors are multiplied by, since the known points miss by more than was stated."""
    return board.misfit if board.misfit is not None and board.misfit > RAISED_FROM else 1.0


def photographed(
    picture: Picture, board: Board, lens: Lens, standing: Standing, faces: str,
    fields: tuple[str, str],
    limbs: "tuple[list[Mark], list[Mark]]",
    again: tuple[list[tuple[float, float]], list[tuple[float, float]]],
    throat: tuple[tuple[float, float], ...], string: tuple[tuple[float, float], ...], string_out: float,
) -> Photographed:
    """Return the bow that marks show.

    Args:
        picture, board, lens, standing: what was made out of the picture before.
        faces: where the belly faces in the picture: down, up, left or right.
        fields: of the limbs' marks.
        limbs: marks along the upper and the lower limb, from the fadeout to the nock.
        again: further marks of the upper fadeout and of the lower.
        throat, string: marks on them, none or some.
        string_out: how far the string stands in front of the board [m].

    Raises:
        Refused: marks of a limb are out of order, or the belly faces along the bow.
    """
    points: list[Point] = []
    by_hand = evenly(picture.error)
    for limb in limbs:
        points += [point_of(picture, board, lens, mark[:2], wobble, standing.at(part), standing.error)
                   for mark, wobble, part in zip(limb, wobbles_along(picture, limb), _parts(limb))]
    for more in again:
        points += [point_of(picture, board, lens, mark, by_hand, standing.at(0.0), standing.error)
                   for mark in more]
    points += [point_of(picture, board, lens, mark, by_hand, standing.at(0.0), standing.error)
               for mark in throat]
    points += [point_of(picture, board, lens, mark, by_hand, string_out, standing.error) for mark in string]
    marks = Marks(points, raised(board))
    whole = len(limbs[0]) + len(limbs[1])
    first, first_again = (0, len(limbs[0])), (whole, whole + len(again[0]))
    courses = tuple([_course(fields[which], points[first[which]:first[which] + len(limbs[which])],
                             first[which], len(points),
                             points[first_again[which]:first_again[which] + len(again[which])],
                             first_again[which]) for which in (0, 1)])
    ends = [End(marks, first[which], courses[which]) for which in (0, 1)]
    between = less(ends[0].place, ends[1].place)
    if math.sqrt(dot(between, between)) < 0.01:
        raise Refused(fields[1], "Both limbs begin at one place. Begin each at its own fadeout.", 0)
    frame = Frame(marks, ends[0], ends[1], _toward(picture, board, faces, limbs))
    if frame.lean < LEAST_LEAN:
        raise Refused("belly_faces", "The belly cannot face that way: it lies along the bow. Choose the side "
                      "of the picture that the string is on when the bow is braced.")
    for which in (0, 1):
        last = points[first[which] + len(limbs[which]) - 1]
        if len(limbs[which]) > 1 and dot(less(last.place, ends[which].place), frame.outward(which)) <= 0:
            raise Refused(fields[which], "This limb runs toward the other one. Begin at the fadeout and end "
                          "at the nock, and check which limb is the upper.")
    throat_first = whole + len(again[0]) + len(again[1])
    return Photographed(board, lens, marks, frame, (courses[0], courses[1]), (throat_first, len(throat)),
                        (throat_first + len(throat), len(string)),
                        [mark[:2] for mark in limbs[0] + limbs[1]] + list(throat + string))


def _parts(limb: "list[Mark]") -> list[float]:
    """Return each mark's part of the way from the first to the last, along the picture."""
    ways = [0.0]
    for before, here in zip(limb, limb[1:]):
        ways.append(ways[-1] + math.sqrt((here[0] - before[0]) ** 2 + (here[1] - before[1]) ** 2))
    return [way / ways[-1] if ways[-1] > 0 else 0.0 for way in ways]


def _course(
    field: str, points: list[Point], first: int, count: int, again: list[Point], first_again: int
) -> Course | None:
    """Return a limb's course, None where its marks are too few.

    Raises:
        Refused: the marks are out of order.
    """
    if len(points) < FEWEST_FOR_SHAPE:
        return None
    start = points[0].place
    run = less(points[-1].place, start)
    before = -1.0
    for index, each in enumerate(points):
        here = dot(less(each.place, start), run)
        if here <= before:
            raise Refused(field, "This mark lies nearer to the fadeout than the one before it, along "
                          "the line to the nock. Put the marks in order.", index)
        before = here
    try:
        return Course(points, first, count, again, first_again)
    except ValueError:
        raise Refused(field, "These marks lie too unevenly for a limb's shape. Spread them from the "
                      "fadeout to the nock.") from None


def _toward(
    picture: Picture, board: Board, faces: str, limbs: "tuple[list[Mark], list[Mark]]"
) -> tuple[float, float]:
    """Return the direction on the board in which the belly is said to face."""
    step = {"down": (0.0, 1.0), "up": (0.0, -1.0), "left": (-1.0, 0.0), "right": (1.0, 0.0)}[faces]
    x, y = [(a + b) / 2 for a, b in zip(limbs[0][0][:2], limbs[1][0][:2])]
    here, there = (board.place(picture.seen(x + part * step[0], y + part * step[1])) for part in (-5.0, 5.0))
    return less(there, here)
