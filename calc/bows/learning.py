"""What a log of strokes teaches of one bow, beginning with what the computed bow expects of it."""

import math

from calc.bows.ranges import Planned, Ranges
from calc.bows.reading_errors import ReadingErrors
from calc.bows.stroke_log import FRESH
from calc.mechanics.bow.reduction import Reduction
from calc.mechanics.bow.response import Response
from calc.numerics.belief import (
    Belief,
    independent,
    learnt,
    moved,
    product,
    stretched,
    variance,
    with_another,
)
from calc.numerics.normal import NORMAL_95

WEIGHT, TILLER, BACK, BELLY, CORE, SECTIONS_WEIGHT, SECTIONS_TILLER, LEAN, UPPER, LOWER = range(10)
"""What is believed: of the bow before any strokes, weight [N] and tiller [m] beyond those read; glass on back
and belly, core and sections, each in its standard errors; the share by which tiller changes more than
computed; what is off either limb [m]. Behind them for each paper the logarithm of what a stroke takes [m]."""

FIRST_PAPER = 10

PAPER_DOUBT = math.log(FRESH) / NORMAL_95
"""Of the logarithm of what a stroke with an unknown paper takes: three times as much, or a third (common
practice)."""

LEAN_OF_FAMILY = 0.25
"""By which tiller may change more or less than computed with a family's shape: up to half of the change on
invented recurves, taken as two standard errors."""

LEAN_MEASURED = 0.05
"""The same where the shape was measured at five places or more."""

MOST_ROUNDS = 8
CLOSE = 1e-6  # of a logarithm


class Batch:
    """Strokes on either limb, on which paper (from 0), and what was read after them [N], [m]."""

    def __init__(self, upper: float, lower: float, paper: int, weight: float, tiller: float) -> None:
        self.upper = upper
        self.lower = lower
        self.paper = paper
        self.weight = weight
        self.tiller = tiller


class Spoken:
    """What was foretold of one reading, as value with the two ends of its 95 % range, and what was read."""

    def __init__(self, foretold: float, low: float, high: float, read: float) -> None:
        self.foretold = foretold
        self.low = low
        self.high = high
        self.read = read

    @property
    def beyond(self) -> bool:
        """Whether the reading lies outside the range."""
        return not self.low <= self.read <= self.high


class Told:
    """A batch with what was foretold and read of weight and tiller after it."""

    def __init__(self, batch: Batch, weight: Spoken, tiller: Spoken) -> None:
        self.batch = batch
        self.weight = weight
        self.tiller = tiller


class Model:
    """The bow as computed: how it answers to removals, and what wrong readings do to that.

    effects: of one standard error of each from BACK to SECTIONS_TILLER on (weight [N], tiller [m]) at the
    plan's end, the bow's own weight and tiller being as read. scatter [1]: of what a batch takes, beside the
    mean of its paper.
    """

    def __init__(
        self, response: Response, ranges: Ranges, errors: ReadingErrors, scatter: float, lean: float
    ) -> None:
        self.response = response
        self.carried = ranges.carried
        self.errors = errors
        self.scatter = scatter
        self.lean = lean
        named = {each.name: (each.weight, each.tiller) for each in ranges.causes}
        sections = named["Thickness of the sections"]
        self.effects = (named["Glass on the back"], named["Glass on the belly"], named["The core's modulus"],
                        (sections[0], 0.0), (0.0, sections[1]))

    def reading(self, mean: list[float]) -> "tuple[tuple[float, list[float]], tuple[float, list[float]]]":
        """Return weight [N] and tiller [m] by the values believed, each with its rates by them."""
        answer = self.response.at(mean[UPPER], mean[LOWER])
        before = self.response.before
        found = []
        for which, value, start in ((0, answer.weight, before[0]), (1, answer.tiller, before[1])):
            row = [0.0] * len(mean)
            kept = (1.0, 0.0) if which == 0 else (0.0, 1.0)
            for place in (WEIGHT, TILLER):
                row[place] = kept[place] + answer.progress * (self.carried[which][place] - kept[place])
            for place, effect in enumerate(self.effects):
                row[BACK + place] = answer.progress * effect[which]
            more = 1.0 + mean[LEAN] if which == 1 else 1.0
            if which == 1:
                row[LEAN] = value - start
            total = start + more * (value - start) + product(row[:LEAN], mean[:LEAN])
            by_progress = answer.progress_rate * (
                sum([effect[which] * mean[BACK + place] for place, effect in enumerate(self.effects)])
                + sum([(self.carried[which][place] - kept[place]) * mean[place] for place in (0, 1)]))
            for limb in (0, 1):
                row[UPPER + limb] = more * answer.rates[which][limb] + by_progress
            found.append((total, row))
        return found[0], found[1]


def model_of(
    planned: Planned, reduction: Reduction, ranges: Ranges, errors: ReadingErrors, scatter: float,
    measured_shape: bool,
) -> Model:
    """Return the computed bow for learning, from a plan that takes something off."""
    before, after = planned.before, planned.after
    response = Response(planned.removals, (before.weight, before.tiller), (after.weight, after.tiller),
                        reduction.rates, ranges.taken)
    return Model(response, ranges, errors, scatter, LEAN_MEASURED if measured_shape else LEAN_OF_FAMILY)


def first_belief(model: Model) -> Belief:
    """Return what is believed before any strokes, the first row of the log having been read."""
    return independent([(0.0, model.errors.weight), (0.0, model.errors.tiller)] + [(0.0, 1.0)] * 5
                       + [(0.0, model.lean), (0.0, 0.0), (0.0, 0.0)])


def after_batch(model: Model, belief: Belief, batch: Batch) -> tuple[Belief, Told]:
    """Return what is believed after a batch and its readings, and what had been foretold of them.

    What a stroke takes is found again and again about its last value, until it stays.
    """
    place = FIRST_PAPER + batch.paper
    told = foretold(model, belief, batch)
    about, at = belief.mean[place], done(model, belief, batch, belief.mean[place]).mean
    after = belief
    for _ in range(MOST_ROUNDS):
        after = done(model, belief, batch, about)
        for which, error, read in ((0, model.errors.weight, batch.weight),
                                   (1, model.errors.tiller, batch.tiller)):
            value, row = model.reading(at)[which]
            beside = product(row, [one - other for one, other in zip(after.mean, at)])
            after = learnt(after, row, read - value - beside, error)
        at = after.mean
        if abs(at[place] - about) < CLOSE:
            break
        about = at[place]
    return after, told


def foretold(model: Model, belief: Belief, batch: Batch) -> Told:
    """Return what is foretold of the readings after a batch."""
    place = FIRST_PAPER + batch.paper
    sanded = done(model, belief, batch, belief.mean[place])
    weight, tiller = model.reading(sanded.mean)
    return Told(batch, _spoken(weight, sanded, place, model.errors.weight, batch.weight),
                _spoken(tiller, sanded, place, model.errors.tiller, batch.tiller))


def _spoken(
    reading: tuple[float, list[float]], sanded: Belief, place: int, error: float, read: float
) -> Spoken:
    """Return what is foretold of a reading; its range is that of a logarithm in what a stroke takes."""
    value, row = reading
    of_paper = sanded.covariance[place][place]
    by_paper = product(row, [line[place] for line in sanded.covariance])
    spread = variance(sanded, row) + error * error
    ends = []
    for up in (True, False):
        wider = stretched(sanded.error(place), up)
        more = (wider * wider - 1) * by_paper * by_paper / of_paper if of_paper > 0 else 0.0
        ends.append(NORMAL_95 * math.sqrt(max(0.0, spread + more)))
    below, above = (ends[0], ends[1]) if by_paper < 0 else (ends[1], ends[0])
    return Spoken(value, value - below, value + above, read)


def done(model: Model, belief: Belief, batch: Batch, about: float) -> Belief:
    """Return what is believed once strokes have been done: what is off either limb, linear about a value of
    the logarithm of what a stroke takes.
    """
    place = FIRST_PAPER + batch.paper
    each = math.exp(about)
    taken = each * (1 + belief.mean[place] - about)
    for limb, strokes in ((UPPER, batch.upper), (LOWER, batch.lower)):
        if strokes > 0:
            row = [0.0] * len(belief.mean)
            row[limb] = 1.0
            row[place] = strokes * each
            belief = moved(belief, limb, row, belief.mean[limb] + strokes * taken,
                           strokes * each * model.scatter)
    return belief


def with_paper(belief: Belief, takes: float) -> Belief:
    """Return the belief with a paper more of which only a likely value is known [m a stroke]."""
    return with_another(belief, math.log(takes), PAPER_DOUBT)


class Again:
    """A reading of thickness or glass taken at the last row: what of each value it takes, from where it
    starts, its standard error, and what was read [m].
    """

    def __init__(self, row: list[float], start: float, error: float, read: float) -> None:
        self.row = row
        self.start = start
        self.error = error
        self.read = read

    def spoken(self, belief: Belief) -> Spoken:
        """Return what a belief foretells of it."""
        value = self.start + product(self.row, belief.mean)
        half = NORMAL_95 * math.sqrt(variance(belief, self.row) + self.error * self.error)
        return Spoken(value, value - half, value + half, self.read)

    def taught(self, belief: Belief) -> Belief:
        """Return the belief after it."""
        return learnt(belief, self.row, self.read - self.start - product(self.row, belief.mean), self.error)


def limb_again(model: Model, belief: Belief, limb: int, lost: float) -> Again:
    """Return what a micrometer tells to be off a limb (UPPER or LOWER) since the first row [m]."""
    row = [0.0] * len(belief.mean)
    row[limb] = 1.0
    return Again(row, 0.0, model.errors.taken, lost)


def glass_again(model: Model, belief: Belief, face: int, share: float, read: float, then: float) -> Again:
    """Return what the glass of a face (BACK or BELLY) tells, read again where it is thinnest [m].

    share [1]: of what is off a limb, off this face. then [m]: read when the log began.
    """
    return Again(glass_row(model, belief, face, share), then, model.errors.glass, read)


def glass_row(model: Model, belief: Belief, face: int, share: float) -> list[float]:
    """Return what of each value the glass of a face takes, beside what was read when the log began [m]."""
    row = [0.0] * len(belief.mean)
    row[face] = model.errors.glass
    row[UPPER if belief.mean[UPPER] >= belief.mean[LOWER] else LOWER] = -share
    return row
