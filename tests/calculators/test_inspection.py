"""The inspection: whatever else is ticked, the most dangerous finding decides.

Which finding asks for what is common practice; that the gravest one wins is
checked over every pair and over random sets.
"""

import json
import math
import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import catalog, quantities
from calc.__main__ import main
from calc.answer import work_out
from calc.calculators import tracking
from calc.declaring import inputs_of
from calc.outcome import say
from calc.tables import practice
from calc.tables.findings import (
    FINDINGS,
    LOOK,
    LOOKS,
    MEASURE,
    REPAIR,
    SHOOT,
    VERDICTS,
    WALL,
    find,
    verdict_of,
    with_verdict,
)

INSPECTION = catalog.find("inspection")
DANGER = {SHOOT: 0, MEASURE: 1, REPAIR: 2, LOOK: 3, WALL: 4}
DOCS = Path(__file__).parents[2] / "docs"
ALL_LOOKS = tuple(each.id for each in LOOKS)


def inspected(*ticked):
    """Return the outcome's values and checks with these boxes ticked."""
    job = work_out(INSPECTION, [(id, "yes") for id in ticked])
    assert not job.problems
    return dict(job.outcome.values), job.outcome


@settings(max_examples=300)
@given(st.sets(st.sampled_from(FINDINGS)), st.sets(st.sampled_from(LOOKS)))
def test_the_most_dangerous_finding_always_wins(found, unseen):
    values, outcome = inspected(*[each.id for each in found],
                                *[each.id for each in LOOKS if each not in unseen])
    dangers = [DANGER[each.verdict] for each in found] + [DANGER[LOOK]] * bool(unseen)
    assert DANGER[values["verdict"]] == max(dangers, default=0)
    assert outcome.headline.startswith(next(each.words for each in VERDICTS if each.id == values["verdict"]))
    deciding = [each for each in found if DANGER[each.verdict] == DANGER[values["verdict"]]]
    told = outcome.headline.partition(" What decides: ")[2].removesuffix(".").split("; ")
    assert sorted(each for each in told if each) == sorted(
        each.label[0].lower() + each.label[1:] for each in deciding if each.verdict != SHOOT)
    if found:
        gravest = next(each for each in FINDINGS if each.label == values["gravest"])
        assert DANGER[gravest.verdict] == max(DANGER[each.verdict] for each in found)


@settings(max_examples=100)
@given(st.lists(st.sampled_from(FINDINGS)), st.sampled_from(FINDINGS))
def test_one_more_finding_never_makes_a_bow_safer(found, more):
    before = DANGER[verdict_of(found, []).id]
    assert DANGER[verdict_of([*found, more], []).id] == max(before, DANGER[more.verdict])


@pytest.mark.parametrize("finding", with_verdict(WALL), ids=lambda each: each.id)
def test_what_belongs_on_the_wall_stays_there_among_all_lesser_findings(finding):
    lesser = [each.id for each in FINDINGS if each.verdict != WALL]
    assert inspected(finding.id, *lesser, *ALL_LOOKS)[0]["verdict"] == WALL


def test_a_bow_that_was_not_looked_at_is_not_passed():
    assert inspected()[0]["verdict"] == LOOK
    for each in LOOKS:
        values, _ = inspected(*[id for id in ALL_LOOKS if id != each.id])
        assert (values["verdict"], values["unseen"]) == (LOOK, 1)


def test_a_passed_bow_is_still_drawn_from_a_distance():
    values, outcome = inspected(*ALL_LOOKS, "crazing")
    assert values["verdict"] == SHOOT
    assert "from a distance" in outcome.headline
    [check] = [each for each in outcome.checks if each.id == "first-draw"]
    assert check.level == "watch"


@pytest.mark.parametrize(("id", "verdict"), [ # common practice
    ("crack_across", WALL),
    ("parted_layers", WALL),
    ("lifted_glass", WALL),
    ("riser_through", WALL),
    ("core_crack", WALL),
    ("sanded_through", WALL),
    ("repair_opened", WALL),
    ("rough_past", LOOK),
    ("edge_lifted", LOOK),
    ("lifted_fadeout", LOOK),
    ("white_lines", LOOK),
    ("crazed_glass", LOOK),
    ("dull_tap", LOOK),
    ("riser_check", LOOK),
    ("twisted_limb", LOOK),
    ("loose_overlay", REPAIR),
    ("edge_splinter", REPAIR),
    ("edge_lifted_ramp", REPAIR),
    ("crazing", SHOOT),
    ("line_unsure", LOOK),
    ("twist_slight", SHOOT),
    ("twist_sound", MEASURE),
])
def test_single_findings(id, verdict):
    assert inspected(id, *ALL_LOOKS)[0]["verdict"] == verdict


def test_twist_is_parted_where_the_tracking_calculator_parts_it():
    accepted = quantities.show(practice.find("limb-twist").high, "angle", "imperial", 0)
    most = quantities.show(tracking.FAR_OUT * practice.find("limb-twist").high, "angle", "imperial", 0)
    assert (accepted, most) == ("2°", "6°")
    assert find("twist_slight").label == f"A twist of {accepted} or less"
    assert find("twist_sound").label == f"A twist of 2 to {most}, and all else sound"
    assert f"more than {most}, or by more than {accepted} with a doubt" in find("twisted_limb").label


def test_a_twisted_limb_is_measured_before_any_draw():
    values, outcome = inspected("twist_sound", *ALL_LOOKS)
    assert values["verdict"] == MEASURE
    assert "string it only to measure" in outcome.headline.lower()
    [check] = [each for each in outcome.checks if each.id == "twist_sound"]
    assert check.level == "watch"
    text = say(check.text, "imperial").lower()
    for what in ("before any draw", "both fadeouts", "both grooves", "1/8 in"):
        assert what in text
    assert "1/8 in" in next(each.note for each in VERDICTS if each.id == MEASURE)


SHOWN = {2.0: ("13/32 in", "13/64 in"), 6.0: ("1 1/4 in", "5/8 in")}
METRIC = {2.0: 10, 6.0: 31}  # mm


@pytest.mark.parametrize("angle", SHOWN)
def test_twist_over_a_stick_is_geometry_rounded_to_the_safe_side(angle):
    """What a twist lifts at one end of a stick of 12 in whose other end is level: never stated too large."""
    lift = 12 * math.sin(math.radians(angle))
    whole, half = [quantities.parse(each, "length", "imperial") / quantities.INCH for each in SHOWN[angle]]
    assert lift - 1 / 32 < whole <= lift
    assert METRIC[angle] == math.floor(lift * 25.4)
    assert half == whole / 2  # sticks that cross in the middle show half at each end


def test_every_gap_over_sticks_is_one_of_these():
    shown = {each for pair in SHOWN.values() for each in pair}
    for finding in (find("twist_slight"), find("twist_sound"), find("twisted_limb")):
        sign = finding.sign.replace("12 in (305 mm)", "").replace("2 to 6", "")
        metric = re.findall(r"\((?:(\d+) to )?(\d+) mm\)", sign)
        assert {int(gap) for pair in metric for gap in pair if gap} <= set(METRIC.values()), finding.id
        gaps = re.findall(r"(\d[\d /]*) (?:in|to)\b", re.sub(r" \([^)]*mm\)", "", sign))
        assert gaps, finding.id
        assert {gap + " in" for gap in gaps} <= shown, finding.id
    page = (DOCS / "inspect" / "index.md").read_text()
    rows = re.findall(r"^\| (\d)° \| (.+?) \| (.+?) \|$", page, re.MULTILINE)
    assert {float(angle): (whole, half) for angle, whole, half in rows} == SHOWN
    for file in DOCS.rglob("*.md"):
        assert "7/16 in over" not in file.read_text(), file
        assert "7/16 in at one end" not in file.read_text(), file


def test_a_line_across_is_judged_in_the_glass_and_not_in_the_finish():
    assert "finish is off" in find("crack_across").sign
    assert "finish" in find("riser_through").sign
    assert "Take the finish off a small patch" in find("line_unsure").reason
    assert find("line_unsure").verdict == LOOK
    assert "scratch" in find("worn_finish").sign


def test_not_yet_says_how_to_find_somebody():
    _, outcome = inspected("dull_tap", *ALL_LOOKS)
    [check] = [each for each in outcome.checks if each.id == "whom"]
    assert [each.page for each in check.text.amounts] == ["begin/#somebody-experienced"]
    assert "## Somebody experienced" in (DOCS / "begin" / "index.md").read_text()


def test_no_mending_is_promised():
    for each in FINDINGS:
        assert not re.search(r"\bit holds\b|\bwill hold\b(?! it)", each.reason), each.id


def test_whoever_is_not_asked_counts_as_not_known():
    values, _ = inspected(*[id for id in ALL_LOOKS if id != "asked_past"])
    assert values["verdict"] == LOOK


def test_every_finding_is_a_box_under_the_head_of_its_verdict():
    groups = {each.title: [asked.id for asked in each.inputs] for each in INSPECTION.groups}
    for verdict in VERDICTS:
        assert groups[verdict.title] == [each.id for each in with_verdict(verdict.id)]
    assert len(inputs_of(INSPECTION)) == len(FINDINGS) + len(LOOKS)


def test_the_command_line_gives_the_verdict(capsys):
    assert main(["inspection", "--crack-across", "yes", "--crazing", "yes", "--json"]) == 0
    said = json.loads(capsys.readouterr().out)
    assert said["results"]["verdict"]["value"] == WALL
    assert said["checks"][0]["level"] == "stop"
    assert "See Tell crazing from cracks." in said["checks"][0]["text"]
