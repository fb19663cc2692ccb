"""The list of decision paths, found by id. Only the module asked for is imported."""

from calc.listing import module_of
from calc.paths.declare import Path

IDS = (
    "line",
    "which-calculator",
)


def find(id: str) -> Path:
    """Return the path with this id.

    Raises:
        ValueError: no path has this id.
    """
    found: Path = module_of("paths", id, IDS).PATH  # type: ignore[attr-defined]
    return found
