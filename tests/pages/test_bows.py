"""The record of bows in a real browser: it is kept, taken back, handed over, and loses nothing."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.pages.test_axe import faults

SITE = Path(__file__).parents[2] / "site"
SMALL_PHONE = {"width": 360, "height": 640}
MOST_TAPS = 12
EACH = 200
REFUSED = "Object.defineProperty(window, 'indexedDB', {value: {open() { throw new Error('refused'); }}})"
ADD_MANY = """async ([store, from, count]) => {
  const { openStore, newId } = await import(store);
  const kept = await openStore();
  for (let each = 0; each < count; each += 1) {
    const id = newId();
    await kept.add("00000000000000", [{ id, text: JSON.stringify({ id, from }) }], null);
  }
}"""
COUNT = "async ([store]) => (await (await import(store)).openStore()).count('00000000000000')"


def store_address(visitor):
    [path] = SITE.glob("assets/js-*/store.mjs")
    return visitor.site_url + path.relative_to(SITE).as_posix()


def open_bows(visitor, fragment=""):
    page = visitor.open("bows/" + fragment)
    page.locator(".rb-bows[data-ready]").wait_for()
    return page


def add_bow(page, tag="31", title="64 in recurve"):
    page.get_by_role("button", name="Add a bow").click()
    dialog = page.locator("dialog[open]")
    dialog.locator("[name=tag]").fill(tag)
    dialog.locator("[name=title]").fill(title)
    dialog.locator("[name=length]").fill("64")
    dialog.get_by_role("button", name="Save").click()
    expect(page.locator(".rb-bow-title")).to_have_text(f"{tag} {title}")


def open_form(page, sheet):
    page.locator(".rb-bow-sheets summary").click()
    page.locator(f"button[data-open={sheet}]").click()
    return page.locator("dialog[open]")


def try_to_write(page, sheet, **facts):
    dialog = open_form(page, sheet)
    for name, text in facts.items():
        dialog.locator(f"[name={name}]").fill(text)
    dialog.get_by_role("button", name="Save").click()
    return dialog


def write(page, sheet, **facts):
    expect(try_to_write(page, sheet, **facts)).to_have_count(0)


def timeline(page):
    return page.locator(".rb-timeline > li")


@pytest.fixture
def bows(visitor):
    page = open_bows(visitor)
    add_bow(page)
    return page


def test_a_bow_is_added_and_still_there_after_a_reload(bows):
    expect(timeline(bows)).to_have_count(1)
    expect(timeline(bows)).to_contain_text("64 in")
    bows.reload()
    expect(bows.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
    bows.get_by_role("link", name="All bows").click()
    expect(bows.locator(".rb-bows-list li")).to_contain_text("31 64 in recurve")
    expect(bows.locator(".rb-bows-list li")).to_contain_text("Next: ")
    expect(bows.locator(".rb-bows-kept")).not_to_be_empty()


def test_what_cannot_be_read_is_said_at_its_field_and_nothing_is_kept(bows):
    bows.locator(".rb-bow-sheets summary").click()
    bows.locator("button[data-open=reading]").click()
    dialog = bows.locator("dialog[open]")
    dialog.locator("[name=weight]").fill("heavy")
    dialog.get_by_role("button", name="Save").click()
    expect(dialog.locator(".rb-problems")).to_contain_text("is not a weight or force")
    expect(dialog.locator("[name=weight]")).to_have_attribute("aria-invalid", "true")
    expect(timeline(bows)).to_have_count(1)


def test_an_unfinished_entry_waits_as_a_draft(bows):
    bows.locator(".rb-bow-sheets summary").click()
    bows.locator("button[data-open=reading]").click()
    bows.locator("dialog[open] [name=brace]").fill("8 1/4 in")
    bows.reload()
    expect(bows.locator(".rb-bow-title")).to_be_visible()
    bows.locator(".rb-bow-sheets summary").click()
    bows.locator("button[data-open=reading]").click()
    expect(bows.locator("dialog[open] [name=brace]")).to_have_value("8 1/4 in")


def test_a_batch_and_a_reading_take_few_taps_on_a_small_phone(new_visitor):
    page = open_bows(new_visitor(viewport=SMALL_PHONE, has_touch=True, is_mobile=True))
    add_bow(page)
    write(page, "reading", weight="53 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in")
    page.reload()  # as somebody opens it by its address
    expect(timeline(page)).to_have_count(2)
    taps = []

    def tap(target):
        box = target.bounding_box()
        assert box["height"] >= 64
        assert box["width"] >= 64
        assert box["y"] >= 0
        assert box["y"] + box["height"] <= SMALL_PHONE["height"]
        target.tap()
        taps.append(target)

    batch = page.get_by_role("button", name="Batch of strokes")
    tap(batch)
    dialog = page.locator("dialog[open]")
    for tile in ("upper_belly", "lower_belly"):
        tap(dialog.locator(f"[data-fact={tile}] [data-add='10']"))
        tap(dialog.locator(f"[data-fact={tile}] [data-add='1']"))
        tap(dialog.locator(f"[data-fact={tile}] [data-add='1']"))
    tap(dialog.locator("[data-do=save-and-measure]"))
    less = page.locator("dialog[open] [data-fact=weight] [data-step='-1']")
    tap(less)
    expect(page.locator("dialog[open] [name=weight]")).to_have_value("52.9 lb")
    tap(less)
    expect(page.locator("dialog[open] [name=weight]")).to_have_value("52.8 lb")
    tap(page.locator("dialog[open] [data-fact=upper] [data-step='-1']"))
    expect(page.locator("dialog[open] [name=upper]")).to_have_value("7 19/32 in")
    tap(page.locator("dialog[open] button[type=submit]"))
    expect(page.locator("dialog[open]")).to_have_count(0)
    assert len(taps) <= MOST_TAPS
    expect(page.locator(".rb-toast")).to_contain_text(re.compile(r"Saved \d\d:\d\d\."))
    expect(timeline(page)).to_have_count(4)
    expect(timeline(page).first).to_contain_text("52.8 lb")
    expect(timeline(page).first).not_to_contain_text("7 5/16 in")  # was not touched, so it is no reading
    expect(timeline(page).nth(1)).to_contain_text("12")


def test_a_count_is_taken_back_and_survives_a_killed_page(bows):
    bows.get_by_role("button", name="Batch of strokes").click()
    tile = bows.locator("dialog[open] [data-fact=lower_back]")
    for _ in range(3):
        tile.locator("[data-add='1']").click()
    tile.locator("[data-add='-1']").click()
    expect(tile.locator("output")).to_have_text("2")
    bows.reload()
    bows.get_by_role("button", name="Batch of strokes").click()
    expect(tile.locator("output")).to_have_text("2")


def test_the_last_deed_is_undone_and_the_undoing_too(bows):
    write(bows, "reading", brace="8 1/4 in")
    bows.locator(".rb-toast").get_by_role("button", name="Undo").click()
    expect(bows.locator(".rb-struck")).to_have_count(1)
    bows.locator(".rb-toast").get_by_role("button", name="Undo").click()
    expect(bows.locator(".rb-struck")).to_have_count(0)
    expect(bows.locator(".rb-bow-columns")).to_contain_text("8 1/4 in")


def test_any_entry_is_struck_out_and_stays_to_be_seen(bows):
    write(bows, "reading", brace="9 1/4 in")
    timeline(bows).filter(has_text="9 1/4 in").get_by_role("button", name="Strike out").click()
    expect(bows.locator(".rb-struck")).to_contain_text("9 1/4 in")
    expect(bows.locator(".rb-bow-columns")).not_to_contain_text("9 1/4 in")


def test_two_tabs_add_at_once_and_nothing_is_lost(visitor):
    one = open_bows(visitor)
    other = visitor.context.new_page()
    other.goto(visitor.site_url + "bows/")
    store = store_address(visitor)
    for page, name in ((one, "one"), (other, "other")):
        page.evaluate(f"args => {{ window.done = ({ADD_MANY})(args); }}", [store, name, EACH])
    for page in (one, other):
        page.evaluate("window.done")
    assert one.evaluate(COUNT, [store]) == 2 * EACH


def test_another_tab_sees_what_was_added(bows):
    other = bows.context.new_page()
    other.goto(bows.url)
    expect(timeline(other)).to_have_count(1)
    write(bows, "reading", brace="8 1/4 in")
    expect(timeline(other)).to_have_count(2)


def saved_file(page, name="Save to a file"):
    with page.expect_download() as waiting:
        page.get_by_role("button", name=name).click()
    return Path(waiting.value.path()).read_text(encoding="utf-8"), waiting.value.suggested_filename


def take_in(page, text, name="bow.html"):
    page.locator(".rb-bows-take:visible input").set_input_files(
        {"name": name, "mimeType": "text/html", "buffer": text.encode()})


def test_a_file_goes_out_and_comes_in_on_another_device_twice(bows, new_visitor):
    write(bows, "reading", brace="8 1/4 in")
    text, name = saved_file(bows)
    assert name == "bow-31-64-in-recurve.html"
    other = open_bows(new_visitor())
    take_in(other, text)
    expect(other.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
    expect(timeline(other)).to_have_count(2)
    take_in(other, text)
    expect(other.locator(".rb-bows-notice")).to_contain_text("Took in 0 of 2 entries")
    expect(timeline(other)).to_have_count(2)


@pytest.mark.parametrize(("answer", "bows_then"), [("other", 2), ("same", 1), ("neither", 1)])
def test_another_bow_with_the_same_tag_is_asked_about(bows, new_visitor, answer, bows_then):
    text, _ = saved_file(bows)
    other = open_bows(new_visitor())
    add_bow(other, title="66 in longbow")
    other.get_by_role("link", name="All bows").click()
    take_in(other, text)
    said = "Here: 31 66 in longbow. In the file: 31 64 in recurve."
    expect(other.locator("dialog.rb-which")).to_contain_text(said)
    other.locator(f"dialog[open] [data-do={answer}]").click()
    expect(other.locator("dialog[open]")).to_have_count(0)
    open_all = other.get_by_role("link", name="All bows")
    if answer != "neither":
        open_all.click()
    expect(other.locator(".rb-bows-list > li")).to_have_count(bows_then)


HOSTILE = "</script><img src=x onerror=alert(1)><b>bold</b>"


def test_hostile_texts_stay_texts(visitor, new_visitor):
    page = open_bows(visitor)
    add_bow(page, title=HOSTILE)
    text, _ = saved_file(page)
    assert HOSTILE not in text
    other = open_bows(new_visitor())
    take_in(other, text)
    expect(other.locator(".rb-bow-title")).to_have_text("31 " + HOSTILE)
    assert other.locator(".rb-bow img, .rb-bow-title b").count() == 0


def test_what_is_no_record_changes_nothing(bows):
    notice = bows.locator(".rb-bows-notice")
    for text in ("", "no file", "<script>alert(1)</script>", "[" * 100_000, '{"entries": 7}',
                 json.dumps([{"id": "<b>", "at": "x", "sheet": "bow"}])):
        take_in(bows, text)
        expect(notice).to_contain_text("Nothing was taken from it")
        expect(timeline(bows)).to_have_count(1)
        notice.evaluate("notice => notice.replaceChildren()")  # so that the next file has to be answered


def test_a_removed_bow_comes_back(bows):
    bows.get_by_role("button", name="Remove this bow").click()
    expect(bows.locator(".rb-bows-none")).to_be_visible()
    bows.reload()
    bows.locator(".rb-bows-bin summary").click()
    bows.get_by_role("button", name="Bring back").click()
    bows.get_by_role("link", name="31 64 in recurve").click()
    expect(timeline(bows)).to_have_count(1)


def test_a_bow_that_is_not_here_is_said_to_be_elsewhere(visitor):
    page = open_bows(visitor, "#01k2f7m3q9xw4t")
    expect(page.locator(".rb-bows-notice")).to_contain_text("This bow is not on this device")


def test_where_storage_is_refused_the_page_itself_remembers(visitor):
    visitor.context.add_init_script(REFUSED)
    page = open_bows(visitor)
    expect(page.locator(".rb-bows-notice")).to_contain_text("This window forgets")
    add_bow(page)
    write(page, "reading", brace="8 1/4 in")
    text, _ = saved_file(page)
    assert "8 1/4 in" in text


def test_a_store_that_is_cleared_under_the_page_is_said_and_leaves_a_file(bows):
    bows.evaluate("new Promise((done) => { indexedDB.deleteDatabase('rebrace').onsuccess = done; })")
    expect(bows.locator(".rb-bows-notice")).to_contain_text("has been cleared")
    bows.locator(".rb-bow-sheets summary").click()
    bows.locator("button[data-open=reading]").click()
    bows.locator("dialog[open] [name=brace]").fill("8 1/4 in")
    bows.locator("dialog[open]").get_by_role("button", name="Save").click()
    expect(bows.locator(".rb-bows-notice")).to_contain_text("did not keep that")
    bows.locator("dialog[open]").get_by_role("button", name="Close").click()
    with bows.expect_download() as waiting:
        bows.locator(".rb-bows-notice button").click()
    assert "8 1/4 in" in Path(waiting.value.path()).read_text(encoding="utf-8")


def test_the_readings_go_out_as_a_table(bows):
    write(bows, "reading", weight="53 lb", at_draw="28 in")
    text, name = saved_file(bows, "Readings as a table (CSV)")
    assert name == "readings.csv"
    assert text.startswith("moment,sheet")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_lists_bows_and_dialogs_have_no_serious_fault(new_visitor, scheme):
    page = open_bows(new_visitor(color_scheme=scheme))
    assert faults(page) == []
    add_bow(page)
    write(page, "reading", weight="53 lb", at_draw="28 in")
    assert faults(page) == []
    for opener in ("[data-do=quick-batch]", "[data-do=quick-reading]"):
        page.locator(opener).click()
        assert faults(page) == []
        page.locator("dialog[open] [data-do=close]").click()
    page.locator("button[data-open=reading]").click()
    assert faults(page) == []


def test_without_a_script_it_says_what_it_needs(new_visitor):
    page = new_visitor(java_script_enabled=False).open("bows/")
    expect(page.locator(".rb-bows noscript p")).to_contain_text("This part needs JavaScript")
    expect(page.locator(".rb-bows button:visible")).to_have_count(0)


NOTE_THE_ANSWER = """new MutationObserver(() => {
  if (document.querySelector(".rb-outcome[data-state=current]")) window.answeredAt ??= performance.now();
}).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["data-state"] })"""
ONE_TASK_MS = 10  # what sets a fetch going and what notes the answer run in one task, in either order
FETCHED = f"""performance.getEntriesByType("resource")
  .map(({{ name, startTime }}) => [name, startTime >= answeredAt - {ONE_TASK_MS}])"""


def test_a_shared_link_fetches_what_keeps_bows_behind_its_answer(visitor):
    visitor.context.add_init_script(NOTE_THE_ANSWER)
    page = visitor.open_calculator("#upper=7+5/8+in")
    page.locator(".rb-bar[data-ready]").wait_for()
    of_the_record = re.compile(r"/(bow-bar|bows|store|quick|sheets|exchange)[-.\w]*\.mjs|record\.pack")
    found = [behind for name, behind in page.evaluate(FETCHED) if of_the_record.search(name)]
    assert found
    assert all(found)
