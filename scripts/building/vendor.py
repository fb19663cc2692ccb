"""Third-party files that the pages themselves use, copied from npm packages."""

import shutil
from pathlib import Path

FILES = (
    ("uplot/dist/uPlot.esm.js", "assets/js/vendor/uplot.mjs"),
    ("uplot/dist/uPlot.min.css", "assets/css/vendor/uplot.css"),
    ("@fontsource/besley/files/besley-latin-600-normal.woff2",
     "assets/fonts/besley-latin-600-normal.woff2"),
    ("@fontsource-variable/atkinson-hyperlegible-next/files/"
     "atkinson-hyperlegible-next-latin-wght-normal.woff2",
     "assets/fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2"),
)


def copy(node_modules: Path, site: Path) -> None:
    """Copy the chart library and the fonts into a built site."""
    for source, target in FILES:
        (site / target).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(node_modules / source, site / target)
