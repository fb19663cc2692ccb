
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.mechanics.arrow import shaft
from tests.sentences import whole

rigidities = st.floats(0.5, 50.0)
tests = st.sampled_from([shaft.TEST_28_INCH, shaft.TEST_26_INCH])
part = st.builds(shaft.PointMass, mass=st.floats(0.0001, 0.05), position=st.floats(0.0, 0.9))
arrows = st.lists(part, min_size=1, max_size=6).map(tuple)


@given(rigidities, tests)
def test_deflection_and_back(rigidity, test):
    deflection = shaft.static_deflection(rigidity, test)
    assert shaft.flexural_rigidity_from_deflection(deflection, test) == pytest.approx(rigidity, rel=1e-12)


@given(rigidities)
def test_spine_weight_and_back(rigidity):
    weight = shaft.spine_weight(rigidity)
    assert shaft.flexural_rigidity_from_spine_weight(weight) == pytest.approx(rigidity, rel=1e-12)


@given(rigidities, st.floats(0.1, 10.0))
def test_spine_weight_is_proportional_to_stiffness(rigidity, factor):
    assert shaft.spine_weight(factor * rigidity) == pytest.approx(factor * shaft.spine_weight(rigidity))


@given(arrows)
def test_the_arrow_is_level_on_its_balance_point(parts):
    balance = shaft.balance_point(parts)
    turning = sum(each.mass * (each.position - balance) for each in parts)
    assert abs(turning) < 1e-12
    positions = [each.position for each in parts]
    assert min(positions) - 1e-12 <= balance <= max(positions) + 1e-12


@given(arrows, st.floats(0.001, 0.05))
def test_a_heavier_point_moves_the_balance_forward(parts, more):
    heavier = parts + (shaft.PointMass(more, 1.0),)
    assert shaft.balance_point(heavier) > shaft.balance_point(parts)


def test_a_bare_shaft_balances_in_the_middle():
    parts = (shaft.PointMass(0.02, 0.36),)
    assert shaft.forward_of_centre(shaft.balance_point(parts), 0.72) == pytest.approx(0)


@pytest.mark.parametrize(
    ("attempt", "sentence"),
    [
        (lambda: shaft.static_deflection(0, shaft.TEST_26_INCH),
         "flexural_rigidity must be positive, got 0 N m^2"),
        (lambda: shaft.flexural_rigidity_from_deflection(-1, shaft.TEST_26_INCH),
         "deflection must be positive, got -1 m"),
        (lambda: shaft.flexural_rigidity_from_spine_weight(0), "weight must be positive, got 0 N"),
        (lambda: shaft.spine_weight(0), "flexural_rigidity must be positive, got 0 N m^2"),
        (lambda: shaft.forward_of_centre(0.3, 0), "length must be positive, got 0 m"),
        (lambda: shaft.balance_point(()), "mass of all parts must be positive, got 0.0 kg"),
        (lambda: shaft.balance_point((shaft.PointMass(-0.01, 0.1),)),
         "mass of a part must not be negative, got -0.01 kg"),
    ],
)
def test_impossible_shafts_are_refused(attempt, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        attempt()
