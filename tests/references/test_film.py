"""Films, coverage and drying times against printed examples and a unit library."""

import math

import pint
import pytest

from calc.quantities import GALLON, parse
from calc.shop.film import (
    coverage,
    dry_film_thickness,
    time_factor_doubling,
    wet_film_thickness,
)
from tests.references.printed import printed

MIL = 25.4e-6
UNITS = pint.UnitRegistry()


def square_feet_per_gallon(area_per_volume):
    return area_per_volume * GALLON / 0.3048**2


def test_coverage_constant():
    # 1604.17 and 1604 ft2 mil per US gallon in two trade texts: read second-hand; exact by pint.
    constant = square_feet_per_gallon(coverage(MIL, 1.0))
    assert constant == printed("1604.17")
    assert constant == pytest.approx(231_000 / 144, rel=1e-12)
    exact = (1 * UNITS.US_liquid_gallon / (1e-3 * UNITS.inch)).to("ft**2").magnitude
    assert constant == pytest.approx(exact, rel=1e-12)


def test_coverage_in_metric_units():
    # 1000 m2 µm to a litre; 1 ft2/gal = 0.0245424 m2/L: read second-hand, exact by pint.
    assert coverage(1e-6, 1.0) * 1e-3 == pytest.approx(1000.0)
    assert 1 / square_feet_per_gallon(1000.0) == printed("0.0245424")
    assert square_feet_per_gallon(1000.0) == pytest.approx(
        (1 * UNITS.m**2 / UNITS.L).to("ft**2/US_liquid_gallon").magnitude, rel=1e-12)


def test_printed_examples_of_coverage():
    # 65 % solids at 125 µm: 5.2 m2/L. At 5 mil: 208.52 ft2/gal, worked with 1604. Both read second-hand.
    assert coverage(125e-6, 0.65) * 1e-3 == printed("5.2")
    with_the_exact_constant = 208.52 * 1604.1667 / 1604
    found = square_feet_per_gallon(coverage(5 * MIL, 0.65))
    assert found == pytest.approx(with_the_exact_constant, abs=0.005)
    # 10 mil wet: 160.417 ft2/gal: read second-hand.
    assert square_feet_per_gallon(coverage(10 * MIL, 1.0)) == printed("160.417")


@pytest.mark.parametrize(
    ("wet", "solids", "reducer", "dry"),
    [
        (4.0, 0.30, 0.0, "1.2"),  # dry is wet times solids: definition read second-hand
        (4.0, 0.30, 0.10, "1.091"),  # with reducer: calculated separately
        (10.0, 0.50, 0.0, "5.0"),  # 10 gal at 50 % lose 5 gal: mass balance, read second-hand
    ],
)
def test_dry_film(wet, solids, reducer, dry):
    assert dry_film_thickness(wet * MIL, solids, reducer) / MIL == printed(dry)


@pytest.mark.parametrize(
    ("dry", "solids", "reducer", "wet"), [(1.5, 0.25, 0.0, "6.0"), (1.5, 0.25, 0.2, "7.2")]
)
def test_wet_film_for_a_dry_one(dry, solids, reducer, wet):
    # Calculated separately.
    assert wet_film_thickness(dry * MIL, solids, reducer) / MIL == printed(wet)


@pytest.mark.parametrize(("temperature", "factor"), [(10, 2.0), (20, 1.0), (30, 0.5)])
def test_time_doubles_at_10_and_halves_at_30(temperature, factor):
    # Two-component coatings against 20 °C: a trade text, read second-hand; another gives the same rule.
    assert time_factor_doubling(temperature, 20, 10) == pytest.approx(factor, rel=1e-12)


def test_the_step_is_a_parameter():
    # One adhesives page doubles for 8 °C: read second-hand.
    assert time_factor_doubling(12, 20, 8) == pytest.approx(2.0)


@pytest.mark.parametrize(("cold", "warm", "energy"), [(20, 30, "51.216"), (15, 25, "49.512")])
def test_the_rule_is_arrheniuss_law_with_about_50_kilojoules(cold, warm, energy):
    # Energies calculated separately; 50 kJ/mol as the usual value for curing films: read second-hand.
    one, other = cold + 273.15, warm + 273.15
    exact = math.log(time_factor_doubling(cold, warm, 10)) * 8.314462618 / (1 / one - 1 / other) / 1000
    assert exact == printed(energy)


@pytest.mark.parametrize("temperature", [10, 15, 25, 30, 35])
def test_the_rule_stays_near_arrheniuss_law(temperature):
    # 50 kJ/mol against 20 °C gives 2.064 at 10 °C and 0.508 at 30 °C: calculated separately.
    law = math.exp(50_000 / 8.314462618 * (1 / (temperature + 273.15) - 1 / 293.15))
    assert time_factor_doubling(temperature, 20, 10) == pytest.approx(law, rel=0.05)


def test_a_gallon_is_231_cubic_inches():
    assert parse("1 gal", "volume") == pytest.approx(3.785411784e-3, rel=1e-12)
    assert pytest.approx((1 * UNITS.US_liquid_gallon).to("m**3").magnitude, rel=1e-12) == GALLON
