"""What follows from a record: derived figures, what is stale, the checks of the whole, what comes next."""

from pathlib import Path

import pytest

from calc.declaring import inputs_of
from calc.outcome import say
from calc.quantities import INCH, POUND_FORCE
from calc.record import checks, derive, sheets, steps, summary
from calc.record.entries import Entry, entry_id
from calc.record.values import odd_of, problems_of, value_of
from tests.record.bench import Bench


def found(state):
    return {each.id: (each.level, say(each.text, "imperial")) for each in checks.checks(state)}


@pytest.fixture
def bench():
    return Bench().came_in()


def test_tiller_comes_from_one_reading_only(bench):
    assert derive.newest_tiller(bench.state)[0] == pytest.approx(5 / 16 * INCH)
    bench.write("reading", upper="7 1/2 in")  # the lower distance of another day makes no tiller with it
    assert derive.newest_tiller(bench.state)[0] == pytest.approx(5 / 16 * INCH)


def test_a_weight_without_its_draw_is_none(bench):
    bench.write("reading", weight="50 lb")
    assert [each.force for each in derive.weights(bench.state)] == pytest.approx([53 * POUND_FORCE])


def test_the_drop_runs_from_the_first_weight_however_often_it_is_planned_again():
    bench = Bench().came_in()
    bench.write("agreed", weight="41 lb", at_draw="28 in")
    for weight in ("50 lb", "46 lb", "43 lb"):
        bench.write("reading", weight=weight, at_draw="28 in")
        level, text = found(bench.state)["total-drop"]
        assert level == "watch"
        assert "22.6 %" in text  # 1 - 41/53


def test_an_ordinary_drop_is_not_remarked_on(bench):
    assert "total-drop" not in found(bench.state)


def test_weights_at_other_draws_are_not_compared(bench):
    bench.write("reading", weight="49.5 lb", at_draw="26 1/2 in")
    assert derive.weight_as_it_came(bench.state).force == pytest.approx(53 * POUND_FORCE)
    assert say(summary.weights(bench.state), "imperial") == "Came at 53.0 lb, agreed 45.0 lb at 28 in."
    bench.write("agreed", weight="44 lb", at_draw="26 1/2 in")
    assert say(summary.weights(bench.state), "imperial") == "Came at 49.5 lb, agreed 44.0 lb at 26 1/2 in."
    bench.write("agreed", weight="40 lb", at_draw="24 in")  # where nothing was read
    assert say(summary.weights(bench.state), "imperial") == "Came at 49.5 lb at 26 1/2 in."


def test_glass_is_held_against_the_glass_as_it_came(bench):
    bench.write("strokes", upper_belly="100", lower_belly="160", paper="P120")
    bench.write("reading", glass_belly="0.026 in", glass_back="0.040 in")
    assert "glass-floor" not in found(bench.state)  # 60 % of 0.043 in is 0.0258 in
    bench.write("reading", glass_belly="0.025 in", glass_back="0.040 in")
    level, text = found(bench.state)["glass-floor"]
    assert level == "stop"
    assert "belly" in text


@pytest.mark.parametrize(("fact", "stale"), [
    ("reading.weight", True), ("reading.upper", True), ("reading.glass_belly", True), ("bow.length", False),
    ("archer.draw", False),
])
def test_strokes_make_readings_stale(bench, fact, stale):
    assert not derive.is_stale(bench.state, fact)
    bench.write("strokes", lower_belly="12", paper="P120")
    assert derive.is_stale(bench.state, fact) is stale


def test_a_new_string_makes_brace_and_tiller_stale(bench):
    bench.write("string", length="60 1/2 in", strands="14", material="polyester")
    assert derive.is_stale(bench.state, "reading.upper")
    assert not derive.is_stale(bench.state, "reading.glass_belly")


def test_reading_again_makes_fresh(bench):
    bench.write("strokes", lower_belly="12", paper="P120")
    assert found(bench.state)["stale"][0] == "watch"
    assert "12 strokes" in found(bench.state)["stale"][1]
    bench.write("reading", weight="52 lb", at_draw="28 in", upper="7 9/16 in", lower="7 5/16 in",
                glass_back="0.042 in", glass_belly="0.042 in", from_distance="yes")
    assert "stale" not in found(bench.state)


def test_no_inspection_stops(bench):
    assert found(Bench().state)["verdict"][0] == "stop"
    assert "verdict" not in found(bench.state)


def test_one_open_finding_stops_until_it_is_mended(bench):
    bench.write("finding", which="loose_overlay", limb="upper", face="tip")
    assert "overlay" in found(bench.state)["verdict"][1]
    bench.write("finding", which="loose_overlay", limb="upper", face="tip", standing="mended")
    assert "verdict" not in found(bench.state)
    assert found(bench.state)["proof"][0] == "stop"  # a repair asks for a draw from a distance


def test_removal_asks_for_a_draw_from_a_distance(bench):
    assert "proof" not in found(bench.state)
    bench.write("strokes", lower_belly="12", paper="P120")
    assert found(bench.state)["proof"][0] == "stop"
    bench.write("reading", weight="52 lb", at_draw="28 in", from_distance="yes")
    assert "proof" not in found(bench.state)


@pytest.mark.parametrize("sign", ["sound", "moved"])
def test_a_draw_that_was_heard_or_seen_to_move_proves_nothing(bench, sign):
    bench.write("first_draw", to_draw="28 in", from_distance="yes", full="yes", **{sign: "yes"})
    assert found(bench.state)["proof"][0] == "stop"


def test_two_weights_agreed_on_one_day_are_told(bench):
    bench.write("agreed", weight="46 lb", at_draw="28 in")
    assert "Two weights were agreed on 5 May" in found(bench.state)["agreed"][1]


def test_strokes_before_agreement_are_told():
    bench = Bench()
    bench.write("strokes", lower_belly="12", paper="P120")
    assert "before a weight was agreed" in found(bench.state)["agreed"][1]


def test_two_papers_and_two_scales_are_told(bench):
    bench.write("strokes", lower_belly="12", paper="P120")
    bench.write("strokes", lower_belly="12", paper="P180")
    bench.write("reading", weight="52 lb", at_draw="28 in", scale="hanging")
    bench.write("reading", weight="52 lb", at_draw="28 in", scale="on the stand")
    assert "P120, P180" in found(bench.state)["papers"][1]
    assert "hanging, on the stand" in found(bench.state)["scales"][1]


@pytest.mark.parametrize(("tips", "level"), [("plain", "stop"), ("reinforced", None)])
def test_low_stretch_string_on_plain_tips_stops(bench, tips, level):
    bench.write("string", material="polyethylene")
    bench.write("bow", tips=tips)
    assert found(bench.state).get("string-tips", (None,))[0] == level


@pytest.mark.parametrize(("mass", "level"), [("530 gr", None), ("420 gr", "watch"), ("260 gr", "stop")])
def test_light_arrows_are_told(bench, mass, level):
    # 53 lb: 8 gr/lb is 424 gr and 5 gr/lb is 265 gr (common practice).
    bench.write("arrow", mass=mass)
    assert found(bench.state).get("arrow-mass", (None,))[0] == level


def test_the_stroke_log_begins_anew_where_papers_were_mixed(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20", lower_back="8", paper="P120")
    bench.write("reading", weight="52 lb", at_draw="28 in", upper="7 9/16 in", lower="7 5/16 in")
    log = derive.stroke_log(bench.state)
    assert [(each.upper, each.lower, each.paper) for each, _ in log[1:]] == [(10, 28, "P120")]
    bench.write("strokes", lower_belly="20", paper="P120")
    bench.write("strokes", lower_belly="20", paper="P180")
    bench.write("reading", weight="51 lb", at_draw="28 in", upper="7 1/2 in", lower="7 5/16 in")
    assert len(derive.stroke_log(bench.state)) == 1


def test_the_job_goes_step_by_step():
    bench = Bench()
    assert steps.next_step(bench.state).step.id == "intake"
    bench.write("bow", title="64 in recurve")
    assert steps.next_step(bench.state).step.id == "inspect"
    bench.came_in()
    assert steps.next_step(bench.state).step.id == "weight"
    bench.write("strokes", lower_belly="100", paper="P120")
    assert steps.next_step(bench.state).step.id == "first-draw"
    bench.write("reading", weight="46 lb", at_draw="28 in", upper="7 7/16 in", lower="7 3/8 in",
                from_distance="yes")
    assert steps.next_step(bench.state).step.id == "shape"
    bench.write("handover", end="done")
    assert steps.next_step(bench.state).step is None


def test_a_bow_for_the_wall_has_no_next_step(bench):
    bench.write("finding", which="crack_across", limb="lower", face="belly")
    assert "wall" in steps.next_step(bench.state).why


def test_the_summary_tells_came_agreed_and_now(bench):
    assert summary.title(bench.state) == "31 64 in recurve"
    assert say(summary.weights(bench.state), "imperial") == "Came at 53.0 lb, agreed 45.0 lb at 28 in."
    bench.write("reading", weight="47.7 lb", at_draw="28 in")
    assert "last read 47.7 lb" in say(summary.weights(bench.state), "imperial")
    assert not summary.is_stopped(checks.checks(bench.state))


def test_what_cannot_be_understood_is_said_and_kept(bench):
    strange = bench.write("reading", weight="heavy", of_a_later_release="1")
    said = " ".join(problems_of(strange))
    assert "heavy" in said
    assert "of_a_later_release" in said
    assert "kept as it is" in " ".join(problems_of(bench.write("of_a_later_release", x="1")))


@pytest.mark.parametrize(("at", "odd"), [
    ("2026-05-12T18:10+02:00", False), ("2026-05-01T18:10+02:00", False), ("2026-05-13T18:00+02:00", False),
    ("2026-05-13T18:20+02:00", True), ("2027-05-12T18:10+02:00", True),
])
def test_an_entry_of_a_day_after_its_writing_is_odd(at, odd):
    written = 1_778_602_200_000  # 12 May 2026, 16:10 in world time
    assert bool(odd_of(Entry(entry_id(written, 0), at, "reading", (("brace", "8 in"),)))) is odd


@pytest.mark.parametrize("sheet", sheets.SHEETS, ids=lambda each: each.id)
def test_every_example_of_a_sheet_can_be_read(sheet):
    for each in inputs_of(sheet):
        assert sheets.input_of(f"{sheet.id}.{each.id}") is each
        assert value_of(f"{sheet.id}.{each.id}", each.default) is not None
    assert set(sheet.private) <= {each.id for each in inputs_of(sheet)}


def test_steps_are_those_of_the_page_of_the_whole_job():
    page = (Path(__file__).parents[2] / "docs/begin/index.md").read_text("utf-8")
    numbered = [line.split(". ", 1) for line in page.splitlines() if line.startswith("## ")]
    headings = [parts[1] for parts in numbered if len(parts) == 2]
    assert headings == [each.title for each in steps.STEPS]


def test_a_switch_that_cannot_be_read_stops_nothing_and_proves_nothing(bench):
    bench.write("look", seen_faces="perhaps")
    bench.write("first_draw", to_draw="28 in", from_distance="yes", full="yes", sound="perhaps")
    assert found(bench.state)["proof"][0] == "stop"
    bench.write("first_draw", to_draw="28 in", from_distance="yes", full="yes", sound="no")
    assert "proof" not in found(bench.state)
    assert "verdict" not in found(bench.state)  # the looks of the first inspection still count
