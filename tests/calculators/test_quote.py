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


def test_the_owner_reads_the_same_sums_and_neither_rate_nor_hours():
    values, outcome = run(rate="47.13", tax="20 %", markup="13.7 %", materials="finish:28.31")
    (file,) = outcome.files
    price, low, high = [f"{values[each]:.2f}" for each in ("price", "price_low", "price_high")]
    assert f"It comes to about {price}." in file.text
    assert f"Together about {price}, tax included where there is one." in file.text
    assert f"It may come to anything from {low} to {high}." in file.text
    assert "\n- Weight and tiller\n" in file.text
    assert not [each for each in ("47.13", "28.31", "13.7", " h)", "14.1 h") if each in file.text]
    assert [each for each in file.text.splitlines() if each] == [row[0] for row in outcome.tables[1].rows]


@pytest.mark.parametrize(("typed", "said"), [
    ({}, "Offered: to bring your bow from 53.0 lb to 45.0 lb at a draw of 28 in."),
    ({"weight_now": ""}, "Offered: to bring your bow to 45.0 lb at a draw of 28 in."),
    ({"draw_length": ""}, "Offered: to bring your bow from 53.0 lb to 45.0 lb."),
    ({"text_units": "metric"}, "Offered: to bring your bow from 235.8 N to 200.2 N at a draw of 711.2 mm."),
    ({"weight_wanted": ""}, "Offered: the work on your bow that is named below."),
])
def test_the_offer_begins_with_what_the_bow_is_to_become(typed, said):
    _, outcome = run(**typed)
    assert outcome.files[0].text.startswith(said + " It comes to about ")


@pytest.mark.parametrize(("typed", "said"), [
    ({}, "from 5/16 in to 1/16 in."), ({"tiller_now": ""}, "less that from the lower: 1/16 in."),
    ({"holds_until": "2026-05-29"}, "- It holds until Fri 29 May 2026.\n"),
    ({"holds_until": ""}, "- No day is named until which this holds: ask whether it still does.\n"),
    ({"ready_by": "2026-06-13"}, "- Wanted ready by Sat 13 June 2026.\n"),
])
def test_targets_and_days_stand_in_the_offer(typed, said):
    assert said in run(**typed)[1].files[0].text


def test_what_is_not_typed_is_not_offered():
    empty = dict.fromkeys(("weight_now", "weight_wanted", "draw_length", "tiller_now", "tiller_wanted",
                           "ready_by", "holds_until", "materials"), "")
    text = run(**empty, tasks="sand:1h:1h:1h;sand:2h:2h:2h")[1].files[0].text
    assert not [each for each in ("become", "Material", "ready") if each in text]
    assert text.count("- Sand through the grits") == 1


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
