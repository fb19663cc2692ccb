"""A kept answer beside what the record tells today."""

import json
from urllib.parse import urlencode

import pytest

from calc.record import compared
from calc.record.entries import entries_json, entry_id
from calc.record.fill import fill
from tests.record.bench import Bench
from tests.record.test_tasks import ask


@pytest.fixture
def bench():
    bench = Bench().came_in()
    pairs = [(each.input, each.text) for each in fill(bench.state, "tiller") if each.text]
    bench.write("answer", calculator="tiller", headline="Lower limb is the stiffer.",
                pairs=urlencode(pairs[:1]), more_pairs=urlencode([*pairs[1:], ("units", "imperial")]))
    return bench


def kept(bench):
    return bench.state.of("answer")[-1]


def test_the_figures_are_those_that_were_typed(bench):
    had = dict(compared.figures_of(kept(bench)))
    assert had["upper"] == "7 5/8 in"
    assert had["units"] == "imperial"


@pytest.mark.parametrize("text", ["7 5/8 in", "50 % & more = less + rest", "110°", "“a” b", "%zz 100%", ""])
def test_whatever_was_typed_is_read_back_from_a_link(bench, text):
    entry = bench.write("answer", calculator="tiller", pairs=urlencode([("upper", text), ("x", "1")]))
    assert compared.figures_of(entry) == [("upper", text), ("x", "1")]


@pytest.mark.parametrize("text", ["upper=%", "upper=%e", "upper=%ff", "upper", "", "&&=&%00=%00"])
def test_what_is_no_link_harms_nothing(bench, text):
    entry = bench.write("answer", calculator="tiller", pairs=text)
    assert isinstance(compared.changed(bench.state, entry), list)


def test_nothing_has_changed_until_something_is_read_anew(bench):
    assert compared.changed(bench.state, kept(bench)) == []
    bench.write("reading", upper="7.625 in", lower="7 5/16 in")  # the same number in other words
    assert compared.changed(bench.state, kept(bench)) == []
    bench.write("reading", upper="7 1/2 in", lower="7 5/16 in", brace="8 1/4 in")
    found = compared.changed(bench.state, kept(bench))
    assert [(each.now.input, each.was, each.now.text) for each in found] == [
        ("upper", "7 5/8 in", "7 1/2 in"), ("brace_height", "", "8 1/4 in")]


def test_a_page_is_told_what_changed_and_what_is_stale(bench):
    entry = kept(bench)
    bench.write("reading", day=12, upper="7 1/2 in")
    bench.write("strokes", day=13, lower_belly="10", paper="P120")
    found = ask("compare", entries=entries_json(bench.entries), entry=entry.id)
    assert found["headline"] == "Lower limb is the stiffer."
    assert found["calculator"] == "tiller"
    assert found["changed"] == [{"input": "upper", "was": "7 5/8 in", "now": "7 1/2 in", "since": "12 May",
                                 "stale": True}]
    assert "lower" in found["stale"]
    assert "upper=" in found["figures"]
    assert "No answer of the id" in ask("compare", entries=entries_json(bench.entries),
                                        entry=entry_id(1, 1))["refused"]


def test_a_page_is_told_what_was_foretold_for_a_reading_being_typed_and_for_the_last():
    bench = Bench().came_in()
    for number in range(1, 4):
        bench.write("strokes", lower_belly="20", paper="P120")
        if number < 3:
            bench.write("reading", weight=f"{53 - number} lb", at_draw="28 in", lower="7 5/16 in",
                        upper=f"{7.625 - number / 32:.5f} in")
    entries = entries_json(bench.entries)
    empty = ask("foretold", entries=entries)
    assert empty["expected"].startswith("Foretold by the log: ")
    assert (empty["read"], empty["level"]) == ("", "")
    typed = ask("foretold", entries=entries, pairs=[["weight", "50.1"], ["at_draw", "28 in"], ["upper", " "]])
    assert (typed["read"], typed["level"]) == ("Read as foretold.", "ok")
    assert ask("foretold", entries=entries, pairs=[["weight", "48 lb"]])["level"] == "watch"
    other = ask("foretold", entries=entries, pairs=[["weight", "48 lb"], ["at_draw", "26 in"]])
    assert "another draw" in other["expected"]
    bench.write("reading", weight="48 lb", at_draw="28 in", upper="7 17/32 in", lower="7 5/16 in")
    last = ask("foretold", entries=entries_json(bench.entries))
    assert "less than foretold" in last["read"]
    assert "Nothing was foretold" in ask("foretold", entries="[]")["expected"]
    assert "N" in ask("foretold", entries=entries, units="metric")["expected"]


def test_every_bow_goes_out_in_one_file_and_comes_in_again(bench):
    other = Bench()
    other.write("bow", title="66 in longbow")
    records = [entries_json(each.entries) for each in (bench, other)]
    found = ask("all", records=records)
    assert found["name"] == "all-bows.html"
    back = ask("bows", text=found["page"])
    assert back["missing"] == 0
    assert [[json.loads(each)["id"] for each in bow["entries"]] for bow in back["bows"]] == [
        [each.id for each in one.entries] for one in (bench, other)]


def test_only_what_an_answer_had_and_was_read_before_the_last_strokes_is_stale(bench):
    assert compared.stale(bench.state, kept(bench)) == []
    bench.write("strokes", lower_belly="12")
    assert [each.input for each in compared.stale(bench.state, kept(bench))] == [
        "upper", "lower", "draw_weight"]
    bench.write("answer", calculator="tiller", pairs=urlencode([("upper", "7 5/8 in")]))
    assert [each.input for each in compared.stale(bench.state, kept(bench))] == ["upper"]


def test_what_has_changed_is_not_told_as_stale_beside_it(bench):
    entry = kept(bench)
    bench.write("reading", upper="7 1/2 in")
    bench.write("strokes", lower_belly="12")
    told = ask("compare", entries=entries_json(bench.entries), entry=entry.id)
    assert [each["input"] for each in told["changed"]] == ["upper"]
    assert told["stale"] == ["lower", "draw_weight"]
