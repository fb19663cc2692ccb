"""A shared link arrives: what is fetched before its answer, and that nothing moves under the reader."""

import json

import pytest
from playwright.sync_api import expect

from scripts.measuring.link_to_answer import WATCH, address_of, asked_for
from tests.pages.reading import headline, type_into, wait_for_state, wait_until
from tests.pages.test_engine import crash

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
    assert any(each.endswith(f"/{calculator}.json") for each in asked)
    for late in (".woff2", "/javascripts/", "bow-bar"):
        assert not [each for each in asked if late in each]


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
