"""Samples changes of some files, puts them to the tests, and lists what no test noticed."""

import argparse
import ast
import functools
import importlib
import math
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
DEAR = ("engines", "pages", "site", "lint", "types")
"""Rooms of tests that ask a browser, an engine or a built site: they stay out of it."""

FOR_ALL = [f"tests/test_{name}.py" for name in
           ("declarations", "old_links", "answer", "command_line", "one_bow", "quantities", "dates")]
SHARED_BY_TESTS = ("pytest", "hypothesis", "numpy", "scipy.integrate", "scipy.interpolate", "scipy.optimize",
                   "scipy.special", "scipy.stats")
PATIENCE = 4.0  # times what the unchanged file takes
GRACE = 20.0  # [s] on top
ENOUGH = 0.9  # of the time that tests of a change may take
NOTHING = "calc/no_such_module.py"


def changed_files() -> list[str]:
    """Return the files of the package that differ from the main branch, committed or not."""
    run = subprocess.run(["git", "diff", "--name-only", "--diff-filter=AM", "main", "--", "calc"], cwd=ROOT,
                         capture_output=True, text=True, check=True)
    return [name for name in run.stdout.split() if name.endswith(".py")]


def named_files(names: list[str]) -> list[str]:
    """Return the files that are named, and those in the folders that are."""
    paths = [Path(name).resolve().relative_to(ROOT) for name in names]
    return [str(file) for path in paths for file in (sorted(path.rglob("*.py")) if path.is_dir() else [path])]


@functools.cache
def calculators() -> dict[object, str]:
    """Return the module of each calculator by its id. Nothing of the package may be imported out here."""
    return {path.stem.replace("_", "-"): module_name(path) for path in Path("calc/calculators").glob("*.py")}


def imported_by(file: Path) -> set[str]:
    """Return the modules that a file imports, and the calculators that it names."""
    found = set()
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module} | {f"{node.module}.{each.name}" for each in node.names}
        elif isinstance(node, ast.Import):
            found |= {each.name for each in node.names}
        elif isinstance(node, ast.Constant) and node.value in calculators():
            found.add(calculators()[node.value])
        elif isinstance(node, ast.Call) and getattr(node.func, "id", "") == "module_of":
            names = [str(each.value) for each in node.args if isinstance(each, ast.Constant)]
            found.add(".".join(["calc", *names]))
    return found


def mirror_of(file: str) -> str:
    """Return where the tests of a module stand: `tests/ROOM/test_MODULE.py`."""
    path = Path(file).relative_to("calc")
    return str("tests" / path.with_name("test_" + path.name))


@functools.cache
def importers() -> dict[str, list[str]]:
    """Return the files of the package and of its tests that import a module, by its name."""
    found: dict[str, list[str]] = {}
    for path in sorted([*Path("calc").rglob("*.py"), *Path("tests").rglob("*.py")]):
        if path.parts[1] not in DEAR:
            for module in imported_by(path):
                found.setdefault(module, []).append(str(path))
    return found


def tests_of(file: str) -> list[str]:
    """Return the test files that touch a module: its own, then those of what imports it, from near to far."""
    found, seen, level = [], {file}, [file]
    while level:
        users = [user for each in level for user in importers().get(module_name(Path(each)), [])]
        mirrors = [mirror_of(each) for each in level if each.startswith("calc/")]
        found += [test for test in mirrors if Path(test).is_file()]
        found += [user for user in users if Path(user).name.startswith("test_")]
        level = [user for user in dict.fromkeys(users) if user not in seen]
        seen.update(level)
    return list(dict.fromkeys([*found, *FOR_ALL]))


def equivalents() -> set[tuple[str, str, str]]:
    """Return the changes that change nothing, each as (file, line before, line after)."""
    found = set()
    for line in EQUIVALENTS.read_text("utf-8").splitlines():
        if line and not line.startswith(("#", " ")):
            file, before, after = line.split(" | ")
            found.add((file, before, after))
    return found


@functools.cache
def unchanged_takes(test: str, most: float) -> float:
    """Return how long a test file takes over the code as it is [s]; infinite if too long, or if it fails."""
    begun = time.monotonic()
    trial = Trial(Path(NOTHING), "", [test], most)
    while trial.poll() is None:
        time.sleep(0.02)
    return time.monotonic() - begun if trial.outcome == SURVIVED else math.inf


def quick_tests_of(file: str, most: float) -> tuple[list[str], float]:
    """Return the nearest tests of a module that go into so many seconds, and how many they take."""
    chosen, total = [], 0.0
    for test in tests_of(file):
        takes = unchanged_takes(test, most)
        if total + takes <= most:
            chosen.append(test)
            total += takes
        if total > ENOUGH * most:
            break
    return chosen, total


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
    parser.add_argument("files", nargs="*", help="files or folders of calc; without any, files that changed")
    parser.add_argument("--seconds", type=float, default=300, help="no longer than this (300)")
    parser.add_argument("--samples", type=int, default=200, help="no more changes than this (200)")
    parser.add_argument("--seed", type=int, default=1, help="another number samples other changes (1)")
    parser.add_argument("--each", type=float, default=60, help="tests of one change take no longer (60)")
    asked = parser.parse_args()
    os.chdir(ROOT)
    os.environ["REBRACE_BOWS"] = "100"
    for name in SHARED_BY_TESTS:
        importlib.import_module(name)
    files = named_files(asked.files) or changed_files()
    known = equivalents()
    chosen = [(file, mutation) for file in files for mutation in mutations_of(Path(file).read_text("utf-8"))
              if (file, mutation.before, mutation.after) not in known]
    random.Random(asked.seed).shuffle(chosen)
    run = Run(asked.seconds)
    for file, mutation in chosen[: asked.samples]:
        if time.monotonic() > run.ends:
            break
        tests, usual = quick_tests_of(file, asked.each)
        if tests:
            trial = Trial(Path(file), mutation.source, tests, PATIENCE * usual + GRACE)
            run.going.append((file, mutation, trial))
            run.wait((os.cpu_count() or 1) - 1)
        else:
            print(f"{file}: no test touches it, or its tests fail as it is", flush=True)
    run.wait(0)
    tried = run.killed + len(run.survivors)
    print(f"{tried} of {len(chosen)} changes tried, {run.killed} noticed, {len(run.survivors)} not")
    return 1 if run.survivors else 0


if __name__ == "__main__":
    sys.exit(main())
