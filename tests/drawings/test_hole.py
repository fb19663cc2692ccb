"""A hole cut open: to scale, with its measures below each other."""

import pytest

from calc.drawings.hole import REACH, TALLEST, WIDTH, hole_drawing
from calc.outcome import say
from calc.quantities import INCH

BIT, INSERT, SHOULDER, TIP, WALL = 0.375, 0.5, 0.6, 0.7, 0.1

LETTER = 7.6
"""Widest mean of a letter of a label, in the drawing's own units."""


def drawn(thickness=1.0, bit=BIT):
    return hole_drawing(*(each * INCH for each in (thickness, bit)), 1.0,
                        *(each * INCH for each in (INSERT, SHOULDER, TIP, WALL)))


def numbers(path):
    return [float(each) for each in path.replace("M", " ").replace("L", " ").replace("Z", " ").replace(
        "H", " ").replace("V", " ").split()]


def test_insert_hole_and_riser_share_one_scale():
    paths = [each[1] for each in drawn().shapes if each[0] == "path"]
    wood = numbers(paths[0]["d"])
    points = list(zip(wood[::2], wood[1::2], strict=True))
    corners, hole = points[:4], points[4:]
    scale = corners[1][0] - corners[0][0]  # of one inch
    left = corners[0][0]
    assert max(y for _, y in hole) - min(y for _, y in hole) == pytest.approx(BIT * scale, abs=0.2)
    assert sorted({round(x - left, 1) for x, _ in hole}) == pytest.approx(
        [0, SHOULDER * scale, TIP * scale], abs=0.2)
    (insert,) = [each[1] for each in drawn().shapes if each[0] == "rect"]
    assert float(insert["x"]) == left
    assert float(insert["y"]) == pytest.approx(min(y for _, y in hole), abs=0.11)
    assert float(insert["width"]) == pytest.approx(INSERT * scale, abs=0.11)
    assert float(insert["height"]) == pytest.approx(BIT * scale, abs=0.2)


@pytest.mark.parametrize(("thickness", "bit"), [(1.0, 0.375), (0.6, 0.375), (3.0, 0.2), (0.6, 2.0)])
def test_measures_stand_below_each_other_within_the_drawing(thickness, bit):
    drawing = drawn(thickness, bit)
    wood = numbers(next(each[1]["d"] for each in drawing.shapes if each[0] == "path"))
    assert max(wood[::2]) <= WIDTH
    assert max(wood[1::2]) < drawing.height
    scale = (max(wood[0:8:2]) - min(wood[0:8:2])) / thickness
    room = max(scale * max(thickness, TIP) / REACH, scale * bit / TALLEST)
    assert room == pytest.approx(1, abs=0.002)  # as large as it can be
    texts = [each for each in drawing.shapes if each[0] == "text"]
    assert [say(each[2], "imperial") for each in texts] == [
        "to the shoulder 19/32 in", "to the point 45/64 in", "wall in the worst case 0.100 in"]
    heights = [float(each[1]["y"]) for each in texts]
    assert all(low + 18 <= high for low, high in zip(heights, heights[1:], strict=False))
    assert heights[-1] + 4 <= drawing.height
    for each in texts:
        long = LETTER * len(say(each[2], "metric"))
        left = float(each[1]["x"]) - {"start": 0.0, "end": 1.0}[each[1]["text-anchor"]] * long
        assert left >= 0
        assert left + long <= WIDTH
