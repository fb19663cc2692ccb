"""What an owner reads: the answer first, dated, in both unit systems, and never that a bow is in order."""

import json

import pytest

from calc.record import owner, tell
from tests.record.bench import Bench
from tests.record.elements import text_of

AT = "2026-05-12T18:10+02:00"
LATER = "2026-05-30T12:00Z"


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("archer", draw="27 in")
    bench.write("arrow", spine="60 lb", mass="300 gr")
    return bench


def page_of(bench, **more):
    return owner.page_of(bench.state, AT, "imperial", **more)


def told(bench, now=AT, system="imperial"):
    """Return the page as the texts of its elements, in order."""
    return [text_of(each, " ") for each in tell.page_tree(page_of(bench), now, system)]


def test_the_answer_stands_first_and_says_when_it_was_so(bench):
    [named, headline, *_] = told(bench)
    assert named == "Your bow: recurve, tag 31.   as of Tue 12 May 2026, 18:10"
    assert headline == "It is on the bench: its weight is being brought down."


def test_weights_are_told_at_one_draw_and_in_both_systems(bench):
    bench.write("reading", weight="49 lb", at_draw="28 in")
    assert ("It came in pulling 53.0 lb at a draw of 28 in. Agreed: 45.0 lb. Read last: 49.0 lb."
            in told(bench))
    assert ("It came in pulling 235.8 N at a draw of 711.2 mm. Agreed: 200.2 N. Read last: 218.0 N."
            in told(bench, system="metric"))
    bench.write("strokes", lower_belly="9", paper="P120")
    assert any("Read last, before the newest work on it: 49.0 lb." in each for each in told(bench))


def test_arrows_are_those_for_the_weight_agreed():
    """8 to 10 gr for each pound, never under 5 (common practice): of 45 lb 360 to 450 and 225 gr."""
    bench = Bench().came_in()
    bench.write("arrow", mass="300 gr")
    [line] = [each for each in told(bench) if "whole arrow" in each]
    assert "For 45.0 lb of draw weight the whole arrow weighs 360 gr to 450 gr." in line
    assert "under 225 gr never, on any bow" in line
    assert "Your arrow of 300 gr is too light for it." in line


@pytest.mark.parametrize(("spine", "words"), [("60 lb", "are too stiff for it."), ("40 lb", "are too limber"),
                                              ("48 lb", None)])
def test_old_arrows_are_held_against_the_spine_reckoned(spine, words):
    bench = Bench().came_in()
    bench.write("arrow", spine=spine)
    bench.write("answer", calculator="arrow-match", results="wanted_low=204.6;wanted_high=222.4")
    said = " ".join(told(bench))
    assert "Shafts of 46 lb to 50 lb spine weight" in said
    assert (words or "Your old ones") in said or words is None


def test_a_bow_for_the_wall_gets_no_arrows_and_no_way_to_string_it(bench):
    bench.write("finding", which="crack_across", limb="upper", standing="open")
    said = told(bench)
    assert said[1] == "It is for the wall: it must never be strung or drawn again."
    assert not any("arrow" in each or "stringer" in each for each in said)


@pytest.mark.parametrize(("end", "headline"), [
    ("done", "You have it back. What it measured stands below."),
    ("as_it_is", "You have it back as it is: the work was not finished. Do not string it before you have "
                 "asked."),
    ("wall", "It is for the wall: it must never be strung or drawn again."),
])
def test_an_owner_who_has_it_back_reads_how_to_keep_it(bench, end, headline):
    bench.write("handover", end=end, next_look="2027-05-12")
    said = told(bench)
    assert said[1] == headline
    assert ("Use a stringer, every time" in " ".join(said)) == (end == "done")
    assert "Bring it for its next look by Wed 12 May 2027." in said


def test_an_old_page_says_so(bench):
    assert "This page is 17 days old. Ask for a newer one." in told(bench, LATER)
    assert not any("days old" in each for each in told(bench))


@pytest.mark.parametrize("sheet", ["", "handover", "finding", "repair"])
def test_nothing_is_ever_called_in_order_or_safe(bench, sheet):
    if sheet:
        bench.write(sheet, **({"which": "crazing"} if sheet == "finding" else {"end": "done"}))
    said = " ".join(told(bench))
    assert "In order" not in said
    assert said.count("safe") == 1
    assert "It does not say that a bow is safe" in said


def test_three_messages_and_what_the_sender_should_know_first(bench):
    going, arrows, ready = tell.messages(page_of(bench), False)
    assert going.text.startswith("Your bow: recurve, tag 31. It is on the bench")
    assert arrows.text.endswith("Which arrows do you have: of which spine, how long, with which point, and "
                                "how heavy?")
    assert ready.caution.startswith("Its weight is not where it was agreed")
    bench.write("reading", weight="45.2 lb", at_draw="28 in", upper="7 3/8 in", lower="7 5/16 in")
    assert tell.messages(page_of(bench), False)[2].caution.startswith("The record does not show the last")
    assert tell.messages(page_of(bench), True)[2].caution.startswith("The record says stop")
    assert json.dumps([vars(each) for each in (going, arrows, ready)]).count("safe") == 0
