"""Readings of weight at draw: asked for, checked and made a curve in one way by all that use them."""

from calc.declaring import (
    Input,
    quantity,
    rows,
)
from calc.mechanics.draw_curve import (
    Curve,
    curve_from_readings,
    force_at,
    slope_at,
)
from calc.outcome import Refused
from calc.quantities import INCH, POUND_FORCE, ROUNDING

FURTHEST_BEYOND = 2 * INCH
"""No weight is told further beyond the last reading than this."""

FATTEST = 0.75
"""Share of weight times stroke that no recurve or longbow stores (0.58 to 0.60 was measured on four)."""


CURVE_AS_IT_CAME = ("12in:11lb;14in:18.4lb;16in:24.2lb;18in:28.6lb;20in:33.4lb;22in:37.8lb;24in:42.3lb;"
                    "26in:47.3lb;28in:53lb")
"""Readings of the invented bow of all worked examples, as it came. No bow was measured: they were computed
for its measures and scattered by up to 1/4 lb."""

CURVE_AFTER = ("12in:9.3lb;14in:15.6lb;16in:20.5lb;18in:24.3lb;20in:28.3lb;22in:31.9lb;24in:36.1lb;"
               "26in:40.2lb;28in:45lb")
"""Readings of the same invented bow once faces and edges are done, made in the same way."""


def reading_rows(
    id: str, label: str, default: str, fewest: int, help: str,
    when: tuple[str, tuple[str, ...]] | None = None,
) -> Input:
    """Return the rows of readings, draw and weight."""
    return rows(id, label, (
        quantity("draw", "Draw", "length", default="20 in", low="4 in", high="40 in",
                 usual=("9 in", "32 in")),
        quantity("weight", "Weight", "force", default="30 lb", low="0 lb", high="200 lb",
                 usual=("0 lb", "90 lb")),
    ), default=default, fewest=fewest, most=40, help=help, when=when)


def curve_of(
    field: str, readings: tuple[tuple[float, float], ...], start: float, error: float
) -> Curve:
    """Return the curve through readings, from no weight at the braced string.

    Raises:
        Refused: the readings are out of order, fall, or show no weight; names the field.
    """
    require_rising(field, readings, start, error)
    draws = [start]
    forces = [0.0]
    errors = [0.0]
    for draw, force in readings:
        draws.append(draw)
        forces.append(force)
        errors.append(error)
    curve = curve_from_readings(tuple(draws), tuple(forces), tuple(errors))
    require_weight(field, curve.forces[-1])
    return curve


def require_weight(field: str, last: float) -> None:
    """Raise Refused, naming the field, unless there is weight [N] at the last reading."""
    if last <= 0:
        raise Refused(field, "The readings show no weight at all: check the scale.")


def require_rising(
    field: str, readings: tuple[tuple[float, float], ...], start: float, error: float
) -> None:
    """Raise Refused, naming the field, unless draws rise from the braced string on and weights do not fall by
    more than their error.
    """
    before = (start, 0.0)
    for index, each in enumerate(readings):
        if each[0] <= before[0]:
            text = ("The first reading must lie beyond the braced string: check the brace height and where "
                    "draw is measured from." if index == 0 else
                    "Draw must rise from row to row: put the rows in order, and take out a draw that stands "
                    "twice.")
            raise Refused(field, text, index, "draw")
        if each[1] < before[1] - 4 * error - 0.5 * POUND_FORCE:
            raise Refused(field, "The weight falls from the row before, by more than the scale's error. "
                          "A recurve's or longbow's weight rises all the way: read it again.",
                          index, "weight")
        before = each


def beyond_readings(field: str, start: float, end: float, asked: float) -> float:
    """Return how far a draw lies beyond the last reading [m], 0 from the braced string to it.

    Raises:
        Refused: it lies short of the braced string, or too far beyond; names the field.
    """
    if asked < start:
        raise Refused(field, "The draw asked for lies short of the braced string: check it, and the brace "
                      "height.")
    beyond = max(0.0, asked - end)
    if beyond > FURTHEST_BEYOND * (1 + ROUNDING):
        raise Refused(field, "The draw asked for lies more than 2 in (51 mm) beyond the last reading: no "
                      "weight can be told there.")
    return beyond


def weight_on(curve: Curve, draw: float) -> float:
    """Return the weight at a draw [N], beyond the last reading on a straight line from it."""
    inside = min(draw, curve.draws[-1])
    return force_at(curve, inside) + (draw - inside) * slope_at(curve, inside)
