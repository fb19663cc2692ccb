"""Strokes: from a log of sanding strokes and readings to the strokes still to do."""


from calc.bows.cautions import GLASS_DUST
from calc.bows.reading_errors import how_strokes_are_read, thickness_error
from calc.bows.stroke_checks import forecast_checks, log_checks
from calc.bows.stroke_inputs import log_rows
from calc.bows.stroke_line import line_charts, line_checks, line_of, line_tables, offsets_input
from calc.bows.stroke_log import (
    BATCH_SHARE,
    FRESH,
    Forecast,
    Log,
    Now,
    Plan,
    at_the_aim,
    careful_batch,
    comes_down,
    forecast_of,
    kept_of,
    plan_of,
    runs_backwards,
    scale_says_more,
)
from calc.bows.stroke_tables import forecast_tables, left_table, log_charts, log_table, paper_tables
from calc.bows.targets import target_tiller, target_weight
from calc.declaring import (
    RULE,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.numerics.least_squares import (
    place_of,
    safe_batch,
)
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    STOP,
    WATCH,
    Outcome,
    Sentence,
    amount,
    check,
    sentence,
)

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from calc.bows.stroke_line import Offsets, Rows


def compute(
    log: tuple[tuple[float, float, float, float, str], ...],
    offsets: "Rows | None",
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
    kept = kept_of(log, weight_error, tiller_error)
    line = line_of(offsets or (), kept)
    newest = kept.papers[-1]
    weight_fit = kept.weight.lines[newest]
    tiller_fit = None if kept.tiller is None else kept.tiller.lines[newest]
    now = Now(kept.weight.now[0], weight_wanted + reserve,
              log[-1][3] if kept.tiller is None else kept.tiller.now[0], tiller_wanted, log[-1][2],
              weight_error)
    if weight_fit is None or not comes_down(weight_fit):
        return _unknown_paper(kept, now, line)
    plan = None
    if not runs_backwards(tiller_fit):
        lead = (0.0, 0.0) if tiller_fit is None else place_of(tiller_fit, tiller_wanted, kept.lead[-1])
        plan = plan_of(place_of(weight_fit, now.aim, kept.together[-1]), lead)
        if plan.batch == (0.0, 0.0) and len(kept.names) > 1:
            plan = Plan(plan.together, plan.lead, plan.left,
                        careful_batch(plan.left, safe_batch(weight_fit, kept.weight.now, now.aim)))
    forecast = None
    if model == "compare":
        forecast = forecast_of((upper_lost, lower_lost), kept.together[-1] - kept.together[0],
                               thickness_error, abs(model_weight), abs(model_tiller))
    compared = None if plan is None or len(kept.names) > 1 else tiller_fit
    by_log = None if len(kept.names) > 1 else weight_fit
    return Outcome(
        headline=_headline(now, plan, kept.weight.now[1]),
        values=_values(kept, now, plan, forecast),
        checks=log_checks(now, plan, kept, weight_fit, tiller_fit)
               + forecast_checks(forecast, by_log, compared) + line_checks(line),
        tables=(() if plan is None else (left_table(plan.left, plan.batch),))
               + paper_tables(kept)
               + forecast_tables(forecast, by_log, compared)
               + line_tables(line, kept)
               + (log_table(kept),),
        charts=log_charts(kept, weight_fit, tiller_fit, now.aim, tiller_wanted, forecast)
               + line_charts(line, kept),
        assumptions=ASSUMPTIONS if forecast is None else ASSUMPTIONS + MODEL_ASSUMPTIONS,
    )


def _values(
    kept: Log, now: Now, plan: Plan | None, forecast: Forecast | None
) -> tuple[tuple[str, float | None], ...]:
    newest = kept.papers[-1]
    weight = kept.weight.lines[newest]
    tiller = None if kept.tiller is None else kept.tiller.lines[newest]
    return (
        ("weight_per_stroke", None if weight is None else -weight.slope),
        ("weight_per_stroke_error", None if weight is None else NORMAL_95 * weight.slope_variance**0.5),
        ("tiller_per_stroke", None if tiller is None else tiller.slope),
        ("tiller_per_stroke_error", None if tiller is None else NORMAL_95 * tiller.slope_variance**0.5),
        ("model_weight_per_stroke", None if forecast is None else forecast.weight[0]),
        ("model_tiller_per_stroke", None if forecast is None else forecast.tiller[0]),
        ("thickness_per_hundred", None if forecast is None else 100 * forecast.thickness[0]),
        ("weight_now", now.weight),
        ("tiller_now", now.tiller),
        ("upper_left", None if plan is None or plan.left is None else plan.left.upper),
        ("lower_left", None if plan is None or plan.left is None else plan.left.lower),
        ("upper_batch", None if plan is None else plan.batch[0]),
        ("lower_batch", None if plan is None else plan.batch[1]),
    )


# The log -------------------------------------------------------------------------


def _unknown_paper(kept: Log, now: Now, line: "Offsets") -> Outcome:
    """Return what to do where no reading shows yet what the newest paper takes."""
    name = kept.names[kept.papers[-1]]
    known = [-line.slope + NORMAL_95 * line.slope_variance**0.5 for line in kept.weight.lines
             if line is not None]
    gap = min(now.weight - NORMAL_95 * kept.weight.now[1], now.read) - now.aim
    each = float(int(BATCH_SHARE * max(0.0, gap) / (FRESH * max(known)) / 2)) if max(known) > 0 else 0.0
    if min(now.weight, now.read) <= now.aim:
        said = sentence("Stop: weight is at {}, at or below the aim of {}. Take no more off the faces.",
                        amount("force", min(now.weight, now.read)), amount("force", now.aim))
    elif each < 1:
        said = sentence("Nothing is known of " + name + " yet, and {} are left: do a few strokes at a time, "
                        "flex the limbs, and measure.", amount("force", now.weight - now.aim))
    else:
        said = sentence("Nothing is known of " + name + " yet: measure after a small batch. Do about {} "
                        "strokes on each limb, flex the limbs, and add the row.", amount("strokes", each))
    found = [check("paper", WATCH, "The log has no reading that shows what a stroke with " + name
                   + " takes: the batch is small enough for a paper that takes three times as much as any in "
                   "the log (common practice).")]
    if min(now.weight, now.read) <= now.aim:
        found.append(check("weight", STOP, "The weight is where it should be, the reserve for the edges "
                           "included: stop sanding the faces."))
        each = 0.0
    plan = Plan(None, None, None, (each, each))
    return Outcome(headline=said, values=_values(kept, now, plan, None),
                   checks=tuple(found) + line_checks(line),
                   tables=paper_tables(kept) + line_tables(line, kept) + (log_table(kept),),
                   charts=line_charts(line, kept), assumptions=ASSUMPTIONS)


def _headline(now: Now, plan: Plan | None, weight_error: float) -> Sentence:
    """Return what to do; weight_error: standard error of the weight by the fit."""
    if plan is None:
        return sentence("Stop: by this log, strokes on one limb drive tiller the wrong way. Do no more "
                        "before it is clear why.")
    if scale_says_more(now):
        return sentence("Measure again: the scale says {} and the line through the log {}, the aim being {}. "
                        "If paper, block or pressure changed, say so in the log.", amount("force", now.read),
                        amount("force", now.weight), amount("force", now.aim))
    if at_the_aim(now):
        return sentence("Stop: weight is at {}, at or below the aim of {}. Take no more off the faces.",
                        amount("force", now.weight if now.weight <= now.aim else now.read),
                        amount("force", now.aim))
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


# The model beside the log ----------------------------------------------------


# Tables and charts -----------------------------------------------------------


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "A stroke with one paper is the same all through the log: same block, pressure and length of limb. Each "
    "paper has a line of its own, and none of them jumps where the paper changes; what is left is told for "
    "the newest. Start a new log when block, pressure or stretch change.",
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
    GLASS_DUST,
)

_COMPARE = ("model", ("compare",))

CALCULATOR = Calculator(
    id="strokes",
    title="Strokes",
    purpose="Learns from your log what a sanding stroke does, and says how many are left on each limb.",
    groups=(
        group(
            "Log",
            log_rows(2),
        ),
        group("The string's line, where it was read", offsets_input()),
        group(
            "Targets",
            *target_weight("0.7 lb", "Left on for edges and finish sanding; Weight reduction works it out."),
            target_tiller(),
        ),
        how_strokes_are_read(),
        group(
            "The model beside it",
            choice("model", "Compare with the model", (
                ("without", "Leave it out"),
                ("compare", "Compare with what Weight reduction says"),
            ), help="The table “What the first thousandth of an inch does” on that page has the figures.",
                   role=RULE),
            quantity("upper_lost", "Thickness lost, upper limb", "thickness", default="0.010 in", low="0 in",
                     high="0.2 in", usual=("0 in", "0.04 in"),
                     help="Over the whole log, in the middle of the sanded stretch.",
                     measure="Micrometer on marked places, before the first stroke and now.", when=_COMPARE),
            quantity("lower_lost", "Thickness lost, lower limb", "thickness", default="0.006 in", low="0 in",
                     high="0.2 in", usual=("0 in", "0.04 in"), help="The same on the lower limb.",
                     when=_COMPARE),
            thickness_error(when=_COMPARE),
            quantity("model_weight", "Weight for 0.001 in (0.025 mm) off both limbs", "force",
                     default="0.6 lb", low="-20 lb", high="20 lb", usual=("-3 lb", "3 lb"),
                     help="From the row “both”; the sign does not matter.", when=_COMPARE),
            quantity("model_tiller", "Tiller for 0.001 in (0.025 mm) off the upper", "thickness",
                     default="0.041 in", low="-1 in", high="1 in", usual=("-0.2 in", "0.2 in"),
                     help="From the row “upper”; the sign does not matter.", when=_COMPARE),
        ),
    ),
    results=(
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
    acted_on=("upper_batch", "lower_batch", "upper_left", "lower_left"),
    cautions=CAUTIONS,
    sources=("bench-practice", "least-squares"),
    example="An invented log of a bow coming down from 53 lb to 45 lb, its lower limb a little stiff.",
    first=("log", "weight_wanted", "tiller_wanted"),
    compute=compute,
    takes_off=True,
)
