"""How a bow answers between the ends of a plan: exact there, between them near to bows computed alone."""

import pytest

from calc.mechanics.bow.response import Response
from calc.mechanics.bow.tuning import read
from calc.quantities import INCH, POUND_FORCE
from tests.bows.learnt_bows import prepared

EVEN = Response((3.0, 1.0), (40.0, 0.5), (24.0, 2.5),
                ((-4.0, -4.0), (1.0, -1.0)), ((-4.0, -4.0), (1.0, -1.0)))
"""Straight in both removals: 4 of weight and 1 of tiller each."""


@pytest.mark.parametrize(("upper", "lower"), [(0, 0), (3, 1), (1, 0), (0, 2), (2, 2), (6, 1), (-1, 0.5)])
def test_a_bow_with_even_rates_answers_straight(upper, lower):
    answer = EVEN.at(upper, lower)
    assert answer.weight == pytest.approx(40 - 4 * (upper + lower))
    assert answer.tiller == pytest.approx(0.5 + upper - lower)
    assert answer.rates[0] == pytest.approx((-4.0, -4.0))
    assert answer.rates[1] == pytest.approx((1.0, -1.0))
    assert (answer.progress, answer.progress_rate) == pytest.approx(((upper + lower) / 4, 0.25))


BENT = Response((3.0, 1.0), (40.0, 0.5), (25.0, 2.0),
                ((-4.0, -4.5), (1.0, -1.0)), ((-3.0, -3.5), (0.7, -0.8)))


@pytest.mark.parametrize(("upper", "lower"), [(1.0, 0.2), (2.5, 0.1), (0.3, 1.4), (4.0, 3.0), (-0.5, 0.1)])
def test_rates_are_those_of_small_steps(upper, lower):
    step = 1e-6
    answer = BENT.at(upper, lower)
    for which, name in ((0, "weight"), (1, "tiller")):
        by_upper = (getattr(BENT.at(upper + step, lower), name) - getattr(answer, name)) / step
        by_lower = (getattr(BENT.at(upper, lower + step), name) - getattr(answer, name)) / step
        assert answer.rates[which] == pytest.approx((by_upper, by_lower), abs=1e-4)


def test_both_ends_have_their_values_and_rates():
    for at, values, rates in (((0.0, 0.0), BENT.before, BENT.rates_before),
                              (BENT.removals, BENT.after, BENT.rates_after)):
        answer = BENT.at(*at)
        assert (answer.weight, answer.tiller) == pytest.approx(values)
        along = [one[0] * 3.0 + one[1] for one in answer.rates]
        assert along == pytest.approx([one[0] * 3.0 + one[1] for one in rates])
        assert [one[0] - one[1] for one in answer.rates] == pytest.approx([one[0] - one[1] for one in rates])


@pytest.mark.parametrize("name", ["recurve", "light"])
def test_between_the_ends_it_is_near_to_bows_computed_one_by_one(name):
    planned, model, _ = prepared(name)
    upper, lower = planned.removals
    worst = [0.0, 0.0]
    for along in (0.25, 0.5, 0.75, 1.0, 1.1):
        for aside in (-0.15, 0.0, 0.15):
            lead = aside * (upper + lower) / 2
            removals = along * upper + lead, along * lower - lead
            state = read(planned.bow.bow(planned.factors, planned.sanding, removals), planned.setup,
                         planned.after)
            answer = model.response.at(*removals)
            worst = [max(worst[0], abs(answer.weight - state.weight) / POUND_FORCE),
                     max(worst[1], abs(answer.tiller - state.tiller) / INCH)]
    assert worst[0] < 0.03
    assert worst[1] < 0.01
