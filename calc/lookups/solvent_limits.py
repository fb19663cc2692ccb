"""Limits for breathing beside flash points, solvent by solvent."""

from calc.lookups.declare import column, lookup, row
from calc.tables.exposure_limits import limits_of, value_of
from calc.tables.solvents import SOLVENTS, Solvent

BODIES = ("OSHA PEL", "NIOSH REL", "ACGIH TLV", "IDLH")


def _limit(solvent: Solvent, body: str) -> str | None:
    found = [value_of(each) for each in limits_of(solvent.id) if each.body == body]
    return found[0] if found else None


LOOKUP = lookup(
    "solvent-limits",
    "Solvents: flash point and limits for breathing in one line",
    "Each limit with its source and date stands in the table of limits; the weakest of a row is from memory. "
    "An empty cell is no permission: none was read.",
    (column("Solvent"), column("Flash point", "temperature", "imperial", 0),
     column("Flash point, metric", "temperature", "metric", 0), column("Burns from", "ratio")) + tuple(
        [column(each) for each in BODIES]),
    tuple([row((each.name, each.flash_point, each.flash_point, each.lower_limit)
               + tuple([_limit(each, body) for body in BODIES]), "acgih-limits", "from memory")
           for each in SOLVENTS]),
)
