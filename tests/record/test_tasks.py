"""What a page asks of a record: JSON in, JSON out, the same as Python says."""

import json

import pytest

from calc import answer
from calc.quantities import INCH, parse
from calc.record.entries import entries_json, entry_id
from calc.record.exact import exact_text
from calc.record.fill import fill
from tests.record.bench import Bench


def ask(task, **more):
    answer.begin(json.dumps({"task": task, "units": "imperial", **more}))
    return json.loads(answer.advance())


@pytest.fixture
def bench():
    return Bench().came_in()


def kept(bench):
    return entries_json(bench.entries)


def test_a_bow_in_the_list(bench):
    found = ask("head", entries=kept(bench))
    assert found["title"] == "31 64 in recurve"
    assert found["weights"] == "Came at 53.0 lb, agreed 45.0 lb at 28 in."
    assert found["level"] == "ok"
    assert found["next"].startswith("Bring the weight down")


def test_a_bows_page(bench):
    wrong = bench.write("reading", brace="7 in")
    bench.write("reading", replaces=wrong.id)
    found = ask("stand", entries=kept(bench))
    assert found["next"]["calculators"] == ["weight-reduction", "strokes", "tiller"]
    assert [each["struck"] for each in found["timeline"]].count(True) == 1
    assert found["timeline"][1]["facts"][0] == ["Draw weight", "45 lb"]


def test_an_entry_is_taken_as_typed():
    found = ask("take", sheet="reading", id=entry_id(7, 7), at="2026-05-12T18:10+02:00",
                pairs=[["weight", "47.7 lb"], ["upper", " "], ["lower", "7-5/16 in"]])
    assert found["errors"] == []
    assert json.loads(found["entry"])["facts"] == {"lower": "7-5/16 in", "weight": "47.7 lb"}


@pytest.mark.parametrize(("pairs", "field", "said"), [
    ([["weight", "heavy"]], "weight", "is not a weight or force"),
    ([["colour", "red"]], "colour", "has no “colour”"),
    ([["curve", "12 in:11 lb;20 in:x;28 in:53 lb"]], "curve", "in row 2"),
    ([], None, "Fill in at least one"),
])
def test_what_cannot_be_taken_is_said_at_its_field(pairs, field, said):
    found = ask("take", sheet="reading", id=entry_id(7, 7), at="2026-05-12T18:10+02:00", pairs=pairs)
    assert found["entry"] is None
    assert found["errors"][0]["field"] == field
    assert said in found["errors"][0]["message"]


def test_an_entry_struck_out_comes_back_when_the_strike_is_struck_out(bench):
    before = ask("stand", entries=kept(bench))
    wrong = bench.write("reading", weight="40 lb", at_draw="28 in")
    at = "2026-05-12T18:10+02:00"
    entries = json.loads(kept(bench))
    [first, second] = [entry_id(2**48, chance) for chance in (1, 2)]
    strike = ask("strike", entries=json.dumps(entries), entry=wrong.id, id=first, at=at)
    entries.append(json.loads(strike["entry"]))
    struck = ask("stand", entries=json.dumps(entries))
    assert struck["columns"] == before["columns"]
    undone = ask("strike", entries=json.dumps(entries), entry=first, id=second, at=at)
    entries.append(json.loads(undone["entry"]))
    [weight, *_] = ask("stand", entries=json.dumps(entries))["columns"]
    assert weight == ["Draw weight", "53 lb", "45 lb", "40 lb"]


def test_what_is_not_there_cannot_be_struck_out(bench):
    at = "2026-05-12T18:10Z"
    found = ask("strike", entries=kept(bench), entry=entry_id(1, 1), id=entry_id(2, 2), at=at)
    assert found["refused"].startswith("There is no entry of the id")


@pytest.mark.parametrize(("fact", "text", "by", "units", "became"), [
    ("reading.weight", "47.7 lb", -1, "imperial", "47.6 lb"),
    ("reading.weight", "47.7", 10, "imperial", "48.7 lb"),
    ("reading.upper", "7 5/8 in", 1, "imperial", "7 21/32 in"),
    ("reading.lower", "7 5/16 in", -10, "imperial", "7 in"),
    ("reading.weight", "212 N", 1, "metric", "212.5 N"),
    ("reading.upper", "194 mm", -1, "metric", "193.0 mm"),
    ("reading.lower_offset_tip", "-3/32 in", 1, "imperial", "-5/64 in"),
    ("reading.upper_offset_riser", "1/64 in", -2, "imperial", "-1/64 in"),
    ("reading.upper_offset_riser", "0.5 mm", -3, "metric", "-1.0 mm"),
])
def test_a_reading_is_changed_by_steps(fact, text, by, units, became):
    assert ask("step", fact=fact, text=text, by=by, units=units)["text"] == became


def test_steps_begin_at_a_reading_and_end_at_its_bounds():
    empty = ask("step", fact="reading.weight", text=" ", by=1)
    assert empty["refused"].startswith("Nothing has been read yet")
    assert "from 5.0 lb" in ask("step", fact="reading.weight", text="5 lb", by=-1)["refused"]
    assert ask("step", fact="reading.scale", text="hanging", by=1)["refused"] == "“Scale” has no steps."


def test_a_file_goes_out_and_comes_in(bench):
    page = ask("file", entries=kept(bench))
    assert page["name"] == "bow-31-64-in-recurve.html"
    found = ask("read", text=page["page"])
    assert len(found["entries"]) == len(bench.entries)
    assert found["missing"] == 0


def test_what_is_no_file_is_refused_in_a_sentence():
    assert ask("read", text="no file")["refused"].startswith("The file holds no record")
    assert ask("unheard")["refused"] == "There is no task called unheard."


def test_the_table_goes_out(bench):
    assert ask("csv", entries=kept(bench))["text"].startswith("moment,sheet,since_start_strokes,weight_lb")


def test_a_calculator_is_filled_with_what_is_known_and_nothing_else(bench):
    found = {each["input"]: each for each in ask("fill", calculator="tiller", entries=kept(bench))["filled"]}
    assert found["upper"]["text"] == "7 5/8 in"
    assert found["upper"]["since"] == "5 May"
    missing = found["brace_height"]
    assert (missing["text"], missing["stale"], missing["since"], missing["said"]) == ("", False, "", "")
    assert missing["how"] == ("On the sheet “A reading” as “Brace height”: From the string to the deepest "
                              "point of the grip's throat.")
    bench.write("strokes", lower_belly="5", paper="P120")
    found = {each["input"]: each for each in ask("fill", calculator="tiller", entries=kept(bench))["filled"]}
    assert found["upper"]["stale"]
    assert not found["bow_length"]["stale"]


def test_what_was_worked_out_is_written_exactly():
    assert exact_text(5 / 16 * INCH, "length", "in", INCH) == "5/16 in"
    assert exact_text(-7 / 64 * INCH, "length", "in", INCH) == "-7/64 in"
    assert exact_text(2.5 * INCH, "length", "in", INCH) == "2 1/2 in"
    assert exact_text(0.0, "length", "in", INCH) == "0 in"
    for number in (0.1234, 1 / 3, 7.654321, -0.00017):
        assert parse(exact_text(number * INCH, "length", "in", INCH), "length") == pytest.approx(
            number * INCH, rel=1e-11)


def test_the_stroke_log_is_filled_from_readings_and_batches(bench):
    bench.write("strokes", upper_belly="10", lower_belly="20", paper="P120")
    bench.write("reading", weight="52 lb", at_draw="28 in", upper="7 9/16 in", lower="7 5/16 in")
    [log] = [each.text for each in fill(bench.state, "strokes") if each.input == "log"]
    assert log == "0:0:53 lb:5/16 in:p120;10:20:52 lb:1/4 in:same"
