"""The last job is offered, never imposed."""

from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_link, wait_for_state


def test_the_last_job_can_be_taken_up_again(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_state(page, "current")
    wait_for_link(page, "upper=7+1/2")
    said = headline(page).inner_text()
    visitor.open()
    page = visitor.open_calculator()
    assert box(page, "upper").input_value() == box(page, "upper").get_attribute("value")
    expect(page.locator(".rb-kept li")).to_contain_text(said)
    page.get_by_role("button", name="Take up").click()
    expect(box(page, "upper")).to_have_value("7 1/2")
    expect(headline(page)).to_have_text(said)


def test_a_link_wins_over_memory(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_link(page, "upper=7+1/2")
    visitor.open()
    page = visitor.open_calculator("#upper=6+in")
    expect(box(page, "upper")).to_have_value("6 in")


def test_start_again_brings_back_the_example(visitor):
    page = visitor.open_calculator()
    example = headline(page).inner_text()
    type_into(page, "upper", "8 in")
    wait_for_state(page, "current")
    page.get_by_role("button", name="Start again").click()
    expect(headline(page)).to_have_text(example)
    assert box(page, "upper").input_value() == box(page, "upper").get_attribute("value")
    page.get_by_role("button", name="Undo").click()
    expect(box(page, "upper")).to_have_value("8 in")
    wait_for_link(page, "upper=8+in")


def test_a_reload_keeps_what_was_typed(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 7/8")
    wait_for_link(page, "upper=7+7/8")
    page.reload()
    expect(box(page, "upper")).to_have_value("7 7/8")
    wait_for_state(page, "current")


REFUSED = """for (const name of ["localStorage", "sessionStorage", "indexedDB"])
  Object.defineProperty(window, name, {configurable: true, get() { throw new DOMException("refused") }});"""


def test_works_where_storage_is_refused(visitor):
    visitor.context.add_init_script(REFUSED)
    page = visitor.open_calculator("#upper=7+in")
    expect(headline(page)).to_be_visible()
    page = visitor.open()
    for media in ("light", "dark"):
        page.locator(".md-header__option label:not([hidden])").click()
        expect(page.locator("body")).to_have_attribute(
            "data-md-color-media", f"(prefers-color-scheme: {media})")
    page.locator('.md-header__button[for="__search"]').first.click()
    page.locator("input.md-search__input").press_sequentially("tiller")
    expect(page.locator(".md-search-result__link").first).to_be_visible()
