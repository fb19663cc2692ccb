"""Third-party files that the pages themselves use, copied from npm packages."""

import shutil
from pathlib import Path

from scripts.building.errors import BuildError

CHARTS = "assets/js/vendor/uplot.mjs"
FILES = (
    ("uplot/dist/uPlot.esm.js", CHARTS),
    ("uplot/dist/uPlot.min.css", "assets/css/vendor/uplot.css"),
    ("@fontsource/besley/files/besley-latin-600-normal.woff2",
     "assets/fonts/besley-latin-600-normal.woff2"),
    ("@fontsource-variable/atkinson-hyperlegible-next/files/"
     "atkinson-hyperlegible-next-latin-wght-normal.woff2",
     "assets/fonts/atkinson-hyperlegible-next-latin-wght-normal.woff2"),
)
LOCALE = (
    ("const numFormatter = new Intl.NumberFormat(domEnv ? nav.language : 'en-US');\n", ""),
    ("numFormatter.format(val)", "String(val)"),
    ("new Intl.DateTimeFormat().resolvedOptions().timeZone", "undefined"),
)
"""What the chart library asks of the reader's language: a browser takes longer for that than for its rest."""


def copy(node_modules: Path, site: Path) -> None:
    """Copy the chart library and the fonts into a built site."""
    for source, target in FILES:
        (site / target).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(node_modules / source, site / target)
    _leave_out_locale(site / CHARTS)


def _leave_out_locale(path: Path) -> None:
    """Write a chart's figures as its table does, whatever the reader's language; no axis is of time."""
    text = path.read_text(encoding="utf-8")
    for theirs, ours in LOCALE:
        if text.count(theirs) != 1:
            raise BuildError(f"{path.name} has changed: it does not say once “{theirs}”")
        text = text.replace(theirs, ours)
    path.write_text(text, encoding="utf-8")
