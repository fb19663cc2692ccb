"""Random bows within written bounds, plausible and a little beyond, for tests that sweep."""

import math
import random

from calc.mechanics.bow.bow import Bow, Limb

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
