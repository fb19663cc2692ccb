"""Viscosity by a cup: there and back, and what is refused."""

import pytest

from calc.shop.viscosity import efflux_time, kinematic_viscosity, time_within
from tests.sentences import whole


@pytest.mark.parametrize("time", [20.0, 33.5, 80.0])
def test_there_and_back(time):
    assert efflux_time(kinematic_viscosity(time, 3.5e-6, 14.0), 3.5e-6, 14.0) == pytest.approx(time)


@pytest.mark.parametrize(("time", "told"), [(19.9, None), (20.0, 20.0), (80.0, 80.0), (80.1, None)])
def test_a_cup_tells_no_time_that_it_is_not_made_for(time, told):
    viscosity = kinematic_viscosity(time, 3.5e-6, 14.0)
    assert time_within(viscosity, 3.5e-6, 14.0, 20.0, 80.0) == (told and pytest.approx(told))


def test_a_thicker_liquid_takes_longer():
    assert kinematic_viscosity(40, 3.5e-6, 14) > kinematic_viscosity(30, 3.5e-6, 14) > 0


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: kinematic_viscosity(14.0, 1.0, 14.0), "time must be more than the offset, got 14.0 s and "
                                                       "14.0 s"),
        (lambda: kinematic_viscosity(20.0, 0.0, 14.0), "slope must be positive, got 0.0 m2/s2"),
        (lambda: kinematic_viscosity(20.0, 1.0, -1.0), "offset must not be negative, got -1.0 s"),
        (lambda: efflux_time(0.0, 1.0, 1.0), "viscosity must be positive, got 0.0 m2/s"),
        (lambda: efflux_time(1.0, -1.0, 1.0), "slope must be positive, got -1.0 m2/s2"),
        (lambda: efflux_time(1.0, 1.0, -1.0), "offset must not be negative, got -1.0 s"),
    ],
)
def test_what_is_no_cup_is_refused(ask, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        ask()
