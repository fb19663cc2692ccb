"""From the energy a bow stores to the speed an arrow leaves with, and how long the string pushes it.

The limbs and string that must move along are counted as one virtual mass, travelling with the arrow.
"""

import math

from calc.mechanics.checks import require_not_negative, require_positive


def draw_weight_at(draw_length: float, known_weight: float, known_draw_length: float, slope: float) -> float:
    """Return the draw weight at another draw length, along a straight line through a known one.

    Args:
        draw_length [m]: the one asked about, measured as known_draw_length is.
        known_weight [N]: > 0.
        known_draw_length [m]: where known_weight was measured.
        slope [N/m]: weight gained for each length of draw, > 0.

    Returns:
        [N] draw weight.

    Raises:
        ValueError: known_weight or slope is not positive, or the line has reached zero at draw_length.

    Limits:
        A straight line: good for an inch or two; a bow that stacks gains more at the end.

    Source: geometry, the straight line through a point.
    """
    require_positive("known_weight", known_weight, "N")
    require_positive("slope", slope, "N/m")
    weight = known_weight + slope * (draw_length - known_draw_length)
    if not weight > 0.0:
        raise ValueError(f"draw_length must be where the bow still pulls, got {weight} N at {draw_length} m")
    return weight


def mass_per_draw_weight(arrow_mass: float, draw_weight: float) -> float:
    """Return the arrow's mass for each unit of draw weight.

    Args:
        arrow_mass [kg]: complete arrow, > 0.
        draw_weight [N]: at the archer's draw, > 0.

    Returns:
        [kg/N] mass per draw weight.

    Raises:
        ValueError: an argument is not positive.

    Source: astm-f1544.
    """
    require_positive("arrow_mass", arrow_mass, "kg")
    require_positive("draw_weight", draw_weight, "N")
    return arrow_mass / draw_weight


def stored_energy(draws: tuple[float, ...], forces: tuple[float, ...]) -> float:
    """Return the energy under a draw-force curve, by trapezoids.

    Args:
        draws [m]: at least two, rising.
        forces [N]: one per draw, none negative.

    Returns:
        [J] stored energy.

    Raises:
        ValueError: the sequences differ in length, hold less than two readings, or draws do not rise.

    Limits:
        Readings an inch apart are close enough: 12 and 48 readings of one recurve differed by 0.14 %.

    Source: astm-f1832; recurve-measurement.
    """
    _require_curve(draws, forces)
    energy = 0.0
    for i in range(1, len(draws)):
        energy += (forces[i - 1] + forces[i]) / 2.0 * (draws[i] - draws[i - 1])
    return energy


def assumed_draw_curve(
    peak_force: float, power_stroke: float, fullness: float, steps: int
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return a draw-force curve of stated fullness, from nothing at brace to the peak at full draw.

    With x the part of the stroke drawn, F / F_peak = x + 6 (fullness - 1/2) x (1 - x): a straight line at
    fullness 1/2, otherwise a parabola with the same ends.

    Args:
        peak_force [N]: at full draw, > 0.
        power_stroke [m]: from brace to full draw, > 0.
        fullness [1]: stored energy over peak force times stroke, 1/3 to 2/3.
        steps [1]: number of equal steps, > 0.

    Returns:
        [m] draws from brace, one more than steps; [N] forces, one per draw.

    Raises:
        ValueError: an argument is out of its range.

    Limits:
        A stand-in for readings that were not taken; the trapezoid sum falls short of the parabola's
        area by about (fullness - 1/2) / steps^2.

    Source: geometry, derived here: the parabola with that area.
    """
    require_positive("peak_force", peak_force, "N")
    require_positive("power_stroke", power_stroke, "m")
    require_positive("steps", steps, "")
    if not 1.0 / 3.0 <= fullness <= 2.0 / 3.0:
        raise ValueError(f"fullness must be from 1/3 to 2/3, got {fullness}")
    draws = []
    forces = []
    for i in range(steps + 1):
        part = i / steps
        draws.append(power_stroke * part)
        forces.append(peak_force * (part + 6.0 * (fullness - 0.5) * part * (1.0 - part)))
    return tuple(draws), tuple(forces)


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

    Source: tapley-virtual-mass; recurve-measurement.
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

    Source: tapley-virtual-mass.
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

    Source: tapley-virtual-mass.
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


def _require_curve(draws: tuple[float, ...], forces: tuple[float, ...]) -> None:
    """Raise ValueError unless these are readings of force along a rising draw."""
    if len(draws) != len(forces) or len(draws) < 2:
        raise ValueError(
            f"a curve must have two or more readings of both kinds, got {len(draws)} and {len(forces)}"
        )
    for i in range(len(draws)):
        require_not_negative("force", forces[i], "N")
        if i and not draws[i] > draws[i - 1]:
            raise ValueError(f"draws must rise, got {draws[i]} m after {draws[i - 1]} m")
