"""Reading a calculator's page as its reader sees it."""

import io
import re
import time
from collections.abc import Callable

import zxingcpp
from PIL import Image
from playwright.sync_api import Error, Locator, Page, expect

PATIENCE_MS = 45_000  # what is slow on a busy machine is not wrong
LOOK_AGAIN_MS = 50
STILL = """async () => {
  for (let frame = 0; frame < 3; frame += 1) await new Promise(requestAnimationFrame);
  const ends = ({ effect }) => effect.getComputedTiming().endTime !== Infinity; // moving pictures have none
  return !document.getAnimations().some((each) => each.playState === "running" && ends(each));
}"""

FIELD = '.rb-field[data-field="{}"]'


def box(page: Page, field: str):
    """Return the control of a field."""
    return page.locator(FIELD.format(field)).locator("input, select").first


def problem(page: Page, field: str):
    """Return the place beside a field that says what is wrong with it."""
    return page.locator(FIELD.format(field)).locator(".rb-error")


def type_into(page: Page, field: str, text: str) -> None:
    """Replace the text of a field, key by key as a reader would, and go on to the next field."""
    control = box(page, field)
    control.fill("")
    control.press_sequentially(text)
    control.blur()


def result(page: Page, id: str) -> str:
    return page.locator(f'[data-result="{id}"] dd').inner_text()


def headline(page: Page):
    return page.locator(".rb-headline")


def chart_seen(place: Locator) -> Locator:
    """Go to the place of a chart, which is drawn once somebody comes near it; returns what is drawn there."""
    place.scroll_into_view_if_needed()
    expect(place.locator("canvas")).to_be_visible()
    return place.locator("canvas")


def wait_for_state(page: Page, state: str) -> None:
    """Wait until the outcome is in this state and, unless it is to be waiting, holds the newest answer.

    An outcome stays current while the next figure is under way; the calculator is busy from the first key.
    """
    if state != "waiting":
        expect(page.locator(".rb-calculator")).to_have_attribute("data-state", "settled")
    expect(page.locator(".rb-outcome")).to_have_attribute("data-state", state)


def unfold(page: Page) -> None:
    """Show the form behind the answer to a link that this browser did not make."""
    folded = page.locator(".rb-sent button[aria-expanded=false]")
    if folded.is_visible():
        folded.click()


def open_folds(page: Page) -> None:
    """Unfold all that the form keeps folded, and every row of its tables."""
    page.evaluate("""() => {
      for (const fold of document.querySelectorAll(".rb-form :is(.rb-fold, .rb-list)")) fold.open = true;
      for (const table of document.querySelectorAll("[data-short]")) table.removeAttribute("data-short");
    }""")


def wait_for_link(page: Page, part: str) -> None:
    """Wait until the address holds what was typed last; it follows with a short delay."""
    expect(page).to_have_url(re.compile(re.escape(part)))


def wait_until(page: Page, so: Callable[[], object] | str, argument: object = None,
               patience_ms: float = PATIENCE_MS) -> None:
    """Look again until something is so: a function of the test, or an expression or promise in the page."""
    look = so if callable(so) else lambda: page.evaluate(so, argument)
    end = time.monotonic() + patience_ms / 1000
    while time.monotonic() < end:
        try:
            if look():
                return
        except Error:
            pass  # the page is just being replaced
        page.wait_for_timeout(LOOK_AGAIN_MS)
    raise AssertionError(f"not within {patience_ms / 1000} s: {so}")


def wait_for_stillness(page: Page) -> None:
    """Wait until what follows a change of size, place or colours has been drawn and nothing moves."""
    wait_until(page, STILL)


def read_square(square: Locator) -> str:
    """Return the text that a camera reads from a square on the screen."""
    square.wait_for()
    found = zxingcpp.read_barcodes(Image.open(io.BytesIO(square.screenshot())))
    assert len(found) == 1
    return found[0].text
