"""Samples changes of some files, puts them to the tests, and lists what no test noticed."""

import argparse
import ast
import importlib
import os
import random
import subprocess
import sys
import time
from pathlib import Path

from scripts.mutating.mutations import Mutation, mutations_of
from scripts.mutating.trial import KILLED, SURVIVED, Trial, module_name

ROOT = Path(__file__).parents[2]
EQUIVALENTS = ROOT / "tests/equivalents.txt"
ROOMS = ("tests/mechanics", "tests/numerics", "tests/shop", "tests/references", "tests/bows",
         "tests/calculators", "tests/record", "tests/tables", "tests/command", "tests/book")
LIMITS = "tests/test_thresholds.py"
FOR_ALL = [f"tests/test_{name}.py" for name in
           ("declarations", "old_links", "answer", "command_line", "one_bow", "quantities", "dates")]
SHARED_BY_TESTS = ("pytest", "hypothesis", "numpy", "scipy.integrate", "scipy.interpolate", "scipy.optimize",
                   "scipy.special", "scipy.stats")
PATIENCE = 4.0  # times what the unchanged file takes
GRACE = 20.0  # [s] on top


def changed_files() -> list[str]:
    """Return the files of the package that differ from the main branch, committed or not."""
    run = subprocess.run(["git", "diff", "--name-only", "--diff-filter=AM", "main", "--", "calc"], cwd=ROOT,
                         capture_output=True, text=True, check=True)
    return [name for name in run.stdout.split() if name.endswith(".py")]


def imported_by(file: Path) -> set[str]:
    """Return the modules that a file imports."""
    found = set()
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{each.name}" for each in node.names}
        elif isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
    return found


def tests_of(file: str) -> list[str]:
    """Return the test files of a module, and of what imports it where it has none of its own."""
    own = own_tests_of(file)
    if mirror_of(file).is_file():
        return own
    module = module_name(Path(file))
    users = [str(path.relative_to(ROOT)) for path in sorted((ROOT / "calc").rglob("*.py"))
             if module in imported_by(path)]
    return list(dict.fromkeys([*own, *(test for user in users for test in own_tests_of(user))]))


def mirror_of(file: str) -> Path:
    """Return where the tests of a module stand: `tests/ROOM/test_MODULE.py`."""
    path = Path(file).relative_to("calc")
    return ROOT / "tests" / path.with_name("test_" + path.name)


def own_tests_of(file: str) -> list[str]:
    """Return the test files of a module: first the one that mirrors it, then those that import it."""
    module, mirror = module_name(Path(file)), mirror_of(file)
    tests = [test for room in ROOMS for test in sorted((ROOT / room).rglob("test_*.py"))]
    far = [str(test.relative_to(ROOT)) for test in [*tests, ROOT / LIMITS]
           if test != mirror and module in imported_by(test)]
    far.sort(key=lambda test: "/calculators/" in test)
    near = [str(mirror.relative_to(ROOT))] if mirror.is_file() else []
    return near + far + FOR_ALL


def equivalents() -> set[tuple[str, str, str]]:
    """Return the changes that change nothing, each as (file, line before, line after)."""
    found = set()
    for line in EQUIVALENTS.read_text("utf-8").splitlines():
        if line and not line.startswith(("#", " ")):
            file, before, after = line.split(" | ")
            found.add((file, before, after))
    return found


def unchanged_takes(file: str, tests: list[str]) -> float | None:
    """Return how long the tests take over the file as it is, None if they fail."""
    begun = time.monotonic()
    trial = Trial(Path(file), (ROOT / file).read_text("utf-8"), tests, 600)
    while trial.poll() is None:
        time.sleep(0.05)
    return time.monotonic() - begun if trial.outcome == SURVIVED else None


class Run:
    """Trials side by side, until all are done or the time is up."""

    def __init__(self, seconds: float) -> None:
        self.ends = time.monotonic() + seconds
        self.going: list[tuple[str, Mutation, Trial]] = []
        self.killed = 0
        self.survivors: list[tuple[str, Mutation]] = []

    def wait(self, room: int) -> None:
        """Wait until no more than so many trials are going."""
        while len(self.going) > room:
            for entry in list(self.going):
                file, mutation, trial = entry
                if trial.poll() is None and time.monotonic() > self.ends:
                    trial.stop()
                    self.going.remove(entry)
                elif trial.outcome is not None:
                    self.going.remove(entry)
                    self.killed += trial.outcome == KILLED
                    if trial.outcome == SURVIVED:
                        self.survivors.append((file, mutation))
                        print(f"{file}:{mutation.number}  {mutation.before}\n    ->  {mutation.after}",
                              flush=True)
            time.sleep(0.02)


def main() -> int:
    parser = argparse.ArgumentParser(prog="scripts/mutate", description=__doc__)
    parser.add_argument("files", nargs="*", help="files of calc; without any, those that changed")
    parser.add_argument("--seconds", type=float, default=300, help="no longer than this (300)")
    parser.add_argument("--samples", type=int, default=200, help="no more changes than this (200)")
    parser.add_argument("--seed", type=int, default=1, help="another number samples other changes (1)")
    asked = parser.parse_args()
    os.chdir(ROOT)
    os.environ["REBRACE_BOWS"] = "100"
    for name in SHARED_BY_TESTS:
        importlib.import_module(name)
    files = [str(Path(file).resolve().relative_to(ROOT)) for file in asked.files] or changed_files()
    known = equivalents()
    chosen = [(file, mutation) for file in files for mutation in mutations_of(Path(file).read_text("utf-8"))
              if (file, mutation.before, mutation.after) not in known]
    random.Random(asked.seed).shuffle(chosen)
    run = Run(asked.seconds)
    takes: dict[str, float | None] = {}
    for file, mutation in chosen[: asked.samples]:
        if time.monotonic() > run.ends:
            break
        tests = tests_of(file)
        if file not in takes:
            takes[file] = unchanged_takes(file, tests) if tests else None
            if takes[file] is None:
                print(f"{file}: no test imports it, or its tests fail as it is", flush=True)
        usual = takes[file]
        if usual is not None:
            trial = Trial(Path(file), mutation.source, tests, PATIENCE * usual + GRACE)
            run.going.append((file, mutation, trial))
            run.wait((os.cpu_count() or 1) - 1)
    run.wait(0)
    tried = run.killed + len(run.survivors)
    print(f"{tried} of {len(chosen)} changes tried, {run.killed} noticed, {len(run.survivors)} not")
    return 1 if run.survivors else 0


if __name__ == "__main__":
    sys.exit(main())
