"""An arrow and its shot from a bow."""

from calc.bows.arrow_bow import Stroke
from calc.mechanics import draw_curve, sections
from calc.mechanics.arrow import flight, shaft, vibration
from calc.outcome import Refused

SWING_STEPS = 20


class Shaft:
    """A bare shaft: bending stiffness [N m2] and mass [kg]."""

    def __init__(self, rigidity: float, mass: float) -> None:
        self.rigidity = rigidity
        self.mass = mass


class Feathers:
    """Mass [kg] spread over a stretch from start to end [m], from the nock's throat."""

    def __init__(self, mass: float, start: float, end: float) -> None:
        self.mass = mass
        self.start = start
        self.end = end


class Arrow:
    """A complete arrow: lengths [m] from the nock's throat, masses [kg] of its parts and in all."""

    def __init__(
        self, shaft: Shaft, length: float, point: float, nock: float, feathers: Feathers, mass: float,
        balance_point: float, forward: float,
    ) -> None:
        self.shaft = shaft
        self.length = length
        self.point = point
        self.nock = nock
        self.feathers = feathers
        self.mass = mass
        self.balance_point = balance_point
        self.forward = forward


class FirstMode:
    """The shape of the first bending swing: wave number, deflections at equal steps from the nock, and the
    places that stand still, as parts of the length [1].
    """

    def __init__(self, wave_number: float, shape: list[float], nodes: tuple[float, ...]) -> None:
        self.wave_number = wave_number
        self.shape = shape
        self.nodes = nodes


class Swing:
    """The first bending swing: frequency [Hz] and shape."""

    def __init__(self, frequency: float, mode: FirstMode) -> None:
        self.frequency = frequency
        self.mode = mode


class Shot:
    """One arrow from one bow: weights [N], energies [J], time [s], speed [m/s] and momentum [N s]."""

    def __init__(
        self, weight: float, draw_weight: float, fullness: float, energy: float, stroke_time: float,
        speed: float, kinetic_energy: float, momentum: float,
    ) -> None:
        self.weight = weight
        self.draw_weight = draw_weight
        self.fullness = fullness
        self.energy = energy
        self.stroke_time = stroke_time
        self.speed = speed
        self.kinetic_energy = kinetic_energy
        self.momentum = momentum


def wooden_shaft(modulus: float, density: float, diameter: float, length: float) -> Shaft:
    """Return a round wooden shaft's stiffness and mass."""
    return Shaft(modulus * sections.round_second_moment_of_area(diameter),
                 density * sections.round_area(diameter) * length)


def tube_shaft(modulus: float, density: float, diameter: float, wall: float, length: float) -> Shaft:
    """Return a tube's stiffness and mass."""
    if 2 * wall >= diameter:
        raise Refused("tube_wall", "The wall must be less than half the tube's diameter: it would fill the "
                      "tube. Check both figures and their units.")
    return Shaft(modulus * sections.tube_second_moment_of_area(diameter, wall),
                 density * sections.tube_area(diameter, wall) * length)


def arrow_of(bare: Shaft, length: float, front: float, nock: float, feathers: Feathers) -> Arrow:
    """Return the arrow that a shaft and its parts make."""
    parts = (
        shaft.PointMass(nock, 0.0),
        shaft.PointMass(feathers.mass, (feathers.start + feathers.end) / 2),
        shaft.PointMass(bare.mass, length / 2),
        shaft.PointMass(front, length),
    )
    balance = shaft.balance_point(parts)
    return Arrow(bare, length, front, nock, feathers, shaft.total_mass(parts), balance,
                 shaft.forward_of_centre(balance, length))


def swing_of(arrow: Arrow) -> Swing:
    """Return how the arrow swings in flight."""
    bare, feathers = arrow.shaft, arrow.feathers
    mode = _first_mode((arrow.nock / bare.mass, arrow.point / bare.mass, feathers.mass / bare.mass,
                        feathers.start / arrow.length, feathers.end / arrow.length))
    return Swing(vibration.frequency(mode.wave_number, bare.rigidity, bare.mass, arrow.length), mode)


_last_mode: tuple[object, FirstMode] | None = None


def _first_mode(carried: tuple[float, float, float, float, float]) -> FirstMode:
    """Return the first mode of a beam that carries this much; kept until it changes."""
    global _last_mode
    if _last_mode is None or _last_mode[0] != carried:
        beam = vibration.Beam(*carried)
        root = vibration.wave_number(1, beam)
        mode = vibration.Mode(root, beam)
        shape = [mode.at(step / SWING_STEPS) for step in range(SWING_STEPS + 1)]
        _last_mode = (carried, FirstMode(root, shape, mode.nodes()))
    return _last_mode[1]


def virtual_mass_of(stroke: Stroke, test_mass: float, test_speed: float) -> float:
    """Return the mass that moves with the arrow, by a speed that was read [kg]."""
    energy = draw_curve.stored_energy(stroke.draws, stroke.forces)
    if flight.kinetic_energy(test_mass, test_speed) >= energy:
        raise Refused("test_speed", "The arrow of the reading carries more energy than this bow stores. "
                      "Check speed, arrow mass, draw weight and their units.")
    return flight.virtual_mass_from_speed(energy, test_mass, test_speed)


def shot_of(weight: float, stroke: Stroke, virtual_mass: float, mass: float) -> Shot:
    """Return energy, speed and momentum of one arrow from one bow."""
    energy = draw_curve.stored_energy(stroke.draws, stroke.forces)
    peak = stroke.forces[-1]
    speed = flight.arrow_speed(energy, mass, virtual_mass)
    return Shot(weight, peak, energy / (peak * (stroke.draws[-1] - stroke.draws[0])), energy,
                flight.power_stroke_time(stroke.draws, stroke.forces, mass + virtual_mass),
                speed, flight.kinetic_energy(mass, speed), flight.momentum(mass, speed))


def deflection_of(spine_weight: float) -> float:
    """Return how far a shaft of a spine weight bends in the 28 in test [m]."""
    return shaft.static_deflection(shaft.flexural_rigidity_from_spine_weight(spine_weight),
                                   shaft.TEST_28_INCH)
