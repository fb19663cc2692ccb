"""What only a whole record can check: drop of all jobs together, glass, verdict, proof, age of readings."""

from calc.dates import DAY, show_day
from calc.finishes.coats import whole_day
from calc.outcome import (
    STOP,
    WATCH,
    Check,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.record import derive, returned
from calc.record.coat_checks import coat_checks
from calc.record.entries import Entry
from calc.record.finishing import Finish, finish_of
from calc.record.fold import State
from calc.record.moments import local_day, local_moment, short_day
from calc.record.values import is_off, is_on, latest_number, number_in
from calc.tables import practice
from calc.tables.findings import FINDINGS, LOOKS, SHOOT, Finding, verdict_of

LEAST_SHARE = practice.find("glass-left").low
USUAL_DROP = practice.find("weight-drop").high
LEAST_MASS = practice.find("arrow-never").low
LOW_MASS = practice.find("arrow-light").low
CHECK_LASTS = 30
"""[days] for which one hanging of a known weight vouches for a scale (common practice)."""

READ_AGAIN = (
    ("reading.weight", "draw weight"), ("reading.upper", "tiller"), ("reading.curve", "the draw curve"),
    ("reading.stations_upper", "the sections"), ("reading.glass_belly", "the glass"),
    ("reading.upper_offset_riser", "where the string runs"),
)


def checks(state: State) -> tuple[Check, ...]:
    """Return everything that a whole record shows, whatever a single calculator says.

    Args:
        state: of a record.

    Returns:
        checks, the gravest first in each of their groups.
    """
    finish = finish_of(state, local_moment(state.entries[-1].at)) if state.entries else None
    return tuple([each for each in [
        _verdict(state), _proof(state), _glass_floor(state), _total_drop(state), _agreed(state),
        _looks_again(state), _stale(state), _papers(state), _scales(state), _unchecked(state),
        _string_tips(state), _arrow_mass(state), _due(state, finish), _returned(state),
    ] + coat_checks(state, finish) if each is not None])


def open_findings(state: State) -> list[Finding]:
    """Return what was found and is not mended or gone; the newest entry on a place counts.

    Args:
        state: of a record.

    Returns:
        findings, most dangerous first.
    """
    stands: dict[tuple[str, str, str], str] = {}
    for entry in state.of("finding"):
        place = (entry.fact("which"), entry.fact("limb"), entry.fact("place"))
        stands[place] = entry.fact("standing") or "open"
    still = {place[0] for place in stands if stands[place] in ("open", "watched")}
    return [each for each in FINDINGS if each.id in still]


def verdict(state: State) -> str | None:
    """Return what the newest inspection and the open findings come to.

    Args:
        state: of a record.

    Returns:
        id of the verdict; None where no look was ever written down.
    """
    looked = state.of("look")
    found = open_findings(state)
    if not looked and not found:
        return None
    seen = {name for entry in looked for name, _ in entry.facts if is_on(entry, name)}
    return str(verdict_of(found, [each for each in LOOKS if each.id not in seen]).id)


def is_proved(state: State) -> bool:
    """Return whether a full draw from a distance, silent and still, came after all removal and repair.

    Args:
        state: of a record.

    Returns:
        true or false.
    """
    full = latest_number(state, "archer.draw")
    draws = [each for each in state.entries if _is_full_draw(each, full)]
    if not draws or derive.deeds(state, draws[-1]) or _mended(state.since("finding", draws[-1])):
        return False
    return all(is_off(draws[-1], name) for name in ("sound", "moved"))


def _is_full_draw(entry: Entry, full: float | None) -> bool:
    """Return whether an entry tells of a full draw from a distance, for its own sake or at a weighing."""
    if entry.sheet == "reading":
        if not entry.fact("weight") or not is_on(entry, "from_distance"):
            return False
        draw = number_in(entry, "at_draw")
        return draw is not None and (full is None or draw >= full - derive.SAME_DRAW)
    return entry.sheet == "first_draw" and is_on(entry, "from_distance") and is_on(entry, "full")


def _mended(findings: list[Entry]) -> bool:
    return any(each.fact("standing") == "mended" for each in findings)


def _verdict(state: State) -> Check | None:
    found = verdict(state)
    if found is None:
        return check("verdict", STOP, "No inspection is written down: do not string the bow before it is.")
    if found == SHOOT:
        return None
    names = "; ".join([each.label[:1].lower() + each.label[1:] for each in open_findings(state)])
    return check("verdict", STOP, "The inspection does not let the bow be strung"
                 + (": " + names + "." if names else ": some looks have not been made."))


def _proof(state: State) -> Check | None:
    if not derive.deeds(state) and not _mended(state.of("finding")) and not state.of("first_draw"):
        return None
    if is_proved(state):
        return None
    return check("proof", STOP, "No full draw from a distance since the last removal or repair: nobody draws "
                 "it by hand before that, with eye protection and nobody in line with the limbs.")


def _glass_floor(state: State) -> Check | None:
    share = latest_number(state, "agreed.least_glass") or LEAST_SHARE
    for face in ("belly", "back"):
        least = derive.least_glass_allowed(state, face, share)
        now = latest_number(state, "reading.glass_" + face)
        if least is not None and now is not None and now < least * (1 - ROUNDING):
            return check("glass-floor", STOP, sentence(
                "The glass on the " + face + " is {}, less than the {} that must stay of the glass as it "
                "came. Take nothing more off that face.",
                amount("thickness", now), amount("thickness", least)))
    return None


def _total_drop(state: State) -> Check | None:
    wanted, at_draw = latest_number(state, "agreed.weight"), latest_number(state, "agreed.at_draw")
    came = derive.first_at(state, at_draw) if at_draw is not None else None
    if came is None or wanted is None:
        return None
    drop = 1 - wanted / came.force
    if drop <= USUAL_DROP + ROUNDING:
        return None
    return check("total-drop", WATCH, sentence(
        "From the {} that it pulled as it came to the {} agreed is a drop of {}, all jobs together: more "
        "than the {} that is ordinary on an old bow.", amount("force", came.force), amount("force", wanted),
        amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))


def _agreed(state: State) -> Check | None:
    batches = state.of("strokes")
    agreed = [each for each in state.of("agreed") if each.fact("weight")]
    if batches and (not agreed or agreed[0].moment > batches[0].moment):
        return check("agreed", WATCH, "Strokes were made before a weight was agreed with the owner.")
    if len(agreed) > 1 and local_day(agreed[-1].at) == local_day(agreed[-2].at) and (
            number_in(agreed[-1], "weight") != number_in(agreed[-2], "weight")):
        return check("agreed", WATCH, sentence(
            "Two weights were agreed on " + short_day(agreed[-1].at) + "; the later one, {}, counts. Strike "
            "out the other if it is wrong.", amount("force", number_in(agreed[-1], "weight") or 0.0)))
    return None


def _stale(state: State) -> Check | None:
    old = [(fact, label) for fact, label in READ_AGAIN if derive.is_stale(state, fact)]
    if not old:
        return None
    if not any(derive.is_undone(state, fact) for fact, _ in old):
        return check("stale", WATCH, "Read over a year before the last entry, so to be read again: "
                     + ", ".join([label for _, label in old]) + ".")
    most = max([derive.strokes_since(state, fact) for fact, _ in old])
    since = " before " + str(most) + " strokes" if most else " before the last change"
    return check("stale", WATCH, "Read" + since + ", so to be read again: "
                 + ", ".join([label for _, label in old]) + ".")


def _looks_again(state: State) -> Check | None:
    old = [each.label for each in LOOKS if derive.is_stale(state, "look." + each.id)]
    if not old:
        return None
    return check("looks-again", WATCH, "Work was done since these were looked at, so look again: "
                 + "; ".join([each[:1].lower() + each[1:] for each in old]) + ".")


def _papers(state: State) -> Check | None:
    papers = sorted({derive.paper_of(each) for each in state.of("strokes")})
    if len(papers) < 2:
        return None
    names = ", ".join([each or "not said" for each in papers])
    return check("papers", WATCH, "Strokes were made on several papers (" + names + "): a stroke is worth "
                 "something else on each.")


def _scales(state: State) -> Check | None:
    named = {each.entry.fact("scale").strip().lower() for each in derive.weights(state)}
    scales = sorted([each for each in named if each])
    if len(scales) < 2:
        return None
    return check("scales", WATCH, "Weights were read on several scales (" + ", ".join(scales)
                 + "): hang the same known weight from each before they are compared.")


def _unchecked(state: State) -> Check | None:
    """Return a remark on a scale that nobody tried with a known weight; one reading compares nothing."""
    read = derive.weights(state)
    if len(read) < 2:
        return None
    newest = read[-1].entry
    if any(is_on(each, "checked") and 0 <= newest.moment - each.moment <= CHECK_LASTS * DAY
           for each in state.of("reading")):
        return None
    return check("scale-check", WATCH, "No known weight was hung from the scale in the " + str(CHECK_LASTS)
                 + " days before the reading of " + short_day(newest.at) + ": what a scale is out by then "
                 "counts as weight lost.")


def _string_tips(state: State) -> Check | None:
    material, tips = state.latest("string.material"), state.latest("bow.tips")
    if material is None or material.text == "polyester" or (tips is not None and tips.text == "reinforced"):
        return None
    return check("string-tips", STOP, "A low-stretch string on tips that are not known to be reinforced for "
                 "it: take it off, and fit one of polyester.")


def _arrow_mass(state: State) -> Check | None:
    mass = latest_number(state, "arrow.mass")
    read = derive.weights(state)
    if mass is None or not read:
        return None
    share = mass / read[-1].force
    if share >= LOW_MASS * (1 - ROUNDING):
        return None
    level = STOP if share < LEAST_MASS else WATCH
    return check("arrow-mass", level, sentence(
        "The arrow weighs {} for the {} of the bow: under {} is too light for an old bow, under {} for any.",
        amount("mass_per_force", share), amount("force", read[-1].force),
        amount("mass_per_force", LOW_MASS, 0), amount("mass_per_force", LEAST_MASS, 0)))


def _due(state: State, finish: Finish | None) -> Check | None:
    """Return a remark where the finish cannot be hard on the day that was promised."""
    due, cure = derive.due(state), latest_number(state, "product.cure")
    if due is None or not state.entries or state.of("handover"):
        return None
    today = max([local_day(each.at) for each in state.entries])
    if today > due:
        return check("due", WATCH, "It was to be ready by " + show_day(due)
                     + ", and has not been handed over.")
    hard = finish.string_from if finish is not None else None
    if hard is not None:
        return None if whole_day(hard) <= due else check("due", WATCH, "It is to be ready by " + show_day(due)
                     + ". By the coats that are laid and planned it is hard enough for a string on "
                     + show_day(whole_day(hard)) + " at the earliest: tell the owner.")
    if cure is None or not state.text("agreed.finish") or today + cure / DAY <= due:
        return None
    ready = today + int(-(-cure // DAY))
    return check("due", WATCH, "It is to be ready by " + show_day(due) + ". A coat laid on the day of the "
                 "last entry is hard enough for a string on " + show_day(ready) + " at the earliest, in a "
                 "room as warm as the product asks: tell the owner.")


def _returned(state: State) -> Check | None:
    found = returned.returned(state)
    return None if found is None else returned.told(found)
