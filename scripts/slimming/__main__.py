"""Note which functions of the interpreter no calculator can call: what the slim one leaves out.

All worked examples are answered, each with mistakes in every field too, and a program goes through what the
language offers without its library. What was called then is kept, with all that this may call by name. So
left out are only functions that Python reaches by asking for something that none of this did; and those that
turn sources into bytecode: they are called when the same modules are read as sources, and only then.
"""

import json
import subprocess
from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from calc import catalog, declaring, quantities
from scripts.building import bytecode, engine, interpreter, wasm
from scripts.slimming import calls

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
PROGRAM = HERE / "language.txt"
MOST_VALUES = 60
FAILING = ("1 / 0", "import no_such_module", "from math import nope", "raise MemoryError", "[0] * 10 ** 9",
           "calc.none")
FAILS = "fails"
MISTAKES = ("", "abc", "1,250", "-3", "1e999", "7 3/0", "7 lb", "\u00bd", "abc:abc")


def main() -> None:
    """Write the note."""
    module = (ROOT / "node_modules" / engine.NPM_PACKAGE / engine.INTERPRETER).read_bytes()
    [bodies] = [wasm.items(each.content) for each in wasm.sections_of(module) if each.id == wasm.CODE]
    sources = engine.bundle(ROOT) | _programs()
    needed = _called(module, bytecode.compiled(sources), _requests())
    compiling = _called(module, {path: source.encode() for path, source in sources.items()}, []) - needed
    kept = calls.with_all_called(needed, bodies, calls.imported_functions(module), but=compiling)
    left_out = interpreter.ranges_of(set(range(len(bodies))) - kept)
    interpreter.NOTED.write_text("\n".join([sha256(module).hexdigest(), *left_out]) + "\n")
    print(f"{len(bodies) - len(kept)} of {len(bodies)} functions are left out; the interpreter has "
          f"{len(interpreter.slim(module))} of {len(module)} bytes")


def _called(module: bytes, modules: Mapping[str, bytes], requests: list[str]) -> set[int]:
    with TemporaryDirectory() as folder:
        noting, pack = Path(folder) / engine.INTERPRETER, Path(folder) / "all.pack"
        noting.write_bytes(calls.noting(module))
        pack.write_bytes(engine.pack(modules))
        names = [path.partition(".")[0] for path in modules if "/" not in path]
        work = {"interpreter": str(noting), "pack": str(pack), "requests": requests,
                "programs": [each for each in names if not each.startswith(FAILS)],
                "failing": [each for each in names if each.startswith(FAILS)]}
        done = subprocess.run(["node", str(HERE / "run.mjs")], input=json.dumps(work), cwd=ROOT,
                              stdout=subprocess.PIPE, text=True, check=True)
    return set(json.loads(done.stdout))


def _programs() -> dict[str, str]:
    """Return the program, what goes through its values one by one, and what has to fail."""
    steps = [f"from language import *\nif {place} < len(many()): {step}({place})\n"
             for place in range(MOST_VALUES) for step in ("go_through", "build_in", "work_with")]
    return {
        "language.py": PROGRAM.read_text(),
        **{f"step{place}.py": step for place, step in enumerate(steps)},
        **{f"{FAILS}{place}.py": program + "\n" for place, program in enumerate(FAILING)},
    }


def _requests() -> list[str]:
    found = []
    for id in catalog.IDS:
        inputs = declaring.inputs_of(catalog.find(id))
        mistaken = ([(each.id, mistake) for each in inputs] for mistake in MISTAKES)
        found += [json.dumps({"calculator": id, "pairs": [*pairs, ("units", system)]})
                  for pairs in ([], *mistaken) for system in quantities.SYSTEMS]
    return found


if __name__ == "__main__":
    main()
