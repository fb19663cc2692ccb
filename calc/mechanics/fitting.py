"""Fitting what was not measured of a bow, its unstrung shape, to readings of its draw."""

from collections import namedtuple

from calc.mechanics.bow import Bow
from calc.mechanics.tuning import Bench, calibrate

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator

Fit = namedtuple("Fit", "amount calibration misfit")
"""The fitted amount, the bow calibrated with it, and the root mean square of model less reading [N]."""

MOST_TRIALS = 6
NEAR = 0.005  # of the range: amounts this close are one


def root_mean_square(values: tuple[float, ...]) -> float:
    """Return the root of the mean of the squares.

    Args:
        values: any sequence.

    Returns:
        One number in the unit of the values; 0 of nothing.

    Source: least-squares
    """
    return float((sum([value * value for value in values]) / len(values)) ** 0.5) if values else 0.0


def fit_steps(
    bow_with: "Callable[[float], Bow]",
    start: tuple[float, float],
    low: float,
    high: float,
    bench: Bench,
    weight: float,
    tiller: float,
    readings: tuple[tuple[float, float], ...],
) -> "Generator[float, None, Fit]":
    """Find the amount with which the calibrated bow comes nearest to readings of weight at draw.

    At each amount the two stiffness factors are calibrated anew to weight and tiller, so that only the shape
    of the curve is fitted. Gauss and Newton's method on the misfits, which are nearly straight in the amount,
    their slopes taken from the two last trials.

    Args:
        bow_with: makes the bow for an amount.
        start: two amounts to begin from.
        low, high: the amount is held between these.
        bench: how the bow was read.
        weight [N]: measured at the bench's draw.
        tiller [m]: measured.
        readings: pairs of draw [m] and weight [N].

    Yields:
        [1] how far the work is, 0 to 1.

    Returns:
        The best Fit found.

    Raises:
        ValueError: a bow on the way cannot be braced, drawn or calibrated.

    Source: elastica
    """

    def fit_with(amount: float) -> Fit:
        calibration = calibrate(bow_with(amount), bench, weight, tiller, readings)
        return Fit(amount, calibration, root_mean_square(calibration.misfits))

    before, last = fit_with(start[0]), fit_with(start[1])
    best = before if before.misfit < last.misfit else last
    for trial in range(MOST_TRIALS):
        yield (trial + 2) / (MOST_TRIALS + 2)
        amount = min(max(_nearest(before, last), low), high)
        if abs(amount - best.amount) < NEAR * (high - low):
            break
        before, last = last, fit_with(amount)
        if last.misfit < best.misfit:
            best = last
    return best


def _nearest(before: Fit, last: Fit) -> float:
    """Return where the misfits, straight on from two fits, have the least sum of squares."""
    product, square = 0.0, 0.0
    for one, other in zip(before.calibration.misfits, last.calibration.misfits):
        slope = (other - one) / (last.amount - before.amount)
        product += slope * other
        square += slope * slope
    return float(last.amount - product / square) if square > 0 else float(last.amount)
