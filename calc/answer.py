"""One question in, one answer out: what the browser's worker calls.

Texts cross this border as JSON and nothing else does. `begin` takes a request,
`advance` does one step of the work and returns either progress or the answer,
so that a long computation never holds its engine in one call.

A request is `{"calculator": id, "pairs": [[id, text], ...], "standing": {id: "example", ...}}`.

- `pairs`: what the form holds, units last. What they leave out takes the worked example's figure.
- `standing`: the inputs whose text in `pairs` is still the worked example's, not the reader's nor a sender's.
  A form that holds nothing but the example names all its inputs; one whose every figure somebody gave, or
  answers for, sends `{}`. What a link left out and the form filled in is the example's as well. Without
  `standing`, what the pairs leave out is the example's and what they hold is the reader's.

An answer's `standing` names, in the same way, those of them that it leans on: facts that matter for the
choices made. Once one figure is the reader's they become a check of the id `standing`, level `watch`, and no
check of the answer says `ok`: nothing is in order because the example is.

A figure that was read before the bow was last changed stands as `"stale"`, with its day behind a space where
that is known (`"stale 12 May"`). An answer that leans on such says so in a check of the id `stale`, and says
no `ok` either.

A request `{"calculator": id, "find": {...}}` asks what the calculator's own `find` answers beside its answer,
such as where the edge lies that a mark on a picture was meant for.
"""

import json

from calc import catalog
from calc.declaring import (
    FACT,
    SWITCH,
    Calculator,
    Input,
    inputs_of,
)
from calc.listing import module_of
from calc.outcome import (
    OK,
    WATCH,
    Check,
    Outcome,
    Problem,
    Refused,
    check,
)
from calc.quantities import SYSTEMS
from calc.reading import given_twice, held_in_folds, mark_unfinished, read, unusual
from calc.report import chart_data, declared_values, outcome_tree

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

MOST_PAIRS = 200

STRIDE = 0.1
"""Of the work: so much of it is done in one call. Between calls the small engine clears its memory, which
takes as long as a good deal of work; all of it in one call would let memory grow."""

EXAMPLE = "example"
"""The standing of a figure that is the worked example's."""

STALE = "stale"
"""The standing of a figure that was read before the bow was last changed; its day may follow."""

MOST_NAMED = 6
"""How many of the example's figures a check names before it counts the rest."""


class Job:
    """A calculator at work on what was typed.

    standing: as in a request; None: what the pairs leave out is the example's.
    """

    def __init__(
        self, calculator: Calculator, pairs: list[tuple[str, str]], standing: dict[str, str] | None = None
    ):
        self.calculator = calculator
        self.system, rest, self.notes = _take_system(pairs)
        self._pairs = rest
        self.typed = dict(rest)
        self.values, self.problems, unknown = read(calculator, rest, self.system)
        self.notes += unknown
        given = [name for name, _ in rest]
        self._lent = _lent(calculator, given, standing)
        self._stale = {name: said[len(STALE):].strip() for name, said in (standing or {}).items()
                       if said.startswith(STALE)}
        self._has_own = any(each.id in given and each.id not in self._lent for each in inputs_of(calculator))
        self.outcome: Outcome | None = None
        self._steps: Generator[float, None, Outcome] | None = None

    def advance(self) -> float | None:
        """Do one step; return how far the work is (0 to 1), or None once it is done."""
        if self.problems:
            return None
        try:
            return self._step()
        except Refused as refused:
            mark_unfinished(self.calculator, self._pairs, self.system, refused.problem)
            self.problems.append(refused.problem)
        except ValueError as error:
            self.problems.append(Problem(None, None, None, _as_sentence(str(error))))
        self.outcome = None
        return None

    def _step(self) -> float | None:
        if self._steps is None:
            work = self.calculator.compute(**self.values)
            if isinstance(work, Outcome):
                self._finish(work)
                return None
            self._steps = work
        try:
            return next(self._steps)
        except StopIteration as end:
            self._finish(end.value)
            return None

    def _finish(self, outcome: Outcome) -> None:
        declared_values(self.calculator, outcome)
        usual = tuple(unusual(self.calculator, self.values, self.system))
        self.outcome = _without_borrowed_order(outcome.with_checks(usual), self)

    def facts(self) -> list[Input]:
        """Return the facts that this answer leans on, whoever they are from."""
        return [each for each in inputs_of(self.calculator) if _counts(each, self.values[each.id])]

    def of_the_example(self) -> list[Input]:
        """Return those of its facts that are the worked example's."""
        return [each for each in self.facts() if each.id in self._lent]

    def stale(self) -> list[Input]:
        """Return those of its facts that were read before the last change."""
        return [each for each in self.facts() if each.id in self._stale]

    def day_of(self, each: Input) -> str:
        """Return the day of a stale figure; empty where it is not known."""
        return self._stale[each.id]

    def is_mixed(self) -> bool:
        """Return whether somebody's own figures and facts of the example stand side by side."""
        return self._has_own and len(self.of_the_example()) > 0


def _lent(calculator: Calculator, given: list[str], standing: dict[str, str] | None) -> list[str]:
    """Return the ids of the inputs whose figure is the example's."""
    if standing is None:
        return [each.id for each in inputs_of(calculator) if each.id not in given]
    return [each.id for each in inputs_of(calculator) if standing.get(each.id) == EXAMPLE]


def _counts(each: Input, value: object) -> bool:
    """Return whether an input is a fact that says something; an unticked box or an empty one does not."""
    if each.role != FACT or value is None or value == ():
        return False
    return each.kind != SWITCH or value is True or each.default == "yes"


def _without_borrowed_order(outcome: Outcome, job: Job) -> Outcome:
    """Return an outcome in which nothing is in order on figures of the example, or on stale ones."""
    leaning = [say for is_so, say in ((job.is_mixed(), _standing_check), (len(job.stale()) > 0, _stale_check))
               if is_so]
    if not leaning:
        return outcome
    kept = tuple([each for each in outcome.checks if each.level != OK])
    unjudged = len(outcome.checks) - len(kept)
    return outcome.replacing_checks(tuple([say(job, unjudged) for say in leaning]) + kept)


def _standing_check(job: Job, unjudged: int) -> Check:
    lent = job.of_the_example()
    names = ", ".join([each.label for each in lent[:MOST_NAMED]])
    if len(lent) > MOST_NAMED:
        names += " and " + str(len(lent) - MOST_NAMED) + " more"
    facts = len(job.facts())
    share = "All " + str(facts) if len(lent) == facts else str(len(lent)) + " of the " + str(facts)
    text = (share + " facts behind this answer " + ("is" if len(lent) == 1 else "are")
            + " still the worked example's, not yours: " + names + ". ")
    if unjudged:
        text += "Type your own; until then " + _not_judged(unjudged)
    else:
        text += "Type your own before you act on it."
    return check("standing", WATCH, text)


def _stale_check(job: Job, unjudged: int) -> Check:
    named = [each.label + (" (" + job.day_of(each) + ")" if job.day_of(each) else "") for each in job.stale()]
    text = "Read before the last change to the bow, so to be read again: " + ", ".join(named) + "."
    if unjudged:
        text += " Until then " + _not_judged(unjudged)
    return check("stale", WATCH, text)


def _not_judged(unjudged: int) -> str:
    return ("nothing is called in order ("
            + str(unjudged) + (" check is" if unjudged == 1 else " checks are") + " not judged).")


def work_out(
    calculator: Calculator, pairs: list[tuple[str, str]], standing: dict[str, str] | None = None
) -> Job:
    """Return a job carried to its end."""
    job = Job(calculator, pairs, standing)
    while job.advance() is not None:
        pass
    return job


def page_answer(job: Job) -> dict[str, object]:
    """Return a finished job as the page wants it: texts, elements and chart numbers."""
    answer: dict[str, object] = {
        "calculator": job.calculator.id,
        "units": job.system,
        "errors": [{"field": each.field, "row": each.row, "column": each.column, "message": each.message,
                    "unfinished": each.unfinished} for each in job.problems],
        "notes": job.notes,
        "folds": held_in_folds(job.calculator, job.typed),
        "standing": {},
        "tree": None,
        "charts": [],
        "files": [],
        "kept": {},
    }
    if job.outcome is not None:
        answer["standing"] = standing_of(job)
        answer["tree"] = outcome_tree(job.calculator, job.outcome, job.system)
        answer["charts"] = [chart_data(each, job.system) for each in job.outcome.charts]
        answer["files"] = [{"name": each.name, "type": each.media_type, "text": each.text}
                           for each in job.outcome.files]
        answer["kept"] = what_is_kept(job.calculator, job.outcome)
    return answer


def what_is_kept(calculator: Calculator, outcome: Outcome) -> "dict[str, list[list[object]]]":
    """Return what a bow's record keeps of an outcome beside its headline: results in SI, levels of checks."""
    return {"results": [[declared.id, value] for declared, value in declared_values(calculator, outcome)
                        if value is not None],
            "checks": [[each.id, each.level] for each in outcome.checks]}


def standing_of(job: Job) -> dict[str, str]:
    """Return the inputs that an answer leans on and that are the example's, as a request names them."""
    return {each.id: EXAMPLE for each in job.of_the_example()}


def _take_system(pairs: list[tuple[str, str]]) -> tuple[str, list[tuple[str, str]], list[str]]:
    chosen = None
    rest = []
    notes = []
    for name, text in pairs[:MOST_PAIRS]:
        if name != "units":
            rest.append((name, text))
        elif text not in SYSTEMS:
            notes.append("The units must be imperial or metric; they were left as "
                         + (chosen or SYSTEMS[0]) + ".")
        elif chosen is None:
            chosen = text
        else:
            notes.append(given_twice(name))
    if len(pairs) > MOST_PAIRS:
        notes.append("The link holds too many parts; those after the first " + str(MOST_PAIRS)
                     + " were left out.")
    return chosen or SYSTEMS[0], rest, notes


def _as_sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + ("" if text.endswith(".") else ".")


class Task:
    """A question to a bow's record: `{"task": name, ...}`, as `calc.record.tasks` says them."""

    def __init__(self, asked: dict[str, object]):
        self.asked = asked

    def answer(self) -> dict[str, object]:
        """Return the answer; what the record refuses comes back as a sentence under "refused"."""
        tasks = module_of("record", "tasks", ("tasks",))  # not before somebody asks
        try:
            found: dict[str, object] = tasks.answer(self.asked)  # type: ignore[attr-defined]
        except ValueError as error:
            return {"refused": _as_sentence(str(error))}
        return found


class Find:
    """A question to what a calculator finds beside its answer."""

    def __init__(self, calculator: Calculator, asked: dict[str, object]):
        self.calculator = calculator
        self.asked = asked

    def answer(self) -> dict[str, object]:
        """Return what was found.

        Raises:
            ValueError: the calculator finds nothing beside its answer, or not that.
        """
        if self.calculator.find is None:
            raise ValueError("the calculator " + self.calculator.id + " finds nothing beside its answer")
        return self.calculator.find(self.asked)


# The worker's two calls --------------------------------------------------------

_current: Job | Task | Find | None = None


def begin(request: str) -> None:
    """Start on a request, in JSON as the top of this module says it."""
    global _current
    asked = json.loads(request)
    if "task" in asked:
        _current = Task(asked)
        return
    if "find" in asked:
        _current = Find(catalog.find(asked["calculator"]), asked["find"])
        return
    pairs = [(str(pair[0]), str(pair[1])) for pair in asked["pairs"]]
    _current = Job(catalog.find(asked["calculator"]), pairs, asked.get("standing"))


def advance() -> str:
    """Do some of the work; return JSON of {"progress": 0..1} or, at the end, of the answer."""
    global _current
    if _current is None:
        raise ValueError("nothing was begun")
    if not isinstance(_current, Job):
        done = json.dumps(_current.answer())
        _current = None
        return done
    started = progress = _current.advance()
    while progress is not None and started is not None and progress - started < STRIDE:
        progress = _current.advance()
    if progress is not None:
        return json.dumps({"progress": progress})
    answer = page_answer(_current)
    _current = None
    return json.dumps(answer)
