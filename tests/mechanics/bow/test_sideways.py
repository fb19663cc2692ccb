"""A limb moved sideways: strips that buckle, full equations of a rod in space, and symmetry."""

import functools
import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, fsolve

from calc.mechanics.bow.sideways import Across, Standing, firmness, sideways

STATIONS = 41


def straight(length, tension, string_angle):
    """Return a straight strip that does not bend in its plane, pulled at its end."""
    along = [length * i / (STATIONS - 1) for i in range(STATIONS)]
    zeros = [0.0] * STATIONS
    moment = [tension * (length - s) * math.sin(string_angle) for s in along]
    return Standing(length, zeros, along, zeros, moment, tension, string_angle)


def strip(bending, torsion, bend=0.0, twist=0.0):
    return Across(*[[each] * STATIONS for each in (bending, torsion, bend, twist)])


def buckling_load(length, bending, torsion, string_angle, string_length, most):
    def firm(load):
        return firmness(straight(length, load, string_angle), strip(bending, torsion), string_length)

    return brentq(firm, 1e-6, most, xtol=1e-12)


@pytest.mark.parametrize(("length", "bending", "torsion"), [(1.0, 1.0, 1.0), (0.7, 30.0, 2.0)])
def test_a_strip_loaded_across_its_end_buckles_where_prandtl_and_michell_say(length, bending, torsion):
    """P L^2 = 4.013 sqrt(E I G J): L. Prandtl, A. G. M. Michell, both 1899: from memory."""
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


def in_space(pull_end, full_twist):
    """Return states of a rod in space whose end is held by a string to a point in front of its foot.

    State: place, and the three directors z, n and t; unknown are place of the string's end.
    """
    anchor = np.array([0.2, -0.1, 0.0])
    rest_curvature = REST_ANGLE / LENGTH

    def slopes(_, state):
        place = state[:3]
        side, front, along = state[3:6], state[6:9], state[9:12]
        string = anchor - pull_end
        force = PULL * string / np.linalg.norm(string)
        moment = np.cross(pull_end - place, force)
        strain = np.array([moment @ side / FLAT - rest_curvature, moment @ front / EDGE,
                           moment @ along / TORSION + full_twist])
        turn = strain[0] * side + strain[1] * front + strain[2] * along
        return np.concatenate([along, np.cross(turn, side), np.cross(turn, front), np.cross(turn, along)])

    start = np.array([0, 0, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0], float)
    return solve_ivp(slopes, (0, LENGTH), start, method="DOP853", rtol=1e-9, atol=1e-11,
                     t_eval=np.linspace(0, LENGTH, STATIONS)).y


def settled(full_twist, groove):
    def lack(pull_end):
        tip = in_space(pull_end, full_twist)[:, -1]
        return tip[:3] + groove * tip[3:6] - pull_end

    guess = in_space(np.array([0.05, 0.4, 0.0]), 0.0)[:3, -1]
    end = fsolve(lack, guess, xtol=1e-10)
    assert np.abs(lack(end)).max() < 1e-9
    return end, in_space(end, full_twist)


@functools.lru_cache
def as_standing():
    """Return the rod of the full equations, straight in its plane, as the module wants it."""
    end, states = settled(0.0, 0.0)
    string = np.array([0.2, -0.1, 0.0]) - end
    string_length = np.linalg.norm(string)
    unit = -string / string_length  # (-sin alpha, cos alpha)
    angle = np.unwrap(np.arctan2(states[9], states[10]))
    ahead, above = end[0] - states[0], end[1] - states[1]
    string_angle = math.atan2(-unit[0], unit[1])
    moment = PULL * (ahead * math.cos(string_angle) + above * math.sin(string_angle))
    return Standing(LENGTH, list(states[0]), list(states[1]), list(angle), list(moment), PULL,
                    string_angle), string_length


@pytest.mark.parametrize(("full_twist", "groove"), [(0.02, 0.0), (0.0, GROOVE), (-0.02, GROOVE)])
def test_small_faults_move_a_curved_limb_as_the_full_equations_say(full_twist, groove):
    standing, string_length = as_standing()
    small = sideways(standing, strip(EDGE, TORSION, 0.0, full_twist), groove, string_length)
    end, states = settled(full_twist, groove)
    assert small.firmness > 0.1
    assert small.string_end == pytest.approx(end[2], rel=2e-3)
    assert small.place == pytest.approx(list(states[2]), abs=2e-3 * abs(states[2]).max())


def test_left_and_right_swap_exactly():
    standing, string_length = as_standing()
    left = sideways(standing, strip(EDGE, TORSION, 0.03, 0.1), GROOVE, string_length)
    right = sideways(standing, strip(EDGE, TORSION, -0.03, -0.1), -GROOVE, string_length)
    assert [-each for each in right.place] == left.place
    assert right.firmness == left.firmness


def test_a_limb_without_faults_stays_in_its_plane():
    standing, string_length = as_standing()
    answer = sideways(standing, strip(EDGE, TORSION), 0.0, string_length)
    assert answer.place == [0.0] * STATIONS
    assert answer.string_end == 0.0


def test_a_limb_past_buckling_is_refused():
    with pytest.raises(ValueError, match="must stand sideways"):
        sideways(straight(1.0, 5.0, math.pi / 2), strip(1.0, 1.0), 0.001, math.inf)


def test_a_limb_that_is_not_one_is_refused():
    with pytest.raises(ValueError, match="rigidity must be positive"):
        sideways(straight(1.0, 1.0, 0.0), strip(1.0, 0.0), 0.0, 1.0)
    with pytest.raises(ValueError, match="string_length must be positive"):
        sideways(straight(1.0, 1.0, 0.0), strip(1.0, 1.0), 0.0, 0.0)
    with pytest.raises(ValueError, match="at least 5 stations"):
        sideways(Standing(1.0, [0.0], [0.0], [0.0], [0.0], 1.0, 0.0), Across([1.0], [1.0], [0.0], [0.0]),
                 0.0, 1.0)
