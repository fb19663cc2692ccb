"""From what a form gives to the picture, its board and its lens; refusals name the field to mend."""

import math

from calc.outcome import Refused
from calc.pictures import plane
from calc.pictures.board import Board, Known, fitted
from calc.pictures.lens import Lens, lens_of
from calc.pictures.picture import Picture, error_of
from calc.pictures.target import dot_place
from calc.quantities import show_number

FEWEST_ON_A_LINE = 3
NARROW = 0.08
"""Known points that spread less than this across their longest line than along it lie on a line."""

FLAT = 10.0
"""Times the marking error times the picture's half diagonal: a triangle of less than this area may be turned
by its marks' errors."""

SLIVER = 0.05
"""A triangle on the board lower than this, of its longest side, may be turned by a sheet out of place and by
the lens's bend."""

WORST_MISFIT = 3.0
"""Times the marking error: beyond it a sheet stands off the plane, or a mark is another's."""


def require_inside(picture: Picture, field: str, marks: list[tuple[float, float]]) -> None:
    """Raise Refused where a mark lies outside the picture."""
    for index, (x, y) in enumerate(marks):
        if x > picture.width:
            raise Refused(field, "This mark lies beyond the picture's right edge. Check it, and the "
                          "picture's width.", index, "x")
        if y > picture.height:
            raise Refused(field, "This mark lies below the picture's lower edge. Check it, and the picture's "
                          "height.", index, "y")


def known_on_sheets(
    picture: Picture, sheets: tuple[tuple[float, float], ...],
    dots: tuple[tuple[int, str, float, float, str], ...],
) -> list[Known]:
    """Return the dots marked as points known on the board.

    Raises:
        Refused: a dot's sheet has no place, or a dot is marked twice.
    """
    known = []
    seen: list[tuple[int, str]] = []
    for index, (sheet, dot, x, y, how) in enumerate(dots):
        if sheet > len(sheets):
            raise Refused("dots", "This dot is on sheet " + str(sheet) + ", and the places of "
                          + str(len(sheets)) + " sheets are given. Give its place, or mend the number.",
                          index, "sheet")
        if (sheet, dot) in seen:
            raise Refused("dots", "This dot is marked in an earlier row. Take one out, or mend its letter.",
                          index, "dot")
        seen.append((sheet, dot))
        middle, place = sheets[sheet - 1], dot_place(dot)
        known.append(Known((middle[0] + place[0], middle[1] + place[1]), picture.seen(x, y), sheet,
                           error_of(picture, how)))
    return known


def known_on_rules(
    picture: Picture, rule_marks: tuple[tuple[int, float, float, float, float], ...]
) -> list[Known]:
    """Return the places marked on rules as points known on the board.

    Raises:
        Refused: a place is marked twice.
    """
    known = []
    seen: list[tuple[float, float]] = []
    for index, (rule, along, up, x, y) in enumerate(rule_marks):
        if (along, up) in seen:
            raise Refused("rule_marks", "This place is marked in an earlier row. Take one out, or mend it.",
                          index, "along")
        seen.append((along, up))
        known.append(Known((along, up), picture.seen(x, y), rule, picture.error))
    return known


def straight_lines(
    picture: Picture, straight: tuple[tuple[int, float, float], ...]
) -> list[list[tuple[float, float]]]:
    """Return the points of each straight line.

    Raises:
        Refused: a line has fewer than three.
    """
    lines: list[list[tuple[float, float]]] = []
    for number in sorted({row[0] for row in straight}):
        line = [picture.seen(x, y) for other, x, y in straight if other == number]
        if len(line) < FEWEST_ON_A_LINE:
            raise Refused("straight", "Line " + str(number) + " has fewer than three points: two lie "
                          "straight whatever the lens does. Mark more of it, or take it out.")
        lines.append(line)
    return lines


def board_of(
    field: str, picture: Picture, known: list[Known], lines: list[list[tuple[float, float]]],
    board_error: float,
) -> Board:
    """Return the board that the known points show; field: that they came from.

    Raises:
        Refused: they lie on a line, are mirrored, exchanged, or do not lie in one plane.
    """
    for points in ([each.place for each in known], [each.seen for each in known]):
        if _narrowness(points) < NARROW:
            raise Refused(field, "These points lie on one line, or nearly so: they say nothing of how the "
                          "board stands across it. Mark points above the bow and below it.")
    right, wrong = _turns(known, picture.error)
    if sum(wrong) > sum(right):
        raise Refused(field, "The picture is mirrored, or up is down in it: going around these points the "
                      "one way on the board goes around them the other way in the picture. Take the picture "
                      "as the lens saw it, or mend letters and places.")
    if sum(wrong):
        raise Refused(field, "No lens shows these points so: two of them are exchanged, or one is marked "
                      "wrong, most likely this one. Check its mark, its letter or number, and its place.",
                      wrong.index(max(wrong)))
    try:
        board = fitted(known, lines, picture.error, board_error)
    except ValueError as error:
        raise Refused(field, "No board fits these points: " + str(error) + ". Check each mark, and its place "
                      "on the board.") from None
    if board.misfit is not None and board.misfit > WORST_MISFIT:
        worst = max(range(len(known)), key=lambda index: board.misses[index])
        raise Refused(field, "These points do not lie in one plane, or one is marked wrong: beside the "
                      "errors that you state they are out by " + show_number(board.misfit, 1) + " times as "
                      "much as they should be, most in this row. Check it, and whether all sheets "
                      "lie flat in one plane.",
                      worst)
    return board


def _narrowness(points: list[tuple[float, float]]) -> float:
    """Return how far points spread across their longest line, over how far along it."""
    _, xx, xy, yy = plane.moments_of(points)
    half, root = 0.5 * (xx + yy), math.sqrt(0.25 * (xx - yy) ** 2 + xy * xy)
    return math.sqrt(max(0.0, half - root) / (half + root)) if half + root > 0 else 0.0


def _turns(known: list[Known], error: float) -> tuple[list[int], list[int]]:
    """Return, for each point, in how many triples of points the picture turns as the board does, and in how
    many the other way; a triple that the errors of marks, sheets or lens may turn counts in neither.
    """
    right, wrong = [0] * len(known), [0] * len(known)
    for i in range(len(known)):
        for j in range(i + 1, min(i + 3, len(known))):
            for k in range(len(known)):
                if k in (i, j):
                    continue
                corners = known[i].place, known[j].place, known[k].place
                on_board = _area(corners[0], corners[1], corners[2])
                in_picture = _area(known[i].seen, known[j].seen, known[k].seen)
                if _height(on_board, corners) < SLIVER or abs(in_picture) < FLAT * error:
                    continue
                counted = wrong if (on_board > 0) == (in_picture > 0) else right
                for index in (i, j, k):
                    counted[index] += 1
    return right, wrong


def _area(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _height(
    area: float, corners: tuple[tuple[float, float], tuple[float, float], tuple[float, float]]
) -> float:
    """Return how high a triangle stands over its longest side, of that side; area: twice its own."""
    ways = [plane.less(one, other) for one, other in zip(corners, corners[1:] + corners[:1])]
    longest = max([plane.dot(way, way) for way in ways])
    return abs(area) / longest if longest > 0 else 0.0


def lens_before(board: Board, distance: float) -> Lens:
    """Return the lens that took the picture.

    Raises:
        Refused: none shows the board so from that distance.
    """
    try:
        return lens_of(board, distance)
    except ValueError:
        raise Refused("distance", "No lens shows the board as this picture does from that distance. Check "
                      "it, and that the picture was not cut down.") from None
