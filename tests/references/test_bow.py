"""Whole bows against published and separately calculated results."""

import pytest

from calc.mechanics.arrow import flight
from calc.mechanics.bow.bow import Bow, Limb
from tests.references.printed import printed

CELLS = 120  # so that the stiffness' kink, two thirds along the limb, falls on a station


def tapered(half_length, half_grip, stiffness, rest_curvature=0.0, string_stiffness=None, cap=1 / 3):
    """Return a bow whose limbs' stiffness falls in a straight line to a least share of itself."""
    length = half_length - half_grip
    rigidity = [stiffness * max(1 - i / CELLS, cap) for i in range(CELLS + 1)]
    limb = Limb(length, (0.0, half_grip), (0.0, rest_curvature * length), rigidity)
    return Bow(limb, limb, string_stiffness=string_stiffness)


class TestBenchmarkLongbow:
    """The straight-end bow KL of B. W. Kooi, On the mechanics of the modern working-recurve bow, Comput.
    Mech. 8 (1991) 291: half length 1.286, half grip 0.143, brace 0.214, draw 1, stiffness 1.409 falling to a
    third, string stiffness 131; all in units of draw and of force at full draw. Parameters and results are
    from memory, confirmed by calculation: limb mass, force, q and efficiency came out of them as recalled.
    """

    def bow(self, string_stiffness=131.0):
        return tapered(1.286, 0.143, 1.409, string_stiffness=string_stiffness)

    def test_force_at_full_draw(self):
        bow = self.bow()
        bow.brace(0.214)
        assert bow.draw(1.0).force == pytest.approx(1.0, rel=2e-3)

    def test_energy_coefficient(self):
        # q = stored energy / (draw x force) = 0.407
        bow = self.bow()
        bow.brace(0.214)
        drawn = bow.draw(1.0)
        assert drawn.stored_energy / drawn.force == pytest.approx(0.407, rel=2e-3)

    def test_without_stretch_it_is_another_bow(self):
        # Calculated separately, not published: F 0.99581, q 0.41075. A cross-check.
        bow = self.bow(None)
        bow.brace(0.214)
        drawn = bow.draw(1.0)
        assert drawn.force == pytest.approx(0.99581, rel=2e-4)
        assert drawn.stored_energy / drawn.force == pytest.approx(0.41075, rel=2e-4)

    @pytest.mark.parametrize(
        ("draw", "force", "tension", "tip_x", "tip_y"),
        [
            (0.21400, 0.0, 1.70484, 0.21400, 1.25799),
            (0.27950, 0.12515, 1.48708, 0.22665, 1.25482),
            (0.34500, 0.22089, 1.35090, 0.24242, 1.25044),
            (0.41050, 0.30184, 1.26427, 0.26083, 1.24485),
            (0.47600, 0.37564, 1.20896, 0.28129, 1.23808),
            (0.54150, 0.44648, 1.17439, 0.30332, 1.23012),
            (0.60700, 0.51682, 1.15431, 0.32654, 1.22098),
            (0.67250, 0.58827, 1.14489, 0.35067, 1.21064),
            (0.73800, 0.66200, 1.14382, 0.37550, 1.19908),
            (0.80350, 0.73903, 1.14967, 0.40086, 1.18626),
            (0.86900, 0.82031, 1.16161, 0.42663, 1.17215),
            (0.93450, 0.90685, 1.17924, 0.45271, 1.15668),
            (1.00000, 0.99974, 1.20247, 0.47903, 1.13981),
        ],
    )
    def test_draw_table(self, draw, force, tension, tip_x, tip_y):
        # Calculated separately by another shooting program, not published: a cross-check to 0.02 %.
        bow = self.bow()
        braced = bow.brace(0.214)
        assert braced.upper_length == pytest.approx(1.24183, abs=1e-5)
        drawn = bow.draw(draw)
        assert drawn.force == pytest.approx(force, rel=2e-4, abs=1e-6)
        assert drawn.tension_upper == pytest.approx(tension, rel=2e-4)
        assert (drawn.upper.x[-1], drawn.upper.y[-1]) == pytest.approx((tip_x, tip_y), abs=2e-5)


@pytest.mark.parametrize(
    ("rest_curvature", "half_string", "tension", "force", "energy", "q"),
    [
        (-0.4, 1.25645, 2.61339, 1.07099, 0.49701, 0.46406),
        (-0.2, 1.25731, 1.92047, 0.88909, 0.39423, 0.44341),
        (0.0, 1.25799, 1.20996, 0.70675, 0.29030, 0.41075),
        (0.1, 1.25828, 0.84894, 0.61544, 0.23798, 0.38668),
    ],
)
def test_reflexed_and_followed_limbs(rest_curvature, half_string, tension, force, energy, q):
    # The same bow with evenly curved limbs and a string that does not stretch. Calculated separately by
    # another shooting program, not published: a cross-check.
    bow = tapered(1.286, 0.143, 1.0, rest_curvature)
    braced = bow.brace(0.214)
    drawn = bow.draw(1.0)
    assert braced.upper_length == pytest.approx(half_string, abs=1e-5)
    assert braced.tension == pytest.approx(tension, rel=1e-4)
    assert drawn.force == pytest.approx(force, rel=1e-4)
    assert drawn.stored_energy == pytest.approx(energy, rel=1e-4)
    assert drawn.stored_energy / drawn.force == pytest.approx(q, rel=1e-4)


def test_longer_bows_store_more_and_pull_their_strings_harder():
    # C. N. Hickman, Effect of bow length on static strains and stresses, in Archery: The Technical Side:
    # "the work that may be gotten out of a bow goes up with the length. The string tension also goes up
    # with bow length", for equal weight at 27.5 in. Read. The figures for q are calculated separately.
    shares, pulls = [], []
    for inches in (48, 54, 60, 66, 72):
        bow = tapered(inches / 2, 4.0, 1.0)
        bow.brace(6.0)
        drawn = bow.draw(27.5)
        shares.append(drawn.stored_energy / (27.5 * drawn.force))
        pulls.append(drawn.tension_upper / drawn.force)
    assert shares == sorted(shares)
    assert pulls == sorted(pulls)
    assert shares == pytest.approx([0.33166, 0.36699, 0.38781, 0.40138, 0.41081], rel=3e-4)
    assert pulls == pytest.approx([0.766, 0.883, 0.997, 1.110, 1.221], abs=1e-3)


@pytest.mark.parametrize(
    ("q", "efficiency", "speed"),
    [
        ("0.407", "0.765", "2.01"),
        ("0.395", "0.716", "1.92"),
        ("0.432", "0.668", "1.94"),
        ("0.491", "0.619", "1.99"),
        ("0.434", "0.729", "2.03"),
    ],
)
def test_speed_from_energy_and_moving_mass_is_that_of_five_published_bows(q, efficiency, speed):
    # The five bows KL, AN, PE, TU, WR of Kooi 1991, for half a bow and half an arrow of mass 0.0769: from
    # memory, confirmed by this calculation. It checks how energy becomes speed, not the bows' statics.
    mass = 0.0769
    moving = mass * (1 / float(efficiency) - 1)
    assert flight.arrow_speed(float(q) / 2, mass, moving) == printed(speed)
