"""What the log foretells for a reading, beside what was read."""

import pytest

from calc.answer import work_out
from calc.calculators.strokes import CALCULATOR
from calc.outcome import say
from calc.quantities import INCH, POUND_FORCE, show
from calc.record.fill import fill
from calc.record.foretold import beside, foretold
from tests.record.bench import Bench

PER_STROKE = 0.04
"""[lb] what an invented stroke takes off, on either limb."""


@pytest.fixture
def bench():
    """A bow that loses the same weight with each stroke; its tiller follows the lead of the upper limb."""
    bench = Bench().came_in()
    for _ in range(3):
        sanded(bench)
    return bench


def sanded(bench, paper="P120", extra=0.0):
    bench.write("strokes", upper_belly="10", lower_belly="20", paper=paper)
    return read(bench, extra)


def read(bench, extra=0.0):
    strokes = sum(int(each.fact(name) or 0) for each in bench.state.of("strokes")
                  for name in ("upper_belly", "lower_belly"))
    return bench.write("reading", weight=f"{53 - PER_STROKE * strokes + extra:.4f} lb", at_draw="28 in",
                       upper=f"{7.625 - strokes / 960:.6f} in", lower="7 5/16 in")


def test_a_straight_log_goes_on_straight(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20", paper="P120")
    found = foretold(bench.state)
    assert found.weight[0] / POUND_FORCE == pytest.approx(53 - 4 * 30 * PER_STROKE)
    assert found.weight[1] > 0.25 * POUND_FORCE  # never narrower than the scale's own error of 1/4 lb
    assert found.tiller[0] / INCH == pytest.approx(7.625 - 4 * 30 / 960 - 7.3125)


def test_it_is_the_line_of_the_calculator_for_strokes(bench):
    pairs = [(each.input, each.text) for each in fill(bench.state, "strokes") if each.text]
    values = dict(work_out(CALCULATOR, pairs).outcome.values)
    bench.write("strokes", lower_belly="25", paper="P120")
    found = foretold(bench.state)
    assert found.weight[0] == pytest.approx(values["weight_now"] - 25 * values["weight_per_stroke"], rel=1e-9)


@pytest.mark.parametrize(("extra", "level", "said"), [
    (0.0, "ok", "Read as foretold."),
    (-2.0, "watch", "The weight is 2.0 lb less than foretold. Measure again before the next stroke."),
    (2.0, "watch", "The weight is 2.0 lb more than foretold. Measure again before the next stroke."),
])
def test_what_was_read_stands_beside_it(bench, extra, level, said):
    reading = sanded(bench, extra=extra)
    found = beside(foretold(bench.state, reading), (53 - 4 * 30 * PER_STROKE + extra) * POUND_FORCE, None)
    assert (found.level, say(found.read, "imperial")) == (level, said)
    assert say(found.expected, "imperial").startswith("Foretold by the log: 47.")


def test_tiller_is_foretold_where_the_log_shows_it():
    bench = Bench().came_in()
    for number in range(1, 4):
        bench.write("strokes", lower_belly="20", paper="P120")
        bench.write("reading", weight=f"{53 - number} lb", at_draw="28 in", lower="7 5/16 in",
                    upper=f"{7.625 - number / 32:.5f} in")
    bench.write("strokes", lower_belly="20", paper="P120")
    found = foretold(bench.state)
    assert found.tiller[0] / INCH == pytest.approx(7.625 - 4 / 32 - 7.3125)
    low, high = (found.weight[0] + sign * found.weight[1] for sign in (-1, 1))
    least, most = (found.tiller[0] + sign * found.tiller[1] for sign in (-1, 1))
    assert say(beside(found, None, None).expected, "imperial") == (
        f"Foretold by the log: {show(low, 'force', 'imperial')} to {show(high, 'force', 'imperial')}, tiller "
        f"{show(least, 'length', 'imperial')} to {show(most, 'length', 'imperial')}.")
    told = beside(found, None, 0.0)
    assert told.level == "watch"
    assert "The tiller is 3/16 in less than foretold." in say(told.read, "imperial")


def test_a_tiller_that_goes_against_the_strokes_is_not_foretold():
    bench = Bench().came_in()
    for number in range(1, 4):
        bench.write("strokes", lower_belly="20", paper="P120")
        bench.write("reading", weight=f"{53 - number} lb", at_draw="28 in", lower="7 5/16 in",
                    upper=f"{7.625 + number / 32:.5f} in")
    bench.write("strokes", lower_belly="20", paper="P120")
    found = foretold(bench.state)
    assert found.weight is not None
    assert found.tiller is None


def test_a_tiller_that_strokes_do_not_move_is_not_foretold():
    bench = Bench().came_in()
    for number in range(1, 4):
        bench.write("strokes", lower_belly="20", paper="P120")
        bench.write("reading", weight=f"{53 - number} lb", at_draw="28 in", upper="7 5/8 in",
                    lower="7 5/16 in")
    bench.write("strokes", lower_belly="20", paper="P120")
    found = foretold(bench.state)
    assert found.weight is not None
    assert found.tiller is None


def nothing(bench):
    return beside(foretold(bench.state), 50 * POUND_FORCE, None)


@pytest.mark.parametrize(("papers", "why"), [
    ([], "no strokes were made since the last reading"),
    (["P120", "P180"], "strokes were made on several papers since the last reading"),
    (["P180"], "two readings with strokes on P180 between them are needed"),
])
def test_where_nothing_was_foretold_that_is_said(bench, papers, why):
    for paper in papers:
        bench.write("strokes", upper_belly="10", paper=paper)
    found = nothing(bench)
    assert (found.expected, found.read, found.level) == (f"Nothing was foretold: {why}.", "", "")


def test_a_record_without_readings_or_with_one_foretells_nothing():
    assert "no reading holds weight" in nothing(Bench()).expected
    bench = Bench().came_in()
    bench.write("strokes", upper_belly="10", paper="P120")
    assert "two readings with strokes on P120" in nothing(bench).expected
    assert "no reading at this draw stands before" in foretold(bench.state, bench.state.of("reading")[0]).why


def test_a_weight_that_grows_with_strokes_foretells_nothing():
    bench = Bench().came_in()
    bench.write("strokes", upper_belly="10", paper="P120")
    bench.write("reading", weight="54 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in")
    bench.write("strokes", upper_belly="10", paper="P120")
    assert "does not come down" in nothing(bench).expected


def test_a_paper_without_a_name_is_the_one_before(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20")
    assert foretold(bench.state).weight[0] / POUND_FORCE == pytest.approx(53 - 4 * 30 * PER_STROKE)


def test_the_error_of_the_shop_s_own_scale_counts(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20", paper="P120")
    before = foretold(bench.state).weight[1]
    bench.write("shop", weight_error="1 lb")
    assert foretold(bench.state).weight[1] == pytest.approx(4 * before)


def test_from_a_count_that_is_a_guess_nothing_is_foretold(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20", paper="P120", about="yes")
    assert foretold(bench.state).why == "Nothing was foretold: a count of strokes is a guess."
