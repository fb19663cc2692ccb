"""The record on the command line: `python -m calc record add 31.html reading --weight "47.7 lb" ...`."""

import argparse
import os
import secrets
import sys
import time
from pathlib import Path

from calc.command.as_text import table_lines
from calc.dates import DAY, day_number
from calc.declaring import (
    COUNT,
    ROWS,
    SWITCH,
    Input,
)
from calc.outcome import Refused, say
from calc.quantities import SYSTEMS, shown_unit
from calc.record import (
    across,
    beside,
    calendar,
    checks,
    compared,
    file,
    photos,
    quick,
    returned,
    sheets,
    summary,
    table,
)
from calc.record.declare import NOTE, Sheet
from calc.record.entries import Entry, entry_id, is_id
from calc.record.fold import State, union
from calc.record.moments import moment_text, parse_moment, show_local
from calc.record.values import odd_of, problems_of, value_of
from calc.record.words import facts_of
from calc.report import LEVEL_WORDS, in_order_of_weight

DONE = 0
BAD_INPUT = 2
NEWER = "was written by a later release"
FORMER = "~"
"""Behind the name of a file that was replaced."""

FACT = "fact of a sheet: "
"""Before the name of a fact among the options: a sheet may have one called like what every action takes."""

BARE = set("0123456789.,/-+ ")


class Failed(Exception):
    """What was asked cannot be done; the message is for the person who asked."""


def main(words: list[str]) -> int:
    """Run the record's part of the command line; return the exit status."""
    options = _parser().parse_args(words)
    try:
        options.run(options)
    except (Failed, Refused) as error:
        print(error, file=sys.stderr)
        return BAD_INPUT
    return DONE


# What it understands -------------------------------------------------------------


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m calc record", description=(
        "One file a bow. Entries are only ever added; a file is replaced whole, the one before kept."))
    actions = parser.add_subparsers(required=True, metavar="ACTION")
    new = _action(actions, "new", "begin the record of a bow", _new)
    _add_facts(new, sheets.BOW)
    add = actions.add_parser("add", help="add an entry")
    add.add_argument("file")
    kinds = add.add_subparsers(required=True, metavar="SHEET")
    for sheet in sheets.SHEETS:
        kind = kinds.add_parser(sheet.id, help=sheet.purpose, description=sheet.purpose)
        _add_facts(kind, sheet)
        kind.set_defaults(run=_add, sheet=sheet)
    strike = _action(actions, "strike", "strike an entry out", _strike)
    strike.add_argument("id", help="as `show` gives it")
    strike.add_argument("--why", default="", help="what was wrong with it")
    _action(actions, "show", "say how the bow stands and what was done", _show)
    _action(actions, "check", "say only what stands in the way", _check)
    following = actions.add_parser("next", help="say what comes next on each of several bows")
    following.add_argument("files", nargs="+")
    following.set_defaults(run=_next)
    together = actions.add_parser("across", help="say what several bows on one bench mean for each other")
    together.add_argument("files", nargs="+")
    together.add_argument("--units", choices=SYSTEMS, default=SYSTEMS[0], help="for what is shown")
    together.set_defaults(run=_across)
    dated = actions.add_parser("calendar", help="print the coats of one bow or several as a calendar file")
    dated.add_argument("files", nargs="+")
    dated.set_defaults(run=_calendar)
    merge = _action(actions, "merge", "bring copies of one record together", _merge)
    merge.add_argument("others", nargs="+", help="the other copies")
    merge.add_argument("--same", action="store_true", help="they are of one bow, though they share no entry")
    split = actions.add_parser("split", help="write each bow of a file of all bows into a file of its own")
    split.add_argument("file", help="the file of all bows")
    split.add_argument("folder", help="into which")
    split.set_defaults(run=_split)
    _action(actions, "csv", "print readings and batches as comma-separated values", _csv)
    return parser


def _action(actions, name: str, help: str, run) -> argparse.ArgumentParser:  # type: ignore[no-untyped-def]
    parser: argparse.ArgumentParser = actions.add_parser(name, help=help, description=help)
    parser.add_argument("file", help="the bow's file")
    parser.add_argument("--units", choices=SYSTEMS, default=SYSTEMS[0], help="for what is shown")
    parser.set_defaults(run=run)
    return parser


def _add_facts(parser: argparse.ArgumentParser, sheet: Sheet) -> None:
    for each in sheets.inputs_of(sheet):
        parser.add_argument("--" + each.id.replace("_", "-"), dest=FACT + each.id, metavar="TEXT",
                            help=(each.label + ". " + each.help).replace("%", "%%"))
    parser.add_argument("--at", metavar="MOMENT", help="when it was so; now, if left out")
    parser.add_argument("--note", default="", help="words to go with it")
    if sheet is not sheets.BOW:
        parser.add_argument("--units", choices=SYSTEMS, default=SYSTEMS[0], help="of numbers without a unit")


# What it does --------------------------------------------------------------------


def _new(options: argparse.Namespace) -> None:
    path = Path(options.file)
    if path.exists():
        raise Failed(f"There is a file “{options.file}” already. Name another, or add to this one.")
    save(path, [_entry(sheets.BOW, options)])


def _add(options: argparse.Namespace) -> None:
    path = Path(options.file)
    before = entries_of(path)
    entry = _entry(options.sheet, options)
    save(path, [*before, entry], made=1)
    print(entry.id)


def _strike(options: argparse.Namespace) -> None:
    path = Path(options.file)
    before = entries_of(path)
    if not is_id(options.id) or options.id not in [each.id for each in before]:
        raise Failed(f"No entry of “{options.file}” has the id “{options.id}”. `show` lists them.")
    struck = next(each for each in before if each.id == options.id)
    save(path, [*before, Entry(new_id(), now(), struck.sheet, why=options.why, replaces=struck.id)], made=1)


def _show(options: argparse.Namespace) -> None:
    entries = entries_of(Path(options.file))
    state = State(entries)
    print(summary.title(state))
    print(say(summary.weights(state), options.units))
    print("Next: " + summary.whats_next(state))
    _print_checks(state, options.units)
    _print_columns(state, options.units)
    _print_foretold(state, options.units)
    _print_returned(state, options.units)
    counting = {each.id for each in state.entries}
    for entry in sorted(entries, key=lambda each: (each.moment, each.id)):
        if entry.strikes:
            continue
        sheet = sheets.find(entry.sheet)
        struck = "" if entry.id in counting else " (struck out)"
        print(f"\n{entry.id}  {show_local(entry.at)}  {sheet.title if sheet else entry.sheet}{struck}")
        for label, text in facts_of(entry):
            print(f"  {label}: {text}")
        for line in [entry.note] if entry.note else []:
            print("  " + line)
        for problem in problems_of(entry):
            print("  Not understood here: " + problem)
        for line in [*odd_of(entry), *_since(state, entry)]:
            print("  " + line)


def _since(state: State, entry: Entry) -> list[str]:
    """Return what the record tells otherwise today than a kept answer had it."""
    if entry.sheet != "answer":
        return []
    return [f"Since then: {each.now.input} {each.now.text}" + (f", not {each.was}" if each.was else "")
            for each in compared.changed(state, entry)]


def _print_foretold(state: State, system: str) -> None:
    """Print what the log of strokes foretells, or foretold for the last reading."""
    told = beside.told(state, None)
    if told.level or not isinstance(told.expected, str):
        print("\n" + " ".join([say(each, system) for each in (told.expected, told.read) if each]))


def _print_returned(state: State, system: str) -> None:
    """Print what was read since a hand-over beside what was read before it."""
    found = returned.returned(state)
    if found is not None:
        shown = returned.table(found, system)
        print("\n" + "\n".join([say(shown.caption, system), *table_lines(shown, system)]))


def _print_columns(state: State, system: str) -> None:
    rows = quick.columns(state, system)
    if rows:
        table = [["", "As it came", "Agreed", "Now"], *rows]
        widths = [max(len(row[place]) for row in table) for place in range(len(table[0]))]
        print()
        for row in table:
            print("  ".join(text.ljust(width) for text, width in zip(row, widths)).rstrip())


def _check(options: argparse.Namespace) -> None:
    state = State(entries_of(Path(options.file)))
    if not _print_checks(state, options.units):
        print("By this record nothing stands in the way. It cannot see the bow.")


def _next(options: argparse.Namespace) -> None:
    for name in options.files:
        state = State(entries_of(Path(name)))
        print(f"{summary.title(state)}  {summary.whats_next(state)}")


def _across(options: argparse.Namespace) -> None:
    states = [State(entries_of(Path(name))) for name in options.files]
    for line in across.lines(states, now()):
        said = " ".join([say(part, options.units) for part in line.parts])
        print(f"{LEVEL_WORDS[line.level]}: {summary.title(states[line.place])}: {said}")


def _calendar(options: argparse.Namespace) -> None:
    text = calendar.calendar_of([entries_of(Path(name)) for name in options.files], now())
    if not text:
        raise Failed("There is nothing to put into a calendar: no coat is laid or planned, and no bow has a "
                     "day for its next look.")
    sys.stdout.write(text)


def _merge(options: argparse.Namespace) -> None:
    path = Path(options.file)
    own = union(entries_of(path))
    whole = own
    pictures: dict[str, str] = {}
    for name in options.others:
        other = entries_of(Path(name))
        pictures.update(pictures_of(Path(name)))
        if not options.same and not {each.id for each in whole} & {each.id for each in other}:
            raise Failed(f"“{options.file}” and “{name}” share no entry, so they are records of two bows. "
                         "If it is one bow, written down twice, say --same. Nothing was changed.")
        whole = union(whole, other)
    save(path, whole, pictures=pictures)
    print(f"{len(whole)} entries, {len(whole) - len(own)} of them new.")


def _split(options: argparse.Namespace) -> None:
    folder = Path(options.folder)
    records = records_of(Path(options.file))
    pictures = pictures_of(Path(options.file))
    for entries in records:
        path = _place_for(folder, entries)
        before = entries_of(path) if path.exists() else []
        save(path, union(before, entries), pictures=pictures)
        print(path)


def _place_for(folder: Path, entries: list[Entry]) -> Path:
    """Return the file of a bow in a folder: its own where it has one, else one of a name that is free."""
    name = Path(file.name_of(State(entries)))
    ids = {each.id for each in entries}
    for number in range(1, file.MOST_BOWS + 2):
        path = folder / (name.name if number == 1 else f"{name.stem}-{number}{name.suffix}")
        if not path.exists() or ids & {each.id for each in entries_of(path)}:
            return path
    raise Failed(f"“{folder}” holds too many files called “{name}”. Name another folder.")


def _csv(options: argparse.Namespace) -> None:
    sys.stdout.write(table.csv(entries_of(Path(options.file)), options.units))


def _print_checks(state: State, system: str) -> int:
    """Print what a whole record shows; return how much it is."""
    found = in_order_of_weight(checks.checks(state))
    for each in found:
        print(f"{LEVEL_WORDS[each.level]}: {say(each.text, system)}")
    return len(found)


# Entries -------------------------------------------------------------------------


def _entry(sheet: Sheet, options: argparse.Namespace) -> Entry:
    facts = []
    for each in sheets.inputs_of(sheet):
        text = getattr(options, FACT + each.id)
        if text is not None and text.strip():
            facts.append((each.id, _with_unit(each, text.strip(), options.units)))
    if not facts:
        raise Failed("An entry without any fact says nothing. Give at least one; --help lists them.")
    problems = []
    for name, text in facts:
        try:
            value_of(sheet.id + "." + name, text)
        except ValueError as error:
            problems.append(str(error))
    if problems:
        raise Failed("\n".join(problems))
    return Entry(new_id(), _moment(options.at), sheet.id, tuple(facts), note=options.note)


def _with_unit(asked: Input, text: str, system: str) -> str:
    """Return a fact as it is kept: a bare number gets the unit that it was typed in."""
    if asked.kind in (NOTE, COUNT, SWITCH, ROWS) or asked.choices or not set(text) <= BARE:
        return text
    unit = shown_unit(asked.kind, system).name if asked.kind != "date" else ""
    return text + " " + unit if unit else text


def _moment(text: str | None) -> str:
    if text is None:
        return now()
    try:
        parse_moment(text)
    except ValueError:
        try:
            parse_moment(text + _offset())
        except ValueError as error:
            raise Failed(f"--at: “{text}” {error}. Type for example 2026-05-12T18:10.") from None
        return text + _offset()
    return text


def now() -> str:
    """Return this moment as an entry writes it, where the clock of this machine is."""
    here = time.localtime()
    local = day_number(here.tm_year, here.tm_mon, here.tm_mday) * DAY + here.tm_hour * 3600 + here.tm_min * 60
    return moment_text(local, (here.tm_gmtoff or 0) // 60)


def _offset() -> str:
    return now()[16:]


def new_id() -> str:
    """Return the id of an entry that is made now."""
    return entry_id(time.time_ns() // 1_000_000, secrets.randbits(20))


# Files ---------------------------------------------------------------------------


def entries_of(path: Path) -> list[Entry]:
    """Return the entries of a bow's file; what of it is damaged is said.

    Raises:
        Failed: it cannot be read, or is no bow's file.
    """
    records = records_of(path)
    if len(records) > 1:
        raise Failed(f"“{path}” holds {len(records)} bows. `record split` writes each into a file of its "
                     "own.")
    return records[0]


def records_of(path: Path) -> list[list[Entry]]:
    """Return the entries of each bow in a file; what of it is damaged is said.

    Raises:
        Failed: it cannot be read, or is no file of bows.
    """
    try:
        text = path.read_text(encoding="utf-8")
        records = file.records_in(text)
    except OSError as error:
        raise Failed(f"“{path}” cannot be read ({error.strerror}).") from None
    except ValueError as error:
        raise Failed(f"“{path}”: {error}.") from None
    if any(each.is_newer for each in records):
        print(f"“{path}” {NEWER}; it is read as far as this one understands it.", file=sys.stderr)
    missing, unread = sum(each.missing for each in records), [one for each in records for one in each.unread]
    bows = file.bows_told(text) - len(records)
    if missing or unread or bows > 0:
        print(f"“{path}” is damaged: {missing} entries are missing, {len(unread)} cannot be read"
              + (f", {bows} bows are missing." if bows > 0 else "."), file=sys.stderr)
        for each in unread:
            print(f"  {each.problem}: {each.text[:80]}", file=sys.stderr)
    return [each.entries for each in records]


def pictures_of(path: Path) -> dict[str, str]:
    """Return the pictures in a file of bows; none where there is no such file."""
    try:
        return photos.pictures_in(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}


def save(
    path: Path, entries: list[Entry], made: int = 0, pictures: dict[str, str] | None = None
) -> None:
    """Put a record in the place of the one before, whole or not at all; the one before stays beside it.

    Args:
        path: of the bow's file.
        entries: all of them.
        made: how many of them were in no file before.
        pictures: addresses by name, beside those that the file has already.

    Raises:
        Failed: it cannot be written.
    """
    beside = path.with_name(path.name + ".new")
    trouble = _would_lose(path, len(entries) - made)
    if trouble:
        raise Failed(f"“{path}” {trouble}, so nothing is written into it. Nothing was changed.")
    try:
        whole = {**(pictures or {}), **pictures_of(path)}
        beside.write_text(file.page(entries, SYSTEMS[0], pictures=whole), encoding="utf-8")
        if path.exists():
            former = path.with_name(path.name + FORMER)
            former.write_bytes(path.read_bytes())
        os.replace(beside, path)
    except OSError as error:
        raise Failed(f"“{path}” cannot be written ({error.strerror}). Nothing was changed.") from None


def _would_lose(path: Path, count: int) -> str:
    """Return why so many entries cannot take the place of a file: something in it would be lost."""
    try:
        found = file.record_in(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return ""
    if found.is_newer:
        return NEWER
    held = max(found.told or 0, len(found.entries) + len(found.unread))
    return f"is damaged: it tells of {held} entries, of which {count} are known" if held > count else ""
