"""A chapter with a calculator in it: its next step is not far, and all of the answer is one press away."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

DOCS = Path(__file__).parents[2] / "docs"
MOST_SCREENS = 8  # of a phone, from the heading that the calculator stands under to the next one
CHAPTERS = [page.relative_to(DOCS).with_suffix("").as_posix().removesuffix("/index") + "/"
            for page in sorted(DOCS.glob("*/*.md"))
            if re.search("^::: reckoning ", page.read_text(encoding="utf-8"), re.MULTILINE)]
SCREENS = """() => {
  const form = document.querySelector(".rb-calculator");
  const heads = [...document.querySelectorAll(".md-typeset h2")].filter((head) => head.offsetParent);
  const isThere = (head, where) => form.compareDocumentPosition(head) & where;
  const behind = heads.filter((head) => isThere(head, Node.DOCUMENT_POSITION_FOLLOWING));
  const before = heads.filter((head) => isThere(head, Node.DOCUMENT_POSITION_PRECEDING));
  return (behind[0].getBoundingClientRect().top - before.at(-1).getBoundingClientRect().top) / innerHeight;
}"""


def test_there_are_chapters_with_a_calculator():
    assert len(CHAPTERS) > 10


@pytest.mark.parametrize("address", CHAPTERS)
def test_the_next_step_of_a_chapter_is_not_far(visitor, address):
    page = visitor.open(address)
    page.locator(".rb-calculator[data-live]").wait_for()
    assert page.evaluate(SCREENS) <= MOST_SCREENS


def test_what_stands_behind_an_answer_is_folded_within_a_chapter(visitor):
    page = visitor.open("tune/tiller/")
    page.locator(".rb-calculator[data-live]").wait_for()
    behind = page.locator("details.rb-behind")
    expect(behind.locator(".rb-assumptions")).to_be_hidden()
    expect(page.locator(".rb-cautions")).to_be_visible()
    page.locator("#tiller-upper").fill("7 1/2 in")
    expect(page.locator(".rb-outcome")).to_have_attribute("data-own", "")
    expect(behind.locator(".rb-assumptions")).to_be_hidden()
    behind.locator(":scope > summary").click()
    expect(behind.locator(".rb-assumptions")).to_be_visible()
