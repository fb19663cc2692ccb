"""Timers at the bench, by a clock that the test moves: they survive a reload and tell the truth."""

import json

import pytest
from playwright.sync_api import expect

from tests.pages.reading import wait_until
from tests.pages.test_axe import faults
from tests.pages.test_bow_bar import BOW, put
from tests.pages.test_bows import open_bows

NOON = "2026-05-12T12:00:00"
SOUNDS = """window.tones = 0;
const start = OscillatorNode.prototype.start;
OscillatorNode.prototype.start = function (...all) { window.tones += 1; return start.apply(this, all); };"""
MARKUP = "<img src=x onerror=alert(1)>"
HOSTILE = [{"id": MARKUP, "title": MARKUP, "after": "", "of": "", "state": "runs", "until": 1}, {"id": 5},
           None, {"until": "soon"}]


@pytest.fixture
def bench(visitor):
    visitor.page.add_init_script(SOUNDS)
    visitor.page.clock.install(time=NOON)
    return visitor


def lines(page):
    return page.locator(".rb-timers > li")


def start(page, wait):
    page.locator(f"[data-wait={wait}] button").click()


def test_ten_minutes_at_brace_run_through_a_reload_and_sound_on_a_page_that_is_open(bench):
    page = bench.open("inspect/first-draw/")
    start(page, "brace")
    expect(lines(page)).to_contain_text("Ten minutes at brace: 10:00 left, until Tue")
    page.clock.run_for(61_000)
    expect(lines(page)).to_contain_text("08:59 left")
    assert faults(page) == []
    page.reload()
    expect(lines(page).first).to_contain_text("08:5")
    expect(page.locator(".rb-timer .rb-note")).to_contain_text("It sounds only while a page of this site")
    page.locator("h1").click()
    page.clock.run_for(540_000)
    expect(lines(page)).to_contain_text("over since")
    expect(lines(page)).to_contain_text("Look at it from the side")
    assert "while no page" not in lines(page).inner_text()
    page.get_by_role("button", name="Remove").click()
    expect(lines(page)).to_have_count(0)


def test_no_press_is_lost_that_comes_before_the_script(bench):
    held = []
    bench.context.route("**/timer*.mjs", lambda route: held.append(route))
    page = bench.open("inspect/first-draw/")
    wait_until(page, lambda: held)
    expect(page.locator("[data-wait=brace] button")).to_be_disabled()
    held[0].continue_()
    start(page, "brace")
    expect(lines(page)).to_have_count(1)


def test_one_that_was_over_while_nothing_was_open_says_when(bench):
    page = bench.open("inspect/first-draw/")
    start(page, "brace")
    expect(lines(page)).to_have_count(1)
    page.clock.set_system_time("2026-05-12T12:20:00")
    page = bench.open("glossary/")
    corner = page.locator(".rb-timer-over")
    expect(corner).to_contain_text("Ten minutes at brace: over since Tue")
    expect(corner).to_contain_text("min ago, while no page of this site was open and awake.")
    corner.get_by_role("button", name="Remove").click()
    expect(corner).to_be_empty()


def test_several_run_at_once_each_with_its_bow_and_a_length_that_is_none_is_told(bench):
    put(bench)
    page = open_bows(bench, "#" + BOW)
    page.locator(".rb-bow-timers summary").click()
    start(page, "glue")
    expect(lines(page)).to_contain_text("Glue, 31 64 in recurve: 24:00:00 left")
    page.locator("[data-wait=glue] [name=hours]").fill("0")
    start(page, "glue")
    expect(page.locator(".rb-timer-said")).to_have_text("Set how long: from one minute to 14 days.")
    page.locator("[data-wait=air] [name=minutes]").fill("25")
    start(page, "air")
    expect(lines(page)).to_have_count(2)
    expect(lines(page).last).to_contain_text("Clearing the air, 31 64 in recurve: 25:00 left")


def test_clearing_the_air_counts_the_minutes_of_the_answer(bench):
    """Six changes an hour and mixing 3: -ln(0.001) x 3 / 6 of an hour are 3.454 h."""
    page = bench.open_calculator("#known=changes&changes=6+per+hour&mixing_factor=3", id="clear-air")
    start(page, "air")
    expect(lines(page)).to_contain_text("Clearing the air: 03:27:")


def test_what_somebody_else_wrote_into_the_storage_is_only_text(bench):
    page = bench.open("glossary/")
    page.evaluate("kept => localStorage.setItem('rebrace.timers', kept)", json.dumps(HOSTILE))
    page.reload()
    expect(page.locator(".rb-timer-over")).to_contain_text(MARKUP)
    expect(page.locator(".rb-timer-over img")).to_have_count(0)
