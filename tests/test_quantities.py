"""Quantities as typed and as shown."""

import math
import random
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import quantities
from calc.quantities import (
    KINDS,
    LONGEST_TEXT,
    SYSTEMS,
    could_be_a_share,
    face_of,
    in_shown_unit,
    kind_of,
    parse,
    show,
    show_fraction,
    show_number,
    show_three_digits,
    shown_unit,
)
from tests.sentences import whole

INCH = 0.0254
SEVEN_AND_THREE_SIXTEENTHS = 7.1875 * INCH


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("7 3/16", "length", SEVEN_AND_THREE_SIXTEENTHS),
        ("7-3/16", "length", SEVEN_AND_THREE_SIXTEENTHS),
        ('7-3/16"', "length", SEVEN_AND_THREE_SIXTEENTHS),
        ("7 3 / 16 in.", "length", SEVEN_AND_THREE_SIXTEENTHS),
        ("7.1875 in", "length", SEVEN_AND_THREE_SIXTEENTHS),
        ("7\u00a03\u204416\u2033", "length", SEVEN_AND_THREE_SIXTEENTHS),  # as a word processor writes it
        ("7½ in", "length", 7.5 * INCH),
        ("½", "length", 0.5 * INCH),
        (".5", "length", 0.5 * INCH),
        ("5.", "length", 5 * INCH),
        ("182.6mm", "length", 0.1826),
        ("18,3 cm", "length", 0.183),
        ("0,045 in", "thickness", 0.045 * INCH),
        ("5' 8\"", "length", 68 * INCH),
        ("5 ft 8 1/2 in", "length", 68.5 * INCH),
        ("5 ft", "length", 60 * INCH),
        ("12 6", "room_length", 150 * INCH),  # feet where nothing else is typed, and inches behind them
        ("12 6 1/2 in", "room_length", 150.5 * INCH),
        ("-1/8 in", "length", -INCH / 8),
        ("\u22121/8", "length", -INCH / 8),
        ("45 mil", "thickness", 0.045 * INCH),
        ("48#", "force", 48 * 4.4482216152605),
        ("48 lb", "force", 48 * 4.4482216152605),
        ("213 N", "force", 213.0),
        ("21.8 kgf", "force", 21.8 * 9.80665),
        ("520 gr", "mass", 520 * 0.06479891e-3),
        ("33.7 g", "mass", 0.0337),
        ("68F", "temperature", 20.0),
        ("68 °F", "temperature", 20.0),
        ("20 C", "temperature", 20.0),
        ("-40 F", "temperature", -40.0),
        ("1.95 Mpsi", "modulus", 1.95e6 * 6894.757293168),
        ("60 %", "ratio", 0.6),
        ("1.5e-2 m", "length", 0.015),
    ],
)
def test_reads_what_people_type(text, kind, expected):
    assert parse(text, kind) == pytest.approx(expected, rel=1e-12)


TWO_NUMBERS = "could mean two numbers (1.250 or 1250); write it with a point or without the comma"


@pytest.mark.parametrize(
    ("text", "kind", "reason"),
    [
        ("", "length", "is not a length"),
        ("abc", "length", "is not a length"),
        ("NaN", "length", "is not a length"),
        ("inf", "force", "is not a weight or force"),
        ("\u0667 \u0663/\u0661\u0666", "length", "is not a length"),  # Arabic-Indic digits
        ("\uff17", "length", "is not a length"),  # full-width digit
        ("--3", "length", "is not a length"),
        ("1e999", "length", "is too large or too small a number"),
        ("7 3/0", "length", "has a fraction with 0 below the line"),
        ("7 3/", "length", "has nothing below the line of its fraction"),
        ("1,250", "length", TWO_NUMBERS),
        ("1,250.5", "length", TWO_NUMBERS),
        ("1.2.3", "length", "has more than one decimal mark"),
        ("7/lb", "length",
         "has a unit that does not fit a length (use in, ft, mm, cm, m, mil, µm)"),
        ("7 3/16 lb", "length",
         "has a unit that does not fit a length (use in, ft, mm, cm, m, mil, µm)"),
        ("48 in", "force",
         "has a unit that does not fit a weight or force (use lb, N, kN, kgf)"),
        ("7 3", "length", "has a second number without the line of a fraction"),
        ("7 3 in", "length", "has a second number without the line of a fraction"),
        ("7 in 4", "length", "has something behind its unit that cannot be read"),
        ("5 ft 8 lb", "length", "has something behind its unit that cannot be read"),
        ("9" * 31, "length", "has more than 30 digits"),
        ("7" * 10_000, "length", "is too long to be a length"),
        ("<script>alert(1)</script>", "length", "is not a length"),
    ],
)
def test_says_why_it_cannot_read(text, kind, reason):
    with pytest.raises(ValueError, match=whole(reason)):
        parse(text, kind)


def test_a_bare_number_takes_the_unit_that_is_shown():
    assert parse("8", "length", "imperial") == pytest.approx(8 * INCH)
    assert parse("8", "length", "metric") == pytest.approx(0.008)
    assert parse("20", "temperature", "metric") == 20


@pytest.mark.parametrize(
    ("value", "kind", "system", "text"),
    [
        (SEVEN_AND_THREE_SIXTEENTHS, "length", "imperial", "7 3/16 in"),
        (SEVEN_AND_THREE_SIXTEENTHS, "length", "metric", "182.6 mm"),
        (-INCH / 8, "length", "imperial", "-1/8 in"),
        (0.0, "length", "imperial", "0 in"),
        (0.006 * INCH, "thickness", "imperial", "0.006 in"),
        (48 * 4.4482216152605, "force", "imperial", "48.0 lb"),
        (20.0, "temperature", "imperial", "68 °F"),
        (0.175, "ratio", "imperial", "17.5 %"),
        (3.25, "angle", "metric", "3.3°"),
    ],
)
def test_shows_numbers_as_the_trade_reads_them(value, kind, system, text):
    assert show(value, kind, system) == text


@pytest.mark.parametrize(
    ("thirty_seconds", "text"),
    [
        (Fraction(1, 2), "0"),  # 1/64: midway, to the even graduation (NIST Handbook 44, 10.3)
        (Fraction(3, 2), "1/16"),  # 3/64: to 2/32
        (Fraction(5, 2), "1/16"),  # 5/64: to 2/32
        (Fraction(32), "1"),
        (Fraction(-48), "-1 1/2"),
        (Fraction(230), "7 3/16"),
    ],
)
def test_fractions_go_to_the_nearest_graduation(thirty_seconds, text):
    assert show_fraction(float(thirty_seconds / 32)) == text


@pytest.mark.parametrize(
    ("number", "decimals", "text"),
    [
        (0.125, 2, "0.13"), (2.5, 0, "3"), (-2.5, 0, "-3"), (2.675, 2, "2.68"), (1e6, 0, "1000000"),
        (0.1 + 0.2, 1, "0.3"), (0.05, 1, "0.1"), (-0.001, 2, "0.00"), (1e22, 0, "10000000000000000000000"),
        (123456789012345.6, 1, "123456789012000.0"), (5e-324, 3, "0.000"),
    ],
)
def test_decimals_are_exact_and_halves_go_away_from_zero(number, decimals, text):
    assert show_number(number, decimals) == text


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_what_is_not_finite_is_never_shown(number):
    with pytest.raises(ValueError, match=whole("a number to show must be finite")):
        show_number(number, 2)


@given(st.floats(-1e9, 1e9), st.integers(0, 4))
def test_shown_decimals_are_within_half_a_digit(number, decimals):
    text = show_number(number, decimals)
    assert abs(Fraction(text) - Fraction(number)) <= Fraction(1, 2 * 10**decimals) + abs(
        Fraction(number)) / 10**11


NEAR_HALVES = st.builds(lambda whole, off: (whole + 0.5) / 100 + off, st.integers(0, 10**6),
                        st.sampled_from((0.0, 1e-12, -1e-12, 1e-9, -1e-9, 1.1e-6, -0.9e-6)))


@given(st.one_of(st.floats(0, 1e9), NEAR_HALVES), st.integers(0, 4))
def test_shown_decimals_are_those_of_decimal_arithmetic(number, decimals):
    with localcontext(prec=12, rounding=ROUND_HALF_UP):
        twelve = +Decimal(number)
    with localcontext(prec=400, rounding=ROUND_HALF_UP):
        assert Decimal(show_number(number, decimals)) == twelve.quantize(Decimal(1).scaleb(-decimals))


@pytest.mark.parametrize(("number", "text"), [
    (15809, "15800"), (15849.6, "15800"), (15850, "15900"), (999.4, "999"), (999.6, "1000"), (9996, "10000"),
    (-2605.4, "-2610"), (17.2, "17"), (0.2, "0"), (-0.2, "0"), (1234567, "1230000"),
])
def test_three_digits_count_of_a_stress(number, text):
    assert show_three_digits(number) == text


@given(st.sampled_from(KINDS), st.sampled_from(SYSTEMS), st.floats(0.001, 5000))
def test_what_is_shown_can_be_typed_again(kind, system, number):
    unit = shown_unit(kind.id, system)
    value = unit.offset + number * unit.factor
    again = parse(show(value, kind.id, system), kind.id, system)
    style = face_of(kind, system).style
    half = {"fraction": 1 / 64, "fine fraction": 1 / 128, "three digits": max(0.5, 0.005 * number)}.get(style)
    half = 0.5 / 10**style if half is None else half
    assert abs(again - value) / unit.factor <= half + 1e-9 * number


@given(st.text(max_size=60), st.sampled_from(KINDS), st.sampled_from(SYSTEMS))
def test_any_text_is_read_or_refused_with_a_reason(text, kind, system):
    try:
        value, reason = parse(text, kind.id, system), None
    except ValueError as error:
        value, reason = 0.0, str(error).split()[0]
    assert math.isfinite(value)
    assert reason in (None, "is", "has", "could")
    assert reason or len(text.strip()) <= LONGEST_TEXT


@given(st.integers(0, 60), st.integers(0, 31))
def test_mixed_numbers_are_read_exactly(whole, top):
    expected = (whole + top / 32) * INCH
    for text in (f"{whole} {top}/32", f"{whole}-{top}/32", f"{whole} {top}/32 in", f'{whole}-{top}/32"'):
        assert parse(text, "length") == pytest.approx(expected, rel=1e-15, abs=1e-18)


def test_unknown_kinds_and_systems_are_errors():
    with pytest.raises(ValueError, match=whole("no kind of quantity is called colour")):
        kind_of("colour")
    with pytest.raises(ValueError, match=whole("the unit system must be imperial or metric, not nautical")):
        shown_unit("length", "nautical")
    assert in_shown_unit(0.0254, "length", "imperial") == 1


def test_the_nearest_float_is_read_from_any_number_of_digits():
    """Python's own `float` of the same text, which rounds exactly, is the yardstick."""
    pick = random.Random("digits")
    for _ in range(5000):
        digits = "".join(pick.choice("0123456789") for _ in range(pick.randint(1, 24)))
        text = digits[:pick.randint(1, len(digits))] + "." + digits + pick.choice(["", "e-7", "e5"])
        if len(text) <= 30:
            assert parse(text, "number") == float(text)
    for value in (1 / 3, 0.1 + 0.2, 1.5875e-05, 0.18256250000000001, 123456789.12345679):
        assert parse(repr(value), "number") == value


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_every_kind_can_be_typed_in_si(kind):
    [unit] = [each for each in kind.units if each.factor == 1.0 and each.offset == 0.0][:1]
    assert parse(f"0.12345678901234568 {unit.name}", kind.id) == 0.12345678901234568


@given(st.lists(st.tuples(st.sampled_from(("7", "7 3/16", "7 mm", "3/8", "0.25", "12 N")),
                          st.sampled_from(("length", "force", "thickness", "ratio")),
                          st.sampled_from(quantities.SYSTEMS)), max_size=40))
def test_what_is_remembered_is_what_is_read_afresh(asked):
    """Texts in any order, of any kind and system: as if none had been read before."""
    def read_all(fresh):
        found = []
        for text, kind, system in asked:
            if fresh:
                quantities._READ.clear()
            try:
                found.append(quantities.parse(text, kind, system))
            except ValueError as error:
                found.append(str(error))
        return found

    assert read_all(fresh=False) == read_all(fresh=True)


def test_no_more_is_remembered_than_a_form_or_two_hold():
    for number in range(3 * quantities.MOST_READ):
        assert quantities.parse(str(number), "number") == number
    assert len(quantities._READ) <= quantities.MOST_READ


@pytest.mark.parametrize(("text", "may"), [
    ("1/4", True), ("0.25", True), (".5", True), ("-1/4", True), ("5/4", True),
    ("0", False), ("0/4", False), ("1", False), ("25", False), ("1 1/2", False), ("1-1/2", False),
    ("0.25 %", False), ("1/4 in", False),
])
def test_a_bare_fraction_may_be_meant_as_a_share(text, may):
    assert could_be_a_share(text) is may
