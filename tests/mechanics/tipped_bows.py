"""Invented recurves whose straight tip ends let go of the string all at once, for tests that look there."""

from calc.mechanics.bow.bow import Bow
from calc.quantities import INCH
from tests.mechanics.random_bows import Tipped

# limb, lower limb's share of the upper's stiffness, string stiffness [N], brace height [in]
TIPPED = {
    "unlike limbs": (Tipped(21, (1.9, 8.9), -0.04, 0.07, 0.92, 0.48, 0.67, 29, 0.44), 1.07, 30_000, 7),
    "short and stiff": (Tipped(17.7, (1.9, 9.9), -0.02, 0.13, 1.1, 0.49, 0.79, 47, 0.33), 1.01, 41_000, 7.75),
    "long tips": (Tipped(25.75, (0.3, 10.5), 0.09, 0.11, 1.0, 0.49, 0.6, 36, 0.2), 1.05, 30_000, 7.25),
    "a string that gives": (Tipped(19, (0.5, 7.75), 0.1, 0.05, 1.2, 0.53, 0.71, 42, 0.2), 0.98, 11_000, 7.5),
}

NONE_BEYOND = (Tipped(16.6, (0.3, 9.1), 0.11, 0.14, 0.97, 0.41, 0.58, 15.5, 0.18), 0.94, 30_000, 8.9)


def tipped(limb: Tipped, lower: float, string: float, height: float) -> tuple[Bow, float]:
    """Return such a bow and its brace height [m]."""
    upper = limb.limb()
    return Bow(upper, upper.stiffened(lower), (0.0, 0.0), string), height * INCH
