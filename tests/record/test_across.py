"""Several bows on one bench: dust and wet film, two coats at one hour, windows, the air of the day."""

import pytest

from calc.outcome import say
from calc.record import across
from tests.record.bench import Bench, coat, to_finish

ROOM = {"flow": "600 cfm", "room_length": "18 ft", "room_width": "14 ft", "room_height": "9 ft"}
"""2,268 cubic feet: 15.87 changes an hour. 99 % of the dust is gone after 3 ln(100) / 15.87 h, 52 min."""


def said(bows, at):
    """Return what is said of each bow by its tag, in the order in which it is said."""
    found = across.lines([each.state for each in bows], f"2026-05-{at}+02:00")
    return {bows[each.place].state.text("bow.tag"): (
        each.level, " ".join([say(part, "imperial") for part in each.parts])) for each in found}


def finishing(tag, first=None):
    bench = Bench()
    bench.write("bow", tag=tag)
    to_finish(bench)
    if first is not None:
        coat(bench, first, role="build")
    return bench


def sanding(tag="40", **room):
    """A bow whose weight is still to come down."""
    bench = Bench().came_in()
    bench.write("bow", tag=tag)
    if room:
        bench.write("shop", **room)
    return bench


# Windows and hours -----------------------------------------------------------------


def test_of_two_coats_at_one_hour_the_one_whose_window_closes_sooner_goes_first():
    later, sooner = finishing("31", "05T10:00"), finishing("32", "05T09:30")
    assert said([later, sooner], "05T12:00") == {
        "32": ("ok", "Build coat 2 from Tue 5 May 2026, 14:30; its window closes on Wed 6 May 2026, 10:30."),
        "31": ("watch", "Build coat 2 from Tue 5 May 2026, 15:00; its window closes on Wed 6 May 2026, "
                        "11:00. 32 gets its coat at that hour: this one from Tue 5 May 2026, 15:30."),
    }
    assert list(said([later, sooner], "05T12:00")) == ["32", "31"]


@pytest.mark.parametrize(("first", "clashes"), [("05T10:30", False), ("05T10:29", True)])
def test_coats_that_follow_each_other_do_not_clash(first, clashes):
    # the coat of the other takes from 14:30 to 15:30
    found = said([finishing("31", first), finishing("32", "05T09:30")], "05T12:00")["31"]
    assert ("32 gets its coat" in found[1]) is clashes


@pytest.mark.parametrize(("method", "family", "cleans"), [
    ("hvlp", "shellac", True), ("conventional", "shellac", True), ("brush", "shellac", False),
    ("", "shellac", False), ("hvlp", "one-part-urethane", False)])
def test_one_gun_is_cleaned_between_two_products_of_a_day(method, family, cleans):
    bows = [finishing("31", "05T10:00"), finishing("32", "05T09:30")]
    bows[1].write("product", family=family)
    if method:
        bows[0].write("shop", method=method)
    found = said(bows, "05T12:00")["31"]
    assert ("Clean the gun before it: 32 gets shellac on that day." in found[1]) is cleans
    bows[0].write("shop", closed="2026-05-05:9:12", method=method or "brush")  # it waits for the day after
    assert "Clean the gun" not in said(bows, "05T12:00")["31"][1]


def test_three_coats_at_one_hour_follow_each_other():
    bows = [finishing("31", "05T10:00"), finishing("32", "05T09:58"), finishing("33", "05T09:59")]
    found = said(bows, "05T12:00")
    assert list(found) == ["32", "33", "31"]
    assert "32 gets its coat at that hour: this one from Tue 5 May 2026, 15:58." in found["33"][1]
    assert "32 gets its coat at that hour: this one from Tue 5 May 2026, 16:58." in found["31"][1]


def test_a_coat_that_gives_way_past_its_window_is_told():
    bows = [finishing("31", "05T09:01"), finishing("32", "05T09:00")]
    bows[0].write("shop", closed="2026-05-05:9:10;2026-05-06:9:11")
    bows[1].write("shop", closed="2026-05-05:9:10;2026-05-06:9:11")
    assert said(bows, "06T08:00")["31"] == (
        "watch", "Build coat 2 from Wed 6 May 2026, 09:00; its window closes on Wed 6 May 2026, 10:01. 32 "
        "gets its coat at that hour: this one from Wed 6 May 2026, 10:00.")
    assert "after its window. Dull the film first." in said(
        [finishing("33", "05T08:30"), finishing("34", "05T08:00")], "06T08:45")["33"][1]


@pytest.mark.parametrize(("at", "level", "words"), [
    # its window closes on 6 May at 11:00
    ("06T11:00", "watch", "Build coat 2 from Wed 6 May 2026, 11:00; its window closes on Wed 6 May 2026, "
     "11:00. Read the air before it."),
    ("06T11:01", "watch", "Build coat 2 from Wed 6 May 2026, 11:01; its window has closed by then, on Wed 6 "
     "May 2026, 11:00: dull the film first. Read the air before it."),
])
def test_a_window_that_was_missed_asks_for_a_dull_film(at, level, words):
    assert said([finishing("31", "05T10:00")], at)["31"] == (level, words)
    closed = finishing("31", "05T10:00")
    closed.write("shop", closed="2026-05-05:0:0;2026-05-06:0:0")
    assert said([closed], "05T12:00")["31"] == (
        "watch", "Build coat 2 from Thu 7 May 2026, 09:00; its window has closed by then, on Wed 6 May 2026, "
        "11:00: dull the film first.")


def test_a_bow_that_has_left_says_nothing():
    bench = finishing("31", "05T10:00")
    bench.write("handover", end="done")
    assert said([bench], "05T12:00") == {}


# Dust ------------------------------------------------------------------------------


def test_nobody_sands_beside_a_wet_film():
    bows = [sanding(), finishing("32", "05T10:00")]
    assert said(bows, "05T14:59")["40"] == (
        "watch", "No sanding now: 32 is wet until Tue 5 May 2026, 15:00, and dust sticks to it.")
    assert "40" not in said(bows, "05T15:00")


def test_sanding_ends_in_time_for_the_room_to_clear():
    bows = [sanding(**ROOM), finishing("32", "05T10:00")]
    bows[1].write("shop", closed="2026-05-05:9:12")  # the next coat goes on at nine the day after
    assert said(bows, "05T16:00")["40"] == (
        "watch", "Sand no later than Wed 6 May 2026, 08:07: 32 gets a coat at Wed 6 May 2026, 09:00.")
    assert said(bows, "06T08:08")["40"] == (
        "watch", "No sanding now: 32 gets a coat at Wed 6 May 2026, 09:00, and the room does not clear by "
        "then.")


def test_a_coat_waits_for_the_dust_of_another_bow():
    dusty, wet = sanding(**ROOM), finishing("32", "05T10:00")
    dusty.write("strokes", lower_belly="12").at = "2026-05-05T14:30+02:00"
    assert said([dusty, wet], "05T14:40")["32"] == (
        "watch", "Build coat 2 from Tue 5 May 2026, 15:00; its window closes on Wed 6 May 2026, 11:00. Dust "
        "of 40 hangs in the room until Tue 5 May 2026, 15:22: no coat before. Read the air before it.")
    assert "Dust" not in said([dusty, wet], "05T15:23")["32"][1]
    assert "Dust" not in said([dusty, wet], "05T14:29")["32"][1]  # the strokes are still to come


@pytest.mark.parametrize(("room", "known"), [
    ({}, False), ({"flow": "600 cfm"}, False), (ROOM, True), ({"changes": "15.87 per hour"}, True)])
def test_a_room_of_which_nothing_is_known_is_asked_for(room, known):
    dusty, wet = sanding(**room), finishing("32", "05T10:00")
    dusty.write("strokes", lower_belly="12").at = "2026-05-05T14:30+02:00"
    found = said([dusty, wet], "05T14:40")["32"][1]
    assert ("write down the room and its fan" in found) is not known
    assert ("until Tue 5 May 2026, 15:22" in found) is known


def test_a_bow_whose_film_is_to_be_dulled_waits_beside_a_wet_one():
    late, wet = finishing("31", "01T10:00"), finishing("32", "05T10:00")
    level, words = said([late, wet], "05T12:00")["31"]
    assert level == "watch"
    assert words.endswith("No sanding now: 32 is wet until Tue 5 May 2026, 15:00, and dust sticks to it.")


def test_the_last_coat_of_all_is_wet_as_long_as_a_coat_could_not_go_on():
    done = Bench()
    done.write("bow", tag="32")
    done.write("product", family="one-part-urethane", recoat_from="4 h", recoat_to="24 h")
    coat(done, "05T10:00", role="build")
    assert "32 is wet until Tue 5 May 2026, 15:00" in said([sanding(), done], "05T14:59")["40"][1]
    assert said([sanding(), done], "05T15:00") == {}
    done.write("product", least_temperature="78 °F")  # the coat was laid at 77 °F: it does not dry
    assert "32 is wet until" in said([sanding(), done], "09T15:00")["40"][1]


# The air ---------------------------------------------------------------------------


@pytest.mark.parametrize(("read", "level", "words"), [
    ({"temperature": "55 °F", "humidity": "50 %"}, "ok", "Air: go."),
    ({"temperature": "54.9 °F", "humidity": "50 %"}, "stop",
     "Air: wait. 54.9 °F is colder than the 55.0 °F that one-part urethane needs."),
    ({"temperature": "26 C", "humidity": "85 %", "surface_temperature": "30 C"}, "ok", "Air: go."),
    ({"temperature": "26 C", "humidity": "86 %", "surface_temperature": "30 C"}, "stop",
     "Air: wait. 86 % is damper than 85 %."),
    # at 20 °C and 100 x 0.8 % the dew point is 16.4 °C by the tables of psychrometry: 3 and 2.78 °C above it
    ({"temperature": "20 C", "humidity": "80 %", "surface_temperature": "19.5 C"}, "ok", "Air: go."),
    ({"temperature": "20 C", "humidity": "80 %", "surface_temperature": "19.3 C"}, "watch",
     "Air: at its limit. The work is 5.1 °F above the dew point."),
    ({"temperature": "20 C", "humidity": "80 %", "surface_temperature": "19.1 C"}, "stop",
     "Air: wait. The work is only 4.8 °F above the dew point."),
    ({"temperature": "70 °F"}, "watch", "Read the air before it: warmth and humidity."),
])
def test_the_air_of_the_shop_is_held_against_each_product(read, level, words):
    bows = [finishing("31", "05T10:00"), sanding()]
    bows[1].write("air", **read).at = "2026-05-05T14:50+02:00"  # read at one bow, good for all
    found = said(bows, "05T15:00")["31"]
    assert found[0] == level
    assert found[1].endswith(words)


@pytest.mark.parametrize(("read", "good"), [("14:30", True), ("14:29", False), ("15:01", False)])
def test_a_reading_of_the_air_is_good_for_half_an_hour(read, good):
    bench = finishing("31", "05T10:00")
    bench.write("air", temperature="70 °F", humidity="50 %").at = f"2026-05-05T{read}+02:00"
    assert said([bench], "05T15:00")["31"][1].endswith("Air: go." if good else "Read the air before it.")


@pytest.mark.parametrize(("at", "asks"), [("14:29", False), ("14:30", True)])
def test_the_air_is_asked_for_half_an_hour_before_a_coat(at, asks):
    found = said([finishing("31", "05T10:00")], "05T" + at)["31"][1]
    assert ("Read the air" in found) is asks
