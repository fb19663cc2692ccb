"""Declaring a decision path.

A path is a tree: every question and every end is led to by one answer only, so
that an end's address alone says which answers led there.
"""

from calc.tables import findings
from calc.tables.findings import Page


class Answer:
    """An answer, and the id of the question or end that it leads to."""

    def __init__(self, text: str, to: str) -> None:
        self.text = text
        self.to = to


class Question:
    """A question with its answers. help: how to find the answer, may be empty."""

    def __init__(self, id: str, text: str, help: str, answers: tuple[Answer, ...]) -> None:
        self.id = id
        self.text = text
        self.help = help
        self.answers = answers


class End:
    """An end. verdict: what to do, in a few words; reason: why; page: a Page.

    finding: id of the finding of an inspection that the end stands for, or empty.
    """

    def __init__(self, id: str, verdict: str, reason: str, page: Page, finding: str) -> None:
        self.id = id
        self.verdict = verdict
        self.reason = reason
        self.page = page
        self.finding = finding


class Path:
    """A path. purpose: one sentence. The first question is where it starts."""

    def __init__(
        self, id: str, title: str, purpose: str, questions: tuple[Question, ...], ends: tuple[End, ...],
    ) -> None:
        self.id = id
        self.title = title
        self.purpose = purpose
        self.questions = questions
        self.ends = ends


NEXT = {
    findings.WALL: Page("Retire a bow", "repair/retire/"),
    findings.LOOK: Page("What you found", "inspect/decide/#what-you-found"),
    findings.SHOOT: Page("What you found", "inspect/decide/#what-you-found"),
}
"""Where a finding leads by its verdict. What is mended has a page of its own."""


def question(id: str, text: str, *answers: Answer, help: str = "") -> Question:
    """Return a question."""
    return Question(id, text, help, answers)


def answer(text: str, to: str) -> Answer:
    """Return an answer that leads to a question or an end."""
    return Answer(text, to)


def end(id: str, verdict: str, reason: str, page: str, address: str) -> End:
    """Return an end that cites a page by title and address."""
    return End(id, verdict, reason, Page(page, address), "")


def found(id: str, name: str, finding: str, reason: str = "") -> End:
    """Return an end that is a finding of the inspection.

    The verdict is the finding's own, and so is the reason unless the end has one.

    Raises:
        ValueError: no finding has this id.
    """
    stands_for = findings.find(finding)
    verdict = findings.verdict_on(stands_for)
    page = NEXT.get(verdict.id, stands_for.page)
    return End(id, name + ": " + verdict.short.lower(), reason or stands_for.reason, page, finding)


def nodes(path: Path) -> list[Question | End]:
    """Return all questions and ends of a path."""
    return list(path.questions) + list(path.ends)


def trail(path: Path, id: str) -> list[tuple[Question, Answer]]:
    """Return the questions with the answers that lead to a question or end, first to last."""
    steps: list[tuple[Question, Answer]] = []
    while True:
        before = [(asked, given) for asked in path.questions for given in asked.answers if given.to == id]
        if not before:
            return steps
        steps.insert(0, before[0])
        id = before[0][0].id
