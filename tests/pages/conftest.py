"""A server on a free port, a real browser, and a watch on what pages do behind the reader's back."""

import os
import shutil
import socket
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from urllib.parse import urlsplit

import pytest
import waitress
from playwright.sync_api import Browser, BrowserContext, Page, expect, sync_playwright

from calc import catalog
from scripts.serving.application import application
from tests.pages.reading import PATIENCE_MS, open_folds, unfold, wait_for_state

SITE = Path(__file__).parents[2] / "site"
BUILT_FOR = ":8000/"
PHONE = {"width": 390, "height": 844}
NOT_WANTED = (
    # pages that the browser loads for itself, one in every window that nobody sees, and its own services
    "WebUIOmniboxPopup", "WebUIOmniboxAimPopup", "SpareRendererForSitePerProcess", "SegmentationPlatform",
    "Translate", "AutofillServerCommunication",
    # what Playwright turns off, for the browser heeds the last list alone
    "AvoidUnnecessaryBeforeUnloadCheckSync", "DestroyProfileOnBrowserClose", "HttpsUpgrades",
    "HttpsFirstBalancedModeAutoEnable", "LensOverlay", "MediaRouter", "PaintHolding",
    "ThirdPartyStoragePartitioning", "AvoidCorsURLLoaderRestartOnRedirect", "TcpPortRandomizationWin",
    "OptimizationHints", "NetworkTimeServiceQuerying", "AimEnabled", "PreconnectToSearch",
)
QUIET_BROWSER = [
    "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--disable-features=" + ",".join(NOT_WANTED),
    "--font-render-hinting=slight",  # letters as wide as on a desktop, with a window or without
]

expect.set_options(timeout=PATIENCE_MS)


@pytest.fixture(scope="session")
def replaced() -> dict[str, str]:
    """Scripts by path that the server hands out in place of the built ones."""
    return {}


class Server:
    """The built site on a free port.

    replaced: scripts by path that it hands out in place of the built ones.
    """

    def __init__(self, replaced: dict[str, str]):
        self._built = application(SITE)
        self._sitemap = (SITE / "sitemap.xml").read_text()
        self._replaced = replaced
        self._server = waitress.create_server(self._serve, host="127.0.0.1", port=0, threads=8)
        self.url = f"http://127.0.0.1:{self._server.effective_port}/"
        threading.Thread(target=self._server.run, daemon=True).start()

    def _serve(self, environ, start_response):
        if environ["PATH_INFO"] == "/sitemap.xml":  # the theme moves between the pages named there
            start_response("200 OK", [("Content-Type", "application/xml")])
            return [self._sitemap.replace(BUILT_FOR, f":{self._server.effective_port}/").encode()]
        code = self._replaced.get(environ["PATH_INFO"])
        if code is None:
            return self._built(environ, start_response)
        start_response("200 OK", [("Content-Type", "text/javascript"), ("Cache-Control", "no-cache")])
        return [code.encode()]

    def stop(self) -> None:
        """Answer nobody any more, not those who are already connected either."""
        self._server.close()
        connections = [channel.socket for channel in list(self._server.active_channels.values())]
        for connection in filter(None, connections):  # a channel that ended has none any more
            with suppress(OSError):  # it has just gone
                connection.shutdown(socket.SHUT_RDWR)


@pytest.fixture(scope="session")
def site_url(replaced: dict[str, str]) -> Iterator[str]:
    server = Server(replaced)
    yield server.url
    server.stop()


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    program = os.environ.get("CHROMIUM") or shutil.which("chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=QUIET_BROWSER)
        yield browser
        browser.close()


class Visitor:
    """Someone with a clean profile who comes to the site."""

    def __init__(self, browser: Browser, site_url: str, **profile: object):
        self.site_url = site_url
        self.complaints: list[str] = []
        self.context: BrowserContext = browser.new_context(**{"viewport": PHONE, **profile})
        self.context.set_default_timeout(PATIENCE_MS)
        self.context.on("request", self._watch_request)
        self.context.on("console", self._watch_console)
        self.context.on("weberror", lambda error: self.complaints.append(str(error.error)))
        self.page: Page = self.context.new_page()

    def open(self, address: str = "") -> Page:
        self.page.goto(self.site_url + address)
        return self.page

    def open_calculator(self, fragment: str = "", id: str = "tiller") -> Page:
        """Open a calculator once its script is there; with inputs in the fragment, wait for their result.

        The form is unfolded then, with all that it has folded away, as whoever means to type into it does.
        """
        page = self.open(f"calculators/{id}/{fragment}")
        page.locator(".rb-calculator[data-live]").wait_for()
        if "=" in fragment:
            wait_for_state(page, "current")
            unfold(page)
        open_folds(page)
        return page

    def _watch_request(self, request: object) -> None:
        address = request.url.removeprefix("blob:")  # what this page holds itself
        if urlsplit(address).netloc != urlsplit(self.site_url).netloc:
            self.complaints.append("request to another host: " + request.url)

    def _watch_console(self, message: object) -> None:
        if message.type in ("error", "warning"):
            self.complaints.append(message.text)


@contextmanager
def visits(browser: Browser, site_url: str) -> Iterator[Callable[..., Visitor]]:
    """Makes visitors; at the end none of them may have had anything to complain of."""
    visitors = []

    def make(**profile: object) -> Visitor:
        visitors.append(Visitor(browser, site_url, **profile))
        return visitors[-1]

    yield make
    complaints = [complaint for visitor in visitors for complaint in visitor.complaints]
    for visitor in visitors:
        visitor.context.close()
    assert complaints == []


@pytest.fixture
def new_visitor(browser, site_url) -> Iterator[Callable[..., Visitor]]:
    with visits(browser, site_url) as make:
        yield make


@pytest.fixture(scope="module")
def lasting_visitor(browser, site_url) -> Iterator[Visitor]:
    """Someone who stays for a whole file: opening a page is the dearest part of most tests."""
    with visits(browser, site_url) as make:
        yield make()


@pytest.fixture
def visitor(new_visitor) -> Visitor:
    return new_visitor()


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Tests that take a calculator_id run for every calculator, those of a file for one after the other."""
    if "calculator_id" in metafunc.fixturenames:
        metafunc.parametrize("calculator_id", catalog.IDS, scope="module")
