"""One question in, one answer out: what the browser's worker calls.

Texts cross this border as JSON and nothing else does. `begin` takes a request,
`advance` does one step of the work and returns either progress or the answer,
so that a long computation never holds its engine in one call.
"""

import json

from calc import catalog
from calc.fields import Calculator, Outcome, Problem, Refused, read, unusual
from calc.quantities import SYSTEMS
from calc.report import chart_data, declared_values, outcome_tree

MOST_PAIRS = 200


class Job:
    """A calculator at work on what was typed."""

    def __init__(self, calculator: Calculator, pairs: list[tuple[str, str]]):
        self.calculator = calculator
        self.system, rest, self.notes = _take_system(pairs)
        self.values, self.problems, unknown = read(calculator, rest, self.system)
        self.notes += unknown
        self.outcome: Outcome | None = None
        self._steps: object = None
        self._started = False

    def advance(self) -> float | None:
        """Do one step; return how far the work is (0 to 1), or None once it is done."""
        if self.problems:
            return None
        try:
            return self._step()
        except Refused as refused:
            self.problems.append(refused.problem)
        except ValueError as error:
            self.problems.append(Problem(None, None, None, _as_sentence(str(error))))
        self.outcome = None
        return None

    def _step(self) -> float | None:
        if not self._started:
            self._started = True
            work = self.calculator.compute(**self.values)
            if not hasattr(work, "send"):
                self._finish(work)
                return None
            self._steps = work
        try:
            return float(next(self._steps))  # type: ignore[call-overload]
        except StopIteration as end:
            self._finish(end.value)
            return None

    def _finish(self, outcome: Outcome) -> None:
        declared_values(self.calculator, outcome)
        usual = tuple(unusual(self.calculator, self.values, self.system))
        self.outcome = outcome.with_checks(usual)


def work_out(calculator: Calculator, pairs: list[tuple[str, str]]) -> Job:
    """Return a job carried to its end."""
    job = Job(calculator, pairs)
    while job.advance() is not None:
        pass
    return job


def page_answer(job: Job) -> dict[str, object]:
    """Return a finished job as the page wants it: texts, elements and chart numbers."""
    answer: dict[str, object] = {
        "calculator": job.calculator.id,
        "units": job.system,
        "errors": [{"field": each.field, "row": each.row, "column": each.column, "message": each.message}
                   for each in job.problems],
        "notes": job.notes,
        "tree": None,
        "charts": [],
        "files": [],
    }
    if job.outcome is not None:
        answer["tree"] = outcome_tree(job.calculator, job.outcome, job.system)
        answer["charts"] = [chart_data(each, job.system) for each in job.outcome.charts]
        answer["files"] = [{"name": each.name, "type": each.media_type, "text": each.text}
                           for each in job.outcome.files]
    return answer


def _take_system(pairs: list[tuple[str, str]]) -> tuple[str, list[tuple[str, str]], list[str]]:
    system = SYSTEMS[0]
    rest = []
    notes = []
    for name, text in pairs[:MOST_PAIRS]:
        if name != "units":
            rest.append((name, text))
        elif text in SYSTEMS:
            system = text
        else:
            notes.append("The units must be imperial or metric; they were left as " + system + ".")
    if len(pairs) > MOST_PAIRS:
        notes.append("The link holds too many parts; those after the first " + str(MOST_PAIRS)
                     + " were left out.")
    return system, rest, notes


def _as_sentence(text: str) -> str:
    return text[:1].upper() + text[1:] + ("" if text.endswith(".") else ".")


# The worker's two calls --------------------------------------------------------

_current: Job | None = None


def begin(request: str) -> None:
    """Start on a request: JSON of {"calculator": id, "pairs": [[name, text], ...]}."""
    global _current
    asked = json.loads(request)
    pairs = [(str(pair[0]), str(pair[1])) for pair in asked["pairs"]]
    _current = Job(catalog.find(asked["calculator"]), pairs)


def advance() -> str:
    """Do one step; return JSON of {"progress": 0..1} or, at the end, of the answer."""
    global _current
    if _current is None:
        raise ValueError("nothing was begun")
    progress = _current.advance()
    if progress is not None:
        return json.dumps({"progress": progress})
    answer = page_answer(_current)
    _current = None
    return json.dumps(answer)
