"""Note which functions of the interpreter no calculator can call: what the slim one leaves out.

All worked examples are answered, each with mistakes in every field too, and a program goes through what the
language offers without its library. What was called then is kept, as is what scripts may call, with all that
these may call by name. So left out are only functions that Python reaches by asking for something that none
of this did.
"""

import json
import subprocess
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from calc import catalog, declaring, quantities
from scripts.building import engine, interpreter, wasm
from scripts.slimming import calls

ROOT = Path(__file__).parents[2]
HERE = Path(__file__).parent
PROGRAM = HERE / "language.txt"
UNASKED = ("mp_hal_get_interrupt_char", "mp_js_do_exec_async", "mp_js_register_js_module", "mp_js_repl_init",
           "mp_js_repl_process_char")
"""A prompt and work beside other work, which `small-engine.mjs` never asks the interpreter for."""
MOST_VALUES = 60
FAILING = ("1 / 0", "import no_such_module", "x = (", "raise MemoryError", "[0] * 10 ** 9", "calc.none")
MISTAKES = ("", "abc", "1,250", "-3", "1e999", "7 3/0", "7 lb", "\u00bd", "abc:abc")


def main() -> None:
    """Write the note."""
    module = (ROOT / "node_modules" / engine.NPM_PACKAGE / engine.INTERPRETER).read_bytes()
    [bodies] = [wasm.items(each.content) for each in wasm.sections_of(module) if each.id == wasm.CODE]
    needed = _called(module) | calls.exported_functions(module, but=UNASKED)
    kept = calls.with_all_called(needed, bodies, calls.imported_functions(module))
    left_out = interpreter.ranges_of(set(range(len(bodies))) - kept)
    interpreter.NOTED.write_text("\n".join([sha256(module).hexdigest(), *left_out]) + "\n")
    print(f"{len(bodies) - len(kept)} of {len(bodies)} functions are left out; the interpreter has "
          f"{len(interpreter.slim(module))} of {len(module)} bytes")


def _called(module: bytes) -> set[int]:
    with TemporaryDirectory() as folder:
        noting = Path(folder) / engine.INTERPRETER
        noting.write_bytes(calls.noting(module))
        work = {"interpreter": str(noting), "sources": engine.bundle(ROOT), "requests": _requests(),
                "programs": [PROGRAM.read_text(), *_steps()], "failing": FAILING}
        done = subprocess.run(["node", str(HERE / "run.mjs")], input=json.dumps(work), cwd=ROOT,
                              stdout=subprocess.PIPE, text=True, check=True)
    return set(json.loads(done.stdout))


def _steps() -> list[str]:
    """Return what goes through the values of the program one by one."""
    return [f"if {place} < len(many()): {step}({place})" for place in range(MOST_VALUES)
            for step in ("go_through", "build_in", "work_with")]


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
