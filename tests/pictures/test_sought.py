"""Edges, corners and dots are found where a rendered picture has them, and nothing where it has none."""

import math
from random import Random

import numpy as np
import pytest
from scipy.ndimage import map_coordinates

from calc.pictures.sought import CORNER, EDGE, MIDDLE, REACH, Patch, corner_near, edge_near, middle_near
from tests.pictures.photographs import photograph
from tests.pictures.rendered import Rendered

HAND = 3.0
"""Pixels, one standard error: how far off marks are set."""


@pytest.fixture(scope="module")
def pictures():
    return [(photograph(seed, error=0.0), Rendered(photograph(seed, error=0.0), Random(seed)))
            for seed in range(4)]


def by_hand(dice, place):
    return place[0] + dice.gauss(0.0, HAND), place[1] + dice.gauss(0.0, HAND)


def ways(limb):
    """Return each mark of a limb with the direction from the one before it to the one behind it."""
    for index, place in enumerate(limb):
        before, after = limb[max(index - 1, 0)], limb[min(index + 1, len(limb) - 1)]
        size = math.dist(before, after)
        yield place, ((after[0] - before[0]) / size, (after[1] - before[1]) / size)


def across(found, place, way):
    """Return how far a mark lies off a place, square to a way."""
    return (found.place[1] - place[1]) * way[0] - (found.place[0] - place[0]) * way[1]


def test_the_middles_of_dots_are_found_to_a_twentieth_of_a_pixel(pictures):
    dice, off = Random(1), []
    for picture, rendered in pictures:
        for _, _, x, y in picture.dots:
            mark = by_hand(dice, (x, y))
            found = middle_near(rendered.patch(*mark, 40), mark)
            assert found.how == MIDDLE
            off += [found.place[0] - x, found.place[1] - y]
    assert len(off) == 128
    assert max(map(abs, off)) < 0.05


def test_the_edge_of_the_belly_is_found_to_a_fifth_of_a_pixel(pictures):
    """Straight pieces near the fadeout: what the limb bends between mark and foot is not counted there."""
    dice, off = Random(2), []
    for picture, rendered in pictures:
        for limb in picture.limbs:
            rises = 0.0
            for place, way in list(ways(limb))[1:15]:
                mark = by_hand(dice, place)
                found = edge_near(rendered.patch(*mark, 20), mark, way, rises)
                if found is None:
                    assert math.dist(mark, place) > REACH
                    continue
                assert found.how == EDGE
                rises = found.rises
                off.append(across(found, place, way))
    assert len(off) >= 110
    assert np.sqrt(np.mean(np.square(off))) < 0.2


@pytest.mark.parametrize("turned", [-20.0, 0.0, 20.0])
def test_a_mark_s_foot_is_square_to_the_edge_however_its_way_was_guessed(turned):
    """A straight edge that leans by 30 degrees, drawn here: three samples from the mark."""
    way = math.cos(math.radians(30)), math.sin(math.radians(30))
    foot, mark = (30.0, 30.0), (30.0 - 3 * way[1], 30.0 + 3 * way[0])
    gray = [round(128 + 100 * math.tanh(((y + 0.5 - foot[1]) * way[0] - (x + 0.5 - foot[0]) * way[1]) / 1.2))
            for y in range(60) for x in range(60)]
    guess = math.radians(30 + turned)
    found = edge_near(Patch(0.0, 0.0, 1.0, 60, gray), mark, (math.cos(guess), math.sin(guess)))
    assert (found.how, found.rises) == (EDGE, 1.0)
    assert found.place == pytest.approx(foot, abs=0.05)


def test_a_corner_is_found_where_tape_ends_at_the_fadeout(pictures):
    dice, off = Random(3), []
    for picture, rendered in pictures:
        for limb in picture.limbs:
            place, way = next(ways(limb))
            mark = by_hand(dice, place)
            found = corner_near(rendered.patch(*mark, 20), mark, way)
            assert found.how == CORNER
            off += [found.place[0] - place[0], found.place[1] - place[1]]
    assert max(map(abs, off)) < 0.5


def test_without_tape_the_fadeout_is_drawn_to_the_edge_alone():
    picture = photograph(9, error=0.0)
    rendered = Rendered(picture, Random(9), tape=False)
    place, way = next(ways(picture.limbs[0]))
    found = corner_near(rendered.patch(*place, 20), place, way)
    assert found.how == EDGE
    assert abs(across(found, place, way)) < 0.3


def test_an_edge_that_rises_the_other_way_is_left_alone():
    """Between two edges of a thin limb the nearer is not the one that the marks before it lie on."""
    step = [60 if 20 <= column < 27 else 200 for column in range(41)]
    patch = Patch(0.0, 0.0, 1.0, 41, step * 41)
    nearer = edge_near(patch, (25.0, 20.0), (0.0, 1.0))
    assert nearer.place == pytest.approx((27.0, 20.0), abs=0.01)
    other = edge_near(patch, (25.0, 20.0), (0.0, 1.0), -nearer.rises)
    assert other.place == pytest.approx((20.0, 20.0), abs=0.01)


def test_a_sharp_step_is_found_where_it_is_whatever_its_direction():
    """A half-plane, each sample its share of it (the closed form of a straight edge)."""
    for degrees in range(0, 180, 15):
        angle = math.radians(degrees)
        square = math.sin(angle), -math.cos(angle)
        gray = []
        for j in range(41):
            for i in range(41):
                reach = (i + 0.5 - 20.3) * square[0] + (j + 0.5 - 20.6) * square[1]
                gray.append(round(60 + 140 * min(1.0, max(0.0, reach + 0.5))))
        patch = Patch(100.0, 200.0, 1.0, 41, gray)
        for way in ((math.cos(angle), math.sin(angle)), None):
            found = edge_near(patch, (122.0, 219.0), way)
            off = (found.place[0] - 120.3) * square[0] + (found.place[1] - 220.6) * square[1]
            assert abs(off) < 0.1, degrees


@pytest.mark.parametrize("gray", ["plain", "grain", "faint"])
def test_where_the_picture_shows_nothing_nothing_is_found(gray):
    dice = np.random.default_rng(4)
    levels = {"plain": np.full((41, 41), 120), "grain": 120 + dice.normal(0, 3, (41, 41)),
              "faint": 120 + 10 * (np.arange(41)[None, :] > 20) + np.zeros((41, 41))}[gray]
    patch = Patch(0.0, 0.0, 1.0, 41, [round(float(each)) for each in levels.ravel()])
    for way in ((0.0, 1.0), None):
        assert edge_near(patch, (20.0, 20.0), way) is None
        assert corner_near(patch, (20.0, 20.0), way) is None
    assert middle_near(patch, (20.0, 20.0)) is None


@pytest.mark.parametrize(("nearer", "found"), [(52, 27.0), (48, 20.0)])
def test_a_nearer_edge_is_the_one_if_it_is_half_as_high_as_the_highest(nearer, found):
    steps = [200 if column < 20 else 100 if column < 27 else 100 + nearer for column in range(41)]
    edge = edge_near(Patch(0.0, 0.0, 1.0, 41, steps * 41), (24.5, 20.0), (0.0, 1.0))
    assert edge.place == pytest.approx((found, 20.0), abs=0.05)


def disc(u, v, wide=81, long=1.0):
    return [30 if ((i + 0.5 - u) / long) ** 2 + (j + 0.5 - v) ** 2 < 15**2 else 230
            for j in range(wide) for i in range(wide)]


@pytest.mark.parametrize(("u", "v", "long", "is_found"), [
    (44.0, 38.0, 1.0, True), (44.0, 38.0, 1.5, True), (44.0, 38.0, 2.0, False), (70.0, 38.0, 1.0, False)])
def test_a_dot_is_round_and_lies_whole_in_the_patch(u, v, long, is_found):
    found = middle_near(Patch(1000.0, 500.0, 1.0, 81, disc(u, v, long=long)), (1000.0 + u - 3, 500.0 + v + 2))
    assert (found is not None) is is_found
    if found is not None:
        assert found.place == pytest.approx((1000.0 + u, 500.0 + v), abs=0.05)


@pytest.mark.parametrize(("darker", "is_found"), [(36, True), (35, False)])
def test_a_dot_is_three_times_as_dark_as_the_faintest_edge(darker, is_found):
    gray = [200 if each == 230 else 200 - darker for each in disc(44.0, 38.0)]
    assert (middle_near(Patch(0.0, 0.0, 1.0, 81, gray), (44.0, 38.0)) is not None) is is_found


def test_samples_of_two_pixels_are_read_in_the_pictures_pixels():
    found = middle_near(Patch(1000.0, 500.0, 2.0, 81, disc(44.0, 38.0)), (1088.0, 576.0))
    assert found.place == pytest.approx((1088.0, 576.0), abs=0.1)


def test_between_samples_the_brightness_is_that_of_straight_lines_both_ways():
    """SciPy's interpolation of first order; samples stand in the middle of pixels."""
    wide, high, dice = 7, 5, Random(1)
    gray = [dice.randrange(256) for _ in range(wide * high)]
    patch = Patch(0.0, 0.0, 1.0, wide, gray)
    places = [(dice.uniform(0, wide), dice.uniform(0, high)) for _ in range(300)]
    told = map_coordinates(np.array(gray, dtype=float).reshape(high, wide),
                           [[v - 0.5 for _, v in places], [u - 0.5 for u, _ in places]],
                           order=1, mode="nearest")
    assert [patch.at(u, v) for u, v in places] == pytest.approx(list(told), abs=0.6)  # 0.1 % of a step
