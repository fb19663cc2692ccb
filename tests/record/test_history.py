"""The charts of a bow's page: what was read, over the strokes that had been made."""

import pytest

from calc.quantities import parse
from calc.record import tasks
from calc.record.entries import Entry, entry_json
from calc.record.fold import State
from calc.record.history import charts


def entry(number: int, sheet: str, **facts: str) -> Entry:
    at = f"2026-05-{number:02d}T10:00+02:00"
    return Entry(f"01k2f7m3q9xw{number:02d}", at, sheet, tuple(facts.items()))


def reading(number: int, weight: str, upper: str, at_draw: str = "28 in") -> Entry:
    return entry(number, "reading", weight=weight, at_draw=at_draw, upper=upper, lower="7 5/16 in")


LOG = [reading(10, "53 lb", "7 5/8 in"), entry(11, "strokes", upper_belly="12", lower_belly="18"),
       reading(12, "52 lb", "7 9/16 in"), entry(13, "strokes", lower_back="10"),
       reading(14, "51.5 lb", "7 1/2 in"), reading(15, "47 lb", "7 1/2 in", at_draw="26 in"),
       reading(16, "51.4 lb", "7 1/2 in"), entry(17, "agreed", weight="45 lb", at_draw="28 in")]


def test_each_reading_stands_over_the_strokes_made_until_then():
    weight, tiller = charts(State(LOG))
    aim, read = weight.lines
    assert read.xs == [0, 30, 40, 40]  # the reading at another draw is left out
    assert read.ys == [parse(text, "force") for text in ("53 lb", "52 lb", "51.5 lb", "51.4 lb")]
    assert aim.ys == [parse("45 lb", "force")] * 2
    assert tiller.lines[0].xs == [0, 30, 40, 40, 40]
    assert tiller.lines[0].ys[0] == pytest.approx(parse("5/16 in", "length"))


def test_one_stroke_between_two_readings_is_enough_to_see():
    log = [LOG[0], entry(11, "strokes", upper_belly="1"), LOG[2]]
    assert [each.lines[-1].xs for each in charts(State(log))] == [[0, 1], [0, 1]]


def test_where_the_string_ran_stands_in_the_chart_of_tiller():
    line = {"upper_offset_riser": "1/64 in", "lower_offset_tip": "-3/32 in"}
    found = charts(State([*LOG, entry(18, "reading", **line), entry(19, "strokes", lower_belly="5"),
                          entry(20, "reading", lower_offset_tip="-1/16 in")]))
    assert [each.id for each in found] == ["weight-history", "tiller-history"]
    upper, lower, read = found[1].lines
    assert (found[1].y.label, upper.label, lower.label, read.label) == (
        "Tiller and offsets", "Upper, at the fadeout", "Lower, near the tip", "Tiller read")
    assert (upper.xs, lower.xs) == ([40], [40, 45])
    assert lower.ys == pytest.approx([parse("-3/32 in", "length"), parse("-1/16 in", "length")])
    assert read.xs == [0, 30, 40, 40, 40]
    assert [each.label for each in found[0].lines] == ["Agreed", "Read"]


def test_an_aim_at_another_draw_is_not_drawn():
    weight, _ = charts(State([*LOG, entry(18, "agreed", weight="43 lb", at_draw="27 in")]))
    assert [each.label for each in weight.lines] == ["Read"]


@pytest.mark.parametrize("entries", [[], LOG[:1], LOG[:2], [LOG[0], LOG[2]]])
def test_without_two_readings_and_strokes_between_them_there_is_nothing_to_see(entries):
    assert charts(State(entries)) == ()


def test_a_bows_page_gets_the_charts_with_their_tables_and_its_answers():
    kept = entry(19, "answer", calculator="tiller", headline="Take 3 % off.")
    text = "[" + ",".join(entry_json(each) for each in [*LOG, kept]) + "]"
    stand = tasks.answer({"task": "stand", "units": "imperial", "entries": text})
    assert [each["id"] for each in stand["charts"]] == ["weight-history", "tiller-history"]
    assert [each[1]["data-chart"] for each in stand["figures"]] == ["weight-history", "tiller-history"]
    assert stand["answers"] == [{"id": kept.id, "calculator": "tiller", "headline": "Take 3 % off.",
                                 "moment": stand["answers"][0]["moment"]}]
    assert ["Measure it", ["tiller", "draw-curve", "tracking", "bow-model"]] in stand["steps"]
