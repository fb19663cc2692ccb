"""Entries: what a record is made of, read from text that may come from anywhere, and written again.

An entry is never changed. A wrong one is struck out by another that names it, so that two copies of a record
are brought together by the union of their entries, in any order and any number of times.
"""

import json

from calc.record.moments import parse_moment

ALPHABET = "0123456789abcdefghjkmnpqrstvwxyz"
"""Base 32 without the letters that are taken for figures or for one another."""

TIME_LETTERS = 10
CHANCE_LETTERS = 4
ID_LENGTH = TIME_LETTERS + CHANCE_LETTERS

MOST_ENTRIES = 5000
MOST_TEXT = 2000
MOST_FACTS = 200
MOST_DEPTH = 6
NAME_MARKS = "abcdefghijklmnopqrstuvwxyz0123456789_."

KEYS = ("id", "at", "sheet", "facts", "why", "note", "photos", "device", "source", "replaces")
"""The keys of an entry in the order in which they are written; others follow by their names."""


class Entry:
    """One entry.

    facts: (name, text as typed), by name. photos: ids. source: of an answer, or of what one read off, who
    gave it. replaces: id of the entry that this one corrects; with no facts it strikes that one out. more:
    (key, JSON) of what this release does not know, kept as it came.
    """

    def __init__(
        self,
        id: str,
        at: str,
        sheet: str,
        facts: tuple[tuple[str, str], ...] = (),
        why: str = "",
        note: str = "",
        photos: tuple[str, ...] = (),
        device: str = "",
        source: str = "",
        replaces: str = "",
        more: tuple[tuple[str, str], ...] = (),
    ):
        self.id = id
        self.at = at
        self.sheet = sheet
        self.facts = tuple(sorted(facts))
        self.why = why
        self.note = note
        self.photos = photos
        self.device = device
        self.source = source
        self.replaces = replaces
        self.more = tuple(sorted(more))
        self._parsed = ("", 0)

    @property
    def moment(self) -> int:
        """Return when it was so, in world time."""
        if self._parsed[0] != self.at:  # asked for again and again while entries are put in order
            self._parsed = (self.at, parse_moment(self.at))
        return self._parsed[1]

    @property
    def strikes(self) -> bool:
        """Return whether it strikes another entry out and puts nothing in its place."""
        return bool(self.replaces) and not self.facts

    def fact(self, name: str) -> str:
        """Return a fact as typed; empty where the entry does not hold it."""
        for known, text in self.facts:
            if known == name:
                return text
        return ""


class Unread:
    """What could not be read as an entry: its text as it came, and what is wrong with it."""

    def __init__(self, text: str, problem: str):
        self.text = text
        self.problem = problem


# Ids -----------------------------------------------------------------------------


def entry_id(milliseconds: int, chance: int) -> str:
    """Return the id of an entry: it sorts by the time of making.

    Args:
        milliseconds: since 1970 in world time, >= 0.
        chance: a random whole number; as many of its bits count as four letters hold.

    Returns:
        fourteen letters.

    Raises:
        ValueError: the time is before 1970 or more than ten letters hold.
    """
    if not 0 <= milliseconds < 32**TIME_LETTERS:
        raise ValueError("the time of an id must be from 1970 on, not " + str(milliseconds) + " ms")
    return _letters(milliseconds, TIME_LETTERS) + _letters(chance % 32**CHANCE_LETTERS, CHANCE_LETTERS)


def written_at(id: str) -> int:
    """Return when an entry was made.

    Args:
        id: of an entry.

    Returns:
        milliseconds since 1970 in world time.
    """
    number = 0
    for letter in id[:TIME_LETTERS]:
        number = number * 32 + ALPHABET.index(letter)
    return number


def is_id(text: object) -> bool:
    """Return whether a value has the form of an entry's id.

    Args:
        text: any value.

    Returns:
        true or false.
    """
    return isinstance(text, str) and len(text) == ID_LENGTH and all(mark in ALPHABET for mark in text)


def _letters(number: int, count: int) -> str:
    text = ""
    for _ in range(count):
        number, letter = divmod(number, 32)
        text = ALPHABET[letter] + text
    return text


# Reading -------------------------------------------------------------------------


def read_entries(text: str) -> tuple[list[Entry], list[Unread]]:
    """Return the entries of a JSON list, each read alone: what cannot be read stops nothing else.

    Args:
        text: JSON of a list of entries, or of an object that holds one under "entries". It is hostile until
            read: only texts in the known places, bounded in number and length, ever leave this function.

    Returns:
        entries in the order given, and what could not be read.

    Raises:
        ValueError: it is no such JSON, or holds more than may be read.

    The form is that of RFC 8259.
    """
    try:
        found = json.loads(text)
    except (ValueError, RuntimeError):  # the latter where it is nested deeper than an engine follows
        raise ValueError("the record is not whole: its text ends early or is no JSON") from None
    if isinstance(found, dict):
        found = found.get("entries")
    if not isinstance(found, list):
        raise ValueError("the record holds no list of entries")
    if len(found) > MOST_ENTRIES:
        raise ValueError("the record holds " + str(len(found)) + " entries; at most " + str(MOST_ENTRIES)
                         + " are read")
    entries = []
    unread = []
    for each in found:
        try:
            entries.append(entry_of(each))
        except ValueError as error:
            unread.append(Unread(json.dumps(each)[:MOST_TEXT], str(error)))
    return entries, unread


def read_entry(text: str) -> Entry:
    """Return the entry that a piece of JSON holds.

    Args:
        text: JSON of one entry, hostile until read.

    Returns:
        the entry.

    Raises:
        ValueError: it is none; the message says why.
    """
    try:
        found = json.loads(text)
    except (ValueError, RuntimeError):
        raise ValueError("the entry is not whole: its text ends early or is no JSON") from None
    return entry_of(found)


def entry_of(found: object) -> Entry:
    """Return the entry that a JSON value holds.

    Args:
        found: what JSON gave.

    Returns:
        the entry.

    Raises:
        ValueError: it is none; the message says which part.
    """
    if not isinstance(found, dict):
        raise ValueError("an entry must be an object")
    if not is_id(found.get("id")):
        raise ValueError("an entry must have an id of " + str(ID_LENGTH) + " letters")
    replaces = found.get("replaces") or ""
    if replaces and not is_id(replaces):
        raise ValueError("what an entry replaces must be named by an id")
    at = _text(found, "at")
    try:
        parse_moment(at)
    except ValueError as error:
        raise ValueError("the moment of an entry " + str(error)) from None
    sheet = _text(found, "sheet")
    if not _is_name(sheet):
        raise ValueError("the sheet of an entry must be named in small letters")
    return Entry(found["id"], at, sheet, _facts(found.get("facts")), _text(found, "why"),
                 _text(found, "note"), _photos(found.get("photos")), _text(found, "device"),
                 _text(found, "source"), replaces, _more(found))


def _is_text(value: object) -> bool:
    """Return whether a value is a text that can be written again: short enough, and of whole letters."""
    return isinstance(value, str) and len(value) <= MOST_TEXT and _is_whole(value)


def _is_whole(text: str) -> bool:
    """Return whether a text can be written again: no half of a pair that stands for one letter."""
    try:
        text.encode("utf-8")
    except UnicodeError:
        return False
    return True


def _text(found: dict[str, object], key: str) -> str:
    value = found.get(key)
    if value is None:
        return ""
    if not isinstance(value, str) or not _is_text(value):
        raise ValueError("“" + key + "” of an entry must be a text of at most " + str(MOST_TEXT) + " letters")
    return value


def _facts(found: object) -> tuple[tuple[str, str], ...]:
    if found is None:
        return ()
    if not isinstance(found, dict) or len(found) > MOST_FACTS:
        raise ValueError("the facts of an entry must be an object of at most " + str(MOST_FACTS))
    facts = []
    for name in found:
        text = found[name]
        if not _is_name(name) or not _is_text(text):
            raise ValueError("a fact must be a text of at most " + str(MOST_TEXT) + " letters under its name")
        facts.append((name, text))
    return tuple(facts)


def _photos(found: object) -> tuple[str, ...]:
    if found is None:
        return ()
    if not isinstance(found, list) or len(found) > MOST_FACTS or not all(_is_name(each) for each in found):
        raise ValueError("the photos of an entry must be a list of their ids")
    return tuple(found)


def _more(found: dict[str, object]) -> tuple[tuple[str, str], ...]:
    kept = []
    for key in found:
        if key not in KEYS:
            if _depth(found[key]) > MOST_DEPTH:
                raise ValueError("an entry is nested deeper than is read")
            kept.append((key, to_json(found[key])))
            if not _is_text(key) or not _is_whole(kept[-1][1]):
                raise ValueError("a name in an entry is too long, or a text holds half a letter")
    return tuple(kept)


def _depth(value: object, limit: int = MOST_DEPTH + 1) -> int:
    if limit == 0 or not isinstance(value, (dict, list)):
        return 0
    inner = [value[key] for key in value] if isinstance(value, dict) else value
    return 1 + max([_depth(each, limit - 1) for each in inner] + [0])


def _is_name(text: object) -> bool:
    return isinstance(text, str) and 0 < len(text) <= 60 and all(mark in NAME_MARKS for mark in text)


# Writing -------------------------------------------------------------------------


def entry_json(entry: Entry) -> str:
    """Return an entry as JSON; the same entry gives the same text in every engine.

    Args:
        entry: any.

    Returns:
        one line of JSON. `<` is written as its number, so that the text can stand in a page.

    The form is that of RFC 8259.
    """
    parts = ['"id":' + quoted(entry.id), '"at":' + quoted(entry.at), '"sheet":' + quoted(entry.sheet)]
    if entry.facts:
        parts.append('"facts":{' + ",".join([quoted(name) + ":" + quoted(text)
                                             for name, text in entry.facts]) + "}")
    for key, text in (("why", entry.why), ("note", entry.note)):
        if text:
            parts.append('"' + key + '":' + quoted(text))
    if entry.photos:
        parts.append('"photos":[' + ",".join([quoted(each) for each in entry.photos]) + "]")
    for key, text in (("device", entry.device), ("source", entry.source), ("replaces", entry.replaces)):
        if text:
            parts.append('"' + key + '":' + quoted(text))
    parts += [quoted(key) + ":" + value for key, value in entry.more]
    return "{" + ",".join(parts) + "}"


def entries_json(entries: list[Entry]) -> str:
    """Return a list of entries as JSON, one a line, by their ids.

    Args:
        entries: any.

    Returns:
        text that `read_entries` reads back.

    The form is that of RFC 8259.
    """
    lines = [entry_json(each) for each in sorted(entries, key=lambda each: each.id)]
    return "[" + ",\n".join(lines) + "]"


def to_json(value: object) -> str:
    """Return a JSON value as text, the names of an object in alphabetical order.

    Args:
        value: made of objects, lists, texts, finite numbers, true, false and null.

    Returns:
        the text.

    Raises:
        ValueError: it holds anything else.

    The form is that of RFC 8259.
    """
    if value is None:
        return "null"
    if value is True or value is False:
        return "true" if value else "false"
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, (int, float)) and value == value and abs(value) < 1e300:
        return json.dumps(value)
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([to_json(each) for each in value]) + "]"
    if isinstance(value, dict):
        return "{" + ",".join([quoted(key) + ":" + to_json(value[key]) for key in sorted(value)]) + "}"
    raise ValueError("JSON holds objects, lists, texts, finite numbers, true, false and null only")


def quoted(text: str) -> str:
    """Return a text as JSON writes it, with `<` as its number.

    Args:
        text: any.

    Returns:
        the text in quotation marks.

    The form is that of RFC 8259, section 7.
    """
    out = ""
    for mark in text:
        if mark in '"\\':
            out += "\\" + mark
        elif mark < " " or mark in "<\u2028\u2029":
            digits = "0000" + _hex(ord(mark))
            out += "\\u" + digits[-4:]
        else:
            out += mark
    return '"' + out + '"'


def _hex(number: int) -> str:
    digits = ""
    while number:
        number, digit = divmod(number, 16)
        digits = "0123456789abcdef"[digit] + digits
    return digits
