"""Rules of thumb for the spine: common practice, each by the words in which it is told."""

import pytest

from calc.quantities import GRAIN, INCH, POUND_FORCE
from calc.shop import spine_choice
from tests.sentences import whole

FIFTY = 50  # lb: the weight for which the rules are told


@pytest.mark.parametrize(("inches", "pounds"), [(28, 0), (29, 5), (27, -5), (28.5, 2.5)])
def test_five_pounds_an_inch_beyond_28_on_fifty(inches, pounds):
    # Common practice, to a quarter of a pound: the power of a length is no straight line.
    share = spine_choice.share_for_length(inches * INCH, 2.8)
    assert FIFTY * share == pytest.approx(pounds, abs=0.25)


def test_the_rule_for_length_lies_between_buckling_and_the_swing():
    # Its slope at 28 in is its power: Euler's P = pi^2 E I / L^2 gives 2 for a push in proportion to the
    # weight; a free beam's frequency, as the root of E I / (m L^3), gives 4 for a stroke that stays.
    step = 1e-6 * INCH
    slope = spine_choice.share_for_length(spine_choice.PLAIN_LENGTH + step, 2.8) / (step / (28 * INCH))
    assert slope == pytest.approx(2.8, rel=1e-5)
    assert slope / 28 * FIFTY == pytest.approx(5, rel=1e-5)  # common practice: 5 lb an inch
    assert 2 < slope < 4


@pytest.mark.parametrize(("weight", "tolerance"), [(45, 0.75), (50, 0.25), (55, 0.75), (60, 1.25)])
def test_bows_of_45_to_60_pounds_keep_the_rules_in_fixed_pounds(weight, tolerance):
    # Common practice: 5 lb for an inch, for 25 gr, for the string, for the window; a quarter of a class.
    for share, pounds in (
        (spine_choice.share_for_length(29 * INCH, 2.8), 5),
        (spine_choice.share_for_length(27 * INCH, 2.8), -5),
        (spine_choice.share_for_point(150 * GRAIN, 0.1), 5),
        (spine_choice.share_for_point(100 * GRAIN, 0.1), -5),
        (spine_choice.share_for_string("low_stretch", 0.1), 5),
        (spine_choice.share_for_window("before", 0.1), -5),
    ):
        assert weight * share == pytest.approx(pounds, abs=tolerance)


@pytest.mark.parametrize(("grains", "share"), [(125, 0), (150, 0.1), (100, -0.1), (175, 0.2)])
def test_a_tenth_for_25_grains_beyond_125(grains, share):
    # Common practice: 5 lb for 25 gr, on 50 lb.
    assert spine_choice.share_for_point(grains * GRAIN, 0.1) == pytest.approx(share, abs=1e-12)


def test_a_string_that_hardly_stretches_asks_for_its_share():
    # Common practice.
    assert spine_choice.share_for_string("polyester", 0.1) == 0
    assert spine_choice.share_for_string("low_stretch", 0.1) == 0.1
    with pytest.raises(ValueError, match=whole("string material must be polyester or low_stretch, got gut")):
        spine_choice.share_for_string("gut", 0.1)


@pytest.mark.parametrize(("cut", "share"), [("before", -0.1), ("centre", 0), ("past", 0.1)])
def test_a_window_past_centre_asks_for_more(cut, share):
    # Common practice.
    assert spine_choice.share_for_window(cut, 0.1) == share
    with pytest.raises(ValueError, match=whole("a window must be cut before, centre or past, got beside")):
        spine_choice.share_for_window("beside", 0.1)


def test_a_shaft_has_a_length():
    with pytest.raises(ValueError, match=whole("length must be positive, got 0.0 m")):
        spine_choice.share_for_length(0.0, 2.8)


def test_shafts_are_sold_in_classes_of_five_pounds():
    # Common practice: 40 to 45, 45 to 50 and so on.
    assert pytest.approx(5) == 2 * spine_choice.HALF_CLASS / POUND_FORCE
