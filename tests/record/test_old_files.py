"""Bows' files that are out in the world are read for good: add to these, never change or take one away.

The bows are invented. The first file was written when files had their first form.
"""

from pathlib import Path

import pytest

from calc.record import file
from calc.record.entries import entry_json
from calc.record.fill import fill
from calc.record.fold import State

FILES = Path(__file__).parent / "files"


def read(name):
    return file.records_in((FILES / name).read_text("utf-8"))


@pytest.mark.parametrize(("name", "entries"), [("form-1.html", [24]), ("form-1-all.html", [6, 6])])
def test_every_entry_of_an_old_file_is_read(name, entries):
    found = read(name)
    assert [len(each.entries) for each in found] == entries
    assert [(each.missing, each.unread, each.is_newer) for each in found] == [(0, [], False)] * len(entries)


def test_an_old_file_tells_what_it_told():
    [found] = read("form-1.html")
    state = State(found.entries)
    assert state.text("bow.title") == "61 in bow of no one"
    assert state.first("reading.weight").text == "48.5 lb"
    known = {each.input: each.text for each in fill(state, "weight-reduction") if each.text}
    assert (known["weight_came"], known["weight_now"], known["weight_wanted"], known["tiller_now"]) == (
        "48.5 lb", "45 lb", "42.5 lb", "5/32 in")


def test_an_old_file_written_again_holds_the_same():
    [found] = read("form-1.html")
    again = file.record_in(file.page(found.entries, "metric"))
    assert [entry_json(each) for each in again.entries] == [entry_json(each) for each in found.entries]
