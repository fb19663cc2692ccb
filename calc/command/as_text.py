"""An answer as text for a terminal."""

from calc.answer import Job
from calc.outcome import Amount, Check, Outcome, Table, say, write, write_cell
from calc.report import LEVEL_WORDS, declared_values, in_order_of_weight


def check_lines(checks: tuple[Check, ...], system: str) -> list[str]:
    """Return checks as lines, each behind its level."""
    return [f"{LEVEL_WORDS[each.level]}: {say(each.text, system)}" for each in checks]


def answer_text(job: Job, outcome: Outcome) -> str:
    """Return a finished job as text for a terminal."""
    system = job.system
    lines = [say(outcome.headline, system), ""]
    lines += [*check_lines(tuple(in_order_of_weight(outcome.checks)), system), ""]
    for declared, value in declared_values(job.calculator, outcome):
        if value is not None:
            lines.append(f"{declared.label + ':':45} {write(Amount(declared.kind, value, None), system)}")
    for table in outcome.tables:
        lines += ["", say(table.caption, system)] + table_lines(table, system)
    lines += ["", "What this assumes"] + ["- " + say(each, system) for each in outcome.assumptions]
    lines += ["", "Before you act on it"] + ["- " + say(each, system) for each in job.calculator.cautions]
    if job.notes:
        lines += ["", *job.notes]
    return "\n".join(lines)


def table_lines(table: Table, system: str) -> list[str]:
    """Return a table as lines, each column as wide as its widest cell."""
    cells = [[column.label for column in table.columns]]
    for row in table.rows:
        cells.append([write_cell(column, cell, system) for column, cell in zip(table.columns, row)])
    widths = [max(len(row[index]) for row in cells) for index in range(len(table.columns))]
    return ["  ".join(text.ljust(width) for text, width in zip(row, widths)).rstrip() for row in cells]
