"""Marks of a rendered picture as the page draws them: set by a hand that is out, then drawn to what shows."""

import math

from calc.pictures.sought import EDGE, corner_near, edge_near, middle_near
from tests.pictures.rendered import Rendered


def drawn(picture, dice, error):
    """Return what a reader types of a picture whose dots and limbs were drawn; error: of drawn marks [px]."""
    rendered = Rendered(picture, dice)
    typed = dict(picture.typed())
    typed["found_error"] = f"{error} px"
    typed["dots"] = ";".join([f"{sheet}:{dot}:{_row((x, y), _dot(rendered, (x, y)))}"
                              for sheet, dot, x, y in picture.dots])
    for name, limb in zip(("upper_limb", "lower_limb"), picture.limbs, strict=True):
        rows, rises = [], 0.0
        for index, mark in enumerate(limb):
            before, after = limb[max(index - 1, 0)], limb[min(index + 1, len(limb) - 1)]
            size = math.dist(before, after)
            way = (after[0] - before[0]) / size, (after[1] - before[1]) / size
            patch = rendered.patch(*mark, 20)
            found = corner_near(patch, mark, way) if index == 0 else edge_near(patch, mark, way, rises)
            rises = found.rises if found is not None and found.how == EDGE else 0.0
            rows.append(_row(mark, found))
        typed[name] = ";".join(rows)
    return typed


def _dot(rendered, mark):
    return middle_near(rendered.patch(*mark, 40), mark)


def _row(mark, found):
    place, how = (mark, "hand") if found is None else (found.place, found.how)
    return f"{place[0]:.1f}:{place[1]:.1f}:{how}"
