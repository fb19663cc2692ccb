"""What a page asks of a record: one request in, one answer out, both as JSON.

A page holds a record as texts and does no arithmetic of its own. It sends the entries, as they are kept, with
every request; each answer is complete.

Requests name their "task" and "units"; "entries" is a record as JSON. Those that `docs/assets/js` sends:

- `foretold`: "pairs" of a reading that is being typed, or none: what the log of strokes foretells for it, and
  whether what was typed is that. "expected" and "read" are sentences, "level" is ok, watch or empty (nothing
  was foretold, and "expected" says why; or nothing typed). Without strokes since the last reading and without
  pairs it tells of that reading.
- `compare`: "entry", the id of a kept answer: its "calculator", "moment", "headline", "figures" as a link
  says them, "changed": what the record tells otherwise today, each {"input", "was", "now", "since", "stale"},
  and "stale": inputs that are the same and were read before the last change.
- `file`: "pictures", names of those that the page has: a bow's file ("page", "name"), in which `picture:NAME`
  stands where the page puts each; `all`: "records", a list of records, "bytes" of all their pictures: the
  same of all bows.
- `photos`: the "album" of a record, as `calc.record.photos` says.
- `tell`: "at", "word": the link for the owner, and messages to send; `told`: what such a "link" says. Both as
  `calc.record.telling` says. `offer`: the same for a quote, as `calc.record.offering` says.
- `across`: "records" of all bows, "at": now: a line for each bow on which others or the air bear, with its
  "place" among the records, its "level" and its "text"; closing windows first.
- `calendar`: "records" of one bow or more, "at": now: a calendar file ("text", "name").
- `sheet`: "at": now, "release": the record sheet for print as a "tree", and the "link" for the owner's page.
- `card`: "at": now: the card that hangs on the bow, for print, as a "tree".
- `week`: "records" of all bows, "at": now: what is due by day for print, as a "tree".
- `bows`: "text" of any file: "bows", each {"entries", "missing", "unread", "newer"}, and "missing" bows.

What cannot be done comes back as a sentence under "refused".
"""

from calc.outcome import Check, Refused, say
from calc.record import (
    across,
    beside,
    calendar,
    checks,
    derive,
    file,
    history,
    keep,
    owner,
    photos,
    quick,
    record_sheet,
    returned,
    sheets,
    steps,
    summary,
    table,
    tag_card,
    week,
)
from calc.record.asked import entries_in, list_in, pairs_in, state_in, units_in
from calc.record.declare import Sheet
from calc.record.entries import Entry, entry_json, read_entries
from calc.record.fill import fill
from calc.record.fold import State
from calc.record.moments import parse_moment, short_day, show_local
from calc.record.offering import offer_answer
from calc.record.telling import tell_answer, told_answer
from calc.record.values import odd_of, problems_of, value_of
from calc.record.words import facts_of, title_of
from calc.report import chart_data, chart_figure, checks_tree, table_tree

PLACE_OF_PICTURE = "picture:"

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    from calc.record.asked import Asked

    Answer = dict[str, object]


def answer(asked: "Asked") -> "Answer":
    """Return the answer to a request.

    Args:
        asked: "task" names what is wanted, "units" the unit system; the rest is the task's own.

    Returns:
        what the page shows or keeps.

    Raises:
        ValueError: there is no such task, or what came with it cannot be read.
    """
    name = str(asked["task"])
    for known, work in TASKS:
        if known == name:
            return work(asked)
    raise ValueError("there is no task called " + name)


# How a bow stands ----------------------------------------------------------------


def _head(asked: "Asked") -> "Answer":
    """Return what a list of bows shows of one."""
    entries = entries_in(asked)
    state = State(entries)
    return _head_of(entries, state, checks.checks(state), units_in(asked))


def _head_of(entries: list[Entry], state: State, shown: tuple[Check, ...], units: str) -> "Answer":
    return {"title": summary.title(state), "tag": state.text("bow.tag"),
            "weights": say(summary.weights(state), units), "next": summary.whats_next(state),
            "level": "stop" if summary.is_stopped(shown) else "ok", "due": derive.due_text(state),
            "coats": bool(state.of("coats") or state.of("coat")) and not state.of("handover"),
            "entries": len(entries)}


def _stand(asked: "Asked") -> "Answer":
    """Return all that a bow's page shows, and what a list shows of it."""
    entries = entries_in(asked)
    state = State(entries)
    following = steps.next_step(state)
    step = following.step
    drawn = history.charts(state)
    again = returned.returned(state)
    counting = {each.id for each in state.entries}
    shown = checks.checks(state)
    head = _head_of(entries, state, shown, units_in(asked))
    return {
        "head": head,
        "title": head["title"],
        "weights": head["weights"],
        "next": {"title": step.title if step else "", "why": following.why,
                 "calculators": list(step.calculators) if step else []},
        "checks": [checks_tree(shown, units_in(asked))],
        "figures": [chart_figure(each, units_in(asked)) for each in drawn],
        "returned": [] if again is None else [
            table_tree(returned.table(again, units_in(asked)), units_in(asked))],
        "charts": [chart_data(each, units_in(asked)) for each in drawn],
        "steps": [[each.title, list(each.calculators)] for each in steps.STEPS if each.calculators],
        "answers": [{"id": each.id, "calculator": each.fact("calculator"), "moment": show_local(each.at),
                     "headline": each.fact("headline")} for each in reversed(state.of("answer"))],
        "timeline": [_told_entry(each, each.id in counting) for each in _newest_first(entries)],
        "album": photos.album(entries, state),
        "columns": quick.columns(state, units_in(asked)),
        "last": quick.last_texts(state),
        "due": head["due"],
    }


def _newest_first(entries: list[Entry]) -> list[Entry]:
    return sorted([each for each in entries if not each.strikes], key=lambda each: (each.moment, each.id),
                  reverse=True)


def _told_entry(entry: Entry, counts: bool) -> "Answer":
    return {"id": entry.id, "moment": show_local(entry.at), "title": title_of(entry),
            "facts": [list(pair) for pair in facts_of(entry)], "note": entry.note,
            "sheet": entry.sheet, "struck": not counts, "problems": problems_of(entry) + odd_of(entry)}


def _fill(asked: "Asked") -> "Answer":
    """Return what a record knows of a calculator's inputs; "pairs": what its form holds, if known.

    With it what the bow is called and what its whole record shows, for above the answer.
    """
    state = state_in(asked)
    found = fill(state, str(asked["calculator"]), dict(pairs_in(asked, "pairs")))
    return {"title": summary.title(state), "tag": state.text("bow.tag"),
            "checks": [checks_tree(checks.checks(state), units_in(asked))],
            "filled": [{"input": each.input, "text": each.text, "stale": each.stale,
                        "since": short_day(each.entry.at) if each.entry else "",
                        "said": each.said, "how": each.how, "shop": each.is_of_the_shop,
                        "sheet": each.entry.sheet if each.entry else ""} for each in found]}


def _fresh(asked: "Asked") -> "Answer":
    """Return which figures "typed" for a calculator a record does not know so, and what it would not take.

    "pairs": all that its form holds. "results": of its answer, in SI, of which some are read off the bow.
    """
    found = _fresh_in(asked, state_in(asked))
    return {"fresh": [{"input": each.input, "label": each.label, "text": each.text, "was": each.was,
                       "error": "" if each.error == keep.PLAIN else each.error,
             "refused": keep.refused(each)} for each in found]}


def _fresh_in(asked: "Asked", state: State) -> list[keep.Fresh]:
    calculator, typed = str(asked["calculator"]), pairs_in(asked, "typed")
    read = [(str(each[0]), each[1]) for each in list_in(asked, "results")
            if isinstance(each, list) and len(each) == 2] if typed else []
    return (keep.fresh(state, calculator, typed, dict(pairs_in(asked, "pairs")))
            + keep.read_off(state, calculator, read, units_in(asked)))


def _keep(asked: "Asked") -> "Answer":
    """Return the entries that keep an answer and, with "readings", what was typed for it.

    "figures": each input as a link says it. "said": headline, results and checks as facts of the sheet
    "answer". "ids": more of them than sheets could ask for.
    """
    state = state_in(asked)
    calculator = str(asked["calculator"])
    pairs = pairs_in(asked, "pairs")
    typed = [name for name, _ in pairs_in(asked, "typed")]
    filled = {each.input: each for each in fill(state, calculator, dict(pairs)) if each.input not in typed}
    facts = keep.answer_facts(calculator, [str(each) for each in list_in(asked, "figures")],
                              keep.origins_of([name for name, _ in pairs], filled), pairs_in(asked, "said"))
    ids = [str(each) for each in list_in(asked, "ids")]
    at = str(asked["at"])
    made = [Entry(ids[0], at, "answer", tuple(facts), source=str(asked["source"]))]
    fresh = _fresh_in(asked, state) if asked.get("readings") else []
    readings = [each for each in fresh if not keep.refused(each)]
    kinds: list[tuple[str, bool]] = []
    for each in readings:
        if (each.sheet, each.error != "") not in kinds:
            kinds.append((each.sheet, each.error != ""))
    for place, (sheet, is_read_off) in enumerate(kinds):
        own = [each for each in readings if (each.sheet, each.error != "") == (sheet, is_read_off)]
        made.append(Entry(ids[1 + place], at, sheet, tuple([(each.name, each.text) for each in own]),
                          note=keep.errors_note(own) if is_read_off else "",
                          source=str(asked["source"]) if is_read_off else ""))
    return {"entries": [{"id": each.id, "text": entry_json(each)} for each in made]}


# Adding to it --------------------------------------------------------------------


def _take(asked: "Asked") -> "Answer":
    """Return an entry made of what was typed, or what is wrong with it by field."""
    sheet = sheets.find(str(asked["sheet"]))
    if sheet is None:
        raise ValueError("there is no sheet called " + str(asked["sheet"]))
    facts = [(name, text.strip()) for name, text in pairs_in(asked, "pairs") if text.strip()]
    errors = _errors(sheet, facts)
    at = str(asked["at"])
    try:
        parse_moment(at)
    except ValueError as error:
        errors.append({"field": "at", "message": "The moment " + str(error) + "."})
    if not facts and not errors:
        errors.append({"field": None, "message": "Fill in at least one of these."})
    if errors:
        return {"errors": errors, "entry": None}
    entry = Entry(str(asked["id"]), at, sheet.id, tuple(facts), note=str(asked.get("note", "")),
                  device=str(asked.get("device", "")), replaces=str(asked.get("replaces", "")))
    return {"errors": [], "entry": entry_json(entry)}


def _strike(asked: "Asked") -> "Answer":
    """Return an entry that strikes another out; struck out itself, it brings that one back."""
    struck = [each for each in entries_in(asked) if each.id == str(asked["entry"])]
    if not struck:
        raise ValueError("there is no entry of the id " + str(asked["entry"]))
    entry = Entry(str(asked["id"]), str(asked["at"]), struck[0].sheet, (), why=str(asked.get("why", "")),
                  device=str(asked.get("device", "")), replaces=struck[0].id)
    return {"entry": entry_json(entry)}


def _step(asked: "Asked") -> "Answer":
    """Return a reading changed by some steps."""
    count = int(str(asked["by"]))
    return {"text": quick.stepped(str(asked["fact"]), str(asked["text"]), count, units_in(asked))}


def _errors(sheet: Sheet, facts: list[tuple[str, str]]) -> "list[Answer]":
    errors: list[Answer] = []
    for name, text in facts:
        asked = sheets.input_of(sheet.id + "." + name)
        if asked is None:
            errors.append({"field": name, "message": "This sheet has no “" + name + "”."})
            continue
        try:
            value_of(sheet.id + "." + name, text)
        except Refused as refused:
            errors.append({"field": name, "row": refused.problem.row, "column": refused.problem.column,
                           "message": refused.problem.message})
    return errors


# Files ---------------------------------------------------------------------------


def _file(asked: "Asked") -> "Answer":
    entries = entries_in(asked)
    private = asked.get("private", True) is True
    return {"page": file.page(entries, units_in(asked), private, _pictures_in(asked)),
            "name": file.name_of(State(entries))}


def _pictures_in(asked: "Asked") -> dict[str, str]:
    """Return where the page puts each picture that it has into a file; it does so itself."""
    return {str(each): PLACE_OF_PICTURE + str(each) for each in list_in(asked, "pictures")}


def _read(asked: "Asked") -> "Answer":
    """Return the entries of a file, each as it will be kept, with its sheet and moment."""
    return _read_bow(file.record_in(str(asked["text"])))


def _read_bow(found: file.Found) -> "Answer":
    return {"entries": [entry_json(each) for each in found.entries], "missing": found.missing,
            "unread": [{"text": each.text, "problem": each.problem} for each in found.unread],
            "newer": found.is_newer}


def _csv(asked: "Asked") -> "Answer":
    return {"text": table.csv(entries_in(asked), units_in(asked))}


def _photos(asked: "Asked") -> "Answer":
    entries = entries_in(asked)
    return {"album": photos.album(entries, State(entries))}


def _all(asked: "Asked") -> "Answer":
    photos.check_room(asked.get("bytes", 0))
    private = asked.get("private", True) is True
    return {"page": file.page_of_all(_records_in(asked), units_in(asked), private, _pictures_in(asked)),
            "name": "all-bows.html"}


def _records_in(asked: "Asked") -> list[list[Entry]]:
    return [read_entries(str(each))[0] for each in list_in(asked, "records")]


def _calendar(asked: "Asked") -> "Answer":
    records = _records_in(asked)
    name = file.stem_of(State(records[0])) if len(records) == 1 else "all-bows"
    return {"text": calendar.calendar_of(records, str(asked["at"])), "name": name + ".ics"}


def _across(asked: "Asked") -> "Answer":
    found = across.lines([State(each) for each in _records_in(asked)], str(asked["at"]))
    return {"lines": [{"place": each.place, "level": each.level,
                       "text": " ".join([say(part, units_in(asked)) for part in each.parts])}
                      for each in found]}


def _sheet(asked: "Asked") -> "Answer":
    state, at, units = state_in(asked), str(asked["at"]), units_in(asked)
    return {"tree": record_sheet.sheet_tree(state, at, str(asked.get("release") or ""), units),
            "link": owner.link_text(owner.page_of(state, at, units))[0]}


def _card(asked: "Asked") -> "Answer":
    return {"tree": tag_card.card_tree(state_in(asked), str(asked["at"]), units_in(asked))}


def _week(asked: "Asked") -> "Answer":
    return {"tree": week.week_tree(_records_in(asked), str(asked["at"]), units_in(asked))}


def _bows(asked: "Asked") -> "Answer":
    """Return the entries of each bow in a file."""
    text = str(asked["text"])
    found = file.records_in(text)
    return {"bows": [_read_bow(each) for each in found], "missing": max(0, file.bows_told(text) - len(found))}


TASKS: "tuple[tuple[str, Callable[[Asked], Answer]], ...]" = (
    ("head", _head), ("stand", _stand), ("fill", _fill), ("fresh", _fresh), ("keep", _keep), ("take", _take),
    ("strike", _strike),
    ("step", _step), ("file", _file), ("read", _read), ("csv", _csv),
    ("foretold", beside.foretold_answer), ("compare", beside.compare_answer), ("all", _all), ("bows", _bows),
    ("photos", _photos),
    ("across", _across), ("calendar", _calendar), ("sheet", _sheet), ("card", _card),
    ("week", _week),
    ("tell", tell_answer), ("told", told_answer), ("offer", offer_answer),
)
