"""The list of calculators, found by id. Only the module asked for is imported."""

from calc.declaring import Calculator
from calc.listing import module_of

IDS = (
    "inspection",
    "tiller",
    "weight-reduction",
    "arrow-match",
    "draw-curve",
    "strokes",
    "edges",
    "next-batch",
    "bow-model",
    "photograph",
    "insert",
    "grip",
    "wood-movement",
    "epoxy",
    "tracking",
    "string",
    "quote",
    "grit",
    "finish",
    "spray-air",
    "clear-air",
)


def find(id: str) -> Calculator:
    """Return the calculator with this id.

    Raises:
        ValueError: no calculator has this id.
    """
    found: Calculator = module_of("calculators", id, IDS).CALCULATOR  # type: ignore[attr-defined]
    return found
