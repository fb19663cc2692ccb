"""Water in wood: the moisture content it settles at."""

from calc.checks import require_share

LOWEST = -1.2  # degC, 30 degF: the coldest row of the published table
HIGHEST = 94.0  # degC


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
