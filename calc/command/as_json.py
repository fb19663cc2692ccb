"""An answer, and what a calculator asks, as data in SI."""

from calc.answer import Job, standing_of
from calc.dates import show_date
from calc.declaring import CHOICE, COUNT, DATE, ROWS, SWITCH, Calculator, Input, inputs_of
from calc.outcome import TEXT, Amount, Check, Column, Outcome, Sentence, Table, say
from calc.quantities import kind_of
from calc.report import declared_values, in_order_of_weight


def described(calculator: Calculator) -> dict[str, object]:
    """Return a calculator's inputs as data: kinds, units, bounds, choices."""
    return {
        "id": calculator.id,
        "title": calculator.title,
        "inputs": [_described_input(each) for each in inputs_of(calculator)],
    }


def _described_input(each: Input) -> dict[str, object]:
    asked = {"id": each.id, "kind": each.kind, "unit": _si_unit(each.kind), "default": each.default,
             "low": _input_value(each, each.low), "high": _input_value(each, each.high)}
    if each.kind == CHOICE:
        asked["choices"] = [option.id for option in each.choices]
    if each.kind == ROWS:
        asked["columns"] = [_described_input(column) for column in each.columns]
    return asked


def _si_unit(kind: str) -> str:
    return "" if kind in (CHOICE, SWITCH, DATE, ROWS, TEXT) else "1" if kind == COUNT else kind_of(kind).si


def checks_data(checks: tuple[Check, ...], system: str) -> list[dict[str, str]]:
    """Return checks as data, their texts in the reader's units."""
    return [{"id": each.id, "level": each.level, "text": say(each.text, system)} for each in checks]


def answer_data(job: Job, outcome: Outcome) -> dict[str, object]:
    """Return a finished job as data in SI, apart from any unit system."""
    return {
        "calculator": job.calculator.id,
        "inputs": {each.id: _input_value(each, job.values[each.id])
                   for each in inputs_of(job.calculator)},
        "results": {declared.id: {"value": value, "unit": _si_unit(declared.kind)}
                    for declared, value in declared_values(job.calculator, outcome)},
        "standing": standing_of(job),
        "checks": checks_data(tuple(in_order_of_weight(outcome.checks)), job.system),
        "tables": {table.id: _table_rows(table, job.system) for table in outcome.tables},
        "notes": job.notes,
    }


def _input_value(each: Input, value: object) -> object:
    if each.kind == DATE and isinstance(value, int):
        return show_date(value)
    if each.kind == ROWS and isinstance(value, tuple):
        return [dict(zip([column.id for column in each.columns], row)) for row in value]
    return value


def _table_rows(table: Table, system: str) -> list[dict[str, object]]:
    return [{column.id: _cell_value(column, cell, system) for column, cell in zip(table.columns, row)}
            for row in table.rows]


def _cell_value(column: Column, cell: object, system: str) -> object:
    if isinstance(cell, Amount):
        return {"value": cell.value, "unit": _si_unit(cell.kind)}
    if column.kind == TEXT and isinstance(cell, (str, Sentence)):
        return say(cell, system)
    return cell
