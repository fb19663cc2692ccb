"""The sheet of sections to cut out: at one to one, and nothing beyond the paper or over the next row."""

import xml.etree.ElementTree as ET

import pytest

from calc.drawings.template import template_svg
from calc.quantities import INCH

MILLIMETRE = 1e-3
SECTIONS = [(f"section {number}", 1.5 * INCH, 2.0 * INCH, 1.25 * INCH, 1.75 * INCH) for number in range(1, 7)]


def sheet(rounded=False, sections=SECTIONS):
    return ET.fromstring(template_svg(rounded, sections))


def of(svg, name):
    return [each.attrib | {"words": each.text} for each in svg.iter("{http://www.w3.org/2000/svg}" + name)]


def boxes(svg):
    """Return left, top, right and bottom [mm] of each outline."""
    return [(float(each["x"]), float(each["y"]), float(each["x"]) + float(each["width"]),
             float(each["y"]) + float(each["height"])) for each in of(svg, "rect")]


def test_outlines_have_their_size_in_millimetres():
    for before, after in zip(boxes(sheet())[::2], boxes(sheet())[1::2], strict=True):
        sizes = [(box[2] - box[0], box[3] - box[1]) for box in (before, after)]
        assert sizes[0] == pytest.approx((38.1, 50.8), abs=0.02)
        assert sizes[1] == pytest.approx((31.75, 44.45), abs=0.02)
        for low in (0, 1):  # about one middle
            assert before[low] + before[low + 2] == pytest.approx(after[low] + after[low + 2], abs=0.04)


def test_ovals_have_the_same_middles_and_sizes():
    for box, oval in zip(boxes(sheet()), of(sheet(rounded=True), "ellipse"), strict=True):
        x, y, wide, high = (float(oval[each]) for each in ("cx", "cy", "rx", "ry"))
        assert (x - wide, y - high, x + wide, y + high) == pytest.approx(box, abs=0.02)


@pytest.mark.parametrize("count", [1, 3, 6])
def test_all_of_it_is_on_the_paper_and_no_row_runs_into_the_next(count):
    svg = sheet(sections=SECTIONS[:count])
    wide, high = (float(each) for each in svg.attrib["viewBox"].split()[2:])
    assert (svg.attrib["width"], svg.attrib["height"]) == (svg.attrib["viewBox"].split()[2] + "mm",
                                                           svg.attrib["viewBox"].split()[3] + "mm")
    outlines = boxes(svg)[::2]
    assert all(left >= 15 - 1e-9 and right <= wide - 15 + 1e-9 for left, _, right, _ in outlines)
    tops = sorted({top for _, top, _, _ in outlines})
    assert len(tops) == (1 if count < 4 else 2)
    words = [(float(each["y"]), each["words"]) for each in of(svg, "text")]
    assert max(y for y, _ in words) + 3 < high
    for each in range(1, count + 1):
        left, _, _, bottom = outlines[each - 1]
        below = [(float(text["y"]), text["words"]) for text in of(svg, "text")
                 if float(text["x"]) == left and 0 < float(text["y"]) - bottom < 20]
        assert [words for _, words in below] == [
            f"section {each}", "leave 1 1/4 in x 1 3/4 in", "31.8 mm x 44.5 mm"]
        if count > 3 and each <= 3:
            assert below[-1][0] + 4 < tops[1]
    for one, other in zip(outlines, outlines[1:], strict=False):
        assert other[1] > one[1] or other[0] > one[2] + 10


def test_both_bars_are_as_long_as_they_say():
    across = [each["d"].split() for each in of(sheet(), "path")]
    level = [float(line[4]) - float(line[1]) for line in across if line[2] == line[5]]
    assert level == pytest.approx([50.0, 50.8], abs=0.02)
