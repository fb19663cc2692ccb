"""A shared link arrives: what is fetched before its answer, and that nothing moves under the reader."""

import json
import re

import pytest
from playwright.sync_api import expect

from scripts.measuring.link_to_answer import WATCH, address_of, asked_for
from tests.pages.reading import headline, type_into, wait_for_state, wait_until
from tests.pages.test_engine import crash, engines_of

SHIFTS = """
    globalThis.shifts = [];
    new PerformanceObserver((list) => {
      const own = list.getEntries().filter(({ hadRecentInput }) => !hadRecentInput);
      shifts.push(...own.map(({ value }) => value));
    }).observe({ type: "layout-shift", buffered: true });
"""
MOST_SHIFT = 0.05
"""Half of what counts as good, 0.1 (common practice); the bar of bows takes 0.02."""
FONTS_ARE_THERE = """
    () => [...document.fonts].filter(({ family, status }) =>
      status === "loaded" && /Besley|Hyperlegible/.test(family)).length > 1
"""
LAPTOP = {"width": 1280, "height": 800}
PAGE_SCRIPT = re.compile(r"/js-[^/]*/page\.mjs")
HEARD = "() => window.startedEngine && window.startedEngine.heard.some((text) => 'ready' in JSON.parse(text))"


def arrive(visitor, address):
    """Open an address; return its page once the site's fonts are there."""
    visitor.context.add_init_script(SHIFTS)
    visitor.context.add_init_script(WATCH)
    page = visitor.open(address)
    page.wait_for_function(FONTS_ARE_THERE)
    return page


@pytest.mark.parametrize("calculator", ["tiller", "arrow-match", "inspection"])
def test_no_font_and_nothing_of_the_theme_is_asked_for_before_the_answer(visitor, calculator):
    page = arrive(visitor, address_of(calculator))
    asked = asked_for(page)
    assert f"/calculators/{calculator}/" in asked
    assert any(each.endswith(f"/{calculator}.pack") for each in asked)
    for late in (".woff2", "/javascripts-", "bow-bar"):
        assert not [each for each in asked if late in each]


def test_fonts_come_behind_the_theme_which_would_have_the_page_laid_out_for_each(visitor):
    page = arrive(visitor, address_of("tiller"))
    asked = page.evaluate("performance.getEntriesByType('resource').map(({ name }) => name)")
    [theme] = [place for place, name in enumerate(asked) if "/bundle." in name]
    assert all(place > theme for place, name in enumerate(asked) if name.endswith(".woff2"))
    assert page.locator("link[rel=stylesheet]").first.get_attribute("href").startswith(visitor.site_url)


def test_fonts_come_at_once_where_no_answer_is_awaited(visitor):
    page = arrive(visitor, "calculators/tiller/")
    assert page.evaluate("document.documentElement.dataset.plain") is None


@pytest.mark.parametrize("address", [address_of("tiller"), "calculators/tiller/", ""])
@pytest.mark.parametrize("viewport", [None, LAPTOP])
def test_nothing_moves_when_answer_and_fonts_come(new_visitor, address, viewport):
    page = arrive(new_visitor(**({"viewport": viewport} if viewport else {})), address)
    page.wait_for_timeout(500)  # for what comes behind the fonts
    assert sum(page.evaluate("shifts")) <= MOST_SHIFT


def test_after_a_crash_the_whole_interpreter_goes_on(visitor):
    fetched = []
    visitor.context.on("request", lambda request: fetched.append(request.url))
    page = visitor.open_calculator("#upper=7+in")
    names = json.loads(page.locator('meta[name="rebrace-engine"]').get_attribute("content"))
    assert not [each for each in fetched if each.endswith(names["whole"])]
    crash(page)
    type_into(page, "upper", "7 1/8")
    wait_for_state(page, "current")
    expect(headline(page)).to_be_visible()
    wait_until(page, lambda: [each for each in fetched if each.endswith(names["whole"])])


@pytest.fixture
def held_page(visitor, site_url):
    """Return a shared link's page whose engine is ready, with what lets its own script come."""
    held = []
    visitor.context.route(PAGE_SCRIPT, lambda route: held.append(route))
    page = visitor.page
    page.goto(f"{site_url}calculators/tiller/#upper=7+1/2+in&lower=7+in", wait_until="commit")
    page.wait_for_function(HEARD)

    def release():
        while held:
            held.pop().continue_()
        visitor.context.unroute(PAGE_SCRIPT)

    return page, release


def test_the_engine_of_a_link_is_ready_before_the_page_s_own_script_comes(held_page):
    page, release = held_page
    [started] = engines_of(page)
    release()
    wait_for_state(page, "current")
    expect(headline(page)).to_contain_text("1/2 in larger")
    assert engines_of(page) == [started]


def test_an_engine_that_is_lost_before_the_page_s_own_script_comes_is_started_again(held_page):
    page, release = held_page
    crash(page)
    page.wait_for_function("() => window.startedEngine === null")
    release()
    wait_for_state(page, "current")


def test_without_inputs_in_its_address_a_page_starts_no_engine_by_itself(visitor):
    page = arrive(visitor, "calculators/tiller/")
    assert page.evaluate("window.startedEngine") is None
