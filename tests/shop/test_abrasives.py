"""Ladders of grades: what must hold for every start, finish and limit."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop.abrasives import ladder, nearest, scratch_depth, step_ratio
from calc.tables.grits import CAMI_GRITS, P_GRITS, Grit, P, find
from tests.sentences import whole

SCALES = st.sampled_from([P_GRITS, CAMI_GRITS])
LIMITS = st.floats(1.05, 5)


def ratios(steps):
    return [step_ratio(one.size, other.size) for one, other in itertools.pairwise(steps)]


def unevenness(steps):
    return sum(math.log(ratio) ** 2 for ratio in ratios(steps))


@given(SCALES, st.integers(0, 19), st.integers(0, 19), LIMITS)
def test_a_ladder_keeps_its_limit_wherever_grades_allow(grits, one, other, limit):
    start, finish = grits[min(one, other)], grits[max(one, other)]
    steps = ladder(grits, start, finish, limit)
    assert steps[0] == start
    assert steps[-1] == finish
    assert [each.size for each in steps] == sorted((each.size for each in steps), reverse=True)
    for before, after in itertools.pairwise(steps):
        if step_ratio(before.size, after.size) > limit * (1 + 1e-9):
            assert not [each for each in grits if after.size < each.size < before.size]


@given(st.integers(0, 7), st.integers(0, 7), st.floats(1.3, 5))
def test_no_ladder_is_shorter_or_as_short_and_more_even(one, other, limit):
    # against trying out every ladder there is
    grits = P_GRITS[10:18]
    start, finish = grits[min(one, other)], grits[max(one, other)]
    between = grits[min(one, other) + 1:max(one, other)]
    steps = ladder(grits, start, finish, limit)
    possible = [(start, *chosen, finish) for count in range(len(between) + 1)
                for chosen in itertools.combinations(between, count)]
    within = [each for each in possible if max(ratios(each)) <= limit]
    if start == finish:
        assert steps == [start]
    elif within:
        shortest = min(map(len, within))
        assert len(steps) == shortest
        rivals = [unevenness(each) for each in within if len(each) == shortest]
        assert unevenness(steps) == pytest.approx(min(rivals))


def test_a_finer_limit_never_gives_a_shorter_ladder():
    lengths = [len(ladder(P_GRITS, find("p60"), find("p2000"), limit / 100)) for limit in range(105, 400, 5)]
    assert lengths == sorted(lengths, reverse=True)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: ladder(P_GRITS, find("p120"), find("p80"), 1.65),
         "the finish grade must not be coarser than the start"),
        (lambda: ladder(P_GRITS, find("p80"), find("p120"), 1.0), "the step limit must be above 1, got 1.0"),
        (lambda: step_ratio(0.0, 1e-6), "grain sizes must be positive, got 0.0 and 1e-06 m"),
        (lambda: step_ratio(1e-4, 0.0), "grain sizes must be positive, got 0.0001 and 0.0 m"),
        (lambda: nearest(-1.0, P_GRITS), "a grain size must be positive, got -1.0 m"),
        (lambda: nearest(0.0, P_GRITS), "a grain size must be positive, got 0.0 m"),
        (lambda: nearest(1e-6, ()), "there must be a grade to choose from"),
        (lambda: scratch_depth(-1e-6, 0.1), "size and slope must not be negative, got -1e-06 m and 0.1"),
        (lambda: find("p90"), "no grade is called p90"),
    ],
)
def test_what_makes_no_sense_is_refused(call, message):
    with pytest.raises(ValueError, match=whole(message)):
        call()


@given(st.floats(0, 1e-3), st.floats(0, 1))
def test_scratches_are_in_proportion(size, slope):
    # "Strong linear correlation" of roughness and mean grain size, P60 to P150 on beech: abstract read
    # second-hand. Zero at zero, doubled when doubled.
    assert scratch_depth(2 * size, slope) == pytest.approx(2 * scratch_depth(size, slope))
    assert scratch_depth(0.0, slope) == 0.0


def test_a_step_of_just_the_limit_is_within_it():
    shelf = tuple(Grit(f"g{size}", P, size, size * 1e-6, "invented", "invented") for size in (150, 120, 100))
    assert ladder(shelf, shelf[0], shelf[2], 1.5) == [shelf[0], shelf[2]]
    assert ladder(shelf, shelf[0], shelf[2], 1.49) == list(shelf)
