"""Calendar files, read back by a library that knows the standard."""

import datetime as dt

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.dates import DAY
from calc.shop.calendar import LONGEST_LINE, Event, calendar_text, duration_text, escaped, folded
from tests.sentences import whole

NINE = 9 * 3600
MONDAY = dt.date(2026, 5, 4).toordinal() * DAY
TEXTS = st.text(st.characters(exclude_categories=["Cs", "Cc"], include_characters="\n\t"), max_size=300)


def event(summary="Seal coat", description="", start=MONDAY + NINE, end=MONDAY + NINE + 3600):
    return Event("one@rebrace.invalid", summary, description, start, end, 3)


def read(text):
    return icalendar.Calendar.from_ical(text)


def test_a_library_reads_what_was_written():
    text = calendar_text("-//Rebrace//Finish schedule//EN", MONDAY, [event(), event(summary="Build coat")])
    calendar = read(text)
    assert calendar["VERSION"] == "2.0"
    assert calendar["PRODID"] == "-//Rebrace//Finish schedule//EN"
    events = calendar.walk("VEVENT")
    assert [str(each["SUMMARY"]) for each in events] == ["Seal coat", "Build coat"]
    assert events[0].decoded("DTSTART") == dt.datetime(2026, 5, 4, 9, 0)  # no zone: the reader's own hours
    assert events[0].decoded("DTEND") == dt.datetime(2026, 5, 4, 10, 0)
    assert events[0].decoded("DTSTAMP") == dt.datetime(2026, 5, 4, tzinfo=dt.UTC)
    assert events[0]["SEQUENCE"] == 3
    assert not calendar.errors


@given(TEXTS, TEXTS)
def test_any_text_comes_back_as_it_was(summary, description):
    calendar = read(calendar_text("x", MONDAY, [event(summary, description)]))
    [found] = calendar.walk("VEVENT")
    assert str(found["SUMMARY"]) == summary
    assert str(found["DESCRIPTION"]) == description


@given(TEXTS)
def test_lines_are_short_end_as_they_must_and_tear_no_letter(summary):
    data = calendar_text("x", MONDAY, [event(summary)]).encode()
    assert data.endswith(b"\r\n")
    for line in data.split(b"\r\n"):
        assert len(line) <= LONGEST_LINE
        assert b"\n" not in line
        line.decode()  # whole letters only


@given(st.datetimes(dt.datetime(1000, 1, 1), dt.datetime(9999, 12, 30)), st.integers(0, 3600))
def test_moments_come_back_as_they_were(moment, length):
    start = moment.toordinal() * DAY + moment.hour * 3600 + moment.minute * 60 + moment.second
    [found] = read(calendar_text("x", MONDAY, [event(start=start, end=start + length)])).walk("VEVENT")
    assert found.decoded("DTSTART") == moment.replace(microsecond=0)
    assert found.decoded("DTEND") == moment.replace(microsecond=0) + dt.timedelta(seconds=length)


def test_a_changed_event_keeps_its_name_so_that_a_calendar_puts_it_in_place_of_the_old_one():
    # RFC 5545, section 3.8.4.7: the name of an event lasts; from memory
    for changed in (event(), event(summary="Build coat"), event(start=MONDAY)):
        [found] = read(calendar_text("x", MONDAY, [changed])).walk("VEVENT")
        assert str(found["UID"]) == "one@rebrace.invalid"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # RFC 5545, section 3.3.11: from memory, confirmed by the library above
        ("a, b; c\\d", "a\\, b\\; c\\\\d"), ("one\ntwo", "one\\ntwo"), ("one\r\ntwo", "one\\ntwo"),
        ("a\x00b", "ab"), ("colon: stays", "colon: stays"),
    ],
)
def test_marks_are_escaped(text, expected):
    assert escaped(text) == expected


@pytest.mark.parametrize("length", [0, 74, 75, 76, 149, 150, 300])
def test_folding_at_75_bytes(length):
    # RFC 5545, section 3.1: lines should not be longer than 75 octets: from memory
    line = "x" * length
    parts = folded(line).split("\r\n")
    assert parts[0] + "".join(part[1:] for part in parts[1:]) == line
    assert all(part.startswith(" ") for part in parts[1:])


def test_what_makes_no_sense_is_refused():
    with pytest.raises(ValueError, match=whole("a calendar must have an event")):
        calendar_text("x", MONDAY, [])
    with pytest.raises(ValueError, match=whole(
            "an event must not end before it starts: one@rebrace.invalid")):
        calendar_text("x", MONDAY, [event(start=MONDAY + 10, end=MONDAY)])


def test_parts_are_as_long_as_they_may_be():
    # RFC 5545, section 3.1: 75 octets without the line end; the space that begins a part counts.
    assert [len(part) for part in folded("x" * 200).split("\r\n")] == [75, 75, 52]
    assert folded("x" * 75) == "x" * 75
    assert [len(part.encode()) for part in folded("\N{EURO SIGN}" * 50).split("\r\n")] == [75, 73, 4]


@pytest.mark.parametrize("minutes", [-1500, -1440, -61, -60, -30, -1, 0, 1, 59, 60, 1439, 1440, 5000])
def test_spans_of_time_come_back_as_they_were(minutes):
    assert icalendar.vDuration.from_ical(duration_text(60 * minutes)) == dt.timedelta(minutes=minutes)


def test_what_is_called_off_says_so_and_alarms_sound_as_often_as_told():
    off = Event("one@rebrace.invalid", "Seal coat", "", MONDAY, MONDAY, 4, (), True)
    alarms = ((-1800, "soon"), (3600, "late"))
    loud = Event("two@rebrace.invalid", "Build coat", "", MONDAY, MONDAY, 4, alarms)
    found = read(calendar_text("x", MONDAY, [off, loud], modified=True)).walk("VEVENT")
    assert [each.get("STATUS") for each in found] == ["CANCELLED", None]
    assert found[0].walk("VALARM") == []
    assert [str(each["DESCRIPTION"]) for each in found[1].walk("VALARM")] == ["soon", "late"]
    assert found[1].walk("VALARM")[0]["ACTION"] == "DISPLAY"
    assert all("LAST-MODIFIED" in each for each in found)
    assert "LAST-MODIFIED" not in read(calendar_text("x", MONDAY, [loud])).walk("VEVENT")[0]
