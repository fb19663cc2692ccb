"""What a form has folded away: it says what it holds, opens where something is wrong, and needs no script."""

from playwright.sync_api import expect

from tests.pages.reading import problem, type_into, wait_for_state, wait_for_stillness


def fold(page, title):
    return page.locator("details.rb-fold").filter(has=page.get_by_text(title, exact=True)).first


def opened(visitor, address):
    """Return a page with a calculator as its reader finds it, with its folds shut."""
    page = visitor.open(address)
    page.locator(".rb-calculator[data-live]").wait_for()
    return page


def test_a_fold_says_what_it_holds_and_whose_that_is(visitor):
    page = opened(visitor, "calculators/tiller/")
    bow = fold(page, "The bow")
    expect(bow.locator("summary")).to_have_text(
        "The bow Draw weight 53 lb; Brace height 8 1/4 in and 3 more, as in the example")
    expect(bow.locator(".rb-field").first).to_be_hidden()
    bow.locator("summary").focus()
    page.keyboard.press("Enter")
    type_into(page, "draw_weight", "47 lb")
    wait_for_state(page, "current")
    expect(bow.locator(".rb-fold-held")).to_contain_text("Draw weight 47 lb")
    expect(bow.locator(".rb-fold-whose")).to_have_text("4 still the example's")
    bow.locator("summary").click()
    expect(bow.locator(".rb-field").first).to_be_hidden()


def test_a_fold_says_what_a_link_brought_for_it(visitor):
    page = opened(visitor, "calculators/tiller/#upper=7+in&lower=7+in&weight_error=1/2+lb")
    wait_for_state(page, "current")
    page.locator(".rb-sent button").click()
    read = fold(page, "How well you read")
    expect(read.locator(".rb-fold-held")).to_contain_text("Error of a weight 1/2 lb")
    expect(read.locator(".rb-fold-whose")).to_have_text("1 from the link")
    expect(read.locator(".rb-field").first).to_be_hidden()


def test_nothing_wrong_stays_behind_a_fold(visitor):
    page = opened(visitor, "calculators/tiller/#upper=7+in&lower=7+in&brace_height=90+in")
    expect(problem(page, "brace_height")).to_be_visible()
    expect(fold(page, "The bow").locator(".rb-fold-whose")).to_have_text("1 to mend")


def test_emptied_figures_are_counted_on_their_fold(visitor):
    page = opened(visitor, "calculators/tiller/")
    page.get_by_role("button", name="Type my own").click()
    expect(page.locator("#tiller-upper")).to_be_focused()
    expect(fold(page, "The bow").locator(".rb-fold-whose")).to_have_text("4 to fill in")


def test_folds_open_without_a_script(new_visitor):
    page = new_visitor(java_script_enabled=False).open("calculators/tiller/")
    bow = fold(page, "The bow")
    expect(bow.locator(".rb-field").first).to_be_hidden()
    bow.locator("summary").click()
    expect(bow.locator(".rb-field").first).to_be_visible()


def test_the_inspection_is_gone_through_in_steps(visitor):
    page = opened(visitor, "calculators/inspection/")
    steps = page.locator("details.rb-fold")
    steps.nth(0).locator(":scope > summary").click()
    for step in range(steps.count() - 1):
        steps.nth(step).locator(".rb-next-step").click()
        expect(steps.nth(step)).not_to_have_attribute("open", "")
        expect(steps.nth(step + 1)).to_have_attribute("open", "")
        expect(steps.nth(step + 1).locator(":scope > summary")).to_be_focused()
    expect(steps.last.locator(".rb-next-step")).to_be_hidden()


def test_on_a_phone_a_long_log_begins_with_its_newest_row(visitor):
    page = opened(visitor, "calculators/strokes/")
    rows = page.locator("[data-field=log] tbody tr")
    assert rows.count() > 2
    assert [row.is_visible() for row in rows.all()] == [False] * (rows.count() - 1) + [True]
    page.get_by_role("button", name="Show all rows").click()
    assert all(row.is_visible() for row in rows.all())


def test_a_row_that_is_wrong_is_shown(visitor):
    log = "0:0:53lb:5/16in:p120;30:45:5140lb:15/64in:same;30:40:50lb:1/8in:same"
    page = opened(visitor, "calculators/strokes/#log=" + log)
    expect(problem(page, "log")).to_be_visible()
    assert all(row.is_visible() for row in page.locator("[data-field=log] tbody tr").all())


def test_a_fold_is_wide_and_high_enough_for_a_thumb(visitor):
    page = opened(visitor, "calculators/next-batch/")
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": 800})
        wait_for_stillness(page)
        for each in page.locator(".rb-fold > summary").all():
            size = each.bounding_box()
            assert size["height"] >= 44, width
            assert size["width"] > 0.4 * min(width, 500), width
