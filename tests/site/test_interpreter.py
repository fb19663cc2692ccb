"""The slim interpreter of the small engine: what it lacks, and that it is otherwise the whole one.

It runs as it does in the worker: by the site's own module, with programs that were compiled before.
"""

import json
import re
import subprocess
from base64 import b64encode
from hashlib import sha256
from pathlib import Path

import pytest

from scripts.building import bytecode, engine, interpreter, wasm
from scripts.building.errors import BuildError
from scripts.slimming import calls
from tests.sentences import whole

ROOT = Path(__file__).parents[2]
PACKAGE = (ROOT / "node_modules" / engine.NPM_PACKAGE / engine.INTERPRETER).read_bytes()
RUN = """
import { readFileSync } from "node:fs";
import { startInterpreter } from "./docs/assets/js/interpreter.mjs";
const { file, heap, programs, text } = JSON.parse(readFileSync(0, "utf8"));
const found = [];
for (const program of programs) {
  const wasm = new Response(readFileSync(file), { headers: { "Content-Type": "application/wasm" } });
  const python = await startInterpreter(Promise.resolve(wasm), heap);
  python.add([["program.mpy", Buffer.from(program, "base64")]]);
  try {
    found.push(python.load("program")("answer")(text));
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

    def run(*programs, text="", heap=1_000_000):
        codes = [b64encode(bytecode.module("program.py", each)).decode() for each in programs]
        asked = {"file": str(slim), "heap": heap, "programs": codes, "text": text}
        done = subprocess.run(["node", "--input-type=module", "--eval", RUN], capture_output=True, text=True,
                              input=json.dumps(asked), check=True, cwd=ROOT)
        return json.loads(done.stdout)

    return run


def test_it_runs_what_the_language_offers(run):
    # 2^70 by hand: 1024^7
    assert run("import math, json\nfrom collections import namedtuple, OrderedDict\n"
               "def answer(text):\n"
               "    return f'{2 ** 70} {2.5:.2f} {text.split(\"-\")} {math.sqrt(2.25)} {json.dumps([1, None])}'\n",
               text="a-b") == ["1180591620717411303424 2.50 ['a', 'b'] 1.5 [1, null]"]


@pytest.mark.parametrize("text", ["", "\u00bd \u2033 \U0001f3f9", "one\0two", "x" * 3_000_000],
                         ids=["none", "of up to four bytes", "a zero within", "larger than the memory"])
def test_a_text_comes_back_as_it_went_in(run, text):
    assert run("def answer(text):\n    return text\n", text=text) == [text]


def test_memory_grows_with_what_python_makes(run):
    [found] = run("def answer(text):\n    return str(len([str(each) for each in range(200_000)]))\n", heap=100_000)
    assert found == "200000"


def test_nothing_and_other_things_are_no_text(run):
    assert run("def answer(text):\n    pass\n", "def answer(text):\n    return 5\n") == [None, None]


def test_an_exception_comes_with_its_traceback_and_leaves_python_at_work(run):
    raising = "def answer(text):\n    raise ValueError('so it is: ' + text)\n"
    caught = "def answer(text):\n    try:\n        1 / 0\n    except ZeroDivisionError:\n        return 'caught'\n"
    assert run(raising, caught, text="\u00bd") == ["PythonError: ValueError: so it is: \u00bd", "caught"]


def test_nothing_that_has_to_be_compiled_first_is_run(run):
    assert run("def answer(text):\n    exec(text)\n", text="1") == ["RuntimeError: unreachable"]


def test_a_function_that_is_left_out_stops_the_engine_and_answers_nothing(run):
    assert run("import re\nre.match('a+', 'aa')\n") == ["RuntimeError: unreachable"]


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
    assert sum(kept != body for body, kept in pairs) > 600


def test_what_scripts_call_is_not_left_out():
    code = (ROOT / "docs/assets/js/interpreter.mjs").read_text("utf-8")
    exported = calls.exported_functions(PACKAGE)
    asked = exported.keys() & set(re.findall(r"\bc\.(\w+)\(", code))
    assert len(asked) > 10
    bodies = bodies_of(interpreter.slim(PACKAGE))
    assert not [name for name in asked if bodies[exported[name]] == interpreter.STOP]


def test_calls_are_followed_but_not_through_what_is_left_out():
    # four functions, none imported: the first calls the second and the third, the second the fourth
    bodies = [bytes([0, 0x10, 1, 0x10, 2, 0x0B]), bytes([0, 0x10, 3, 0x0B]), bytes([0, 0x0B]), bytes([0, 0x0B])]
    assert calls.with_all_called({0}, bodies, 0, but=set()) == {0, 1, 2, 3}
    assert calls.with_all_called({0}, bodies, 0, but={1}) == {0, 2}


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
