"""Words of the glossary are marked in running text, once a page, and nothing else is touched."""

import re
from pathlib import Path

import pytest

from calc.lookups import glossary
from scripts.building.words import mark, with_marks

SITE = Path(__file__).parents[2] / "site"
MARK = re.compile(r'<a class="rb-term"[^>]*>([^<]*)</a>')


def marked(html):
    """Return what is marked in an article that holds this HTML."""
    return MARK.findall(with_marks(f"<article>{html}</article>", "../glossary/"))


def test_the_first_use_of_a_word_is_marked():
    assert marked("<p>Set the tiller. Tiller again.</p><p>The tiller.</p>") == ["tiller"]


def test_a_mark_leads_to_the_entry_and_carries_its_meaning():
    page = with_marks("<article><p>Watch for stacking.</p></article>", "../glossary/")
    assert '<a class="rb-term" href="../glossary/#stacking" title="Weight climbing faster' in page


def test_other_forms_lead_to_the_same_entry():
    assert marked("<p>Two string grooves, one string groove.</p>") == ["string grooves"]
    assert marked("<p>Tip overlays.</p>") == ["Tip overlays"]


@pytest.mark.parametrize("html", [
    "<h2>Tiller</h2>", "<p><a href='x'>tiller</a></p>", "<p><code>tiller</code></p>",
    "<form><p>tiller</p></form>", "<pre><p>tiller</p></pre>", "<figure><p>tiller</p></figure>",
    "<dl><dt>tiller</dt></dl>", '<section class="rb-calculator"><p>tiller</p></section>',
    '<div class="admonition"><p class="admonition-title">tiller</p></div>', "<p>tillering, x-tiller</p>",
    "<div>tiller</div>",
])
def test_headings_links_code_and_forms_are_left_alone(html):
    assert marked(html) == []


def test_only_the_article_is_marked():
    assert MARK.findall(with_marks("<nav><ul><li>tiller</li></ul></nav><p>tiller</p>", "")) == []


def test_all_else_is_written_as_it_was():
    page = ('<!doctype html>\n<html lang="en"><!-- tiller --><body><article><p class=a>1 &lt; 2 &#176;<br/>x'
            '<img src="a.png"><script>if (a < b) { "</p>"; }</script></p></article></body></html>\n')
    assert with_marks(page, "") == page


def test_the_built_pages_lose_nothing_to_their_marks():
    for path in SITE.rglob("index.html"):
        text = path.read_text("utf-8")
        for word in MARK.findall(text):
            assert any(word.lower() == form.lower() for each in glossary.terms() for form in each.seen_as)
        assert len(re.findall(r'class="rb-term" href="[^"]*#([\w-]+)"', text)) == len(MARK.findall(text))
    assert not MARK.search((SITE / "glossary" / "index.html").read_text("utf-8"))


def test_addresses_count_from_the_page(tmp_path):
    page = tmp_path / "tune" / "weight" / "index.html"
    page.parent.mkdir(parents=True)
    page.write_text("<article><p>tiller</p></article>", encoding="utf-8")
    mark(tmp_path)
    assert 'href="../../glossary/#tiller"' in page.read_text("utf-8")
