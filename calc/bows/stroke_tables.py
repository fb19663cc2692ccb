"""A log of strokes as tables and charts."""

from calc.bows.stroke_log import Forecast, Log, by_log_and_by_model
from calc.numerics.least_squares import FittedLine, StrokesLeft, place_of, value_on
from calc.numerics.normal import NORMAL_95
from calc.outcome import TEXT, Axis, Chart, Column, Line, Table, amount


def forecast_tables(
    forecast: Forecast | None, weight_fit: FittedLine | None, tiller_fit: FittedLine | None
) -> tuple[Table, ...]:
    """Return what a stroke does by the log beside what it does by the model."""
    if forecast is None or weight_fit is None:
        return ()
    lines = []
    for name, kind, fitted, expected in by_log_and_by_model(forecast, weight_fit, tiller_fit):
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


def left_table(left: StrokesLeft, batch: tuple[float, float]) -> Table:
    """Return the strokes left on each limb with their range, and the next batch."""
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


def paper_tables(kept: Log) -> tuple[Table, ...]:
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


def log_table(kept: Log) -> Table:
    """Return the log, row by row, with strokes so far."""
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


def log_charts(
    kept: Log,
    weight_fit: FittedLine,
    tiller_fit: FittedLine | None,
    aim: float,
    tiller_wanted: float,
    forecast: Forecast | None,
) -> tuple[Chart, ...]:
    """Return weight against strokes and tiller against the lead, with their lines."""
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
