"""Draw curve: energy, stacking and weight at any draw, from readings of weight at draw."""

from calc.bows.lengths import BEYOND_PIVOT
from calc.bows.readings import (
    CURVE_AS_IT_CAME,
    FATTEST,
    beyond_readings,
    curve_of,
    reading_error,
    reading_rows,
    weight_on,
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
    stacking_onset,
)
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

WIDEST_GAP = 2.5 * INCH


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
    start = brace_height + offset
    curve = curve_of("readings", readings, start, reading_error)
    end = curve.draws[-1]
    beyond = beyond_readings("draw_asked", curve, draw_asked)
    weight = weight_on(curve, draw_asked)
    energy, peak = energy_to(curve, end), curve.forces[-1]
    middle, last = middle_slope(curve), slope_at(curve, end)
    onset = stacking_onset(curve, factor)
    misfit = _misfit(curve, readings)
    return Outcome(
        headline=_headline(energy, peak, end, onset, factor),
        values=(
            ("stored_energy", energy),
            ("peak_weight", peak),
            ("energy_per_peak", energy / peak),
            ("fullness", energy / (peak * (end - start))),
            ("stacking_onset", onset),
            ("middle_slope", middle),
            ("end_slope", last),
            ("weight_at", weight),
            ("misfit", misfit),
        ),
        checks=_checks(curve, readings, onset, last, middle, beyond, energy / (peak * (end - start))),
        tables=(_table(curve, readings),),
        charts=(_force_chart(curve, readings), _slope_chart(curve, middle, factor)),
        assumptions=ASSUMPTIONS,
    )


def _misfit(curve: Curve, readings: tuple[tuple[float, float], ...]) -> float:
    """Return the root mean square of readings less curve."""
    total = 0.0
    for fitted, reading in zip(curve.forces[1:], readings):
        total += (fitted - reading[1]) ** 2
    return float((total / len(readings)) ** 0.5)


def _headline(energy: float, peak: float, end: float, onset: float | None, factor: float) -> Sentence:
    stored = sentence("The bow stores {} at {}, {} at the string",
                      amount("energy", energy), amount("length", end), amount("force", peak))
    times = amount("number", factor)
    if onset is None:
        return sentence(stored.template + "; it does not stack by the factor of {}.",
                        *(tuple(stored.amounts) + (times,)))
    return sentence(stored.template + "; from {} on it stacks, {} times as steep as its middle or more.",
                    *(tuple(stored.amounts) + (amount("length", onset), times)))


def _checks(
    curve: Curve,
    readings: tuple[tuple[float, float], ...],
    onset: float | None,
    last: float,
    middle: float,
    beyond: float,
    fullness: float,
) -> tuple[Check, ...]:
    end = curve.draws[-1]
    found = []
    if onset is None:
        found.append(check("stacking", OK, sentence(
            "At the end of the draw the weight rises {} times as fast as in the middle.",
            amount("number", last / middle if middle > 0 else 0.0))))
    else:
        found.append(check("stacking", WATCH, sentence(
            "The bow stacks over the last {}: a longer draw costs much weight there. A longer bow or a "
            "shorter draw cures it; less weight alone does not.", amount("length", end - onset))))
    gaps = [after - before for before, after in zip(curve.draws, curve.draws[1:])]
    if max(gaps) > WIDEST_GAP:
        found.append(check("gaps", WATCH, sentence(
            "Some readings lie {} apart; the standard test reads every inch. Add readings where the "
            "curve bends.", amount("length", max(gaps)))))
    if beyond > 0:
        found.append(check("beyond", WATCH, sentence(
            "The weight asked for lies {} beyond the last reading, on a straight line from it: a stacking "
            "bow pulls more. Never draw a bow further than it has been proved for.",
            amount("length", beyond))))
    if fullness > FATTEST:
        found.append(check("fullness", WATCH,
                           "The curve is fuller than any recurve or longbow: check the scale, the brace "
                           "height and where draw is measured from."))
    worst = max([abs(fit - reading[1]) for fit, reading in zip(curve.forces[1:], readings)])
    if worst > POUND_FORCE:
        found.append(check("misfit", WATCH, sentence(
            "One reading lies {} off the smooth curve: read it again.", amount("force", worst))))
    return tuple(found)


def _table(curve: Curve, readings: tuple[tuple[float, float], ...]) -> Table:
    lines = []
    for draw, weight in readings:
        lines.append((draw, weight, force_at(curve, draw), slope_at(curve, draw), energy_to(curve, draw)))
    return Table("curve", "The curve at each reading", (
        Column("draw", "Draw", "length"), Column("reading", "Read", "force"),
        Column("smooth", "Smoothed", "force"), Column("slope", "Slope", "force_per_length"),
        Column("energy", "Energy so far", "energy"),
    ), tuple(lines))


def _along(curve: Curve, pieces: int) -> list[float]:
    start, end = curve.draws[0], curve.draws[-1]
    return [min(end, start + (end - start) * piece / pieces) for piece in range(pieces + 1)]


def _force_chart(curve: Curve, readings: tuple[tuple[float, float], ...]) -> Chart:
    draws = _along(curve, 40)
    return Chart("force", "Weight against draw", Axis("Draw", "length"), Axis("Weight", "force"), (
        Line("Smoothed", "line", draws, [force_at(curve, draw) for draw in draws]),
        Line("Readings", "points", [each[0] for each in readings], [each[1] for each in readings]),
    ))


def _slope_chart(curve: Curve, middle: float, factor: float) -> Chart:
    draws = _along(curve, 40)
    ends = [draws[0], draws[-1]]
    return Chart("slope", "How fast the weight rises", Axis("Draw", "length"),
                 Axis("Slope", "force_per_length"), (
        Line("Slope", "line", draws, [slope_at(curve, draw) for draw in draws]),
        Line("Stacking limit", "line", ends, [factor * middle, factor * middle]),
    ))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The weight is nothing at brace height, and the readings were taken while drawing, slowly, without "
    "letting down between them.",
    "Readings are smoothed only as far as the scale's error allows, and the curve never falls.",
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
            "The bow and the scale",
            quantity("brace_height", "Brace height", "length", default="8 1/4 in", low="3 in", high="12 in",
                     usual=("6 in", "9 1/2 in"), help="From the pivot point to the string."),
            reading_error(),
            quantity("factor", "Stacking factor", "number", default="1.25", low="1.05", high="3",
                     usual=("1.15", "1.6"),
                     help="Slope over mid-draw slope from which the bow is said to stack.", role=RULE),
            quantity("draw_asked", "Draw to give the weight at", "length", default="27 in", low="4 in",
                     high="42 in", usual=("24 in", "32 in"), help="Such as the archer's own draw.",
                     role=TRIAL),
        ),
    ),
    results=(
        result("stored_energy", "Stored energy", "energy", "From brace to the last reading."),
        result("peak_weight", "Weight at the last reading", "force"),
        result("energy_per_peak", "Energy per draw weight", "energy_per_force"),
        result("fullness", "Energy over weight times stroke", "ratio", "50 % is a straight line."),
        result("stacking_onset", "Stacking begins at", "length"),
        result("middle_slope", "Slope in the middle third", "force_per_length"),
        result("end_slope", "Slope at the end", "force_per_length"),
        result("weight_at", "Weight at the draw asked for", "force"),
        result("misfit", "Readings less curve, root mean square", "force"),
    ),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "astm-f1544", "astm-f1832", "bench-practice", "fritsch-carlson-1980",
             "isotonic-regression", "reinsch-1967", "tuijn-kooi-1992"),
    example="An invented 64 in recurve as it came, 53 lb at 28 in, read every 2 in; it begins to stack near "
            "the end.",
    compute=compute,
)
