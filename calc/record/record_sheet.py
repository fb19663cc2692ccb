"""The record sheet: on one side of paper what a bow is, how it came and how it is handed over.

Where a record knows no figure the sheet has an empty line, so that it serves by hand as well; without any
entry it is the blank one of the book. Names stand on it only by hand.
"""

from calc.dates import show_day
from calc.finishes.coats import whole_day
from calc.outcome import STOP, Sentence, amount, say, sentence
from calc.quantities import INCH, parse, show
from calc.record import checks, derive, owner, sheets, tell
from calc.record.derived import DERIVED
from calc.record.derived_fact import Asked, Told
from calc.record.entries import Entry
from calc.record.finishing import finish_of
from calc.record.fold import State
from calc.record.moments import local_moment, show_local
from calc.record.summary import title
from calc.record.values import is_on, latest_day
from calc.tables import practice
from calc.tables.findings import FINDINGS

STANDARD_DRAW = 28 * INCH
LONGEST_WORDS = 50
"""[letters] of words that somebody typed; the bow's file has all of them."""

MOST_NAMED = 3
"""Findings, repairs or holes that a line names; how many more there are it says."""

MOST_SECTIONS = 4
"""Sections of a limb, spread from its first to its last."""

MOST_STOPS = 2
EMPTY = "An empty line was not read, or the bow was worked on since: read it, and write it in."
NO_PROMISE = ("It holds what was measured on the day, and no promise for another. It does not say that the "
              "bow is safe.")
LEFT = ("open", "watched", "")


class _Cells:
    """A figure as it came and as it is handed over, each in parts; an empty part is a line to write on."""

    def __init__(self, label: str, came: "list[str]", handed: "list[str]"):
        self.label = label
        self.came = came
        self.handed = handed


def sheet_tree(state: State, at: str, release: str, system: str) -> list[list[object]]:
    """Return the record sheet as elements, with a place for pictures and a square.

    Args:
        state: of a record; without entries all lines are empty.
        at: as an entry writes a moment: now; empty: the sheet bears no moment.
        release: of what makes the sheet; empty: it names none.
        system: of units, for what is worked out; what was typed stays as typed.

    Returns:
        elements. Nothing that is private is among them.
    """
    rows: list[object] = ["tbody", {}]
    rows += [_row(each) for each in _measured(state, system)]
    head: list[object] = ["tr", {}]
    head += [["th", {"scope": "col"}, each] for each in ("Measured", "As it came", "Handed over")]
    return stops(state, system) + [
        lines_of("rb-blanks", _what(state)),
        ["table", {}, ["thead", {}, head], rows],
        lines_of("rb-blanks rb-blanks--wide", _done(state, at)),
        ["p", {}, ["strong", {}, "Told the owner:"], " " + say(_told(), system)],
        lines_of("rb-blanks", [("Date", ""), ("Done by", ""), ("Next look", _next_look(state)),
                             ("Received by", "")]),
        ["p", {}, _foot(at, release)],
        ["div", {"class": "rb-paper-pictures"}, ["div", {"class": "rb-paper-square"}]],
    ]


def lines_of(kind: str, lines: "list[tuple[str, str]]") -> list[object]:
    """Return lines of a sheet as a list: what each is for, and what stands on it or is to be written there.

    Args:
        kind: class of the list.
        lines: (label, text) of each; without a text it is empty.

    Returns:
        an element.
    """
    items: list[object] = ["ul", {"class": kind}]
    for label, text in lines:
        line: list[object] = ["li", {}, ["span", {}, label]]
        items.append(line + ([["b", {}, text]] if text else []))
    return items


def _row(each: _Cells) -> list[object]:
    return ["tr", {}, ["th", {"scope": "row"}, each.label], _cell(each.came), _cell(each.handed)]


def _cell(parts: "list[str]") -> list[object]:
    cell: list[object] = ["td", {}]
    if not any(parts):
        return cell
    for place, part in enumerate(parts):
        if place:
            cell.append(", ")
        cell.append(part or ["span", {"class": "rb-blank"}])
    return cell


def stops(state: State, system: str) -> list[list[object]]:
    """Return what of the whole record says stop: a sheet does not leave the bench without it.

    Args:
        state: of a record.
        system: of units.

    Returns:
        one list, or none.
    """
    found = [each for each in checks.checks(state) if each.level == STOP] if state.entries else []
    items: list[object] = ["ul", {"class": "rb-checks"}]
    items += [["li", {"class": "rb-check rb-stop"}, ["strong", {}, "Stop"], " " + say(each.text, system)]
              for each in found[:MOST_STOPS]]
    return [items] if found else []


def _foot(at: str, release: str) -> str:
    made = ["From the record as of " + show_local(at) + "."] if at else []
    made += ["Release " + release + "."] if release else []
    made += [EMPTY] if at else []
    return " ".join(made + [NO_PROMISE])


def _told() -> Sentence:
    light = practice.find("arrow-light").low
    return sentence("stringer always · never an empty string · not under {} of arrow · string material as "
                    "above · no further than the draw above · unstring, no heat · look over each day · stop "
                    "at any new sound.", amount("mass_per_force", light or 0.0, 0))


# What it is ----------------------------------------------------------------------


def _what(state: State) -> "list[tuple[str, str]]":
    return [
        ("Bow", title(state) if state.entries else ""), ("Owner", ""),
        ("Lettering as it came", _short(state.text("bow.marked_letters"))), ("Agreed", agreed_weight(state)),
        ("Marked length", state.text("bow.marked_length")),
        ("Marked weight", state.text("bow.marked_weight")),
        ("Archer's draw", state.text("archer.draw")), ("Hold", _label("archer.hold", state)),
    ]


def agreed_weight(state: State) -> str:
    """Return the weight that was agreed, as it was typed.

    Args:
        state: of a record.

    Returns:
        words; none where weight or draw is missing.
    """
    return _joined([state.text("agreed.weight"), state.text("agreed.at_draw")], " at ")


def _label(fact: str, state: State) -> str:
    """Return the words of a choice that a record holds."""
    asked, text = sheets.input_of(fact), state.text(fact)
    options = asked.choices if asked is not None else ()
    return next((str(each.label) for each in options if each.id == text), "")


def _joined(texts: "list[str]", mark: str) -> str:
    """Return texts joined; empty where one of them is not known, since the others say nothing without it."""
    return mark.join(texts) if all(texts) else ""


def _short(words: str) -> str:
    plain = " ".join(words.split())
    return plain if len(plain) <= LONGEST_WORDS else plain[:LONGEST_WORDS].rstrip() + "…"


# What was measured ---------------------------------------------------------------


def _measured(state: State, system: str) -> "list[_Cells]":
    weight = derive.weight_now(state)
    draw = weight.entry.fact("at_draw") if weight is not None else (
        state.text("agreed.at_draw") or show(STANDARD_DRAW, "length", system))
    return [
        _Cells("Weight at " + draw, [_weight(state, "weight_as_it_came", system)],
               [_weight(state, "weight_now", system)]),
        _Cells("Weight at the archer's draw", [_came_at_own_draw(state, system)],
               [_weight(state, "weight_at_archers_draw", system)]),
        _read(state, "Brace height", ("brace",)),
        _tiller(state, system),
        _read(state, "String off the middle near the tip: upper, lower",
              ("upper_offset_tip", "lower_offset_tip")),
        _sections(state, "upper"),
        _sections(state, "lower"),
        _read(state, "Glass left: back, belly", ("glass_back", "glass_belly")),
        _throat(state),
    ]


def _weight(state: State, name: str, system: str) -> str:
    """Return a weight that follows from the readings; empty where it was read before the last work."""
    found = DERIVED[name].told(state, Asked("", {}))
    return "" if found.stale else _shown(found, system)


def _came_at_own_draw(state: State, system: str) -> str:
    found = DERIVED["lived_weight"].told(state, Asked("", {}))
    worked = found.entry is not None and _was_worked_on(state, "reading.weight", found.entry)
    return "" if worked else _shown(found, system)


def _shown(found: Told, system: str) -> str:
    """Return a weight as it was typed; one from between readings as people read it."""
    return show(parse(found.text, "force"), "force", system) if found.text and found.said else found.text


def _read(state: State, label: str, names: "tuple[str, ...]") -> _Cells:
    return _Cells(label, [_came(state, "reading." + each) for each in names],
                  [_now(state, "reading." + each) for each in names])


def _came(state: State, fact: str) -> str:
    found = state.first(fact)
    return "" if found is None or _was_worked_on(state, fact, found.entry) else found.text


def _now(state: State, fact: str) -> str:
    return "" if derive.is_stale(state, fact) else state.text(fact)


def _was_worked_on(state: State, fact: str, read: Entry) -> bool:
    """Return whether work had changed a fact before an entry read it: then it is not as the bow came."""
    changing = [deed for deed in derive.deeds_on(fact, read) if deed in derive.ASKS_FOR_PROOF]
    return any(derive.is_deed(each) and (each.moment, each.id) < (read.moment, read.id)
               for deed in changing for each in state.of(deed))


def _tiller(state: State, system: str) -> _Cells:
    both = [each for each in state.of("reading") if derive.tiller(each) is not None]
    came = _tiller_parts(both[0], system) if both and not _was_worked_on(
        state, "reading.upper", both[0]) else []
    now = _tiller_parts(both[-1], system) if both and not derive.is_stale_in(
        state, "reading.upper", both[-1]) else []
    return _Cells("Tiller: upper, lower, difference", came, now)


def _tiller_parts(entry: Entry, system: str) -> "list[str]":
    return [entry.fact("upper"), entry.fact("lower"), show(derive.tiller(entry) or 0.0, "length", system)]


def _sections(state: State, limb: str) -> _Cells:
    fact = "reading.stations_" + limb
    first, last = state.first(fact), state.latest(fact)
    came = "" if first is None or _was_worked_on(state, fact, first.entry) else _thickness(first.entry, limb)
    now = "" if last is None or derive.is_stale(state, fact) else _thickness(last.entry, limb)
    return _Cells("Thickness of the " + limb + " limb, from the fadeout", [came], [now])


def _thickness(entry: Entry, limb: str) -> str:
    rows = [row.split(":") for row in entry.fact("stations_" + limb).split(";")]
    known = [row for row in rows if len(row) > 2]
    shown = known if len(known) <= MOST_SECTIONS else [
        known[place * (len(known) - 1) // (MOST_SECTIONS - 1)] for place in range(MOST_SECTIONS)]
    told = [row[2].strip() + " at " + row[0].strip() for row in shown]
    return "; ".join(told) + (" (with finish)" if told and is_on(entry, "with_finish") else "")


def _throat(state: State) -> _Cells:
    """Return width and depth at the throat, which is the first of the riser's sections."""
    worked = [each for each in state.of("section") if is_on(each, "done")]
    before, after = state.first("section.before"), worked[-1].fact("after") if worked else ""
    came = before.text.split(";")[0].split(":")[1:] if before is not None else []
    return _Cells("Throat: width, depth", came, after.split(";")[0].split(":") if after else [])


# What was done -------------------------------------------------------------------


def _done(state: State, at: str) -> "list[tuple[str, str]]":
    found = owner.findings_of(state)
    return [
        ("Inspected, found", _named([_finding(each) for each in found])),
        ("Repaired", _named([_mended(each) for sheet in ("repair", "fill") for each in state.of(sheet)])),
        ("Left as it was", _named([_finding(each) for each in found if each.standing in LEFT])),
        ("Holes, inserts, threads", _named([_hole(each) for each in state.of("hole")])),
        ("Finish, coats, hard on", _finish(state, at)),
        ("Lettering", _short(state.text("lettering.text"))),
        ("String: length, strands, material", _parts([
            state.text("string.length"), state.text("string.strands"), _label("string.material", state)])),
        ("Arrows: spine, length, point, mass", _parts([
            state.text("arrow." + each) for each in ("spine", "length", "point_mass", "mass")])),
    ]


def _named(items: "list[str]") -> str:
    """Return so many items as a line holds, and how many more there are."""
    known = [each for each in items if each]
    more = len(known) - MOST_NAMED
    told = "; ".join(known[:MOST_NAMED])
    return told + ("; and " + str(more) + " more, in the bow's file" if more > 0 else "")


def _parts(texts: "list[str]") -> str:
    """Return what is known of a line; what is not is left to be asked for."""
    return ", ".join([each for each in texts if each])


def _finding(found: owner.Found) -> str:
    known = next(each for each in FINDINGS if each.id == found.which)
    where = tell.LIMB_WORDS.get(found.limb, "")
    return known.label + (" (" + where + ")" if where else "") + ", " + tell.STANDING_WORDS[found.standing]


def _mended(entry: Entry) -> str:
    where = tell.LIMB_WORDS.get(entry.fact("limb"), "")
    return _parts([_short(entry.fact("what")), where, _short(entry.fact("material"))])


def _hole(entry: Entry) -> str:
    screw = entry.fact("screw")
    asked = sheets.input_of("hole.screw")
    thread = next((str(each.label) for each in asked.choices if each.id == screw), "") if asked else ""
    return _parts([_short(entry.fact("place")), entry.fact("bit_diameter"), thread])


def _finish(state: State, at: str) -> str:
    finish = finish_of(state, local_moment(at)) if at else None
    if finish is None or not finish.entries:
        return ""
    coats = len([each for each in finish.entries if each.sheet == "coat"])
    told = [str(finish.product.family.name), str(coats) + (" coat" if coats == 1 else " coats")]
    hard = finish.string_from
    if finish.to_come:
        told.append("more to come")
    elif hard is not None:
        told.append(show_day(whole_day(hard)))
    return ", ".join(told)


def _next_look(state: State) -> str:
    day = latest_day(state, "handover.next_look")
    return "" if day is None else show_day(day)
