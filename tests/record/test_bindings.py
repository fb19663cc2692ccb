"""Every input of every calculator stands in one place: bound to a fact, or named with why it cannot be."""

import pytest

from calc import catalog
from calc.declaring import CHOICE, FACT, ROWS, RULE, SHOP, TRIAL, inputs_of
from calc.record import sheets
from calc.record.bindings import BOUND, MAPPED, NARROWER, NOT_FROM_A_RECORD
from calc.record.derived import DERIVED
from calc.record.fill import fill, how_to_know
from tests.record.bench import Bench

BINDINGS = [(calculator, input, fact) for calculator in BOUND for input, fact in BOUND[calculator]]
OF_SHEETS = [each for each in BINDINGS if not each[2].startswith("derived.")]
READ_AS = {
    "weight_now": "reading.weight", "draw_now": "reading.at_draw", "weight_as_it_came": "reading.weight",
    "weight_wanted": "agreed.weight", "weight_at_archers_draw": "reading.weight",
    "lived_weight": "reading.weight", "weight_now_at_28": "reading.weight",
    "weight_came_at_28": "reading.weight", "curve_now": "reading.curve", "curve_came": "reading.curve",
    "shot_mass": "reading.shot_mass", "shot_speed": "reading.shot_speed", "bend": "arrow.deflection_28",
    "weight_when_read": "reading.weight", "glass_back_came": "reading.glass_back",
    "glass_belly_came": "reading.glass_belly", "glass_new": "bow.glass_back_new",
    "glass_back_at_log": "reading.glass_back", "glass_belly_at_log": "reading.glass_belly",
    "glass_back_in_log": "reading.glass_back", "glass_belly_in_log": "reading.glass_belly",
    "stations_upper_at_log": "reading.stations_upper", "stations_lower_at_log": "reading.stations_lower",
    "width_fadeout": "reading.width_fadeout", "edge_now": "edges.radius",
}
"""Facts that are handed on as somebody read them, with the fact of a sheet whose bounds they have."""

CANNOT = {(calculator, input) for calculator, input, _ in NOT_FROM_A_RECORD}


def asked_by(calculator, input):
    return next(each for each in inputs_of(catalog.find(calculator)) if each.id == input)


@pytest.mark.parametrize("calculator", catalog.IDS)
def test_every_fact_of_bow_and_shop_is_bound_and_no_rule_or_trial(calculator):
    bound = [input for input, _ in BOUND[calculator]]
    assert len(bound) == len(set(bound))
    for each in inputs_of(catalog.find(calculator)):
        stands = (each.id in bound) + ((calculator, each.id) in CANNOT)
        assert stands == (1 if each.role in (FACT, SHOP) else 0), (each.id, each.role)
        assert each.role in (FACT, SHOP, RULE, TRIAL)
    assert set(bound) <= {each.id for each in inputs_of(catalog.find(calculator))}


def test_no_calculator_is_bound_that_is_not_there():
    assert set(BOUND) == set(catalog.IDS)
    assert {each[0] for each in NOT_FROM_A_RECORD + MAPPED} <= set(catalog.IDS)


@pytest.mark.parametrize(("calculator", "input", "fact"), BINDINGS)
def test_kinds_are_equal(calculator, input, fact):
    asked = asked_by(calculator, input)
    sheet, _, name = fact.partition(".")
    kind = DERIVED[name].kind if sheet == "derived" else sheets.input_of(fact).kind
    assert kind == asked.kind


@pytest.mark.parametrize(("calculator", "input", "fact"), BINDINGS)
def test_a_record_takes_nothing_that_a_calculator_refuses(calculator, input, fact):
    asked, known = asked_by(calculator, input), sheets.input_of(source(fact))
    if known is None or (fact, calculator) in [each[:2] for each in NARROWER]:
        return
    if known.kind == CHOICE:
        words = next((dict(words) for where, what, words in MAPPED if (where, what) == (calculator, input)),
                     {each.id: each.id for each in known.choices})
        assert set(words) == {each.id for each in known.choices}
        assert set(words.values()) <= {each.id for each in asked.choices}
    elif known.low is not None:
        assert within(asked, known), (known.low, known.high, asked.low, asked.high)
    if known.kind == ROWS:
        assert [(each.id, each.kind) for each in known.columns] == [
            (each.id, each.kind) for each in asked.columns]
        for column, theirs in zip(known.columns, asked.columns):
            assert column.kind == CHOICE or within(theirs, column), column.id
            assert {each.id for each in column.choices} <= {each.id for each in theirs.choices}


def source(fact):
    """Return the fact of a sheet whose bounds a fact has; one that is computed has bounds of its own."""
    sheet, _, name = fact.partition(".")
    return READ_AS.get(name, "") if sheet == "derived" else fact


def within(outer, inner):
    slack = 1e-9 * max(abs(outer.low), abs(outer.high))
    return outer.low - slack <= inner.low and inner.high <= outer.high + slack


def test_every_clash_that_is_listed_is_one():
    for fact, calculator, why in NARROWER:
        bound = [asked_by(calculator, input) for input, of in BOUND[calculator] if of == fact]
        assert why
        assert any(not within(each, sheets.input_of(source(fact))) for each in bound)



def test_one_curve_has_one_limit_of_rows():
    limits = {asked_by(calculator, input).high for calculator, input, fact in BINDINGS
              if fact in ("reading.curve", "derived.curve_now", "derived.curve_came")
              and asked_by(calculator, input).kind == ROWS}
    assert limits == {sheets.MOST_CURVE}


@pytest.mark.parametrize("name", sorted(DERIVED))
def test_what_is_worked_out_is_asked_for_and_says_how_to_learn_it(name):
    assert any(fact == "derived." + name for _, _, fact in BINDINGS)
    assert DERIVED[name].how.endswith((".", "”"))


@pytest.mark.parametrize("fact", sorted({fact for _, _, fact in OF_SHEETS}))
def test_every_fact_says_where_to_write_it(fact):
    assert how_to_know(fact).startswith("On the sheet “")


@pytest.mark.parametrize("calculator", catalog.IDS)
def test_an_empty_record_fills_nothing_and_says_how_everything_is_learnt(calculator):
    for each in fill(Bench().state, calculator):
        assert (each.text, each.entry, each.stale) == ("", None, False)
        assert each.how
