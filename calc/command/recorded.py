"""A calculator that works on a bow's record: its inputs from there, and its answer kept there."""

import hashlib
from pathlib import Path
from urllib.parse import urlencode

from calc.answer import STALE, Job, what_is_kept
from calc.command import record
from calc.declaring import Calculator, Input, inputs_of
from calc.outcome import Check, Outcome, say
from calc.record import checks, keep, summary
from calc.record.entries import Entry
from calc.record.fill import Filled, fill
from calc.record.fold import State
from calc.record.moments import short_day
from calc.report import in_order_of_weight

TOO_LONG = "--keep: this answer is too long to be kept. Nothing was written."


class Bench:
    """A bow's record as a calculator on the command line finds it.

    Raises:
        Failed: the file cannot be read.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self.entries = record.entries_of(path)
        self.state = State(self.entries)

    def checks(self) -> tuple[Check, ...]:
        """Return what the whole record shows, the gravest first."""
        return tuple(in_order_of_weight(checks.checks(self.state)))

    def title(self) -> str:
        """Return what the bow is called."""
        return summary.title(self.state)

    def keep(self, entry: Entry) -> None:
        """Put an entry into the file, which is replaced whole."""
        record.save(self.path, [*self.entries, entry], made=1)


class Known:
    """What a record gives to a calculator beside the figures that were typed.

    pairs: texts by input, empty where an input may be. filled: of the record, by input.
    """

    def __init__(self, pairs: list[tuple[str, str]], filled: dict[str, Filled]) -> None:
        self.pairs = pairs
        self.filled = filled

    def how(self, each: Input) -> str:
        """Return how an input comes to be known."""
        found = self.filled.get(each.id)
        return found.how if found else "Type it."

    def standing(self) -> dict[str, str]:
        """Return how figures stand that were read before the last change, as a request says it."""
        return {each.input: f"{STALE} {short_day(each.entry.at) if each.entry else ''}".strip()
                for each in self.filled.values() if each.text and each.stale}

    def remarks(self) -> list[str]:
        """Return how figures came about that nobody read as they stand."""
        return [f"“{each.input}” is {each.text}: {each.said}." for each in self.filled.values() if each.said]


def known(calculator: Calculator, bench: Bench, own: list[tuple[str, str]]) -> Known:
    """Return what a record knows of the inputs that were not typed.

    Args:
        calculator: that asks.
        bench: the record.
        own: pairs that were typed; each stands before the record's.
    """
    typed = dict(reversed(own))
    chosen = {each.id: typed.get(each.id, each.default) for each in inputs_of(calculator)}
    found = fill(bench.state, calculator.id, chosen)
    filled = {each.input: each for each in found if each.input not in typed}
    pairs = []
    for each in inputs_of(calculator):
        if each.id in filled and (filled[each.id].text or each.optional):
            pairs.append((each.id, filled[each.id].text))
    return Known(pairs, filled)


def missing_text(bench: Bench, given: Known, missing: list[Input]) -> str:
    """Return in words which facts a record lacks, each with its option and how it comes to be known."""
    lines = [f"--record: “{bench.path}” does not tell these facts, and the worked example's do not stand for "
             "them:"]
    lines += [f"  {each.label} (--{each.id.replace('_', '-')}). {given.how(each)}" for each in missing]
    return "\n".join(lines)


def answer_entry(job: Job, outcome: Outcome, pairs: list[tuple[str, str]], given: Known) -> Entry:
    """Return the entry that keeps an answer as it was given.

    Args:
        job: a finished one.
        outcome: its answer.
        pairs: all figures that it had, as typed, units with them.
        given: what of them the record told.

    Raises:
        Failed: the figures are too long to keep.
    """
    kept = what_is_kept(job.calculator, outcome)
    said = [("headline", say(outcome.headline, job.system)),
            *[(name, ";".join(f"{id}={value}" for id, value in each)) for name, each in kept.items()],
            ("stale", ", ".join(each.id for each in job.stale()))]
    try:
        facts = keep.answer_facts(job.calculator.id, [urlencode([pair]) for pair in pairs],
                                  keep.origins_of([name for name, _ in pairs], given.filled), said)
    except keep.TooLong as error:
        raise record.Failed(TOO_LONG) from error
    return Entry(record.new_id(), record.now(), "answer", tuple(facts),
                 source=f"{job.calculator.id} {release()}")


def release() -> str:
    """Return which state of the package this is: a short hash of its sources."""
    package = Path(__file__).parents[1]
    found = hashlib.sha256()
    for path in sorted(package.rglob("*.py")):
        found.update(path.relative_to(package).as_posix().encode() + path.read_bytes())
    return found.hexdigest()[:10]
