"""Blocks made from the book's own data: paths, findings, glossary, check values."""

import re

import markdown
import pytest

from calc.lookups import glossary
from calc.lookups.check_values import CHECK_VALUES
from calc.paths import catalog
from calc.paths.declare import nodes
from calc.tables.findings import FINDINGS
from calc.tables.practice import LIMITS
from tests.sentences import whole
from tests.site.markup import Elements


def converted(text):
    return markdown.markdown(text, extensions=["scripts.blocks.extension"])


@pytest.mark.parametrize("id", catalog.IDS)
def test_a_path_can_be_read_and_followed_without_a_script(id):
    path = catalog.find(id)
    html = converted(f"::: path {id}")
    page = Elements(html)
    assert page.unclosed == []
    assert page.ids() == [f"{id}-{each.id}" for each in nodes(path)]
    for asked in path.questions:
        for given in asked.answers:
            assert f'<a href="#{id}-{given.to}">{given.text}</a>' in html
    for each in path.ends:
        assert f'<a href="../../{each.page.address}">' in html
    assert "hidden" not in html


def test_every_finding_is_listed_with_its_page():
    page = Elements(converted("::: findings"))
    assert [each["id"] for each in page.all("dt")] == [
        "finding-" + finding.id.replace("_", "-") for verdict in ("wall", "look", "repair", "measure", "shoot")
        for finding in FINDINGS if finding.verdict == verdict]
    assert len(page.all("a")) == len(FINDINGS)


def test_an_end_names_the_finding_that_it_stands_for():
    html = converted("::: path line")
    for each in catalog.find("line").ends:
        assert f'<a href="../../inspect/decide/#finding-{each.finding.replace("_", "-")}">' in html


def test_verdicts_name_every_finding_once():
    html = converted("::: verdicts")
    for each in FINDINGS:
        assert html.lower().count(each.label.lower()) == 1
    assert len(Elements(html).all("li")) == 5


def test_findings_of_one_verdict_and_findings_by_name():
    wall = converted("::: found wall")
    assert len(Elements(wall).all("li")) == len([each for each in FINDINGS if each.verdict == "wall"])
    named = converted("::: found edge-lifted edge-lifted-ramp")
    assert len(Elements(named).all("tr")) == 3
    assert named.index("<strong>Not yet</strong>") < named.index("<strong>Repair first</strong>")
    with pytest.raises(ValueError, match=whole("no finding is called edge_lost")):
        converted("::: found edge-lost")


def test_every_answer_leads_to_its_calculator():
    path = catalog.find("which-calculator")
    page = Elements(converted("::: answers which-calculator"))
    assert sorted(each["href"] for each in page.all("a")) == sorted("../" + each.page.address
                                                                    for each in path.ends)


def test_the_glossary_gives_every_word_its_anchor():
    ids = [id for part in glossary.PARTS for id in Elements(converted(f"::: glossary {part.id}")).ids()]
    assert ids == [each.id for each in glossary.terms()]
    assert len(set(ids)) == len(ids)


def test_a_form_belongs_to_one_word():
    forms = [form.lower() for each in glossary.terms() for form in each.seen_as]
    assert len(set(forms)) == len(forms)


def test_words_stand_in_order_and_say_something():
    for part in glossary.PARTS:
        names = [each.name.lower() for each in part.terms]
        assert names == sorted(names)
    for each in glossary.terms():
        assert re.search(r"[.)]$", each.text)


def test_home_shows_the_same_check_values_as_their_own_page():
    home, own = converted("::: checkvalues"), converted("::: table check-values")
    for each in CHECK_VALUES:
        assert f'<a href="{each.address}">{each.question}</a>' in home
        assert f'<a href="../../{each.address}">{each.page}</a>' in own
        assert each.value in home
        assert each.value in own


def test_check_values_with_a_limit_of_practice_follow_it():
    """The figures are those of `calc.tables.practice`; here they are as a reader expects them."""
    values = {each.question: each.value for each in CHECK_VALUES}
    assert values["Tiller, split finger"] == "upper larger by 1/8 to 1/4 in (3.2 to 6.4 mm)"
    assert values["Spacing of accessory holes, centre to centre"] == "1 5/16 in (33.3 mm)"
    assert values["Arrow too light for any bow"] == "under 5 gr/lb: never"
    assert values["Weight reduction that calls for a second thought"] == "more than 20 %"
    assert {each.status for each in CHECK_VALUES} <= {each.status for each in LIMITS} | {
        "calculated", "read second-hand"}
