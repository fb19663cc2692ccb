"""A calculator's inputs from a record: what is known, from when, what is stale, what is missing."""

from calc.record import derive, sheets
from calc.record.bindings import BOUND, MAPPED
from calc.record.derived import DERIVED
from calc.record.derived_fact import Asked, Told
from calc.record.entries import Entry
from calc.record.errors import error_in
from calc.record.fold import State
from calc.record.moments import short_day

DERIVED_SHEET = "derived"
SHOP_SHEET = "shop."
PHOTOGRAPH = "photograph "
"""What the source of an entry begins with whose figures were read in a picture."""


class Filled:
    """What a record knows of one input.

    text: as a form takes it; empty where the record does not know. entry: that it comes from. stale: whether
    a deed has come since. said: how it came about, where it was worked out. how: to learn it.
    """

    def __init__(self, input: str, fact: str, told: Told, how: str):
        self.input = input
        self.fact = fact
        self.text = told.text
        self.entry: Entry | None = told.entry
        self.stale = told.stale
        self.said = told.said
        self.how = how

    @property
    def is_of_the_shop(self) -> bool:
        """Whether it holds for every bow on the bench; unknown, the usual figure stands for it."""
        return self.fact.startswith(SHOP_SHEET)


def fill(state: State, calculator: str, chosen: dict[str, str] | None = None) -> list[Filled]:
    """Return what a record knows of each bound input of a calculator.

    Args:
        state: of a record.
        calculator: id.
        chosen: texts that stand on the form by input, as far as they are known: some facts depend on a
            choice made there.

    Returns:
        one a bound input, in the order of the bindings.
    """
    return [_filled(state, calculator, input, fact, chosen or {})
            for input, fact in BOUND.get(calculator, ())]


def _filled(state: State, calculator: str, input: str, fact: str, chosen: dict[str, str]) -> Filled:
    sheet, _, name = fact.partition(".")
    if sheet == DERIVED_SHEET:
        known = DERIVED[name]
        return Filled(input, fact, _with_source(known.told(state, Asked(input, chosen)), ""), known.how)
    found = state.latest(fact)
    told = Told()
    if found is not None:
        text = _mapped(calculator, input, found.text)
        told = Told(text, found.entry, derive.is_stale(state, fact)) if text else Told()
    asked = sheets.input_of(fact)
    return Filled(input, fact, _with_source(told, asked.label if asked else ""), how_to_know(fact))


def _with_source(told: Told, label: str) -> Told:
    """Return what is told of a fact with where it was read, if that was in a photograph, and its error."""
    if told.entry is None or not told.entry.source.startswith(PHOTOGRAPH) or told.entry.sheet == "answer":
        return told
    error = error_in(told.entry.note, label) if label else ""
    said = (told.said + ", from" if told.said else "From") + " a photograph of " + short_day(told.entry.at)
    return Told(told.text, told.entry, told.stale, said + (", ± " + error if error else ""))


def _mapped(calculator: str, input: str, text: str) -> str:
    """Return a fact's text in the words of a calculator that has other words for it."""
    for known, asked, words in MAPPED:
        if (known, asked) == (calculator, input):
            return dict(words).get(text, "")
    return text


def how_to_know(fact: str) -> str:
    """Return how a fact of a sheet comes to be known.

    Args:
        fact: such as `reading.brace`.

    Returns:
        a sentence that names the sheet and the field, with how it is measured.
    """
    sheet, asked = sheets.find(fact.partition(".")[0]), sheets.input_of(fact)
    if sheet is None or asked is None:
        return ""
    words: str = " ".join([each for each in (asked.help, asked.measure) if each])
    where: str = "On the sheet “" + sheet.title + "” as “" + asked.label + "”"
    return where + (": " + words if words else ".")
