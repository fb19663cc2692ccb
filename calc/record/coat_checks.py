"""What the coats of a record show: their windows, the air at each, how hard they are, the lettering."""

from calc.dates import show_day, show_moment
from calc.finishes.coats import whole_day
from calc.finishes.product import least_temperature
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import POUND_FORCE, ROUNDING
from calc.record import derive
from calc.record.coat_air import DAMPEST, CoatAir
from calc.record.entries import Entry
from calc.record.finishing import Finish, coat_entries
from calc.record.fold import State
from calc.record.moments import local_moment, short_day
from calc.record.values import is_on, latest_number, number_in
from calc.shop.schedule import Planned
from calc.tables.finish_families import FAMILIES

LETTER_ERROR = POUND_FORCE / 2
"""By how much a weight that is written on a bow may differ from what it pulls (common practice)."""

STRUNG = ("weight", "brace", "upper", "lower", "curve", "shot_speed")
"""What cannot be read from a bow without its string."""


def coat_checks(state: State, finish: Finish | None) -> list[Check | None]:
    """Return what the coats of a record show.

    Args:
        state: of a record.
        finish: how far it has come by the moment of the last entry, as `finish_of` gives it.

    Returns:
        checks; None for each that has nothing to say.
    """
    found = [_cold(state), _damp(state), _letter(state)]
    if finish is not None:
        found += [_window(finish), _next_window(finish), _uncovered(finish), _strung(state, finish),
                  _soft(state, finish)]
    return found


# Windows -------------------------------------------------------------------------


def _window(finish: Finish) -> Check | None:
    """Return what is to be watched of coats that went on too soon or too late over the film below."""
    laid = list(zip(finish.entries, finish.planned))
    early = [_named(step, entry) for entry, step in laid[1:] if step.start < step.opens]
    late = [_named(step, entry) for entry, step in laid if step.late and not is_on(entry, "scuffed")]
    words = []
    if early:
        words.append("Laid before the film below could bear it: " + ", ".join(early) + ". What is shut in "
                     "dries slowly: leave it longer than its time, and try it with a finger nail where "
                     "nobody looks.")
    if late:
        words.append("Laid after the window of the film below had closed, and no sanding is written down: "
                     + ", ".join(late) + ". It may peel: try tape on a hidden place before the next coat.")
    return check("window", WATCH, " ".join(words)) if words else None


def _named(step: Planned, entry: Entry) -> str:
    return step.step.name[:1].lower() + step.step.name[1:] + " of " + short_day(entry.at)


def _next_window(finish: Finish) -> Check | None:
    """Return the window of the next coat, where there is a film below that closes it."""
    if not finish.entries or not finish.to_come or finish.string_from is None:
        return None
    coming = finish.to_come[0]
    if coming.closes is None:
        return None
    name = coming.step.name
    if coming.late:
        return check("window-next", WATCH, name + " can go on from " + show_moment(coming.start)
                     + ", and the window of the film below closes on " + show_moment(coming.closes)
                     + ": dull that film first.")
    return check("window-next", WATCH, name + " goes on from " + show_moment(coming.start) + " and is begun "
                 "by " + show_moment(coming.closes) + ". After that the film below is dulled first.")


# The air -------------------------------------------------------------------------


def _cold(state: State) -> Check | None:
    """Return the stop where a coat was laid colder than its product needs."""
    family = [each for each in FAMILIES if each.id == state.text("product.family")]
    given = latest_number(state, "product.least_temperature")
    least = least_temperature(family[0].id, given) if family else given
    cold = [] if least is None else [(air, entry) for air, entry in _airs(state) if air.is_colder_than(least)]
    if least is None or not cold:
        return None
    return check("cold", STOP, sentence(
        _laid(cold) + " at {}, colder than the {} that " + (family[0].name if family else "the product")
        + " needs: it may never cure, however long it is left. No coat goes over it before it has hardened "
        "in a warm room.", amount("temperature", min([air.coldest for air, _ in cold]), 1),
        amount("temperature", least, 1)))


def _damp(state: State) -> Check | None:
    """Return what is said of coats laid in damp air, or on work too near the dew point."""
    damp = [(air, entry) for air, entry in _airs(state) if air.is_too_damp]
    near = [(air, entry) for air, entry in _airs(state) if air.margin_level != OK]
    looks = " Look for a milky or dull film before the next coat, and take it off where it is."
    if damp:
        return check("damp", STOP, sentence(
            _laid(damp) + " in air of {}, damper than the {} that is the most for spraying." + looks,
            amount("ratio", max([air.humidity for air, _ in damp]), 0), amount("ratio", DAMPEST, 0)))
    if not near:
        return None
    nearest = sorted([air for air, _ in near], key=lambda air: air.margin)[0]
    return check("damp", nearest.margin_level, sentence(
        _laid(near) + " on work only {} above the dew point; published rules ask for 3 °C or 5 °F "
        "(2.8 °C)." + looks, amount("temperature_difference", nearest.margin)))


def _airs(state: State) -> list[tuple[CoatAir, Entry]]:
    return [(CoatAir(each), each) for each in coat_entries(state) if each.sheet == "coat"]


def _laid(found: list[tuple[CoatAir, Entry]]) -> str:
    days = []
    for _, entry in found:
        if short_day(entry.at) not in days:
            days.append(short_day(entry.at))
    return ("A coat" if len(found) == 1 else "Coats") + " of " + ", ".join(days) + (
        " was laid" if len(found) == 1 else " were laid")


# How hard it is ------------------------------------------------------------------


def _strung(state: State, finish: Finish) -> Check | None:
    """Return the stop where a bow was strung before its finish was hard, until it is looked over again."""
    for entry in reversed(state.entries):
        if entry.sheet == "look":
            return None
        if not _needs_string(entry):
            continue
        at = local_moment(entry.at)
        ends = [step.end for coat, step in zip(finish.coats, finish.planned[:len(finish.entries)])
                if coat.product is not None and step.start <= at]
        hard = finish.hard_after(max(ends)) if ends else at
        if hard is None or at < hard:
            when = "" if hard is None else ", before " + show_day(whole_day(hard))
            return check("strung", STOP, "It was strung on " + short_day(entry.at) + when + ": by the warmth "
                         "that was read its finish was still soft. Unstring it, and look where the string "
                         "and the hand have pressed into it.")
    return None


def _needs_string(entry: Entry) -> bool:
    if entry.sheet == "reading":
        return any(entry.fact(each) for each in STRUNG)
    return entry.sheet in ("first_draw", "shots")


def _soft(state: State, finish: Finish) -> Check | None:
    """Return before when a bow is not strung, while its finish is hardening."""
    if not finish.entries or state.of("handover"):
        return None
    hard = finish.string_from
    if hard is None:
        return check("cure", STOP, sentence(
            "The air was last read colder than the {} that " + finish.product.family.name + " needs: its "
            "finish does not harden there. Do not string it; warm the room, and read the air again.",
            amount("temperature", finish.least or 0.0, 1)))
    if local_moment(state.entries[-1].at) >= hard:
        return None
    return check("cure", WATCH, "Do not string it before " + show_day(whole_day(hard)) + ": "
                 + ("by the warmth that was read" if finish.speeds else "in a room as warm as its sheet asks")
                 + " its finish is soft until then" + (", the coats to come laid as planned."
                                                       if finish.to_come else "."))


# The lettering -------------------------------------------------------------------


def _letter(state: State) -> Check | None:
    """Return the stop where the weight that is lettered is not what the bow pulls."""
    on = [each for each in coat_entries(state) if each.sheet == "lettering" and each.fact("weight")]
    said = number_in(on[-1], "weight") if on else None
    if said is None:
        return None
    draw = number_in(on[-1], "at_draw")
    now = derive.weight_now(state)
    read = [now] if draw is None and now is not None else [
        each for each in derive.weights(state)
        if draw is not None and abs(each.draw - draw) <= derive.SAME_DRAW]
    if not read:
        return check("letter", WATCH, sentence(
            "{} is lettered, and was never read at that draw: weigh the bow there.", amount("force", said)))
    if abs(said - read[-1].force) > LETTER_ERROR * (1 + ROUNDING):
        return check("letter", STOP, sentence(
            "{} is lettered, and the bow pulls {} at {}. Take the lettering off before a coat covers it, or "
            "letter it anew.", amount("force", said), amount("force", read[-1].force),
            amount("length", read[-1].draw)))
    if any(state.since(each, read[-1].entry) for each in ("strokes", "edges")):
        return check("letter", WATCH, sentence(
            "{} is lettered, and the bow was worked on since it was weighed: weigh it again before a coat "
            "covers the lettering.", amount("force", said)))
    return None


def _uncovered(finish: Finish) -> Check | None:
    """Return a remark on lettering over which no coat lies or is to come."""
    if not finish.entries or finish.to_come or finish.coats[-1].role != "lettering":
        return None
    return check("letter-cover", WATCH, "No coat lies over the lettering, and none is to come: the hand "
                 "wears it off. Lay one over it once it is dry.")
