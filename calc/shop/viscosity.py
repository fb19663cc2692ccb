"""How thin a finish is, by the seconds that a cup takes to run empty."""

from calc.checks import require_not_negative, require_positive
from calc.quantities import ROUNDING


def kinematic_viscosity(time: float, slope: float, offset: float) -> float:
    """Return the viscosity of a liquid from the time that a cup takes to run empty.

    v = a (t - b).

    Args:
        time [s]: from the open hole to the first break of the stream, more than offset.
        slope [m^2/s^2]: a of this cup, > 0.
        offset [s]: b of this cup, >= 0.

    Returns:
        [m^2/s] kinematic viscosity.

    Raises:
        ValueError: slope is not positive, offset is negative, or time is not more than offset.

    Limits:
        For the times that are stated for the cup, at 25 degC, and for liquids that do not thin as they are
        stirred. Cups of one number differ by several per cent.

    Source: viscosity-cups, its equation for each cup.
    """
    require_positive("slope", slope, "m2/s2")
    require_not_negative("offset", offset, "s")
    if not offset < time:
        raise ValueError("time must be more than the offset, got " + str(time) + " s and " + str(offset)
                         + " s")
    return slope * (time - offset)


def efflux_time(viscosity: float, slope: float, offset: float) -> float:
    """Return how long a cup takes to run empty; `kinematic_viscosity` read backwards.

    Args:
        viscosity [m^2/s]: kinematic, > 0.
        slope [m^2/s^2]: a of this cup, > 0.
        offset [s]: b of this cup, >= 0.

    Returns:
        [s] time.

    Raises:
        ValueError: an argument is outside its range.

    Source: viscosity-cups, its equation for each cup.
    """
    require_positive("viscosity", viscosity, "m2/s")
    require_positive("slope", slope, "m2/s2")
    require_not_negative("offset", offset, "s")
    return viscosity / slope + offset


def time_within(
    viscosity: float, slope: float, offset: float, least: float, most: float
) -> float | None:
    """Return how long a cup takes to run empty with a liquid that it is made for.

    Args:
        viscosity [m^2/s]: kinematic, > 0.
        slope [m^2/s^2]: a of this cup, > 0.
        offset [s]: b of this cup, >= 0.
        least [s]: time that the cup is for.
        most [s]: time that the cup is for.

    Returns:
        [s] time; None where it is shorter or longer than those that the cup is for.

    Raises:
        ValueError: an argument is outside its range.

    Source: viscosity-cups, the equation and the times of each cup.
    """
    time = efflux_time(viscosity, slope, offset)
    return time if least - ROUNDING <= time <= most + ROUNDING else None
