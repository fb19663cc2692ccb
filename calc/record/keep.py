"""Keeping an answer in a bow's record, and what was typed for it as readings."""

from calc.quantities import INCH, show_number
from calc.record import sheets
from calc.record.bindings import BOUND, ERROR_OF, GOES_WITH, MAPPED, READ_OFF
from calc.record.declare import DEED, Sheet
from calc.record.entries import MOST_TEXT
from calc.record.errors import note_of
from calc.record.fill import fill
from calc.record.fold import State
from calc.record.values import value_of

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from calc.record.fill import Filled

PAIR_FACTS = ("pairs", "more_pairs", "last_pairs")
"""Facts of a kept answer that share its figures, since one holds only so many letters."""

READ_AS = (("derived.weight_now", "reading.weight"), ("derived.draw_now", "reading.at_draw"))
"""Facts that a record works out, and the ones that they are written down as."""

WEIGHT, DRAW = "reading.weight", "reading.at_draw"

PLAIN = "-"
"""The error of a word that goes with a figure: it has none."""

NEVER = ("answer", "told", "handover")
"""Sheets that no calculator fills."""


class TooLong(ValueError):
    """An answer has more letters than a record keeps."""


class Fresh:
    """A figure that was typed for a calculator and that the record does not know so.

    input: of the calculator. sheet, name, label: of the fact. text: as typed. was: in the record. error: of a
    figure that the answer read off the bow, half of its 95 % range; empty where it was typed.
    """

    def __init__(self, input: str, fact: str, label: str, text: str, was: str, error: str = ""):
        self.input = input
        self.error = error
        self.sheet, _, self.name = fact.partition(".")
        self.label = label
        self.text = text
        self.was = was


def answer_facts(
    calculator: str, figures: list[str], origins: "dict[str, str]", said: "list[tuple[str, str]]"
) -> list[tuple[str, str]]:
    """Return the facts of an entry that keeps an answer as it was given.

    Args:
        calculator: id.
        figures: each input as typed, `name=text`, as a link says it.
        origins: by input: `typed`, `not known`, or the id of the entry that it comes from.
        said: further facts of the sheet, such as the headline; empty ones are left out.

    Returns:
        (name, text).

    Raises:
        TooLong: there are more letters than a record keeps.
    """
    texts = [""]
    for one in figures:
        if len(texts[-1]) + 1 + len(one) > MOST_TEXT:
            texts.append("")
        texts[-1] += ("&" if texts[-1] else "") + one
    if len(texts) > len(PAIR_FACTS):
        raise TooLong("this answer is too long to be kept")
    facts = ([("calculator", calculator)] + list(zip(PAIR_FACTS, texts)) + [("origin", _origins(origins))]
             + said)
    kept = [(name, text) for name, text in facts if text]
    if any(len(text) > MOST_TEXT for _, text in kept):
        raise TooLong("this answer is too long to be kept")
    return kept


def _origins(origins: "dict[str, str]") -> str:
    by_origin: dict[str, list[str]] = {}
    for name in sorted(origins):
        by_origin.setdefault(origins[name], []).append(name)
    return "; ".join([origin + ": " + ", ".join(by_origin[origin]) for origin in sorted(by_origin)])


def origins_of(names: list[str], filled: "dict[str, Filled]") -> "dict[str, str]":
    """Return where each figure of an answer came from.

    Args:
        names: of the inputs.
        filled: what the record told, by input; what is not among it was typed.

    Returns:
        by input, as `answer_facts` takes it.
    """
    found = {}
    for name in names:
        told = filled.get(name)
        found[name] = "typed" if told is None else told.entry.id if told.entry else "not known"
    return found


def fresh(
    state: State, calculator: str, typed: list[tuple[str, str]], chosen: dict[str, str]
) -> list[Fresh]:
    """Return which of the figures typed for a calculator are new to a record and can be written into it.

    A figure that the record works out from others is not written, but for draw weight: it becomes a reading
    with its draw. What a deed changes is no reading and is left to its own sheet.

    Args:
        state: of a record.
        calculator: id.
        typed: (input, text with its unit).
        chosen: all that stands on the form, by input.

    Returns:
        in the order of the bindings.
    """
    texts = dict(typed)
    found = []
    for each in fill(state, calculator, chosen):
        fact = dict(READ_AS).get(each.fact, each.fact)
        asked = sheets.input_of(fact)
        sheet = sheets.find(fact.partition(".")[0])
        typed_text = texts.get(each.input, "")
        text = _written(calculator, each.input, typed_text) if typed_text != each.text else ""
        if not text or asked is None or sheet is None or not _is_kept(sheet):
            continue
        if not is_same(fact, text, each.text):
            found.append(Fresh(each.input, fact, asked.label, text, each.text))
    return _with_draw(found, {fact: chosen.get(input, "") for input, fact in BOUND.get(calculator, ())})


def read_off(state: State, calculator: str, results: "list[tuple[str, object]]", units: str) -> list[Fresh]:
    """Return what an answer read off the bow that is new to a record, each with its error.

    Args:
        state: of a record.
        calculator: id.
        results: of the answer, in SI.
        units: unit system of the texts.

    Returns:
        in the order of the bindings.
    """
    told = dict(results)
    found = []
    for result, fact in READ_OFF.get(calculator, ()):
        value, error = told.get(result), told.get(dict(ERROR_OF).get(result, result + "_error"))
        if value is None or not isinstance(error, float):
            continue
        text = value.replace("; ", ";") if isinstance(value, str) else _length_text(value, units)
        found += _new(state, fact, text, _length_text(error, units))
        for other, also, word in GOES_WITH:
            if other == fact and found and found[-1].sheet + "." + found[-1].name == fact:
                found += _new(state, also, word, PLAIN)
    return found


def _new(state: State, fact: str, text: str, error: str) -> list[Fresh]:
    """Return a fact that was read off, if it says something new."""
    asked, known = sheets.input_of(fact), state.latest(fact)
    was = known.text if known is not None else ""
    if asked is None or is_same(fact, text, was):
        return []
    return [Fresh("", fact, asked.label, text, was, error)]


def _length_text(value: object, units: str) -> str:
    if not isinstance(value, float):
        raise ValueError("a length that was read off must be a number")
    return show_number(value * 1000, 1) + " mm" if units == "metric" else show_number(value / INCH, 3) + " in"


def errors_note(readings: list[Fresh]) -> str:
    """Return what stands below an entry whose figures were read off: how far each may be out."""
    return note_of([(each.label, each.error) for each in readings if each.error != PLAIN])


def _with_draw(found: list[Fresh], on_form: dict[str, str]) -> list[Fresh]:
    """Return figures in which a weight has its draw, or in which neither stands."""
    facts = [each.sheet + "." + each.name for each in found]
    if WEIGHT in facts and DRAW not in facts:
        draw = on_form.get("derived.draw_now", "")
        asked = sheets.input_of(DRAW)
        if draw and asked is not None:
            return found + [Fresh("", DRAW, asked.label, draw, draw)]
    if (WEIGHT in facts) == (DRAW in facts):
        return found
    return [each for each in found if each.sheet + "." + each.name not in (WEIGHT, DRAW)]


def _is_kept(sheet: Sheet) -> bool:
    return sheet.lasts != DEED and sheet.id not in NEVER


def _written(calculator: str, input: str, text: str) -> str:
    """Return a form's text in the words of the record; empty where one word there stands for several."""
    for known, asked, words in MAPPED:
        if (known, asked) == (calculator, input):
            own = [each for each, theirs in words if theirs == text]
            return str(own[0]) if len(own) == 1 else ""
    return text


def is_same(fact: str, text: str, other: str) -> bool:
    """Return whether two texts of a fact say the same, perhaps in other words or units.

    Args:
        fact: such as `reading.brace`; of one that stands in no sheet only the texts are compared.
        text: as typed.
        other: as typed; empty says nothing.

    Returns:
        true or false.
    """
    if text.strip() == other.strip():
        return True
    if not other or sheets.input_of(fact) is None:
        return False
    try:
        return value_of(fact, text) == value_of(fact, other)
    except ValueError:
        return False


def refused(each: Fresh) -> str:
    """Return why a record does not take a figure; empty where it does."""
    try:
        value_of(each.sheet + "." + each.name, each.text)
    except ValueError as error:
        return str(error)
    return ""
