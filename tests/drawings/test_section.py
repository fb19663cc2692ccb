"""The drawing of a section: what stands beside its layers can be read."""

import pytest

from calc.drawings.section import LABEL_STEP, section_drawing
from calc.mechanics.bow.thinning import Build
from calc.quantities import INCH


@pytest.mark.parametrize(("back", "belly", "off_back", "off_belly"), [
    (0.04, 0.04, 0.01, 0.01), (0.04, 0.04, 0.001, 0.02), (0.25, 0.04, 0.001, 0.02),
    (0.294, 0.004, 0.001, 0.001)])
def test_texts_stand_in_the_order_of_their_layers_and_none_on_another(back, belly, off_back, off_belly):
    drawn = section_drawing("Lower limb", 0.3 * INCH, Build(back * INCH, belly * INCH, 39e9, 12e9),
                            off_back * INCH, off_belly * INCH)
    heights = [float(each[1]["y"]) for each in drawn.shapes if each[0] == "text"]
    assert len(heights) == 5
    steps = [after - before for before, after in zip(heights, heights[1:])]
    assert min(steps) >= LABEL_STEP - 0.2  # as written
    assert 0 < heights[0] < heights[-1] < drawn.height
