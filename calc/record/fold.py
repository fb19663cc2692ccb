"""From entries to how things stand: what counts, in which order, and the newest of each fact."""

from calc.record.entries import Entry, entry_json


def union(*records: list[Entry]) -> list[Entry]:
    """Return the entries of several copies of one record, each once, by their ids.

    Two entries of one id are the same entry. Should a copy have been tampered with, the one whose text comes
    later in the alphabet stands, whichever copy it came from.

    Args:
        records: lists of entries, in any order.

    Returns:
        all of them; the order of the copies and of their entries makes no difference.
    """
    by_id: dict[str, Entry] = {}
    for record in records:
        for entry in record:
            known = by_id.get(entry.id)
            if known is None or entry_json(entry) > entry_json(known):
                by_id[entry.id] = entry
    return [by_id[id] for id in sorted(by_id)]


def struck_ids(entries: list[Entry]) -> set[str]:
    """Return the ids of entries that no longer count, since another replaces them.

    Only a later entry can replace an earlier one, so that striking a strike undoes it and no two entries can
    strike each other.

    Args:
        entries: each once.

    Returns:
        ids.
    """
    struck: set[str] = set()
    for entry in sorted(entries, key=lambda each: each.id, reverse=True):
        if entry.replaces and entry.replaces < entry.id and entry.id not in struck:
            struck.add(entry.replaces)
    return struck


def standing(entries: list[Entry]) -> list[Entry]:
    """Return the entries that count, in the order in which they were so.

    Args:
        entries: of one record, in any order, some perhaps more than once.

    Returns:
        what was neither struck nor strikes, by moment, then by id.
    """
    once = union(entries)
    struck = struck_ids(once)
    counting = [each for each in once if each.id not in struck and not each.strikes]
    return sorted(counting, key=lambda each: (each.moment, each.id))


class Latest:
    """The newest text of a fact, and the entry that holds it."""

    def __init__(self, text: str, entry: Entry):
        self.text = text
        self.entry = entry


class State:
    """How things stand after all entries."""

    def __init__(self, entries: list[Entry]):
        self.entries = standing(entries)
        self._by_sheet: dict[str, list[Entry]] = {}
        for each in self.entries:
            self._by_sheet.setdefault(each.sheet, []).append(each)

    def of(self, sheet: str) -> list[Entry]:
        """Return the entries of one sheet, oldest first."""
        return self._by_sheet.get(sheet, [])

    def latest(self, fact: str) -> Latest | None:
        """Return the newest that is known of a fact such as `reading.brace`, or None."""
        sheet, _, name = fact.partition(".")
        for entry in reversed(self.of(sheet)):
            text = entry.fact(name)
            if text:
                return Latest(text, entry)
        return None

    def text(self, fact: str) -> str:
        """Return the newest text of a fact; empty where nothing is known."""
        found = self.latest(fact)
        return found.text if found else ""

    def first(self, fact: str) -> Latest | None:
        """Return the oldest that is known of a fact: how the bow came."""
        sheet, _, name = fact.partition(".")
        for entry in self.of(sheet):
            text = entry.fact(name)
            if text:
                return Latest(text, entry)
        return None

    def since(self, sheet: str, entry: Entry) -> list[Entry]:
        """Return the entries of a sheet that come after an entry."""
        mark = (entry.moment, entry.id)
        later = self.of(sheet)
        if not later or (later[-1].moment, later[-1].id) <= mark:
            return []
        return [each for each in later if (each.moment, each.id) > mark]
