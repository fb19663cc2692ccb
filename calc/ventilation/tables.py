"""Clearing times, limits and respirators as tables, and the air as it clears."""

from calc.outcome import TEXT, Amount, Axis, Chart, Column, Line, Table, amount
from calc.shop.air import clearing_time, share_left
from calc.tables.exposure_limits import limits_of
from calc.tables.respirators import find as find_respirator
from calc.tables.respirators import need_for
from calc.ventilation.vapour import Air, Bound, Vapour, until_below

LEFT = (0.1, 0.01, 0.001)
CHART_POINTS = 25


def clearing_table(rate: float, mixing_factor: float) -> Table:
    """Return the time until shares of what is in the air have gone."""
    lines = [(Amount("ratio", 1 - left, None), clearing_time(rate, left),
              clearing_time(rate, left, mixing_factor)) for left in LEFT]
    return Table("clearing", "Time until a share has gone", (
        Column("gone", "Gone", "ratio"), Column("perfect", "Air mixed at once", "minutes"),
        Column("real", "With your mixing factor", "minutes"),
    ), tuple(lines))


def respirator_table(agent: str) -> Table:
    """Return the families of respirators to read about."""
    lines = []
    for id in need_for(agent).families:
        each = find_respirator(id)
        lines.append((each.name, str(each.assigned_factor), each.status))
    return Table("respirators", "Respirator families to read about, with the protection factor assigned", (
        Column("family", "Family", TEXT), Column("factor", "Assigned factor", TEXT),
        Column("status", "How far read", TEXT),
    ), tuple(lines))


def limit_tables(agent: str, vapour: Vapour | None, air: Air) -> tuple[Table, ...]:
    """Return what is published for breathing, beside the room's peak where that is known."""
    if vapour is not None:
        return _compared_limits(vapour, air)
    limits = limits_of(agent)
    if not limits:
        return ()
    lines = []
    for limit in limits:
        for level in limit.levels:
            lines.append((limit.stuff + ", " + limit.body, level.text, level.over or limit.averaging,
                          limit.recorded + ", " + limit.status))
    return (Table("limits", "Published limits for breathing, for information", (
        Column("body", "What, set by", TEXT), Column("value", "Limit", TEXT),
        Column("averaging", "Averaged over", TEXT), Column("status", "Set down here", TEXT),
    ), tuple(lines)),)


def _compared_limits(vapour: Vapour, air: Air) -> tuple[Table, ...]:
    if not vapour.bounds:
        return ()
    lines = []
    for each in vapour.bounds:
        lines.append((each.body, _with_averaging(each), _below_after(air, vapour, each), each.recorded))
    return (Table("limits", "The room's peak beside what is published for breathing " + vapour.name, (
        Column("body", "Set by", TEXT), Column("value", "Limit", TEXT),
        Column("below", "Below it after", "minutes"), Column("status", "Set down here", TEXT),
    ), tuple(lines)),)


def _with_averaging(bound: Bound) -> Amount | str:
    if isinstance(bound.text, Amount) or not bound.averaging or bound.averaging in bound.text:
        return bound.text
    return bound.text + ", " + bound.averaging


def _below_after(air: Air, vapour: Vapour, bound: Bound) -> Amount | None:
    """Return the minutes until the room is below a figure, or in words that it is not above."""
    if bound.share is None:
        return None
    if vapour.end <= bound.share:
        return Amount(TEXT, "not above", None)
    return amount("minutes", until_below(air, vapour, bound), 0)


def clearing_chart(rate: float, mixing_factor: float) -> Chart:
    """Return what is left in the air over time."""
    span = clearing_time(rate, 0.01, mixing_factor)
    times = [span * index / (CHART_POINTS - 1) for index in range(CHART_POINTS)]
    lines = [Line("with your mixing factor", "line", times,
                  [share_left(rate, time, mixing_factor) for time in times])]
    if mixing_factor > 1:
        lines.append(Line("air mixed at once", "line", times, [share_left(rate, time) for time in times]))
    return Chart("clearing", "What is left in the air", Axis("Time", "minutes"), Axis("Left", "ratio"),
                 tuple(lines))
