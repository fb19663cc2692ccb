"""Strokes: from a log of sanding strokes and readings to the strokes still to do."""

from collections import namedtuple

from calc.calculators.targets import target_tiller, target_weight
from calc.fields import (
    OK,
    RULE,
    SHOP,
    STOP,
    TEXT,
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
    choice,
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
    agree,
    line_through,
    place_of,
    strokes_left,
    thickness_per_stroke,
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

SHAVING = INCH / 1000
"""The removal for which weight-reduction says what the model expects of it."""

Now = namedtuple("Now", "weight aim tiller wanted")
"""Weight by the fit and what the faces shall bring it to [N], tiller by the fit and what is wanted [m]."""

Plan = namedtuple("Plan", "together lead left batch")
"""Strokes left on both limbs and the upper limb's lead in them, each with its standard error; StrokesLeft
with none put back; and the strokes of the next batch, upper and lower."""

Forecast = namedtuple("Forecast", "thickness weight tiller")
"""What the model makes of a stroke: pairs of value and standard error [m], [N], [m]."""


def compute(
    log: tuple[tuple[float, float, float, float], ...],
    weight_wanted: float,
    reserve: float,
    tiller_wanted: float,
    weight_error: float,
    tiller_error: float,
    model: str,
    upper_lost: float,
    lower_lost: float,
    thickness_error: float,
    model_weight: float,
    model_tiller: float,
) -> Outcome:
    """Return what a stroke does and how many are left on each limb."""
    together, lead = _totals(log)
    weight_fit = _weight_fit(log, together, weight_error)
    tiller_fit = _tiller_fit(log, lead, tiller_error)
    now = Now(value_on(weight_fit, together[-1])[0], weight_wanted + reserve,
              log[-1][3] if tiller_fit is None else value_on(tiller_fit, lead[-1])[0], tiller_wanted)
    plan = None
    if not _runs_backwards(tiller_fit):
        plan = _plan(place_of(weight_fit, now.aim, together[-1]),
                     (0.0, 0.0) if tiller_fit is None else place_of(tiller_fit, tiller_wanted, lead[-1]))
    forecast = None
    if model == "compare":
        forecast = _forecast((upper_lost, lower_lost), together[-1] - together[0], thickness_error,
                             abs(model_weight), abs(model_tiller))
    compared = None if plan is None else tiller_fit
    return Outcome(
        _headline(now, plan, value_on(weight_fit, together[-1])[1]),
        (
            ("weight_per_stroke", -weight_fit.slope),
            ("weight_per_stroke_error", NORMAL_95 * weight_fit.slope_variance**0.5),
            ("tiller_per_stroke", None if tiller_fit is None else tiller_fit.slope),
            (
                "tiller_per_stroke_error",
                None if tiller_fit is None else NORMAL_95 * tiller_fit.slope_variance**0.5,
            ),
            ("model_weight_per_stroke", None if forecast is None else forecast.weight[0]),
            ("model_tiller_per_stroke", None if forecast is None else forecast.tiller[0]),
            ("thickness_per_hundred", None if forecast is None else 100 * forecast.thickness[0]),
            ("weight_now", now.weight),
            ("tiller_now", now.tiller),
            ("upper_left", None if plan is None else plan.left.upper),
            ("lower_left", None if plan is None else plan.left.lower),
            ("upper_batch", None if plan is None else plan.batch[0]),
            ("lower_batch", None if plan is None else plan.batch[1]),
        ),
        _checks(now, plan, weight_fit, tiller_fit) + _forecast_checks(forecast, weight_fit, compared),
        (() if plan is None else (_left_table(plan.left, plan.batch),))
        + _forecast_tables(forecast, weight_fit, compared)
        + (_log_table(log, together, lead, weight_fit, tiller_fit),),
        _charts(log, together, lead, weight_fit, tiller_fit, now.aim, tiller_wanted, forecast),
        (),
        ASSUMPTIONS if forecast is None else ASSUMPTIONS + MODEL_ASSUMPTIONS,
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
    """Return how tiller goes with the upper limb's lead; None while the log does not show it."""
    if max(lead) - min(lead) == 0:
        return None
    fit = line_through(tuple(lead), tuple([row[3] for row in log]), error)
    return fit if fit.slope > 0 or _runs_backwards(fit) else None


def _runs_backwards(tiller_fit: Fit | None) -> bool:
    """Return whether strokes on the upper limb alone make tiller less, beyond what errors explain."""
    return tiller_fit is not None and tiller_fit.slope < -NORMAL_95 * tiller_fit.slope_variance**0.5


def _plan(together: tuple[float, float], lead: tuple[float, float]) -> Plan:
    left = _within_weight(together, lead)
    return Plan(together, lead, left, _batch(left))


def _within_weight(together: tuple[float, float], lead: tuple[float, float]) -> StrokesLeft:
    """Return the strokes left with none put back: what one limb cannot give, the other stops short of.

    Where the lead is out of reach whatever its error, only the weight's error counts.
    """
    left = strokes_left(together, lead)
    most = max(0.0, together[0])
    upper = min(max(0.0, left.upper), most)
    out_of_reach = abs(lead[0]) - NORMAL_95 * lead[1] > most
    error = together[1] if out_of_reach else left.upper_error
    return StrokesLeft(upper, most - upper, error, error)


def _batch(left: StrokesLeft) -> tuple[float, float]:
    """Return the strokes to do before the next reading: half of the fewest that may be left."""
    fewest = (left.upper - NORMAL_95 * left.upper_error, left.lower - NORMAL_95 * left.lower_error)
    return (float(int(BATCH_SHARE * max(0.0, fewest[0]))), float(int(BATCH_SHARE * max(0.0, fewest[1]))))


def _headline(now: Now, plan: Plan | None, weight_error: float) -> Sentence:
    """Return what to do; weight_error: standard error of the weight by the fit."""
    if plan is None:
        return sentence("Stop: by this log, strokes on one limb drive tiller the wrong way. Do no more "
                        "before it is clear why.")
    if now.weight <= now.aim:
        return sentence("Stop: weight is at {}, at or below the aim of {}. Take no more off the faces.",
                        amount("force", now.weight), amount("force", now.aim))
    about = (amount("strokes", plan.left.upper), amount("strokes", plan.left.lower))
    if plan.batch != (0.0, 0.0):
        return sentence("About {} strokes are left on the upper limb and {} on the lower. Do {} and {}, flex "
                        "the limbs, and measure again.",
                        *(about + (amount("strokes", plan.batch[0]), amount("strokes", plan.batch[1]))))
    if now.weight - now.aim <= NORMAL_95 * weight_error:
        return sentence("About {} strokes are left on the upper limb and {} on the lower, too few to tell "
                        "apart from none: measure after every few.", *about)
    what = "weight" if plan.together[1] >= plan.lead[1] else "tiller"
    return sentence("How many strokes are left this log cannot say: the range is too wide. Take a reading "
                    "after a larger change of " + what + ".")


def _checks(now: Now, plan: Plan | None, weight_fit: Fit, tiller_fit: Fit | None) -> tuple[Check, ...]:
    found = []
    if plan is None:
        found.append(check("backwards", STOP, "Strokes on the upper limb make the upper distance larger and "
                           "those on the lower make it smaller; by this log it is the other way round. Upper "
                           "and lower, or the sign of tiller, may be mixed up. If neither is, a limb may be "
                           "giving way: unstring the bow and look it over."))
    if now.weight <= now.aim:
        found.append(check("weight", STOP, "The weight is where it should be, the reserve for the edges "
                           "included: stop sanding the faces."))
    elif tiller_fit is None:
        found.append(check("lead", WATCH, "The log does not show yet what extra strokes on one limb do to "
                           "tiller; even strokes are assumed. Do a few more on the stiff limb and log them."))
    if weight_fit.misfit > SCATTER or (tiller_fit is not None and tiller_fit.misfit > SCATTER):
        found.append(check("scatter", WATCH, "The readings scatter more than the errors stated: was the "
                           "pressure or the grit changed? The ranges are widened for it."))
    if plan is not None:
        found += _tiller_checks(now, plan, weight_fit, tiller_fit)
    return tuple(found)


def _tiller_checks(now: Now, plan: Plan, weight_fit: Fit, tiller_fit: Fit | None) -> list[Check]:
    """Return whether tiller is in, or comes in before the weight is down to the aim."""
    off = abs(now.wanted - now.tiller)
    if off <= NEAR_TILLER:
        even = check("even", OK, "Tiller is where it should be: keep the strokes even.")
        return [even] if now.weight > now.aim else []
    far = (amount("length", now.tiller), amount("length", off), amount("length", now.wanted))
    if tiller_fit is None:
        return [] if now.weight > now.aim else [check("tiller", WATCH, sentence(
            "Tiller of {} is still {} from the {} wanted. The log does not show what that would cost in "
            "weight.", *far))]
    strokes = abs(plan.lead[0])
    if strokes <= plan.together[0]:
        return []
    cost = -weight_fit.slope * strokes
    limb = "upper" if plan.lead[0] > 0 else "lower"
    return [check("tiller", WATCH, sentence(
        "Tiller of {} is still {} from the {} wanted. That asks for about {} strokes on the " + limb
        + " limb alone, which would cost {} and bring the weight to {}, below the aim of {}. Agree a lower "
        "weight, or a tiller nearer to this one, with the owner.",
        *(far + (amount("strokes", strokes), amount("force", cost), amount("force", now.weight - cost),
                 amount("force", now.aim)))))]


# The model beside the log ----------------------------------------------------


def _forecast(
    lost: tuple[float, float], strokes: float, thickness_error: float, weight: float, tiller: float
) -> Forecast:
    """Return what the model makes of a stroke from the thickness lost.

    weight, tiller: by SHAVING off both limbs, and off the upper one alone.
    """
    thickness, error = thickness_per_stroke(lost, strokes, thickness_error)
    by_weight, by_tiller = weight / 2 / SHAVING, tiller / SHAVING
    return Forecast((thickness, error), (thickness * by_weight, error * by_weight),
                    (thickness * by_tiller, error * by_tiller))


def _forecast_rows(
    forecast: Forecast, weight_fit: Fit, tiller_fit: Fit | None
) -> list[tuple[str, str, tuple[float, float], tuple[float, float]]]:
    """Return what is compared: its name, its kind, and value with standard error by log and by model."""
    found = [("weight", "force_per_stroke", (-weight_fit.slope, weight_fit.slope_variance**0.5),
              forecast.weight)]
    if tiller_fit is not None:
        found.append(("tiller", "length_per_stroke", (tiller_fit.slope, tiller_fit.slope_variance**0.5),
                      forecast.tiller))
    return found


def _forecast_checks(
    forecast: Forecast | None, weight_fit: Fit, tiller_fit: Fit | None
) -> tuple[Check, ...]:
    """Return whether log and model agree; nothing where the model is left out."""
    if forecast is None:
        return ()
    found = []
    for name, kind, fitted, expected in _forecast_rows(forecast, weight_fit, tiller_fit):
        figures = (amount(kind, fitted[0]), amount(kind, expected[0]))
        if agree(fitted, expected):
            found.append(check("model-" + name, OK, sentence(
                "Log and model agree on " + name + " within their ranges: {} and {}.", *figures)))
        else:
            word = "more" if fitted[0] > expected[0] else "less"
            found.append(check("model-" + name, WATCH, sentence(
                "By the log a stroke does " + word + " to " + name + " than by the model, beyond both "
                "ranges: {} against {}. Edges taken along with the faces, a micrometer read at other places, "
                "or measures given to the model may be why. Go by the log.", *figures)))
    return tuple(found)


def _forecast_tables(
    forecast: Forecast | None, weight_fit: Fit, tiller_fit: Fit | None
) -> tuple[Table, ...]:
    if forecast is None:
        return ()
    lines = []
    for name, kind, fitted, expected in _forecast_rows(forecast, weight_fit, tiller_fit):
        lines.append((
            "Weight by a stroke" if name == "weight" else "Tiller by an extra one",
            amount(kind, fitted[0]), amount(kind, expected[0])))
        lines.append((
            name[:1].upper() + name[1:] + ", give or take",
            amount(kind, NORMAL_95 * fitted[1]), amount(kind, NORMAL_95 * expected[1])))
    return (Table("model", "What a stroke does, by your log and by the model", (
        Column("what", "Figure", TEXT), Column("fitted", "By the log", TEXT),
        Column("expected", "By the model", TEXT),
    ), tuple(lines)),)


# Tables and charts -----------------------------------------------------------


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
    forecast: Forecast | None,
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
        ) + _model_line(forecast, [0.0, furthest], weight_fit.start,
                        0.0 if forecast is None else -forecast.weight[0]),
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
        ) + _model_line(forecast, ends, tiller_fit.start,
                        0.0 if forecast is None else forecast.tiller[0]),
    )
    return (weight, tiller)


def _model_line(forecast: Forecast | None, xs: list[float], start: float, slope: float) -> tuple[Line, ...]:
    """Return the model's line from where the fitted one starts; nothing where the model is left out."""
    if forecast is None:
        return ()
    return (Line("Model", "line", xs, [start + slope * x for x in xs]),)


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

MODEL_ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The model's figures are what Weight reduction says of this bow, taken here as exact: what they are out "
    "by is in no range. Their ranges hold the error of the thicknesses only.",
    "A stroke takes the same thickness off either limb, and an extra one on the upper moves tiller as much "
    "as one on the lower moves it back.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Flex the limbs 20 to 30 short draws before each reading, with eye protection, and look the bow over for "
    "cracks and lifted glass each time.",
    "A stroke count knows nothing of the glass that is left: check its thickness at the edge as you go, and "
    "never sand through it.",
    "Glass dust harms lungs and skin: wet sanding or extraction, a fitting respirator, gloves, long sleeves.",
)

_COMPARE = ("model", ("compare",))

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
            *target_weight("1 lb", "Left on for edges and finish sanding; Weight reduction works it out."),
            target_tiller(),
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
                "Half of the scale's smallest mark or more.", role=SHOP,
            ),
            quantity(
                "tiller_error",
                "Error of a tiller",
                "length",
                "1/32 in",
                "1/200 in",
                "1/4 in",
                ("1/100 in", "1/16 in"),
                "Of upper minus lower.", role=SHOP,
            ),
        ),
        group(
            "The model beside it",
            choice("model", "Compare with the model", (
                ("without", "Leave it out"),
                ("compare", "Compare with what Weight reduction says"),
            ), "The table “What the first thousandth of an inch does” on that page has the figures.",
            role=RULE),
            quantity("upper_lost", "Thickness lost, upper limb", "thickness", "0.010 in", "0 in", "0.2 in",
                     ("0 in", "0.04 in"), "Over the whole log, in the middle of the sanded stretch.",
                     "Micrometer on marked places, before the first stroke and now.", when=_COMPARE),
            quantity("lower_lost", "Thickness lost, lower limb", "thickness", "0.006 in", "0 in", "0.2 in",
                     ("0 in", "0.04 in"), "The same on the lower limb.", when=_COMPARE),
            quantity("thickness_error", "Error of a thickness", "thickness", "0.0005 in", "0 in",
                     "0.010 in", ("0 in", "0.002 in"), "Of one reading.", when=_COMPARE, role=SHOP),
            quantity("model_weight", "Weight for 0.001 in (0.025 mm) off both limbs", "force", "0.6 lb",
                     "-20 lb", "20 lb", ("-3 lb", "3 lb"), "From the row “both”; the sign does not matter.",
                     when=_COMPARE),
            quantity("model_tiller", "Tiller for 0.001 in (0.025 mm) off the upper", "thickness",
                     "0.041 in", "-1 in", "1 in", ("-0.2 in", "0.2 in"),
                     "From the row “upper”; the sign does not matter.", when=_COMPARE),
        ),
    ),
    (
        result("weight_per_stroke", "Weight taken by a stroke", "force_per_stroke"),
        result("weight_per_stroke_error", "give or take", "force_per_stroke", "Half of the 95 % range."),
        result("tiller_per_stroke", "Tiller from an extra stroke on the upper", "length_per_stroke"),
        result("tiller_per_stroke_error", "give or take", "length_per_stroke", "Half of the 95 % range."),
        result("model_weight_per_stroke", "Weight by a stroke, by the model", "force_per_stroke"),
        result("model_tiller_per_stroke", "Tiller by an extra stroke, by the model", "length_per_stroke"),
        result("thickness_per_hundred", "Thickness taken by 100 strokes on a limb", "thickness"),
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
