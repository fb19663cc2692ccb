"""What comes out of a printer, read as a PDF: how many pages, what stands on them, nothing cut."""

import datetime as dt

from playwright.sync_api import expect

from calc.dates import day_number, show_date
from calc.record import sheets
from calc.record.declare import NOTE
from tests.pages.printed import FORMATS, printed, square_on_paper
from tests.pages.reading import box, wait_for_state
from tests.pages.test_bow_bar import BOW, INVENTED, choose, open_bar, put
from tests.pages.test_bows import open_bows

NAMES = {"owner": {"name": "MARKER", "reach": "MARKER"}, "told": {"text": "MARKER", "way": "MARKER"}}
KEPT = ("answer", "shop", "quote", "handover")
"""Sheets of which nothing is on the record sheet but what stands below by name."""

FINE = 4
"""[1] as fine as a camera sees a square on paper, against a screen."""

SECOND = "01k2f7m3q9xx00"
NAMED = ("tag", "title")
LONG = " and so on" * 12
EIGHT = ";".join(f"{place} in:1 5/8 in:0.2{place:02} in" for place in range(2, 26, 3))
MANY = ("crazing", "worn_finish", "pinhole", "twist_slight", "loose_overlay", "rough_groove")
HEADINGS = ("Whatthisassumes", "Beforeyouactonit", "Figuresthatitwasasked")
BLANK_LINES = ("Owner", "Date", "Done by", "Next look", "Received by", "Glass left: back, belly")


def full():
    """Return a record with every fact of every sheet, words far longer than anybody types, read last."""
    for sheet in sheets.SHEETS:
        facts = {each.id: each.default + (LONG if each.kind == NOTE and each.id not in NAMED else "")
                 for each in sheets.inputs_of(sheet)}
        if sheet.id not in KEPT:
            yield sheet.id, {**facts, **NAMES.get(sheet.id, {})}
    yield from (("finding", {"which": which, "limb": "upper", "standing": "watched"}) for which in MANY)
    [reading] = [each for each in sheets.SHEETS if each.id == "reading"]
    yield "reading", {**{each.id: each.default for each in sheets.inputs_of(reading)}, "weight": "45.3 lb",
                      "stations_upper": EIGHT, "stations_lower": EIGHT}
    yield "handover", {"next_look": "2027-06-13", "end": "done"}


def day_of_today():
    today = dt.datetime.now().astimezone()
    return day_number(today.year, today.month, today.day)


def open_sheet(visitor, facts):
    put(visitor, facts=facts)
    page = open_bows(visitor, "#" + BOW)
    page.get_by_role("button", name="Record sheet for print").click()
    expect(page.locator(".rb-paper h2")).to_contain_text("Record of bow 31")
    return page


def test_a_full_record_is_one_sheet_with_nothing_cut_and_no_name(new_visitor):
    visitor = new_visitor(device_scale_factor=FINE)
    page = open_sheet(visitor, full())
    for form in FORMATS:
        [sheet] = printed(page, form)
        assert sheet.is_whole()
        assert "MARKER" not in sheet.words
        for text in ("Record of bow 31 64 in recurve", "53 lb 45.3 lb", "0.202 in at 2 in",
                     "0.223 in at 23 in", "and 4 more, in the bow's file", "60 1/2 in, 14, Polyester",
                     "50 lb, 28 1/4 in, 125 gr, 470 gr",
                     "Next look Sun 13 June 2027", "Stop The inspection does not let the bow be strung",
                     "It does not say that the bow is safe."):
            assert text in sheet.words
    assert square_on_paper(page).startswith(visitor.site_url + "bow/#1.")
    page.locator(".rb-paper [data-do=back]").click()
    expect(page.locator(".rb-bow-title")).to_be_visible()
    expect(page.locator(".rb-paper")).to_be_hidden()


def test_a_record_that_knows_little_leaves_lines_to_write_on_as_the_blank_one_of_the_book(visitor):
    little = open_sheet(visitor, (("bow", {"tag": "31"}), ("reading", {"brace": "8 1/4 in"})))
    for form in FORMATS:
        [sheet] = printed(little, form)
        assert sheet.is_whole()
        assert "Brace height 8 1/4 in 8 1/4 in" in sheet.words
        for line in BLANK_LINES:
            assert line in sheet.words
    book = visitor.open("handover/")
    for form in FORMATS:
        last = printed(book, form)[-1]
        assert last.is_whole()
        assert "Record sheet" in last.words
        for line in ("As it came", *BLANK_LINES):
            assert line in last.words


def test_the_week_for_the_wall_holds_all_bows_and_what_is_due(visitor):
    put(visitor)
    put(visitor, SECOND, (("bow", {"tag": "32", "title": "longbow"}), ("owner", {"name": "MARKER"}),
                         ("agreed", {"ready_by": show_date(day_of_today() + 2), "price": "MARKER"})))
    page = open_bows(visitor)
    page.get_by_role("button", name="The week for the wall").click()
    expect(page.locator(".rb-paper h2")).to_have_text("The week")
    for form in FORMATS:
        [sheet] = printed(page, form)
        assert sheet.is_whole()
        assert "32: ready, as was agreed." in sheet.words
        assert "31 64 in recurve" in sheet.words
        assert "MARKER" not in sheet.words


def test_the_card_on_a_bow_leads_a_camera_to_its_page(visitor):
    put(visitor, BOW, (*INVENTED, ("agreed", {"weight": "45 lb", "at_draw": "28 in"})))
    page = open_bows(visitor, "#" + BOW)
    page.get_by_role("button", name="Tag card for print").click()
    expect(page.locator(".rb-tag-card .rb-tag")).to_have_text("31")
    expect(page.locator(".rb-tag-card .rb-paper-square svg")).to_be_visible()
    assert square_on_paper(page) == page.url
    for form in FORMATS:
        [sheet] = printed(page, form)
        assert sheet.is_whole()
        assert "45 lb at 28 in" in sheet.words


def plain(text):
    """Return a text without what a printer sets as it likes: its spaces and the ends of its lines."""
    return "".join(text.split())


def told(page, selector):
    return [plain(each) for each in page.locator(selector).all_inner_texts()]


def test_a_calculator_prints_one_sheet_for_the_bench(lasting_visitor, calculator_id):
    """At most the two sides of one sheet: the answer with what was asked, and no chapter around it."""
    page = lasting_visitor.open_calculator("#units=imperial", calculator_id)
    page.locator(".rb-print:enabled").wait_for()
    address = page.url.partition("#")[0]
    said = told(page, ".rb-headline") + told(page, ".rb-outcome .rb-check")
    worked_from = told(page, ".rb-outcome .rb-table:not(:has(.rb-why), details details *) caption")
    for form in FORMATS:
        sides = printed(page, form)
        whole = plain(" ".join(side.words for side in sides))
        assert len(sides) <= 2
        assert all(side.is_whole() for side in sides)
        assert [each for each in said + worked_from if each not in whole] == []
        assert plain("Worked example of an invented bow. Printed") in whole
        assert plain("Figures that it was asked") in whole
        assert f"{address}#" in whole
        assert "Whatthispage" not in whole
        assert plain(sides[0].lines[-1]) not in (*HEADINGS, *worked_from)


def test_a_print_says_whose_figures_it_has_and_where_they_open_again(new_visitor):
    visitor = new_visitor(device_scale_factor=FINE)
    put(visitor)
    page = open_bar(visitor)
    choose(page)
    wait_for_state(page, "current")
    [side] = printed(page, "A4")
    assert "Bow 31 64 in recurve. Printed" in side.words
    assert "Brace height: 8 1/4 in" in side.words
    page.evaluate("window.print = () => document.body.dataset.printed = ''")
    page.locator(".rb-print").click()
    page.locator("body[data-printed]").wait_for()
    linked = square_on_paper(page)
    assert "upper=7+5/8+in" in linked
    other = new_visitor().open(linked.removeprefix(visitor.site_url))
    wait_for_state(other, "current")
    assert box(other, "lower").input_value() == "7 5/16 in"
    other.locator(".rb-print:enabled").wait_for(state="attached")  # else as a chapter
    [side] = printed(other, "Letter")
    assert "Trial. Printed" in side.words


def test_a_chapter_with_a_calculator_on_it_is_printed_as_a_chapter(visitor):
    page = visitor.open("tune/tiller/")
    page.locator(".rb-print:enabled").wait_for()
    sheets_of_paper = printed(page, "A4")
    assert len(sheets_of_paper) > 2
    assert "Printed" not in sheets_of_paper[0].words
