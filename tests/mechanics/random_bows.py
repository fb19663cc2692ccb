"""Random bows within written bounds, plausible and a little beyond, for tests that sweep."""

import math
import random
from typing import NamedTuple

from calc.mechanics.bow.bow import Bow, Limb
from calc.quantities import INCH

BOUNDS = {
    "limb length, m": (0.35, 0.85),
    "fadeout above mid riser, m": (0.08, 0.35),
    "fadeout ahead of mid riser, m": (-0.06, 0.06),
    "angle at the fadeout, rad": (-0.25, 0.25),
    "deflex along the limb, rad": (-0.3, 0.3),
    "recurve at the tip, rad": (0.0, 1.4),
    "share of the limb that is recurved": (0.15, 0.7),
    "stiffness at the fadeout, N m^2": (4.0, 80.0),
    "stiffness at the nock, share of that": (0.08, 0.9),
    "lower limb's stiffness, share of the upper's": (0.8, 1.25),
    "lower limb's length beyond the upper's, m": (-0.03, 0.03),
    "pivot beside mid riser, m": (-0.04, 0.04),
    "string stiffness, N per unit strain": (8000.0, 200000.0),
    "brace height, m": (0.12, 0.26),
    "draw, m": (0.40, 0.80),
}


def random_case(seed: int) -> tuple[Bow, float, float]:
    """Return a bow, a brace height and a draw distance from a seed."""
    chance = random.Random(seed)
    one = {name: chance.uniform(low, high) for name, (low, high) in BOUNDS.items()}
    stations = chance.choice((2, 3, 5, 9, 15, 25))

    def limb(length: float, factor: float) -> Limb:
        start = 1.0 - one["share of the limb that is recurved"]
        angles, stiffness = [], []
        for i in range(stations):
            t = i / (stations - 1)
            bend = one["recurve at the tip, rad"] * max(0.0, (t - start) / (1.0 - start)) ** 2
            angles.append(
                one["angle at the fadeout, rad"] + t * one["deflex along the limb, rad"] - bend
            )
            share = one["stiffness at the nock, share of that"]
            stiffness.append(
                factor * one["stiffness at the fadeout, N m^2"] * (share + (1.0 - share) * (1.0 - t))
            )
        base = (one["fadeout ahead of mid riser, m"], one["fadeout above mid riser, m"])
        return Limb(length, base, angles, stiffness)

    length = one["limb length, m"]
    upper = limb(length, 1.0)
    lower = limb(
        length + one["lower limb's length beyond the upper's, m"],
        one["lower limb's stiffness, share of the upper's"],
    )
    pivot = (0.5 * one["pivot beside mid riser, m"], one["pivot beside mid riser, m"])
    elastic = chance.random() < 0.5
    bow = Bow(upper, lower, pivot, one["string stiffness, N per unit strain"] if elastic else None)
    assert math.isfinite(length)
    return bow, one["brace height, m"], one["draw, m"]


class Tipped(NamedTuple):
    """A limb whose recurve ends before the nock, in a straight end that the string lies on when braced.

    length [in]; base: (x, y) of the fadeout [in]; angle at it [rad]; deflex to where the recurve starts and
    recurve [rad]; shares of the limb where the recurve starts and ends; stiffness at the fadeout [N m^2],
    and the nock's share of it.
    """

    length: float
    base: tuple[float, float]
    angle: float
    deflex: float
    recurve: float
    start: float
    end: float
    stiffness: float
    nock_share: float

    def limb(self) -> Limb:
        """Return the limb, of 21 stations."""
        angles, stiffness = [], []
        for i in range(21):
            t = i / 20
            bent = min(1.0, max(0.0, (t - self.start) / (self.end - self.start)))
            angles.append(
                self.angle + self.deflex * min(t, self.start) - self.recurve * bent * bent * (3 - 2 * bent)
            )
            stiffness.append(self.stiffness * (1 - (1 - self.nock_share) * t))
        return Limb(self.length * INCH, (self.base[0] * INCH, self.base[1] * INCH), angles, stiffness)


def usual_case(seed: int) -> tuple[Bow, float, float]:
    """Return a recurve with straight tip ends within usual measures, a brace height and a draw distance."""
    chance = random.Random(seed)
    length, deflex = chance.uniform(15, 26), chance.uniform(0, 0.25)
    angle, recurve, start = chance.uniform(-0.05, 0.15), chance.uniform(0.2, 1.3), chance.uniform(0.4, 0.8)
    end, stiffness = chance.uniform(start + 0.08, 0.97), chance.uniform(15, 50)
    share, base = chance.uniform(0.15, 0.6), (chance.uniform(-0.8, 2.0), chance.uniform(7, 11))
    limb = Tipped(length, base, angle, deflex, recurve, start, end, stiffness, share).limb()
    lower = limb.stiffened(chance.uniform(0.93, 1.07))
    string = chance.choice((None, chance.uniform(10_000, 60_000)))
    height, draw = chance.uniform(7, 9) * INCH, (chance.uniform(20, 30) - 1.75) * INCH
    return Bow(limb, lower, (0.0, 0.0), string), height, draw
