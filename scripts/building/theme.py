"""What the theme brings and this site never uses stays out of it."""

import shutil
from pathlib import Path

from scripts.building import maps

UNUSED = ("assets/javascripts/lunr", "assets/javascripts/workers", "assets/**/*.map")
"""Word lists for searching in other languages; its search, for which we have our own; maps for debugging."""


def trim(site: Path) -> None:
    """Remove the unused parts from a built site."""
    for pattern in UNUSED:
        for path in list(site.glob(pattern)):
            if path.is_dir():
                shutil.rmtree(path)
            else:
                path.unlink()
    maps.forget(site)
