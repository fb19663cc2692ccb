"""Nine invented recurves whose unstrung shape is known everywhere, given by curvature along the limb."""

import math

from calc.mechanics.bow.limb import STATIONS, Profile

PIECES = 2000
LENGTH = 0.57

FIVE = (0.40, 0.65, 0.80, 0.90, 1.00)
EIGHT = (0.25, 0.45, 0.58, 0.68, 0.77, 0.85, 0.93, 1.00)
EVEN = (0.20, 0.40, 0.60, 0.80, 1.00)


def _growing(power):
    return lambda t: (power + 1) * t**power


def _hook(start, full):
    def bend(t):
        part = min(1.0, max(0.0, (t - start) / (full - start)))
        return part * part * (3.0 - 2.0 * part) / (1.0 - 0.5 * (start + full))  # turns by 1 in all
    return bend


def _straight_ended(middle, width):
    whole = 0.5 * width * math.sqrt(2.0 * math.pi) * (
        math.erf((1.0 - middle) / width / math.sqrt(2.0)) + math.erf(middle / width / math.sqrt(2.0)))
    return lambda t: math.exp(-0.5 * ((t - middle) / width) ** 2) / whole


RECURVES = {  # angle at the fadeout, turn toward the belly spread evenly, turn back [rad], and where that is
    "grows gently": (0.04, 0.08, 0.6, _growing(2)),
    "grows": (0.06, 0.05, 0.9, _growing(3)),
    "grows steeply": (0.05, 0.00, 1.2, _growing(5)),
    "long hook": (0.03, 0.10, 0.7, _hook(0.4, 0.8)),
    "hook": (0.06, 0.00, 0.9, _hook(0.5, 0.9)),
    "short hook": (0.05, -0.05, 1.2, _hook(0.6, 0.9)),
    "long straight end": (0.05, 0.05, 0.7, _straight_ended(0.70, 0.14)),
    "straight end": (0.04, 0.08, 0.9, _straight_ended(0.78, 0.11)),
    "short straight end": (0.06, 0.00, 1.1, _straight_ended(0.82, 0.10)),
}

MUCH_REFLEX = "long straight end"  # its tip lies 3 in behind; tiller answers three times as fast


def known_shape(name, length=LENGTH):
    """Return the unstrung shape, and its angle [rad], x and y [m] at each of PIECES + 1 places."""
    angle, spread, turn, bend = RECURVES[name]
    step = 1.0 / PIECES
    rows = [(angle, 0.0, 0.0)]
    x = y = 0.0
    for i in range(PIECES):
        middle = angle + 0.5 * step * (spread - turn * bend((i + 0.25) * step))
        angle += step * (spread - turn * bend((i + 0.5) * step))
        x += length * step * math.sin(middle)
        y += length * step * math.cos(middle)
        rows.append((angle, x, y))
    return Profile(length, tuple([row[0] for row in rows[:: PIECES // (STATIONS - 1)]])), rows


def offsets(rows, places):
    """Return (y, x) [m] at places along the limb, over its length."""
    return tuple([(rows[round(at * PIECES)][2], rows[round(at * PIECES)][1]) for at in places])
