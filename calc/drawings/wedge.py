"""A limb's section with the wedge that is taken off one face, and the axes that it tilts. Enlarged."""

import math

from calc.drawings.marks import at, label
from calc.mechanics.bow.thinning import Build, Station
from calc.outcome import Drawing, amount, sentence

WIDTH = 380
HEIGHT = 236
LEFT = 20.0
BROAD = 340.0
"""Of the section on the page."""

MIDDLE = 112.0
MOST_THICK = 76.0
WEDGE_SHARE = 0.5
"""Of the worked glass: what the wedge takes of it on the page at most."""

DEEP = 0.004 * 0.0254
"""A wedge as deep as this [m] is drawn that large; less of it is less."""

DRAWN_TILT = 7.0
"""Degrees on the page for the tilt of such a wedge."""

DRAWN_SHIFT = 16.0


class Cut:
    """A wedge: the limb it is on, its depth [m], the side "left" or "right" and the face that are worked."""

    def __init__(self, limb: str, depth: float, side: str, face: str) -> None:
        self.limb = limb
        self.depth = depth
        self.side = side
        self.face = face


def wedge_drawing(cut: Cut, section: Station, build: Build, tilt: float, shift: float) -> Drawing:
    """Return the drawing of a section, belly above and the archer's right on the right.

    Args:
        cut: what is taken.
        section: where it is drawn.
        build: its lay-up.
        tilt [rad]: of the long axis toward the back on the worked side.
        shift [m]: of the elastic middle toward the worked side.
    """
    thick = min(MOST_THICK, BROAD * section.thickness / section.width)
    scale = thick / section.thickness
    top, bottom = MIDDLE - thick / 2, MIDDLE + thick / 2
    belly, back = top + build.belly * scale, bottom - build.back * scale
    right = 1.0 if cut.side == "right" else -1.0
    slope = math.copysign(min(1.0, cut.depth / DEEP) * DRAWN_TILT, tilt)
    middle = LEFT + BROAD / 2
    moved = middle + right * math.copysign(min(1.0, cut.depth / DEEP) * DRAWN_SHIFT, shift)
    across = 0.5 * BROAD - DRAWN_SHIFT - 8
    rise = right * across * math.tan(math.radians(slope))
    shapes: list[object] = [
        _band("rb-glass", top, belly), _band("rb-core", belly, back), _band("rb-glass", back, bottom),
        _wedge(cut, (top, belly) if cut.face == "belly" else (bottom, back), right),
        ["path", {"class": "rb-quiet", "d": f"M {at(middle - across)} {at(MIDDLE)} "
                  f"L {at(middle + across)} {at(MIDDLE)} M {at(middle)} {at(top - 8)} "
                  f"V {at(bottom + 8)}"}],
        ["path", {"class": "rb-after", "d": f"M {at(moved - across)} {at(MIDDLE - rise)} "
                  f"L {at(moved + across)} {at(MIDDLE + rise)}"}],
        ["circle", {"class": "rb-mark", "cx": at(moved), "cy": at(MIDDLE), "r": "4"}],
        label(LEFT, 18, "start", "left"), label(middle, 18, "middle", "belly"),
        label(LEFT + BROAD, 18, "end", "right"),
        label(LEFT if right < 0 else LEFT + BROAD, 42 if cut.face == "belly" else 178,
              "start" if right < 0 else "end",
              sentence("wedge {}", amount("thickness", cut.depth))),
        label(middle, 178, "middle", "back"),
        label(LEFT, 202, "start", sentence("dashed: long axis, tilted {} in 1,000",
                                           amount("number", _rate(tilt)))),
        label(LEFT, 224, "start", sentence("elastic middle {} to the " + _toward(cut.side, shift),
                                           amount("thickness", abs(shift)))),
    ]
    where = "the " + cut.limb + " limb"
    leans = ("back" if tilt > 0 else "belly") + " on the " + cut.side
    return Drawing(
        "wedge", "The section of " + where + " in the middle of the worked stretch, with a wedge off its "
        + cut.side + " on the " + cut.face + ". Wedge, tilt and shift enlarged.",
        sentence("A section of " + where + ", {} wide and {} thick, belly above. A wedge takes {} off the "
                 + cut.side + " edge of the " + cut.face + " and nothing off the other. The long axis is "
                 "tilted by {} in 1,000, toward the " + leans + ", and the elastic middle moves {} to the "
                 + _toward(cut.side, shift) + ".",
                 amount("length", section.width), amount("thickness", section.thickness),
                 amount("thickness", cut.depth), amount("number", _rate(tilt)),
                 amount("thickness", abs(shift))),
        WIDTH, HEIGHT, shapes,
    )


def _rate(tilt: float) -> float:
    return 1000.0 * abs(tilt)


def _toward(side: str, shift: float) -> str:
    """Return the side to which the middle moves; shift is positive toward the worked one."""
    if shift > 0:
        return side
    return "left" if side == "right" else "right"


def _band(name: str, top: float, bottom: float) -> list[object]:
    return ["rect", {"class": name, "x": at(LEFT), "y": at(top), "width": at(BROAD),
                     "height": at(bottom - top)}]


def _wedge(cut: Cut, layer: tuple[float, float], right: float) -> list[object]:
    """Return what is taken off, from nothing at one edge to its whole depth at the worked one."""
    outer, inner = layer
    deep = outer + (inner - outer) * WEDGE_SHARE * min(1.0, cut.depth / DEEP)
    thin, full = (LEFT, LEFT + BROAD) if right > 0 else (LEFT + BROAD, LEFT)
    return ["path", {"class": "rb-mark", "d": f"M {at(thin)} {at(outer)} L {at(full)} {at(outer)} "
                     f"V {at(deep)} Z"}]
