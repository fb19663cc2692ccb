"""What is told of a picture: limbs drawn over it as they are understood."""

import math

import pytest

from calc.pictures.bow import photographed
from calc.pictures.lens import Lens
from calc.pictures.picture import Picture, Standing
from calc.pictures.reading import board_of, known_on_sheets
from calc.pictures.told import course_lines
from tests.pictures.camera import HEIGHT, INCH, WIDTH
from tests.pictures.photographs import SHEETS, photograph

STANDING = Standing(1.75 * INCH, 1.1875 * INCH, 0.001)


def drawn(fadeout_again):
    """Return the upper limb's line and marks; its fadeout is marked again so many pixels farther out."""
    shown = photograph(3, error=0.02, board_error=0.0, standoff_error=0.0)
    picture = Picture(WIDTH, HEIGHT, 1.0, 1.0)
    sheets = tuple((along * INCH, up * INCH) for along, up in SHEETS)
    board = board_of("dots", picture, known_on_sheets(
        picture, sheets, tuple((*dot, "hand") for dot in shown.dots)), [], 0.001)
    along, up, distance = shown.camera.place
    limbs = tuple([(*mark, "hand") for mark in limb] for limb in shown.limbs)
    start = shown.limbs[0][0]
    bow = photographed(picture, board, Lens((along, up), distance, 2.5, 0.0), STANDING, "down",
                       ("upper_limb", "lower_limb"), limbs, ([(start[0] + fadeout_again, start[1])], []),
                       (shown.throat,), (), 0.02)
    return course_lines(picture, bow, STANDING, limbs)[0], shown.limbs[0]


@pytest.mark.parametrize("fadeout_again", [0.0, 12.0])
def test_a_limb_is_drawn_from_the_middle_of_its_fadeouts_marks_to_its_nock(fadeout_again):
    line, marks = drawn(fadeout_again)
    assert line[0] == pytest.approx((marks[0][0] + fadeout_again / 2, marks[0][1]), abs=1.0)
    assert line[-1] == pytest.approx(marks[-1], abs=1.0)
    for mark in marks:  # of a picture 4000 pixels wide: nobody sees two
        assert min(_off(mark, first, second) for first, second in zip(line, line[1:], strict=False)) < 2.0


def _off(mark, first, second):
    """Return how far a mark is from a straight piece of the line; infinite off its ends by more than it."""
    run = second[0] - first[0], second[1] - first[1]
    way = mark[0] - first[0], mark[1] - first[1]
    part = (run[0] * way[0] + run[1] * way[1]) / (run[0] ** 2 + run[1] ** 2)
    if not -0.5 <= part <= 1.5:
        return math.inf
    return abs(run[0] * way[1] - run[1] * way[0]) / math.hypot(*run)
