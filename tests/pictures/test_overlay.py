"""Lines to lay over a picture, against the pixels of a camera that knows nothing of `calc`."""

import math

import pytest

from calc.pictures.board import Known, fitted
from calc.pictures.overlay import board_lines, limb_line, string_line
from calc.pictures.picture import Picture
from calc.pictures.target import DOTS
from tests.pictures.camera import HEIGHT, INCH, WIDTH, Camera

CAMERA = Camera()
PICTURE = Picture(WIDTH, HEIGHT, 1.0, 1.0)
MIDDLES = [(0.0, 0.0), (60 * INCH, 0.0), (0.0, 30 * INCH), (60 * INCH, 30 * INCH)]
CORNERS = [place for id, _, place in DOTS if id != "m"]
SOON = 0.02
"""Pixels: the fit holds the lens's bend a little toward none."""


def known():
    places = [(sheet, (middle[0] + x, middle[1] + y))
              for sheet, middle in enumerate(MIDDLES) for x, y in CORNERS]
    return [Known(place, PICTURE.seen(*CAMERA.sees(*place)), sheet, PICTURE.error / 1000)
            for sheet, place in places]


@pytest.fixture(scope="module")
def board():
    return fitted(known(), [], PICTURE.error / 1000, 0.0)


def test_a_sheets_line_goes_around_it_through_its_dots(board):
    around = board_lines(PICTURE, board, known())[:4]
    for line, middle in zip(around, MIDDLES):
        dots = [CAMERA.sees(middle[0] + x, middle[1] + y) for x, y in CORNERS]
        for point, dot in zip(line, dots + dots[:1]):
            assert point == pytest.approx(tuple(dot), abs=SOON)


def test_lines_across_the_board_go_through_the_middles_of_the_sheets(board):
    across = board_lines(PICTURE, board, known())[4:]
    assert len(across) == 4  # two sheets stand over two, so two upright lines and two level ones
    ends = [((along, -3 * INCH), (along, 33 * INCH)) for along in (0.0, 60 * INCH)]
    ends += [((-4.5 * INCH, up), (64.5 * INCH, up)) for up in (0.0, 30 * INCH)]
    for line, (first, last) in zip(across, ends):
        assert line[0] == pytest.approx(tuple(CAMERA.sees(*first)), abs=SOON)
        assert line[-1] == pytest.approx(tuple(CAMERA.sees(*last)), abs=SOON)
        halfway = 0.5 * (first[0] + last[0]), 0.5 * (first[1] + last[1])
        assert line[6] == pytest.approx(tuple(CAMERA.sees(*halfway)), abs=SOON)


def test_two_sheets_nearly_over_each_other_have_one_line(board):
    moved = [Known((each.place[0] + (INCH if each.sheet == 2 else 0.0), each.place[1]), each.seen, each.sheet,
                   each.error) for each in known()]
    assert len(board_lines(PICTURE, board, moved)) == 8


def test_a_limbs_curve_runs_through_its_marks_and_along_an_arc_between_them(board):
    turn, radius = [0.2 + 0.1 * i for i in range(9)], 20 * INCH
    arc = [(30 * INCH + radius * math.cos(each), 5 * INCH + radius * math.sin(each)) for each in turn]
    line = limb_line(PICTURE, board, tuple(tuple(CAMERA.sees(*place)) for place in arc))
    assert line[::4] == [pytest.approx(tuple(CAMERA.sees(*place)), abs=SOON) for place in arc]
    half = [(30 * INCH + radius * math.cos(each + 0.05), 5 * INCH + radius * math.sin(each + 0.05))
            for each in turn[2:6]]
    assert line[10:26:4] == [pytest.approx(tuple(CAMERA.sees(*place)), abs=0.1) for place in half]


def test_a_mark_set_twice_bends_no_curve(board):
    arc = [(30 * INCH + 20 * INCH * math.cos(turn), 5 * INCH + 20 * INCH * math.sin(turn))
           for turn in (0.2, 0.4, 0.7, 0.9)]
    marks = [tuple(CAMERA.sees(*place)) for place in arc]
    once = limb_line(PICTURE, board, marks)
    assert limb_line(PICTURE, board, marks[:2] + marks[1:2] + marks[2:] + marks[-1:]) == once


def test_a_limb_of_one_mark_has_no_curve(board):
    assert limb_line(PICTURE, board, ((2000.0, 1500.0), (2000.0, 1500.0))) == []


def test_the_strings_line_is_straight_on_the_board(board):
    ends = (5 * INCH, 4 * INCH), (55 * INCH, 6 * INCH)
    line = string_line(PICTURE, board, tuple(tuple(CAMERA.sees(*place)) for place in ends))
    assert line[3] == pytest.approx(tuple(CAMERA.sees(17.5 * INCH, 4.5 * INCH)), abs=SOON)
    assert line[-1] == pytest.approx(tuple(CAMERA.sees(*ends[1])), abs=SOON)
