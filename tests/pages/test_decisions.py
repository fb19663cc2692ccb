"""Deciding in the page: paths a step at a time, the inspection's list, marked words."""

import re

import pytest
from playwright.sync_api import expect

from calc.paths import catalog
from calc.paths.declare import trail
from tests.pages.reading import headline, open_folds
from tests.pages.test_axe import faults, faults_in_the_dark

PAGES = {"which-calculator": "begin/which/", "line": "inspect/line/"}


def steps(page):
    return page.locator(".rb-step:visible h3")


def answer(page, text):
    page.locator(".rb-step:visible .rb-answers").get_by_role("link", name=text, exact=True).click()


@pytest.mark.parametrize("id", catalog.IDS)
def test_a_path_is_walked_to_every_end(visitor, id):
    path = catalog.find(id)
    page = visitor.open(PAGES[id])
    for end in path.ends:
        for asked, given in trail(path, end.id):
            expect(page.locator(".rb-step:visible h3")).to_have_text(asked.text)
            answer(page, given.text)
        expect(page).to_have_url(visitor.site_url + PAGES[id] + f"#{id}-{end.id}")
        expect(steps(page)).to_have_text([end.verdict])
        way = page.locator(".rb-step:visible .rb-way strong")
        expect(way).to_have_text([given.text for _, given in trail(path, end.id)])
        page.get_by_role("link", name="Start again").click()


def test_the_keyboard_is_enough(visitor):
    page = visitor.open("begin/which/")
    page.locator(".rb-answers a").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".rb-step:visible h3")).to_be_focused()
    expect(page.locator(".rb-step:visible h3")).to_have_text("Inspection")
    page.go_back()
    expect(page.locator(".rb-step:visible h3")).to_have_text("What is it about?")


def test_an_address_holds_the_answers(visitor):
    page = visitor.open("inspect/line/#line-crack")
    expect(page.locator(".rb-step:visible h3")).to_have_text("A crack: wall only")
    assert page.locator(".rb-step:visible .rb-way li").count() == 3
    page.reload()
    expect(steps(page)).to_have_text(["A crack: wall only"])


def test_an_unknown_address_starts_at_the_start(visitor):
    page = visitor.open("inspect/line/#line-nowhere<b>")
    expect(page.locator(".rb-step:visible h3")).to_have_text("Which way does the line run?")


def test_paper_shows_the_answers_given_or_the_whole_path(visitor):
    page = visitor.open("inspect/line/")
    expect(page.locator(".rb-step:visible")).to_have_count(1)
    page.emulate_media(media="print")
    expect(steps(page)).to_have_count(page.locator(".rb-step").count())
    page.emulate_media(media="screen")
    answer(page, "Along the limb")
    page.emulate_media(media="print")
    expect(steps(page)).to_have_text(["Where does it lie?"])


def test_without_scripts_all_of_a_path_can_be_read(new_visitor):
    page = new_visitor(java_script_enabled=False).open("inspect/line/")
    expect(steps(page)).to_have_count(page.locator(".rb-step").count())
    page.get_by_role("link", name="Along the limb", exact=True).click()
    expect(page).to_have_url(re.compile("/inspect/line/#line-along$"))


def test_the_most_dangerous_tick_decides(visitor):
    page = visitor.open("inspect/decide/")
    page.locator(".rb-calculator[data-live]").wait_for()
    open_folds(page)
    page.get_by_label("Crazing", exact=True).check()
    page.get_by_label("A loose or split tip overlay", exact=True).check()
    expect(headline(page)).to_contain_text("Not yet")
    page.get_by_label("A crack across a limb", exact=True).check()
    expect(headline(page)).to_contain_text("Wall only")
    page.locator(".rb-check.rb-stop a", has_text="Retire a bow").click()
    expect(page.locator("h1")).to_contain_text("Retire a bow")


def test_a_marked_word_tells_its_meaning_to_keyboard_and_touch(visitor):
    page = visitor.open("tune/weight/")
    word = page.locator(".rb-term").first
    word.focus()
    expect(page.locator(".md-tooltip2--active")).to_be_visible()
    word.click()
    expect(page.locator("h1")).to_contain_text("Glossary")


@pytest.mark.parametrize("address", ["begin/which/", "inspect/line/#line-crack", "inspect/decide/",
                                     "lookup/check-values/"])
def test_pages_have_no_serious_fault(visitor, address):
    page = visitor.open(address)
    assert faults(page) == []
    assert faults_in_the_dark(page) == []
