"""What axe-core finds on any page, by all its rules: nothing, in both schemes and at three widths.

Each page is opened once, and looked at for what is too small for a thumb as well (`test_targets.py`).
"""

from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import PHONE
from tests.pages.reading import wait_for_state, wait_for_stillness, wait_until
from tests.pages.test_targets import LEAST, TOO_SMALL
from tests.pages.walked import addresses

AXE = (Path(__file__).parents[2] / "node_modules/axe-core/axe.min.js").read_text()
RULES_OF_COLOUR = ("color-contrast", "link-in-text-block")
RULES_OF_WIDTH = ("scrollable-region-focusable", "target-size", "landmark-unique", "aria-hidden-focus")
WIDE = {"width": 1280, "height": 844}
NARROW = {"width": 360, "height": 844}


@pytest.fixture(scope="module")
def opened(lasting_visitor, address):
    """A page as a phone shows it, with all that it folds away unfolded, opened once for both tests."""
    page = lasting_visitor.open(address)
    page.emulate_media(color_scheme="light")
    page.set_viewport_size(PHONE)
    page.locator("button.md-header__button").first.wait_for(state="attached")
    page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")
    return page


@pytest.mark.parametrize("address", addresses(), scope="module")
def test_what_is_pressed_is_large_enough_for_a_thumb(opened):
    wait_until(opened, "width => innerWidth === width", PHONE["width"])
    wait_for_stillness(opened)
    assert opened.evaluate(TOO_SMALL, LEAST) == []


@pytest.mark.parametrize("address", addresses(), scope="module")
def test_no_page_has_a_fault(opened):
    page = opened
    assert faults(page) == []
    assert faults_in_the_dark(page) == []
    page.set_viewport_size(NARROW)
    assert faults(page, rules=RULES_OF_WIDTH) == []
    page.set_viewport_size(WIDE)
    page.emulate_media(color_scheme="light")
    assert faults(page) == []


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


def faults(page, part: str = "html", rules: tuple[str, ...] = ()) -> list[str]:
    """Return what axe-core finds in a part of the page, by all its rules or by some."""
    wait_until(page, "width => innerWidth === width", page.viewport_size["width"])
    wait_for_stillness(page)  # colours on their way are neither the one nor the other
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE)
    options = {"resultTypes": ["violations"], **({"runOnly": rules} if rules else {})}
    found = page.evaluate("([part, options]) => axe.run(part, options)", [part, options])
    return [f"{each['id']}: {each['nodes'][0]['target']}" for each in found["violations"]]


def faults_in_the_dark(page) -> list[str]:
    """Return the faults of the dark scheme; it differs from the light one in nothing but colours."""
    page.emulate_media(color_scheme="dark")
    return faults(page, rules=RULES_OF_COLOUR)
