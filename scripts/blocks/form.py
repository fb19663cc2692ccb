"""A calculator as a section of HTML: its form, and the worked example's outcome.

The page's script drives exactly this markup; tests hold it.
"""

import copy
import json
import re
from collections.abc import Mapping
from typing import Any

from calc import (
    declaring,
    outcome,
    quantities,
    reading,
)
from calc.former import FORMER
from calc.record.declare import LONGEST_NOTE, NOTE
from calc.report import TO_ROOT
from scripts.blocks import signs
from scripts.blocks.tree import UNSEARCHED, Node, element

KEYBOARD_OF_KIND = {"length": None, "thickness": None, declaring.DATE: None,
                    declaring.COUNT: "numeric"}
"""Fractions, feet and dates need the full keyboard; everything else gets the one with digits."""

IMPERIAL = "in|ft|lb|lb/ft3|gr|mil|Mpsi|°F"
METRIC = "mm|m|kg|g|g/cm3|kN|N|GPa|°C"
UNIT = f"(?:{IMPERIAL}|{METRIC})"
SPAN = r"-?\d[\d./ ]*(?: to -?\d[\d./ ]*)?"
AMOUNT_TWICE = re.compile(rf"(?P<first>{SPAN} ?{UNIT}) \((?P<second>{SPAN} ?{UNIT})\)")
"""An amount in the units of one system and, in brackets behind it, in those of the other."""

PLACED_BY_MARKING = "pixels"
"""The kind of a column that a picture's marks fill."""


def calculator_section(calculator: declaring.Calculator, outcome: Mapping[str, Any],
                       in_chapter: bool = False) -> Node:
    """Return the whole calculator, ready to read before any script runs; a chapter goes on soon behind it."""
    answer, behind, cautions = outcome["tree"]
    if in_chapter:
        behind = element(behind[0], {**behind[1], "open": None}, *behind[2:])
    return element(
        "section", {"class": "rb-calculator", "data-calculator": calculator.id,
                    "data-title": calculator.title},
        _sent(calculator),
        _form(calculator),
        element("div", {"class": "rb-outcome", "role": "region", "aria-label": "Result",
                        "data-state": "example", **UNSEARCHED,
                        "data-example": _compact({"charts": outcome["charts"], "files": outcome["files"]})},
                answer, behind, cautions),
    )


def _compact(data: object) -> str:
    """Return data as JSON for an attribute: the theme runs scripts of any type when it swaps pages."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _form(calculator: declaring.Calculator) -> Node:
    return element(
        "form", {"id": calculator.id + "-form", "class": "rb-form", "novalidate": "", "autocomplete": "off"},
        _asleep(),
        element("div", {"class": "rb-problems", "role": "alert", "tabindex": "-1", "hidden": ""}),
        *_groups(calculator),
        _actions(calculator),
        element("div", {"class": "rb-link-square"}),
        element("noscript", {}, element("p", {}, "Live results need JavaScript. Without it this page shows "
                                                 "the worked example.")),
    )


def _sent(calculator: declaring.Calculator) -> Node:
    """Return what stands above the answer to a link that somebody else made."""
    return element(
        "div", {"class": "rb-sent", "hidden": "", **UNSEARCHED},
        element("p", {}, element("strong", {}, "Somebody sent you these figures."), " What follows is "
                "worked out from them here, on your own device; nothing is sent anywhere."),
        element("p", {"class": "rb-sent-work"}, "What it says to take off, sand or drill is for the one who "
                "works on the bow, and for nobody else.")
        if calculator.takes_off else None,
        element("button", {"type": "button", "aria-expanded": "false",
                           "aria-controls": calculator.id + "-form"}),
    )


def _asleep() -> Node:
    """Return what a form says until the page's script has taken it up, and if that never comes."""
    return element(
        "div", {"class": "rb-asleep"},
        element("p", {"class": "rb-wait"},
                "This form is not live yet. Figures and result are those of the worked example."),
        element("p", {"class": "rb-wait-for-link"},
                "This form is not live yet. The figures of the link show once it is."),
        element("p", {"class": "rb-late", "role": "alert"},
                element("span", {"class": "rb-late-failed"},
                        "Part of this page did not arrive, so nothing typed here is worked out. "),
                element("span", {"class": "rb-late-slow"}, "Part of this page is slow to arrive. "),
                element("span", {"class": "rb-late-asked"}, "Fetching it once more… "),
                element("button", {"type": "button", "class": "rb-retry"}, "Try again")),
    )


def changed(each: declaring.Input, **differences: object) -> declaring.Input:
    """Return an input that differs in what is named."""
    other = copy.copy(each)
    for name, value in differences.items():
        setattr(other, name, value)
    return other


def fieldsets(asking: Any) -> list[Node]:
    """Return the groups of inputs of whatever declares such, nothing folded."""
    return [_group(asking, group, ()) for group in asking.groups]


def _groups(calculator: declaring.Calculator) -> list[Node]:
    """Return the groups of a calculator: open what the job needs first, the rest folded."""
    folds = declaring.folds_of(calculator)
    held = dict(zip(folds, reading.held_in_folds(calculator, {})))
    parts = []
    for group in calculator.groups:
        fold = next((each for each in folds if group in each.groups), None)
        if fold is None:
            parts.append(_group(calculator, group, ()))
        elif len(fold.inputs) < len(group.inputs):
            more = _fold(calculator, fold, held[fold], _fields(calculator, fold.inputs))
            parts.append(_group(calculator, group, fold.inputs, more))
        elif group is fold.groups[0]:
            parts.append(_fold(calculator, fold, held[fold],
                               [_group(calculator, each, ()) for each in fold.groups]))
    return parts


def _group(calculator: declaring.Calculator, group: declaring.Group, folded: tuple[declaring.Input, ...],
           more: Node | None = None) -> Node:
    return element(
        "fieldset", {"class": "rb-group"},
        element("legend", {}, group.title),
        element("p", {"class": "rb-note"}, group.note) if group.note else None,
        *_fields(calculator, tuple(each for each in group.inputs if each not in folded)),
        more,
    )


def _fields(calculator: declaring.Calculator, inputs: tuple[declaring.Input, ...]) -> list[Node]:
    return [_field(calculator, each) for each in inputs]


def _fold(calculator: declaring.Calculator, fold: declaring.Fold, held: str, inside: list[Node]) -> Node:
    """Return inputs folded away, with what they hold written on the fold."""
    matter = any(reading.matters(each, _defaults(calculator)) for each in fold.inputs)
    onward = element("button", {"type": "button", "class": "rb-next-step"}, "Next step")
    return element(
        "details", {"class": "rb-fold", "hidden": None if matter else ""},
        element("summary", {}, element("span", {"class": "rb-fold-title"}, fold.title), " ",
                element("span", {"class": "rb-fold-held", **UNSEARCHED}, held), ", ",
                element("span", {"class": "rb-fold-whose", **UNSEARCHED}, "as in the example")),
        element("div", {"class": "rb-folded"}, *inside, onward if calculator.in_steps else None),
    )


def _field(calculator: declaring.Calculator, each: declaring.Input) -> Node:
    parts = FIELD_PARTS.get(each.kind, _text_parts)
    return element("div", {"class": "rb-field", "data-field": each.id, "data-kind": each.kind,
                           **_former(calculator, each), **_condition(calculator, each)},
                   *parts(calculator, each))


def _former(calculator: declaring.Calculator, each: declaring.Input) -> dict[str, str]:
    """Return what a link means by leaving a field out, where that is not what the form shows."""
    text = FORMER.get(calculator.id, {}).get(each.id, each.default)
    return {} if text == each.default else {"data-absent": text}


def _defaults(calculator: declaring.Calculator) -> dict[str, str]:
    return {each.id: each.default for each in declaring.inputs_of(calculator)}


def _condition(calculator: declaring.Calculator, each: declaring.Input) -> dict[str, str | None]:
    """Return what ties a field to a choice; it starts hidden where the example does not need it."""
    if each.when is None:
        return {}
    field, values = each.when
    hidden = None if reading.matters(each, _defaults(calculator)) else ""
    return {"data-when-field": field, "data-when-values": " ".join(values), "hidden": hidden}


def _text_parts(calculator: declaring.Calculator, each: declaring.Input) -> list[Node]:
    key = calculator.id + "-" + each.id
    return [
        element("label", {"for": key}, each.label, *unit_words(each.kind)),
        element("input", {"id": key, "name": each.id, "value": each.default,
                          **_typing(each.kind), **_described(key)}),
        _hint(key, each),
        _error(key),
    ]


def _choice_parts(calculator: declaring.Calculator, each: declaring.Input) -> list[Node]:
    key = calculator.id + "-" + each.id
    return [
        element("label", {"for": key}, each.label),
        element("select", {"id": key, "name": each.id, **_described(key)}, *_options(each, each.default)),
        _hint(key, each),
        _error(key),
    ]


def _options(each: declaring.Input, chosen: str) -> list[Node]:
    return [element("option", {"value": option.id, "selected": "" if option.id == chosen else None},
                    option.label)
            for option in each.choices]


def _switch_parts(calculator: declaring.Calculator, each: declaring.Input) -> list[Node]:
    key = calculator.id + "-" + each.id
    return [
        element("input", {"id": key, "name": each.id, "type": "checkbox", "value": "yes",
                          "checked": "" if each.default == "yes" else None, **_described(key)}),
        element("label", {"for": key}, each.label),
        _hint(key, each),
        *_sign(each),
        _error(key),
    ]


def _sign(each: declaring.Input) -> list[Node]:
    """Return the small picture of what is asked for, folded: it is fetched when a reader unfolds it."""
    if not each.figure:
        return []
    picture = signs.find(each.figure)
    of_what = element("span", {"class": "rb-spoken"}, ": " + each.label)
    return [element(
        "details", {"class": "rb-sign", **UNSEARCHED},
        element("summary", {}, "What it looks like", of_what),
        element("img", {"src": TO_ROOT + signs.address(each.figure), "alt": picture.text, "loading": "lazy",
                        "width": picture.width, "height": picture.height}),
    )]


def _rows_parts(calculator: declaring.Calculator, each: declaring.Input) -> list[Node]:
    key = calculator.id + "-" + each.id
    heads = [element("th", {"scope": "col", "class": "rb-row-number"},
                     element("span", {"class": "rb-spoken"}, "Row"))]
    heads += [element("th", {"scope": "col"}, column.label, *unit_words(column.kind))
              for column in each.columns]
    heads.append(element("th", {"scope": "col"}, element("span", {"class": "rb-spoken"}, "Remove")))
    lines = [_row(each, index, line.split(reading.CELL_MARK))
             for index, line in enumerate(each.default.split(reading.ROW_MARK))]
    parts = [
        element("table", {"class": "rb-rows", "data-field": each.id, "data-fewest": str(each.low),
                          "data-most": str(each.high), **_described(key)},
                element("caption", {}, each.label),
                element("thead", {}, element("tr", {}, *heads)),
                element("tbody", {}, *lines)),
        element("button", {"type": "button", "class": "rb-all-rows"}, "Show all rows"),
        element("button", {"type": "button", "class": "rb-add-row", "hidden": ""}, "Add a row"),
    ]
    if any(column.kind == PLACED_BY_MARKING for column in each.columns):
        parts = [_listed(each, len(lines) if each.default else 0, parts)]
    return [*parts, _hint(key, each), _error(key)]


def _listed(each: declaring.Input, count: int, parts: list[Node]) -> Node:
    """Return a list of marks, folded behind its name and how many there are: it is read, seldom typed."""
    number = element("span", {"class": "rb-list-count"}, str(count))
    return element("details", {"class": "rb-list", **UNSEARCHED},
                   element("summary", {}, each.label + ": ", number, " in the list"), *parts)


def _row(each: declaring.Input, index: int, cells: list[str]) -> Node:
    cells = cells + [""] * (len(each.columns) - len(cells))
    number = str(index + 1)
    return element(
        "tr", {},
        element("th", {"scope": "row", "class": "rb-row-number"}, number),
        *(element("td", dict(zip(("data-imperial", "data-metric"), _names(column))),
                  _cell(each, column, number, text))
          for column, text in zip(each.columns, cells)),
        element("td", {}, element("button", {"type": "button", "class": "rb-remove-row", "hidden": "",
                                             "aria-label": "Remove row " + number}, "Remove")),
    )


def _cell(each: declaring.Input, column: declaring.Input, number: str, text: str) -> Node:
    names = _names(column)
    attributes = {
        "name": each.id + "." + column.id, "data-column": column.id,
        "aria-label": "Row " + number + ", " + names[0],
        "data-name-imperial": names[0], "data-name-metric": names[1],
    }
    if column.kind == declaring.CHOICE:
        return element("select", attributes, *_options(column, text))
    return element("input", {"value": text, **attributes, **_typing(column.kind)})


def _names(column: declaring.Input) -> list[str]:
    """Return a column's name with its unit in words, for each unit system."""
    return [" ".join([column.label, words]).strip() for words in _words(column.kind)]


def _note_parts(calculator: declaring.Calculator, each: declaring.Input) -> list[Node]:
    key = calculator.id + "-" + each.id
    return [
        element("label", {"for": key}, each.label),
        element("input", {"id": key, "name": each.id, "type": "text", "value": each.default,
                          "autocomplete": "off", "maxlength": str(LONGEST_NOTE), **_described(key)}),
        _hint(key, each),
        _error(key),
    ]


FIELD_PARTS = {NOTE: _note_parts, declaring.CHOICE: _choice_parts, declaring.SWITCH: _switch_parts,
               declaring.ROWS: _rows_parts}


def _typing(kind: str) -> dict[str, str | None]:
    """Return the attributes of a text box for a kind: keyboard, and the units of a bare number."""
    if kind in (declaring.COUNT, declaring.DATE):
        imperial = metric = ""
    else:
        imperial, metric = (quantities.shown_unit(kind, system).name for system in quantities.SYSTEMS)
    return {
        "type": "text", "inputmode": KEYBOARD_OF_KIND.get(kind, "decimal"),
        "data-unit-imperial": imperial, "data-unit-metric": metric,
        "autocomplete": "off", "autocapitalize": "off", "spellcheck": "false",
    }


def _described(key: str) -> dict[str, str]:
    return {"aria-describedby": key + "-hint " + key + "-error"}


def _hint(key: str, each: declaring.Input) -> Node:
    return element("p", {"class": "rb-hint", "id": key + "-hint"}, *in_the_readers_units(each.help),
                   *usual_range(each))


def in_the_readers_units(text: str) -> list[Node]:
    """Return a text with amounts such as `1 3/4 in (44 mm)`: a reader sees those of one system."""
    parts, end = [], 0
    for found in AMOUNT_TWICE.finditer(text):
        first, second = found["first"], found["second"]
        pair = (second, first) if re.search(f"(?:{METRIC})$", first) else (first, second)
        parts += [text[end:found.start()], *in_both_systems(*pair)]
        end = found.end()
    return [*parts, text[end:]]


def usual_range(each: declaring.Input) -> list[Node]:
    """Return the usual range as a short sentence, if it is narrower than what is accepted."""
    if not isinstance(each.low, float) or (each.usual_low, each.usual_high) == (each.low, each.high):
        return []
    imperial, metric = (" Usually " + span(*each.usual(), each.kind, system) + "."
                        for system in quantities.SYSTEMS)
    return in_both_systems(imperial, metric, "rb-usual")


def span(low: float, high: float, kind: str, system: str) -> str:
    """Return a range as text, such as `6 in to 9 in`."""
    return _without_spare_zeros(low, kind, system) + " to " + _without_spare_zeros(high, kind, system)


def _without_spare_zeros(value: float, kind: str, system: str) -> str:
    number, space, unit = quantities.show(value, kind, system).partition(" ")
    return (number.rstrip("0").rstrip(".") if "." in number else number) + space + unit


def _error(key: str) -> Node:
    return element("p", {"class": "rb-error", "id": key + "-error", "hidden": ""})


def _words(kind: str) -> tuple[str, str]:
    if kind in (declaring.COUNT, declaring.DATE, declaring.CHOICE, declaring.SWITCH, declaring.ROWS,
                outcome.TEXT):
        return "", ""
    words: tuple[str, str] = quantities.kind_of(kind).words
    return words


def unit_words(kind: str) -> list[Node]:
    """Return the unit of a kind in words, one span a unit system where they differ."""
    imperial, metric = _words(kind)
    if not imperial:
        return []
    return [" ", *in_both_systems(imperial, metric, name="rb-unit")]


def in_both_systems(imperial: str, metric: str, name: str | None = None) -> list[Node]:
    """Return a text for each unit system, of which the page shows one; a single one if they agree."""
    if imperial == metric:
        return [element("span", {"class": name}, imperial)]
    return [element("span", {"class": name, "data-units": system}, text)
            for system, text in zip(quantities.SYSTEMS, (imperial, metric))]


def _actions(calculator: declaring.Calculator) -> Node:
    return element(
        "div", {"class": "rb-actions"},
        element("fieldset", {"class": "rb-units"}, element("legend", {}, "Units"),
                *(_unit_radio(calculator, system, system == quantities.SYSTEMS[0])
                  for system in quantities.SYSTEMS)),
        element("button", {"type": "button", "class": "rb-copy"}, "Copy link"),
        element("button", {"type": "button", "class": "rb-show-square"}, "Show a QR code"),
        element("button", {"type": "button", "class": "rb-print", "disabled": ""}, "Print"),
        element("button", {"type": "button", "class": "rb-reset"}, "Start again from the example"),
        element("span", {"class": "rb-saved", "role": "status"}),
    )


def _unit_radio(calculator: declaring.Calculator, system: str, checked: bool) -> Node:
    key = calculator.id + "-units-" + system
    return element(
        "label", {"for": key},
        element("input", {"id": key, "type": "radio", "name": "units", "value": system,
                          "checked": "" if checked else None}),
        " " + system.capitalize(),
    )
