"""Figures that the bow model gave once: they prove nothing and only show when something changes."""

import pytest

from calc.mechanics.arrow.shaft import TEST_28_INCH, flexural_rigidity_from_deflection
from calc.mechanics.arrow.vibration import Beam, frequency, wave_number
from calc.mechanics.bow.bow import Bow, Limb
from calc.quantities import GRAIN, INCH


def bow_h():
    """Return the bow H: half length 91.44, half grip 10.16, 1.30e5 kgf cm2 falling to nought but constant
    beyond 90, in kgf and cm.

    Recalled parameters that contradict each other in the source, so that it proves nothing about the source:
    its figures are a regression, calculated separately.
    """
    length, end = 91.44 - 10.16, 1 - (90.0 - 10.16) / (91.44 - 10.16)
    rigidity = [1.30e5 * max(1 - i / 400, end) for i in range(401)]
    limb = Limb(length, (0.0, 10.16), (0.0, 0.0), rigidity, 400)
    return Bow(limb, limb)


def test_unchanged_bow_h():
    bow = bow_h()
    braced = bow.brace(15.24)
    drawn = bow.draw(71.12)
    assert braced.tension == pytest.approx(28.9816, rel=1e-3)
    assert braced.upper_length == pytest.approx(89.3368, rel=1e-5)
    assert drawn.force == pytest.approx(17.5022, rel=1e-3)
    assert drawn.stored_energy == pytest.approx(507.08, rel=1e-3)
    assert [bow.draw(b).force for b in (25.40, 45.72, 60.96)] == pytest.approx(
        [4.26789, 9.69436, 14.05133], rel=1e-3
    )


@pytest.mark.parametrize(
    ("brace", "share", "force"),
    [
        (5.08, 0.44420, 17.0586), (10.16, 0.42994, 17.2296), (12.70, 0.41961, 17.3541),
        (17.78, 0.39344, 17.6715), (20.32, 0.37803, 17.8596), (25.40, 0.34364, 18.2818),
    ],
)
def test_unchanged_weight_and_energy_at_other_brace_heights(brace, share, force):
    bow = bow_h()
    bow.brace(brace)
    drawn = bow.draw(71.12)
    assert drawn.force == pytest.approx(force, rel=1e-3)
    assert drawn.stored_energy / (71.12 * drawn.force) == pytest.approx(share, rel=1e-3)


@pytest.mark.parametrize(
    ("deflection", "length", "shaft_grains", "point", "rear", "hertz"),
    [
        (0.500, 29, 232, 0, 0, 103.67),
        (0.500, 29, 232, 100, 0, 79.85),
        (0.500, 29, 232, 125, 20, 69.75),
        (0.400, 30, 255, 100, 20, 73.06),
    ],
)
def test_unchanged_frequencies_of_whole_arrows(deflection, length, shaft_grains, point, rear, hertz):
    rigidity = flexural_rigidity_from_deflection(deflection * INCH, TEST_28_INCH)
    root = wave_number(1, Beam(rear / shaft_grains, point / shaft_grains))
    found = frequency(root, rigidity, shaft_grains * GRAIN, length * INCH)
    assert found == pytest.approx(hertz, rel=1e-3)
