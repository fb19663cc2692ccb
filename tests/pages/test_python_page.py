"""Python at the bench: started by the reader, run, stopped; what it prints is what CPython prints."""

import re

import pytest
from playwright.sync_api import expect

from scripts.blocks import programs
from tests.pages.conftest import SITE
from tests.pages.reading import wait_until
from tests.pages.test_access import SCROLL_WIDTH
from tests.pages.test_axe import faults
from tests.pages.test_bow_bar import INVENTED, put
from tests.pages.test_offline import ADDRESSES, KEPT

ADDRESS = "calculators/python/"
ENGINE = re.compile(r"/engine/(?:pyodide|sources)")
START_MS = 60_000
TOLD_SIZE = re.compile(r"about ([\d.]+) MB, once.*without compression it is ([\d.]+) MB")
SLOW_TO_REGISTER = """
const register = ServiceWorkerContainer.prototype.register;
ServiceWorkerContainer.prototype.register = function (...all) {
  return new Promise((resolve) => setTimeout(resolve, 1000)).then(() => register.apply(this, all));
};
"""
NEVER_ENDS = "print('before')\nwhile True:\n    pass\n"


@pytest.fixture
def started(visitor):
    """The page with Python ready."""
    page = visitor.open(ADDRESS)
    start(page)
    return page


def start(page):
    button(page, "Start Python").click()
    expect_state(page, "ready", START_MS)


def button(page, name):
    return page.get_by_role("button", name=name, exact=True)


def editor(page):
    return page.get_by_label("Program", exact=True)


def log(page):
    return page.get_by_role("log")


def workers_of(page):
    """Return the workers that run a reader's programs."""
    return [worker for worker in page.workers if worker.url.endswith("/programs-worker.mjs")]


def expect_state(page, state, timeout=None):
    expect(page.locator(".rb-programs")).to_have_attribute("data-state", state, timeout=timeout)


def run(page, program):
    editor(page).fill(program)
    button(page, "Run").click()
    expect_state(page, "ready")


def test_nothing_is_fetched_before_the_reader_asks(visitor):
    asked = []
    visitor.context.on("request", lambda request: asked.append(request.url))
    page = visitor.open(ADDRESS)
    expect(button(page, "Start Python")).to_be_visible()
    expect(button(page, "Run")).to_be_hidden()
    editor(page).press("Control+Enter")
    expect(page.locator(".rb-programs-status")).to_contain_text("not been started")
    assert not [url for url in asked if ENGINE.search(url)]
    assert workers_of(page) == []


def test_examples_print_what_cpython_prints(started):
    page = started
    for each in programs.PROGRAMS:
        button(page, each.title).click()
        assert editor(page).input_value() == programs.file_of(each.id).read_text("utf-8")
        button(page, "Run").click()
        expect_state(page, "ready")
        assert log(page).text_content() == programs.printed_by(each.id)
        expect(page.locator(".rb-programs-status")).to_have_text("Done.")


def test_a_traceback_is_shown_and_the_next_run_is_sound(started):
    page = started
    editor(page).fill("x = 1\nprint(x)\nx / 0\n")
    editor(page).press("Control+Enter")
    expect_state(page, "ready")
    said = log(page).text_content()
    assert said.startswith('1\nTraceback (most recent call last):\n  File "your program", line 3')
    assert said.endswith("ZeroDivisionError: division by zero\n")
    expect(page.locator(".rb-log-error").last).to_contain_text("ZeroDivisionError")
    expect(page.locator(".rb-programs-status")).to_contain_text("ended with an error")
    run(page, "print('x' in globals())")
    assert log(page).text_content() == "False\n"


def test_what_is_printed_is_text(started):
    run(started, "print('<img src=x onerror=alert(1)>')")
    assert log(started).text_content() == "<img src=x onerror=alert(1)>\n"
    assert log(started).locator("img").count() == 0


def test_a_program_cannot_make_the_browser_read_text_as_code(started):
    run(started, "import js\njs.eval('1')\n")
    expect(log(started)).to_contain_text("Content Security Policy")


def test_an_endless_loop_is_stopped_and_python_comes_back(started):
    page = started
    editor(page).fill(NEVER_ENDS)
    button(page, "Run").click()
    expect(log(page)).to_have_text("before\n")
    expect(button(page, "Run")).to_be_disabled()
    button(page, "Stop").click()
    expect_state(page, "ready", START_MS)
    expect(page.locator(".rb-programs-status")).to_contain_text("Stopped")
    assert editor(page).input_value() == NEVER_ENDS
    run(page, "print(6 * 7)")
    assert log(page).text_content() == "42\n"


def test_a_flood_is_cut(started):
    editor(started).fill("while True:\n    print('flood')\n")
    button(started, "Run").click()
    expect(log(started)).to_contain_text("More was printed than this page shows")
    button(started, "Stop").click()
    expect_state(started, "ready", START_MS)
    assert len(log(started).text_content()) < 101_000


def test_changes_are_kept_and_the_example_comes_back(visitor):
    page = visitor.open(ADDRESS)
    button(page, "Your own").click()
    editor(page).fill("print('mine')")
    button(page, "Draw curve").click()
    example = editor(page).input_value()
    editor(page).fill("print('changed')")
    page = visitor.open(ADDRESS)
    expect(button(page, "Draw curve")).to_have_attribute("aria-pressed", "true")
    assert editor(page).input_value() == "print('changed')"
    button(page, "Put the example back").click()
    assert editor(page).input_value() == example
    button(page, "Bring my changes back").click()
    assert editor(page).input_value() == "print('changed')"
    button(page, "Your own").click()
    assert editor(page).input_value() == "print('mine')"
    expect(button(page, "Put the example back")).to_be_hidden()


def test_a_link_neither_fills_the_box_nor_runs(visitor):
    page = visitor.open(ADDRESS + "?program=print(1)#program=print(1)&run=1")
    expect(button(page, "Start Python")).to_be_visible()
    assert editor(page).input_value() == programs.file_of(programs.PROGRAMS[0].id).read_text("utf-8")
    assert workers_of(page) == []


def test_the_tab_key_leaves_the_box(visitor):
    page = visitor.open(ADDRESS)
    editor(page).focus()
    page.keyboard.press("Tab")
    expect(button(page, "Start Python")).to_be_focused()
    page.keyboard.press("Shift+Tab")
    expect(editor(page)).to_be_focused()


def test_leaving_the_page_ends_its_worker(started):
    assert len(workers_of(started)) == 1
    started.locator("article").get_by_role("link", name="the model", exact=True).click()
    expect(started.locator("h1")).to_contain_text("How the model works")
    expect(started.locator(".rb-programs")).to_have_count(0)
    wait_until(started, lambda: workers_of(started) == [])


def test_without_the_engine_the_page_says_so_and_can_be_asked_again(visitor):
    visitor.context.route(ENGINE, lambda route: route.abort())
    page = visitor.open(ADDRESS)
    button(page, "Start Python").click()
    expect(page.locator(".rb-programs-status")).to_contain_text("could not start")
    visitor.context.unroute(ENGINE)
    start(page)
    visitor.complaints.clear()  # the browser reports the files that were kept from it


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_no_serious_fault_and_no_scrolling_sideways(new_visitor, scheme):
    page = new_visitor(color_scheme=scheme).open(ADDRESS)
    start(page)
    run(page, "print('wide ' * 100)\n1 / 0\n")
    assert faults(page) == []
    assert page.evaluate(SCROLL_WIDTH) <= 390


def test_without_scripts_the_programs_can_be_read_with_what_they_print(new_visitor):
    page = new_visitor(java_script_enabled=False).open(ADDRESS)
    expect(page.locator(".rb-programs")).to_be_hidden()
    expect(page.locator("noscript p", has_text="JavaScript is needed")).to_be_visible()
    for each in programs.PROGRAMS:
        program, printed = page.locator(f'.rb-program[data-program="{each.id}"] code').all()
        assert program.text_content() == programs.file_of(each.id).read_text("utf-8")
        assert printed.text_content() == programs.printed_by(each.id)


def test_started_once_it_works_without_network(visitor):
    page = visitor.open(ADDRESS + "?offline=1")
    start(page)  # at once: the engine waits until its files are being kept
    assert len(kept_engine(page)) == 6
    visitor.context.set_offline(True)
    page = visitor.open(ADDRESS)
    start(page)
    run(page, "from calc import catalog\nprint(len(catalog.IDS) > 10)")
    assert log(page).text_content() == "True\n"
    visitor.complaints.clear()  # the browser reports each request that the network refused


def test_started_before_the_book_is_being_kept_it_is_kept_whole(visitor):
    visitor.context.add_init_script(SLOW_TO_REGISTER)
    page = visitor.open(ADDRESS + "?offline=1")
    start(page)
    assert len(kept_engine(page)) == 6


def kept_engine(page):
    """Return the addresses of the full engine's files that the browser has kept."""
    [name] = page.evaluate(KEPT)
    return [address for address in page.evaluate(ADDRESSES, name) if ENGINE.search(address)]


def test_the_page_tells_the_size_that_is_fetched(visitor):
    files = [*SITE.glob("assets/engine/pyodide-*/*"), *SITE.glob("assets/engine/sources-*")]
    plain = [path for path in files if path.suffix not in (".br", ".gz")]
    copies = [(path, path.with_name(path.name + ".br")) for path in plain]
    packed = [copy if copy.exists() else path for path, copy in copies]
    told = TOLD_SIZE.search(visitor.open(ADDRESS).locator("article").inner_text())
    for said, paths in zip(told.groups(), (packed, plain), strict=True):
        assert float(said) == pytest.approx(sum(path.stat().st_size for path in paths) / 1e6, rel=0.05)


KEEP_A_BOW = """
() => new Promise((done, fail) => {
  const asked = indexedDB.open("rebrace-test", 1);
  asked.onupgradeneeded = () => asked.result.createObjectStore("bows").add("kept", "31");
  asked.onsuccess = () => done(asked.result.close());
  asked.onerror = () => fail(asked.error);
})
"""
TRY_THE_DOORS = """
import js
from pyodide.code import run_js

names = ("indexedDB", "caches", "Worker", "SharedWorker", "BroadcastChannel", "importScripts", "cookieStore")
of_navigator = ("storage", "locks", "storageBuckets", "serviceWorker")
print([name for name in names if getattr(js, name, None) is not None])
print([name for name in of_navigator if getattr(js.navigator, name, None) is not None])
print([name for name in names if getattr(js.self, name, None) or getattr(js.globalThis, name, None)])
for source in ("self.indexedDB", "Object.getPrototypeOf(self).indexedDB", "new Worker('data:,')",
               "Reflect.get(WorkerGlobalScope.prototype, 'indexedDB', self)"):
    try:
        print(run_js(source))
    except BaseException as error:
        print("refused")
"""


def test_a_program_cannot_reach_what_this_browser_keeps(started):
    started.evaluate(KEEP_A_BOW)
    run(started, TRY_THE_DOORS)
    said = log(started).text_content().splitlines()
    assert said[:3] == ["[]", "[]", "[]"]
    assert all(line in ("refused", "None", "undefined") for line in said[3:]), said
    assert len(said) == 7


USES_A_BOW = """
from calc.record import open_bow
bow = open_bow()
print(bow.title(), bow.state()["reading.brace"], [each for each in bow.state() if each.startswith("owner")])
"""


def test_a_program_sees_a_bow_only_if_the_reader_gives_it_on_this_visit(visitor):
    put(visitor, facts=(*INVENTED, ("owner", {"name": "MARKER"})))
    page = visitor.open(ADDRESS)
    start(page)
    run(page, USES_A_BOW)
    expect(log(page)).to_contain_text("give the program a bow first")
    page.get_by_label("Bow that open_bow() gives").select_option(label="31 64 in recurve")
    run(page, USES_A_BOW)
    expect(log(page)).to_have_text("31 64 in recurve 8 1/4 in []\n")
    page.get_by_label("Bow that open_bow() gives").select_option(label="None")
    run(page, USES_A_BOW)
    expect(log(page)).to_contain_text("give the program a bow first")
    page.reload()
    expect(page.get_by_label("Bow that open_bow() gives")).to_have_value("")
