"""A figure that a table holds is the same wherever a page states it.

A page best takes it from there (`[[practice ID]]`). Where it is typed into a sentence, the sentence is found
here by its words, and its figure must be one of the table's.
"""

import re
from collections import namedtuple

import pytest

from calc import catalog
from calc.declaring import inputs_of
from calc.quantities import parse
from calc.tables import exposure_limits, practice, solvents
from tests.book.pages import all_pages

NUMBER = r"\d+(?: \d+/\d+|/\d+|\.\d+)?"

Statement = namedtuple("Statement", "limit words unit")
"""How pages speak of a limit. words: finds it in a sentence, each group a figure; unit: of a bare figure."""

STATEMENTS = (
    Statement("tiller-split", rf"larger by ({NUMBER}) to ({NUMBER}) in for split finger", "in"),
    Statement("tiller-under", rf"by ({NUMBER}) to ({NUMBER}) in for three under", "in"),
    Statement("tiller-correctable", rf"[Mm]ore than ({NUMBER}) in(?: is seldom|;| of tiller)", "in"),
    Statement("tiller-correctable", rf"[Tt]iller is ({NUMBER}) in or more out", "in"),
    Statement("tiller-correctable", rf"difference of up to ({NUMBER}) in can be put right", "in"),
    Statement("brace-read", rf"[Bb]race(?: height)?(?: and tiller)?(?: as before)?(?: read twice)?"
              rf"(?: ten minutes apart)?(?: agree)?,? within ({NUMBER}) in(?! of| again| after)", "in"),
    Statement("brace-settled", rf"[Bb]race(?: height)? steady within ({NUMBER}) in", "in"),
    Statement("return-weight", rf"[Bb]ring it back if weight has changed by more than ({NUMBER}) lb", "lb"),
    Statement("return-tiller", rf"tiller has moved by more than ({NUMBER}) in", "in"),
    Statement("weight-drop", rf"[Mm]ore than (?:about )?({NUMBER}) % (?:calls|is not|is asked|of the weight)",
              "%"),
    Statement("weight-drop", rf"reduction (?:is )?({NUMBER}) % or less", "%"),
    Statement("arrow-usual", rf"({NUMBER}) to ({NUMBER})(?: gr(?:ains)?)? (?:of arrow )?"
              r"(?:for each pound|is usual)", "gr/lb"),
    Statement("arrow-light", rf"(?:lighter than|[Uu]nder) ({NUMBER})(?: gr for each pound|(?: is)? not for)",
              "gr/lb"),
    Statement("arrow-never", rf"(?:[Uu]nder|[Nn]ever below) ({NUMBER})(?: gr(?:ains)?)?"
              r"(?: of arrow)? (?:for each pound(?: of draw(?: weight)?)?[:;]|is for no bow)", "gr/lb"),
    Statement("string-offset", rf"within ({NUMBER}) in of (?:the|each) (?:middle|limb's middle)", "in"),
    Statement("string-offset", rf"no more than ({NUMBER}) in off", "in"),
    Statement("limb-twist", r"twisted by no more than (\d+)°", "°"),
    Statement("limb-twist", r"a limb with more than (\d+)° of twist", "°"),
    Statement("groove-angle", r"in line within (\d+)°", "°"),
    Statement("groove-angle", r"groove more than (\d+)° off", "°"),
    Statement("accessory-spacing", rf"[Hh]oles stand ({NUMBER}) in apart", "in"),
    Statement("accessory-spacing", rf"({NUMBER}) in between accessory holes", "in"),
    Statement("accessory-spacing", rf"Spacing ({NUMBER}) in within", "in"),
    Statement("spacing-error", rf"Spacing {NUMBER} in within ({NUMBER}) in", "in"),
    Statement("blind-wall", rf"[Ww]all (?:left|behind every hole)[\w ]* at least ({NUMBER}) in", "in"),
    Statement("limb-film", rf"({NUMBER}) to ({NUMBER}) mil (?:dry on limbs|that are usual on limbs)", "mil"),
    Statement("bow-heat", rf"(?:[Uu]nder|[Bb]elow|past) ({NUMBER}) °C \(1\d\d °F\)", "°C"),
    Statement("dew-point-margin", rf"at least ({NUMBER}) °C \(5\.4 °F\)", "°C"),
    Statement("dew-point-margin", rf"at least 3 °C \(({NUMBER}) °F\)", "°F"),
    Statement("spray-humidity", rf"humidity (?:is )?not over ({NUMBER}) %", "%"),
    Statement("string-strength", rf"(?:factor,|not under|Not under) ({NUMBER}) (?:for polyester|times)", ""),
)


def sentences():
    """Return (where, text) of everything that pages and calculators say in words of their own."""
    said = [(page.name, each.text) for page in all_pages() for each in page.blocks]
    for id in catalog.IDS:
        calculator = catalog.find(id)
        said += [(id, text) for text in (calculator.purpose, *calculator.cautions)]
        said += [(f"{id}: {each.id}", text) for each in inputs_of(calculator)
                 for text in (each.help, each.measure) if text]
    return said


@pytest.fixture(scope="module")
def said():
    return sentences()


def contradictions(statement, said):
    """Return every place that states another figure for a limit, and how many were read."""
    limit = practice.find(statement.limit)
    ends = [end for end in (limit.low, limit.high) if end is not None]
    places, read = [], 0
    for where, text in said:
        for found in re.finditer(statement.words, text):
            read += 1
            figures = [parse(f"{each} {statement.unit}".strip(), limit.kind) for each in found.groups()]
            wanted = ends if len(figures) == len(ends) == 2 else None
            if wanted and figures != pytest.approx(wanted):
                places.append((where, found[0]))
            if not wanted and not all(any(each == pytest.approx(end) for end in ends) for each in figures):
                places.append((where, found[0]))
    return places, read


@pytest.mark.parametrize("statement", STATEMENTS, ids=lambda each: f"{each.limit}: {each.words[:30]}")
def test_a_limit_of_practice_is_stated_with_one_figure(statement, said):
    places, read = contradictions(statement, said)
    assert not places
    assert read, "no page says this any more"


def test_another_figure_would_be_found():
    statement = next(each for each in STATEMENTS if each.limit == "blind-wall")
    assert contradictions(statement, [("odd.md", "Wall left in the worst case at least 1/8 in")]) == (
        [("odd.md", "Wall left in the worst case at least 1/8 in")], 1)


def test_every_limit_that_pages_speak_of_is_checked():
    unchecked = {"edge-reserve", "balance", "glass-left", "scratch-depth", "tape-short", "tape-long"}
    """Shown by the tables only, or worked out for each bow."""
    assert {each.id for each in practice.LIMITS} - {each.limit for each in STATEMENTS} <= unchecked


FLASH_POINT = re.compile(r"^\| (-?\d+) °C \((-?\d+) °F\)[^|]*\| ([^|]+) \|", re.MULTILINE)


def test_safety_gives_the_flash_points_of_the_table_of_solvents():
    (source,) = [page.source for page in all_pages() if page.name == "safety/index.md"]
    rows = FLASH_POINT.findall(source)
    assert len(rows) >= 10
    for celsius, fahrenheit, names in [(int(row[0]), int(row[1]), row[2]) for row in rows]:
        assert fahrenheit == round(celsius * 9 / 5 + 32)
        stated = [each for each in solvents.SOLVENTS
                  if re.search(rf"(?<![\w-])(?:{each.name}|{each.id})\b", names)]
        assert stated, f"no solvent of the table is called {names}"
        assert [each.flash_point for each in stated] == [celsius] * len(stated)


@pytest.mark.parametrize(("said", "agent", "body"), [
    (r"[Aa]bove its limit of ([\d.]+) ppm the NIOSH page", "formaldehyde", "NIOSH REL"),
    (r"short-term limit of ([\d.]+) ppm in \[our list\]", "cyanoacrylate", "ACGIH TLV"),
])
def test_safety_gives_the_limits_of_the_table_of_limits(said, agent, body):
    (source,) = [page.source for page in all_pages() if page.name == "safety/index.md"]
    (figure,) = re.findall(said, source)
    limits = [each for each in exposure_limits.LIMITS if each.agent == agent and each.body.startswith(body)]
    assert (float(figure), "ppm") in [(level.number, level.unit) for each in limits for level in each.levels]
