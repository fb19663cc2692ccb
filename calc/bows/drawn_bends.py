"""How far each stretch of a drawn limb bends by the model, and how it stands at rest."""

from calc.bows.measured import MeasuredBow, cannot_be_drawn
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import LimbShape

STRETCHES = ("inner", "middle", "outer")
ENDS = (0.0, 0.3, 0.6, 0.9)
"""Where they end, of a limb's length from the fadeout: the last tenth bends next to nothing."""


class Bends:
    """One limb by its stretches [rad]: how far each bends, and is curved at rest, toward the belly."""

    def __init__(self, bent: list[float], rest: list[float]) -> None:
        self.bent = bent
        self.rest = rest


def computed_bends(measured: MeasuredBow, bow: Bow, distance: float) -> tuple[Bends, Bends]:
    """Return how far each stretch of both limbs bends when the bow is drawn.

    Args:
        measured: the bow as measured, for its shape at rest.
        bow: the same with the stiffness that gives it its weight and tiller.
        distance: from the pivot point to the nocking point [m].

    Raises:
        Refused: the bow cannot be drawn so far.
    """
    try:
        drawn = bow.draw(distance)
    except ValueError as error:
        raise cannot_be_drawn(distance, error) from None
    angles = measured.profile.angles
    rest = _changes(list(angles), [index / (len(angles) - 1) for index in range(len(angles))])
    return Bends(_bent(drawn.upper), rest), Bends(_bent(drawn.lower), rest)


def _bent(shape: LimbShape) -> list[float]:
    """Return the angle by which each stretch bends: the sum of the bending along it."""
    sums = [0.0]
    for index in range(1, len(shape.arc_length)):
        step = shape.arc_length[index] - shape.arc_length[index - 1]
        sums.append(sums[-1] + step * (shape.bending[index] + shape.bending[index - 1]) / 2)
    return _changes(sums, [place / shape.arc_length[-1] for place in shape.arc_length])


def _changes(values: list[float], parts: list[float]) -> list[float]:
    """Return how far values that stand at parts of the way change over each stretch."""
    ends = [_between(values, parts, end) for end in ENDS]
    return [after - before for before, after in zip(ends, ends[1:])]


def _between(values: list[float], parts: list[float], part: float) -> float:
    for index in range(1, len(parts)):
        if part <= parts[index]:
            share = (part - parts[index - 1]) / (parts[index] - parts[index - 1])
            return values[index - 1] + share * (values[index] - values[index - 1])
    return values[-1]
