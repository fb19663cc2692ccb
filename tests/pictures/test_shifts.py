"""What each mark does to each reading, and what errors come to: against small steps and plain sampling."""

import math

import numpy as np
import pytest

from calc.pictures.board import Known, fitted
from calc.pictures.bow import photographed
from calc.pictures.course import Course
from calc.pictures.frame import End, Frame
from calc.pictures.lens import Lens
from calc.pictures.picture import Picture, Standing, evenly, point_of, wobbles_along
from calc.pictures.told import tiller_of
from tests.pictures.camera import HALF_DIAGONAL, HEIGHT, INCH, WIDTH, Camera
from tests.pictures.photographs import DOTS, SHEETS, photograph

STEP = 1e-6
PLACES = (0.1, 0.5, 1.0)


def board_seen(camera, error=1.0, places=SHEETS, dots=DOTS, board_error=1 / 32):
    picture = Picture(WIDTH, HEIGHT, error, error)
    known = []
    for number, (x, y) in enumerate(places):
        for place in [((x + a) * INCH, (y + b) * INCH) for _, a, b in dots]:
            known.append(Known(place, picture.seen(*camera.sees(*place)), number, picture.error))
    return picture, fitted(known, [], picture.error, board_error * INCH)


@pytest.fixture(scope="module")
def bow():
    shown = photograph(3, error=0.002)
    shown.brace(7.7, 7.4)
    picture, board = board_seen(shown.camera)
    lens = Lens((26 * INCH, 14 * INCH), 125 * INCH, 2.5, 0.0)
    return photographed(picture, board, lens, Standing(0.04, 0.03, 0.001), "down",
                        ("upper_limb", "lower_limb"),
                        tuple([[(*mark, "hand") for mark in limb] for limb in shown.limbs]),
                        ([shown.fadeout_again(0)], []),
                        (shown.throat,), tuple(shown.string), 0.02)


def readings_of(bow):
    frame, tiller = bow.frame, tiller_of(bow)
    found = [frame.riser, frame.behind(*bow.throat), tiller.upper, tiller.lower, tiller.difference,
             tiller.brace_height]
    for limb in (0, 1):
        found.append(frame.length(limb))
        found += [frame.offset(limb, place * 0.54) for place in PLACES]
        found += [frame.angle(limb, place) for place in PLACES]
    return found


def moved(bow, index, right, up):
    """Return the same bow with one point moved, made from its points again."""
    points = list(bow.marks.points)
    old = points[index]
    points[index] = type(old)(old.along + right, old.up + up, old.own, old.common)
    marks = type(bow.marks)(points, bow.marks.scale)
    counts = [len(course.points) for course in bow.courses]
    firsts = [0, counts[0]]
    agains = [sum(counts), sum(counts) + 1]
    courses = [Course(points[first:first + count], first, len(points), points[again:sum(counts) + 1], again)
               for first, count, again in zip(firsts, counts, agains, strict=True)]
    ends = [End(marks, first, course) for first, course in zip(firsts, courses, strict=True)]
    frame = Frame(marks, *ends, bow.frame.belly)
    return type(bow)(bow.board, bow.lens, marks, frame, tuple(courses), bow.throat, bow.string,
                     bow.pixels)


def test_a_shift_is_how_far_a_reading_goes_when_a_mark_is_moved(bow):
    before = readings_of(bow)
    for index in (1, 6, 12, 22, 25, 31, 40, 47, 48, 49, 51, 54, 61, 62, 65, 67):
        for way, (right, up) in enumerate(((STEP, 0.0), (0.0, STEP))):
            after = readings_of(moved(bow, index, right, up))
            for old, new in zip(before, after, strict=True):
                gone = (new.value - old.value) / STEP
                assert gone == pytest.approx(old.shift[2 * index + way], rel=0.03, abs=0.02)


def test_the_start_of_a_limb_is_the_middle_of_all_marks_of_its_fadeout(bow):
    """The upper fadeout is marked twice: each mark moves the riser's length half as far."""
    riser = bow.frame.riser
    for index in (0, 60):
        after = readings_of(moved(bow, index, STEP, 0.0))[0]
        assert (after.value - riser.value) / STEP == pytest.approx(0.5, abs=0.02)
        assert riser.shift[2 * index] == pytest.approx(0.5, abs=0.02)


def test_the_ends_of_a_limb_move_what_is_read_from_them(bow):
    """Angles stand at a part of the chord, which its ends move: they are left out."""
    for index, reading in ((0, 0), (30, 0), (29, 6), (59, 13)):
        before, after = readings_of(bow)[reading], readings_of(moved(bow, index, STEP, 0.0))[reading]
        assert (after.value - before.value) / STEP == pytest.approx(before.shift[2 * index], rel=0.01)


def test_a_reading_scatters_as_its_error_says():
    """A place seen by a camera, dots and mark scattered 150 times."""
    camera, dice = Camera(), np.random.default_rng(1)
    picture = Picture(WIDTH, HEIGHT, 1.0, 1.0)
    lens = Lens((20 * INCH, 10 * INCH), 118 * INCH, 2.5, 3.0)
    aim = (58 * INCH, 9 * INCH)
    found, stated = [], None
    for _ in range(150):
        known = []
        for number, (x, y) in enumerate(SHEETS):
            off = dice.normal(0, 1 / 32, 2)
            turn = dice.normal(0, 1 / 32 / math.hypot(4.5, 3))
            for _, a, b in DOTS:
                seen = camera.sees((x + a + off[0] - turn * b) * INCH, (y + b + off[1] + turn * a) * INCH)
                known.append(Known(((x + a) * INCH, (y + b) * INCH),
                                   picture.seen(*(np.array(seen) + dice.normal(0, 1, 2))), number,
                                   picture.error))
        board = fitted(known, [], picture.error, INCH / 32)
        mark = np.array(camera.sees(*aim)) + dice.normal(0, 1, 2)
        point = point_of(picture, board, lens, tuple(mark), evenly(picture.error), 0.0, 0.0)
        found.append((point.along, point.up))
        if stated is None:
            stated = [math.sqrt(sum(each[way] ** 2 for each in (*point.own, *point.common)))
                      for way in (0, 1)]
    assert np.std(found, axis=0) == pytest.approx(stated, rel=0.1)


def test_a_mark_on_an_edge_is_out_along_it_by_the_hand_and_across_it_by_the_picture():
    picture = Picture(WIDTH, HEIGHT, 3.0, 0.2)
    limb = [(100.0, 100.0, "corner"), (130.0, 140.0, "edge"), (160.0, 180.0, "hand")]
    corner, edge, hand = wobbles_along(picture, limb)
    assert [math.hypot(*each) * picture.half for each in (*corner, *edge, *hand)] == pytest.approx(
        [0.2, 0.2, 3.0, 0.2, 3.0, 3.0])
    assert np.array(edge[0]) * picture.half == pytest.approx([3.0 * 0.6, 3.0 * 0.8])  # along 3 : 4
    assert np.dot(*edge) == pytest.approx(0.0)


def test_exact_marks_give_the_place_the_lens_and_its_bend():
    camera = Camera(tilts=(9.0, -6.0, 2.0), bend=-0.02)
    picture, board = board_seen(camera, error=0.001)
    for along, up in ((0, 14), (26, 10), (60, 22)):
        place = board.place(picture.seen(*camera.sees(along * INCH, up * INCH)))
        assert place == pytest.approx((along * INCH, up * INCH), abs=1e-7)
    assert board.unknowns[8] == pytest.approx(-0.02, abs=1e-6)
    x, y = camera.sees(0.3, 0.2)
    assert board.seen((0.3, 0.2)) == pytest.approx(
        ((x - WIDTH / 2) / HALF_DIAGONAL, (y - HEIGHT / 2) / HALF_DIAGONAL), abs=1e-7)
