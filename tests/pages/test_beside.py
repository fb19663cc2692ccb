"""How far it is from the first field to the answer: below on a phone, beside it from a laptop's width up."""

import pytest

from tests.pages.conftest import PHONE
from tests.pages.reading import wait_for_stillness, wait_until

PHONE_SCREENS = 1.5
WIDE = [(1000, 700), (1280, 800), (1680, 1050)]
LAID_OUT = """() => {
  const box = (selector) => document.querySelector(selector).getBoundingClientRect();
  const [form, answer, behind] = [".rb-form", ".rb-answer", ".rb-behind"].map(box);
  const first = [...document.querySelectorAll(".rb-form .rb-field")].find((each) => each.offsetParent);
  return {
    beside: form.right <= answer.left,
    behind: behind.top >= Math.max(form.bottom, answer.bottom) && behind.left <= form.left + 1,
    screens: (box(".rb-headline").top - first.getBoundingClientRect().top) / innerHeight,
    overflows: document.documentElement.scrollWidth > innerWidth,
  };
}"""
CLEAR = """() => {
  const box = (selector) => document.querySelector(selector).getBoundingClientRect();
  return Math.max(box(".rb-form").bottom, box(".rb-told").bottom) <= box(".rb-behind").top
    && box(".rb-behind").bottom <= box(".rb-cautions").top;
}"""
ANSWER_IN_SIGHT = """(control) => {
  const head = document.querySelector(".md-header").getBoundingClientRect().bottom;
  const isSeen = (element) => {
    const { top, bottom } = element.getBoundingClientRect();
    return top >= head && bottom <= innerHeight + 1;
  };
  const headline = document.querySelector(".rb-headline");
  const bar = document.querySelector(".rb-peek:not(.rb-peek--resting)");
  const verdict = document.querySelector(".rb-check:not(.rb-ok)") ?? headline;
  const isSaid = () => bar && isSeen(bar) && bar.textContent.includes(headline.textContent);
  return isSeen(control) && (isSeen(verdict) || isSaid());
}"""


def opened(visitor, address):
    """Return a page with a calculator as its reader finds it, with its folds shut."""
    page = visitor.open(address)
    page.locator(".rb-calculator[data-live]").wait_for()
    return page


@pytest.fixture(scope="module")
def calculator(lasting_visitor, calculator_id):
    """A calculator with its folds shut, opened once on a phone for all that is measured of it."""
    return opened(lasting_visitor, f"calculators/{calculator_id}/")


def resize(page, size):
    page.set_viewport_size(size)
    wait_until(page, "({ width }) => innerWidth === width", size)
    wait_for_stillness(page)


def test_on_a_phone_the_answer_follows_within_a_screen_and_a_half(calculator):
    resize(calculator, PHONE)
    assert calculator.evaluate(LAID_OUT)["screens"] <= PHONE_SCREENS


def test_the_answer_stands_beside_the_form_within_one_screen(calculator):
    for width, height in WIDE:
        resize(calculator, {"width": width, "height": height})
        wait_until(calculator, "() => document.documentElement.scrollWidth <= innerWidth")
        laid = calculator.evaluate(LAID_OUT)
        assert laid["beside"], (width, laid)
        assert laid["behind"], (width, laid)
        assert laid["screens"] <= 1, (width, laid)


@pytest.mark.parametrize(("id", "typed"), [
    ("tracking", "#upper_offset_tip=1/32+in"), ("weight-reduction", "#weight_wanted=46+lb"),
])
def test_the_answer_stays_in_sight_down_to_the_last_field(visitor, id, typed):
    page = visitor.open_calculator(typed, id)
    page.set_viewport_size({"width": 1280, "height": 800})
    controls = page.locator(".rb-form .rb-field :is(input, select):visible")
    for index in (0, controls.count() // 2, controls.count() - 1):
        control = controls.nth(index)
        control.evaluate("(control) => control.scrollIntoView({ block: 'center' })")
        wait_until(page, ANSWER_IN_SIGHT, control.element_handle())


def test_nothing_lies_over_what_stands_behind_the_answer(visitor):
    page = opened(visitor, "calculators/tiller/")
    page.set_viewport_size({"width": 1280, "height": 800})
    for part in (".rb-behind", ".rb-cautions"):
        page.locator(part).evaluate("(part) => part.scrollIntoView({ block: 'center' })")
        assert page.evaluate(CLEAR), part


def test_on_a_narrow_window_the_answer_follows_the_form(visitor):
    page = visitor.open_calculator()
    page.set_viewport_size({"width": 960, "height": 800})
    assert not page.evaluate(LAID_OUT)["beside"]
    wait_until(page, f"() => !({LAID_OUT})().overflows")  # the theme slides its drawer away
