"""A calculator that works on a bow's record: its inputs from there, and its answer kept there."""

import hashlib
from pathlib import Path
from urllib.parse import urlencode

from calc.command import record
from calc.declaring import Calculator, Input, inputs_of
from calc.outcome import OK, WATCH, Check, Outcome, check, say
from calc.record import checks, summary
from calc.record.entries import MOST_TEXT, Entry
from calc.record.fill import Filled, fill
from calc.record.fold import State
from calc.record.moments import short_day
from calc.report import declared_values, in_order_of_weight

PAIR_FACTS = ("pairs", "more_pairs", "last_pairs")
"""Facts of a kept answer that share its figures, since one holds only so many letters."""

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
        record.save(self.path, [*self.entries, entry])


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

    def stale(self, facts: list[Input]) -> list[Filled]:
        """Return what an answer leans on that was read before the last change."""
        return [self.filled[each.id] for each in facts if each.id in self.filled
                and self.filled[each.id].text and self.filled[each.id].stale]

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


def without_stale_order(outcome: Outcome, stale: list[Filled], labels: dict[str, str]) -> Outcome:
    """Return an outcome in which nothing is in order on figures that were read before the last change."""
    if not stale:
        return outcome
    named = [labels[each.input] + (f" ({short_day(each.entry.at)})" if each.entry else "") for each in stale]
    kept = tuple(each for each in outcome.checks if each.level != OK)
    unjudged = len(outcome.checks) - len(kept)
    text = "Read before the last change to the bow, so to be read again: " + ", ".join(named) + "."
    if unjudged:
        text += (" Until then nothing is called in order (" + str(unjudged)
                 + (" check is" if unjudged == 1 else " checks are") + " not judged).")
    return outcome.replacing_checks((check("stale", WATCH, text), *kept))


def answer_entry(
    calculator: Calculator,
    outcome: Outcome,
    pairs: list[tuple[str, str]],
    given: Known,
    stale: list[Filled],
    system: str,
) -> Entry:
    """Return the entry that keeps an answer as it was given.

    Args:
        calculator: that answered.
        outcome: its answer.
        pairs: all figures that it had, as typed, units with them.
        given: what of them the record told.
        stale: those of them that were read before the last change.
        system: unit system of the words.

    Raises:
        Failed: the figures are too long to keep.
    """
    facts = [("calculator", calculator.id), *_shared_out(pairs),
             ("origin", _origins([name for name, _ in pairs], given)),
             ("headline", say(outcome.headline, system)),
             ("results", ";".join(f"{declared.id}={value}" for declared, value
                                  in declared_values(calculator, outcome) if value is not None)),
             ("checks", ";".join(f"{each.id}={each.level}" for each in outcome.checks)),
             ("stale", ", ".join(each.input for each in stale))]
    kept = tuple((name, text) for name, text in facts if text)
    if any(len(text) > MOST_TEXT for _, text in kept):
        raise record.Failed(TOO_LONG)
    return Entry(record.new_id(), record.now(), "answer", kept, source=f"{calculator.id} {release()}")


def _shared_out(pairs: list[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return the figures as a link says them, over as many facts as it takes."""
    texts = [""]
    for pair in pairs:
        one = urlencode([pair])
        if len(texts[-1]) + 1 + len(one) > MOST_TEXT:
            texts.append("")
        texts[-1] += ("&" if texts[-1] else "") + one
    if len(texts) > len(PAIR_FACTS) or any(len(each) > MOST_TEXT for each in texts):
        raise record.Failed(TOO_LONG)
    return list(zip(PAIR_FACTS, texts))


def _origins(names: list[str], given: Known) -> str:
    """Return which figures were typed and which came from which entry."""
    by_origin: dict[str, list[str]] = {}
    for name in names:
        found = given.filled.get(name)
        origin = "typed" if found is None else found.entry.id if found.entry else "not known"
        by_origin.setdefault(origin, []).append(name)
    return "; ".join(f"{origin}: {', '.join(by_origin[origin])}" for origin in sorted(by_origin))


def release() -> str:
    """Return which state of the package this is: a short hash of its sources."""
    package = Path(__file__).parents[1]
    found = hashlib.sha256()
    for path in sorted(package.rglob("*.py")):
        found.update(path.relative_to(package).as_posix().encode() + path.read_bytes())
    return found.hexdigest()[:10]
