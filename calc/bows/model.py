"""A bow computed as it bends, as it was found, and what sanding a stretch of it does."""

from calc.bows.measured import MeasuredBow
from calc.bows.ranges import Ranges
from calc.mechanics.bow.fitting import Fit
from calc.mechanics.bow.tuning import Setup
from calc.mechanics.draw_curve import Curve


class Modelled:
    """A measured bow, how it is read, and its calibrated fit.

    fitted: whether its shape was fitted. beyond: what the marked draw counts beyond the pivot point [m].
    """

    def __init__(self, bow: MeasuredBow, setup: Setup, fit: Fit, fitted: bool, beyond: float) -> None:
        self.bow = bow
        self.setup = setup
        self.fit = fit
        self.fitted = fitted
        self.beyond = beyond


class Effect:
    """A bow once a stretch of it is sanded: weight [N], tiller [m], draw curve, and glass (back, belly) [m].

    left: glass where most came off. least: what must stay. strokes_since: since the glass was read. ranges:
    how far it may be out, None where that is not known; changes: the same of what the sanding changes, None
    where nothing is sanded, too.
    """

    def __init__(
        self, weight: float, tiller: float, curve: Curve, left: tuple[float, float],
        least: tuple[float, float], strokes_since: int, ranges: Ranges | None,
        changes: Ranges | None,
    ) -> None:
        self.weight = weight
        self.tiller = tiller
        self.curve = curve
        self.left = left
        self.least = least
        self.strokes_since = strokes_since
        self.ranges = ranges
        self.changes = changes
