"""Whatever way a reader moves about in a page, its figures stay; only a pasted link changes them."""

import re

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import PHONE
from tests.pages.reading import box, headline, type_into, wait_for_link, wait_for_state, wait_for_stillness

DESK = {"width": 1280, "height": 800}
NARROW_DRAWER = '.md-header__button[for="__drawer"]'
LATE_MS = 600
SEARCH_BOX = "input.md-search__input"


def by_contents(page) -> None:
    page.locator(".md-sidebar--primary .md-nav--secondary a.md-nav__link", has_text="Method").first.click()


def by_heading_link(page) -> None:
    page.locator("h2#method a.headerlink").evaluate("link => link.click()")


def by_skip_link(page) -> None:
    page.locator("a.md-skip").evaluate("link => link.click()")


def by_own_name_in_the_list_of_pages(page) -> None:
    page.locator(".md-sidebar--primary a.md-nav__link--active").last.evaluate("link => link.click()")


def by_back_and_forward(page) -> None:
    by_heading_link(page)
    page.go_back()
    page.go_forward()
    page.go_back()


def by_search(page) -> None:
    page.locator(SEARCH_BOX).click()
    page.locator(SEARCH_BOX).fill("")
    page.locator(SEARCH_BOX).press_sequentially("tiller")
    link = page.locator('.md-search-result__link[href*="calculators/tiller/?h=tiller"]').first
    link.evaluate("link => link.click()")
    expect(page.locator("#__search")).not_to_be_checked()


def by_drawer(page) -> None:
    page.set_viewport_size(PHONE)
    page.locator(NARROW_DRAWER).first.click()
    expect(page.locator("#__drawer")).to_be_checked()
    page.locator('.md-sidebar--primary a[href$="#method"]').first.evaluate("link => link.click()")
    expect(page.locator("#__drawer")).not_to_be_checked()


WAYS = [by_contents, by_heading_link, by_skip_link, by_own_name_in_the_list_of_pages, by_back_and_forward,
        by_search, by_drawer]


@pytest.mark.parametrize("come", ["typed", "linked", "came from another page"])
def test_figures_survive_every_way(new_visitor, come):
    visitor = new_visitor(viewport=DESK)
    if come == "linked":
        page = visitor.open_calculator("#upper=7+7/8+in")
    elif come == "typed":
        page = visitor.open_calculator()
    else:
        page = visitor.open("calculators/")
        page.wait_for_load_state("networkidle")
        page.locator('.md-content a[href$="tiller/"]').first.click()
        expect(page.locator(".rb-calculator[data-live]")).to_have_attribute("data-calculator", "tiller")
    if come != "linked":
        type_into(page, "upper", "7 7/8 in")
        wait_for_link(page, "upper=7+7/8")
    page.wait_for_load_state("networkidle")  # the theme has its list of pages
    wait_for_state(page, "current")
    said = headline(page).inner_text()
    page.locator(".rb-form").evaluate("form => form.dataset.same = ''")
    fetched = []
    page.on("request", lambda request: fetched.append(request.url) if "/tiller/" in request.url else None)
    for way in WAYS:
        for _ in range(2):
            way(page)
            wait_for_stillness(page)
            assert box(page, "upper").input_value() == "7 7/8 in", way.__name__
            assert headline(page).inner_text() == said, way.__name__
            assert page.locator(".rb-form[data-same]").count() == 1, way.__name__
    wait_for_link(page, "upper=7+7/8")
    page.wait_for_timeout(LATE_MS)  # for what must not come
    assert fetched == []
    assert box(page, "upper").input_value() == "7 7/8 in"
    assert page.locator(".rb-form[data-same]").count() == 1
    page.reload()
    expect(box(page, "upper")).to_have_value("7 7/8 in")


def test_a_jump_leads_to_its_place(new_visitor):
    page = new_visitor(viewport=DESK).open_calculator("#upper=7+7/8+in")
    page.wait_for_load_state("networkidle")
    for _ in range(2):
        by_contents(page)
        expect(page.locator("h2#method")).to_be_in_viewport()
        page.evaluate("window.scrollTo(0, 0)")
        expect(page.locator("h2#method")).not_to_be_in_viewport()


def test_a_way_back_does_not_bring_back_older_figures(new_visitor):
    page = new_visitor(viewport=DESK).open_calculator("#upper=7+1/2+in")
    page.wait_for_load_state("networkidle")
    by_heading_link(page)
    type_into(page, "upper", "7 3/4 in")
    wait_for_link(page, "upper=7+3/4")
    page.go_back()
    wait_for_link(page, "upper=7+3/4")
    expect(box(page, "upper")).to_have_value("7 3/4 in")


def test_a_link_pasted_over_the_address_is_taken(visitor):
    page = visitor.open_calculator("#upper=7+1/2+in")
    page.goto(visitor.site_url + "calculators/tiller/#upper=6+in")
    expect(box(page, "upper")).to_have_value("6 in")


def test_a_filter_typed_into_a_table_survives_a_jump(new_visitor):
    visitor = new_visitor(viewport=DESK)
    page = visitor.open("lookup/drills/")
    page.wait_for_load_state("networkidle")
    page.locator(".rb-lookup input").first.fill("1/4")
    page.locator("a.md-skip").evaluate("link => link.click()")
    expect(page).to_have_url(re.compile("#"))
    page.wait_for_timeout(LATE_MS)  # for what must not come
    expect(page.locator(".rb-lookup input").first).to_have_value("1/4")
