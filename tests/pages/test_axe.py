"""What axe-core finds on any page, by all its rules: nothing, in both schemes and at several widths."""

from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import PHONE
from tests.pages.reading import wait_for_state, wait_for_stillness, wait_until
from tests.pages.walked import addresses

AXE = (Path(__file__).parents[2] / "node_modules/axe-core/axe.min.js").read_text()
RULES_OF_COLOUR = ("color-contrast", "link-in-text-block")
WIDE = {"width": 1280, "height": 844}
OF_EVERY_KIND = ("", "calculators/tiller/", "tune/weight/", "lookup/", "bows/")


@pytest.mark.parametrize("address", addresses())
def test_no_page_has_a_fault(lasting_visitor, address):
    """On a phone by all rules, on a laptop by those that its width bears on: its colours are the same."""
    page = lasting_visitor.page
    page.set_viewport_size(PHONE)
    page.emulate_media(color_scheme="light")
    lasting_visitor.open(address)
    page.locator("button.md-header__button").first.wait_for(state="attached")
    page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")
    assert faults(page) == []
    assert faults_in_the_dark(page) == []
    page.set_viewport_size(WIDE)
    assert faults(page, but=RULES_OF_COLOUR) == []


@pytest.mark.parametrize("width", [360, 768, WIDE["width"]])
@pytest.mark.parametrize("address", OF_EVERY_KIND)
def test_no_kind_of_page_has_a_fault_at_any_width(new_visitor, address, width):
    """Other widths have other buttons and lists around the page, but the same ones on every page."""
    page = new_visitor(viewport={"width": width, "height": 844}).open(address)
    page.locator("button.md-header__button").first.wait_for(state="attached")
    assert faults(page) == []
    assert faults_in_the_dark(page) == []


def test_no_calculator_has_a_fault_with_an_answer_and_with_what_is_wrong(visitor, calculator_id):
    page = visitor.open_calculator("#units=metric", calculator_id)
    wait_for_state(page, "current")
    assert faults(page, ".rb-calculator") == []
    boxes = page.locator(".rb-form input[type=text]:visible")
    if boxes.count() == 0:
        return  # a list to tick has nothing to mistype
    boxes.first.fill("abc")
    page.keyboard.press("Enter")
    expect(page.locator(".rb-problems")).to_be_focused()
    assert faults(page, ".rb-calculator") == []
    page.emulate_media(color_scheme="dark")
    assert faults(page, ".rb-calculator", RULES_OF_COLOUR) == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", OF_EVERY_KIND)
def test_no_page_has_a_fault_in_colours_that_the_device_forces(visitor, address, scheme):
    visitor.page.emulate_media(forced_colors="active", color_scheme=scheme)
    page = visitor.open(address)
    page.locator("button.md-header__button").first.wait_for(state="attached")
    assert page.evaluate("matchMedia('(forced-colors: active)').matches")
    found = faults(page)  # axe-core reads the site's own letters' colours there, which nobody sees
    assert [fault for fault in found if not fault.startswith("color-contrast: ")] == []


def faults(page, part: str = "html", rules: tuple[str, ...] = (), but: tuple[str, ...] = ()) -> list[str]:
    """Return what axe-core finds in a part of the page, by all its rules or by some."""
    wait_until(page, "width => innerWidth === width", page.viewport_size["width"])
    wait_for_stillness(page)  # colours on their way are neither the one nor the other
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE)
    options = {"resultTypes": ["violations"], **({"runOnly": rules} if rules else {}),
               "rules": {each: {"enabled": False} for each in but}}
    found = page.evaluate("([part, options]) => axe.run(part, options)", [part, options])
    return [f"{each['id']}: {each['nodes'][0]['target']}" for each in found["violations"]]


def faults_in_the_dark(page) -> list[str]:
    """Return the faults of the dark scheme; it differs from the light one in nothing but colours."""
    page.emulate_media(color_scheme="dark")
    return faults(page, rules=RULES_OF_COLOUR)
