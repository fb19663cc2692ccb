"""The example never answers for the reader's bow: its figures are marked until typed or confirmed."""

from playwright.sync_api import expect

from tests.pages.reading import box, type_into, wait_for_link, wait_for_state

MARKED = ".rb-field:has(> .rb-lent)"
CHECK = ".rb-check.rb-watch"


def test_one_own_figure_marks_the_others_and_says_so_in_the_verdict(visitor):
    page = visitor.open_calculator()
    expect(page.locator(".rb-standing")).to_contain_text("Worked example")
    assert page.locator(MARKED).count() == 0
    type_into(page, "upper", "7 1/2 in")
    wait_for_state(page, "current")
    expect(page.locator(CHECK).first).to_contain_text("still the worked example's")
    assert page.locator(".rb-check.rb-ok").count() == 0
    assert page.locator(MARKED).count() > 0
    assert page.locator('[data-field="upper"] .rb-lent').count() == 0
    expect(page.locator(".rb-peek-verdict")).to_be_visible()


def test_a_figure_can_be_confirmed_and_stays_so_after_a_reload(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2 in")
    wait_for_state(page, "current")
    while page.locator(".rb-lent button").count():
        before = page.locator(".rb-lent").count()
        page.locator(".rb-lent button").first.click()
        expect(page.locator(".rb-lent")).to_have_count(before - 1)
        wait_for_state(page, "current")
    expect(page.locator(CHECK).filter(has_text="worked example")).to_have_count(0)
    wait_for_link(page, "upper=7+1/2")
    wait_for_state(page, "current")
    page.reload()
    wait_for_state(page, "current")
    expect(page.locator(".rb-lent")).to_have_count(0)


def test_a_reload_does_not_make_the_example_the_readers(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2 in")
    wait_for_link(page, "upper=7+1/2")
    wait_for_state(page, "current")
    marked = page.locator(MARKED).count()
    page.reload()
    wait_for_state(page, "current")
    expect(page.locator(MARKED)).to_have_count(marked)


def test_what_a_link_leaves_out_is_not_the_senders(visitor):
    page = visitor.open_calculator("#upper=7+in")
    expect(page.locator(CHECK).first).to_contain_text("still the worked example's")
    assert page.locator('[data-field="lower"] .rb-lent').count() == 1
    assert page.locator('[data-field="upper"] .rb-lent').count() == 0


def test_the_examples_figures_can_be_emptied_and_brought_back(visitor):
    page = visitor.open_calculator("#upper=7+in")
    lower = box(page, "lower").input_value()
    page.get_by_role("button", name="Empty them").click()
    expect(box(page, "lower")).to_have_value("")
    expect(box(page, "upper")).to_have_value("7 in")
    page.get_by_role("button", name="Undo").click()
    expect(box(page, "lower")).to_have_value(lower)
