"""Links are written by anybody: their content is text, and only so much of it."""

from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, problem, unfold

SCRIPTS = {
    "script element": "#upper=%3Cscript%3Ewindow.hit%3D1%3C/script%3E",
    "image with handler": "#upper=<img src=x onerror=window.hit=1>",
    "in a name": "#%3Cimg%20src%3Dx%20onerror%3Dwindow.hit%3D1%3E=7",
    "javascript address": "#upper=javascript:window.hit=1",
    "quotes": "#upper=%22%27%60%5D&%22%5D%5B=1",
    "prototype": "#__proto__=1&constructor=2&toString=3&hasOwnProperty=4&upper=7+in",
    "malformed percent": "#upper=%E0%A4%A&lower=%&x=%zz",
    "broken surrogate": "#upper=%ED%A0%80",
    "null bytes": "#upper=%00%00&%00=1",
    "template": "#upper=${window.hit=1}{{window.hit=1}}",
    "unknown choice": "#hold=%3Cb%3E&measured=tips",
    "unknown units": "#upper=7&units=furlongs",
    "only separators": "#=&=&=",
    "repeated": "#upper=7+in&upper=8+in&upper=9+in",
}


@pytest.mark.parametrize("fragment", SCRIPTS.values(), ids=SCRIPTS.keys())
def test_nothing_in_a_link_is_executed(visitor, fragment):
    page = visitor.open("calculators/tiller/" + fragment)
    settled(page)
    assert page.evaluate("window.hit === undefined && ({}).polluted === undefined")
    assert page.locator(".rb-calculator img, .rb-calculator script:not(.rb-data)").count() == 0


def test_unknown_names_are_reported(visitor):
    page = visitor.open_calculator("#upper=7+in&feathers=3")
    expect(page.locator(".rb-notes")).to_contain_text("feathers")
    expect(headline(page)).to_be_visible()


def test_a_choice_that_is_not_offered_is_reported(visitor):
    page = visitor.open("calculators/tiller/#hold=upside-down")
    settled(page)
    expect(page.locator(".rb-calculator")).to_contain_text("upside-down")


def test_rows_beyond_what_a_table_takes_are_reported(visitor):
    readings = ";".join(f"{10 + number / 4} in:{number + 1} lb" for number in range(43))
    page = visitor.open("calculators/draw-curve/#readings=" + quote(readings))
    settled(page)
    expect(page.locator(".rb-notes")).to_contain_text("3 more rows in “readings”")


def test_a_row_may_leave_out_a_choice_that_came_later_and_a_table_may_be_empty(visitor):
    page = visitor.open("calculators/strokes/#log=0:0:53+lb:5/16+in;30:45:51.4+lb:15/64+in:p150")
    settled(page)
    papers = page.locator(".rb-field[data-field=log] select")
    assert [papers.nth(row).input_value() for row in (0, 1)] == ["same", "p150"]
    expect(page.locator(".rb-notes")).to_be_hidden()
    page = visitor.open("calculators/finish/#laid=&seal_coats=1")
    settled(page)
    expect(page.locator(".rb-notes")).to_be_hidden()


def test_a_choice_in_a_row_that_is_not_offered_is_reported(visitor):
    page = visitor.open("calculators/strokes/#log=0:0:53+lb:5/16+in:sandstone")
    settled(page)
    expect(page.locator(".rb-notes")).to_contain_text("which is not on its list")


def test_of_a_repeated_name_the_first_counts(visitor):
    page = visitor.open_calculator("#upper=7+in&upper=8+in&units=imperial")
    assert box(page, "upper").input_value() == "7 in"
    expect(page.locator(".rb-notes")).to_contain_text("“upper” was given more than once; the first")


def test_a_figure_that_does_not_count_is_named(visitor):
    page = visitor.open_calculator("#upper=7+in&own_low=1/8+in")
    expect(page.locator(".rb-notes")).to_contain_text("“own_low” does not count while “hold” is")


def test_a_link_means_by_leaving_out_what_it_meant(visitor):
    page = visitor.open_calculator("#upper=7+in")
    example = box(page, "brace_height").get_attribute("value")  # as the page was built
    page.locator('[data-field="brace_height"]').evaluate("field => field.dataset.absent = '7 1/2 in'")
    page.evaluate("location.hash = '#upper=8+in'")
    expect(box(page, "upper")).to_have_value("8 in")
    expect(box(page, "brace_height")).to_have_value("7 1/2 in")
    unfold(page)
    page.get_by_role("button", name="Start again from the example").click()
    expect(box(page, "brace_height")).to_have_value(example)


def test_a_share_without_a_sign_in_a_link_is_a_percentage(visitor):
    page = visitor.open("calculators/quote/#tax=0.5&markup=1/4")
    expect(box(page, "tax")).to_have_value("0.5 %")
    expect(box(page, "markup")).to_have_value("1/4 %")
    expect(page.locator(".rb-outcome")).to_have_attribute("data-state", "current")


def test_bad_values_in_a_link_are_explained_at_their_field(visitor):
    page = visitor.open("calculators/tiller/#upper=abc")
    expect(problem(page, "upper")).to_contain_text("abc")
    expect(page.locator(".rb-outcome")).to_be_hidden()
    assert box(page, "upper").input_value() == "abc"


@pytest.mark.parametrize("fragment", [
    "#upper=" + "7" * 100_000,
    "#" + "&".join(f"x{number}=1" for number in range(5_000)),
    "#upper=7+in&" + "y=2&" * 300,
], ids=["huge value", "many names", "repeats"])
def test_oversized_links_are_cut_short_and_say_so(visitor, fragment):
    page = visitor.open("calculators/tiller/" + fragment)
    settled(page)
    expect(page.locator(".rb-notes")).to_be_visible()


def test_a_bare_number_means_the_same_for_every_reader(new_visitor):
    plain = new_visitor().open_calculator("#upper=7&lower=7.5")
    settler = new_visitor()
    settler.open().evaluate("localStorage.setItem('rebrace.units', 'metric')")
    metric = settler.open_calculator("#upper=7&lower=7.5")
    assert headline(metric).inner_text() == headline(plain).inner_text()


def settled(page) -> None:
    """Wait until the link has had its answer, good or bad."""
    expect(page.locator(".rb-calculator")).to_have_attribute("data-state", "settled")
