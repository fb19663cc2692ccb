"""One limb under a string line: limits, symmetries, derivatives, contact."""

import math

import pytest

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from tests.sentences import whole

RECURVE_ANGLES = (0.1, 0.06, 0.0, -0.06, -0.14, -0.26, -0.45, -0.72, -1.05)
RECURVE_STIFFNESS = (26.0, 24.0, 21.5, 19.0, 16.5, 14.0, 11.5, 9.0, 7.0)


def recurve(steps=None):
    return Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, RECURVE_STIFFNESS, steps)


def test_without_tension_the_limb_is_as_at_rest():
    limb = recurve()
    shape = limb.shape(0.0, 0.0, (0.2, 0.0))
    assert shape.angle == pytest.approx([limb.rest_angle(s) for s in shape.arc_length])
    assert shape.bending == [0.0] * len(shape.bending)
    assert shape.strain_energy == 0.0


def test_small_bending_is_that_of_a_cantilever():
    # A force F across the tip: deflection F L^3 / (3 E I); the closed form of beam theory.
    length, rigidity, force = 0.5, 20.0, 0.01
    limb = Limb(length, (0.0, 0.0), (0.0, 0.0), (rigidity, rigidity))
    shape = limb.shape(force, math.pi / 2, (1.0, length))
    assert shape.x[-1] == pytest.approx(force * length**3 / (3 * rigidity), rel=1e-6)
    assert shape.strain_energy == pytest.approx(force**2 * length**3 / (6 * rigidity), rel=1e-6)


def test_a_constant_moment_bends_a_straight_limb_to_a_circle():
    # A far-off line: the gap is the same all along, so the moment is too.
    far, moment, rigidity, length = 1e7, 12.0, 20.0, 0.5
    limb = Limb(length, (0.0, 0.0), (0.0, 0.0), (rigidity, rigidity))
    shape = limb.shape(moment / far, 0.0, (far, 0.0))
    radius = rigidity / moment
    assert shape.x[-1] == pytest.approx(radius * (1 - math.cos(length / radius)), rel=1e-5)
    assert shape.y[-1] == pytest.approx(radius * math.sin(length / radius), rel=1e-5)


def test_arc_length_is_kept():
    shape = recurve().shape(215.0, 0.1, (0.25, 0.02))
    chords = sum(
        math.dist((shape.x[i], shape.y[i]), (shape.x[i + 1], shape.y[i + 1]))
        for i in range(len(shape.x) - 1)
    )
    assert chords == pytest.approx(0.62, rel=1e-3)
    assert chords < 0.62


def test_shape_and_pull_agree_where_the_string_ends():
    limb, point, angle = recurve(96), (0.2, 0.01), -0.02
    pull, shape = limb.pull(240.0, angle, point), limb.shape(240.0, angle, point)
    assert pull.departure == shape.departure < limb.length
    at = next(i for i, s in enumerate(shape.arc_length) if s > pull.departure)
    free = pull.length - (limb.length - pull.departure)
    along = (point[0] - shape.x[at]) * math.sin(angle) + (shape.y[at] - point[1]) * math.cos(angle)
    assert along - free == pytest.approx(shape.arc_length[at] - pull.departure, abs=1e-5)


@pytest.mark.parametrize(
    ("tension", "angle"), [(80.0, 0.0), (215.0, 0.05), (300.0, 0.4), (240.0, -0.05), (900.0, 0.8)]
)
def test_rates_match_differences(tension, angle):
    limb, at = recurve(96), [tension, angle, 0.2, 0.01]
    pull = limb.pull(at[0], at[1], (at[2], at[3]))
    for i, step in enumerate((1e-4 * tension, 1e-6, 1e-6, 1e-6)):
        ahead, behind = list(at), list(at)
        ahead[i] += step
        behind[i] -= step
        after = limb.pull(ahead[0], ahead[1], (ahead[2], ahead[3]))
        before = limb.pull(behind[0], behind[1], (behind[2], behind[3]))
        gap_scale = max(abs(rate) for rate in pull.gap_rates[1:])
        scale = gap_scale / tension if i == 0 else gap_scale
        assert pull.gap_rates[i] == pytest.approx((after.gap - before.gap) / (2 * step), abs=5e-3 * scale)
        assert pull.length_rates[i] == pytest.approx(
            (after.length - before.length) / (2 * step), abs=1e-2 * scale
        )


def test_error_falls_with_the_fourth_power_of_the_step():
    exact, coarse, fine = [
        Limb(1.0, (0.0, 0.0), (0.2, -0.1), (1.0, 0.5), steps).pull(2.0, 0.3, (0.6, 0.1))
        for steps in (384, 24, 48)
    ]
    assert abs(coarse.gap - exact.gap) / abs(fine.gap - exact.gap) > 14
    assert abs(coarse.length - exact.length) / abs(fine.length - exact.length) > 14


def test_error_in_contact_is_small_too():
    exact, usual = [recurve(steps).pull(240.0, 0.1, (0.2, 0.0)) for steps in (384, None)]
    assert exact.departure < 0.6
    assert usual.gap == pytest.approx(exact.gap, abs=2e-7)
    assert usual.length == pytest.approx(exact.length, abs=2e-7)


def test_gap_and_length_pass_smoothly_from_contact_to_free():
    limb, values = recurve(), []
    for k in range(400):
        pull = limb.pull(240.0, -0.2 + 0.001 * k, (0.2, 0.0))
        values.append((pull.gap, pull.length, pull.departure))
    assert values[0][2] == limb.length > values[-1][2]
    for column in (0, 1):
        bends = [
            values[i + 1][column] - 2 * values[i][column] + values[i - 1][column]
            for i in range(1, len(values) - 1)
        ]
        assert max(abs(bend) for bend in bends) < 5e-6


def test_a_hollow_belly_under_the_string_is_refused():
    angles = (0.2, 0.18, 0.15, 0.13, 0.02, -0.2, -0.7, -0.8, -0.7)
    limb = Limb(0.62, (-0.01, 0.24), angles, RECURVE_STIFFNESS)
    with pytest.raises(ValueError, match=whole(
            "the belly must not be hollow where the string lies on it: the tip turns back toward the "
            "string, which would span the hollow")):
        Bow(limb, limb).brace(0.17)
    with pytest.raises(ValueError, match=whole(
            "the belly must not be hollow where the string lies on it: the tip turns back toward the "
            "string, which would span the hollow")):
        limb.shape(200.0, 0.0, (0.17, 0.0))


def test_stiffness_by_station():
    limb = recurve()
    assert limb.stiffened(1.1).stiffness == pytest.approx([1.1 * k for k in RECURVE_STIFFNESS])
    factors = [1.0 - 0.01 * i for i in range(9)]
    assert limb.stiffened(factors).stiffness[-1] == pytest.approx(0.92 * 7.0)
    with pytest.raises(ValueError, match=whole("stiffness factors must be one per station, 9, got 2")):
        limb.stiffened([1.0, 1.0])


@pytest.mark.parametrize("stations", [9, 21])
def test_a_limb_made_like_another_is_the_one_made_anew(stations):
    """With one factor or one a station, on stations that lie on the steps or between them."""
    stiffness = tuple(26.0 - 0.9 * i for i in range(stations))
    limb = Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, stiffness)
    for factors in (1.3, [1.0 + 0.03 * i for i in range(stations)]):
        each = [factors] * stations if isinstance(factors, float) else factors
        anew = Limb(0.62, (-0.01, 0.24), RECURVE_ANGLES, [a * b for a, b in zip(stiffness, each)])
        found, wanted = [it.pull(180.0, 0.2, (0.3, 0.02)) for it in (limb.stiffened(factors), anew)]
        assert (found.gap, found.length, found.departure) == pytest.approx(
            (wanted.gap, wanted.length, wanted.departure), rel=1e-12)
        assert found.gap_rates + found.length_rates == pytest.approx(
            wanted.gap_rates + wanted.length_rates, rel=1e-10)
    with pytest.raises(ValueError, match=whole("stiffness factor must be positive, got 0.0")):
        limb.stiffened(0.0)


def test_the_gap_of_a_slack_string_does_not_ask_how_stiff_the_limb_is():
    limb = recurve()
    for height in (0.1, 0.2):
        gap = limb.pull(0.0, 0.0, (height, 0.0)).gap
        assert limb.slack_gap(height) == limb.stiffened(2.0).slack_gap(height) == gap
    assert limb.slack_gap(0.2) - limb.slack_gap(0.1) == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("length", "base", "angles", "stiffness", "words"),
    [
        (0.0, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), "limb length must be positive, got 0.0 m"),
        (math.nan, (0.0, 0.0), (0.0, 0.0), (1.0, 1.0), "limb length must be a finite number, got nan m"),
        (0.5, (0.0, 0.0), (0.0,), (1.0, 1.0),
         "a limb must have at least two stations of rest angle and of stiffness"),
        (0.5, (0.0, 0.0), (0.0, 0.0), (1.0,),
         "a limb must have at least two stations of rest angle and of stiffness"),
        (0.5, (0.0, 0.0), (0.0, 0.0), (1.0, 0.0), "limb stiffness must be positive, got 0.0 N m^2"),
        (0.5, (0.0, 0.0), (0.0, math.inf), (1.0, 1.0),
         "rest angles and base point of a limb must be finite numbers"),
        (0.5, (math.nan, 0.0), (0.0, 0.0), (1.0, 1.0),
         "rest angles and base point of a limb must be finite numbers"),
    ],
)
def test_impossible_limbs_are_refused(length, base, angles, stiffness, words):
    with pytest.raises(ValueError, match=whole(words)):
        Limb(length, base, angles, stiffness)
