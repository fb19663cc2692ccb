"""The two-limb bow: what must hold whatever the bow is like."""

import math

import numpy as np
import pytest

from calc.mechanics.bow.bow import Bow, Limb
from tests.mechanics.bows import RECURVE_ANGLES, RECURVE_STIFFNESS, longbow, recurve
from tests.sentences import whole

DRAW = 0.667  # 26 1/4 in: 28 in less 1 3/4 in

BOWS = {
    "alike limbs": (longbow, {}, 0.17),
    "unequal limbs": (longbow, {"lower_factor": 1.04, "pivot": (0.005, -0.02)}, 0.17),
    "recurve": (recurve, {}, 0.2),
    "unequal recurve": (recurve, {"lower_factor": 1.03, "pivot": (-0.005, 0.02)}, 0.2),
    "stretching string": (recurve, {"lower_factor": 0.98, "string_stiffness": 25000.0}, 0.2),
}


def braced(name):
    make, options, height = BOWS[name]
    bow = make(**options)
    return bow, bow.brace(height)


def work(bow, start, end, pieces=24):
    """Return the integral of force over draw, by five-point Gauss rules on equal pieces."""
    places, weights = np.polynomial.legendre.leggauss(5)
    half = (end - start) / pieces / 2
    draws = [start + half * (2 * i + 1 + place) for i in range(pieces) for place in places]
    forces = [state.force for state in bow.curve(draws)]
    return sum(half * weight * force for weight, force in zip(np.tile(weights, pieces), forces))


ENERGY_AGREES = {None: 2e-6, 192: 2e-8}
"""With the usual steps and with fine ones, as the page on the model claims."""

FINER_STEPS, FINER_TILLER = 1e-5, 2e-6
"""What finer steps change of force and energy, relative, and of tiller [m], as that page claims."""


@pytest.mark.parametrize(("steps", "agreement"), ENERGY_AGREES.items())
@pytest.mark.parametrize("name", BOWS)
def test_work_of_the_draw_is_the_gain_of_strain_energy(name, steps, agreement):
    make, options, height = BOWS[name]
    bow = make(**options, steps=steps)
    at_rest = bow.brace(height)
    drawn = bow.draw(DRAW)
    assert work(bow, at_rest.distance, DRAW) == pytest.approx(drawn.stored_energy, rel=agreement)


@pytest.mark.parametrize("name", BOWS)
def test_finer_steps_change_little(name):
    make, options, height = BOWS[name]
    forces, tillers, energies = [], [], []
    for steps in (None, 48, 192):
        bow = make(**options, steps=steps)
        tillers.append(bow.brace(height).tiller(0.25).difference)
        drawn = bow.draw(DRAW)
        forces.append(drawn.force)
        energies.append(drawn.stored_energy)
    for finer in (1, 2):
        assert forces[0] == pytest.approx(forces[finer], rel=FINER_STEPS)
        assert energies[0] == pytest.approx(energies[finer], rel=FINER_STEPS)
        assert tillers[0] == pytest.approx(tillers[finer], abs=FINER_TILLER)


@pytest.mark.parametrize("name", [name for name in BOWS if name != "stretching string"])
@pytest.mark.parametrize("factor", [0.5, 0.83, 3.0])
def test_force_is_proportional_to_a_common_stiffness_factor(name, factor):
    bow, at_rest = braced(name)
    other = Bow(bow.upper.stiffened(factor), bow.lower.stiffened(factor), bow.pivot)
    also = other.brace(at_rest.height)
    assert also.tension == pytest.approx(factor * at_rest.tension, rel=1e-8)
    assert also.string_length == pytest.approx(at_rest.string_length, rel=1e-9)
    for distance in (0.35, 0.5, DRAW):
        assert other.draw(distance).force == pytest.approx(factor * bow.draw(distance).force, rel=1e-8)


@pytest.mark.parametrize("name", BOWS)
def test_all_lengths_scale_together(name):
    # Lengths times k at the same E I: angles stay, forces fall by k^2, energy by k.
    bow, at_rest = braced(name)
    k = 1.7
    limbs = [
        Limb(k * limb.length, (k * limb.base[0], k * limb.base[1]), limb.rest_angles, limb.stiffness)
        for limb in (bow.upper, bow.lower)
    ]
    yielding = None if bow.string_stiffness is None else bow.string_stiffness / k**2
    large = Bow(limbs[0], limbs[1], (k * bow.pivot[0], k * bow.pivot[1]), yielding)
    also = large.brace(k * at_rest.height)
    assert also.tilt == pytest.approx(at_rest.tilt, abs=1e-9)
    assert also.tension == pytest.approx(at_rest.tension / k**2, rel=1e-8)
    small_draw, large_draw = bow.draw(DRAW), large.draw(k * DRAW)
    assert large_draw.force == pytest.approx(small_draw.force / k**2, rel=1e-8)
    assert large_draw.stored_energy == pytest.approx(small_draw.stored_energy / k, rel=1e-7)


@pytest.mark.parametrize("name", BOWS)
def test_mirrored_limbs_mirror_tiller(name):
    bow, at_rest = braced(name)
    mirrored = Bow(bow.lower, bow.upper, (bow.pivot[0], -bow.pivot[1]), bow.string_stiffness)
    also = mirrored.brace(at_rest.height)
    assert also.tilt == pytest.approx(-at_rest.tilt, abs=1e-9)
    assert also.contact_upper == pytest.approx(at_rest.contact_lower)
    assert also.tiller(0.25).difference == pytest.approx(-at_rest.tiller(0.25).difference, abs=1e-9)
    assert also.tiller_at_fadeouts().difference == pytest.approx(
        -at_rest.tiller_at_fadeouts().difference, abs=1e-9
    )
    there, here = mirrored.draw(DRAW), bow.draw(DRAW)
    assert there.force == pytest.approx(here.force, rel=1e-8)
    assert there.angle == pytest.approx(-here.angle, abs=1e-9)
    assert there.lower.y == pytest.approx([-y for y in here.upper.y])


def test_alike_limbs_stay_alike():
    bow, at_rest = recurve(), None
    at_rest = bow.brace(0.2)
    drawn = bow.draw(DRAW)
    assert at_rest.tilt == pytest.approx(0.0, abs=1e-12)
    assert at_rest.tiller(0.25).difference == pytest.approx(0.0, abs=1e-12)
    assert drawn.angle == pytest.approx(0.0, abs=1e-12)
    assert drawn.tension_upper == pytest.approx(drawn.tension_lower)


def test_the_stiffer_limb_stands_closer():
    # Common practice: the limb with the smaller distance from string to belly is the stiffer one.
    at_rest = recurve(lower_factor=1.02).brace(0.2)
    for reading in (at_rest.tiller(0.25), at_rest.tiller_at_fadeouts()):
        assert reading.lower < reading.upper
        assert reading.difference == reading.upper - reading.lower > 0.0


@pytest.mark.parametrize("name", BOWS)
def test_draw_force_balances_the_string_and_passes_the_pivot(name):
    bow, _ = braced(name)
    for distance in (0.3, 0.5, DRAW):
        drawn = bow.draw(distance)
        ends = [(shape.x[-1], shape.y[-1]) for shape in (drawn.upper, drawn.lower)]
        x, y = drawn.nock
        away = [math.dist((x, y), end) for end in ends]
        pulls = [drawn.tension_upper, drawn.tension_lower]
        force = [
            sum(pull * (here - end[axis]) / far for pull, end, far in zip(pulls, ends, away))
            for axis, here in enumerate((x, y))
        ]
        if drawn.upper.departure == bow.upper.length and drawn.lower.departure == bow.lower.length:
            assert math.hypot(*force) == pytest.approx(drawn.force, rel=1e-4)
            across = force[0] * (y - bow.pivot[1]) - force[1] * (x - bow.pivot[0])
            assert across == pytest.approx(0.0, abs=1e-5 * drawn.force)
        assert math.dist((x, y), bow.pivot) == pytest.approx(distance)


@pytest.mark.parametrize("name", BOWS)
def test_the_string_keeps_its_length(name):
    bow, at_rest = braced(name)
    yielding = 0.0 if bow.string_stiffness is None else 1.0 / bow.string_stiffness
    for distance in (0.3, 0.5, DRAW):
        drawn = bow.draw(distance)
        for shape, tension, rest in (
            (drawn.upper, drawn.tension_upper, at_rest.upper_length),
            (drawn.lower, drawn.tension_lower, at_rest.lower_length),
        ):
            if shape.departure == shape.arc_length[-1]:
                free = math.dist(drawn.nock, (shape.x[-1], shape.y[-1]))
                assert free == pytest.approx(rest * (1 + tension * yielding), rel=1e-6)


def test_the_string_lifts_off_a_recurve_as_it_is_drawn():
    bow = recurve()
    at_rest = bow.brace(0.2)
    assert at_rest.contact_upper < 0.95 * bow.upper.length
    departures = [
        state.upper.departure for state in bow.curve([at_rest.distance + 0.01 * i for i in range(46)])
    ]
    assert departures == sorted(departures)
    assert departures[-1] == bow.upper.length


def test_a_touched_tip_keeps_its_rest_curvature():
    bow = recurve()
    shape = bow.brace(0.2) and bow.braced.upper
    after = [i for i, s in enumerate(shape.arc_length) if s > shape.departure]
    turned = [shape.angle[i] - bow.upper.rest_angle(shape.arc_length[i]) for i in after]
    assert turned == pytest.approx([turned[0]] * len(after))
    assert [shape.bending[i] for i in after] == [0.0] * len(after)


def test_curve_is_the_same_as_single_draws_and_as_its_steps():
    bow, at_rest = braced("unequal recurve")
    draws = [at_rest.distance + i * (DRAW - at_rest.distance) / 19 for i in range(20)]
    forces = [state.force for state in bow.curve(draws)]
    assert forces == pytest.approx([bow.draw(draw).force for draw in draws], rel=1e-8, abs=1e-6)
    assert forces == [state.force for state in bow.curve_steps(draws)]
    assert forces[0] == pytest.approx(0.0, abs=1e-6)


def test_a_curve_may_have_very_close_draws():
    bow, at_rest = braced("unequal limbs")
    close = at_rest.distance
    draws = [close, close, close + 1e-9, close + 1e-5, 0.4, 0.4, 0.4 + 1e-8, 0.4 + 2e-8, 0.5, DRAW]
    forces = [state.force for state in bow.curve(draws)]
    assert forces == pytest.approx([bow.draw(draw).force for draw in draws], rel=1e-6, abs=1e-5)


def test_a_start_nearby_leads_to_the_same_bow():
    bow, at_rest = braced("unequal recurve")
    drawn = bow.draw(DRAW)
    other = recurve(lower_factor=1.01, pivot=bow.pivot)
    alone = other.brace(0.2), other.draw(DRAW)
    led = other.brace(0.2, at_rest), other.draw(DRAW, drawn)
    assert led[0].tilt == pytest.approx(alone[0].tilt, abs=1e-9)
    assert led[1].force == pytest.approx(alone[1].force, rel=1e-8)


def test_tiller_is_read_square_to_the_string():
    # Worked out again from the shape: the point of the string, then the limb point abreast of it.
    at_rest = recurve(lower_factor=1.05, steps=480).brace(0.2)
    along, across = (-math.sin(at_rest.tilt), math.cos(at_rest.tilt)), math.cos(at_rest.tilt)
    foot = at_rest.upper_length - 0.3
    shape = at_rest.upper
    off = [
        ((0.2 - x) * along[0] - y * along[1], (0.2 - x) * across + y * along[0])
        for x, y in zip(shape.x, shape.y)
    ]
    distance = np.interp(foot, [-each[0] for each in off], [each[1] for each in off])
    assert at_rest.tiller(0.3).upper == pytest.approx(distance, abs=1e-6)


def test_a_lower_pivot_draws_the_nock_down():
    bow = longbow(pivot=(0.0, -0.03))
    bow.brace(0.17)
    assert bow.draw(DRAW).nock[1] < 0.0


LIMB = Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, RECURVE_STIFFNESS)


@pytest.mark.parametrize(
    ("height", "words"),
    [
        (-0.05,
         "brace height must put the string behind the pivot point, at 0 mm (0 in); it is -50 mm (-1 31/32 "
         "in)"),
        (math.nan, "brace height must be a finite length"),
        (math.inf, "brace height must be a finite length"),
        (-math.inf, "brace height must be a finite length"),
        (5.0,
         "no steady balance was found at a brace height of 5000 mm (196 27/32 in): the limbs cannot reach "
         "the string line, are too unequal, or are so reflexed for this riser that it tips over"),
    ],
)
def test_heights_that_cannot_be_braced(height, words):
    with pytest.raises(ValueError, match=whole(words)):
        Bow(LIMB, LIMB).brace(height)


def test_brace_in_front_of_a_fadeout():
    limb = Limb(0.62, (0.05, 0.24), RECURVE_ANGLES, RECURVE_STIFFNESS)
    with pytest.raises(ValueError, match=whole(
            "brace height must put the string behind the upper fadeout, at 50 mm (1 31/32 in); it is 40 "
            "mm (1 9/16 in)")):
        Bow(limb, LIMB).brace(0.04)


def test_a_limb_that_has_followed_the_string_hangs_slack():
    limb = Limb(0.62, (0.0, 0.24), (0.3, 0.3), (20.0, 20.0))
    with pytest.raises(ValueError, match=whole(
            "brace height must lie behind the unstrung lower limb, or the string hangs slack; 150 mm (5 "
            "29/32 in) does not")):
        Bow(LIMB, limb).brace(0.15)


def test_a_bow_that_would_tip_over_is_refused():
    # Short, much reflexed limbs on a long riser, braced low: tilt grows by itself.
    limb = Limb(0.42, (0.03, 0.31), (-0.12, -0.12, -0.12, -0.35, -0.75), (64.0, 50.0, 37.0, 23.0, 10.0))
    with pytest.raises(ValueError, match=whole(
            "no steady balance was found at a brace height of 120 mm (4 23/32 in): the limbs cannot reach "
            "the string line, are too unequal, or are so reflexed for this riser that it tips over")):
        Bow(limb, limb).brace(0.12)


def test_draws_that_cannot_be():
    bow = longbow()
    with pytest.raises(ValueError, match=whole("a bow must be braced before it is drawn")):
        bow.draw(0.5)
    bow.brace(0.17)
    with pytest.raises(ValueError, match=whole(
            "draw must be at least the distance of the braced string, 170 mm (6 11/16 in); it is 100 mm "
            "(3 15/16 in)")):
        bow.draw(0.1)
    with pytest.raises(ValueError, match=whole(
            "the bow cannot be drawn to 1500 mm (59 1/16 in): past 1405 mm (55 11/32 in) limbs and string "
            "find no balance")):
        bow.draw(1.5)
    with pytest.raises(ValueError, match=whole(
            "draw must be at least the distance of the braced string, 170 mm (6 11/16 in); it is nan m")):
        bow.draw(math.nan)
    with pytest.raises(ValueError, match=whole(
            "the distances of a draw curve must rise from each to the next")):
        bow.curve([0.5, 0.4])


def test_tiller_is_not_read_over_the_riser():
    at_rest = longbow().brace(0.17)
    with pytest.raises(ValueError, match=whole(
            "tiller must be read between the fadeout and the string's end, not over the riser")):
        at_rest.tiller(0.8)
    with pytest.raises(ValueError, match=whole("distance from the string's end must be positive, got 0.0 m")):
        at_rest.tiller(0.0)


def test_strings_and_pivots_that_cannot_be():
    with pytest.raises(ValueError, match=whole("string stiffness must be positive, got 0.0 N")):
        Bow(LIMB, LIMB, string_stiffness=0.0)
    with pytest.raises(ValueError, match=whole("the pivot point must have finite coordinates")):
        Bow(LIMB, LIMB, (math.inf, 0.0))


@pytest.mark.parametrize("drop", [0.03, -0.03])
def test_how_far_tiller_can_be_read_is_the_same_of_a_bow_turned_over(drop):
    bow = recurve(1.03, (0.0, drop), shorter=0.01)
    turned = Bow(bow.lower, bow.upper, (0.0, -drop))
    assert turned.brace(0.2).furthest_reading() == pytest.approx(bow.brace(0.2).furthest_reading(), rel=1e-9)


def test_tiller_can_be_read_as_far_as_the_fadeout_and_no_farther():
    bow = recurve(1.03, (0.0, 0.02), 25000.0)
    braced = bow.brace(0.2)
    furthest = braced.furthest_reading()
    assert braced.tiller(furthest - 1e-6).upper > 0
    with pytest.raises(ValueError, match=whole(
            "tiller must be read between the fadeout and the string's end, not over the riser")):
        braced.tiller(furthest + 1e-6)
    # there the nearer limb's distance is the one at its fadeout
    at_fadeouts = braced.tiller_at_fadeouts()
    there = braced.tiller(furthest - 1e-9)
    assert min(abs(there.upper - at_fadeouts.upper), abs(there.lower - at_fadeouts.lower)) < 1e-6


def test_where_the_string_lies_on_the_tip_there_is_no_distance():
    at_rest = recurve().brace(0.2)
    assert at_rest.contact_upper < 0.95 * 0.62
    tiller = at_rest.tiller(1e-4)
    assert (tiller.upper, tiller.lower, tiller.difference) == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("pivot", [(math.inf, 0.0), (-math.inf, 0.0), (0.0, math.inf), (0.0, -math.inf),
                                   (math.nan, 0.0), (0.0, math.nan)])
def test_a_pivot_that_is_no_point_is_refused(pivot):
    with pytest.raises(ValueError, match=whole("the pivot point must have finite coordinates")):
        Bow(LIMB, LIMB, pivot)
