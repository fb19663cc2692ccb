"""The generated parts of a calculator's page below its form: inputs, results, example, sources."""

import shlex

from calc import bibliography, fields, quantities
from scripts.blocks.form import in_both_systems, span, unit_words
from scripts.blocks.tree import Node, element


def inputs_table(calculator: fields.Calculator) -> Node:
    """Return every input with its bounds, the usual range and how to measure it."""
    rows = []
    for each in fields.inputs_of(calculator):
        rows.append(_input_row(each, each.label))
        rows += [_input_row(column, each.label + ": " + column.label) for column in each.columns]
    return _table(("Input", "Accepted", "Usual", "What it is, how to measure it"), rows)


def _input_row(each: fields.Input, label: str) -> list[list[Node]]:
    about = " ".join(text for text in (each.help, each.measure) if text)
    optional: list[Node] = [" (may be left empty)"] if each.optional else []
    return [[label, *optional], _accepted(each), _usual(each), [about]]


def _accepted(each: fields.Input) -> list[Node]:
    if each.kind == fields.CHOICE:
        return [", ".join(option.label for option in each.choices)]
    if each.kind == fields.SWITCH:
        return ["yes or no"]
    if each.kind == fields.COUNT:
        return [str(each.low) + " to " + str(each.high)]
    if each.kind == fields.ROWS:
        return [str(each.low) + " to " + str(each.high) + " rows"]
    return _both_spans(each.low, each.high, each.kind)


def _usual(each: fields.Input) -> list[Node]:
    if not isinstance(each.usual_low, float):
        return [""]
    return _both_spans(each.usual_low, each.usual_high, each.kind)


def _both_spans(low: float, high: float, kind: str) -> list[Node]:
    return in_both_systems(*(span(low, high, kind, system) for system in quantities.SYSTEMS))


def results_table(calculator: fields.Calculator) -> Node:
    """Return every result with its unit and its name in the command line's JSON."""
    rows = [[[each.label, *unit_words(each.kind)], [element("code", {}, each.id)], [each.help]]
            for each in calculator.results]
    return _table(("Result", "Name in JSON", "What it is"), rows)


def _table(heads: tuple[str, ...], rows: list[list[list[Node]]]) -> Node:
    return element(
        "div", {"class": "rb-reference"},
        element("table", {},
                element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head)
                                                         for head in heads))),
                element("tbody", {}, *(element("tr", {}, *(element("td", {}, *cell) for cell in row))
                                       for row in rows))),
    )


def example(calculator: fields.Calculator, headline: str) -> Node:
    """Return the worked example: the invented bow, its answer, and the same on the command line."""
    return element(
        "div", {"class": "rb-example"},
        element("p", {}, calculator.example),
        element("p", {}, element("strong", {}, headline)),
        element("p", {}, "The same on the command line:"),
        element("pre", {}, element("code", {}, example_command(calculator))),
    )


def example_command(calculator: fields.Calculator) -> str:
    """Return the command that works out the example."""
    words = ["python", "-m", "calc", calculator.id]
    for each in fields.inputs_of(calculator):
        if each.when is None and each.default:
            words += ["--" + each.id.replace("_", "-"), each.default]
    return shlex.join(words)


def sources_list(calculator: fields.Calculator) -> Node:
    """Return the sources a calculator leans on."""
    return _sources([bibliography.find(key) for key in calculator.sources], anchored=False)


def bibliography_list() -> Node:
    """Return every source, each with an anchor of its own."""
    return _sources(list(bibliography.SOURCES), anchored=True)


def _sources(sources: list[bibliography.Source], anchored: bool) -> Node:
    return element(
        "ul", {"class": "rb-sources"},
        *(element("li", {"id": "source-" + each.key if anchored else None},
                  each.text + " ", element("em", {}, "(" + each.status + ")"))
          for each in sources),
    )
