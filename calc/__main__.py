"""The command line: `python -m calc tiller --upper "7 5/8 in" --lower "7 5/16 in"`."""

import argparse
import json
import sys
from pathlib import Path

from calc import catalog
from calc.answer import EXAMPLE, Job, standing_of, work_out
from calc.dates import show_date
from calc.declaring import (
    CHOICE,
    COUNT,
    DATE,
    FACT,
    ROWS,
    SWITCH,
    Calculator,
    Input,
    inputs_of,
)
from calc.links import complete, pairs_of, with_units
from calc.outcome import (
    TEXT,
    Amount,
    Check,
    Column,
    Outcome,
    Sentence,
    Table,
    say,
    write,
    write_cell,
)
from calc.quantities import SYSTEMS, kind_of
from calc.reading import echo, given_twice, matters
from calc.report import LEVEL_WORDS, declared_values, in_order_of_weight

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from calc.command.recorded import Bench

COMPUTED = 0
BAD_INPUT = 2

REPEATED = ("Of an option given more than once, or of a name that a link carries more than once, the first "
            "counts; a note says so.")

LONE_MARK = "--"
"""Typed as a value, argparse takes it for a mark of its own and hands on an empty list."""


def main(arguments: list[str] | None = None) -> int:
    """Run the command line; return the exit status."""
    words = sys.argv[1:] if arguments is None else arguments
    if not words or (words[0].startswith("-") and words[0] not in ("-h", "--help")):
        return _list(words)
    if words[0] == "record":
        from calc.command import record  # no calculator waits for it

        return record.main(words[1:])
    if words[0] not in catalog.IDS and words[0] not in ("-h", "--help"):
        print(f"No calculator is called {words[0]}. There are: {', '.join(catalog.IDS)}.", file=sys.stderr)
        return BAD_INPUT
    if words[0] in ("-h", "--help"):
        return _list([])
    return _compute(catalog.find(words[0]), words[1:])


def _list(words: list[str]) -> int:
    parser = argparse.ArgumentParser(prog="python -m calc", description="List the calculators.")
    parser.add_argument("--list", action="store_true", help="list the calculators (so does no argument)")
    parser.add_argument("--json", action="store_true", help="as JSON, with the inputs of each")
    options = parser.parse_args(words)
    calculators = [catalog.find(id) for id in catalog.IDS]
    if options.json:
        print(json.dumps([_described(each) for each in calculators], indent=2))
    else:
        for each in calculators:
            print(f"{each.id:20}{each.purpose}")
        print("\nInputs of one: python -m calc ID --help")
    return COMPUTED


def _described(calculator: Calculator) -> dict[str, object]:
    return {
        "id": calculator.id,
        "title": calculator.title,
        "inputs": [_described_input(each) for each in inputs_of(calculator)],
    }


def _described_input(each: Input) -> dict[str, object]:
    described = {"id": each.id, "kind": each.kind, "unit": _si_unit(each.kind), "default": each.default,
                 "low": _input_value(each, each.low), "high": _input_value(each, each.high)}
    if each.kind == CHOICE:
        described["choices"] = [option.id for option in each.choices]
    if each.kind == ROWS:
        described["columns"] = [_described_input(column) for column in each.columns]
    return described


def _si_unit(kind: str) -> str:
    return "" if kind in (CHOICE, SWITCH, DATE, ROWS, TEXT) else "1" if kind == COUNT else kind_of(kind).si


def _compute(calculator: Calculator, words: list[str]) -> int:
    parser = _parser(calculator)
    parsed = vars(parser.parse_args(_with_attached_values(words)))
    options = {name: LONE_MARK if value == [] else value for name, value in parsed.items()}
    own = [(each.id, LONE_MARK if text == [] else text)
           for each in inputs_of(calculator) for text in options[each.id] or []]
    links = options["link"] or []
    if options["record"] is not None or options["keep"]:
        return _compute_from_record(calculator, options, own)
    try:
        linked = pairs_of(calculator, links[0]) if links else []
    except ValueError as error:
        print(f"--link: “{echo(links[0])}” {error}. Copy the whole address of a page of figures.",
              file=sys.stderr)
        return BAD_INPUT
    pairs = _with_options(calculator, linked, own, options["units"])
    given = [name for name, _ in linked + own]
    job = work_out(calculator, pairs, {each.id: EXAMPLE for each in inputs_of(calculator)
                                       if each.id not in given})
    if len(links) > 1:
        job.notes.append(given_twice("link"))
    if job.outcome is None:
        for problem in job.problems:
            print(problem.message, file=sys.stderr)
        return BAD_INPUT
    if options["strict"] and job.of_the_example():
        print(_missing(job), file=sys.stderr)
        return BAD_INPUT
    return _show(job, job.outcome, options)


def _show(job: Job, outcome: Outcome, options: "dict[str, Any]", bench: "Bench | None" = None) -> int:
    """Print an answer, below what a bow's record shows where it came from one, and write its files."""
    if options["save"] is not None:
        try:
            _save(outcome, Path(options["save"]))
        except OSError as error:
            print(f"--save: nothing can be written into the folder “{echo(options['save'])}” "
                  f"({error.strerror}). Name another folder.", file=sys.stderr)
            return BAD_INPUT
    if options["json"]:
        found = as_json(job, outcome)
        if bench is not None:
            found["record"] = {"title": bench.title(), "checks": _checks_json(bench.checks(), job.system)}
        print(json.dumps(found, indent=2, allow_nan=False))
        return COMPUTED
    if bench is not None:
        lines = [bench.title(), *_check_lines(bench.checks(), job.system), ""]
        print("\n".join(lines))
    print(as_text(job, outcome))
    return COMPUTED


def _check_lines(checks: tuple[Check, ...], system: str) -> list[str]:
    return [f"{LEVEL_WORDS[each.level]}: {say(each.text, system)}" for each in checks]


def _checks_json(checks: tuple[Check, ...], system: str) -> list[dict[str, str]]:
    return [{"id": each.id, "level": each.level, "text": say(each.text, system)} for each in checks]


def _compute_from_record(
    calculator: Calculator, options: "dict[str, Any]", own: list[tuple[str, str]]
) -> int:
    """Answer from a bow's record: options stand before it, and what neither tells is never the example's."""
    from calc.command import record, recorded  # no answer without a record waits for them

    try:
        if options["record"] is None:
            raise record.Failed("--keep: name the bow's file with --record.")
        if options["link"]:
            raise record.Failed("--link and --record: a link is complete by itself. Give one of them.")
        bench = recorded.Bench(Path(options["record"]))
        given = recorded.known(calculator, bench, own)
        pairs = [*own, *with_units(calculator, given.pairs, SYSTEMS[0]),
                 ("units", options["units"] or SYSTEMS[0])]
        named = [name for name, _ in pairs]
        rest = [each for each in inputs_of(calculator) if each.id not in named]
        job = Job(calculator, pairs, {each.id: EXAMPLE for each in rest})
        missing = [each for each in rest if each.role == FACT and matters(each, job.values)]
        if missing and not job.problems:
            raise record.Failed(recorded.missing_text(bench, given, missing))
        while job.advance() is not None:
            pass
        if job.outcome is None:
            raise record.Failed("\n".join(each.message for each in job.problems))
        stale = given.stale(job.facts())
        labels = {each.id: each.label for each in inputs_of(calculator)}
        outcome = recorded.without_stale_order(job.outcome, stale, labels)
        job.notes += given.remarks()
        if options["keep"]:
            bench.keep(recorded.answer_entry(calculator, outcome, pairs, given, stale, job.system))
    except record.Failed as error:
        print(error, file=sys.stderr)
        return BAD_INPUT
    return _show(job, outcome, options, bench)


def _with_options(
    calculator: Calculator, linked: list[tuple[str, str]], own: list[tuple[str, str]], units: str | None
) -> list[tuple[str, str]]:
    """Return what options and link come to: an option goes before the link's figure of its name."""
    if not linked:
        return [*own, ("units", units or SYSTEMS[0])]
    named = [name for name, _ in own]
    written = dict(reversed(linked)).get("units", SYSTEMS[0])
    if units not in (None, written) and written in SYSTEMS:
        linked = with_units(calculator, linked, written)
        named.append("units")
        own = [*own, ("units", units)]
    pairs = own + [(name, text) for name, text in linked if name not in named]
    return complete(calculator, pairs)


def _missing(job: Job) -> str:
    named = ", ".join(f"{each.label} (--{each.id.replace('_', '-')})" for each in job.of_the_example())
    return f"--strict: these facts were not given, and the worked example's do not stand for them: {named}."


def _save(outcome: Outcome, folder: Path) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    for each in outcome.files:
        (folder / each.name).write_text(each.text, encoding="utf-8", newline="")


def _with_attached_values(words: list[str]) -> list[str]:
    """Return the words with each value tied to its option, so that `--own-low -1/8` is a value."""
    tied: list[str] = []
    for word in words:
        negative = word[:1] in ("-", "\u2212") and word[1:2] in "0123456789.,½¼¾⅛⅜⅝⅞" and len(word) > 1
        if negative and tied and tied[-1].startswith("--") and "=" not in tied[-1]:
            tied[-1] += "=" + word
        else:
            tied.append(word)
    return tied


def _parser(calculator: Calculator) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog=f"python -m calc {calculator.id}", description=calculator.purpose,
                                     epilog=REPEATED, allow_abbrev=False)
    for each in inputs_of(calculator):
        names = ["--" + each.id.replace("_", "-")]
        if "_" in each.id:
            names.append("--" + each.id)
        parser.add_argument(*names, dest=each.id, action="append", metavar="VALUE", help=_help(each))
    parser.add_argument("--link", action="append", metavar="ADDRESS",
                        help="take the figures of a link, such as one that somebody sent; options go before "
                             "its figures, its units are those of bare numbers unless --imperial or --metric "
                             "is given, and what it leaves out keeps the meaning that it had")
    parser.add_argument("--record", metavar="FILE",
                        help="take the inputs from a bow's file; options go before it, and a fact that "
                             "neither tells is refused by its name")
    parser.add_argument("--keep", action="store_true", help="write the answer into that file")
    parser.add_argument("--strict", action="store_true",
                        help="refuse to answer with facts of the worked example; name those missing")
    parser.add_argument("--json", action="store_true", help="one JSON object, numbers in SI")
    parser.add_argument("--save", metavar="FOLDER",
                        help="write the files that come with the result into a folder")
    system = parser.add_mutually_exclusive_group()
    system.add_argument("--imperial", dest="units", action="store_const", const="imperial",
                        help="read bare numbers and show results in imperial units (the default)")
    system.add_argument("--metric", dest="units", action="store_const", const="metric",
                        help="read bare numbers and show results in metric units")
    return parser


def _help(each: Input) -> str:
    text = f"{each.label}. {each.help}".rstrip()
    if each.kind == CHOICE:
        text += " One of: " + ", ".join(option.id for option in each.choices) + "."
    if each.kind == ROWS:
        columns = ", ".join(column.label for column in each.columns)
        text += f" Rows apart by ; and cells by : ({columns})."
    return f"{text} Default: {each.default or 'empty'}".replace("%", "%%")


def as_json(job: Job, outcome: Outcome) -> dict[str, object]:
    """Return a finished job as data in SI, apart from any unit system."""
    return {
        "calculator": job.calculator.id,
        "inputs": {each.id: _input_value(each, job.values[each.id])
                   for each in inputs_of(job.calculator)},
        "results": {declared.id: {"value": value, "unit": _si_unit(declared.kind)}
                    for declared, value in declared_values(job.calculator, outcome)},
        "standing": standing_of(job),
        "checks": _checks_json(tuple(in_order_of_weight(outcome.checks)), job.system),
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


def as_text(job: Job, outcome: Outcome) -> str:
    """Return a finished job as text for a terminal."""
    system = job.system
    lines = [say(outcome.headline, system), ""]
    lines += [*_check_lines(tuple(in_order_of_weight(outcome.checks)), system), ""]
    for declared, value in declared_values(job.calculator, outcome):
        if value is not None:
            lines.append(f"{declared.label + ':':45} {write(Amount(declared.kind, value, None), system)}")
    for table in outcome.tables:
        lines += ["", say(table.caption, system)] + _table_lines(table, system)
    lines += ["", "What this assumes"] + ["- " + say(each, system) for each in outcome.assumptions]
    lines += ["", "Before you act on it"] + ["- " + say(each, system) for each in job.calculator.cautions]
    if job.notes:
        lines += ["", *job.notes]
    return "\n".join(lines)


def _table_lines(table: Table, system: str) -> list[str]:
    cells = [[column.label for column in table.columns]]
    for row in table.rows:
        cells.append([write_cell(column, cell, system) for column, cell in zip(table.columns, row)])
    widths = [max(len(row[index]) for row in cells) for index in range(len(table.columns))]
    return ["  ".join(text.ljust(width) for text, width in zip(row, widths)).rstrip() for row in cells]


def _show_what_the_terminal_can() -> None:
    """Let a terminal that lacks a mark, such as that of a degree, show a question mark in its place."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")


if __name__ == "__main__":
    _show_what_the_terminal_can()
    try:
        sys.exit(main())
    except BrokenPipeError:  # whoever reads, such as `head`, has had enough
        sys.stderr.close()
