"""The small engine and the calculators, as the browser's worker fetches them.

Every file is named by its content, so that a browser may keep it for good.
"""

import json
from pathlib import Path

from python_minifier import minify
from python_minifier.transforms.remove_annotations_options import RemoveAnnotationsOptions

from scripts.building import interpreter, page_scripts
from scripts.building.fingerprint import of_folder, short_hash
from scripts.building.packs import packs

FOLDER = "assets/engine"
MANIFEST = "manifest.json"
SOURCES = "sources.json"
"""The whole package as it is written, for whoever scripts it: `help` and tracebacks show its own lines."""
NPM_PACKAGE = "@micropython/micropython-webassembly-pyscript"
LOADER = "micropython.mjs"
INTERPRETER = "micropython.wasm"
SLIM_INTERPRETER = "micropython-slim.wasm"
LEFT_OUT = ("calc/__main__.py", "calc/command/", "calc/lookups/", "calc/paths/")
"""What only the command line and the build use."""
ALL_ANNOTATIONS = RemoveAnnotationsOptions(
    remove_variable_annotations=True, remove_return_annotations=True,
    remove_argument_annotations=True, remove_class_attribute_annotations=True,
)


def write(root: Path, site: Path) -> None:
    """Put the small engine and the bundled package into a built site, with their manifest."""
    folder = site / FOLDER
    folder.mkdir(parents=True)
    package = folder / "calc"
    package.mkdir()
    for name, sources in packs(bundle(root)).items():
        (package / f"{name}.json").write_text(json.dumps(sources, separators=(",", ":")))
    node_modules = root / "node_modules"
    page_scripts.minify(node_modules, node_modules / NPM_PACKAGE, [LOADER], folder)
    whole = (node_modules / NPM_PACKAGE / INTERPRETER).read_bytes()
    as_written = folder / SOURCES
    as_written.write_text(json.dumps(sources_of(root), separators=(",", ":")))
    manifest = {
        "micropython": _name_by_content(folder / LOADER),
        "wasm": _written(folder / SLIM_INTERPRETER, interpreter.slim(whole)),
        "whole": _written(folder / INTERPRETER, whole),
        "calc": package.rename(package.with_name(f"calc-{of_folder(package)}")).name + "/",
        "sources": _name_by_content(as_written),
    }
    (folder / MANIFEST).write_text(json.dumps(manifest))


def bundle(root: Path) -> dict[str, str]:
    """Return what the calculators need by path, each without docstrings, comments and annotations."""
    return {name: small(source, name) for name, source in sources_of(root).items()
            if not name.startswith(LEFT_OUT)}


def sources_of(root: Path) -> dict[str, str]:
    """Return all of the package's files by path."""
    return {path.relative_to(root).as_posix(): path.read_text(encoding="utf-8")
            for path in sorted((root / "calc").rglob("*.py"))}


def small(source: str, name: str) -> str:
    """Return a module's source in fewer bytes that does the same.

    Only what is named within a function is renamed: a traceback from a reader's browser stays readable.
    """
    return str(minify(
        source, name, remove_literal_statements=True, remove_annotations=ALL_ANNOTATIONS,
        rename_locals=True, rename_globals=False, hoist_literals=False,
    ))


def _written(path: Path, content: bytes) -> str:
    path.write_bytes(content)
    return _name_by_content(path)


def _name_by_content(path: Path) -> str:
    named = path.with_stem(f"{path.stem}-{short_hash(path.read_bytes())}")
    return path.rename(named).name
