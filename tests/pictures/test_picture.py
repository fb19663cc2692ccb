"""Where a mark lies on the bow, and what moves it."""

from types import SimpleNamespace

import pytest

from calc.pictures.picture import point_of

SEEN = SimpleNamespace(seen=lambda x, y: (x, y))
BOARD = SimpleNamespace(place=lambda _seen: (0.30, 0.10), moves=lambda _seen: ([0.0, 0.0], [0.0, 0.0]))
STILL = ((0.0, 0.0), (0.0, 0.0))
SMALL = 1e-6


def at(distance, out):
    """Return a point between the board and a lens that stands off it, before a place of its own."""
    lens = SimpleNamespace(distance=distance, foot=(0.70, 0.45), distance_error=0.02)
    return point_of(SEEN, BOARD, lens, (0.0, 0.0), STILL, out, 0.001)


def test_a_point_before_the_board_lies_on_the_line_to_the_lens():
    point = at(4.0, 0.2)  # by similar triangles a twentieth of the way to the lens's foot
    assert (point.along, point.up) == pytest.approx((0.30 + 0.40 / 20, 0.10 + 0.35 / 20))


def test_it_moves_with_what_it_stands_off_and_with_the_lens_as_differences_say():
    here = at(4.0, 0.2)
    for moved, step in ((at(4.0, 0.2 + 0.001 * SMALL), here.common[-2]),
                        (at(4.0 * (1 + 0.02 * SMALL), 0.2), here.common[-1])):
        assert ((moved.along - here.along) / SMALL, (moved.up - here.up) / SMALL) == pytest.approx(
            step, rel=1e-3)
