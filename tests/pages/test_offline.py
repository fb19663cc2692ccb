"""The second visit needs no network; a new release replaces the old one whole; the way back is kept."""

import time

import pytest
from playwright.sync_api import expect

from tests.pages.conftest import SITE
from tests.pages.reading import PATIENCE_MS, chart_seen, headline, type_into, wait_until

KEPT = """async () => {
  await navigator.serviceWorker.ready;
  return (await caches.keys()).filter(name => name.startsWith('rebrace-'));
}"""

ADDRESSES = "async name => (await (await caches.open(name)).keys()).map(each => each.url)"
NOTE_WHAT_IS_ASKED = """
window.asked = [];
for (const name of ["register", "getRegistration"]) {
  const usual = ServiceWorkerContainer.prototype[name];
  ServiceWorkerContainer.prototype[name] = function (...all) {
    window.asked.push(name);
    return usual.apply(this, all);
  };
}
"""
LOOK_FOR_UPDATE = "navigator.serviceWorker.getRegistration().then(found => found.update()).catch(() => 0)"


@pytest.fixture
def kept(visitor):
    """A visitor whose browser has kept the site."""
    page = visitor.open("calculators/tiller/?offline=1")
    assert len(page.evaluate(KEPT)) == 1
    visitor.context.set_offline(True)
    yield visitor
    visitor.complaints.clear()  # the browser reports each request that the network refused


@pytest.fixture
def publish(visitor, replaced):
    """Deploys another service worker and has the visitor's browser look for it."""
    def deploy(code: str) -> None:
        replaced["/service-worker.js"] = code
        visitor.page.evaluate(LOOK_FOR_UPDATE)

    yield deploy
    replaced.clear()


def test_calculators_answer_without_network(kept):
    page = kept.open_calculator("#upper=7+1/2+in&lower=7+in")
    expect(headline(page)).to_contain_text("1/2 in larger")
    type_into(page, "lower", "7 1/8")
    expect(headline(page)).to_contain_text("3/8 in larger")
    chart_seen(page.locator(".rb-plot").first)
    expect(page.locator(".rb-copy")).to_have_text("Copy link")


def test_pages_never_visited_can_be_read_without_network(kept):
    for address in ("", "begin/", "safety/", "glossary/"):
        page = kept.open(address)
        expect(page.locator("h1").first).to_be_visible()


def test_any_address_leads_on_without_network(kept):
    page = kept.open("begin")
    expect(page.locator("h1").first).to_contain_text("The whole job in order")
    page = kept.open("calculators/tiller/index.html")
    expect(headline(page)).to_be_visible()
    page = kept.open("nowhere/at/all/")
    expect(page.locator("h1").first).to_contain_text("There is no such page")
    page.locator(".md-content").get_by_role("link", name="Look up").click()
    expect(page.locator("h1").first).to_contain_text("Look up")
    page = kept.open("lookup/woods/")
    with page.expect_download() as saving:
        page.locator(".rb-lookup a[download]").click()
    assert "white ash" in saving.value.path().read_text("utf-8").lower()


def test_a_line_says_that_the_copy_is_ready_and_python_can_be_asked_for_ahead(visitor):
    page = visitor.open("?offline=1")
    ready = "This browser keeps all pages: they open without a signal."
    expect(page.locator(".rb-offline")).to_have_text(ready, timeout=PATIENCE_MS)
    page = visitor.open("calculators/python/")
    page.locator(".rb-offline button").click()
    expect(page.locator(".rb-offline")).to_have_text(
        ready + " Python is kept, too: it starts without a signal.", timeout=PATIENCE_MS)
    [name] = page.evaluate(KEPT)
    assert sum("/engine/pyodide" in address for address in page.evaluate(ADDRESSES, name)) == 5


def test_a_line_says_that_the_browser_keeps_nothing(visitor):
    visitor.context.add_init_script(
        "ServiceWorkerContainer.prototype.register = () => Promise.reject(new Error('refused'));")
    page = visitor.open("?offline=1")
    expect(page.locator(".rb-offline")).to_have_text(
        "This browser keeps no pages of this site, so that each wants a signal. "
        "A private window does that, or a setting.")


def test_search_works_without_network(kept):
    page = kept.open()
    page.locator('.md-header__button[for="__search"]').first.click()
    page.locator("input.md-search__input").press_sequentially("tiller")
    expect(page.locator(".md-search-result__link").first).to_be_visible()


def test_the_full_engine_is_not_kept_unasked(visitor):
    page = visitor.open("?offline=1")
    [name] = page.evaluate(KEPT)
    addresses = page.evaluate(ADDRESSES, name)
    assert any("/engine/micropython" in address for address in addresses)
    assert not any("/engine/pyodide" in address for address in addresses)


def test_off_on_this_machine_unless_asked(visitor):
    visitor.context.add_init_script(NOTE_WHAT_IS_ASKED)
    page = visitor.open()
    wait_until(page, "window.asked.length > 0")
    assert page.evaluate("window.asked") == ["getRegistration"]
    assert page.evaluate("navigator.serviceWorker.getRegistration().then(found => found === undefined)")


def test_can_be_turned_off_again(visitor):
    page = visitor.open("?offline=1")
    page.evaluate(KEPT)
    page = visitor.open("?offline=0")
    expect_gone(page)
    # the page goes on asking through its old worker
    assert page.evaluate("fetch('glossary/').then(found => found.text()).then(() => caches.keys())") == []


def test_a_new_release_replaces_the_old_one_whole(visitor, publish):
    page = visitor.open("?offline=1")
    [old] = page.evaluate(KEPT)
    script = (SITE / "service-worker.js").read_text().replace(old.removeprefix("rebrace-"), "next")
    publish(script)
    wait_until(page, "navigator.serviceWorker.getRegistration().then(found => Boolean(found.waiting))")
    assert sorted(page.evaluate("caches.keys()")) == sorted([old, "rebrace-next"])
    come_back_until(visitor, "caches.keys().then(names => names.length === 1 && names[0] === 'rebrace-next')")


def test_a_new_release_brings_the_full_engine_to_those_who_asked_for_it(visitor, publish):
    page = visitor.open("?offline=1")
    [old] = page.evaluate(KEPT)
    wait_until(page, "Boolean(navigator.serviceWorker.controller)")
    [loader] = SITE.glob("assets/engine/pyodide-*/pyodide.mjs")
    ask = "address => fetch(address).then(found => found.text())"
    page.evaluate(ask, loader.relative_to(SITE).as_posix())
    publish((SITE / "service-worker.js").read_text().replace(old.removeprefix("rebrace-"), "next"))
    wait_until(page, "navigator.serviceWorker.getRegistration().then(found => Boolean(found.waiting))")
    addresses = page.evaluate(ADDRESSES, "rebrace-next")
    assert sum("/engine/pyodide" in address for address in addresses) == 5
    assert sum("/engine/sources" in address for address in addresses) == 1


def test_a_half_release_changes_nothing(visitor, publish):
    page = visitor.open("?offline=1")
    [old] = page.evaluate(KEPT)
    script = (SITE / "service-worker.js").read_text().replace(old.removeprefix("rebrace-"), "broken").replace(
        '"files": [', '"files": ["missing.html", ')
    publish(script)
    wait_until(page, "caches.has('rebrace-broken')")  # it has begun
    wait_until(page, "navigator.serviceWorker.getRegistration().then(found => found.installing === null)")
    assert page.evaluate("navigator.serviceWorker.getRegistration().then(found => found.waiting === null)")
    page.close()
    visitor.page = visitor.context.new_page()
    visitor.context.set_offline(True)
    expect(headline(visitor.open_calculator("#upper=7+in"))).to_be_visible()
    visitor.complaints.clear()


def test_the_kill_switch_takes_everything_away(visitor, publish):
    page = visitor.open("?offline=1")
    page.evaluate(KEPT)
    page.evaluate("localStorage.removeItem('rebrace.offline')")
    publish((SITE / "service-worker-off.js").read_text())
    expect_gone(page)


def expect_gone(page) -> None:
    wait_until(page, "navigator.serviceWorker.getRegistration().then(found => found === undefined)")
    wait_until(page, "caches.keys().then(names => !names.some(name => name.startsWith('rebrace-')))")


def come_back_until(visitor, promise: str) -> None:
    """Close the page and open it anew until a promise in it comes out true.

    A release takes over once no page of the former one is left, and a browser tells a closed page from an
    open one only after a while: whoever is back before that has one more visit with the former release.
    """
    end = time.monotonic() + PATIENCE_MS / 1000
    while time.monotonic() < end:
        visitor.page.close()
        visitor.page = visitor.context.new_page()
        try:
            wait_until(visitor.open(), promise, patience_ms=2000)
        except AssertionError:
            continue
        return
    raise AssertionError(promise)
