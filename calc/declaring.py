"""Declaring a calculator once: what it asks, what it answers, what it warns of.

The form, the link, the command line, the validation, the tables in the book
and the tests are all made from these declarations.
"""


from calc.dates import parse_date
from calc.quantities import parse

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator, Iterable
    from typing import Any

    from calc.outcome import Outcome, Sentence


class Choice:
    """One of the words that a choice offers."""

    def __init__(self, id: str, label: str) -> None:
        self.id = id
        self.label = label


class Input:
    """One thing a calculator asks for.

    kind: a quantity kind, or CHOICE, SWITCH, COUNT, DATE, ROWS. default: text as typed;
    the defaults together are the worked example. low, high: hard bounds in SI (rows:
    how many), None where a kind has none. usual_low, usual_high: outside these a caution
    is shown. when: None, or (id of a choice, its values for which this input matters).
    role: FACT, SHOP, RULE or TRIAL. figure: name of a small picture of what is asked for,
    which the form unfolds; empty where there is none.
    """

    def __init__(
        self,
        *,
        id: str,
        label: str,
        kind: str,
        default: str,
        help: str,
        role: str,
        low: float | None = None,
        high: float | None = None,
        usual_low: float | None = None,
        usual_high: float | None = None,
        measure: str = "",
        choices: tuple[Choice, ...] = (),
        columns: "tuple[Input, ...]" = (),
        optional: bool = False,
        when: tuple[str, tuple[str, ...]] | None = None,
        figure: str = "",
    ) -> None:
        self.id = id
        self.label = label
        self.kind = kind
        self.default = default
        self.help = help
        self.role = role
        self.low = low
        self.high = high
        self.usual_low = low if usual_low is None else usual_low
        self.usual_high = high if usual_high is None else usual_high
        self.measure = measure
        self.choices = choices
        self.columns = columns
        self.optional = optional
        self.when = when
        self.figure = figure

    def bounds(self) -> tuple[float, float]:
        """Return the hard bounds of a kind that has some."""
        if self.low is None or self.high is None:
            raise ValueError(self.id + " has no bounds")
        return self.low, self.high

    def usual(self) -> tuple[float, float]:
        """Return the ends of what is usual, of a kind that has bounds."""
        if self.usual_low is None or self.usual_high is None:
            raise ValueError(self.id + " has no bounds")
        return self.usual_low, self.usual_high


class Group:
    """Inputs that belong together on the form.

    under: title of the fold that it shares with its neighbours; empty where it has its own.
    """

    def __init__(self, title: str, note: str, inputs: tuple[Input, ...], under: str = "") -> None:
        self.title = title
        self.note = note
        self.inputs = inputs
        self.under = under


class Fold:
    """Inputs that a form folds away: whole groups, or what is left of one whose first inputs stand open."""

    def __init__(self, title: str, groups: tuple[Group, ...], inputs: tuple[Input, ...]) -> None:
        self.title = title
        self.groups = groups
        self.inputs = inputs


class Result:
    """A declared result; `kind` is a quantity kind, or TEXT for a word.

    A label that begins small goes on with the result before it, such as "give or take".
    """

    def __init__(self, id: str, label: str, kind: str, help: str) -> None:
        self.id = id
        self.label = label
        self.kind = kind
        self.help = help
        self.goes_on = label[0].islower()


class Calculator:
    """A calculator.

    purpose: one sentence. example: one sentence about the invented bow whose
    figures are the defaults. sources: keys of `calc.bibliography`. compute: takes
    every input by its id, returns an Outcome; or is a generator function that
    yields how far it is (0 to 1) and returns the Outcome. acted_on: ids of the results
    that somebody works by, in the order of use; they stand first and large. first: ids
    of the inputs that the job needs first; the form folds the others away, by group.
    None: none is folded. in_steps: whether the folded groups are gone through one after
    another. takes_off: whether what it says may have somebody take material off a bow.
    find: what its page may ask beside answers, a question and its answer as JSON has
    them; None without such.
    """

    def __init__(
        self,
        *,
        id: str,
        title: str,
        purpose: str,
        groups: tuple[Group, ...],
        results: tuple[Result, ...],
        acted_on: tuple[str, ...],
        cautions: "tuple[Sentence | str, ...]",
        sources: tuple[str, ...],
        example: str,
        compute: "Callable[..., Outcome | Generator[float, None, Outcome]]",
        first: tuple[str, ...] | None = None,
        in_steps: bool = False,
        takes_off: bool = False,
        find: "Callable[[dict[str, Any]], dict[str, object]] | None" = None,
    ) -> None:
        self.id = id
        self.title = title
        self.purpose = purpose
        self.groups = groups
        self.results = results
        self.acted_on = acted_on
        self.cautions = cautions
        self.sources = sources
        self.example = example
        self.compute = compute
        self.first = first
        self.in_steps = in_steps
        self.takes_off = takes_off
        self.find = find


FACT = "fact"
"""Of this bow, archer, arrow, product or room, or agreed with the owner: the example's stands for nobody."""

SHOP = "shop"
"""Of the shop's tools, habits and prices: the same from one bow to the next."""

RULE = "rule"
"""A rule of the trade or a known figure of a material: as usual, unless somebody knows better."""

TRIAL = "trial"
"""A step to try or to plan."""

BY_UNITS = "units"
"""An option of this id stands for the reader's unit system: it is read as "imperial" or "metric"."""

CHOICE = "choice"
SWITCH = "switch"
COUNT = "count"
DATE = "date"
ROWS = "rows"


# Declaring -------------------------------------------------------------------


def group(title: str, *inputs: Input, note: str = "", under: str = "") -> Group:
    """Return a group of inputs under one title."""
    return Group(title, note, inputs, under)


def quantity(
    id: str,
    label: str,
    kind: str,
    *,
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
    ends = usual or (low, high)
    return Input(
        id=id, label=label, kind=kind, default=default, low=parse(low, kind), high=parse(high, kind),
        usual_low=parse(ends[0], kind), usual_high=parse(ends[1], kind), help=help, measure=measure,
        optional=optional, when=when, role=role,
    )


def count(
    id: str,
    label: str,
    *,
    default: int,
    low: int,
    high: int,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare an input that is a whole number of things."""
    return Input(id=id, label=label, kind=COUNT, default=str(default), low=low, high=high, help=help,
                 when=when, role=role)


def date(
    id: str, label: str, *, default: str, low: str, high: str, help: str = "", role: str = FACT,
    optional: bool = False,
) -> Input:
    """Declare an input that is a date, typed as year-month-day."""
    return Input(id=id, label=label, kind=DATE, default=default, low=parse_date(low), high=parse_date(high),
                 help=help, role=role, optional=optional)


def choice(
    id: str,
    label: str,
    choices: tuple[tuple[str, str], ...],
    *,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    default: str | None = None,
    role: str = FACT,
) -> Input:
    """Declare a choice from (id, label) pairs; the first is the default unless another is named."""
    options = tuple([Choice(option[0], option[1]) for option in choices])
    return Input(id=id, label=label, kind=CHOICE, default=default or options[0].id, help=help,
                 choices=options, when=when, role=role)


def names_of(table: "Iterable[Any]") -> tuple[tuple[str, str], ...]:
    """Return the choices among a table's rows: the id of each, and its name begun with a capital."""
    return tuple([(each.id, each.name[0].upper() + each.name[1:]) for each in table])


def switch(
    id: str,
    label: str,
    *,
    default: bool = False,
    help: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
    figure: str = "",
) -> Input:
    """Declare something that is either on or off."""
    return Input(id=id, label=label, kind=SWITCH, default="yes" if default else "no", help=help, when=when,
                 role=role, figure=figure)


def rows(
    id: str,
    label: str,
    columns: tuple[Input, ...],
    *,
    default: str,
    fewest: int,
    most: int,
    help: str = "",
    measure: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
    role: str = FACT,
) -> Input:
    """Declare a small table of quantities and choices: cells apart by `:`, rows by `;`."""
    return Input(id=id, label=label, kind=ROWS, default=default, low=fewest, high=most, help=help,
                 measure=measure, columns=columns, optional=fewest == 0, when=when, role=role)


NOT_KNOWN = Choice("", "Not known")


def lacked(inputs: tuple[Input, ...], when: tuple[str, tuple[str, ...]]) -> tuple[Input, ...]:
    """Return inputs where every fact may be left empty; they matter by a choice unless they have their own.

    A choice among them offers, behind its others, not to choose.
    """
    return tuple([
        Input(id=each.id, label=each.label, kind=each.kind, default=each.default, help=each.help,
              role=each.role, low=0 if each.kind == ROWS else each.low, high=each.high,
              usual_low=each.usual_low, usual_high=each.usual_high, measure=each.measure,
              choices=each.choices + (NOT_KNOWN,) if each.choices else (), columns=each.columns,
              optional=each.optional or each.role == FACT, when=each.when or when)
        for each in inputs])


def asked_when(inputs: tuple[Input, ...], when: tuple[str, tuple[str, ...]]) -> tuple[Input, ...]:
    """Return inputs that matter by a choice, unless they have their own."""
    return tuple([
        Input(id=each.id, label=each.label, kind=each.kind, default=each.default, help=each.help,
              role=each.role, low=each.low, high=each.high, usual_low=each.usual_low,
              usual_high=each.usual_high, measure=each.measure, choices=each.choices, columns=each.columns,
              optional=each.optional, when=each.when or when)
        for each in inputs])


def result(id: str, label: str, kind: str, help: str = "") -> Result:
    """Declare a result."""
    return Result(id, label, kind, help)


def inputs_of(calculator: Calculator) -> list[Input]:
    """Return all inputs of a calculator in the order of its form."""
    return [each for part in calculator.groups for each in part.inputs]


def folds_of(calculator: Calculator) -> list[Fold]:
    """Return what a form folds away, in its order: all that the job does not need first."""
    found: list[Fold] = []
    if calculator.first is None:
        return found
    for part in calculator.groups:
        behind = tuple([each for each in part.inputs if each.id not in calculator.first])
        shared = part.under != "" and len(found) > 0 and found[-1].groups[-1].under == part.under
        if len(behind) < len(part.inputs):
            found += [Fold("More", (part,), behind)] if behind else []
        elif shared:
            found[-1] = Fold(part.under, found[-1].groups + (part,), found[-1].inputs + behind)
        else:
            found.append(Fold(part.title, (part,), behind))
    return found
