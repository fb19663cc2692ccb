"""Entries: read from hostile text, written the same everywhere, folded in any order."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.record.bindings import BOUND
from calc.record.entries import (
    ALPHABET,
    MOST_ENTRIES,
    Entry,
    entries_json,
    entry_id,
    entry_json,
    is_id,
    read_entries,
    to_json,
    written_at,
)
from calc.record.fill import fill
from calc.record.fold import State, standing, struck_ids, union
from calc.record.moments import moment_text, parse_moment
from tests.sentences import whole

ids = st.builds(entry_id, st.integers(1_700_000_000_000, 1_700_000_000_020), st.integers(0, 3))
moments = st.builds(moment_text, st.integers(63_900_000_000, 63_900_100_000).map(lambda s: s // 60 * 60),
                    st.sampled_from([-300, 0, 120, 345]))
names = st.text("abcdefgh_", min_size=1, max_size=6)
texts = st.text(max_size=12)
entries = st.builds(
    Entry, ids, moments, st.sampled_from(["reading", "strokes", "bow", "not_known_here"]),
    st.dictionaries(names, texts, max_size=3).map(lambda facts: tuple(facts.items())),
    why=texts, note=texts, device=texts, replaces=st.one_of(st.just(""), ids),
    more=st.dictionaries(st.text("xyz", min_size=3, max_size=4), st.integers(), max_size=2).map(
        lambda more: tuple((key, to_json(value)) for key, value in more.items())),
)
records = st.lists(entries, max_size=12)


def lines(found):
    return [entry_json(each) for each in found]


@given(records, st.randoms(use_true_random=False))
def test_how_things_stand_depends_on_neither_order_nor_doubles(record, chance):
    shuffled = record + record[: len(record) // 2]
    chance.shuffle(shuffled)
    assert lines(standing(shuffled)) == lines(standing(record))


@given(records, records, records)
def test_bringing_copies_together_is_a_union(one, two, three):
    assert lines(union(one, two)) == lines(union(two, one))
    assert lines(union(union(one, two), three)) == lines(union(one, union(two, three)))
    assert lines(union(one, one)) == lines(union(one))


@given(records)
def test_striking_out_and_undoing_changes_nothing(record):
    before = standing(record)
    if not before:
        return
    strike = Entry(entry_id(1_800_000_000_000, 1), before[0].at, before[0].sheet, replaces=before[0].id)
    undo = Entry(entry_id(1_800_000_000_001, 1), before[0].at, before[0].sheet, replaces=strike.id)
    without = standing([*record, strike])
    assert before[0].id not in [each.id for each in without]
    assert lines(standing([*record, strike, undo])) == lines(before)


@given(records)
def test_writing_and_reading_keeps_everything(record):
    once = union(record)
    again, unread = read_entries(entries_json(once))
    assert not unread
    assert lines(again) == lines(once)
    assert json.loads(entries_json(once)) is not None  # RFC 8259 as the standard library reads it


@given(records)
def test_two_entries_never_strike_each_other(record):
    once = union(record)
    struck = struck_ids(once)
    for each in once:
        if each.id in struck:
            assert any(other.replaces == each.id and other.id not in struck for other in once)


def test_a_correction_takes_the_place_of_what_it_corrects():
    wrong = Entry(entry_id(1, 0), "2026-05-12T18:10+02:00", "reading", (("brace", "7 in"),))
    right = Entry(entry_id(2, 0), wrong.at, "reading", (("brace", "8 in"),), replaces=wrong.id)
    state = State([wrong, right])
    assert state.latest("reading.brace").text == "8 in"
    assert len(state.of("reading")) == 1


def test_the_evening_entry_of_the_afternoon_stands_in_the_afternoon():
    evening = Entry(entry_id(9, 0), "2026-05-12T14:00+02:00", "reading", (("brace", "8 in"),))
    before = Entry(entry_id(1, 0), "2026-05-12T15:00+02:00", "reading", (("brace", "8 1/4 in"),))
    assert State([evening, before]).latest("reading.brace").text == "8 1/4 in"


def test_moments_are_ordered_in_world_time():
    # RFC 3339, section 5.8: 1990-12-31T15:59:60-08:00 is 1990-12-31T23:59:60Z (from memory).
    assert parse_moment("1990-12-31T15:59-08:00") == parse_moment("1990-12-31T23:59Z")
    # The same section: 1937-01-01T12:00:27.87+00:20 (from memory); seconds are let be.
    assert parse_moment("1937-01-01T12:00:27.87+00:20") == parse_moment("1937-01-01T11:40Z")


NO_MOMENT = "is not a moment as year-month-dayThours:minutes with its offset"


@pytest.mark.parametrize(("text", "sentence"), [
    ("", NO_MOMENT), ("2026-05-12", NO_MOMENT), ("2026-05-12 18:10Z", NO_MOMENT),
    ("2026-05-12T18:10Z" + " " * 60, NO_MOMENT),
    ("2026-05-12T18:10", "has no offset from world time"), ("2026-13-12T18:10Z", "has no month from 1 to 12"),
    ("2026-05-12T24:00Z", "has no such time of day"), ("2026-05-12T18:60Z", "has no such time of day"),
    ("2026-05-12T18:10+15:00", "has an offset of more than 14 hours"),
    ("2026-05-12T1:10Z", "has no hours and minutes"),
])
def test_what_is_no_moment_is_refused(text, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        parse_moment(text)


def test_ids_sort_by_the_time_of_making():
    assert entry_id(1_000, 0) < entry_id(1_001, 0)
    assert entry_id(1_000, 0) < entry_id(1_000, 1)
    assert written_at(entry_id(1_785_000_000_123, 77)) == 1_785_000_000_123
    assert is_id(entry_id(1, 2))
    assert len(set(ALPHABET)) == 32
    with pytest.raises(ValueError, match=whole("the time of an id must be from 1970 on, not -1 ms")):
        entry_id(-1, 0)


GOOD = {"id": entry_id(5, 5), "at": "2026-05-12T18:10+02:00", "sheet": "reading", "facts": {"brace": "8 in"}}


@pytest.mark.parametrize(("change", "said"), [
    ({"id": "short"}, "must have an id"),
    ({"id": None}, "must have an id"),
    ({"id": "<script>alert("}, "must have an id"),
    ({"at": "yesterday"}, "the moment of an entry is not a moment"),
    ({"at": 5}, "“at” of an entry must be a text"),
    ({"sheet": "Reading"}, "named in small letters"),
    ({"sheet": "<b>"}, "named in small letters"),
    ({"facts": []}, "facts of an entry must be an object"),
    ({"facts": {"brace": 8}}, "a fact must be a text"),
    ({"facts": {"brace": "x" * 2001}}, "a fact must be a text"),
    ({"facts": {"onload=": "8 in"}}, "a fact must be a text"),
    ({"replaces": "x"}, "must be named by an id"),
    ({"photos": "p1"}, "must be a list"),
    ({"deep": [[[[[[[[1]]]]]]]]}, "nested deeper"),
    ({"note": "half \ud83d"}, "“note” of an entry must be a text"),
    ({"facts": {"brace": "\udc00"}}, "a fact must be a text"),
    ({"later": ["\ud800"]}, "half a letter"),
    ({"x" * 2001: 1}, "a name in an entry is too long"),
    ({"later": 10 ** 400}, "finite numbers"),
])
def test_an_entry_that_cannot_be_read_stops_no_other(change, said):
    found, unread = read_entries(json.dumps([GOOD, {**GOOD, "id": entry_id(6, 6), **change}]))
    assert [each.id for each in found] == [GOOD["id"]]
    assert len(unread) == 1
    assert said in unread[0].problem


NOT_WHOLE = "the record is not whole: its text ends early or is no JSON"
NO_LIST = "the record holds no list of entries"


@pytest.mark.parametrize(("text", "sentence"), [
    ("", NOT_WHOLE), ("[", NOT_WHOLE), ("[" * 2000, NOT_WHOLE),
    ('{"entries": 3}', NO_LIST), ("17", NO_LIST), ('"x"', NO_LIST),
])
def test_what_is_no_record_is_refused(text, sentence):
    with pytest.raises(ValueError, match=whole(sentence)):
        read_entries(text)


@pytest.mark.parametrize(("depth", "read"), [(6, True), (7, False)])
def test_what_is_not_known_here_is_kept_to_a_depth_of_six(depth, read):
    value = "x"
    for _ in range(depth):
        value = [value]
    found, unread = read_entries(json.dumps([{**GOOD, "later": value}]))
    assert (len(found), len(unread)) == ((1, 0) if read else (0, 1))


def test_more_entries_than_are_read_are_refused_whole():
    with pytest.raises(ValueError, match=whole("the record holds 5001 entries; at most 5000 are read")):
        read_entries(json.dumps([GOOD] * (MOST_ENTRIES + 1)))


def test_a_text_can_stand_in_a_page():
    entry = Entry(entry_id(1, 1), GOOD["at"], "reading", note="</script><script>")
    assert "<" not in entry_json(entry)
    assert read_entries("[" + entry_json(entry) + "]")[0][0].note == "</script><script>"


def test_what_is_not_known_here_is_kept():
    text = json.dumps([{**GOOD, "sheet": "of_a_later_release", "later": {"b": [1, None, True], "a": "x"}}])
    again = json.loads(entries_json(read_entries(text)[0]))
    assert again[0]["later"] == {"b": [1, None, True], "a": "x"}
    assert again[0]["sheet"] == "of_a_later_release"


facts_of_readings = st.fixed_dictionaries({}, optional={
    "weight": st.integers(20, 80).map(lambda pounds: f"{pounds} lb"), "at_draw": st.just("28 in"),
    "upper": st.integers(64, 512).map(lambda parts: f"{parts}/32 in"), "lower": st.just("7 5/16 in"),
    "brace": st.sampled_from(["8 in", "205 mm", "as ever"]), "glass_belly": st.just("0.043 in"),
    "measured": st.just("fadeout"), "curve": st.just("12 in:11 lb;20 in:33 lb;28 in:53 lb"),
})
bench_entries = st.builds(
    Entry, ids, moments, st.just("reading"), facts_of_readings.map(lambda facts: tuple(facts.items())))
batches = st.builds(Entry, ids, moments, st.just("strokes"), st.just((("lower_belly", "12"),)))
bench_records = st.lists(st.one_of(bench_entries, batches), max_size=8)


def filled(record, calculator):
    return [(each.input, each.text, each.stale, each.entry.id if each.entry else "")
            for each in fill(State(record), calculator)]


@given(bench_records, st.sampled_from(sorted(BOUND)), st.randoms(use_true_random=False))
def test_what_is_filled_depends_on_neither_order_nor_doubles_and_changes_nothing(record, calculator, chance):
    before = lines(standing(record))
    found = filled(record, calculator)
    shuffled = record + record[: len(record) // 2]
    chance.shuffle(shuffled)
    assert filled(shuffled, calculator) == found
    assert lines(standing(record)) == before


@given(bench_records, st.sampled_from(sorted(BOUND)))
def test_what_was_filled_from_a_sheet_and_is_written_down_again_is_filled_again(record, calculator):
    taken = [each for each in fill(State(record), calculator)
             if each.fact.startswith("reading.") and each.text]
    facts = tuple((each.fact.partition(".")[2], each.text) for each in taken)
    latest = max((each.moment for each in record), default=63_900_000_000)
    again = Entry(entry_id(1_800_000_000_000, 1), moment_text(latest + 60, 0), "reading", facts)
    found = {each.input: each for each in fill(State([*record, again]), calculator)}
    assert [found[each.input].text for each in taken] == [each.text for each in taken]
    assert not any(found[each.input].stale for each in taken)
