"""Weight and tiller of a bow over all strokes that its record counts, as charts."""

from calc.outcome import Axis, Chart, Line
from calc.record import derive
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import latest_number, number_in

FEWEST = 2
"""Readings below which there is nothing to see."""


def charts(state: State) -> tuple[Chart, ...]:
    """Return what a bow pulled, and its tiller, at each reading, over the strokes made until then.

    Args:
        state: of a record.

    Returns:
        a chart each, of readings at the draw of the newest one; none of what was read once only, or where no
        stroke was counted.
    """
    newest = derive.weight_now(state)
    if newest is None:
        return ()
    weights = [(_strokes_before(state, each.entry), each.force) for each in derive.weights(state)
               if abs(each.draw - newest.draw) <= derive.SAME_DRAW]
    tillers = [(_strokes_before(state, each), found) for each in state.of("reading")
               for found in [derive.tiller(each)] if found is not None]
    drawn = (("weight-history", "Weight over all strokes", Axis("Weight", "force"), weights,
              _agreed_weight(state, newest.draw)),
             ("tiller-history", "Tiller over all strokes", Axis("Tiller", "length"), tillers,
              latest_number(state, "agreed.tiller")))
    return tuple([_chart(id, title, axis, points, aim) for id, title, axis, points, aim in drawn
                  if len(points) >= FEWEST and points[-1][0] > 0.0])


def _chart(id: str, title: str, axis: Axis, points: list[tuple[float, float]], aim: float | None) -> Chart:
    strokes = [each[0] for each in points]
    read = Line("Read", "points", strokes, [each[1] for each in points])
    agreed = () if aim is None else (Line("Agreed", "line", [0.0, strokes[-1]], [aim, aim]),)
    return Chart(id, title, Axis("Strokes on both limbs", "strokes"), axis, agreed + (read,))


def _strokes_before(state: State, reading: Entry) -> float:
    """Return how many strokes both limbs had lost when a reading was taken."""
    after = {each.id for each in state.since("strokes", reading)}
    return sum([number_in(each, name) or 0.0 for each in state.of("strokes") if each.id not in after
                for name in derive.COUNTED])


def _agreed_weight(state: State, draw: float) -> float | None:
    at = latest_number(state, "agreed.at_draw")
    same = at is not None and abs(at - draw) <= derive.SAME_DRAW
    return latest_number(state, "agreed.weight") if same else None
