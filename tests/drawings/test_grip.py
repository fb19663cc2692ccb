"""The section of a grip: to scale, and its labels from top to bottom."""

import pytest

from calc.drawings.grip import WIDTH, grip_drawing
from calc.outcome import say
from calc.quantities import INCH

BEFORE, AFTER = (1.25 * INCH, 2.0 * INCH), (1.125 * INCH, 1.75 * INCH)
LINE = 16.0
"""Least from one line of text to the next in the drawing's own units: its letters are as high."""


def of(drawing, name):
    return [each for each in drawing.shapes if each[0] == name]


def test_its_labels_stand_below_each_other_in_the_order_in_which_they_are_read():
    drawing = grip_drawing("throat", False, BEFORE, AFTER, None)
    beside = [each for each in of(drawing, "text") if each[1]["text-anchor"] == "start"]
    assert [say(each[2], "imperial") for each in beside] == [
        "before 1 1/4 in wide", "and 2 in deep", "after 1 1/8 in wide", "and 1 3/4 in deep"]
    heights = [float(each[1]["y"]) for each in beside]
    assert all(low + LINE <= high for low, high in zip(heights, heights[1:], strict=False))
    back, belly = (float(each[1]["y"]) for each in of(drawing, "text") if each[1]["text-anchor"] == "middle")
    after, before = (each[1] for each in of(drawing, "rect"))
    top, bottom = float(before["y"]), float(before["y"]) + float(before["height"])
    assert back < top < heights[0]
    assert heights[-1] < bottom
    assert bottom + LINE < belly < drawing.height
    assert float(before["x"]) + float(before["width"]) < float(beside[0][1]["x"]) < WIDTH / 2 + LINE
    assert float(after["y"]) > top


@pytest.mark.parametrize("rounded", [False, True])
def test_both_sections_share_their_middle_and_their_scale(rounded):
    drawing = grip_drawing("throat", rounded, BEFORE, AFTER, None)
    sizes = []
    for _, each in [shape[:2] for shape in of(drawing, "ellipse" if rounded else "rect")]:
        if rounded:
            sizes.append((float(each["cx"]), float(each["cy"]), 2 * float(each["rx"]), 2 * float(each["ry"])))
        else:
            wide, deep = float(each["width"]), float(each["height"])
            sizes.append((float(each["x"]) + wide / 2, float(each["y"]) + deep / 2, wide, deep))
    (x, y, wide, deep), (other_x, other_y, widest, deepest) = sizes
    assert (x, y) == pytest.approx((other_x, other_y), abs=0.1)
    assert (wide / widest, deep / deepest) == pytest.approx((1.125 / 1.25, 1.75 / 2.0), abs=0.002)
    assert widest / deepest == pytest.approx(1.25 / 2.0, abs=0.002)


@pytest.mark.parametrize(("runs", "x", "y", "wide", "high"), [
    ("side", -0.5625, -0.375, 1.125, 0.25), ("depth", -0.125, -0.875, 0.25, 1.75)])
def test_a_hole_runs_through_what_is_left_and_lies_where_it_is(runs, x, y, wide, high):
    """A hole of 1/4 in; from side to side its middle lies 1/4 in from the section's toward the back."""
    drawing = grip_drawing("throat", False, BEFORE, AFTER, (runs, 0.25 * INCH, 0.25 * INCH))
    _, before, hole = (each[1] for each in of(drawing, "rect"))
    scale = float(before["height"]) / 2.0
    middle = float(before["x"]) + float(before["width"]) / 2, float(before["y"]) + scale
    assert float(hole["x"]) == pytest.approx(middle[0] + x * scale, abs=0.2)
    assert float(hole["y"]) == pytest.approx(middle[1] + y * scale, abs=0.2)
    assert float(hole["width"]) == pytest.approx(wide * scale, abs=0.2)
    assert float(hole["height"]) == pytest.approx(high * scale, abs=0.2)
