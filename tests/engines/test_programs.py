"""Programs of the page "Python at the bench": the browser's full engine prints what CPython prints."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from calc.mechanics.bow.bow import Bow
from scripts.blocks import programs
from scripts.measuring.engines import built_files
from tests.engines.test_engines import HERE

ROOT = Path(__file__).parents[2]
EXAMPLES = [each.id for each in programs.PROGRAMS]
ODD = {
    "half a line": "import sys\nprint('one', end='')\nsys.stderr.write('two')\n",
    "letters of three bytes": "print('\N{EURO SIGN}' * 5000)",
    "an error two calls deep": "def halve(n):\n    return n / 0\n\nhalve(1)\n",
    "an error in the package": "from calc.quantities import parse\nparse('7 cows', 'length')\n",
    "a line that cannot be read": "print('one')\nprint('two'\n",
    "leaving with a word": "raise SystemExit('enough')",
    "leaving": "raise SystemExit",
    "asking the reader": "input()",
    "names of the run before": "halve",
    "a data class": "import dataclasses as d\n@d.dataclass\nclass Bow:\n    weight: float\nprint(Bow(1))",
}
HELP = "from calc.mechanics.bow import Bow\nhelp(Bow.brace)\n"


@pytest.fixture(scope="module")
def in_the_browsers_engine():
    texts = [programs.file_of(id).read_text("utf-8") for id in EXAMPLES] + [*ODD.values(), HELP]
    done = subprocess.run(["node", HERE / "programs.mjs"], capture_output=True, text=True, check=False,
                          input=json.dumps({"files": built_files(), "programs": texts}))
    assert done.returncode == 0, done.stderr[-4000:]
    return dict(zip([*EXAMPLES, *ODD, HELP], json.loads(done.stdout), strict=True))


@pytest.fixture
def in_cpython(tmp_path):
    def run(program):
        file = tmp_path / "program.py"
        file.write_text(program, "utf-8")
        return subprocess.run([sys.executable, file], capture_output=True, text=True, check=False,
                              stdin=subprocess.DEVNULL, env={"PYTHONPATH": str(ROOT), "PYTHONUTF8": "1"})
    return run


@pytest.mark.parametrize("id", EXAMPLES)
def test_examples_print_the_same(id, in_the_browsers_engine, in_cpython):
    ours = in_cpython(programs.file_of(id).read_text("utf-8"))
    theirs = in_the_browsers_engine[id]
    assert ours.returncode == 0, ours.stderr
    assert ours.stderr == theirs["errors"] == ""
    assert theirs["ended"]
    assert theirs["printed"] == ours.stdout == programs.printed_by(id)


@pytest.mark.parametrize("name", ODD)
def test_odd_programs_print_and_fail_the_same(name, in_the_browsers_engine, in_cpython):
    ours = in_cpython(ODD[name])
    theirs = in_the_browsers_engine[name]
    assert theirs["printed"] == ours.stdout
    assert theirs["ended"] == (ours.returncode == 0)
    assert last_line(theirs["errors"]) == last_line(ours.stderr)


def test_a_traceback_starts_in_the_program_and_shows_its_lines(in_the_browsers_engine):
    said = in_the_browsers_engine["an error two calls deep"]["errors"].splitlines()
    assert said[:3] == ["Traceback (most recent call last):",
                        '  File "your program", line 4, in <module>', "    halve(1)"]
    assert any(line.strip() == "return n / 0" for line in said)


def test_help_shows_the_packages_own_docstrings(in_the_browsers_engine):
    said = in_the_browsers_engine[HELP]
    assert said["errors"] == ""
    assert Bow.brace.__doc__.splitlines()[0] in said["printed"]


def last_line(text):
    return text.splitlines()[-1] if text else ""
