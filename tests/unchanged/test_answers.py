"""Whole answers of every calculator, as they were: they prove nothing and only show when something changes.

`answers/ID.json` holds questions and what was answered. The first is the worked example, in full; of the
others stand the parts that differ from it (null: it has no such part). `brief/ID.json` holds many more, each
with its results and a sum over all that the page shows. Texts must be the same, figures to a billionth.

    REBRACE_UNCHANGED=write ./scripts/test unit -- tests/unchanged

answers the questions that stand there anew: what a change alters is then in the difference of the files, to
be read line by line. Where a change passes unnoticed, write down one more question (with `"parts": {}`).
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from calc import catalog
from calc.answer import Job, work_out
from calc.declaring import inputs_of
from tests.unchanged.parts import in_brief, parts_of
from tests.unchanged.storing import Case, Parts, held_to, read

HERE = Path(__file__).parent
KINDS: dict[str, Callable[[Job], Parts]] = {"answers": parts_of, "brief": in_brief}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("id", catalog.IDS)
def test_unchanged_answers(kind, id):
    held_to(HERE / kind / f"{id}.json", lambda case: KINDS[kind](job_of(id, case)))


def job_of(id: str, case: Case) -> Job:
    """Return the job of a stored question, carried to its end."""
    return work_out(catalog.find(id), [*case["asked"].items(), ("units", case["units"])])


@pytest.mark.parametrize("id", catalog.IDS)
def test_a_question_that_is_stored_is_asked(id):
    known = {each.id for each in inputs_of(catalog.find(id))}
    first, *others = [case["asked"] for kind in KINDS for case in read(HERE / kind / f"{id}.json")]
    assert first == {}
    assert all(set(asked) <= known for asked in others)
