"""Tolerances and limits of practice, as the calculators take them."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import show
from calc.tables.practice import LIMITS, PracticeLimit


def _span(limit: PracticeLimit, system: str) -> str:
    decimals = 3 if limit.id == "spacing-error" and system == "imperial" else None
    low, high = [None if each is None else show(each, limit.kind, system, decimals)
                 for each in (limit.low, limit.high)]
    if low is None:
        return "at most " + str(high)
    if high is None:
        return "at least " + low
    return low if low == high else low + " to " + high


def _cells(limit: PracticeLimit) -> tuple[object, ...]:
    return (limit.what, _span(limit, "imperial"), _span(limit, "metric"))


LOOKUP = lookup(
    "tolerances",
    "Tolerances of practice",
    "What the calculators start from where no standard was found. Every one of them can be edited there.",
    (column("What"), column("Accepted"), column("Accepted, metric")),
    tuple([row(_cells(each), each.source, each.status) for each in LIMITS]),
)
