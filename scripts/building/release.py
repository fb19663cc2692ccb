"""Tells the service worker which files make up this release."""

import json
from collections.abc import Iterator
from pathlib import Path

from scripts.building.fingerprint import of_folder

SERVICE_WORKER = "service-worker.js"
KEPT_SUFFIXES = (".css", ".csv", ".html", ".ico", ".js", ".json", ".mjs", ".pack", ".png", ".py", ".svg",
                 ".wasm", ".webmanifest", ".woff2")
ON_DEMAND = ("assets/engine/pyodide", "assets/engine/sources")
"""What scripting the package takes is fetched when a reader asks for it, not before."""
NEVER_KEPT = ("404.html", SERVICE_WORKER)


def write(site: Path) -> None:
    """Put this release's id and list of files in front of the service worker, if the site has one."""
    script = site / SERVICE_WORKER
    if script.is_file():
        listed = {"build": of_folder(site), "files": sorted(_addresses(site)),
                  "onDemand": sorted(_on_demand(site))}
        code = script.read_text(encoding="utf-8")
        script.write_text(f"const RELEASE = {json.dumps(listed)};\n{code}", encoding="utf-8")


def _addresses(site: Path) -> Iterator[str]:
    for path in site.rglob("*"):
        name = path.relative_to(site).as_posix()
        if path.suffix in KEPT_SUFFIXES and not name.startswith(ON_DEMAND + NEVER_KEPT):
            yield name.removesuffix("index.html")


def _on_demand(site: Path) -> Iterator[str]:
    for path in site.rglob("*"):
        name = path.relative_to(site).as_posix()
        if path.is_file() and name.startswith(ON_DEMAND):
            yield name
