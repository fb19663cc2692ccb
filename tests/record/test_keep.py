"""What keeping an answer writes into a record: the answer as it was said, and what was typed for it."""

import json

import pytest

from calc.record import keep, sheets, tasks
from calc.record.entries import MOST_TEXT, Entry, entry_json, read_entries
from calc.record.fill import fill
from calc.record.fold import State

IDS = [f"01k2f7m3q9xw{number:02d}" for number in range(10, 20)]
READING = Entry("01k2f7m3q9xw01", "2026-05-12T18:10+02:00", "reading",
                (("weight", "47.7 lb"), ("at_draw", "28 in"), ("brace", "7 3/4 in"), ("upper", "7 5/8 in"),
                 ("lower", "7 5/16 in")))


def fresh(calculator: str, *typed: tuple[str, str], form: tuple[tuple[str, str], ...] = ()):
    found = keep.fresh(State([READING]), calculator, list(typed), dict(form + typed))
    return [(each.sheet, each.name, each.text, each.was) for each in found]


def test_what_was_typed_anew_becomes_a_reading_and_says_what_stood_there():
    found = fresh("tiller", ("brace_height", "7 13/16 in"))
    assert found == [("reading", "brace", "7 13/16 in", "7 3/4 in")]


@pytest.mark.parametrize("text", ["7 3/4 in", "7.75 in", "7-3/4 in"])
def test_the_same_figure_in_other_words_is_nothing_new(text):
    assert fresh("tiller", ("brace_height", text)) == []


def test_a_weight_is_written_with_its_draw_or_not_at_all():
    assert fresh("weight-reduction", ("weight_now", "46 lb"), form=(("draw_length", "28 in"),)) == [
        ("reading", "weight", "46 lb", "47.7 lb"), ("reading", "at_draw", "28 in", "28 in")]
    assert fresh("tiller", ("draw_weight", "46 lb")) == []
    assert fresh("weight-reduction", ("draw_length", "27 in"), form=(("weight_now", "47.7 lb"),)) == []


def test_what_a_record_works_out_is_not_written_down():
    assert fresh("weight-reduction", ("tiller_now", "1/4 in"), ("weight_came", "53 lb")) == []


def test_words_of_a_calculator_become_the_records_own():
    found = fresh("arrow-match", ("string_material", "polyester"))
    assert found == [("string", "material", "polyester", "")]
    assert fresh("arrow-match", ("string_material", "low_stretch")) == []  # the record has two such


def asked(**more):
    return {"task": "keep", "units": "imperial", "entries": "[" + entry_json(READING) + "]",
            "calculator": "tiller", "pairs": [["upper", "7 5/8 in"], ["brace_height", "7 13/16 in"]],
            "typed": [["brace_height", "7 13/16 in"]],
            "figures": ["upper=7+5/8+in", "brace_height=7+13/16+in"],
            "said": [["headline", "Take 3 % off."], ["results", ""]], "ids": IDS,
            "at": "2026-05-13T09:00+02:00", "source": "tiller abc", **more}


def kept(**more) -> list[Entry]:
    answer = tasks.answer(asked(**more))
    return read_entries("[" + ",".join(each["text"] for each in answer["entries"]) + "]")[0]


def test_an_answer_is_kept_as_it_was_said_with_where_each_figure_came_from():
    [answer] = kept()
    assert answer.sheet == "answer"
    assert answer.source == "tiller abc"
    assert dict(answer.facts) == {
        "calculator": "tiller", "pairs": "upper=7+5/8+in&brace_height=7+13/16+in",
        "headline": "Take 3 % off.",
        "origin": f"{READING.id}: upper; typed: brace_height"}


def test_with_readings_what_was_typed_is_an_entry_of_its_own():
    _, reading = kept(readings=True)
    assert (reading.sheet, reading.facts) == ("reading", (("brace", "7 13/16 in"),))
    state = State([READING, reading])
    assert state.text("reading.brace") == "7 13/16 in"


def test_a_figure_that_the_record_does_not_take_is_named_and_left_out():
    odd = {"typed": [["brace_height", "40 in"]], "pairs": [["brace_height", "40 in"]]}
    [found] = tasks.answer(asked(**odd) | {"task": "fresh"})["fresh"]
    assert "40 in" in found["refused"]
    assert len(kept(readings=True, **odd)) == 1


def test_an_answer_too_long_for_a_record_is_refused_whole():
    with pytest.raises(keep.TooLong):
        keep.answer_facts("tiller", ["upper=" + "7" * (MOST_TEXT - 10)] * 4, {}, [])


def test_a_long_answer_is_shared_out_over_its_facts():
    figures = [f"{letter}=" + "7" * (MOST_TEXT // 2 - 3) for letter in "abcd"]
    facts = dict(keep.answer_facts("tiller", figures, {}, []))
    assert "&".join(facts[name] for name in keep.PAIR_FACTS if name in facts) == "&".join(figures)


@pytest.mark.parametrize(("more", "facts"), [(0, 1), (1, 2)])
def test_a_fact_is_filled_to_its_last_letter(more, facts):
    figures = ["a=" + "7" * (MOST_TEXT // 2 - 3), "b=" + "7" * (MOST_TEXT - MOST_TEXT // 2 - 2 + more)]
    kept = dict(keep.answer_facts("tiller", figures, {}, []))
    assert len([name for name in keep.PAIR_FACTS if name in kept]) == facts


def test_filling_says_what_the_bow_is_called_and_what_its_record_shows():
    found = tasks.answer(asked() | {"task": "fill"})
    assert found["title"]
    assert json.dumps(found["checks"]).count("rb-check") >= 1
    brace = next(each for each in found["filled"] if each["input"] == "brace_height")
    assert (brace["text"], brace["since"]) == ("7 3/4 in", "12 May")
    assert not brace["stale"]
    assert not brace["shop"]


READ_OFF = (("tiller", 0.008), ("upper", 0.193), ("upper_error", 0.0011), ("lower", 0.185),
            ("lower_error", 0.0012), ("brace_height", None), ("profile", "6.00in:0.512in; 12.00in:0.800in"),
            ("shape_error", 0.0009), ("upper_profile", "6.00in:0.532in; 12.00in:0.830in"),
            ("lower_profile", "6.00in:0.492in; 12.00in:0.770in"), ("limb_shape_error", 0.0018),
            ("throat", 0.019), ("throat_error", 0.0008))


def read_off(units="imperial", **more):
    return tasks.answer({**asked(typed=[["upper_limb", "1:1"]]), "task": "fresh", "units": units,
                         "calculator": "photograph", "results": [list(each) for each in READ_OFF],
                         **more})["fresh"]


def test_what_a_photograph_shows_becomes_readings_with_their_errors():
    """0.193 m is 7.598 in, 0.0011 m is 0.043 in (an inch is 25.4 mm)."""
    told = [(each["label"], each["text"], each["error"], each["was"]) for each in read_off()]
    assert told == [
        ("Upper tiller distance", "7.598 in", "0.043 in", "7 5/8 in"), ("Read", "fadeout", "", ""),
        ("Lower tiller distance", "7.283 in", "0.047 in", "7 5/16 in"),
        ("Unstrung shape", "6.00in:0.512in;12.00in:0.800in", "0.035 in", ""),
        ("Unstrung shape of the upper limb", "6.00in:0.532in;12.00in:0.830in", "0.071 in", ""),
        ("Unstrung shape of the lower limb", "6.00in:0.492in;12.00in:0.770in", "0.071 in", ""),
        ("Fadeouts behind the throat", "0.748 in", "0.031 in", "")]
    assert [each["text"] for each in read_off(units="metric")][:1] == ["193.0 mm"]


def test_figures_that_are_the_examples_alone_are_no_readings():
    assert read_off(typed=[]) == []


def test_readings_of_a_photograph_are_entries_of_their_own_with_their_source_and_fill_with_it():
    made = kept(calculator="photograph", results=[list(each) for each in READ_OFF], readings=True,
                pairs=[["upper_limb", "1:1"]], typed=[["upper_limb", "1:1"]], source="photograph abc")
    assert [(each.sheet, each.source) for each in made] == [
        ("answer", "photograph abc"), ("reading", "photograph abc"), ("bow", "photograph abc")]
    assert dict(made[1].facts) == {"upper": "7.598 in", "measured": "fadeout", "lower": "7.283 in"}
    assert made[1].note == ("Read off by a calculator; each figure with half of the range that holds 95 of "
                            "100. Upper tiller distance ± 0.043 in. Lower tiller distance ± 0.047 in.")
    filled = {each.input: each for each in fill(State([READING, *made]), "weight-reduction")}
    assert filled["profile"].text == "6.00in:0.512in;12.00in:0.800in"
    assert filled["profile"].said == "From a photograph of 13 May, ± 0.035 in"
    assert filled["throat"].said == "From a photograph of 13 May, ± 0.031 in"
    assert filled["tiller_now"].said == "From a photograph of 13 May"  # worked out of both distances
    assert filled["brace_height"].said == ""  # by rule, as before
    shape = {each.input: each for each in fill(State([READING, *made]), "bow-model")}["profile"]
    assert (shape.text, shape.said) == (filled["profile"].text, filled["profile"].said)


def test_only_what_a_record_knows_otherwise_is_new():
    assert read_off(results=[["upper", 0.193675], ["upper_error", 0.001]]) == []  # 7 5/8 in, as it has it


def test_no_calculator_writes_down_what_was_done_or_what_was_said():
    kept = {sheet.id for sheet in sheets.SHEETS if keep._is_kept(sheet)}
    assert kept.isdisjoint({"strokes", "edges", "coat", "lettering", "answer", "told", "handover"})
    assert kept > {"bow", "archer", "reading", "agreed"}
