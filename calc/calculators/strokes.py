"""Strokes: from a log of sanding strokes and readings to the strokes still to do."""

from calc.fields import (
    OK,
    STOP,
    WATCH,
    Axis,
    Calculator,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    group,
    quantity,
    result,
    rows,
    sentence,
)
from calc.quantities import INCH
from calc.shop.strokes import (
    NORMAL_95,
    StrokesLeft,
    line_through,
    place_of,
    strokes_left,
    value_on,
)
from calc.shop.strokes import (
    Line as Fit,
)

BATCH_SHARE = 0.5
"""Of the fewest strokes that may be left, how many to do before measuring again (common practice)."""

NEAR_TILLER = INCH / 32
SCATTER = 4.0
"""Mean squared misfit over error squared beyond which readings and errors do not go together."""


def compute(
    log: tuple[tuple[float, float, float, float], ...],
    weight_wanted: float,
    reserve: float,
    tiller_wanted: float,
    weight_error: float,
    tiller_error: float,
) -> Outcome:
    """Return what a stroke does and how many are left on each limb."""
    together, lead = _totals(log)
    weight_fit = _weight_fit(log, together, weight_error)
    tiller_fit = _tiller_fit(log, lead, tiller_error)
    weight_now, _ = value_on(weight_fit, together[-1])
    aim = weight_wanted + reserve
    sum_left = place_of(weight_fit, aim, together[-1])
    tiller_now = log[-1][3] if tiller_fit is None else value_on(tiller_fit, lead[-1])[0]
    lead_left = (0.0, 0.0) if tiller_fit is None else place_of(tiller_fit, tiller_wanted, lead[-1])
    left = strokes_left(sum_left, lead_left)
    reachable = min(left.upper, left.lower) >= 0 or sum_left[0] <= 0
    left = _within_weight(left, sum_left[0])
    batch = _batch(left)
    return Outcome(
        _headline(left, batch, weight_now, aim),
        (
            ("weight_per_stroke", -weight_fit.slope),
            ("weight_per_stroke_error", NORMAL_95 * weight_fit.slope_variance**0.5),
            ("tiller_per_stroke", None if tiller_fit is None else tiller_fit.slope),
            (
                "tiller_per_stroke_error",
                None if tiller_fit is None else NORMAL_95 * tiller_fit.slope_variance**0.5,
            ),
            ("weight_now", weight_now),
            ("tiller_now", tiller_now),
            ("upper_left", left.upper),
            ("lower_left", left.lower),
            ("upper_batch", batch[0]),
            ("lower_batch", batch[1]),
        ),
        _checks(reachable, weight_now, aim, tiller_now, tiller_wanted, tiller_fit, weight_fit),
        (_left_table(left, batch), _log_table(log, together, lead, weight_fit, tiller_fit)),
        _charts(log, together, lead, weight_fit, tiller_fit, aim, tiller_wanted),
        (),
        ASSUMPTIONS,
    )


def _totals(log: tuple[tuple[float, float, float, float], ...]) -> tuple[list[float], list[float]]:
    """Return the strokes so far on both limbs together, and the upper limb's lead, row by row."""
    together: list[float] = []
    lead: list[float] = []
    both, ahead = 0.0, 0.0
    for upper, lower, _, _ in log:
        both += upper + lower
        ahead += upper - lower
        together.append(both)
        lead.append(ahead)
    return together, lead


def _weight_fit(
    log: tuple[tuple[float, float, float, float], ...], together: list[float], error: float
) -> Fit:
    if together[-1] == together[0]:
        raise Refused("log", "The log holds no strokes after its first row: add a row once you have sanded.")
    fit = line_through(tuple(together), tuple([row[2] for row in log]), error)
    if fit.slope >= 0:
        raise Refused(
            "log",
            "By this log the weight does not come down with strokes. Check the readings; "
            "flex the limbs 20 to 30 short draws before each one.",
            len(log) - 1,
            "weight",
        )
    return fit


def _tiller_fit(
    log: tuple[tuple[float, float, float, float], ...], lead: list[float], error: float
) -> Fit | None:
    """Return how tiller goes with the upper limb's lead; None while both limbs had the same strokes."""
    if max(lead) - min(lead) == 0:
        return None
    fit = line_through(tuple(lead), tuple([row[3] for row in log]), error)
    return fit if fit.slope > 0 else None


def _within_weight(left: StrokesLeft, together: float) -> StrokesLeft:
    """Return the strokes left with none put back: what one limb cannot give, the other stops short of."""
    together = max(0.0, together)
    upper = min(max(0.0, left.upper), together)
    return StrokesLeft(upper, together - upper, left.upper_error, left.lower_error)


def _batch(left: StrokesLeft) -> tuple[float, float]:
    """Return the strokes to do before the next reading: half of the fewest that may be left."""
    fewest = (left.upper - NORMAL_95 * left.upper_error, left.lower - NORMAL_95 * left.lower_error)
    return (float(int(BATCH_SHARE * max(0.0, fewest[0]))), float(int(BATCH_SHARE * max(0.0, fewest[1]))))


def _headline(left: StrokesLeft, batch: tuple[float, float], weight: float, aim: float) -> Sentence:
    if weight <= aim:
        return sentence(
            "Stop: weight is at {}, at or below the aim of {}. Take no more off the faces.",
            amount("force", weight),
            amount("force", aim),
        )
    about = sentence(
        "About {} strokes are left on the upper limb and {} on the lower",
        amount("strokes", left.upper),
        amount("strokes", left.lower),
    )
    if batch == (0.0, 0.0):
        return sentence(
            about.template + ", too few to tell apart from none: measure after every few.", *about.amounts
        )
    return sentence(
        about.template + ". Do {} and {}, flex the limbs, and measure again.",
        *(tuple(about.amounts) + (amount("strokes", batch[0]), amount("strokes", batch[1]))),
    )


def _checks(
    reachable: bool,
    weight_now: float,
    aim: float,
    tiller_now: float,
    tiller_wanted: float,
    tiller_fit: Fit | None,
    weight_fit: Fit,
) -> tuple[Check, ...]:
    found = []
    if weight_now <= aim:
        found.append(
            check(
                "weight",
                STOP,
                "The weight is where it should be, the reserve for the edges included: stop "
                "sanding the faces.",
            )
        )
    if tiller_fit is None:
        found.append(
            check(
                "lead",
                WATCH,
                "The log does not show yet what extra strokes on one limb do to tiller; even "
                "strokes are assumed. Do a few more on the stiff limb and log them.",
            )
        )
    if not reachable:
        found.append(
            check(
                "tiller",
                WATCH,
                sentence(
                    "Tiller of {} cannot reach {} before the weight is down to the aim: all strokes go to "
                    "one limb. Agree a lower weight or a wider tiller with the owner.",
                    amount("length", tiller_now),
                    amount("length", tiller_wanted),
                ),
            )
        )
    if weight_fit.misfit > SCATTER or (tiller_fit is not None and tiller_fit.misfit > SCATTER):
        found.append(
            check(
                "scatter",
                WATCH,
                "The readings scatter more than the errors stated: was the pressure or the grit "
                "changed? The ranges are widened for it.",
            )
        )
    if abs(tiller_now - tiller_wanted) <= NEAR_TILLER and weight_now > aim:
        found.append(check("even", OK, "Tiller is where it should be: keep the strokes even."))
    return tuple(found)


def _left_table(left: StrokesLeft, batch: tuple[float, float]) -> Table:
    lines = []
    for name, most_likely, error, now in (
        ("upper", left.upper, left.upper_error, batch[0]),
        ("lower", left.lower, left.lower_error, batch[1]),
    ):
        lines.append(
            (
                name,
                max(0.0, most_likely - NORMAL_95 * error),
                most_likely,
                max(0.0, most_likely + NORMAL_95 * error),
                now,
            )
        )
    return Table(
        "left",
        "Strokes left on each limb, with the range that holds 95 % of such logs",
        (
            Column("limb", "Limb", "text"),
            Column("fewest", "Fewest", "strokes"),
            Column("likely", "Most likely", "strokes"),
            Column("most", "Most", "strokes"),
            Column("batch", "Before the next reading", "strokes"),
        ),
        tuple(lines),
    )


def _log_table(
    log: tuple[tuple[float, float, float, float], ...],
    together: list[float],
    lead: list[float],
    weight_fit: Fit,
    tiller_fit: Fit | None,
) -> Table:
    lines = []
    for row, both, ahead in zip(log, together, lead):
        tiller = None if tiller_fit is None else value_on(tiller_fit, ahead)[0]
        lines.append((both, row[2], value_on(weight_fit, both)[0], row[3], tiller))
    return Table(
        "log",
        "Readings and the fitted lines",
        (
            Column("strokes", "Strokes so far", "strokes"),
            Column("weight", "Weight read", "force"),
            Column("weight_fit", "Weight fitted", "force"),
            Column("tiller", "Tiller read", "length"),
            Column("tiller_fit", "Tiller fitted", "length"),
        ),
        tuple(lines),
    )


def _charts(
    log: tuple[tuple[float, float, float, float], ...],
    together: list[float],
    lead: list[float],
    weight_fit: Fit,
    tiller_fit: Fit | None,
    aim: float,
    tiller_wanted: float,
) -> tuple[Chart, ...]:
    furthest = max(together[-1], together[-1] + place_of(weight_fit, aim, together[-1])[0])
    weight = Chart(
        "weight",
        "Weight against strokes",
        Axis("Strokes on both limbs", "strokes"),
        Axis("Weight", "force"),
        (
            Line("Fitted", "line", [0.0, furthest], [value_on(weight_fit, x)[0] for x in (0.0, furthest)]),
            Line("Aim", "line", [0.0, furthest], [aim, aim]),
            Line("Readings", "points", together, [row[2] for row in log]),
        ),
    )
    if tiller_fit is None:
        return (weight,)
    ends = [min(lead), max(lead)]
    tiller = Chart(
        "tiller",
        "Tiller against the upper limb's extra strokes",
        Axis("Upper less lower strokes", "strokes"),
        Axis("Tiller", "length"),
        (
            Line("Fitted", "line", ends, [value_on(tiller_fit, x)[0] for x in ends]),
            Line("Wanted", "line", ends, [tiller_wanted, tiller_wanted]),
            Line("Readings", "points", lead, [row[3] for row in log]),
        ),
    )
    return (weight, tiller)


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "A stroke is the same all through the log: same block, grit, pressure and length of limb. Start a new "
    "log when one of them changes.",
    "A stroke on either limb takes the same weight; tiller goes with the strokes that one limb had more than "
    "the other. Both are straight lines, which holds while little is taken.",
    "Ranges hold 95 % of such logs if the errors stated are right; they are widened where the readings "
    "scatter more.",
    "The next batch is half of the fewest strokes that may be left: taking off less than planned is common "
    "practice.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Flex the limbs 20 to 30 short draws before each reading, with eye protection, and look the bow over for "
    "cracks and lifted glass each time.",
    "A stroke count knows nothing of the glass that is left: check its thickness at the edge as you go, and "
    "never sand through it.",
    "Glass dust harms lungs and skin: wet sanding or extraction, a fitting respirator, gloves, long sleeves.",
)

CALCULATOR = Calculator(
    "strokes",
    "Strokes",
    "Learns from your log what a sanding stroke does, and says how many are left on each limb.",
    (
        group(
            "Log",
            rows(
                "log",
                "Strokes since the row before, and the readings after them",
                (
                    quantity("upper", "Strokes on the upper", "strokes", "20", "0", "5000", ("0", "500")),
                    quantity("lower", "Strokes on the lower", "strokes", "20", "0", "5000", ("0", "500")),
                    quantity("weight", "Weight", "force", "55 lb", "5 lb", "150 lb", ("20 lb", "80 lb")),
                    quantity(
                        "tiller", "Tiller", "length", "0 in", "-1 1/2 in", "1 1/2 in", ("-3/8 in", "1/2 in")
                    ),
                ),
                "0:0:58lb:-1/8in;40:20:56.4lb:-1/16in;40:20:54.9lb:0in;40:30:53.3lb:1/16in",
                2,
                40,
                "The first row is the bow before any stroke.",
                "A stroke is one pass of the block along the whole working limb.",
            ),
        ),
        group(
            "Targets",
            quantity(
                "weight_wanted",
                "Draw weight wanted",
                "force",
                "48 lb",
                "5 lb",
                "150 lb",
                ("20 lb", "70 lb"),
                "The finished bow.",
            ),
            quantity(
                "reserve",
                "Weight kept for the edges",
                "force",
                "1 lb",
                "0 lb",
                "5 lb",
                ("1/2 lb", "2 lb"),
                "Left on for edge sanding and finish sanding.",
            ),
            quantity(
                "tiller_wanted",
                "Tiller wanted",
                "length",
                "3/16 in",
                "-1 in",
                "1 in",
                ("-1/8 in", "3/8 in"),
                "Upper minus lower distance.",
            ),
        ),
        group(
            "How well you read",
            quantity(
                "weight_error",
                "Error of a weight",
                "force",
                "1/4 lb",
                "0.02 lb",
                "3 lb",
                ("0.05 lb", "1 lb"),
                "Half of the scale's smallest mark or more.",
            ),
            quantity(
                "tiller_error",
                "Error of a tiller",
                "length",
                "1/32 in",
                "1/200 in",
                "1/4 in",
                ("1/100 in", "1/16 in"),
                "Of upper minus lower.",
            ),
        ),
    ),
    (
        result("weight_per_stroke", "Weight taken by a stroke", "force_per_stroke"),
        result("weight_per_stroke_error", "give or take", "force_per_stroke", "Half of the 95 % range."),
        result("tiller_per_stroke", "Tiller from an extra stroke on the upper", "length_per_stroke"),
        result("tiller_per_stroke_error", "give or take", "length_per_stroke", "Half of the 95 % range."),
        result("weight_now", "Weight now, by the fit", "force"),
        result("tiller_now", "Tiller now, by the fit", "length"),
        result("upper_left", "Strokes left on the upper", "strokes"),
        result("lower_left", "Strokes left on the lower", "strokes"),
        result("upper_batch", "On the upper before the next reading", "strokes"),
        result("lower_batch", "On the lower before the next reading", "strokes"),
    ),
    CAUTIONS,
    ("bench-practice", "least-squares"),
    "An invented log of a bow coming down from 58 lb to 48 lb, its upper limb a little stiff.",
    compute,
)
