"""What is said of remedies: the right one, its side and amount, and both sides of each threshold."""

from types import SimpleNamespace

import pytest

from calc.bows.line import EDGE, GROOVE, WEDGE
from calc.bows.remedies import Limits, Range, Remedy, Seen
from calc.bows.remedy_words import (
    STICKS_AGREE,
    buckling_check,
    chosen,
    remedy_check,
    remedy_tables,
    remedy_words,
    side_of,
    stick_checks,
)
from calc.outcome import OK, STOP, WATCH, say
from calc.quantities import INCH, POUND_FORCE

LIMITS = Limits(INCH / 8, 2.0)
BENCH = SimpleNamespace(stretch=SimpleNamespace(face="belly"), most=lambda _: 12)
STRAIGHT = Seen((0.0, 7.5 * INCH), (0.0, 2.125 * INCH))
ASIDE = Seen((0.2 * INCH, 7.5 * INCH), (0.0, 2.125 * INCH))


def remedy(kind, amount=0.02, side="left", *, which=1, offset=0.05, within=True, glass=None):
    cost = -0.5 * POUND_FORCE, INCH / 64
    return Remedy(which, kind, amount * INCH, side, Range(offset * INCH, -0.1 * INCH, 0.1 * INCH),
                  Range(0.5, 0.1, 0.9), cost, glass, within, [STRAIGHT, STRAIGHT])


@pytest.mark.parametrize(("kind", "side", "face", "said"), [
    (GROOVE, "right", "belly", "move the lower groove 0.020 in to the right"),
    (WEDGE, "left", "back",
     "take a wedge of 0.020 in off the back of the lower limb, deepest at its left edge"),
    (EDGE, "right", "belly", "take 0.020 in off the right edge of the lower limb"),
])
def test_a_remedy_is_told_as_something_to_do(kind, side, face, said):
    assert say(remedy_words(remedy(kind, side=side), face), "imperial") == said


def test_the_cheapest_kind_that_is_enough_is_chosen():
    short, groove, wedge, edge = (remedy(GROOVE, within=False), remedy(GROOVE), remedy(WEDGE), remedy(EDGE))
    assert chosen([short, edge, wedge, groove]) is groove
    assert chosen([short, edge, wedge]) is wedge
    assert chosen([short, edge]) is edge
    assert chosen([short]) is None


@pytest.mark.parametrize(("seen", "found", "level", "words"), [
    (STRAIGHT, [], OK, "The lower limb is within what is accepted, 1/8 in at the fadeout"),
    (ASIDE, [remedy(WEDGE, offset=-0.05)], WATCH,
     "the string is then 0.050 in to the left, and the twist is 0.5°; weight changes by -0.50 lb"),
    (ASIDE, [remedy(WEDGE, within=False)], STOP, "No single remedy brings the lower limb within 1/8 in"),
])
def test_a_limb_is_within_or_can_be_mended_or_neither(seen, found, level, words):
    told = remedy_check(1, seen, LIMITS, found, BENCH)
    assert (told.id, told.level) == ("lower-remedy", level)
    assert words in say(told.text, "imperial")


def test_of_each_remedy_all_amounts_are_listed_and_only_the_most_says_what_it_does_besides():
    found = [remedy(GROOVE), remedy(GROOVE, 0.04, within=False), remedy(GROOVE, 0.03, which=0),
             remedy(EDGE, glass=0.04 * INCH)]
    line, besides = remedy_tables(found)
    assert [(row[0], row[1], row[2] / INCH, row[-1]) for row in line.rows] == [
        ("lower", "groove to the left", pytest.approx(0.02), "yes"),
        ("lower", "groove to the left", pytest.approx(0.04), "no"),
        ("upper", "groove to the left", pytest.approx(0.03), "yes"),
        ("lower", "edge, off the left", pytest.approx(0.02), "yes")]
    assert [(row[0], row[2] / INCH) for row in besides.rows] == [
        ("lower", pytest.approx(0.04)), ("upper", pytest.approx(0.03)), ("lower", pytest.approx(0.02))]
    assert [row[-1] == "" for row in besides.rows] == [True, True, False]


def test_right_is_positive():
    assert (side_of(1e-6), side_of(-1e-6)) == ("right", "left")


@pytest.mark.parametrize(("over", "found"), [(-1e-6, []), (1e-6, ["lower-sticks"])])
@pytest.mark.parametrize("sign", [1.0, -1.0])
def test_sticks_that_say_otherwise_than_the_string_are_told(over, found, sign):
    seen = Seen((0.0, 7.5 * INCH), (0.1 * INCH, 2.125 * INCH))
    braced = seen.twist() + sign * (STICKS_AGREE + seen.doubt() + over)
    assert [each.id for each in stick_checks(1, seen, None, braced)] == found


@pytest.mark.parametrize(("over", "level"), [(-1e-6, OK), (1e-6, WATCH)])
@pytest.mark.parametrize("sign", [1.0, -1.0])
@pytest.mark.parametrize("is_read_braced", [True, False])
def test_a_limb_that_turns_under_load_is_told(over, level, sign, is_read_braced):
    doubt = STICKS_AGREE + (0.0 if is_read_braced else STRAIGHT.doubt())
    unstrung = STRAIGHT.twist() - sign * (doubt + over)
    braced = STRAIGHT.twist() if is_read_braced else None
    assert [(each.id, each.level) for each in stick_checks(0, STRAIGHT, unstrung, braced)] == [
        ("upper-turning", level)]


@pytest.mark.parametrize(("share", "level", "words"), [
    (0.1, OK, "even with"), (0.1009, OK, "even with"), (0.102, OK, "nearer to turning over"),
    (0.6, OK, "down to"), (0.601, WATCH, "down to"), (0.75, WATCH, "down to"), (0.751, STOP, "Do not draw"),
])
def test_the_less_torsion_holds_the_limbs_the_safer_they_are(share, level, words):
    told = buckling_check(share)
    assert (told.id, told.level) == ("buckling", level)
    assert words in say(told.text, "imperial")
