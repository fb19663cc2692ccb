"""An outcome as a page element tree: the one rendering of results.

A node is a text or a list `[tag, {attribute: text}, child, ...]`. The build
writes the tree of the worked example into the page; the browser makes the same
elements from the tree of a live answer. Nothing typed by a reader reaches an
attribute.
"""

import math

from calc.declaring import Calculator, Result
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    Amount,
    Axis,
    Chart,
    Check,
    Drawing,
    File,
    Link,
    Outcome,
    Sentence,
    Table,
    say,
    write,
    write_cell,
)
from calc.quantities import raised, shown_unit

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

TO_ROOT = "../../"
"""From a page with a calculator to the root of the site: all of them lie two folders deep."""

EXPLAINING = ("between", "causes", "contributions", "conventions", "feel", "figures", "foretold-tiller",
              "foretold-weight", "humidities", "limits", "line", "model", "papers", "readings",
              "remedies-besides", "respirators", "text")
"""Tables that say why, or what else: nobody works from them, and a print for the bench has none of them."""

BEHIND = "Drawings, tables and what this assumes"
"""What an answer is made from: open on a calculator's own page, folded within a chapter."""

LEVEL_WORDS = {"ok": "In order", "watch": "Watch", "stop": "Stop"}


def outcome_tree(calculator: Calculator, outcome: Outcome, system: str) -> list[object]:
    """Return the element tree of an outcome in a unit system: answer, what is behind it, cautions."""
    told: list[object] = ["div", {"class": "rb-told"},
                          ["p", {"class": "rb-headline"}] + _told(outcome.headline, system, links=False),
                          checks_tree(outcome.checks, system)]
    told += _values(calculator, outcome, system)
    nodes: list[object] = ["details", {"class": "rb-behind", "open": ""}, ["summary", {}, BEHIND]]
    for drawing in outcome.drawings:
        nodes.append(drawing_tree(drawing, system))
    for chart in outcome.charts:
        nodes.append(chart_figure(chart, system))
    for table in outcome.tables:
        nodes.append(table_tree(table, system))
    nodes += [_file(each) for each in outcome.files]
    nodes.append(_listed("rb-assumptions", "What this assumes", outcome.assumptions, system))
    cautions = _listed("rb-cautions", "Before you act on it", calculator.cautions, system)
    return [["div", {"class": "rb-answer"}, told], nodes, cautions]


def checks_tree(checks: tuple[Check, ...], system: str) -> list[object]:
    """Return checks as a list, the gravest first."""
    items: list[object] = ["ul", {"class": "rb-checks"}]
    for each in in_order_of_weight(checks):
        items.append(["li", {"class": "rb-check rb-" + each.level},
                      ["strong", {}, LEVEL_WORDS[each.level]], " "] + _told(each.text, system))
    return items


def _told(text: Sentence | str, system: str, links: bool = True) -> list[object]:
    """Return a sentence as nodes: its texts, its amounts, which no line breaks, and its links as elements."""
    if isinstance(text, str):
        return [text]
    parts = text.template.split("{}")
    nodes: list[object] = []
    words = parts[0]
    for index, each in enumerate(text.amounts):
        if isinstance(each, Link) and links:
            nodes += [words, ["a", {"href": TO_ROOT + each.page}, each.text]]
            words = ""
        elif isinstance(each, Amount) and each.kind != TEXT:
            nodes += [words, _unbroken(write(each, system))]
            words = ""
        else:
            words += write(each, system)
        words += parts[index + 1]
    nodes.append(words)
    return nodes


def _unbroken(amount: str) -> object:
    return ["span", {"class": "rb-amount"}, raised(amount)] if " " in amount else amount


def in_order_of_weight(checks: tuple[Check, ...]) -> list[Check]:
    """Return checks with the gravest first."""
    return ([each for each in checks if each.level == STOP]
            + [each for each in checks if each.level not in (STOP, OK)]
            + [each for each in checks if each.level == OK])


def _values(calculator: Calculator, outcome: Outcome, system: str) -> list[object]:
    """Return the results that somebody works by, in the order of use, and behind them all others."""
    tiles: dict[str, list[object]] = {}
    first = ""
    for declared, value in declared_values(calculator, outcome):
        if not declared.goes_on:
            first = declared.id
            tiles[first] = []
        if value is not None:
            tiles[first].append(_tile(declared, value, system))
    others = [each.id for each in calculator.results if each.id not in calculator.acted_on]
    lists: list[object] = []
    for name, ids in (("rb-values rb-values--acted", calculator.acted_on), ("rb-values", others)):
        found: list[object] = []
        for id in ids:
            found += tiles.get(id, [])
        if found:
            lists.append(["dl", {"class": name}] + found)
    return lists


def _tile(declared: Result, value: float | str, system: str) -> list[object]:
    text = write(Amount(declared.kind, value, None), system)
    attributes = {"data-result": declared.id}
    if declared.goes_on:
        attributes["class"] = "rb-goes-on"
    return ["div", attributes, ["dt", {}, declared.label],
            ["dd", {}, text if declared.kind == TEXT else _unbroken(text)]]


def declared_values(calculator: Calculator, outcome: Outcome) -> list[tuple[Result, float | str | None]]:
    """Return (declared result, value) in declared order.

    Raises:
        ValueError: a declared result is missing, or a number is not finite.
    """
    found = []
    given = dict(outcome.values)
    for declared in calculator.results:
        if declared.id not in given:
            raise ValueError(calculator.id + " gave no " + declared.id)
        value = given[declared.id]
        if declared.kind != TEXT and value is not None and not _finite(value):
            raise ValueError(declared.label + " has no finite value for these inputs")
        found.append((declared, value))
    return found


def _finite(value: float | str) -> bool:
    return value == value and value not in (math.inf, -math.inf)


def drawing_tree(drawing: Drawing, system: str) -> list[object]:
    """Return a drawing as an SVG figure; texts in it may be sentences."""
    svg: list[object] = ["svg", {"viewBox": "0 0 " + str(drawing.width) + " " + str(drawing.height),
                                 "role": "img", "class": "rb-svg"},
                         ["title", {}, say(drawing.title, system)],
                         ["desc", {}, say(drawing.description, system)]]
    svg += [_shape(each, system) for each in drawing.shapes]
    return ["figure", {"class": "rb-drawing", "data-drawing": drawing.id}, svg,
            ["figcaption", {}, say(drawing.title, system)]]


def _shape(shape: object, system: str) -> object:
    if isinstance(shape, (str, Sentence)):
        return say(shape, system)
    if not isinstance(shape, list):
        raise ValueError("a drawing holds shapes and texts only")
    node: list[object] = [shape[0], shape[1]]
    node += [_shape(child, system) for child in shape[2:]]
    return node


def chart_figure(chart: Chart, system: str) -> list[object]:
    """Return the place of a chart, with its numbers as a table."""
    title = say(chart.title, system)
    return ["figure", {"class": "rb-chart", "data-chart": chart.id},
            ["figcaption", {}, title],
            ["div", {"class": "rb-plot"}],
            ["details", {"class": "rb-data-table"}, ["summary", {}, "Figures of this chart"],
             _chart_table(chart, title, system)]]


def _chart_table(chart: Chart, title: str, system: str) -> list[object]:
    body: list[object] = ["tbody", {}]
    cells: dict[float, list[object]] = {}
    for line in chart.lines:
        name = ["th", {"scope": "row"}, line.label]
        for x, y in zip(line.xs, line.ys):
            if x not in cells:  # lines share most of their xs
                cells[x] = _figure(chart.x, x, system)
            body.append(["tr", {}, name, cells[x], _figure(chart.y, y, system)])
    head = ["thead", {}, ["tr", {}, ["th", {"scope": "col"}, "Line"],
                          ["th", {"scope": "col"}, chart.x.label], ["th", {"scope": "col"}, chart.y.label]]]
    return _scrolling(title, ["table", {"class": "rb-figures"}, head, body])


def _figure(axis: Axis, value: float, system: str) -> list[object]:
    return ["td", {}, raised(write(Amount(axis.kind, value, None), system))]


def table_tree(table: Table, system: str) -> list[object]:
    """Return a table with its caption, in a region that scrolls by itself."""
    caption = say(table.caption, system)
    head: list[object] = ["tr", {}]
    head += [["th", {"scope": "col"}, column.label] for column in table.columns]
    body: list[object] = ["tbody", {}]
    for row in table.rows:
        cells: list[object] = ["tr", {}]
        for index, column in enumerate(table.columns):
            text = raised(write_cell(column, row[index], system))
            is_amount = isinstance(row[index], Amount) or column.kind != TEXT
            shown = text if isinstance(row[index], str) or not is_amount else _unbroken(text)
            cells.append(["th", {"scope": "row"}, shown] if index == 0 else ["td", {}, shown])
        body.append(cells)
    kind = "rb-figures rb-why" if table.id in EXPLAINING else "rb-figures"
    return _scrolling(caption, ["table", {"class": kind}, ["caption", {}, caption],
                                ["thead", {}, head], body])


def _file(file: File) -> list[object]:
    """Return the place of a file's link; the page gives it the file itself, which travels beside the tree."""
    return ["p", {}, ["a", {"class": "rb-file", "data-file": file.name}, file.label]]


def _scrolling(label: str, table: list[object]) -> list[object]:
    return ["div", {"class": "rb-table", "role": "region", "tabindex": "0", "aria-label": label}, table]


def _listed(name: str, title: str, texts: tuple[Sentence | str, ...], system: str) -> list[object]:
    items: list[object] = ["ul", {}]
    items += [["li", {}] + _told(text, system, links=False) for text in texts]
    return ["section", {"class": name}, ["p", {"class": "rb-subhead"}, title], items]


def chart_data(chart: Chart, system: str) -> dict[str, object]:
    """Return a chart's numbers in the units a system shows, for the plotting library."""
    lines = []
    for line in chart.lines:
        lines.append({"label": line.label, "style": line.style,
                      "xs": _plotted(line.xs, chart.x, system), "ys": _plotted(line.ys, chart.y, system)})
    return {"id": chart.id, "title": say(chart.title, system),
            "x": _axis(chart.x, system), "y": _axis(chart.y, system), "lines": lines}


def _plotted(values: "Sequence[float]", axis: Axis, system: str) -> list[float]:
    """Return figures in the unit that a system shows on an axis."""
    unit = shown_unit(axis.kind, system)
    shown = [(value - unit.offset) / unit.factor for value in values]
    for number in shown:
        if not _finite(number):
            raise ValueError("a chart holds a number that is not finite")
    return shown


def _axis(axis: Axis, system: str) -> dict[str, str]:
    unit = shown_unit(axis.kind, system).name
    return {"label": axis.label + (", " + raised(unit) if unit else "")}
