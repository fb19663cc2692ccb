"""The look-up tables as CSV files, each beside the page that shows it."""

import re
from pathlib import Path

from calc.lookups import catalog
from scripts.blocks.lookup import csv_text

SHOWN = re.compile(r'data-lookup="([a-z-]+)"')


def write(site: Path) -> None:
    """Write the file of every table that a page shows into that page's folder."""
    for page in site.rglob("*.html"):
        for id in SHOWN.findall(page.read_text(encoding="utf-8")):
            (page.parent / f"{id}.csv").write_text(csv_text(catalog.find(id)), encoding="utf-8", newline="")
