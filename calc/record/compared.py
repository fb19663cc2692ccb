"""An answer that was kept beside what the record tells today."""

from calc.record.entries import Entry
from calc.record.fill import Filled, fill
from calc.record.fold import State
from calc.record.keep import PAIR_FACTS, is_same


class Changed:
    """A figure that a kept answer had and that the record tells otherwise today.

    was: as the answer had it; empty where it had none. now: what the record tells.
    """

    def __init__(self, was: str, now: Filled):
        self.was = was
        self.now = now


def figures_of(entry: Entry) -> list[tuple[str, str]]:
    """Return the figures that a kept answer had, as they were typed.

    Args:
        entry: of the sheet `answer`.

    Returns:
        (input, text) pairs, units with them.
    """
    whole = "&".join([entry.fact(name) for name in PAIR_FACTS if entry.fact(name)])
    pairs = []
    for part in whole.split("&"):
        name, mark, text = part.partition("=")
        if mark:
            pairs.append((_plain(name), _plain(text)))
    return pairs


def changed(state: State, entry: Entry) -> list[Changed]:
    """Return which figures of a kept answer the record tells otherwise today.

    What the record does not know today is no change; nor is the same number in other words.

    Args:
        state: of the record.
        entry: of the sheet `answer`.

    Returns:
        in the order of the calculator's bindings.
    """
    had = figures_of(entry)
    by_input = dict(reversed(had))
    found = fill(state, entry.fact("calculator"), by_input)
    return [Changed(by_input.get(each.input, ""), each) for each in found
            if each.text and not is_same(each.fact, by_input.get(each.input, ""), each.text)]


def stale(state: State, entry: Entry) -> list[Filled]:
    """Return which figures of a kept answer were read before the last change to the bow.

    Args:
        state: of the record.
        entry: of the sheet `answer`.

    Returns:
        what the record tells of them today.
    """
    had = dict(reversed(figures_of(entry)))
    return [each for each in fill(state, entry.fact("calculator"), had) if each.stale and each.input in had]


def _plain(text: str) -> str:
    """Return a part of a link as it was typed (WHATWG URL standard, `application/x-www-form-urlencoded`)."""
    found = bytearray()
    place = 0
    raw = text.replace("+", " ").encode("utf-8")
    while place < len(raw):
        pair = raw[place + 1:place + 3]
        if raw[place] == 37 and len(pair) == 2 and all(each in b"0123456789abcdefABCDEF" for each in pair):
            found.append(int(pair.decode("utf-8"), 16))
            place += 3
        else:
            found.append(raw[place])
            place += 1
    try:
        return bytes(found).decode("utf-8")
    except (UnicodeError, ValueError):
        return text
