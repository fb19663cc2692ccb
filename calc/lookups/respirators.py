"""Respirator families and the factors assigned to them."""

from calc.lookups.declare import column, lookup, row
from calc.tables.respirators import RESPIRATORS, Respirator


def _row(respirator: Respirator) -> tuple[object, ...]:
    return (respirator.name[:1].upper() + respirator.name[1:], str(respirator.assigned_factor))


LOOKUP = lookup(
    "respirators",
    "Assigned protection factors",
    "What is breathed is divided by the factor at best, and only by somebody whose respirator fits, is worn "
    "the whole time and has the right filter or air. The safety data sheet says which kind; this table does "
    "not choose one.",
    (column("Respirator"), column("Factor")),
    tuple([row(_row(each), each.source, each.status) for each in RESPIRATORS]),
)
