"""The coats of bows as calendar files, read by a library that knows the standard, and imported twice."""

import datetime as dt

import icalendar
import pytest

from calc.record import calendar
from tests.record.bench import Bench, coat, to_finish

NOW = "2026-05-05T12:00+02:00"


def events(*benches, at=NOW):
    found = icalendar.Calendar.from_ical(calendar.calendar_of([each.entries for each in benches], at))
    assert not found.errors
    return {str(each["UID"]): each for each in found.walk("VEVENT")}


def imported(kept, more):
    """Return what is kept after a file: the greater SEQUENCE of a UID (RFC 5546, 2.1.5: from memory)."""
    taken = dict(kept)
    for uid, event in more.items():
        if uid not in taken or event["SEQUENCE"] >= taken[uid]["SEQUENCE"]:
            taken[uid] = event
    return taken


def uid(bench, key):
    return f"coat-{bench.entries[0].id}-{key}@rebrace.invalid"


@pytest.fixture
def bench():
    bench = Bench()
    bench.write("bow", tag="31", title="64 in recurve")
    to_finish(bench)
    coat(bench, "05T10:00", role="build")
    return bench


def test_a_library_reads_each_coat_with_the_bows_tag(bench):
    found = events(bench)
    assert {key.split("@")[0].split("-", 2)[2]: str(each["SUMMARY"]) for key, each in found.items()} == {
        "build-1": "31: build coat 1", "build-2": "31: build coat 2", "lettering-1": "31: lettering",
        "build-3": "31: build coat 3", "string-1": "31: string and first draw"}
    second = found[uid(bench, "build-2")]
    assert second.decoded("DTSTART") == dt.datetime(2026, 5, 5, 15, 0)
    assert second.decoded("DTSTAMP") == second.decoded("LAST-MODIFIED") == dt.datetime(
        2026, 5, 5, 10, 0, tzinfo=dt.UTC)
    assert str(second["DESCRIPTION"]) == (
        "One-part urethane. Begin it by Wed 6 May 2026, 11:00, or dull the film below first. The maker's "
        "sheet comes first.")
    assert {each["SEQUENCE"] for each in found.values()} == {len(bench.entries)}


def test_a_plan_that_moves_keeps_its_ids_and_a_second_import_makes_no_doubles(bench):
    before = events(bench)
    bench.write("shop", closed="2026-05-05:0:0;2026-05-06:0:0")
    after = events(bench)
    assert set(after) == set(before)
    assert all(after[each]["SEQUENCE"] > before[each]["SEQUENCE"] for each in after)
    kept = imported(imported(before, after), after)
    assert len(kept) == 5
    assert kept[uid(bench, "build-2")].decoded("DTSTART") == dt.datetime(2026, 5, 7, 9, 0)
    assert imported(kept, before) == kept  # the file of before, taken in late, changes nothing


def test_a_coat_that_is_laid_stands_where_it_was_laid(bench):
    before = events(bench)
    coat(bench, "05T17:00", role="build", took="2 h")
    after = events(bench, at="2026-05-05T19:00+02:00")
    assert set(after) == set(before)
    laid = after[uid(bench, "build-2")]
    assert (laid.decoded("DTSTART"), laid.decoded("DTEND")) == (
        dt.datetime(2026, 5, 5, 17, 0), dt.datetime(2026, 5, 5, 19, 0))
    assert laid.walk("VALARM") == []


def test_a_coat_that_is_dropped_is_called_off_and_one_that_comes_back_is_not(bench):
    assert [each for each in events(bench).values() if "STATUS" in each] == []
    bench.write("coats", over_coats="0")
    called_off = [key for key, each in events(bench).items() if each.get("STATUS") == "CANCELLED"]
    assert called_off == [uid(bench, "build-3")]
    assert events(bench)[called_off[0]].walk("VALARM") == []
    assert "DTSTART" in events(bench)[called_off[0]]
    bench.write("coats", over_coats="1")
    assert [each for each in events(bench).values() if "STATUS" in each] == []


def test_a_plan_that_is_struck_out_is_called_off_whole(bench):
    bench = Bench()
    bench.write("bow", tag="31")
    to_finish(bench)
    plan = bench.entries[2]
    bench.write("coats", replaces=plan.id)
    assert {str(each["STATUS"]) for each in events(bench).values()} == {"CANCELLED"}
    assert len(events(bench)) == 5


def test_alarms_sound_before_a_coat_and_before_its_window_closes(bench):
    alarms = events(bench)[uid(bench, "build-2")].walk("VALARM")
    # it begins at 15:00, and its window closes on the next day at 11:00
    assert [each.decoded("TRIGGER") for each in alarms] == [dt.timedelta(minutes=-30), dt.timedelta(hours=19)]
    assert [str(each["DESCRIPTION"]) for each in alarms] == [
        "31: build coat 2: in half an hour", "31: build coat 2: its window closes in an hour"]
    late = events(bench)[uid(bench, "build-3")].walk("VALARM")  # its window closes before it can be begun
    assert [each.decoded("TRIGGER") for each in late] == [dt.timedelta(minutes=-30)]


def test_two_bows_share_no_event_and_one_without_coats_has_none(bench):
    other = Bench()
    other.entries.append(bench.entries[0].__class__("01k2f7m3q9xw4t", NOW, "bow", (("tag", "32"),)))
    to_finish(other)
    other.entries = [each for each in other.entries if each.sheet == "bow"] + [
        each.__class__("01k2f7m3q9xw5" + str(place), each.at, each.sheet, each.facts)
        for place, each in enumerate(other.entries) if each.sheet != "bow"]
    both = events(bench, other, Bench().came_in())
    assert len(both) == len(events(bench)) + len(events(other)) == 10
    assert {str(each["SUMMARY"])[:4] for each in both.values()} == {"31: ", "32: "}


def test_where_nothing_is_planned_there_is_no_file():
    assert calendar.calendar_of([], NOW) == ""
    assert calendar.calendar_of([[], Bench().came_in().entries], NOW) == ""


def test_a_finish_that_stands_still_calls_off_the_string(bench):
    assert events(bench)[uid(bench, "string-1")].decoded("DTSTART") == dt.datetime(2026, 5, 22, 9, 0)
    bench.write("air", temperature="40 °F").at = "2026-05-05T11:30+02:00"
    assert events(bench)[uid(bench, "string-1")]["STATUS"] == "CANCELLED"


def test_the_next_look_of_a_bow_that_left_is_in_it(bench):
    bench.write("handover", end="done", next_look="2027-06-13")
    look = events(bench)[uid(bench, "look-1")]
    assert str(look["SUMMARY"]) == "31: next look"
    assert look.decoded("DTSTART") == dt.datetime(2027, 6, 13, 9, 0)


@pytest.mark.parametrize(("tag", "shown"), [("31", "31"), ("Rowan's 31", "Bow"), ("", "Bow")])
def test_no_summary_names_an_owner(tag, shown):
    bench = Bench()
    bench.write("owner", name="Rowan Ashdown")
    bench.write("bow", tag=tag, title="64 in recurve")
    to_finish(bench)
    text = calendar.calendar_of([bench.entries], NOW)
    assert "Rowan" not in text
    assert "SUMMARY:" + shown + ": build coat 1" in text


@pytest.mark.parametrize(("second", "alarms"), [("10:29", 2), ("10:30", 1)])
def test_no_alarm_of_a_window_that_closes_as_a_coat_begins(bench, second, alarms):
    # the window closes on the 6th at 11:00, so its alarm is of 10:00; that of the coat half an hour before it
    at = f"2026-05-06T{second}+02:00"
    bench.write("shop", closed="2026-05-05:9:12;2026-05-06:9:18")
    found = events(bench, at=at)[uid(bench, "build-2")].walk("VALARM")
    assert len(found) == alarms
