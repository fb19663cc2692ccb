"""The likely draw-force curve behind readings that have errors, with how sure each of its figures is.

Curves of bows are much alike. A curve here is a scale times a usual shape, with five ways in which bows
differ from it; readings tell how much of each, in least squares, where a little of each is what is known
before. So every figure of it comes with its standard error, also a short way beyond the last reading.
"""

import math

from calc.checks import require_positive
from calc.mechanics.draw_curve import Curve
from calc.numerics.belief import Belief, independent, learnt, product, share_below, variance
from calc.quantities import INCH

REACH = 2 * INCH
"""How far beyond the last reading the curve is told [m]."""

SHAPES = (
    (2.3425, -5.5025, 12.1412, -17.7149, 16.8775, -9.1827, 2.1668),
    (-0.2894, 0.5616, -0.3884, 0.4134, -0.9793, 1.0626, -0.3670),
    (-0.1596, 0.9494, -2.5738, 4.5217, -5.0830, 3.1968, -0.8453),
    (-0.0201, 0.4751, -2.4914, 5.7413, -6.8536, 4.1635, -1.0031),
    (0.0577, -0.3154, -0.0893, 2.9995, -6.3007, 5.2236, -1.5761),
    (0.0656, -0.9195, 4.5096, -10.5132, 12.7303, -7.7688, 1.8968),
)
"""Force over that at the last reading, in powers 1 to 7 of u: draw from brace over that to the end of the
reach. First the mean of a thousand invented bows (recurves, longbows with reflex and deflex, straight
longbows; 24 to 30 in), then what they differ by, each by one standard error, the most first. Found by
singular values from computed curves: `tests/mechanics/curves_of_bows.py`."""

WIDER = 1.3
"""How much more real bows may differ from the usual shape than the invented ones."""

LEFT_OUT = 0.0005
"""Of the force at the last reading: what those shapes miss of a curve, root mean square."""

NOTHING_KNOWN = 10.0


class LikelyCurve:
    """What readings tell of a curve. start, end: draws at brace and at the last reading [m]; scale [N]: about
    the force there; error [N]: of a reading; scatter [1]: of the readings about it over the error they were
    said to have, root mean square.
    """

    scatter = 0.0

    def __init__(self, start: float, end: float, scale: float, error: float, known: Belief) -> None:
        self.start = start
        self.end = end
        self.scale = scale
        self.error = error
        self.known = known


def likely_curve(
    draws: tuple[float, ...], forces: tuple[float, ...], start: float, error: float
) -> LikelyCurve:
    """Return the likely curve behind readings.

    Where the readings scatter about it more than their error says, the error is raised by as much.

    Args:
        draws [m]: rising, at least one, beyond start.
        forces [N]: one per draw, the last > 0.
        start [m]: draw at brace, where the force is nothing.
        error [N]: standard error of each force, > 0.

    Returns:
        LikelyCurve.

    Raises:
        ValueError: the error is not positive.

    Limits:
        Of bows whose curve is much like those of the invented ones; each reading is wrong by itself.

    Source: least-squares, with what is known before; elastica, the shapes of curves computed here.
    """
    require_positive("error", error, "N")
    scale = forces[-1]
    error = math.sqrt(error ** 2 + (LEFT_OUT * scale) ** 2)
    curve = _fitted(draws, forces, start, error)
    scatter = math.sqrt(sum([((force - likely_force(curve, draw)[0]) / error) ** 2
                             for draw, force in zip(draws, forces)]) / len(draws))
    if scatter > 1:
        curve = _fitted(draws, forces, start, error * scatter)
    curve.scatter = scatter
    return curve


def _fitted(draws: tuple[float, ...], forces: tuple[float, ...], start: float, error: float) -> LikelyCurve:
    known = independent([(1.0, NOTHING_KNOWN)] + [(0.0, WIDER)] * (len(SHAPES) - 1))
    curve = LikelyCurve(start, draws[-1], forces[-1], error, known)
    for draw, force in zip(draws, forces):
        row = _force_row(curve, draw)
        curve.known = learnt(curve.known, row, force - product(row, curve.known.mean), error)
    return curve


def _told(curve: LikelyCurve, row: list[float]) -> tuple[float, float]:
    """Return what a row comes to, and its standard error."""
    return product(row, curve.known.mean), math.sqrt(variance(curve.known, row))


def _part(curve: LikelyCurve, draw: float) -> float:
    """Return how far a draw lies from brace to the end of the reach [1]."""
    return (draw - curve.start) / _width(curve)


def _width(curve: LikelyCurve) -> float:
    """Return how long the draw is from brace to the end of the reach [m]."""
    return curve.end + REACH - curve.start


def _powers(u: float) -> list[float]:
    """Return what a shape's figures are to be multiplied by for its force at u."""
    found = [u]
    for _ in range(len(SHAPES[0]) - 1):
        found.append(found[-1] * u)
    return found


def _slopes(u: float) -> list[float]:
    """Return the same for its slope, by u."""
    return [(i + 1) * each for i, each in enumerate([1.0] + _powers(u)[:-1])]


def _areas(u: float) -> list[float]:
    """Return the same for the area below it, from 0 to u."""
    return [u * each / (i + 2) for i, each in enumerate(_powers(u))]


def _row(scale: float, terms: list[float]) -> list[float]:
    return [scale * product(shape, terms) for shape in SHAPES]


def _force_row(curve: LikelyCurve, draw: float) -> list[float]:
    return _row(curve.scale, _powers(_part(curve, draw)))


def _slope_row(curve: LikelyCurve, draw: float) -> list[float]:
    return _row(curve.scale / _width(curve), _slopes(_part(curve, draw)))


def _energy_row(curve: LikelyCurve, draw: float) -> list[float]:
    return _row(curve.scale * _width(curve), _areas(_part(curve, draw)))


def _stacking_row(curve: LikelyCurve, factor: float) -> list[float]:
    """Return the row of the slope at the last reading less the factor times that of the middle third."""
    third = (curve.end - curve.start) / 3
    first, last = _force_row(curve, curve.start + third), _force_row(curve, curve.start + 2 * third)
    return [slope - factor * (b - a) / third
            for slope, a, b in zip(_slope_row(curve, curve.end), first, last)]


def likely_force(curve: LikelyCurve, draw: float) -> tuple[float, float]:
    """Return the force at a draw, and its standard error.

    Args:
        curve: as `likely_curve` gives it.
        draw [m]: from brace to REACH beyond the last reading.

    Returns:
        [N] force and standard error.

    Source: least-squares, the error of a sum from the covariance.
    """
    return _told(curve, _force_row(curve, draw))


def likely_energy(curve: LikelyCurve, draw: float) -> tuple[float, float]:
    """Return the work from brace to a draw, and its standard error.

    Args:
        curve: as `likely_curve` gives it.
        draw [m]: from brace to REACH beyond the last reading.

    Returns:
        [J] work and standard error.

    Source: astm-f1832, stored energy is the area under the curve; least-squares, the error of a sum from the
        covariance.
    """
    return _told(curve, _energy_row(curve, draw))


def stacking_probability(curve: LikelyCurve, factor: float) -> float:
    """Return how likely the curve is steeper at the last reading than its middle by a factor.

    Args:
        curve: as `likely_curve` gives it.
        factor [1]: slope at the end over the mean slope of the middle third.

    Returns:
        [1] probability, 0 to 1.

    Source: bench-practice, stacking as a slope that stays a factor above the middle; least-squares, a normal
        spread of what is not known.
    """
    excess, error = _told(curve, _stacking_row(curve, factor))
    return share_below(excess, 0.0, error)


def best_further_draw(
    curve: LikelyCurve, factor: float, draws: tuple[float, ...]
) -> tuple[float, float] | None:
    """Return where one more reading would tell the most of whether the curve stacks.

    Args:
        curve: as `likely_curve` gives it.
        factor [1]: slope at the end over the mean slope of the middle third.
        draws [m]: that may be read.

    Returns:
        [m] the draw; [1] the standard error that is then left, over what it is. None of no draws.

    Source: least-squares, the error of a sum from the covariance.
    """
    asked = _stacking_row(curve, factor)
    best: tuple[float, float] | None = None
    for draw in draws:
        left = variance(learnt(curve.known, _force_row(curve, draw), 0.0, curve.error), asked)
        if best is None or left < best[1]:
            best = draw, left
    if best is None:
        return None
    return best[0], math.sqrt(best[1] / variance(curve.known, asked))


def as_curve(curve: LikelyCurve, pieces: int) -> Curve:
    """Return the likely curve from brace to the last reading as a cubic, piece by piece.

    Args:
        curve: as `likely_curve` gives it.
        pieces [1]: of equal width.

    Returns:
        Curve, with the likely forces and slopes.

    Source: interpolation, the cubic through two values and two slopes.
    """
    draws = [curve.start + (curve.end - curve.start) * i / pieces for i in range(pieces)] + [curve.end]
    parts = [_part(curve, draw) for draw in draws]
    shape = [curve.scale * product([each[i] for each in SHAPES], curve.known.mean)
             for i in range(len(SHAPES[0]))]
    return Curve(tuple(draws), tuple([product(shape, _powers(u)) for u in parts]),
                 tuple([product(shape, _slopes(u)) / _width(curve) for u in parts]))
