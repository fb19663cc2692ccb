"""What the marks mean, as lines to lay over their picture: in its pixels."""

from calc.numerics.plane_curve import curve_through
from calc.pictures.board import Board, Known
from calc.pictures.picture import Picture

STEPS = 12
"""Of a line across the board: what the lens bends shows."""

STEPS_OF_A_PIECE = 4
"""Between two marks of a limb."""


def board_lines(picture: Picture, board: Board, known: list[Known]) -> list[list[tuple[float, float]]]:
    """Return lines that lie on the board, if it is understood: around each sheet or along each rule through
    its own points, and across the board through their middles, level and upright.
    """
    lines = []
    middles = []
    for sheet in sorted({each.sheet for each in known}):
        places = [each.place for each in known if each.sheet == sheet]
        lines.append(_laid(picture, board, places + places[:1]))
        middles.append(_middle([min(each) for each in zip(*places)], [max(each) for each in zip(*places)]))
    low, high = ([side([each.place[which] for each in known]) for which in (0, 1)] for side in (min, max))
    for along in _apart([middle[0] for middle in middles], high[0] - low[0]):
        lines.append(_laid(picture, board, _between((along, low[1]), (along, high[1]))))
    for up in _apart([middle[1] for middle in middles], high[1] - low[1]):
        lines.append(_laid(picture, board, _between((low[0], up), (high[0], up))))
    return lines


def limb_line(
    picture: Picture, board: Board, marks: list[tuple[float, float]]
) -> list[tuple[float, float]]:
    """Return the curve that the marks of a limb are read as."""
    places = [board.place(picture.seen(x, y)) for x, y in marks]
    places = places[:1] + [places[i] for i in range(1, len(places)) if places[i] != places[i - 1]]
    if len(places) < 2:
        return []
    curve = curve_through(places)
    found = [curve.place(cell, step / STEPS_OF_A_PIECE)
             for cell in range(len(places) - 1) for step in range(STEPS_OF_A_PIECE)]
    return _laid(picture, board, found + places[-1:])


def string_line(
    picture: Picture, board: Board, marks: tuple[tuple[float, float], ...]
) -> list[tuple[float, float]]:
    """Return the straight line on the board from the first mark of the string to the last."""
    first, last = (board.place(picture.seen(*mark)) for mark in (marks[0], marks[-1]))
    return _laid(picture, board, _between(first, last))


def _laid(picture: Picture, board: Board, places: list[tuple[float, float]]) -> list[tuple[float, float]]:
    return [picture.mark(board.seen(each)) for each in places]


def _middle(low: list[float], high: list[float]) -> tuple[float, float]:
    return 0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1])


def _apart(values: list[float], width: float) -> list[float]:
    """Return those of some values that lie apart by a twentieth of a width or more."""
    found: list[float] = []
    for value in sorted(values):
        if not found or value - found[-1] > 0.05 * width:
            found.append(value)
    return found


def _between(start: tuple[float, float], end: tuple[float, float]) -> list[tuple[float, float]]:
    return [(start[0] + step / STEPS * (end[0] - start[0]), start[1] + step / STEPS * (end[1] - start[1]))
            for step in range(STEPS + 1)]
