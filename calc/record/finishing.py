"""The finish of a bow as it was laid, what is still to come, and when it will be hard.

Moments are those of the clock on the wall, on the scale of `calc.dates`.
"""

from calc.dates import DAY, HOUR, show_date
from calc.finishes.coats import (
    COAT_TIME,
    DOUBLING,
    LETTERING_DRY,
    REFERENCE,
    WET_FILM,
    WORKING_DAYS,
    Coat,
    Done,
    Product,
    after_done,
    coats_of,
    hours_of,
    last_coat,
    product_of,
    schedule_of,
)
from calc.finishes.product import least_temperature
from calc.outcome import Refused
from calc.quantities import ROUNDING, parse
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.moments import local_moment
from calc.record.sheets_of_finish import OFF, ROLES
from calc.record.values import is_on, latest_day, latest_number, number_in, rows_of
from calc.shop.curing import moment_after
from calc.shop.film import time_factor_doubling
from calc.shop.schedule import Planned, WorkingHours
from calc.tables.finish_families import FAMILIES, find

OPENS, CLOSES, DAYS = 9, 18, "six"
"""Hours of a shop that has written down none, as the calculator of the finish has them."""

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Speeds = tuple[tuple[int, float], ...]


class Finish:
    """How far a finish has come.

    least [degC]: below it the product does not cure. entries: of what is laid, in the order of the first of
    coats and planned. speeds: of curing, as `calc.shop.curing` takes them; 0 where it stood still.
    """

    def __init__(
        self, product: Product, least: float | None, entries: list[Entry], coats: list[Coat],
        planned: list[Planned], speeds: "Speeds",
    ):
        self.product = product
        self.least = least
        self.entries = entries
        self.coats = coats
        self.planned = planned
        self.speeds = speeds

    @property
    def to_come(self) -> list[Planned]:
        """Return what is still to come."""
        return self.planned[len(self.entries):]

    def hard_after(self, moment: int) -> int | None:
        """Return when a film is hard enough for a string whose coat was ended at a moment [s]."""
        return moment_after(self.speeds, moment, self.product.cure)

    @property
    def string_from(self) -> int | None:
        """Return before when it is not strung, by the last coat; None where it stands still in the cold."""
        return self.hard_after(last_coat(self.planned, self.coats).end)


def coat_entries(state: State) -> list[Entry]:
    """Return the coats and the lettering that are on a bow.

    Args:
        state: of a record.

    Returns:
        entries, oldest first; none of before a finish was taken off.
    """
    found: list[Entry] = []
    for entry in state.entries:
        if entry.sheet not in ("coat", "lettering"):
            continue
        if entry.fact("standing") == OFF:
            found = []
        else:
            found.append(entry)
    return found


def finish_of(state: State, now: int) -> Finish | None:
    """Return how far the finish of a bow has come, and the plan of what is still to come.

    Args:
        state: of a record.
        now [s]: before which nothing is planned.

    Returns:
        None where the record names no family of finish, or holds neither a coat nor a plan.
    """
    family = state.text("product.family")
    counts = _counts(state)
    entries = sorted(coat_entries(state), key=lambda each: (local_moment(each.at), each.id))
    if family not in [each.id for each in FAMILIES] or not (
            sum(counts) or [each for each in entries if each.sheet == "coat"]):
        return None
    main = _product(state, family)
    seal = main
    if state.text("product.seal_with") == "shellac":
        seal = product_of(find("shellac"), None, 0.0, None, None, None, 1.0, None, None)
    hours = working_hours(state)
    takes = min(_number_or(state, "shop.coat_time", parse(COAT_TIME, "hours")),
                float(hours.closes - hours.opens))
    wet = _number_or(state, "coats.wet_film", parse(WET_FILM, "film"))
    coats = after_done(
        coats_of(counts, sum(counts) > 0 and _is_lettered(state), seal, main, wet, 1.0, 1.0),
        [_done(each, takes) for each in entries], seal, main, wet)
    dries = _number_or(state, "product.lettering_dry", parse(LETTERING_DRY, "hours"))
    start = max(now, (latest_day(state, "coats.start") or 0) * DAY)
    planned = schedule_of(coats, takes, dries, start, hours, speeds_of(state))
    least = least_temperature(family, latest_number(state, "product.least_temperature"))
    return Finish(main, least, entries, coats, planned, speeds_of(state, least))


def working_hours(state: State) -> WorkingHours:
    """Return when the shop works.

    Args:
        state: of a record.

    Returns:
        its hours as written down, else usual ones.
    """
    opens = int(_number_or(state, "shop.opens", OPENS))
    closes = int(_number_or(state, "shop.closes", CLOSES))
    if opens >= closes:
        opens, closes = OPENS, CLOSES
    days, closed = state.text("shop.days"), state.latest("shop.closed")
    other = [(int(day), int(first), int(last)) for day, first, last in rows_of(closed.entry, "closed")
             if first <= last] if closed else []
    known = [id for id, _, _ in WORKING_DAYS]
    return hours_of(opens, closes, days if days in known else DAYS, tuple(other))


def speeds_of(state: State, least: float | None = None) -> "Speeds":
    """Return how fast a finish dried, against the warmth of its sheet, by what was read at coats and between.

    Args:
        state: of a record.
        least [degC]: below which nothing cures; None: the rule holds at any warmth.

    Returns:
        (moment [s], speed [1]) in order of time.
    """
    doubling = parse(DOUBLING, "temperature_difference")
    found = []
    for entry in state.entries:
        warmth = number_in(entry, "temperature") if entry.sheet in ("air", "coat") else None
        if warmth is not None:
            stands = least is not None and warmth < least - ROUNDING
            found.append((local_moment(entry.at),
                          0.0 if stands else 1.0 / time_factor_doubling(warmth, REFERENCE, doubling)))
    return tuple(sorted(found))


def _counts(state: State) -> tuple[int, int, int, int]:
    seal, build, over, sheen = [int(_number_or(state, "coats." + each + "_coats", 0))
                                for each in ("seal", "build", "over", "sheen")]
    return seal, build, over, sheen


def _done(entry: Entry, usual: float) -> Done:
    """Return a coat as it was laid; usual [s]: that it took where nobody said."""
    start, took = local_moment(entry.at), number_in(entry, "took")
    role = entry.fact("role")
    if entry.sheet == "lettering":
        role = "lettering"
    elif role not in [id for id, _ in ROLES]:
        role = "build"
    return Done(role, start, start + int(usual if took is None else took), number_in(entry, "wet_film"),
                number_in(entry, "temperature"))


def _is_lettered(state: State) -> bool:
    said = state.latest("agreed.lettered")
    return bool(state.text("agreed.lettering")) if said is None else is_on(said.entry, "lettered")


def _number_or(state: State, fact: str, usual: float) -> float:
    found = latest_number(state, fact)
    return usual if found is None else found


def _product(state: State, family: str) -> Product:
    """Return the product by its sheet; a window that contradicts itself is that typical of the family."""
    opens, closes, solids, cure = [latest_number(state, "product." + each)
                                   for each in ("recoat_from", "recoat_to", "solids", "cure")]
    reducer = _number_or(state, "product.reducer", 0.0)
    try:
        return product_of(find(family), solids, reducer, opens, closes, cure, 1.0, None, None)
    except Refused:
        return product_of(find(family), solids, reducer, None, None, cure, 1.0, None, None)


def laid_text(entries: list[Entry]) -> str:
    """Return the coats that are on a bow as the calculator of the finish takes them.

    Args:
        entries: as `coat_entries` gives them.

    Returns:
        rows of kind, day, hour, warmth and wet film.
    """
    lines = []
    for entry in entries:
        day, clock = divmod(local_moment(entry.at), DAY)
        role = "lettering" if entry.sheet == "lettering" else entry.fact("role") or "build"
        lines.append(":".join([role, show_date(day), exact_text(clock, "hours", "h", HOUR),
                               entry.fact("temperature"), entry.fact("wet_film")]))
    return ";".join(lines)
