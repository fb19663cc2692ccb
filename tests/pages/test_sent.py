"""A link with figures, opened by one who did not make it, and by the one who did."""

import re

from playwright.sync_api import expect

from tests.pages.reading import box, type_into, wait_for_link, wait_for_state, wait_until
from tests.pages.test_axe import faults

SENT = "calculators/{}/#{}"
TILLER = "upper=7+1/2+in&lower=7+5/16+in"
FORM = ".rb-form"
NOTE = ".rb-sent"
WORK = ".rb-sent-work"


def opened(visitor, id, figures):
    page = visitor.open(SENT.format(id, figures))
    wait_for_state(page, "current")
    return page


def test_an_answer_comes_before_the_figures_that_somebody_sent(visitor):
    page = opened(visitor, "tiller", TILLER)
    expect(page.locator(NOTE)).to_contain_text("Somebody sent you these figures.")
    expect(page.locator(WORK)).to_contain_text("for the one who works on the bow")
    expect(page.locator(FORM)).to_be_hidden()
    wait_until(page, """() => {
      const [note, answer] = document.querySelectorAll(".rb-sent, .rb-headline");
      return note.getBoundingClientRect().top >= 0 && answer.getBoundingClientRect().bottom <= innerHeight;
    }""")
    assert faults(page) == []
    button = page.locator(NOTE).get_by_role("button")
    fields = page.locator(".rb-field:not([hidden])").count()
    expect(button).to_have_text(f"Show the {fields} figures behind this")
    button.focus()
    page.keyboard.press("Enter")
    expect(page.locator(FORM)).to_be_visible()
    expect(button).to_have_attribute("aria-expanded", "true")
    expect(button).to_be_focused()
    expect(box(page, "upper")).to_have_value("7 1/2 in")
    page.keyboard.press("Enter")
    expect(page.locator(FORM)).to_be_hidden()
    page.emulate_media(media="print")
    expect(page.locator(FORM)).to_be_visible()
    expect(page.locator(NOTE)).to_be_hidden()


def test_nothing_is_folded_for_the_one_whose_figures_they_are(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2 in")
    wait_for_state(page, "current")
    wait_for_link(page, "upper=7+1/2")
    page.reload()
    wait_for_state(page, "current")
    expect(page.locator(FORM)).to_be_visible()
    type_into(page, "upper", "not a figure")  # nothing is kept of it but its address
    wait_for_link(page, "not+a+figure")
    page.goto(visitor.site_url + "glossary/")
    page.go_back()
    expect(box(page, "upper")).to_have_value("not a figure")
    expect(page.locator(FORM)).to_be_visible()
    expect(page.locator(NOTE)).to_be_hidden()


def test_a_form_that_was_unfolded_stays_so_and_one_with_a_mistake_is_never_folded(visitor):
    page = opened(visitor, "tiller", TILLER)
    page.locator(NOTE).get_by_role("button").click()
    page.reload()
    wait_for_state(page, "current")
    expect(page.locator(FORM)).to_be_visible()
    page.evaluate("location.hash = '#upper=9999+in'")
    expect(page.locator(NOTE)).to_be_visible()
    expect(page.locator(FORM)).to_be_visible()
    expect(page.locator(".rb-problems")).to_contain_text("9999")


def test_a_link_of_the_book_itself_was_sent_by_nobody(visitor):
    page = visitor.open("calculators/strokes/")
    page.locator(".rb-calculator[data-live]").wait_for()
    page.evaluate("""() => {
      const link = document.createElement("a");
      link.href = "../tiller/#upper=7+1/2+in";
      link.textContent = "A link of the book";
      document.querySelector(".rb-calculator").before(link);
    }""")
    page.get_by_role("link", name="A link of the book").click()
    expect(page.locator('[data-calculator="tiller"][data-live]')).to_be_visible()
    wait_for_state(page, "current")
    expect(box(page, "upper")).to_have_value("7 1/2 in")
    expect(page.locator(FORM)).to_be_visible()


def test_a_chosen_unit_alone_is_nobodys_figure(visitor):
    page = opened(visitor, "tiller", "units=metric")
    expect(page.locator(NOTE)).to_be_hidden()
    expect(page.locator(".rb-standing")).to_have_text(re.compile("^Worked example"))
