"""From a bow's page to its owner's phone: the link, the message, and what stands there."""

import re

from playwright.sync_api import expect

from tests.pages.reading import read_square
from tests.pages.test_axe import faults
from tests.pages.test_bow_bar import BOW, INVENTED, put, record
from tests.pages.test_bows import open_bows

SAID = (
    *INVENTED,
    ("owner", {"name": "MARKER", "reach": "MARKER"}),
    ("agreed", {"weight": "45 lb", "at_draw": "28 in", "price": "MARKER"}),
    ("repair", {"what": "MARKER", "limb": "upper"}),
)
SMALL = {"width": 360, "height": 640}


def tell(visitor):
    put(visitor, facts=SAID)
    page = open_bows(visitor, "#" + BOW)
    page.get_by_role("button", name="Tell the owner").click()
    dialog = page.locator("dialog[open]")
    dialog.locator("textarea").wait_for()
    return page, dialog


def fragment_of(dialog):
    return dialog.locator("a").get_attribute("href").partition("/bow/")[2]


def test_an_owner_reads_on_a_small_phone_what_was_sent(visitor, new_visitor):
    visitor.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page, dialog = tell(visitor)
    before = fragment_of(dialog)
    dialog.locator("[name=word]").fill("Shall the letters stay?")
    dialog.locator("[name=word]").blur()
    expect(dialog.locator("a")).not_to_have_attribute("href", re.compile(re.escape(before) + "$"))
    dialog.get_by_role("radio", name="Which arrows").check()
    expect(dialog.locator("textarea")).to_have_value(re.compile("Which arrows do you have"))
    dialog.locator("textarea").fill("In my own words.")
    link = fragment_of(dialog)
    dialog.get_by_role("button", name="Show a QR code").click()
    assert read_square(dialog.locator(".rb-square")) == f"{visitor.site_url}bow/{link}"
    dialog.get_by_role("button", name="Copy it").click()
    expect(dialog.get_by_role("status")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied == f"In my own words.\n{visitor.site_url}bow/{link}"
    expect(page.locator(".rb-timeline")).to_contain_text("In my own words.")
    assert record(visitor)[-1]["facts"] == {"text": "In my own words.", "way": "copied"}

    owner = new_visitor(viewport=SMALL, has_touch=True, is_mobile=True)
    shown = owner.open("bow/" + link)
    answer = shown.locator(".rb-owner .rb-headline")
    expect(answer).to_contain_text("It is on the bench")
    box = answer.bounding_box()
    assert box["y"] + box["height"] <= SMALL["height"]
    expect(shown.locator(".rb-owner-word")).to_contain_text("Shall the letters stay?")
    expect(shown.locator(".rb-owner")).to_contain_text("It came in pulling 53.0 lb at a draw of 28 in")
    assert "MARKER" not in shown.locator("body").inner_text()
    assert shown.evaluate("indexedDB.databases().then((found) => found.length)") == 0
    assert shown.evaluate("document.documentElement.scrollWidth") <= SMALL["width"]
    shown.get_by_role("button", name="metric").tap()
    expect(shown.locator(".rb-owner")).to_contain_text("235.8 N")
    assert faults(shown) == []


def test_a_link_that_lost_its_end_and_none_at_all_say_so(visitor):
    page = visitor.open("bow/")
    expect(page.locator(".rb-owner-none")).to_be_visible()
    page.evaluate("location.hash = '#1.bW9tZW50.9'")
    expect(page.locator(".rb-owner-page")).to_contain_text("has lost its end on the way")
    expect(page.locator(".rb-owner-none")).to_be_hidden()
    page.evaluate("location.hash = '#1.<img src=x onerror=alert(1)>.9'")
    expect(page.locator(".rb-owner-page")).to_contain_text("This link")
    expect(page.locator(".rb-owner-page img")).to_have_count(0)
