"""Schedules: working hours, waits and windows."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.dates import DAY, parse_date, show_moment, weekday
from calc.shop.schedule import WorkingHours, WorkStep, next_start, plan
from tests.sentences import whole

HOUR = 3600
NINE_TO_SIX = WorkingHours(9 * HOUR, 18 * HOUR, (0, 1, 2, 3, 4))
MONDAY = parse_date("2026-05-04") * DAY

HOURS = st.builds(
    lambda opens, length, days: WorkingHours(
        opens * HOUR, min(24, opens + length) * HOUR, tuple(sorted(days))),
    st.integers(0, 22), st.integers(1, 12), st.sets(st.integers(0, 6), min_size=1),
)


@pytest.mark.parametrize(
    ("moment", "work", "expected"),
    [
        (MONDAY, 1, "Mon 4 May 2026, 09:00"),  # before opening
        (MONDAY + 10 * HOUR, 1, "Mon 4 May 2026, 10:00"),  # during the day
        (MONDAY + 17 * HOUR, 1, "Mon 4 May 2026, 17:00"),  # ends just in time
        (MONDAY + 17 * HOUR + 1, 1, "Tue 5 May 2026, 09:00"),  # would end a second late
        (MONDAY + 23 * HOUR, 1, "Tue 5 May 2026, 09:00"),  # after hours
        (MONDAY + 4 * DAY + 17.5 * HOUR, 1, "Mon 11 May 2026, 09:00"),  # over the weekend
        (MONDAY + 5 * DAY, 9, "Mon 11 May 2026, 09:00"),  # a whole day's work
    ],
)
def test_next_start(moment, work, expected):
    assert show_moment(int(next_start(int(moment), work * HOUR, NINE_TO_SIX))) == expected


@given(HOURS, st.integers(0, 400 * DAY), st.integers(0, HOUR))
def test_work_lies_within_a_working_day_and_no_earlier_start_would(hours, offset, work):
    moment = MONDAY + offset
    start = next_start(moment, work, hours)
    day, clock = divmod(start, DAY)
    assert moment <= start < moment + 8 * DAY
    assert weekday(day) in hours.days
    assert hours.opens <= clock
    assert clock + work <= hours.closes
    assert start == moment or clock == hours.opens


@given(HOURS, st.lists(st.tuples(st.integers(0, HOUR), st.integers(0, 3 * DAY)), min_size=1, max_size=8))
def test_every_step_waits_as_long_as_it_must(hours, rows):
    steps = tuple(WorkStep(str(index), work, wait, None, None) for index, (work, wait) in enumerate(rows))
    planned = plan(steps, MONDAY, hours)
    assert [each.step for each in planned] == list(steps)
    for before, after in zip(planned, planned[1:], strict=False):
        assert after.start - before.end >= after.step.least_wait
        assert not after.late


def test_a_window_counts_from_the_film_below_and_not_from_the_lettering():
    steps = (WorkStep("coat", HOUR, 0, None, None), WorkStep("lettering", HOUR, 6 * HOUR, 24 * HOUR, 0),
             WorkStep("coat", HOUR, 12 * HOUR, 24 * HOUR, 0))
    planned = plan(steps, MONDAY, NINE_TO_SIX)
    assert [show_moment(each.start)[:9] for each in planned] == ["Mon 4 May", "Mon 4 May", "Tue 5 May"]
    assert [each.late for each in planned] == [False, False, False]
    late = plan((*steps[:2], WorkStep("coat", HOUR, 40 * HOUR, 24 * HOUR, 0)), MONDAY, NINE_TO_SIX)
    assert [each.late for each in late] == [False, False, True]


@pytest.mark.parametrize(
    ("hours", "message"),
    [
        (WorkingHours(9 * HOUR, 18 * HOUR, ()), "at least one day of the week must be worked"),
        (WorkingHours(18 * HOUR, 9 * HOUR, (0,)), "work must end after it begins, on the same day"),
        (WorkingHours(9 * HOUR, 9 * HOUR, (0,)), "work must end after it begins, on the same day"),
        (WorkingHours(9 * HOUR, 10 * HOUR, (0,)), "a step takes 7200 s, longer than a working day of 3600 s"),
    ],
)
def test_impossible_hours_are_refused(hours, message):
    with pytest.raises(ValueError, match=whole(message)):
        next_start(MONDAY, 2 * HOUR, hours)


def test_days_with_hours_of_their_own():
    monday = MONDAY // DAY
    own = ((monday, 0, 0), (monday + 1, 12 * HOUR, 14 * HOUR), (monday + 5, 9 * HOUR, 12 * HOUR))
    hours = WorkingHours(9 * HOUR, 18 * HOUR, (0, 1, 2, 3, 4), own)
    assert show_moment(next_start(MONDAY, HOUR, hours)) == "Tue 5 May 2026, 12:00"  # Monday is closed
    assert show_moment(next_start(MONDAY, 3 * HOUR, hours)) == "Wed 6 May 2026, 09:00"  # Tuesday is too short
    assert show_moment(next_start(MONDAY + 5 * DAY, HOUR, hours)) == "Sat 9 May 2026, 09:00"  # open for once
    with pytest.raises(ValueError,
                       match=whole("work must not end before it begins on a day of its own hours")):
        next_start(MONDAY, HOUR, WorkingHours(9 * HOUR, 18 * HOUR, (0,), ((MONDAY // DAY, 5, 4),)))


def test_what_was_done_stays_and_what_is_to_come_follows_it():
    laid = (MONDAY + 30 * HOUR, MONDAY + 31 * HOUR)
    steps = (WorkStep("first", HOUR, 0, None, None, laid), WorkStep("second", HOUR, 4 * HOUR, 10 * HOUR, 0))
    first, second = plan(steps, MONDAY, NINE_TO_SIX)
    assert (first.start, first.end) == laid  # outside working hours, but so it was
    assert second.start == MONDAY + 35 * HOUR
    assert (second.opens, second.closes, second.late) == (MONDAY + 35 * HOUR, MONDAY + 41 * HOUR, False)
    cold = plan(steps, MONDAY, NINE_TO_SIX, ((0, 0.5),))[1]
    assert cold.opens == MONDAY + 39 * HOUR
    with pytest.raises(ValueError, match=whole("nothing can be planned where drying stands still")):
        plan(steps, MONDAY, NINE_TO_SIX, ((0, 0.0),))
