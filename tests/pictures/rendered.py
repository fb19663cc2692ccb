"""Parts of a picture as a sensor has them: an invented bow and its sheets of dots, before a camera.

Outlines are projected as in `camera.py`, filled eight times as fine as a pixel, blurred as a lens blurs, and
given grain. Nothing of `calc` draws here.
"""

import math

import numpy as np
from PIL import Image, ImageDraw
from scipy.ndimage import gaussian_filter

from calc.pictures.sought import Patch
from tests.pictures.camera import INCH
from tests.pictures.photographs import LIMB, STANDOFF, THROAT

FINER = 8
BLUR = 0.8
"""Pixels: one standard deviation of a sharp picture's blur."""

GRAIN = 3.0
"""Steps of brightness of 255, one standard deviation, such as a phone's picture has in a room."""

WALL, PAPER, INK, WOOD, TAPE = 168, 236, 34, 84, 214
DOT_RADIUS, PEEPHOLE_RADIUS = 8.0 / 25.4, 1.5 / 25.4
PAPER_HALF = (4.5 + 11 / 25.4, 3.0 + 11 / 25.4)
"""Inches, of the printed sheet."""

THICK = (0.42, 0.24)
"""Inches of a limb, at its fadeout and at its nock."""

TAPE_WIDE = 0.75


class Rendered:
    """The picture of a bow whose limbs have outlines; tape: whether a strip ends at each fadeout."""

    def __init__(self, shown, dice, tape=True):
        self.shown, self.noise = shown, np.random.default_rng(dice.randrange(2**32))
        self.papers, self.dots, self.peepholes = [], [], []
        for middle, off in zip(shown.middles, shown.moved, strict=True):
            def place(x, y, middle=middle, off=off):
                return middle[0] + x + off[0] - off[2] * y, middle[1] + y + off[1] + off[2] * x
            wide, high = PAPER_HALF
            self.papers.append(self._seen([place(x, y) for x, y in (
                (-wide, -high), (wide, -high), (wide, high), (-wide, high))]))
            for x, y in ((-4.5, 3.0), (4.5, 3.0), (4.5, -3.0), (-4.5, -3.0)):
                for found, radius in ((self.dots, DOT_RADIUS), (self.peepholes, PEEPHOLE_RADIUS)):
                    found.append(self._seen([place(x + radius * math.cos(a), y + radius * math.sin(a))
                                             for a in np.linspace(0, 2 * math.pi, 60)]))
        self.limbs = [self._limb(which) for which in (0, 1)]
        self.tapes = [self._tape(which) for which in (0, 1)] if tape else []

    def _seen(self, places, outs=None):
        xs, ys = zip(*places, strict=True)
        out = np.zeros(len(xs)) if outs is None else np.array(outs)
        return list(zip(*self._project(np.array(xs), np.array(ys), out), strict=True))

    def _project(self, along, up, out):
        camera = self.shown.camera
        points = np.stack([along, up, out]) * INCH - camera.place[:, None]
        u, v, depth = camera.rotation @ points
        u, v = camera.focus * u / depth, camera.focus * v / depth
        bent = 1 + camera.bend * (u * u + v * v) / 2500.0**2
        return u * bent + 2000, v * bent + 1500

    def _belly(self, which, part):
        """Return a point on the belly, the square to it toward the back, and what it stands off."""
        shape = self.shown.shapes[which]
        inner = max(part, 0.0)
        along, offset = shape.at(inner)
        angle = float(np.interp(inner, shape.parts, shape.angles))
        along += (part - inner) * LIMB * math.cos(angle)
        offset += (part - inner) * LIMB * math.sin(angle)
        out = STANDOFF[0] + (STANDOFF[1] - STANDOFF[0]) * inner + self.shown.out
        return along, THROAT + offset, (math.sin(angle), -math.cos(angle)), out

    def _outline(self, which, parts):
        belly, back, outs = [], [], []
        for part in parts:
            along, offset, (ahead, aback), out = self._belly(which, part)
            thick = THICK[0] + (THICK[1] - THICK[0]) * max(part, 0.0)
            belly.append(self.shown.hung(offset, along, which))
            back.append(self.shown.hung(offset + thick * aback, along + thick * ahead, which))
            outs.append(out)
        return self._seen(belly + back[::-1], outs + outs[::-1])

    def _limb(self, which):
        return self._outline(which, np.linspace(-0.12, 1.0, 300))

    def _tape(self, which):
        return self._outline(which, np.linspace(-TAPE_WIDE / LIMB, 0.0, 5))

    def patch(self, x, y, half):
        """Return the part of the picture about a place, so many pixels to each side."""
        left, top = round(x) - half, round(y) - half
        wide, edge = 2 * half + 1, 4
        size = (wide + 2 * edge) * FINER
        image = Image.new("L", (size, size), WALL)
        pen = ImageDraw.Draw(image)
        for outlines, tone in ((self.papers, PAPER), (self.dots, INK), (self.peepholes, PAPER),
                               (self.limbs, WOOD), (self.tapes, TAPE)):
            for outline in outlines:
                near = np.array(outline) - (left - edge, top - edge)
                if (near.max(axis=0) > 0).all() and (near.min(axis=0) < wide + 2 * edge).all():
                    pen.polygon([(a, b) for a, b in near * FINER], fill=tone)
        coarse = np.asarray(image.reduce(FINER), dtype=float)
        sharp = gaussian_filter(coarse, BLUR)[edge:-edge, edge:-edge]
        grainy = np.clip(np.rint(sharp + self.noise.normal(0.0, GRAIN, sharp.shape)), 0, 255)
        return Patch(left, top, 1.0, wide, [int(each) for each in grainy.ravel()])
