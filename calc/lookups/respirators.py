"""Respirator families and the factors assigned to them."""

from calc.lookups.declare import column, lookup, row
from calc.tables.respirators import NEEDS, RESPIRATORS, Respirator


def _row(respirator: Respirator) -> tuple[object, ...]:
    listed = [need.agent.replace("-", " ") for need in NEEDS if respirator.id in need.families]
    return (respirator.name[:1].upper() + respirator.name[1:], str(respirator.assigned_factor),
            ", ".join(listed) or None)


LOOKUP = lookup(
    "respirators",
    "Assigned protection factors",
    "What is breathed is divided by the factor at best, and only by somebody whose respirator fits, is worn "
    "the whole time and has the right filter or air. A disposable mask stops particles and no vapour of any "
    "kind. The safety data sheet says which kind; this table does not choose one.",
    (column("Respirator"), column("Factor"), column("Named in this book for")),
    tuple([row(_row(each), each.source, each.status) for each in RESPIRATORS]),
)
