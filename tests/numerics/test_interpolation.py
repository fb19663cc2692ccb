"""The smooth curve through stations."""

import math

import pytest

from calc.numerics.interpolation import along_straight, curve_at, gathered, halves, station_slopes


@pytest.mark.parametrize("count", [2, 3, 4, 5, 6, 9])
def test_straight_line_stays_straight(count):
    values = tuple(2.0 + 3.0 * i for i in range(count))
    slopes = station_slopes(values)
    for k in range(21):
        position = (count - 1) * k / 20
        assert curve_at(values, slopes, position) == pytest.approx((2.0 + 3.0 * position, 3.0))


@pytest.mark.parametrize("count", [4, 5, 6, 9])
def test_cubic_is_followed_exactly(count):
    values = tuple(float(i**3 - 4 * i**2) for i in range(count))
    slopes = station_slopes(values)
    for k in range(21):
        at = (count - 1) * k / 20
        assert curve_at(values, slopes, at)[0] == pytest.approx(at**3 - 4 * at**2, abs=1e-11)


@pytest.mark.parametrize("count", [2, 3, 4, 5, 6, 21])
def test_halves_are_the_curve_s_values_there(count):
    values = tuple(math.sin(0.9 * i) + 0.1 * i * i for i in range(count))
    slopes = station_slopes(values)
    assert halves(values, slopes) == pytest.approx(
        [curve_at(values, slopes, 0.5 * k)[0] for k in range(2 * count - 1)], rel=1e-14)


@pytest.mark.parametrize(("part", "value"), [(0.0, 2.0), (0.25, 3.0), (0.5, 4.0), (0.9, 0.0), (1.0, -1.0)])
def test_readings_are_joined_by_straight_lines(part, value):
    assert along_straight((2.0, 4.0, -1.0), part) == pytest.approx(value)


def test_error_falls_with_the_fourth_power_of_the_spacing():
    def worst(count):
        values = tuple(math.sin(2.1 * i / (count - 1) + 0.3) for i in range(count))
        slopes = station_slopes(values)
        return max(
            abs(curve_at(values, slopes, k / 200 * (count - 1))[0] - math.sin(2.1 * k / 200 + 0.3))
            for k in range(201)
        )

    assert worst(17) / worst(33) > 12


def test_reads_the_same_from_either_end():
    values = (0.3, 0.1, -0.2, -0.25, 0.4, 0.9)
    slopes, mirrored = station_slopes(values), station_slopes(values[::-1])
    for k in range(51):
        there, back = curve_at(values, slopes, k / 10), curve_at(values[::-1], mirrored, 5 - k / 10)
        assert there == pytest.approx((back[0], -back[1]))


@pytest.mark.parametrize("count", [4, 5, 6, 9, 21])
def test_gathered_weights_sum_up_readings_as_the_weights_sum_up_the_curve(count):
    """By each reading alone: the curve through it, summed up, is its weight."""
    weights = [math.cos(0.7 * k) + 0.3 * k for k in range(2 * count - 1)]
    found = gathered(weights)
    for place in range(count):
        values = tuple(1.0 if i == place else 0.0 for i in range(count))
        curve = halves(values, station_slopes(values))
        assert found[place] == pytest.approx(sum(w * v for w, v in zip(weights, curve)), abs=1e-12)
