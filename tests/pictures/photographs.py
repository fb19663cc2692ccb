"""Pictures of invented bows: where a camera of the tests' own shows them, and marks scattered about it.

The bow hangs before a board with four sheets of dots, its upper limb to the right and its belly down. Limbs
are made from angles along them by a formula of this file's own; no bow was measured.
"""

import math
from random import Random

import numpy as np

from tests.pictures.camera import INCH, Camera

SHEETS = ((0.0, 0.0), (52.0, 0.0), (0.0, 28.0), (52.0, 28.0))
DOTS = (("a", -4.5, 3.0), ("b", 4.5, 3.0), ("c", 4.5, -3.0), ("d", -4.5, -3.0))
MIDDLE = (26.0, 14.0)
RISER, LIMB, THROAT = 19.0, 22.5, 0.675
STANDOFF = (1.75, 1.1875)
STRING_OUT = 0.9375
LINE = (("upper_tip", 24.0, 0.8, 2.125), ("upper_riser", 9.5, 1.625, 7.625),
        ("lower_tip", -24.0, 0.8, 2.125), ("lower_riser", -9.5, 1.625, 7.3125))
"""Where the string's line is read: inches from the middle, the limb's width, the string's height."""

STEPS = 2000


class LimbShape:
    """An unstrung limb, in inches along the straight edge through the fadeouts and toward the belly."""

    def __init__(self, angle):
        parts = np.linspace(0.0, 1.0, STEPS + 1)
        angles = np.array([angle(part) for part in parts])
        half = LIMB / STEPS / 2
        self.parts = parts
        self.along = np.concatenate([[0.0], np.cumsum((np.cos(angles[1:]) + np.cos(angles[:-1])) * half)])
        self.offset = np.concatenate([[0.0], np.cumsum((np.sin(angles[1:]) + np.sin(angles[:-1])) * half)])
        self.angles = angles

    def at(self, part):
        return float(np.interp(part, self.parts, self.along)), float(np.interp(part, self.parts, self.offset))

    def offset_at(self, along):
        return float(np.interp(along, self.along, self.offset))

    def angle_at(self, along):
        return float(np.interp(along, self.along, self.angles))


def recurve(dice):
    start, sweep, tip, power = dice.uniform(0.05, 0.12), dice.uniform(0.1, 0.25), dice.uniform(0.6, 0.9), 5.0
    return LimbShape(lambda part: start - sweep * part - tip * part**power)


def unlike(dice, more=0.06):
    """Return two limbs of one kind, of which the lower bends back more at its tip, as after a set."""
    start, sweep, tip = dice.uniform(0.05, 0.12), dice.uniform(0.1, 0.25), dice.uniform(0.6, 0.9)
    return tuple(LimbShape(lambda part, own=own: start - sweep * part - own * part**5.0)
                 for own in (tip, tip + more))


def reflexed(dice):
    start, sweep = dice.uniform(0.05, 0.1), dice.uniform(0.2, 0.35)
    return LimbShape(lambda part: start - sweep * part**2)


class Photograph:
    """A bow before a camera, and marks with their errors; all of it thrown by dice."""

    def __init__(self, dice, error=1.0, marks=30, camera=None, shapes=None, board_error=1 / 32,
                 standoff_error=1 / 16, turn=None, dot_error=None):
        self.dice, self.error = dice, error if dot_error is None else dot_error
        self.camera = camera or Camera(
            distance=dice.uniform(120, 130) * INCH, bend=dice.uniform(-0.03, 0.03),
            aim=((26 + dice.uniform(-2, 2)) * INCH, (14 + dice.uniform(-3, 3)) * INCH),
            tilts=(dice.uniform(-10, 10), dice.uniform(-10, 10), dice.uniform(-2, 2)))
        self.turn = dice.gauss(0.0, 0.01) if turn is None else turn
        one = recurve(dice)
        self.shapes = shapes or (one, one)
        self.out = dice.gauss(0.0, standoff_error)
        self.board_error = board_error
        self.middles, self.moved = SHEETS, [self.moved_sheet() for _ in SHEETS]
        self.dots = [(number, dot, *self.mark(x, y)) for number, (middle, off) in enumerate(
            zip(self.middles, self.moved, strict=True), 1) for dot, x, y in self.on_sheet(middle, off)]
        self.error = error
        self.limbs = [self.limb(which, marks) for which in (0, 1)]
        self.throat = self.mark(*self.hung(0.0, -RISER / 2, 0), STANDOFF[0] + self.out)
        self.string = None
        self.line = []

    def moved_sheet(self):
        return [self.dice.gauss(0.0, self.board_error), self.dice.gauss(0.0, self.board_error),
                self.dice.gauss(0.0, self.board_error / math.hypot(4.5, 3.0))]

    def on_sheet(self, middle, off):
        return [(dot, middle[0] + x + off[0] - off[2] * y, middle[1] + y + off[1] + off[2] * x)
                for dot, x, y in DOTS]

    def mark(self, along, up, out=0.0):
        x, y = self.camera.sees(along * INCH, up * INCH, out * INCH)
        return float(x) + self.dice.gauss(0.0, self.error), float(y) + self.dice.gauss(0.0, self.error)

    def hung(self, toward_belly, beyond_fadeout, limb):
        """Return where on the board a point of the bow hangs, in inches."""
        right = (RISER / 2 + beyond_fadeout) * (1 if limb == 0 else -1)
        cosine, sine = math.cos(self.turn), math.sin(self.turn)
        return (MIDDLE[0] + cosine * right + sine * toward_belly, MIDDLE[1] + sine * right - cosine *
        toward_belly)

    def limb(self, which, marks):
        found = []
        for index in range(marks):
            part = index / (marks - 1) * (1.3 - 0.3 * index / (marks - 1))
            along, offset = self.shapes[which].at(part)
            out = STANDOFF[0] + (STANDOFF[1] - STANDOFF[0]) * part + self.out
            found.append(self.mark(*self.hung(THROAT + offset, along, which), out))
        return found

    def fadeout_again(self, which):
        """Return one more mark of a fadeout."""
        return self.mark(*self.hung(THROAT, 0.0, which), STANDOFF[0] + self.out)

    def brace(self, upper, lower, marks=6):
        """Mark a string that stands so far over the fadeouts."""
        self.string = []
        for index in range(marks):
            part = -0.8 + 2.6 * index / (marks - 1)
            beyond = -RISER + part * RISER
            height = lower + (upper - lower) * part
            self.string.append(self.mark(*self.hung(THROAT + height, beyond, 0), STRING_OUT + self.out))

    def from_the_belly(self, offsets, times=1):
        """Mark edges and string of the bow on its back, upper limb to the right: up is then its left."""
        for place, along, width, height in LINE:
            out = STANDOFF[0 if place.endswith("riser") else 1] + self.out
            for part, across, stands in (("left", width / 2, out), ("right", -width / 2, out),
                                         ("string", -offsets[place], out + height)):
                self.line += [(place, part, *self.mark(MIDDLE[0] + along, MIDDLE[1] + across, stands))
                              for _ in range(times)]

    def typed(self):
        """Return what a reader types of it."""
        pairs = [("marking_error", f"{self.error} px"), ("board_error", f"{self.board_error} in"),
                 ("sheets", ";".join(f"{along}in:{up}in" for along, up in SHEETS)),
                 ("dots", ";".join(f"{sheet}:{dot}:{x:.2f}:{y:.2f}" for sheet, dot, x, y in self.dots)),
                 ("distance", f"{self.camera.place[2] / INCH * (1 + self.dice.gauss(0.0, 0.02)):.3f} in"),
                 ("throat_marks", f"{self.throat[0]:.2f}:{self.throat[1]:.2f}")]
        for name, limb in zip(("upper_limb", "lower_limb"), self.limbs, strict=True):
            pairs.append((name, ";".join(f"{x:.2f}:{y:.2f}" for x, y in limb)))
        if self.string is not None:
            pairs += [("what", "braced"),
                      ("string_marks", ";".join(f"{x:.2f}:{y:.2f}" for x, y in self.string))]
        if self.line:
            line = ";".join(f"{place}:{part}:{x:.2f}:{y:.2f}" for place, part, x, y in self.line)
            pairs += [("what", "belly"), ("height_tip", "2.125 in"), ("height_riser", "7.469 in"),
                      ("string_line", line)]
        return pairs


def photograph(seed, **given):
    return Photograph(Random(seed), **given)


def in_whole_pixels(marks):
    return ";".join(f"{round(x)}:{round(y)}" for x, y in marks)
