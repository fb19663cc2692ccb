"""What is said of a log of strokes: how well it is known, whether weight and tiller come in together."""

from calc.bows.stroke_log import (
    NEAR_TILLER,
    SCATTER,
    Forecast,
    Log,
    Now,
    Plan,
    at_the_aim,
    by_log_and_by_model,
    scale_says_more,
)
from calc.numerics.least_squares import FittedLine, agree
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence


def log_checks(
    now: Now, plan: Plan | None, kept: Log, weight_fit: FittedLine, tiller_fit: FittedLine | None
) -> tuple[Check, ...]:
    """Return what is said of the log, of weight and of tiller."""
    found = []
    if plan is None:
        found.append(check("backwards", STOP, "Strokes on the upper limb make the upper distance larger and "
                           "those on the lower make it smaller; by this log it is the other way round. Upper "
                           "and lower, or the sign of tiller, may be mixed up. If neither is, a limb may be "
                           "giving way: unstring the bow and look it over."))
    if scale_says_more(now):
        found.append(check("scale", WATCH, sentence(
            "The last reading of {} lies {} above the line through the log, beyond its error: nothing is "
            "said of the strokes left before it is read again.",
            amount("force", now.read), amount("force", now.read - now.weight))))
    elif at_the_aim(now):
        found.append(check("weight", STOP, "The weight is where it should be, the reserve for the edges "
                           "included: stop sanding the faces."))
    elif tiller_fit is None:
        found.append(check("lead", WATCH, "The log does not show yet what extra strokes on one limb do to "
                           "tiller; even strokes are assumed. Do a few more on the stiff limb and log them."))
    if kept.weight.misfit > SCATTER or (tiller_fit is not None and tiller_fit.misfit > SCATTER):
        found.append(check("scatter", WATCH, "The readings scatter more than the errors stated: was the "
                           "pressure, the block or the paper changed and not said? The ranges are widened "
                           "for it."))
    if plan is not None:
        found += _tiller_checks(now, plan, weight_fit, tiller_fit)
    return tuple(found)


def _tiller_checks(
    now: Now, plan: Plan, weight_fit: FittedLine, tiller_fit: FittedLine | None
) -> list[Check]:
    """Return whether tiller is in, or comes in before the weight is down to the aim."""
    off = abs(now.wanted - now.tiller)
    if off <= NEAR_TILLER:
        even = check("even", OK, "Tiller is where it should be: keep the strokes even.")
        return [] if at_the_aim(now) else [even]
    far = (amount("length", now.tiller), amount("length", off), amount("length", now.wanted))
    if tiller_fit is None:
        return [] if not at_the_aim(now) else [check("tiller", WATCH, sentence(
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


def forecast_checks(
    forecast: Forecast | None, weight_fit: FittedLine | None, tiller_fit: FittedLine | None
) -> tuple[Check, ...]:
    """Return whether log and model agree; nothing where the model is left out."""
    if forecast is None:
        return ()
    if weight_fit is None:
        return (check("model-papers", WATCH, "The thickness was lost to more than one paper, so that log and "
                      "model cannot be set side by side by the stroke: compare a log of one paper."),)
    found = []
    for name, kind, fitted, expected in by_log_and_by_model(forecast, weight_fit, tiller_fit):
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
