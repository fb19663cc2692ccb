"""The list of look-up tables, found by id. Only the module asked for is imported."""

from calc.lookups.declare import Lookup

IDS = (
    "check-values",
    "grits",
    "drills",
    "threads",
    "fractions",
    "woods",
    "strings",
    "tiller",
    "arrow-mass",
    "tolerances",
    "gloss",
    "finish-families",
    "dew-point",
    "dew-point-celsius",
    "emc",
    "air-changes",
    "exposure-limits",
)


def find(id: str) -> Lookup:
    """Return the look-up table with this id.

    Raises:
        ValueError: no table has this id.
    """
    if id not in IDS:
        raise ValueError("no table is called " + id)
    name = id.replace("-", "_")
    module = getattr(__import__("calc.lookups." + name).lookups, name)
    found: Lookup = module.LOOKUP
    return found
