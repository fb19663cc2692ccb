"""What a page is told of a mark that it would have drawn to what its picture shows."""

import json

import pytest

from calc import answer, catalog
from calc.declaring import inputs_of
from calc.pictures.finding import ON_DOTS, ON_EDGES
from tests.sentences import whole

WIDE = 41
STEP = [60] * 20 + [200] * 21


def ask(**more):
    asked = {"set": "upper_limb", "row": 3, "mark": [118.0, 220.0], "before": [118.0, 200.0],
             "after": [118.0, 240.0], "rises": 0, "left": 100, "top": 200, "step": 1, "wide": WIDE,
             "gray": STEP * WIDE, **more}
    answer.begin(json.dumps({"calculator": "photograph", "find": asked}))
    return json.loads(answer.advance())


def test_a_mark_beside_an_edge_is_drawn_to_it():
    assert ask() == {"x": 120.0, "y": 220.0, "how": "edge", "rises": -1.0,
                     "said": "Drawn to the edge, by 2.0 pixels. Undo puts it back."}


def test_the_first_mark_of_a_limb_waits_for_the_second():
    assert ask(row=0, before=None, after=None) == {"said": ""}
    assert ask(row=0, before=None)["how"] == "edge"  # no step along the edge: no corner


def test_a_mark_beside_nothing_stays():
    said = "No clear {} lies near enough: the mark stays where you set it."
    assert ask(gray=[90] * WIDE * WIDE) == {"said": said.format("edge")}
    assert ask(set="dots", gray=[90] * WIDE * WIDE) == {"said": said.format("dot")}


def test_marks_of_other_kinds_are_left_alone():
    assert ask(set="string_marks") == {"said": ""}


@pytest.mark.parametrize("wide", [0, 40])
def test_a_patch_that_is_not_as_wide_as_it_says_is_refused(wide):
    with pytest.raises(ValueError, match=whole("a patch of a picture must have full rows")):
        ask(wide=wide)


def test_a_calculator_that_finds_nothing_says_so():
    answer.begin(json.dumps({"calculator": "tiller", "find": {}}))
    with pytest.raises(ValueError, match=whole("the calculator tiller finds nothing beside its answer")):
        answer.advance()


def test_what_can_be_drawn_says_in_its_rows_how_it_was_set():
    calculator = catalog.find("photograph")
    assert calculator.find is not None
    with_how = [each.id for each in inputs_of(calculator) if "how" in [column.id for column in each.columns]]
    assert sorted(with_how) == sorted(ON_DOTS + ON_EDGES)
