"""An answer in parts that can be stored, read and compared: each a text, a figure or a list of them."""

import json
import re

from calc.answer import Job, page_answer
from calc.outcome import Amount, Chart, Column, Drawing, File, Line, Link, Sentence, Table, say, write_cell
from tests.unchanged.storing import Parts, checksum

LONG = 60  # letters of a drawing's path
START = 16  # of them are shown
WIDE = 100  # letters on a line
FEW = 3  # figures


def parts_of(job: Job) -> Parts:
    """Return all that a finished job answers or refuses, by name."""
    units = job.system
    found: Parts = {f"refused {each.field}": each.message for each in job.problems}
    found |= {f"note {number}": note for number, note in enumerate(job.notes, 1)}
    answer = job.outcome
    if answer is None:
        return found
    found["headline"] = said(answer.headline, units)
    found |= {f"result {id}": value for id, value in answer.values}
    found |= {f"check {each.id}": f"{each.level}: {said(each.text, units)}" for each in answer.checks}
    found |= {f"assumption {number}": said(each, units) for number, each in enumerate(answer.assumptions, 1)}
    for table in answer.tables:
        found |= parts_of_table(table, units)
    for chart in answer.charts:
        found |= parts_of_chart(chart, units)
    found |= {f"drawing {each.id}": drawn(each, units) for each in answer.drawings}
    found |= {f"file {each.name}": filed(each) for each in answer.files}
    return found


def in_brief(job: Job) -> Parts:
    """Return a finished job's results, and a sum over all that its page shows: any other word changes it."""
    page = page_answer(job)
    shown = json.dumps([page[name] for name in ("errors", "notes", "folds", "tree", "files")])
    figures = [value for _, value in job.outcome.values if isinstance(value, float)] if job.outcome else []
    return {"results": [*figures], "shown": checksum(shown)}


def said(text: Sentence | str, units: str) -> str:
    """Return a sentence with the address of each link behind it."""
    if isinstance(text, str):
        return text
    filled = [f"{each.text} <{each.page}>" if isinstance(each, Link) else each for each in text.amounts]
    return say(Sentence(text.template, tuple(filled)), units)


def parts_of_table(table: Table, units: str) -> Parts:
    """Return a table's rows as they are shown, and the sum of the unrounded figures of each column."""
    head = [each.label for each in table.columns]
    rows = [[cell_of(column, cell, units) for column, cell in zip(table.columns, row, strict=True)]
            for row in table.rows]
    sums = [sum(map(figure_of, cells)) for cells in zip(*table.rows, strict=True)]
    return {f"table {table.id}": [said(table.caption, units), *[" | ".join(row) for row in [head, *rows]]],
            f"sums of table {table.id}": sums}


def cell_of(column: Column, cell: object, units: str) -> str:
    return said(cell, units) if isinstance(cell, Sentence) else write_cell(column, cell, units)


def figure_of(cell: object) -> float:
    """Return the figure in a cell, none for a text."""
    value = cell.value if isinstance(cell, Amount) else cell
    return float(value) if isinstance(value, int | float) else 0.0


def parts_of_chart(chart: Chart, units: str) -> Parts:
    """Return a chart's words, and of each line how many points it has, its ends and the sums of both."""
    words: Parts = {f"chart {chart.id}": [
        said(chart.title, units), *[f"{axis.label} ({axis.kind})" for axis in (chart.x, chart.y)],
        *[f"{line.label} ({line.style})" for line in chart.lines]]}
    return words | {f"chart {chart.id}, {place}": outline(line) for place, line in enumerate(chart.lines, 1)}


def outline(line: Line) -> list[str | float]:
    ends = [values[place] for place in (0, -1) for values in (line.xs, line.ys)] if line.xs else []
    return [len(line.xs), *ends, sum(line.xs), sum(line.ys)]


def drawn(drawing: Drawing, units: str) -> list[str | float]:
    """Return a drawing's words and shapes, one a line."""
    words = [said(drawing.title, units), said(drawing.description, units)]
    return [*words, f"{drawing.width} x {drawing.height}",
            *[line for shape in drawing.shapes for line in shape_of(shape, units)]]


def shape_of(shape: object, units: str, depth: str = "") -> list[str]:
    """Return a shape and those within it, each a line, set in by its depth."""
    if not isinstance(shape, list):
        assert isinstance(shape, str | Sentence)
        return [depth + said(shape, units)]
    name, attributes, *within = shape
    own = " ".join([name, *[f'{key}="{briefly(value)}"' for key, value in attributes.items()]])
    return [depth + own, *[line for each in within for line in shape_of(each, units, depth + " ")]]


def briefly(text: str) -> str:
    """Return an attribute; a long path as its start and the sum of its figures, each times its place."""
    if len(text) <= LONG:
        return text
    figures = [float(each) for each in re.findall(r"-?[\d.]+", text)]
    placed = sum(place * figure for place, figure in enumerate(figures, 1))
    return f"{text[:START]}… {len(figures)} figures: {placed:.2f}"


def filed(file: File) -> list[str | float]:
    return [file.label, file.media_type, *file.text.splitlines()]


def parts_of_data(answer: dict[str, object]) -> Parts:
    """Return what a record answers to a task by its names, each as lines."""
    told = {name: lines_of(value) for name, value in answer.items()}
    return {name: lines[0].strip() if len(lines) == 1 else [*lines] for name, lines in told.items()}


def data_in_brief(answer: dict[str, object]) -> Parts:
    """Return a sum over all that a record answers to a task."""
    return {"shown": checksum(str(lines_of(answer)))}


def lines_of(data: object, depth: str = "") -> list[str]:
    """Return data as lines: what is short stays on one, of the rest each part begins one of its own."""
    if isinstance(data, float):
        return [f"{depth}{data:.9g}"]
    if isinstance(data, str):
        return [depth + line for line in data.splitlines()]
    if isinstance(data, list) and len(data) > FEW and all(isinstance(each, float) for each in data):
        return [f"{depth}{len(data)} figures, {data[0]:.9g} to {data[-1]:.9g}, together {sum(data):.9g}"]
    if isinstance(data, dict):
        return [line for name, value in data.items() for line in named(name, lines_of(value, depth + " "))]
    if isinstance(data, list):
        lines = [line for each in data for line in lines_of(each, depth + " ")]
        return [depth + ", ".join(map(str.strip, lines))] if sum(map(len, lines)) < WIDE else lines
    return [depth + str(data)]


def named(name: str, lines: list[str]) -> list[str]:
    """Return lines with a name before them, on the same line where there is but one."""
    depth = lines[0][: len(lines[0]) - len(lines[0].lstrip())] if lines else ""
    return [f"{depth}{name}: {lines[0].lstrip()}"] if len(lines) == 1 else [f"{depth}{name}:", *lines]
