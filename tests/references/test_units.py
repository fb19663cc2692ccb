"""Unit sizes against SciPy's constants (CODATA and the exact definitions they carry)."""

import pytest
from scipy import constants

from calc.quantities import KINDS, parse

EXACT = 1e-12

PER_HOUR, GALLON, CUBIC_FOOT = 1 / constants.hour, constants.gallon_US, constants.foot**3
SIZES = {
    "m": {"in": constants.inch, "ft": constants.foot, "mm": constants.milli, "cm": constants.centi, "m": 1,
          "mil": constants.mil, "µm": constants.micron, "ft lb/lb": constants.foot, "J/N": 1,
          "in/stroke": constants.inch, "mm/stroke": constants.milli, "m/stroke": 1},
    "N": {"lb": constants.lbf, "N": 1, "kN": constants.kilo, "kgf": constants.kgf,
          "lb/stroke": constants.lbf, "N/stroke": 1},
    "kg": {"gr": constants.grain, "g": constants.gram, "oz": constants.ounce, "lb": constants.pound, "kg": 1},
    "kg/m": {"gr/in": constants.grain / constants.inch, "g/m": constants.gram, "kg/m": 1},
    "N/m": {"lb/in": constants.lbf / constants.inch, "N/mm": 1 / constants.milli, "N/cm": 1 / constants.centi,
            "N/m": 1},
    "kg/N": {"gr/lb": constants.grain / constants.lbf, "g/N": constants.gram, "kg/N": 1},
    "Pa": {"psi": constants.psi, "ksi": constants.kilo * constants.psi,
           "Mpsi": constants.mega * constants.psi, "Pa": 1, "kPa": constants.kilo, "MPa": constants.mega,
           "GPa": constants.giga},
    "kg/m3": {"lb/ft3": constants.pound / CUBIC_FOOT, "kg/m3": 1,
              "g/cm3": constants.gram / constants.centi**3, "lb/gal": constants.pound / GALLON,
              "kg/L": 1 / constants.liter, "mg/m3": constants.milli * constants.gram, "g/m3": constants.gram},
    "N m2": {"lb in2": constants.lbf * constants.inch**2, "N m2": 1},
    "m/s": {"ft/s": constants.foot, "m/s": 1, "km/h": constants.kmh,
            "ft/min": constants.foot / constants.minute},
    "J": {"ft lb": constants.foot * constants.lbf, "J": 1},
    "kg m/s": {"lb s": constants.lbf, "kg m/s": 1},
    "Hz": {"Hz": 1},
    "s": {"ms": constants.milli, "s": 1, "min": constants.minute, "h": constants.hour, "d": constants.day},
    "1": {"": 1, "%": constants.centi, "of one": 1, "ppm": constants.micro},
    "deg": {"°": 1},
    "degC": {"°F": constants.degree_Fahrenheit, "°C": 1},
    "K": {"°F": constants.degree_Fahrenheit, "°C": 1},
    "m2": {"ft2": constants.foot**2, "in2": constants.inch**2, "m2": 1, "cm2": constants.centi**2},
    "m3": {"fl oz": constants.fluid_ounce_US, "pt": GALLON / 8, "qt": GALLON / 4, "gal": GALLON,
           "mL": constants.milli * constants.liter, "L": constants.liter, "ft3": CUBIC_FOOT, "m3": 1},
    "1/m": {"ft2/gal": constants.foot**2 / GALLON, "m2/L": 1 / constants.liter, "per m": 1},
    "m3/s": {"cfm": CUBIC_FOOT / constants.minute, "m3/h": PER_HOUR, "L/s": constants.liter, "m3/s": 1},
    "1/s": {"per hour": PER_HOUR, "per s": 1, "an hour": PER_HOUR},
    "kg/mol": {"g/mol": constants.gram, "kg/mol": 1},
    "GU": {"GU": 1},
    "N m": {"in lb": constants.inch * constants.lbf, "N m": 1},
    "px": {"px": 1},
    "m2/s": {"mm2/s": constants.milli**2, "m2/s": 1},
}
"""Each unit by the SI unit of its kind. A gallon is of 8 pints or 4 quarts."""


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_every_unit_has_its_size_under_each_of_its_names(kind):
    for unit in kind.units:
        for name in (unit.name, *unit.aliases):
            for gap in ("", " "):
                size = parse("3" + gap + name, kind.id) - parse("2" + gap + name, kind.id)
                assert size == pytest.approx(SIZES[kind.si][unit.name], rel=1e-9), name


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("1 in", "length", constants.inch),
        ("1 ft", "length", constants.foot),
        ("1 mil", "thickness", constants.mil),
        ("1 lb", "force", constants.lbf),
        ("1 kgf", "force", constants.kgf),
        ("1 gr", "mass", constants.grain),
        ("1 lb", "mass", constants.pound),
        ("1 oz", "mass", constants.ounce),
        ("1 psi", "stress", constants.psi),
        ("1 ft lb", "energy", constants.foot * constants.lbf),
        ("1 lb/in", "force_per_length", constants.lbf / constants.inch),
        ("1 lb/ft3", "density", constants.pound / constants.foot**3),
        ("1 fps", "speed", constants.foot),
        ("1 km/h", "speed", constants.kmh),
        ("212 F", "temperature", constants.convert_temperature(212, "F", "C")),
        ("-40 F", "temperature", -40.0),
    ],
)
def test_units_have_their_size(text, kind, expected):
    assert parse(text, kind) == pytest.approx(expected, rel=EXACT)


def test_identities_of_the_grain():
    """7000 grains are a pound, 437.5 an ounce: exact by definition (check values of SciPy and Pint)."""
    assert parse("7000 gr", "mass") == pytest.approx(parse("1 lb", "mass"), rel=EXACT)
    assert parse("437.5 gr", "mass") == pytest.approx(parse("1 oz", "mass"), rel=EXACT)


def test_a_wood_handbook_modulus():
    """Douglas-fir 1.95 million psi is printed as 13 400 MPa (state university, from the Wood Handbook)."""
    assert parse("1.95 Mpsi", "modulus") == pytest.approx(13_400e6, abs=50e6)
