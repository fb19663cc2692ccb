"""Pictures that a reader unfolds, and pictures that move."""

from playwright.sync_api import expect

FETCHED = """() => performance.getEntriesByType("resource")
                      .filter(({name}) => name.includes("/signs/")).length"""


def test_a_small_picture_is_fetched_once_a_reader_unfolds_it(visitor):
    page = visitor.open_calculator("", "inspection")
    field = page.locator(".rb-field[data-field=crack_across]")
    field.get_by_label("A crack across a limb", exact=True).check()
    expect(page.locator(".rb-headline")).to_contain_text("Wall only")
    assert page.evaluate(FETCHED) == 0
    field.locator("summary").click()
    picture = field.get_by_role("img")
    expect(picture).to_be_visible()
    page.wait_for_function("picture => picture.naturalWidth > 0", arg=picture.element_handle())
    assert page.evaluate(FETCHED) == 1


def test_a_moving_picture_stands_still_when_asked_to(new_visitor):
    page = new_visitor(reduced_motion="no-preference").open("measure/draw-curve/")
    figure = page.locator(".rb-moving")
    moving, still = figure.locator(".rb-film"), figure.locator(".rb-film-still")
    assert moving.evaluate("film => film.getAnimations()[0].animationName") == "rb-film"
    expect(still).to_be_hidden()
    figure.get_by_label("Stand still").check()
    expect(still).to_be_visible()
    expect(moving).to_be_hidden()
    assert moving.evaluate("film => film.getAnimations().length") == 0
    figure.get_by_label("Stand still").uncheck()
    page.emulate_media(reduced_motion="reduce")
    expect(still).to_be_visible()
    expect(moving).to_be_hidden()
    expect(figure.get_by_label("Stand still")).to_be_hidden()
    page.emulate_media(media="print", reduced_motion="no-preference")
    expect(still).to_be_visible()
    expect(moving).to_be_hidden()


def test_templates_come_out_of_the_printer_at_one_to_one(visitor):
    """An inch is 96 px of a style sheet: CSS Values and Units Module Level 3, section 6.2."""
    page = visitor.open("shape/grip/")
    page.emulate_media(media="print")
    templates = page.locator(".rb-template svg")
    expect(templates).to_have_count(2)
    for index in range(2):
        bar = templates.nth(index).locator("path").first.evaluate("bar => bar.getBBox().width")
        scale = templates.nth(index).evaluate("svg => svg.getScreenCTM().a")
        assert abs(bar * scale - 2 * 96) < 0.5
