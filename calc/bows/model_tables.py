"""A computed bow as tables, charts and a drawing."""

from calc.bows.model import Effect, Modelled
from calc.bows.reading_errors import band
from calc.drawings.limbs import bow_drawing
from calc.mechanics.bow.elastica import LimbShape
from calc.mechanics.bow.tuning import Shares
from calc.mechanics.draw_curve import Curve
from calc.outcome import TEXT, Axis, Chart, Column, Drawing, Line, Table, amount
from calc.quantities import ROUNDING

FIFTHS = 5


def curve_table(model: Modelled, curve: Curve, pairs: tuple[tuple[float, float], ...]) -> Table:
    """Return weight at draw, read beside computed; computed alone where nothing was read."""
    lines: list[tuple[float, float | None, float, float | None]] = []
    if pairs:
        for pair, miss in zip(pairs, model.fit.calibration.misfits):
            lines.append((pair[0] + model.beyond, pair[1], pair[1] + miss, miss))
    else:
        for place in range(0, len(curve.draws), 4):
            lines.append((curve.draws[place] + model.beyond, None, curve.forces[place], None))
    return Table("curve", "Weight at draw: read and computed", (
        Column("draw", "Draw", "length"), Column("reading", "Read", "force"),
        Column("computed", "Computed", "force"), Column("miss", "Computed less read", "force"),
    ), tuple(lines))


def work_table(
    model: Modelled, strains: tuple[tuple[float, ...], tuple[float, ...]], shares: Shares
) -> Table:
    """Return strain and share of the weight for each fifth of each limb."""
    drawn = model.fit.calibration.state.drawn
    lines = []
    for name, shape, limb, parts in (("upper", drawn.upper, strains[0], shares.upper),
                                     ("lower", drawn.lower, strains[1], shares.lower)):
        last = len(limb) - 1
        for fifth in range(FIFTHS):
            start, end = fifth * last // FIFTHS, (fifth + 1) * last // FIFTHS
            carried = sum(parts[start + 1 : end]) + (parts[start] + parts[end]) / 2
            if fifth == 0:
                carried += parts[start] / 2
            if fifth == FIFTHS - 1:
                carried += parts[end] / 2
            lines.append((name, shape.arc_length[start], shape.arc_length[end],
                          sum(limb[start : end + 1]) / (end + 1 - start), carried))
    return Table("work", "Where the limbs work: taking 1 % of a stretch's stiffness costs this share of 1 % "
                 "of the weight", (
        Column("limb", "Limb", TEXT), Column("start", "From", "length"), Column("end", "To", "length"),
        Column("strain", "Strain, on the mean", "ratio"), Column("share", "Share of the weight", "ratio"),
    ), tuple(lines))


def curve_chart(
    curve: Curve, effect: Effect | None, pairs: tuple[tuple[float, float], ...], beyond: float, share: float
) -> Chart:
    """Return weight against draw: computed, after sanding, and as read, with the range of what comes last.

    share [1]: standard error of the weight now.
    """
    lines = [Line("Computed", "line", [draw + beyond for draw in curve.draws], list(curve.forces))]
    if effect is not None:
        lines.append(Line("After sanding", "line", [draw + beyond for draw in effect.curve.draws],
                          list(effect.curve.forces)))
    if effect is None:
        lines += band(lines[-1], share)
    elif effect.ranges is not None:
        lines += band(lines[-1], effect.ranges.weight / effect.weight)
    if pairs:
        lines.append(Line("Readings", "points", [pair[0] + beyond for pair in pairs],
                          [pair[1] for pair in pairs]))
    return Chart("curve", "Weight against draw", Axis("Draw", "length"), Axis("Weight", "force"),
                 tuple(lines))


def strain_chart(model: Modelled, strains: tuple[tuple[float, ...], tuple[float, ...]]) -> Chart:
    """Return the strain at the face along both limbs at full draw."""
    drawn = model.fit.calibration.state.drawn
    return Chart("strain", "Where the limbs work at full draw", Axis("From the fadeout", "length"),
                 Axis("Strain at the face", "ratio"), (
        Line("Upper limb", "line", list(drawn.upper.arc_length), list(strains[0])),
        Line("Lower limb", "line", list(drawn.lower.arc_length), list(strains[1])),
    ))


def bow_shapes(model: Modelled, draw_length: float) -> Drawing:
    """Return the bow unstrung, braced and drawn."""
    state = model.fit.calibration.state
    nock = (state.drawn.nock[0], state.drawn.nock[1])
    return bow_drawing(
        _outline(model.bow.bow().upper.shape(0.0, 0.0, (1.0, 0.0)),
                 model.bow.bow().lower.shape(0.0, 0.0, (1.0, 0.0)), True),
        _outline(state.braced.upper, state.braced.lower, False),
        _outline(state.drawn.upper, state.drawn.lower, False),
        [_leaving(state.braced.lower), _leaving(state.braced.upper)],
        [_leaving(state.drawn.lower), nock, _leaving(state.drawn.upper)],
        amount("length", draw_length),
    )


def _outline(upper: LimbShape, lower: LimbShape, own_frame: bool) -> list[tuple[float, float]]:
    """Return the points from the lower nock over the grip to the upper; `own_frame`: lower limb mirrored."""
    side = -1.0 if own_frame else 1.0
    points = [(x, side * y) for x, y in zip(lower.x, lower.y)]
    points.reverse()
    return points + [(0.0, 0.0)] + list(zip(upper.x, upper.y))


def _leaving(shape: LimbShape) -> tuple[float, float]:
    """Return where the string leaves a limb."""
    for place, x, y in zip(shape.arc_length, shape.x, shape.y):
        if place >= shape.departure * (1 - ROUNDING):
            return x, y
    return shape.x[-1], shape.y[-1]
