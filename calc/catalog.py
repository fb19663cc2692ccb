"""The list of calculators, found by id. Only the module asked for is imported."""

from calc.fields import Calculator

IDS = (
    "inspection",
    "tiller",
    "weight-reduction",
    "arrow-match",
    "draw-curve",
    "strokes",
    "bow-model",
    "insert",
    "grip",
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
    if id not in IDS:
        raise ValueError("no calculator is called " + id)
    name = id.replace("-", "_")
    module = getattr(__import__("calc.calculators." + name).calculators, name)
    calculator: Calculator = module.CALCULATOR
    return calculator
