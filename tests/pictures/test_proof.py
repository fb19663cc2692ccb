"""Invented bows photographed by a camera of the tests' own: how near readings come, and whether they know it.

The camera's projection is NumPy's, `camera.py`; nothing of `calc` makes the pictures. Each picture is thrown
anew: tilt up to 14 degrees, aim off the middle, the lens's bend up to 3 % at the corners either way, sheets
out of place, and every mark out by 1, 2 or 3 pixels (one standard error either way) of a picture of 12
megapixels that shows 72 in from side to side from 10 ft or a little more.
"""

import math
from random import Random

import numpy as np
import pytest

from calc import catalog
from calc.answer import work_out
from calc.bows.unlike_limbs import tiller_per_offset
from calc.quantities import INCH
from tests.pictures.drawn import drawn
from tests.pictures.photographs import LIMB, LINE, RISER, THROAT, Photograph, photograph, unlike

THIRTY_SECOND = INCH / 32
PICTURES = {1: 50, 2: 50, 3: 50}


class Found:
    """What was read of many pictures, less what was true, and half of the range stated, by the reading."""

    def __init__(self):
        self.off, self.within = {}, {}

    def take(self, name, off, half):
        self.off.setdefault(name, []).append(off)
        self.within.setdefault(name, []).append(abs(off) <= half)


def read(picture):
    job = work_out(catalog.find("photograph"), picture.typed())
    assert not job.problems, [(each.field, each.message) for each in job.problems]
    return job.outcome


@pytest.fixture(scope="module")
def readings():
    return {error: found_of(error) for error in PICTURES}


def found_of(error):
    found = Found()
    for seed in range(PICTURES[error]):
        picture = photograph(1000 * error + seed, error=float(error))
        outcome = read(picture)
        true = picture.shapes[0]
        for row in outcome.tables[0].rows:
            along, mean, mean_error, upper, upper_error, lower, lower_error, apart, apart_error = row
            place = along / INCH
            aim = true.offset_at(place) * INCH
            found.take("mean", mean - aim, mean_error)
            found.take("square", (mean - aim) * math.cos(true.angle_at(place)), math.inf)
            found.take("limbs", upper - aim, upper_error)
            found.take("limbs", lower - aim, lower_error)
            found.take("apart", apart, apart_error)
        values = dict(outcome.values)
        for name, figure in (("riser_length", RISER), ("upper_length", LIMB), ("lower_length", LIMB),
                             ("bow_length", RISER + 2 * LIMB), ("throat", THROAT)):
            found.take("lengths", values[name] - figure * INCH, values[name + "_error"])
    return found


@pytest.mark.parametrize("name", ["mean", "limbs", "apart", "lengths"])
def test_the_ranges_stated_hold_about_95_of_100(readings, name):
    within = np.concatenate([found.within[name] for found in readings.values()])
    assert 0.93 <= np.mean(within) <= 0.97


def test_offsets_come_within_a_thirty_second_with_marks_good_to_a_pixel(readings):
    assert np.mean(np.abs(readings[1].off["square"]) <= THIRTY_SECOND) >= 0.95


@pytest.mark.parametrize("error", [2, 3])
def test_offsets_come_within_as_many_thirty_seconds_as_marks_are_out_by_pixels(readings, error):
    assert np.mean(np.abs(readings[error].off["square"]) <= error * THIRTY_SECOND) >= 0.95


DRAWN_ERROR = 0.1
"""Pixels: what drawn marks of the rendered pictures are out by, `test_sought.py`."""


@pytest.fixture(scope="module")
def drawn_readings():
    found = Found()
    for seed in range(30):
        picture = photograph(4000 + seed, error=3.0)
        job = work_out(catalog.find("photograph"), list(drawn(picture, Random(seed), DRAWN_ERROR).items()))
        assert not job.problems
        true = picture.shapes[0]
        for along, mean, mean_error, upper, upper_error, lower, lower_error, apart, apart_error in (
                job.outcome.tables[0].rows):
            aim = true.offset_at(along / INCH) * INCH
            found.take("square", (mean - aim) * math.cos(true.angle_at(along / INCH)), math.inf)
            for off, half in ((mean - aim, mean_error), (upper - aim, upper_error),
                              (lower - aim, lower_error), (apart, apart_error)):
                found.take("all", off, half)
    return found


def test_marks_drawn_to_the_picture_come_within_a_thirty_second_from_a_hand_out_by_three_pixels(
        drawn_readings):
    off = np.abs(drawn_readings.off["square"])
    assert len(off) == 30 * 7
    assert np.mean(off <= THIRTY_SECOND) >= 0.95
    assert np.quantile(off, 0.95) <= THIRTY_SECOND / 3  # what the page says


def test_the_ranges_of_marks_drawn_to_the_picture_hold_about_95_of_100(drawn_readings):
    assert 0.93 <= np.mean(drawn_readings.within["all"]) <= 0.97


def test_limbs_of_unlike_shape_are_seen_with_the_tiller_that_this_makes():
    """Marks good to a third of a pixel, as drawn ones are. What tiller limbs make is proved elsewhere."""
    found = Found()
    for seed in range(100):
        dice = Random(9000 + seed)
        picture = Photograph(dice, error=0.3, shapes=unlike(dice))
        outcome = read(picture)
        values, rows = dict(outcome.values), outcome.tables[0].rows
        offsets = [[shape.offset_at(row[0] / INCH) * INCH for shape in picture.shapes] for row in rows]
        for (_, _, _, upper, upper_error, lower, lower_error, apart, apart_error), (one, other) in zip(
                rows, offsets, strict=True):
            found.take("limbs", upper - one, upper_error)
            found.take("limbs", lower - other, lower_error)
            found.take("limbs", apart - (one - other), apart_error)
        shares = tiller_per_offset([(row[0], sum(both) / 2) for row, both in zip(rows, offsets, strict=True)],
                                   LIMB * INCH, RISER * INCH)
        true = sum(share * (one - other) for share, (one, other) in zip(shares, offsets, strict=True))
        found.take("tiller", values["tiller_by_shape"] - true, values["tiller_by_shape_error"])
    assert 0.93 <= np.mean(found.within["limbs"]) <= 0.97
    assert 0.9 <= np.mean(found.within["tiller"]) <= 0.99
    assert np.mean(np.abs(found.off["tiller"]) <= INCH / 16) >= 0.95  # what the page says


def test_two_pixels_are_good_enough_by_hand_with_sixty_marks_and_each_fadeout_marked_again():
    """Dots drawn to their middles, which come out within a twentieth of a pixel, `test_sought.py`."""
    found = Found()
    for seed in range(50):
        picture = photograph(8000 + seed, error=2.0, marks=60, dot_error=0.05)
        typed = dict(picture.typed())
        typed["found_error"] = "0.05 px"
        typed["dots"] = ";".join([each + ":middle" for each in typed["dots"].split(";")])
        again = [(name, picture.fadeout_again(which))
                 for which, name in enumerate(("upper", "lower")) for _ in range(7)]
        typed["fadeouts_again"] = ";".join([f"{name}:{x:.2f}:{y:.2f}" for name, (x, y) in again])
        job = work_out(catalog.find("photograph"), list(typed.items()))
        assert not job.problems
        true = picture.shapes[0]
        for along, mean, mean_error, *_ in job.outcome.tables[0].rows:
            aim = true.offset_at(along / INCH) * INCH
            found.take("square", (mean - aim) * math.cos(true.angle_at(along / INCH)), math.inf)
            found.take("mean", mean - aim, mean_error)
    assert np.mean(np.abs(found.off["square"]) <= THIRTY_SECOND) >= 0.95
    assert 0.92 <= np.mean(found.within["mean"]) <= 0.98


def test_the_strings_line_is_read_with_its_ranges():
    """From the belly the string stands nearer to the lens than the limb does, and is put back."""
    found = Found()
    for seed in range(60):
        picture = photograph(7000 + seed, marks=2)
        offsets = {place: picture.dice.uniform(-0.15, 0.15) for place, *_ in LINE}
        picture.from_the_belly(offsets, times=2)
        values = dict(read(picture).values)
        for place, off in offsets.items():
            name = place.replace("_", "_offset_")
            found.take(place[6:], values[name] - off * INCH, values[name + "_error"])
    assert 0.93 <= np.mean(found.within["tip"] + found.within["riser"]) <= 0.98
    assert np.mean(np.abs(found.off["tip"]) <= INCH / 16) >= 0.95
    assert np.mean(np.abs(found.off["riser"]) <= INCH / 8) >= 0.95
