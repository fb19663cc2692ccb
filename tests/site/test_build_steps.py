"""Names by content, compression, the offline list, and when to build again."""

import gzip
import json
import os
from pathlib import Path

import brotli
import pytest

from scripts.building import compress, fingerprint, release, revisions, theme, vendor
from scripts.building.errors import BuildError

SITE = Path(__file__).parents[2] / "site"


@pytest.fixture
def draft(tmp_path):
    for name, text in {
        "index.html": '<link href="assets/css/site.css"><script src="assets/js/page.mjs"></script>'
                      '<script src="assets/javascripts/bundle.0.min.js"></script>',
        "tiller/index.html": '<link href="../assets/css/site.css">',
        "assets/css/site.css": '@font-face { src: url("../fonts/a.woff2") }',
        "assets/fonts/a.woff2": "font",
        "assets/js/page.mjs": 'import "./b.mjs";',
        "assets/javascripts/bundle.0.min.js": 'new URL("assets/search/index.json", base)',
        "assets/search/index.json": '{"docs": []}',
        "service-worker.js": "/* keeps the files of RELEASE */",
    }.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    return tmp_path


def only(folder, pattern):
    [path] = folder.glob(pattern)
    return path


def test_folders_are_named_by_content_and_addresses_follow(draft):
    revisions.name_by_content(draft)
    css, fonts = only(draft, "assets/css-*"), only(draft, "assets/fonts-*")
    assert f'href="assets/{css.name}/site.css"' in (draft / "index.html").read_text()
    assert f'href="../assets/{css.name}/site.css"' in (draft / "tiller/index.html").read_text()
    assert f"../{fonts.name}/a.woff2" in (css / "site.css").read_text()


def test_the_theme_s_script_and_what_it_fetches_for_the_search_are_named_by_content(draft):
    revisions.name_by_content(draft)
    scripts, words = only(draft, "assets/javascripts-*"), only(draft, "assets/search-*")
    assert f'src="assets/{scripts.name}/bundle.0.min.js"' in (draft / "index.html").read_text()
    assert (scripts / "bundle.0.min.js").read_text() == f'new URL("assets/{words.name}/index.json", base)'


def test_a_changed_font_renames_the_styles_that_use_it(draft, tmp_path_factory):
    revisions.name_by_content(draft)
    other = tmp_path_factory.mktemp("other")
    (other / "assets/css").mkdir(parents=True)
    (other / "assets/fonts").mkdir()
    (other / "assets/css/site.css").write_text('@font-face { src: url("../fonts/a.woff2") }')
    (other / "assets/fonts/a.woff2").write_text("another font")
    revisions.name_by_content(other)
    assert only(other, "assets/css-*").name != only(draft, "assets/css-*").name


def test_compressed_copies_hold_the_same_bytes(tmp_path):
    text = "the same words over and over " * 100
    (tmp_path / "page.html").write_text(text)
    (tmp_path / "tiny.html").write_text("x")
    (tmp_path / "noise.json").write_bytes(os.urandom(2000))
    compress.compress(tmp_path, tmp_path / "cache")
    assert brotli.decompress((tmp_path / "page.html.br").read_bytes()).decode() == text
    assert gzip.decompress((tmp_path / "page.html.gz").read_bytes()).decode() == text
    assert not list(tmp_path.glob("tiny.html.*"))
    assert not list(tmp_path.glob("noise.json.*"))


def test_compression_is_remembered_by_content_and_forgotten_when_unused(tmp_path, monkeypatch):
    site, cache = tmp_path / "site", tmp_path / "cache"
    site.mkdir()
    (site / "page.html").write_text("a" * 1000)
    compress.compress(site, cache)
    kept = {path.name for path in cache.iterdir()}
    monkeypatch.setattr(compress, "METHODS", dict.fromkeys(compress.METHODS))
    compress.compress(site, cache)
    assert {path.name for path in cache.iterdir()} == kept
    monkeypatch.undo()
    (site / "page.html").write_text("b" * 1000)
    compress.compress(site, cache)
    assert not {path.name for path in cache.iterdir()} & kept


def test_the_service_worker_learns_its_release(draft):
    (draft / "assets/engine/pyodide-0").mkdir(parents=True)
    (draft / "assets/engine/pyodide-0/big.wasm").write_text("")
    release.write(draft)
    first, rest = (draft / "service-worker.js").read_text().split("\n", 1)
    named = json.loads(first.removeprefix("const RELEASE = ").removesuffix(";"))
    assert rest == "/* keeps the files of RELEASE */"
    assert "" in named["files"]
    assert "tiller/" in named["files"]
    assert "assets/css/site.css" in named["files"]
    assert not [name for name in named["files"] if "pyodide" in name or name == "service-worker.js"]


def test_nothing_is_kept_that_no_page_asks_for():
    assert not list(SITE.rglob("*.map"))
    assert not list(SITE.rglob("lunr"))


def test_every_listed_file_of_the_built_site_is_there():
    first = (SITE / "service-worker.js").read_text().split("\n", 1)[0]
    for name in json.loads(first.removeprefix("const RELEASE = ").removesuffix(";"))["files"]:
        path = SITE / name
        assert (path / "index.html" if name == "" or name.endswith("/") else path).is_file()


def test_any_changed_input_asks_for_a_new_build(tmp_path):
    (tmp_path / "calc").mkdir()
    (tmp_path / "calc/a.py").write_text("a = 1")
    for name in ("mkdocs.yml", "package-lock.json", "requirements.txt"):
        (tmp_path / name).write_text("")
    (tmp_path / "docs").mkdir()
    (tmp_path / "scripts").mkdir()
    before = fingerprint.of_inputs(tmp_path)
    assert fingerprint.of_inputs(tmp_path) == before
    (tmp_path / "calc/a.py").write_text("a = 2")
    changed = fingerprint.of_inputs(tmp_path)
    (tmp_path / "docs/index.md").write_text("")
    assert len({before, changed, fingerprint.of_inputs(tmp_path)}) == 3


def test_a_site_without_a_stamp_is_not_taken_for_built(tmp_path):
    assert not fingerprint.stamped(tmp_path, "x")
    fingerprint.stamp(tmp_path, "x")
    assert fingerprint.stamped(tmp_path, "x")
    assert not fingerprint.stamped(tmp_path, "y")


def themed(site, script):
    path = site / "assets/javascripts/bundle.0.min.js"
    path.parent.mkdir(parents=True)
    path.write_text(script)
    return path


PARTS = ('function W(e,t){let r=Mn(e);return L(z(location.protocol!=="file:"),Je("search")).pipe(R(o=>o),b(()=>t))'
         '.subscribe(o=>r.next(o)),r}'
         'function Ai(e,{i:t,l:r}){return z([t,r.pipe(Q(we()),g(o=>!!o.searchParams.get("h")))]).pipe(m(i=>i))}'
         'function ks(){return ze(new URL("search/search_index.json",Or.base))}'
         'function oi(e,t){return L(...M(".annotate:not(.x)",e).map(i=>z(i)),...M("a",e).map(i=>J(i)))}'
         'var a=1,Hs=L(...me("consent").map(e=>A(e)),...me("search").map(e=>S(e))),'
         '$s=H(()=>L(...me("announce").map(e=>n(e)),...me("content").map(e=>oi(e,{})))),'
         'K=ct.pipe(b(()=>$s),V(Hs),Z(1));K.subscribe();')
"""Where the theme's script puts together what works on a page, and fetches words, in its own short names."""


def test_the_theme_s_work_on_a_page_is_parted_into_tasks(tmp_path):
    path = themed(tmp_path, PARTS)
    theme.part(tmp_path)
    parted = path.read_text()
    assert 'return inTurn(10,...M(".annotate:not(.x)",e).map(i=>z(i)),...M("a",e).map(i=>J(i)))}' in parted
    assert ',Hs=inTurn(1,H(()=>L(...me("consent").map(e=>A(e)),...me("search").map(e=>S(e))))),' in parted
    assert '$s=H(()=>inTurn(1,...me("announce").map(e=>n(e)),...me("content").map(e=>oi(e,{})))),' in parted


def test_the_theme_fetches_the_words_of_the_book_for_those_who_search_or_have_searched(tmp_path):
    path = themed(tmp_path, PARTS)
    theme.part(tmp_path)
    parted = path.read_text()
    searched = 'r.pipe(Q(we()),g(o=>!!o.searchParams.get("h")))'
    assert 'return Je("search").pipe(R(o=>o),b(()=>t)).subscribe(' in parted
    assert 'return ((ask=()=>fetch(new URL("assets/search/index.json",Or.base)).then(' in parted
    assert f"return z([{searched}.pipe(b(()=>t)),{searched}]).pipe(m(i=>i))" in parted


def test_a_theme_that_begins_its_work_otherwise_stops_the_build(tmp_path):
    themed(tmp_path, "b.subscribe();window.other=c;")
    with pytest.raises(BuildError, match="another way"):
        theme.part(tmp_path)


def test_charts_do_not_ask_for_the_reader_s_language(tmp_path):
    vendor.copy(Path(__file__).parents[2] / "node_modules", tmp_path)
    charts = (tmp_path / "assets/js/vendor/uplot.mjs").read_text()
    code = [line for line in charts.splitlines() if not line.lstrip().startswith("//")]
    assert not [line for line in code if "Intl." in line]


def test_a_chart_library_that_has_changed_stops_the_build(tmp_path):
    for source, _ in vendor.FILES:
        (tmp_path / "from" / source).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "from" / source).write_text("changed")
    with pytest.raises(BuildError, match="has changed"):
        vendor.copy(tmp_path / "from", tmp_path / "to")
