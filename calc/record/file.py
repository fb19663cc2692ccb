"""A bow's file: a page without any script, readable by itself, that holds the record as JSON inside.

Who opens it in twenty years reads it as a page. This program reads nothing of it but the entries: one a line,
each by itself, so that a file that was cut off still gives what it has.
"""

from calc.outcome import say
from calc.record import checks, photos, sheets, summary
from calc.record.bindings import BOUND
from calc.record.declare import FACT
from calc.record.entries import (
    MOST_ENTRIES,
    MOST_TEXT,
    Entry,
    Unread,
    entries_json,
    read_entries,
    read_entry,
)
from calc.record.fold import State, union
from calc.record.moments import show_local
from calc.record.words import escaped, facts_of, shown, title_of

NAMED = '<script type="application/json" id="rebrace-record'
OPENING = NAMED + '">'
CLOSING = "</script>"
COUNT = 'data-entries="'
FORM_MARK = 'data-form="'
BOWS_MARK = 'data-bows="'
FORM = 1
"""Of what a file holds. A file of a later form is read as far as it is understood, and never written over."""

MOST_BOWS = 500
LONGEST_FILE = 64 * 1024 * 1024
"""[letters] photos included."""

PLAIN = "abcdefghijklmnopqrstuvwxyz0123456789"
LONGEST_NAME = 60
POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'"
STYLE = ("body{font:16px/1.5 Georgia,serif;max-width:44em;margin:1em auto;padding:0 1em;color:#111}"
         "table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.2em "
         ".6em .2em 0;border-bottom:1px solid #999}th{font-weight:normal;width:16em}h2{font-size:1.1em}"
         ".struck{text-decoration:line-through;color:#555}figure{margin:1em 0;break-inside:avoid}"
         "img{max-width:100%;max-height:16cm}@media print{body{margin:0}}")
LEVELS = (("stop", "Stop"), ("watch", "Watch"), ("ok", "In order"))


class Found:
    """What a file gave: entries, what could not be read, how many entries its head told of, and its form."""

    def __init__(self, entries: list[Entry], unread: list[Unread], told: int | None, form: int = FORM):
        self.entries = entries
        self.unread = unread
        self.told = told
        self.form = form

    @property
    def is_newer(self) -> bool:
        """Return whether a later release wrote it, in a form that this one does not know."""
        return self.form > FORM

    @property
    def missing(self) -> int:
        """Return how many entries fewer there are than the head of the file told of."""
        return max(0, (self.told or 0) - len(self.entries) - len(self.unread))


# Writing -------------------------------------------------------------------------


def page(
    entries: list[Entry], system: str, with_private: bool = True, pictures: "dict[str, str] | None" = None
) -> str:
    """Return a bow's file.

    Args:
        entries: of one record.
        system: "imperial" or "metric", for the figures that are worked out; what was typed stays as typed.
        with_private: whether the owner and whatever else is private goes with it, pictures among it.
        pictures: addresses of its pictures by the names of their files; None: it holds none.

    Returns:
        an HTML page without script; `record_in` reads the entries back, `photos.pictures_in` the pictures.
    """
    kept = _kept(entries, with_private)
    title = escaped(summary.title(State(kept)))
    return _page(title, "<body" + _counted(kept) + ">\n" + _bow(kept, system, OPENING, pictures or {}))


def page_of_all(
    records: list[list[Entry]], system: str, with_private: bool = True,
    pictures: "dict[str, str] | None" = None,
) -> str:
    """Return one file of several bows.

    Args:
        records: entries of each bow.
        system: as of `page`.
        with_private: as of `page`.
        pictures: as of `page`, of all bows.

    Returns:
        an HTML page without script; `records_in` reads all of them back.
    """
    parts = ["<body " + BOWS_MARK + str(len(records)) + '">\n<p>Bows in this file: ' + str(len(records))
             + "</p>\n"]
    for number, entries in enumerate(records, 1):
        kept = _kept(entries, with_private)
        opening = NAMED + "-" + str(number) + '">'
        parts.append("<section" + _counted(kept) + ">\n" + _bow(kept, system, opening, pictures or {})
                     + "</section>\n")
    return _page("All bows", "".join(parts))


def _kept(entries: list[Entry], with_private: bool) -> list[Entry]:
    once = union(entries)
    return once if with_private else without_private(once)


def _counted(entries: list[Entry]) -> str:
    return " " + FORM_MARK + str(FORM) + '" ' + COUNT + str(len(entries)) + '"'


def _page(title: str, body: str) -> str:
    return "".join([
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n",
        '<meta name="viewport" content="width=device-width">\n',
        '<meta http-equiv="Content-Security-Policy" content="' + POLICY + '">\n',
        "<title>" + title + "</title>\n<style>" + STYLE + "</style>\n</head>\n",
        body, "</body>\n</html>\n",
    ])


def _bow(entries: list[Entry], system: str, opening: str, pictures: dict[str, str]) -> str:
    state = State(entries)
    return "".join([
        "<h1>" + escaped(summary.title(state)) + "</h1>\n",
        "<p>" + escaped(say(summary.weights(state), system)) + "</p>\n",
        "<p>Next: " + escaped(summary.whats_next(state)) + "</p>\n",
        _checks(state, system),
        _standing(state),
        _history(entries, state),
        "<p>This page shows what was measured and done. It does not say that the bow is safe.</p>\n",
        opening, entries_json(entries), CLOSING, "\n",
        photos.figures(entries, pictures),
    ])


def name_of(state: State) -> str:
    """Return the name of a bow's file: its tag and a few words, in letters that every device takes.

    Args:
        state: of a record.

    Returns:
        such as `bow-31-64-in-recurve.html`.
    """
    return stem_of(state) + ".html"


def stem_of(state: State) -> str:
    """Return what the files of a bow are called, before the ending that says what they hold.

    Args:
        state: of a record.

    Returns:
        such as `bow-31-64-in-recurve`.
    """
    plain = "".join([mark if mark in PLAIN else "-" for mark in summary.title(state).lower()])
    words = [each for each in plain.split("-") if each]
    return "-".join(["bow"] + words)[:LONGEST_NAME]


def without_private(entries: list[Entry]) -> list[Entry]:
    """Return entries without any private fact: fit to leave the hands of the bowyer.

    Args:
        entries: any.

    Returns:
        the same entries less private facts, notes and reasons; those of a wholly private sheet are gone.
    """
    return [each for each in map(_without_private, entries) if each is not None]


def _without_private(entry: Entry) -> Entry | None:
    sheet = sheets.find(entry.sheet)
    if sheet is None:  # what a later release keeps there, this one cannot judge
        return None
    if sheet.id == "answer" and _asks_for_private(entry.fact("calculator")):
        return None
    facts = tuple([(name, text) for name, text in entry.facts if name not in sheet.private])
    if entry.facts and not facts:
        return None
    return Entry(entry.id, entry.at, entry.sheet, facts, source=entry.source, replaces=entry.replaces)


def _asks_for_private(calculator: str) -> bool:
    """Return whether an answer may tell private facts; one of an unknown calculator may."""
    private = sheets.private_facts()
    return calculator not in BOUND or any(fact in private for _, fact in BOUND[calculator])


def _checks(state: State, system: str) -> str:
    found = checks.checks(state)
    items = [
        "<li><strong>" + word + ".</strong> " + escaped(say(each.text, system)) + "</li>"
        for level, word in LEVELS for each in found if each.level == level
    ]
    return "<ul>" + "".join(items) + "</ul>\n" if items else ""


def _standing(state: State) -> str:
    """Return the newest of every lasting fact as tables, a sheet each."""
    parts = []
    for sheet in sheets.SHEETS:
        if sheet.lasts != FACT:
            continue
        rows = []
        for each in sheets.inputs_of(sheet):
            found = state.latest(sheet.id + "." + each.id)
            if found is not None:
                rows.append(_row(each.label, shown(each, found.text)))
        if rows:
            parts.append("<h2>" + escaped(sheet.title) + "</h2>\n<table>" + "".join(rows) + "</table>\n")
    return "".join(parts)


def _history(entries: list[Entry], state: State) -> str:
    counting = {each.id for each in state.entries}
    told = sorted([each for each in entries if not each.strikes], key=lambda each: (each.moment, each.id))
    parts = ["<h2>Day by day</h2>\n"]
    for entry in told:
        struck = "" if entry.id in counting else ' class="struck"'
        headline = show_local(entry.at) + ": " + title_of(entry)
        parts.append("<h3" + struck + ">" + escaped(headline) + "</h3>\n<table" + struck + ">"
                     + "".join([_row(label, text) for label, text in facts_of(entry)]) + "</table>\n")
        if entry.note:
            parts.append("<p>" + escaped(entry.note) + "</p>\n")
    return "".join(parts)


def _row(label: str, text: str) -> str:
    return "<tr><th>" + escaped(label) + "</th><td>" + escaped(text) + "</td></tr>"


# Reading -------------------------------------------------------------------------


def record_in(text: str) -> Found:
    """Return what the file of one bow holds: a page of `page`, or the bare JSON of a record.

    Args:
        text: of the file, hostile until read.

    Returns:
        its entries, what could not be read of it, and how many entries it ought to hold.

    Raises:
        ValueError: it is no file of a bow, holds several, or is larger than is read; the message says which.
    """
    found = records_in(text)
    if len(found) > 1:
        raise ValueError("the file holds " + str(len(found)) + " bows, not one")
    return found[0]


def records_in(text: str) -> list[Found]:
    """Return what a file of one bow or of several holds.

    Args:
        text: of the file, hostile until read.

    Returns:
        as of `record_in`, one a bow.

    Raises:
        ValueError: it is no file of bows, or larger than is read; the message says which.
    """
    if len(text) > LONGEST_FILE:
        raise ValueError("the file is larger than is read: at most 64 million letters")
    parts = text.split(NAMED)
    if len(parts) > MOST_BOWS + 1:
        raise ValueError("the file holds more than " + str(MOST_BOWS) + " bows")
    if len(parts) == 1:
        if text.lstrip()[:1] in ("[", "{"):
            entries, unread = read_entries(text)
            return [Found(entries, unread, None)]
        raise ValueError("the file holds no record: it is no bow's file, or its end is missing")
    found = []
    for place in range(1, len(parts)):
        _, _, inside = parts[place].partition(">")
        head = parts[place - 1].partition(CLOSING)[2] if place > 1 else parts[0]
        found.append(_by_lines(inside.partition(CLOSING)[0], _number_after(COUNT, head),
                               _number_after(FORM_MARK, head) or FORM))
    return found


def bows_told(text: str) -> int:
    """Return how many bows a file's head tells of.

    Args:
        text: of the file.

    Returns:
        1 where it tells of none.
    """
    return _number_after(BOWS_MARK, text.partition(NAMED)[0]) or 1


def _by_lines(text: str, told: int | None, form: int) -> Found:
    lines = text.split("\n")
    if len(lines) > MOST_ENTRIES:
        raise ValueError("the record holds more than " + str(MOST_ENTRIES) + " entries")
    entries = []
    unread = []
    for line in lines:
        bare = _bare(line)
        if not bare:
            continue
        try:
            entries.append(read_entry(bare))
        except ValueError as error:
            unread.append(Unread(bare[:MOST_TEXT], str(error)))
    return Found(entries, unread, told, form)


def _bare(line: str) -> str:
    """Return the entry on a line of a list, without what joins it to the others."""
    bare = line.strip()
    if bare.startswith("["):
        bare = bare[1:]
    for joint in (",", "]"):
        if bare.endswith("}" + joint):
            return bare[:-1]
    return "" if bare == "]" else bare


def _number_after(mark: str, head: str) -> int | None:
    start = head.find(mark)
    digits = head[start + len(mark):].partition('"')[0] if start >= 0 else ""
    return int(digits) if 0 < len(digits) < 6 and all(mark in "0123456789" for mark in digits) else None
