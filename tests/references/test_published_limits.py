"""Limits for breathing and gloss levels: the data as they were read, and nothing missing."""

import re

import pytest

from calc import bibliography
from calc.tables.exposure_limits import LIMITS, limits_of
from calc.tables.gloss import LEVELS, levels_at, sheen_decides


@pytest.mark.parametrize("limit", LIMITS, ids=lambda each: f"{each.agent} {each.body}")
def test_every_limit_is_complete(limit):
    assert bibliography.find(limit.source)
    assert limit.status in ("read", "read second-hand", "from memory")
    assert re.fullmatch(r"\d{4}(-\d{2})?", limit.recorded)
    assert re.search(r"ppm|mg/m3|group|none set", limit.value)
    if re.search(r"ppm|mg/m3", limit.value):
        assert limit.averaging


@pytest.mark.parametrize(
    ("agent", "body", "words"),
    [
        ("wood-dust", "OSHA PEL", "15 mg/m3 total, 5 mg/m3 respirable"),  # OSHA page on wood dust: read
        ("wood-dust", "NIOSH REL", "1 mg/m3"),  # the same: read
        ("wood-dust", "IARC", "group 1"),  # IARC vol. 62 and 100C: read in a copy
        ("glass-dust", "NIOSH REL", "5 mg/m3 total"),  # OSHA CH_242120: read
        ("acetone", "OSHA PEL", "1000 ppm (2400"),  # OSHA: read
        ("acetone", "NIOSH REL", "250 ppm (590"),  # OSHA: read
        ("acetone", "IDLH", "2500 ppm"),  # NIOSH: read
        ("toluene", "OSHA PEL", "200 ppm; ceiling 300, peak 500"),  # OSHA: read
        ("toluene", "IDLH", "500 ppm"),  # NIOSH: read
        ("xylene", "OSHA PEL", "100 ppm (435"),  # OSHA: read
        ("xylene", "IDLH", "900 ppm"),  # NIOSH: read
        ("mineral-spirits", "OSHA PEL", "500 ppm (2900"),  # OSHA CH_268000: read
        ("mineral-spirits", "NIOSH REL", "350 mg/m3; 1800"),  # the same: read
        ("isocyanate", "NIOSH REL", "0.005 ppm (0.035 mg/m3); ceiling 0.020 ppm"),  # NPG: read in a copy
        ("isocyanate", "OSHA PEL", "none set"),  # a trade association's page: read second-hand
        ("cyanoacrylate", "Ontario", "0.2 ppm"),  # Ontario data set: read second-hand
    ],
)
def test_limits_as_they_were_read(agent, body, words):
    assert [each for each in limits_of(agent) if (each.body == body and each.value.startswith(words))
            or words in each.value]


@pytest.mark.parametrize(
    ("gloss", "levels"),
    [
        (3, "G1 G2"), (5, "G1 G2"), (8, "G2"), (10, "G2 G3"), (15, "G3"), (20, "G3 G4"), (22, "G3 G4"),
        (25, "G3 G4"), (30, "G4"), (35, "G4 G5"), (50, "G5"), (70, "G5 G6"), (80, "G6"), (85, "G6"),
        (95, "G7"),
    ],
)
def test_gloss_levels_at_60_degrees(gloss, levels):
    # A paint institute's public page: read. A border belongs to both sides; G3 and G4 overlap from 20 to 25.
    # Its highest level has "more than 85 units", so 85 itself is the level below.
    assert [each.id for each in levels_at(gloss)] == levels.split()


@pytest.mark.parametrize(
    ("gloss", "sheen", "level"), [(22, 20, "G3"), (22, 40, "G4"), (3, 5, "G1"), (3, 20, "G2"), (50, 60, "G5")]
)
def test_85_degrees_decide_where_levels_overlap(gloss, sheen, level):
    # The same page: read.
    assert [each.id for each in levels_at(gloss, sheen)] == [level]


@pytest.mark.parametrize("gloss", range(101))
def test_85_degrees_decide_nowhere_else(gloss):
    # The same page, read: G1 ends at 5 GU, and only G3 and G4 overlap again, from 20 to 25.
    assert sheen_decides(gloss) == (gloss <= 5 or 20 <= gloss <= 25)


def test_gloss_borders():
    # 5, 10, 25, 35, 70, 85 at 60 degrees: the same page, read.
    assert [each.high for each in LEVELS[:-1]] == [5, 10, 25, 35, 70, 85]
