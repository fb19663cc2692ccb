"""What is private leaves in no table, no link and no file that is written without it."""

from urllib.parse import urlencode

import pytest

from calc.record import calendar, file, sheets, table
from calc.record.bindings import BOUND
from calc.record.declare import NOTE
from calc.record.entries import Entry, entries_json
from calc.record.fill import fill
from calc.record.record_sheet import sheet_tree
from calc.record.tag_card import card_tree
from calc.record.week import week_tree
from tests.record.bench import Bench
from tests.record.test_tasks import ask

NUMBERS = {"quote.tasks": "inspect:71.3h:71.4h:71.5h", "quote.materials": "finish:7132.5",
           "hours.hours": "7.13 h", "shop.rate": "713.25", "shop.markup": "71.325 %", "shop.tax": "41.325 %",
           "photo.shows": "MARKER", "photo.print": "MARKER"}
MARKS = ("MARKER", "71.3", "713", "1.325", "7.13")
TELLS = [calculator for calculator in BOUND
         if any(fact in sheets.private_facts() for _, fact in BOUND[calculator])]


@pytest.fixture
def bench():
    """A bow of which all that is private is a marker, and all else has been written down."""
    bench = Bench().came_in()
    for sheet in sheets.SHEETS:
        facts = {}
        for each in sheets.inputs_of(sheet):
            fact = f"{sheet.id}.{each.id}"
            if each.id in sheet.private:
                facts[each.id] = "MARKER " + each.id if each.kind == NOTE else NUMBERS[fact]
            elif sheet.id != "answer":
                facts[each.id] = each.default
        entry = bench.write("bow", title="64 in recurve")
        bench.entries[-1] = Entry(entry.id, entry.at, sheet.id, tuple(facts.items()), why="MARKER",
                                  note="MARKER")
    bench.write("answer", calculator="quote", pairs="rate=713.25", headline="Quote 7132.5 in all.")
    bench.write("answer", calculator="of a later release", pairs="x=MARKER")
    return bench


def clean(text):
    return not [mark for mark in MARKS if mark in text]


def test_the_markers_are_there(bench):
    assert len(sheets.private_facts()) > 8
    whole = file.page(bench.entries, "imperial")
    assert [mark for mark in MARKS if mark not in whole] == []


def test_only_the_price_asks_for_what_is_private():
    assert TELLS == ["quote"]


@pytest.mark.parametrize("calculator", [each for each in BOUND if each not in TELLS])
def test_no_link_to_an_answer_tells_it(bench, calculator):
    chosen = {"losses": "chronograph", "shaft_known": "deflection_28"}
    pairs = [(each.input, each.text) for each in fill(bench.state, calculator, chosen)]
    assert clean(urlencode(pairs))


def test_no_calendar_tells_it(bench):
    text = calendar.calendar_of([bench.entries], "2026-05-12T18:10+02:00")
    assert "build coat" in text
    assert clean(text)


@pytest.mark.parametrize(("asked", "tells"), [
    ({}, True), ({"private": True}, True),
    ({"private": False}, False), ({"private": "false"}, False), ({"private": None}, False)])
def test_the_file_of_all_bows_tells_it_only_where_that_was_asked_for(bench, asked, tells):
    page = ask("all", records=[entries_json(bench.entries)], **asked)["page"]
    assert [mark for mark in MARKS if mark in page] == (list(MARKS) if tells else [])


@pytest.mark.parametrize("system", ["imperial", "metric"])
def test_no_paper_tells_it(bench, system):
    """Free words of the record are on the sheet, whose reader is the owner; none that is private."""
    sheet = str(sheet_tree(bench.state, "2026-05-12T18:10+02:00", "", system))
    assert "45 lb at 28 in" in sheet
    assert clean(sheet)
    assert clean(str(card_tree(bench.state, "2026-05-12T18:10+02:00", system)))
    assert clean(str(week_tree([bench.entries], "2026-05-12T18:10+02:00", system)))


@pytest.mark.parametrize("system", ["imperial", "metric"])
def test_no_table_and_no_file_without_the_owner_tells_it(bench, system):
    assert clean(table.csv(bench.entries, system))
    shared = file.page(bench.entries, system, with_private=False)
    assert clean(shared)
    assert "quote" not in [each.fact("calculator") for each in file.record_in(shared).entries]
