"""A choice shows the whole of what was chosen, whichever that is, on narrow phones too."""

import pytest

from tests.pages.reading import wait_for_stillness

WIDTHS = (320, 360, 390)
SHOW_ALL = """() => {
  for (const each of document.querySelectorAll(".rb-field, .rb-fold")) each.hidden = false;
}"""
CUT = """() => {
  const LETTERING = ["fontFamily", "fontSize", "fontStyle", "fontWeight", "fontVariantNumeric", "lineHeight"];
  const selects = [...document.querySelectorAll(".rb-form select")]
    .filter((each) => each.checkVisibility() && !each.closest("tbody > tr:nth-of-type(n + 2)"));
  const texts = selects.map((each) => {
    const text = document.createElement("div");
    const style = getComputedStyle(each);
    for (const name of LETTERING) text.style[name] = style[name];
    text.style.position = "absolute";
    const beside = parseFloat(style.paddingLeft) + parseFloat(style.paddingRight);
    text.style.width = `${each.clientWidth - beside}px`;
    return text;
  });
  document.querySelector(".rb-form").append(...texts);
  const isCut = (each, text) => {
    const { paddingTop, paddingBottom } = getComputedStyle(each);
    const height = each.clientHeight - parseFloat(paddingTop) - parseFloat(paddingBottom);
    return text.scrollWidth > text.clientWidth + 1 || text.offsetHeight > height + 1;
  };
  const cut = [];
  for (let option = 0; option < Math.max(0, ...selects.map((each) => each.options.length)); option += 1) {
    selects.forEach((each, index) => {
      each.selectedIndex = Math.min(option, each.options.length - 1);
      texts[index].textContent = each.selectedOptions[0].text;
    });
    cut.push(...selects.filter((each, index) => isCut(each, texts[index]))
      .map((each) => `${each.name}: ${each.selectedOptions[0].text}`));
  }
  texts.forEach((each) => each.remove());
  return [...new Set(cut)];
}"""


@pytest.mark.parametrize("width", WIDTHS)
def test_no_choice_is_cut(lasting_visitor, calculator_id, width):
    page = lasting_visitor.page
    page.set_viewport_size({"width": width, "height": 844})
    if calculator_id not in page.url:
        lasting_visitor.open_calculator(id=calculator_id)
        page.evaluate("document.fonts.ready")
        page.evaluate(SHOW_ALL)
    wait_for_stillness(page)
    assert page.evaluate(CUT) == []
