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
