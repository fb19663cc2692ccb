"""The page's and the workers' modules, each joined into one small file.

On a slow line every further file costs a wait of its own.
"""

import os
import shutil
import subprocess
from collections.abc import Sequence
from pathlib import Path

from scripts.building.errors import BuildError

ENTRIES = ("page.mjs", "programs-worker.mjs", "store.mjs")
ALONE = ("worker.mjs",)
"""What starts together with the page and would only wait for parts that it shares with others."""
CLASSIC = ("search-worker.mjs",)
"""Workers that the theme starts, which knows no modules."""
VENDOR = "vendor"


def join(node_modules: Path, site: Path) -> None:
    """Replace the modules of a built site by their joined, minified form; vendored ones are only minified."""
    folder = site / "assets" / "js"
    joined = folder.with_name("js-joined")
    vendored = sorted(path.relative_to(folder).as_posix() for path in (folder / VENDOR).glob("*.mjs"))
    minify(node_modules, folder, ENTRIES, joined, "--bundle", "--splitting", "--chunk-names=[name]-[hash]")
    minify(node_modules, folder, ALONE, joined, "--bundle")
    minify(node_modules, folder, CLASSIC, joined, "--bundle", kind="iife")
    minify(node_modules, folder, vendored, joined, "--outbase=.")
    shutil.rmtree(folder)
    joined.rename(folder)


def minify(node_modules: Path, folder: Path, names: Sequence[str], target: Path, *options: str,
           kind: str = "esm") -> None:
    """Write modules of a folder into a target folder in fewer bytes."""
    command = [str(node_modules / ".bin" / "esbuild"), *names, *options, f"--format={kind}", "--minify",
               "--target=es2022", "--charset=utf8", "--out-extension:.js=.mjs", "--log-level=warning",
               f"--outdir={target}"]
    found_in = {**os.environ, "NODE_PATH": str(node_modules)}
    done = subprocess.run(command, cwd=folder, env=found_in, capture_output=True, text=True, check=False)
    if done.returncode:
        raise BuildError("modules have faults:\n" + done.stderr)
