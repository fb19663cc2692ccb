"""Finish: films, volumes, the schedule, and the calendar file."""

import datetime as dt

import icalendar
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import page_answer, work_out
from calc.calculators.finish import CALCULATOR
from calc.fields import say

MIL = 25.4e-6
OUNCE = 29.5735295625e-6


def results(**typed):
    job = work_out(CALCULATOR, list(typed.items()))
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def rows(outcome, id):
    [table] = [each for each in outcome.tables if each.id == id]
    return [dict(zip([column.id for column in table.columns], row, strict=True)) for row in table.rows]


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def events(outcome):
    [file] = outcome.files
    return icalendar.Calendar.from_ical(file.text).walk("VEVENT")


@pytest.mark.parametrize(
    ("wet", "solids", "reducer", "dry"),
    [
        ("4 mil", "30 %", "0 %", 1.2),  # dry is wet times solids: definition read second-hand
        ("4 mil", "30 %", "10 %", 1.0909),  # with reducer: calculated separately
        ("7.2 mil", "25 %", "20 %", 1.5),  # calculated separately
    ],
)
def test_dry_film(wet, solids, reducer, dry):
    values, _ = results(wet_film=wet, solids=solids, reducer=reducer)
    assert values["dry_film"] / MIL == pytest.approx(dry, abs=5e-5)
    assert values["dry_build"] == pytest.approx(6 * values["dry_film"])


def test_surface_and_volume_by_hand():
    # limbs 44 in long together, 2 x (1 1/16 + 0.320) in round; riser 18 x 6 in
    values, _ = results(left_over="0 fl oz", transfer="50 %", reducer="25 %")
    surface = 44 * 2 * (1.0625 + 0.320) + 18 * 6
    assert values["surface"] / 0.0254**2 == pytest.approx(surface)
    one_coat = surface * 0.003 / 0.5  # cubic inches
    assert values["volume"] / 0.0254**3 == pytest.approx(6 * one_coat)
    assert values["reducer_volume"] == pytest.approx(values["volume"] / 5)


def test_what_stays_in_the_gun_is_added_at_every_coat():
    without, _ = results(left_over="0 fl oz")
    with_it, _ = results(left_over="0.5 fl oz")
    assert (with_it["volume"] - without["volume"]) / OUNCE == pytest.approx(3.0)


def test_the_schedule_of_the_example():
    # Windows typical of the family (common practice), times doubled for 10 °C (a rule of thumb, read
    # second-hand): 2^(3.89 / 10) = 1.31 at 70 °F.
    values, outcome = results()
    assert values["time_factor"] == pytest.approx(2 ** ((25 - 190 / 9) / 10))
    assert [(each["step"], each["start"]) for each in rows(outcome, "schedule")][:4] == [
        ("Seal coat", "Mon 4 May 2026, 09:00"), ("Build coat 1", "Tue 5 May 2026, 09:00"),
        ("Build coat 2", "Wed 6 May 2026, 09:00"), ("Lettering", "Thu 7 May 2026, 09:00")]
    assert values["string_from"] == "Mon 25 May 2026"


def test_quick_products_take_several_coats_a_day():
    _, outcome = results(family="shellac", temperature="77 F", lettering="no", seal_coats="0",
                         build_coats="2", over_coats="0", sheen_coats="1", coat_time="0.5 h")
    assert [each["start"] for each in rows(outcome, "schedule")][:3] == [
        "Mon 4 May 2026, 09:00", "Mon 4 May 2026, 11:30", "Mon 4 May 2026, 14:00"]


def test_days_off_are_kept_and_a_closed_window_is_said():
    _, outcome = results(start="2026-05-08", days="five", family="two-part-urethane")
    starts = [each["start"][:3] for each in rows(outcome, "schedule")[:-1]]
    assert not {"Sat", "Sun"} & set(starts)
    assert levels(outcome)["window"] == "watch"
    assert any(each["note"] == "sand dull first" for each in rows(outcome, "schedule"))


def test_a_colder_shop_waits_longer():
    warm, _ = results(temperature="25 C")
    cold, _ = results(temperature="15 C")
    assert warm["time_factor"] == 1.0
    assert cold["time_factor"] == pytest.approx(2.0)


@pytest.mark.parametrize(
    ("typed", "check", "level"),
    [
        ({"temperature": "45 F"}, "cold", "stop"),
        # Makers' cap of 4 to 5 mil: common practice.
        ({"family": "catalysed-lacquer", "wet_film": "6 mil", "build_coats": "4"}, "cap", "stop"),
        ({"family": "two-part-urethane"}, "isocyanate", "watch"),
        ({"gloss": "22 GU"}, "gloss", "watch"),
    ],
)
def test_checks(typed, check, level):
    assert levels(results(**typed)[1])[check] == level


@pytest.mark.parametrize(
    ("gloss", "sheen", "level"),
    # A paint institute's public page: read.
    [("22", "", "G3 eggshell or G4 satin"), ("22", "40", "G4 satin"), ("22", "20", "G3 eggshell"),
     ("90", "", "G7 high gloss"), ("15", "60", "no level: the two readings do not go together")],
)
def test_gloss_levels(gloss, sheen, level):
    assert results(gloss=gloss, sheen=sheen)[0]["gloss_level"] == level


def test_two_part_urethane_never_gets_a_mask():
    _, outcome = results(family="two-part-urethane")
    [found] = [each for each in outcome.checks if each.id == "isocyanate"]
    text = say(found.text, "metric")
    assert "supplied air" in text.lower()
    assert "mask" not in text


def test_the_calendar_holds_the_schedule():
    _, outcome = results()
    schedule = rows(outcome, "schedule")
    found = events(outcome)
    assert [str(each["SUMMARY"]) for each in found] == [each["step"] for each in schedule]
    assert found[0].decoded("DTSTART") == dt.datetime(2026, 5, 4, 9)
    assert found[0].decoded("DTEND") == dt.datetime(2026, 5, 4, 10)
    assert found[-1].decoded("DTSTART").date() == dt.date(2026, 5, 25)
    assert len({str(each["UID"]) for each in found}) == len(found)
    assert {each.decoded("DTSTAMP") for each in found} == {dt.datetime(2026, 5, 4, tzinfo=dt.UTC)}


@given(st.dates(dt.date(1990, 1, 1), dt.date(2199, 12, 31)), st.integers(0, 23))
def test_the_calendar_holds_what_the_table_says_on_any_date(date, hour):
    _, outcome = results(start=date.isoformat(), start_hour=str(hour))
    for shown, event in zip(rows(outcome, "schedule")[:-1], events(outcome), strict=False):
        start = event.decoded("DTSTART")
        assert shown["start"] == f"{start:%a} {start.day} {start:%B} {start.year}, {start:%H:%M}"
        assert start.weekday() != 6
        assert 9 <= start.hour < 18
        assert start.date() >= date


def test_the_file_goes_with_the_page_and_its_link_holds_no_text():
    answer = page_answer(work_out(CALCULATOR, []))
    [file] = answer["files"]
    assert (file["name"], file["type"]) == ("finish-schedule.ics", "text/calendar")
    links = [node[2][1] for node in answer["tree"] if node[0] == "p" and isinstance(node[2], list)]
    assert {"class": "rb-file", "data-file": "finish-schedule.ics"} in links


@pytest.mark.parametrize(
    ("typed", "field", "words"),
    [
        ({"start": "2026-02-30"}, "start", "is no day of February 2026"),
        ({"start": "next Monday"}, "start", "is not a date"),
        ({"start": ""}, "start", "is empty"),
        ({"start": "1989-12-31"}, "start", "must be from 1990-01-01 to 2199-12-31"),
        ({"recoat_from": "10 h", "recoat_to": "5 h"}, "recoat_to", "ends before it begins"),
        ({"riser_length": "40 in", "bow_length": "30 in"}, "riser_length", "longer than the bow"),
        ({"opens": "18", "closes": "9"}, "closes", "end after it begins"),
        ({"opens": "9", "closes": "10", "coat_time": "2 h"}, "coat_time", "longer than a working day"),
        ({"seal_coats": "0", "build_coats": "0", "over_coats": "0", "sheen_coats": "0"}, "build_coats",
         "not one coat"),
    ],
)
def test_what_makes_no_sense_is_refused_at_its_field(typed, field, words):
    [problem] = work_out(CALCULATOR, list(typed.items())).problems
    assert problem.field == field
    assert words in problem.message
