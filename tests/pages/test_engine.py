"""When the small engine cannot start the full one takes over; when nothing can, the page says so."""

import re

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_state, wait_until

SMALL = re.compile(r"/engine/micropython")
FULL = re.compile(r"/engine/pyodide")
BUNDLE = re.compile(r"/engine/calc")


def test_without_the_small_engine_the_full_one_answers(new_visitor):
    usual = headline(new_visitor().open_calculator("#upper=7+1/8+in")).inner_text()
    visitor = new_visitor()
    visitor.context.route(SMALL, lambda route: route.abort())
    page = visitor.open("calculators/tiller/#upper=7+1/8+in")
    expect(headline(page)).to_have_text(usual, timeout=60_000)
    visitor.complaints.clear()  # the browser reports the files that were kept from it


def test_without_any_engine_the_page_says_so_and_stays_readable(visitor):
    visitor.context.route(SMALL, lambda route: route.abort())
    visitor.context.route(FULL, lambda route: route.abort())
    page = visitor.open_calculator()
    example = headline(page).inner_text()
    type_into(page, "upper", "7 1/8")
    trouble = page.locator('[data-field="upper"] .rb-trouble')
    expect(trouble).to_contain_text("could not start: the connection")
    assert headline(page).inner_text() == example
    assert box(page, "upper").input_value() == "7 1/8"
    wait_for_state(page, "failed")
    visitor.complaints.clear()


def test_a_link_without_an_engine_shows_no_result(visitor):
    visitor.context.route(BUNDLE, lambda route: route.abort())
    page = visitor.open("calculators/tiller/#upper=7+1/8+in")
    expect(page.locator(".rb-trouble")).to_contain_text("could not start: the connection")
    expect(page.locator(".rb-outcome")).to_be_hidden()
    visitor.complaints.clear()


@pytest.mark.parametrize("label", ["application/octet-stream", "text/plain"])
def test_hosts_that_mislabel_wasm_do_no_harm(visitor, label):
    def mislabel(route):
        response = route.fetch()
        route.fulfill(response=response, headers={**response.headers, "content-type": label})

    visitor.context.route("**/*.wasm", mislabel)
    page = visitor.open_calculator("#upper=7+1/8+in")
    expect(headline(page)).to_be_visible()


def test_an_engine_that_crashes_is_restarted_once_and_then_given_up(visitor):
    page = visitor.open_calculator("#upper=7+in")
    crash(page)
    type_into(page, "upper", "7 1/8")
    wait_for_state(page, "current")
    crash(page)
    type_into(page, "upper", "7 1/4")
    expect(page.locator(".rb-trouble")).to_contain_text("stopped twice")
    assert box(page, "upper").input_value() == "7 1/4"


def engines_of(page):
    """Return the workers that answer for calculators: the theme's search has one too."""
    return [each for each in page.workers if each.url.endswith("/worker.mjs")]


def crash(page) -> None:
    """Make the worker fail outside of Python; it is gone afterwards."""
    [worker] = engines_of(page)
    worker.evaluate("setTimeout(() => { throw new Error('crash') })")
    wait_until(page, lambda: worker not in page.workers)
