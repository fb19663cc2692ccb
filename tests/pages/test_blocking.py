"""How the page's own thread is measured: on invented traces, and on pages that are busy on purpose."""

import pytest

from scripts.measuring.blocking import Load, events_while, load_of, slowed

BUSY = "data:text/html,<script>let sum = 0; for (let i = 0; i < 1e8; i += 1) sum += i %25 7;</script>"
IDLE = "data:text/html,<p>Nothing to do.</p>"


def named(thread, name):
    return {"name": "thread_name", "ph": "M", "pid": thread, "tid": 1, "args": {"name": name}}


def task(thread, ends_ms, wall_ms, **more):
    begins = 1000 * (ends_ms - wall_ms)
    return {"name": "RunTask", "ph": "X", "pid": thread, "tid": 1, "ts": begins, "dur": 1000 * wall_ms} | more


def painted(thread, at_ms):
    return {"name": "firstContentfulPaint", "ph": "R", "pid": thread, "tid": 1, "ts": 1000 * at_ms}


PAGE = named(1, "CrRendererMain")


def test_what_is_over_50_ms_blocks():
    tasks = [task(1, 10, 10), task(1, 60, 50), task(1, 111, 51), task(1, 231, 120)]
    assert load_of([PAGE, *tasks]) == Load(120, 71)
    assert load_of([PAGE, task(1, 10, 10)]) == Load(10, 0)


def test_nothing_blocks_before_something_is_painted_that_could_be_pressed():
    tasks = [task(1, 90, 90), task(1, 200, 80), task(1, 300, 70)]
    assert load_of([PAGE, *tasks, painted(1, 95)]) == Load(90, 30 + 20)
    assert load_of([PAGE, *tasks, painted(1, 150)]) == Load(90, 30 + 20)
    assert load_of([PAGE, *tasks, painted(1, 200)]) == Load(90, 20)
    assert load_of([PAGE, *tasks, painted(2, 300)]) == Load(90, 40 + 30 + 20)


def test_tasks_of_the_busiest_page_are_taken_by_their_time_on_the_processor():
    events = [PAGE, named(2, "CrRendererMain"), named(3, "DedicatedWorker thread"),
              task(1, 2, 2, tdur=2000), task(2, 90, 90, tdur=60_000), task(2, 97, 7),
              task(3, 600, 500, tdur=500_000),
              {"name": "RunTask", "ph": "B", "pid": 2, "tid": 1}, {**task(2, 400, 300), "name": "Layout"}]
    assert load_of(events) == Load(60, 10)


@pytest.fixture(scope="module")
def loads(browser):
    found = {}
    for title, address, slowdown in (("idle", IDLE, 1), ("busy", BUSY, 1), ("slower", BUSY, 4)):
        with browser.new_context() as context:
            page = context.new_page()
            slowed(page, slowdown)
            found[title] = load_of(events_while(page, lambda page=page, to=address: page.goto(to)))
    return found


def test_a_busy_page_blocks_and_an_idle_one_does_not(loads):
    assert loads["idle"].blocked_ms == 0
    assert loads["busy"].longest_ms > 50
    assert loads["busy"].blocked_ms >= loads["busy"].longest_ms - 50 > 0


def test_a_slower_processor_blocks_for_longer(loads):
    assert loads["slower"].longest_ms > 2 * loads["busy"].longest_ms
