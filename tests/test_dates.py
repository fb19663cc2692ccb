"""Dates, against the standard library's own calendar."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import dates
from tests.sentences import whole

ANY_DATE = st.dates()
EDGES = [dt.date(year, month, day)
         for year in (1, 4, 100, 400, 1900, 1999, 2000, 2001, 2024, 2026, 2100, 2400, 9999)
         for month, day in ((1, 1), (2, 28), (3, 1), (12, 30), (12, 31))]


@pytest.mark.parametrize("date", EDGES, ids=str)
def test_edges_agree_with_the_standard_library(date):
    number = dates.day_number(date.year, date.month, date.day)
    assert number == date.toordinal()
    assert dates.date_of(number) == (date.year, date.month, date.day)
    assert dates.weekday(number) == date.weekday()


@given(ANY_DATE)
def test_every_date_agrees_with_the_standard_library(date):
    number = dates.parse_date(date.isoformat())
    assert number == date.toordinal()
    assert dates.date_of(number) == (date.year, date.month, date.day)
    assert dates.show_date(number) == date.isoformat()
    assert dates.weekday(number) == date.weekday()


@given(st.datetimes())
def test_moments_are_shown_as_day_and_time(moment):
    seconds = moment.toordinal() * dates.DAY + moment.hour * 3600 + moment.minute * 60 + moment.second
    day = f"{moment:%a} {moment.day} {moment:%B} {moment.year}"
    assert dates.show_moment(seconds) == f"{day}, {moment:%H:%M}"


NO_DATE = "is not a date as year-month-day"


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", NO_DATE), ("tomorrow", NO_DATE), ("04/05/2026", NO_DATE),
        ("26-05-04", NO_DATE), ("2026-05", NO_DATE), ("2026-05-04T10", NO_DATE),
        ("2026-O5-04", NO_DATE), ("\u0662\u0660\u0662\u0666-05-04", NO_DATE),
        ("2026-13-01", "has no month from 1 to 12"), ("2026-00-01", "has no month from 1 to 12"),
        ("0000-01-01", "has no year from 1 to 9999"),
        ("2026-02-29", "is no day of February 2026"), ("2026-04-31", "is no day of April 2026"),
        ("2100-02-29", "is no day of February 2100"), ("2026-04-00", "is no day of April 2026"),
    ],
)
def test_what_is_no_date_is_refused(text, reason):
    with pytest.raises(ValueError, match=whole(reason)):
        dates.parse_date(text)


def test_short_months_and_days_are_read():
    assert dates.parse_date(" 2026-5-4 ") == dates.parse_date("2026-05-04")
    assert dates.parse_date("2024-2-29") == dt.date(2024, 2, 29).toordinal()
