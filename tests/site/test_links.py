"""The checker of addresses finds what leads nowhere or elsewhere."""

from pathlib import Path

import pytest

from scripts.building import links
from scripts.building.errors import BuildError
from tests.sentences import whole

SITE = Path(__file__).parents[2] / "site"


@pytest.fixture
def small_site(tmp_path):
    (tmp_path / "tiller").mkdir()
    (tmp_path / "mark.svg").write_text("<svg/>")
    (tmp_path / "index.html").write_text('<h1 id="top">Home</h1>')
    (tmp_path / "tiller" / "index.html").write_text('<h2 id="method">Method</h2>')
    return tmp_path


def faults(site, html):
    (site / "index.html").write_text('<h1 id="top">Home</h1>' + html)
    return links.faults_of(site)


@pytest.mark.parametrize("html", [
    '<a href="tiller/">x</a>',
    '<a href="tiller/#method">x</a>',
    '<a href="#top">x</a>',
    '<a href="/tiller/">x</a>',
    '<a href="tiller/#upper=7+3/16+in&units=metric">a link with inputs</a>',
    '<a href="https://example.org/">x</a>',
    '<img src="mark.svg">',
    '<img src="data:image/png;base64,AA">',
    '<p>href="nowhere"</p>',
])
def test_sound_addresses_pass(small_site, html):
    assert faults(small_site, html) == []


@pytest.mark.parametrize(("html", "reason"), [
    ('<a href="brace/">x</a>', "does not exist"),
    ('<a href="tiller">no slash</a>', "does not exist"),
    ('<a href="tiller/#nothing">x</a>', "no such anchor"),
    ('<a href="#nothing">x</a>', "no such anchor"),
    ('<a href="../../etc/passwd">x</a>', "does not exist"),
    ('<a href="javascript:alert(1)">x</a>', "must be https"),
    ('<a href="http://example.org/">x</a>', "must be https"),
    ('<a href="//example.org/">x</a>', "does not exist"),
    ('<img src="gone.svg">', "does not exist"),
    ('<img src="mark.svg" srcset="gone.svg 2x">', "does not exist"),
    ('<img src="https://example.org/x.png">', "elsewhere"),
    ('<script src="//example.org/x.js"></script>', "elsewhere"),
    ('<link rel="stylesheet" href="gone.css">', "does not exist"),
    ('<iframe src="https://example.org/"></iframe>', "elsewhere"),
])
def test_faulty_addresses_are_named(small_site, html, reason):
    [fault] = faults(small_site, html)
    assert reason in fault
    assert fault.startswith("index.html: ")


def test_a_site_below_another_address_may_name_its_own_only(small_site, monkeypatch):
    monkeypatch.setenv("SITE_URL", "https://example.org/rebrace/")
    assert faults(small_site, '<a href="/rebrace/tiller/">x</a>') == []
    assert len(faults(small_site, '<a href="/tiller/">x</a>')) == 1


def test_styles_load_nothing_from_elsewhere_and_nothing_missing(small_site):
    (small_site / "a.css").write_text(
        'a { background: url("https://example.org/x.png") } b { src: url(gone.woff2) }')
    assert [fault.split(": ")[1].split(" ")[0] for fault in links.faults_of(small_site)] == [
        "https://example.org/x.png", "gone.woff2"]


def test_a_fault_stops_the_build(small_site):
    (small_site / "index.html").write_text('<a href="brace/">x</a>')
    with pytest.raises(BuildError, match=whole("broken addresses:\n  index.html: brace/ does not exist")):
        links.check(small_site)


def test_the_built_site_is_sound():
    assert links.faults_of(SITE) == []
