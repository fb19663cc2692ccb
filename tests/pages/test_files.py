"""A file that comes with a result: saved from the page, the same as from the command line."""

from pathlib import Path

import icalendar
from playwright.sync_api import expect

from calc import catalog
from calc.answer import work_out
from tests.pages.reading import type_into, wait_for_state


def saved(page):
    with page.expect_download() as waiting:
        page.locator("a.rb-file").click()
    return waiting.value


def test_the_example_schedule_is_saved_as_a_calendar_file(visitor):
    page = visitor.open_calculator(id="finish")
    download = saved(page)
    assert download.suggested_filename == "finish-schedule.ics"
    [file] = work_out(catalog.find("finish"), []).outcome.files
    assert Path(download.path()).read_bytes() == file.text.encode()


def test_a_changed_schedule_is_the_one_that_is_saved(visitor):
    page = visitor.open_calculator(id="finish")
    type_into(page, "start", "2027-03-01")
    wait_for_state(page, "current")
    expect(page.locator(".rb-headline")).to_contain_text("1 March 2027")
    calendar = icalendar.Calendar.from_ical(Path(saved(page).path()).read_bytes())
    assert str(calendar.walk("VEVENT")[0].decoded("DTSTART")) == "2027-03-01 09:00:00"


def test_without_script_no_dead_link_is_shown(new_visitor):
    page = new_visitor(java_script_enabled=False).open("calculators/finish/")
    expect(page.locator("a.rb-file")).to_be_hidden()


def test_the_quote_is_saved_as_a_text(visitor):
    page = visitor.open_calculator(id="quote")
    download = saved(page)
    assert download.suggested_filename == "quote.txt"
    [file] = work_out(catalog.find("quote"), []).outcome.files
    assert Path(download.path()).read_bytes() == file.text.encode()
