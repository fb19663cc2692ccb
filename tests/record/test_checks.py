"""What only a whole record can check: each check where it speaks and where it is silent."""

import pytest

from calc.dates import DAY
from calc.outcome import say
from calc.record import checks
from calc.record.values import value_of
from tests.record.bench import LOOKED, Bench


def found(bench):
    return {each.id: (each.level, say(each.text, "imperial")) for each in checks.checks(bench.state)}


@pytest.fixture
def bench():
    return Bench().came_in()


def weighed(bench, weight, day=5, **more):
    return bench.write("reading", day=day, weight=f"{weight} lb", at_draw="28 in", **more)


# Drop of all jobs together ---------------------------------------------------------


def test_a_bow_planned_again_four_times_never_forgets_what_has_come_off():
    """1 - 45/57 is 21.05 %, by hand."""
    bench = Bench()
    bench.write("look", **LOOKED)
    weighed(bench, 57)
    bench.write("agreed", weight="45 lb", at_draw="28 in")
    for day, weight in enumerate((57, 53.4, 49.2, 47.7, 45.1), 6):
        bench.write("strokes", day=day, lower_belly="40", paper="P120")
        weighed(bench, weight, day)
        bench.write("reading", day=day, weight="42 lb", at_draw="26 1/2 in")  # at the archer's own draw
        bench.write("agreed", day=day, weight="45 lb", at_draw="28 in", reserve="1 lb")
        level, text = found(bench)["total-drop"]
        assert level == "watch"
        assert "57.0 lb" in text
        assert "21.1 %" in text


@pytest.mark.parametrize(("agreed", "speaks"), [("42.4 lb", False), ("42.3 lb", True)])
def test_a_fifth_of_the_first_weight_is_the_usual_most(bench, agreed, speaks):
    # 20 % off 53 lb leaves 42.4 lb
    bench.write("agreed", day=6, weight=agreed, at_draw="28 in")
    assert ("total-drop" in found(bench)) is speaks


def test_a_weight_agreed_where_none_was_read_is_not_compared(bench):
    bench.write("agreed", day=6, weight="30 lb", at_draw="26 in")
    assert "total-drop" not in found(bench)


# Glass -----------------------------------------------------------------------------


@pytest.mark.parametrize(("face", "other"), [("back", "belly"), ("belly", "back")])
def test_the_glass_as_it_came_sets_the_floor_whatever_is_typed_later(bench, face, other):
    # 60 % of 0.043 in is 0.0258 in
    bench.write("reading", **{"glass_" + face: "0.0258 in", "glass_" + other: "0.043 in"})
    assert "glass-floor" not in found(bench)
    bench.write("reading", **{"glass_" + face: "0.0257 in"})
    level, text = found(bench)["glass-floor"]
    assert level == "stop"
    assert face in text
    bench.write("reading", **{"glass_" + face: "0.0257 in"})  # read again: it is no new glass as it came
    assert found(bench)["glass-floor"][0] == "stop"


def test_glass_thinner_than_new_is_held_against_the_new(bench):
    bench.write("bow", glass_belly_new="0.050 in")  # 60 % is 0.030 in
    bench.write("reading", glass_belly="0.031 in")
    assert "glass-floor" not in found(bench)
    bench.write("reading", glass_belly="0.029 in")
    assert "glass-floor" in found(bench)


def test_without_a_share_agreed_the_usual_one_holds():
    bench = Bench()
    bench.write("reading", glass_belly="0.050 in")
    bench.write("reading", glass_belly=f"{0.050 * checks.LEAST_SHARE * 0.999:.6f} in")
    assert "glass-floor" in found(bench)


# Proof from a distance -------------------------------------------------------------


@pytest.mark.parametrize(("draw", "proves"), [("28 in", True), ("27 in", True), ("20 in", False)])
def test_a_weighing_proves_a_bow_only_at_the_archers_full_draw(bench, draw, proves):
    bench.write("archer", draw="27 in")
    bench.write("strokes", lower_belly="12", paper="P120")
    bench.write("reading", weight="40 lb", at_draw=draw, from_distance="yes")
    assert ("proof" not in found(bench)) is proves


def test_a_weighing_by_hand_proves_nothing(bench):
    bench.write("strokes", lower_belly="12", paper="P120")
    weighed(bench, 52)
    assert found(bench)["proof"][0] == "stop"
    weighed(bench, 52, from_distance="yes")
    assert "proof" not in found(bench)


def test_a_repair_of_the_same_minute_asks_for_a_draw(bench):
    drawn = bench.write("first_draw", to_draw="28 in", from_distance="yes", full="yes")
    bench.write("finding", which="loose_overlay", limb="upper", standing="mended").at = drawn.at
    assert "proof" in found(bench)


# Agreed ----------------------------------------------------------------------------


def test_strokes_after_agreement_and_targets_of_two_days_are_in_order(bench):
    bench.write("strokes", day=6, lower_belly="12", paper="P120")
    bench.write("agreed", day=7, weight="46 lb", at_draw="28 in")
    assert "agreed" not in found(bench)
    bench.write("agreed", day=7, weight="46 lb", at_draw="28 in")  # twice the same is no clash
    assert "agreed" not in found(bench)
    bench.write("agreed", day=7, weight="47 lb", at_draw="28 in")
    assert found(bench)["agreed"][0] == "watch"


# Papers and scales -----------------------------------------------------------------


def test_one_paper_and_one_scale_are_in_order_however_they_are_written(bench):
    for paper, scale in (("P120", "Hanging"), (" p120", "hanging "), ("P120", "")):
        bench.write("strokes", lower_belly="12", paper=paper)
        weighed(bench, 52, scale=scale)
    assert not {"papers", "scales"} & set(found(bench))
    bench.write("strokes", lower_belly="12", paper="P180")
    weighed(bench, 51, scale="on the stand")
    assert {"papers", "scales"} <= set(found(bench))


@pytest.mark.parametrize(("checked", "read", "speaks"), [
    (None, 6, True), (6, 6, False), (1, 31, False), (5, 6, False), (7, 6, True),
])
def test_a_known_weight_vouches_for_a_scale_for_thirty_days(checked, read, speaks):
    bench = Bench()
    weighed(bench, 53, day=1)
    if checked:
        bench.write("reading", day=checked, checked="yes").at = f"2026-05-{checked:02}T09:00+02:00"
    weighed(bench, 52, day=read).at = f"2026-05-{read:02}T09:00+02:00"
    assert ("scale-check" in found(bench)) is speaks


def test_a_month_later_the_scale_is_to_be_tried_again():
    bench = Bench()
    weighed(bench, 53, day=1, checked="yes").at = "2026-05-01T09:00+02:00"
    weighed(bench, 52, day=31).at = "2026-05-31T09:00+02:00"
    assert "scale-check" not in found(bench)
    weighed(bench, 52, day=31).at = "2026-05-31T09:01+02:00"
    assert found(bench)["scale-check"][0] == "watch"


def test_a_single_weight_is_compared_with_nothing(bench):
    assert "scale-check" not in found(bench)


# String and arrow ------------------------------------------------------------------


@pytest.mark.parametrize(("material", "tips", "level"), [
    ("polyester", "plain", None), ("aramid", "plain", "stop"), ("polyethylene", "reinforced", None),
    ("aramid", "", "stop"),
])
def test_low_stretch_belongs_on_reinforced_tips(material, tips, level):
    bench = Bench()
    bench.write("string", material=material)
    if tips:
        bench.write("bow", tips=tips)
    assert found(bench).get("string-tips", (None,))[0] == level


@pytest.mark.parametrize(("mass", "level"), [("424 gr", None), ("423 gr", "watch"), ("265 gr", "watch"),
                                             ("264 gr", "stop")])
def test_arrows_are_held_against_the_newest_weight(bench, mass, level):
    # 8 and 5 gr for each of 53 lb are 424 and 265 gr (common practice)
    bench.write("arrow", mass=mass)
    assert found(bench).get("arrow-mass", (None,))[0] == level


def test_a_bow_brought_down_takes_lighter_arrows(bench):
    bench.write("arrow", mass="370 gr")
    assert "arrow-mass" in found(bench)
    weighed(bench, 45)
    assert "arrow-mass" not in found(bench)


# Due -------------------------------------------------------------------------------


def finished(bench, due, cure="14 d"):
    bench.write("agreed", day=10, finish="satin", ready_by=due)
    bench.write("product", day=10, cure=cure)
    return found(bench).get("due")


@pytest.mark.parametrize(("due", "speaks"), [("2026-05-24", False), ("2026-05-23", True)])
def test_a_finish_that_cannot_be_hard_in_time_is_told(bench, due, speaks):
    told = finished(bench, due)  # 10 May and 14 days
    assert (told is not None) is speaks
    if told:
        assert told[0] == "watch"
        assert "Sun 24 May 2026" in told[1]


def test_part_of_a_day_of_curing_is_a_day(bench):
    assert "Mon 25 May 2026" in finished(bench, "2026-05-23", "14.5 d")[1]
    assert value_of("product.cure", "14 d") == 14 * DAY


def test_a_day_that_has_passed_is_told_until_it_is_handed_over(bench):
    bench.write("bow", due="2026-05-08")
    bench.write("reading", day=8, brace="8 1/4 in")
    assert "due" not in found(bench)
    bench.write("reading", day=9, brace="8 1/4 in")
    assert "was to be ready by Fri 8 May 2026" in found(bench)["due"][1]
    bench.write("handover", day=9, end="done")
    assert "due" not in found(bench)


def test_without_a_finish_or_a_day_nothing_is_due(bench):
    bench.write("product", cure="14 d")
    assert "due" not in found(bench)
    bench.write("agreed", day=9, ready_by="2026-05-10")
    assert "due" not in found(bench)


# Whole sentences --------------------------------------------------------------------


def test_checks_say_in_whole_sentences_what_they_found(bench):
    bench.write("agreed", day=6, weight="40 lb", at_draw="28 in")
    bench.write("agreed", day=7, weight="40 lb", at_draw="28 in", least_glass="60 %")
    bench.write("agreed", day=7, weight="41 lb", at_draw="28 in")
    bench.write("reading", day=8, glass_belly="0.020 in")
    bench.write("arrow", day=8, mass="400 gr")
    told = {id: text for id, (_, text) in found(bench).items()}
    assert told["total-drop"] == (
        "From the 53.0 lb that it pulled as it came to the 41.0 lb agreed is a drop of 22.6 %, all jobs "
        "together: more than the 20 % that is ordinary on an old bow.")
    assert told["agreed"] == ("Two weights were agreed on 7 May; the later one, 41.0 lb, counts. Strike "
                              "out the other if it is wrong.")
    assert told["glass-floor"] == (
        "The glass on the belly is 0.020 in, less than the 0.026 in that must stay of the glass as it came. "
        "Take nothing more off that face.")
    assert told["arrow-mass"] == (
        "The arrow weighs 7.5 gr/lb for the 53.0 lb of the bow: under 8 gr/lb is too light for an old bow, "
        "under 5 gr/lb for any.")


def test_a_finding_alone_tells_a_verdict_and_no_look_at_all_is_said():
    bench = Bench()
    assert checks.verdict(bench.state) is None
    assert found(bench)["verdict"][1] == "No inspection is written down: do not string the bow before it is."
    bench.write("finding", which="crack_across", limb="lower")
    assert checks.verdict(bench.state) == "wall"
    assert "a crack" in found(bench)["verdict"][1].lower()
    looked = Bench()
    looked.write("look", seen_faces="yes")
    assert found(looked)["verdict"][1] == (
        "The inspection does not let the bow be strung: some looks have not been made.")
