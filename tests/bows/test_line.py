"""What remedies do to the string over both limbs, and what they cost: limits, symmetry, both sides of all."""

import math

import pytest

from calc.bows.line import (
    EDGE,
    GROOVE,
    RECKONED,
    REMEDIES,
    WEDGE,
    Line,
    Stretch,
    Torsion,
    Variant,
)
from calc.bows.measured import calibrated, measured_bow
from calc.bows.remedies import (
    MOST,
    READING,
    STEP,
    Bench,
    Limits,
    Seen,
    least_of,
    remedies,
    toward,
)
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.tuning import Setup, read
from calc.outcome import Refused
from calc.quantities import INCH, POUND_FORCE

UPPER = ((2, 1.625, 0.291), (7, 1.5625, 0.279), (13, 1.375, 0.263), (19, 0.8125, 0.247))
LOWER = ((2, 1.625, 0.296), (7, 1.5625, 0.283), (13, 1.375, 0.267), (19, 0.8125, 0.250))
HEIGHTS = 2.125 * INCH, 2.125 * INCH
LIMITS = Limits(INCH / 8, 2.0)
STRAIGHT = Seen((0.0, 7.5 * INCH), (0.0, 2.125 * INCH))


def bow_of(upper=UPPER, lower=LOWER, glass=0.043 * INCH):
    return measured_bow(
        bow_length=64 * INCH, riser_length=19 * INCH, brace_height=8.25 * INCH, throat=None, family="recurve",
        profile=(), glass_back=glass, glass_belly=glass, glass_modulus=39e9, core="white-ash",
        core_modulus=None, upper_stations=tuple(tuple(INCH * each for each in row) for row in upper),
        lower_stations=tuple(tuple(INCH * each for each in row) for row in lower), string_stiffness=25e3)


def calibrated_bow(bow, tiller=0.3125 * INCH):
    setup = Setup(8.25 * INCH, 26.25 * INCH, None)
    return setup, calibrated(bow.bow(), setup, 53 * POUND_FORCE, "tiller", tiller)


def stretch_of(face="belly", start=2.0, end=14.0):
    share = 1.0 if face == "belly" else 0.0
    return Stretch(Sanding(start * INCH, end * INCH, (end - start) * INCH / 4, share), face)


def line_of(bow, found, face="belly", heights=HEIGHTS, shear=4e9):
    return Line(bow, found.state, (found.upper_factor, found.lower_factor), Torsion(shear, 0.9e9),
                stretch_of(face), heights)


@pytest.fixture(scope="module")
def reckoned():
    bow = bow_of()
    setup, found = calibrated_bow(bow)
    return bow, setup, found, line_of(bow, found)


@pytest.fixture(scope="module")
def bench(reckoned):
    bow, setup, found, line = reckoned
    least = 0.6 * bow.build.back, 0.6 * bow.build.belly
    return Bench(bow, setup, found, stretch_of(), line, least, [])


def test_a_groove_moves_its_own_string_end_farther_than_itself(reckoned):
    """The string's pull on a turned limb adds to what the groove does, and never takes from it."""
    moves = reckoned[3].moves(RECKONED)
    for which in (0, 1):
        own, other = moves[(which, GROOVE)].fadeout[which], moves[(which, GROOVE)].fadeout[1 - which]
        assert own > other > 0.0
        # where nothing turned, the string would cross from one tip to the other in a straight line
        assert own > 0.66


def test_alike_limbs_do_alike():
    bow = bow_of(UPPER, UPPER)
    _, found = calibrated_bow(bow, 0.0)
    moves = line_of(bow, found).moves(RECKONED)
    for kind in REMEDIES:
        assert moves[(0, kind)].fadeout == pytest.approx(moves[(1, kind)].fadeout[::-1], rel=1e-6)
        assert moves[(0, kind)].tip == pytest.approx(moves[(1, kind)].tip[::-1], rel=1e-6)


def test_a_wedge_off_the_back_works_the_other_way_round(reckoned):
    bow, _, found, line = reckoned
    belly, back = line.moves(RECKONED), line_of(bow, found, "back").moves(RECKONED)
    for which in (0, 1):
        assert belly[(which, WEDGE)].fadeout[which] > 0.0 > back[(which, WEDGE)].fadeout[which]
        assert back[(which, GROOVE)].fadeout == belly[(which, GROOVE)].fadeout
        assert back[(which, EDGE)].fadeout == belly[(which, EDGE)].fadeout


def test_a_limb_stiffer_in_torsion_gives_less_to_groove_and_edge(reckoned):
    """A wedge bends the limb aside, which torsion hardly changes."""
    line = reckoned[3]
    soft, stiff = (line.moves(Variant(torsion=share)) for share in (0.8, 1.25))
    for kind in (GROOVE, EDGE):
        assert soft[(1, kind)].fadeout[1] > stiff[(1, kind)].fadeout[1] > 0.0
    assert soft[(1, WEDGE)].fadeout[1] == pytest.approx(stiff[(1, WEDGE)].fadeout[1], rel=0.01)


def test_a_limb_without_torsion_to_stand_is_told_so(reckoned):
    line = reckoned[3]
    least = line.least_torsion()
    assert 0.35 < least < 0.45
    assert line.firm(1.002 * least)
    assert not line.firm(0.998 * least)
    assert line.moves(Variant(torsion=0.1)) is None


def test_twice_the_shear_needs_half_the_share(reckoned):
    bow, _, found, line = reckoned
    twice = Line(bow, found.state, (found.upper_factor, found.lower_factor), Torsion(8e9, 1.8e9),
                 stretch_of(), HEIGHTS)
    assert twice.least_torsion() == pytest.approx(line.least_torsion() / 2, rel=2e-3)


def test_a_variant_keeps_the_limb_as_stiff_in_its_plane(reckoned):
    """A limb half as wide again at one stiffness is the stiffer across, and its wedge tells less."""
    line = reckoned[3]
    wide, narrow = (line.moves(Variant(width=share)) for share in (1.5, 0.7))
    moved = [each[(1, WEDGE)].fadeout[1] for each in (wide, line.moves(RECKONED), narrow)]
    assert moved == sorted(moved)
    assert moved[0] < 0.8 * moved[2]


def test_a_variant_never_fills_a_section_with_glass():
    section, build = bow_of().stations[0][3], bow_of().build
    found, thick = Variant(glass=9.0).of_section(section, build)
    assert found.thickness == section.thickness
    assert thick.back + thick.belly == pytest.approx(0.95 * section.thickness, rel=1e-12)
    _, same = Variant(glass=1.1).of_section(section, build)
    assert same.back == pytest.approx(1.1 * build.back, rel=1e-12)


def test_a_height_that_no_string_has_is_refused(reckoned):
    bow, _, found, _ = reckoned
    with pytest.raises(Refused) as refused:
        line_of(bow, found, heights=(2.0 * INCH, 12.0 * INCH))
    assert refused.value.problem.field == "lower_height_tip"
    assert refused.value.problem.message.startswith("On this bow the string stands at most ")


# Remedies -------------------------------------------------------------------------------------


def seen_of(lower_fadeout, lower_tip):
    return STRAIGHT, Seen((lower_fadeout * INCH, 7.3125 * INCH), (lower_tip * INCH, 2.125 * INCH))


def found_of(bench, lower_fadeout, lower_tip):
    return remedies(bench, 1, seen_of(lower_fadeout, lower_tip), LIMITS)


def test_each_amount_of_each_remedy_is_shown(bench):
    found = found_of(bench, -1 / 32, -3 / 32)
    assert [each.kind for each in found] == [GROOVE] * 6 + [WEDGE] * 4 + [EDGE] * 4
    steps = [each.amount / STEP[each.kind] for each in found]
    assert steps == pytest.approx([1, 2, 3, 4, 5, 6, 1, 2, 3, 4, 1, 2, 3, 4])
    assert {each.side for each in found} == {"right"}
    for each in found:
        assert each.offset.low < each.offset.middle < each.offset.high
        assert each.twist.low < each.twist.middle < each.twist.high
        assert each.offset.middle - each.offset.low >= READING
        assert (each.glass is None) == (each.kind != WEDGE)


def test_left_and_right_swap_exactly(bench):
    for right, left in zip(found_of(bench, -1 / 32, -3 / 32), found_of(bench, 1 / 32, 3 / 32), strict=True):
        assert (right.side, left.side) == ("right", "left")
        assert (right.kind, right.amount, right.within, right.glass) == (
            left.kind, left.amount, left.within, left.glass)
        assert right.offset.middle == -left.offset.middle
        assert right.offset.low == pytest.approx(-left.offset.high, abs=1e-15)
        assert right.offset.high == pytest.approx(-left.offset.low, abs=1e-15)
        assert right.twist.middle == -left.twist.middle
        assert (right.weight, right.tiller) == (left.weight, left.tiller)


def test_a_groove_costs_nothing_and_what_is_sanded_costs_weight_and_tiller(bench):
    for each in found_of(bench, -1 / 32, -3 / 32):
        if each.kind == GROOVE:
            assert each.weight == each.tiller == 0.0
        else:
            assert each.weight < 0.0
            assert each.tiller < 0.0  # the lower limb grows softer, and its distance larger


def test_a_wedge_costs_what_half_of_it_costs_off_the_whole_face(bench):
    """By the bow itself, sanded so, over small amounts: a wedge takes half its depth on the mean."""
    depth = 0.001 * INCH
    bow = bench.bow
    sanded = bow.bow((bench.calibration.upper_factor, bench.calibration.lower_factor),
                     bench.stretch.sanding, (0.0, 0.5 * depth))
    state = read(sanded, bench.setup, bench.calibration.state)
    cost = bench.cost(1, WEDGE)
    assert cost[0] * depth == pytest.approx(state.weight - bench.calibration.state.weight, rel=0.02)
    assert cost[1] * depth == pytest.approx(state.tiller - bench.calibration.state.tiller, rel=0.02)


def test_no_more_wedge_than_the_glass_has_room_for(bench):
    bow = bench.bow
    for left, steps in ((0.0405, 2), (0.0395, 3), (0.0380, 4), (0.030, 4), (0.043, 0), (0.050, 0)):
        tight = Bench(bow, bench.setup, bench.calibration, bench.stretch, line_of(bow, bench.calibration),
                      (0.0, left * INCH), [])
        assert tight.most(WEDGE) == steps
        assert tight.most(GROOVE) == MOST[GROOVE]
    none = [each.kind for each in remedies(tight, 1, seen_of(-1 / 32, -3 / 32), LIMITS)]
    assert WEDGE not in none


def test_the_least_is_the_first_that_is_within(bench):
    found = found_of(bench, -1 / 32, -3 / 32)
    least = least_of(found, GROOVE)
    assert least is found[0]
    assert abs(least.twist.middle) < 2.0
    assert least_of(found, WEDGE) is None  # 0.004 in of wedge leaves 2.1 degrees


def test_a_string_a_quarter_inch_off_is_within_no_remedy(bench):
    """An offset of 1/8 in more than is accepted cannot be sanded out within the glass."""
    found = found_of(bench, -1 / 4, -1 / 4)
    assert not any(each.within for each in found)


def test_what_mends_one_limb_may_not_put_the_other_out(bench):
    """The upper limb stands at the very edge of what is accepted, on the side to which it is moved."""
    lower = seen_of(-1 / 32, -3 / 32)[1]
    moved = bench.moves[(1, GROOVE)].fadeout[0] * STEP[GROOVE]
    height = 7.625 * INCH
    for room, within in ((1.001, True), (0.999, False)):
        tip = math.tan(math.atan2(INCH / 8, height)) * 2 * INCH
        upper = Seen((INCH / 8 - room * moved, height), (tip, 2 * INCH))
        found = remedies(bench, 1, (upper, lower), LIMITS)
        assert found[0].within is within


def test_the_string_goes_to_the_side_away_from_what_is_out_most():
    assert toward(Seen((0.01, 0.2), (0.0, 0.05)), LIMITS) == -1.0
    assert toward(Seen((-0.01, 0.2), (0.0, 0.05)), LIMITS) == 1.0
    twisted = Seen((0.001, 0.2), (-0.01, 0.05))  # within at the fadeout, the twist to the left
    assert toward(twisted, LIMITS) == 1.0


def test_ranges_grow_with_what_is_not_known(bench, reckoned):
    bow, setup, found, line = reckoned
    pairs = [(Variant(width=1.15), Variant(width=0.85))]
    wider = Bench(bow, setup, found, stretch_of(), line, bench_least(bow), pairs)
    both = [found_of(each, -1 / 32, -3 / 32) for each in (bench, wider)]
    for known, unknown in zip(*both, strict=True):
        assert unknown.offset.middle == known.offset.middle
        assert unknown.offset.high >= known.offset.high
        assert unknown.offset.low <= known.offset.low
    assert unknown.offset.high > known.offset.high


def bench_least(bow):
    return 0.6 * bow.build.back, 0.6 * bow.build.belly
