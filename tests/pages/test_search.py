"""The search box, as readers use it."""

import pytest
from playwright.sync_api import expect

from tests.pages.searched import QUERIES

DESK = {"width": 1280, "height": 800}
LINK = "each.querySelector('.md-search-result__link').getAttribute('href')"
FOUND = f"results => results.map(each => {LINK})"
QUIET_MS = 30_000


@pytest.fixture(scope="module")
def box(browser, site_url):
    """Return a desk with the search open, for all questions: the theme fetches its index once a visit."""
    context = browser.new_context(viewport=DESK)
    page = context.new_page()
    complaints = []
    page.on("console", lambda message: complaints.append(message.text) if message.type != "log" else None)
    page.goto(site_url)
    page.locator("input.md-search__input").click()
    yield page
    context.close()
    assert complaints == []


def ask(page, query):
    """Type into the search box; the theme listens to keys."""
    box = page.locator("input.md-search__input")
    box.fill(query)
    box.press("End")


def pages_found(page, query, site_url):
    """Type a question; return the addresses of the pages that are found, best first."""
    ask(page, "")
    expect(page.locator(".md-search-result__meta")).to_have_text("Type to start searching")
    ask(page, query)
    expect(page.locator(".md-search-result__meta")).to_contain_text("matching document", timeout=QUIET_MS)
    addresses = page.locator(".md-search-result__item").evaluate_all(FOUND)
    return [address.split("?")[0].split("#")[0].removeprefix(site_url) for address in addresses]


@pytest.mark.parametrize(("query", "wanted"), QUERIES, ids=[query for query, _ in QUERIES])
def test_the_right_page_is_among_the_first_three(box, site_url, query, wanted):
    found = pages_found(box, query, site_url)
    assert found
    assert not wanted or set(found[:3]) & set(wanted)


def test_nothing_is_found_for_what_nobody_wrote(box):
    ask(box, "zzyzx")
    expect(box.locator(".md-search-result__meta")).to_have_text("No matching documents")


@pytest.mark.parametrize("word", ["Grip", "String", "Finish", "Tiller"])
def test_a_calculator_is_told_from_the_page_of_the_same_name(box, site_url, word):
    pages_found(box, word, site_url)
    titles = box.locator(".md-search-result__item h1").all_inner_texts()
    assert f"{word} calculator" in titles
    assert len(set(titles)) == len(titles)


def test_what_was_found_is_marked_and_leads_there(new_visitor):
    page = new_visitor(viewport=DESK).open()
    page.locator("input.md-search__input").press_sequentially("superglue")
    first = page.locator(".md-search-result__item").first
    expect(first.locator("mark").first).to_have_text("Cyanoacrylate")
    first.get_by_role("link").nth(1).click()
    page.wait_for_url("**/safety/?h=cyanoacrylate#cyanoacrylate")
    expect(page.locator("article mark").first).to_have_text("Cyanoacrylate", ignore_case=True)


def test_words_that_do_not_come_are_asked_for_until_they_do(visitor):
    asked = []

    def lose_twice(route):
        asked.append(route.request.url)
        if len(asked) > 2:
            route.continue_()
        else:
            route.abort()

    visitor.context.route("**/assets/search-*/*", lose_twice)
    page = visitor.open("safety/")
    page.locator('.md-header__button[for="__search"]').first.click()
    page.locator("input.md-search__input").press_sequentially("tiller")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    assert len(asked) == 3
    visitor.complaints.clear()  # the browser reports the two


def test_the_words_of_the_book_are_fetched_by_whoever_searches_and_by_nobody_else(visitor):
    asked = []
    visitor.context.on("request", lambda request: asked.append(request.url))
    page = visitor.open("safety/")
    page.wait_for_load_state("networkidle")
    assert [url for url in asked if url.endswith("search-worker.mjs")]
    assert not [url for url in asked if "/assets/search-" in url]
    page.locator('.md-header__button[for="__search"]').first.click()
    page.locator("input.md-search__input").press_sequentially("tiller")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
    assert len([url for url in asked if "/assets/search-" in url]) == 1
