"""One change put to the tests, in a process of its own; no file is touched."""

import importlib.abc
import importlib.machinery
import os
import signal
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from types import ModuleType

KILLED, SURVIVED, UNTRIED, LATE = "killed", "survived", "untried", "late"
QUIET = ("-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", "--no-header", "--tb=no")
NO_TESTS = 5


class _Changed(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Hands out one module from a text instead of its file."""

    def __init__(self, name: str, path: Path, source: str) -> None:
        self.name, self.path, self.source = name, path, source

    def find_spec(
        self, name: str, _path: Sequence[str] | None, _target: ModuleType | None = None
    ) -> importlib.machinery.ModuleSpec | None:
        if name != self.name:
            return None
        spec = importlib.machinery.ModuleSpec(name, self, origin=str(self.path))
        spec.has_location = True
        return spec

    def exec_module(self, module: ModuleType) -> None:
        exec(compile(self.source, self.path, "exec"), module.__dict__)


def module_name(path: Path) -> str:
    """Return the name under which a file of the package is imported."""
    parts = path.with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


class Trial:
    """A child process that runs tests over a changed file. It inherits what was imported before."""

    def __init__(self, path: Path, source: str, tests: list[str], seconds: float) -> None:
        self.ends = time.monotonic() + seconds
        self.outcome: str | None = None
        self.child = os.fork()
        if not self.child:
            os.setpgid(0, 0)  # so that what it starts ends with it
            _test(path, source, tests)
        os.setpgid(self.child, self.child)  # here, too: it may have to end before it ran at all

    def poll(self) -> str | None:
        """Return how it ended, None while it has not; LATE is what took too long and was stopped."""
        if self.outcome is None:
            found, status = os.waitpid(self.child, os.WNOHANG)
            if found:
                code = os.waitstatus_to_exitcode(status)
                self.outcome = {0: SURVIVED, NO_TESTS: UNTRIED}.get(code, KILLED)
            elif time.monotonic() > self.ends:
                self.stop()
                self.outcome = LATE
        return self.outcome

    def stop(self) -> None:
        """End it and all that it started, where it has not ended."""
        if self.outcome is None:
            os.killpg(self.child, signal.SIGKILL)
            os.waitpid(self.child, 0)


def _test(path: Path, source: str, tests: list[str]) -> None:
    """Run the tests over the changed file, and never return."""
    import pytest

    code = 1
    try:
        silent = os.open(os.devnull, os.O_RDWR)
        for stream in (0, 1, 2):
            os.dup2(silent, stream)
        sys.meta_path.insert(0, _Changed(module_name(path), path, source))
        code = int(pytest.main([*QUIET, *tests]))
    finally:
        os._exit(code)
