"""Keyboard, screen reader, small screens, paper, and no scripts at all."""

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import PHONE, visits
from tests.pages.reading import (
    box,
    chart_seen,
    headline,
    type_into,
    wait_for_state,
    wait_for_stillness,
    wait_until,
)

SAME_AS_PREBUILT = """async () => {
  const live = document.querySelector(".rb-outcome").cloneNode(true);
  for (const plot of live.querySelectorAll(".rb-plot")) {
    plot.replaceChildren();
    plot.removeAttribute("aria-hidden");
  }
  for (const link of live.querySelectorAll("a.rb-file")) {
    link.removeAttribute("href");
    link.removeAttribute("download");
  }
  for (const table of live.querySelectorAll(".rb-table")) {
    table.classList.remove("rb-table--cards");
    for (const cell of table.querySelectorAll("[data-label]")) cell.removeAttribute("data-label");
  }
  live.normalize();
  const text = await (await fetch(location.href)).text();
  const prebuilt = new DOMParser().parseFromString(text, "text/html").querySelector(".rb-outcome");
  const ends = document.createNodeIterator(prebuilt, NodeFilter.SHOW_TEXT); // the search index's
  for (let each; (each = ends.nextNode());) if (each.data === "\\n") each.remove();
  return live.children.length > 0 && live.children.length === prebuilt.children.length
    && [...live.children].every((child, index) => child.isEqualNode(prebuilt.children[index]));
}"""
PAGES = ["", "calculators/", "calculators/python/", "begin/", "safety/", "glossary/",
         "calculators/tiller/#upper=7+in&units=metric"]
PHONES = [390, 320]
WIDER = [768, 1280]
CUT_OFF = """() => {
  for (const details of document.querySelectorAll(".rb-outcome details")) details.open = true;
  const cut = [];
  const range = document.createRange();
  for (const box of document.querySelectorAll(".rb-outcome .rb-table, .rb-outcome .rb-values")) {
    const { left, right } = box.getBoundingClientRect();
    for (const cell of box.querySelectorAll("th, td, dd")) {
      range.selectNodeContents(cell);
      const text = range.getBoundingClientRect();
      if (text.width && (text.left < left - 0.5 || text.right > right + 0.5)) cut.push(cell.textContent);
    }
  }
  for (const box of document.querySelectorAll(".rb-form input[type=text]")) {
    if (box.offsetParent && box.scrollWidth > box.clientWidth) cut.push(box.name + " " + box.value);
  }
  return cut;
}"""
SCROLL_WIDTH = "document.documentElement.scrollWidth"
FITS = f"width => {SCROLL_WIDTH} <= width"
ALL_IN_SIGHT = f"() => ({CUT_OFF})().length === 0"


@pytest.fixture(scope="module")
def opened_page(lasting_visitor, address):
    return lasting_visitor.open(address)


@pytest.fixture(scope="module")
def opened_calculator(lasting_visitor, calculator_id):
    return lasting_visitor.open_calculator(id=calculator_id)


@pytest.fixture
def page(opened_page):
    """A page as a phone shows it, opened once for all tests of it."""
    return as_on_a_phone(opened_page)


@pytest.fixture
def calculator(opened_calculator):
    """A calculator with its example as a phone shows it, opened once for all tests of it."""
    page = as_on_a_phone(opened_calculator)
    page.get_by_role("button", name="Start again").click()
    wait_for_state(page, "current")
    return page


def as_on_a_phone(page):
    page.emulate_media(color_scheme="light")
    page.set_viewport_size(PHONE)
    return page


@pytest.mark.parametrize("address", PAGES, scope="module")
def test_no_page_scrolls_sideways(page):
    for width in PHONES + WIDER:
        widen(page, width)
        wait_until(page, FITS, width)


def test_the_live_example_is_the_prebuilt_one(calculator):
    assert calculator.evaluate(SAME_AS_PREBUILT)


def test_no_calculator_scrolls_sideways_and_no_figure_is_cut_off_on_a_phone(calculator):
    for system, others in (("Metric", WIDER), ("Imperial", [])):  # the last is what a new reader finds
        calculator.get_by_role("radio", name=system).check()
        wait_for_state(calculator, "current")
        for width in others:
            widen(calculator, width)
            wait_until(calculator, FITS, width)  # drawers slide away, charts take their width
        for width in PHONES:
            widen(calculator, width)
            wait_until(calculator, FITS, width)
            calculator.evaluate(CUT_OFF)  # opens what is folded
            wait_for_stillness(calculator)
            wait_until(calculator, ALL_IN_SIGHT)  # tables turn into cards once they have their new width


def widen(page, width: int) -> None:
    """Give the page another width, and wait until it has been drawn."""
    page.set_viewport_size({"width": width, "height": 800})
    wait_until(page, "width => innerWidth === width", width)
    wait_for_stillness(page)


@pytest.fixture(scope="module")
def without_scripts(browser, site_url):
    with visits(browser, site_url) as make:
        yield make(java_script_enabled=False)


def test_without_scripts_the_example_can_be_read(without_scripts, calculator_id):
    page = without_scripts.open(f"calculators/{calculator_id}/")
    expect(headline(page)).to_be_visible()
    expect(page.locator(".rb-form noscript p")).to_contain_text("need JavaScript")
    expect(page.get_by_role("button", name="Copy link")).to_be_hidden()
    expect(page.locator(".rb-unit[data-units=metric]").first).to_be_hidden()


def test_focus_is_visible(visitor):
    page = visitor.open_calculator()
    box(page, "upper").focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    expect(box(page, "upper")).to_be_focused()
    wait_until(page, "parseFloat(getComputedStyle(document.activeElement).outlineWidth) >= 2")


def test_the_headline_is_announced_once_typing_stops(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_state(page, "current")
    expect(page.get_by_role("status").filter(has_text=headline(page).inner_text())).to_have_count(1)


def test_paper_carries_inputs_and_result_but_no_buttons(visitor):
    page = visitor.open_calculator("#upper=7+1/2+in")
    page.emulate_media(media="print")
    expect(box(page, "upper")).to_be_visible()
    expect(headline(page)).to_be_visible()
    expect(page.locator(".rb-drawing").first).to_be_visible()
    expect(page.get_by_role("button", name="Copy link")).to_be_hidden()
    expect(page.locator(".md-header")).to_be_hidden()


def test_charts_follow_the_width_and_the_scheme(visitor):
    page = visitor.open_calculator("#upper=7+1/2+in")
    canvas = chart_seen(page.locator(".rb-plot").first)
    narrow = canvas.bounding_box()["width"]
    page.set_viewport_size({"width": 1000, "height": 800})
    wait_until(page, lambda: canvas.bounding_box()["width"] > narrow)
