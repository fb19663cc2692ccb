"""From opening a shared link to its answer on the page, with nothing in any cache."""

from statistics import median
from typing import NamedTuple
from urllib.parse import urlencode

from calc import (
    catalog,
    declaring,
)
from scripts.measuring.browser import fresh_page, served_site
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
    }).observe(document, {subtree: true, childList: true, attributes: true, attributeFilter: ["data-state"]});
"""
"""Notes when the frame with the first live answer has been painted, counted from the navigation."""


class Visit(NamedTuple):
    """One cold visit."""

    answered_ms: float
    fetched_bytes: int


def measure(runs: int) -> None:
    """Print the medians for every calculator and line."""
    print(f"\nShared link to answer, cold, new browser and profile each time (median of {runs})")
    with served_site() as port:
        for id in catalog.IDS:
            for line in LINES:
                visits = [visit(port, line, id) for _ in range(runs)]
                print(f"  {id:18} {line.title:20} {median(each.answered_ms for each in visits):7.0f} ms "
                      f"{median(each.fetched_bytes for each in visits) / 1000:7.0f} KB", flush=True)


def visit(port: int, line: Line, calculator: str) -> Visit:
    """Open a link once in a new browser."""
    with relayed(port, line) as relay, fresh_page(WATCH) as page:
        page.goto(f"http://127.0.0.1:{relay.port}/calculators/{calculator}/#{example_link(calculator)}",
                  wait_until="commit", timeout=PATIENCE_MS)
        page.locator("html[data-answered-ms]").wait_for(timeout=PATIENCE_MS)
        answered_ms, began_ms = page.evaluate(
            "[Number(document.documentElement.dataset.answeredMs), performance.timeOrigin]")
        return Visit(answered_ms, relay.bytes_down((began_ms + answered_ms) / 1000))


def example_link(calculator: str) -> str:
    """Return the fragment of a link that carries every input of the example."""
    inputs = declaring.inputs_of(catalog.find(calculator))
    return urlencode([(each.id, each.default) for each in inputs], safe="/:;,")
