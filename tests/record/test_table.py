"""The table of readings and batches, read back by the standard library's reader (RFC 4180)."""

import csv
import io

import pytest

from calc.record import table
from tests.record.bench import Bench


def rows(entries, system="imperial"):
    return list(csv.DictReader(io.StringIO(table.csv(entries, system), newline="")))


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("strokes", upper_belly="10", lower_belly="20", lower_back="5", paper="P120")
    bench.write("reading", weight="51 1/2 lb", at_draw="28 in", upper="7 9/16 in", lower="7 5/16 in",
                scale="=HYPERLINK(\"x\"),\n1")
    return bench


def test_one_row_a_reading_or_batch_with_units_in_the_head(bench):
    found = rows(bench.entries)
    assert [row["sheet"] for row in found] == ["reading", "strokes", "reading"]
    assert [row["since_start_strokes"] for row in found] == ["0", "35", "35"]
    assert found[0]["weight_lb"] == "53"
    assert found[0]["upper_in"] == "7.625"
    assert found[1]["lower_belly"] == "20"
    assert found[1]["paper"] == "P120"
    assert found[2]["weight_lb"] == "51.5"
    assert found[2]["moment"].startswith("2026-05-05T09:07")


def test_the_same_figures_in_metric(bench):
    first = rows(bench.entries, "metric")[0]
    assert float(first["weight_N"]) == pytest.approx(53 * 4.4482216152605, abs=1e-5)
    assert float(first["upper_mm"]) == pytest.approx(7.625 * 25.4, abs=1e-5)


def test_what_is_not_whole_has_six_decimals_and_no_noughts_behind(bench):
    first = rows(bench.entries, "metric")[0]
    assert first["weight_N"] == "235.755746"  # 53 lb of 4.4482216152605 N: 235.7557456
    assert first["upper_mm"] == "193.675"  # 7.625 in of 25.4 mm


def test_a_cell_that_a_spreadsheet_would_work_out_is_made_harmless(bench):
    assert rows(bench.entries)[2]["scale"] == "'=HYPERLINK(\"x\"),\n1"


def test_the_owner_is_not_in_it(bench):
    bench.write("owner", name="markerword", reach="markerword")
    assert "markerword" not in table.csv(bench.entries, "imperial")


def test_a_switch_that_cannot_be_read_stays_as_it_was_typed(bench):
    bench.write("reading", weight="50 lb", from_distance="perhaps")
    assert rows(bench.entries)[-1]["from_distance"] == "perhaps"


def test_only_cells_that_need_it_stand_in_quotation_marks(bench):
    text = table.csv(bench.entries, "imperial")
    assert text.startswith("moment,sheet,since_start_strokes,weight_lb,")
    assert "2026-05-05T09:04+02:00,reading,0,53,28,7.625,7.3125," in text
    assert text.count('"') == 2 + 2 * 2  # around one cell, and two of its own, each written twice
