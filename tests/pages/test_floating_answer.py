"""The floating answer: a stop and its act in sight while a figure is typed, and no focus ever under it."""

import pytest
from playwright.sync_api import expect

from calc import catalog

SIZES = [(390, 844), (320, 640), (1280, 800)]
STOPPING = {
    "inspection": "#seen_faces=yes&crack_across=yes",
    "tiller": "#upper=7+in&lower=8+in",
    "weight-reduction": "#weight_wanted=30+lb",
    "arrow-match": "#string_material=low_stretch",
    "strokes": "#weight_wanted=60+lb",
    "bow-model": "#sanded_depth=0.06+in",
    "insert": "#thickness=1/2+in",
    "grip": "#factor=12",
    "tracking": "#upper_offset_tip=1+in",
    "string": "#material=polyethylene&tips=plain",
    "finish": "#temperature=40+F",
    "spray-air": "#humidity=95+%25",
    "clear-air": "#agent=isocyanate",
}
"""Inputs with which a calculator says Stop. The rest have no stop to say: they judge no bow and no air."""
WITHOUT_STOP = ("draw-curve", "quote", "grit")
IN_SIGHT = """([bar, focused]) => {
  const whole = [...bar.querySelectorAll("span")].every(each => each.scrollHeight <= each.clientHeight + 1
    && each.scrollWidth <= each.clientWidth + 1);
  const its = bar.getBoundingClientRect(), own = focused.getBoundingClientRect();
  const box = { top: 0, bottom: innerHeight };
  return whole && its.top >= box.top && its.bottom <= box.bottom + 1
    && (own.bottom <= its.top + 1 || own.top >= its.bottom - 1) && own.bottom > 0 && own.top < innerHeight;
}"""


def test_every_calculator_has_inputs_that_stop_or_none_to_stop():
    assert sorted([*STOPPING, *WITHOUT_STOP]) == sorted(catalog.IDS)


@pytest.mark.parametrize("id", STOPPING)
def test_a_stop_and_its_act_are_in_sight_beside_the_focus(visitor, id):
    page = visitor.open_calculator(STOPPING[id], id)
    stop = page.locator(".rb-check.rb-stop").first.inner_text()
    bar = page.locator(".rb-peek")
    controls = page.locator(".rb-form :is(input, select):visible")
    last = page.locator(".rb-group :is(input, select):visible").last
    last_button = page.locator(".rb-form .rb-reset")
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        for control in (controls.first, last, last_button):
            control.focus()
            page.wait_for_timeout(250)
            if "rb-peek--resting" in bar.get_attribute("class"):  # the answer itself is in sight
                expect(page.locator(".rb-check.rb-stop").first).to_be_in_viewport(ratio=1)
                continue
            assert bar.locator(".rb-peek-verdict").inner_text() == stop
            assert page.evaluate(IN_SIGHT, [bar.element_handle(), control.element_handle()]), (width, control)


def test_the_bar_never_covers_what_the_tab_key_reaches(visitor):
    page = visitor.open_calculator("#upper=7+in&lower=8+in")
    page.set_viewport_size({"width": 320, "height": 640})
    page.locator("#tiller-upper").focus()
    for _ in range(12):
        page.keyboard.press("Tab")
        page.wait_for_timeout(60)
        covered = page.evaluate("""() => {
          const bar = document.querySelector(".rb-peek").getBoundingClientRect();
          const own = document.activeElement.getBoundingClientRect();
          return document.activeElement.closest(".rb-form") && own.bottom > bar.top && own.top < bar.bottom;
        }""")
        assert not covered
