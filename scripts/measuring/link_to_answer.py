"""From opening a shared link to its answer on the page, with nothing in any cache.

Beside the calculators stands a page written by hand that subtracts two figures without any engine: how soon
an answer can be there at all, on this machine and over this line.
"""

import shutil
from collections import Counter
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory
from typing import NamedTuple
from urllib.parse import urlencode, urlsplit

from playwright.sync_api import Page

from calc import (
    catalog,
    declaring,
)
from scripts.building import compress
from scripts.measuring.browser import SITE, fresh_page, served_site
from scripts.measuring.shaped_link import Line, relayed

LINES = (
    Line("no throttle", None, 0.0),
    Line("10 Mbit/s, 40 ms", 10e6, 0.040),
    Line("1.6 Mbit/s, 150 ms", 1.6e6, 0.150),
)
PATIENCE_MS = 60_000
WATCH = """
    new MutationObserver((_, observer) => {
      if (!document.querySelector('.rb-outcome[data-state="current"]')) return;
      observer.disconnect();
      requestAnimationFrame(() => setTimeout(() => {
        document.documentElement.dataset.answeredMs = performance.now();
      }));
    }).observe(document, {subtree: true, attributeFilter: ["data-state"]});
"""
"""Notes when the frame with the first live answer has been painted, counted from the navigation."""
HANDWRITTEN = Path(__file__).with_name("handwritten")
HANDWRITTEN_LINK = "#upper=7+5/8+in&lower=7+5/16+in"
ASKED_FOR = """
    () => performance.getEntries()
      .filter(({ entryType, startTime }) => (entryType === "navigation" || entryType === "resource")
        && startTime <= Number(document.documentElement.dataset.answeredMs))
      .map(({ name }) => new URL(name).pathname)
"""
KINDS = (("page", ("/",)), ("styles", (".css",)), ("fonts", (".woff2",)), ("engine", (".wasm",)),
         ("package", (".pack",)), ("scripts", (".mjs", ".js")), ("pictures", (".svg", ".png")))
"""What the parts of a page are called here, and how their addresses end."""


class Visit(NamedTuple):
    """One cold visit."""

    answered_ms: float
    fetched_bytes: int


def measure(runs: int) -> None:
    """Print the medians for every calculator and line."""
    print(f"\nShared link to answer, cold, new browser and profile each time (median of {runs})")
    by_hand = {}
    with _handwritten_site() as port:
        for line in LINES:
            visits = [visit(port, line, HANDWRITTEN_LINK) for _ in range(runs)]
            by_hand[line] = median(each.answered_ms for each in visits)
            _print_row("(page by hand)", line, visits, by_hand[line])
    with served_site() as port:
        for id in catalog.IDS:
            for line in LINES:
                visits = [visit(port, line, address_of(id)) for _ in range(runs)]
                _print_row(id, line, visits, by_hand[line])
        print_parts(port)


def _print_row(title: str, line: Line, visits: list[Visit], by_hand_ms: float) -> None:
    answered_ms = median(each.answered_ms for each in visits)
    print(f"  {title:18} {line.title:20} {answered_ms:7.0f} ms (x{answered_ms / by_hand_ms:4.1f}) "
          f"{median(each.fetched_bytes for each in visits) / 1000:7.0f} KB", flush=True)


@contextmanager
def _handwritten_site() -> Iterator[int]:
    """Serve the page written by hand as the site is served: compressed."""
    with TemporaryDirectory() as folder:
        site = Path(shutil.copytree(HANDWRITTEN, Path(folder) / "site"))
        shutil.copy(site / "index.html", site / "404.html")
        compress.compress(site, Path(folder) / "compressed")
        with served_site(site) as port:
            yield port


def visit(port: int, line: Line, address: str) -> Visit:
    """Open a link once in a new browser; the address begins behind the slash of the site."""
    with relayed(port, line) as relay, fresh_page(WATCH) as page:
        answered_ms = open_link(page, relay.port, address)
        began_ms = page.evaluate("performance.timeOrigin")
        return Visit(answered_ms, relay.bytes_down((began_ms + answered_ms) / 1000))


def open_link(page: Page, port: int, address: str) -> float:
    """Open a link and wait for its answer [ms from the navigation]; the page must be one that watches."""
    page.goto(f"http://127.0.0.1:{port}/{address}", wait_until="commit", timeout=PATIENCE_MS)
    page.locator("html[data-answered-ms]").wait_for(state="attached", timeout=PATIENCE_MS)
    return float(page.evaluate("Number(document.documentElement.dataset.answeredMs)"))


def address_of(calculator: str) -> str:
    """Return the link that carries every input of the example."""
    inputs = declaring.inputs_of(catalog.find(calculator))
    pairs = [(each.id, each.default) for each in inputs]
    return f"calculators/{calculator}/#{urlencode(pairs, safe='/:;,')}"


def print_parts(port: int) -> None:
    """Print what each calculator asks for before its answer, by kind, as the site holds it compressed."""
    print("\nAsked for before the answer, body bytes compressed")
    print(f"  {'':18}" + "".join(f"{kind:>10}" for kind, _ in KINDS) + f"{'together':>10}{'files':>7}")
    for id in catalog.IDS:
        with fresh_page(WATCH) as page:
            open_link(page, port, address_of(id))
            asked = asked_for(page)
        sizes = bytes_by_kind(asked)
        print(f"  {id:18}" + "".join(f"{sizes[kind]:10}" for kind, _ in KINDS)
              + f"{sizes.total():10}{len(asked):7}", flush=True)


def asked_for(page: Page) -> set[str]:
    """Return the addresses that an answered page and its scripts had asked for by then."""
    return set(page.evaluate(ASKED_FOR))


def bytes_by_kind(addresses: Iterable[str]) -> Counter[str]:
    """Return how much of each kind stands at addresses of the built site, as a browser fetches it."""
    sizes: Counter[str] = Counter()
    for address in addresses:
        kind = next((kind for kind, endings in KINDS if address.endswith(endings)), "others")
        sizes[kind] += fetched_bytes(address)
    return sizes


def fetched_bytes(address: str) -> int:
    """Return the size of what stands at an address of the built site: its brotli copy, where it has one."""
    path = SITE / urlsplit(address).path.lstrip("/")
    path = path / "index.html" if path.is_dir() else path
    small = path.with_name(path.name + ".br")
    return (small if small.exists() else path).stat().st_size
