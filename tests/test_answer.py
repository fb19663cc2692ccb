"""One question in, one answer out, in steps."""

import json
from itertools import pairwise

import pytest

from calc import answer, catalog
from calc.declaring import (
    CHOICE,
    FACT,
    SWITCH,
    group,
    inputs_of,
    quantity,
    result,
)
from calc.outcome import OK, WATCH, Outcome
from tests.invented import calculator_of
from tests.sentences import whole


def ask(calculator, *pairs):
    answer.begin(json.dumps({"calculator": calculator, "pairs": list(pairs)}))
    while "progress" in (said := json.loads(answer.advance())):
        pass
    return said


def texts(node):
    """Return all text in a tree, joined."""
    return node if isinstance(node, str) else "".join(texts(child) for child in node[2:])


def headline_in(said):
    """Return the headline of an answer: it stands first in what is answered."""
    return said["tree"][0][2][2]


def test_the_answer_is_a_tree_of_texts():
    said = ask("tiller", ["upper", "7 3/16"], ["lower", "7 9/16"])
    assert not said["errors"]
    headline = headline_in(said)
    assert headline[1] == {"class": "rb-headline"}
    assert texts(headline).startswith("The upper distance is 3/8 in smaller than the lower")
    assert said["charts"][0]["lines"][0]["xs"]


def test_errors_leave_no_tree():
    said = ask("tiller", ["upper", "abc"], ["lower", "-3"])
    assert [each["field"] for each in said["errors"]] == ["upper", "lower"]
    assert said["tree"] is None
    assert said["charts"] == []


def test_units_are_taken_from_the_pairs():
    assert "mm" in texts(headline_in(ask("tiller", ["units", "metric"])))
    said = ask("tiller", ["units", "nautical"])
    assert said["units"] == "imperial"
    assert said["notes"] == ["The units must be imperial or metric; they were left as imperial."]


def test_of_two_unit_systems_the_first_counts():
    said = ask("tiller", ["units", "metric"], ["units", "imperial"])
    assert said["units"] == "metric"
    assert said["notes"] == ["“units” was given more than once; the first one counts."]


def test_too_many_pairs_are_left_out():
    said = ask("tiller", *[[f"name{number}", ""] for number in range(500)])
    assert said["tree"]
    assert len(said["notes"]) == answer.MOST_PAIRS + 1
    said = ask("tiller", *[[f"name{number}", ""] for number in range(answer.MOST_PAIRS)])
    assert len(said["notes"]) == answer.MOST_PAIRS


def test_typed_text_reaches_no_attribute_of_the_tree():
    said = ask("tiller", ["upper", "<b onclick=x>"], ["<b onclick=x>", "1"])
    assert "<b" not in json.dumps(said["tree"])
    assert "“<b onclick=x>”" in said["errors"][0]["message"]


def test_long_work_goes_step_by_step(monkeypatch):
    def compute(width):
        yield 0.3
        yield 0.5
        return Outcome(headline="Done.", values=(("double", 2 * width),), checks=(), assumptions=())

    slow = calculator_of(group("One", quantity("width", "Width", "length", default="1 in", low="0 in",
                                               high="2 in")),
                         results=(result("double", "Double", "length"),), compute=compute)
    monkeypatch.setattr(catalog, "find", lambda _: slow)
    answer.begin('{"calculator": "slow", "pairs": []}')
    assert json.loads(answer.advance()) == {"progress": 0.5}
    said = json.loads(answer.advance())
    assert texts(headline_in(said)) == "Done."
    with pytest.raises(ValueError, match=whole("nothing was begun")):
        answer.advance()


def test_short_steps_are_done_several_in_a_call(monkeypatch):
    """A tenth of the work at least, so that memory is not cleared after every step."""
    def compute(width):
        for step in range(1, 50):
            yield step / 50
        return Outcome(headline="Done.", values=(("double", 2 * width),), checks=(), assumptions=())

    long = calculator_of(group("One", quantity("width", "Width", "length", default="1 in", low="0 in",
                                               high="2 in")),
                         results=(result("double", "Double", "length"),), compute=compute)
    monkeypatch.setattr(catalog, "find", lambda _: long)
    answer.begin('{"calculator": "long", "pairs": []}')
    told = []
    while "progress" in (said := json.loads(answer.advance())):
        told.append(said["progress"])
    assert texts(headline_in(said)) == "Done."
    assert 0.1 < told[0] < 0.15
    assert all(0.1 <= after - before < 0.15 for before, after in pairwise(told))


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_result_that_is_not_finite_becomes_an_error(value):
    broken = calculator_of(results=(result("x", "The result", "length"),),
                           compute=lambda: Outcome(headline="So.", values=(("x", value),), checks=(),
                                                   assumptions=()))
    job = answer.work_out(broken, [])
    assert job.outcome is None
    assert job.problems[0].message == "The result has no finite value for these inputs."


# Whose figures ------------------------------------------------------------------

FACTS = [(id, each.id) for id in catalog.IDS for each in inputs_of(catalog.find(id))
         if each.role == FACT and each.kind not in (SWITCH, CHOICE) and each.when is None and each.default]


def levels(job):
    return [each.level for each in job.outcome.checks]


@pytest.mark.parametrize("id", catalog.IDS)
def test_the_worked_example_alone_is_as_it_was(id):
    calculator = catalog.find(id)
    alone = answer.work_out(calculator, [])
    texts = [(each.id, each.default) for each in inputs_of(calculator)]
    as_a_form = answer.work_out(calculator, texts, {name: "example" for name, _ in texts})
    everyones = answer.work_out(calculator, texts, {})
    for job in (alone, as_a_form):
        assert [(each.id, each.level) for each in job.outcome.checks] == [
            (each.id, each.level) for each in everyones.outcome.checks]
    assert answer.standing_of(alone) == answer.standing_of(as_a_form)
    assert answer.standing_of(everyones) == {}


@pytest.mark.parametrize(("id", "name"), FACTS)
def test_nothing_is_in_order_while_the_example_answers_for_somebodys_bow(id, name):
    calculator = catalog.find(id)
    [typed] = [each for each in inputs_of(calculator) if each.id == name]
    job = answer.work_out(calculator, [(name, typed.default)])
    lent = job.of_the_example()
    assert name not in [each.id for each in lent]
    if not lent:
        pytest.skip("it asks for this one fact only")
    assert OK not in levels(job)
    [standing] = [each for each in job.outcome.checks if each.id == "standing"]
    assert standing.level == WATCH
    assert lent[0].label in standing.text
    assert str(len(job.facts())) in standing.text


def test_a_trial_on_the_example_is_somebodys_too():
    job = answer.work_out(catalog.find("bow-model"), [("sanded_depth", "0.004 in")])
    assert OK not in levels(job)
    assert job.outcome.checks[0].text.startswith("All 1")


def test_what_a_way_of_measuring_does_not_ask_for_is_nobodys():
    tiller = catalog.find("tiller")
    lent = [each.id for each in answer.work_out(tiller, [("upper", "7 in")]).of_the_example()]
    assert "lower" in lent
    assert "from_string_end" not in lent
    assert "from_string_end" in [each.id for each in answer.work_out(
        tiller, [("measured", "string_end")]).of_the_example()]


def test_a_long_list_of_borrowed_figures_is_counted():
    typed = [("weight_now", "55 lb"), ("weight_wanted", "50 lb")]
    job = answer.work_out(catalog.find("weight-reduction"), typed)
    [standing] = [each for each in job.outcome.checks if each.id == "standing"]
    lent = job.of_the_example()
    assert standing.text.startswith(f"{len(lent)} of the {len(job.facts())} facts behind this answer are ")
    assert f"{lent[5].label} and {len(lent) - 6} more." in standing.text


def test_the_page_says_whose_figures_are_whose():
    upper = ["upper", "7 3/16 in"]
    request = {"calculator": "tiller", "pairs": [upper, ["lower", "7 in"], ["units", "imperial"]],
               "standing": {"lower": "example", "nothing": "example", "upper": "mine"}}
    answer.begin(json.dumps(request))
    said = json.loads(answer.advance())
    assert said["standing"] == {"lower": "example"}
    assert "1 of the" in json.dumps(said["tree"])
    assert ask("tiller", upper)["standing"]["lower"] == "example"
    assert ask("tiller", ["upper", "abc"])["standing"] == {}
