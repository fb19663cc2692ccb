"""Whatever is typed: a sentence at its field, nothing lost, the last good result kept and marked."""

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import visits
from tests.pages.reading import box, headline, open_folds, problem, type_into, wait_for_link, wait_for_state

BAD = {
    "empty": "",
    "word": "abc",
    "negative": "-3",
    "beyond numbers": "1e999",
    "division by nothing": "7 3/0",
    "wrong unit": "7 lb",
    "out of range": "70 in",
    "not a number": "NaN",
    "infinite": "inf",
    "Arabic digits": "\u0667",
    "full-width digits": "\uff17 in",
    "markup": "<img src=x onerror=alert(1)>",
    "quotes": "\"'`;--",
    "null byte": "7\x00",
}


TEXTS = "fields => fields.map(field => field.querySelector('input[type=text]').value)"
TYPE_INTO_ALL = """(fields, texts) => fields.forEach((field, place) => {
  const box = field.querySelector("input[type=text]");
  box.focus();
  box.select();
  document.execCommand("insertText", false, texts[place]);
})"""


@pytest.fixture(scope="module")
def opened(browser, site_url):
    with visits(browser, site_url) as make:
        yield make().open_calculator()


@pytest.fixture
def page(opened):
    """The tiller calculator with its example, opened once for all that is mistyped into it."""
    opened.get_by_role("button", name="Start again").click()
    wait_for_state(opened, "current")
    return opened


@pytest.mark.parametrize("text", BAD.values(), ids=BAD.keys())
def test_bad_values_are_explained_and_kept(page, text):
    example = headline(page).inner_text()
    box(page, "upper").fill(text)
    box(page, "upper").blur()
    wait_for_state(page, "stale")
    expect(problem(page, "upper")).to_contain_text("Upper tiller distance")
    expect(box(page, "upper")).to_have_attribute("aria-invalid", "true")
    expect(box(page, "upper")).to_have_css("border-top-width", "2px")
    assert box(page, "upper").input_value() == text
    assert headline(page).inner_text() == example
    expect(page.locator(".rb-state")).to_contain_text("before your last change")


def test_ten_thousand_characters_are_refused_and_kept(page):
    box(page, "upper").fill("7" * 10_000)
    box(page, "upper").blur()
    expect(problem(page, "upper")).to_be_visible()
    assert len(problem(page, "upper").inner_text()) < 300
    assert len(box(page, "upper").input_value()) == 10_000


def test_mending_takes_the_complaint_away(page):
    type_into(page, "upper", "abc")
    expect(problem(page, "upper")).to_be_visible()
    type_into(page, "upper", "7 1/4")
    wait_for_state(page, "current")
    expect(problem(page, "upper")).to_be_hidden()
    expect(page.locator(".rb-problems")).to_be_hidden()
    assert box(page, "upper").get_attribute("aria-invalid") is None


def test_enter_leads_to_a_summary_in_the_same_words(visitor):
    page = visitor.open_calculator()
    type_into(page, "lower", "-3")
    box(page, "upper").fill("abc")
    box(page, "upper").press("Enter")
    summary = page.locator(".rb-problems")
    expect(summary).to_be_focused()
    links = summary.get_by_role("link").all()
    assert [link.inner_text() for link in links] == [
        problem(page, "upper").inner_text().removeprefix("▲ "),
        problem(page, "lower").inner_text().removeprefix("▲ "),
    ]
    wait_for_link(page, "upper=abc")  # what was typed last
    before = page.url
    assert "lower=-3" in before
    links[1].click()
    expect(box(page, "lower")).to_be_focused()
    assert page.url == before


def test_typing_never_moves_the_focus(visitor):
    page = visitor.open_calculator()
    box(page, "upper").fill("")
    box(page, "upper").press_sequentially("abc")
    wait_for_state(page, "stale")
    expect(box(page, "upper")).to_be_focused()


def test_every_field_of_every_calculator_explains_itself(lasting_visitor, calculator_id):
    page = lasting_visitor.open_calculator(id=calculator_id)
    open_folds(page)
    all_fields = page.locator(".rb-field:visible", has=page.locator("input[type=text]"))
    fields = all_fields.all()
    before = all_fields.evaluate_all(TEXTS)
    all_fields.evaluate_all(TYPE_INTO_ALL, ["abc"] * len(before))
    page.locator("h1").first.click()  # leaves the last of them
    for field in fields:
        expect(field.locator(".rb-error")).to_contain_text("abc")
    all_fields.evaluate_all(TYPE_INTO_ALL, before)
    if fields:
        wait_for_state(page, "current")
    for field in fields:
        expect(field.locator(".rb-error")).to_be_hidden()
