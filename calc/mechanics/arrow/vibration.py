"""An arrow shaft in flight: the bending vibration of a free beam that carries masses.

Lengths along the beam are given as parts of its length, from the rear end (the nock) to the front.
A wave number is beta L, where beta^4 = m omega^2 / (E I) with m the mass per length of the bare beam.
Masses carried are given as parts of the bare beam's own mass.

The feathers spread their mass over a stretch near the rear. A beam in stretches, each the same all along,
is followed from the rear to the front by closed formulas: within a stretch of density d (over that of the
bare beam) the shape is made of sines and hyperbolic sines of d^(1/4) beta x.
"""

import math

from calc.checks import require_not_negative, require_positive
from calc.numerics.roots import halved

_SAMPLES = 40  # steps along the beam when looking for its nodes; in the third mode those lie ten apart
_STRIDE = 0.1  # of the wave number, when looking for a root; two of them lie farther apart

TYPE_CHECKING = False
if TYPE_CHECKING:  # only names for rows of numbers
    State = tuple[float, float, float, float]
    Stretches = tuple[tuple[float, float, float], ...]


class Beam:
    """A free beam and what it carries: masses at its rear and its front end, and one spread from start to
    end.
    """

    def __init__(
        self, rear_mass: float, front_mass: float, spread_mass: float = 0.0, start: float = 0.0,
        end: float = 1.0,
    ) -> None:
        """Describe a beam.

        Args:
            rear_mass, front_mass, spread_mass [1]: over the bare beam's mass, >= 0.
            start, end [1]: of the stretch that carries the spread mass, from 0 at the rear to 1 at the front.

        Raises:
            ValueError: a mass is negative, or the stretch is not one on the beam.

        Source: beam-theory, a beam the same all along but for what it carries.
        """
        require_not_negative("rear_mass", rear_mass, "")
        require_not_negative("front_mass", front_mass, "")
        require_not_negative("spread_mass", spread_mass, "")
        if not 0.0 <= start < end <= 1.0:
            raise ValueError(f"the spread mass must lie on the beam, 0 to 1, got {start} to {end}")
        self.rear_mass = rear_mass
        self.front_mass = front_mass
        self.rate = math.sqrt(math.sqrt(1.0 + spread_mass / (end - start)))
        places = 0.0, start, end, 1.0
        rates = 1.0, self.rate, 1.0
        rows = [(places[i], places[i + 1], rates[i]) for i in range(3) if places[i] < places[i + 1]]
        self.stretches = tuple(rows)
        self.mirrored = tuple([(1.0 - high, 1.0 - low, rate) for low, high, rate in reversed(rows)])


def _carried(state: "State", z: float) -> "State":
    """Return shape, slope, moment and shear (derivatives by beta x) a phase z further along a stretch."""
    w, slope, moment, shear = state
    cosh, sinh, cos, sin = math.cosh(z), math.sinh(z), math.cos(z), math.sin(z)
    even, odd = (cosh + cos) / 2.0, (sinh + sin) / 2.0
    even_less, odd_less = (cosh - cos) / 2.0, (sinh - sin) / 2.0
    return (
        w * even + slope * odd + moment * even_less + shear * odd_less,
        w * odd_less + slope * even + moment * odd + shear * even_less,
        w * even_less + slope * odd_less + moment * even + shear * odd,
        w * odd + slope * even_less + moment * odd_less + shear * even,
    )


def _rescaled(state: "State", ratio: float) -> "State":
    """Return the derivatives by another beta x, the old beta over the new one being the ratio."""
    w, slope, moment, shear = state
    return w, slope * ratio, moment * ratio**2, shear * ratio**3


def _states(stretches: "Stretches", z: float, state: "State", end: float = 1.0) -> "list[State]":
    """Return the state at the start of each stretch and at the end, derivatives by beta x there."""
    states = []
    before = 1.0
    for low, high, rate in stretches:
        if low < end:
            state = _rescaled(state, before / rate)
            states.append(state)
            state = _carried(state, rate * z * (min(high, end) - low))
            before = rate
    states.append(_rescaled(state, before))
    return states


def _shifted(mass: float, z: float) -> "State":
    """Return the state at an end that is moved aside with the mass there."""
    return 1.0, 0.0, 0.0, mass * z


_TURNED = 0.0, 1.0, 0.0, 0.0  # the state at an end that is turned on its spot


def _minors(stretches: "Stretches", mass: float, z: float) -> list[float]:
    """Return the minors of the two states in mid-beam to which the ways to leave an end lead."""
    a = _states(stretches, z, _shifted(mass, z), 0.5)[-1]
    b = _states(stretches, z, _TURNED, 0.5)[-1]
    return [a[i] * b[j] - a[j] * b[i] for i in range(3) for j in range(i + 1, 4)]


def characteristic(wave_number: float, beam: Beam) -> float:
    """Return a number that is zero when a free beam can vibrate at this wave number.

    The determinant of the four states in mid-beam to which the ways to leave either end lead, divided by
    cosh z / 2 so that it stays small. From both ends at once, for large numbers cancel less so. Without a
    spread mass, with z the wave number and r, f the end masses:

        1 / cosh z - cos z + (r + f) z (sin z - tanh z cos z) + 2 r f z^2 sin z tanh z

    Args:
        wave_number [1]: z = beta L, > 0.
        beam: what vibrates.

    Returns:
        [1] zero at a natural frequency, positive below the first.

    Raises:
        ValueError: wave_number is not positive.

    Source: beam-theory, each end free of moment, its shear force moving the end mass.
    """
    require_positive("wave_number", wave_number, "")
    rear = _minors(beam.stretches, beam.rear_mass, wave_number)
    front = _minors(beam.mirrored, beam.front_mass, wave_number)
    determinant = 0.0
    for i in range(6):  # seen from the front slope and shear change sign: all parts then have the same one
        determinant += rear[i] * front[5 - i]
    return 2.0 * determinant / math.cosh(wave_number)


def wave_number(mode: int, beam: Beam) -> float:
    """Return the wave number of a bending mode.

    Masses only lower a frequency. Infinite ones at the ends leave a beam on two pins, whose first root is
    pi; were it as dense all along as where it is densest, that would be less by the fourth root of the
    density. So the first root lies no lower, and the roots above it are counted from there.

    Args:
        mode [1]: 1, 2 or 3.
        beam: what vibrates.

    Returns:
        [1] beta L, to the last digits of a float.

    Raises:
        ValueError: mode is not 1, 2 or 3.

    Source: beam-theory, the root of `characteristic` by halving.
    """
    if mode not in (1, 2, 3):
        raise ValueError(f"mode must be 1, 2 or 3, got {mode}")
    low, high = _around_a_root(beam, math.pi / beam.rate, 1.0)
    sign = 1.0
    for _ in range(mode - 1):
        sign = -sign
        low, high = _around_a_root(beam, high, sign)
    return halved(low, high, lambda z: characteristic(z, beam) * sign > 0.0)


def _around_a_root(beam: Beam, low: float, sign: float) -> tuple[float, float]:
    """Return the first stride, from a place on, at whose end `characteristic` no longer has the sign."""
    high = low + _STRIDE
    while characteristic(high, beam) * sign > 0.0:
        low, high = high, high + _STRIDE
    return low, high


def frequency(wave_number: float, flexural_rigidity: float, beam_mass: float, length: float) -> float:
    """Return the frequency of a bending mode from its wave number.

    (beta L)^2 / (2 pi) sqrt(E I / (m L^3)), m the mass of the beam without what it carries.

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
        A slender beam, as stiff all along, with end masses as points; feathers' drag and damping left
        out, so a shaft in flight swings a little slower.

    Source: beam-theory, beta^4 = m omega^2 / (E I).
    """
    require_positive("wave_number", wave_number, "")
    require_positive("flexural_rigidity", flexural_rigidity, "N m^2")
    require_positive("beam_mass", beam_mass, "kg")
    require_positive("length", length, "m")
    return wave_number**2 / (2.0 * math.pi) * math.sqrt(flexural_rigidity / (beam_mass * length**3))


class Mode:
    """The shape of a bending mode, scaled to 1 at the rear end."""

    def __init__(self, wave_number: float, beam: Beam) -> None:
        """Work out how the beam leaves its rear end and enters each stretch.

        Args:
            wave_number [1]: beta L, a root of `characteristic` of the beam.
            beam: what vibrates.

        Raises:
            ValueError: wave_number is not positive.

        Limits:
            Good to about eleven digits in the third mode, where large numbers cancel.

        Source: beam-theory, the solution that meets the end conditions of `characteristic`.
        """
        require_positive("wave_number", wave_number, "")
        self._z = wave_number
        self._stretches = beam.stretches
        shifted = _shifted(beam.rear_mass, wave_number)
        slope = -(_states(beam.stretches, wave_number, shifted)[-1][2]
                  / _states(beam.stretches, wave_number, _TURNED)[-1][2])
        self._states = _states(beam.stretches, wave_number, (1.0, slope, 0.0, shifted[3]))

    def at(self, position: float) -> float:
        """Return the deflection at a place.

        Args:
            position [1]: 0 at the rear, 1 at the front.

        Returns:
            [1] deflection, 1 at the rear end.

        Source: beam-theory, the closed formula of the stretch.
        """
        i = 0
        while i < len(self._stretches) - 1 and position > self._stretches[i][1]:
            i += 1
        start, _, rate = self._stretches[i]
        return _carried(self._states[i], rate * self._z * (position - start))[0]

    def nodes(self) -> tuple[float, ...]:
        """Return the places that stand still while the beam vibrates in this mode.

        Returns:
            [1] positions as parts of the length from the rear, rising; one more than the mode's number.

        Source: beam-theory, the zeros of the shape by halving.
        """
        found = []
        left, left_value = 0.0, self.at(0.0)
        for i in range(1, _SAMPLES + 1):
            right = i / _SAMPLES
            right_value = self.at(right)
            if left_value * right_value < 0.0 or right_value == 0.0:
                found.append(_zero_between(left, right, left_value, self))
            left, left_value = right, right_value
        return tuple(found)


def _zero_between(low: float, high: float, low_value: float, mode: Mode) -> float:
    """Return the place between low and high where the mode shape changes sign."""
    return halved(low, high, lambda place: mode.at(place) * low_value > 0.0)
