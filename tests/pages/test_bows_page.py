"""A bow's page: what was read over the strokes, answers kept, calculators in order, what was foretold."""

import re
from pathlib import Path

import icalendar
from playwright.sync_api import expect

from tests.pages.reading import chart_seen
from tests.pages.test_bow_bar import BOW, INVENTED, choose, open_bar, put
from tests.pages.test_bows import SMALL_PHONE, open_bows

LOG = (
    *INVENTED,
    ("strokes", {"upper_belly": "12", "lower_belly": "18", "paper": "P120"}),
    ("reading", {"weight": "52 lb", "at_draw": "28 in", "upper": "7 9/16 in", "lower": "7 5/16 in"}),
    ("strokes", {"upper_belly": "12", "lower_belly": "18", "paper": "P120"}),
    ("reading", {"weight": "51 lb", "at_draw": "28 in", "upper": "7 1/2 in", "lower": "7 5/16 in"}),
    ("strokes", {"upper_belly": "12", "lower_belly": "18", "paper": "P120"}),
)


def test_weight_and_tiller_are_drawn_over_the_strokes_with_their_figures(visitor):
    put(visitor, facts=LOG)
    page = open_bows(visitor, "#" + BOW)
    for chart in ("weight-history", "tiller-history"):
        chart_seen(page.locator(f"[data-chart={chart}] .rb-plot"))
    page.locator("[data-chart=weight-history] summary").click()
    expect(page.locator("[data-chart=weight-history] .rb-data-table tbody tr")).to_have_count(3)
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_the_strings_line_goes_from_a_reading_into_the_charts_of_the_bow_and_of_strokes(visitor):
    put(visitor, facts=(*LOG[:-1], ("agreed", {"weight": "45 lb", "at_draw": "28 in", "tiller": "1/16 in"}),
                        ("reading", {"upper_offset_tip": "1/64 in", "lower_offset_tip": "-3/32 in"})))
    page = open_bows(visitor, "#" + BOW)
    figures = page.locator("[data-chart=tiller-history] .rb-data-table tbody tr")
    expect(figures.filter(has_text="Lower, near the tip")).to_have_count(1)
    page.locator("[data-do=quick-reading]").click()
    page.locator("dialog[open] .rb-quick-more summary").click()
    offset = page.locator("dialog[open] [name=lower_offset_tip]")
    expect(offset).to_have_value("-3/32 in")
    page.locator("dialog[open] [data-fact=lower_offset_tip] [data-step='1']").click()
    expect(offset).to_have_value("-5/64 in")
    page.locator("dialog[open] button[type=submit]").click()
    expect(figures.filter(has_text="Lower, near the tip")).to_have_count(2)
    page.locator(".rb-bow-job summary").click()
    page.locator(".rb-bow-job").get_by_role("link", name="Strokes").click()
    line = page.locator(".rb-outcome [data-chart=line]")
    chart_seen(line.locator(".rb-plot"))
    row = line.locator(".rb-data-table tbody tr").filter(has_text="Lower, near the tip")
    expect(row).to_contain_text("-0.078 in")


def test_a_kept_answer_is_held_against_today(visitor):
    put(visitor)
    page = open_bar(visitor)
    choose(page)
    expect(page.locator(".rb-headline")).to_be_visible()
    said = page.locator(".rb-headline").inner_text()
    page.locator(".rb-keep-open").click()
    page.locator("dialog[open]").get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator(".rb-kept-told")).to_contain_text("Kept.")
    page = open_bows(visitor, "#" + BOW)
    page.locator(".rb-bow-answers summary").click()
    expect(page.locator(".rb-bow-answers li")).to_contain_text(said)
    page.get_by_role("button", name="What has changed since").click()
    same = "Nothing: the record tells the same figures today."
    expect(page.locator(".rb-bow-answers")).to_contain_text(same)
    page.get_by_role("link", name="Open its figures again").click()
    expect(page.locator(".rb-headline")).to_have_text(said)


def test_the_jobs_calculators_open_with_this_bow(visitor):
    put(visitor)
    page = open_bows(visitor, "#" + BOW)
    page.locator(".rb-bow-job summary").click()
    page.locator(".rb-bow-job").get_by_role("link", name="Draw curve").click()
    page.wait_for_url("**/calculators/draw-curve/")
    expect(page.locator(".rb-standing")).to_contain_text("Figures of this bow")


def test_what_was_foretold_stands_beside_what_is_read_without_scrolling(new_visitor):
    visitor = new_visitor(viewport=SMALL_PHONE, has_touch=True, is_mobile=True)
    put(visitor, facts=LOG)
    page = open_bows(visitor, "#" + BOW)
    page.locator("[data-do=quick-reading]").tap()
    line = page.locator("dialog[open] .rb-foretold")
    expect(line).to_contain_text(re.compile(r"50(\.\d)? lb|49\.9 lb"))
    page.locator("dialog[open] [name=weight]").fill("47 lb")
    expect(line).to_have_attribute("data-level", "watch")
    bottom = page.locator("dialog[open] button[type=submit]").bounding_box()
    assert bottom["y"] + bottom["height"] <= SMALL_PHONE["height"]


def test_the_screen_stays_on_while_strokes_are_counted(visitor):
    visitor.context.add_init_script("""
      window.held = 0;
      Object.defineProperty(navigator, "wakeLock", { value: { request: async () => {
        window.held += 1;
        return { release: () => { window.held -= 1; } };
      } } });""")
    put(visitor)
    page = open_bows(visitor, "#" + BOW)
    page.locator("[data-do=quick-batch]").click()
    page.wait_for_function("() => window.held === 1")
    page.locator("dialog[open] [data-do=close]").click()
    page.wait_for_function("() => window.held === 0")


def test_two_bows_with_coats_are_put_in_turn_and_given_to_a_calendar(visitor):
    coats = (("product", {"family": "one-part-urethane"}), ("coats", {"build_coats": "2"}),
             ("coat", {"role": "build", "temperature": "77 °F"}))
    for bow, tag in ((BOW, "31"), (BOW[:12] + "50", "32")):
        put(visitor, bow, (("bow", {"tag": tag, "title": "64 in recurve"}), *coats))
    page = open_bows(visitor)
    lines = page.locator(".rb-bows-across li")
    expect(lines).to_have_count(2)
    expect(lines.nth(1)).to_contain_text("gets its coat at that hour")
    with page.expect_download() as waiting:
        page.locator("[data-do=calendar-all]").click()
    assert waiting.value.suggested_filename == "all-bows.ics"
    events = icalendar.Calendar.from_ical(Path(waiting.value.path()).read_bytes()).walk("VEVENT")
    assert sorted(str(each["SUMMARY"]) for each in events) == [
        f"{tag}: {name}" for tag in ("31", "32")
        for name in ("build coat 1", "build coat 2", "string and first draw")]
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
