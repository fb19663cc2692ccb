"""Bending stiffness of laminated limbs against textbook mechanics and published material figures."""

import pytest

from calc.mechanics.bow import laminate
from calc.quantities import PSI
from calc.tables import woods
from tests.references.printed import printed

GLASS = laminate.Layer(0.001, 40e9)
CORE = laminate.Layer(0.005, 12.6e9)
LIMB = (GLASS, CORE, GLASS)
WIDTH = 0.040


def test_limb_stiffness_goes_with_width_and_with_thickness_cubed():
    # Klopsteg, Getting the Most Out of the Bowstave, part 2: read. 33.1 % and 3.03 %: exact arithmetic.
    def stiffness(width, thickness):
        return laminate.flexural_rigidity(width, (laminate.Layer(thickness, 10e9),))

    start = stiffness(0.04, 0.007)
    assert stiffness(0.044, 0.007) / start == pytest.approx(1.10, rel=1e-12)
    assert 100 * (stiffness(0.04, 0.0077) / start - 1) == printed("33.1")
    assert 100 * (stiffness(0.04, 0.00707) / start - 1) == printed("3.03")


def test_three_layers_by_the_sandwich_formula():
    # E I = b [E_f (h^3 - c^3) + E_c c^3] / 12, textbook mechanics: exact.
    whole, core = 0.007, 0.005
    expected = WIDTH * (40e9 * (whole**3 - core**3) + 12.6e9 * core**3) / 12
    assert laminate.flexural_rigidity(WIDTH, LIMB) == pytest.approx(expected, rel=1e-12)


def test_the_40_millimetre_case():
    # Calculated separately by two routes: a cross-check.
    assert laminate.flexural_rigidity(WIDTH, LIMB) == printed("34.3167")
    assert laminate.neutral_axis(LIMB) * 1000 == printed("3.5")
    shares = laminate.rigidity_shares(LIMB)
    assert 100 * (shares[0] + shares[2]) == printed("84.70")


def test_logarithmic_sensitivities_add_up_to_three():
    # Calculated separately: 1.1423 for both glass layers, 1.8577 for the core; the sum is 3 by scaling.
    step = 1e-6
    stiffness = laminate.flexural_rigidity(1.0, LIMB)

    def share(layers):
        return (laminate.flexural_rigidity(1.0, layers) / stiffness - 1) / step

    glass = laminate.Layer(GLASS.thickness * (1 + step), GLASS.modulus)
    core = laminate.Layer(CORE.thickness * (1 + step), CORE.modulus)
    assert share((glass, CORE, glass)) == printed("1.1423")
    assert share((GLASS, core, GLASS)) == printed("1.8577")
    assert share((glass, core, glass)) == pytest.approx(3, rel=1e-5)


def test_strain_at_a_radius_of_600_millimetres():
    # Calculated separately: a cross-check.
    strains = laminate.face_strains(LIMB, 1 / 0.6)
    assert strains.back == printed("0.005833")
    assert strains.belly == pytest.approx(-strains.back, rel=1e-12)


@pytest.mark.parametrize(
    ("psi", "megapascals"),
    [(1.95e6, 13_400), (1.87e6, 12_900)],  # Douglas-fir and western larch, Oregon State tables: read
)
def test_moduli_in_both_units(psi, megapascals):
    assert psi * PSI / 1e6 == pytest.approx(megapascals, rel=0.004)  # printed to three figures


def test_sugar_maple_density_at_12_percent():
    # 705 kg/m3 at 12 % moisture, three dealers' pages; 0.63, 12.6 GPa and 109 MPa, a page naming the Wood
    # Handbook: read.
    maple = woods.find("sugar-maple")
    assert maple.density == pytest.approx(705, abs=1)
    assert maple.modulus == 12.6e9
    assert maple.bending_strength == 109e6
