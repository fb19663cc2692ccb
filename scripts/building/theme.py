"""What the theme brings and this site never uses stays out of it; what it does at once comes in pieces."""

import re
import shutil
from pathlib import Path

from scripts.building import maps
from scripts.building.errors import BuildError

UNUSED = ("assets/javascripts/lunr", "assets/javascripts/workers", "assets/**/*.map")
"""Word lists for searching in other languages; its search, for which we have our own; maps for debugging."""
SCRIPT = "assets/javascripts/bundle.*.js"
MOUNTS = re.compile(r"([\w$]+\.subscribe\(\));(?=window\.document\$=)")
"""Where its script, all of it set up, begins to work on the page."""
APART = r"(document.currentScript.dataset.apart===undefined?now=>now():setTimeout)(()=>\1);"
"""The same, in a task of its own where the page has asked for that: a tap may come before it."""


def trim(site: Path) -> None:
    """Remove the unused parts from a built site."""
    for pattern in UNUSED:
        for path in list(site.glob(pattern)):
            if path.is_dir():
                shutil.rmtree(path)
            else:
                path.unlink()
    maps.forget(site)


def part(site: Path) -> None:
    """Let a page have the theme's script end before its work on the page begins."""
    [path] = site.glob(SCRIPT)
    parted, times = MOUNTS.subn(APART, path.read_text(encoding="utf-8"))
    if times != 1:
        raise BuildError("the theme's script begins its work in another way than it did")
    path.write_text(parted, encoding="utf-8")
