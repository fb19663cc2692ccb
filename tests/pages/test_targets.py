"""What is pressed is large enough for a thumb in a glove, in drawer and search too.

44 CSS pixels: WCAG 2.2, success criterion 2.5.5, which excepts links within a sentence. `test_axe.py` opens
every page, and looks at it for this too.
"""

import pytest

from tests.pages.reading import wait_for_stillness

LEAST = 44
TOO_SMALL = """least => {
  const pressed = "a[href], button, summary, input:not([type=hidden]), select, textarea, label";
  const words = (each) => each.textContent.replace(/\\s/g, "");
  const inSentence = (each) => {
    const block = each.closest("p, li, td, th, dd, dt, div, section");
    return each.matches("a") && getComputedStyle(each).display === "inline" && words(block) !== words(each);
  };
  const sizeOf = (each) => {
    const own = each.getBoundingClientRect();
    const label = (each.matches("[type=radio], [type=checkbox]") ? each.labels[0] : each)
      .getBoundingClientRect();
    return [Math.max(own.width, label.width), Math.max(own.height, label.height)];
  };
  const small = (each) => Math.min(...sizeOf(each)) < least - 0.5;
  const looked = [...document.querySelectorAll(pressed)].filter((each) => {
    const { width, right, left } = each.getBoundingClientRect();
    return each.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && width > 1
      && right > 0 && left < innerWidth && !inSentence(each);
  });
  if (looked.length < 5) return ["nothing to press was found"];
  return looked.filter((each) => small(each) && !(each.control && !small(each.control)))
    .map((each) => `${each.outerHTML.slice(0, 80)} ${sizeOf(each)}`);
}"""


def test_what_is_pressed_in_the_drawer_and_in_the_search_is_large_enough(visitor):
    page = visitor.open("tune/weight/")
    page.locator("button.md-header__button").first.wait_for(state="attached")
    page.get_by_role("button", name="Menu").click()
    wait_for_stillness(page)
    assert page.evaluate(TOO_SMALL, LEAST) == []
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Search", exact=True).click()
    page.get_by_role("textbox", name="Search").press_sequentially("tiller")
    page.locator(".md-search-result__link").first.wait_for()
    wait_for_stillness(page)
    assert page.evaluate(TOO_SMALL, LEAST) == []


@pytest.mark.parametrize("address", ["calculators/draw-curve/", "calculators/finish/"])
def test_no_phone_enlarges_the_page_when_a_box_is_entered(visitor, address):
    page = visitor.open(address)
    sizes = page.locator(".rb-form :is(input[type=text], select)").evaluate_all(
        "boxes => boxes.map((each) => parseFloat(getComputedStyle(each).fontSize))")
    assert len(sizes) > 3
    assert min(sizes) >= 16
