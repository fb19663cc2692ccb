"""What could lose a bow: several tabs, a killed page, a full or cleared store, odd files, no connection."""

import json

import pytest
from playwright.sync_api import expect

from calc.record.entries import read_entries
from calc.record.file import page as page_of
from tests.pages.reading import wait_until
from tests.pages.test_bows import (
    REFUSED,
    add_bow,
    open_bows,
    open_form,
    saved_file,
    store_address,
    take_in,
    timeline,
    try_to_write,
    write,
)
from tests.pages.test_offline import KEPT

BOW = "00000000000000"
AT = "2026-05-12T18:10+02:00"
MANY = 300
BEGIN_TO_SAVE = """([store, bow, count]) => import(store).then(async ({ openStore, newId }) => {
  const ids = Array.from({ length: count }, () => newId());
  const rows = ids.map((id) => ({ id, text: JSON.stringify({ id }) }));
  window.saving = (await openStore()).add(bow, rows, { title: "saved in one go", entries: count });
})"""
COUNT = "([store, bow]) => import(store).then(async ({ openStore }) => (await openStore()).count(bow))"
FULL = """() => {
  IDBObjectStore.prototype.add = () => { throw new DOMException("no room", "QuotaExceededError"); };
}"""

ROWS = """() => new Promise((resolve) => indexedDB.open("rebrace").onsuccess = ({ target: { result } }) => {
  const stores = ["entries", "bows"].map((name) => result.transaction(name).objectStore(name).getAll());
  stores[1].onsuccess = () => resolve(stores.map((store) => store.result));
})"""
"""What another tab would write of a bow: its entries and its head."""
AS_HEADS_ARE_READ = """([entries, heads]) => {
  const open = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (names, ...more) {
    if (names === "bows" && more[0] === "readonly") {
      IDBDatabase.prototype.transaction = open;
      const other = this.transaction(["entries", "bows"], "readwrite");
      for (const row of entries) other.objectStore("entries").put(row);
      for (const row of heads) other.objectStore("bows").put(row);
    }
    return open.call(this, names, ...more);
  };
}"""
"""Have such rows written right before the heads of all bows are read the next time."""
TAPPED_AND_KILLED = """(tile) => {
  for (let tap = 0; tap < 3; tap += 1) tile.querySelector("[data-add='1']").click();
  location.reload();
}"""
KILLED_ONCE_SAVED = """() => {
  const begin = IDBDatabase.prototype.transaction;
  let isSaved = false;
  IDBDatabase.prototype.transaction = function (names, mode) {
    if (isSaved && mode === "readwrite") throw new Error("this page is no more");
    const transaction = begin.call(this, names, mode);
    const saves = mode === "readwrite" && [names].flat().includes("entries");
    if (saves) transaction.addEventListener("complete", () => (isSaved = true));
    return transaction;
  };
}"""


@pytest.fixture
def bows(visitor):
    page = open_bows(visitor)
    add_bow(page)
    return page


def test_a_page_killed_in_the_middle_of_a_save_leaves_all_or_nothing(visitor):
    store = store_address(visitor)
    for wait in (0, 5, 20, 60):
        page = open_bows(visitor)
        before = page.evaluate(COUNT, [store, BOW])
        page.evaluate(BEGIN_TO_SAVE, [store, BOW, MANY])
        page.wait_for_timeout(wait)
        page.close()
        visitor.page = visitor.context.new_page()
        after = open_bows(visitor).evaluate(COUNT, [store, BOW])
        assert after - before in (0, MANY)


def test_a_full_store_is_said_and_what_was_typed_stands(bows):
    bows.evaluate(FULL)
    dialog = try_to_write(bows, "reading", brace="8 1/4 in")
    expect(dialog.locator(".rb-problems")).to_contain_text("no room left")
    expect(bows.locator(".rb-bows-notice")).to_contain_text("no room left")
    expect(dialog.locator("[name=brace]")).to_have_value("8 1/4 in")
    bows.reload()
    expect(timeline(bows)).to_have_count(1)
    expect(open_form(bows, "reading").locator("[name=brace]")).to_have_value("8 1/4 in")


def test_all_bows_go_out_in_one_file_and_come_in_elsewhere(bows, new_visitor):
    write(bows, "reading", brace="8 1/4 in")
    bows.get_by_role("link", name="All bows").click()
    add_bow(bows, tag="32", title="66 in longbow")
    bows.get_by_role("link", name="All bows").click()
    text, name = saved_file(bows, name="Save all to one file")
    assert name == "all-bows.html"
    other = open_bows(new_visitor())
    take_in(other, text)
    expect(other.locator(".rb-bows-notice")).to_contain_text("31 64 in recurve: Took in 2 entries.")
    other.get_by_role("link", name="All bows").click()
    expect(other.locator(".rb-bows-list > li")).to_have_count(2)


def test_one_file_in_two_tabs_at_once_is_one_bow(bows, new_visitor):
    text, _ = saved_file(bows)
    one = open_bows(new_visitor())
    other = one.context.new_page()
    other.goto(one.url)
    other.locator(".rb-bows[data-ready]").wait_for()
    for page in (one, other):
        take_in(page, text)
    for page in (one, other):
        expect(page.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
        expect(page.locator(".rb-bows-notice")).to_contain_text("Took in")
    one.get_by_role("link", name="All bows").click()
    expect(one.locator(".rb-bows-list > li")).to_have_count(1)


def test_a_bow_that_another_tab_takes_in_meanwhile_is_nobody_s_namesake(bows, new_visitor):
    text, _ = saved_file(bows)
    other = open_bows(new_visitor())
    other.evaluate(AS_HEADS_ARE_READ, bows.evaluate(ROWS))
    take_in(other, text)
    expect(other.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
    expect(other.locator(".rb-bows-notice")).to_contain_text("Took in 0 of")


def test_what_was_tapped_last_survives_a_page_killed_at_once(bows):
    bows.get_by_role("button", name="Batch of strokes").click()
    tile = bows.locator("dialog[open] [data-fact=lower_back]")
    tile.evaluate(TAPPED_AND_KILLED)
    bows.get_by_role("button", name="Batch of strokes").click()
    expect(tile.locator("output")).to_have_text("3")


def test_strokes_written_down_are_not_offered_again_by_a_page_killed_right_then(bows):
    bows.get_by_role("button", name="Batch of strokes").click()
    tile = bows.locator("dialog[open] [data-fact=lower_back]")
    tile.locator("[data-add='1']").click()
    bows.evaluate(KILLED_ONCE_SAVED)
    bows.locator("dialog[open] button[type=submit]").click()
    expect(bows.locator("dialog[open]")).to_have_count(0)
    bows.reload()
    expect(timeline(bows)).to_have_count(2)
    bows.get_by_role("button", name="Batch of strokes").click()
    expect(tile.locator("output")).to_have_text("0")


def test_all_bows_are_removed_only_after_a_file_was_offered(bows):
    bows.get_by_role("link", name="All bows").click()
    bows.get_by_role("button", name="Remove all my bows").click()
    bows.get_by_role("button", name="Keep them").click()
    expect(bows.locator(".rb-bows-list > li")).to_have_count(1)
    bows.get_by_role("button", name="Remove all my bows").click()
    with bows.expect_download() as waiting:
        bows.get_by_role("button", name="Save to a file, then remove").click()
    assert waiting.value.suggested_filename == "all-bows.html"
    expect(bows.locator(".rb-bows-notice")).to_contain_text("All bows are removed")
    expect(bows.locator(".rb-bows-list > li")).to_have_count(0)
    bows.reload()
    expect(bows.locator(".rb-bows-none")).to_be_visible()


def test_a_file_of_a_later_release_loses_nothing_on_its_way_through(visitor):
    entries = [{"id": "01k2f7m3q9xw76", "at": AT, "sheet": "bow", "facts": {"tag": "33", "title": "longbow"}},
               {"id": "01k2f7m3q9xw77", "at": AT, "sheet": "moonlight", "facts": {"glow": "3"},
                "halo": {"deep": [1, 2]}}]
    text = page_of(read_entries(json.dumps(entries))[0], "imperial")
    text = text.replace(' data-form="1"', ' data-form="9"')
    assert 'data-form="9"' in text
    page = open_bows(visitor)
    take_in(page, text)
    expect(timeline(page)).to_have_count(2)
    expect(page.locator(".rb-bows-notice")).to_contain_text("from a later release")
    expect(timeline(page).filter(has_text="moonlight")).to_have_count(1)
    again, _ = saved_file(page)
    assert '"halo"' in again
    assert '"glow"' in again


def test_bows_work_without_a_connection(visitor):
    page = visitor.open("bows/?offline=1")
    page.evaluate(KEPT)
    wait_until(page, "Boolean(navigator.serviceWorker.controller)")
    visitor.context.set_offline(True)
    page = open_bows(visitor)
    add_bow(page)
    write(page, "reading", brace="8 1/4 in")
    page.reload()
    expect(timeline(page)).to_have_count(2)
    visitor.complaints.clear()


def test_back_and_forward_between_bows_and_list(bows):
    bows.get_by_role("link", name="All bows").click()
    expect(bows.locator(".rb-bows-list > li")).to_have_count(1)
    bows.go_back()
    expect(bows.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
    bows.go_forward()
    expect(bows.locator(".rb-bows-list > li")).to_be_visible()


COUNT_CONNECTIONS = """
window.storesOpened = window.storesClosed = 0;
const { open } = IDBFactory.prototype;
IDBFactory.prototype.open = function (...all) {
  window.storesOpened += 1;
  return open.apply(this, all);
};
const { close } = IDBDatabase.prototype;
IDBDatabase.prototype.close = function () {
  window.storesClosed += 1;
  return close.apply(this);
};
"""


def go_within_the_visit(page, place):
    page.evaluate(f"document.querySelector('a[href$=\"/{place}/\"]').click()")
    page.wait_for_url(f"**/{place}/")
    expect(page.locator(".rb-bows")).to_have_count(0)  # the address changes first, the page a moment later


def test_a_visit_that_is_over_keeps_no_store_open(visitor):
    visitor.context.add_init_script(COUNT_CONNECTIONS)
    page = open_bows(visitor)
    add_bow(page)
    for _ in range(2):
        go_within_the_visit(page, "glossary")
        page.go_back()
        page.locator(".rb-bows[data-ready]").wait_for()
    expect(page.locator(".rb-bow-title")).to_have_text("31 64 in recurve")
    write(page, "reading", brace="8 1/4 in")
    expect(timeline(page)).to_have_count(2)
    wait_until(page, "storesOpened === 3 && storesClosed === 2")


def test_where_storage_is_refused_bows_live_as_long_as_the_visit(visitor):
    visitor.context.add_init_script(REFUSED)
    page = open_bows(visitor)
    add_bow(page)
    go_within_the_visit(page, "glossary")
    page.go_back()
    page.locator(".rb-bows[data-ready]").wait_for()
    expect(page.locator(".rb-bow-title")).to_have_text("31 64 in recurve")


def test_bows_that_a_later_release_keeps_are_shown_and_never_written(bows):
    newer = """() => new Promise((resolve, reject) => {
      const asked = indexedDB.open("rebrace", 99);
      asked.onsuccess = () => resolve(asked.result.close());
      asked.onerror = reject;
    })"""
    bows.evaluate(newer)
    expect(bows.locator(".rb-bows-notice")).to_contain_text("before the update")
    bows.reload()
    expect(bows.locator(".rb-bows-notice")).to_contain_text("before the update")
    expect(timeline(bows)).to_have_count(1)
    dialog = try_to_write(bows, "reading", brace="8 1/4 in")
    expect(dialog.locator(".rb-problems")).to_contain_text("before the update")
    expect(dialog.locator("[name=brace]")).to_have_value("8 1/4 in")


def test_a_bow_is_saved_while_the_browser_still_asks_its_reader_whether_to_keep_it(visitor):
    visitor.context.add_init_script("navigator.storage.persist = () => new Promise(() => {});")
    page = open_bows(visitor)
    add_bow(page)
    expect(timeline(page)).to_have_count(1)
