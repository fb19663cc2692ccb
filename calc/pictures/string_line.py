"""The string against the middle of the limbs, in a picture of a braced bow from its belly."""

import math

from calc.outcome import OK, Check, Column, Refused, Table, check, link_with, sentence
from calc.pictures.board import Board
from calc.pictures.lens import DISTANCE_ERROR, Lens, lens_of
from calc.pictures.picture import Marks, Picture, Point, Reading, evenly, point_of
from calc.pictures.plane import middle_of

PLACES = (("upper_tip", "Upper limb, near the tip"), ("upper_riser", "Upper limb, at the fadeout"),
          ("lower_tip", "Lower limb, near the tip"), ("lower_riser", "Lower limb, at the fadeout"))
PARTS = (("left", "Left edge of the limb"), ("right", "Right edge of the limb"), ("string", "String"))

LEAST_WIDTH = 0.003
"""Of a limb between its edges [m]."""


class Heights:
    """How far in front of the board [m] the belly and the string stand, at the fadeouts and near the tips."""

    def __init__(
        self, riser: float, tip: float, string_riser: float, string_tip: float, error: float
    ) -> None:
        self.belly = tip, riser
        self.string = tip + string_tip, riser + string_riser
        self.error = error

    def of(self, place: str, part: str) -> float:
        """Return how far in front of the board a part stands at a place [m]."""
        return (self.string if part == "string" else self.belly)[1 if place.endswith("riser") else 0]


class Off:
    """Where the string lies at one place: its place, how far off the limb's middle, to the right positive."""

    def __init__(self, place: str, name: str, off: Reading) -> None:
        self.place = place
        self.name = name
        self.off = off


def string_off(
    picture: Picture, board: Board, lens: Lens, heights: Heights, scale: float,
    marks: tuple[tuple[str, str, float, float], ...],
) -> list[Off]:
    """Return how far the string lies off the middle of the limbs, at each place that is marked.

    Raises:
        Refused: a place lacks an edge or the string, or both its edges lie in one place.
    """
    feet = _foot_moves(board, lens)
    points = []
    for place, part, x, y in marks:
        out = heights.of(place, part)
        point = point_of(picture, board, lens, (x, y), evenly(picture.error), out, heights.error)
        points.append(_with_foot(point, feet, out / lens.distance))
    together = Marks(points, scale)
    return [Off(place, name, _off_at(together, marks, place, name)) for place, name in PLACES
            if place in [row[0] for row in marks]]


def _off_at(
    together: Marks, marks: tuple[tuple[str, str, float, float], ...], place: str, name: str
) -> Reading:
    middles, shares = [], []
    for part, title in PARTS:
        own = [index for index, row in enumerate(marks) if row[0] == place and row[1] == part]
        if not own:
            raise Refused("string_line", name + " lacks a mark: " + title.lower() + ". Mark it, or take the "
                          "place out.")
        middles.append(middle_of([together.points[index].place for index in own]))
        shares.append(own)
    left, right, string = middles
    across = right[0] - left[0], right[1] - left[1]
    width = math.sqrt(across[0] * across[0] + across[1] * across[1])
    if width < LEAST_WIDTH:
        raise Refused("string_line", name + " has both its edges in one place. Mark the left edge and the "
                      "right one, as you see them with the upper limb up.")
    across = across[0] / width, across[1] / width
    shift = [0.0] * (2 * len(marks))
    for own, weight in zip(shares, (-0.5, -0.5, 1.0)):
        for index in own:
            shift[2 * index] = weight * across[0] / len(own)
            shift[2 * index + 1] = weight * across[1] / len(own)
    away = string[0] - (left[0] + right[0]) / 2, string[1] - (left[1] + right[1]) / 2
    return Reading(together, away[0] * across[0] + away[1] * across[1], shift)


def _foot_moves(board: Board, lens: Lens) -> list[tuple[float, float]]:
    """Return how far the lens's foot on the board goes with each cause, and with its distance [m]."""
    found = []
    for cause in board.causes:
        unknowns = [a + b for a, b in zip(board.unknowns, cause)]
        moved = Board(board.middle, board.spread, unknowns, [], [], None)
        foot = lens_of(moved, lens.distance).foot
        found.append((foot[0] - lens.foot[0], foot[1] - lens.foot[1]))
    foot = lens_of(board, lens.distance * (1 + DISTANCE_ERROR)).foot
    return found + [(0.0, 0.0), (foot[0] - lens.foot[0], foot[1] - lens.foot[1])]


def _with_foot(point: Point, feet: list[tuple[float, float]], share: float) -> Point:
    """Return a point with what the lens's own place leaves unsure about it."""
    return Point(point.along, point.up, point.own,
                 [(a + share * x, b + share * y) for (a, b), (x, y) in zip(point.common, feet)])


def off_table(offs: list[Off]) -> Table:
    """Return where the string lies, with half of each 95 % range."""
    return Table("string_line", "The string off the middle of the limb, to the right positive",
                 (Column("place", "Place", "text"), Column("off", "Off the middle", "length"),
                  Column("off_error", "±", "thickness")),
                 tuple([(each.name, each.off.value, each.off.half_range) for each in offs]))


def tracking_check(figures: list[tuple[str, str]]) -> Check:
    """Return where the string's line goes next; figures: each (input, text)."""
    return check("next", OK, sentence("These figures go on to {}, which says what practice accepts and which "
                                      "side is strong.", link_with("Tracking", "tracking", figures)))
