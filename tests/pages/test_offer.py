"""From a quote that a bow's record fills to its owner's phone: text, link, square, and what stands there."""

import re

from playwright.sync_api import expect

from tests.pages.reading import read_square, wait_for_state, wait_until
from tests.pages.test_axe import faults
from tests.pages.test_bow_bar import INVENTED, choose, open_bar, put, record

QUOTED = (
    *INVENTED,
    ("owner", {"name": "MARKER", "reach": "MARKER"}),
    ("agreed", {"weight": "45 lb", "at_draw": "28 in", "tiller": "1/16 in", "ready_by": "2026-06-13"}),
    ("quote", {"tasks": "inspect:0.5h:1h:1.5h;tune:2.5h:3.5h:6h", "materials": "finish:31.79",
               "holds_until": "2099-05-29"}),
    ("shop", {"rate": "47.13", "markup": "13.7 %", "tax": "0 %"}),
)
SMALL = {"width": 360, "height": 640}


def test_an_owner_reads_what_a_bowyer_offers_and_a_price_only_if_it_goes_along(visitor, new_visitor):
    visitor.context.grant_permissions(["clipboard-read", "clipboard-write"])
    put(visitor, facts=QUOTED)
    page = open_bar(visitor, id="quote")
    choose(page)
    wait_for_state(page, "current")
    page.get_by_role("button", name="Make a page for the owner").click()
    dialog = page.locator("dialog[open]")
    text = dialog.locator("textarea")
    expect(text).to_have_value(re.compile("to bring your bow from 53.0 lb to 45.0 lb at a draw of 28 in"))
    expect(text).not_to_have_value(re.compile("It comes to"))
    bare = dialog.locator("a").get_attribute("href")
    dialog.get_by_role("checkbox", name="The price goes along").check()
    expect(text).to_have_value(re.compile(r"It comes to about \d+\.\d\d"))
    link = dialog.locator("a").get_attribute("href")
    assert link != bare
    dialog.get_by_role("button", name="Show a QR code").click()
    assert read_square(dialog.locator(".rb-square")) == link
    assert faults(page, "dialog[open]") == []
    dialog.get_by_role("button", name="Copy it").click()
    expect(dialog.get_by_role("status")).to_have_text("Copied.")
    copied = page.evaluate("navigator.clipboard.readText()")
    assert copied == text.input_value() + "\n" + link
    wait_until(page, lambda: record(visitor)[-1]["sheet"] == "told")

    owner = new_visitor(viewport=SMALL, has_touch=True, is_mobile=True)
    for address, priced in ((link, True), (bare, False)):
        shown = owner.open("bow/" + address.partition("/bow/")[2])
        expect(shown.locator(".rb-owner .rb-headline")).to_contain_text("from 53.0 lb to 45.0 lb")
        whole = shown.locator(".rb-owner").inner_text()
        assert "Tiller, the string's distance" in whole
        assert "It holds until Fri 29 May 2099." in whole
        assert "Nobody can promise that it will not." in whole
        assert ("It comes to about" in whole) is priced
        assert not [each for each in ("MARKER", "47.13", "31.79", "13.7") if each in copied + whole]
        assert shown.evaluate("document.documentElement.scrollWidth") <= SMALL["width"]
        assert faults(shown) == []
        shown.goto("about:blank")  # the next address differs in its fragment alone
