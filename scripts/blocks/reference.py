"""The generated parts of a calculator's page below its form: inputs, results, example, sources."""

import shlex

from calc import (
    bibliography,
    dates,
    declaring,
    quantities,
    reading,
)
from scripts.blocks.form import in_both_systems, in_the_readers_units, span, unit_words, usual_range
from scripts.blocks.tree import UNSEARCHED, Node, element


def inputs_table(calculator: declaring.Calculator) -> Node:
    """Return every input with its bounds, the usual range and how to measure it."""
    rows = []
    for each in declaring.inputs_of(calculator):
        rows.append(_input_row(each, each.label))
        rows += [_input_row(column, each.label + ": " + column.label) for column in each.columns]
    return _table(("Input", "Accepted", "What it is, how to measure it"), rows)


def _input_row(each: declaring.Input, label: str) -> list[list[Node]]:
    about = " ".join(text for text in (each.help, each.measure) if text)
    empty = each.optional and each.kind != declaring.ROWS
    may_be_empty: list[Node] = [" May be left empty."] if empty else []
    return [[label], [*_accepted(each), ".", *usual_range(each), *may_be_empty], in_the_readers_units(about)]


def _accepted(each: declaring.Input) -> list[Node]:
    if each.kind == declaring.CHOICE:
        return [", ".join(option.label for option in each.choices)]
    if each.kind == declaring.SWITCH:
        return ["yes or no"]
    if each.kind == declaring.COUNT:
        return [str(each.low) + " to " + str(each.high)]
    if each.kind == declaring.DATE:
        return [" to ".join(dates.show_date(int(end)) for end in each.bounds())]
    if each.kind == declaring.ROWS:
        return [str(each.low) + " to " + str(each.high) + " rows"]
    return in_both_systems(*(span(*each.bounds(), each.kind, system) for system in quantities.SYSTEMS))




def results_table(calculator: declaring.Calculator) -> Node:
    """Return every result with its unit and its name in the command line's JSON."""
    rows: list[list[list[Node]]] = [
        [[each.label, *unit_words(each.kind)], [each.help], [element("code", {}, *_breakable(each.id))]]
        for each in calculator.results
    ]
    return _table(("Result", "What it is", "Name in JSON"), rows)


def _breakable(name: str) -> list[Node]:
    """Return a name that a narrow column may break behind its underscores."""
    first, *rest = name.split("_")
    return [first, *(part for word in rest for part in ("_", element("wbr"), word))]


def _table(heads: tuple[str, ...], rows: list[list[list[Node]]]) -> Node:
    return element(
        "div", {"class": "rb-reference", **UNSEARCHED},
        element("table", {},
                element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head)
                                                         for head in heads))),
                element("tbody", {}, *(element("tr", {}, *(element("td", {}, *cell) for cell in row))
                                       for row in rows))),
    )


def example(calculator: declaring.Calculator, headline: list[Node]) -> Node:
    """Return the worked example: the invented bow, its answer, and the same on the command line."""
    return element(
        "div", {"class": "rb-example", **UNSEARCHED},
        element("p", {}, calculator.example),
        element("p", {}, element("strong", {}, *headline)),
        element("p", {}, "The same on the command line:"),
        element("pre", {}, element("code", {}, example_command(calculator))),
    )


def example_command(calculator: declaring.Calculator) -> str:
    """Return the command that works out the example."""
    chosen = {each.id: each.default for each in declaring.inputs_of(calculator)}
    options = [shlex.join(["--" + each.id.replace("_", "-"), each.default])
               for each in declaring.inputs_of(calculator) if reading.matters(each, chosen) and each.default]
    return " \\\n    ".join(["python -m calc " + calculator.id, *options])


def sources_list(calculator: declaring.Calculator) -> Node:
    """Return the sources a calculator leans on."""
    return _sources([bibliography.find(key) for key in calculator.sources], anchored=False)


def cited_list(keys: list[str]) -> Node:
    """Return the sources with these keys, in the order given.

    Raises:
        ValueError: no source has one of the keys.
    """
    return _sources([bibliography.find(key) for key in keys], anchored=False)


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
