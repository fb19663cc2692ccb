"""Every calculator refuses at a field, and tells its reader in the units that the reader reads."""

import ast
import re
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as any_of

from calc import catalog
from calc.answer import work_out
from calc.declaring import CHOICE, COUNT, DATE, ROWS, SWITCH, inputs_of
from calc.outcome import Refused
from calc.quantities import KINDS, SYSTEMS, could_be_a_share, parse, show
from tests.calculators.together import TOGETHER

ROOT = Path(__file__).parent.parent.parent
FORMS = 100
SLOW = {"bow-model": 12, "weight-reduction": 12, "next-batch": 6, "photograph": 15, "edges": 12,
        "tracking": 20, "tiller": 40}
"""How many forms are filled for each calculator in each unit system; fewer where a bow is computed."""

NO_FIGURE = "as usual"
"""What no input reads."""

NEVER = {
    "core_modulus": "the form asks for it where the core is none of the list",
    "density": "the form asks for it where the solvent is none of the list",
    "own_shorter": "the form asks for it where the string is of one's own pattern",
    "own_low": "the form asks for it where the target is one's own",
}
"""Fields of refusals that only the type checker needs, and why none of them is met."""

UNMET = {("calc/calculators/bow_model.py", "sanded_depth"), ("calc/bows/grip_sections.py", "hole_height"),
         ("calc/bows/measured.py", "asked.id"), ("calc/bows/mending.py", "worked_to")}
"""Refusals that stand behind another of the same field and that no known figures reach."""


def units(system):
    """Return the units that only one system shows: a length in mm, not a time in hours."""
    other = SYSTEMS[1 - SYSTEMS.index(system)]
    shown = {getattr(kind, system).unit for kind in KINDS} - {getattr(kind, other).unit for kind in KINDS}
    shown |= {"m"} if system == "metric" else set()
    names = "|".join(re.escape(name) for name in sorted(shown, key=len, reverse=True))
    return re.compile(r"\d\s*(" + names + r")(?![\w/])")


UNITS = {system: units(system) for system in SYSTEMS}


def told(problem, system):
    """Hold a problem to the reader's units, and return whether it tells any figure in them."""
    ours, theirs = (bool(UNITS[name].search(problem.message))
                    for name in (system, SYSTEMS[1 - SYSTEMS.index(system)]))
    assert ours or not theirs, problem
    return ours


def refused(id, pairs, system):
    return work_out(catalog.find(id), [*pairs, ("units", system)]).problems


# Each input by itself ------------------------------------------------------------


def measured_inputs():
    """Yield (calculator, input, column or None) wherever a quantity is asked for."""
    for id in catalog.IDS:
        for each in inputs_of(catalog.find(id)):
            for column in each.columns if each.kind == ROWS else (each,):
                if column.kind not in (CHOICE, SWITCH, COUNT, DATE):
                    yield id, each, None if column is each else column


def needed(id, each):
    """Return the choices that make an input matter."""
    pairs = []
    while each.when is not None:
        pairs.append((each.when[0], each.when[1][0]))
        each = next(other for other in inputs_of(catalog.find(id)) if other.id == pairs[-1][0])
    return pairs


def typed_as(each, column, text):
    """Return an input with one text in it: in the first row of a table, in the others the example's."""
    if column is None:
        return text
    cells = [text if other is column else other.default for other in each.columns]
    return ";".join([":".join(cells)] * int(each.low or 1))


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize(("id", "each", "column"), [
    pytest.param(*case, id=f"{case[0]}-{case[1].id}" + (f"-{case[2].id}" if case[2] else ""))
    for case in measured_inputs()])
def test_what_is_out_of_bounds_or_no_figure_is_refused_in_the_readers_units(id, each, column, system):
    asked = column or each
    beyond = (asked.low - 0.1 * abs(asked.low) - 0.01 * (asked.high - asked.low),
              asked.high + 0.1 * abs(asked.high))
    for text in (NO_FIGURE, *(show(value, asked.kind, system, 6) for value in beyond)):
        problems = refused(id, [*needed(id, each), (each.id, typed_as(each, column, text))], system)
        assert [problem.field for problem in problems][:1] == [each.id], text
        assert text in problems[0].message
        assert (problems[0].column, problems[0].row) == ((column.id, 0) if column else (None, None))
        told(problems[0], system)
        example = re.search(", for example (.*)[.]$", problems[0].message)
        assert (example is not None) == (text == NO_FIGURE and asked.default != "")
        if example is not None:
            assert asked.low <= parse(example[1], asked.kind, system) <= asked.high
            assert asked.kind != "ratio" or not could_be_a_share(example[1])


# Figures that do not go together -------------------------------------------------


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize(("id", "field", "differs"), TOGETHER)
def test_what_does_not_go_together_is_refused_at_the_field_to_mend(id, field, differs, system):
    problems = refused(id, list(differs.items()), system)
    assert [problem.field for problem in problems] == [field]
    told(problems[0], system)


def refusals():
    """Yield (file, first line, last line, field as written) of every refusal behind the reading of a form."""
    for folder in ("bows", "calculators", "finishes", "inserts", "pictures", "ventilation"):
        for path in sorted((ROOT / "calc" / folder).glob("*.py")):
            for node in ast.walk(ast.parse(path.read_text("utf-8"))):
                if isinstance(node, ast.Call) and ast.unparse(node.func) == "Refused":
                    yield (str(path.relative_to(ROOT)), node.lineno, node.end_lineno,
                           ast.unparse(node.args[0]).strip("'"))


def test_every_refusal_is_met_by_figures_that_do_not_go_together(monkeypatch):
    met = set()
    told_by = Refused.__init__

    def noting(self, *words, **more):
        caller = sys._getframe(1)
        met.add((str(Path(caller.f_code.co_filename).relative_to(ROOT)), caller.f_lineno))
        told_by(self, *words, **more)

    monkeypatch.setattr(Refused, "__init__", noting)
    for id, _, differs in TOGETHER:
        refused(id, list(differs.items()), "imperial")
    missed = {(file, field) for file, first, last, field in refusals()
              if not any(file == where and first <= line <= last for where, line in met)}
    assert {(file, field) for file, field in missed if field not in NEVER} == UNMET


# Anything ------------------------------------------------------------------------


@any_of.composite
def figures(draw, each, system):
    """Return a quantity from within its bounds, at one of them or at times beyond one."""
    if each.kind == COUNT:
        return str(draw(any_of.integers(each.low, each.high + 1)))
    part = draw(any_of.one_of(any_of.sampled_from((0.0, 1.0, 0.5)), any_of.floats(0, 1),
                              any_of.sampled_from((0.0, 1.0, -0.3, 1.4))))
    return show(each.low + part * (each.high - each.low), each.kind, system)


@any_of.composite
def tables(draw, each, system):
    """Return the example's rows with some cells of one row changed, at times in another order."""
    table = [row.split(":") for row in each.default.split(";") if row.strip()]
    for place, column in enumerate(each.columns if table else ()):
        row = table[draw(any_of.integers(0, len(table) - 1))]
        if column.kind != CHOICE and place < len(row) and draw(any_of.booleans()):
            row[place] = draw(figures(column, system))
    if draw(any_of.booleans()):
        table.reverse()
    return ";".join(":".join(row) for row in table)


def texts(each, system):
    if each.kind == CHOICE:
        return any_of.sampled_from([choice.id for choice in each.choices])
    if each.kind == SWITCH:
        return any_of.sampled_from(("yes", "no"))
    if each.kind == COUNT:
        return any_of.sampled_from([str(each.low), str(each.high), str(each.high + 1)])
    if each.kind == DATE:
        return any_of.sampled_from((each.default, "1066-10-14"))
    return (tables if each.kind == ROWS else figures)(each, system)


@any_of.composite
def forms(draw, calculator, system):
    """Return what somebody may type who fills some of the form and leaves the rest as it is."""
    inputs = inputs_of(calculator)
    some = draw(any_of.lists(any_of.sampled_from(range(len(inputs))), min_size=1, max_size=6, unique=True))
    return [(inputs[place].id, draw(texts(inputs[place], system))) for place in some]


@pytest.mark.parametrize("system", SYSTEMS)
@pytest.mark.parametrize("id", catalog.IDS)
def test_whatever_is_refused_is_refused_at_a_field_and_in_the_readers_units(id, system):
    calculator = catalog.find(id)
    ids = [each.id for each in inputs_of(calculator)]
    answered = []

    @settings(max_examples=SLOW.get(id, FORMS))
    @given(pairs=forms(calculator, system))
    def fill(pairs):
        job = work_out(calculator, [*pairs, ("units", system)])
        assert (job.outcome is None) == bool(job.problems)
        answered.append(job.outcome is not None)
        for problem in job.problems:
            assert problem.field in ids, problem
            told(problem, system)

    fill()
    assert True in answered


def test_the_units_of_each_system_are_told_apart():
    assert UNITS["metric"].search("at most 203.2 mm")
    assert not UNITS["metric"].search("at most 8 in, within 15 min")
    assert UNITS["imperial"].search("at most 8 in")
    assert not UNITS["imperial"].search("from 15.0 g/mol to 4 h")
