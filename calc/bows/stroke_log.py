"""The log of strokes: what it says of weight and tiller, and the strokes that are left."""

from collections import namedtuple

from calc.numerics.least_squares import (
    FittedLine,
    Papers,
    StrokesLeft,
    lines_by_paper,
    strokes_left,
    thickness_per_stroke,
)
from calc.numerics.normal import NORMAL_95
from calc.outcome import Refused
from calc.quantities import INCH, ROUNDING

BATCH_SHARE = 0.5
"""Of the fewest strokes that may be left, how many to do before measuring again (common practice)."""

NEAR_TILLER = INCH / 32

SCATTER = 4.0
"""Mean squared misfit over error squared beyond which readings and errors do not go together."""

SHAVING = INCH / 1000
"""The removal for which weight-reduction says what the model expects of it."""

SAME, NEW = "same", "new"

FRESH = 3.0
"""How many times as much as any paper in the log one without a reading may take: fresh paper takes several
times as much as worn (common practice)."""


class Now:
    """Weight by the fit and what the faces shall bring it to [N], tiller by the fit and what is wanted [m],
    the last weight read and the error of one [N]."""

    def __init__(
        self, weight: float, aim: float, tiller: float, wanted: float, read: float, weight_error: float,
    ) -> None:
        self.weight = weight
        self.aim = aim
        self.tiller = tiller
        self.wanted = wanted
        self.read = read
        self.weight_error = weight_error


Log = namedtuple("Log", "rows names papers together lead weight tiller")
"""The rows; the names of the papers in order of use and which one each row was sanded with; strokes so far on
both limbs and the upper limb's lead, row by row; how weight and tiller go with them by paper, as Papers, the
latter None while the log does not show it."""

Plan = namedtuple("Plan", "together lead left batch")
"""Strokes left on both limbs and the upper limb's lead in them, each with its standard error; StrokesLeft
with none put back; and the strokes of the next batch, upper and lower."""


class Forecast:
    """What the model makes of a stroke: pairs of value and standard error [m], [N], [m]."""

    def __init__(
        self, thickness: tuple[float, float], weight: tuple[float, float], tiller: tuple[float, float],
    ) -> None:
        self.thickness = thickness
        self.weight = weight
        self.tiller = tiller


def kept_of(
    log: tuple[tuple[float, float, float, float, str], ...], weight_error: float, tiller_error: float
) -> Log:
    """Return the log with what its papers do.

    Raises:
        Refused: it holds no strokes, or by its only paper the weight does not come down.
    """
    names, papers = papers_of(log)
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
    if len(found) == 1 and not comes_down(found[0]):
        raise Refused(
            "log",
            "By this log the weight does not come down with strokes. Check the readings; "
            "flex the limbs 20 to 30 short draws before each one.",
            len(log) - 1,
            "weight",
        )
    return Log(log, names, papers, together, lead, weight,
               _tiller_by_paper(leads, tuple([row[3] for row in log]), tiller_error))


def papers_of(log: tuple[tuple[float, float, float, float, str], ...]) -> tuple[list[str], list[int]]:
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
    if newest is not None and newest.slope <= 0 and not runs_backwards(newest):
        return None
    lines = tuple([line if line is not None and (line.slope > 0 or runs_backwards(line)) else None
                   for line in found.lines])
    return Papers(lines, found.fitted, found.now, found.misfit)


def comes_down(weight_fit: FittedLine) -> bool:
    """Return whether strokes take weight, beyond what rounding makes of readings that stay alike."""
    return bool(weight_fit.slope < -ROUNDING * weight_fit.slope_variance**0.5)


def runs_backwards(tiller_fit: FittedLine | None) -> bool:
    """Return whether strokes on the upper limb alone make tiller less, beyond what errors explain."""
    return tiller_fit is not None and tiller_fit.slope < -NORMAL_95 * tiller_fit.slope_variance**0.5


def plan_of(together: tuple[float, float], lead: tuple[float, float]) -> Plan:
    """Return what is left by the log, with the next batch."""
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


def careful_batch(left: StrokesLeft, safe: float) -> tuple[float, float]:
    """Return half of the strokes that are safe even at the ends of the ranges, shared as what is left is."""
    total = left.upper + left.lower
    part = BATCH_SHARE * min(safe, total) / total if total > 0 else 0.0
    return float(int(part * left.upper)), float(int(part * left.lower))


def at_the_aim(now: Now) -> bool:
    """Return whether the weight is down to the aim, by the fit and not against the scale."""
    return (now.weight <= now.aim and not scale_says_more(now)) or (
        now.read < now.aim - NORMAL_95 * now.weight_error)


def scale_says_more(now: Now) -> bool:
    """Return whether the last reading lies above the aim, by more than its error, while the fit does not."""
    return bool(now.weight <= now.aim and now.read > now.aim + NORMAL_95 * now.weight_error)


def forecast_of(
    lost: tuple[float, float], strokes: float, thickness_error: float, weight: float, tiller: float
) -> Forecast:
    """Return what the model makes of a stroke from the thickness lost.

    weight, tiller: by SHAVING off both limbs, and off the upper one alone.
    """
    thickness, error = thickness_per_stroke(lost, strokes, thickness_error)
    by_weight, by_tiller = weight / 2 / SHAVING, tiller / SHAVING
    return Forecast((thickness, error), (thickness * by_weight, error * by_weight),
                    (thickness * by_tiller, error * by_tiller))


def by_log_and_by_model(
    forecast: Forecast, weight_fit: FittedLine, tiller_fit: FittedLine | None
) -> list[tuple[str, str, tuple[float, float], tuple[float, float]]]:
    """Return what is compared: its name, its kind, and value with standard error by log and by model."""
    found = [("weight", "force_per_stroke", (-weight_fit.slope, weight_fit.slope_variance**0.5),
              forecast.weight)]
    if tiller_fit is not None:
        found.append(("tiller", "length_per_stroke", (tiller_fit.slope, tiller_fit.slope_variance**0.5),
                      forecast.tiller))
    return found
