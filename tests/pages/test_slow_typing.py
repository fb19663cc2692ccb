"""Typing with pauses: what is not finished is no mistake, and nothing moves under the finger."""

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, problem, type_into, wait_for_state

TOP = "control => control.getBoundingClientRect().top"
PHONE_AND_DESK = {"phone": {"width": 390, "height": 844}, "desk": {"width": 1280, "height": 800}}
ONE_PAUSE_MS = 5_000
TOO_LONG_A_PAUSE_MS = 11_000


@pytest.fixture
def bench(visitor):
    """A tiller page of somebody's own, on which time stands still between keys."""
    visitor.page.clock.install()
    page = visitor.open_calculator("#upper=7+in&lower=7+1/4+in")
    page.clock.pause_at(page.evaluate("Date.now()") + 5_000)
    return page


def key_in(page, field: str, text: str) -> None:
    box(page, field).press_sequentially(text)
    expect(page.locator(".rb-calculator")).to_have_attribute("data-state", "settled")


def test_a_fraction_typed_slowly_is_no_mistake(bench):
    box(bench, "upper").fill("")
    key_in(bench, "upper", "7")
    before = headline(bench).inner_text()
    for keys in (" 3", "/"):
        key_in(bench, "upper", keys)
        bench.clock.run_for(ONE_PAUSE_MS)
        expect(problem(bench, "upper")).to_be_hidden()
        expect(bench.locator(".rb-problems")).to_be_hidden()
        expect(box(bench, "upper")).to_have_attribute("data-unfinished", "")
        assert box(bench, "upper").get_attribute("aria-invalid") is None
        expect(bench.locator(".rb-state")).to_have_text(
            "A figure is not finished yet. The result below belongs to the figures before your last change.")
        assert headline(bench).inner_text() == before
    key_in(bench, "upper", "16")
    wait_for_state(bench, "current")
    assert box(bench, "upper").get_attribute("data-unfinished") is None
    assert headline(bench).inner_text() != before


@pytest.mark.parametrize("text", ["", "7-", "7 3", "7 3/", ".", "1e", "1", "182 m", "7 3/16 i"])
def test_what_is_unfinished_is_told_once_the_reader_leaves(bench, text):
    box(bench, "upper").fill(text)
    wait_for_state(bench, "stale")
    bench.clock.run_for(ONE_PAUSE_MS)
    expect(problem(bench, "upper")).to_be_hidden()
    box(bench, "upper").blur()
    bench.clock.run_for(ONE_PAUSE_MS)
    expect(problem(bench, "upper")).to_contain_text("Upper tiller distance")
    expect(box(bench, "upper")).to_have_attribute("aria-invalid", "true")
    if "i" not in text:
        expect(problem(bench, "upper")).not_to_contain_text("unit that")


def test_what_is_unfinished_is_told_after_a_long_pause_and_waits_again_when_typing_goes_on(bench):
    box(bench, "upper").fill("7 3")
    wait_for_state(bench, "stale")
    bench.clock.run_for(TOO_LONG_A_PAUSE_MS)
    expect(problem(bench, "upper")).to_be_visible()
    key_in(bench, "upper", "/")
    expect(problem(bench, "upper")).to_be_hidden()
    bench.clock.run_for(ONE_PAUSE_MS)
    expect(problem(bench, "upper")).to_be_hidden()


def test_what_typing_on_cannot_mend_is_told_after_a_short_pause(bench):
    box(bench, "upper").fill("7 lb")
    wait_for_state(bench, "stale")
    expect(problem(bench, "upper")).to_be_hidden()
    bench.clock.run_for(1_000)
    expect(problem(bench, "upper")).to_be_visible()
    box(bench, "upper").fill("7 in")
    wait_for_state(bench, "current")
    expect(problem(bench, "upper")).to_be_hidden()


def test_a_field_that_is_come_back_to_keeps_its_complaint_until_it_is_mended(bench):
    type_into(bench, "upper", "7 3")
    bench.clock.run_for(ONE_PAUSE_MS)
    expect(problem(bench, "upper")).to_be_visible()
    box(bench, "upper").focus()
    bench.clock.run_for(ONE_PAUSE_MS)
    expect(problem(bench, "upper")).to_be_visible()
    key_in(bench, "upper", "/16")
    wait_for_state(bench, "current")
    expect(problem(bench, "upper")).to_be_hidden()


def test_the_next_cell_is_not_called_empty_before_it_is_reached(visitor):
    visitor.page.clock.install()
    page = visitor.open_calculator("#brace_height=8+in", id="draw-curve")
    page.clock.pause_at(page.evaluate("Date.now()") + 5_000)
    wrong = problem(page, "readings")
    page.get_by_role("button", name="Add a row").click()
    row = page.locator('[data-field="readings"] tbody tr').last.locator("input")
    row.nth(0).press_sequentially("29 1/")
    expect(page.locator(".rb-calculator")).to_have_attribute("data-state", "settled")
    page.clock.run_for(ONE_PAUSE_MS)
    expect(wrong).to_be_hidden()
    row.nth(0).press_sequentially("2")
    page.keyboard.press("Tab")
    page.clock.run_for(ONE_PAUSE_MS)
    expect(wrong).to_be_hidden()
    row.nth(1).press_sequentially("5")
    page.clock.run_for(ONE_PAUSE_MS)
    expect(wrong).to_be_hidden()
    row.nth(1).blur()
    row.nth(1).fill("")
    row.nth(1).blur()
    page.clock.run_for(ONE_PAUSE_MS)
    expect(wrong).to_contain_text("is empty")


@pytest.mark.parametrize("screen", PHONE_AND_DESK.values(), ids=PHONE_AND_DESK.keys())
def test_no_field_moves_while_it_is_typed_into(new_visitor, screen):
    visitor = new_visitor(viewport=screen)
    visitor.page.clock.install()
    page = visitor.open_calculator()
    page.clock.pause_at(page.evaluate("Date.now()") + 5_000)
    field = box(page, "lower")
    field.evaluate("control => control.scrollIntoView({ block: \"center\" })")  # clear of the floating answer
    field.focus()
    there = field.evaluate(TOP)
    for text in ("7 ", "7 3", "7 3/", "7 3/16", "7 3/16 lb", "7 3/16", "abc", "", "7"):
        field.fill(text)
        expect(page.locator(".rb-calculator")).to_have_attribute("data-state", "settled")
        assert field.evaluate(TOP) == pytest.approx(there, abs=1), text
        page.clock.run_for(ONE_PAUSE_MS)
        assert field.evaluate(TOP) == pytest.approx(there, abs=1), text
    field.fill("abc")
    page.clock.run_for(ONE_PAUSE_MS)
    box(page, "upper").focus()
    there = box(page, "upper").evaluate(TOP)
    page.clock.run_for(ONE_PAUSE_MS)
    expect(problem(page, "lower")).to_be_visible()
    assert box(page, "upper").evaluate(TOP) == pytest.approx(there, abs=1)
