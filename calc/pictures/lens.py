"""Where the lens stood, from a board fitted to its picture and the distance to the board."""

import math

from calc.pictures.board import Board

DISTANCE_ERROR = 0.02
"""Standard error of the distance from lens to board, of itself: a tape held to the phone."""

LEAST_FOCUS, MOST_FOCUS = 0.2, 40.0
"""Of the half diagonal: a picture of 157 degrees from corner to corner, and one of 3."""

STRIDE = 1.1
"""Steps in which the first focal length that reaches the distance is sought: on a board that stands tilted a
longer one may fall short of it again."""


class Lens:
    """A lens before a board.

    foot [m]: the place on the board that it stands square before. distance [m]: from the board.
    distance_error [1]: standard error of that, of itself. focus [1]: its focal length, of the half diagonal.
    tilt [deg]: between its axis and the square to the board.
    """

    def __init__(self, foot: tuple[float, float], distance: float, focus: float, tilt: float) -> None:
        self.foot = foot
        self.distance = distance
        self.distance_error = DISTANCE_ERROR
        self.focus = focus
        self.tilt = tilt


def lens_of(board: Board, distance: float) -> Lens:
    """Return the lens that took the picture of a board from a distance [m] square to it.

    Pixels are square and the lens's axis meets the picture's middle. The focal length is then the one with
    which the projection puts the lens as far from the board as it was.

    Raises:
        ValueError: no focal length does.

    Source: hartley-zisserman, the camera of a plane's projection.
    """
    near = distance / board.spread
    low, high = LEAST_FOCUS, LEAST_FOCUS * STRIDE
    if _distance(board.unknowns, low) > near:
        raise ValueError("no lens shows the board so from that distance")
    while _distance(board.unknowns, high) < near:
        low, high = high, high * STRIDE
        if high > MOST_FOCUS:
            raise ValueError("no lens shows the board so from that distance")
    for _ in range(60):
        middle = math.sqrt(low * high)
        if _distance(board.unknowns, middle) < near:
            low = middle
        else:
            high = middle
    focus = math.sqrt(low * high)
    first, second, size = _turned(board.unknowns, focus)
    third = (first[1] * second[2] - first[2] * second[1], first[2] * second[0] - first[0] * second[2],
             first[0] * second[1] - first[1] * second[0])
    h = board.unknowns
    away = h[2] / focus / size, h[5] / focus / size, 1 / size
    foot = (-sum([a * b for a, b in zip(first, away)]), -sum([a * b for a, b in zip(second, away)]))
    length = math.sqrt(sum([each * each for each in third]))
    return Lens((board.middle[0] + board.spread * foot[0], board.middle[1] + board.spread * foot[1]),
                distance, focus, math.degrees(math.acos(min(1.0, abs(third[2]) / length))))


def _turned(
    h: list[float], focus: float
) -> tuple[tuple[float, float, float], tuple[float, float, float], float]:
    """Return the board's two directions as the lens sees them, and the size that both had."""
    first = h[0] / focus, h[3] / focus, h[6]
    second = h[1] / focus, h[4] / focus, h[7]
    size = math.sqrt(math.sqrt(sum([a * a for a in first]) * sum([a * a for a in second])))
    return ((first[0] / size, first[1] / size, first[2] / size),
            (second[0] / size, second[1] / size, second[2] / size), size)


def _distance(h: list[float], focus: float) -> float:
    """Return how far from the board a lens of a focal length stands, in the fit's own measure."""
    first, second, size = _turned(h, focus)
    away = h[2] / focus / size, h[5] / focus / size, 1 / size
    return abs(first[0] * (second[1] * away[2] - second[2] * away[1])
               - first[1] * (second[0] * away[2] - second[2] * away[0])
               + first[2] * (second[0] * away[1] - second[1] * away[0]))
