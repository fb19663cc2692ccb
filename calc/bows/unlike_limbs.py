"""What tiller two limbs show that differ in their unstrung shape alone."""

from calc.bows.measured import typical_limb
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.unstrung import measured_profile
from calc.quantities import INCH

BRACED = 1 / 3
"""Of a limb's length: how far the string stands over the fadeouts (common practice)."""

STEP = INCH / 64
"""By which an offset is moved, to see what tiller that makes."""


def tiller_per_offset(
    offsets: list[tuple[float, float]], length: float, riser_length: float
) -> list[float]:
    """Return how much tiller, read at the fadeouts, each offset of the upper limb makes [1].

    Both limbs are equally stiff, with the typical taper, and have one shape but for that offset; the lower
    limb's offsets make as much the other way.

    Args:
        offsets: of both limbs, along the straight edge from the fadeout and toward the belly [m].
        length: of a limb, from fadeout to nock [m].
        riser_length: from fadeout to fadeout [m].

    Returns:
        one for each offset.

    Raises:
        ValueError: limbs of this shape cannot be braced.
    """
    base = (0.0, riser_length / 2)
    height = BRACED * length
    alike = _limb(offsets, length, base)
    braced = Bow(alike, alike).brace(height)
    found = []
    for index, (along, offset) in enumerate(offsets):
        moved = offsets[:index] + [(along, offset + STEP)] + offsets[index + 1:]
        bow = Bow(_limb(moved, length, base), alike)
        found.append(bow.brace(height, near=braced).tiller_at_fadeouts().difference / STEP)
    return found


def _limb(offsets: list[tuple[float, float]], length: float, base: tuple[float, float]) -> Limb:
    return typical_limb(measured_profile(tuple(offsets), length), base)
