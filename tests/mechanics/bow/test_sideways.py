"""A limb moved sideways: strips that buckle, full equations of a rod in space, and symmetry."""

import functools
import math

import numpy as np
import pytest
from scipy.integrate import simpson, solve_ivp
from scipy.optimize import brentq, fsolve

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.sideways import (
    Across,
    Fault,
    Standing,
    firmness,
    joined,
    marches,
    pair_firmness,
    sideways,
    standing,
)
from tests.sentences import whole

STATIONS = 81


def straight(length, tension, string_angle):
    """Return a straight strip that does not bend in its plane, pulled at its end."""
    along = [length * i / (STATIONS - 1) for i in range(STATIONS)]
    zeros = [0.0] * STATIONS
    moment = [tension * (length - s) * math.sin(string_angle) for s in along]
    return Standing(length, zeros, along, zeros, zeros, moment, zeros, tension, string_angle)


def strip(bending, torsion):
    return Across([bending] * STATIONS, [torsion] * STATIONS)


def even(bend=0.0, twist=0.0, shift=0.0):
    return Fault(*[[each] * STATIONS for each in (bend, twist, shift)])


def answer(limb, across, fault, groove, string_length):
    return sideways(marches(limb, across, (fault,)), 0, groove, string_length)


def buckling_load(length, bending, torsion, string_angle, string_length, most):
    def firm(load):
        return firmness(marches(straight(length, load, string_angle), strip(bending, torsion)), string_length)

    return brentq(firm, 1e-6, most, xtol=1e-12)


@pytest.mark.parametrize(("length", "bending", "torsion"), [(1.0, 1.0, 1.0), (0.7, 30.0, 2.0)])
def test_a_strip_loaded_across_its_end_buckles_where_prandtl_and_michell_say(length, bending, torsion):
    """P L^2 = 4.013 sqrt(E I G J): prandtl-michell-1899, from memory."""
    usual = math.sqrt(bending * torsion) / length**2
    load = buckling_load(length, bending, torsion, math.pi / 2, math.inf, 6.0 * usual)
    assert load / usual == pytest.approx(4.013, abs=5e-4)


def test_a_strip_pushed_along_buckles_as_eulers_column():
    """pi^2 E I / (4 L^2) for a load that keeps its direction: Euler, from memory."""
    load = buckling_load(0.8, 5.0, 1.0, 0.0, math.inf, 30.0)
    assert load == pytest.approx(math.pi**2 * 5.0 / (4.0 * 0.8**2), rel=1e-5)


def test_a_strip_pulled_by_a_string_to_its_foot_stands_four_times_as_much():
    """pi^2 E I / L^2 for a load that always passes through the foot: Timoshenko and Gere, from memory."""
    load = buckling_load(0.8, 5.0, 1.0, 0.0, 0.8, 120.0)
    assert load == pytest.approx(math.pi**2 * 5.0 / 0.8**2, rel=1e-5)


# The full equations, as an independent program ------------------------------------------------

LENGTH, FLAT, EDGE, TORSION, PULL = 0.5, 10.0, 300.0, 6.0, 25.0
REST_ANGLE, GROOVE = -0.8, 0.0005  # the limb curls back by this from foot to tip


def in_space(pull_end, full_twist, tilt, shift):
    """Return states of a rod in space whose end is held by a string to a point in front of its foot.

    State: place, and the three directors z, n and t; unknown is the place of the string's end. tilt: the
    stiffness that couples both bendings. shift: of the elastic middle along z, from the line that is marched.
    """
    anchor = np.array([0.2, -0.1, 0.0])
    rest_curvature = REST_ANGLE / LENGTH
    yields = np.linalg.inv(np.array([[FLAT, tilt], [tilt, EDGE]]))

    def slopes(_, state):
        place = state[:3]
        side, front, along = state[3:6], state[6:9], state[9:12]
        string = anchor - pull_end
        force = PULL * string / np.linalg.norm(string)
        moment = np.cross(pull_end - place - shift * side, force)
        bends = yields @ np.array([moment @ side, moment @ front])
        turn = (bends[0] - rest_curvature) * side + bends[1] * front + (
            moment @ along / TORSION + full_twist) * along
        return np.concatenate([along, np.cross(turn, side), np.cross(turn, front), np.cross(turn, along)])

    start = np.array([0, 0, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0], float)
    return solve_ivp(slopes, (0, LENGTH), start, method="DOP853", rtol=1e-9, atol=1e-11,
                     t_eval=np.linspace(0, LENGTH, STATIONS)).y


def settled(full_twist=0.0, groove=0.0, tilt=0.0, shift=0.0):
    def lack(pull_end):
        tip = in_space(pull_end, full_twist, tilt, shift)[:, -1]
        return tip[:3] + groove * tip[3:6] - pull_end

    guess = in_space(np.array([0.05, 0.4, 0.0]), 0.0, 0.0, 0.0)[:3, -1]
    end = fsolve(lack, guess, xtol=1e-10)
    assert np.abs(lack(end)).max() < 1e-9
    return end, in_space(end, full_twist, tilt, shift)


@functools.lru_cache
def as_standing():
    """Return the rod of the full equations, straight in its plane, as the module wants it."""
    end, states = settled()
    string = np.array([0.2, -0.1, 0.0]) - end
    string_length = np.linalg.norm(string)
    unit = -string / string_length  # (-sin alpha, cos alpha)
    angle = np.unwrap(np.arctan2(states[9], states[10]))
    ahead, above = end[0] - states[0], end[1] - states[1]
    string_angle = math.atan2(-unit[0], unit[1])
    moment = PULL * (ahead * math.cos(string_angle) + above * math.sin(string_angle))
    bending = moment / FLAT
    return Standing(LENGTH, list(states[0]), list(states[1]), list(angle),
                    list(bending + REST_ANGLE / LENGTH), list(moment), list(bending), PULL,
                    string_angle), string_length


FAULTS = {
    "twist": {"full_twist": 0.02},
    "groove": {"groove": GROOVE},
    "twist and groove": {"full_twist": -0.02, "groove": GROOVE},
    "tilted axes": {"tilt": 0.2},
    "shifted middle": {"shift": 0.0005},
}


@pytest.mark.parametrize("fault", FAULTS.values(), ids=FAULTS)
def test_small_faults_move_a_curved_limb_as_the_full_equations_say(fault):
    """Axes tilted by a stiffness a between both bendings bend the limb sideways by a / A of its bending."""
    limb, string_length = as_standing()
    bend = [fault.get("tilt", 0.0) / EDGE * each for each in limb.bending]
    given = Fault(bend, [fault.get("full_twist", 0.0)] * STATIONS, [fault.get("shift", 0.0)] * STATIONS)
    small = answer(limb, strip(EDGE, TORSION), given, fault.get("groove", 0.0), string_length)
    end, states = settled(**fault)
    assert small.string_end == pytest.approx(end[2], rel=3e-3)
    assert small.states.place == pytest.approx(list(states[2][::2]), abs=3e-3 * abs(states[2]).max())


@pytest.mark.parametrize(("fault", "agreed"), [
    ({"groove": 0.04}, 2e-4), ({"full_twist": 0.2}, 1e-3), ({"full_twist": 0.4}, 3e-3),
])
def test_small_sideways_movement_still_holds_where_a_limb_is_twisted_by_ten_degrees(fault, agreed):
    """The limit of the linear equations: 0.2 % at 10 degrees of twist, far beyond what a bench accepts."""
    limb, string_length = as_standing()
    small = answer(limb, strip(EDGE, TORSION), even(0.0, fault.get("full_twist", 0.0)),
                   fault.get("groove", 0.0), string_length)
    end, _ = settled(**fault)
    assert small.string_end == pytest.approx(end[2], rel=agreed)


def pull_aside(limb, given):
    """Return the force that the groove puts on the string across the limb's own tip, toward its right."""
    phi = limb.angle[-1] + limb.string_angle
    return -given.force - limb.tension * (
        given.states.turn[-1] * math.cos(phi) + given.states.twist[-1] * math.sin(phi))


def energy(groove):
    """Return the energy in the rod of the full equations and in a pull that is the same all along."""
    end, states = settled(groove=groove)
    string = np.array([0.2, -0.1, 0.0]) - end
    force = PULL * string / np.linalg.norm(string)
    density = []
    for state in states.T:
        moment = np.cross(end - state[:3], force)
        side, front, along = (moment @ state[i:i + 3] for i in (3, 6, 9))
        density.append(side**2 / FLAT + front**2 / EDGE + along**2 / TORSION)
    return 0.5 * simpson(density, dx=LENGTH / (STATIONS - 1)) + PULL * np.linalg.norm(string)


def test_the_work_done_on_a_groove_is_the_energy_that_the_full_equations_find():
    """Energy: half of force times way, to the groove's square."""
    limb, string_length = as_standing()
    groove = 0.004
    given = answer(limb, strip(EDGE, TORSION), even(), groove, string_length)
    work = 0.5 * pull_aside(limb, given) * groove
    assert work == pytest.approx(energy(groove) - energy(0.0), rel=1e-4)


def test_left_and_right_swap_exactly():
    limb, string_length = as_standing()
    left = answer(limb, strip(EDGE, TORSION), even(0.03, 0.1, 0.001), GROOVE, string_length)
    right = answer(limb, strip(EDGE, TORSION), even(-0.03, -0.1, -0.001), -GROOVE, string_length)
    assert [-each for each in right.states.place] == left.states.place
    assert right.force == -left.force


def test_a_limb_without_faults_stays_in_its_plane():
    limb, string_length = as_standing()
    still = sideways(marches(limb, strip(EDGE, TORSION)), None, 0.0, string_length)
    assert still.states.place == [0.0] * (STATIONS // 2 + 1)
    assert still.string_end == 0.0


def test_a_strip_twisted_at_rest_in_a_curve_lies_on_a_helix():
    """A rod of one curvature and one twist, unstrung, is a helix: its climb is known in closed form."""
    curvature, twist, length = 1.2, 0.02, 0.5
    along = [length * i / (STATIONS - 1) for i in range(STATIONS)]
    flat = [0.0] * STATIONS
    limb = Standing(length, [(1 - math.cos(curvature * s)) / curvature for s in along],
                    [math.sin(curvature * s) / curvature for s in along], [curvature * s for s in along],
                    [curvature] * STATIONS, flat, flat, 1e-9, 0.0)
    place = marches(limb, strip(1.0, 1.0), (even(0.0, twist),)).faults[0].place[-1]
    whole = math.sqrt(curvature**2 + twist**2)
    turn = whole * length  # side director z turns about the axis of the helix
    climb = curvature * twist * (length - math.sin(turn) / whole) / whole**2
    assert abs(place) == pytest.approx(climb, rel=2e-4)


# Both limbs, joined by their string -------------------------------------------------------------


@functools.lru_cache
def pair():
    """Return both limbs of a bow, alike, as they stand braced, and the string from tip to tip."""
    angles = [-0.1 - 0.5 * (i / 20) ** 3 for i in range(21)]
    limb = Limb(0.55, (0.01, 0.22), angles, [22.0 - 14.0 * i / 20 for i in range(21)])
    braced = Bow(limb, limb, string_stiffness=25000.0).brace(0.2)
    stand = [standing(shape, mirrored, braced.tension, turn * braced.tilt)
             for shape, mirrored, turn in ((braced.upper, False, 1.0), (braced.lower, True, -1.0))]
    fault = even(0.01, 0.02, 0.0003)
    return [marches(each, strip(400.0, 6.0), (fault,)) for each in stand], stand[0].y[-1] + stand[1].y[-1]


def test_limbs_with_the_same_fault_move_their_string_without_turning_it():
    (upper, lower), string = pair()
    both = joined(upper, lower, (0, 0), (GROOVE, GROOVE), string)
    assert both[0].string_end == pytest.approx(both[1].string_end, rel=1e-9)
    assert both[0].string_end == pytest.approx(sideways(upper, 0, GROOVE, math.inf).string_end, rel=1e-9)


def test_limbs_with_opposite_faults_hold_their_string_in_the_middle():
    (upper, lower), string = pair()
    both = joined(upper, lower, (0, None), (0.0, 0.0), string)
    other = joined(upper, lower, (None, 0), (0.0, 0.0), string)
    crossed = [both[i].string_end - other[i].string_end for i in (0, 1)]
    assert crossed[0] == pytest.approx(-crossed[1], rel=1e-9)
    assert crossed[0] == pytest.approx(sideways(upper, 0, 0.0, string / 2).string_end, rel=1e-9)


def test_a_groove_moves_the_string_as_much_as_the_fault_it_undoes():
    """All is linear: the groove that undoes a fault is the tip's way under it, with the sign turned."""
    (upper, lower), string = pair()
    back = -upper.faults[0].place[-1]
    assert joined(upper, lower, (0, None), (back, 0.0), string)[0].string_end == pytest.approx(0.0, abs=1e-15)


def test_what_one_groove_does_to_the_other_it_suffers_from_it():
    """Reciprocity (Betti 1872, Maxwell 1864, from memory), on two limbs that differ in all."""
    angles = [-0.1 - 0.5 * (i / 20) ** 3 for i in range(21)]
    limbs = [Limb(0.55, (0.01, 0.22), angles, [root - fall * i / 20 for i in range(21)])
             for root, fall in ((22.0, 14.0), (25.0, 17.0))]
    braced = Bow(*limbs, string_stiffness=25000.0).brace(0.2)
    stands = [standing(shape, mirrored, braced.tension, turn * braced.tilt)
              for shape, mirrored, turn in ((braced.upper, False, 1.0), (braced.lower, True, -1.0))]
    upper, lower = [marches(stand, strip(across, turned))
                    for stand, across, turned in zip(stands, (400.0, 300.0), (6.0, 8.0), strict=True)]
    string = math.dist((braced.upper.x[-1], braced.upper.y[-1]), (braced.lower.x[-1], braced.lower.y[-1]))
    there = pull_aside(stands[1], joined(upper, lower, (None, None), (1.0, 0.0), string)[1])
    back = pull_aside(stands[0], joined(upper, lower, (None, None), (0.0, 1.0), string)[0])
    assert there == pytest.approx(back, rel=1e-5)
    assert abs(there) > 10.0


def test_a_braced_limb_is_in_balance_in_its_plane_at_each_place():
    """The planar limit: moment is tension times lever arm, and curvature the rate of the angle."""
    angles = [-0.1 - 0.5 * (i / 20) ** 3 for i in range(21)]
    limb = Limb(0.55, (0.01, 0.22), angles, [22.0 - 14.0 * i / 20 for i in range(21)])
    braced = Bow(limb, limb, string_stiffness=25000.0).brace(0.2)
    stand = standing(braced.lower, True, braced.tension, -braced.tilt)
    step = stand.length / (len(stand.x) - 1)
    for k in range(1, len(stand.x) - 1):
        assert (stand.angle[k + 1] - stand.angle[k - 1]) / (2 * step) == pytest.approx(
            stand.curvature[k], abs=0.005)
        arm = ((stand.x[-1] - stand.x[k]) * math.cos(stand.string_angle)
               + (stand.y[-1] - stand.y[k]) * math.sin(stand.string_angle))
        assert stand.moment[k] == pytest.approx(stand.tension * arm, abs=2e-3)


def test_two_limbs_buckle_together_where_each_would_under_a_string_that_keeps_its_direction():
    (upper, lower), string = pair()
    of_both = pair_firmness(upper, lower, string)
    assert of_both > 0.0
    assert of_both <= firmness(upper, math.inf) * firmness(upper, string / 2) * (1 + 1e-9)


# Refused ---------------------------------------------------------------------------------------


def test_a_limb_past_buckling_is_refused():
    limb = marches(straight(1.0, 5.0, math.pi / 2), strip(1.0, 1.0))
    with pytest.raises(ValueError,
                       match=whole("the limb must stand sideways under its string; its firmness is -", "")):
        sideways(limb, None, 0.001, math.inf)
    with pytest.raises(ValueError,
                       match=whole("the limbs must stand sideways under their string; their firmness is ",
                                   "")):
        joined(limb, limb, (None, None), (0.001, 0.0), 2.0)


def test_a_limb_that_is_not_one_is_refused():
    with pytest.raises(ValueError, match=whole("limb rigidity must be positive, got 0.0 N m^2")):
        marches(straight(1.0, 1.0, 0.0), strip(1.0, 0.0))
    with pytest.raises(ValueError, match=whole("string_length must be positive, got 0.0 m")):
        firmness(marches(straight(1.0, 1.0, 0.0), strip(1.0, 1.0)), 0.0)
    few = [0.0, 1.0]
    with pytest.raises(ValueError, match=whole("a limb must have an odd number of places, 9 or more, got 2")):
        marches(Standing(1.0, few, few, few, few, few, few, 1.0, 0.0), Across(few, few))
