"""The theme's drawer, its lists of pages, and moves between pages: by key, and read out."""

import re

import pytest
from playwright.sync_api import expect

from tests.pages.reading import wait_for_stillness, wait_until

STOPS = """() => {
  const stops = document.querySelectorAll("a[href], button, summary, input, select, textarea, [tabindex]");
  return [...stops].filter((each) => each.tabIndex >= 0 && !each.disabled && !each.closest("[inert]")
    && each.checkVisibility({ visibilityProperty: true }));
}"""
UNSEEN_STOPS = f"""() => ({STOPS})().filter((each) => {{
  const {{ left, right, width }} = each.getBoundingClientRect();
  return width === 0 || right <= 0 || left >= innerWidth;
}}).map((each) => each.outerHTML.slice(0, 90))"""
COVERED_STOPS = f"""() => ({STOPS})().filter((each) => {{
  each.focus();
  const {{ left, top, width, height }} = each.getBoundingClientRect();
  const above = document.elementFromPoint(left + width / 2, top + height / 2);
  return !each.contains(above) && !above?.contains(each);
}}).map((each) => each.outerHTML.slice(0, 90))"""
DRAWER = ".md-sidebar--primary"
FOCUSED = "() => document.activeElement.textContent.trim()"


@pytest.mark.parametrize("width", [360, 390, 768, 1024, 1280])
def test_no_stop_of_the_tab_key_is_out_of_sight(visitor, width):
    page = visitor.open("tune/weight/")
    page.set_viewport_size({"width": width, "height": 844})
    wait_for_menu(page)
    assert page.evaluate(f"({STOPS})().length") > 20
    assert page.evaluate(UNSEEN_STOPS) == []


def test_the_drawer_opens_by_key_holds_the_focus_and_gives_it_back(visitor):
    page = visitor.open("tune/weight/")
    wait_for_menu(page)
    menu = page.get_by_role("button", name="Menu")
    expect(menu).to_have_attribute("aria-expanded", "false")
    expect(page.locator(DRAWER)).to_have_css("content-visibility", "hidden")  # no reader waits for its layout
    menu.focus()
    page.keyboard.press("Space")
    expect(menu).to_have_attribute("aria-expanded", "true")
    expect(page.locator(DRAWER)).to_have_css("content-visibility", "visible")
    back = page.get_by_role("button", name="Tune: back")
    expect(back).to_be_focused()
    wait_for_stillness(page)
    assert page.evaluate(COVERED_STOPS) == []
    back.press("Enter")
    expect(page.get_by_role("button", name="Tune", exact=True)).to_be_focused()
    wait_for_stillness(page)
    assert page.evaluate(COVERED_STOPS) == []
    page.get_by_role("button", name="Repair", exact=True).press("Enter")
    expect(page.get_by_role("button", name="Repair: back")).to_be_focused()
    page.keyboard.press("Escape")
    expect(menu).to_be_focused()
    expect(menu).to_have_attribute("aria-expanded", "false")
    page.keyboard.press("Tab")
    expect(page.locator(".md-option:focus")).to_have_count(1)


@pytest.mark.parametrize("width", [390, 1000, 1219, 1280])
def test_what_a_page_holds_is_listed_at_any_width(visitor, width):
    visitor.page.set_viewport_size({"width": width, "height": 844})
    page = visitor.open("tune/weight/")
    wait_for_menu(page)
    menu = page.get_by_role("button", name="Menu")
    if menu.is_visible():
        menu.click()
        page.get_by_role("button", name="Bringing the weight down", exact=True).click()
    contents = page.get_by_role("navigation", name="Table of contents")
    link = contents.get_by_role("link", name="5. Smaller batches")
    wait_for_stillness(page)
    expect(link).to_be_in_viewport()
    link.click()
    expect(page).to_have_url(re.compile("#5-smaller-batches$"))


def test_the_search_opens_by_key(visitor):
    page = visitor.open()
    wait_for_menu(page)
    page.get_by_role("button", name="Search", exact=True).press("Enter")
    expect(page.get_by_role("textbox", name="Search")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.get_by_role("button", name="Search", exact=True)).to_be_focused()
    page.get_by_role("button", name="Search the book").press("Enter")
    expect(page.get_by_role("textbox", name="Search")).to_be_focused()


def test_a_move_between_pages_is_read_out_and_takes_the_focus_along(visitor):
    page = visitor.open("tune/weight/")
    wait_for_menu(page)
    page.get_by_role("link", name="Look up").first.click()
    wait_until(page, f"({FOCUSED})().startsWith('Look up')")
    expect(page.locator("body > [role=status]")).to_have_text("Look up - Rebrace")
    page.go_back()
    wait_until(page, f"({FOCUSED})().startsWith('Bringing the weight down')")
    expect(page.locator("body > [role=status]")).to_have_text("Bringing the weight down - Rebrace")


def test_landmarks_have_names_of_their_own(visitor):
    page = visitor.open("calculators/tiller/")
    page.set_viewport_size({"width": 1280, "height": 844})
    wait_for_menu(page)
    for name in ("Inspect", "Tune", "Calculators", "Look up"):
        expect(page.get_by_role("navigation", name=name, exact=True, include_hidden=True)).to_have_count(1)


def test_the_first_screen_of_a_phone_holds_the_search_and_what_can_hurt(visitor):
    page = visitor.open()
    wait_for_menu(page)
    search, danger = page.get_by_role("button", name="Search the book"), page.locator(".admonition.danger")
    for part in (search, danger.first):
        box = part.bounding_box()
        assert box["y"] + box["height"] <= page.viewport_size["height"]


def test_the_way_to_the_top_covers_nothing(visitor):
    page = visitor.open("tune/weight/")
    wait_for_menu(page)
    page.evaluate("scrollTo(0, 3000)")
    page.evaluate("scrollTo(0, 2000)")  # on a way up the theme lays its button over the text
    expect(page.locator(".md-top")).to_have_count(0)
    page.get_by_role("link", name="Back to top").click()
    wait_until(page, "scrollY === 0")


def wait_for_menu(page) -> None:
    """Wait until the theme's labels are buttons."""
    page.locator("button.md-header__button[for=__drawer]").wait_for(state="attached")
    wait_for_stillness(page)
