"""Tables to look up, against figures that stand elsewhere."""

import pytest

from calc.lookups import catalog
from calc.quantities import parse


def cells(table):
    return {each.cells[0]: each.cells[1:] for each in catalog.find(table).rows}


def test_pounds_kilograms_and_newtons():
    # the pound is 0.45359237 kg by definition: 45 lb are 20.41 kg; times 9.80665: 200.2 N
    kilograms, newtons = cells("forces")["45 lb"]
    assert kilograms == pytest.approx(20.4117, abs=1e-4)
    assert newtons == pytest.approx(200.17, abs=0.01)
    assert cells("forces")["1 lb"][0] == pytest.approx(0.45359237)


def test_both_tests_of_spine_and_spine_weight():
    # 26 over the bend in inches (read second-hand): 50 lb bends 0.520 in on 26 in with
    # 2 lb. On 28 in with 1.94 lb the same shaft bends (28/26)^3 x 0.97 times that: 0.630 in, by hand.
    short, long, metric = cells("spine")["50 lb"]
    assert short / 0.0254 == pytest.approx(0.520, abs=5e-4)
    assert long / 0.0254 == pytest.approx(0.520 * (28 / 26) ** 3 * 0.97, abs=5e-4)
    assert metric == long


def test_strands_are_those_of_the_rule():
    # 12 times 45 lb over 22.5 kg a strand: 10.9, so 12 in two bundles and in three (common practice)
    assert cells("strands")["45 lb"][:2] == ("12", "12")
    # 12 times 70 lb: 16.9, so 18 and 18; 75 lb: 18.1, so 20 and 21
    assert cells("strands")["70 lb"][:2] == ("18", "18")
    assert cells("strands")["75 lb"][:2] == ("20", "21")


def test_pot_life_halves_for_each_10_degrees():
    # a guide specification for two-part urethane, read in a copy: half for each 10 °C (18 °F) warmer
    table = cells("pot-life")
    hour = [column.label for column in catalog.find("pot-life").columns].index("60 min") - 1
    assert table["70 °F, 21 °C"][hour] / 60 == pytest.approx(60)
    assert table["60 °F, 16 °C"][hour] / 60 == pytest.approx(60 * 2 ** (10 / 18))


def test_metric_threads_leave_three_quarters_or_so():
    # tap drills of shop charts (from memory) by the 1.299 rule
    for thread, (major, pitch, minor, _, share) in cells("threads-metric").items():
        assert float(thread[1:]) == pytest.approx(major * 1000)
        assert 0.70 < share < 0.80, thread
        assert major - 1.0825318 * pitch == pytest.approx(minor)


def test_gloss_levels_are_those_of_the_published_table():
    # a painters' institute's gloss and sheen levels, read: gloss at 60 degrees, sheen at 85
    assert cells("gloss") == {
        "G1": ("flat", "at most 5", "at most 10"), "G2": ("velvet", "at most 10", "10 to 35"),
        "G3": ("eggshell", "10 to 25", "10 to 35"), "G4": ("satin", "20 to 35", "at least 35"),
        "G5": ("semi-gloss", "35 to 70", None), "G6": ("gloss", "70 to 85", None),
        "G7": ("high gloss", "more than 85", None)}


def test_hands_and_brace_heights_go_up_from_the_small_to_the_large():
    for low, middle, high, _ in cells("hands").values():
        assert low < middle < high
    assert all(low < high for _, low, high, _ in cells("brace-heights").values())
    # the invented 64 in recurve, braced at 8 1/4 in, lies within its span
    _, low, high, _ = cells("brace-heights")["Recurve, 62 to 64 in"]
    assert low <= parse("8 1/4 in", "length") <= high


def test_a_solvents_line_is_what_its_own_tables_say():
    flash, _, _, pel, _, _, idlh = cells("solvent-limits")["acetone"]
    assert flash == -20  # NFPA 497 (2008), read second-hand
    assert pel.startswith("1000 ppm")  # OSHA, read
    assert idlh == "2500 ppm"
