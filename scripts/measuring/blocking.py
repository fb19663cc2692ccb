"""How long the page's own thread is blocked while a shared link loads: what a reader presses meanwhile waits.

A task longer than 50 ms blocks by what it is longer, from the page's first paint with anything on it: nobody
presses what is not there yet. The longest task is that of the whole load. Both are taken from the navigation
until a moment after the answer, when what comes behind it has come too: the theme's script, the bar of bows,
charts. Time on the processor is what counts, so that other work on the machine does not.
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
TRACED = ("disabled-by-default-devtools.timeline", "loading")
"""What a browser's trace calls tasks and paints under."""
PAINTED = "firstContentfulPaint"


class Task(NamedTuple):
    """A piece of work of the page's own thread: when it ended [µs], and how long the processor took [ms]."""

    ended: float
    took_ms: float


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
        return load_of(events_while(page, lambda: open_link(page, port, address)))


def slowed(page: Page, slowdown: int) -> None:
    """Make the page's own thread slower from now on, by keeping it busy in between."""
    page.context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slowdown})


def load_of(events: list[dict[str, Any]]) -> Load:
    """Return what a page's load comes to, from what a browser's trace of it says."""
    process, tasks = _tasks_in(events)
    paints = [each["ts"] for each in events if each["name"] == PAINTED and each["pid"] == process]
    painted = min(paints, default=0)
    return Load(max(took_ms for _, took_ms in tasks),
                sum(max(0.0, took_ms - UNNOTICED_MS) for ended, took_ms in tasks if ended > painted))


def events_while(page: Page, navigate: Callable[[], object]) -> list[dict[str, Any]]:
    """Return the events of a browser's trace, from a navigation to a moment behind it."""
    browser = page.context.browser
    assert browser is not None, "the page has a browser of its own"
    browser.start_tracing(page=page, categories=list(TRACED))
    navigate()
    page.wait_for_timeout(MOMENT_MS)
    events: list[dict[str, Any]] = json.loads(browser.stop_tracing())["traceEvents"]
    return events


def _tasks_in(events: list[dict[str, Any]]) -> tuple[int, list[Task]]:
    """Return the process of the page and the tasks of its own thread: of all there are, that with most to do.

    An empty page that it takes the place of, and one that the browser holds ready, have such threads too.
    """
    tasks: dict[tuple[int, int], list[Task]] = {
        (each["pid"], each["tid"]): [] for each in events
        if each["name"] == "thread_name" and each["args"]["name"] == "CrRendererMain"}
    for each in events:
        if each["name"] == "RunTask" and each["ph"] == "X" and (each["pid"], each["tid"]) in tasks:
            task = Task(each["ts"] + each["dur"], each.get("tdur", each["dur"]) / 1000)
            tasks[each["pid"], each["tid"]].append(task)
    (process, _), found = max(tasks.items(), key=lambda item: sum(each.took_ms for each in item[1]))
    return process, found
