"""Style sheets written one a part of the page reach it as one file, in their order."""

import re
from pathlib import Path

import pytest

from scripts.building import spare_rules, styles
from scripts.building.errors import BuildError
from tests.sentences import whole

NODE_MODULES = Path(__file__).parents[2] / "node_modules"


def page(root, *names):
    links = "".join(f'<link rel="stylesheet" href="{root}assets/css/{name}">\n' for name in names)
    theme = f'<link rel="stylesheet" href="{root}assets/stylesheets/theme.css">\n'
    return f'<head>{theme}{links}<script></script></head><p class="a"></p>'


@pytest.fixture
def site(tmp_path):
    for name, text in {
        "index.html": page("", "one.css", "two.css"),
        "tiller/index.html": page("../", "one.css", "two.css"),
        "assets/css/one.css": '.a { color: red; }\n@font-face { src: url("../fonts/a.woff2") }',
        "assets/css/two.css": ".a { color: blue; }",
        "assets/css/vendor/charts.css": ".c { color: red; }",
        "assets/stylesheets/theme.css": '@charset "UTF-8";.a,.never{color:green}.never{color:green}',
    }.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    return tmp_path


def test_a_page_names_one_sheet(site):
    styles.join(NODE_MODULES, site)
    for name, root in (("index.html", ""), ("tiller/index.html", "../")):
        assert re.findall('href="([^"]*)"', (site / name).read_text()) == [root + "assets/css/site.css"]
    assert not list(site.glob("assets/stylesheets/*"))


def test_the_sheet_keeps_order_and_addresses_and_nothing_else_is_touched(site):
    styles.join(NODE_MODULES, site)
    joined = (site / "assets/css/site.css").read_text()
    assert joined.index("green") < joined.index("red") < joined.index("#00f")
    assert "../fonts/a.woff2" in joined
    assert sorted(path.name for path in (site / "assets/css").rglob("*.css")) == ["charts.css", "site.css"]


def test_pages_that_name_different_sheets_are_refused(site):
    (site / "tiller/index.html").write_text(page("../", "two.css"))
    with pytest.raises(BuildError, match=whole(
            "all pages must name the same style sheets of assets/, in one order; found "
            "[('stylesheets/theme.css', 'css/one.css', 'css/two.css'), "
            "('stylesheets/theme.css', 'css/two.css')]")):
        styles.join(NODE_MODULES, site)


def test_a_sheet_with_a_fault_is_refused(site):
    (site / "assets/css/two.css").write_text(".a { color: blue; } }")
    with pytest.raises(BuildError, match=re.escape(
            'style sheets have faults:\n▲ [WARNING] Unexpected "}" [css-syntax-error]')):
        styles.join(NODE_MODULES, site)


def test_of_the_theme_only_rules_for_what_a_page_can_carry_are_left(site):
    styles.join(NODE_MODULES, site)
    assert "never" not in (site / "assets/css/site.css").read_text()


@pytest.mark.parametrize(("sheet", "left"), [
    (".a{x:1}.b{x:1}", ".a{x:1}"),
    (".a .b,.a>.c,.a{x:1}", ".a>.c,.a{x:1}"),
    (".a:not(.b):is(.b,.c){x:1}", ".a:not(.b):is(.b,.c){x:1}"),  # what is in brackets may well be missing
    ('a[href="#b"],p.b[title]{x:1}', 'a[href="#b"]{x:1}'),
    ("@media print{.b{x:1}}@supports (x:1){.a{x:1}.b{x:1}}", "@supports (x:1){.a{x:1}}"),
    ("@keyframes b{to{x:1}}", "@keyframes b{to{x:1}}"),
    ("[data-md-color-primary=red] .a,[data-md-color-primary=custom] .a{x:1}",
     "[data-md-color-primary=custom] .a{x:1}"),
    ('.a:after{content:"}.b{;"}.b{x:1}', '.a:after{content:"}.b{;"}'),
])
def test_a_rule_goes_if_no_page_can_meet_it(sheet, left):
    assert spare_rules.trimmed(sheet, {"a", "c"}, "") == left


def test_a_property_of_the_theme_goes_if_nothing_reads_it():
    sheet = ".a{--md-one:1;--md-two:var(--md-one);--md-three:url('data:;x');--ours:2;color:var(--md-four)}"
    assert spare_rules.trimmed(sheet, {"a"}, "") == ".a{--ours:2;color:var(--md-four)}"
    assert spare_rules.trimmed(sheet, {"a"}, "var(--md-two)") == (
        ".a{--md-one:1;--md-two:var(--md-one);--ours:2;color:var(--md-four)}")
