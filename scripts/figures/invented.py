"""The book's invented bow as it came, computed: what figures of limbs are drawn from."""

import inspect
from functools import cache
from typing import Any

from calc import catalog
from calc.bows.measured import MeasuredBow, calibrated, measured_bow, setup_of
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import LimbShape
from calc.mechanics.bow.tuning import Calibration, Setup
from calc.reading import read

Point = tuple[float, float]


@cache
def example_of(calculator: str) -> dict[str, Any]:
    """Return the inputs of a calculator's worked example, by their ids.

    Raises:
        ValueError: it has faults.
    """
    values, problems, _ = read(catalog.find(calculator), [], "imperial")
    if problems:
        raise ValueError(f"the example of {calculator} has faults: {[each.field for each in problems]}")
    return values


def measured() -> MeasuredBow:
    """Return the bow of the bow model's worked example."""
    wanted = inspect.signature(measured_bow).parameters
    return measured_bow(**{name: value for name, value in example_of("bow-model").items() if name in wanted})


def setup() -> Setup:
    """Return how that bow is read."""
    return setup_of(*(example_of("bow-model")[name] for name in
                      ("draw_length", "brace_height", "measured", "from_string_end")))


@cache
def as_it_came() -> Calibration:
    """Return it with the stiffness that gives it its weight and tiller."""
    example = example_of("bow-model")
    return calibrated(measured().bow(), setup(), example["weight"], "tiller", example["tiller"])


def outline(shapes: tuple[LimbShape, LimbShape]) -> list[Point]:
    """Return a bow as one line from its lower to its upper nock, (x toward the archer, y up) [m]."""
    upper, lower = shapes
    return [*reversed(list(zip(lower.x, lower.y, strict=True))), *zip(upper.x, upper.y, strict=True)]


def unstrung(bow: Bow) -> list[Point]:
    """Return a bow's outline with no string on it."""
    upper, lower = (limb.shape(0.0, 0.0, (bow.upper.length, 0.0)) for limb in (bow.upper, bow.lower))
    lower.y = [-y for y in lower.y]
    return outline((upper, lower))
