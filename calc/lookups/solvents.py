"""Solvents: when their vapour burns."""

from calc.lookups.declare import column, lookup, row
from calc.tables.solvents import SOLVENTS, Solvent

QUARTER = 0.25


def _row(solvent: Solvent) -> tuple[object, ...]:
    limit = solvent.lower_limit
    return (solvent.name, solvent.flash_point, limit, QUARTER * limit, solvent.note or None)


LOOKUP = lookup(
    "solvents",
    "Solvents and fire",
    "About fire only: what may be breathed is far less, and stands in the limits for breathing. Sprayed as a "
    "mist, a liquid burns below its flash point. The safety data sheet of the product in your hand goes "
    "first.",
    (column("Solvent"), column("Flash point", "temperature", decimals=0),
     column("Burns from, share of the air", "ratio"), column("A quarter of that", "concentration"),
     column("Note")),
    tuple([row(_row(each), each.source, each.status) for each in SOLVENTS]),
)
