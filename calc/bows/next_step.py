"""The next batch as a decision: the largest one that keeps the risk of having taken too much small."""

import math

from calc.bows.learning import (
    BACK,
    BELLY,
    FIRST_PAPER,
    LOWER,
    UPPER,
    Batch,
    Model,
    done,
    glass_row,
)
from calc.bows.stroke_log import BATCH_SHARE
from calc.numerics.belief import Belief, density, given, product, share_below, variance
from calc.numerics.roots import solved

REACH, STRIDE = 4.0, 0.5
"""In standard errors of what a stroke takes: how far, and in which steps, its risk is summed up."""

HALVINGS = 12
MOST_TRIALS = 20
NEAR = 1e-9  # [m]


class Aim:
    """What the faces shall bring the bow to: weight [N], tiller [m], the most that may be off a limb [m]; the
    glass read on back and belly when the log began less finish sanding, and the least of it to stay [m]; the
    part of a removal that comes off the belly [1].
    """

    def __init__(
        self, weight: float, tiller: float, most: float, glass: tuple[float, float],
        least: tuple[float, float], belly_share: float,
    ) -> None:
        self.weight = weight
        self.tiller = tiller
        self.most = most
        self.glass = glass
        self.least = least
        self.belly_share = belly_share

    def share_of(self, face: int) -> float:
        """Return which part of a removal comes off a face, BACK or BELLY."""
        return self.belly_share if face == BELLY else 1 - self.belly_share


class Left:
    """Still to come off the upper and the lower limb [m], and in strokes with the newest paper, each with its
    standard error; and whether glass stands in the way.
    """

    def __init__(
        self, removals: tuple[float, float], strokes: tuple[float, float], errors: tuple[float, float],
        glass: bool,
    ) -> None:
        self.removals = removals
        self.strokes = strokes
        self.errors = errors
        self.glass = glass


def left_of(model: Model, belief: Belief, aim: Aim, paper: int) -> Left:
    """Return what is left to do; where a limb would have to gain, it stays and the weight decides."""
    upper, lower = _together(model, belief, aim)
    free = (True, True)
    if upper < 0.0 or lower < 0.0:
        free = (upper >= lower, lower > upper)
        alone = _alone(model, belief, aim, 0 if free[0] else 1)
        upper, lower = (alone, 0.0) if free[0] else (0.0, alone)
    glass = False
    for limb, more in ((UPPER, upper), (LOWER, lower)):
        glass = glass or belief.mean[limb] + more > aim.most + NEAR
    upper = min(upper, max(0.0, aim.most - belief.mean[UPPER]))
    lower = min(lower, max(0.0, aim.most - belief.mean[LOWER]))
    each = math.exp(belief.mean[FIRST_PAPER + paper])
    errors = _errors(model, belief, (upper, lower), free, paper, each)
    return Left((upper, lower), (upper / each, lower / each), errors, glass)


def _ahead(belief: Belief, upper: float, lower: float) -> list[float]:
    """Return the values believed with so much more off either limb [m]."""
    mean = list(belief.mean)
    mean[UPPER] += upper
    mean[LOWER] += lower
    return mean


def _together(model: Model, belief: Belief, aim: Aim) -> tuple[float, float]:
    """Return what off both limbs brings weight and tiller where they are wanted, be it negative [m]."""
    amounts = (0.0, 0.0)
    for _ in range(MOST_TRIALS):
        weight, tiller = model.reading(_ahead(belief, amounts[0], amounts[1]))
        step = solved((weight[1][UPPER], weight[1][LOWER]), (tiller[1][UPPER], tiller[1][LOWER]),
                      (aim.weight - weight[0], aim.tiller - tiller[0]))
        if step is None:
            break
        longest = model.response.removals[0] + model.response.removals[1]
        part = min(1.0, longest / max(abs(step[0]), abs(step[1]), NEAR))
        amounts = amounts[0] + part * step[0], amounts[1] + part * step[1]
        if max(abs(step[0]), abs(step[1])) < NEAR:
            break
    return amounts


def _alone(model: Model, belief: Belief, aim: Aim, limb: int) -> float:
    """Return what off one limb alone brings the weight down to the aim [m], 0 where it is there."""
    amount = 0.0
    for _ in range(MOST_TRIALS):
        ahead = _ahead(belief, amount if limb == 0 else 0.0, amount if limb == 1 else 0.0)
        weight, row = model.reading(ahead)[0]
        if not row[UPPER + limb] < 0:
            return 0.0
        step = (aim.weight - weight) / row[UPPER + limb]
        amount = max(0.0, amount + step)
        if abs(step) < NEAR:
            break
    return amount


def _errors(
    model: Model, belief: Belief, more: tuple[float, float], free: tuple[bool, bool], paper: int, each: float
) -> tuple[float, float]:
    """Return the standard error of the strokes left on either limb, to first order."""
    weight, tiller = model.reading(_ahead(belief, more[0], more[1]))
    found = []
    for limb in (0, 1):
        if not free[limb]:
            found.append(0.0)
            continue
        if free[1 - limb]:
            parts = [solved((weight[1][UPPER], weight[1][LOWER]), (tiller[1][UPPER], tiller[1][LOWER]),
                            (-one, -other)) for one, other in zip(weight[1], tiller[1])]
            row = [0.0 if part is None else part[limb] / each for part in parts]
        else:
            row = [-one / weight[1][UPPER + limb] / each for one in weight[1]]
        row[FIRST_PAPER + paper] -= more[limb] / each
        found.append(math.sqrt(variance(belief, row)))
    return found[0], found[1]


# The risk ------------------------------------------------------------------------


class Risk:
    """Shares of the cases in which a batch ends below the aim, or with less glass than must stay on the back
    or on the belly [1].
    """

    def __init__(self, weight: float, back: float, belly: float) -> None:
        self.weight = weight
        self.back = back
        self.belly = belly

    @property
    def whole(self) -> float:
        """Of any of them, at most."""
        return min(1.0, self.weight + self.back + self.belly)


def risk_of(model: Model, belief: Belief, aim: Aim, batch: Batch) -> Risk:
    """Return the risk of a batch, summed up over what a stroke with its paper may take."""
    place = FIRST_PAPER + batch.paper
    known, shifts = given(belief, place)
    strokes = (batch.upper, batch.lower)
    middle = done(model, known, batch, belief.mean[place])
    rows = (model.reading(middle.mean)[0][1], glass_row(model, middle, BACK, aim.share_of(BACK)),
            glass_row(model, middle, BELLY, aim.share_of(BELLY)))
    spreads = [variance(known, row) for row in rows]
    zs = [0.0]
    if shifts[place] > 0 and max(strokes) > 0:
        zs = [STRIDE * i - REACH for i in range(int(2 * REACH / STRIDE) + 1)]
    sums = [0.0, 0.0, 0.0]
    for z in zs:
        mean = [value + shift * z for value, shift in zip(belief.mean, shifts)]
        each = math.exp(mean[place])
        mean[UPPER] += strokes[0] * each
        mean[LOWER] += strokes[1] * each
        part = STRIDE * density(z) if len(zs) > 1 else 1.0
        borders = (aim.weight, aim.least[0] - aim.glass[0], aim.least[1] - aim.glass[1])
        ends = (model.reading(mean)[0][0], product(rows[1], mean), product(rows[2], mean))
        for which in (0, 1, 2):
            scatter = sum([(rows[which][UPPER + limb] * strokes[limb] * each * model.scatter) ** 2
                           for limb in (0, 1)])
            sums[which] += part * share_below(borders[which], ends[which],
                                              math.sqrt(spreads[which] + scatter))
    return Risk(sums[0], sums[1], sums[2])


def next_of(
    model: Model, belief: Belief, aim: Aim, left: Left, paper: int, share: float, unread: bool
) -> tuple[Batch, Risk]:
    """Return the next batch and its risk: the largest, of a paper without a reading a part of it."""
    batch, risk = largest_batch(model, belief, aim, left, paper, share)
    if not unread:
        return batch, risk
    batch = Batch(float(int(BATCH_SHARE * batch.upper)), float(int(BATCH_SHARE * batch.lower)), paper, 0.0,
                  0.0)
    return batch, risk_of(model, belief, aim, batch)


def largest_batch(
    model: Model, belief: Belief, aim: Aim, left: Left, paper: int, share: float
) -> tuple[Batch, Risk]:
    """Return the largest batch, shared between the limbs as what is left is, of no more risk than a share."""
    def part_of(part: float) -> Batch:
        return Batch(float(int(part * left.strokes[0])), float(int(part * left.strokes[1])), paper, 0.0, 0.0)

    none = part_of(0.0)
    found, risk = none, risk_of(model, belief, aim, none)
    if risk.whole > share:
        return found, risk
    low, high = 0.0, 1.0
    part = 1.0
    for _ in range(HALVINGS):
        batch = part_of(part)
        if (batch.upper, batch.lower) == (found.upper, found.lower):
            low = part
        else:
            tried = risk_of(model, belief, aim, batch)
            if tried.whole <= share:
                low, found, risk = part, batch, tried
            else:
                high = part
        if part == 1.0 and low == 1.0:
            break
        part = (low + high) / 2
    return found, risk
