"""An arrow shaft at rest: how stiff it is in the two bending tests, what it weighs, where it balances.

A bending test lays the shaft on two supports and hangs a weight in the middle. Two tests are in use, so
every name here says which one it means.
"""

from calc.checks import require_not_negative, require_positive
from calc.quantities import INCH, POUND_FORCE


class BendingTest:
    """Distance between supports [m] and the load hung in the middle [N]."""

    def __init__(self, span: float, load: float) -> None:
        self.span = span
        self.load = load


TEST_28_INCH = BendingTest(span=28 * INCH, load=1.94 * POUND_FORCE)
TEST_26_INCH = BendingTest(span=26 * INCH, load=2.0 * POUND_FORCE)

_POUND_NUMBER = 26 * INCH * POUND_FORCE  # spine pounds times deflection in the 26 inch test [N m]


class PointMass:
    """A mass [kg] and its distance [m] from the throat of the nock."""

    def __init__(self, mass: float, position: float) -> None:
        self.mass = mass
        self.position = position


def static_deflection(flexural_rigidity: float, test: BendingTest) -> float:
    """Return how far a shaft sags in the middle in a bending test.

    F L^3 / (48 E I).

    Args:
        flexural_rigidity [N m^2]: E I of the shaft, > 0.
        test: span [m] between supports and load [N] in the middle.

    Returns:
        [m] deflection at the middle.

    Raises:
        ValueError: flexural_rigidity is not positive.

    Limits:
        Small deflections; shear and the shaft's own weight left out.

    Source: beam-theory, a beam on two supports loaded in the middle; astm-f2031, the three-point test on 28
        in; rheingans-1947, the three-point test on 26 in.
    """
    require_positive("flexural_rigidity", flexural_rigidity, "N m^2")
    load: float = test.load
    span: float = test.span
    return load * span**3 / (48.0 * flexural_rigidity)


def flexural_rigidity_from_deflection(deflection: float, test: BendingTest) -> float:
    """Return the bending stiffness of a shaft that sags this far in a bending test.

    Args:
        deflection [m]: at the middle, > 0.
        test: span [m] between supports and load [N] in the middle.

    Returns:
        [N m^2] E I = F L^3 / (48 d).

    Raises:
        ValueError: deflection is not positive.

    Source: beam-theory, a beam on two supports loaded in the middle; astm-f2031, the three-point test on 28
        in; rheingans-1947, the three-point test on 26 in.
    """
    require_positive("deflection", deflection, "m")
    load: float = test.load
    span: float = test.span
    return load * span**3 / (48.0 * deflection)


def spine_weight(flexural_rigidity: float) -> float:
    """Return the shaft's spine as the draw weight that the wooden-arrow trade writes on it.

    In pounds it is 26 divided by the deflection in inches in the 26 inch test.

    Args:
        flexural_rigidity [N m^2]: E I of the shaft, > 0.

    Returns:
        [N] spine weight.

    Raises:
        ValueError: flexural_rigidity is not positive.

    Limits:
        A label, not a promise: it suits a 28 in arrow with an ordinary point from a bow with no window.

    Source: rheingans-1947, span of 26 in, load of 2 lb; spine-weight-rule, 26 over the bend in inches.
    """
    return _POUND_NUMBER / static_deflection(flexural_rigidity, TEST_26_INCH)


def flexural_rigidity_from_spine_weight(weight: float) -> float:
    """Return the bending stiffness of a shaft of this spine weight.

    Args:
        weight [N]: spine weight, 26 in lb over the deflection in the 26 inch test, > 0.

    Returns:
        [N m^2] E I.

    Raises:
        ValueError: weight is not positive.

    Source: rheingans-1947, span of 26 in, load of 2 lb; spine-weight-rule, 26 over the bend in inches.
    """
    require_positive("weight", weight, "N")
    return flexural_rigidity_from_deflection(_POUND_NUMBER / weight, TEST_26_INCH)


def forward_of_centre(balance_point: float, length: float) -> float:
    """Return how far the balance point lies ahead of the middle, as a part of the length.

    (A - L / 2) / L, both from the throat of the nock.

    Args:
        balance_point [m]: A, from the throat of the nock.
        length [m]: L, from the throat of the nock to the end of the shaft, the point left out; > 0.

    Returns:
        [1] positive when the arrow is heavier in front.

    Raises:
        ValueError: length is not positive.

    Source: amo-forward-of-centre, 100 (A - L/2) / L.
    """
    require_positive("length", length, "m")
    return balance_point / length - 0.5


def total_mass(parts: tuple[PointMass, ...]) -> float:
    """Return the mass of all parts together.

    Args:
        parts: each with mass [kg] >= 0.

    Returns:
        [kg] total.

    Raises:
        ValueError: a mass is negative.

    Source: newtonian-mechanics, masses add up.
    """
    mass = 0.0
    for part in parts:
        require_not_negative("mass of a part", part.mass, "kg")
        mass += part.mass
    return mass


def balance_point(parts: tuple[PointMass, ...]) -> float:
    """Return where an arrow balances.

    Args:
        parts: each with mass [kg] >= 0 and the position [m] of its own centre from the throat of the nock.

    Returns:
        [m] from the throat of the nock.

    Raises:
        ValueError: a mass is negative, or all are zero.

    Source: newtonian-mechanics, the centre of mass.
    """
    mass = total_mass(parts)
    require_positive("mass of all parts", mass, "kg")
    moment = 0.0
    for part in parts:
        moment += part.mass * part.position
    return moment / mass
