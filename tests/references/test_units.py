"""Unit sizes against SciPy's constants (CODATA and the exact definitions they carry)."""

import pytest
from scipy import constants

from calc.quantities import parse

EXACT = 1e-12


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
