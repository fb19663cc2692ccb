"""The week on the wall: what is due on which day, for all bows of a bench, on paper."""

from calc.dates import DAY, HOUR, show_clock, show_day
from calc.outcome import say
from calc.record import across, calendar, derive, summary
from calc.record.entries import Entry
from calc.record.finishing import working_hours
from calc.record.fold import State
from calc.record.moments import local_moment, show_local
from calc.shop.calendar import Event

DAYS = 7


def week_tree(bows: list[list[Entry]], at: str, system: str) -> list[object]:
    """Return the next seven days, and where each bow stands, as elements.

    Args:
        bows: entries of each, struck out or not.
        at: as an entry writes a moment: now.
        system: of units.

    Returns:
        elements: what is due by day, what comes next on each bow that has not left, and what they mean for
        each other. Nothing that is private is among them.

    Raises:
        ValueError: the moment cannot be read.
    """
    now = local_moment(at)
    first = now // DAY
    states = [State(each) for each in bows]
    events = [event for each in bows if each for event in calendar.events_of(each, now)
              if not event.cancelled]
    shop = across.shop_of(states)
    rows: list[object] = ["tbody", {}]
    for day in range(first, first + DAYS):
        due = [_due(each) for each in sorted(events, key=lambda each: (each.start, each.uid))
               if each.start // DAY == day] + _ready(states, day)
        rows.append(["tr", {}, ["th", {"scope": "row"}, show_day(day)], ["td", {}, _hours(shop, day)],
                     ["td", {}, _list(due)]])
    nodes: list[object] = [
        ["p", {}, "As of " + show_local(at) + ". Read the air before each coat."],
        _table(("Day", "Bench", "What is due"), rows), _standing(states, system),
    ]
    lines = [_line(summary.title(states[each.place]), ": " + " ".join([say(part, system)
                                                                       for part in each.parts]))
             for each in across.lines(states, at)]
    if lines:
        nodes += [["h3", {}, "Across the bench"], _list(lines)]
    return nodes


def _table(heads: tuple[str, ...], rows: list[object]) -> list[object]:
    head: list[object] = ["tr", {}]
    head += [["th", {"scope": "col"}, each] for each in heads]
    return ["table", {}, ["thead", {}, head], rows]


def _list(lines: "list[list[object]]") -> list[object]:
    items: list[object] = ["ul", {}]
    return items + lines


def _line(what: str, words: str) -> list[object]:
    return ["li", {}, ["b", {}, what], words]


def _hours(shop: State, day: int) -> str:
    opens, closes = working_hours(shop).on(day)
    return "closed" if opens == closes else show_clock(opens) + " to " + str(closes // HOUR) + ":00"


def _due(event: Event) -> list[object]:
    return _line(show_clock(event.start) + " " + event.summary, ". " + event.description)


def _ready(states: list[State], day: int) -> "list[list[object]]":
    """Return the bows that are to be ready on a day and have not left."""
    return [_line(calendar.tag_of(each) + ": ready", ", as was agreed.") for each in states
            if derive.due(each) == day and not each.of("handover")]


def _standing(states: list[State], system: str) -> list[object]:
    rows: list[object] = ["tbody", {}]
    for each in states:
        if each.of("handover"):
            continue
        due = derive.due(each)
        rows.append(["tr", {}, ["th", {"scope": "row"}, summary.title(each)],
                     ["td", {}, say(summary.weights(each), system)], ["td", {}, summary.whats_next(each)],
                     ["td", {}, show_day(due) if due is not None else ""]])
    return _table(("Bow", "Weight", "Next", "Ready by"), rows)
