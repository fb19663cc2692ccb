"""How hard each place along a drawn limb works."""

from calc.mechanics.bow.elastica import LimbShape
from calc.mechanics.bow.laminate import face_strains
from calc.mechanics.bow.thinning import (
    Build,
    Station,
    layers_of,
    section_at,
)


def surface_strains(shape: LimbShape, stations: tuple[Station, ...], build: Build) -> tuple[float, ...]:
    """Return the larger strain of the two faces at every place of a limb's shape.

    Args:
        shape: of the drawn limb; its bending is the change of curvature from rest.
        stations: measured sections, in order from fadeout to nock.
        build: the limb's lay-up.

    Returns:
        [1] strain, one per place of `shape.arc_length`; never negative.

    Raises:
        ValueError: a section has no room for a core.

    Limits:
        Bending only, from the unstrung shape; what was locked in when the limb was glued is not in it.

    Source: beam-theory, strain is curvature times the distance from the neutral axis.
    """
    strains = []
    for place, bending in zip(shape.arc_length, shape.bending):
        faces = face_strains(layers_of(section_at(stations, place), build), bending)
        strains.append(max(abs(faces.back), abs(faces.belly)))
    return tuple(strains)


def hardest(strains: tuple[float, ...]) -> tuple[int, float]:
    """Return which place works hardest and how much harder than the middle half of the limb on the mean.

    Args:
        strains: as `surface_strains` gives them, at equal distances along the limb.

    Returns:
        Index of the place, and [1] its strain over the mean of the middle half.

    Source: bench-practice, a limb that bends evenly is told by its middle half.
    """
    count = len(strains)
    middle = strains[count // 4 : count - count // 4]
    mean = sum(middle) / len(middle)
    index = 0
    for place in range(count):
        if strains[place] > strains[index]:
            index = place
    return index, strains[index] / mean if mean > 0 else 0.0
