"""One package, three Pythons: CPython, Pyodide and MicroPython give the same answers.

Texts and errors must be equal; the numbers behind the charts to 1e-9, since the
mathematical libraries differ in their last bits. The browser's engines run as
the site ships them, the package minified.
"""

import html
import json
import re
import subprocess
from functools import cache
from math import isclose
from pathlib import Path

import pytest

from calc import answer, catalog
from tests.engines.vectors import Request, requests

HERE = Path(__file__).parent
SITE = HERE.parents[1] / "site"
ENGINE_META = re.compile(r'name="rebrace-engine" content="([^"]*)"')
TOLERANCE = 1e-9  # relative
OF_NOTHING = 1e-12  # absolute, for what is nought but for rounding


@pytest.mark.parametrize("engine", ["small", "full"])
@pytest.mark.parametrize("id", catalog.IDS)
def test_the_browsers_engines_answer_as_cpython_does(engine, id):
    asked = requests(id)
    for request, theirs in zip(asked, all_answers(engine)[id], strict=True):
        ours = own_answer(request)
        assert differences(ours, theirs) == [], request["pairs"]


def test_the_vectors_hold_results_and_refusals():
    for id in catalog.IDS:
        answers = [own_answer(request) for request in requests(id)]
        assert sum(bool(each["errors"]) for each in answers) > 20, id
        assert sum(each["tree"] is not None for each in answers) > 10, id


def own_answer(request: Request) -> dict:
    answer.begin(json.dumps(request))
    while "progress" in (found := json.loads(answer.advance())):
        pass
    return found


@cache
def all_answers(engine: str) -> dict[str, list[dict]]:
    """Return the answers of a browser's engine, which is started once for all calculators."""
    asked = [request for id in catalog.IDS for request in requests(id)]
    done = subprocess.run(["node", HERE / "answer.mjs", engine], capture_output=True, text=True, check=False,
                          input=json.dumps({"files": built_files(), "requests": asked}))
    assert done.returncode == 0, done.stderr[-4000:]
    answers: dict[str, list[dict]] = {id: [] for id in catalog.IDS}
    for request, found in zip(asked, json.loads(done.stdout), strict=True):
        answers[request["calculator"]].append(found)
    return answers


def built_files() -> dict[str, str]:
    """Return the addresses of the engines' files as the built site names them."""
    [content] = ENGINE_META.findall((SITE / "index.html").read_text(encoding="utf-8"))
    folder = (SITE / "assets/engine").as_uri()
    return {part: f"{folder}/{name}" for part, name in json.loads(html.unescape(content)).items()}


def differences(ours: object, theirs: object, where: str = "") -> list[str]:
    """Return where two answers differ, the order of names in an object left aside."""
    if isinstance(ours, dict) and isinstance(theirs, dict) and ours.keys() == theirs.keys():
        return [found for name in ours for found in differences(ours[name], theirs[name], f"{where}/{name}")]
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        return [found for place, pair in enumerate(zip(ours, theirs))
                for found in differences(*pair, f"{where}/{place}")]
    if isinstance(ours, float) and isinstance(theirs, (int, float)):
        same = isclose(ours, theirs, rel_tol=TOLERANCE, abs_tol=OF_NOTHING)
    else:
        same = ours == theirs
    return [] if same else [f"{where}: {ours!r} here, {theirs!r} there"]
