"""What invented records answer, as it was: it proves nothing and only shows when something changes.

`records.json` holds the records, `tasks/TASK.json` what is asked of them and what was answered, stored as
`test_answers` says, which also tells how to write it anew. `brief.json` holds many more questions, each with
a sum over its answer.
"""

import json
from pathlib import Path

import pytest

from calc.answer import Task
from tests.unchanged.parts import data_in_brief, parts_of_data
from tests.unchanged.storing import Case, held_to

HERE = Path(__file__).parent / "records"
RECORDS = json.loads((HERE / "records.json").read_text("utf-8"))


@pytest.mark.parametrize("path", sorted((HERE / "tasks").glob("*.json")), ids=lambda path: path.stem)
def test_unchanged_answers_of_records(path):
    held_to(path, lambda case: parts_of_data(answer_to(case)))


def test_unchanged_answers_of_records_in_brief():
    held_to(HERE / "brief.json", lambda case: data_in_brief(answer_to(case)))


def answer_to(case: Case) -> dict[str, object]:
    """Return what records answer to a task; some tasks are of one record, some of several, some of none."""
    records = [json.dumps(RECORDS[name]) for name in case["records"]]
    return Task({"records": records, "entries": records[0] if records else "[]", **case["asked"]}).answer()
