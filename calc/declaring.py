"""Declaring a calculator once: what it asks, what it answers, what it warns of.

The form, the link, the command line, the validation, the tables in the book
and the tests are all made from these declarations.
"""


from collections import namedtuple

from calc.dates import parse_date
from calc.quantities import parse

Calculator = namedtuple(
    "Calculator", "id title purpose groups results cautions sources example compute"
)
"""A calculator.

purpose: one sentence. example: one sentence about the invented bow whose
figures are the defaults. sources: keys of `calc.bibliography`. compute: takes
every input by its id, returns an Outcome; or is a generator function that
yields how far it is (0 to 1) and returns the Outcome.
"""

Group = namedtuple("Group", "title note inputs")
"""Inputs that belong together on the form."""

Input = namedtuple(
    "Input",
    "id label kind default low high usual_low usual_high help measure choices columns optional when role",
)
"""One thing a calculator asks for.

kind: a quantity kind, or CHOICE, SWITCH, COUNT, DATE, ROWS. default: text as typed;
the defaults together are the worked example. low, high: hard bounds in SI (rows:
how many). usual_low, usual_high: outside these a caution is shown. when: None,
or (id of a choice, its values for which this input matters). role: FACT, SHOP, RULE
or TRIAL.
"""

FACT = "fact"
"""Of this bow, archer, arrow, product or room, or agreed with the owner: the example's stands for nobody."""

SHOP = "shop"
"""Of the shop's tools, habits and prices: the same from one bow to the next."""

RULE = "rule"
"""A rule of the trade or a known figure of a material: as usual, unless somebody knows better."""

TRIAL = "trial"
"""A step to try or to plan."""

Choice = namedtuple("Choice", "id label")
Result = namedtuple("Result", "id label kind help")
"""A declared result; `kind` is a quantity kind, or TEXT for a word."""

BY_UNITS = "units"
"""An option of this id stands for the reader's unit system: it is read as "imperial" or "metric"."""

CHOICE = "choice"
SWITCH = "switch"
COUNT = "count"
DATE = "date"
ROWS = "rows"


# Declaring -------------------------------------------------------------------


def group(title: str, *inputs: Input, note: str = "") -> Group:
    """Return a group of inputs under one title."""
    return Group(title, note, inputs)


def quantity(
    id: str,
    label: str,
    kind: str,
    default: str,
    low: str,
    high: str,
    usual: tuple[str, str] | None = None,
    help: str = "",
    measure: str = "",
    optional: bool = False,
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare an input that is a quantity; the bounds are texts with their unit."""
    bounds = usual or (low, high)
    return Input(
        id, label, kind, default, parse(low, kind), parse(high, kind),
        parse(bounds[0], kind), parse(bounds[1], kind), help, measure, (), (), optional, when, role,
    )


def count(
    id: str,
    label: str,
    default: int,
    low: int,
    high: int,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare an input that is a whole number of things."""
    return Input(id, label, COUNT, str(default), low, high, low, high, help, "", (), (), False, when,
                 role)


def date(
    id: str, label: str, default: str, low: str, high: str, help: str = "", role: str = FACT
) -> Input:
    """Declare an input that is a date, typed as year-month-day."""
    first, last = parse_date(low), parse_date(high)
    return Input(id, label, DATE, default, first, last, first, last, help, "", (), (), False, None, role)


def choice(
    id: str,
    label: str,
    choices: tuple[tuple[str, str], ...],
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    default: str | None = None,
    role: str = FACT,
) -> Input:
    """Declare a choice from (id, label) pairs; the first is the default unless another is named."""
    options = tuple([Choice(option[0], option[1]) for option in choices])
    return Input(id, label, CHOICE, default or options[0].id, None, None, None, None, help, "",
                 options, (), False, when, role)


def switch(
    id: str,
    label: str,
    default: bool = False,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare something that is either on or off."""
    return Input(id, label, SWITCH, "yes" if default else "no", None, None, None, None,
                 help, "", (), (), False, when, role)


def rows(
    id: str,
    label: str,
    columns: tuple[Input, ...],
    default: str,
    fewest: int,
    most: int,
    help: str = "",
    measure: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare a small table of quantities and choices: cells apart by `:`, rows by `;`."""
    return Input(id, label, ROWS, default, fewest, most, fewest, most, help, measure,
                 (), columns, fewest == 0, when, role)


def result(id: str, label: str, kind: str, help: str = "") -> Result:
    """Declare a result."""
    return Result(id, label, kind, help)


def inputs_of(calculator: Calculator) -> list[Input]:
    """Return all inputs of a calculator in the order of its form."""
    return [each for part in calculator.groups for each in part.inputs]
