"""The card on a bow: what was agreed, which limb is the stiffer one, and when to stop."""

import pytest

from calc.record.tag_card import card_tree, stiffer_limb
from tests.record.bench import Bench
from tests.record.elements import nodes_of, text_of

AT = "2026-05-12T18:10+02:00"


@pytest.fixture
def bench():
    return Bench().came_in()


def lines(bench, system="imperial"):
    found = nodes_of(card_tree(bench.state, AT, system), "li")
    return {text_of(line[2]): text_of(line[3]) if len(line) > 3 else "" for line in found
            if line[1].get("class") is None}


def test_the_card_says_what_was_agreed_and_which_limb_gives(bench):
    assert lines(bench) == {
        "Agreed": "45 lb at 28 in",
        "Tiller agreed": "1/16 in",
        "Stiffer limb": "lower, by 1/4 in of tiller",
        "Glass that must stay": "60 %",
    }
    told = text_of(["div", {}, *card_tree(bench.state, AT, "imperial")])
    assert "Came at 53.0 lb, agreed 45.0 lb at 28 in." in told
    assert "Stop at a sound, a white place, a new line." in told
    assert "As of Tue 12 May 2026, 18:10." in told


@pytest.mark.parametrize(("agreed", "said"), [
    ("5/16 in", "neither"),
    ("9/32 in", "neither"),
    ("1/4 in", "lower, by 1/16 in of tiller"),
    ("3/8 in", "upper, by 1/16 in of tiller"),
])
def test_a_difference_of_less_than_a_thirty_second_is_none(bench, agreed, said):
    bench.write("agreed", tiller=agreed)
    assert stiffer_limb(bench.state, "imperial") == said


def test_what_was_not_read_since_the_last_strokes_is_not_told(bench):
    assert lines(bench)["Stiffer limb"] == "lower, by 1/4 in of tiller"
    bench.write("strokes", lower_belly="40", paper="P120")
    assert lines(bench)["Stiffer limb"] == ""


def test_a_stop_of_the_record_stands_on_the_card(bench):
    bench.write("finding", which="crack_across", limb="upper", standing="open")
    checks = [text_of(node) for node in nodes_of(card_tree(bench.state, AT, "imperial"), "li")
              if node[1].get("class")]
    assert len(checks) >= 1
    assert checks[0].startswith("Stop")
