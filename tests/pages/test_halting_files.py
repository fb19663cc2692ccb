"""A file that stops halfway while its connection stays open: told at the field, and asked for again."""

import re
import threading

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import Server, visits
from tests.pages.reading import box, wait_for_state, wait_until
from tests.pages.test_lost_files import CORE, PACK, SILENT, WASM, seconds_until_told, stop_the_clock, trouble

PAGE = re.compile(r"/js-[^/]*/page\.mjs$")


class HaltingServer(Server):
    """The built site, of which one kind of file comes to its half and then no further."""

    def __init__(self):
        super().__init__({})
        self.halting = re.compile("$^")
        self.halted = threading.Event()
        self._ended = threading.Event()

    def _serve(self, environ, start_response):
        body = super()._serve(environ, start_response)
        return self._half(b"".join(body)) if self.halting.search(environ["PATH_INFO"]) else body

    def _half(self, body):
        yield body[:len(body) // 2]
        self.halted.set()
        self._ended.wait()

    def mend(self) -> None:
        self.halting = re.compile("$^")

    def stop(self) -> None:
        self._ended.set()
        super().stop()


@pytest.fixture
def server():
    server = HaltingServer()
    yield server
    server.stop()


@pytest.fixture
def guest(browser, server):
    with visits(browser, server.url) as make:
        yield make()


@pytest.mark.parametrize("file", [WASM, CORE, PACK], ids=["wasm", "core", "pack"])
def test_a_file_that_halts_is_told_within_ten_seconds_and_asked_for_again(guest, server, file):
    server.halting = file
    page = stop_the_clock(guest)
    box(page, "upper").fill("9 in")
    wait_until(page, server.halted.is_set)
    assert 6 < seconds_until_told(page) < 15
    expect(trouble(page)).to_contain_text(SILENT)
    server.mend()
    trouble(page).get_by_role("button", name="Try again").click()
    wait_for_state(page, "current")
    assert box(page, "upper").input_value() == "9 in"


def test_a_page_whose_own_script_halts_says_so_and_asks_for_it_again(guest, server):
    server.halting = PAGE
    guest.page.clock.install(time=0)
    page = guest.page
    page.goto(server.url + "calculators/tiller/", wait_until="commit")
    wait_until(page, server.halted.is_set)
    page.clock.run_for(9_000)
    expect(page.locator(".rb-late-slow")).to_be_visible()
    server.mend()
    page.locator(".rb-late").get_by_role("button", name="Try again").click()
    page.locator(".rb-calculator[data-live]").wait_for()
    expect(page.locator(".rb-late")).to_be_hidden()
