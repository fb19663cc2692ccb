"""Samples changes of some files, puts them to the tests, and lists what no test noticed."""

import argparse
import ast
import functools
import importlib
import math
import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

from scripts.mutating.mutations import Mutation, mutations_of
from scripts.mutating.trial import KILLED, LATE, SURVIVED, UNTRIED, Trial, module_name

ROOT = Path(__file__).parents[2]
EQUIVALENTS = ROOT / "tests/equivalents.txt"
DEAR = ("engines", "pages", "site", "lint", "types")
"""Rooms of tests that ask a browser, an engine or a built site: they stay out of it."""

UNCHANGED = [f"tests/unchanged/test_{name}.py" for name in
             ("quantities", "inputs", "answers", "records", "lookups")]
"""Figures, inputs and whole answers as they were: quick, and touched by nearly all of the package."""

FOR_ALL = [f"tests/test_{name}.py" for name in
           ("declarations", "old_links", "answer", "command_line", "one_bow", "quantities", "dates")]
SHARED_BY_TESTS = ("pytest", "hypothesis", "numpy", "scipy.integrate", "scipy.interpolate", "scipy.optimize",
                   "scipy.special", "scipy.stats")
PATIENCE = 4.0  # times what the unchanged file takes
GRACE = 20.0  # [s] on top
NEAR = 5.0  # [s] of tests that go first
ENOUGH = 0.9  # of the time that tests of a change may take
NOTHING = "calc/no_such_module.py"
TOLD = {SURVIVED: "", UNTRIED: "  (it has no test that is quick and passes as it is)",
        LATE: "  (noticed by running too long, if the machine was not busy)"}
Waves = Iterator[tuple[list[str], float]]


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
    """Return the test files that touch a module, from near to far.

    Its own, whole answers as they were, and then those of what imports it.
    """
    found, seen, level = [], {file}, [file]
    while level:
        users = [user for each in level for user in importers().get(module_name(Path(each)), [])]
        mirrors = [mirror_of(each) for each in level if each.startswith("calc/")]
        found += [test for test in mirrors if Path(test).is_file()]
        found += UNCHANGED
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


def unchanged_takes(test: str, most: float, ends: float, known: dict[str, float]) -> float:
    """Return how long a test file takes over the code as it is [s]; infinite if too long, or if it fails."""
    if test not in known:
        begun = time.monotonic()
        trial = Trial(Path(NOTHING), "", [test], min(most, max(0.0, ends - begun)))
        try:
            while trial.poll() is None:
                time.sleep(0.02)
        finally:
            trial.stop()
        known[test] = time.monotonic() - begun if trial.outcome == SURVIVED else math.inf
    return known[test]


def waves_of(file: str, most: float, ends: float, known: dict[str, float]) -> Waves:
    """Yield the tests of a module in two waves, the nearest first, each with how long it takes [s].

    Together they go into so many seconds. Most changes end in the first wave, which collects few files.
    """
    wave, total, before = list[str](), 0.0, 0.0
    for test in tests_of(file):
        takes = unchanged_takes(test, most, ends, known)
        if total + takes <= most:
            wave.append(test)
            total += takes
        if not before and total > NEAR:
            yield wave, total
            wave, before = [], total
        if total > ENOUGH * most:
            break
    if wave:
        yield wave, total - before


class Change:
    """A change on its way through the tests of its file."""

    def __init__(self, file: str, mutation: Mutation, waves: Waves) -> None:
        self.file = file
        self.mutation = mutation
        self.waves = waves
        self.trial: Trial | None = None

    def begin(self) -> bool:
        """Put it to its next tests; return whether there are any."""
        for tests, usual in self.waves:
            self.trial = Trial(Path(self.file), self.mutation.source, tests, PATIENCE * usual + GRACE)
            return True
        return False


class Run:
    """Changes put to their tests side by side, until all are done or the time is up."""

    def __init__(self, seconds: float) -> None:
        self.begun = time.monotonic()
        self.ends = self.begun + seconds
        self.going: list[Change] = []
        self.counts = {KILLED: 0, LATE: 0, SURVIVED: 0, UNTRIED: 0}

    @property
    def is_over(self) -> bool:
        return time.monotonic() > self.ends

    def begin(self, change: Change) -> None:
        """Go on with a change; where it has been through all its tests, none noticed it."""
        goes_on = change.begin()
        if goes_on:
            self.going.append(change)
        elif not self.is_over:
            self.take(change, SURVIVED if change.trial else UNTRIED)

    def wait(self, room: int) -> None:
        """Wait until no more than so many changes are going, or the time is up."""
        while len(self.going) > room and not self.is_over:
            for change in list(self.going):
                outcome = change.trial.poll() if change.trial else None
                if outcome is not None:
                    self.going.remove(change)
                if outcome == SURVIVED:
                    self.begin(change)
                elif outcome is not None:
                    self.take(change, outcome)
            time.sleep(0.02)

    def take(self, change: Change, outcome: str) -> None:
        """Count how a change ended, and tell of one that no test failed on."""
        self.counts[outcome] += 1
        if outcome in TOLD:
            print(f"{change.file}:{change.mutation.number}{TOLD[outcome]}  {change.mutation.before}\n"
                  f"    ->  {change.mutation.after}", flush=True)

    def stop(self) -> None:
        """End what is still going; it counts as not reached."""
        for change in self.going:
            if change.trial:
                change.trial.stop()
        self.going = []

    def told(self, of: int, seed: int) -> str:
        """Return what was done, in a sentence."""
        noticed = self.counts[KILLED] + self.counts[LATE]
        tried = sum(self.counts.values())
        share = f", {noticed / tried:.1%}" if tried else ""
        took = time.monotonic() - self.begun
        return (f"{tried} of {of} changes sampled by seed {seed} were tried in {took:.0f} s: "
                f"{noticed} noticed{share} ({self.counts[LATE]} of them by running too long), "
                f"{self.counts[SURVIVED]} not, {self.counts[UNTRIED]} without a test.")


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
    sampled = chosen[: asked.samples]
    signal.signal(signal.SIGTERM, signal.default_int_handler)
    run, takes = Run(asked.seconds), dict[str, float]()
    try:
        for file, mutation in sampled:
            run.begin(Change(file, mutation, waves_of(file, asked.each, run.ends, takes)))
            run.wait((os.cpu_count() or 1) - 1)
            if run.is_over:
                break
        run.wait(0)
    except KeyboardInterrupt:
        print("Stopped.")
    finally:
        run.stop()
    print(run.told(len(sampled), asked.seed))
    return 1 if run.counts[SURVIVED] + run.counts[UNTRIED] else 0


if __name__ == "__main__":
    sys.exit(main())
