"""The arrow calculator's energy, moving mass and speed against measured bows and published examples."""

import pytest

from calc.answer import work_out
from calc.bows.measured import family_limb
from calc.bows.readings import CURVE_AFTER
from calc.calculators.arrow_match import CALCULATOR
from calc.mechanics.bow.bow import Bow
from calc.quantities import FOOT, GRAIN, INCH, POUND_FORCE
from tests.references.printed import printed

FOOT_POUND = FOOT * POUND_FORCE
BEYOND_PIVOT = 1.75 * INCH


def run(**typed):
    job = work_out(CALCULATOR, list(typed.items()), standing={})
    assert not job.problems, job.problems
    return dict(job.outcome.values)


def linear(weight, stroke, brace=8 * INCH, readings=12):
    """Return inputs for a bow whose weight rises along a straight line, drawn to its last reading."""
    start = brace + BEYOND_PIVOT
    steps = [(start + stroke * step / readings, weight * step / readings) for step in range(1, readings + 1)]
    return {"curve": "read", "reading_error": "0", "brace_height": f"{brace * 1000:.9f} mm",
            "draw_length": f"{(start + stroke) * 1000 - 1e-6:.9f} mm", "length": "34 in",
            "readings": ";".join(f"{draw * 1000:.9f} mm:{force:.9f} N" for draw, force in steps)}


def arrow_of(mass):
    """Return inputs for an arrow of a mass [kg], its point a third of it."""
    return {"shaft_mass": f"{mass / 1.5 * 1000:.9f} g", "point_mass": f"{mass / 3 * 1000:.9f} g",
            "nock_mass": "0", "feather_mass": "0", "count_point": "no", "count_length": "no"}


MEASURED_RECURVES = ((68, 0.430), (70, 0.509), (66, 0.440), (68, 0.429))  # length [in], stroke [m]
SHORTEST_LIMBS = (66, 0.440, 24, 0.220)


def fullness(bow_length, stroke, riser_length, brace):
    return run(curve="computed", family="recurve", bow_length=f"{bow_length} in", length="34 in",
               riser_length=f"{riser_length} in", brace_height=f"{brace * 1000:.3f} mm",
               draw_length=f"{(brace + stroke + BEYOND_PIVOT) * 1000:.6f} mm")["curve_fullness"]


@pytest.mark.parametrize(
    ("bow_length", "stroke", "riser_length", "brace"),
    [(*bow, riser, brace) for bow in MEASURED_RECURVES for riser in (22, 24) for brace in (0.214, 0.220)
     if (*bow, riser, brace) != SHORTEST_LIMBS],
)
def test_computed_recurves_are_as_full_as_measured_ones(bow_length, stroke, riser_length, brace):
    # Tuijn and Kooi, Eur. J. Phys. 13 (1992), table I: read (columns run together in the copy). Four
    # recurves of these lengths and strokes, braced at 21.4 to 22 cm, store 0.581 to 0.595 of weight times
    # stroke; 0.56 to 0.61 is the band we put round them. Their risers and shapes are not given, and our
    # family's shape was chosen with these bows in view: it shows that the family is typical, no more.
    assert 0.56 <= fullness(bow_length, stroke, riser_length, brace) <= 0.61


def test_the_shortest_limbs_fall_short_of_the_band():
    # The same table and band, not met: the shortest limbs we put into it, at the highest brace, come out
    # under it (0.559) and 4 % under that bow's own 0.5822. Which riser it had is not printed, so nothing
    # is tuned to it.
    assert 0.96 * 0.5822 < fullness(*SHORTEST_LIMBS) < 0.56


def test_twelve_readings_tell_the_energy_as_well_as_many():
    # A measurement report of a 66 in recurve: 42.94 J by 12 readings, 43.00 J by 48, read: 0.14 % apart.
    # Here 12 and 24 readings (a form takes 40) of a computed recurve of that length and a stroke of 48 cm.
    limb = family_limb("recurve", 66 * INCH, 22 * INCH)
    bow = Bow(limb, limb)
    bow.brace(0.21)
    energies = {}
    for count in (12, 24):
        drawn = bow.curve([0.21 + 0.48 * step / count for step in range(1, count + 1)])
        points = [(each.distance + BEYOND_PIVOT, each.force * 160 / drawn[-1].force) for each in drawn]
        rows = [f"{draw * 1000:.9f} mm:{force:.9f} N" for draw, force in points]
        energies[count] = run(
            curve="read", readings=";".join(rows), reading_error="0",
            brace_height="210 mm", length="34 in", draw_length=f"{(0.69 + BEYOND_PIVOT) * 1000:.9f} mm",
        )["stored_energy"]
    assert energies[12] == pytest.approx(energies[24], rel=0.0014)


@pytest.mark.parametrize(
    ("arrow_grams", "speed"), [(10, 72.52), (15, 63.04), (20, 56.51), (25, 51.66), (30, 47.88)]
)
def test_one_reading_foretells_other_arrows_of_a_measured_recurve(arrow_grams, speed):
    # The same report: 43.00 J over 48 cm, virtual mass 5.7697 g + 0.0583 m, read; the speeds were
    # calculated separately from that. One reading with the 20 g arrow holds for the others to 2 %, since
    # the mass is not quite constant.
    bow = linear(2 * 43.00 / 0.48, 0.48)
    values = run(**bow, **arrow_of(arrow_grams / 1000), losses="chronograph", test_mass="20 g",
                 test_speed="56.51 m/s")
    assert values["stored_energy"] == pytest.approx(43.00, rel=1e-4)
    assert values["moving_mass"] * 1000 == pytest.approx(5.7697 + 0.0583 * 20, rel=2e-3)
    assert values["speed"] == pytest.approx(speed, rel=3e-4 if arrow_grams == 20 else 0.02)


def test_a_500_grain_arrow_at_170_feet_a_second():
    # A forum example: 48 ft lb stored, 250 gr move with the arrow. Read; slide-rule figures.
    bow = linear(2 * 48 * FOOT_POUND / (20 * INCH), 20 * INCH)
    values = run(**bow, **arrow_of(500 * GRAIN), losses="chronograph", test_mass="500 gr",
                 test_speed="170 ft/s")
    assert values["moving_mass"] / GRAIN == pytest.approx(250, rel=0.01)
    assert values["kinetic_energy"] / FOOT_POUND == pytest.approx(32.05, rel=2e-3)


def test_a_linear_40_pound_bow():
    # An article on an ideal bow: drawn 4 in further than 17 in at equal weight it stores 24 % more. Read.
    short, longer = (run(**linear(40 * POUND_FORCE, stroke * INCH), **arrow_of(0.03))["stored_energy"]
                     for stroke in (17, 21))
    assert longer / short - 1 == printed("0.24")


@pytest.mark.parametrize("curve", ["assumed", "read", "computed"])
@pytest.mark.parametrize("grains_per_pound", [8, 10])
def test_usual_arrows_take_60_to_80_percent(curve, grains_per_pound):
    # Efficiency of bows from wooden longbows to modern recurves, 60 to 80 %: from memory.
    bow = {"curve": curve, "readings": CURVE_AFTER}
    weight = run(**bow)["weight_at_draw"]
    values = run(**bow, **arrow_of(grains_per_pound * GRAIN * weight / POUND_FORCE))
    assert 0.60 <= values["efficiency"] <= 0.80
