"""Style sheets written one a part of the page reach it as one file, in their order."""

import re
from pathlib import Path

import pytest

from scripts.building import styles
from scripts.building.errors import BuildError
from tests.sentences import whole

NODE_MODULES = Path(__file__).parents[2] / "node_modules"


def page(root, *names):
    links = "".join(f'<link rel="stylesheet" href="{root}assets/css/{name}">\n' for name in names)
    return f'<head><link rel="stylesheet" href="{root}assets/stylesheets/theme.css">\n{links}<script></script></head>'


@pytest.fixture
def site(tmp_path):
    for name, text in {
        "index.html": page("", "one.css", "two.css"),
        "tiller/index.html": page("../", "one.css", "two.css"),
        "assets/css/one.css": '.a { color: red; }\n@font-face { src: url("../fonts/a.woff2") }',
        "assets/css/two.css": ".a { color: blue; }",
        "assets/css/vendor/charts.css": ".c { color: red; }",
    }.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text)
    return tmp_path


def test_a_page_names_one_sheet_behind_those_of_the_theme(site):
    styles.join(NODE_MODULES, site)
    assert (site / "index.html").read_text() == page("", "site.css")
    assert (site / "tiller/index.html").read_text() == page("../", "site.css")


def test_the_sheet_keeps_order_and_addresses_and_nothing_else_is_touched(site):
    styles.join(NODE_MODULES, site)
    joined = (site / "assets/css/site.css").read_text()
    assert joined.index("red") < joined.index("#00f")
    assert "../fonts/a.woff2" in joined
    assert sorted(path.name for path in (site / "assets/css").rglob("*.css")) == ["charts.css", "site.css"]


def test_pages_that_name_different_sheets_are_refused(site):
    (site / "tiller/index.html").write_text(page("../", "two.css"))
    with pytest.raises(BuildError, match=whole(
            "all pages must name the same style sheets of assets/css, in one order; found "
            "[('one.css', 'two.css'), ('two.css',)]")):
        styles.join(NODE_MODULES, site)


def test_a_sheet_with_a_fault_is_refused(site):
    (site / "assets/css/two.css").write_text(".a { color: blue; } }")
    with pytest.raises(BuildError, match=re.escape(
            'style sheets have faults:\n▲ [WARNING] Unexpected "}" [css-syntax-error]')):
        styles.join(NODE_MODULES, site)
