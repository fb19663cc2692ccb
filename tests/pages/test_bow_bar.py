"""A calculator that knows the bow on the bench: filled from its record, kept there if its reader says so."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from calc.record import tasks
from tests.pages.reading import (
    box,
    headline,
    problem,
    type_into,
    wait_for_link,
    wait_for_state,
    wait_until,
)
from tests.pages.test_axe import faults

SITE = Path(__file__).parents[2] / "site"
BOW = "01k2f7m3q9xw00"
OTHER = "01k2f7m3q9xw99"
AT = "2026-05-12T18:10+02:00"
INVENTED = (
    ("bow", {"tag": "31", "title": "64 in recurve", "family": "recurve", "length": "64 in",
             "riser_length": "19 in", "tips": "plain"}),
    ("archer", {"hold": "under", "draw": "27 in"}),
    ("reading", {"weight": "53 lb", "at_draw": "28 in", "brace": "8 1/4 in", "upper": "7 5/8 in",
                 "lower": "7 5/16 in", "measured": "fadeout"}),
)
ADD = """async ([store, bow, entries, head]) => {
  const { openStore } = await import(store);
  await (await openStore()).add(bow, entries, head);
}"""
REMOVE = "async ([store, bow]) => (await (await import(store)).openStore()).remove(bow)"
RECORD = "async ([store, bow]) => JSON.parse(await (await (await import(store)).openStore()).record(bow))"


def store_address(visitor):
    [path] = SITE.glob("assets/js-*/store.mjs")
    return visitor.site_url + path.relative_to(SITE).as_posix()


def put(visitor, bow=BOW, facts=INVENTED):
    """Put a bow into the browser's store, an entry a sheet."""
    entries = []
    for number, (sheet, said) in enumerate(facts):
        id = f"{bow[:12]}{(int(bow[12:]) + number) % 100:02d}" if number else bow
        entries.append({"id": id, "at": AT, "sheet": sheet, "facts": said})
    head = tasks.answer({"task": "head", "units": "imperial", "entries": json.dumps(entries)})
    rows = [{"id": each["id"], "text": json.dumps(each)} for each in entries]
    page = visitor.open("glossary/")
    page.evaluate(ADD, [store_address(visitor), bow, rows, head])


def record(visitor, bow=BOW):
    return visitor.page.evaluate(RECORD, [store_address(visitor), bow])


def open_bar(visitor, fragment="", id="tiller"):
    page = visitor.open_calculator(fragment, id=id)
    page.locator(".rb-bar[data-ready]").wait_for()
    return page


def choose(page, label="31 64 in recurve"):
    page.locator(".rb-which-bow").select_option(label=label)
    expect(page.locator(".rb-standing")).to_contain_text("Figures of this bow")


@pytest.fixture
def bar(visitor):
    put(visitor)
    return open_bar(visitor)


def origin(page, field):
    return page.locator(f'[data-field="{field}"] .rb-origin')


def test_a_bow_fills_the_form_and_each_figure_says_where_it_comes_from(bar):
    example = box(bar, "brace_height").get_attribute("value")
    choose(bar)
    wait_for_state(bar, "current")
    expect(box(bar, "upper")).to_have_value("7 5/8 in")
    expect(origin(bar, "upper")).to_have_text("Of 12 May.")
    assert "#" not in bar.url
    expect(bar.locator(".rb-lent")).to_have_count(0)
    bar.get_by_role("button", name="Undo").click()
    expect(bar.locator(".rb-standing")).to_contain_text("Worked example")
    expect(box(bar, "brace_height")).to_have_value(example)
    expect(bar.locator(".rb-origin")).to_have_count(0)


def test_what_a_record_does_not_tell_is_empty_and_says_how_to_learn_it(visitor):
    put(visitor, facts=INVENTED[:2])
    page = open_bar(visitor)
    choose(page)
    expect(box(page, "brace_height")).to_have_value("")
    expect(origin(page, "brace_height")).to_contain_text("Not written down yet.")
    expect(page.locator(".rb-bar-missing")).to_contain_text("Brace height")
    expect(problem(page, "brace_height")).to_be_hidden()  # nobody made a mistake
    wait_for_state(page, "none")  # no answer of the example's stands for this bow
    expect(page.locator(".rb-headline")).to_be_hidden()
    known = (("upper", "7 5/8"), ("lower", "7 5/16"), ("brace_height", "8 1/4"), ("draw_weight", "53"))
    for field, text in known:
        type_into(page, field, text)
    wait_for_state(page, "current")
    expect(page.locator(".rb-bar-missing")).to_be_empty()


def test_what_is_typed_over_a_bow_survives_reload_and_goes_back_on_request(visitor, bar):
    choose(bar)
    wait_for_state(bar, "current")
    before = record(visitor)
    type_into(bar, "upper", "7 1/2")
    expect(origin(bar, "upper")).to_have_text("Typed now. The record says 7 5/8 in, 12 May.")
    wait_for_state(bar, "current")
    wait_until(bar, f"import('{store_address(visitor)}').then(async ({{ openStore }}) => "
                    f"(await (await openStore()).draft('calculator:tiller:{BOW}'))[0][1] === '7 1/2')")
    bar.reload()
    expect(bar.locator(".rb-standing")).to_contain_text("Figures of this bow")
    expect(box(bar, "upper")).to_have_value("7 1/2")
    expect(box(bar, "lower")).to_have_value("7 5/16 in")
    assert "#" not in bar.url
    bar.get_by_role("button", name="Start again").click()
    expect(box(bar, "upper")).to_have_value("7 5/8 in")
    bar.get_by_role("button", name="Undo").click()
    expect(box(bar, "upper")).to_have_value("7 1/2")
    assert record(visitor) == before  # typing alone changes no record


def test_an_answer_is_kept_with_what_was_typed_for_it_and_taken_back(visitor, bar):
    choose(bar)
    wait_for_state(bar, "current")
    type_into(bar, "brace_height", "8 3/8")
    wait_for_state(bar, "current")
    said = headline(bar).inner_text()
    bar.get_by_role("button", name="Keep in 31 64 in recurve").click()
    dialog = bar.locator("dialog[open]")
    expect(dialog).to_contain_text(said)
    expect(dialog.locator("li")).to_have_text(re.compile(r"Brace height.*8 3/8 in \(was 8 1/4 in\)"))
    dialog.get_by_role("button", name="Keep", exact=True).click()
    expect(bar.locator(".rb-kept-told")).to_contain_text("Kept.")
    entries = {each["sheet"]: each for each in record(visitor)}  # of each sheet the newest
    answer, reading = entries["answer"], entries["reading"]
    assert answer["facts"]["headline"] == said
    assert answer["facts"]["calculator"] == "tiller"
    assert "brace_height=8+3/8+in" in answer["facts"]["pairs"]
    assert "typed: brace_height" in answer["facts"]["origin"]
    assert reading["facts"] == {"brace": "8 3/8 in"}
    expect(box(bar, "brace_height")).to_have_value("8 3/8 in")
    expect(origin(bar, "brace_height")).to_contain_text("Of ")
    bar.locator(".rb-kept-told button").click()
    expect(bar.locator(".rb-kept-told")).to_contain_text("Taken back.")
    expect(box(bar, "brace_height")).to_have_value("8 1/4 in")


def test_an_answer_kept_in_a_bow_that_another_tab_removed_leaves_a_bow_with_a_name(visitor, bar):
    type_into(bar, "brace_height", "8 3/8")
    wait_for_state(bar, "current")
    bar.locator(".rb-keep-open").click()
    dialog = bar.locator("dialog[open]")
    expect(dialog).to_contain_text(headline(bar).inner_text())
    bar.evaluate(REMOVE, [store_address(visitor), BOW])
    dialog.get_by_role("button", name="Keep", exact=True).click()
    expect(bar.locator(".rb-kept-told")).to_contain_text("Kept.")
    bar.reload()
    bar.locator(".rb-bar[data-ready]").wait_for()
    expect(bar.locator(".rb-which-bow option")).to_have_text(["No bow", "A bow without a tag"])


def test_a_link_wins_over_the_chosen_bow_and_changes_no_entry(visitor, bar):
    choose(bar)
    before = record(visitor)
    page = open_bar(visitor, "#upper=7+in&lower=7+in")
    expect(page.locator(".rb-standing")).to_contain_text("still the worked example's")
    expect(box(page, "upper")).to_have_value("7 in")
    wait_for_state(page, "current")
    page.get_by_role("button", name="Keep in a bow").click()
    dialog = page.locator("dialog[open]")
    expect(dialog.get_by_role("checkbox")).not_to_be_checked()
    dialog.get_by_role("button", name="Cancel").click()
    assert record(visitor) == before
    choose(page)  # and from the link back to the bow
    expect(box(page, "upper")).to_have_value("7 5/8 in")
    expect(page).to_have_url(re.compile(r"tiller/$"))


def test_a_copied_link_says_the_same_to_somebody_without_the_record(visitor, bar):
    choose(bar)
    wait_for_state(bar, "current")
    said = headline(bar).inner_text()
    visitor.context.grant_permissions(["clipboard-read", "clipboard-write"])
    bar.get_by_role("button", name="Copy link").click()
    expect(bar.locator(".rb-saved")).to_contain_text("Link copied")
    link = bar.evaluate("navigator.clipboard.readText()")
    assert "bow=" not in link
    assert BOW not in link
    bar.evaluate("sessionStorage.clear()")
    page = visitor.open_calculator("#" + link.partition("#")[2])
    expect(headline(page)).to_have_text(said)


def test_leaving_a_bow_or_a_link_brings_back_what_was_there(bar):
    type_into(bar, "upper", "7 1/2 in")
    wait_for_link(bar, "upper=7+1/2+in")
    wait_for_state(bar, "current")
    choose(bar)
    expect(box(bar, "upper")).to_have_value("7 5/8 in")
    bar.locator(".rb-which-bow").select_option(label="No bow")
    expect(box(bar, "upper")).to_have_value("7 1/2 in")
    wait_for_link(bar, "upper=7+1/2+in")
    expect(bar.locator(".rb-lent").first).to_be_visible()  # the rest is the example's, as before
    choose(bar)
    expect(box(bar, "upper")).to_have_value("7 5/8 in")
    bar.evaluate("location.hash = 'upper=7+in&lower=7+in&units=imperial'")
    expect(box(bar, "upper")).to_have_value("7 in")
    expect(bar.locator(".rb-origin")).to_have_count(0)
    bar.go_back()
    expect(box(bar, "upper")).to_have_value("7 5/8 in")
    expect(bar.locator(".rb-standing")).to_contain_text("Figures of this bow")
    expect(bar).to_have_url(re.compile(r"tiller/$"))


def test_what_is_agreed_says_so_and_a_batch_is_written_down_first(visitor):
    put(visitor, facts=(*INVENTED, ("agreed", {"weight": "45 lb", "at_draw": "28 in"})))
    page = open_bar(visitor, id="weight-reduction")
    choose(page)
    expect(box(page, "weight_wanted")).to_have_value("45 lb")
    expect(origin(page, "weight_wanted")).to_have_text("Agreed 12 May.")
    expect(page.locator(".rb-first")).to_be_hidden()
    page = open_bar(visitor, id="strokes")
    expect(page.locator(".rb-standing")).to_contain_text("Figures of this bow")
    page.get_by_role("link", name="Add a batch").click()
    expect(page.locator("dialog.rb-quick[open] h2")).to_have_text("Batch of strokes")
    page.reload()
    page.locator(".rb-bows[data-ready]").wait_for()
    expect(page.locator("dialog[open]")).to_have_count(0)


def test_stale_readings_say_so_in_the_answer_and_nothing_is_in_order(visitor):
    strokes = ("strokes", {"upper_belly": "12", "lower_belly": "18"})
    put(visitor, facts=(*INVENTED, strokes))
    page = open_bar(visitor)
    choose(page)
    wait_for_state(page, "current")
    expect(origin(page, "upper")).to_contain_text("before the last change to the bow")
    said = page.locator(".rb-outcome .rb-watch").filter(has_text="Read before the last change")
    expect(said).to_be_visible()
    expect(page.locator(".rb-outcome .rb-ok")).to_have_count(0)
    expect(page.locator(".rb-bar-stops .rb-check.rb-stop").first).to_be_visible()


def test_one_bow_never_shows_another_bows_figures(visitor):
    put(visitor)
    put(visitor, OTHER, (("bow", {"tag": "32", "title": "longbow", "family": "longbow"}),))
    page = open_bar(visitor)
    choose(page)
    type_into(page, "upper", "7 1/2")
    choose(page, "32 longbow")
    for field in ("upper", "lower", "brace_height", "bow_length"):
        expect(box(page, field)).to_have_value("")
    choose(page)
    expect(box(page, "upper")).to_have_value("7 1/2")
    page = visitor.open_calculator(id="draw-curve")
    expect(page.locator(".rb-standing")).to_contain_text("Figures of this bow")


def test_without_any_bow_one_quiet_line_leads_there(visitor):
    page = open_bar(visitor)
    expect(page.get_by_role("link", name="Write it down once")).to_be_visible()
    expect(page.locator(".rb-which-bow")).to_be_hidden()
    expect(page.locator(".rb-keep-open")).to_be_hidden()


def test_typing_ones_own_empties_every_fact_of_the_example(visitor):
    page = visitor.open_calculator()
    page.get_by_role("button", name="Type my own").click()
    for field in ("upper", "lower", "brace_height", "bow_length"):
        expect(box(page, field)).to_have_value("")
    expect(box(page, "upper")).to_be_focused()
    expect(page.locator(".rb-state")).to_contain_text("some figures are empty")
    expect(page.locator(".rb-state")).to_contain_text("the worked example's answer, not yours")
    expect(problem(page, "lower")).to_be_hidden()  # nobody made a mistake
    expect(page.locator(".rb-problems")).to_be_hidden()
    page.get_by_role("button", name="Undo").click()
    expect(box(page, "upper")).not_to_have_value("")


def test_every_calculator_takes_a_bow_and_no_fact_of_the_example_answers_for_it(visitor):
    put(visitor)
    open_bar(visitor)
    choose(visitor.page)
    for id in ("weight-reduction", "arrow-match", "bow-model", "grip", "string", "strokes", "tracking"):
        page = visitor.open_calculator(id=id)
        state = re.compile("Figures of this bow|still the worked")
        expect(page.locator(".rb-standing")).to_contain_text(state)
        expect(page.locator(".rb-origin").first).to_be_attached()
        typed = page.locator(".rb-field:not([hidden]):has(> .rb-lent) input[type=text]")
        assert typed.count() == 0, id


def test_the_bar_is_sound_and_narrow(visitor):
    put(visitor)
    page = open_bar(visitor)
    page.set_viewport_size({"width": 320, "height": 640})
    choose(page)
    wait_for_state(page, "current")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    assert page.locator(".rb-bar").bounding_box()["height"] <= 120
    assert faults(page) == []


def test_it_works_where_storage_is_refused(visitor):
    visitor.context.add_init_script(
        "Object.defineProperty(window, 'indexedDB', {value: {open() { throw new Error('refused'); }}})")
    page = open_bar(visitor, "#upper=7+in")
    wait_for_state(page, "current")
    type_into(page, "upper", "7 1/2")
    wait_for_link(page, "upper=7+1/2")


def test_the_answer_to_a_link_waits_for_nothing_of_it(visitor):
    visitor.context.route("**/assets/js-*/bow-bar-*.mjs", lambda _: None)  # never arrives
    page = visitor.open_calculator("#upper=7+in&lower=7+in")
    wait_for_state(page, "current")
    expect(page.locator(".rb-bar")).to_have_count(0)
