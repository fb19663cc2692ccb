"""What stands in for readings nobody took. The taper is an assumption of ours; what is read always wins."""

import pytest

from calc.bows.unmeasured import lacking_checks, stood_in
from calc.outcome import say
from calc.quantities import INCH, POUND_FORCE

LENGTHS = 64 * INCH, 19 * INCH
HEIGHTS = 7.625 * INCH, 7.3125 * INCH
ROWS = tuple((at * INCH, wide * INCH, thick * INCH) for at, wide, thick in (
    (2, 1.625, 0.291), (7, 1.5625, 0.279), (13, 1.375, 0.263)))
READ = {
    "lengths": LENGTHS, "stations": (ROWS, ROWS), "glass": (0.043 * INCH, 0.042 * INCH), "core": "white-ash",
    "family": "straight", "weight": 50 * POUND_FORCE, "draw_length": 27 * INCH,
    "brace_height": 7 * INCH, "heights": HEIGHTS, "throat": 0.5 * INCH,
}


def said(stood):
    return [say(each.text, "imperial") for each in lacking_checks(True, stood)]


def test_what_was_read_stays_as_it_is():
    stood = stood_in(**READ)
    assert stood.stations == READ["stations"]
    assert stood.glass == READ["glass"]
    assert (stood.core, stood.family, stood.weight, stood.draw_length, stood.brace_height) == (
        "white-ash", "straight", 50 * POUND_FORCE, 27 * INCH, 7 * INCH)
    assert stood.missing == stood.variants == []
    assert said(stood) == []


def test_what_was_not_read_is_said_with_what_stands_for_it():
    stood = stood_in(**READ | {
        "stations": ((), ()), "glass": (None, None), "core": "", "family": "", "weight": None,
        "draw_length": None, "brace_height": None})
    assert said(stood) == [
        "Not read, so that something typical stands in: its family (a recurve); sections of both limbs (a "
        "typical taper); glass on both faces (0.040 in); the core (hard maple); draw weight (45.0 lb); the "
        "draw it is read at (28 in); brace height (7 31/32 in by the string above the fadeouts). Ranges are "
        "wider for it. Read them before anything comes off the limbs."]
    assert len(stood.variants) == 4
    assert stood.brace_height == pytest.approx(sum(HEIGHTS) / 2 + 0.5 * INCH, rel=1e-12)
    assert not stood.glass_read


def test_without_a_throat_the_familys_tells_the_brace_height():
    stood = stood_in(**READ | {"family": "recurve", "brace_height": None, "throat": None})
    assert stood.brace_height == pytest.approx(sum(HEIGHTS) / 2 + 0.03 * 22.5 * INCH, rel=1e-12)


@pytest.mark.parametrize(("stations", "limb"), [((ROWS, ()), "lower"), (((), ROWS), "upper"),
                                                ((ROWS, ROWS[:2]), "lower")])
def test_one_limbs_sections_stand_for_the_others(stations, limb):
    stood = stood_in(**READ | {"stations": stations})
    assert stood.stations == (ROWS, ROWS)
    assert len(stood.variants) == 2
    assert said(stood)[0].startswith("Not read, so that something typical stands in: sections of the " + limb
                                     + " limb (as the other's). ")


def test_one_section_scales_the_typical_taper():
    stood = stood_in(**READ | {"stations": (ROWS[1:2], ())})
    upper, lower = stood.stations
    assert upper == lower
    at, width, thickness = upper[1]  # the typical place nearest to 7 in of 22.5
    assert at == pytest.approx(0.36 * 22.5 * INCH, rel=1e-12)
    assert (width, thickness) == pytest.approx(ROWS[1][1:], rel=1e-12)


def test_one_face_of_glass_stands_for_the_other():
    assert stood_in(**READ | {"glass": (0.05 * INCH, None)}).glass == (0.05 * INCH, 0.05 * INCH)
    assert stood_in(**READ | {"glass": (None, 0.03 * INCH)}).glass == (0.03 * INCH, 0.03 * INCH)


def test_glass_and_limbs_that_were_not_read_leave_room_for_a_core():
    thin = tuple((at, width, 0.07 * INCH) for at, width, _ in ROWS)
    stood = stood_in(**READ | {"stations": (thin, thin), "glass": (None, None)})
    assert stood.glass == pytest.approx((0.014 * INCH, 0.014 * INCH), rel=1e-12)
    stood = stood_in(**READ | {"stations": ((), ()), "glass": (0.12 * INCH, 0.12 * INCH)})
    assert min(row[2] for row in stood.stations[0]) == pytest.approx(0.36 * INCH, rel=1e-12)


def test_nothing_is_said_where_nothing_is_asked():
    assert lacking_checks(False, None) == ()
    assert [say(each.text, "imperial") for each in lacking_checks(True, None)] == [
        "Remedies are not worked out: they need the bow's length and its riser's. Twist and side stand as "
        "they were read."]
