"""Pictures that cannot be read, refused in words at the field to mend."""

import pytest

from calc import catalog
from calc.answer import work_out
from tests.pictures.camera import Camera
from tests.pictures.photographs import photograph
from tests.pictures.unreadable import CASES, OUT_OF_PLANE, rows, text


def refusal(**typed):
    (problem,) = work_out(catalog.find("photograph"), list(typed.items())).problems
    return problem


@pytest.mark.parametrize(("typed", "field", "row", "message"), CASES, ids=[case[3][:40] for case in CASES])
def test_what_cannot_be_read_is_refused_at_its_field(typed, field, row, message):
    problem = refusal(**typed)
    assert (problem.field, problem.row) == (field, row)
    assert problem.message == message


def test_sheets_that_stand_off_the_plane_are_refused():
    problem = refusal(**OUT_OF_PLANE)
    assert problem.field == "dots"
    assert problem.message.startswith("These points do not lie in one plane, or one is marked wrong: beside "
                                      "the errors that you state they are out by ")


def test_a_distance_from_which_no_lens_shows_the_board_so_is_refused():
    tilted = photograph(1, camera=Camera(tilts=(12.0, 9.0, 0.0)))
    problem = refusal(**{**dict(tilted.typed()), "distance": "60 ft"})
    assert (problem.field, problem.message) == (
        "distance", "No lens shows the board as this picture does from that distance. Check it, and that the "
        "picture was not cut down.")


def test_fewer_than_four_points_are_refused():
    problem = refusal(dots=text(rows("dots")[:3]))
    assert problem.field == "dots"
    assert problem.message == "Dots marked needs from 4 to 40 rows; you gave 3. Add or remove rows."


@pytest.mark.parametrize("seed", range(6))
def test_a_picture_of_four_points_is_read_and_says_that_none_checks_another(seed):
    shown = photograph(seed)
    shown.dots = [dot for dot in shown.dots if (dot[0], dot[1]) in ((1, "a"), (2, "b"), (3, "a"), (4, "b"))]
    job = work_out(catalog.find("photograph"), shown.typed())
    assert not job.problems
    assert [each.level for each in job.outcome.checks if each.id == "board"] == ["watch"]


@pytest.mark.parametrize("seed", range(12))
def test_marks_that_are_good_to_a_tenth_of_a_pixel_are_not_taken_for_exchanged(seed):
    """Along a level row of sheets the lens's bend, and a sheet out of place, turn what lies on a line."""
    shown = photograph(seed, error=0.1)
    assert not work_out(catalog.find("photograph"), shown.typed()).problems
