"""What is typed key by key: a text that typing on can mend is told apart from a mistake."""

from random import Random

import pytest

from calc import catalog, declaring, quantities, reading
from calc.answer import page_answer, work_out
from calc.outcome import Refused
from tests.engines.vectors import random_text

TYPED = declaring.DATE, declaring.COUNT, *(kind.id for kind in quantities.KINDS)
BEHIND = "0123456789 -/.,:eimnlbftgcoz\"'"
ROUNDS = 2
FURTHER = 4


def typed_parts(id):
    """Return what of a calculator is typed: inputs, and the columns of tables."""
    inputs = declaring.inputs_of(catalog.find(id))
    return [part for each in inputs for part in (each.columns or (each,)) if part.kind in TYPED]


def refused(part, text, system):
    """Return the problem of a text, or None where it can be used."""
    try:
        reading.read_input(part, text, system)
    except Refused as error:
        return error.problem
    return None


def tiller_problem(text):
    [problem] = work_out(catalog.find("tiller"), [("upper", text)]).problems
    return problem


@pytest.mark.parametrize("text", ["", "7-", "7 3", "7 3/", "7 3/0", ".", "1e", "1e-", "1", "70", "182 m",
                                  "182 mill", "7 3/16 i", "0.6 ft 1/", "0.6 ft 1 i"])
def test_what_typing_on_can_mend_is_unfinished(text):
    assert tiller_problem(text).unfinished


@pytest.mark.parametrize("text", ["-", "-3", "abc", "7 lb", "70 in", "12 m", "7 in 4", "7 5 in", "5 f", "NaN",
                                  "7" * 10_000])
def test_what_typing_on_cannot_mend_is_a_mistake_at_once(text):
    assert not tiller_problem(text).unfinished


@pytest.mark.parametrize(("text", "said"), [
    ("7 3", "has a second number without the line of a fraction."),
    ("7 3 in", "has a second number without the line of a fraction."),
    ("7-", "is not a length."),
    ("7 /", "is not a length."),
    ("1e", "is not a length."),
])
def test_no_unit_is_spoken_of_that_was_not_typed(text, said):
    assert tiller_problem(text).message == (
        f"Upper tiller distance: “{text}” {said} Type a length from 2 in to 16 in, for example 7 5/8 in.")


@pytest.mark.parametrize("id", catalog.IDS)
def test_on_the_way_to_a_text_that_can_be_used_nothing_is_a_mistake(id):
    dice = Random(id)
    begun = 0
    for part in typed_parts(id):
        for system in quantities.SYSTEMS * ROUNDS:
            text = random_text(part, dice)
            if refused(part, text, system):
                continue  # just outside its bounds
            for length in range(len(text)):
                problem = refused(part, text[:length], system)
                begun += problem is not None
                assert problem is None or problem.unfinished, (part.id, text, text[:length])
    assert begun > 0 or not typed_parts(id)


@pytest.mark.parametrize("id", catalog.IDS)
def test_no_mistake_can_be_mended_by_typing_on(id):
    dice = Random(id)
    mistakes = 0
    for part in typed_parts(id):
        for system in quantities.SYSTEMS * ROUNDS:
            text = "".join(dice.choices(BEHIND, k=dice.randint(1, 5)))
            problem = refused(part, text, system)
            if problem is None or problem.unfinished:
                continue
            mistakes += 1
            for _ in range(FURTHER):
                more = text + "".join(dice.choices(BEHIND, k=dice.randint(1, 4)))
                assert refused(part, more, system), (part.id, text, more)
    assert mistakes > 0 or not typed_parts(id)


@pytest.mark.parametrize("id", catalog.IDS)
def test_every_part_of_a_date_is_on_its_way(id):
    for part in typed_parts(id):
        if part.kind == declaring.DATE:
            for text in ("2026-05-04", "2026-5-4", "2026-11-30"):
                for length in range(len(text)):
                    problem = refused(part, text[:length], "metric")
                    assert problem is None or problem.unfinished, text[:length]
            for text in ("2026-13", "26-", "2026-02-30", "2026/05", "May"):
                problem = refused(part, text, "metric")
                assert problem is not None, text
                assert not problem.unfinished, text


def test_a_problem_between_inputs_is_unfinished_where_the_number_may_still_grow():
    calculator = catalog.find("draw-curve")
    example = next(each.default for each in declaring.inputs_of(calculator) if each.id == "readings")

    def of_draw(text):
        said = page_answer(work_out(calculator, [("readings", example.replace("18in", text))]))
        return [(each["field"], each["row"], each["unfinished"]) for each in said["errors"]]

    assert of_draw("18in") == []
    assert of_draw("5") == [("readings", 3, True)]
    assert of_draw("5 in") == [("readings", 3, False)]


def test_a_cell_is_told_apart_like_a_field():
    def of_cell(text):
        [problem] = work_out(catalog.find("draw-curve"),
                             [("readings", f"10 in:12 lb;20 in:30 lb;24 in:{text};28 in:50 lb")]).problems
        return problem.row, problem.column, problem.unfinished

    assert of_cell("")[2]
    assert of_cell("40 l") == (2, of_cell("")[1], True)
    assert not of_cell("40 in")[2]
