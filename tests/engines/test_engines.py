"""One package, three Pythons: CPython, Pyodide and MicroPython give the same answers.

Texts and errors must be equal; the numbers behind the charts to 1e-9, since the
mathematical libraries differ in their last bits. The browser's engines run as
the site ships them, the small one with the package compiled.
"""

import json
import subprocess
from collections.abc import Iterator
from functools import cache, cached_property
from itertools import islice
from pathlib import Path

import pytest

from calc import answer, catalog
from scripts.measuring.engines import built_files
from tests.alike import differences
from tests.engines.vectors import Request, requests

HERE = Path(__file__).parent
ENGINES = ("small", "full")


@pytest.fixture(scope="module")
def engines(tmp_path_factory) -> Iterator[dict[str, "Engine"]]:
    """Both engines, already at work while CPython answers here."""
    work = tmp_path_factory.mktemp("engines") / "work.json"
    asked = [request for id in catalog.IDS for request in requests(id)]
    work.write_text(json.dumps({"files": built_files(), "requests": asked}), "utf-8")
    running = {name: Engine(name, work) for name in ENGINES}
    yield running
    for engine in running.values():
        engine.process.kill()


@pytest.mark.usefixtures("engines")  # which work meanwhile
@pytest.mark.parametrize("id", catalog.IDS)
def test_the_vectors_hold_results_and_refusals(id):
    answers = own_answers(id)
    assert sum(bool(each["errors"]) for each in answers) > 20
    assert sum(each["tree"] is not None for each in answers) > 10


@pytest.mark.parametrize("engine", ENGINES)
@pytest.mark.parametrize("id", catalog.IDS)
def test_the_browsers_engines_answer_as_cpython_does(engine, id, engines):
    theirs = engines[engine].answers[id]
    for request, ours, found in zip(requests(id), own_answers(id), theirs, strict=True):
        assert differences(ours, found) == [], request["pairs"]


@cache
def own_answers(id: str) -> list[dict]:
    """Return CPython's answers to all requests of one calculator, which every test compares with."""
    return [own_answer(request) for request in requests(id)]


def own_answer(request: Request) -> dict:
    answer.begin(json.dumps(request))
    while "progress" in (found := json.loads(answer.advance())):
        pass
    return found


class Engine:
    """A browser's engine in a process of its own; it answers into a file, so that it never has to wait."""

    def __init__(self, name: str, work: Path) -> None:
        self.answered, self.said = work.with_name(name + ".json"), work.with_name(name + ".txt")
        with work.open() as asked, self.answered.open("w") as answered, self.said.open("w") as said:
            self.process = subprocess.Popen(["node", HERE / "answer.mjs", name],
                                            stdin=asked, stdout=answered, stderr=said)

    @cached_property
    def answers(self) -> dict[str, list[dict]]:
        """Its answers by calculator, once it has done all of them."""
        assert self.process.wait() == 0, self.said.read_text("utf-8")[-4000:]
        found = iter(json.loads(self.answered.read_text("utf-8")))
        return {id: list(islice(found, len(requests(id)))) for id in catalog.IDS}
