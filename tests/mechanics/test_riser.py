import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.mechanics import riser
from tests.sentences import whole

BOWS = st.tuples(st.floats(1.3, 1.9), st.floats(0.15, 0.3), st.floats(0.14, 0.22))
FORCES = st.floats(20, 600)
ANGLES = st.floats(0.17, 1.05)


def angle_of(bow, draw):
    length, part, brace = bow
    return riser.string_angle_at_draw(length, part * length, brace, draw)


@given(BOWS)
def test_at_brace_the_string_is_straight(bow):
    """Limit: drawn to the brace height the string runs along the bow."""
    assert angle_of(bow, bow[2] * (1 + 1e-9)) == pytest.approx(0, abs=1.7e-4)


@given(BOWS, st.floats(0.3, 0.6), st.floats(0.01, 0.05))
def test_a_longer_draw_opens_the_angle(bow, draw, more):
    assert angle_of(bow, draw + more) > angle_of(bow, draw)


@given(BOWS, st.floats(0.3, 0.6), st.floats(0.5, 2))
def test_only_the_shape_counts(bow, draw, scale):
    """Dimension check: all lengths scaled alike leave the angle."""
    length, part, brace = bow
    scaled = riser.string_angle_at_draw(length * scale, part * length * scale, brace * scale, draw * scale)
    assert scaled == pytest.approx(angle_of(bow, draw), rel=1e-6)


@given(FORCES, ANGLES)
def test_both_halves_balance_the_draw(force, angle):
    """Equilibrium at the nock: 2 T sin alpha = F."""
    tension = riser.string_tension(force, angle)
    assert 2 * tension * math.sin(angle) == pytest.approx(force, rel=1e-12)


@given(FORCES, ANGLES, st.floats(0.4, 0.8), st.floats(0, 0.25), st.floats(0, 0.05))
def test_moment_by_tension_and_lever_arm(force, angle, reach, height, behind):
    """Tension times the distance of the string's line from the section, by the cross product of vectors."""
    tension = riser.string_tension(force, angle)
    along = (-math.sin(angle), math.cos(angle))
    to_section = (-behind - reach, height)
    arm = abs(to_section[0] * along[1] - to_section[1] * along[0])
    assert abs(riser.bending_moment(force, angle, reach, height, behind)) == pytest.approx(
        tension * arm, rel=1e-9, abs=1e-9)


@given(FORCES, ANGLES, st.floats(0.4, 0.8))
def test_the_throat_carries_the_most(force, angle, reach):
    assert riser.bending_moment(force, angle, reach, 0.0, 0.0) > riser.bending_moment(
        force, angle, reach, 0.1, 0.0)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: riser.string_angle_at_draw(1.5, 1.6, 0.2, 0.7),
         "riser_length must be positive and less than 1.5 m, got 1.6 m"),
        (lambda: riser.string_angle_at_draw(1.5, 0.45, 0.2, 0.2),
         "brace_height must be positive and less than lever and draw, got 0.2 m"),
        (lambda: riser.string_angle_at_draw(1.5, 0.45, 0.5, 0.7),
         "brace_height must be positive and less than lever and draw, got 0.5 m"),
        (lambda: riser.string_angle_at_draw(1.5, 0.45, 0.2, 2.0),
         "draw_to_pivot must be less than limbs and string reach, got 2.0 m"),
        (lambda: riser.string_tension(0.0, 0.5), "force must be positive, got 0.0 N"),
        (lambda: riser.string_tension(200, 0.0),
         "angle must be more than 0 and at most a right angle, got 0.0 rad"),
        (lambda: riser.string_tension(200, 1.6),
         "angle must be more than 0 and at most a right angle, got 1.6 rad"),
        (lambda: riser.bending_moment(200, 0.5, 0.0, 0, 0), "draw_to_pivot must be positive, got 0.0 m"),
        (lambda: riser.bending_moment(200, 0.5, 0.7, -0.1, 0), "height must not be negative, got -0.1 m"),
        (lambda: riser.bending_moment(200, 0.5, 0.7, 0, -0.1), "behind must not be negative, got -0.1 m"),
    ],
)
def test_impossible_draws_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
