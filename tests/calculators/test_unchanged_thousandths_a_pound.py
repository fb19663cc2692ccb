"""How much limb thickness a pound takes: the planned bow beside the figure that benches quote."""

import pytest

from calc.answer import work_out
from calc.calculators.weight_reduction import CALCULATOR
from calc.quantities import INCH


@pytest.mark.parametrize(("glass", "thousandths"), [(0.020, 1.4), (0.030, 1.6), (0.045, 1.9), (0.060, 2.1)])
def test_unchanged_thousandths_a_pound_near_50(glass, thousandths):
    # Common practice, from memory: 0.002 to 0.004 in for a pound on a 50 lb laminated recurve. The example's
    # bow, set to 50 lb, comes to the lower end of that only with thick glass: not reproduced, and the pages
    # say so. The figures are what the model gave: a regression.
    job = work_out(CALCULATOR, [
        ("weight_now", "50 lb"), ("weight_wanted", "48 lb"), ("reserve", "1 lb"), ("tiller_now", "1/8 in"),
        ("tiller_wanted", "1/8 in"), ("glass_back", f"{glass} in"), ("glass_belly", f"{glass} in"),
    ])
    taken = dict(job.outcome.values)
    for limb in ("upper", "lower"):
        assert 1000 * taken[limb + "_removal"] / INCH == pytest.approx(thousandths, abs=0.06)
