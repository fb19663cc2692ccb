"""Where a limb works."""

import pytest

from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.working import hardest, surface_strains


def test_strain_is_bending_times_depth():
    """Surface strain t / (2 R): t 8 mm at R 500 mm gives 0.8 % (geometry)."""
    limb = Limb(0.5, (0.0, 0.2), (0.0, 0.0), (20.0, 20.0))
    shape = limb.shape(0.0, 0.0, (1.0, 0.0))
    shape.bending = [1 / 0.5] * len(shape.arc_length)
    strains = surface_strains(shape, (Station(0.1, 0.04, 0.008),), Build(0.001, 0.001, 40e9, 12e9))
    assert strains == pytest.approx([0.008] * len(strains))


def test_the_hardest_place_is_told_against_the_middle():
    assert hardest((1.0, 1.0, 1.0, 1.0, 3.0, 1.0, 1.0, 1.0)) == (4, pytest.approx(2.0))
    assert hardest((0.001, 0.001, 0.002, 0.002, 0.002, 0.002, 0.003, 0.001)) == (6, pytest.approx(1.5))
    assert hardest((0.0,) * 8) == (0, 0.0)
