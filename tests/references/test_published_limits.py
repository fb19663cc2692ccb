"""Limits for breathing and gloss levels: the data as they were read, and nothing missing."""

import re

import pytest

from calc import bibliography
from calc.shop.air import mass_concentration
from calc.tables.exposure_limits import LIMITS, limits_of, value_of
from calc.tables.gloss import LEVELS, levels_at, sheen_decides
from calc.tables.solvents import SOLVENTS
from calc.tables.solvents import find as find_solvent


@pytest.mark.parametrize("limit", LIMITS, ids=lambda each: f"{each.agent} {each.body}")
def test_every_limit_is_complete(limit):
    assert bibliography.find(limit.source)
    assert limit.status in ("read", "read second-hand", "from memory")
    assert re.fullmatch(r"\d{4}(-\d{2})?", limit.recorded)
    value = value_of(limit)
    assert re.search(r"ppm|mg/m3|group|none", value)
    if re.search(r"ppm|mg/m3", value):
        assert limit.averaging


@pytest.mark.parametrize("limit", LIMITS, ids=lambda each: f"{each.agent} {each.stuff} {each.body}")
def test_every_figure_is_the_number_in_its_text(limit):
    for level in limit.levels:
        figure = re.search(r"([\d.]+) (ppm|mg/m3)", level.text)
        if level.number is None:
            assert figure is None
        else:
            assert (float(figure.group(1)), figure.group(2)) == (level.number, level.unit)


@pytest.mark.parametrize("solvent", SOLVENTS, ids=lambda each: each.id)
def test_every_solvent_has_a_limit_for_breathing(solvent):
    assert [each for each in limits_of(solvent.id) for level in each.levels if level.number]


@pytest.mark.parametrize("limit", [each for each in LIMITS if each.agent in {one.id for one in SOLVENTS}],
                         ids=lambda each: f"{each.agent} {each.body}")
def test_parts_per_million_and_milligrams_agree(limit):
    # Both are printed by the bodies, the mass rounded: within 3 %. Mixtures have a molar mass of their own.
    molar_mass = find_solvent(limit.agent).molar_mass
    for level in limit.levels:
        both = re.search(r"([\d.]+) ppm \(([\d.]+) mg/m3\)", level.text)
        if both and limit.agent not in ("mineral-spirits", "naphtha"):
            mass = mass_concentration(float(both.group(1)) * 1e-6, molar_mass, 25) * 1e6
            assert mass == pytest.approx(float(both.group(2)), rel=0.03)


@pytest.mark.parametrize(
    ("agent", "body", "words"),
    [
        ("wood-dust", "OSHA PEL", "15 mg/m3 total; 5 mg/m3 respirable"),  # OSHA page on wood dust: read
        ("wood-dust", "NIOSH REL", "1 mg/m3"),  # the same: read
        ("wood-dust", "IARC", "group 1"),  # IARC vol. 62 and 100C: read in a copy
        ("glass-dust", "NIOSH REL",  # OSHA CH_242120: read
         "3 fibres/cm3 (to 3.5 µm thick, from 10 µm long); 5 mg/m3 total"),
        ("acetone", "OSHA PEL", "1000 ppm (2400"),  # OSHA: read
        ("acetone", "NIOSH REL", "250 ppm (590"),  # OSHA: read
        ("acetone", "IDLH", "2500 ppm"),  # NIOSH: read
        ("toluene", "OSHA PEL", "200 ppm; ceiling 300 ppm; peak 500 ppm for 10 min"),  # OSHA: read
        ("toluene", "IDLH", "500 ppm"),  # NIOSH: read
        ("xylene", "OSHA PEL", "100 ppm (435"),  # OSHA: read
        ("xylene", "IDLH", "900 ppm"),  # NIOSH: read
        ("mineral-spirits", "OSHA PEL", "500 ppm (2900"),  # OSHA CH_268000: read
        ("mineral-spirits", "NIOSH REL", "350 mg/m3; ceiling 1800"),  # the same: read
        ("butyl-acetate", "OSHA PEL", "150 ppm (710 mg/m3)"),  # OSHA CH_222500: read
        ("butyl-acetate", "NIOSH REL", "150 ppm (710 mg/m3); 200 ppm (950"),  # the same: read
        ("butyl-acetate", "IDLH", "1700 ppm"),  # the same, and NIOSH: read
        ("isobutyl-acetate", "OSHA PEL", "150 ppm (700 mg/m3)"),  # NIOSH IDLH documentation: read
        ("isobutyl-acetate", "NIOSH REL", "150 ppm (700 mg/m3)"),  # the same: read
        ("isobutyl-acetate", "IDLH", "1300 ppm"),  # the same: read
        ("ethyl-acetate", "OSHA PEL", "400 ppm (1400 mg/m3)"),  # NIOSH IDLH documentation: read
        ("ethyl-acetate", "NIOSH REL", "400 ppm (1400 mg/m3)"),  # the same: read
        ("ethyl-acetate", "IDLH", "2000 ppm"),  # the same: read
        ("mek", "OSHA PEL", "200 ppm (590 mg/m3)"),  # NIOSH IDLH documentation, 2-butanone: read
        ("mek", "NIOSH REL", "200 ppm (590 mg/m3); 300 ppm (885"),  # the same: read
        ("mek", "IDLH", "3000 ppm"),  # the same: read
        ("isopropanol", "OSHA PEL", "400 ppm (980 mg/m3)"),  # NIOSH IDLH documentation: read
        ("isopropanol", "NIOSH REL", "400 ppm (980 mg/m3); 500 ppm (1225"),  # the same: read
        ("isopropanol", "IDLH", "2000 ppm"),  # the same: read
        ("ethanol", "OSHA PEL", "1000 ppm (1900 mg/m3)"),  # NIOSH IDLH documentation: read
        ("ethanol", "NIOSH REL", "1000 ppm (1900 mg/m3)"),  # the same: read
        ("ethanol", "IDLH", "3300 ppm"),  # the same: read
        ("methanol", "OSHA PEL", "200 ppm (260 mg/m3)"),  # NIOSH IDLH documentation: read
        ("methanol", "NIOSH REL", "200 ppm (260 mg/m3); 250 ppm (325"),  # the same: read
        ("methanol", "IDLH", "6000 ppm"),  # the same: read
        ("butanol", "OSHA PEL", "100 ppm (300 mg/m3)"),  # NIOSH IDLH documentation: read
        ("butanol", "NIOSH REL", "ceiling 50 ppm (150 mg/m3)"),  # the same: read
        ("butanol", "IDLH", "1400 ppm"),  # the same: read
        ("turpentine", "OSHA PEL", "100 ppm (560 mg/m3)"),  # NIOSH IDLH documentation and Pocket Guide: read
        ("turpentine", "NIOSH REL", "100 ppm (560 mg/m3)"),  # the same: read
        ("turpentine", "IDLH", "800 ppm"),  # the same: read
        ("naphtha", "OSHA PEL", "none set"),  # OSHA CH_274955, VM&P naphtha: read
        ("naphtha", "NIOSH REL", "350 mg/m3; ceiling 1800 mg/m3 in 15 min"),  # the same: read
        ("isocyanate", "NIOSH REL", "0.005 ppm (0.035 mg/m3); ceiling 0.020 ppm"),  # NPG: read in a copy
        ("isocyanate", "Oregon, short term", "1 mg/m3"),  # abstract of a study (2012): read second-hand
        ("isocyanate", "Oregon", "0.5 mg/m3"),  # from memory
        ("isocyanate", "OSHA PEL", "ceiling 0.02 ppm (0.2 mg/m3)"),  # MDI, NIOSH IDLH documentation: read
        ("isocyanate", "OSHA PEL", "ceiling 0.02 ppm (0.14 mg/m3)"),  # TDI, the same: read
        ("formaldehyde", "NIOSH REL", "0.016 ppm; ceiling 0.1 ppm in 15 min"),  # NPG: read in a copy
        ("formaldehyde", "OSHA PEL", "0.75 ppm; 2 ppm in 15 min"),  # the same: read in a copy
        ("isocyanate", "OSHA PEL", "none set"),  # a trade association's page: read second-hand
        ("cyanoacrylate", "Ontario", "0.2 ppm"),  # Ontario data set: read second-hand
    ],
)
def test_limits_as_they_were_read(agent, body, words):
    assert [each for each in limits_of(agent) if each.body == body and value_of(each).startswith(words)]


@pytest.mark.parametrize(("agent", "body"), [("butyl-acetate", "OSHA PEL"), ("butyl-acetate", "NIOSH REL")])
def test_butyl_acetate_is_no_longer_from_memory(agent, body):
    [limit] = [each for each in limits_of(agent) if each.body == body]
    assert limit.status == "read"


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
