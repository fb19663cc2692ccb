"""What a record fills into calculators: from one reading where it must be, stale where strokes came since."""

import pytest

from calc import catalog
from calc.answer import work_out
from calc.quantities import INCH, POUND_FORCE, parse
from calc.record import checks, derive, steps
from calc.record.exact import exact_text
from calc.record.fill import fill
from tests.record.bench import Bench

CURVE = "12 in:11 lb;16 in:24.2 lb;20 in:33.4 lb;24 in:42 lb;26 in:47 lb;28 in:53 lb"
SECTIONS = {
    "stations_upper": "2 in:1 5/8 in:0.291 in;7 in:1 9/16 in:0.279 in;13 in:1 3/8 in:0.263 in;"
                      "19 in:13/16 in:0.247 in",
    "stations_lower": "2 in:1 5/8 in:0.296 in;7 in:1 9/16 in:0.283 in;13 in:1 3/8 in:0.267 in;"
                      "19 in:13/16 in:0.250 in",
}
GLASS = {"glass_back": "0.043 in", "glass_belly": "0.043 in"}


@pytest.fixture
def bench():
    return Bench().came_in()


def filled(bench, calculator, **chosen):
    return {each.input: each for each in fill(bench.state, calculator, chosen)}


def text(bench, calculator, input, **chosen):
    return filled(bench, calculator, **chosen)[input].text


def brought_down(bench):
    """Weight and tiller after two batches, the glass not read again."""
    bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
    bench.write("reading", weight="51.4 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in")
    bench.write("strokes", upper_belly="40", lower_belly="50", paper="P180")
    bench.write("reading", weight="48.1 lb", at_draw="28 in", upper="7 3/8 in", lower="7 9/32 in")
    return bench


# Weight reduction ----------------------------------------------------------------


def test_weight_and_its_draw_come_from_one_reading(bench):
    bench.write("reading", weight="49.5 lb", at_draw="26 1/2 in")
    found = filled(bench, "weight-reduction")
    assert (found["weight_now"].text, found["draw_length"].text) == ("53 lb", "28 in")
    assert found["weight_now"].entry is found["draw_length"].entry


def test_a_weight_agreed_at_another_draw_is_not_the_weight_wanted(bench):
    assert text(bench, "weight-reduction", "weight_wanted") == "45 lb"
    bench.write("agreed", weight="43 lb", at_draw="27 in")
    assert text(bench, "weight-reduction", "weight_wanted") == ""


@pytest.mark.parametrize(("at_draw", "wanted"), [("28 1/16 in", "43 lb"), ("27 15/16 in", "43 lb"),
                                                 ("28 1/8 in", ""), ("27 7/8 in", "")])
def test_draws_a_sixteenth_of_an_inch_apart_are_one(bench, at_draw, wanted):
    bench.write("agreed", weight="43 lb", at_draw=at_draw)
    assert text(bench, "weight-reduction", "weight_wanted") == wanted


def test_the_whole_job_is_counted_from_the_weight_as_it_came(bench):
    found = filled(brought_down(bench), "weight-reduction")
    assert (found["weight_now"].text, found["weight_came"].text) == ("48.1 lb", "53 lb")
    assert not found["weight_came"].stale


def test_glass_read_before_strokes_is_stale_and_no_glass_check_is_in_order(bench):
    bench.write("reading", **SECTIONS, **GLASS, brace="8 1/4 in", measured="fadeout")
    bench.write("bow", riser_length="19 in", core="white ash", edge_radius="0 in")
    bench.write("agreed", weight="45 lb", at_draw="28 in", edge_width="0 in")
    before = work_out(catalog.find("weight-reduction"), pairs(bench))
    assert {each.id: each.level for each in before.outcome.checks}["glass"] == "ok"
    found = filled(brought_down(bench), "weight-reduction")
    assert found["strokes_since"].text == "165"
    assert found["weight_read"].text == "53 lb"
    assert (found["came_back"].text, found["came_belly"].text) == ("0.043 in", "0.043 in")
    assert found["glass_back"].stale
    assert found["upper_stations"].stale
    after = work_out(catalog.find("weight-reduction"), pairs(bench))
    glass = [each for each in after.outcome.checks if "glass" in each.id]
    assert glass
    assert not [each.id for each in glass if each.level == "ok"]


def pairs(bench):
    return [(each.input, each.text) for each in fill(bench.state, "weight-reduction") if each.text]


def test_glass_read_again_counts_no_strokes(bench):
    brought_down(bench)
    bench.write("reading", **GLASS, **SECTIONS)
    assert text(bench, "weight-reduction", "strokes_since") == "0"
    assert text(bench, "weight-reduction", "weight_read") == "48.1 lb"


# A draw curve --------------------------------------------------------------------


def test_weight_at_the_archers_draw_is_read_there_or_on_the_curve_and_says_so(bench):
    bench.write("archer", draw="27 in")
    assert text(bench, "grip", "draw_weight") == ""  # no slope is guessed
    bench.write("reading", curve=CURVE)
    found = filled(bench, "grip")["draw_weight"]
    assert 47 * POUND_FORCE < parse(found.text, "force") < 53 * POUND_FORCE
    assert found.said == "from the draw curve of 5 May"
    bench.write("reading", weight="49.8 lb", at_draw="27 in")
    found = filled(bench, "grip")["draw_weight"]
    assert (found.text, found.said) == ("49.8 lb", "")


def test_a_weight_on_a_curve_is_stale_after_strokes_but_not_the_one_as_it_came():
    bench = Bench()
    bench.write("archer", draw="27 in")
    bench.write("reading", curve="12 in:11 lb;20 in:33 lb;28 in:53 lb", brace="8 in")
    bench.write("strokes", lower_belly="12", paper="P120")
    found = filled(bench, "grip")
    assert found["draw_weight"].text == found["lived_weight"].text != ""
    assert (found["draw_weight"].stale, found["lived_weight"].stale) == (True, False)


def test_a_curve_that_ends_short_of_a_draw_tells_nothing_of_it(bench):
    bench.write("archer", draw="29 in")
    bench.write("reading", curve=CURVE)
    assert text(bench, "string", "draw_weight") == ""


@pytest.mark.parametrize("curve", ["20 in:33 lb;12 in:11 lb;28 in:53 lb", "12 in:x;20 in:33 lb;28 in:53 lb"])
def test_a_curve_out_of_order_or_unreadable_tells_no_weight(bench, curve):
    bench.write("archer", draw="27 in")
    bench.write("reading", curve=curve)
    assert text(bench, "grip", "draw_weight") == ""


def test_the_grip_has_lived_with_the_weight_as_it_came(bench):
    bench.write("archer", draw="28 in")
    found = filled(brought_down(bench), "grip")
    assert (found["lived_weight"].text, found["draw_weight"].text) == ("53 lb", "48.1 lb")


def test_curve_now_and_as_it_came(bench):
    bench.write("reading", curve=CURVE)
    bench.write("strokes", lower_belly="50", paper="P120")
    later = CURVE.replace("53 lb", "50 lb")
    bench.write("reading", curve=later)
    found = filled(bench, "arrow-match")
    assert (found["old_readings"].text, found["readings"].text) == (CURVE, later)
    assert text(bench, "draw-curve", "measured_from") == "marked"
    bench.write("strokes", lower_belly="5", paper="P120")
    assert filled(bench, "draw-curve")["readings"].stale


# Arrows and strings --------------------------------------------------------------


@pytest.mark.parametrize(("material", "word"), [
    ("polyester", "polyester"), ("aramid", "low_stretch"), ("polyethylene", "low_stretch"),
])
def test_low_stretch_is_one_word_for_two_materials(bench, material, word):
    bench.write("string", material=material)
    assert text(bench, "arrow-match", "string_material") == word
    assert text(bench, "string", "material") == material


@pytest.mark.parametrize(("known", "bend"), [
    ("deflection_28", "0.5 in"), ("deflection_26", "0.4 in"), ("spine_weight", ""), ("", ""),
])
def test_a_bend_is_that_of_the_test_asked_for(bench, known, bend):
    bench.write("arrow", deflection_28="0.5 in", deflection_26="0.4 in")
    assert text(bench, "arrow-match", "deflection", shaft_known=known) == bend


@pytest.mark.parametrize(("losses", "speed"), [
    ("chronograph_before", "158 ft/s"), ("chronograph", "149 ft/s"), ("estimate", ""),
])
def test_a_chronograph_is_read_before_or_after_the_work(bench, losses, speed):
    bench.write("reading", shot_mass="468 gr", shot_speed="158 ft/s")
    bench.write("reading", shot_mass="468 gr", shot_speed="149 ft/s")
    assert text(bench, "arrow-match", "test_speed", losses=losses) == speed


# Strokes -------------------------------------------------------------------------


def test_the_log_names_its_papers_and_strokes_reads_it(bench):
    log = text(brought_down(bench), "strokes", "log")
    assert log == "0:0:53 lb:5/16 in:p120;30:45:51.4 lb:15/64 in:same;40:50:48.1 lb:3/32 in:p180"
    job = work_out(catalog.find("strokes"), [("log", log)])
    assert job.problems == []


def test_a_log_says_of_an_even_tiller_that_it_is_nothing(bench):
    bench.write("strokes", upper_belly="30", paper="P120")
    bench.write("reading", weight="52 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/8 in")
    assert text(bench, "strokes", "log").split(":")[-2] == "0 in"


@pytest.mark.parametrize(("papers", "names"), [
    (("P120", "P120"), "p120 same same"), (("", ""), "same same same"), (("P120", ""), "p120 same same"),
    (("worn belt", "P180"), "same same p180"), (("P120", "a new belt"), "p120 same new"),
])
def test_papers_in_the_words_of_the_log(bench, papers, names):
    for number, paper in enumerate(papers):
        bench.write("strokes", lower_belly="40", **({"paper": paper} if paper else {}))
        weight = f"{52 - number} lb"
        bench.write("reading", weight=weight, at_draw="28 in", upper="7 1/2 in", lower="7 5/16 in")
    rows = text(bench, "strokes", "log").split(";")
    assert " ".join(row.split(":")[4] for row in rows) == names


def test_a_weight_at_another_draw_is_no_row_of_the_log(bench):
    bench.write("strokes", lower_belly="40", paper="P120")
    bench.write("reading", weight="49 lb", at_draw="27 in", upper="7 1/2 in", lower="7 5/16 in")
    bench.write("reading", weight="52 lb", at_draw="28 in", upper="7 1/2 in", lower="7 5/16 in")
    assert [each.force for each in derive.weights(bench.state)][1] == pytest.approx(49 * POUND_FORCE)
    assert text(bench, "strokes", "log") == "0:0:53 lb:5/16 in:p120;0:40:52 lb:3/16 in:same"


def test_where_the_string_ran_goes_to_the_row_of_the_log_between_the_same_strokes(bench):
    bench.write("reading", upper_offset_riser="0 in", lower_offset_tip="-3/32 in")  # the day it came, later
    bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
    bench.write("reading", lower_offset_tip="-5/64 in")  # before weight and tiller of the same day
    bench.write("reading", weight="51.4 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in",
                lower_offset_riser="-1/64 in")
    assert text(bench, "strokes", "offsets") == "1:0 in:::-3/32 in;2:::-1/64 in:-5/64 in"
    assert not filled(bench, "strokes")["offsets"].stale
    job = work_out(catalog.find("strokes"), [(id, text(bench, "strokes", id)) for id in ("log", "offsets")])
    assert job.problems == []
    assert [each.id for each in job.outcome.charts if each.id == "line"] == ["line"]
    bench.write("strokes", upper_belly="10", paper="P120")
    assert filled(bench, "strokes")["offsets"].stale
    bench.write("reading", upper_offset_tip="1/64 in")  # weight and tiller are not read yet: no row is there
    assert text(bench, "strokes", "offsets") == "1:0 in:::-3/32 in;2:::-1/64 in:-5/64 in"


def test_without_a_log_no_offset_belongs_to_a_row():
    alone = Bench()
    alone.write("reading", upper_offset_tip="1/64 in")
    assert text(alone, "strokes", "offsets") == ""


def test_two_readings_without_strokes_between_them_keep_their_own_line(bench):
    bench.write("reading", weight="53 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in",
                upper_offset_tip="1/16 in")
    bench.write("reading", weight="53 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in",
                upper_offset_tip="1/32 in")
    assert text(bench, "strokes", "offsets") == "2::1/16 in::;3::1/32 in::"


def test_thickness_lost_is_between_the_same_places_read_twice(bench):
    bench.write("reading", **SECTIONS)
    assert text(bench, "strokes", "upper_lost") == ""
    later = "2 in:1 5/8 in:0.281 in;7 in:1 9/16 in:0.273 in;14 in:1.3 in:0.2 in"
    bench.write("reading", stations_upper=later)
    found = filled(bench, "strokes")["upper_lost"]
    assert found.text == "0.0080 in"  # mean of 0.010 and 0.006; the third place was not read twice
    assert found.said == "mean of 2 places read twice"
    assert text(bench, "strokes", "lower_lost") == ""


# Next batch ----------------------------------------------------------------------

AFTER = {"stations_upper": "2 in:1 5/8 in:0.281 in;7.031 in:1 9/16 in:0.273 in;13.032 in:1 3/8 in:0.2 in",
         "glass_back": "0.041 in"}
"""Read again after two batches: the second place just less than 1/32 in from where it was, the third just
more."""


def test_the_bow_of_the_log_is_as_it_was_read_before_the_first_stroke(bench):
    bench.write("reading", **SECTIONS)
    found = filled(brought_down(bench), "next-batch")
    assert found["log"].text == text(bench, "strokes", "log")
    assert [found[limb + "_stations"].text for limb in ("upper", "lower")] == list(SECTIONS.values())
    assert [found["glass_" + face].text for face in ("back", "belly")] == ["0.043 in", "0.043 in"]
    assert not any(found[name].stale for name in ("upper_stations", "glass_back"))
    for name in ("upper_lost", "lower_lost", "glass_now_back", "glass_now_belly"):
        assert found[name].text == "", name


def test_what_is_read_again_after_the_last_row_is_what_was_lost_in_the_log(bench):
    bench.write("reading", **SECTIONS)
    brought_down(bench).write("reading", **AFTER)
    found = filled(bench, "next-batch")
    assert found["upper_lost"].text == "0.0080 in"
    assert found["upper_lost"].said == "mean of 2 places read twice"
    assert (found["lower_lost"].text, found["glass_now_belly"].text) == ("", "")
    assert (found["glass_now_back"].text, found["glass_back"].text) == ("0.041 in", "0.043 in")
    assert found["upper_stations"].text == SECTIONS["stations_upper"]
    assert not any(found[name].stale for name in ("upper_lost", "glass_now_back"))
    bench.write("strokes", upper_belly="10", paper="P180")
    found = filled(bench, "next-batch")
    assert (found["upper_lost"].text, found["glass_now_back"].text) == ("0.0080 in", "0.041 in")
    assert found["upper_lost"].stale
    assert found["glass_now_back"].stale


@pytest.mark.parametrize("place", ["between two rows", "after more strokes than the last row knows"])
def test_glass_and_sections_of_no_row_are_not_those_of_the_log(bench, place):
    if place == "between two rows":
        bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
        bench.write("reading", **SECTIONS, glass_back="0.041 in")
        bench.write("strokes", upper_belly="5", paper="P120")
        bench.write("reading", weight="51 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in")
    else:
        bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
        bench.write("reading", weight="51.4 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in")
        bench.write("strokes", upper_belly="10", paper="P120")
        bench.write("reading", **SECTIONS, glass_back="0.041 in")
    found = filled(bench, "next-batch")
    for name in ("upper_stations", "lower_stations", "upper_lost", "lower_lost", "glass_now_back"):
        assert found[name].text == "", name
    assert found["glass_back"].text == "0.043 in"


def test_of_two_readings_before_the_first_stroke_the_later_counts(bench):
    bench.write("reading", glass_back="0.042 in")
    assert text(brought_down(bench), "next-batch", "glass_back") == "0.042 in"


def test_a_log_that_begins_anew_begins_with_what_was_read_then(bench):
    """Strokes on two papers between two readings cannot be told apart."""
    bench.write("reading", **SECTIONS)
    bench.write("strokes", upper_belly="30", paper="P120")
    bench.write("strokes", upper_belly="20", paper="P180")
    bench.write("reading", weight="51 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in",
                glass_back="0.041 in")
    found = filled(bench, "next-batch")
    assert found["log"].text == "0:0:51 lb:15/64 in:same"
    assert (found["glass_back"].text, found["upper_stations"].text) == ("0.041 in", "")
    assert found["glass_now_back"].text == ""


def test_without_a_log_nothing_belongs_to_one():
    alone = Bench()
    alone.write("reading", **SECTIONS, **GLASS)
    found = filled(alone, "next-batch")
    for name in ("log", "upper_stations", "glass_back", "glass_now_back", "upper_lost"):
        assert found[name].text == "", name


# Finish, tracking, wood, inspection ----------------------------------------------


def test_widths_and_thickness_for_the_finish_come_from_the_sections(bench):
    bench.write("reading", **SECTIONS)
    found = filled(bench, "finish")
    assert found["width_fadeout"].text == "1 5/8 in"
    # By hand, trapezoids over 2 to 19 in: 4.581 / 17 above, 4.6485 / 17 below.
    assert parse(found["limb_thickness"].text, "thickness") / INCH == pytest.approx(0.27146, abs=1e-4)
    assert found["width_tip"].text == ""  # nobody read it at the tip
    bench.write("reading", width_fadeout="1 3/4 in", width_tip="1/2 in")
    found = filled(bench, "finish")
    assert (found["width_fadeout"].text, found["width_tip"].text) == ("1 3/4 in", "1/2 in")


@pytest.mark.parametrize("limb", ["upper", "lower"])
def test_a_mean_over_both_limbs_is_as_old_as_the_older_half(bench, limb):
    bench.write("reading", **SECTIONS)
    assert not filled(bench, "finish")["limb_thickness"].stale
    bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
    assert filled(bench, "finish")["limb_thickness"].stale
    bench.write("reading", **{f"stations_{limb}": SECTIONS[f"stations_{limb}"]})
    assert filled(bench, "finish")["limb_thickness"].stale


@pytest.mark.parametrize(("measured", "height"), [("fadeout", "7 1/2 in"), ("string_end", "")])
def test_the_height_at_the_fadeout_is_the_tiller_distance_only_if_read_there(bench, measured, height):
    bench.write("reading", upper="7 1/2 in", lower="7 3/8 in", measured=measured)
    assert text(bench, "tracking", "upper_height_riser") == height


def test_where_tiller_is_read_holds_until_another_place_is_named(bench):
    bench.write("reading", upper="7 1/2 in", lower="7 3/8 in", measured="fadeout")
    bench.write("strokes", lower_belly="9", paper="P120")
    bench.write("reading", upper="7 15/32 in", lower="7 3/8 in")  # as quick entry writes it
    found = filled(bench, "tracking")["upper_height_riser"]
    assert (found.text, found.stale) == ("7 15/32 in", False)
    bench.write("reading", upper_height_riser="7 7/16 in")
    assert text(bench, "tracking", "upper_height_riser") == "7 7/16 in"
    bench.write("reading", upper="5 in", lower="5 in", measured="string_end")
    assert text(bench, "tracking", "upper_height_riser") == "7 7/16 in"


@pytest.mark.parametrize(("words", "wood"), [
    ("Black walnut", "black-walnut"), ("hard maple", "sugar-maple"), ("bubinga", "bubinga"),
    ("something brown", ""),
])
def test_a_wood_is_known_by_its_name(bench, words, wood):
    bench.write("bow", riser_wood=words)
    assert text(bench, "grip", "wood") == wood


def test_a_wood_of_no_table_is_its_own_by_its_strength(bench):
    bench.write("bow", riser_wood="something brown", riser_strength="12000 psi")
    found = filled(bench, "grip")
    assert (found["wood"].text, found["own_strength"].text) == ("own", "12000 psi")


def test_an_inspection_is_filled_from_looks_and_open_findings(bench):
    bench.write("finding", which="crazing", limb="upper")
    found = filled(bench, "inspection")
    assert (found["seen_faces"].text, found["crazing"].text, found["crack_across"].text) == (
        "yes", "yes", "no")
    assert {each.text for each in filled(Bench(), "inspection").values()} == {""}


@pytest.mark.parametrize(("deed", "facts", "looks"), [
    ("repair", {"limb": "upper", "face": "tip"}, {"seen_tips"}),
    ("fill", {"limb": "lower", "face": "belly"}, {"seen_faces", "seen_edges", "seen_tapped", "seen_line"}),
    ("repair", {"limb": "riser"}, {"seen_riser"}),
    ("hole", {"standing": "new"}, {"seen_riser"}),
    ("hole", {"standing": "planned"}, set()),
    ("section", {"shape": "rounded", "done": "yes"}, {"seen_riser"}),
    ("section", {"shape": "rounded"}, set()),
])
def test_work_asks_for_looks_at_its_place_and_for_a_draw_from_a_distance(bench, deed, facts, looks):
    assert "proof" not in {each.id for each in checks.checks(bench.state)}
    bench.write(deed, **facts)
    stale = {name for name, each in filled(bench, "inspection").items() if each.stale}
    assert stale == looks
    found = {each.id for each in checks.checks(bench.state)}
    assert ("looks-again" in found) == bool(looks)
    assert ("proof" in found) == bool(looks)
    assert (steps.next_step(bench.state).step.id == "first-draw") == bool(looks)


@pytest.mark.parametrize("deed", [deed for deed, _ in derive.MADE_STALE])
def test_each_deed_makes_stale_what_stands_in_its_row(bench, deed):
    facts = dict(derive.MADE_STALE)[deed]
    done = {"hole": {"standing": "new"}, "section": {"done": "yes"}, "strokes": {"lower_belly": "5"},
            "edges": {"radius": "1/32 in"}, "string": {"strands": "14"}}.get(deed, {"what": "glued"})
    for fact in facts:
        sheet, _, name = fact.partition(".")
        if bench.state.latest(fact) is None:
            bench.write(sheet, **{name: "1 in", **({"with_finish": "yes"} if deed == "coat" else {})})
    bench.write(deed, **done)
    assert [fact for fact in facts if not derive.is_stale(bench.state, fact)] == []
    assert not derive.is_stale(bench.state, "bow.length")


def test_edges_are_as_round_as_they_were_last_made(bench):
    assert text(bench, "weight-reduction", "edge_now") == ""
    bench.write("bow", edge_radius="1/64 in")
    assert text(bench, "weight-reduction", "edge_now") == "1/64 in"
    bench.write("edges", radius="1/32 in")
    assert text(bench, "weight-reduction", "edge_now") == "1/32 in"


def test_every_64th_is_written_as_a_fraction_that_reads_back():
    for number in range(-640, 641):
        size = number * INCH / 64
        assert parse(exact_text(size, "length", "in", INCH), "length") == pytest.approx(size, abs=1e-15)


def test_coats_that_are_on_the_bow_go_to_the_finish_as_they_were_laid():
    bench = Bench().came_in()
    bench.write("coat", role="seal", temperature="70 °F")
    bench.write("coat", standing="off")
    bench.write("coat", day=6, role="build", temperature="68 °F", wet_film="1.5 mil")
    bench.write("lettering", day=7, text="64 in, 45 lb at 28 in")
    [told] = [each.text for each in fill(bench.state, "finish") if each.input == "laid"]
    assert told == "build:2026-05-06:9.13333333333 h:68 °F:1.5 mil;lettering:2026-05-07:9.1500 h::"
