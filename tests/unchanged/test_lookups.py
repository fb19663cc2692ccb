"""Every look-up table, as it was: no proof, it shows when something changes."""

import zlib
from pathlib import Path

from calc.lookups import catalog
from scripts.blocks.lookup import csv_text
from tests.unchanged.storing import held_to


def test_unchanged_lookups():
    """Words as they stand, and a sum over all rows: what these say stands in their sources."""
    held_to(Path(__file__).with_name("lookups.json"), lambda _: {
        table.id: [table.title, table.note, table.layout, len(table.rows),
                   f"{zlib.crc32(csv_text(table).encode()):08x}"]
        for table in map(catalog.find, catalog.IDS)})
