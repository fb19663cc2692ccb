"""One bow from its intake to the sheet that is handed over with it: on a phone alone, without a network."""

import re

from playwright.sync_api import expect

from calc.tables.findings import LOOKS
from tests.pages.printed import FORMATS, printed
from tests.pages.reading import open_folds, type_into, wait_for_state
from tests.pages.test_bows import add_bow, open_bows, timeline
from tests.pages.test_offline import KEPT
from tests.pages.test_photos import photograph, pick

SECRET = "MARKER"
IN_HAND = (
    ("bow", {"family": "recurve", "marked_letters": "64 in, 55 lb at 28 in", "marked_weight": "55 lb",
             "marked_length": "64 in", "riser_length": "19 in", "tips": "plain"}),
    ("owner", {"name": SECRET, "reach": SECRET}),
    ("archer", {"hold": "under", "draw": "27 in"}),
    ("look", {each.id: "yes" for each in LOOKS}),
    ("first_draw", {"to_draw": "28 in", "from_distance": "yes", "full": "yes", "sound": "no", "moved": "no"}),
    ("reading", {"weight": "53 lb", "at_draw": "28 in", "upper": "7 5/8 in", "lower": "7 5/16 in",
                 "measured": "fadeout", "brace": "8 1/4 in"}),
    ("agreed", {"weight": "45 lb", "at_draw": "28 in", "tiller": "1/16 in", "price": SECRET, "by": SECRET}),
)
AFTER = (
    ("reading", {"weight": "45.2 lb", "at_draw": "28 in", "upper": "7 5/8 in", "lower": "7 9/16 in",
                 "measured": "fadeout", "brace": "8 1/4 in"}),
    ("first_draw", {"to_draw": "28 in", "from_distance": "yes", "full": "yes", "sound": "no", "moved": "no"}),
    ("product", {"family": "one-part-urethane", "name": SECRET}),
    ("coat", {"role": "build", "standing": "laid"}),
    ("lettering", {"text": "64 in, 45 lb at 28 in"}),
    ("handover", {"next_look": "2027-06-13", "end": "done"}),
)
ON_THE_SHEET = ("Record of bow 31 64 in recurve", "53 lb 45.2 lb", "7 5/8 in, 7 5/16 in, 5/16 in",
                "7 5/8 in, 7 9/16 in, 1/16 in", "8 1/4 in 8 1/4 in", "Three fingers under", "45 lb at 28 in",
                "Lettering 64 in, 45 lb at 28 in", "one-part urethane, 1 coat", "Next look Sun 13 June 2027",
                "Owner", "Done by", "Received by")


def write_down(page, sheet, facts):
    entries = timeline(page).count()
    folded = page.locator(".rb-bow-sheets:not([open]) > summary")
    if folded.count():
        folded.tap()
    page.locator(f"button[data-open={sheet}]").tap()
    dialog = page.locator("dialog[open]")
    for name, text in facts.items():
        control = dialog.locator(f"[name={name}]").first
        if control.evaluate("control => control.localName") == "select":
            control.select_option(text)
        elif control.get_attribute("type") == "checkbox":
            control.check()
        else:
            control.fill(text)
    dialog.get_by_role("button", name="Save").tap()
    expect(page.locator("dialog[open]")).to_have_count(0)
    expect(timeline(page)).to_have_count(entries + 1)


def work_out_tiller(page):
    """Ask a calculator about the bow, and keep its answer with the bow."""
    page.locator(".rb-bow-job summary").tap()
    page.locator(".rb-bow-job a", has_text="Tiller").first.tap()
    wait_for_state(page, "current")
    expect(page.locator(".rb-headline")).to_contain_text("5/16 in larger")
    open_folds(page)
    type_into(page, "bow_length", "64 in")
    wait_for_state(page, "current")
    page.get_by_role("button", name="Keep in 31").tap()
    page.locator(".rb-keep-dialog").get_by_role("button", name="Keep", exact=True).tap()
    expect(page.locator(".rb-kept-told")).to_contain_text("Kept.")
    page.get_by_role("link", name="Its page").tap()
    expect(page.locator(".rb-bow-title")).to_be_visible()


def take_strokes_off(page):
    entries = timeline(page).count()
    page.get_by_role("button", name="Batch of strokes").tap()
    dialog = page.locator("dialog[open]")
    dialog.locator("[data-fact=lower_belly] [data-add='10']").tap()
    dialog.locator("[name=paper]").fill("P120")
    dialog.locator("button[type=submit]").tap()
    expect(timeline(page)).to_have_count(entries + 1)


def photograph_it(page):
    page.get_by_role("button", name="Photo", exact=True).tap()
    pick(page, "photo.jpg", photograph())
    dialog = page.locator("dialog.rb-photo[open]")
    expect(dialog.locator(".rb-photo-picked img")).to_be_visible()
    dialog.locator("[name=what]").fill("upper limb, belly")
    dialog.locator("[name=print]").select_option("record-sheet")
    dialog.get_by_role("button", name="Save").first.tap()
    expect(page.locator(".rb-photo-count")).to_contain_text("1 photo, ")


def test_a_bow_goes_from_intake_to_its_printed_sheet_on_a_phone_without_a_network(new_visitor):
    phone = new_visitor(has_touch=True, is_mobile=True)
    page = phone.open("bows/?offline=1")
    assert len(page.evaluate(KEPT)) == 1
    phone.context.set_offline(True)
    page = open_bows(phone)
    add_bow(page)
    for sheet, facts in IN_HAND:
        write_down(page, sheet, facts)
    photograph_it(page)
    work_out_tiller(page)
    take_strokes_off(page)
    for sheet, facts in AFTER:
        write_down(page, sheet, facts)

    page.get_by_role("button", name="Tell the owner").tap()
    link = page.locator("dialog.rb-tell a")
    expect(link).to_have_attribute("href", re.compile("/bow/#1[.]"))
    address = link.get_attribute("href")
    page.locator("dialog.rb-tell [data-do=close]").tap()

    page.get_by_role("button", name="Record sheet for print").tap()
    expect(page.locator(".rb-paper-photo img")).to_be_visible()
    for form in FORMATS:
        [sheet] = printed(page, form)
        assert sheet.is_whole()
        assert [text for text in ON_THE_SHEET if text not in sheet.words] == []
        assert sheet.pictures == 1
        assert SECRET not in sheet.words

    page.goto(address)
    said = page.locator(".rb-owner .rb-headline")
    expect(said).to_have_text("You have it back. What it measured stands below.")
    expect(page.locator(".rb-owner")).to_contain_text("It came in pulling 53.0 lb at a draw of 28 in")
    assert SECRET not in page.locator("body").inner_text()
    phone.complaints.clear()  # the browser reports each request that the network refused
