"""The section with a wedge: what is drawn, where its labels stand, and what is said of it."""

import pytest

from calc.answer import work_out
from calc.calculators.tracking import CALCULATOR
from calc.drawings.wedge import Cut, wedge_drawing
from calc.mechanics.bow.thinning import Build, Station
from calc.outcome import say
from calc.quantities import INCH

SECTION = Station(0.2, 1.5 * INCH, 0.28 * INCH)
BUILD = Build(0.04 * INCH, 0.04 * INCH, 39e9, 12e9)
LETTER = 7.6
"""Widest mean of a letter of a label, in the drawing's own units."""


def drawn(side="right", face="belly", depth=0.004 * INCH, tilt=0.0026, shift=-0.003 * INCH):
    return wedge_drawing(Cut("lower", depth, side, face), SECTION, BUILD, tilt, shift)


def of(drawing, name, kind=None):
    return [each[1] for each in drawing.shapes
            if each[0] == name and (kind is None or each[1]["class"] == kind)]


def numbers(path):
    return [float(each) for each in path["d"].split() if each not in "MLVZ"]


def boxes(drawing):
    """Return left, right and base line of each label, by the widest that its letters can be."""
    found = []
    for shape in drawing.shapes:
        if shape[0] == "text":
            long = LETTER * len(say(shape[2], "metric") if not isinstance(shape[2], str) else shape[2])
            x, anchor = float(shape[1]["x"]), shape[1]["text-anchor"]
            left = x - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * long
            found.append((left, left + long, float(shape[1]["y"])))
    return found


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("face", ["belly", "back"])
def test_labels_lie_within_the_drawing_and_on_nothing_else(side, face):
    drawing = drawn(side, face)
    places = boxes(drawing)
    assert len(places) == 7
    for i, (left, right, base) in enumerate(places):
        assert left >= 0
        assert right <= drawing.width
        assert 14 <= base <= drawing.height - 4
        for other in places[:i]:
            assert abs(base - other[2]) >= 18 or left >= other[1] or right <= other[0]
    bands = of(drawing, "rect")
    top = min(float(each["y"]) for each in bands)
    bottom = max(float(each["y"]) + float(each["height"]) for each in bands)
    assert all(base + 4 <= top or base - 14 >= bottom for _, _, base in places)


def test_the_wedge_is_deep_on_the_side_that_is_worked_and_in_the_glass_of_its_face():
    for side, thin, full in (("right", 20, 360), ("left", 360, 20)):
        [wedge] = of(drawn(side), "path", "rb-mark")
        assert numbers(wedge)[0] == thin
        assert numbers(wedge)[2] == full
    belly, _, back = of(drawn(), "rect")
    top = numbers(of(drawn(), "path", "rb-mark")[0])
    low = numbers(of(drawn(face="back"), "path", "rb-mark")[0])
    assert top[1] == float(belly["y"]) < top[-1] < float(belly["y"]) + float(belly["height"])
    assert low[1] == pytest.approx(float(back["y"]) + float(back["height"]), abs=0.11)
    assert float(back["y"]) < low[-1] < low[1]


def test_the_long_axis_leans_down_on_the_worked_side_where_it_leans_to_the_back():
    """The back lies below: material gone from the top of one side leaves the rest lower there."""
    for side, tilt, falls in (("right", 0.002, True), ("left", 0.002, False), ("right", -0.002, False)):
        [axis] = of(drawn(side, tilt=tilt), "path", "rb-after")
        _, left, _, right = numbers(axis)
        assert (right > left) == falls


def test_the_middle_moves_as_it_is_said():
    for side, shift, word, sign in (("right", -1e-5, "left", -1), ("left", -1e-5, "right", 1),
                                    ("right", 1e-5, "right", 1)):
        [middle] = of(drawn(side, shift=shift), "circle")
        assert (float(middle["cx"]) - 190) * sign == 16
        assert say(drawn(side, shift=shift).description, "metric").endswith(f" to the {word}.")


def test_half_a_wedge_is_drawn_half_as_large():
    whole, half = (of(drawn(depth=each * INCH), "circle")[0] for each in (0.004, 0.002))
    assert float(whole["cx"]) - 190 == 2 * (float(half["cx"]) - 190)


def test_tracking_draws_the_section_of_the_limb_that_is_out_with_its_words():
    drawings = {each.id: each for each in work_out(CALCULATOR, []).outcome.drawings}
    assert list(drawings) == ["tracking", "wedge"]
    assert say(drawings["wedge"].title, "imperial") == (
        "The section of the lower limb in the middle of the worked stretch, with a wedge off its right on "
        "the belly. Wedge, tilt and shift enlarged.")
    assert say(drawings["wedge"].description, "imperial") == (
        "A section of the lower limb, 1 17/32 in wide and 0.280 in thick, belly above. A wedge takes 0.004 "
        "in off the right edge of the belly and nothing off the other. The long axis is tilted by 2.64 in "
        "1,000, toward the back on the right, and the elastic middle moves 0.003 in to the left.")
    assert say(drawings["tracking"].title, "imperial").endswith(" Dashed: the string after the least remedy.")
    described = say(drawings["tracking"].description, "imperial")
    assert described.endswith("after the least remedy -0.019 in and -0.071 in.")


def test_without_a_reckoning_there_is_no_section_and_no_line_after():
    drawings = work_out(CALCULATOR, [("reckon", "no")]).outcome.drawings
    assert [each.id for each in drawings] == ["tracking"]
    assert "Dashed" not in say(drawings[0].title, "imperial")
    assert "after" not in say(drawings[0].description, "imperial")
