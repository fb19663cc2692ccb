"""The floating answer: a stop and its act in sight while a figure is typed, and no focus ever under it."""

import pytest

from calc import catalog
from tests.pages.reading import wait_for_stillness, wait_until

SIZES = [(390, 844), (320, 640), (1280, 800)]
STOPPING = {
    "inspection": "#seen_faces=yes&crack_across=yes",
    "tiller": "#upper=7+in&lower=8+in",
    "weight-reduction": "#weight_wanted=30+lb",
    "arrow-match": "#string_material=low_stretch",
    "next-batch": "#glass_now_belly=0.020+in",
    "edges": "#weight_wanted=38+lb",
    "strokes": "#weight_wanted=60+lb",
    "bow-model": "#sanded_depth=0.06+in",
    "insert": "#thickness=1/2+in",
    "grip": "#factor=12",
    "epoxy": "#temperature=45+F",
    "wood-movement": "#moisture_now=20+%25",
    "tracking": "#upper_offset_tip=1+in",
    "string": "#material=polyethylene&tips=plain",
    "finish": "#temperature=40+F",
    "spray-air": "#humidity=95+%25",
    "clear-air": "#agent=isocyanate",
}
"""Inputs with which a calculator says Stop. The rest have no stop to say: they judge no bow and no air."""
WITHOUT_STOP = ("draw-curve", "quote", "grit", "photograph")
IN_SIGHT = """([bar, focused, verdict]) => {
  if (bar.matches(".rb-peek--resting")) { // the answer itself is in sight
    const said = verdict.getBoundingClientRect();
    return said.top >= 0 && said.bottom <= innerHeight + 1;
  }
  if (bar.querySelector(".rb-peek-verdict").innerText !== verdict.innerText) return false;
  const whole = [...bar.querySelectorAll("span")].every(each => each.scrollHeight <= each.clientHeight + 1
    && each.scrollWidth <= each.clientWidth + 1);
  const its = bar.getBoundingClientRect(), own = focused.getBoundingClientRect();
  const box = { top: 0, bottom: innerHeight };
  return whole && its.top >= box.top && its.bottom <= box.bottom + 1
    && (own.bottom <= its.top + 1 || own.top >= its.bottom - 1 || own.right <= its.left)
    && own.bottom > 0 && own.top < innerHeight;
}"""


def test_every_calculator_has_inputs_that_stop_or_none_to_stop():
    assert sorted([*STOPPING, *WITHOUT_STOP]) == sorted(catalog.IDS)


@pytest.mark.parametrize("id", STOPPING)
def test_a_stop_and_its_act_are_in_sight_beside_the_focus(lasting_visitor, id):
    page = lasting_visitor.open_calculator(STOPPING[id], id)
    stop = page.locator(".rb-check.rb-stop").first.element_handle()
    bar = page.locator(".rb-peek").element_handle()
    controls = page.locator(".rb-form :is(input, select):visible")
    last = page.locator(".rb-group :is(input, select):visible").last
    last_button = page.locator(".rb-form .rb-reset")
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        for control in (controls.first, last, last_button):
            control.focus()
            wait_for_stillness(page)
            wait_until(page, IN_SIGHT, [bar, control.element_handle(), stop])


def test_the_bar_never_covers_what_the_tab_key_reaches(visitor):
    page = visitor.open_calculator("#upper=7+in&lower=8+in")
    page.set_viewport_size({"width": 320, "height": 640})
    page.locator("#tiller-upper").focus()
    for _ in range(12):
        page.keyboard.press("Tab")
        wait_for_stillness(page)
        wait_until(page, """() => {
          const bar = document.querySelector(".rb-peek").getBoundingClientRect();
          const own = document.activeElement.getBoundingClientRect();
          const covered = own.bottom > bar.top && own.top < bar.bottom;
          return !covered || !document.activeElement.closest(".rb-form");
        }""")


def test_it_is_not_written_anew_where_only_the_page_below_grows(lasting_visitor):
    page = lasting_visitor.open_calculator(STOPPING["tiller"])
    wait_for_stillness(page)
    page.evaluate("""() => {
      globalThis.written = 0;
      new MutationObserver((records) => (written += records.length))
        .observe(document.querySelector(".rb-peek"), { subtree: true, childList: true, characterData: true });
      document.querySelector(".md-content__inner").style.paddingBottom = "50rem";
    }""")
    wait_for_stillness(page)
    assert page.evaluate("written") == 0
