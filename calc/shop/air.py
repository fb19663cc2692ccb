"""Moist air and moving air: dew point, clearing a room, vapour in it, booths."""

import math

from calc.checks import require_not_negative, require_positive, require_share
from calc.quantities import FOOT, INCH, POUND

MAGNUS_A = 17.625
MAGNUS_B = 243.04  # degC
MAGNUS_LOW = -40.0
MAGNUS_HIGH = 60.0

GAS_CONSTANT = 8.314462618  # J/(mol K)
STANDARD_PRESSURE = 101325.0  # Pa
ZERO_CELSIUS = 273.15  # K

METRIC_MARGIN = 3.0  # K
IMPERIAL_MARGIN = 25 / 9  # K, 5 degF
"""By how much work is warmer than the dew point while it is sprayed: two published rules, not the same."""


def dew_point(temperature: float, relative_humidity: float) -> float:
    """Return the temperature to which air must cool for its moisture to condense.

    Magnus form: g = ln(RH) + a T / (b + T), dew point = b g / (a - g), a = 17.625, b = 243.04 degC.

    Args:
        temperature [degC]: of the air, -40 to 60.
        relative_humidity [1]: more than 0, at most 1.

    Returns:
        [degC] dew point over water; equal to temperature at a relative humidity of 1.

    Raises:
        ValueError: temperature or relative_humidity is outside its range.

    Limits:
        Stated within 0.35 degC for -40 to 60 degC.

    Source: alduchov-eskridge-1996, constants 17.625 and 243.04 °C.
    """
    _require_magnus(temperature)
    require_share("relative humidity", relative_humidity)
    gamma = math.log(relative_humidity) + MAGNUS_A * temperature / (MAGNUS_B + temperature)
    return MAGNUS_B * gamma / (MAGNUS_A - gamma)


def relative_humidity_from_dew_point(temperature: float, dew_point: float) -> float:
    """Return the relative humidity of air with this dew point; `dew_point` read backwards.

    Args:
        temperature [degC]: of the air, -40 to 60.
        dew_point [degC]: at most the temperature, above -200.

    Returns:
        [1] relative humidity.

    Raises:
        ValueError: temperature is outside its range, or dew_point is above it.

    Source: alduchov-eskridge-1996, constants 17.625 and 243.04 °C.
    """
    _require_magnus(temperature)
    if not -200.0 < dew_point <= temperature:
        raise ValueError("dew point must not be above the temperature, got " + str(dew_point) + " degC at "
                         + str(temperature) + " degC")
    return math.exp(MAGNUS_A * dew_point / (MAGNUS_B + dew_point)
                    - MAGNUS_A * temperature / (MAGNUS_B + temperature))


def dew_point_error(temperature: float, relative_humidity: float, humidity_error: float) -> float:
    """Return how far the dew point is out when the humidity is out by so much, to the worse side.

    The larger of both differences; in drier air the same error of humidity moves the dew point further.

    Args:
        temperature [degC]: of the air, -40 to 60.
        relative_humidity [1]: as read, more than humidity_error, at most 1.
        humidity_error [1]: of the reading to either side, >= 0.

    Returns:
        [K] largest error of the dew point.

    Raises:
        ValueError: an argument is outside its range.

    Source: alduchov-eskridge-1996, constants 17.625 and 243.04 °C.
    """
    if not 0.0 <= humidity_error < relative_humidity:
        raise ValueError("humidity error must not be negative and less than the humidity, got "
                         + str(humidity_error) + " of " + str(relative_humidity))
    read = dew_point(temperature, relative_humidity)
    wetter = dew_point(temperature, min(1.0, relative_humidity + humidity_error)) - read
    return max(wetter, read - dew_point(temperature, relative_humidity - humidity_error))


def _require_magnus(temperature: float) -> None:
    if not MAGNUS_LOW <= temperature <= MAGNUS_HIGH:
        raise ValueError("temperature must be from -40 to 60 degC, got " + str(temperature) + " degC")


# Clearing a room ---------------------------------------------------------------


def air_changes(flow: float, volume: float) -> float:
    """Return how often the air of a room is replaced.

    Args:
        flow [m^3/s]: of fresh air, >= 0.
        volume [m^3]: of the room, > 0.

    Returns:
        [1/s] air changes.

    Raises:
        ValueError: flow is negative or volume not positive.

    Source: exponential-decay, flow over volume.
    """
    require_not_negative("flow", flow, "m3/s")
    require_positive("volume", volume, "m3")
    return flow / volume


def clearing_time(air_changes: float, share_left: float, mixing_factor: float = 1.0) -> float:
    """Return how long a room takes to clear down to a share of what was in its air.

    t = -ln(share) K / N.

    Args:
        air_changes [1/s]: > 0.
        share_left [1]: of what was there at the start, more than 0, at most 1.
        mixing_factor [1]: 1 where fresh air mixes at once with all air, else larger.

    Returns:
        [s] time.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        Nothing is given off any more; a corner without draught clears more slowly.

    Source: cdc-air-changes, table B.1.
    """
    require_positive("air changes", air_changes, "1/s")
    require_share("share left", share_left)
    _require_mixing(mixing_factor)
    return -math.log(share_left) * mixing_factor / air_changes


def share_left(air_changes: float, time: float, mixing_factor: float = 1.0) -> float:
    """Return what share of an airborne stuff is left after a time; `clearing_time` read backwards.

    Args:
        air_changes [1/s]: >= 0.
        time [s]: >= 0.
        mixing_factor [1]: >= 1.

    Returns:
        [1] share of what was there at the start.

    Raises:
        ValueError: an argument is outside its range.

    Source: exponential-decay, `clearing_time` read backwards.
    """
    require_not_negative("air changes", air_changes, "1/s")
    require_not_negative("time", time, "s")
    _require_mixing(mixing_factor)
    return math.exp(-air_changes * time / mixing_factor)


def _require_mixing(mixing_factor: float) -> None:
    if not 1.0 <= mixing_factor < math.inf:
        raise ValueError("the mixing factor must be 1 or more, got " + str(mixing_factor))


def face_flow(width: float, height: float, speed: float) -> float:
    """Return the air a booth's fan must move for a speed across its open face.

    Args:
        width [m]: of the face, > 0.
        height [m]: of the face, > 0.
        speed [m/s]: mean over the face, > 0.

    Returns:
        [m^3/s] flow.

    Raises:
        ValueError: an argument is not positive.

    Source: spray-booth-velocities, speeds across the open face.
    """
    require_positive("width", width, "m")
    require_positive("height", height, "m")
    require_positive("speed", speed, "m/s")
    return width * height * speed


# Vapour ------------------------------------------------------------------------


def molar_volume(temperature: float) -> float:
    """Return the room that one mole of an ideal gas takes at standard pressure.

    Args:
        temperature [degC]: above -273.15.

    Returns:
        [m^3/mol] molar volume.

    Raises:
        ValueError: temperature is not above absolute zero.

    Source: ideal-gas, V / n = R T / p.
    """
    if not -ZERO_CELSIUS < temperature < math.inf:
        raise ValueError("temperature must be above -273.15 degC, got " + str(temperature) + " degC")
    return GAS_CONSTANT * (temperature + ZERO_CELSIUS) / STANDARD_PRESSURE


def vapour_volume(liquid: float, density: float, molar_mass: float, temperature: float) -> float:
    """Return the volume of vapour that a liquid becomes, taken as an ideal gas.

    Args:
        liquid [m^3]: volume that evaporates, >= 0.
        density [kg/m^3]: of the liquid, > 0.
        molar_mass [kg/mol]: > 0.
        temperature [degC]: of the air.

    Returns:
        [m^3] of pure vapour at standard pressure.

    Raises:
        ValueError: an argument is outside its range.

    Source: ideal-gas, n R T / p.
    """
    require_not_negative("liquid", liquid, "m3")
    require_positive("density", density, "kg/m3")
    require_positive("molar mass", molar_mass, "kg/mol")
    return liquid * density / molar_mass * molar_volume(temperature)


def mass_concentration(share: float, molar_mass: float, temperature: float) -> float:
    """Return the mass of a vapour per volume of air from its share by volume.

    Args:
        share [1]: by volume (1 ppm is 1e-6), >= 0.
        molar_mass [kg/mol]: > 0.
        temperature [degC]: of the air; limits are stated at 25.

    Returns:
        [kg/m^3] of vapour in the air.

    Raises:
        ValueError: share is negative or molar_mass not positive.

    Source: ideal-gas, 24.45 L a mole at 25 °C.
    """
    require_not_negative("share", share, "")
    require_positive("molar mass", molar_mass, "kg/mol")
    return share * molar_mass / molar_volume(temperature)


def share_from_mass_concentration(concentration: float, molar_mass: float, temperature: float) -> float:
    """Return the share by volume of a vapour from its mass per volume of air; `mass_concentration` backwards.

    Args:
        concentration [kg/m^3]: of vapour in the air, >= 0.
        molar_mass [kg/mol]: > 0.
        temperature [degC]: of the air; limits are stated at 25.

    Returns:
        [1] share by volume.

    Raises:
        ValueError: concentration is negative or molar_mass not positive.

    Source: ideal-gas, 24.45 L a mole at 25 °C.
    """
    require_not_negative("concentration", concentration, "kg/m3")
    require_positive("molar mass", molar_mass, "kg/mol")
    return concentration * molar_volume(temperature) / molar_mass


def mixture_limit(shares: tuple[float, ...], limits: tuple[float, ...]) -> float:
    """Return the limit of a mixture from those of its parts.

    1 / sum of (share / limit). With lower flammable limits it is Le Chatelier's rule. With limits for
    breathing it is where the sum of shares of limits comes to one, for stuffs that act alike.

    Args:
        shares [1]: of each part in the vapour, >= 0, their sum > 0.
        limits [1]: of each part of `shares`, as shares of the air, > 0.

    Returns:
        [1] share of the air of all parts together.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        Le Chatelier's rule holds well for vapours of like kind, less so for others. What acts on different
        organs need not be added; what makes another worse is more than a sum.

    Source: le-chatelier, reciprocal of shares over limits; additive-limits, paragraph (d)(2)(i).
    """
    inverse = 0.0
    for share, limit in zip(shares, limits):
        require_not_negative("share", share, "")
        require_positive("limit", limit, "")
        inverse += share / limit
    require_positive("sum of shares over limits", inverse, "")
    return 1.0 / inverse


LAYER_DEPTH = INCH / 32
LAYER_DENSITY = 75 * POUND / FOOT**3
LAYER_SHARE = 0.05
LAYER_AREA = 1000 * FOOT**2
"""Depth at a bulk density, share of the floor and area that make a layer of dust a danger
(osha-combustible-dust)."""


def dust_layer_depth(bulk_density: float) -> float:
    """Return the depth above which a layer of dust counts as a danger where it covers much of a floor.

    1/32 in x 75 lb/ft3 / bulk density; 1/32 in for heavier dust.

    Args:
        bulk_density [kg/m^3]: of the dust as it lies, > 0.

    Returns:
        [m] depth.

    Raises:
        ValueError: bulk_density is not positive.

    Limits:
        A rule for when to clean and to look closer. A thinner layer that is stirred up in a closed place can
        explode as well.

    Source: osha-combustible-dust, the equation for LD (its figures from memory, its meaning read).
    """
    require_positive("bulk density", bulk_density, "kg/m3")
    return LAYER_DEPTH * max(1.0, LAYER_DENSITY / bulk_density)


def time_until_below(share: float, limit: float, air_changes: float, mixing_factor: float = 1.0) -> float:
    """Return how long a vapour takes to fall to a limit once nothing more is given off.

    t = ln(share / limit) K / N; nothing where the share is no more than the limit.

    Args:
        share [1]: by volume when the last of it evaporates, >= 0.
        limit [1]: by volume, more than 0.
        air_changes [1/s]: > 0.
        mixing_factor [1]: >= 1.

    Returns:
        [s] time, from the moment that nothing more is given off.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        The room's mean. At the gun, the bench and the floor the share is several times as high.

    Source: exponential-decay, `clearing_time` from the share to the limit.
    """
    require_not_negative("share", share, "")
    require_positive("limit", limit, "")
    if share <= limit:
        return 0.0
    return clearing_time(air_changes, limit / share, mixing_factor)


def dilution_flow(vapour_rate: float, share: float, mixing_factor: float = 1.0) -> float:
    """Return the fresh air that keeps a steadily given off vapour down to a share.

    Q = K G / C.

    Args:
        vapour_rate [m^3/s]: of pure vapour, >= 0.
        share [1]: by volume that is to be kept, more than 0, at most 1.
        mixing_factor [1]: >= 1.

    Returns:
        [m^3/s] flow of fresh air.

    Raises:
        ValueError: an argument is outside its range.

    Source: steady-dilution, its equation for Q.
    """
    require_not_negative("vapour rate", vapour_rate, "m3/s")
    require_share("share", share)
    _require_mixing(mixing_factor)
    return mixing_factor * vapour_rate / share


def rising_share(
    vapour_rate: float, flow: float, volume: float, time: float, mixing_factor: float = 1.0
) -> float:
    """Return a vapour's share of a room's air after it was given off steadily for a time.

    C = K G / Q (1 - exp(-Q t / (K V))); without fresh air C = G t / V.

    Args:
        vapour_rate [m^3/s]: of pure vapour, >= 0.
        flow [m^3/s]: of fresh air, >= 0.
        volume [m^3]: of the room, > 0.
        time [s]: since the vapour began in clean air, >= 0.
        mixing_factor [1]: >= 1.

    Returns:
        [1] share by volume, the same all through the room.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        A dilute vapour. At the gun, the bench and the floor the share is several times as high.

    Source: exponential-decay, derived here: the balance of one well-mixed room.
    """
    require_not_negative("vapour rate", vapour_rate, "m3/s")
    require_not_negative("flow", flow, "m3/s")
    require_positive("volume", volume, "m3")
    require_not_negative("time", time, "s")
    _require_mixing(mixing_factor)
    effective = flow / mixing_factor
    exponent = effective * time / volume
    if exponent < 1e-6:
        return vapour_rate * time / volume
    return vapour_rate / effective * (1.0 - math.exp(-exponent))
