"""The card that hangs on a bow at the bench: which it is, what was agreed, when to stop, its page."""

from calc.outcome import say
from calc.quantities import INCH, show
from calc.record import calendar, derive, record_sheet, summary
from calc.record.fold import State
from calc.record.moments import show_local
from calc.record.values import latest_number

ALIKE = INCH / 32
"""[m] Limbs whose tiller is as near as this to what was agreed: neither is the stiffer one."""

ALWAYS = "Stringer, always. Never an empty string. Stop at a sound, a white place, a new line."


def card_tree(state: State, at: str, system: str) -> "list[list[object]]":
    """Return the card of a bow as elements, with a place for a square.

    Args:
        state: of its record.
        at: as an entry writes a moment: now.
        system: of units, for what is worked out; what was typed stays as typed.

    Returns:
        elements. Nothing that is private is among them.
    """
    card: list[object] = ["div", {"class": "rb-tag-card"}]
    card += [
        ["p", {"class": "rb-tag"}, calendar.tag_of(state)],
        ["p", {}, state.text("bow.title")],
        ["p", {}, say(summary.weights(state), system)],
        record_sheet.lines_of("rb-blanks", [
            ("Agreed", record_sheet.agreed_weight(state)),
            ("Tiller agreed", state.text("agreed.tiller")),
            ("Stiffer limb", stiffer_limb(state, system)),
            ("Glass that must stay", state.text("agreed.least_glass")),
        ]),
    ]
    card += record_sheet.stops(state, system)
    card += [
        ["p", {}, ["strong", {}, ALWAYS]],
        ["p", {}, "As of " + show_local(at) + "."],
        ["div", {"class": "rb-paper-square"}],
    ]
    return [card]


def stiffer_limb(state: State, system: str) -> str:
    """Return which limb material comes off first, by the newest tiller against the agreed one.

    Args:
        state: of a record.
        system: of units.

    Returns:
        words; none where tiller was not read since the last work, or none was agreed.
    """
    read, agreed = derive.newest_tiller(state), latest_number(state, "agreed.tiller")
    if read is None or agreed is None or derive.is_stale_in(state, "reading.upper", read[1]):
        return ""
    over = read[0] - agreed
    if abs(over) <= ALIKE:
        return "neither"
    return ("lower" if over > 0 else "upper") + ", by " + show(abs(over), "length", system) + " of tiller"
