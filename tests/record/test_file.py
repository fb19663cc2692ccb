"""A bow's file: readable by itself, read back whole or in part, never more than its entries."""

from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.record import file, sheets, tasks
from calc.record.entries import entries_json, entry_json
from calc.record.fold import union
from tests.record.bench import Bench
from tests.sentences import whole

MARK = "markerword"


@pytest.fixture
def bench():
    bench = Bench().came_in()
    wrong = bench.write("reading", brace="7 in")
    bench.write("reading", replaces=wrong.id)
    bench.write("strokes", upper_belly="10", lower_belly="20", paper="P120")
    bench.write("of_a_later_release", something="1")
    return bench


class Tags(HTMLParser):
    def __init__(self):
        super().__init__()
        self.tags = []
        self.words = []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.words.append(data)


def parsed(page):
    tags = Tags()
    tags.feed(page)
    return tags


def lines(entries):
    return [entry_json(each) for each in union(entries)]


def test_a_file_is_read_back_whole(bench):
    found = file.record_in(file.page(bench.entries, "imperial"))
    assert lines(found.entries) == lines(bench.entries)
    assert (found.missing, found.unread) == (0, [])


def test_a_record_without_entries_is_one():
    found = file.record_in(file.page([], "imperial"))
    assert (found.entries, found.unread, found.told) == ([], [], 0)


def test_what_was_struck_out_is_struck_out_on_the_page(bench):
    tags = parsed(file.page(bench.entries, "imperial")).tags
    struck = [attributes.get("class") for tag, attributes in tags if tag == "h3"]
    assert struck.count("struck") == 1
    assert len(struck) == len(bench.entries) - 1  # what strikes out is no entry of its own


def test_bare_json_is_read_too(bench):
    assert lines(file.record_in(entries_json(bench.entries)).entries) == lines(bench.entries)


def test_reading_a_file_twice_or_an_older_one_later_changes_nothing(bench):
    older = file.record_in(file.page(bench.entries[:5], "imperial")).entries
    newer = file.record_in(file.page(bench.entries, "metric")).entries
    assert lines(union(newer, older, newer)) == lines(bench.entries)


def test_a_file_has_no_script_that_runs(bench):
    bench.write("bow", title="<script>alert(1)</script>", marked_letters='"><img src=x onerror=alert(1)>')
    bench.write("reading", scale="</script><script>alert(1)</script>")
    tags = parsed(file.page(bench.entries, "imperial")).tags
    assert [attributes for tag, attributes in tags if tag == "script"] == [
        {"type": "application/json", "id": "rebrace-record"}]
    assert not [tag for tag, attributes in tags if any(name.startswith("on") for name in attributes)]
    assert not [tag for tag, _ in tags if tag in ("img", "iframe", "object", "link", "form")]


def test_a_file_says_how_the_bow_stands_and_what_was_done(bench):
    words = " ".join(parsed(file.page(bench.entries, "imperial")).words)
    for said in ("Came at 53.0 lb, agreed 45.0 lb", "Tue 5 May 2026", "Upper tiller distance", "7 5/8 in",
                 "Recurve", "Next: ", "No full draw from a distance", "does not say that the bow is safe"):
        assert said in words


def test_a_file_cut_off_anywhere_gives_what_it_has(bench):
    page = file.page(bench.entries, "imperial")
    start = page.index(file.OPENING) + len(file.OPENING)
    before = -1
    for end in [*range(start, len(page), 100), len(page)]:
        found = file.record_in(page[:end])
        assert len(found.entries) >= before
        assert len(found.entries) + len(found.unread) + found.missing == len(bench.entries)
        before = len(found.entries)
    assert before == len(bench.entries)


@pytest.mark.parametrize("text", ["", "<html></html>", "not a file", "%PDF-1.7"])
def test_what_is_no_file_of_a_bow_is_refused(text):
    with pytest.raises(ValueError, match=whole(
            "the file holds no record: it is no bow's file, or its end is missing")):
        file.record_in(text)


def test_a_count_that_is_none_is_not_believed(bench):
    page = file.page(bench.entries, "imperial").replace(file.COUNT, file.COUNT + "9999999")
    assert file.record_in(page).told is None


def several():
    longbow = Bench()
    longbow.write("bow", title="66 in longbow", tag="32")
    return [Bench().came_in().entries, longbow.entries, Bench().came_in().entries[:2]]


def test_several_bows_go_into_one_file_and_come_back_whole():
    records = several()
    page = file.page_of_all(records, "imperial")
    found = file.records_in(page)
    assert [lines(each.entries) for each in found] == [lines(each) for each in records]
    assert [(each.missing, each.unread, each.is_newer) for each in found] == [(0, [], False)] * 3
    assert file.bows_told(page) == 3
    assert [attributes["id"] for tag, attributes in parsed(page).tags if tag == "script"] == [
        "rebrace-record-1", "rebrace-record-2", "rebrace-record-3"]
    with pytest.raises(ValueError, match=whole("the file holds 3 bows, not one")):
        file.record_in(page)
    with pytest.raises(ValueError, match=whole("the file holds 2 bows, not one")):
        file.record_in(file.page_of_all(records[:2], "imperial"))


def test_each_bow_of_a_file_is_told_what_it_lacks_by_its_own_count():
    page = file.page_of_all(several(), "imperial")
    counts = [int(each.split('"')[0]) for each in page.split(file.COUNT)[1:]]
    assert counts == [len(each) for each in several()]
    head, first, second, third = page.split(file.COUNT)
    more = file.COUNT.join([head, f"{counts[0] + 1}" + first[first.index('"'):],
                            f"{counts[1] + 2}" + second[second.index('"'):], third])
    assert [each.missing for each in file.records_in(more)] == [1, 2, 0]


def test_a_file_of_several_bows_that_was_cut_off_gives_what_it_has():
    records = several()
    page = file.page_of_all(records, "imperial")
    total = sum(len(each) for each in records)
    before = 0
    for end in [*range(page.index(file.NAMED) + len(file.NAMED), len(page), 500), len(page)]:
        found = file.records_in(page[:end])
        told = file.bows_told(page[:end])
        read = sum(len(each.entries) for each in found)
        assert told == 3
        assert len(found) <= told
        assert read >= before
        before = read
    assert before == total


def test_a_file_of_more_bows_than_are_read_is_refused():
    page = (file.OPENING + "[]" + file.CLOSING) * (file.MOST_BOWS + 1)
    with pytest.raises(ValueError, match=whole("the file holds more than 500 bows")):
        file.records_in(page)


def test_a_file_of_a_later_form_is_known_as_such_and_read_as_far_as_it_goes(bench):
    page = file.page(bench.entries, "imperial").replace(file.FORM_MARK + "1", file.FORM_MARK + "2")
    found = file.record_in(page)
    assert found.is_newer
    assert lines(found.entries) == lines(bench.entries)
    assert not file.record_in(file.page(bench.entries, "imperial")).is_newer


def test_a_file_without_a_form_is_one_of_the_first(bench):
    page = file.page(bench.entries, "imperial").replace(file.FORM_MARK + '1" ', "")
    assert not file.record_in(page).is_newer


def marked():
    """A record whose every private fact, note and reason is a marker word."""
    bench = Bench().came_in()
    for sheet in sheets.SHEETS:
        if sheet.private:
            bench.write(sheet.id, **dict.fromkeys(sheet.private, MARK))
    bench.write("agreed", weight="45 lb", at_draw="28 in", price=MARK, by=MARK)
    last = bench.write("reading", brace="8 in")
    last.note = last.why = last.device = MARK
    bench.write("of_a_later_release", something=MARK)
    return bench


def test_nothing_private_is_in_a_file_without_the_owner():
    bench = marked()
    assert MARK in file.page(bench.entries, "imperial")
    assert MARK not in file.page(bench.entries, "imperial", with_private=False)
    assert MARK not in file.page_of_all([bench.entries], "imperial", with_private=False)
    assert MARK not in entries_json(file.without_private(bench.entries))


@pytest.mark.parametrize(("private", "is_told"), [
    ({}, True), ({"private": True}, True), ({"private": False}, False),
], ids=["not said", "with", "without"])
def test_a_page_that_asks_for_a_file_gets_it_with_or_without_the_owner(private, is_told):
    entries = entries_json(marked().entries)
    one = tasks.answer({"task": "file", "units": "imperial", "entries": entries, **private})
    every = tasks.answer({"task": "all", "units": "imperial", "records": [entries], **private})
    assert (MARK in one["page"]) is is_told
    assert (MARK in every["page"]) is is_told


def test_what_is_not_private_stays():
    kept = file.without_private(marked().entries)
    assert any(each.fact("weight") == "45 lb" and each.sheet == "agreed" for each in kept)
    assert not any(each.sheet == "owner" for each in kept)


@given(st.lists(st.tuples(st.integers(0, 2**30), st.integers(0, 40), st.sampled_from([
    "", "<", "</script>", "\\", '"', "{", "[" * 300, "]", ",\n", "\x00", "\u2028", "\ud83d", "9" * 30,
    'data-entries="7"', 'data-form="2"',
    file.NAMED, file.NAMED + '-2">', file.OPENING, '{"id":"00000000000000"}',
])), min_size=1, max_size=4))
def test_a_file_that_somebody_tampered_with_is_read_or_refused(cuts):
    page = file.page_of_all([Bench().came_in().entries] * 2, "imperial")
    for place, length, text in cuts:
        start = place % len(page)
        page = page[:start] + text + page[start + length:]
    try:
        found = file.records_in(page)
    except ValueError:
        return
    for each in found:
        again = file.record_in(file.page(each.entries, "imperial"))
        assert lines(again.entries) == lines(each.entries)
        assert file.page(each.entries, "imperial").encode("utf-8")


def test_what_lasts_stands_in_tables_and_what_was_done_does_not(bench):
    standing = file.page(bench.entries, "imperial").partition("<h2>Day by day</h2>")[0]
    titles = [title for title in (each.title for each in sheets.SHEETS) if f"<h2>{title}</h2>" in standing]
    assert titles == [sheets.find(each).title for each in ("bow", "agreed")]
    assert "64 in" in standing
