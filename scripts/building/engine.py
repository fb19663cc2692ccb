"""The small engine and the calculators, as the browser's worker fetches them.

Every file is named by its content, so that a browser may keep it for good.
"""

import json
from collections.abc import Mapping
from pathlib import Path

from scripts.building import bytecode, form_words, interpreter
from scripts.building.fingerprint import of_folder, short_hash
from scripts.building.packs import packs

FOLDER = "assets/engine"
MANIFEST = "manifest.json"
SOURCES = "sources.json"
"""The whole package as it is written, for whoever scripts it: `help` and tracebacks show its own lines."""
NPM_PACKAGE = "@micropython/micropython-webassembly-pyscript"
INTERPRETER = "micropython.wasm"
SLIM_INTERPRETER = "micropython-slim.wasm"
LEFT_OUT = ("calc/__main__.py", "calc/command/", "calc/lookups/", "calc/paths/")
"""What only the command line and the build use."""


def write(root: Path, site: Path) -> None:
    """Put the small engine and the bundled package into a built site, with their manifest."""
    folder = site / FOLDER
    folder.mkdir(parents=True)
    package = folder / "calc"
    package.mkdir()
    for name, content in packed(bundle(root)).items():
        (package / f"{name}.pack").write_bytes(content)
    whole = (root / "node_modules" / NPM_PACKAGE / INTERPRETER).read_bytes()
    as_written = folder / SOURCES
    as_written.write_text(json.dumps(sources_of(root), separators=(",", ":")))
    manifest = {
        "wasm": _written(folder / SLIM_INTERPRETER, interpreter.slim(whole)),
        "whole": _written(folder / INTERPRETER, whole),
        "calc": package.rename(package.with_name(f"calc-{of_folder(package)}")).name + "/",
        "sources": _name_by_content(as_written),
    }
    (folder / MANIFEST).write_text(json.dumps(manifest))


def packed(sources: Mapping[str, str]) -> dict[str, bytes]:
    """Return the packs by name: a line of JSON with the size of each compiled module, and these behind it."""
    modules = bytecode.compiled({path: form_words.without(path, text) for path, text in sources.items()})
    return {name: pack({path: modules[path] for path in map(bytecode.name_of, paths)})
            for name, paths in packs(sources).items()}


def pack(modules: Mapping[str, bytes]) -> bytes:
    """Return modules in one file."""
    sizes = {path: len(code) for path, code in modules.items()}
    return b"".join([json.dumps(sizes, separators=(",", ":")).encode(), b"\n", *modules.values()])


def bundle(root: Path) -> dict[str, str]:
    """Return the sources that the calculators need, by path."""
    return {name: source for name, source in sources_of(root).items() if not name.startswith(LEFT_OUT)}


def sources_of(root: Path) -> dict[str, str]:
    """Return all of the package's files by path."""
    return {path.relative_to(root).as_posix(): path.read_text(encoding="utf-8")
            for path in sorted((root / "calc").rglob("*.py"))}


def _written(path: Path, content: bytes) -> str:
    path.write_bytes(content)
    return _name_by_content(path)


def _name_by_content(path: Path) -> str:
    named = path.with_stem(f"{path.stem}-{short_hash(path.read_bytes())}")
    return path.rename(named).name
