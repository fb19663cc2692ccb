"""Weight, tiller and the string's line of a bow over all strokes that its record counts, as charts."""

from calc.outcome import Axis, Chart, Line
from calc.record import derive
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import latest_number, number_in
from calc.tables.string_places import PLACES

STROKES = Axis("Strokes on both limbs", "strokes")
TILLER_AND_LINE = "Tiller and the string's line over all strokes; right of the middle is positive"

FEWEST = 2
"""Readings below which there is nothing to see."""


def charts(state: State) -> tuple[Chart, ...]:
    """Return what a bow pulled, its tiller and where its string ran, over the strokes made until then.

    Args:
        state: of a record.

    Returns:
        a chart of weight, of readings at the draw of the newest one, and one of tiller with the string's
        offsets; none of what was read once only, or where no stroke was counted.
    """
    newest = derive.weight_now(state)
    if newest is None:
        return ()
    weights = [(_strokes_before(state, each.entry), each.force) for each in derive.weights(state)
               if abs(each.draw - newest.draw) <= derive.SAME_DRAW]
    tillers = [(_strokes_before(state, each), found) for each in state.of("reading")
               for found in [derive.tiller(each)] if found is not None]
    line = _line(state)
    drawn = ((Chart("weight-history", "Weight over all strokes", STROKES, Axis("Weight", "force"), ()),
              weights, _agreed_weight(state, newest.draw), ()),
             (Chart("tiller-history", TILLER_AND_LINE if line else "Tiller over all strokes", STROKES,
                    Axis("Tiller and offsets", "thickness") if line else Axis("Tiller", "length"), ()),
              tillers, latest_number(state, "agreed.tiller"), line))
    return tuple([_filled(*each) for each in drawn if len(each[1]) >= FEWEST and each[1][-1][0] > 0.0])


def _filled(
    chart: Chart, points: list[tuple[float, float]], aim: float | None, beside: tuple[Line, ...]
) -> Chart:
    strokes = [each[0] for each in points]
    agreed = () if aim is None else (Line("Agreed", "line", [0.0, strokes[-1]], [aim, aim]),)
    read = Line("Tiller read" if beside else "Read", "points", strokes, [each[1] for each in points])
    return Chart(chart.id, chart.title, chart.x, chart.y, agreed + beside + (read,))


def _line(state: State) -> tuple[Line, ...]:
    """Return where the string ran, over the strokes made until each reading of it."""
    found = []
    for _, name, label in PLACES:
        points = [(_strokes_before(state, each), offset) for each in state.of("reading")
                  for offset in [number_in(each, name)] if offset is not None]
        if points:
            found.append(Line(label, "line", [each[0] for each in points], [each[1] for each in points]))
    return tuple(found)


def _strokes_before(state: State, reading: Entry) -> float:
    """Return how many strokes both limbs had lost when a reading was taken."""
    after = {each.id for each in state.since("strokes", reading)}
    return sum([number_in(each, name) or 0.0 for each in state.of("strokes") if each.id not in after
                for name in derive.COUNTED])


def _agreed_weight(state: State, draw: float) -> float | None:
    at = latest_number(state, "agreed.at_draw")
    same = at is not None and abs(at - draw) <= derive.SAME_DRAW
    return latest_number(state, "agreed.weight") if same else None
