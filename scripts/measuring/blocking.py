"""How long the page's own thread is blocked while a shared link loads: what a reader presses meanwhile waits.

A task longer than 50 ms blocks by what it is longer. Counted from the navigation until a moment after the
answer, when what comes behind it has come too: the theme's script, the bar of bows, charts. Its time on the
processor is what counts, so that other work on the machine does not.
"""

import json
from collections.abc import Callable
from statistics import median
from typing import Any, NamedTuple

from playwright.sync_api import Page

from calc import catalog
from scripts.measuring.browser import fresh_page, served_site
from scripts.measuring.link_to_answer import WATCH, address_of, open_link

SLOWDOWNS = (1, 4)
"""How many times slower the page's thread is made; workers, and so the engine, stay as fast as they are."""
MOMENT_MS = 1500
UNNOTICED_MS = 50
TASKS = "disabled-by-default-devtools.timeline"
"""What a browser's trace calls them under."""


class Load(NamedTuple):
    """How long the longest task took, and by how much all that were too long blocked."""

    longest_ms: float
    blocked_ms: float


def measure(runs: int) -> None:
    """Print the medians for every calculator, the page's thread as fast as it is and slower."""
    print(f"\nThe page's own thread from a shared link to {MOMENT_MS / 1000:g} s behind its answer, cold "
          f"(median of {runs}; sought: no task over 50 ms, and 4 times slower at most 150 ms blocked)")
    print(f"  {'':18}" + "".join(f"{title:>28}" for title in ("as fast as it is", "4 times slower")))
    with served_site() as port:
        for id in catalog.IDS:
            cells = [_cell([load(port, address_of(id), slowdown) for _ in range(runs)])
                     for slowdown in SLOWDOWNS]
            print(f"  {id:18}" + "".join(cells), flush=True)


def _cell(loads: list[Load]) -> str:
    return (f"  longest {median(each.longest_ms for each in loads):4.0f}, blocked "
            f"{median(each.blocked_ms for each in loads):4.0f} ms")


def load(port: int, address: str, slowdown: int) -> Load:
    """Open a link once in a new browser, the page slowed; the address begins behind the slash of the site."""
    with fresh_page(WATCH) as page:
        slowed(page, slowdown)
        return load_of(tasks_while(page, lambda: open_link(page, port, address)))


def slowed(page: Page, slowdown: int) -> None:
    """Make the page's own thread slower from now on, by keeping it busy in between."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowdown})


def load_of(tasks_ms: list[float]) -> Load:
    """Return what tasks come to."""
    return Load(max(tasks_ms), sum(max(0.0, each - UNNOTICED_MS) for each in tasks_ms))


def tasks_while(page: Page, navigate: Callable[[], object]) -> list[float]:
    """Return how long each task of the page's thread took [ms], from a navigation to a moment behind it."""
    browser = page.context.browser
    assert browser is not None, "the page has a browser of its own"
    browser.start_tracing(page=page, categories=[TASKS])
    navigate()
    page.wait_for_timeout(MOMENT_MS)
    return tasks_in(json.loads(browser.stop_tracing())["traceEvents"])


def tasks_in(events: list[dict[str, Any]]) -> list[float]:
    """Return how long the processor was at each task [ms] of the page's own thread, that with the most to do.

    An empty page that it takes the place of, and one that the browser holds ready, have such threads too.
    """
    tasks: dict[tuple[int, int], list[float]] = {
        (each["pid"], each["tid"]): [] for each in events
        if each["name"] == "thread_name" and each["args"]["name"] == "CrRendererMain"}
    for each in events:
        if each["name"] == "RunTask" and each["ph"] == "X" and (each["pid"], each["tid"]) in tasks:
            tasks[each["pid"], each["tid"]].append(each.get("tdur", each["dur"]) / 1000)
    return max(tasks.values(), key=sum)
