"""The comparison plots are those of the model as it is."""

import re

import pytest

from scripts.figures.__main__ import FIGURES, IMAGES
from scripts.figures.elastica import TABLE, tip


def numbers(svg):
    return [float(number) for number in re.findall(r"-?\d+\.?\d*", svg)]


@pytest.mark.parametrize("name", FIGURES)
def test_the_plots_are_up_to_date(name):
    """Within a tenth of a unit of the picture, so that another mathematics library does not matter."""
    kept, drawn = (IMAGES / name).read_text("utf-8"), FIGURES[name]()
    assert re.sub(r"-?\d+\.?\d*", "#", kept) == re.sub(r"-?\d+\.?\d*", "#", drawn)
    assert numbers(kept) == pytest.approx(numbers(drawn), abs=0.11)


@pytest.mark.parametrize(("name", "frames"), [
    ("limbs-through-the-draw.svg", 18), ("stringing-moving.svg", 21), ("stroke-path.svg", 40),
])
def test_a_moving_picture_slides_past_all_its_frames_and_no_further(name, frames):
    drawn = FIGURES[name]()
    width = int(re.search(r'viewBox="0 0 (\d+) ', drawn)[1])
    assert [int(place) for place in re.findall(r"translate\((\d+) 0\)", drawn)] == [
        width * index for index in range(frames)]
    assert f"--rb-frames:{frames};--rb-way:-{width * (frames - 1)}px" in drawn
    assert drawn.count('class="rb-film-still"') == 1


def test_the_dots_lie_on_the_lines():
    """K. Mattiasson, Int. J. Numer. Methods Eng. 17 (1981) 145: from memory, confirmed by calculation."""
    for load, across, along in TABLE:
        assert tip(load) == pytest.approx((across, along), abs=6e-6)
