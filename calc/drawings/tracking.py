"""Both limbs seen from the belly with the string over them, and each from its end. Offsets are enlarged."""

import math

from calc.drawings.marks import at, label
from calc.outcome import Drawing, Sentence, amount, sentence

WIDTH = 440
HEIGHT = 290
LEFT = 16
LENGTH = 250
"""Of each limb on the page."""

MOST = 16.0
"""The largest offset on the page."""

FAR = 0.00635
"""Offsets up to a quarter inch are drawn to one scale; larger ones shrink it."""


def tracking_drawing(
    limbs: list[tuple[str, float, float, float, tuple[float, float] | None]]
) -> Drawing:
    """Return the drawing of limbs: name, offset at the fadeout and near the tip [m], twist [deg], and both
    offsets after a remedy, None where there is none.
    """
    furthest = max([FAR] + [abs(one) for each in limbs for one in each[1:3] + (each[4] or ())])
    shapes: list[object] = []
    for index, limb in enumerate(limbs):
        shapes += _limb(index, limb, MOST / furthest)
    return Drawing(
        "tracking", "The string over each limb, seen from the belly, the archer's right below; and each limb "
        "from its end. Offsets and twist enlarged."
        + ("" if limbs[0][4] is None else " Dashed: the string after the least remedy."),
        _described(limbs), WIDTH, HEIGHT, shapes,
    )


def _described(limbs: list[tuple[str, float, float, float, tuple[float, float] | None]]) -> Sentence:
    words = ["Two limbs seen from the belly with the string over them, the archer's right positive."]
    given = []
    for name, at_riser, at_tip, twist, later in limbs:
        words.append(name[0].upper() + name[1:] + ": {} at the fadeout and {} near the tip, twist {}"
                     + ("." if later is None else "; after the least remedy {} and {}."))
        given += [amount("thickness", at_riser), amount("thickness", at_tip), amount("angle", twist)]
        given += [] if later is None else [amount("thickness", each) for each in later]
    return sentence(" ".join(words), *given)


def _limb(
    index: int, limb: tuple[str, float, float, float, tuple[float, float] | None], scale: float
) -> list[object]:
    """Return one limb of a bow that lies with its upper tip to the right; the archer's right is down."""
    name, at_riser, at_tip, twist, later = limb
    middle = 62 + index * 140
    riser, tip = at(middle + at_riser * scale), at(middle + at_tip * scale)
    root, end = (LEFT, LEFT + LENGTH) if index == 0 else (LEFT + LENGTH, LEFT)
    inner, outer = root + 0.4 * (end - root), root + 0.8 * (end - root)
    outline = (f"M {root} {middle - 22} C {at(inner)} {middle - 22} {at(outer)} {middle - 14} {end} "
               f"{middle - 7} V {middle + 7} C {at(outer)} {middle + 14} {at(inner)} {middle + 22} "
               f"{root} {middle + 22} Z")
    after: list[object] = [] if later is None else [
        ["path", {"class": "rb-after", "d": f"M {root} {at(middle + later[0] * scale)} "
                  f"L {end} {at(middle + later[1] * scale)}"}]]
    under: list[object] = [
        ["path", {"class": "rb-fill", "d": outline}],
        ["path", {"class": "rb-quiet", "d": f"M {root} {middle} H {end}"}],
    ]
    return under + after + [
        ["path", {"class": "rb-string", "d": f"M {root} {riser} L {end} {tip}"}],
        ["circle", {"class": "rb-mark", "cx": str(root), "cy": riser, "r": "4"}],
        ["circle", {"class": "rb-mark", "cx": str(end), "cy": tip, "r": "4"}],
        label(LEFT, middle - 34, "start", name + " limb, tip on the " + ("right" if index == 0 else "left")),
        label(root, middle + 44, "start" if index == 0 else "end",
              sentence("{}", amount("thickness", at_riser))),
        label(end, middle + 44, "end" if index == 0 else "start",
              sentence("{}", amount("thickness", at_tip))),
        _face(355, middle, 0.0, "rb-quiet"),
        _face(355, middle, max(-30.0, min(30.0, 3 * twist)), "rb-mark"),
        label(355, middle + 44, "middle", sentence("twist {}", amount("angle", twist))),
    ]


def _face(x: int, y: int, angle: float, name: str) -> list[object]:
    across = 45 * math.cos(math.radians(angle))
    up = 45 * math.sin(math.radians(angle))
    return ["path", {"class": name, "d": f"M {at(x - across)} {at(y - up)} "
                     f"L {at(x + across)} {at(y + up)}"}]


