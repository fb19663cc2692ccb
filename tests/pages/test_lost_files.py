"""Each file of an engine, lost in each way: told at the field, in words that fit, with a way on."""

import re

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_state, wait_until

PAGE = re.compile("/calculators/tiller/$")
WORKER = re.compile(r"/js-[^/]*/worker\.mjs")
WASM = re.compile(r"/engine/micropython-[^/]*\.wasm")
CORE = re.compile(r"/engine/calc-[^/]*/core\.pack")
PACK = re.compile(r"/engine/calc-[^/]*/tiller\.pack")
FULL = re.compile(r"/engine/pyodide")
FILES = {"worker": WORKER, "wasm": WASM, "core": CORE, "pack": PACK}
A_PAGE = {"status": 200, "content_type": "text/html", "body": "<!doctype html><title>Sign in</title>"}
WAYS = {
    "gone": (lambda route: route.fulfill(status=404, body="no"), "does not have a part"),
    "broken off": (lambda route: route.abort(), "connection broke off"),
    "another page": (lambda route: route.fulfill(**A_PAGE), "damaged"),
}
SILENT = "Nothing has come over the connection"


def trouble(page, field: str = "upper"):
    return page.locator(f'[data-field="{field}"] .rb-trouble')


def lose(visitor, file, way) -> None:
    """Have a file fail, and with it the larger engine, which would answer in its place."""
    visitor.context.route(file, way)
    visitor.context.route(FULL, way)


def holding(held):
    """Return a way to lose a file: it is held back until the test goes on with it."""
    def hold(route):
        held.append(route)
    return hold


def stop_the_clock(visitor):
    """Open a calculator in which no time goes by but what the test lets go by."""
    visitor.page.clock.install(time=0)
    visitor.page.clock.pause_at(1_000)
    return visitor.open_calculator()


def seconds_until_told(page) -> int:
    """Let time go by until the page speaks up: 8 s after the last byte of any other file."""
    for seconds in range(20):
        if trouble(page).is_visible():
            return seconds
        page.clock.run_for(1_000)
        page.wait_for_timeout(100)
    raise AssertionError("nothing was told")


def find_again(visitor, file) -> None:
    visitor.context.unroute(file)
    visitor.context.unroute(FULL)


@pytest.mark.parametrize("way", WAYS.values(), ids=WAYS.keys())
@pytest.mark.parametrize("file", FILES.values(), ids=FILES.keys())
def test_a_lost_file_is_told_at_the_field_and_asked_for_again(visitor, file, way):
    lost, words = way
    lose(visitor, file, lost)
    page = visitor.open_calculator()
    example = headline(page).inner_text()
    type_into(page, "upper", "9 in")
    expect(trouble(page)).to_contain_text("could not start: ")
    expect(trouble(page)).to_contain_text(words)
    wait_for_state(page, "failed")
    assert box(page, "upper").input_value() == "9 in"
    find_again(visitor, file)
    trouble(page).get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    expect(page.locator(".rb-trouble")).to_be_hidden()
    expect(headline(page)).not_to_have_text(example)
    assert box(page, "upper").input_value() == "9 in"
    visitor.complaints.clear()  # the browser reports each file that it did not get


@pytest.mark.parametrize("file", FILES.values(), ids=FILES.keys())
def test_a_file_that_stops_coming_is_told_within_ten_seconds_and_goes_on(visitor, file):
    held = []
    visitor.context.route(file, holding(held))
    page = stop_the_clock(visitor)
    box(page, "upper").fill("9 in")
    wait_until(page, lambda: held)
    assert 6 < seconds_until_told(page) < 15
    expect(trouble(page)).to_contain_text(SILENT)
    expect(trouble(page).get_by_role("button", name="Try again")).to_be_visible()
    for route in held:
        route.continue_()
    wait_for_state(page, "current")
    expect(page.locator(".rb-trouble")).to_be_hidden()


def test_a_file_that_stopped_coming_can_be_asked_for_again(visitor):
    held = []

    def hold_the_first(route):
        if held:
            route.continue_()
        held.append(route)

    visitor.context.route(WASM, hold_the_first)
    page = stop_the_clock(visitor)
    box(page, "upper").fill("9 in")
    wait_until(page, lambda: held)
    seconds_until_told(page)
    trouble(page).get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    expect(box(page, "upper")).to_be_focused()


def test_the_larger_engine_is_said_to_come_in_place_of_the_usual_one(visitor):
    held = []
    visitor.context.route(WASM, lambda route: route.abort())
    visitor.context.route(FULL, holding(held))
    page = visitor.open_calculator()
    box(page, "upper").fill("9 in")
    expect(trouble(page)).to_contain_text("a larger one, of 4 MB, is being fetched in its place")
    visitor.context.unroute(FULL)
    for route in held:
        route.continue_()
    wait_for_state(page, "current")
    expect(page.locator(".rb-trouble")).to_be_hidden()
    visitor.complaints.clear()


def without_webassembly(route) -> None:
    response = route.fetch()
    policy = "default-src 'none'; script-src 'self'; connect-src 'self'"
    headers = {**response.headers, "content-security-policy": policy}
    route.fulfill(response=response, headers=headers)


def test_a_policy_without_webassembly_is_named(visitor):
    visitor.context.route(WORKER, without_webassembly)
    page = visitor.open_calculator()
    type_into(page, "upper", "9 in")
    expect(trouble(page)).to_contain_text("a policy of this device, this network or this site forbids it")
    visitor.context.unroute(WORKER)
    visitor.complaints.clear()


@pytest.mark.parametrize("policy", ["worker-src 'none'", "connect-src 'none'"])
def test_a_policy_that_forbids_what_the_calculator_needs_is_named(visitor, policy):
    def forbid(route):
        response = route.fetch()
        route.fulfill(response=response, headers={**response.headers, "content-security-policy": policy})

    for each in (PAGE, WORKER):
        visitor.context.route(each, forbid)
    page = visitor.open_calculator()
    type_into(page, "upper", "9 in")
    expect(trouble(page)).to_contain_text("a policy of this device, this network or this site forbids it")
    expect(trouble(page).get_by_role("button", name="Try again")).to_be_visible()
    assert box(page, "upper").input_value() == "9 in"
    visitor.complaints.clear()  # the browser reports each refusal


@pytest.mark.parametrize("lacking", [
    "window.Worker = function (address, { type }) { throw new Error('no workers') };",
    "window.Worker = class extends Worker { constructor(address) { super(address); } };",
], ids=["no workers", "no workers of modules"])
def test_an_old_browser_is_named(visitor, lacking):
    visitor.context.add_init_script(lacking)
    page = visitor.open_calculator()
    type_into(page, "upper", "9 in")
    expect(trouble(page)).to_contain_text("this browser is too old for it")
    visitor.complaints.clear()


def test_a_browser_without_webassembly_is_named(visitor):
    def deprive(route):
        response = route.fetch()
        route.fulfill(response=response, body="delete globalThis.WebAssembly;" + response.text())

    visitor.context.route(WORKER, deprive)
    page = visitor.open_calculator()
    type_into(page, "upper", "9 in")
    expect(trouble(page)).to_contain_text("this browser is too old for it")


def test_a_link_whose_engine_is_lost_says_so_where_its_answer_would_be(visitor):
    lose(visitor, CORE, lambda route: route.abort())
    page = visitor.open("calculators/tiller/#upper=9+in")
    expect(page.locator(".rb-calculator > .rb-trouble")).to_contain_text("the connection broke off")
    expect(page.locator(".rb-outcome")).to_be_hidden()
    find_again(visitor, CORE)
    page.get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    visitor.complaints.clear()
