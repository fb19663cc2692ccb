"""Keyboard, screen reader, small screens, paper, and no scripts at all."""

from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.pages.reading import box, headline, type_into, wait_for_state

AXE = (Path(__file__).parents[2] / "node_modules/axe-core/axe.min.js").read_text()
SAME_AS_PREBUILT = """async () => {
  const live = document.querySelector(".rb-outcome").cloneNode(true);
  for (const plot of live.querySelectorAll(".rb-plot")) {
    plot.replaceChildren();
    plot.removeAttribute("aria-hidden");
  }
  for (const link of live.querySelectorAll("a.rb-file")) {
    link.removeAttribute("href");
    link.removeAttribute("download");
  }
  for (const table of live.querySelectorAll(".rb-table")) {
    table.classList.remove("rb-table--cards");
    for (const cell of table.querySelectorAll("[data-label]")) cell.removeAttribute("data-label");
  }
  live.normalize();
  const text = await (await fetch(location.href)).text();
  const prebuilt = new DOMParser().parseFromString(text, "text/html").querySelector(".rb-outcome");
  const ends = document.createNodeIterator(prebuilt, NodeFilter.SHOW_TEXT); // the search index's
  for (let each; (each = ends.nextNode());) if (each.data === "\\n") each.remove();
  return live.children.length > 0 && live.children.length === prebuilt.children.length
    && [...live.children].every((child, index) => child.isEqualNode(prebuilt.children[index]));
}"""
PAGES = ["", "calculators/", "calculators/python/", "begin/", "safety/", "glossary/"]
WIDTHS = [320, 390, 768, 1280]
CUT_OFF = """() => {
  for (const details of document.querySelectorAll(".rb-outcome details")) details.open = true;
  const cut = [];
  const range = document.createRange();
  for (const box of document.querySelectorAll(".rb-outcome .rb-table, .rb-outcome .rb-values")) {
    const { left, right } = box.getBoundingClientRect();
    for (const cell of box.querySelectorAll("th, td, dd")) {
      range.selectNodeContents(cell);
      const text = range.getBoundingClientRect();
      if (text.width && (text.left < left - 0.5 || text.right > right + 0.5)) cut.push(cell.textContent);
    }
  }
  for (const box of document.querySelectorAll(".rb-form input[type=text]")) {
    if (box.offsetParent && box.scrollWidth > box.clientWidth) cut.push(box.name + " " + box.value);
  }
  return cut;
}"""
SETTLING_LOOKS = 15
SCROLL_WIDTH = "document.documentElement.scrollWidth"
SMALLEST_TARGET = 24  # CSS pixels: WCAG 2.2, success criterion 2.5.8


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("address", PAGES)
def test_pages_have_no_serious_fault(new_visitor, address, scheme):
    assert faults(new_visitor(color_scheme=scheme).open(address)) == []


def test_calculators_have_no_serious_fault(visitor, calculator_id):
    page = visitor.open_calculator(id=calculator_id)
    assert faults(page) == []
    page.emulate_media(color_scheme="dark")
    assert faults(page) == []
    boxes = page.locator(".rb-form input[type=text]:visible")
    if boxes.count() == 0:
        return  # a list to tick has nothing to mistype
    boxes.first.fill("abc")
    page.keyboard.press("Enter")
    expect(page.locator(".rb-problems")).to_be_focused()
    assert faults(page) == []


def faults(page) -> list[str]:
    """Return what axe-core finds serious or worse."""
    page.evaluate(AXE)
    found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    return [f"{each['id']}: {each['nodes'][0]['target']}" for each in found["violations"]
            if each["impact"] in ("serious", "critical")]


@pytest.mark.parametrize("width", WIDTHS)
def test_no_page_scrolls_sideways(new_visitor, width):
    visitor = new_visitor(viewport={"width": width, "height": 800})
    for address in PAGES:
        page = visitor.open(address)
        assert page.evaluate(SCROLL_WIDTH) <= width, address


def test_no_calculator_scrolls_sideways(visitor, calculator_id):
    page = visitor.open_calculator("#units=metric", calculator_id)
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        for _ in range(SETTLING_LOOKS):  # the theme slides its drawer away, charts take their new width
            page.wait_for_timeout(400)
            if page.evaluate(SCROLL_WIDTH) <= width:
                break
        assert page.evaluate(SCROLL_WIDTH) <= width


@pytest.mark.parametrize("fragment", ["#units=imperial", "#units=metric"])
def test_no_figure_is_cut_off_on_a_phone(visitor, calculator_id, fragment):
    page = visitor.open_calculator(fragment, calculator_id)
    for width in (390, 320):
        page.set_viewport_size({"width": width, "height": 800})
        page.evaluate(CUT_OFF)  # opens what is folded
        for _ in range(SETTLING_LOOKS):  # tables turn into cards once they have their new width
            page.wait_for_timeout(400)
            if not page.evaluate(CUT_OFF):
                break
        assert page.evaluate(CUT_OFF) == []


def test_targets_are_large_enough(visitor, calculator_id):
    page = visitor.open_calculator(id=calculator_id)
    for control in page.locator(".rb-form :is(button, select, input):visible").all():
        size = control.bounding_box()
        assert min(size["width"], size["height"]) >= SMALLEST_TARGET, control.get_attribute("name")


def test_without_scripts_the_example_can_be_read(new_visitor, calculator_id):
    page = new_visitor(java_script_enabled=False).open(f"calculators/{calculator_id}/")
    expect(headline(page)).to_be_visible()
    expect(page.locator(".rb-form noscript p")).to_contain_text("need JavaScript")
    expect(page.get_by_role("button", name="Copy link")).to_be_hidden()
    expect(page.locator(".rb-unit[data-units=metric]").first).to_be_hidden()


def test_the_live_example_is_the_prebuilt_one(visitor, calculator_id):
    page = visitor.open_calculator(id=calculator_id)
    page.get_by_role("button", name="Start again").click()
    wait_for_state(page, "current")
    assert page.evaluate(SAME_AS_PREBUILT)


def test_focus_is_visible(visitor):
    page = visitor.open_calculator()
    box(page, "upper").focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")
    assert float(box(page, "upper").evaluate("node => parseFloat(getComputedStyle(node).outlineWidth)")) >= 2


def test_the_headline_is_announced_once_typing_stops(visitor):
    page = visitor.open_calculator()
    type_into(page, "upper", "7 1/2")
    wait_for_state(page, "current")
    expect(page.get_by_role("status").filter(has_text=headline(page).inner_text())).to_have_count(1)


def test_paper_carries_inputs_and_result_but_no_buttons(visitor):
    page = visitor.open_calculator("#upper=7+1/2+in")
    page.emulate_media(media="print")
    expect(box(page, "upper")).to_be_visible()
    expect(headline(page)).to_be_visible()
    expect(page.locator(".rb-drawing").first).to_be_visible()
    expect(page.get_by_role("button", name="Copy link")).to_be_hidden()
    expect(page.locator(".md-header")).to_be_hidden()


def test_charts_follow_the_width_and_the_scheme(visitor):
    page = visitor.open_calculator("#upper=7+1/2+in")
    canvas = page.locator(".rb-plot canvas").first
    expect(canvas).to_be_visible()
    narrow = canvas.bounding_box()["width"]
    page.set_viewport_size({"width": 1000, "height": 800})
    expect(canvas).not_to_have_js_property("offsetWidth", narrow)
    assert canvas.bounding_box()["width"] > narrow
