"""What marks are drawn to in pictures made here, as it was: no proof, it shows when something changes."""

import math
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random

from calc.pictures.sought import Found, Patch, corner_near, edge_near, middle_near
from tests.unchanged.storing import held_to

WIDE, HIGH = 61, 57
BLUR = 1.2  # samples
GRAIN = 2.0  # of 255, one standard deviation
Shade = Callable[[float, float], float]


def test_unchanged_marks():
    held_to(Path(__file__).with_name("marks.json"), lambda _: {
        f"{name}: {mark.how}": [*mark.place, mark.rises] for name, mark in found() if mark is not None})


def found() -> Iterator[tuple[str, Found | None]]:
    """Yield what each mark finds: beside edges that lean and bend, at corners, near one dot, two and none."""
    for turned in range(-75, 106, 15):
        along = math.cos(math.radians(turned)), math.sin(math.radians(turned))
        for name, patch in (("edge", drawn(edge(along), turned)), ("limb", drawn(limb(along), turned))):
            for off in (-11.0, -6.5, -2.0, 3.5, 8.0):
                mark, told = (30.0 - off * along[1], 28.0 + off * along[0]), f"{name} at {turned}, {off} off"
                yield told, edge_near(patch, mark, along)
                yield f"{told}, whatever way", edge_near(patch, mark)
                yield f"{told}, rising", edge_near(patch, mark, along, 1.0)
                yield f"{told}, its corner", corner_near(patch, mark, along)
    for size in (2.0, 4.0, 7.0, 12.0, 20.0):
        for off in (0.0, 3.0, 7.0, 12.0, 25.0):
            one = drawn(dots(size, (30.0 + off, 28.0 - off / 2), (12.0, 44.0)), int(size))
            two = drawn(dots(size, (30.0 + off, 28.0 + size), (30.0 - size, 27.0 - off)), int(size))
            yield f"dot of {size}, {off} off", middle_near(one, (30.0, 28.0))
            yield f"two dots of {size}, {off} off", middle_near(two, (30.0, 28.0))


def drawn(shade: Shade, seed: int) -> Patch:
    """Return a patch of a picture with some grain; the picture's own corner lies elsewhere."""
    dice = Random(seed)
    gray = [min(255, max(0, round(shade(i + 0.5, j + 0.5) + dice.gauss(0.0, GRAIN))))
            for j in range(HIGH) for i in range(WIDE)]
    return Patch(0.0, 0.0, 1.0, WIDE, gray)


def edge(along: tuple[float, float]) -> Shade:
    """Return a straight edge through the middle, bright on its left."""
    return lambda x, y: 130.0 + 70.0 * math.tanh(((y - 28.0) * along[0] - (x - 30.0) * along[1]) / BLUR)


def limb(along: tuple[float, float]) -> Shade:
    """Return a dark limb with tape over its first half, its edge bending a little."""
    def shade(x: float, y: float) -> float:
        run = (x - 30.0) * along[0] + (y - 28.0) * along[1]
        up = (y - 28.0) * along[0] - (x - 30.0) * along[1] - run * run / 900.0
        tape = 45.0 * (1.0 - math.tanh(run / BLUR))
        return 210.0 if up > 14.0 else (60.0 + tape) + (150.0 - tape) * (1.0 - math.tanh(-up / BLUR)) / 2
    return shade


def dots(size: float, *places: tuple[float, float]) -> Shade:
    """Return dark dots of a size on paper."""
    def shade(x: float, y: float) -> float:
        nearest = min(math.hypot(x - place[0], (y - place[1]) * 1.15) for place in places)
        return 130.0 + 90.0 * math.tanh((nearest - size / 2) / BLUR)
    return shade
