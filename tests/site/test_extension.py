"""Lines such as `::: calculator tiller` in Markdown."""

import markdown
import pytest

from calc import bibliography, catalog
from calc.tables.grits import USES
from scripts.blocks.extension import example_outcome, headline_of
from scripts.blocks.tree import html_of
from tests.sentences import whole
from tests.site.markup import Elements

EXTENSIONS = ["scripts.blocks.extension", "pymdownx.superfences", "tables"]


def converted(text):
    return markdown.markdown(text, extensions=EXTENSIONS)


@pytest.mark.parametrize("id", catalog.IDS)
@pytest.mark.parametrize("block", ["calculator", "inputs", "results", "example", "sources"])
def test_a_block_stands_in_the_place_of_its_line(block, id):
    html = converted(f"Before.\n\n::: {block} {id}\n\nAfter.")
    page = Elements(html)
    assert page.unclosed == []
    assert html.startswith("<p>Before.</p>")
    assert html.endswith("<p>After.</p>")
    assert ":::" not in html


@pytest.mark.parametrize("id", catalog.IDS)
def test_the_page_holds_the_result_of_the_example(id):
    headline = html_of(["p", {"class": "rb-headline"}, *headline_of(example_outcome(id)["tree"])])
    assert converted(f"::: calculator {id}").count(headline) == 1


@pytest.mark.parametrize("id", catalog.IDS)
def test_the_worked_example_tells_the_whole_headline(id):
    headline = html_of(["strong", {}, *headline_of(example_outcome(id)["tree"])])
    assert converted(f"::: example {id}").count(headline) == 1


def test_the_bibliography_gives_every_source_an_anchor():
    ids = Elements(converted("::: bibliography")).ids()
    assert ids == ["source-" + each.key for each in bibliography.SOURCES]


def test_a_page_names_its_sources_by_key():
    html = converted("::: cited bench-practice astm-f1832")
    found = [bibliography.find(key) for key in ("bench-practice", "astm-f1832")]
    assert html.count("<li>") == 2
    assert html.index(found[0].text) < html.index(found[1].text)


def test_the_list_of_calculators_leads_to_each():
    links = Elements(converted("::: calculators")).all("a")
    assert [each["href"] for each in links] == [id + "/" for id in catalog.IDS]


def test_code_samples_are_left_alone():
    assert "rb-calculator" not in converted("```\n::: calculator tiller\n```\n\n    ::: calculator tiller")


@pytest.mark.parametrize(("line", "sentence"), [
    ("::: calculator", "no block is written ::: calculator "),
    ("::: calculator nothing", "nothing in calculators is called nothing"),
    ("::: nothing", "no block is written ::: nothing "),
    ("::: bibliography x", "no block is written ::: bibliography x"),
    ("::: cited", "no block is written ::: cited "),
    ("::: cited bench-practice nothing", "no source is called nothing"),
])
def test_a_block_that_does_not_exist_stops_the_build(line, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        converted(line)


def test_grits_of_the_book_are_those_of_the_table():
    html = converted("::: grits")
    for use in USES:
        assert f"<td>{use.work}</td>" in html
        assert use.grades in html
