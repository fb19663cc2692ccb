"""Both sides of every limit at which a picture's checks change their level."""

import math
from types import SimpleNamespace

import pytest
from scipy.stats import norm

from calc.numerics.normal import NORMAL_95
from calc.outcome import OK, WATCH
from calc.pictures import bends, checks, shape
from calc.pictures.picture import Reading
from calc.quantities import FOOT, INCH


def levels(found):
    return [(each.id, each.level) for each in found]


@pytest.mark.parametrize(("misfit", "level"), [
    (None, WATCH), (0.2, OK), (1.5, OK), (1.501, WATCH), (2.9, WATCH)])
def test_known_points_that_miss_by_half_as_much_again_are_warned_of(misfit, level):
    assert checks.board_check(SimpleNamespace(misfit=misfit)).level == level


@pytest.mark.parametrize(("tilt", "distance", "wide", "found"), [
    (15.0, 10 * FOOT, 0.6, []),
    (15.01, 10 * FOOT, 0.6, ["tilt"]),
    (15.0, 9.99 * FOOT, 0.6, ["near"]),
    (15.0, 10 * FOOT, 0.599, ["small"]),
    (20.0, 5 * FOOT, 0.2, ["tilt", "near", "small"]),
])
def test_how_it_was_taken_is_warned_of_beyond_what_was_proved(tilt, distance, wide, found):
    told = checks.view_checks(SimpleNamespace(tilt=tilt, distance=distance), wide)
    assert levels(told) == [(each, WATCH) for each in found]


def reading(value, error):
    return Reading(SimpleNamespace(error=lambda _shift: error), value, [])


class Apart(shape.Place):
    def __init__(self, apart, apart_error, mean_error):
        self.along, self.steepness = 0.3, 1.0
        self.apart, self.mean = reading(apart, apart_error), reading(0.0, mean_error)


@pytest.mark.parametrize(("within", "level"), [(INCH / 16 - 1e-7, OK), (INCH / 16 + 1e-7, WATCH)])
def test_a_shape_known_less_well_than_by_rule_is_warned_of(within, level):
    bow = SimpleNamespace(courses=(None, None))
    places = [Apart(0.0, 1.0, 1e-4), Apart(0.0, 1.0, within / NORMAL_95)]
    assert ("fine", level) in levels(checks.shape_checks(bow, places, None))


@pytest.mark.parametrize(("apart", "level"), [(2.68e-3, OK), (2.69e-3, WATCH), (-2.69e-3, WATCH)])
def test_limbs_unlike_beyond_what_chance_gives_one_of_seven_places_are_warned_of(apart, level):
    """1 - (1 - 0.05)^(1/7) lies beyond 2.68 standard errors (SciPy's normal distribution)."""
    assert norm.isf((1 - 0.95 ** (1 / 7)) / 2) == pytest.approx(shape.SEVEN_AT_ONCE, abs=0.006)
    bow = SimpleNamespace(courses=(None, None))
    told = checks.shape_checks(bow, [Apart(apart, 1e-3, 1e-4)], None)
    assert ("alike", level) in levels(told)
    if level == WATCH:
        assert ("nearer to the belly" if apart > 0 else "nearer to the back") in told[1].text.template


def test_the_tiller_that_unlike_shapes_make_is_told_with_its_error():
    bow = SimpleNamespace(courses=(None, None))
    told = checks.shape_checks(bow, [Apart(0.01, 1e-3, 1e-4)], reading(-0.004, 0.001))[-1]
    assert (told.id, told.level) == ("tiller-by-shape", WATCH)
    assert [each.value for each in told.text.amounts] == [-0.004, NORMAL_95 * 0.001]


def course(count, off=0.0):
    return SimpleNamespace(points=[None] * count, misses=lambda: [0.0] * (count - 1) + [off])


@pytest.mark.parametrize(("count", "off", "found"), [
    (18, 4.0, []), (17, 0.0, ["few-upper"]), (18, 4.01, ["off-upper"]), (18, -4.01, ["off-upper"])])
def test_too_few_marks_and_one_off_the_course_are_warned_of(count, off, found):
    told = checks.course_checks(SimpleNamespace(courses=(course(count, off), None)))
    assert levels(told) == [(each, WATCH) for each in found]
    assert [each.text.amounts[0].value for each in told] == [count] * len(found)  # the last mark is the one


def stretch(more, error):
    bent = SimpleNamespace(value=30.0 + more, error=error, marks=None, shift=None)
    return bends.Stretch("upper", "middle", bent, 30.0, 1e9)


@pytest.mark.parametrize(("more", "found"), [
    (2.62, [("bend", OK)]), (-2.62, [("bend", OK)]), (2.64, [("bend-upper-middle", WATCH)]),
    (-2.64, [("bend-upper-middle", WATCH)])])
def test_a_stretch_that_bends_otherwise_than_computed_beyond_the_errors_is_warned_of(more, found):
    """1 - (1 - 0.05)^(1/6) lies beyond 2.63 standard errors (SciPy's normal distribution)."""
    assert norm.isf((1 - 0.95 ** (1 / 6)) / 2) == pytest.approx(bends.SIX_AT_ONCE, abs=0.01)
    told = bends.bend_checks([stretch(more, 1.0)])
    assert levels(told) == found
    if more > 2.63:
        assert "too much" in told[0].text.template
    elif more < -2.63:
        assert "too little" in told[0].text.template


def test_the_shape_at_rest_adds_what_its_offsets_may_be_out_by():
    """Over three places a stretch apart the second difference of offsets, each out by 1/64 in."""
    length = 6.75 * INCH
    own = bends.Stretch("upper", "middle", reading(30.0, 0.0), 30.0, length).error
    assert own == pytest.approx(math.degrees(math.sqrt(1 + 4 + 1) / 64 * INCH / length))
