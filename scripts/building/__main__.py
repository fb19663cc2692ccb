"""Build the site into `site/`, unless it is already built from exactly these files."""

import argparse
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from scripts.building import (
    compress,
    engine,
    fingerprint,
    hosts,
    links,
    manifest,
    names,
    page_scripts,
    pages,
    pyodide,
    release,
    revisions,
    search,
    signs,
    styles,
    tables,
    theme,
    vendor,
    words,
)
from scripts.building.errors import BuildError

ROOT = Path(__file__).parents[2]
SITE = ROOT / "site"
CACHE = ROOT / ".cache"
FAULT = re.compile(r"WARNING|ERROR|  - |\w*Error\b")
STEPS: tuple[tuple[str, Callable[[Path], None]], ...] = (
    ("pages from Markdown", lambda site: _run_mkdocs(site)),
    ("words of the glossary", words.mark),
    ("names of the theme's parts", names.write),
    ("look-up tables as CSV", tables.write),
    ("words of the search", lambda site: search.write(ROOT / "docs", site)),
    ("theme without spare parts", theme.trim),
    ("theme's script in parts", theme.part),
    ("manifest and icons", manifest.write),
    ("chart library and fonts", lambda site: vendor.copy(ROOT / "node_modules", site)),
    ("colours of small pictures", signs.dress),
    ("style sheets", lambda site: styles.join(ROOT / "node_modules", site)),
    ("page scripts", lambda site: page_scripts.join(ROOT / "node_modules", site)),
    ("calculators and small engine", lambda site: engine.write(ROOT, site)),
    ("full engine", lambda site: pyodide.write(ROOT, site, CACHE / "pyodide")),
    ("names by content", revisions.name_by_content),
    ("policy and preloads", pages.finish),
    ("offline list", release.write),
    ("headers for hosts", lambda site: hosts.write(site, os.environ.get("SITE_URL", ""))),
    ("link check", links.check),
    ("compression", lambda site: compress.compress(site, CACHE / "compressed")),
)


def main() -> int:
    """Build; return the exit status."""
    options = _options()
    made_from = fingerprint.of_inputs(ROOT)
    if not options.force and SITE.is_dir() and fingerprint.stamped(CACHE, made_from):
        return 0
    draft = CACHE / "site"
    shutil.rmtree(draft, ignore_errors=True)
    try:
        for title, step in STEPS:
            started = time.perf_counter()
            step(draft)
            print(f"         {time.perf_counter() - started:5.1f} s  {title}", flush=True)
    except BuildError as error:
        print(f"\nThe site was not built: {error}", file=sys.stderr)
        return 1
    fingerprint.forget(CACHE)
    shutil.rmtree(SITE, ignore_errors=True)
    draft.rename(SITE)
    fingerprint.stamp(CACHE, made_from)
    return 0


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="scripts/build", description=__doc__)
    parser.add_argument("--force", action="store_true", help="build even if nothing changed")
    return parser.parse_args()


def _run_mkdocs(site: Path) -> None:
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(site)]
    quiet = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    built = subprocess.run(command, cwd=ROOT, env=quiet, capture_output=True, text=True, check=False)
    if built.returncode:
        raise BuildError("the pages have faults:\n" + "\n".join(_faults(built.stderr)))


def _faults(said: str) -> list[str]:
    """Return the lines that name what is wrong: not the progress, nor the way through the library."""
    return [line for line in said.splitlines() if FAULT.match(line)]


if __name__ == "__main__":
    sys.exit(main())
