"""The bundled package answers as the one it was made from."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from calc import catalog
from scripts.blocks.extension import example_outcome
from scripts.building import engine, packs, pyodide

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
IN_THE_SMALL_ENGINE = """
import { readFileSync } from "node:fs";
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
const { sources, request } = JSON.parse(readFileSync(0, "utf8"));
const python = await loadMicroPython({ heapsize: 8 * 1024 * 1024 });
for (const [path, source] of Object.entries(sources)) {
  const folders = path.split("/").slice(0, -1);
  folders.forEach((_, depth) => {
    const folder = "/" + folders.slice(0, depth + 1).join("/");
    if (!python.FS.analyzePath(folder).exists) python.FS.mkdir(folder);
  });
  python.FS.writeFile("/" + path, source);
}
python.runPython("import sys; sys.path.insert(0, '/')");
const answer = python.pyimport("calc.answer");
answer.begin(request);
let text;
do text = answer.advance(); while ("progress" in JSON.parse(text));
console.log(text);
"""


@pytest.fixture(scope="module")
def sources():
    return engine.bundle(ROOT)


@pytest.fixture(scope="module")
def packed(sources):
    return packs.packs(sources)


def test_docstrings_comments_and_annotations_are_gone():
    source = '"""Doc."""\nx: int = 1  # why\ndef f(a: int) -> int:\n    """Doc."""\n    return a\n'
    small = engine.small(source, "f")
    for gone in ("Doc", "why", "int", "->"):
        assert gone not in small


def test_names_keep_their_spelling_for_keyword_arguments_and_tracebacks():
    assert "elastic_modulus" in engine.small("def f(elastic_modulus):\n    return elastic_modulus\n", "f")


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


def needed_for(id, packed):
    return {**packed[packs.CORE], **packed[id]}


@pytest.mark.parametrize("id", catalog.IDS)
def test_core_and_pack_answer_in_a_bare_python(id, packed, tmp_path):
    for path, source in needed_for(id, packed).items():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_text(source, encoding="utf-8")
    request = json.dumps({"calculator": id, "pairs": []})
    done = subprocess.run([sys.executable, "-I", "-S", "-c", IN_A_BARE_PYTHON, str(tmp_path), request],
                          capture_output=True, text=True, check=True)
    assert json.loads(done.stdout) == example_outcome(id)


@pytest.mark.parametrize("id", catalog.IDS)
def test_core_and_pack_answer_in_the_small_engine(id, packed):
    request = json.dumps({"calculator": id, "pairs": []})
    asked = json.dumps({"sources": needed_for(id, packed), "request": request})
    done = subprocess.run(["node", "--input-type=module", "-e", IN_THE_SMALL_ENGINE], input=asked, cwd=ROOT,
                          capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert json.loads(done.stdout)["tree"] == example_outcome(id)["tree"]


def test_the_full_engine_keeps_the_modules_that_the_package_imports():
    assert {"json", "math", "collections"} <= set(pyodide.imported_modules(ROOT / "calc"))
