"""The unit switch changes how things are said and never what they mean."""

from playwright.sync_api import expect

from tests.pages.reading import box, result, type_into, wait_for_link, wait_for_state


def switch(page, system: str) -> None:
    page.get_by_role("radio", name=system).check()


def test_a_bare_number_keeps_its_meaning(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7.5")
    type_into(page, "lower", "7.25")
    wait_for_state(page, "current")
    assert result(page, "difference") == "1/4 in"
    switch(page, "Metric")
    expect(box(page, "upper")).to_have_value("7.5 in")
    expect(page.locator('[data-result="difference"] dd')).to_have_text("6.4 mm")
    switch(page, "Imperial")
    expect(page.locator('[data-result="difference"] dd')).to_have_text("1/4 in")


def test_labels_say_the_unit_in_words(visitor):
    page = visitor.open_calculator()
    label = page.locator('label[for="tiller-upper"]')
    assert "inches" in label.inner_text()
    switch(page, "Metric")
    assert "millimetres" in label.inner_text()
    assert "inches" not in label.inner_text()


def test_the_choice_is_remembered_and_in_the_link(visitor):
    page = visitor.open_calculator()
    switch(page, "Metric")
    wait_for_state(page, "current")
    wait_for_link(page, "units=metric")
    page = visitor.open_calculator()
    expect(page.get_by_role("radio", name="Metric")).to_be_checked()
    expect(page.locator('[data-result="difference"] dd')).to_contain_text("mm")


def test_a_link_brings_its_units_without_changing_the_readers(visitor):
    page = visitor.open_calculator("#upper=190&lower=185&units=metric")
    assert result(page, "difference") == "5.0 mm"
    visitor.open()
    page = visitor.open_calculator()
    expect(page.get_by_role("radio", name="Imperial")).to_be_checked()
