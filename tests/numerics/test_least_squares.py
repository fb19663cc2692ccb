"""Lines through a log, against SciPy and NumPy."""


import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import linregress, norm

from calc.numerics.least_squares import (
    agree,
    line_through,
    lines_by_paper,
    place_of,
    safe_batch,
    strokes_left,
    thickness_per_stroke,
    value_on,
)
from calc.numerics.normal import NORMAL_95
from tests.sentences import whole

XS = (0.0, 60.0, 120.0, 190.0, 240.0)
YS = (53.0, 51.4, 49.9, 48.3, 46.8)


def test_the_line_matches_scipy():
    line, reference = line_through(XS, YS, 0.01), linregress(XS, YS)
    assert line.slope == pytest.approx(reference.slope, rel=1e-12)
    assert line.start == pytest.approx(reference.intercept, rel=1e-12)
    # the readings scatter more than 0.01, so the errors are the scatter's own
    assert line.slope_variance**0.5 == pytest.approx(reference.stderr, rel=1e-9)
    assert line.start_variance**0.5 == pytest.approx(reference.intercept_stderr, rel=1e-9)


def test_the_covariance_matches_numpy():
    line = line_through(XS, YS, 2.0)  # larger than the scatter: the stated error stands
    _, covariance = np.polyfit(XS, YS, 1, w=[1 / 2.0] * 5, cov="unscaled")
    assert line.slope_variance == pytest.approx(covariance[0, 0], rel=1e-9)
    assert line.covariance == pytest.approx(covariance[0, 1], rel=1e-9)
    assert line.start_variance == pytest.approx(covariance[1, 1], rel=1e-9)


def test_the_range_holds_95_percent():
    assert pytest.approx(norm.ppf(0.975), abs=5e-7) == NORMAL_95


@given(st.floats(-5, -0.001), st.floats(10, 100), st.floats(0, 500))
def test_a_place_on_an_exact_line_is_found(slope, start, now):
    line = line_through(XS, tuple(start + slope * x for x in XS), 0.1)
    far, _ = place_of(line, start + slope * (now + 25), now)
    assert far == pytest.approx(25, rel=1e-6, abs=1e-6)


def test_uncertainty_grows_away_from_the_readings():
    line = line_through(XS, YS, 0.25)
    errors = [value_on(line, x)[1] for x in (122, 240, 400, 800)]
    assert errors == sorted(errors)


def test_the_spread_of_many_logs_is_the_one_stated():
    """A thousand simulated logs with known errors: the strokes left spread as the fit says."""
    chance = np.random.default_rng(1)
    found = []
    for _ in range(1000):
        line = line_through(XS, tuple(53 - 0.025 * np.array(XS) + chance.normal(0, 0.25, 5)), 0.25)
        found.append(place_of(line, 44.0, XS[-1])[0])
    stated = place_of(line_through(XS, tuple(53 - 0.025 * np.array(XS)), 0.25), 44.0, XS[-1])
    assert np.mean(found) == pytest.approx(stated[0], rel=0.05)
    assert np.std(found) == pytest.approx(stated[1], rel=0.35)  # errors are raised where a log scatters


def test_sum_and_lead_give_each_limb():
    left = strokes_left((100.0, 6.0), (20.0, 8.0))
    assert (left.upper, left.lower) == (60, 40)
    assert left.upper_error == pytest.approx(5)


def test_the_error_of_a_thickness_spreads_as_in_many_logs():
    dice = np.random.default_rng(6)
    readings = dice.normal(0.0, 0.0005, (20_000, 4))  # before and after, upper and lower
    lost = (0.010 + readings[:, 0] - readings[:, 1]) + (0.006 + readings[:, 2] - readings[:, 3])
    thickness, error = thickness_per_stroke((0.010, 0.006), 190.0, 0.0005)
    assert thickness == pytest.approx(np.mean(lost) / 190, rel=1e-3)
    assert error == pytest.approx(np.std(lost) / 190, rel=0.02)


def test_two_estimates_of_one_thing_agree_in_95_of_100():
    dice = np.random.default_rng(6)
    pairs = zip(dice.normal(1.0, 0.3, 20_000), dice.normal(1.0, 0.1, 20_000), strict=True)
    share = np.mean([agree((one, 0.3), (other, 0.1)) for one, other in pairs])
    assert share == pytest.approx(0.95, abs=0.005)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: thickness_per_stroke((0.01, 0.01), 0.0, 0.0005), "a stroke's share needs strokes, got 0.0"),
        (lambda: line_through((1.0,), (1.0,), 1.0), "a line needs two readings or more, got 1"),
        (lambda: line_through((1.0, 1.0), (1.0, 2.0), 1.0),
         "a line needs readings at two different places, got one"),
        (lambda: line_through((1.0, 2.0), (1.0, 2.0), 0.0), "the error must be positive, got 0.0"),
        (lambda: place_of(line_through((1.0, 2.0), (1.0, 1.0), 1.0), 3.0, 2.0),
         "a level line reaches no other value, got slope 0"),
    ],
)
def test_what_is_no_line_is_refused(call, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        call()


# More than one paper ---------------------------------------------------------

# Strokes so far on two papers, and readings about 53 - 0.03 a - 0.01 b.
TWO = ((0.0, 0.0), (60.0, 0.0), (120.0, 0.0), (120.0, 70.0), (120.0, 120.0), (120.0, 200.0))
READ = (53.1, 51.2, 49.4, 48.8, 48.1, 47.5)


@pytest.mark.parametrize("error", [0.01, 0.5])
def test_two_papers_match_numpy(error):
    """Start, slopes, their covariance and the value foretold on either paper, by numpy.linalg."""
    found = lines_by_paper(TWO, READ, error)
    design = np.array([[1.0, *row] for row in TWO])
    beta, residual, _, _ = np.linalg.lstsq(design, np.array(READ), rcond=None)
    misfit = residual[0] / error**2 / 3
    covariance = np.linalg.inv(design.T @ design) * error**2 * max(1.0, misfit)
    assert found.misfit == pytest.approx(misfit)
    assert found.fitted == pytest.approx(tuple(design @ beta))
    assert found.now == pytest.approx((design[-1] @ beta, (design[-1] @ covariance @ design[-1]) ** 0.5))
    for paper, line in enumerate(found.lines):
        assert line.slope == pytest.approx(beta[paper + 1])
        assert line.slope_variance == pytest.approx(covariance[paper + 1, paper + 1])
        ahead = np.array([1.0, *TWO[-1]])
        ahead[paper + 1] += 50
        assert value_on(line, 320 + 50) == pytest.approx(
            (ahead @ beta, (ahead @ covariance @ ahead) ** 0.5), rel=1e-7)


@given(st.lists(st.floats(1, 500), min_size=5, max_size=9),
       st.lists(st.floats(-0.1, -0.001), min_size=3, max_size=3))
def test_an_exact_log_gives_the_slope_of_each_paper(strokes, slopes):
    counts, ys, so_far = [(0.0, 0.0, 0.0)], [53.0], [0.0, 0.0, 0.0]
    for place, count in enumerate(strokes):
        so_far[place % 3] += count
        counts.append(tuple(so_far))
        ys.append(53 + sum(slope * total for slope, total in zip(slopes, so_far, strict=True)))
    found = lines_by_paper(tuple(counts), tuple(ys), 0.25)
    assert [line.slope for line in found.lines] == pytest.approx(slopes, rel=1e-5)
    assert found.now[0] == pytest.approx(ys[-1])


def test_with_one_paper_it_is_the_line_itself():
    """Digit for digit, also where a second paper is named and has no strokes yet."""
    line = line_through(XS, YS, 0.25)
    for counts in (tuple((x,) for x in XS), tuple((x, 0.0) for x in XS)):
        found = lines_by_paper(counts, YS, 0.25)
        assert vars(found.lines[0]) == vars(line)
        assert found.now == value_on(line, XS[-1])
        assert found.fitted == tuple(value_on(line, x)[0] for x in XS)
        assert found.lines[1:] in ((), (None,))


def test_no_jump_at_a_change_of_paper():
    found = lines_by_paper(TWO, READ, 0.25)
    slope = found.lines[1].slope
    assert found.fitted[3] - found.fitted[2] == pytest.approx(70 * slope)
    assert found.fitted[5] - found.fitted[4] == pytest.approx(80 * slope)


def test_a_log_without_strokes_has_no_papers():
    with pytest.raises(ValueError, match=whole("a line needs readings at two different places, got one")):
        lines_by_paper(((0.0, 0.0), (0.0, 0.0)), (53.0, 52.9), 0.25)
    with pytest.raises(ValueError, match=whole("there must be one row of counts for each reading, got 1")):
        lines_by_paper(((0.0,),), (53.0, 52.9), 0.25)
    with pytest.raises(ValueError, match=whole("a line needs two readings or more, got 1")):
        lines_by_paper(((0.0, 0.0),), (53.0,), 0.25)


def test_a_safe_batch_stays_above_the_aim_at_the_ends_of_the_ranges():
    line = line_through((0.0, 60.0), (53.0, 51.5), 0.25)
    count = safe_batch(line, value_on(line, 60.0), 49.0)
    steepest = -line.slope + NORMAL_95 * line.slope_variance**0.5
    assert count * steepest == pytest.approx(51.5 - NORMAL_95 * 0.25 - 49.0)
    assert safe_batch(line, value_on(line, 60.0), 51.4) == 0


def test_papers_that_were_always_used_alike_cannot_be_told_apart():
    with pytest.raises(ValueError, match=whole("the readings do not tell the papers apart")):
        lines_by_paper(((0.0, 0.0), (10.0, 10.0), (20.0, 20.0)), (53.0, 52.0, 51.0), 0.25)


def test_as_many_readings_as_unknowns_leave_no_misfit():
    found = lines_by_paper(((0.0, 0.0), (10.0, 0.0), (10.0, 20.0)), (53.0, 52.0, 51.5), 0.25)
    assert found.misfit == 0.0
    assert found.fitted == pytest.approx((53.0, 52.0, 51.5))
