"""How far each stretch of a drawn limb bends by the model, and how it stands at rest."""

from calc.bows.measured import MeasuredBow, cannot_be_drawn
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import LimbShape
from calc.numerics.interpolation import along_straight

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

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
    rest = _changes(measured.profile.angles)
    return Bends(_bent(drawn.upper), rest), Bends(_bent(drawn.lower), rest)


def _bent(shape: LimbShape) -> list[float]:
    """Return the angle by which each stretch bends: the sum of the bending along it."""
    sums = [0.0]
    for index in range(1, len(shape.arc_length)):
        step = shape.arc_length[index] - shape.arc_length[index - 1]
        sums.append(sums[-1] + step * (shape.bending[index] + shape.bending[index - 1]) / 2)
    return _changes(sums)


def _changes(values: "Sequence[float]") -> list[float]:
    """Return how far values, equally spaced along a limb, change over each stretch."""
    ends = [along_straight(values, end) for end in ENDS]
    return [after - before for before, after in zip(ends, ends[1:])]
