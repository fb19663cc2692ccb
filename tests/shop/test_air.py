"""Air: inverses over the whole range, limits, and what is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.shop import air
from tests.sentences import whole

TEMPERATURES = st.floats(-40, 60)
HUMIDITIES = st.floats(0.01, 1)
RATES = st.floats(1e-5, 1)
SHARES = st.floats(1e-6, 1)
MIXING = st.floats(1, 10)


@given(TEMPERATURES, HUMIDITIES)
def test_dew_point_and_humidity_are_inverse(temperature, humidity):
    dew = air.dew_point(temperature, humidity)
    assert dew <= temperature + 1e-9
    assert air.relative_humidity_from_dew_point(temperature, min(dew, temperature)) == pytest.approx(humidity)


@given(TEMPERATURES, HUMIDITIES, HUMIDITIES)
def test_damper_air_has_the_higher_dew_point(temperature, one, other):
    drier, damper = sorted((one, other))
    assert air.dew_point(temperature, drier) <= air.dew_point(temperature, damper)


@given(RATES, SHARES, MIXING)
def test_clearing_time_and_share_left_are_inverse(rate, share, mixing):
    time = air.clearing_time(rate, share, mixing)
    assert air.share_left(rate, time, mixing) == pytest.approx(share, rel=1e-9)
    assert air.clearing_time(rate, share) == pytest.approx(time / mixing)


@given(st.floats(1e-9, 1e-3), st.floats(0, 5), st.floats(5, 500), st.floats(0, 1e5), MIXING)
def test_vapour_rises_and_stays_below_both_bounds(rate, flow, volume, time, mixing):
    share = air.rising_share(rate, flow, volume, time, mixing)
    assert 0 <= share <= rate * time / volume * (1 + 1e-9)
    assert share <= air.rising_share(rate, flow, volume, time + 60, mixing)
    if flow > 1e-3:
        assert share <= mixing * rate / flow * (1 + 1e-9)


def test_vapour_follows_its_balance():
    # dC/dt = G/V - Q C / (K V), stepped finely: converges on the closed form
    rate, flow, volume, mixing, end = 1e-4, 0.3, 60.0, 3.0, 1500.0
    gaps = []
    for steps in (500, 1000, 2000):
        share = 0.0
        for _ in range(steps):
            share += (rate - flow / mixing * share) / volume * end / steps
        gaps.append(abs(share - air.rising_share(rate, flow, volume, end, mixing)))
    assert gaps[0] > 1.9 * gaps[1] > 3.6 * gaps[2]


def test_without_fresh_air_vapour_just_adds_up():
    assert air.rising_share(1e-4, 0.0, 50.0, 100.0) == pytest.approx(1e-4 * 100 / 50)
    # nearly none: to the last digit, where 1 - exp(-x) would have lost half of them
    assert air.rising_share(1e-4, 1e-9, 50.0, 100.0) == pytest.approx(1e-4 * 100 / 50, rel=1e-12)


@pytest.mark.parametrize("exponent", [0.9e-6, 1.1e-6, 1e-3])
def test_a_little_fresh_air_joins_up_with_none(exponent):
    # expm1 keeps the digits: the closed form on both sides of where the short form takes over
    flow = exponent * 50 / 100
    exact = 1e-4 / flow * -math.expm1(-exponent)
    assert air.rising_share(1e-4, flow, 50.0, 100.0) == pytest.approx(exact, rel=1e-6)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: air.dew_point(60.1, 0.5), "temperature must be from -40 to 60 degC, got 60.1 degC"),
        (lambda: air.dew_point(-40.1, 0.5), "temperature must be from -40 to 60 degC, got -40.1 degC"),
        (lambda: air.dew_point(20, 0.0), "relative humidity must be more than 0 and at most 1, got 0.0"),
        (lambda: air.dew_point(20, 1.01), "relative humidity must be more than 0 and at most 1, got 1.01"),
        (lambda: air.relative_humidity_from_dew_point(20, 20.1),
         "dew point must not be above the temperature, got 20.1 degC at 20 degC"),
        (lambda: air.air_changes(-1.0, 10.0), "flow must not be negative, got -1.0 m3/s"),
        (lambda: air.air_changes(1.0, 0.0), "volume must be positive, got 0.0 m3"),
        (lambda: air.clearing_time(0.0, 0.5), "air changes must be positive, got 0.0 1/s"),
        (lambda: air.clearing_time(1.0, 0.0), "share left must be more than 0 and at most 1, got 0.0"),
        (lambda: air.clearing_time(1.0, 0.5, 0.9), "the mixing factor must be 1 or more, got 0.9"),
        (lambda: air.face_flow(1.0, 1.0, 0.0), "speed must be positive, got 0.0 m/s"),
        (lambda: air.molar_volume(-273.15), "temperature must be above -273.15 degC, got -273.15 degC"),
        (lambda: air.vapour_volume(1.0, 0.0, 0.1, 20), "density must be positive, got 0.0 kg/m3"),
        (lambda: air.dilution_flow(1.0, 0.0), "share must be more than 0 and at most 1, got 0.0"),
        (lambda: air.clearing_time(math.nan, 0.5), "air changes must be a finite number, got nan 1/s"),
    ],
)
def test_what_makes_no_sense_is_refused(call, message):
    with pytest.raises(ValueError, match=whole(message)):
        call()


@pytest.mark.parametrize("temperature", [-40, 60])
def test_the_edges_of_the_range_belong_to_it(temperature):
    assert math.isfinite(air.dew_point(temperature, 0.01))


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: air.mixture_limit((-0.1,), (0.01,)), "share must not be negative, got -0.1"),
        (lambda: air.mixture_limit((0.5,), (0.0,)), "limit must be positive, got 0.0"),
        (lambda: air.mixture_limit((0.0,), (0.01,)), "sum of shares over limits must be positive, got 0.0"),
        (lambda: air.dust_layer_depth(0.0), "bulk density must be positive, got 0.0 kg/m3"),
    ],
)
def test_no_mixture_and_no_dust_are_refused(ask, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        ask()
