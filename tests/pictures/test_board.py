"""The fit of a board, beside a reference library's least squares."""

import numpy as np
import pytest
from scipy.optimize import brentq, least_squares

from calc.pictures.board import BEND_ERROR, Board, Known, fitted, straightened
from tests.sentences import whole

ERROR = 0.0004
"""Of a mark, of the picture's half diagonal: about a pixel of 12 megapixels."""

PLACES = np.array([(0.1, 0.1), (1.7, 0.1), (0.1, 0.9), (1.7, 0.9), (0.9, 0.2), (1.2, 0.7)])
AIMED = np.array([0.9, 0.04, -0.85, -0.03, -0.95, 0.45, 0.05, 0.08])
BEND = -0.04


def seen(unknowns, places):
    """Return what a lens with a bend sees, written from the formulas that the module names."""
    h, k = np.append(unknowns[:8], 1.0).reshape(3, 3), unknowns[8]
    there = np.column_stack([places, np.ones(len(places))]) @ h.T
    flat = there[:, :2] / there[:, 2:]
    return flat * (1 + k * (flat**2).sum(axis=1, keepdims=True))


def unbent(points, k):
    """Return points without a lens's bend, by going back and forth until it settles."""
    flat = points
    for _ in range(60):
        flat = points / (1 + k * (flat**2).sum(axis=1, keepdims=True))
    return flat


def off_line(points):
    """Return how far points lie off their nearest line: along the direction in which they spread least."""
    ways = points - points.mean(axis=0)
    return ways @ np.linalg.svd(ways)[2][1]


def known_at(points):
    return [Known(tuple(place), tuple(point), 0, ERROR) for place, point in zip(PLACES, points, strict=True)]


@pytest.fixture(scope="module")
def marks():
    dice = np.random.default_rng(5)
    true = np.append(AIMED, BEND)
    lines = [seen(true, np.column_stack([np.linspace(*along, 7), np.linspace(*up, 7)]))
             for along, up in (((0.15, 1.75), (0.85, 0.95)), ((1.3, 1.6), (0.1, 0.2)))]
    return [each + dice.normal(0, ERROR, each.shape) for each in (seen(true, PLACES), *lines)]


@pytest.mark.parametrize("count", [0, 1, 2])
def test_the_fit_and_its_errors_are_those_of_the_library(marks, count):
    points, lines = marks[0], marks[1:1 + count]

    def misses(unknowns):
        off = [off_line(unbent(line, unknowns[8])) / ERROR for line in lines]
        return np.concatenate([((seen(unknowns, PLACES) - points) / ERROR).ravel(),
                               [unknowns[8] / BEND_ERROR], *off])

    def found_at(unknowns, at):
        """Return the place that shows at a point of the picture."""
        return least_squares(lambda place: (seen(unknowns, place[None]) - at)[0], [0.9, 0.5],
                             xtol=1e-15, ftol=1e-15, gtol=1e-15).x

    best = least_squares(misses, np.append(AIMED, 0.0), x_scale="jac", jac="3-point",
                         xtol=1e-15, ftol=1e-15, gtol=1e-15)
    board = fitted(known_at(points), [[tuple(each) for each in line] for line in lines], ERROR, 0.0)
    assert board.unknowns[8] == pytest.approx(best.x[8], rel=1e-6)
    covariance = np.linalg.inv(best.jac.T @ best.jac)
    assert sum(cause[8] ** 2 for cause in board.causes) == pytest.approx(covariance[8, 8], rel=1e-4)
    for at in ((0.5, -0.2), (-0.7, 0.4), (0.05, 0.02)):
        assert board.place(at) == pytest.approx(found_at(best.x, at), abs=1e-8)
        moves = np.array([(found_at(best.x + step, at) - found_at(best.x - step, at)) / 2e-6
                          for step in 1e-6 * np.eye(9)]).T
        expected = moves @ covariance @ moves.T
        caused = np.array(board.moves(at))[:, 2:]
        assert caused @ caused.T == pytest.approx(expected, rel=1e-3)
    assert board.misfit == pytest.approx(
        np.sqrt(2 * best.cost / (2 * len(PLACES) - 8 + sum(len(line) - 2 for line in lines))), rel=1e-6)


def test_a_line_whose_marks_lie_in_one_place_says_nothing(marks):
    alone, beside = (fitted(known_at(marks[0]), lines, ERROR, 0.0) for lines in ([], [[(0.3, 0.2)] * 3]))
    assert beside.unknowns == pytest.approx(alone.unknowns)


@pytest.mark.parametrize("bend", [-0.05, 0.0, 0.2, 1.0])
@pytest.mark.parametrize("size", [0.0, 0.4, 1.0])
def test_a_point_without_the_lens_s_bend_is_what_bends_to_it(size, bend):
    """Three to four, the distance from the middle is that of the root of r + bend r^3."""
    root = brentq(lambda r: r + bend * r**3 - size, 0.0, 2.0)
    assert straightened((0.6 * size, -0.8 * size), bend) == pytest.approx((0.6 * root, -0.8 * root))


def test_a_point_on_the_horizon_shows_no_place():
    """The board's far end, where x is infinite, is seen at u = 1."""
    board = Board((0.0, 0.0), 1.0, [1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 1.0, 0.0, 0.0], [], [], None)
    with pytest.raises(ValueError, match=whole("a mark lies on the board's horizon")):
        board.place((1.0, 0.0))
    assert board.place((0.5, 0.0)) == (1.0, 0.0)


def test_a_board_seen_square_on_shows_each_place_where_it_is():
    board = Board((0.0, 0.0), 1.0, [1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0], [], [], None)
    assert board.place((0.3, -0.2)) == (0.3, -0.2)
