"""The package's sources in packs: what every calculator needs, and what each one adds.

A reader of one page fetches the core and that calculator's pack, and so waits
no longer when the book gains calculators.
"""

import ast
from collections.abc import Iterable, Mapping

from calc import catalog

CORE = "core"
ENTRY = "calc/answer.py"
RECORD = "record"
TASKS = "calc/record/tasks.py"
PACKAGE_FILE = "__init__.py"


def packs(sources: Mapping[str, str]) -> dict[str, list[str]]:
    """Return the paths in each pack by its name: CORE, one under the id of each calculator, and RECORD."""
    core = _with_imports(sources, [ENTRY])
    found = {CORE: core, RECORD: _with_imports(sources, [TASKS]) - core}
    for id in catalog.IDS:
        module = "calc/calculators/" + id.replace("-", "_") + ".py"
        found[id] = _with_imports(sources, [module]) - core
    return {name: sorted(paths) for name, paths in found.items()}


def _with_imports(sources: Mapping[str, str], entries: Iterable[str]) -> set[str]:
    met: set[str] = set()
    waiting = list(entries)
    while waiting:
        path = waiting.pop()
        if path not in met:
            met.add(path)
            needed = (*_imported(sources[path]), *_packages_of(path))
            waiting += [other for other in needed if other in sources]
    return met


def _imported(source: str) -> Iterable[str]:
    """Yield the files that a module may import."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            yield from (_file_of(alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield _file_of(node.module)
            yield from (_file_of(node.module + "." + alias.name) for alias in node.names)


def _packages_of(path: str) -> Iterable[str]:
    """Yield the files that run before a module does: those of the packages that it is in."""
    folders = path.split("/")[:-1]
    return ("/".join([*folders[:depth], PACKAGE_FILE]) for depth in range(1, len(folders) + 1))


def _file_of(module: str) -> str:
    return module.replace(".", "/") + ".py"
