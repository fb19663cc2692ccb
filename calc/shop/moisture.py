"""Water in wood: the moisture content it settles at, and how much wood swells and shrinks with it."""

from calc.checks import require_not_negative, require_positive, require_share

LOWEST = -1.2  # degC, 30 degF: the coldest row of the published table
HIGHEST = 94.0  # degC

AT_REST_WITHIN = 0.02
"""Wood farther than this from what the air makes it is on its way there, and moves (common practice)."""

LEAST_LINEAR, MOST_LINEAR = 0.06, 0.14
"""Moisture contents between which the coefficients of change are stated (wood-handbook-movement)."""

MOST_MOISTURE = 0.30
"""About where wood no longer swells with more water (wood-handbook-shrinkage)."""

LINEAR_SPAN = 0.28
"""Moisture over which all of the shrinkage from green to dry is spread by a coefficient: C = S / 28."""


def equilibrium_moisture_content(temperature: float, relative_humidity: float) -> float:
    """Return the moisture content that wood settles at in air of steady temperature and humidity.

    Hailwood-Horrobin, two hydrates, h the relative humidity, T in degC:
    M = 18 / W [K h / (1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2) / (1 + K1 K h + K1 K2 K^2 h^2)],
    W = 349 + 1.29 T + 0.0135 T^2, K = 0.805 + 0.000736 T - 0.00000273 T^2,
    K1 = 6.27 - 0.00938 T - 0.000303 T^2, K2 = 1.91 + 0.0407 T - 0.000293 T^2.

    Args:
        temperature [degC]: of the air, -1.2 to 94.
        relative_humidity [1]: more than 0, at most 1.

    Returns:
        [1] mass of water per mass of dry wood.

    Raises:
        ValueError: temperature or relative_humidity is outside its range.

    Limits:
        Within 0.06 % moisture of the published table. A practical estimate for any wood; species, heat
        treatment and whether it is drying or taking up water move it by a percent or more.

    Source: simpson-1998, wood-handbook-moisture equation 4-5.
    """
    if not LOWEST <= temperature <= HIGHEST:
        raise ValueError("temperature must be from -1.2 to 94 degC, got " + str(temperature) + " degC")
    require_share("relative humidity", relative_humidity)
    t = temperature
    w = 349.0 + 1.29 * t + 0.0135 * t * t
    k = 0.805 + 0.000736 * t - 0.00000273 * t * t
    k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
    k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
    kh = k * relative_humidity
    hydrates = (k1 * kh + 2.0 * k1 * k2 * kh * kh) / (1.0 + k1 * kh + k1 * k2 * kh * kh)
    return 18.0 / w * (kh / (1.0 - kh) + hydrates)


def dimensional_change(
    size: float, coefficient: float, moisture_from: float, moisture_to: float
) -> float:
    """Return how much a piece of wood, or a hole in it, grows across the grain with its moisture.

    D C (M_to - M_from), no moisture counted beyond 0.30: about there wood stops swelling.

    Args:
        size [m]: across the grain, at moisture_from, > 0.
        coefficient [1]: relative change per unit of moisture content, 100 times the handbook's figure for a
            per cent, >= 0.
        moisture_from [1]: at the start, >= 0.
        moisture_to [1]: at the end, >= 0.

    Returns:
        [m] change; less than zero where it shrinks. A hole changes like the wood that was in it.

    Raises:
        ValueError: an argument is outside its range.

    Limits:
        Made for moisture from 6 to 14 %. Single pieces scatter about their species. A piece that is glued to
        another moves less and strains the joint instead.

    Source: wood-handbook-movement, equation 13-2 and table 13-5.
    """
    require_positive("size", size, "m")
    require_not_negative("coefficient", coefficient, "")
    require_not_negative("moisture from", moisture_from, "")
    require_not_negative("moisture to", moisture_to, "")
    return size * coefficient * (min(moisture_to, MOST_MOISTURE) - min(moisture_from, MOST_MOISTURE))


def coefficient_from_shrinkage(shrinkage: float) -> float:
    """Return a coefficient of change from the shrinkage between green and dry.

    S / 0.28.

    Args:
        shrinkage [1]: from green to oven dry, of the green size, >= 0.

    Returns:
        [1] relative change per unit of moisture content.

    Raises:
        ValueError: shrinkage is negative.

    Limits:
        Meets the table's own coefficients to their last digit or two for woods that stand in both tables.

    Source: wood-handbook-movement, derived here: a 28th of the shrinkage of table 4-3 for each per cent.
    """
    require_not_negative("shrinkage", shrinkage, "")
    return shrinkage / LINEAR_SPAN
