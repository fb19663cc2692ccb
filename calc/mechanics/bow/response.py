"""How a bow answers to what comes off its limbs, from what is known at both ends of a plan."""

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Rates = tuple[tuple[float, float], tuple[float, float]]


class Answer:
    """Weight [N] and tiller [m] with some removals, their rates by each of them, and how far that is along
    the plan [1], with what of it each metre off a limb makes [1/m].
    """

    def __init__(
        self, weight: float, tiller: float, rates: "Rates", progress: float, progress_rate: float
    ) -> None:
        self.weight = weight
        self.tiller = tiller
        self.rates = rates
        self.progress = progress
        self.progress_rate = progress_rate


class Response:
    """Weight and tiller of a bow by the removal from either limb, between none and a planned one.

    removals [m]: planned off the upper and the lower limb, together more than none. before, after: (weight
    [N], tiller [m]) without them and with them. rates_before, rates_after: of (weight, tiller) by each.
    """

    def __init__(
        self, removals: tuple[float, float], before: tuple[float, float], after: tuple[float, float],
        rates_before: "Rates", rates_after: "Rates",
    ) -> None:
        self.removals = removals
        self.before = before
        self.after = after
        self.rates_before = rates_before
        self.rates_after = rates_after

    def at(self, upper: float, lower: float) -> Answer:
        """Return what the bow answers to removals.

        Along the plan a cubic with the values and rates of both ends, beside it straight by rates that change
        evenly along it; beyond either end all goes on straight.

        Args:
            upper [m]: off the upper limb.
            lower [m]: off the lower one.

        Returns:
            Answer.

        Limits:
            Within 0.5 % of weight and 0.01 in of tiller of bows computed one by one, on invented bows.

        Source: interpolation, the cubic with values and slopes at both ends.
        """
        whole = self.removals[0] + self.removals[1]
        progress = (upper + lower) / whole
        inside = min(1.0, max(0.0, progress))
        aside = upper - progress * self.removals[0]  # and as much less off the lower
        values, rates = [], []
        for which in (0, 1):
            early, late = self.rates_before[which], self.rates_after[which]
            first = early[0] * self.removals[0] + early[1] * self.removals[1]
            last = late[0] * self.removals[0] + late[1] * self.removals[1]
            along, slope = _cubic(self.before[which], self.after[which], first, last, inside)
            along += slope * (progress - inside)
            here = early[0] + (late[0] - early[0]) * inside, early[1] + (late[1] - early[1]) * inside
            values.append(along + (here[0] - here[1]) * aside)
            turn = 0.0
            if inside == progress:
                turn = (late[0] - early[0] - late[1] + early[1]) * aside
            onward = (slope + turn - here[0] * self.removals[0] - here[1] * self.removals[1]) / whole
            rates.append((here[0] + onward, here[1] + onward))
        return Answer(values[0], values[1], (rates[0], rates[1]), progress, 1 / whole)


def _cubic(start: float, end: float, first: float, last: float, t: float) -> tuple[float, float]:
    """Return value and slope, at t from 0 to 1, of the cubic with these values and slopes at its ends."""
    rise = end - start
    square = 3 * rise - 2 * first - last
    cube = first + last - 2 * rise
    return (start + t * (first + t * (square + t * cube)), first + t * (2 * square + 3 * t * cube))
