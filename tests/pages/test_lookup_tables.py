"""Look-up tables in the page: finding, sorting, links to rows, phones."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from calc.lookups import catalog
from tests.pages.reading import wait_for_stillness, wait_until

DESK = {"width": 1280, "height": 800}
PHONE = {"width": 390, "height": 844}
DOCS = Path(__file__).parents[2] / "docs"
PAGES = sorted(path.stem for path in (DOCS / "lookup").glob("*.md") if path.stem != "index")


def names(page):
    """Return the heads of the rows in sight."""
    return page.locator(".rb-lookup tbody tr:visible th")


def test_words_find_rows(visitor):
    page = visitor.open("lookup/grits/")
    page.get_by_label("Find in this table").first.fill("p400")
    expect(page.locator(".rb-lookup-count").first).to_contain_text("of 51 rows")
    expect(names(page).filter(has_text=re.compile("^P400$"))).to_have_count(1)
    page.get_by_label("Find in this table").first.fill("nothing like that")
    expect(page.locator(".rb-lookup-count").first).to_have_text("0 of 51 rows")
    expect(names(page)).to_have_count(0)


@pytest.mark.parametrize(("table", "asked", "wanted"), [
    ("drills", "F", ["F"]),
    ("drills", "#7", ["#7"]),
    ("drills", "1/32", ["1/32 in"]),
    ("drills", "letter F", ["F"]),
    ("threads", "10-24", ["#10-24 UNC"]),
    ("check-values", "brace", ["Two readings of brace height, ten minutes apart",
                               "Brace height over twenty shots"]),
    ("check-values", "fistmele", ["Two readings of brace height, ten minutes apart",
                                  "Brace height over twenty shots"]),
    ("check-values", "fiberglass left", ["Glass left on each face"]),
])
def test_rows_are_found_by_what_a_reader_types(lasting_visitor, table, asked, wanted):
    page = lasting_visitor.open(f"lookup/{table}/")
    page.get_by_label("Find in this table").first.fill(asked)
    expect(page.locator(".rb-lookup-count").first).to_contain_text("rows")
    expect(names(page)).to_have_text(wanted)


@pytest.mark.parametrize(("asked", "least"), [("P4", 2), ("0.25", 2), ("frac", 32)])
def test_a_word_that_is_still_being_typed_finds_what_begins_so(lasting_visitor, asked, least):
    page = lasting_visitor.open("lookup/grits/" if asked[0] == "P" else "lookup/drills/")
    page.get_by_label("Find in this table").first.fill(asked)
    expect(page.locator(".rb-lookup-count").first).to_contain_text("rows")
    assert names(page).count() >= least


def test_a_column_sorts_up_and_down(new_visitor):
    page = new_visitor(viewport=DESK).open("lookup/grits/")
    head = page.locator(".rb-lookup thead th", has_text="Mean grain size")
    head.get_by_role("button").click()
    expect(head).to_have_attribute("aria-sort", "ascending")
    expect(names(page).first).to_have_text("P5000")
    head.get_by_role("button").click()
    expect(head).to_have_attribute("aria-sort", "descending")
    expect(names(page).first).to_have_text("P12")


def test_a_phone_sorts_cards_by_a_list(visitor):
    page = visitor.open("lookup/exposure-limits/")
    page.get_by_label("Sort by").select_option(label="What, set by")
    expect(names(page).first).to_have_text("1-butanol, ACGIH TLV")
    page.get_by_label("Sort by").select_option(label="the table's own order")
    expect(names(page).first).to_have_text("wood dust, OSHA PEL")


def test_a_short_table_keeps_its_heads_on_a_phone(visitor):
    page = visitor.open("lookup/air-changes/")
    expect(page.get_by_role("button", name="99.9 % gone, min")).to_be_visible()


def test_a_link_leads_to_its_row(visitor):
    page = visitor.open("lookup/grits/#grits-p400")
    expect(page.locator("#grits-p400")).to_be_in_viewport()


@pytest.fixture(scope="module")
def page(lasting_visitor, name):
    """A page of tables, opened once for all that is looked at on it."""
    return lasting_visitor.open(f"lookup/{name}/")


@pytest.mark.parametrize("name", PAGES, scope="module")
def test_no_table_is_wider_than_a_phone(page):
    assert page.locator(".rb-lookup").count()
    page.locator(".rb-lookup[data-equipped]").first.wait_for()
    wait_for_stillness(page)
    wait_until(page, "document.documentElement.scrollWidth <= 390")


def test_every_table_stands_on_a_page():
    shown = " ".join(path.read_text("utf-8") for path in DOCS.rglob("*.md"))
    assert [id for id in catalog.IDS if not re.search(f"^::: table {id}$", shown, re.MULTILINE)] == []


def test_the_csv_is_saved(visitor):
    page = visitor.open("lookup/grits/")
    with page.expect_download() as waiting:
        page.get_by_role("link", name="This table as CSV").click()
    assert waiting.value.suggested_filename == "grits.csv"


def test_tables_reached_without_a_reload_have_their_tools(new_visitor):
    page = new_visitor(viewport=DESK).open("lookup/")
    page.locator(".md-content").get_by_role("link", name="Abrasive grades").click()
    expect(page.get_by_label("Find in this table").first).to_be_visible()


SHEET = re.compile(rb"/Type\s*/Page\b")
MARGINS = dict.fromkeys(("top", "bottom", "left", "right"), "10mm")


@pytest.mark.parametrize("name", PAGES, scope="module")
def test_every_table_is_printed_on_one_sheet_of_either_size(page):
    sheets = [len(SHEET.findall(page.pdf(format=size, margin=MARGINS))) for size in ("A4", "Letter")]
    assert sheets == [1, 1]


def test_two_taps_lead_from_any_page_to_a_table(new_visitor):
    page = new_visitor(viewport=PHONE).open("tune/weight/")
    page.locator("a.rb-look-up").click()
    table = page.locator(".md-content").get_by_role("link", name="Brace heights")
    table.click()
    expect(page.locator(".rb-lookup[data-lookup='brace-heights'] tbody tr").first).to_be_visible()
    page.locator("a.rb-look-up").click()
    expect(page.locator(".md-content").get_by_role("link", name="Glue table")).to_be_visible()
