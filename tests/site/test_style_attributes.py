"""Style attributes become classes that weigh as much."""

from pathlib import Path

import pytest

from scripts.building import style_attributes

SITE = Path(__file__).parents[2] / "site"
STYLES = {"x:1": "rb-as-0", "x:1;y:2": "rb-as-1"}


def test_each_attribute_is_named_once():
    assert style_attributes.styles_in(['<p style="x:1;y:2"><p style="x:1">', '<p style="x:1">']) == STYLES


@pytest.mark.parametrize(("page", "wanted"), [
    ('<p style="x:1">t</p>', '<p class="rb-as-0">t</p>'),
    ('<g class="a b" style="x:1;y:2"/>', '<g class="rb-as-1 a b"/>'),
    ('<path style="x:1" d="M0" />', '<path d="M0" class="rb-as-0"/>'),
])
def test_a_tag_names_a_class_where_it_had_an_attribute(page, wanted):
    assert style_attributes.with_classes(page, STYLES) == wanted


def test_a_class_weighs_as_much_as_the_attribute_did():
    assert style_attributes.sheet(STYLES) == ".rb-as-0{x:1!important}.rb-as-1{x:1!important;y:2!important}"


def test_no_page_carries_a_style_attribute():
    pages = list(SITE.rglob("*.html"))
    assert len(pages) > 100
    assert [path for path in pages if " style=" in path.read_text(encoding="utf-8")] == []
