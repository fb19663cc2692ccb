"""From the energy a bow stores to the speed an arrow leaves with, and how long the string pushes it.

The limbs and string that must move along are counted as one virtual mass, travelling with the arrow.
"""


import math

from calc.checks import require_not_negative, require_positive
from calc.mechanics.draw_curve import _require_curve


def mass_per_draw_weight(arrow_mass: float, draw_weight: float) -> float:
    """Return the arrow's mass for each unit of draw weight.

    Args:
        arrow_mass [kg]: complete arrow, > 0.
        draw_weight [N]: at the archer's draw, > 0.

    Returns:
        [kg/N] mass per draw weight.

    Raises:
        ValueError: an argument is not positive.

    Source: astm-f1544, the test arrow of 5 grains a pound.
    """
    require_positive("arrow_mass", arrow_mass, "kg")
    require_positive("draw_weight", draw_weight, "N")
    return arrow_mass / draw_weight


def efficiency(arrow_mass: float, virtual_mass: float) -> float:
    """Return the part of the stored energy that leaves with the arrow.

    Args:
        arrow_mass [kg]: > 0.
        virtual_mass [kg]: of limbs and string, >= 0.

    Returns:
        [1] m / (m + m_virtual).

    Raises:
        ValueError: arrow_mass is not positive or virtual_mass is negative.

    Limits:
        The virtual mass is not quite constant: on one recurve it rose by 0.06 g for each gram of arrow.

    Source: tapley-virtual-mass, the energy is shared with a virtual mass; recurve-measurement, its virtual
        mass.
    """
    require_positive("arrow_mass", arrow_mass, "kg")
    require_not_negative("virtual_mass", virtual_mass, "kg")
    return arrow_mass / (arrow_mass + virtual_mass)


def arrow_speed(energy: float, arrow_mass: float, virtual_mass: float) -> float:
    """Return the speed at which the arrow leaves the string.

    Args:
        energy [J]: stored, > 0.
        arrow_mass [kg]: > 0.
        virtual_mass [kg]: of limbs and string, >= 0.

    Returns:
        [m/s] sqrt(2 E / (m + m_virtual)).

    Raises:
        ValueError: energy or arrow_mass is not positive, or virtual_mass is negative.

    Limits:
        An estimate, as good as the virtual mass; hysteresis counts as virtual mass too.

    Source: tapley-virtual-mass, the energy is shared with a virtual mass.
    """
    require_positive("energy", energy, "J")
    return math.sqrt(2.0 * energy * efficiency(arrow_mass, virtual_mass) / arrow_mass)


def virtual_mass_from_speed(energy: float, arrow_mass: float, speed: float) -> float:
    """Return the virtual mass that one chronograph reading implies.

    Args:
        energy [J]: stored, > 0.
        arrow_mass [kg]: of the arrow shot, > 0.
        speed [m/s]: measured, > 0.

    Returns:
        [kg] 2 E / v^2 - m.

    Raises:
        ValueError: an argument is not positive, or the arrow carries more energy than was stored.

    Source: tapley-virtual-mass, the energy is shared with a virtual mass.
    """
    require_positive("energy", energy, "J")
    carried = kinetic_energy(arrow_mass, speed)
    if carried > energy:
        raise ValueError(f"the arrow must not carry more than the {energy} J stored, got {carried} J")
    return 2.0 * (energy - carried) / speed**2


def kinetic_energy(mass: float, speed: float) -> float:
    """Return the energy of motion.

    Args:
        mass [kg]: > 0.
        speed [m/s]: > 0.

    Returns:
        [J] m v^2 / 2.

    Raises:
        ValueError: an argument is not positive.

    Source: newtonian-mechanics, work of a force along its way.
    """
    require_positive("mass", mass, "kg")
    require_positive("speed", speed, "m/s")
    return mass * speed**2 / 2.0


def momentum(mass: float, speed: float) -> float:
    """Return the momentum.

    Args:
        mass [kg]: > 0.
        speed [m/s]: > 0.

    Returns:
        [kg m/s] m v.

    Raises:
        ValueError: an argument is not positive.

    Source: newtonian-mechanics, its second law.
    """
    require_positive("mass", mass, "kg")
    require_positive("speed", speed, "m/s")
    return mass * speed


def power_stroke_time(draws: tuple[float, ...], forces: tuple[float, ...], moving_mass: float) -> float:
    """Return how long the string pushes the arrow, from loose to brace.

    Newton's law for one mass, solved exactly along a draw-force curve of straight pieces.

    Args:
        draws [m]: at least two, rising, from brace to full draw.
        forces [N]: one per draw, none negative, the last one > 0.
        moving_mass [kg]: arrow and virtual mass together, > 0.

    Returns:
        [s] time from loose to brace.

    Raises:
        ValueError: the curve is not one (see stored_energy), the last force or the mass is not positive.

    Limits:
        A clean loose and no losses on the way. For a straight line from nothing at brace it is a quarter
        of a period, pi/2 sqrt(m / slope).

    Source: newtonian-mechanics, derived here: its second law along each straight piece.
    """
    _require_curve(draws, forces)
    require_positive("moving_mass", moving_mass, "kg")
    require_positive("force at full draw", forces[-1], "N")
    time = 0.0
    speed = 0.0
    for i in range(len(draws) - 1, 0, -1):
        distance = draws[i] - draws[i - 1]
        step_time, speed = _piece(distance, forces[i] / moving_mass, forces[i - 1] / moving_mass, speed)
        time += step_time
    return time


def _piece(
    distance: float, acceleration: float, end_acceleration: float, speed: float
) -> tuple[float, float]:
    """Return time and end speed over a distance along which the acceleration follows a straight line."""
    end_speed = math.sqrt(speed**2 + (acceleration + end_acceleration) * distance)
    change = (end_acceleration - acceleration) / distance
    if abs(change) * distance <= 1e-12 * acceleration:
        return 2.0 * distance / (speed + end_speed), end_speed
    rate = math.sqrt(abs(change))
    if change < 0.0:  # a spring: the phase of the swing, end less start
        phase = math.atan2(end_speed * rate, end_acceleration) - math.atan2(speed * rate, acceleration)
        return phase / rate, end_speed
    growth = (end_acceleration + rate * end_speed) / (acceleration + rate * speed)
    return math.log(growth) / rate, end_speed
