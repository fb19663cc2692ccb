"""The compiled steps that the bow is measured beside are the limb's own steps."""

import pytest

from scripts.measuring import workload
from scripts.measuring.compiled import pulls_of


@pytest.mark.parametrize("task", [workload.curve, workload.plan])
def test_compiled_steps_end_where_the_limb_s_own_do(task):
    pulls = pulls_of(task)
    assert len(pulls.turns) > 100
    assert pulls.marched() == pytest.approx(pulls.ends, rel=1e-9, abs=1e-12)
