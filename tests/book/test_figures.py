"""Figures that a page states and the table of practice also holds: they must be the same figure."""

import re
from pathlib import Path

import pytest

from calc.calculators.tracking import FAR_OUT
from calc.quantities import parse
from calc.tables import practice

DOCS = Path(__file__).parents[2] / "docs"
TEXT = {file.relative_to(DOCS).as_posix(): file.read_text() for file in DOCS.rglob("*.md")}

TWIST = practice.find("limb-twist").high
LENGTH = r"(\d[\d /]* in)"

# What a page says, its kind, the figures that practice knows for it, and how often it is said at the least.
STATED = (
    (rf"within {LENGTH} of the (?:limb's )?middle at (?:both|the|either) fadeout", "length",
     (practice.find("string-offset").high,), 4),
    (rf"{LENGTH} (?:or less at|off at) (?:the|both|a) fadeout", "length",
     (practice.find("string-offset").high,), 1),
    (r"twist(?:ed)? (?:of|by) (?:no )?(?:more than )?(\d+(?:\.\d+)?°)", "angle", (TWIST, FAR_OUT * TWIST), 4),
    (r"twist of (\d+) to 6°", "angle", (TWIST,), 3),
    (r"twist of 2 to (\d+)°", "angle", (FAR_OUT * TWIST,), 3),
    (r"(\d+) times the draw weight in strength", "number", (practice.find("string-strength").low,), 1),
    (r"(\d+) to 10 gr\b", "mass_per_force", (practice.find("arrow-usual").low,), 3),
    (r"\b8 to (\d+) gr\b", "mass_per_force", (practice.find("arrow-usual").high,), 3),
    (r"[Uu]nder (\d+) gr (?:of arrow )?for each pound", "mass_per_force",
     (practice.find("arrow-never").low, practice.find("arrow-light").low), 1),
    (rf"[Ww]all behind every hole at least {LENGTH}", "length", (practice.find("blind-wall").low,), 1),
    (r"under (\d+ °C) \(120 °F\)", "temperature", (practice.find("bow-heat").high,), 2),
    (r"More than about (\d+ %) calls for a second thought", "ratio", (practice.find("weight-drop").high,), 1),
)


@pytest.mark.parametrize(("said", "kind", "known", "least"), STATED, ids=[each[0][:40] for each in STATED])
def test_a_limit_on_a_page_is_the_one_of_practice(said, kind, known, least):
    found = [(name, each) for name, text in TEXT.items() for each in re.findall(said, text)]
    assert len(found) >= least, "the pages no longer say this: mend the pattern"
    unit = {"mass_per_force": " gr/lb", "angle": "°"}.get(kind, "")
    for name, each in found:
        value = parse(each if each.endswith(("°", "%", "C")) else each + unit, kind, "imperial")
        assert any(value == pytest.approx(limit) for limit in known), (name, each)
