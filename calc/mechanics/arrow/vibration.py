"""An arrow shaft in flight: the bending vibration of a free beam that carries a mass at each end.

Lengths along the beam are given as parts of its length, from the rear end (the nock) to the front.
A wave number is beta L, where beta^4 = m omega^2 / (E I) with m the mass per length.
The end masses are given as parts of the beam's own mass.
"""

import math

from calc.checks import require_not_negative, require_positive
from calc.numerics.roots import halved

_SAMPLES = 40  # steps along the beam when looking for its nodes; in the third mode those lie ten apart


def characteristic(wave_number: float, rear_mass: float, front_mass: float) -> float:
    """Return a number that is zero when a free beam with end masses can vibrate at this wave number.

    The determinant of the four end conditions, divided by -2 cosh z so that it stays small. With
    z the wave number and r, f the end masses:

        1 / cosh z - cos z + (r + f) z (sin z - tanh z cos z) + 2 r f z^2 sin z tanh z

    Args:
        wave_number [1]: z = beta L, > 0.
        rear_mass [1]: over the beam's mass, >= 0.
        front_mass [1]: over the beam's mass, >= 0.

    Returns:
        [1] zero at a natural frequency.

    Raises:
        ValueError: wave_number is not positive, or an end mass is negative.

    Source: beam-theory, each end free of moment, its shear force moving the end mass.
    """
    require_positive("wave_number", wave_number, "")
    require_not_negative("rear_mass", rear_mass, "")
    require_not_negative("front_mass", front_mass, "")
    z = wave_number
    tanh = math.tanh(z)
    return (
        1.0 / math.cosh(z)
        - math.cos(z)
        + (rear_mass + front_mass) * z * (math.sin(z) - tanh * math.cos(z))
        + 2.0 * rear_mass * front_mass * z**2 * math.sin(z) * tanh
    )


def wave_number(mode: int, rear_mass: float, front_mass: float) -> float:
    """Return the wave number of a bending mode.

    End masses only lower a frequency, and infinite ones leave a beam on two pins: the root of a mode
    lies between n pi and the root without masses, which is less than (n + 1/2) pi + 0.02.

    Args:
        mode [1]: 1, 2 or 3.
        rear_mass [1]: over the beam's mass, >= 0.
        front_mass [1]: over the beam's mass, >= 0.

    Returns:
        [1] beta L, to the last digits of a float.

    Raises:
        ValueError: mode is not 1, 2 or 3, or an end mass is negative.

    Source: beam-theory, the root of `characteristic` by halving.
    """
    if mode not in (1, 2, 3):
        raise ValueError(f"mode must be 1, 2 or 3, got {mode}")
    low = mode * math.pi
    high = (mode + 0.5) * math.pi + 0.02
    sign_below = 1.0 if mode % 2 else -1.0
    while True:
        middle = (low + high) / 2.0
        if not low < middle < high:
            return middle
        if characteristic(middle, rear_mass, front_mass) * sign_below > 0.0:
            low = middle
        else:
            high = middle


def frequency(wave_number: float, flexural_rigidity: float, beam_mass: float, length: float) -> float:
    """Return the frequency of a bending mode from its wave number.

    (beta L)^2 / (2 pi) sqrt(E I / (m L^3)), m the mass of the beam without its end masses.

    Args:
        wave_number [1]: beta L, > 0.
        flexural_rigidity [N m^2]: E I, > 0.
        beam_mass [kg]: > 0.
        length [m]: > 0.

    Returns:
        [Hz] frequency.

    Raises:
        ValueError: an argument is not positive.

    Limits:
        A slender beam, the same all along, with end masses as points; feathers' drag and damping left
        out, so a shaft in flight swings a little slower.

    Source: beam-theory, beta^4 = m omega^2 / (E I).
    """
    require_positive("wave_number", wave_number, "")
    require_positive("flexural_rigidity", flexural_rigidity, "N m^2")
    require_positive("beam_mass", beam_mass, "kg")
    require_positive("length", length, "m")
    return wave_number**2 / (2.0 * math.pi) * math.sqrt(flexural_rigidity / (beam_mass * length**3))


def mode_shape(position: float, wave_number: float, rear_mass: float, front_mass: float) -> float:
    """Return the deflection of a mode at a place on the beam, as a part of that at the rear end.

    Args:
        position [1]: 0 at the rear, 1 at the front.
        wave_number [1]: beta L, a root of `characteristic` for the same end masses.
        rear_mass [1]: over the beam's mass, >= 0.
        front_mass [1]: over the beam's mass, >= 0.

    Returns:
        [1] deflection, 1 at the rear end.

    Raises:
        ValueError: wave_number is not positive, or an end mass is negative.

    Limits:
        Good to about eleven digits in the third mode, where large numbers cancel.

    Source: beam-theory, the solution that meets the end conditions of `characteristic`.
    """
    require_positive("wave_number", wave_number, "")
    require_not_negative("rear_mass", rear_mass, "")
    require_not_negative("front_mass", front_mass, "")
    z = wave_number
    rear = 2.0 * rear_mass * z
    ratio = (math.cosh(z) - math.cos(z) + rear * math.sinh(z)) / (math.sinh(z) - math.sin(z))
    x = position * z
    even = math.cos(x) + math.cosh(x) + rear * math.sinh(x)
    return (even - ratio * (math.sin(x) + math.sinh(x))) / 2.0


def nodes(wave_number: float, rear_mass: float, front_mass: float) -> tuple[float, ...]:
    """Return the places that stand still while the beam vibrates in a mode.

    Args:
        wave_number [1]: beta L, a root of `characteristic` for the same end masses.
        rear_mass [1]: over the beam's mass, >= 0.
        front_mass [1]: over the beam's mass, >= 0.

    Returns:
        [1] positions as parts of the length from the rear, rising; one more than the mode's number.

    Raises:
        ValueError: wave_number is not positive, or an end mass is negative.

    Source: beam-theory, the zeros of `mode_shape` by halving.
    """
    found = []
    left = 0.0
    left_value = mode_shape(left, wave_number, rear_mass, front_mass)
    for i in range(1, _SAMPLES + 1):
        right = i / _SAMPLES
        right_value = mode_shape(right, wave_number, rear_mass, front_mass)
        if left_value * right_value < 0.0 or right_value == 0.0:
            found.append(_zero_between(left, right, left_value, wave_number, rear_mass, front_mass))
        left, left_value = right, right_value
    return tuple(found)


def _zero_between(
    low: float, high: float, low_value: float, wave_number: float, rear_mass: float, front_mass: float
) -> float:
    """Return the place between low and high where the mode shape changes sign."""
    return halved(low, high,
                  lambda place: mode_shape(place, wave_number, rear_mass, front_mass) * low_value > 0.0)
