"""The slim interpreter of the small engine: what it lacks, and that it is otherwise the whole one."""

import json
import subprocess
from hashlib import sha256
from pathlib import Path

import pytest

from scripts.building import engine, interpreter, wasm
from scripts.building.errors import BuildError
from scripts.slimming import calls
from scripts.slimming.__main__ import UNASKED
from tests.sentences import whole

ROOT = Path(__file__).parents[2]
PACKAGE = (ROOT / "node_modules" / engine.NPM_PACKAGE / engine.INTERPRETER).read_bytes()
RUN = """
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import { readFileSync } from "node:fs";
const [url, ...programs] = JSON.parse(readFileSync(0, "utf8"));
const found = [];
for (const program of programs) {
  const python = await loadMicroPython({ url, stdout: (line) => found.push(line) });
  try {
    python.runPython(program);
  } catch (error) {
    found.push(`${error.name}: ${error.message.trim().split("\\n").at(-1)}`);
  }
}
process.stdout.write(JSON.stringify(found), () => process.exit(0));
"""


def bodies_of(module):
    [code] = [each.content for each in wasm.sections_of(module) if each.id == wasm.CODE]
    return wasm.items(code)


@pytest.fixture(scope="module")
def run(tmp_path_factory):
    slim = tmp_path_factory.mktemp("slim") / engine.INTERPRETER
    slim.write_bytes(interpreter.slim(PACKAGE))

    def run(*programs):
        done = subprocess.run(["node", "--input-type=module", "--eval", RUN], capture_output=True, text=True,
                              input=json.dumps([str(slim), *programs]), check=True, cwd=ROOT)
        return json.loads(done.stdout)

    return run


def test_it_runs_what_the_language_offers(run):
    # 2^70 by hand: 1024^7
    assert run("import math, json\nfrom collections import namedtuple, OrderedDict\n"
               "print(2 ** 70, f'{2.5:.2f}', 'a-b'.split('-'), math.sqrt(2.25), json.dumps([1, None]))") == [
        "1180591620717411303424 2.50 ['a', 'b'] 1.5 [1, null]"]


def test_a_function_that_is_left_out_stops_the_engine_and_answers_nothing(run):
    assert run("import re\nprint(re.match('a+', 'aa'))") == ["RuntimeError: unreachable"]


def test_modules_held_ready_made_are_not_found(run):
    assert run("import unittest", "import tarfile") == [
        "PythonError: ImportError: no module named 'unittest'",
        "PythonError: ImportError: no module named 'tarfile'"]


def test_a_third_of_its_bytes_is_gone_and_no_place_of_the_rest_has_moved():
    slim = interpreter.slim(PACKAGE)
    before, after = ({each.id: each.content for each in wasm.sections_of(module)} for module in (PACKAGE, slim))
    assert before.keys() == after.keys()
    assert len(before[wasm.DATA]) == len(after[wasm.DATA])
    pairs = list(zip(wasm.items(before[wasm.CODE]), wasm.items(after[wasm.CODE]), strict=True))
    assert all(kept in (body, interpreter.STOP) for body, kept in pairs)
    assert all(before[id] == after[id] for id in before.keys() - {wasm.CODE, wasm.DATA})
    assert sum(kept != body for body, kept in pairs) > 300


def test_what_scripts_may_call_is_not_left_out():
    bodies = bodies_of(interpreter.slim(PACKAGE))
    asked = calls.exported_functions(PACKAGE, but=UNASKED)
    assert len(asked) > 20
    assert not [index for index in asked if bodies[index] == interpreter.STOP]


def test_another_interpreter_stops_the_build():
    with pytest.raises(BuildError, match=whole("the interpreter has changed; run: python -m scripts.slimming")):
        interpreter.slim(PACKAGE + b"\0")
    assert interpreter.NOTED.read_text().split()[0] == sha256(PACKAGE).hexdigest()


def test_ranges_of_numbers():
    assert interpreter.ranges_of({1, 2, 3, 7}) == ["1-3", "7-7"]


def test_a_module_taken_apart_goes_together_again():
    assert wasm.joined(wasm.sections_of(PACKAGE)) == PACKAGE


def test_numbers_are_written_as_the_standard_does():
    # 624485 is the worked example of unsigned LEB128 in many texts: from memory
    assert wasm.as_number(624485) == bytes([0xE5, 0x8E, 0x26])
    assert wasm.number(bytes([0xE5, 0x8E, 0x26]), 0) == (624485, 3)


def test_calls_by_name_are_found_among_other_instructions():
    # a variable; i32.const 16, drop, call 5, br_table 0 1, f64.const, call_indirect 16 0, call 300, end
    body = bytes([1, 1, 0x7F, 0x41, 0x10, 0x1A, 0x10, 5, 0x0E, 1, 0, 1, 0x44, *[0x10] * 8, 0x11, 0x10, 0,
                  0x10, 0xAC, 2, 0x0B])
    assert calls.called_by(body) == {5, 300}


def test_every_call_in_the_interpreter_leads_to_a_function():
    bodies = bodies_of(PACKAGE)
    met = set().union(*map(calls.called_by, bodies))
    assert max(met) < len(bodies) + calls.imported_functions(PACKAGE)
