"""How an answer is read: what is worked by first, numbers whole, forced colours, and listened to."""

import pytest
from playwright.sync_api import expect

from calc import catalog
from tests.pages.reading import box, wait_for_state, wait_for_stillness, wait_until

BROKEN = """() => [...document.querySelectorAll(".rb-amount")]
  .filter((each) => each.getClientRects().length > 1).map((each) => each.textContent)"""
PLAIN_POWERS = r"""() => [...document.querySelectorAll(".rb-outcome :is(dd, td, .rb-amount)")]
  .filter((each) => /\d (?:\w+\/)?(?:m|ft|in|mm)[23]\b/.test(each.textContent))
  .map((each) => each.textContent)"""
SIZES = """tiles =>
  tiles.map((each) => [each.dataset.result, parseFloat(getComputedStyle(each.lastElementChild).fontSize)])"""
HEARD = """() => {
  window.heard = [];
  const place = document.querySelector(".rb-calculator > .rb-spoken");
  new MutationObserver(() => window.heard.push(place.textContent)).observe(place, { childList: true });
}"""


@pytest.fixture(scope="module")
def calculator(lasting_visitor, calculator_id):
    """A calculator with its example's answer in metric units, opened once for all that is read of it."""
    return lasting_visitor.open_calculator("#units=metric", calculator_id)


def test_what_is_worked_by_stands_first_and_large(calculator, calculator_id):
    sizes = calculator.locator(".rb-values > :not(.rb-goes-on, [data-result=profile])").evaluate_all(SIZES)
    acted_on = [id for id in catalog.find(calculator_id).acted_on if id in dict(sizes)]
    assert [id for id, _ in sizes][:len(acted_on)] == acted_on
    large = [size for id, size in sizes if id in acted_on]
    others = [size for id, size in sizes if id not in acted_on]
    assert min(large, default=99) > max(others, default=0)


def test_no_number_is_parted_from_its_unit_and_powers_are_raised(calculator):
    for system in ("Metric", "Imperial"):
        calculator.get_by_role("radio", name=system).check()
        wait_for_state(calculator, "current")
        wait_for_stillness(calculator)
        assert calculator.locator(".rb-values dd").count()
        assert calculator.evaluate(BROKEN) == [], system
        assert calculator.evaluate(PLAIN_POWERS) == [], system


def test_nothing_is_read_out_between_two_keys(visitor):
    page = visitor.open_calculator("#upper=7+5/8+in&lower=7+5/16+in")
    expect(page.locator(".rb-calculator > .rb-spoken")).not_to_be_empty()
    page.evaluate(HEARD)
    box(page, "upper").fill("")
    box(page, "upper").press_sequentially("7 1/2 in", delay=120)
    wait_for_state(page, "current")
    assert page.evaluate("heard") == []
    wait_until(page, "heard.length === 1")
    expect(page.locator(".rb-calculator > .rb-spoken")).to_contain_text("The upper distance")


def test_forced_colours_reach_charts_and_drawings_and_leave_the_logo_its_ground(new_visitor):
    page = new_visitor(forced_colors="active").open_calculator(id="weight-reduction")
    look = "([selector, name]) => getComputedStyle(document.querySelector(selector))[name]"
    assert page.evaluate(look, [".md-nav__title .md-logo img", "backgroundColor"]) == "rgb(43, 37, 32)"
    line = page.evaluate("getComputedStyle(document.body).getPropertyValue('--rb-line-2')")
    assert line.strip() == "CanvasText"
    ink = page.evaluate(look, ["body", "color"])
    assert page.evaluate(look, [".rb-drawing text", "fill"]) == ink


def test_a_long_list_is_short_on_a_phone_and_each_row_unfolds(visitor):
    page = visitor.open("lookup/trade-woods/")
    page.locator(".rb-lookup[data-equipped]").wait_for()
    assert page.evaluate("document.body.scrollHeight") < 5 * page.viewport_size["height"]
    row = page.locator(".rb-lookup tbody tr").nth(3)
    expect(row.locator("td").first).to_be_hidden()
    row.get_by_role("link").first.click()
    expect(row.locator("td").first).to_be_visible()
    page.get_by_label("Find in this table").fill("maple")
    expect(page.locator(".rb-lookup tbody tr:visible td").first).to_be_visible()
    page.get_by_label("Find in this table").fill("")
    page.get_by_label("Sort by").select_option(index=2)
    expect(page.locator(".rb-lookup tbody tr").nth(7).locator("td:visible")).to_have_count(1)
