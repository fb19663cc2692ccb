"""What is found about a picture and the bow in it."""

from calc.outcome import OK, WATCH, Check, amount, check, link_with, sentence
from calc.pictures.board import Board
from calc.pictures.bow import LIMB_NAMES, RAISED_FROM, Photographed
from calc.pictures.course import MARKS_A_PIECE, MOST_PIECES
from calc.pictures.lens import Lens
from calc.pictures.picture import Reading
from calc.pictures.shape import Place, mean_error, most_apart
from calc.quantities import FOOT, INCH

MOST_TILT = 15.0
NEAREST = 10 * FOOT
WIDE_ENOUGH = 0.6
AS_BY_RULE = INCH / 16
"""Half of the 95 % range of an offset read with a rule from a straight edge (common practice)."""

FULL_COURSE = MARKS_A_PIECE * MOST_PIECES

OFF_COURSE = 4.0
"""Standard errors of a mark by which it may lie off a limb's course."""


def board_check(board: Board) -> Check:
    """Return what the known points say of the board and of the marks."""
    if board.misfit is None:
        return check("board", WATCH, "Four known points fit any board: none of them checks another. Mark "
                     "more, so that a wrong one shows.")
    if board.misfit > RAISED_FROM:
        return check("board", WATCH, sentence("The known points miss by {} of what the stated errors let "
                                              "them. All errors are raised by as much: mark them again, and "
                                              "measure the sheets' places again.",
                                              amount("ratio", board.misfit)))
    return check("board", OK, sentence("The known points fit a flat board, within {} of what the stated "
                                       "errors let them miss.", amount("ratio", board.misfit)))


def view_checks(lens: Lens, wide: float) -> tuple[Check, ...]:
    """Return what is to be mended about how the picture was taken; wide: share of its longer side [1]."""
    found = []
    if lens.tilt > MOST_TILT:
        found.append(check("tilt", WATCH, sentence(
            "The lens looked at the board {} off the square; the errors are proved to {}. Take it more "
            "squarely.",
            amount("angle", lens.tilt), amount("angle", MOST_TILT, 0))))
    if lens.distance < NEAREST * (1 - 1e-9):
        found.append(check("near", WATCH, sentence("From {} the edge in front of the board is shifted much: "
                                                   "take it from {} or farther, and zoom.",
                                                   amount("room_length", lens.distance),
                                                   amount("room_length", NEAREST))))
    if wide < WIDE_ENOUGH:
        found.append(check("small", WATCH, sentence("The bow takes up {} of the picture: fill it, with the "
                                                    "zoom of the lens, and a mark is worth more.",
                                                    amount("ratio", wide, 0))))
    return tuple(found)


def shape_checks(bow: Photographed, places: list[Place], tiller: Reading | None) -> tuple[Check, ...]:
    """Return how well the shape is known, whether the limbs are alike, and whether marks lie on a course.

    tiller: that the limbs' unlike shapes alone make; None where they are alike, or cannot be braced.
    """
    found = []
    error = mean_error(places)
    if error <= AS_BY_RULE:
        found.append(check("fine", OK, sentence(
            "The mean shape is known within {} square to the limb, at its worst place: as well as with a "
            "rule from a straight edge.", amount("thickness", error))))
    else:
        found.append(check("fine", WATCH, sentence(
            "The mean shape is known within {} square to the limb, at its worst place; a rule from a "
            "straight edge gives {}. Mark more points, nearer ones, at full zoom.",
            amount("thickness", error), amount("thickness", AS_BY_RULE))))
    place = most_apart(places)
    if place.is_apart:
        found.append(_unlike_check(place))
    else:
        found.append(check("alike", OK, "Both limbs have one shape as far as the errors tell."))
    if tiller is not None:
        found.append(_tiller_check(tiller))
    return tuple(found) + course_checks(bow)


def _unlike_check(place: Place) -> Check:
    """Return how far the limbs lie apart at a place."""
    side = "belly" if place.apart.value > 0 else "back"
    return check("alike", WATCH, sentence(
        "The limbs are unlike beyond the errors: {} from the fadeout the upper lies {} nearer to the " + side
        + " side than the lower, give or take {}. Look along both for a set or a twist.",
        amount("length", place.along), amount("length", abs(place.apart.value)),
        amount("length", place.apart.half_range)))


def _tiller_check(tiller: Reading) -> Check:
    """Return what tiller the limbs' unlike shapes make."""
    return check("tiller-by-shape", WATCH, sentence(
        "Equally stiff limbs of these two shapes brace with a tiller of {}, give or take {} by the marks and "
        "half of it by taper and brace height. Bow model and Weight reduction give both limbs the mean "
        "shape, and take that part of the tiller for stiffness.",
        amount("length", tiller.value), amount("length", tiller.half_range)))


def course_checks(bow: Photographed) -> tuple[Check, ...]:
    """Return what is to be mended about the marks along the limbs."""
    found = []
    for name, course in zip(LIMB_NAMES, bow.courses):
        if course is None:
            continue
        if len(course.points) < FULL_COURSE:
            found.append(check("few-" + name, WATCH, sentence(
                "The " + name + " limb has {} marks. A recurve's bend wants {}: with fewer the curve between "
                "them may be out by more than the errors say.", amount("count", len(course.points)),
                amount("count", FULL_COURSE))))
        misses = [abs(miss) for miss in course.misses()]
        worst = max(range(len(misses)), key=lambda index: misses[index])
        if misses[worst] > OFF_COURSE:
            found.append(check("off-" + name, WATCH, sentence(
                "Mark {} along the " + name + " limb lies off the curve through the others, by {} times its "
                "error. Look at it again: it may be on another edge.", amount("count", worst + 1),
                amount("number", misses[worst], 0))))
    return tuple(found)


def hand_over_check(figures: list[tuple[str, str]]) -> Check:
    """Return where the shape goes next; figures: each (input, text)."""
    return check("next", OK, sentence("These figures go on to {} or {}, as their unstrung shape.",
                                      link_with("Bow model", "bow-model", figures),
                                      link_with("Weight reduction", "weight-reduction", figures)))
