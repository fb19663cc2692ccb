"""Grain sizes and steps of abrasive grades against published tables."""

import math

import pytest

from calc.shop.abrasives import ladder, nearest, step_ratio
from calc.tables.grits import CAMI_GRITS, GRITS, P_GRITS, find, name_of
from tests.references.printed import printed

MICROMETRE = 1e-6


def size(id):
    return find(id).size / MICROMETRE


@pytest.mark.parametrize(
    ("grade", "micrometres"),
    [
        ("p12", 1815), ("p16", 1324), ("p20", 1000), ("p24", 764), ("p30", 642), ("p36", 538), ("p40", 425),
        ("p50", 336), ("p60", 269), ("p80", 201), ("p100", 162), ("p120", 125), ("p150", 100), ("p180", 82),
        ("p220", 68), ("p240", 58.5), ("p280", 52.2), ("p320", 46.2), ("p360", 40.5), ("p400", 35.0),
        ("p500", 30.2), ("p600", 25.8), ("p800", 21.8), ("p1000", 18.3), ("p1200", 15.3), ("p1500", 12.6),
        ("p2000", 10.3), ("p2500", 8.4),
    ],
)
def test_p_grades(grade, micrometres):
    # Mean diameters, FEPA P (ISO 6344), in two trade tables that agree (P12 to P120 in both): read
    # second-hand. The standards themselves were not read.
    assert size(grade) == pytest.approx(micrometres, rel=1e-12)


@pytest.mark.parametrize(
    ("grade", "micrometres"),
    [
        ("c24", 708), ("c30", 632), ("c36", 530), ("c40", 425), ("c50", 348), ("c60", 265), ("c80", 190),
        ("c100", 140), ("c120", 115), ("c150", 92), ("c180", 82), ("c220", 68), ("c240", 53.0),
        ("c320", 36.0),
        ("c360", 28.0), ("c400", 23.0), ("c500", 20.0), ("c600", 16.0), ("c800", 12.6), ("c1000", 10.3),
        # the other table: read second-hand
        ("c24", 715), ("c30", 638), ("c36", 535), ("c40", 428), ("c50", 351), ("c60", 268), ("c80", 192),
        ("c100", 141),
    ],
)
def test_cami_grades_within_what_the_tables_differ(grade, micrometres):
    # Two trade tables that differ by up to 2 %: read second-hand.
    assert size(grade) == pytest.approx(micrometres, rel=0.02)


@pytest.mark.parametrize(
    ("cami", "p"), [("c180", "p180"), ("c220", "p220"), ("c40", "p40"), ("c800", "p1500"), ("c1000", "p2000")]
)
def test_grades_that_are_the_same_on_both_scales(cami, p):
    # Coincidences of the two columns of one table: read second-hand.
    assert find(cami).size == find(p).size


@pytest.mark.parametrize(
    ("cami", "p"),
    [
        ("c60", "P60"), ("c80", "P80"), ("c120", "P120"), ("c150", "P150"),  # "roughly agree up to 220"
        ("c320", "P400"),  # "320 CAMI is approximately P400": read second-hand
        ("c600", "P1200"),  # "600 CAMI is P1200": read second-hand
    ],
)
def test_nearest_grade_on_the_other_scale(cami, p):
    assert name_of(nearest(find(cami).size, P_GRITS)) == p


def test_cami_400_is_finer_than_p600():
    # "400-grit CAMI is finer than 600-grit FEPA": read second-hand.
    assert find("c400").size < find("p600").size


@pytest.mark.parametrize("grits", [P_GRITS, CAMI_GRITS])
def test_a_higher_number_is_finer(grits):
    assert [grit.number for grit in grits] == sorted(grit.number for grit in grits)
    sizes = [grit.size for grit in grits]
    assert all(before > after for before, after in zip(sizes, sizes[1:], strict=False))


def test_mean_step_from_p60_to_p2500():
    # Geometric mean of 19 steps, 269 to 8.4: calculated from the table, a cross-check.
    grades = [grit for grit in P_GRITS if 60 <= grit.number <= 2500]
    steps = [step_ratio(one.size, other.size) for one, other in zip(grades, grades[1:], strict=False)]
    assert len(steps) == 19
    assert math.exp(sum(map(math.log, steps)) / 19) == printed("1.200")


@pytest.mark.parametrize(
    ("grades", "ratios"),
    [
        # Calculated from the table: cross-checks.
        ((60, 80, 100, 120, 150, 180, 220), ("1.338", "1.241", "1.296", "1.250", "1.220", "1.206")),
        ((80, 120, 180, 240, 320), ("1.61", "1.52", "1.40", "1.27")),
        ((220, 320, 400, 600, 800, 1000, 1500, 2000),
         ("1.47", "1.32", "1.36", "1.18", "1.19", "1.45", "1.22")),
    ],
)
def test_steps_of_usual_sequences(grades, ratios):
    sizes = [find(f"p{number}").size for number in grades]
    for before, after, ratio in zip(sizes, sizes[1:], ratios, strict=False):
        assert step_ratio(before, after) == printed(ratio)


@pytest.mark.parametrize(("start", "finish"), [(80, 220), (80, 320)])
def test_the_house_rule_refuses_to_skip_this_much(start, finish):
    # Limit of 1.65: common practice. Ratios 2.96 and 4.35 calculated from the table.
    assert len(ladder(P_GRITS, find(f"p{start}"), find(f"p{finish}"), 1.65)) > 2


def test_the_rule_of_one_or_two_levels_passes():
    # "Move one to two levels finer, e.g. 80 > 120 > 180": a trade page, read second-hand.
    shelf = tuple(find(f"p{number}") for number in (80, 120, 180))
    assert ladder(shelf, shelf[0], shelf[-1], 1.65) == list(shelf)


def test_every_grade_says_where_it_comes_from():
    for grit in GRITS:
        assert grit.source == "grit-sizes"
        assert grit.status == "read second-hand"
