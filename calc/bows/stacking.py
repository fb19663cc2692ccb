"""Whether a bow stacks, by readings that have errors: said with its probability, or what would tell it."""

from calc.mechanics.draw_curve import Curve, middle_slope, slope_at, stacking_onset
from calc.mechanics.likely_curve import (
    LikelyCurve,
    as_curve,
    best_further_draw,
    likely_curve,
    stacking_probability,
)
from calc.outcome import OK, WATCH, Check, Sentence, amount, check, sentence
from calc.quantities import INCH

SURE = 0.8
"""Probability from which it is said that a bow stacks."""

UNLIKELY = 0.2
"""Probability up to which it is said that it does not."""

NEXT_STEP = INCH / 2

PIECES = 40
"""Of the likely curve, as which it is drawn."""

NEARLY = 0.01
"""Beyond this no probability is told closer: the shapes of curves are not known that well."""


class Judgement:
    """Probability that a bow stacks by a factor [1]. further: where one more reading tells the most [m], and
    the doubt that it leaves over that of today [1]; None where it is told or readings lie close already.
    """

    def __init__(
        self, probability: float, factor: float, further: tuple[float, float] | None
    ) -> None:
        self.probability = probability
        self.factor = factor
        self.further = further

    @property
    def stacks(self) -> bool:
        """Whether it is said that the bow stacks."""
        return self.probability >= SURE

    @property
    def told(self) -> bool:
        """Whether the readings tell it, either way."""
        return self.stacks or self.probability <= UNLIKELY


def judged(curve: LikelyCurve, draws: list[float], factor: float) -> Judgement:
    """Return what readings at these draws say of stacking."""
    probability = stacking_probability(curve, factor)
    if not UNLIKELY < probability < SURE:
        return Judgement(probability, factor, None)
    between = []
    for count in range(1, int((curve.end - curve.start) / NEXT_STEP)):
        draw = curve.end - count * NEXT_STEP
        if min([abs(draw - each) for each in draws]) > 0.49 * NEXT_STEP:
            between.append(draw)
    return Judgement(probability, factor, best_further_draw(curve, factor, tuple(between)))


def onset_told(curve: Curve, judgement: Judgement | None, factor: float) -> float | None:
    """Return from which draw on a curve stacks [m]; None where it does not, or nothing tells that it does.

    judgement: None where no readings with errors are known.
    """
    return stacking_onset(curve, factor) if judgement is None or judgement.stacks else None


def end_rise(curve: Curve) -> float:
    """Return the slope at the end of a curve over that of its middle third [1]; 0 if that does not rise."""
    middle = middle_slope(curve)
    return slope_at(curve, curve.draws[-1]) / middle if middle > 0 else 0.0


class Stacking:
    """What readings say of stacking: their likely curve, the judgement, the slope at the end over that of the
    middle [1], and from which draw on it stacks and how much of the draw that is [m], None where nothing
    tells that it does.
    """

    def __init__(self, likely: LikelyCurve, judgement: Judgement, curve: Curve) -> None:
        self.likely = likely
        self.judgement = judgement
        self.rises = end_rise(curve)
        self.onset = onset_told(curve, judgement, judgement.factor)
        self.over = None if self.onset is None else curve.draws[-1] - self.onset


def stacking_read(
    readings: list[tuple[float, float]], start: float, error: float, factor: float
) -> Stacking:
    """Return what readings of (draw [m], weight [N]), in order, say of stacking. start: draw at brace [m].
    error: of a reading, more than none [N].
    """
    draws = [each[0] for each in readings]
    likely = likely_curve(tuple(draws), tuple([each[1] for each in readings]), start, error)
    return Stacking(likely, judged(likely, draws, factor), as_curve(likely, PIECES))


def _probability(value: float) -> Sentence:
    if value > 1 - NEARLY:
        return sentence("over {}", amount("ratio", 1 - NEARLY, 0))
    if value < NEARLY:
        return sentence("under {}", amount("ratio", NEARLY, 0))
    return sentence("{}", amount("ratio", value, 0))


def judgement_said(judgement: Judgement, onset: float | None) -> Sentence:
    """Return the judgement as the end of a headline. onset [m]: where the likely curve begins to stack."""
    sure = _probability(max(judgement.probability, 1 - judgement.probability))
    times = amount("number", judgement.factor)
    if not judgement.told:
        open_still = "whether it stacks cannot be told from these readings"
        if judgement.further is None:
            return sentence(open_still + ", only from some of a finer scale.")
        return sentence(open_still + ": take one more at {}.", amount("length", judgement.further[0]))
    if onset is None:
        return sentence("it does not stack by the factor of {} (probability " + sure.template + ").", times,
                        *sure.amounts)
    return sentence("from about {} on it stacks, {} times as steep as its middle or more (probability "
                    + sure.template + ").", amount("length", onset), times, *sure.amounts)


def judgement_check(judgement: Judgement, rises: float, over: float | None) -> Check:
    """Return the check of stacking.

    rises [1]: slope at the end over that of the middle. over [m]: how much of the draw is steeper than the
    factor allows, None where none is.
    """
    shown = _probability(judgement.probability)
    if judgement.told and over is not None:
        return check("stacking", WATCH, sentence(
            "The bow stacks over about the last {} (probability " + shown.template + "): a longer draw costs "
            "much weight there. A longer bow or a shorter draw cures it; less weight alone does not.",
            amount("length", over), *shown.amounts))
    rise = sentence("At the end of the draw the weight rises about {} times as fast as in the middle. That "
                    "it is more than {} times has a probability of " + shown.template + ".",
                    amount("number", rises), amount("number", judgement.factor), *shown.amounts)
    if judgement.told:
        return check("stacking", OK, rise)
    if judgement.further is None:
        return check("stacking", WATCH, sentence(
            "Whether the bow stacks cannot be told. " + rise.template + " Readings lie close already: read "
            "them again on a finer scale.", *rise.amounts))
    return check("stacking", WATCH, sentence(
        "Whether the bow stacks cannot be told. " + rise.template + " One more reading at {} tells the most: "
        "it leaves {} of the doubt.", *(rise.amounts + (
            amount("length", judgement.further[0]), amount("ratio", judgement.further[1], 0)))))
