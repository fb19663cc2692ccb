"""The full engine for the browser: Pyodide with a standard library cut down to what is used.

Loaded only where a reader asks for it or the small engine cannot start. The
library is compiled beforehand, so that a page does not spend seconds on it.
"""

import ast
import json
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from scripts.building import engine, maps
from scripts.building.errors import BuildError
from scripts.building.fingerprint import of_folder, short_hash

COPIED = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")
LIBRARY = "python_stdlib.zip"
LOCK = "pyodide-lock.json"
ALWAYS = ("_ast_unparse", "collections", "csv", "dataclasses", "datetime", "itertools", "json", "math",
          "pydoc", "random", "statistics", "textwrap", "traceback")
"""What a reader who scripts the package at the bench may want, besides what the package imports. `help` is
pydoc, which loads _ast_unparse late."""
LIBRARY_MAKER = Path(__file__).with_name("pyodide_library.mjs")


def write(root: Path, site: Path, cache: Path) -> None:
    """Put the full engine into a built site and name it in the manifest."""
    npm_package = root / "node_modules" / "pyodide"
    draft = site / engine.FOLDER / "pyodide"
    draft.mkdir()
    for name in COPIED:
        shutil.copyfile(npm_package / name, draft / name)
    shutil.copyfile(_library(root, npm_package, cache), draft / LIBRARY)
    (draft / LOCK).write_text(_lock_without_packages(npm_package / LOCK))
    maps.forget(draft)
    named = f"pyodide-{of_folder(draft)}"
    draft.rename(draft.with_name(named))
    manifest_file = site / engine.FOLDER / engine.MANIFEST
    manifest = json.loads(manifest_file.read_text())
    manifest_file.write_text(json.dumps({**manifest, "pyodide": named + "/"}))


def _lock_without_packages(path: Path) -> str:
    """Return Pyodide's own lock file without its packages: the site serves none."""
    return json.dumps({**json.loads(path.read_text()), "packages": {}})


def _library(root: Path, npm_package: Path, cache: Path) -> Path:
    """Return the trimmed library, made once for a Pyodide release and a set of modules."""
    modules = sorted({*ALWAYS, *imported_modules(root / "calc")})
    version = json.loads((npm_package / "package.json").read_text())["version"]
    recipe = short_hash(" ".join([version, LIBRARY_MAKER.read_text(), *modules]).encode())
    library = cache / f"{recipe}.zip"
    if not library.exists():
        shutil.rmtree(cache, ignore_errors=True)
        cache.mkdir(parents=True)
        _make_library(library, modules)
    return library


def _make_library(target: Path, modules: list[str]) -> None:
    draft = target.with_suffix(".draft")
    made = subprocess.run(["node", str(LIBRARY_MAKER), str(draft), *modules],
                          capture_output=True, text=True, check=False)
    if made.returncode:
        raise BuildError("Pyodide's standard library could not be compiled:\n" + made.stderr)
    draft.rename(target)


def imported_modules(package: Path) -> Iterator[str]:
    """Yield the standard library modules that a package imports."""
    for path in sorted(package.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom) and node.module:
                names = [node.module]
            yield from (name for name in names if name.split(".")[0] in sys.stdlib_module_names)
