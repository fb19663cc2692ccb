"""Weight, tiller, draw curves and shots that nobody typed as a calculator asks for them."""

from calc.mechanics.draw_curve import curve_from_readings, force_at
from calc.quantities import INCH, POUND_FORCE, ROUNDING
from calc.record import derive
from calc.record.derived_fact import Asked, Derived, Told
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.moments import short_day
from calc.record.values import latest_number, number_in, rows_of

TENTHS = POUND_FORCE / 10
"""To which a weight between two readings of a curve is told: readings are no better."""

STANDARD_DRAW = 28 * INCH


# Weight and tiller ---------------------------------------------------------------


def _tiller(state: State) -> Told:
    found = derive.newest_tiller(state)
    if found is None:
        return Told()
    stale = derive.is_stale_in(state, "reading.upper", found[1])
    return Told(exact_text(found[0], "length", "in", INCH), found[1], stale)


def _of_weight(state: State, weight: derive.Weight | None, name: str, may_be_stale: bool = True) -> Told:
    if weight is None:
        return Told()
    stale = may_be_stale and derive.is_stale_in(state, "reading.weight", weight.entry)
    return Told(weight.entry.fact(name), weight.entry, stale)


def _weight_now(state: State) -> Told:
    return _of_weight(state, derive.weight_now(state), "weight")


def _draw_now(state: State) -> Told:
    return _of_weight(state, derive.weight_now(state), "at_draw", False)


def _weight_as_it_came(state: State) -> Told:
    now = derive.weight_now(state)
    return _of_weight(state, derive.first_at(state, now.draw) if now else None, "weight", False)


def _weight_wanted(state: State) -> Told:
    """Return the weight agreed, where it was agreed at the draw at which the bow is read."""
    found, now = state.latest("agreed.weight"), derive.weight_now(state)
    if found is None:
        return Told()
    at_draw = number_in(found.entry, "at_draw")
    if at_draw is None or (now is not None and abs(at_draw - now.draw) > derive.SAME_DRAW):
        return Told()
    return Told(found.text, found.entry)


def _weight_at_archers_draw(state: State) -> Told:
    draw = latest_number(state, "archer.draw")
    return Told() if draw is None else _weight_at(state, draw, True)


def _lived_weight(state: State) -> Told:
    draw = latest_number(state, "archer.draw")
    return Told() if draw is None else _weight_at(state, draw, False)


def _weight_now_at_28(state: State) -> Told:
    return _weight_at(state, STANDARD_DRAW, True)


def _weight_came_at_28(state: State) -> Told:
    return _weight_at(state, STANDARD_DRAW, False)


def _weight_at(state: State, draw: float, newest: bool) -> Told:
    """Return the newest or the first weight at a draw: read there, else from a curve that reaches it.

    A slope that nobody measured would be a guess.
    """
    found: list[tuple[Entry, Told]] = []
    for weight in derive.weights(state):
        if abs(weight.draw - draw) <= derive.SAME_DRAW:
            found.append((weight.entry, _of_weight(state, weight, "weight", newest)))
    for entry in state.of("reading"):
        told = _from_curve(state, entry, draw, newest)
        if told.text:
            found.append((entry, told))
    found.sort(key=lambda each: (each[0].moment, each[0].id))
    return found[-1 if newest else 0][1] if found else Told()


def _from_curve(state: State, entry: Entry, draw: float, newest: bool) -> Told:
    rows = rows_of(entry, "curve")
    draws, forces = tuple([row[0] for row in rows]), tuple([row[1] for row in rows])
    rises = all(before < after for before, after in zip(draws, draws[1:]))
    if len(rows) < 2 or not rises or not draws[0] - ROUNDING <= draw <= draws[-1] + ROUNDING:
        return Told()
    curve = curve_from_readings(draws, forces, tuple([0.0 for _ in rows]))
    force = force_at(curve, min(max(draw, draws[0]), draws[-1]))
    stale = newest and derive.is_stale_in(state, "reading.curve", entry)
    return Told(exact_text(TENTHS * int(force / TENTHS + 0.5), "force", "lb", POUND_FORCE), entry, stale,
                "from the draw curve of " + short_day(entry.at))


def _weight_when_read(state: State) -> Told:
    """Return the weight at which glass and sections were read: none came off between the two readings."""
    read = [state.latest(fact) for fact in derive.SECTIONS]
    known = [each.entry for each in read if each is not None]
    now = derive.weight_now(state)
    if not known or now is None:
        return Told()
    oldest = min(known, key=lambda each: (each.moment, each.id))
    behind = [each.id for each in state.since("strokes", oldest)]
    for weight in reversed(derive.weights(state)):
        alike = abs(weight.draw - now.draw) <= derive.SAME_DRAW
        if alike and [each.id for each in state.since("strokes", weight.entry)] == behind:
            return Told(weight.entry.fact("weight"), weight.entry)
    return Told()


# Draw curves and shots -----------------------------------------------------------


def _curve_now(state: State) -> Told:
    found = state.latest("reading.curve")
    return Told() if found is None else Told(found.text, found.entry, derive.is_stale(state, "reading.curve"))


def _curve_came(state: State) -> Told:
    found = state.first("reading.curve")
    return Told() if found is None else Told(found.text, found.entry)


def _curve_basis(state: State) -> Told:
    """Return how draws are stated: a record has one way, that in which bows are marked."""
    found = state.latest("reading.curve")
    return Told() if found is None else Told("marked", found.entry)


def _of_shot(state: State, asked: Asked, name: str) -> Told:
    """Return an arrow or its speed from a shot that goes with what the form asks for, before or after."""
    losses = asked.chosen.get("losses", "")
    shots = [each for each in state.of("reading") if each.fact("shot_mass") and each.fact("shot_speed")]
    if not shots or losses not in ("chronograph", "chronograph_before"):
        return Told()
    if losses == "chronograph":
        stale = derive.is_stale_in(state, "reading.shot_speed", shots[-1])
        return Told(shots[-1].fact(name), shots[-1], stale)
    return Told(shots[0].fact(name), shots[0])


def _shot_mass(state: State, asked: Asked) -> Told:
    return _of_shot(state, asked, "shot_mass")


def _shot_speed(state: State, asked: Asked) -> Told:
    return _of_shot(state, asked, "shot_speed")


def _bend(state: State, asked: Asked) -> Told:
    """Return the bend of the test that the form asks for: the two tests are not one another's."""
    known = asked.chosen.get("shaft_known", "")
    found = state.latest("arrow." + known) if known in ("deflection_28", "deflection_26") else None
    return Told() if found is None else Told(found.text, found.entry)


_BOTH = "Read draw weight with its draw on the sheet “A reading”"
_CURVE = "Read weight at several draws on the sheet “A reading”: the draw curve."

WEIGHTS: dict[str, Derived] = {
    "tiller": Derived("length", _tiller, "Read upper and lower tiller distance in one reading."),
    "weight_now": Derived("force", _weight_now, _BOTH + "."),
    "draw_now": Derived("length", _draw_now, _BOTH + "."),
    "weight_as_it_came": Derived("force", _weight_as_it_came, _BOTH + " before anything comes off."),
    "weight_wanted": Derived("force", _weight_wanted, "Agree draw weight and its draw on the sheet “What was "
                             "agreed”, at the draw at which the bow is read."),
    "weight_at_archers_draw": Derived("force", _weight_at_archers_draw, _BOTH + " at the archer's draw, or a "
                                      "draw curve that reaches it, and the archer's draw."),
    "lived_weight": Derived("force", _lived_weight, _BOTH + " at the archer's draw before anything comes "
                            "off."),
    "weight_now_at_28": Derived("force", _weight_now_at_28, _BOTH + " at 28 in, or a draw curve that reaches "
                                "it."),
    "weight_came_at_28": Derived("force", _weight_came_at_28, _BOTH + " at 28 in before anything comes off."),
    "weight_when_read": Derived("force", _weight_when_read, _BOTH + " when glass and sections are read."),
    "curve_now": Derived("rows", _curve_now, _CURVE),
    "curve_came": Derived("rows", _curve_came, _CURVE),
    "curve_basis": Derived("choice", _curve_basis, _CURVE),
    "shot_mass": Derived("mass", None, "Weigh the arrow that goes over the chronograph.",
                         _shot_mass),
    "shot_speed": Derived("speed", None, "Read a chronograph at the archer's draw.", _shot_speed),
    "bend": Derived("thickness", None, "Hang the test's weight on the shaft and read its bend: sheet “The "
                    "arrow”.", _bend),
}
