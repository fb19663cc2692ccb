"""What stands on the record sheet: how a bow came, how it is handed over, what is to be read anew."""

import json

import pytest

from calc import answer
from calc.outcome import STOP
from calc.record import checks
from calc.record.entries import entries_json
from calc.record.fold import State
from calc.record.owner import read_link
from calc.record.record_sheet import sheet_tree
from tests.record.bench import Bench, coat, to_finish
from tests.record.elements import nodes_of, text_of

AT = "2026-05-12T18:10+02:00"
EIGHT = ";".join(f"{place} in:1 5/8 in:0.2{place:02} in" for place in range(2, 26, 3))


def sheet(bench, system="imperial"):
    return sheet_tree(bench.state, AT, "of today", system)


def measured(bench, system="imperial"):
    rows = [[text_of(cell) for cell in row[2:]] for row in nodes_of(sheet(bench, system), "tr")]
    return {label: cells for label, *cells in rows}


def lines(bench):
    plain = [line for line in nodes_of(sheet(bench), "li") if line[1].get("class") is None]
    return {text_of(line[2]): text_of(line[3]) if len(line) > 3 else "" for line in plain}


@pytest.fixture
def bench():
    return Bench().came_in()


def test_both_columns_hold_what_was_read_and_agree_while_nothing_was_done(bench):
    bench.write("archer", draw="27 in", hold="under")
    bench.write("reading", weight="50 lb", at_draw="27 in", brace="8 1/4 in", upper_offset_tip="1/16 in")
    table = measured(bench)
    assert table["Measured"] == ["As it came", "Handed over"]
    assert table["Weight at 28 in"] == ["53 lb", "53 lb"]
    assert table["Weight at the archer's draw"] == ["50 lb", "50 lb"]
    assert table["Brace height"] == ["8 1/4 in", "8 1/4 in"]
    assert table["Tiller: upper, lower, difference"] == ["7 5/8 in, 7 5/16 in, 5/16 in"] * 2
    assert table["String off the middle near the tip: upper, lower"] == ["1/16 in, ", "1/16 in, "]
    assert table["Glass left: back, belly"] == ["0.043 in, 0.043 in"] * 2
    assert table["Throat: width, depth"] == ["", ""]
    assert lines(bench)["Agreed"] == "45 lb at 28 in"
    assert lines(bench)["Hold"] == "Three fingers under"
    assert lines(bench)["Owner"] == ""


def test_a_part_that_nobody_read_is_a_line_to_write_on(bench):
    bench.write("reading", upper_offset_tip="1/16 in")
    blanks = [node for node in nodes_of(sheet(bench), "span") if node[1].get("class") == "rb-blank"]
    assert len(blanks) == 2  # of the lower limb, as it came and now


def test_what_the_last_strokes_changed_is_left_empty_until_it_is_read_again(bench):
    bench.write("reading", brace="8 1/4 in", stations_upper=EIGHT)
    bench.write("strokes", lower_belly="40", paper="P120")
    table = measured(bench)
    assert table["Weight at 28 in"] == ["53 lb", ""]
    assert table["Tiller: upper, lower, difference"] == ["7 5/8 in, 7 5/16 in, 5/16 in", ""]
    assert table["Glass left: back, belly"] == ["0.043 in, 0.043 in", ""]
    assert table["Thickness of the upper limb, from the fadeout"][1] == ""
    assert table["Brace height"] == ["8 1/4 in", "8 1/4 in"]
    bench.write("reading", weight="45.3 lb", at_draw="28 in", upper="7 5/8 in", lower="7 9/16 in")
    table = measured(bench)
    assert table["Weight at 28 in"] == ["53 lb", "45.3 lb"]
    assert table["Tiller: upper, lower, difference"][1] == "7 5/8 in, 7 9/16 in, 1/16 in"


def test_what_was_first_read_after_the_work_is_not_how_the_bow_came():
    bench = Bench()
    bench.write("reading", brace="8 1/4 in")
    bench.write("strokes", lower_belly="40", paper="P120")
    bench.write("reading", weight="45 lb", at_draw="28 in", upper="7 5/8 in", lower="7 9/16 in",
                stations_lower=EIGHT, glass_back="0.040 in")
    bench.write("archer", draw="28 in")
    table = measured(bench)
    assert table["Tiller: upper, lower, difference"][0] == ""
    assert table["Glass left: back, belly"] == ["", "0.040 in, "]
    assert table["Thickness of the lower limb, from the fadeout"][0] == ""
    assert table["Weight at the archer's draw"] == ["", "45 lb"]
    assert table["Brace height"][0] == "8 1/4 in"


def test_a_weight_between_the_readings_of_a_curve_is_told_as_people_read_it(bench):
    bench.write("archer", draw="27 in")
    bench.write("reading", curve="20 in:33 lb;24 in:42 lb;28 in:53 lb")
    came, now = measured(bench)["Weight at the archer's draw"]
    assert came == now
    number, unit = now.split(" ")
    assert (len(number.partition(".")[2]), unit) == (1, "lb")
    assert 49.5 < float(number) < 51  # between its neighbours, near the straight line through the last two
    assert measured(bench, "metric")["Weight at the archer's draw"][1].endswith(" N")


def test_four_sections_of_a_limb_from_its_first_to_its_last_with_the_finish_on_them(bench):
    bench.write("reading", stations_upper=EIGHT, with_finish="yes")
    told = measured(bench)["Thickness of the upper limb, from the fadeout"][1]
    assert told == ("0.202 in at 2 in; 0.208 in at 8 in; 0.214 in at 14 in; 0.223 in at 23 in (with finish)")


def test_the_throat_is_the_first_section_and_new_once_the_work_is_done(bench):
    after = "1 1/16 in:2 1/16 in;1 in:2 in"
    bench.write("section", before="0 in:1 3/16 in:2 1/4 in;3 in:1 in:2 in", after=after)
    assert measured(bench)["Throat: width, depth"] == ["1 3/16 in, 2 1/4 in", ""]
    bench.write("section", after=after, done="yes")
    assert measured(bench)["Throat: width, depth"] == ["1 3/16 in, 2 1/4 in", "1 1/16 in, 2 1/16 in"]


def test_findings_and_mendings_are_named_up_to_three_and_then_counted(bench):
    bench.write("finding", which="crazing", limb="upper", standing="watched")
    bench.write("finding", which="pinhole", limb="lower", standing="mended")
    bench.write("repair", limb="upper", what="word " * 20, material="epoxy")
    told = lines(bench)
    assert told["Inspected, found"] == "Crazing (upper limb), watched; A pinhole, alone (lower limb), mended"
    assert told["Left as it was"] == "Crazing (upper limb), watched"
    assert told["Repaired"] == f"{('word ' * 10).strip()}…, upper limb, epoxy"
    for which in ("worn_finish", "twist_slight"):
        bench.write("finding", which=which, standing="open")
    assert lines(bench)["Inspected, found"].endswith("; and 1 more, in the bow's file")


@pytest.mark.parametrize(("sheen", "said"), [("1", "one-part urethane, 1 coat, more to come"),
                                             ("0", "one-part urethane, 1 coat, Wed 20 May 2026")])
def test_the_finish_says_on_which_day_it_is_hard_once_nothing_is_to_come(sheen, said):
    """Fourteen days at the temperature of the sheet after a coat of 11 o'clock; then the next whole day."""
    bench = to_finish(Bench())
    bench.write("coats", seal_coats="0", build_coats="1", over_coats="0", sheen_coats=sheen)
    bench.write("agreed", lettered="no")
    coat(bench, "05T10:00", role="build")
    assert lines(bench)["Finish, coats, hard on"] == said


def test_what_stops_the_bow_stands_first_and_no_more_than_two_of_it(bench):
    assert nodes_of(sheet(bench), "strong")[0][2] == "Told the owner:"
    bench.write("finding", which="crack_across", limb="upper", standing="open")
    bench.write("strokes", lower_belly="40", paper="P120")
    bench.write("reading", weight="45 lb", at_draw="28 in", glass_back="0.020 in", glass_belly="0.020 in")
    assert len([each for each in checks.checks(bench.state) if each.level == STOP]) > 2
    marks = [node[2] for node in nodes_of(sheet(bench), "strong")]
    assert marks == ["Stop", "Stop", "Told the owner:"]
    assert "crack across" in text_of(sheet(bench)[0])


def test_the_page_gets_the_sheet_with_its_moment_and_the_link_for_the_owner(bench):
    bench.write("handover", next_look="2027-06-13")
    asked = {"task": "sheet", "units": "imperial", "entries": entries_json(bench.entries), "at": AT,
             "release": "0a1b"}
    answer.begin(json.dumps(asked))
    made = json.loads(answer.advance())
    told = text_of(["p", {}, *made["tree"]])
    assert "From the record as of Tue 12 May 2026, 18:10. Release 0a1b. An empty line was not read" in told
    assert "Next lookSun 13 June 2027" in told
    assert "not under 8 gr/lb of arrow" in told
    assert read_link(made["link"]).facts["came"] == "53 lb"


def test_without_an_entry_it_is_the_blank_one_and_says_nothing_of_a_record():
    tree = sheet_tree(State([]), "", "", "imperial")
    [body] = nodes_of(tree, "tbody")
    assert [text_of(cell) for line in body[2:] for cell in line[3:]] == [""] * 18
    told = text_of(["p", {}, *tree])
    assert "Stop" not in told
    assert "record" not in told
    assert "It does not say that the bow is safe." in told
