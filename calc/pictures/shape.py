"""The unstrung shape of both limbs in a picture: offsets from the straight edge through the fadeouts."""

from calc.pictures.bow import Photographed
from calc.pictures.picture import Reading, weighed

PLACES = (0.2, 0.4, 0.55, 0.68, 0.8, 0.9, 1.0)
"""Of the way along the edge to the nearer nock, where offsets are told: closer where a recurve bends most."""

SEVEN_AT_ONCE = 2.68
"""Standard errors beyond which one of seven differences lies by chance in one case of twenty."""


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
        self.steepness = steepness
        """What an error along the offset is square to the limb, of itself: on a steep tip less than all."""

    @property
    def is_apart(self) -> bool:
        """Return whether the limbs lie further apart here than the marks' errors explain."""
        return abs(self.apart.value) > SEVEN_AT_ONCE * self.apart.error


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


def mean_shape(places: list[Place]) -> list[tuple[float, float]]:
    """Return how far along the edge each place is, and the mean's offset there [m]."""
    return [(place.along, place.mean.value) for place in places]


def limb_shape(places: list[Place], limb: int) -> list[tuple[float, float]]:
    """Return the same of one limb: upper 0, lower 1."""
    return [(place.along, (place.upper, place.lower)[limb].value) for place in places]


def mean_error(places: list[Place]) -> float:
    """Return half of the 95 % range of the mean shape at its worst place, square to the limb [m]."""
    return max([place.mean.half_range * place.steepness for place in places])


def limb_error(places: list[Place]) -> float:
    """Return half of the 95 % range of either limb's own shape at its worst place, square to it [m]."""
    return max([max(place.upper.half_range, place.lower.half_range) * place.steepness for place in places])


def most_apart(places: list[Place]) -> Place:
    """Return the place at which the limbs differ most beside the error of that."""
    return max(places, key=lambda place: abs(place.apart.value) / place.apart.error)
