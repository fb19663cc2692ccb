"""The coats of bows as a calendar file: events keep their ids when a plan moves, and none names an owner."""

from calc.dates import DAY, HOUR, show_moment
from calc.finishes.coats import whole_day
from calc.record.entries import Entry
from calc.record.finishing import Finish, finish_of
from calc.record.fold import State
from calc.record.moments import MINUTE, local_moment, parse_moment
from calc.record.values import latest_day
from calc.shop.calendar import Event, calendar_text
from calc.shop.schedule import Planned

PRODUCT = "-//Rebrace//Bows//EN"
AHEAD = 30 * MINUTE
"""An alarm sounds so long before a coat is begun."""

CLOSING = HOUR
"""And so long before a window closes (common practice)."""

PLANS = ("coats", "coat", "lettering", "agreed", "product")
"""Sheets that change which coats there are."""

PLANNED_BY = PLANS + ("shop", "air")
"""And those that move them."""

MORNING = 9 * HOUR
STRING, LOOK = "string", "look"


def calendar_of(bows: list[list[Entry]], at: str) -> str:
    """Return a calendar file of one bow or of several.

    Args:
        bows: entries of each, struck out or not.
        at: as an entry writes a moment: now.

    Returns:
        text of the file; empty where no bow has a coat laid or planned, or a day for its next look.

    Raises:
        ValueError: the moment cannot be read.
    """
    events = [event for entries in bows if entries for event in events_of(entries, local_moment(at))]
    return "" if not events else calendar_text(PRODUCT, parse_moment(at), events, modified=True)


class _Bow:
    """What all events of a bow share: what their ids begin and end with, its tag, how often it was told."""

    def __init__(self, entries: list[Entry], state: State):
        self.id = min([each.id for each in entries])
        self.tag = tag_of(state)
        self.count = len(entries)

    def event(
        self, key: str, name: str, words: str, start: int, end: int,
        alarms: "tuple[tuple[int, str], ...]" = (), cancelled: bool = False,
    ) -> Event:
        summary = self.tag + ": " + name[:1].lower() + name[1:]
        uid = "coat-" + self.id + "-" + key + "@rebrace.invalid"
        return Event(uid, summary, words, start, end, self.count,
                     tuple([(after, summary + ": " + said) for after, said in alarms]), cancelled)


def events_of(entries: list[Entry], now: int) -> list[Event]:
    """Return the events of a bow, those that are called off as well.

    Args:
        entries: of its record, struck out or not; at least one.
        now [s]: before which nothing is planned.

    Returns:
        coats laid and planned, the string, the next look.
    """
    state = State(entries)
    bow, finish = _Bow(entries, state), finish_of(state, now)
    events = [] if finish is None else _coats(bow, finish)
    if finish is not None:
        events.append(_string(bow, finish, now))
    told = {each.uid for each in events}
    events += [each for each in _gone(bow, entries) if each.uid not in told]
    return events + _looks(bow, state)


def tag_of(state: State) -> str:
    """Return the tag of a bow, unless its owner's name stands in it.

    Args:
        state: of a record.

    Returns:
        the tag, or a word for any bow.
    """
    tag, name = state.text("bow.tag"), state.text("owner.name").lower()
    named = [word for word in name.split() if word in tag.lower()]
    return tag if tag and not named else "Bow"


def _coats(bow: _Bow, finish: Finish) -> list[Event]:
    """Return an event a coat: those laid where they were, the others where they are planned."""
    events = []
    for place, (key, step) in enumerate(_keyed(finish)):
        if place < len(finish.entries):
            events.append(bow.event(key, step.step.name, "Laid.", step.start, step.end))
        else:
            events.append(bow.event(key, step.step.name, _words(finish, step), step.start, step.end,
                                    _alarms(step)))
    return events


def _keyed(finish: Finish) -> list[tuple[str, Planned]]:
    """Return each step with what its id says: the kind of coat, and which of them it is."""
    counts: dict[str, int] = {}
    found = []
    for coat, step in zip(finish.coats, finish.planned):
        counts[coat.role] = counts.get(coat.role, 0) + 1
        found.append((coat.role + "-" + str(counts[coat.role]), step))
    return found


def _words(finish: Finish, step: Planned) -> str:
    name = str(finish.product.family.name)
    words = name[:1].upper() + name[1:] + ". "
    if step.late:
        words += "The window of the film below has closed by then: dull the film first. "
    elif step.closes is not None:
        words += "Begin it by " + show_moment(step.closes) + ", or dull the film below first. "
    return words + "The maker's sheet comes first."


def _alarms(step: Planned) -> tuple[tuple[int, str], ...]:
    """Return when to sound: before a coat, and before its window closes where that is later."""
    found = [(-AHEAD, "in half an hour")]
    if step.closes is not None and step.closes - CLOSING > step.start - AHEAD:
        found.append((step.closes - CLOSING - step.start, "its window closes in an hour"))
    return tuple(found)


def _string(bow: _Bow, finish: Finish, now: int) -> Event:
    """Return the day of the string; called off where the finish stands still in the cold."""
    hard = finish.string_from
    start = whole_day(now if hard is None else hard) * DAY + MORNING
    return bow.event(STRING + "-1", "String and first draw",
                     "Inspect first; first full draw from a distance, with eye protection.", start,
                     start + HOUR, (), hard is None)


def _gone(bow: _Bow, entries: list[Entry]) -> list[Event]:
    """Return every event that an earlier state of the record told of, called off where it stood last."""
    written = sorted([each for each in entries if each.sheet in PLANNED_BY], key=lambda each: each.id)
    found: dict[str, Event] = {}
    for place, entry in enumerate(written):
        if entry.sheet not in PLANS:
            continue
        now = local_moment(entry.at)
        before = finish_of(State(written[:place + 1]), now)
        if before is None:
            continue
        events = [bow.event(key, step.step.name, "It is no longer planned.", step.start, step.end, (), True)
                  for key, step in _keyed(before)]
        start = whole_day(before.string_from or now) * DAY + MORNING
        events.append(bow.event(STRING + "-1", "String and first draw", "It is no longer planned.", start,
                                start + HOUR, (), True))
        for each in events:
            found[each.uid] = each
    return [found[uid] for uid in sorted(found)]


def _looks(bow: _Bow, state: State) -> list[Event]:
    """Return the day on which a bow that was handed over is to come back for a look."""
    day = latest_day(state, "handover.next_look")
    if day is None:
        return []
    start = day * DAY + MORNING
    return [bow.event(LOOK + "-1", "Next look", "Look it over as at intake, and read it again.", start,
                      start + HOUR)]
