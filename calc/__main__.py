"""The command line: `python -m calc tiller --upper "7 5/8 in" --lower "7 5/16 in"`."""

import argparse
import json
import sys
from pathlib import Path

from calc import catalog
from calc.answer import EXAMPLE, Job, work_out
from calc.command.as_json import answer_data, checks_data, described
from calc.command.as_text import answer_text, check_lines
from calc.command.options import parser_of, with_attached_values
from calc.declaring import (
    FACT,
    Calculator,
    inputs_of,
)
from calc.links import complete, pairs_of, with_units
from calc.outcome import Outcome
from calc.quantities import SYSTEMS
from calc.reading import echo, given_twice, matters

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from calc.command.recorded import Bench

COMPUTED = 0
BAD_INPUT = 2

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
        print(json.dumps([described(each) for each in calculators], indent=2))
    else:
        for each in calculators:
            print(f"{each.id:20}{each.purpose}")
        print("\nInputs of one: python -m calc ID --help")
    return COMPUTED


def _compute(calculator: Calculator, words: list[str]) -> int:
    parser = parser_of(calculator)
    parsed = vars(parser.parse_args(with_attached_values(words)))
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
        found = answer_data(job, outcome)
        if bench is not None:
            found["record"] = {"title": bench.title(), "checks": checks_data(bench.checks(), job.system)}
        print(json.dumps(found, indent=2, allow_nan=False))
        return COMPUTED
    if bench is not None:
        lines = [bench.title(), *check_lines(bench.checks(), job.system), ""]
        print("\n".join(lines))
    print(answer_text(job, outcome))
    return COMPUTED


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
        job = Job(calculator, pairs, {each.id: EXAMPLE for each in rest} | given.standing())
        missing = [each for each in rest if each.role == FACT and matters(each, job.values)]
        if missing and not job.problems:
            raise record.Failed(recorded.missing_text(bench, given, missing))
        while job.advance() is not None:
            pass
        if job.outcome is None:
            raise record.Failed("\n".join(each.message for each in job.problems))
        job.notes += given.remarks()
        if options["keep"]:
            bench.keep(recorded.answer_entry(job, job.outcome, pairs, given))
    except record.Failed as error:
        print(error, file=sys.stderr)
        return BAD_INPUT
    return _show(job, job.outcome, options, bench)


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
