"""Look-up tables: declared once, shown as HTML and as CSV."""

import csv
import io
import re

import markdown
import pytest

from calc import bibliography
from calc.lookups import catalog
from calc.lookups.declare import GRID, LIST, PAGE, TEXT, column, lookup, row
from calc.quantities import KINDS
from scripts.blocks.lookup import csv_text, row_anchor
from scripts.building import tables
from tests.sentences import whole
from tests.site.markup import Elements

STATUSES = {"read", "read second-hand", "from memory", "from memory, confirmed by calculation",
            "common practice", "calculated", "assumption to edit"}


@pytest.fixture(params=catalog.IDS)
def table(request):
    return catalog.find(request.param)


def converted(id):
    return markdown.markdown(f"::: table {id}", extensions=["scripts.blocks.extension"])


def test_every_row_is_complete_and_says_where_it_comes_from(table):
    assert table.rows
    assert table.note
    assert table.layout in (GRID, LIST)
    for each in table.rows:
        assert bibliography.find(each.source)
        assert each.status in STATUSES
    for each in table.columns:
        assert each.kind in [TEXT, PAGE, *(kind.id for kind in KINDS)]


def test_every_row_has_an_anchor_of_its_own_that_it_links_to(table):
    page = Elements(converted(table.id))
    assert page.unclosed == []
    anchors = [each["id"] for each in page.all("tr") if "id" in each]
    assert len(anchors) == len(set(anchors)) == len(table.rows)
    links = [each["href"] for each in page.all("a") if each["href"].startswith("#")]
    assert links == ["#" + anchor for anchor in anchors]
    assert all(re.fullmatch(r"[a-z0-9-]+", anchor) for anchor in anchors)


def test_the_csv_holds_every_row_with_its_source(table):
    head, *lines = csv.reader(io.StringIO(csv_text(table)))
    assert head[-2:] == ["Source", "Status"]
    assert len(lines) == len(table.rows)
    assert {len(line) for line in lines} == {len(table.columns) + 2}
    assert [line[-2] for line in lines] == [each.source for each in table.rows]


def test_the_csv_is_written_beside_the_page_that_shows_the_table(tmp_path):
    page = tmp_path / "lookup" / "grits" / "index.html"
    page.parent.mkdir(parents=True)
    page.write_text(converted("grits"), encoding="utf-8")
    tables.write(tmp_path)
    assert [path.name for path in page.parent.glob("*.csv")] == ["grits.csv"]


def test_a_cell_has_its_unit_in_the_head_and_its_number_to_sort_by():
    page = Elements(converted("grits"))
    assert {"data-label": "Mean grain size, µm", "data-sort": repr(125e-6)} in page.all("td")
    assert row_anchor(catalog.find("grits"), "P120") == "grits-p120"


def test_faulty_tables_are_refused():
    with pytest.raises(ValueError, match=whole("a row of odd has 2 cells for 1 columns: a")):
        lookup("odd", "Odd", "", (column("Name"),), (row(("a", "b"), "geometry", "calculated"),))
    with pytest.raises(ValueError, match=whole("nothing in lookups is called abacus")):
        catalog.find("abacus")


def test_a_table_longer_than_a_sheet_says_how_it_is_printed():
    found = {id: re.search(r'data-rows="(\w+)"', converted(id)) for id in catalog.IDS}
    printed_as = {id: match.group(1) for id, match in found.items() if match}
    assert printed_as["drills"] == "many"
    assert printed_as["exposure-limits"] == "long"
    for id in catalog.IDS:
        assert (id in printed_as) == (len(catalog.find(id).rows) > 55)
