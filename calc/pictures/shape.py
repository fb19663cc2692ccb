"""The unstrung shape of both limbs in a picture: offsets from the straight edge through the fadeouts."""

from calc.pictures.bow import Photographed
from calc.pictures.picture import Reading, weighed

PLACES = (0.2, 0.4, 0.55, 0.68, 0.8, 0.9, 1.0)
"""Of the way along the edge to the nearer nock, where offsets are told: closer where a recurve bends most."""


class Place:
    """One place along the edge: how far from the fadeout [m], both limbs' offsets there, their mean, and
    upper less lower.
    """

    def __init__(self, along: float, upper: Reading, lower: Reading, steepness: float) -> None:
        self.along = along
        self.upper = upper
        self.lower = lower
        self.mean = weighed(upper.marks, [(0.5, upper), (0.5, lower)])
        self.apart = weighed(upper.marks, [(1.0, upper), (-1.0, lower)])
        self.square_error = self.mean.error * steepness
        """Standard error of the mean square to the limb [m]: on a steep tip less than along the offset."""


def places_of(bow: Photographed) -> list[Place]:
    """Return the offsets of both limbs at the same places."""
    frame = bow.frame
    upper, lower = bow.courses
    if upper is None or lower is None:
        raise ValueError("too few marks along a limb for its shape")
    end = min(frame.reach(0, upper.end), frame.reach(1, lower.end))
    found = []
    for part in PLACES:
        along = part * end
        square = upper.normal(frame.part_at(0, along))
        found.append(Place(along, frame.offset(0, along), frame.offset(1, along),
                           abs(square[0] * frame.belly[0] + square[1] * frame.belly[1])))
    return found


def most_apart(places: list[Place]) -> Place:
    """Return the place at which the limbs differ most beside the error of that."""
    return max(places, key=lambda place: abs(place.apart.value) / place.apart.error)
