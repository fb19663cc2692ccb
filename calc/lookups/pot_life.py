"""How long a mix lasts in the pot, by the warmth of the shop."""

from calc.lookups.declare import GRID, column, lookup, row
from calc.quantities import parse, show
from calc.shop.film import time_factor_doubling
from calc.tables.finish_families import POT_LIFE_REFERENCE

FAHRENHEIT = tuple(range(50, 96, 5))
STATED = ("5 min", "10 min", "20 min", "30 min", "45 min", "60 min", "120 min", "240 min", "480 min")
STEP = 10.0  # K


def _cells(fahrenheit: int) -> tuple[object, ...]:
    warmth = parse(str(fahrenheit) + " F", "temperature")
    factor = time_factor_doubling(warmth, parse(POT_LIFE_REFERENCE, "temperature"), STEP)
    name = str(fahrenheit) + " °F, " + show(warmth, "temperature", "metric", 0)
    return (name,) + tuple([factor * parse(each, "minutes") for each in STATED])


LOOKUP = lookup(
    "pot-life",
    "Pot life in minutes, by the warmth of the shop and what the can states at 70 °F (21 °C)",
    "By the rule that it halves for each 10 °C (18 °F) warmer. A rule of thumb: a large mix warms itself and "
    "sets sooner, and what is spread thin lasts longer.",
    (column("Shop"),) + tuple([column(each, "minutes", decimals=0) for each in STATED]),
    tuple([row(_cells(each), "pot-life-halving", "calculated") for each in FAHRENHEIT]),
    GRID,
)
