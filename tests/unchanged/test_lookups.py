"""Every look-up table, as it was: no proof, it shows when something changes."""

from pathlib import Path

from calc.lookups import catalog
from scripts.blocks.lookup import csv_text
from tests.unchanged.storing import checksum, held_to


def test_unchanged_lookups():
    """Words as they stand, and a sum over all rows: what these say stands in their sources."""
    held_to(Path(__file__).with_name("lookups.json"), lambda _: {
        table.id: [table.title, table.note, table.layout, len(table.rows), checksum(csv_text(table))]
        for table in map(catalog.find, catalog.IDS)})
