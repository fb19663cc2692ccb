
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop import threads
from calc.tables import drills
from calc.tables import threads as table
from tests.sentences import whole


@given(st.sampled_from(table.THREADS), st.floats(0, 1))
def test_hole_and_share_and_back(thread, share):
    hole = threads.tap_hole(thread.major, thread.pitch, share)
    assert threads.share_of_thread(thread.major, thread.pitch, hole) == pytest.approx(share, abs=1e-12)


@given(st.sampled_from(table.THREADS))
def test_no_thread_needs_the_whole_diameter(thread):
    assert threads.tap_hole(thread.major, thread.pitch, 0.0) == thread.major


@given(st.sampled_from(table.THREADS))
def test_minor_diameter_lies_between_full_and_three_quarters(thread):
    """1.0825 of 1.299 pitches is 83.3 %."""
    minor = threads.basic_minor_diameter(thread.major, thread.pitch)
    assert threads.share_of_thread(thread.major, thread.pitch, minor) == pytest.approx(5 / 6, rel=1e-12)


def test_drills_are_in_order_and_without_two_of_a_name():
    sizes = [each.diameter for each in drills.DRILLS]
    assert sizes == sorted(sizes)
    names = [each.name for each in drills.DRILLS]
    assert len(set(names)) == len(names)


@pytest.mark.parametrize("sizes", [drills.INCH_DRILLS, drills.METRIC_DRILLS])
def test_a_drill_is_nearest_to_itself_among_its_own(sizes):
    for drill in sizes:
        assert drills.nearest(drill.diameter, sizes).diameter == drill.diameter


def test_without_a_word_the_nearest_is_by_the_inch():
    assert all(drills.nearest(each.diameter).series != "metric" for each in drills.METRIC_DRILLS)


def test_number_sizes_fall_as_numbers_rise():
    numbered = {int(each.name[1:]): each.diameter for each in drills.DRILLS if each.series == "number"}
    in_order = [numbered[number] for number in sorted(numbered)]
    assert in_order == sorted(in_order, reverse=True)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: threads.tap_hole(0.005, 0.001, 1.01), "share must be from 0 to 1, got 1.01"),
        (lambda: threads.tap_hole(0.005, 0.001, -0.01), "share must be from 0 to 1, got -0.01"),
        (lambda: threads.tap_hole(0.001, 0.001, 0.5),
         "major must be more than 1.299 pitches, got 0.001 m with a pitch of 0.001 m"),
        (lambda: threads.share_of_thread(0.005, 0.0, 0.004),
         "major must be more than 1.299 pitches, got 0.005 m with a pitch of 0.0 m"),
        (lambda: threads.basic_minor_diameter(0.0, 0.001),
         "major must be more than 1.299 pitches, got 0.0 m with a pitch of 0.001 m"),
        (lambda: threads.tap_hole(float("inf"), 0.001, 0.5),
         "major must be more than 1.299 pitches, got inf m with a pitch of 0.001 m"),
        (lambda: threads.tap_hole(0.005, float("inf"), 0.5),
         "major must be more than 1.299 pitches, got 0.005 m with a pitch of inf m"),
        (lambda: table.machine_screw_major(-1), "number must not be negative, got -1"),
    ],
)
def test_impossible_threads_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()


@pytest.mark.parametrize(("look", "kind"), [(drills.find, "drill"), (table.find, "thread")])
def test_unknown_names_are_said(look, kind):
    with pytest.raises(ValueError, match=whole(f"no {kind} is called none such")):
        look("none such")
