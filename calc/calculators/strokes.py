"""Strokes: from a log of sanding strokes and readings to the strokes still to do."""

from collections import namedtuple

from calc.bows.cautions import GLASS_DUST
from calc.bows.targets import target_tiller, target_weight
from calc.declaring import (
    RULE,
    SHOP,
    Calculator,
    choice,
    group,
    quantity,
    result,
    rows,
)
from calc.numerics.least_squares import (
    NORMAL_95,
    FittedLine,
    Papers,
    StrokesLeft,
    agree,
    lines_by_paper,
    place_of,
    safe_batch,
    strokes_left,
    thickness_per_stroke,
    value_on,
)
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Axis,
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
    sentence,
)
from calc.quantities import INCH, ROUNDING

BATCH_SHARE = 0.5
"""Of the fewest strokes that may be left, how many to do before measuring again (common practice)."""

NEAR_TILLER = INCH / 32
SCATTER = 4.0
"""Mean squared misfit over error squared beyond which readings and errors do not go together."""

SHAVING = INCH / 1000
"""The removal for which weight-reduction says what the model expects of it."""

FRESH = 3.0
"""How many times as much as any paper in the log one without a reading may take: fresh paper takes several
times as much as worn (common practice)."""


SAME, NEW = "same", "new"
GRADES = ("p60", "p80", "p100", "p120", "p150", "p180", "p220", "p240", "p320", "p400", "p600")

Now = namedtuple("Now", "weight aim tiller wanted read weight_error")
"""Weight by the fit and what the faces shall bring it to [N], tiller by the fit and what is wanted [m], the
last weight read and the error of one [N]."""

Log = namedtuple("Log", "rows names papers together lead weight tiller")
"""The rows; the names of the papers in order of use and which one each row was sanded with; strokes so far on
both limbs and the upper limb's lead, row by row; how weight and tiller go with them by paper, as Papers, the
latter None while the log does not show it."""

Plan = namedtuple("Plan", "together lead left batch")
"""Strokes left on both limbs and the upper limb's lead in them, each with its standard error; StrokesLeft
with none put back; and the strokes of the next batch, upper and lower."""

Forecast = namedtuple("Forecast", "thickness weight tiller")
"""What the model makes of a stroke: pairs of value and standard error [m], [N], [m]."""


def compute(
    log: tuple[tuple[float, float, float, float, str], ...],
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
    kept = _kept(log, weight_error, tiller_error)
    newest = kept.papers[-1]
    weight_fit = kept.weight.lines[newest]
    tiller_fit = None if kept.tiller is None else kept.tiller.lines[newest]
    now = Now(kept.weight.now[0], weight_wanted + reserve,
              log[-1][3] if kept.tiller is None else kept.tiller.now[0], tiller_wanted, log[-1][2],
              weight_error)
    if weight_fit is None or (not _comes_down(weight_fit) and len(kept.names) > 1):
        return _unknown_paper(kept, now)
    plan = None
    if not _runs_backwards(tiller_fit):
        plan = _plan(place_of(weight_fit, now.aim, kept.together[-1]),
                     (0.0, 0.0) if tiller_fit is None else place_of(tiller_fit, tiller_wanted, kept.lead[-1]))
        if plan.batch == (0.0, 0.0) and len(kept.names) > 1:
            plan = Plan(plan.together, plan.lead, plan.left,
                        _careful_batch(plan.left, safe_batch(weight_fit, kept.weight.now, now.aim)))
    forecast = None
    if model == "compare":
        forecast = _forecast((upper_lost, lower_lost), kept.together[-1] - kept.together[0], thickness_error,
                             abs(model_weight), abs(model_tiller))
    compared = None if plan is None or len(kept.names) > 1 else tiller_fit
    by_log = None if len(kept.names) > 1 else weight_fit
    return Outcome(
        headline=_headline(now, plan, kept.weight.now[1]),
        values=_values(kept, now, plan, forecast),
        checks=_checks(now, plan, kept, weight_fit, tiller_fit)
               + _forecast_checks(forecast, by_log, compared),
        tables=(() if plan is None else (_left_table(plan.left, plan.batch),))
               + _paper_tables(kept)
               + _forecast_tables(forecast, by_log, compared)
               + (_log_table(kept),),
        charts=_charts(kept, weight_fit, tiller_fit, now.aim, tiller_wanted, forecast),
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


def _kept(log: tuple[tuple[float, float, float, float, str], ...], weight_error: float,
          tiller_error: float) -> Log:
    """Return the log with what its papers do.

    Raises:
        Refused: it holds no strokes, or by its only paper the weight does not come down.
    """
    names, papers = _papers(log)
    both, ahead = [0.0] * len(names), [0.0] * len(names)
    by_paper: list[tuple[float, ...]] = []
    leads: list[tuple[float, ...]] = []
    for row, paper in zip(log, papers):
        both[paper] += row[0] + row[1]
        ahead[paper] += row[0] - row[1]
        by_paper.append(tuple(both))
        leads.append(tuple(ahead))
    together, lead = [sum(each) for each in by_paper], [sum(each) for each in leads]
    if together[-1] == together[0]:
        raise Refused("log", "The log holds no strokes after its first row: add a row once you have sanded.")
    weight = lines_by_paper(tuple(by_paper), tuple([row[2] for row in log]), weight_error)
    found = [line for line in weight.lines if line is not None]
    if len(found) == 1 and not _comes_down(found[0]):
        raise Refused(
            "log",
            "By this log the weight does not come down with strokes. Check the readings; "
            "flex the limbs 20 to 30 short draws before each one.",
            len(log) - 1,
            "weight",
        )
    return Log(log, names, papers, together, lead, weight,
               _tiller_by_paper(leads, tuple([row[3] for row in log]), tiller_error))


def _papers(log: tuple[tuple[float, float, float, float, str], ...]) -> tuple[list[str], list[int]]:
    """Return the names of the papers in order of use, and which one each row was sanded with."""
    names: list[str] = []
    papers: list[int] = []
    for row in log:
        if row[4] == SAME:
            if not names:
                names.append("the first paper")
            papers.append(papers[-1] if papers else 0)
            continue
        name = row[4].upper()
        if row[4] == NEW:
            sheet = names[papers[-1]].split(", sheet ")[0] if papers else "the paper"
            name = sheet + ", sheet " + str(2 + len([each for each in names if each.startswith(sheet + ",")]))
        if name not in names:
            names.append(name)
        papers.append(names.index(name))
    return names, papers


def _tiller_by_paper(
    leads: list[tuple[float, ...]], tillers: tuple[float, ...], error: float
) -> Papers | None:
    """Return how tiller goes with the upper limb's lead; None while the log does not show it."""
    if max([max(column) - min(column) for column in zip(*leads)]) == 0:
        return None
    found = lines_by_paper(tuple(leads), tillers, error)
    newest = found.lines[-1] if len(found.lines) == 1 else None
    if newest is not None and newest.slope <= 0 and not _runs_backwards(newest):
        return None
    lines = tuple([line if line is not None and (line.slope > 0 or _runs_backwards(line)) else None
                   for line in found.lines])
    return Papers(lines, found.fitted, found.now, found.misfit)


def _unknown_paper(kept: Log, now: Now) -> Outcome:
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
    return Outcome(headline=said, values=_values(kept, now, plan, None), checks=tuple(found),
                   tables=_paper_tables(kept) + (_log_table(kept),), assumptions=ASSUMPTIONS)


def _comes_down(weight_fit: FittedLine) -> bool:
    """Return whether strokes take weight, beyond what rounding makes of readings that stay alike."""
    return bool(weight_fit.slope < -ROUNDING * weight_fit.slope_variance**0.5)


def _runs_backwards(tiller_fit: FittedLine | None) -> bool:
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


def _careful_batch(left: StrokesLeft, safe: float) -> tuple[float, float]:
    """Return half of the strokes that are safe even at the ends of the ranges, shared as what is left is."""
    total = left.upper + left.lower
    part = BATCH_SHARE * min(safe, total) / total if total > 0 else 0.0
    return float(int(part * left.upper)), float(int(part * left.lower))


def _at_the_aim(now: Now) -> bool:
    """Return whether the weight is down to the aim, by the fit and not against the scale."""
    return (now.weight <= now.aim and not _scale_says_more(now)) or (
        now.read < now.aim - NORMAL_95 * now.weight_error)


def _scale_says_more(now: Now) -> bool:
    """Return whether the last reading lies above the aim, by more than its error, while the fit does not."""
    return bool(now.weight <= now.aim and now.read > now.aim + NORMAL_95 * now.weight_error)


def _headline(now: Now, plan: Plan | None, weight_error: float) -> Sentence:
    """Return what to do; weight_error: standard error of the weight by the fit."""
    if plan is None:
        return sentence("Stop: by this log, strokes on one limb drive tiller the wrong way. Do no more "
                        "before it is clear why.")
    if _scale_says_more(now):
        return sentence("Measure again: the scale says {} and the line through the log {}, the aim being {}. "
                        "If paper, block or pressure changed, say so in the log.", amount("force", now.read),
                        amount("force", now.weight), amount("force", now.aim))
    if _at_the_aim(now):
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


def _checks(
    now: Now, plan: Plan | None, kept: Log, weight_fit: FittedLine, tiller_fit: FittedLine | None
) -> tuple[Check, ...]:
    found = []
    if plan is None:
        found.append(check("backwards", STOP, "Strokes on the upper limb make the upper distance larger and "
                           "those on the lower make it smaller; by this log it is the other way round. Upper "
                           "and lower, or the sign of tiller, may be mixed up. If neither is, a limb may be "
                           "giving way: unstring the bow and look it over."))
    if _scale_says_more(now):
        found.append(check("scale", WATCH, sentence(
            "The last reading of {} lies {} above the line through the log, beyond its error: nothing is "
            "said of the strokes left before it is read again.",
            amount("force", now.read), amount("force", now.read - now.weight))))
    elif _at_the_aim(now):
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
        return [] if _at_the_aim(now) else [even]
    far = (amount("length", now.tiller), amount("length", off), amount("length", now.wanted))
    if tiller_fit is None:
        return [] if not _at_the_aim(now) else [check("tiller", WATCH, sentence(
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
    forecast: Forecast, weight_fit: FittedLine, tiller_fit: FittedLine | None
) -> list[tuple[str, str, tuple[float, float], tuple[float, float]]]:
    """Return what is compared: its name, its kind, and value with standard error by log and by model."""
    found = [("weight", "force_per_stroke", (-weight_fit.slope, weight_fit.slope_variance**0.5),
              forecast.weight)]
    if tiller_fit is not None:
        found.append(("tiller", "length_per_stroke", (tiller_fit.slope, tiller_fit.slope_variance**0.5),
                      forecast.tiller))
    return found


def _forecast_checks(
    forecast: Forecast | None, weight_fit: FittedLine | None, tiller_fit: FittedLine | None
) -> tuple[Check, ...]:
    """Return whether log and model agree; nothing where the model is left out."""
    if forecast is None:
        return ()
    if weight_fit is None:
        return (check("model-papers", WATCH, "The thickness was lost to more than one paper, so that log and "
                      "model cannot be set side by side by the stroke: compare a log of one paper."),)
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
    forecast: Forecast | None, weight_fit: FittedLine | None, tiller_fit: FittedLine | None
) -> tuple[Table, ...]:
    if forecast is None or weight_fit is None:
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


def _paper_tables(kept: Log) -> tuple[Table, ...]:
    """Return what a stroke does with each paper, where there was more than one."""
    if len(kept.names) < 2:
        return ()
    lines = []
    for place, name in enumerate(kept.names):
        weight = kept.weight.lines[place]
        tiller = None if kept.tiller is None else kept.tiller.lines[place]
        lines.append((
            name,
            None if weight is None else -weight.slope,
            None if weight is None else NORMAL_95 * weight.slope_variance**0.5,
            None if tiller is None else tiller.slope,
            None if tiller is None else NORMAL_95 * tiller.slope_variance**0.5,
        ))
    return (Table("papers", "What a stroke does, paper by paper", (
        Column("paper", "Paper", TEXT), Column("weight", "Weight by a stroke", "force_per_stroke"),
        Column("weight_error", "give or take", "force_per_stroke"),
        Column("tiller", "Tiller by an extra one on the upper", "length_per_stroke"),
        Column("tiller_error", "give or take", "length_per_stroke"),
    ), tuple(lines)),)


def _log_table(kept: Log) -> Table:
    lines = []
    for place, row in enumerate(kept.rows):
        tiller = None if kept.tiller is None else kept.tiller.fitted[place]
        lines.append((kept.together[place], kept.names[kept.papers[place]], row[2],
                      kept.weight.fitted[place], row[3], tiller))
    return Table(
        "log",
        "Readings and the fitted lines",
        (
            Column("strokes", "Strokes so far", "strokes"),
            Column("paper", "Paper", TEXT),
            Column("weight", "Weight read", "force"),
            Column("weight_fit", "Weight fitted", "force"),
            Column("tiller", "Tiller read", "length"),
            Column("tiller_fit", "Tiller fitted", "length"),
        ),
        tuple(lines),
    )


def _charts(
    kept: Log,
    weight_fit: FittedLine,
    tiller_fit: FittedLine | None,
    aim: float,
    tiller_wanted: float,
    forecast: Forecast | None,
) -> tuple[Chart, ...]:
    together, lead = kept.together, kept.lead
    one = len(kept.names) == 1
    furthest = max(together[-1], together[-1] + place_of(weight_fit, aim, together[-1])[0])
    xs = [0.0, furthest] if one else together + [furthest]
    fitted = [value_on(weight_fit, x)[0] for x in xs]
    if not one:
        fitted = list(kept.weight.fitted) + [value_on(weight_fit, furthest)[0]]
    weight = Chart(
        "weight",
        "Weight against strokes",
        Axis("Strokes on both limbs", "strokes"),
        Axis("Weight", "force"),
        (
            Line("Fitted", "line", xs, fitted),
            Line("Aim", "line", [0.0, furthest], [aim, aim]),
            Line("Readings", "points", together, [row[2] for row in kept.rows]),
        ) + _model_line(forecast if one else None, [0.0, furthest], weight_fit.start,
                        0.0 if forecast is None else -forecast.weight[0]),
    )
    if tiller_fit is None or not one:
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
            Line("Readings", "points", lead, [row[3] for row in kept.rows]),
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
            rows(
                "log",
                "Strokes since the row before, and the readings after them",
                (
                    quantity("upper", "Strokes on the upper", "strokes", default="20", low="0", high="5000",
                             usual=("0", "500")),
                    quantity("lower", "Strokes on the lower", "strokes", default="20", low="0", high="5000",
                             usual=("0", "500")),
                    quantity("weight", "Weight", "force", default="55 lb", low="5 lb", high="150 lb",
                             usual=("20 lb", "80 lb")),
                    quantity(
                        "tiller", "Tiller", "length", default="0 in", low="-1 1/2 in", high="1 1/2 in",
                        usual=("-3/8 in", "1/2 in"),
                    ),
                    choice("paper", "Paper", (
                        (SAME, "same"), (NEW, "new sheet"),
                    ) + tuple([(grade, grade.upper()) for grade in GRADES])),
                ),
                default="0:0:53lb:5/16in:p120;30:45:51.4lb:15/64in:same;30:40:50.2lb:3/16in:same;"
                        "30:40:48.7lb:1/8in:same;40:50:48.1lb:3/32in:p180;40:50:47.2lb:1/16in:same",
                fewest=2,
                most=40,
                help="The first row is the bow before any stroke.",
                measure="A stroke is one pass of the block along the whole working limb.",
            ),
        ),
        group(
            "Targets",
            *target_weight("0.7 lb", "Left on for edges and finish sanding; Weight reduction works it out."),
            target_tiller(),
        ),
        group(
            "How well you read",
            quantity(
                "weight_error",
                "Error of a weight",
                "force",
                default="1/4 lb",
                low="0.02 lb",
                high="3 lb",
                usual=("0.05 lb", "1 lb"),
                help="Half of the scale's smallest mark or more.", role=SHOP,
            ),
            quantity(
                "tiller_error",
                "Error of a tiller",
                "length",
                default="1/32 in",
                low="1/200 in",
                high="1/4 in",
                usual=("1/100 in", "1/16 in"),
                help="Of upper minus lower.", role=SHOP,
            ),
        ),
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
            quantity("thickness_error", "Error of a thickness", "thickness", default="0.0005 in", low="0 in",
                     high="0.010 in", usual=("0 in", "0.002 in"), help="Of one reading.", when=_COMPARE,
                     role=SHOP),
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
    cautions=CAUTIONS,
    sources=("bench-practice", "least-squares"),
    example="An invented log of a bow coming down from 53 lb to 45 lb, its lower limb a little stiff.",
    compute=compute,
)
