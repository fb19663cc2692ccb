"""How the page's own thread is measured: on invented traces, and on pages that are busy on purpose."""

import pytest

from scripts.measuring.blocking import Load, load_of, slowed, tasks_in, tasks_while

BUSY = "data:text/html,<script>let sum = 0; for (let i = 0; i < 1e8; i += 1) sum += i %25 7;</script>"
IDLE = "data:text/html,<p>Nothing to do.</p>"


def named(thread, name):
    return {"name": "thread_name", "ph": "M", "pid": 1, "tid": thread, "args": {"name": name}}


def task(thread, wall_ms, **more):
    return {"name": "RunTask", "ph": "X", "pid": 1, "tid": thread, "dur": 1000 * wall_ms, **more}


def test_what_is_over_50_ms_blocks():
    assert load_of([10, 50, 51, 120]) == Load(longest_ms=120, blocked_ms=71)
    assert load_of([10]) == Load(longest_ms=10, blocked_ms=0)


def test_tasks_of_the_busiest_page_are_taken_by_their_time_on_the_processor():
    events = [named(1, "CrRendererMain"), named(2, "CrRendererMain"), named(3, "DedicatedWorker thread"),
              task(1, 2, tdur=2000), task(2, 90, tdur=60_000), task(2, 7), task(3, 500, tdur=500_000),
              {"name": "RunTask", "ph": "B", "pid": 1, "tid": 2}, {**task(2, 300), "name": "Layout"}]
    assert tasks_in(events) == [60, 7]


@pytest.fixture(scope="module")
def loads(browser):
    found = {}
    for title, address, slowdown in (("idle", IDLE, 1), ("busy", BUSY, 1), ("slower", BUSY, 4)):
        with browser.new_context() as context:
            page = context.new_page()
            slowed(page, slowdown)
            found[title] = load_of(tasks_while(page, lambda page=page, to=address: page.goto(to)))
    return found


def test_a_busy_page_blocks_and_an_idle_one_does_not(loads):
    assert loads["idle"].blocked_ms == 0
    assert loads["busy"].longest_ms > 50
    assert loads["busy"].blocked_ms >= loads["busy"].longest_ms - 50 > 0


def test_a_slower_processor_blocks_for_longer(loads):
    assert loads["slower"].longest_ms > 2 * loads["busy"].longest_ms
