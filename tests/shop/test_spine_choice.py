"""Rules of thumb for the spine: common practice, each by the words in which it is told."""

import pytest

from calc.quantities import GRAIN, INCH, POUND_FORCE
from calc.shop import spine_choice
from tests.sentences import whole


@pytest.mark.parametrize(("inches", "pounds"), [(28, 0), (29, 5), (27, -5), (30.5, 12.5)])
def test_five_pounds_an_inch_beyond_28(inches, pounds):
    # Common practice.
    assert spine_choice.spine_for_length(inches * INCH) / POUND_FORCE == pytest.approx(pounds, abs=1e-9)


@pytest.mark.parametrize(("grains", "pounds"), [(125, 0), (150, 5), (100, -5), (175, 10)])
def test_five_pounds_for_25_grains_beyond_125(grains, pounds):
    # Common practice.
    assert spine_choice.spine_for_point(grains * GRAIN) / POUND_FORCE == pytest.approx(pounds, abs=1e-9)


def test_a_string_that_hardly_stretches_asks_for_five_pounds():
    # Common practice.
    assert spine_choice.spine_for_string("polyester") == 0
    assert spine_choice.spine_for_string("low_stretch") / POUND_FORCE == pytest.approx(5)
    with pytest.raises(ValueError, match=whole("string material must be polyester or low_stretch, got gut")):
        spine_choice.spine_for_string("gut")


@pytest.mark.parametrize(("cut", "pounds"), [("before", -5), ("centre", 0), ("past", 5)])
def test_a_window_past_centre_asks_for_more(cut, pounds):
    # Common practice.
    assert spine_choice.spine_for_window(cut) / POUND_FORCE == pytest.approx(pounds)
    with pytest.raises(ValueError, match=whole("a window must be cut before, centre or past, got beside")):
        spine_choice.spine_for_window("beside")


def test_shafts_are_sold_in_classes_of_five_pounds():
    # Common practice: 40 to 45, 45 to 50 and so on.
    assert pytest.approx(5) == 2 * spine_choice.HALF_CLASS / POUND_FORCE
