"""The journeys that matter most, in Firefox, WebKit and Chromium alike.

What only one of them can do, such as print to a sheet or block a store, the other files try in Chromium.
"""

import os
import subprocess
import sys
from urllib.parse import quote_plus

import pytest

from calc import catalog
from calc.declaring import inputs_of
from tests.pages import driving
from tests.pages.conftest import Server
from tests.pages.driving import Window
from tests.pages.test_hostile_links import SCRIPTS
from tests.pages.test_marking import BORDER, DOTS_SEEN, FINGER, LIMBS, photograph  # noqa: F401, a fixture
from tests.pictures.camera import HEIGHT, WIDTH

SETTLED = """() => document.querySelector(".rb-calculator[data-state=settled]")
  && document.querySelector(".rb-outcome").dataset.state"""
MARKED = """(css) => {
  const { textDecorationLine, textDecorationStyle } = getComputedStyle(document.querySelector(css));
  return [textDecorationLine, textDecorationStyle];
}"""
UNFOLD = "() => document.querySelectorAll('.rb-form .rb-fold').forEach((fold) => { fold.open = true; })"
KEPT = "() => navigator.serviceWorker.ready.then(() => true)"
RUN_BY_A_LINK = "() => window.hit !== undefined || ({}).polluted !== undefined"
MADE_BY_A_LINK = ".rb-calculator img, .rb-calculator script:not(.rb-data)"
NOTE_FILES = """() => {
  const usual = URL.createObjectURL;
  URL.createObjectURL = (blob) => {
    blob.text().then((text) => { window.handedOver = text; });
    return usual(blob);
  };
}"""
COUNTED = """(title, count) => [...document.querySelectorAll(".rb-marking-sets label")].some((label) =>
  label.textContent.includes(title) && label.querySelector(".rb-marking-count").textContent === `${count}`)"""
PAGE_UP, PAGE_DOWN, ARROW_RIGHT = "\ue00e", "\ue00f", "\ue014"
"""Keys, as the standard for driving browsers writes them."""

WHERE = """(css) => {
  const { width, height } = document.querySelector(css).getBoundingClientRect();
  return [width, height];
}"""


@pytest.fixture(scope="module", params=driving.BROWSERS)
def driven(request, tmp_path_factory):
    """How a browser is asked."""
    if request.param == "webkit" and "CI" in os.environ:
        pytest.skip("webkit now and then loads no page for 45 s on a busy machine: not for a verdict")
    if request.param not in driving.installed():
        pytest.skip(f"{request.param} is not installed here: ./scripts/browsers")
    with driving.BROWSERS[request.param](tmp_path_factory.mktemp(request.param)) as ask:
        yield ask
        ask("DeleteSession")


@pytest.fixture
def server():
    served = Server({})
    yield served
    served.stop()


@pytest.fixture
def window(driven, server):
    """A window on a server of its own port, so that it shares no store with those before it."""
    return Window(driven, server.url)


def box(field):
    return f'[data-field="{field}"] :is(input, select)'


def open_calculator(window, id, fragment=""):
    window.open(f"calculators/{id}/{fragment}")
    window.find(".rb-calculator[data-live]")
    window.run(UNFOLD)


def headline(window):
    """Return the sentence of the newest answer."""
    assert window.wait_until(SETTLED) == "current"
    return window.text(".rb-headline")


def on_the_command_line(window, id):
    """Return the same sentence as the command line answers the window's address with."""
    address = window.run("() => location.href")
    command = [sys.executable, "-m", "calc", id, "--link", address]
    return subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[0]


def example_of(id):
    """Return the worked example as a link, in metric units, which the page was not built with."""
    pairs = [(each.id, each.default) for each in inputs_of(catalog.find(id))]
    return "#" + "&".join(f"{name}={quote_plus(text)}" for name, text in [*pairs, ("units", "metric")])


@pytest.mark.parametrize("id", catalog.IDS)  # and so no other order of tests: each browser is started once
def test_a_shared_link_has_its_answer(window, id):
    open_calculator(window, id, example_of(id))
    assert headline(window) == on_the_command_line(window, id)


def test_a_bowyer_types_a_fraction_then_a_wrong_value_and_mends_it(window):
    open_calculator(window, "tiller")
    window.type(box("upper"), "7 3/16")
    window.type(box("lower"), "7 9/16")
    assert "3/8 in smaller" in headline(window)
    window.wait_until("() => location.hash.includes('upper=7+3/16')")
    window.type(box("upper"), "70 in")
    said = window.text('[data-field="upper"] .rb-error')
    assert "Upper tiller distance" in said
    assert window.value(box("upper")) == "70 in"
    assert window.wait_until(SETTLED) == "stale"
    window.type(box("upper"), "7 5/16")
    assert "1/4 in smaller" in headline(window)


def test_units_change_what_is_said_and_not_what_is_meant(window):
    open_calculator(window, "tiller", "#upper=7.5&lower=7.25")
    assert headline(window)
    assert window.text('[data-result="difference"] dd') == "1/4 in"
    window.click(".rb-sent button")
    window.click(".rb-units label", "Metric")
    window.wait_until("(css) => document.querySelector(css).innerText === '6.4 mm'",
                      '[data-result="difference"] dd')
    assert window.value(box("upper")) == "7.5 in"
    window.wait_until("() => location.hash.includes('units=metric')")


@pytest.mark.parametrize("kind", ["image with handler", "javascript address", "malformed percent",
                                  "null bytes"])
def test_nothing_in_a_link_is_executed(window, kind):
    open_calculator(window, "tiller", SCRIPTS[kind])
    window.wait_until(SETTLED)
    assert not window.run(RUN_BY_A_LINK)
    assert window.texts(MADE_BY_A_LINK) == []


def test_a_bow_is_written_down_fills_a_calculator_and_goes_out_as_a_file(window):
    window.open("bows/")
    window.click(".rb-bows[data-ready] button", "Add a bow")
    for fact, text in (("tag", "31"), ("title", "64 in recurve"), ("length", "64 in")):
        window.type(f"dialog[open] [name={fact}]", text)
    window.click("dialog[open] button", "Save")
    assert window.text(".rb-bow-title") == "31 64 in recurve"
    window.click(".rb-bow-sheets summary")
    window.click("button[data-open=reading]")
    for fact, text in (("weight", "53 lb"), ("at_draw", "28 in"), ("upper", "7 5/8 in"),
                       ("lower", "7 5/16 in")):
        window.type(f"dialog[open] [name={fact}]", text)
    window.click("dialog[open] button", "Save")
    window.find(".rb-timeline > li", "7 5/8 in")
    window.ask("Refresh")
    window.find(".rb-timeline > li", "7 5/8 in")
    window.run(NOTE_FILES)
    window.click(".rb-bow [data-do=save-file]")
    assert "7 5/8 in" in window.wait_until("() => window.handedOver")
    window.open("calculators/tiller/")
    window.find(".rb-bar[data-ready]")
    window.click(".rb-which-bow option", "31 64 in recurve")
    window.find(".rb-standing", "Figures of this bow")
    assert window.value(box("upper")) == "7 5/8 in"


def test_a_picture_is_read_by_its_marks(window, photograph):  # noqa: F811
    open_calculator(window, "photograph")
    window.find(".rb-marking[data-live]")
    window.press(".rb-marking input[type=file]", str(photograph))
    window.find(".rb-marking-said", f"The picture is open: {WIDTH} by {HEIGHT} pixels.")
    window.click(".rb-marking label", "Draw each mark")  # no longer: each stays where it is set
    for title, marks in (("Dots marked", DOTS_SEEN), ("Upper limb", LIMBS["upper"]),
                         ("Lower limb", LIMBS["lower"])):
        window.click(".rb-marking-sets label", title)
        for mark in marks:
            touch(window, *mark)
        window.wait_until(COUNTED, title, len(marks))
    window.type(box("marking_error"), f"{FINGER} px")
    assert headline(window) == on_the_command_line(window, "photograph")
    see_the_last_mark_moved(window)


def see_the_last_mark_moved(window):
    """By a key, back again, and as a number; read out each time."""
    picture, said = ".rb-marking canvas", ".rb-marking-said"
    across = '[data-field="lower_limb"] tbody tr:last-child input'
    window.click('.rb-field[data-field="lower_limb"] summary', "8 in the list")
    place = float(window.value(across))
    window.press(picture, ARROW_RIGHT)
    window.find(said, f"Lower limb, 8: {place + 1:.0f} across")
    assert float(window.value(across)) == place + 1
    window.click(".rb-marking button", "Undo")
    window.find(said, "Taken back.")
    assert float(window.value(across)) == place
    window.type(across, "1234.5")
    window.press(picture, PAGE_UP)
    window.find(said, "Lower limb, 7:")
    window.press(picture, PAGE_DOWN)
    window.find(said, "Lower limb, 8: 1234.5 across")


def touch(window, x, y):
    """Press on the picture, all of which is in sight, where one of its pixels lies."""
    canvas = ".rb-marking canvas"
    width, height = window.run(WHERE, canvas)
    scale = min((width - 2 * BORDER) / WIDTH, (height - 2 * BORDER) / HEIGHT)
    window.touch(canvas, round((x - WIDTH / 2) * scale), round((y - HEIGHT / 2) * scale))


def test_calculators_answer_and_pages_open_without_a_server(window, server):
    window.open("calculators/tiller/?offline=1")
    assert window.run(KEPT)
    server.stop()
    open_calculator(window, "tiller", "#upper=7+1/2+in&lower=7+in")
    assert "1/2 in larger" in headline(window)
    for address in ("", "safety/", "begin", "calculators/strokes/index.html"):
        window.open(address)
        assert window.text("h1")


def test_words_of_the_glossary_are_marked(window):
    window.open("begin/")
    assert window.run(MARKED, "a.rb-term") == ["underline", "dotted"]
