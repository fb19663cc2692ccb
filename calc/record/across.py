"""What bows on one bench mean for each other: dust, wet film, two coats at one hour, the air of the day.

Moments are those of the clock on the wall, on the scale of `calc.dates`.
"""

from calc.dates import DAY, show_moment
from calc.outcome import OK, STOP, WATCH, Sentence, amount, sentence
from calc.record import steps, summary
from calc.record.coat_air import DAMPEST, CoatAir
from calc.record.entries import Entry
from calc.record.finishing import Finish, finish_of, working_hours
from calc.record.fold import State
from calc.record.moments import MINUTE, local_moment
from calc.record.values import latest_number
from calc.shop.air import air_changes, clearing_time
from calc.shop.curing import moment_after
from calc.shop.schedule import Planned, next_start

AIR_LASTS = 30 * MINUTE
"""For which a reading of the air holds good for a coat (common practice)."""

MIXING = 3.0
"""How much slower than well-mixed air a usual shop clears, as the calculator of clearing air has it."""

DUST_LEFT = 0.01
"""Share of the dust at which a room counts as clear (common practice)."""

DUSTY = ("strokes", "edges", "fill", "section", "hole")
"""Deeds that fill the air with dust."""

DUSTY_STEPS = ("weight", "shape", "sand")

GUNS = ("hvlp", "conventional")
"""Ways to lay a finish on with a gun, by the table of methods."""

WORST = (OK, WATCH, STOP)


class Line:
    """What is said of one bow. place: of the bow in the list asked about. level: OK, WATCH or STOP."""

    def __init__(self, place: int, level: str, parts: "list[Sentence | str]"):
        self.place = place
        self.level = level
        self.parts = parts


class _Work:
    """A bow at work: its name, its finish, its next coat."""

    def __init__(self, place: int, state: State, now: int):
        self.place = place
        self.state = state
        self.name = _name(state)
        self.finish = finish_of(state, now)
        to_come = self.finish.to_come if self.finish is not None else []
        self.coat: Planned | None = to_come[0] if to_come else None

    def wet_until(self) -> int | None:
        """Return until when dust sticks to its film: when a coat could go on it; None: it bears none."""
        finish = self.finish
        if finish is None or not finish.entries:
            return None
        if self.coat is not None:
            return self.coat.opens
        end = max([each.end for each in finish.planned])
        dry = moment_after(finish.speeds, end, finish.product.recoat_from)
        return end + 365 * DAY if dry is None else dry

    def makes_dust(self) -> bool:
        """Return whether sanding comes next on it."""
        if self.finish is not None and self.finish.entries:
            return self.coat is not None and self.coat.late
        step = steps.next_step(self.state).step
        return step is not None and step.id in DUSTY_STEPS


class _Taken:
    """When a coat of a bow goes on. product: its name; empty for the lettering."""

    def __init__(self, start: int, end: int, bow: str, product: str):
        self.start = start
        self.end = end
        self.bow = bow
        self.product = product


class _Shop:
    """The room. dust: when it was last made, on which bow. clearing [s]. air: as it was read last.

    sprays: whether a gun is used.
    """

    def __init__(self, bows: list[State], now: int):
        every = shop_of(bows)
        self.clearing = _clearing(every)
        self.sprays = every.text("shop.method") in GUNS
        self.air = every.of("air")[-1] if every.of("air") else None
        made = [(local_moment(entry.at), _name(state)) for state in bows
                for sheet in DUSTY for entry in state.of(sheet) if local_moment(entry.at) <= now]
        self.dust = max(made) if made else None


def lines(bows: list[State], at: str) -> list[Line]:
    """Return a line for each bow on which others, or the air, bear: closing windows first, then what waits.

    Args:
        bows: how each stands.
        at: as an entry writes a moment: now.

    Returns:
        lines; none for a bow that has left the bench or has neither a coat nor sanding before it.

    Raises:
        ValueError: the moment cannot be read.
    """
    now = local_moment(at)
    works = [_Work(place, state, now) for place, state in enumerate(bows) if not state.of("handover")]
    shop = _Shop([each.state for each in works], now)
    due = sorted([each for each in works if each.coat is not None], key=_by_window)
    found: list[Line] = []
    taken: list[_Taken] = []
    for each in due:
        line, hour = _coat_line(each, taken, shop, now)
        taken.append(hour)
        found.append(line)
    dusty = [_dust_line(each, works, shop, now) for each in works if each.makes_dust()]
    found += [each for each in dusty if each is not None]
    return _one_each(found)


def shop_of(bows: list[State]) -> State:
    """Return what the records of all bows hold of the shop and its air.

    Args:
        bows: how each stands.

    Returns:
        one state; the newest of each fact counts, whichever record holds it.
    """
    return State([entry for state in bows for entry in state.entries if entry.sheet in ("shop", "air")])


def _name(state: State) -> str:
    return state.text("bow.tag") or summary.title(state)


def _by_window(work: _Work) -> tuple[int, int, int, int]:
    coat = work.coat
    if coat is None or coat.closes is None:
        return 1, 0, coat.start if coat is not None else 0, work.place
    return 0, coat.closes, coat.start, work.place


def _one_each(found: list[Line]) -> list[Line]:
    kept: list[Line] = []
    for line in found:
        same = [each for each in kept if each.place == line.place]
        if same:
            same[0].parts += line.parts
            same[0].level = _worse(same[0].level, line.level)
        else:
            kept.append(line)
    return kept


def _worse(one: str, other: str) -> str:
    return WORST[max(WORST.index(one), WORST.index(other))]


# A coat --------------------------------------------------------------------------


def _coat_line(
    work: _Work, taken: list[_Taken], shop: _Shop, now: int
) -> tuple[Line, _Taken]:
    """Return what is said of the next coat of a bow, and when it goes on beside those before it."""
    coat, finish = work.coat, work.finish
    if coat is None or finish is None:
        raise ValueError("no coat is to come")
    start, other = _free(work, coat, taken)
    product = finish.coats[len(finish.entries)].product
    hour = _Taken(start, start + coat.step.work_time, work.name,
                  "" if product is None else str(product.family.name))
    clear = _dust_clears(shop, now)
    words: list[Sentence | str] = [coat.step.name + " from " + show_moment(coat.start) + _window(coat)]
    level = WATCH if coat.late else OK
    if other:
        missed = not coat.late and coat.closes is not None and start > coat.closes
        words.append(other + " gets its coat at that hour: this one from " + show_moment(start) + (
            ", after its window. Dull the film first." if missed else "."))
        level = WATCH
    if shop.dust is not None and clear is not None and start < clear:
        words.append("Dust of " + shop.dust[1] + " hangs in the room until " + show_moment(clear)
                     + ": no coat before.")
        level = WATCH
    elif shop.dust is not None and shop.clearing is None and start - shop.dust[0] < DAY:
        words.append("Dust was made on " + shop.dust[1] + " at " + show_moment(shop.dust[0]) + ": write down "
                     "the room and its fan, to know when it has cleared.")
        level = WATCH
    others = [each for each in taken if shop.sprays and each.product and hour.product
              and each.product != hour.product and each.start // DAY == start // DAY]
    if others:
        words.append("Clean the gun before it: " + others[-1].bow + " gets " + others[-1].product
                     + " on that day.")
        level = WATCH
    if start - now <= AIR_LASTS:
        air_level, said = _air(finish, shop.air, now)
        words.append(said)
        level = _worse(level, air_level)
    return Line(work.place, level, words), hour


def _window(coat: Planned) -> str:
    if coat.closes is None:
        return "."
    closes = show_moment(coat.closes)
    return ("; its window has closed by then, on " + closes + ": dull the film first." if coat.late else
            "; its window closes on " + closes + ".")


def _free(work: _Work, coat: Planned, taken: list[_Taken]) -> tuple[int, str]:
    """Return when a coat can go on beside those that go before it, and which of them it first gave way to."""
    start, gave_way = coat.start, ""
    for each in sorted(taken, key=lambda one: one.start):
        if start < each.end and each.start < start + coat.step.work_time:
            start = next_start(each.end, coat.step.work_time, working_hours(work.state))
            gave_way = gave_way or each.bow
    return start, gave_way


def _air(finish: Finish, read: Entry | None, now: int) -> "tuple[str, Sentence | str]":
    """Return whether the air of now is good for a product, and why not."""
    if read is None or not 0 <= now - local_moment(read.at) <= AIR_LASTS:
        return WATCH, "Read the air before it."
    air = CoatAir(read)
    if not air.is_read:
        return WATCH, "Read the air before it: warmth and humidity."
    if finish.least is not None and air.is_colder_than(finish.least):
        return STOP, sentence("Air: wait. {} is colder than the {} that " + finish.product.family.name
                              + " needs.", amount("temperature", air.coldest, 1),
                              amount("temperature", finish.least, 1))
    if air.is_too_damp:
        return STOP, sentence("Air: wait. {} is damper than {}.", amount("ratio", air.humidity, 0),
                              amount("ratio", DAMPEST, 0))
    level = air.margin_level
    if level == OK:
        return OK, "Air: go."
    return level, sentence(("Air: wait. The work is only {}" if level == STOP else
                            "Air: at its limit. The work is {}") + " above the dew point.",
                           amount("temperature_difference", air.margin))


# Dust ----------------------------------------------------------------------------


def _dust_line(work: _Work, works: list[_Work], shop: _Shop, now: int) -> Line | None:
    """Return why a bow is not sanded now: another is wet, or gets a coat before the room has cleared."""
    others = [each for each in works if each.place != work.place]
    wet = [(each.wet_until() or now, each.name) for each in others]
    until, name = max(wet) if wet else (now, "")
    if until > now:
        return Line(work.place, WATCH, ["No sanding now: " + name + " is wet until " + show_moment(until)
                                        + ", and dust sticks to it."])
    coming = [(each.coat.start, each.name) for each in others if each.coat is not None]
    first = min(coming) if coming else None
    if first is None or shop.clearing is None or first[0] - now >= DAY:
        return None
    last = first[0] - int(shop.clearing)
    if last <= now:
        return Line(work.place, WATCH, ["No sanding now: " + first[1] + " gets a coat at "
                                        + show_moment(first[0]) + ", and the room does not clear by then."])
    return Line(work.place, WATCH, ["Sand no later than " + show_moment(last) + ": " + first[1] + " gets a "
                                    "coat at " + show_moment(first[0]) + "."])


def _dust_clears(shop: _Shop, now: int) -> int | None:
    """Return when dust of the last sanding has left the air; None where nobody can say, or it has."""
    if shop.dust is None or shop.clearing is None:
        return None
    clears = shop.dust[0] + int(shop.clearing)
    return clears if clears > now else None


def _clearing(shop: State) -> float | None:
    """Return how long the room takes to clear of dust [s]; None where room or fan is not written down."""
    changes, flow = latest_number(shop, "shop.changes"), latest_number(shop, "shop.flow")
    if flow is not None:
        sides = [latest_number(shop, "shop.room_" + each) for each in ("length", "width", "height")]
        volume = 1.0
        for side in sides:
            if side is None:
                return None
            volume *= side
        changes = air_changes(flow, volume)
    return None if changes is None else clearing_time(changes, DUST_LEFT, MIXING)
