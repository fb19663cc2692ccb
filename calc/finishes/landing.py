"""What of the spray lands on a bow: a fan is wider than a limb, and the rest flies past."""

import math
from collections import namedtuple

from calc.declaring import TRIAL, Input, quantity
from calc.outcome import Column, Table
from calc.quantities import INCH
from calc.shop.film import mean_share, strip_share, volume_to_mix

SPRAYED = ("hvlp", "conventional")
FANS = (1, 2, 3, 4, 6, 8)
"""Widths of fan that the table tells [in]."""

Faces = namedtuple("Faces", "limbs limb_width riser riser_width")
"""What a gun sees of a bow: surfaces [m2] and the mean widths [m] that the fan meets."""


def faces_of(surface: float, riser_surface: float, riser_girth: float, fadeout: float, tip: float) -> Faces:
    """Return what a gun sees: limbs by their mean width, the riser as if it were round."""
    return Faces(surface - riser_surface, (fadeout + tip) / 2.0, riser_surface, riser_girth / math.pi)


def landing(faces: Faces, panel: float, fan: float | None) -> float:
    """Return the share that lands on the bow [1]; that of a panel where the fan's width is not known."""
    if fan is None:
        return panel
    return mean_share((faces.limbs, faces.riser), (panel * strip_share(faces.limb_width, fan),
                                                   panel * strip_share(faces.riser_width, fan)))


def landing_table(faces: Faces, panel: float, wet: float, left_over: float) -> Table:
    """Return what lands and what one coat takes, by the width of the fan."""
    lines = []
    for inches in FANS:
        fan = inches * INCH
        share = landing(faces, panel, fan)
        lines.append((fan, panel * strip_share(faces.limb_width, fan), share,
                      volume_to_mix(faces.limbs + faces.riser, wet, share) + left_over))
    return Table("fans", "What lands on the bow, by the width of the fan", (
        Column("fan", "Fan where it meets the bow", "length"), Column("limbs", "Lands on the limbs", "ratio"),
        Column("bow", "On the whole bow", "ratio"), Column("coat", "To mix for one coat", "mix_volume"),
    ), tuple(lines))


def fan_input() -> Input:
    """Return the question about the fan."""
    return quantity("fan", "Width of the fan where it meets the bow", "length", default="", low="1/4 in",
                    high="20 in", usual=("1 in", "10 in"),
                    help="Empty: as on a panel, which is too little for a limb. See the table of fans.",
                    measure="A short burst on a sheet of paper at the distance you spray from, across the "
                            "stroke.", optional=True, when=("method", SPRAYED), role=TRIAL)
