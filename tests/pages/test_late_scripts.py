"""A script that comes late or never: the form says so, keeps what was typed, and can ask again."""

import re

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_state

PAGE = re.compile(r"/page\.mjs")
CHUNK = re.compile(r"/chunk-[^/]*\.mjs")
SMALL = re.compile(r"/engine/micropython")
FULL = re.compile(r"/engine/pyodide")


def cut(context, address) -> None:
    context.route(address, lambda route: route.abort())


@pytest.mark.parametrize("file", [PAGE, CHUNK], ids=["the script", "a part of it"])
def test_a_form_says_that_its_script_did_not_arrive_and_asks_again(visitor, file):
    cut(visitor.context, file)
    page = visitor.open("calculators/tiller/")
    expect(page.locator(".rb-late-failed")).to_be_visible()
    box(page, "upper").fill("9 in")
    with page.expect_event("requestfailed", lambda request: file.search(request.url)):
        page.get_by_role("button", name="Try again").click()
    expect(page.locator(".rb-late-failed")).to_be_visible()
    visitor.context.unroute(file)
    page.get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    expect(box(page, "upper")).to_have_value("9 in")
    expect(page.locator(".rb-asleep")).to_be_hidden()
    visitor.complaints.clear()


def test_a_link_whose_script_fails_shows_no_figure_of_the_example(visitor):
    cut(visitor.context, PAGE)
    page = visitor.open("calculators/tiller/#upper=9+in")
    expect(page.locator(".rb-late-failed")).to_be_visible()
    expect(page.locator(".rb-wait-for-link")).to_be_visible()
    expect(box(page, "upper")).to_be_hidden()
    expect(page.locator(".rb-outcome")).to_be_hidden()
    visitor.context.unroute(PAGE)
    page.get_by_role("button", name="Try again").click()
    expect(box(page, "upper")).to_have_value("9 in")
    wait_for_state(page, "current")
    visitor.complaints.clear()


def test_what_is_typed_before_a_late_script_is_kept(visitor):
    held, late = [], True
    visitor.context.route(PAGE, lambda route: held.append(route) if late else route.continue_())
    page = visitor.page
    page.goto(visitor.site_url + "calculators/tiller/", wait_until="commit")
    expect(page.locator(".rb-wait")).to_contain_text("not live yet")
    box(page, "upper").fill("9 in")
    late = False
    for route in held:
        route.continue_()
    wait_for_state(page, "current")
    expect(box(page, "upper")).to_have_value("9 in")
    expect(page.locator(".rb-asleep")).to_be_hidden()
    page.get_by_role("button", name="Start again").click()
    expect(box(page, "upper")).to_have_value(box(page, "upper").get_attribute("value"))


def test_an_engine_that_did_not_arrive_is_asked_for_again_without_a_reload(visitor):
    for file in (SMALL, FULL):
        cut(visitor.context, file)
    page = visitor.open_calculator()
    example = headline(page).inner_text()
    type_into(page, "upper", "9 in")
    wait_for_state(page, "failed")
    expect(page.locator(".rb-state")).to_contain_text("worked example's answer, not yours")
    for file in (SMALL, FULL):
        visitor.context.unroute(file)
    page.get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    expect(headline(page)).not_to_have_text(example)
    assert box(page, "upper").input_value() == "9 in"
    visitor.complaints.clear()


def test_the_example_does_not_stand_as_the_answer_while_the_engine_is_coming(visitor):
    visitor.context.route("**/*.wasm", lambda _: None)  # never answers
    page = visitor.open_calculator()
    type_into(page, "upper", "9 in")
    wait_for_state(page, "waiting")
    expect(page.locator(".rb-state")).to_contain_text("Working")
