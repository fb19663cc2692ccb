"""Hours and materials to a price with a range."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.answer import work_out
from calc.calculators.quote import CALCULATOR
from calc.outcome import say


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values), job.outcome


def levels(outcome):
    return {each.id: each.level for each in outcome.checks}


def test_price_by_hand():
    """(2 + 4 x 3 + 6) / 6 = 3 1/3 h at 60; 30 of material with a tenth on top; a fifth of tax."""
    values, _ = run(rate="60", tasks="tune:2h:3h:6h", materials="finish:30", markup="10 %", tax="20 %")
    assert values["hours"] / 3600 == pytest.approx(10 / 3)
    assert values["hours_spread"] / 3600 == pytest.approx(4 / 6)
    assert values["materials_price"] == pytest.approx(33)
    assert values["price"] == pytest.approx((200 + 33) * 1.2)
    assert values["tax_price"] == pytest.approx(233 * 0.2)
    assert values["price_best"] == pytest.approx((120 + 33) * 1.2)
    assert values["price_worst"] == pytest.approx((360 + 33) * 1.2)
    assert values["price_low"] == pytest.approx(((10 / 3 - 4 / 3) * 60 + 33) * 1.2)
    assert values["price_high"] == pytest.approx(((10 / 3 + 4 / 3) * 60 + 33) * 1.2)


@given(st.lists(st.tuples(st.floats(0, 10), st.floats(0, 10), st.floats(0, 20)), min_size=1, max_size=14))
def test_the_range_lies_within_the_best_and_the_worst(hours):
    rows = [f"other:{low:.3f}h:{low + more:.3f}h:{low + more + most:.3f}h" for low, more, most in hours]
    values, _ = run(tasks=";".join(rows))
    order = ["price_best", "price_low", "price", "price_high", "price_worst"]
    prices = [values[each] for each in order]
    assert prices == pytest.approx(sorted(prices), abs=1e-6)


def test_certain_hours_make_a_certain_price():
    values, outcome = run(tasks="inspect:1h:1h:1h", materials="", tax="0 %")
    assert values["price"] == values["price_low"] == values["price_high"] == pytest.approx(45)
    assert levels(outcome) == {"range": "ok"}


@pytest.mark.parametrize("tasks", ["inspect:1h:1h:1h", "inspect:1h:1.1h:1.2h", "tune:1h:2h:12h"])
def test_no_range_is_called_a_promise(tasks):
    _, outcome = run(tasks=tasks)
    [found] = [each for each in outcome.checks if each.id == "range"]
    assert "enough to promise" not in say(found.text, "imperial")
    assert "no promise" in say(found.text, "imperial") or found.level == "watch"


def test_a_wide_range_and_a_missing_inspection_are_said():
    _, outcome = run(tasks="tune:1h:2h:12h")
    assert levels(outcome) == {"range": "watch", "inspection": "watch"}


def test_nothing_at_all_costs_nothing():
    values, _ = run(rate="0", tasks="inspect:0h:0h:0h", materials="")
    assert values["price"] == 0


def test_the_owner_reads_the_same_sums():
    values, outcome = run(tax="20 %")
    (file,) = outcome.files
    assert f"Together: about {values['price']:.2f}, for about 14.1 h of work" in file.text
    assert "Tax of 20.0 %" in file.text
    assert "Weight and tiller: about 3.8 h (2.5 h to 6.0 h), 168.75" in file.text
    assert file.text.splitlines() == [row[0] for row in outcome.tables[1].rows]


@pytest.mark.parametrize(
    ("typed", "field", "row", "column"),
    [
        ({"tasks": "tune:3h:2h:6h"}, "tasks", 0, "likely"),
        ({"tasks": "inspect:1h:1h:1h;tune:2h:3h:2h"}, "tasks", 1, "high"),
        ({"tasks": "juggle:1h:2h:3h"}, "tasks", 0, "task"),
        ({"materials": "finish:lots"}, "materials", 0, "cost"),
        ({"tasks": ""}, "tasks", None, None),
    ],
)
def test_what_cannot_be_is_refused_at_its_cell(typed, field, row, column):
    (found,) = work_out(CALCULATOR, list(typed.items())).problems
    assert (found.field, found.row, found.column) == (field, row, column)
