"""What holds for every calculator, whatever it computes."""

import inspect
import math
import random
import re

import pytest

from calc import bibliography, catalog
from calc.answer import page_answer, work_out
from calc.dates import show_date
from calc.declaring import (
    CHOICE,
    COUNT,
    DATE,
    FACT,
    ROWS,
    SHOP,
    SWITCH,
    TRIAL,
    inputs_of,
)
from calc.outcome import TEXT
from calc.quantities import KINDS, kind_of, parse
from calc.report import declared_values
from tests.sentences import whole

CALCULATORS = [catalog.find(id) for id in catalog.IDS]
KIND_IDS = [kind.id for kind in KINDS]
CORNERS = 60
LEAST_COMPUTED = 10  # of them: a test that sees only refusals shows nothing


def names(each):
    return each.id


@pytest.fixture(params=CALCULATORS, ids=names)
def calculator(request):
    return request.param


def test_ids_are_stable_words(calculator):
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", calculator.id)
    for each in (*inputs_of(calculator), *calculator.results):
        assert re.fullmatch(r"[a-z][a-z0-9]*(_[a-z0-9]+)*", each.id)
    ids = [each.id for each in inputs_of(calculator)]
    assert len(set(ids)) == len(ids)


def test_only_the_inspection_is_gone_through_in_steps():
    assert [each.id for each in CALCULATORS if each.in_steps] == ["inspection"]


def test_compute_takes_each_input_by_its_id(calculator):
    parameters = inspect.signature(calculator.compute).parameters
    if [each.kind for each in parameters.values()] == [inspect.Parameter.VAR_KEYWORD]:
        return  # a list to tick, made from a table: it takes them all by name
    assert set(parameters) == {each.id for each in inputs_of(calculator)}


def test_everything_is_said(calculator):
    for text in (calculator.title, calculator.purpose, calculator.example):
        assert text
    assert "invented" in calculator.example.lower()
    assert calculator.cautions
    for each in inputs_of(calculator):
        assert each.label
    for each in calculator.results:
        assert each.label
        assert each.kind in [*KIND_IDS, TEXT, COUNT]


def test_every_calculator_states_what_the_job_needs_first(calculator):
    known = {each.id: each for each in inputs_of(calculator)}
    assert set(calculator.first) < set(known)
    leading = [known[id] for id in calculator.first if known[id].when is None]
    assert {each.role for each in leading} <= {FACT, TRIAL, SHOP}
    assert {each.role for each in leading} & {FACT, TRIAL}


def test_the_answer_leans_on_each_figure_that_is_asked_first(calculator):
    known = {each.id: each for each in inputs_of(calculator)}
    job = work_out(calculator, [])
    for each in [known[id] for id in calculator.first if known[id].kind in KIND_IDS]:
        value = job.values[each.id]
        if value is None:  # empty in the example, or not asked for by its choices
            continue
        other = value * 1.03 or 0.01 * each.bounds()[1]
        assert told_by(calculator, {**job.values, each.id: other}) != told_by(calculator, job.values), each.id


def told_by(calculator, values):
    """Return an outcome's values, or why there is none."""
    try:
        work = calculator.compute(**values)
        while inspect.isgenerator(work):
            try:
                next(work)
            except StopIteration as end:
                work = end.value
        return work.values
    except ValueError as refused:
        return str(refused)


def test_what_is_acted_on_are_a_few_of_its_results(calculator):
    ids = [each.id for each in calculator.results if not each.goes_on]
    assert set(calculator.acted_on) <= set(ids)
    assert 1 < len(calculator.acted_on) == len(set(calculator.acted_on)) <= 8


def test_sources_exist(calculator):
    assert calculator.sources
    for key in calculator.sources:
        assert bibliography.find(key).key == key


def test_defaults_are_usual_and_within_bounds(calculator):
    job = work_out(calculator, [])
    assert not job.problems
    assert not [each for each in job.outcome.checks if each.id.startswith("usual-")]


def test_the_choice_that_a_row_leaves_out_is_the_first_as_its_form_has_it(calculator):
    columns = [column for each in inputs_of(calculator) for column in each.columns if column.kind == CHOICE]
    assert [column.default for column in columns] == [column.choices[0].id for column in columns]


def test_usual_ranges_lie_within_the_bounds(calculator):
    for each in inputs_of(calculator):
        for asked in (each, *each.columns):
            if asked.kind not in (CHOICE, SWITCH):
                assert asked.low <= asked.usual_low <= asked.usual_high <= asked.high


def test_the_example_gives_every_declared_result(calculator):
    outcome = work_out(calculator, []).outcome
    assert [declared.id for declared, _ in declared_values(calculator, outcome)] == [
        each.id for each in calculator.results]
    assert {id for id, _ in outcome.values} == {each.id for each in calculator.results}
    assert outcome.assumptions
    assert outcome.charts or outcome.drawings or {each.kind for each in inputs_of(calculator)} == {SWITCH}


def corner(each, pick):
    """Return an input's text at one of its edges."""
    if each.kind == CHOICE:
        return pick([option.id for option in each.choices])
    if each.kind == SWITCH:
        return pick(["yes", "no"])
    if each.kind == COUNT:
        return str(pick([each.low, each.high]))
    if each.kind == DATE:
        return show_date(pick([each.low, each.high]))
    if each.kind == ROWS:
        size = pick([each.low, each.high])
        lines = [":".join(corner(column, pick) for column in each.columns) for _ in range(size)]
        return ";".join(lines)
    return edge_text(each, pick([each.low, each.high]))


def edge_text(each, value):
    """Return an SI value as text that is read back as the very same number, if need be in other units."""
    for unit in kind_of(each.kind).units:
        text = f"{(value - unit.offset) / unit.factor:.12g} {unit.name}"
        if parse(text, each.kind) == value:
            return text
    return each.default


def cornered(calculator, chance, case):
    """Return inputs at their edges: all of them, then one, two or three beside the example's others."""
    inputs = inputs_of(calculator)
    some = inputs if case % 2 == 0 else chance.sample(inputs, min(len(inputs), 1 + case // 2 % 3))
    return [(each.id, corner(each, chance.choice)) for each in some]


def test_every_corner_of_the_bounds_is_finite_or_refused_in_words(calculator):
    chance, computed = random.Random(calculator.id), 0
    for case in range(CORNERS):
        job = work_out(calculator, cornered(calculator, chance, case))
        answer = page_answer(job)
        if job.outcome is None:
            assert all(re.match(r"[A-Z].*[.]$", problem["message"]) for problem in answer["errors"]), answer
        else:
            computed += 1
            assert all(math.isfinite(value) for declared, value in declared_values(calculator, job.outcome)
                       if declared.kind != TEXT and value is not None)
    assert computed >= LEAST_COMPUTED


def test_outside_the_bounds_is_refused(calculator):
    for each in inputs_of(calculator):
        if each.when is not None or each.kind in (CHOICE, SWITCH, COUNT, DATE, ROWS):
            continue
        for beyond in (each.low - abs(each.low) * 0.01 - 1e-6, each.high * 1.01 + 1e-6):
            unit = kind_of(each.kind).units[0]
            text = f"{(beyond - unit.offset) / unit.factor:.12g} {unit.name}"
            job = work_out(calculator, [(each.id, text)])
            assert job.outcome is None
            assert job.problems[0].field == each.id


def test_no_two_calculators_share_an_id():
    assert len(set(catalog.IDS)) == len(catalog.IDS)
    with pytest.raises(ValueError, match=whole("nothing in calculators is called abacus")):
        catalog.find("abacus")


def test_bibliography_is_in_order_and_without_doubles():
    keys = [source.key for source in bibliography.SOURCES]
    assert keys == sorted(set(keys))
    statuses = {"read", "read second-hand", "from memory", "from memory, confirmed by calculation",
                "common practice", "calculated"}
    assert {source.status for source in bibliography.SOURCES} <= statuses
