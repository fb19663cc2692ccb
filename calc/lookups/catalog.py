"""The list of look-up tables, found by id. Only the module asked for is imported."""

from calc.listing import module_of
from calc.lookups.declare import Lookup

IDS = (
    "check-values",
    "grits",
    "drills",
    "threads",
    "threads-metric",
    "fittings",
    "fractions",
    "woods",
    "trade-woods",
    "strings",
    "strands",
    "brace-heights",
    "spine",
    "forces",
    "tiller",
    "arrow-mass",
    "tolerances",
    "gloss",
    "finish-families",
    "viscosity-cups",
    "pot-life",
    "glues",
    "hands",
    "dew-point",
    "dew-point-celsius",
    "emc",
    "air-changes",
    "face-speeds",
    "solvents",
    "solvent-limits",
    "respirators",
    "exposure-limits",
)


def find(id: str) -> Lookup:
    """Return the look-up table with this id.

    Raises:
        ValueError: no table has this id.
    """
    found: Lookup = module_of("lookups", id, IDS).LOOKUP  # type: ignore[attr-defined]
    return found
