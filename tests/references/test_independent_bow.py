"""Five bows against an independent solution of the same mechanics by other means."""

import math

import numpy as np
import pytest

from calc.mechanics.bow.bow import Bow, Limb
from tests.references.independent_bow import Form, IndependentBow

STATIONS = 41


def form(length, base, start, deflex, recurve, stiff, thin):
    """Return a limb that bends back by a cubic in its outer part and thins out smoothly."""
    def outer(t):
        return max(0.0, t - 0.45) / 0.55

    return Form(
        length, base,
        lambda t: start + deflex * t - recurve * outer(t) ** 3,
        lambda t: deflex - recurve * 3.0 * outer(t) ** 2 / 0.55,
        lambda t: stiff * (1.0 - (1.0 - thin) * t) ** 1.2,
    )


def limb(shape):
    places = [i / (STATIONS - 1) for i in range(STATIONS)]
    return Limb(
        shape.length, shape.base, [shape.angle(t) for t in places], [shape.stiffness(t) for t in places]
    )


CASES = {
    # upper, lower, pivot, string stiffness, brace height, draws
    "alike straight limbs": (
        form(0.70, (0.0, 0.15), 0.0, 0.0, 0.0, 38.0, 0.3),
        form(0.70, (0.0, 0.15), 0.0, 0.0, 0.0, 38.0, 0.3),
        (0.0, 0.0), math.inf, 0.16, (0.40, 0.667),
    ),
    "unequal reflexed limbs, pivot below the middle": (
        form(0.69, (0.0, 0.17), 0.04, -0.15, 0.0, 36.0, 0.3),
        form(0.66, (0.01, 0.16), 0.04, -0.12, 0.0, 35.0, 0.32),
        (0.005, -0.03), math.inf, 0.17, (0.40, 0.667),
    ),
    "recurve, string on both tips when braced": (
        form(0.62, (-0.01, 0.24), 0.06, -0.12, 1.1, 27.0, 0.3),
        form(0.62, (-0.01, 0.24), 0.06, -0.12, 1.1, 27.0, 0.3),
        (0.0, 0.0), math.inf, 0.20, (0.30, 0.667),
    ),
    "unequal recurve, string on both tips": (
        form(0.62, (-0.01, 0.24), 0.06, -0.12, 1.2, 27.0, 0.3),
        form(0.605, (-0.01, 0.235), 0.06, -0.12, 1.1, 26.6, 0.31),
        (0.01, -0.02), math.inf, 0.20, (0.26, 0.667),
    ),
    "short recurve with a string that stretches": (
        form(0.50, (-0.02, 0.23), 0.08, -0.1, 1.0, 22.0, 0.35),
        form(0.49, (-0.02, 0.23), 0.08, -0.1, 1.05, 22.4, 0.35),
        (0.0, -0.01), 18000.0, 0.19, (0.28, 0.62),
    ),
}


FORCE_AGREES = 2e-5
"""As the page on the model claims."""


def guess(states, forms, contact, sign, shake):
    """Return unknowns near a state: this model's answer, shaken by a few per cent."""
    values = []
    for (tension, shape), each, touching in zip(states, forms, contact):
        at = shape.departure if touching else each.length
        values += [
            tension / 100.0,
            np.interp(at, shape.arc_length, shape.x),
            np.interp(at, shape.arc_length, np.abs(shape.y)),
        ]
        if touching:
            values.append(at)
    return [value * (1.0 + sign * shake * (-1) ** i) for i, value in enumerate(values)]


@pytest.mark.parametrize("name", CASES)
def test_force_and_string_agree(name):
    upper, lower, pivot, yielding, height, draws = CASES[name]
    forms = (upper, lower)
    bow = Bow(limb(upper), limb(lower), pivot, None if yielding == math.inf else yielding)
    braced = bow.brace(height)
    other = IndependentBow(upper, lower, pivot, yielding)

    touching = [braced.contact_upper < upper.length, braced.contact_lower < lower.length]
    assert any(touching) == ("recurve" in name)
    states = [(braced.tension, braced.upper), (braced.tension, braced.lower)]
    sides, lengths = other.brace(height, guess(states, forms, touching, 1, 0.01), touching)
    assert [side.tension for side in sides] == pytest.approx([braced.tension] * 2, rel=1e-4)
    assert lengths == pytest.approx([braced.upper_length, braced.lower_length], rel=1e-5)
    assert [side.leave for side in sides] == pytest.approx(
        [braced.contact_upper, braced.contact_lower], rel=1e-3
    )

    for distance in draws:
        drawn = bow.draw(distance)
        touching = [drawn.upper.departure < upper.length, drawn.lower.departure < lower.length]
        states = [(drawn.tension_upper, drawn.upper), (drawn.tension_lower, drawn.lower)]
        start = [*guess(states, forms, touching, -1, 0.01), drawn.angle + 0.002]
        force, sides, direction = other.draw(distance, lengths, start, touching)
        assert drawn.force == pytest.approx(force, rel=FORCE_AGREES)
        assert drawn.angle == pytest.approx(direction, abs=1e-5)
        assert [drawn.tension_upper, drawn.tension_lower] == pytest.approx(
            [side.tension for side in sides], rel=1e-4
        )
