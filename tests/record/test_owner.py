"""What a link carries to the owner: of a record only what may leave it; of a stranger's only what is read."""

import base64
import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc import answer
from calc.record import owner, sheets, tell
from calc.record.declare import NOTE
from calc.record.entries import Entry, entries_json
from tests.record.bench import Bench, coat

AT = "2026-05-12T18:10+02:00"
MOST_OF_A_MESSENGER = 2000
ADDRESS = "https://a-rather-long-name-of-a-host.example/with/a/folder/bow/#"


def ask(task, units="imperial", **more):
    answer.begin(json.dumps({"task": task, "units": units, **more}))
    return json.loads(answer.advance())


def packed(*lines):
    """Return a link made by somebody else's hand, by the reference's own base64url."""
    inner = base64.urlsafe_b64encode("\n".join(lines).encode()).decode().rstrip("=")
    return f"1.{inner}.{len(inner)}"


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("archer", draw="27 in")
    bench.write("bow", marked_length="64 in", marked_weight="55 lb")
    bench.write("finding", which="crazing", limb="upper", standing="watched")
    return bench


@pytest.fixture
def told(bench):
    return owner.page_of(bench.state, AT, "imperial", "Do you want\nthe letters back?")


def as_it_is(page):
    return {**vars(page), "findings": [vars(each) for each in page.findings]}


def test_a_finding_of_which_nobody_said_how_it_stands_is_open(bench):
    bench.write("finding", which="crazing", limb="lower", place="fadeout")
    found = owner.page_of(bench.state, AT, "imperial").findings
    assert {each.limb: each.standing for each in found} == {"upper": "watched", "lower": "open"}


def test_a_link_reads_back_as_what_was_told(told):
    text, left = owner.link_text(told)
    assert left == ()
    assert as_it_is(owner.read_link(text)) == as_it_is(told)
    assert told.facts["came"] == "53 lb"
    assert told.word == "Do you want the letters back?"
    assert told.next == "weight"


@given(st.binary(max_size=200))
def test_letters_are_those_of_the_published_form(data):
    """RFC 4648, section 5, as Python's own library writes it."""
    assert owner.to_letters(data) == base64.urlsafe_b64encode(data).decode().rstrip("=")


def test_the_longest_link_goes_through_a_messenger_and_says_what_it_left_out(bench):
    for which in owner.FINDINGS:
        for limb in owner.LIMBS:
            bench.write("finding", which=which.id, limb=limb)
    text, left = owner.link_text(owner.page_of(bench.state, AT, "imperial", "\N{SNOWMAN}" * 400))
    assert len(ADDRESS + text) <= MOST_OF_A_MESSENGER
    assert left[0].endswith("findings")
    assert left[1] == "the end of your line"
    assert owner.read_link(text).word.startswith("\N{SNOWMAN}" * 200)


def test_no_words_of_a_record_and_nothing_private_is_ever_told(bench):
    for sheet in sheets.SHEETS:
        entry = bench.write("bow", title="x")
        facts = tuple((each.id, "MARKER" if each.kind == NOTE else each.default)
                      for each in sheets.inputs_of(sheet))
        bench.entries[-1] = Entry(entry.id, entry.at, sheet.id, facts, why="MARKER", note="MARKER")
    found = ask("tell", entries=entries_json(bench.entries), at=AT, word="")
    page = ask("told", link=found["link"], now=AT)
    inner = found["link"].split(".")[1]
    said = base64.urlsafe_b64decode(inner + "=" * (-len(inner) % 4)).decode()
    private = [each.default for sheet in sheets.SHEETS for each in sheets.inputs_of(sheet)
               if each.id in sheet.private and each.kind != NOTE]
    for text in (said, json.dumps(page), json.dumps(found["messages"])):
        assert "MARKER" not in text
        assert [each for each in private if each in text] == []
        assert not any(each.id in text for each in bench.entries)
    assert len(private) > 2


@pytest.mark.parametrize(("tag", "carried"), [
    ("31", "31"), ("A-12", "A-12"), ("RB 31", "RB 31"), ("Smith", ""), ("the owner 31", ""), ("1" * 13, ""),
])
def test_a_tag_that_may_be_a_name_stays_here(tag, carried):
    bench = Bench()
    bench.write("bow", tag=tag, family="recurve")
    assert owner.page_of(bench.state, AT, "imperial").tag == carried


@pytest.mark.parametrize(("text", "said"), [
    ("", "This is no link to a bow, or one that a later release wrote."),
    ("2.abcd.4", "This is no link to a bow, or one that a later release wrote."),
    ("1.abcd.5", "This link has lost its end on the way: ask for it again, and copy all of it."),
    ("1.abcd", "This link has lost its end on the way: ask for it again, and copy all of it."),
    ("1.ab=d.4", "This link holds letters that none of ours has: ask for it again."),
    ("1._w.2", "This link was changed on the way: ask for it again."),
    (packed("tag 31"), "This link does not say when it was made."),
    ("1." + "a" * 3000 + ".3000", "This link is longer than any of ours."),
])
def test_what_is_no_link_is_refused_in_a_sentence(text, said):
    assert ask("told", link=text, now=AT)["refused"] == said


def test_of_a_strangers_link_only_what_is_in_bounds_is_shown():
    page = owner.read_link(packed(
        "moment " + AT, "units cubits", "came 9999 lb", "now <b>", "at 28 in", "tag <img>", "left everywhere",
        "done intake everything", "next nowhere", "verdict fine", "found nothing open", "found crazing odd",
        "found crazing open tail", "found crazing open", "price 700", "word <b>hold</b>  it"))
    assert page.facts == {"at": "28 in"}
    assert (page.units, page.tag, page.done, page.next, page.verdict) == (
        "imperial", "", ("intake",), "", "")
    assert [vars(each) for each in page.findings] == [{"which": "crazing", "limb": "", "standing": "open"}]
    assert page.word == "<b>hold</b> it"
    tree = tell.page_tree(page, AT, "metric")
    assert "700" not in json.dumps(tree)


@pytest.mark.parametrize(("at", "soft"), [
    ("2026-05-19T10:59+02:00", True), ("2026-05-19T11:00+02:00", False)])
def test_the_day_of_the_string_is_told_while_the_finish_hardens(at, soft):
    bench = Bench().came_in()
    bench.write("product", family="one-part-urethane", cure="14 d")
    bench.write("coats", build_coats="1")  # a plan alone makes nothing soft
    assert "no_string" not in owner.page_of(bench.state, at, "imperial").facts
    coat(bench, "05T10:00", role="build")
    page = owner.page_of(bench.state, at, "imperial")
    assert page.facts.get("no_string") == ("2026-05-20" if soft else None)
    shown = json.dumps(tell.page_tree(page, at, "imperial"))
    assert ("It cannot be strung before Wed 20 May 2026: the finish has to harden." in shown) is soft


def test_the_spine_of_the_newest_answer_is_told_until_the_bow_changes(bench):
    bench.write("answer", calculator="arrow-match", results="wanted_low=204.6;wanted_high=222.4;mass=x")
    known = owner.page_of(bench.state, AT, "imperial").facts
    assert (known["spine_low"], known["spine_high"]) == ("46 lb", "50 lb")
    bench.write("strokes", lower_belly="10", paper="P120")
    changed = owner.page_of(bench.state, AT, "imperial")
    assert "spine_low" not in changed.facts
    assert changed.worked


def test_the_square_on_the_record_sheet_is_a_link_to_the_owners_page(bench):
    entries = entries_json(bench.entries)
    on_paper, sent = ask("sheet", entries=entries, at=AT), ask("tell", entries=entries, at=AT, word="")
    assert ask("told", link=on_paper["link"], now=AT) == ask("told", link=sent["link"], now=AT)
