"""Draw-force curves of invented bows from the bow model, within what bowyers make, each from a seed."""

import functools
import random

import numpy as np
from scipy.interpolate import CubicSpline

from calc.bows.measured import family_profile, family_throat
from calc.mechanics.bow.bow import Bow, Limb

INCH = 0.0254
POUND_FORCE = 4.4482216152605
REACH = 2 * INCH
POINTS = 33

BOUNDS = {  # in: bow length, riser length, brace height; the family's offsets times
    "recurve": ((56, 70), (14, 24), (7, 9.25), (0.5, 1.25)),
    "reflex-deflex": ((58, 70), (11, 19), (6.25, 8.25), (0.4, 1.25)),
    "straight": ((60, 72), (10, 17), (6, 7.75), (1, 1)),
}


class CurveOfBow:
    """A computed curve: start, end of the readings [m], and forces [N] on to REACH beyond; from the pivot."""

    def __init__(self, family, start, end, force):
        self.family, self.start, self.end, self.force = family, start, end, force

    def steepness(self):
        """Return the slope at the end over the mean slope of the middle third."""
        third = (self.end - self.start) / 3
        rise = self.force(self.end - third) - self.force(self.start + third)
        return float(self.force(self.end, 1) / (rise / third))


@functools.cache
def curve_of_bow(seed):
    chance = random.Random(seed)
    family = chance.choice(("recurve", "recurve", "reflex-deflex", "straight"))
    length, riser, brace, scale = (chance.uniform(*bound) for bound in BOUNDS[family])
    limb_length = (length - riser) / 2 * INCH
    angles = family_profile(family, limb_length, scale).angles
    share, power = chance.uniform(0.10, 0.40), chance.uniform(0.7, 1.6)
    last = len(angles) - 1
    stiffness = [25 * (share + (1 - share) * (1 - i / last) ** power) for i in range(last + 1)]
    base = (family_throat(family, limb_length), riser / 2 * INCH)
    limb = Limb(limb_length, base, list(angles), stiffness)
    start, end = brace * INCH, (chance.uniform(24, 30) - 1.75) * INCH
    weight = chance.uniform(28, 60) * POUND_FORCE
    draws = np.linspace(start, end + REACH, POINTS)
    bow = Bow(limb, limb, (0.0, 0.0), 60000.0)
    bow.brace(start)
    force = CubicSpline(draws, [0.0] + [each.force for each in bow.curve(draws[1:].tolist())])
    return CurveOfBow(family, start, end, CubicSpline(draws, force(draws) * weight / force(end)))


def read(curve, gap, error, chance):
    """Return draws every gap [m] back from the end to an inch beyond brace, and forces with errors."""
    count = int((curve.end - curve.start - INCH) / gap)
    draws = [curve.end - gap * (count - i) for i in range(count)] + [curve.end]
    return tuple(draws), tuple(float(curve.force(draw)) + chance.gauss(0, error) for draw in draws)


def shapes(curves, most):
    """Return the mean curve and what curves differ by, in powers of the part of the draw from brace: each by
    one standard error, the most first.
    """
    parts = np.linspace(0, 1, POINTS)
    powers = np.array([parts ** (i + 1) for i in range(7)]).T
    fitted = []
    for curve in curves:
        along = curve.start + parts * (curve.end + REACH - curve.start)
        fitted.append(np.linalg.lstsq(powers, curve.force(along) / curve.force(curve.end), rcond=None)[0])
    fitted = np.array(fitted) @ powers.T
    mean = fitted.mean(axis=0)
    _, sizes, patterns = np.linalg.svd(fitted - mean, full_matrices=False)
    rows = [mean] + [sizes[i] / len(curves) ** 0.5 * patterns[i] for i in range(most)]
    return parts, np.array(rows)
