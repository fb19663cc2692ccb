"""One question in, one answer out, in steps."""

import json

import pytest

from calc import answer, catalog
from calc.fields import Calculator, Outcome, group, quantity, result


def ask(calculator, *pairs):
    answer.begin(json.dumps({"calculator": calculator, "pairs": list(pairs)}))
    while "progress" in (said := json.loads(answer.advance())):
        pass
    return said


def texts(node):
    """Return all text in a tree, joined."""
    return node if isinstance(node, str) else "".join(texts(child) for child in node[2:])


def test_the_answer_is_a_tree_of_texts():
    said = ask("tiller", ["upper", "7 3/16"], ["lower", "7 9/16"])
    assert not said["errors"]
    headline = said["tree"][0]
    assert headline[1] == {"class": "rb-headline"}
    assert texts(headline).startswith("The upper distance is 3/8 in smaller than the lower")
    assert said["charts"][0]["lines"][0]["xs"]


def test_errors_leave_no_tree():
    said = ask("tiller", ["upper", "abc"], ["lower", "-3"])
    assert [each["field"] for each in said["errors"]] == ["upper", "lower"]
    assert said["tree"] is None
    assert said["charts"] == []


def test_units_are_taken_from_the_pairs():
    assert "mm" in texts(ask("tiller", ["units", "metric"])["tree"][0])
    said = ask("tiller", ["units", "nautical"])
    assert said["units"] == "imperial"
    assert said["notes"] == ["The units must be imperial or metric; they were left as imperial."]


def test_too_many_pairs_are_left_out():
    said = ask("tiller", *[[f"name{number}", ""] for number in range(500)])
    assert said["tree"]
    assert len(said["notes"]) == answer.MOST_PAIRS + 1


def test_typed_text_reaches_no_attribute_of_the_tree():
    said = ask("tiller", ["upper", "<b onclick=x>"], ["<b onclick=x>", "1"])
    assert "<b" not in json.dumps(said["tree"])
    assert "“<b onclick=x>”" in said["errors"][0]["message"]


def test_long_work_goes_step_by_step(monkeypatch):
    def compute(width):
        yield 0.5
        return Outcome("Done.", (("double", 2 * width),), (), (), (), (), ())

    slow = Calculator("slow", "Slow", "", (group("One", quantity("width", "Width", "length", "1 in", "0 in",
                      "2 in")),), (result("double", "Double", "length"),), (), (), "", compute)
    monkeypatch.setattr(catalog, "find", lambda _: slow)
    answer.begin('{"calculator": "slow", "pairs": []}')
    assert json.loads(answer.advance()) == {"progress": 0.5}
    said = json.loads(answer.advance())
    assert texts(said["tree"][0]) == "Done."
    with pytest.raises(ValueError, match="nothing was begun"):
        answer.advance()


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_result_that_is_not_finite_becomes_an_error(value):
    broken = Calculator("broken", "Broken", "", (), (result("x", "The result", "length"),), (), (), "",
                        lambda: Outcome("So.", (("x", value),), (), (), (), (), ()))
    job = answer.work_out(broken, [])
    assert job.outcome is None
    assert job.problems[0].message == "The result has no finite value for these inputs."
