"""A program's copy of a bow."""

import json

import pytest

from calc.quantities import INCH, POUND_FORCE
from calc.record import file, open_bow
from calc.record.entries import entries_json
from tests.record.bench import Bench
from tests.sentences import whole


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
    bench.write("reading", weight="51.4 lb", at_draw="28 in", curve="12 in:11 lb;20 in:33 lb;28 in:51.4 lb",
                brace="heavy")
    return bench


@pytest.fixture(params=["json", "page"])
def path(request, bench, tmp_path):
    path = tmp_path / "bow"
    text = entries_json(bench.entries) if request.param == "json" else file.page(bench.entries, "imperial")
    path.write_text(text, "utf-8")
    return path


def test_a_program_reads_how_the_bow_stands(path):
    bow = open_bow(str(path))
    assert repr(bow) == "<bow: 31 64 in recurve>"
    assert bow.state()["reading.weight"] == "51.4 lb"
    assert bow.fill("tiller")["upper"] == "7 5/8 in"
    assert "hold" in bow.missing("tiller")
    assert ("proof", "stop") in bow.checks()


def test_readings_are_numbers(path):
    first, second = open_bow(str(path)).readings()
    assert first["upper"] == pytest.approx(7.625 * INCH)
    assert second["weight"] == pytest.approx(51.4 * POUND_FORCE)
    assert second["curve"][0] == pytest.approx({"draw": 12 * INCH, "weight": 11 * POUND_FORCE})
    assert "brace" not in second  # it cannot be read
    [batch] = open_bow(str(path)).batches()
    assert (batch["upper_belly"], batch["paper"]) == (30, "P120")


def test_a_bow_that_is_not_there_is_said(tmp_path):
    with pytest.raises(ValueError, match=whole(
            "there is no bow in “", "none.json”: give the program a bow first")):
        open_bow(str(tmp_path / "none.json"))


def test_a_program_changes_nothing(path):
    before = path.read_bytes()
    bow = open_bow(str(path))
    bow.state().clear()
    bow.readings()[0].clear()
    assert bow.state()
    assert path.read_bytes() == before
    assert json.dumps(bow.readings())
