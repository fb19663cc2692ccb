"""The week for the wall: what the calendar of the same bows says, by day."""

import icalendar

from calc.record.calendar import calendar_of
from calc.record.week import week_tree
from tests.record.bench import Bench, coat, to_finish
from tests.record.elements import nodes_of, text_of

AT = "2026-05-05T18:10+02:00"


def laid():
    bench = to_finish(Bench().came_in())
    bench.write("shop", closed="2026-05-07:0:0;2026-05-08:10:14")
    coat(bench, "05T10:00", role="build")
    return bench


def tables(bows, system="imperial"):
    tree = week_tree([each.entries for each in bows], AT, system)
    return [[[text_of(cell) for cell in row[2:]] for row in nodes_of(table[2:], "tr")[1:]]
            for table in nodes_of(tree, "table")]


def test_each_day_has_its_hours_and_what_the_calendar_says_of_it():
    """The calendar file, read by a library, has the same appointments on the same days."""
    bench = laid()
    days, _ = tables([bench])
    assert [row[0] for row in days] == [
        "Tue 5 May 2026", "Wed 6 May 2026", "Thu 7 May 2026", "Fri 8 May 2026", "Sat 9 May 2026",
        "Sun 10 May 2026", "Mon 11 May 2026"]
    assert [row[1] for row in days] == ["09:00 to 18:00", "09:00 to 18:00", "closed", "10:00 to 14:00",
                                        "09:00 to 18:00", "closed", "09:00 to 18:00"]
    events = icalendar.Calendar.from_ical(calendar_of([bench.entries], AT)).walk("VEVENT")
    within = sorted((event["DTSTART"].dt, str(event["SUMMARY"])) for event in events
                    if event["DTSTART"].dt.isoformat() < "2026-05-12" and event.get("STATUS") != "CANCELLED")
    assert len(within) == 4  # three coats and the lettering between them
    for start, summary in within:
        [row] = [row for row in days if row[0] == f"{start:%a} {start.day} May 2026"]
        assert f"{start:%H:%M} {summary}" in row[2]


def test_a_bow_that_is_due_stands_on_its_day_and_one_that_has_left_nowhere():
    due, gone = laid(), Bench().came_in()
    due.write("agreed", ready_by="2026-05-11", weight="45 lb", at_draw="28 in", price="MARKER")
    due.write("owner", name="MARKER")
    gone.write("bow", tag="32", due="2026-05-09")
    gone.write("handover", end="done")
    days, bows = tables([due, gone])
    assert days[6][2].endswith("31: ready, as was agreed.")
    assert days[4][2] == ""
    assert [row[0] for row in bows] == ["31 64 in recurve"]
    assert bows[0][1] == "Came at 53.0 lb, agreed 45.0 lb at 28 in."
    assert bows[0][3] == "Mon 11 May 2026"
    assert "235.8 N" in tables([due], "metric")[1][0][1]
    assert "MARKER" not in str(week_tree([due.entries, gone.entries], AT, "imperial"))


def test_what_bows_mean_for_each_other_stands_below():
    one, other = laid(), Bench().came_in()
    other.write("bow", tag="32")
    told = [text_of(node) for node in week_tree([one.entries, other.entries], AT, "imperial")]
    assert told[-2] == "Across the bench"
    assert told[-1].startswith("31 64 in recurve: ")


def test_a_bench_without_bows_has_an_empty_week():
    days, bows = tables([])
    assert [row[2] for row in days] == [""] * 7
    assert bows == []
