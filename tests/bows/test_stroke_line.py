"""The string's line beside the stroke log: what belongs to which row, and what is said of it."""

import pytest

from calc.answer import work_out
from calc.calculators.strokes import CALCULATOR
from calc.outcome import say
from calc.quantities import INCH

LOG = "0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;0:30:49lb:1/8in:new"


def run(offsets, log=LOG):
    return work_out(CALCULATOR, [("log", log), ("offsets", offsets)], standing={})


def outcome(offsets, log=LOG):
    job = run(offsets, log)
    assert not job.problems, job.problems
    return job.outcome


def said(offsets, id):
    return [(each.level, say(each.text, "imperial")) for each in outcome(offsets).checks if each.id == id]


def test_tiller_and_offsets_stand_over_the_same_strokes_in_one_chart():
    found = outcome("1:0in:1/64in:-1/32in:-3/32in;3:::-1/64in:-5/64in")
    chart = next(each for each in found.charts if each.id == "line")
    lines = {each.label: each for each in chart.lines}
    assert list(lines) == ["Upper, at the fadeout", "Upper, near the tip", "Lower, at the fadeout",
                           "Lower, near the tip", "Tiller"]
    assert lines["Lower, near the tip"].xs == [0, 145]
    assert lines["Lower, near the tip"].ys == pytest.approx([-3 / 32 * INCH, -5 / 64 * INCH])
    assert lines["Upper, at the fadeout"].xs == [0]
    assert lines["Tiller"].xs == [0, 75, 145, 175]
    assert lines["Tiller"].ys == pytest.approx([x * INCH for x in (5 / 16, 15 / 64, 3 / 16, 1 / 8)])


def test_what_a_batch_did_is_told_from_one_reading_of_the_line_to_the_next():
    found = outcome("4:0in::1/64in:;1:1/64in:1/64in:-1/32in:-3/32in;2::::")
    table = next(each for each in found.tables if each.id == "line")
    assert len(table.rows) == 1
    rows, upper, lower, weight, tiller, *moved = table.rows[0]
    assert (rows, upper, lower) == ("1 to 4", 60, 115)
    assert weight == pytest.approx(-4 * 4.4482216152605)
    assert tiller == pytest.approx(-3 / 16 * INCH)
    assert moved[0] == pytest.approx(-1 / 64 * INCH)
    assert moved[2] == pytest.approx(3 / 64 * INCH)
    assert (moved[1], moved[3]) == (None, None)


def test_a_log_without_offsets_answers_as_before():
    found = outcome("")
    assert "line" not in [each.id for each in found.charts + found.tables + found.checks]


def test_on_a_paper_of_which_nothing_is_known_the_line_is_told_all_the_same():
    found = outcome("1:0in:::;2:1/32in:::", "0:0:53lb:5/16in;30:45:51.4lb:1/4in;0:0:51.4lb:1/4in:new")
    assert [each.id for each in found.charts] == ["line"]
    assert [each.level for each in found.checks if each.id == "upper_riser-astray"] == ["watch"]


@pytest.mark.parametrize(("offsets", "row", "message"), [
    ("1:0in:0in:0in:0in;5:0in:0in:0in:0in", 1, "The log has 4 rows, so no offsets can belong to its row 5: "
     "give the number of the row after whose strokes they were read."),
    ("2:0in:0in:0in:0in;2:0in:0in:0in:0in", 1,
     "Row 2 of the log has its offsets twice: take one of them out."),
])
def test_offsets_of_no_row_or_of_one_row_twice_are_refused(offsets, row, message):
    [problem] = run(offsets).problems
    assert (problem.field, problem.row, problem.column) == ("offsets", row, "row")
    assert problem.message == message


def test_a_string_that_goes_astray_is_told_with_its_side():
    [(level, text)] = said("1:::-1/64in:;2:::-5/64in:", "lower_riser-astray")
    assert level == "watch"
    assert text == (
        "On the lower limb, at the fadeout, the last strokes led the string 0.063 in farther from the "
        "middle, to 0.078 in on the left. Left and right, or the limbs, may be mixed up: measure again "
        "before the next stroke.")
    assert not said("1:::-1/64in:;2:::-5/64in:", "lower_riser-leap")


def test_a_string_that_moves_far_in_one_batch_is_told():
    [(level, text)] = said("1::1/8in::;2::1/16in::", "upper_tip-leap")
    assert level == "watch"
    assert text == (
        "On the upper limb, near the tip, the string moved 0.063 in since the reading before; one batch "
        "should move it by no more than 1/32 in (common practice). Do fewer strokes at a time on that side.")


def test_a_string_too_far_off_is_told_until_the_newest_reading_says_otherwise():
    [(level, text)] = said("1:9/64in:::", "upper_riser-off")
    assert level == "watch"
    assert text == ("On the upper limb, at the fadeout, the string lies 0.141 in to the right of the middle; "
                    "practice accepts 1/8 in. Tracking says what brings it back.")
    assert not said("1:9/64in:::;2:7/64in:::", "upper_riser-off")


def test_only_a_fadeout_has_a_limit_and_without_one_nothing_is_called_in_order():
    assert not said("1::1/4in::", "upper_tip-off")
    assert not said("1::1/4in::", "line")
    assert [level for level, _ in said("1:1/8in:::", "line")] == ["ok"]
