"""Fitting an unstrung shape to readings."""

import pytest

from calc.bows.measured import MeasuredBow, family_profile
from calc.mechanics.bow.fitting import (
    BEST,
    LIMIT,
    UNCOMPUTED,
    fit_steps,
    root_mean_square,
)
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tuning import Setup
from calc.quantities import INCH
from tests.sentences import whole

LENGTH = 22.5 * INCH
STATIONS = (Station(2 * INCH, 1.6 * INCH, 0.3 * INCH), Station(20 * INCH, 0.7 * INCH, 0.25 * INCH))
BENCH = Setup(8 * INCH, 26.25 * INCH, None)


def bow_of(scale):
    return MeasuredBow(family_profile("recurve", LENGTH, scale), (1.1 * INCH, 8.5 * INCH),
                       (STATIONS, STATIONS), Build(0.045 * INCH, 0.045 * INCH, 39e9, 12.6e9), 25e3).bow()


def finish(search):
    while True:
        try:
            next(search)
        except StopIteration as end:
            return end.value


@pytest.mark.parametrize("true", [0.6, 0.75, 1.0, 1.25, 1.4])
def test_the_shape_that_made_the_readings_is_found(true):
    bow = bow_of(true)
    bow.brace(BENCH.brace_height)
    draws = [inches * INCH for inches in (10.25, 14, 18, 22, 24)]
    readings = tuple((draw, bow.draw(draw).force) for draw in draws)
    weight = bow.draw(BENCH.draw).force
    fit = finish(fit_steps(bow_of, (1.0, 1.15), 0.5, 1.5, BENCH, weight, 0.0, readings))
    assert fit.amount == pytest.approx(true, abs=0.01)
    assert fit.misfit < 0.005 * weight


def test_no_bow_at_all_is_refused():
    def impossible(_):
        raise ValueError("it cannot be braced")

    with pytest.raises(ValueError, match=whole("it cannot be braced")):
        finish(fit_steps(impossible, (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, ()))


READINGS = tuple((inches * INCH, 6.0 * inches) for inches in (12, 16, 20, 24))


def test_trials_that_cannot_be_computed_leave_the_best_so_far():
    tried = []

    def below(edge):
        def bow_below(scale):
            tried.append(scale)
            if scale != 1.0 and abs(scale - 1.0) > edge:
                raise ValueError("it cannot be braced")
            return bow_of(scale)
        return bow_below

    alone = finish(fit_steps(below(0.0), (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, READINGS))
    assert (alone.amount, alone.end) == (1.0, UNCOMPUTED)
    assert len(tried) <= 8
    free = finish(fit_steps(bow_of, (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, READINGS))
    some = finish(fit_steps(below(0.3 * abs(free.amount - 1.0)), (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0,
                            READINGS))
    assert some.end == UNCOMPUTED
    assert free.misfit < some.misfit <= alone.misfit


def test_a_search_held_at_its_limit_says_so():
    free = finish(fit_steps(bow_of, (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, READINGS))
    low, high = (0.9, 1.5) if free.amount < 0.9 else (0.5, 1.1)
    held = finish(fit_steps(bow_of, (1.0, 1.05), low, high, BENCH, 200.0, 0.0, READINGS))
    assert held.end == LIMIT
    assert held.amount in (low, high)


def test_an_amount_that_changes_nothing_is_the_best():
    fit = finish(fit_steps(lambda _: bow_of(1.0), (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, READINGS))
    assert fit.end == BEST


def test_root_mean_square():
    assert root_mean_square((3.0, 4.0, 0.0, 0.0)) == 2.5
    assert root_mean_square(()) == 0.0


def test_a_search_tells_how_far_along_it_is():
    along = list(fit_steps(bow_of, (1.0, 1.15), 0.5, 1.5, BENCH, 200.0, 0.0, READINGS))
    assert along == pytest.approx([(trial + 1) / 8 for trial in range(len(along))])
    assert 2 <= len(along) <= 7


def test_amounts_count_as_one_by_the_width_of_the_range():
    # A narrow range about 1: half a per cent of its width, not of the amounts themselves.
    bow = bow_of(1.03)
    bow.brace(BENCH.brace_height)
    draws = [inches * INCH for inches in (10.25, 14, 18, 22, 24)]
    readings = tuple((draw, bow.draw(draw).force) for draw in draws)
    weight = bow.draw(BENCH.draw).force
    fit = finish(fit_steps(bow_of, (1.0, 1.035), 0.95, 1.05, BENCH, weight, 0.0, readings))
    assert fit.amount == pytest.approx(1.03, abs=5e-4)
