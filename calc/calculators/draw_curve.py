"""Draw curve: energy, stacking and weight at any draw, from readings of weight at draw."""

from calc.bows.lengths import BEYOND_PIVOT
from calc.bows.reading_errors import TITLE, give_or_take, reading_error, with_range
from calc.bows.readings import (
    CURVE_AS_IT_CAME,
    FATTEST,
    beyond_readings,
    curve_of,
    reading_rows,
    require_rising,
    require_weight,
    weight_on,
)
from calc.bows.stacking import (
    PIECES,
    Judgement,
    end_rise,
    judged,
    judgement_check,
    judgement_said,
    onset_told,
)
from calc.declaring import (
    RULE,
    TRIAL,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.mechanics.draw_curve import (
    Curve,
    energy_to,
    force_at,
    middle_slope,
    slope_at,
)
from calc.mechanics.likely_curve import (
    REACH,
    LikelyCurve,
    as_curve,
    likely_curve,
    likely_energy,
    likely_force,
)
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    OK,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH, POUND_FORCE

MOST_SCATTER = 1.3
"""Of readings about the likely curve, over their error: more comes by chance one time in a hundred."""

WIDEST_GAP = 2.5 * INCH


class _Read:
    """What readings come to: the curve through or near them; likely, judgement: None where the readings are
    taken as they are.
    """

    def __init__(
        self, readings: tuple[tuple[float, float], ...], curve: Curve, factor: float,
        likely: LikelyCurve | None,
    ) -> None:
        self.readings = readings
        self.curve = curve
        self.likely = likely
        self.judgement = None if likely is None else judged(likely, [each[0] for each in readings], factor)
        self.onset = onset_told(curve, self.judgement, factor)

    @property
    def next_reading(self) -> float | None:
        """Where one more reading tells the most [m]; None where readings tell it or lie close already."""
        if self.judgement is None or self.judgement.told or self.judgement.further is None:
            return None
        return self.judgement.further[0]


def compute(
    readings: tuple[tuple[float, float], ...],
    measured_from: str,
    brace_height: float,
    reading_error: float,
    factor: float,
    draw_asked: float,
) -> Outcome:
    """Return what the readings say of the bow."""
    offset = BEYOND_PIVOT if measured_from == "marked" else 0.0
    start, end = brace_height + offset, readings[-1][0]
    found = _read(readings, start, reading_error, factor)
    curve, likely = found.curve, found.likely
    beyond = beyond_readings("draw_asked", start, end, draw_asked)
    energy, weight = _with_error(found, end, draw_asked)
    peak = curve.forces[-1]
    middle, last = middle_slope(curve), slope_at(curve, end)
    fullness = energy[0] / (peak * (end - start))
    return Outcome(
        headline=_headline(found, energy, peak, end, factor),
        values=(
            ("stored_energy", energy[0]),
            ("stored_energy_error", _half(energy[1])),
            ("peak_weight", peak),
            ("energy_per_peak", energy[0] / peak),
            ("fullness", fullness),
            ("stacking_onset", found.onset),
            ("stacking_probability", None if found.judgement is None else found.judgement.probability),
            ("next_reading", found.next_reading),
            ("middle_slope", middle),
            ("end_slope", last),
            ("weight_at", weight[0]),
            ("weight_at_error", _half(weight[1])),
            ("misfit", _misfit(curve, readings)),
        ),
        checks=_checks(found, end_rise(curve), beyond, weight, fullness),
        tables=(_table(curve, readings),),
        charts=(_force_chart(curve, readings, likely), _slope_chart(curve, middle, factor)),
        assumptions=(BY_ERRORS if likely is not None else AS_READ) + ASSUMPTIONS,
    )


def _read(
    readings: tuple[tuple[float, float], ...], start: float, error: float, factor: float
) -> _Read:
    """Return the curve behind readings; through them where they have no error."""
    if error == 0:
        return _Read(readings, curve_of("readings", readings, start, error), factor, None)
    require_rising("readings", readings, start, error)
    require_weight("readings", readings[-1][1])
    likely = likely_curve(tuple([each[0] for each in readings]), tuple([each[1] for each in readings]), start,
                          error)
    curve = as_curve(likely, PIECES)
    require_weight("readings", curve.forces[-1])
    return _Read(readings, curve, factor, likely)


def _with_error(
    found: _Read, end: float, asked: float
) -> tuple[tuple[float, float | None], tuple[float, float | None]]:
    """Return the energy to the last reading and the weight asked for, with their standard errors if known."""
    if found.likely is None:
        return (energy_to(found.curve, end), None), (weight_on(found.curve, asked), None)
    return likely_energy(found.likely, end), likely_force(found.likely, asked)


def _half(error: float | None) -> float | None:
    return None if error is None else NORMAL_95 * error


def _misfit(curve: Curve, readings: tuple[tuple[float, float], ...]) -> float:
    """Return the root mean square of readings less curve."""
    total = 0.0
    for draw, force in readings:
        total += (force_at(curve, draw) - force) ** 2
    return float((total / len(readings)) ** 0.5)


def _headline(
    found: _Read, energy: tuple[float, float | None], peak: float, end: float, factor: float
) -> Sentence:
    stored = with_range("energy", energy[0], energy[1])
    begun = "The bow stores " + stored.template + " at {}, {} at the string; "
    figures = stored.amounts + (amount("length", end), amount("force", peak))
    if found.judgement is not None:
        said = judgement_said(found.judgement, found.onset)
        return sentence(begun + said.template, *(figures + said.amounts))
    times = amount("number", factor)
    if found.onset is None:
        return sentence(begun + "it does not stack by the factor of {}.", *(figures + (times,)))
    return sentence(begun + "from {} on it stacks, {} times as steep as its middle or more.",
                    *(figures + (amount("length", found.onset), times)))


def _stacking_check(judgement: Judgement | None, rises: float, over: float | None) -> Check:
    if judgement is not None:
        return judgement_check(judgement, rises, over)
    if over is None:
        return check("stacking", OK, sentence(
            "At the end of the draw the weight rises {} times as fast as in the middle.",
            amount("number", rises)))
    return check("stacking", WATCH, sentence(
        "The bow stacks over the last {}: a longer draw costs much weight there. A longer bow or a "
        "shorter draw cures it; less weight alone does not.", amount("length", over)))


def _checks(
    found: _Read, rises: float, beyond: float, weight: tuple[float, float | None], fullness: float
) -> tuple[Check, ...]:
    curve, readings = found.curve, found.readings
    end = curve.draws[-1]
    checks = [_stacking_check(found.judgement, rises, None if found.onset is None else end - found.onset)]
    draws = [curve.draws[0]] + [each[0] for each in readings]
    gaps = [after - before for before, after in zip(draws, draws[1:])]
    if max(gaps) > WIDEST_GAP:
        checks.append(check("gaps", WATCH, sentence(
            "Some readings lie {} apart; the standard test reads every inch. Add readings where the "
            "curve bends.", amount("length", max(gaps)))))
    if beyond > 0:
        checks.append(_beyond_check(beyond, weight))
    if fullness > FATTEST:
        checks.append(check("fullness", WATCH,
                            "The curve is fuller than any recurve or longbow: check the scale, the brace "
                            "height and where draw is measured from."))
    worst = max([abs(force_at(curve, draw) - force) for draw, force in readings])
    if worst > POUND_FORCE:
        checks.append(check("misfit", WATCH, sentence(
            "One reading lies {} off the smooth curve: read it again.", amount("force", worst))))
    if found.likely is not None and found.likely.scatter > MOST_SCATTER:
        checks.append(check("scatter", WATCH, sentence(
            "The readings lie off the curve of any bow by {} times their error, and the ranges were widened "
            "by as much. Read again, draw and weight, or state a larger error.",
            amount("number", found.likely.scatter))))
    return tuple(checks)


def _beyond_check(beyond: float, weight: tuple[float, float | None]) -> Check:
    if weight[1] is None:
        return check("beyond", WATCH, sentence(
            "The weight asked for lies {} beyond the last reading, on a straight line from it: a stacking "
            "bow pulls more. Never draw a bow further than it has been proved for.",
            amount("length", beyond)))
    low, high = weight[0] - NORMAL_95 * weight[1], weight[0] + NORMAL_95 * weight[1]
    return check("beyond", WATCH, sentence(
        "The weight asked for lies {} beyond the last reading, where nobody has read it: from {} to {}, as "
        "curves of bows go on. Never draw a bow further than it has been proved for.",
        amount("length", beyond), amount("force", low), amount("force", high)))


def _table(curve: Curve, readings: tuple[tuple[float, float], ...]) -> Table:
    lines = []
    for draw, weight in readings:
        lines.append((draw, weight, force_at(curve, draw), slope_at(curve, draw), energy_to(curve, draw)))
    return Table("curve", "The curve at each reading", (
        Column("draw", "Draw", "length"), Column("reading", "Read", "force"),
        Column("smooth", "Smoothed", "force"), Column("slope", "Slope", "force_per_length"),
        Column("energy", "Energy so far", "energy"),
    ), tuple(lines))


def _along(curve: Curve) -> list[float]:
    start, end = curve.draws[0], curve.draws[-1]
    return [min(end, start + (end - start) * piece / PIECES) for piece in range(PIECES + 1)]


def _force_chart(
    curve: Curve, readings: tuple[tuple[float, float], ...], likely: LikelyCurve | None
) -> Chart:
    draws = _along(curve)
    lines = [Line("Smoothed", "line", draws, [force_at(curve, draw) for draw in draws]),
             Line("Readings", "points", [each[0] for each in readings], [each[1] for each in readings])]
    if likely is not None:
        further = draws + [curve.draws[-1] + REACH * part / 4 for part in range(1, 5)]
        found = [likely_force(likely, draw) for draw in further]
        lines += [Line("At least", "line", further, [max(0.0, y - NORMAL_95 * error) for y, error in found]),
                  Line("At most", "line", further, [y + NORMAL_95 * error for y, error in found])]
    return Chart("force", "Weight against draw, on to where nobody has read it", Axis("Draw", "length"),
                 Axis("Weight", "force"), tuple(lines))


def _slope_chart(curve: Curve, middle: float, factor: float) -> Chart:
    draws = _along(curve)
    ends = [draws[0], draws[-1]]
    return Chart("slope", "How fast the weight rises", Axis("Draw", "length"),
                 Axis("Slope", "force_per_length"), (
        Line("Slope", "line", draws, [slope_at(curve, draw) for draw in draws]),
        Line("Stacking limit", "line", ends, [factor * middle, factor * middle]),
    ))


BY_ERRORS: tuple[Sentence | str, ...] = (
    "Curves of bows are taken to be much like those of a thousand invented ones, and each reading to be "
    "wrong by itself. The ranges hold in 95 of 100 such cases, up to 2 in (51 mm) beyond the last reading. "
    "They do not hold a scale that is wrong all along, or a bow unlike any recurve or longbow.",
)

AS_READ: tuple[Sentence | str, ...] = (
    "The readings are taken as they are: no range can be told, nor how sure it is whether the bow stacks. "
    "The curve through them never falls.",
)

ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The weight is nothing at brace height, and the readings were taken while drawing, slowly, without "
    "letting down between them.",
    "Stacking begins where the slope stays above the stated factor times the mean slope of the middle third "
    "of the draw; the factor is common practice, not a standard.",
    "The energy is what goes into the bow. An arrow gets part of it: about 70 to 80 % from a recurve.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Inspect the bow first. Take the readings on a tiller stand with a rope and pulley, from a distance and "
    "out of line with the limbs, with eye protection; never by hand on a bow that has not been proved.",
    "Never draw further than the bow was made for, and never let go of the string without an arrow.",
)

CALCULATOR = Calculator(
    id="draw-curve",
    title="Draw curve",
    purpose="Says what a bow stores, where it stacks and what it pulls at any draw, from a few readings.",
    groups=(
        group(
            "Readings",
            reading_rows("readings", "Weight at draw", CURVE_AS_IT_CAME, 3, "Three or more, in order of "
            "draw; every inch or two."),
            choice("measured_from", "Draw is measured from", (
                ("marked", "The marked way: pivot point plus 1 3/4 in (44 mm)"),
                ("pivot", "The pivot point of the grip")),
                   help="Readings and all draws below are in this way."),
        ),
        group(
            "The bow",
            quantity("brace_height", "Brace height", "length", default="8 1/4 in", low="3 in", high="12 in",
                     usual=("6 in", "9 1/2 in"), help="From the pivot point to the string."),
            quantity("factor", "Stacking factor", "number", default="1.25", low="1.05", high="3",
                     usual=("1.15", "1.6"),
                     help="Slope over mid-draw slope from which the bow is said to stack.", role=RULE),
            quantity("draw_asked", "Draw to give the weight at", "length", default="27 in", low="4 in",
                     high="42 in", usual=("24 in", "32 in"), help="Such as the archer's own draw.",
                     role=TRIAL),
        ),
        group(TITLE, reading_error(),
              note="One standard error: two readings in three lie within it."),
    ),
    results=(
        result("stored_energy", "Stored energy", "energy", "From brace to the last reading."),
        give_or_take("stored_energy_error", "energy"),
        result("peak_weight", "Weight at the last reading", "force"),
        result("energy_per_peak", "Energy per draw weight", "energy_per_force"),
        result("fullness", "Energy over weight times stroke", "ratio", "50 % is a straight line."),
        result("stacking_onset", "Stacking begins at", "length", "Where it is told that the bow stacks."),
        result("stacking_probability", "Probability that it stacks", "ratio"),
        result("next_reading", "Take one more reading at", "length", "Where it cannot be told yet."),
        result("middle_slope", "Slope in the middle third", "force_per_length"),
        result("end_slope", "Slope at the end", "force_per_length"),
        result("weight_at", "Weight at the draw asked for", "force"),
        give_or_take("weight_at_error", "force"),
        result("misfit", "Readings less curve, root mean square", "force"),
    ),
    acted_on=("weight_at", "stacking_onset", "next_reading", "energy_per_peak"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "astm-f1544", "astm-f1832", "bench-practice", "elastica",
             "fritsch-carlson-1980", "isotonic-regression", "least-squares", "reinsch-1967",
             "tuijn-kooi-1992"),
    example="An invented 64 in recurve as it came, 53 lb at 28 in, read every 2 in; it begins to stack near "
            "the end.",
    first=("readings", "measured_from"),
    compute=compute,
)
