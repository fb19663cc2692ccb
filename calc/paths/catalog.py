"""The list of decision paths, found by id. Only the module asked for is imported."""

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
    if id not in IDS:
        raise ValueError("no path is called " + id)
    name = id.replace("-", "_")
    module = getattr(__import__("calc.paths." + name).paths, name)
    found: Path = module.PATH
    return found
