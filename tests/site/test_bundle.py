"""The bundled package answers as the one it was made from."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from calc import catalog
from scripts.blocks.extension import example_outcome
from scripts.building import bytecode, engine, packs, pyodide
from scripts.building.errors import BuildError

ROOT = Path(__file__).parents[2]
IN_A_BARE_PYTHON = """
import sys
sys.path.insert(0, sys.argv[1])
from calc import answer
answer.begin(sys.argv[2])
text = answer.advance()
while text.startswith('{"progress"'):
    text = answer.advance()
print(text)
"""


@pytest.fixture(scope="module")
def sources():
    return engine.bundle(ROOT)


@pytest.fixture(scope="module")
def packed(sources):
    return packs.packs(sources)


def test_comments_docstrings_and_lines_are_not_compiled():
    source = '"""Of a module."""\nx: int = 1  # why\n\n\ndef f(a: int) -> int:\n    """Of a function."""\n    return a\n'
    assert bytecode.module("f.py", source) == bytecode.module("f.py", "x = 1\ndef f(a): return a\n")


def test_a_module_with_a_fault_stops_the_build():
    with pytest.raises(BuildError, match=r"calc/f\.py does not compile for the small engine:\n(?s:.*)SyntaxError"):
        bytecode.module("calc/f.py", "def f(:\n")


def test_a_pack_says_what_is_in_it():
    head, _, rest = engine.pack({"calc/a.mpy": b"one\n", "calc/b.mpy": b"three"}).partition(b"\n")
    assert json.loads(head) == {"calc/a.mpy": 4, "calc/b.mpy": 5}
    assert rest == b"one\nthree"


def test_the_command_line_stays_at_home(sources):
    assert "calc/__main__.py" not in sources
    assert "calc/answer.py" in sources


def test_what_links_leave_out_stands_in_the_form_and_is_in_no_pack(packed):
    for pack in packed.values():
        assert not {"calc/former.py", "calc/links.py"} & set(pack)


def test_no_bow_is_in_the_core_that_every_page_waits_for(packed):
    of_bows = ("calc/mechanics/", "calc/bows/", "calc/record/")
    assert not [path for path in packed[packs.CORE] if path.startswith(of_bows)]


def test_every_calculator_has_a_pack_that_repeats_nothing_of_the_core(packed):
    assert set(packed) == {packs.CORE, packs.RECORD, *catalog.IDS}
    for id in catalog.IDS:
        assert "calc/calculators/" + id.replace("-", "_") + ".py" in packed[id]
        assert not set(packed[id]) & set(packed[packs.CORE])


def test_a_page_that_only_answers_fetches_nothing_of_the_record(packed):
    for name in (packs.CORE, *catalog.IDS):
        assert not [path for path in packed[name] if path.startswith("calc/record/")]
    assert "calc/record/__init__.py" in packed[packs.RECORD]


@pytest.mark.parametrize("id", catalog.IDS)
def test_core_and_pack_answer_in_a_bare_python(id, packed, sources, tmp_path):
    for path in packed[packs.CORE] + packed[id]:
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(sources[path], encoding="utf-8")
    request = json.dumps({"calculator": id, "pairs": []})
    done = subprocess.run([sys.executable, "-I", "-S", "-c", IN_A_BARE_PYTHON, str(tmp_path), request],
                          capture_output=True, text=True, check=True)
    assert json.loads(done.stdout) == example_outcome(id)


def test_the_full_engine_keeps_the_modules_that_the_package_imports():
    assert {"json", "math", "collections"} <= set(pyodide.imported_modules(ROOT / "calc"))
