"""What a deed makes stale, row by row, and what time alone does."""

import pytest

from calc.outcome import say
from calc.record import checks, derive
from tests.record.bench import LOOKED, Bench

READ = {
    "weight": ("reading", {"weight": "53 lb", "at_draw": "28 in"}),
    "tiller": ("reading", {"upper": "7 5/8 in"}),
    "curve": ("reading", {"curve": "12 in:11 lb;20 in:33 lb;28 in:53 lb"}),
    "offset": ("reading", {"upper_offset_tip": "1/16 in"}),
    "stations": ("reading", {"stations_upper": "2 in:1 5/8 in:0.291 in;7 in:1 9/16 in:0.279 in;"
                                               "13 in:1 3/8 in:0.263 in"}),
    "glass": ("reading", {"glass_belly": "0.043 in"}),
    "brace": ("reading", {"brace": "8 1/4 in"}),
    "look at faces": ("look", {"seen_faces": "yes"}),
    "look at riser": ("look", {"seen_riser": "yes"}),
    "riser sections": ("section", {"before": "0 in:1 3/16 in:2 1/4 in"}),
    "draw": ("first_draw", {"to_draw": "28 in", "from_distance": "yes", "full": "yes"}),
    "length": ("bow", {"length": "64 in"}),
    "archer's draw": ("archer", {"draw": "27 in"}),
    "agreed": ("agreed", {"weight": "45 lb"}),
}
DEEDS = {
    "strokes": ({"lower_belly": "12", "paper": "P120"},
                {"weight", "tiller", "curve", "offset", "stations", "glass", "draw"}),
    "edges": ({"radius": "1/32 in"}, {"weight", "tiller", "curve", "offset", "draw"}),
    "repair": ({"what": "glued", "limb": "upper", "face": "belly"}, {"look at faces", "draw"}),
    "fill": ({"what": "a pinhole", "limb": "lower", "face": "back"}, {"look at faces", "draw"}),
    "section": ({"done": "yes"}, {"riser sections", "look at riser", "draw"}),
    "hole": ({"standing": "new"}, {"look at riser", "draw"}),
    "coat": ({"role": "build"}, {"curve"}),
    "string": ({"strands": "14"}, {"weight", "tiller", "curve", "brace"}),
}
"""What each deed makes stale; a curve is weight read several times."""


def stale(bench):
    """Return which of the things read are stale."""
    return {name for name, (sheet, facts) in READ.items()
            if derive.is_stale(bench.state, f"{sheet}.{next(iter(facts))}")}


@pytest.mark.parametrize("deed", DEEDS)
def test_a_deed_makes_stale_its_row_and_nothing_else(deed):
    bench = Bench()
    for sheet, facts in READ.values():
        bench.write(sheet, **facts)
    assert stale(bench) == set()
    facts, row = DEEDS[deed]
    done = bench.write(deed, **facts)
    assert stale(bench) == row
    bench.write(deed, replaces=done.id)  # struck out
    assert stale(bench) == set()


@pytest.mark.parametrize(("finished", "thicker"), [("yes", True), ("no", False)])
def test_a_coat_thickens_only_what_was_read_with_the_finish_on(finished, thicker):
    bench = Bench()
    bench.write("reading", stations_upper="2 in:1 5/8 in:0.291 in", with_finish=finished)
    bench.write("coat", role="build")
    assert derive.is_stale(bench.state, "reading.stations_upper") is thicker


@pytest.mark.parametrize("deed", DEEDS)
def test_what_is_read_after_a_deed_is_fresh(deed):
    bench = Bench()
    bench.write(deed, **DEEDS[deed][0])
    for sheet, facts in READ.values():
        bench.write(sheet, **facts)
    assert stale(bench) == set()


def test_a_deed_entered_in_the_evening_counts_from_when_it_was_done():
    bench = Bench()
    bench.write("reading", weight="53 lb", at_draw="28 in")
    bench.write("strokes", day=4, lower_belly="12", paper="P120")  # of the day before, written down later
    assert stale(bench) == set()


@pytest.mark.parametrize(("at", "aged"), [
    ("2027-05-05T09:01+02:00", False), ("2027-05-05T09:20+02:00", True),
])
def test_after_a_year_everything_is_read_again(at, aged):
    bench = Bench()
    for sheet, facts in READ.values():
        bench.write(sheet, **facts)
    bench.write("look", **LOOKED)
    bench.write("bow", due="2027-06-01").at = at
    seen_or_read = {name for name, (sheet, _) in READ.items() if sheet in derive.AGED}
    assert stale(bench) == (seen_or_read if aged else set())
    said = {each.id: say(each.text, "imperial") for each in checks.checks(bench.state)}
    assert ("over a year" in said.get("stale", "")) is aged
    assert ("looks-again" in said) is aged


def test_after_strokes_and_a_year_the_strokes_are_named():
    bench = Bench().came_in()
    bench.write("strokes", lower_belly="12", paper="P120")
    bench.write("bow", due="2027-06-01").at = "2027-06-01T09:00+02:00"
    said = {each.id: say(each.text, "imperial") for each in checks.checks(bench.state)}
    assert "12 strokes" in said["stale"]


def test_one_paper_is_one_however_it_is_written():
    bench = Bench().came_in()
    bench.write("strokes", lower_belly="12", paper="P120")
    bench.write("strokes", lower_belly="12", paper=" p120")
    batch = derive.between(bench.state, bench.state.of("reading")[0], None)
    assert (batch.lower, batch.paper) == (24, "P120")
