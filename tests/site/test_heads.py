"""What every built page carries in its head, and what the policy allows."""

import json
import re
from pathlib import Path

import pytest

from scripts.building import pages
from scripts.building.errors import BuildError
from tests.sentences import whole
from tests.site.markup import Elements

SITE = Path(__file__).parents[2] / "site"
PAGES = sorted(SITE.rglob("*.html"))


def directives(html):
    [meta] = head(html).all("meta", **{"http-equiv": "Content-Security-Policy"})
    return {name: set(values.split()) for name, _, values in
            (part.strip().partition(" ") for part in meta["content"].split(";"))}


def head(html):
    return Elements(html.partition("</head>")[0].partition("<head>")[2])


@pytest.fixture(params=PAGES, ids=lambda path: path.relative_to(SITE).as_posix())
def page(request):
    return request.param.read_text(encoding="utf-8")


def test_no_two_pages_have_the_same_title():
    titles = [re.search("<title>([^<]*)", each.read_text(encoding="utf-8"))[1] for each in PAGES
              if each.name == "index.html"]
    assert len(set(titles)) == len(titles)


def test_no_two_pages_have_the_same_heading():
    headings = [re.search("<h1[^>]*>([^<]*)", each.read_text(encoding="utf-8"))[1].strip() for each in PAGES]
    assert len(set(headings)) == len(headings) > 100


def test_the_policy_allows_own_files_and_known_inline_scripts_only(page):
    allowed = directives(page)
    assert allowed["default-src"] == {"'none'"}
    for name, values in allowed.items():
        wide = {value for value in values if "://" in value or value in ("*", "blob:", "data:", "https:")}
        assert wide == ({"data:", "blob:"} if name == "img-src" else set()), name
    assert allowed["img-src"] == {"'self'", "data:", "blob:"}  # drawings of the theme, photographs kept here
    assert "'unsafe-inline'" not in allowed["script-src"] | allowed["style-src"] | allowed["style-src-elem"]
    assert "'unsafe-eval'" not in allowed["script-src"]
    assert "'unsafe-inline'" not in allowed["style-src-attr"]


def test_no_page_asks_a_browser_to_fetch_its_neighbours(page):
    assert not re.search(r'rel="?(?:next|prev)\b', page)


def test_a_style_attribute_is_named_in_the_policy_or_none_is_allowed():
    hashed = pages.source_hash("--rb-frames:2")
    assert f"style-src-attr 'unsafe-hashes' {hashed}" in pages.policy(['<g style="--rb-frames:2"><g style="">'])
    assert "style-src-attr 'none'" in pages.policy(["<g>"])


def test_the_policy_knows_every_inline_script_of_the_page(page):
    code = pages.InlineCode()
    code.feed(page)
    assert code.scripts
    assert {pages.source_hash(each) for each in code.scripts} <= directives(page)["script-src"]
    assert {pages.source_hash(each) for each in code.styles} <= directives(page)["style-src-elem"]
    assert {pages.source_hash(each) for each in code.style_attributes} <= directives(page)["style-src-attr"]


def test_all_pages_carry_one_policy_and_one_release():
    heads = {re.search(r'<meta charset="utf-8">(.*?rebrace-engine.*?)>', path.read_text(encoding="utf-8"))[1]
             for path in PAGES}
    assert len(heads) == 1


def test_the_engine_named_by_the_page_is_there(page):
    [meta] = head(page).all("meta", name="rebrace-engine")
    named = json.loads(meta["content"])
    assert set(named) == {"wasm", "whole", "calc", "sources", "pyodide"}
    assert all((SITE / "assets/engine" / name).exists() for name in named.values())


def test_calculator_pages_fetch_early_and_others_do_not(page):
    early = [each for each in head(page).all("link") if each["rel"] in ("preload", "modulepreload")]
    if pages.CALCULATOR_MARK in page:
        addresses = " ".join(each["href"] for each in early)
        assert [each for each in head(page).all("script") if "async" in each]
        assert "/worker.mjs" in addresses
    else:
        assert early == []


def test_what_a_link_needs_is_fetched_before_the_style_sheets(page):
    assert page.index('name="rebrace-engine"') < page.index("names.wasm") < page.index('rel="stylesheet"')


def test_an_inline_event_handler_stops_the_build():
    with pytest.raises(BuildError, match=whole("inline event handlers are not allowed: onclick")):
        pages.policy(['<button onclick="x()">x</button>'])


def test_data_in_a_script_element_needs_no_permission():
    assert "sha256" not in pages.policy(['<script type="application/json">{"a": 1}</script>'])


def test_the_hash_is_the_one_browsers_compute():
    # example of the recommendation "Content Security Policy Level 2": from memory, confirmed by calculation
    printed = "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='"
    assert pages.source_hash("alert('Hello, world.');") == printed


def test_imports_of_imports_are_fetched_early(tmp_path):
    (tmp_path / "a.mjs").write_text('import { b } from "./b.mjs";\nimport("./later.mjs");\n')
    (tmp_path / "b.mjs").write_text('import "./c.mjs";export { a } from "./a.mjs";\n')
    (tmp_path / "c.mjs").write_text("")
    (tmp_path / "later.mjs").write_text("")
    assert pages.imported_by(tmp_path, ("a.mjs",)) == ["a.mjs", "b.mjs", "c.mjs"]
