"""Coats as they were laid: their windows, their air, when they are hard, what is lettered over them."""

import pytest

from calc.outcome import say
from calc.record import checks
from calc.record.finishing import finish_of, working_hours
from calc.record.moments import local_moment
from tests.record.bench import Bench, coat, to_finish


def shown(bench):
    return {each.id: (each.level, say(each.text, "imperial")) for each in checks.checks(bench.state)}


@pytest.fixture
def bench():
    return to_finish(Bench())


# Windows ---------------------------------------------------------------------------


@pytest.mark.parametrize(("second", "scuffed", "words"), [
    # the first coat ends at 11:00; 4 h and 24 h after that, and at 77 °F no factor
    ("05T15:00", "no", None),
    ("05T14:59", "no", "Laid before the film below could bear it: build coat 2 of 5 May. What is shut in "
     "dries slowly: leave it longer than its time, and try it with a finger nail where nobody looks."),
    ("06T11:00", "no", None),
    ("06T11:01", "no", "Laid after the window of the film below had closed, and no sanding is written down: "
     "build coat 2 of 6 May. It may peel: try tape on a hidden place before the next coat."),
    ("06T11:01", "yes", None),
])
def test_a_coat_is_held_against_the_window_of_the_film_below(bench, second, scuffed, words):
    coat(bench, "05T10:00", role="build")
    coat(bench, second, role="build", scuffed=scuffed)
    assert shown(bench).get("window") == (words and ("watch", words))


@pytest.mark.parametrize(("warmth", "speaks"), [("77 °F", False), ("59 °F", True)])
def test_a_colder_shop_keeps_a_window_shut_for_longer(bench, warmth, speaks):
    """The rule doubles times for 18 °F less: 4 h are 8 h there (common practice)."""
    coat(bench, "05T09:00", role="build", temperature=warmth)
    coat(bench, "05T16:00", role="build", temperature=warmth)
    assert ("window" in shown(bench)) is speaks


def test_lettering_dries_before_a_coat_covers_it(bench):
    coat(bench, "05T10:00", role="build")
    coat(bench, "05T16:00", "lettering")
    entry = coat(bench, "06T06:00", role="build")  # it ends at 17:00, and 12 h later is 05:00
    assert "window" not in shown(bench)
    entry.at = "2026-05-06T04:59+02:00"
    assert "build coat 2 of 6 May" in shown(bench)["window"][1]


def test_the_next_window_is_named_and_what_to_do_when_it_is_missed(bench):
    coat(bench, "05T10:00", role="build")
    assert shown(bench)["window-next"] == (
        "watch", "Build coat 2 goes on from Tue 5 May 2026, 15:00 and is begun by Wed 6 May 2026, 11:00. "
        "After that the film below is dulled first.")
    bench.write("shop", closed="2026-05-05:9:15;2026-05-06:0:0")  # the rest of the day, and the next
    assert shown(bench)["window-next"] == (
        "watch", "Build coat 2 can go on from Thu 7 May 2026, 09:00, and the window of the film below closes "
        "on Wed 6 May 2026, 11:00: dull that film first.")


def test_a_finish_taken_off_takes_its_faults_along(bench):
    coat(bench, "05T10:00", role="build", temperature="40 °F", humidity="95 %")
    coat(bench, "05T11:00", role="build")
    assert {"window", "cold", "damp", "cure"} <= set(shown(bench))
    coat(bench, "07T10:00", standing="off", temperature="")
    assert not {"window", "cold", "damp", "cure"} & set(shown(bench))


# The air ---------------------------------------------------------------------------


@pytest.mark.parametrize(("warmth", "work", "words"), [
    ("55 °F", "", None), ("54.9 °F", "", "54.9"), ("70 °F", "54.9 °F", "54.9"), ("54.9 °F", "70 °F", "54.9"),
])
def test_the_colder_of_air_and_work_is_held_against_the_products_least(bench, warmth, work, words):
    coat(bench, "05T10:00", role="build", temperature=warmth, surface_temperature=work)
    found = shown(bench).get("cold")
    if words is None:
        assert found is None
    else:
        assert found == (
            "stop", f"A coat of 5 May was laid at {words} °F, colder than the 55.0 °F that one-part urethane "
            "needs: it may never cure, however long it is left. No coat goes over it before it has hardened "
            "in a warm room.")


@pytest.mark.parametrize(("humidity", "work", "level"), [
    # dew point of 20 °C at 100 % is 20 °C; rules of 3 °C and 5 °F read second-hand, in damp air first of all
    ("85 %", "26 C", None), ("85.1 %", "26 C", "stop"),
    # at 85 % it is 17.4 °C by the tables of psychrometry: margins of 3.0 and 2.78 °C lie at 20.4 and 20.2 °C
    ("85 %", "20.5 C", None), ("85 %", "20.3 C", "watch"), ("85 %", "20.1 C", "stop"),
])
def test_damp_air_and_work_too_near_its_dew_point_are_told(bench, humidity, work, level):
    coat(bench, "05T10:00", role="build", temperature="20 C", humidity=humidity, surface_temperature=work)
    assert shown(bench).get("damp", (None,))[0] == level


def test_what_was_not_read_of_the_air_is_not_held_against_a_coat(bench):
    coat(bench, "05T10:00", role="build", temperature="20 C")
    coat(bench, "05T15:00", role="build", temperature="", humidity="50 %")
    assert not {"cold", "damp"} & set(shown(bench))


# How hard it is --------------------------------------------------------------------


def whole_finish(bench, warmth="77 °F"):
    for day in (5, 6):
        coat(bench, f"0{day}T10:00", role="build", temperature=warmth, scuffed="yes")
    coat(bench, "07T10:00", "lettering")
    coat(bench, "08T10:00", role="build", temperature=warmth, scuffed="yes")


def test_it_is_not_strung_before_the_day_on_which_it_is_hard(bench):
    whole_finish(bench)  # it ends on 8 May at 11:00, and 14 days later begins the next whole day
    assert shown(bench)["cure"] == (
        "watch", "Do not string it before Sat 23 May 2026: by the warmth that was read its finish is soft "
        "until then.")
    bench.write("bow", tag="31").at = "2026-05-22T10:59+02:00"
    assert "cure" in shown(bench)
    bench.write("bow", tag="31").at = "2026-05-22T11:00+02:00"
    assert "cure" not in shown(bench)


def test_a_cold_week_puts_the_string_off(bench):
    """A week at 59 °F is worth half of one at 77 °F (the rule of doubling): 14 days become 17 1/2."""
    whole_finish(bench)
    bench.write("air", temperature="59 °F").at = "2026-05-08T11:00+02:00"
    bench.write("air", temperature="77 °F").at = "2026-05-15T11:00+02:00"
    assert "Tue 26 May 2026" in shown(bench)["cure"][1]  # 17 1/2 days after the 8th at 11:00: the 25th, 23:00
    bench.write("air", temperature="50 °F").at = "2026-05-16T11:00+02:00"
    assert shown(bench)["cure"] == (
        "stop", "The air was last read colder than the 55.0 °F that one-part urethane needs: its finish does "
        "not harden there. Do not string it; warm the room, and read the air again.")


def test_no_window_is_named_where_the_film_below_stands_still(bench):
    coat(bench, "05T10:00", role="build", temperature="54 °F")
    assert "window-next" not in shown(bench)
    assert {"cold", "cure"} <= set(shown(bench))


@pytest.mark.parametrize(("at", "soft"), [("22T10:59", True), ("22T11:00", False)])
def test_a_bow_strung_on_a_soft_finish_is_stopped_until_it_is_looked_over(bench, at, soft):
    whole_finish(bench)
    bench.write("shots", count="20").at = f"2026-05-{at}+02:00"
    assert shown(bench).get("strung") == (("stop", (
        "It was strung on 22 May, before Sat 23 May 2026: by the warmth that was read its finish was still "
        "soft. Unstring it, and look where the string and the hand have pressed into it.")) if soft else None)
    bench.write("look", seen_faces="yes").at = "2026-05-30T11:00+02:00"
    assert "strung" not in shown(bench)


def test_what_is_read_without_a_string_harms_no_finish(bench):
    whole_finish(bench)
    bench.write("reading", glass_back="0.043 in").at = "2026-05-09T10:00+02:00"
    assert "strung" not in shown(bench)
    bench.write("reading", brace="8 in").at = "2026-05-09T11:00+02:00"
    assert shown(bench)["strung"][0] == "stop"


@pytest.mark.parametrize(("due", "speaks"), [("2026-05-23", False), ("2026-05-22", True)])
def test_the_day_that_was_promised_is_held_against_the_coats_as_laid(bench, due, speaks):
    bench.write("agreed", ready_by=due)
    whole_finish(bench)
    assert shown(bench).get("due") == (("watch", (
        "It is to be ready by Fri 22 May 2026. By the coats that are laid and planned it is hard enough for "
        "a string on Sat 23 May 2026 at the earliest: tell the owner.")) if speaks else None)


# The lettering ---------------------------------------------------------------------


@pytest.mark.parametrize(("weight", "level"), [
    ("45.5 lb", None), ("45.6 lb", "stop"), ("44.5 lb", None), ("44.4 lb", "stop")])
def test_the_weight_lettered_is_the_weight_read_within_half_a_pound(bench, weight, level):
    bench.write("reading", weight=weight, at_draw="28 in")
    coat(bench, "07T10:00", "lettering", text="45 lb at 28 in", weight="45 lb", at_draw="28 in")
    found = shown(bench).get("letter")
    assert (found and found[0]) == level
    if level:
        assert found[1] == (f"45.0 lb is lettered, and the bow pulls {weight} at 28 in. Take the lettering "
                            "off before a coat covers it, or letter it anew.")


def test_a_coat_or_a_line_without_a_weight_leaves_the_weight_that_is_lettered(bench):
    bench.write("reading", weight="46 lb", at_draw="28 in")
    coat(bench, "07T10:00", "lettering", text="45 lb at 28 in", weight="45 lb", at_draw="28 in")
    coat(bench, "07T12:00", "lettering", text="64 in")
    assert shown(bench)["letter"][0] == "stop"
    coat(bench, "08T10:00", role="over")
    assert shown(bench)["letter"][0] == "stop"


def test_a_weight_lettered_before_the_last_strokes_or_at_another_draw_is_watched(bench):
    bench.write("reading", weight="45 lb", at_draw="28 in")
    entry = coat(bench, "07T10:00", "lettering", weight="45 lb", at_draw="28 in")
    assert "letter" not in shown(bench)
    bench.write("strokes", day=8, lower_belly="12")
    assert shown(bench)["letter"][0] == "watch"
    coat(bench, "08T12:00", "lettering", weight="43 lb", at_draw="27 in")
    assert shown(bench)["letter"] == (
        "watch", "43.0 lb is lettered, and was never read at that draw: weigh the bow there.")
    assert entry.fact("weight") == "45 lb"


def test_lettering_is_covered_by_a_coat(bench):
    bench.write("coats", over_coats="0", build_coats="2", seal_coats="0", sheen_coats="0")
    for day in (5, 6):
        coat(bench, f"0{day}T10:00", role="build", scuffed="yes")
    assert "letter-cover" not in shown(bench)
    coat(bench, "07T10:00", "lettering")
    assert shown(bench)["letter-cover"][0] == "watch"
    coat(bench, "08T10:00", role="build")
    assert "letter-cover" not in shown(bench)


# What is planned -------------------------------------------------------------------


def test_nothing_is_planned_without_a_family_or_without_coats():
    assert finish_of(Bench().state, 0) is None
    bare = Bench()
    bare.write("product", family="one-part-urethane")
    assert finish_of(bare.state, 0) is None
    bare.write("coats", build_coats="1")
    assert [each.step.name for each in finish_of(bare.state, 0).to_come] == ["Build coat"]


def test_what_contradicts_itself_or_cannot_be_read_is_planned_as_usual(bench):
    bench.write("product", recoat_from="30 h", recoat_to="2 h")
    bench.write("shop", opens="18", closes="9", days="never", closed="2026-05-06:12:3")
    coat(bench, "05T10:00", role="thick", temperature="warm")
    found = finish_of(bench.state, local_moment("2026-05-05T12:00+02:00"))
    hours = working_hours(bench.state)
    assert (hours.opens, hours.closes, hours.other) == (9 * 3600, 18 * 3600, {})
    assert [each.step.name for each in found.planned] == [
        "Build coat 1", "Build coat 2", "Lettering", "Build coat 3"]
    assert found.product.recoat_from < found.product.recoat_to


def test_the_first_day_the_plan_and_the_shop_are_taken_as_written(bench):
    bench.write("coats", start="2026-05-08", seal_coats="1")
    bench.write("product", seal_with="shellac")
    bench.write("shop", opens="10", closes="12", days="weekend", coat_time="2 h")
    found = finish_of(bench.state, local_moment("2026-05-05T12:00+02:00"))
    first = found.planned[0]
    assert first.start == local_moment("2026-05-09T10:00+02:00")  # a Saturday
    assert first.end == local_moment("2026-05-09T12:00+02:00")
    assert [coat.product and coat.product.family.id for coat in found.coats] == [
        "shellac", "one-part-urethane", "one-part-urethane", None, "one-part-urethane"]
    bench.write("shop", coat_time="9 h")  # longer than the day: it takes the day
    assert finish_of(bench.state, 0).planned[0].end - finish_of(bench.state, 0).planned[0].start == 2 * 3600


def test_coats_to_come_leave_what_their_solids_leave_of_them():
    """Dry film is wet film times volume solids, as in ISO 3233; nobody reduced either product."""
    bench = Bench()
    bench.write("product", family="one-part-urethane", seal_with="shellac", solids="30 %")
    bench.write("coats", seal_coats="1", build_coats="1", wet_film="4 mil")
    seal, build = finish_of(bench.state, 0).coats
    assert build.dry == pytest.approx(4 * 25.4e-6 * 0.3)
    assert seal.dry == pytest.approx(4 * 25.4e-6 * seal.product.family.volume_solids)
    assert (seal.product.recoat_from, seal.product.recoat_to, seal.product.cure) == (
        seal.product.family.recoat_from, seal.product.family.recoat_to, seal.product.family.cure)


@pytest.mark.parametrize(("facts", "lettered"), [
    ({"lettered": "yes"}, True), ({"lettered": "no", "lettering": "45 lb"}, False),
    ({"lettering": "45 lb"}, True), ({}, False)])
def test_lettering_is_planned_where_it_was_agreed(facts, lettered):
    bench = Bench()
    bench.write("product", family="one-part-urethane")
    bench.write("coats", build_coats="1", over_coats="1")
    bench.write("agreed", weight="45 lb", **facts)
    assert ("Lettering" in [each.step.name for each in finish_of(bench.state, 0).planned]) is lettered


def test_a_coat_counts_as_long_as_it_took_and_as_wet_as_it_was(bench):
    coat(bench, "05T10:00", role="build", took="2 h", wet_film="3 mil")
    coat(bench, "06T10:00", role="build", took="", wet_film="")
    first, second = finish_of(bench.state, 0).planned[:2]
    assert (first.end - first.start, second.end - second.start) == (7200, 3600)
    wet = [each.wet for each in finish_of(bench.state, 0).coats[:2]]
    assert wet == pytest.approx([3 * 25.4e-6, 1.5 * 25.4e-6])
