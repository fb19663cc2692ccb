"""What every plan for a bow begins with: the stretch to be sanded, and the removals that meet its aim."""

from calc.bows.answering import Answering
from calc.bows.measured import in_both, mend, require_stretch
from calc.bows.workpiece import Workpiece
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.reduction import Reduction, reduction_steps
from calc.mechanics.bow.tuning import BowState
from calc.outcome import Refused

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator


def sanding_on(start: float, end: float, feather: float, belly_share: float, length: float) -> Sanding:
    """Return the stretch of a limb to be sanded, from what is left alone at its ends [m].

    Raises:
        Refused: too little of the limb is left for it, or for feathering both ends.
    """
    stop = length - end
    require_stretch("zone_end", start, stop, length)
    if 2 * feather >= stop - start:
        raise Refused("feather", "Feathering at both ends must leave room between them: less than "
                      + in_both("length", (stop - start) / 2) + " each on this stretch; you gave "
                      + in_both("length", feather) + ". Make it shorter, or the stretch longer.")
    return Sanding(start, stop, feather, belly_share)


def answering_before(piece: Workpiece, before: BowState) -> Answering | None:
    """Return how a bow answers before anything comes off it; None where that cannot be told."""
    try:
        return Answering(piece.bow, piece.setup, piece.sanding, (0.0, 0.0), before)
    except ValueError:
        return None


def reduced(
    piece: Workpiece, before: BowState, answering: Answering | None, aim: float, weight_wanted: float,
    tiller_wanted: float,
) -> "Generator[float, None, Reduction]":
    """Return the removals that bring the bow to its targets, or nearest to them.

    before: its state before any of it. answering: how it answers then, where that is known.

    Raises:
        Refused: a bow on the way there cannot be computed.
    """
    try:
        return (yield from reduction_steps(
            piece.sanded, piece.setup, aim, tiller_wanted, piece.most, before,
            None if answering is None else lambda _: answering.by_removals()))
    except ValueError as error:
        raise Refused("weight_wanted", "On the way to " + in_both("force", weight_wanted)
                      + " with a tiller of " + in_both("length", tiller_wanted)
                      + " lies a bow that cannot be computed: " + str(error) + ". "
                      + mend(error, "Ask for less change, and check the sections of both limbs.")) from None
