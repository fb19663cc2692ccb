"""Fitting what was not measured of a bow, its unstrung shape, to readings of its draw."""

import math

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.tuning import Calibration, Setup, calibrate

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator


class Fit:
    """The fitted amount, the bow calibrated with it, the root mean square of model less reading [N], and how
    the search ended: BEST (no other amount is better), LIMIT (it may not go farther) or UNCOMPUTED (no bow
    farther on can be computed).
    """

    def __init__(self, amount: float, calibration: Calibration, misfit: float, end: str) -> None:
        self.amount = amount
        self.calibration = calibration
        self.misfit = misfit
        self.end = end


BEST = "best"
LIMIT = "limit"
UNCOMPUTED = "uncomputed"

MOST_TRIALS = 6
NEAR = 0.005  # of the range: amounts this close are one


def root_mean_square(values: tuple[float, ...]) -> float:
    """Return the root of the mean of the squares.

    Args:
        values: any sequence.

    Returns:
        [any] in the unit of the values; 0 of nothing.

    Source: least-squares, the mean of the squares
    """
    return math.sqrt(sum([value * value for value in values]) / len(values)) if values else 0.0


def fit_steps(
    bow_with: "Callable[[float], Bow]",
    start: tuple[float, float],
    low: float,
    high: float,
    setup: Setup,
    weight: float,
    tiller: float,
    readings: tuple[tuple[float, float], ...],
    first: Calibration | None = None,
) -> "Generator[float, None, Fit]":
    """Find the amount with which the calibrated bow comes nearest to readings of weight at draw.

    At each amount the two stiffness factors are calibrated anew to weight and tiller, so that only the shape
    of the curve is fitted. Gauss and Newton's method on the misfits, which are nearly straight in the amount,
    their slopes taken from the two last trials. Where a bow cannot be computed, the search stays this side of
    it.

    Args:
        bow_with: makes the bow for an amount.
        start: two amounts to begin from; the bow of the first must be one that can be computed.
        low, high [any]: the amount is held between these, in its own unit.
        setup: how the bow was read.
        weight [N]: measured at the draw of `setup`.
        tiller [m]: measured.
        readings: pairs of draw [m] and weight [N].
        first: the calibration with the first amount, if it was made already.

    Yields:
        [1] how far the work is, 0 to 1.

    Returns:
        The best Fit found.

    Raises:
        ValueError: the bow of the first amount cannot be braced, drawn or calibrated.

    Source: elastica, the fit itself is derived here: Gauss and Newton on one amount.
    """

    def fit_with(amount: float, known: Calibration | None = None) -> Fit:
        calibration = known or calibrate(bow_with(amount), setup, weight, tiller, readings)
        return Fit(amount, calibration, root_mean_square(calibration.misfits), BEST)

    best = last = fit_with(start[0], first)
    before: Fit | None = None
    least, most = low, high
    wish = amount = start[1]
    for trial in range(MOST_TRIALS + 1):
        yield (trial + 1) / (MOST_TRIALS + 2)
        try:
            found = fit_with(amount)
        except ValueError:
            edge = (best.amount + amount) / 2
            least, most = (least, edge) if amount > best.amount else (edge, most)
            amount = min(max(2 * best.amount - amount, least), most) if before is None else edge
        else:
            before, last = last, found
            best = last if last.misfit <= best.misfit else best
            wish = _nearest(before, last)
            amount = min(max(wish, least), most)
        if min(abs(amount - best.amount), abs(amount - last.amount)) < NEAR * (high - low):
            break
    end = BEST
    if min(best.amount - low, high - best.amount) < NEAR * (high - low):
        end = LIMIT
    elif before is None or low < least > wish or high > most < wish:
        end = UNCOMPUTED
    return Fit(best.amount, best.calibration, best.misfit, end)


def _nearest(before: Fit, last: Fit) -> float:
    """Return where the misfits, straight on from two fits, have the least sum of squares."""
    product, square = 0.0, 0.0
    for one, other in zip(before.calibration.misfits, last.calibration.misfits):
        slope = (other - one) / (last.amount - before.amount)
        product += slope * other
        square += slope * slope
    return float(last.amount - product / square) if square > 0 else float(last.amount)
