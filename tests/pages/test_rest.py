"""What comes last on a shared link's page: its fonts, then what stands below the first screens, in pieces."""

import re

import pytest
from playwright.sync_api import expect

from scripts.measuring.link_to_answer import address_of
from tests.pages.reading import box, chart_seen, wait_for_state, wait_for_stillness, wait_until

FONTS = re.compile(r"\.woff2")
PLAIN = "document.documentElement.dataset.plain"
WHOLE = f"{PLAIN} === undefined"
HEADINGS = "getComputedStyle(document.querySelector('h1')).fontFamily"
LEFT_OUT = """() => [...document.querySelectorAll(":is(.rb-calculator ~ *, .rb-behind > *, .md-footer) > *")]
  .filter((each) => each.checkVisibility() && !each.checkVisibility({ contentVisibilityAuto: true }))
  .length"""
"""How many parts of the page stand below and are not laid out yet."""
CUT = """() => [...document.querySelectorAll(".rb-outcome .rb-table")]
  .filter((each) => each.scrollWidth > each.clientWidth).map((each) => each.textContent)"""
WRITTEN = """
    globalThis.written = [];
    const { fillText } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.fillText = function (...said) {
      written.push(this.font);
      return fillText.apply(this, said);
    };
"""
"""Notes in what fonts a canvas is written on."""
STARTED = re.compile(r"/rest-[^/]*\.mjs")


@pytest.fixture
def held(visitor):
    """Return an answered page whose fonts do not come, with what lets them come."""
    routes = []
    visitor.context.route(FONTS, lambda route: routes.append(route))
    page = visitor.open(address_of("weight-reduction"))
    wait_for_state(page, "current")
    wait_until(page, lambda: len(routes) > 1)

    def release():
        for route in routes:
            route.continue_()

    return page, release


def test_what_stands_below_is_laid_out_behind_the_fonts_and_they_come_at_once(held):
    page, release = held
    assert page.evaluate(PLAIN) == "theme"
    assert "stand-in" in page.evaluate(HEADINGS)
    assert not page.evaluate(HEADINGS).startswith("Besley")
    assert page.evaluate(LEFT_OUT) > 10
    release()
    wait_until(page, WHOLE)
    assert page.evaluate(HEADINGS).startswith("Besley")
    assert page.evaluate(LEFT_OUT) == 0
    assert page.locator("[style*=content-visibility]").count() == 0


def test_no_table_of_an_answer_is_cut_once_it_is_laid_out(held):
    page, release = held
    release()
    wait_until(page, WHOLE)
    wait_for_stillness(page)
    assert page.locator(".rb-table--cards").count() > 0
    assert page.evaluate(CUT) == []


def test_charts_are_written_in_the_page_s_own_font(visitor):
    visitor.context.add_init_script(WRITTEN)
    page = visitor.open(address_of("weight-reduction"))
    wait_for_state(page, "current")
    charts = page.locator(".rb-outcome .rb-plot")
    for chart in charts.all():
        chart_seen(chart)
    assert charts.count() == 2
    wait_until(page, "written.length > 20")
    assert [font for font in page.evaluate("written") if '"Atkinson Hyperlegible Next"' not in font] == []


def test_a_chart_is_drawn_once_somebody_comes_near_and_all_are_for_paper(visitor):
    page = visitor.open(address_of("weight-reduction"))
    wait_for_state(page, "current")
    wait_until(page, WHOLE)
    wait_for_stillness(page)
    drawn = page.locator(".rb-outcome canvas")
    assert page.locator(".rb-outcome .rb-plot").last.bounding_box()["y"] > 2 * page.viewport_size["height"]
    expect(drawn).to_have_count(0)
    page.evaluate("window.dispatchEvent(new Event('beforeprint'))")
    assert drawn.count() == 2
    page.locator(".rb-sent button").click()
    box(page, "weight_wanted").fill("46 lb")
    page.keyboard.press("Enter")
    expect(page.locator(".rb-outcome[data-own]")).to_contain_text("46")
    expect(drawn).to_have_count(2)


def test_what_a_reader_scrolls_to_is_there_before(held):
    page, release = held
    source = page.locator(".rb-sources > li").first
    source.scroll_into_view_if_needed()
    wait_until(page, lambda: source.evaluate("each => each.checkVisibility({ contentVisibilityAuto: true })"))
    release()


def test_paper_gets_all_of_it_before(held):
    page, release = held
    page.emulate_media(media="print")
    assert page.evaluate(LEFT_OUT) == 0
    release()


def test_a_jump_leads_to_its_place_and_stays_there(held):
    page, release = held
    place = page.locator("h2#sources")
    page.locator("h2#sources a.headerlink").evaluate("link => link.click()")
    expect(place).to_be_in_viewport()
    before = place.bounding_box()["y"]
    assert page.evaluate(PLAIN) is None
    release()
    page.wait_for_timeout(500)
    expect(place).to_be_in_viewport()
    assert abs(place.bounding_box()["y"] - before) < page.viewport_size["height"] / 4


def test_a_page_whose_last_script_is_lost_has_its_fonts_and_all_of_its_text(visitor):
    visitor.context.route(STARTED, lambda route: route.abort())
    page = visitor.open(address_of("tiller"))
    wait_for_state(page, "current")
    wait_until(page, WHOLE)
    assert page.evaluate(HEADINGS).startswith("Besley")
    assert page.evaluate(LEFT_OUT) == 0
    visitor.complaints.clear()


def test_the_keyboard_reaches_a_table_that_scrolls_sideways_as_long_as_it_does(visitor):
    page = visitor.open(address_of("photograph"))
    wait_until(page, WHOLE)
    box = page.locator(".md-typeset__scrollwrap").first
    for width in ("60em", "", "60em"):
        box.locator("table").evaluate("(table, width) => table.style.minWidth = width", width)
        if width:
            expect(box).to_have_attribute("tabindex", "0")
        else:
            expect(box).not_to_have_attribute("tabindex", "0")
