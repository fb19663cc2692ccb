"""A measured bow with what is to be done to it, and what its edges and the finish sanding will take."""

from calc.bows.measured import MeasuredBow, in_both
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.thinning import most_removal
from calc.mechanics.bow.tuning import BowState, Setup, read
from calc.outcome import Refused


class Workpiece:
    """A measured bow at work.

    setup: how it is read. sanding: where. factors: each limb's stiffness over the reckoned one. least: the
    glass that has to stay on back and belly [m]. finishing: what edges and finish sanding take after. most:
    what may come off a limb by both [m].
    """

    def __init__(
        self, bow: MeasuredBow, setup: Setup, sanding: Sanding, factors: tuple[float, float],
        least: tuple[float, float], finishing: Finishing,
    ) -> None:
        self.bow = bow
        self.setup = setup
        self.sanding = sanding
        self.factors = factors
        self.least = least
        self.finishing = finishing
        self.most = most_removal(bow.build, sanding.belly_share, least[0] + finishing.faces,
                                 least[1] + finishing.faces)

    def sanded(self, upper: float, lower: float) -> Bow:
        """Return the bow with so much off the thickness of each limb [m]."""
        return self.bow.bow(self.factors, self.sanding, (upper, lower))


class Reserve:
    """Weight left on for edges and finish sanding, and what they will take by the model [N]."""

    def __init__(self, kept: float, takes: float) -> None:
        self.kept = kept
        self.takes = takes


def reserve_of(piece: Workpiece, near: BowState, now: float, wanted: float, given: float | None) -> Reserve:
    """Return what to leave on for edges and finish sanding: the weight given, or else what they will take.

    They are taken off the bow about as thin as the plan leaves it, by the rule of thumb.

    Raises:
        Refused: edges or papers ask for more than the limbs have.
    """
    removal = min(piece.most, max(0.0, cube_rule(piece, wanted / now)))
    build, belly = piece.bow.build, piece.sanding.belly_share
    glass = min(build.back - removal * (1 - belly), build.belly - removal * belly)
    require_room(piece.bow, piece.finishing, glass, removal)
    try:
        before = read(piece.sanded(removal, removal), piece.setup, near)
        after = read(piece.bow.bow(piece.factors, piece.sanding, (removal, removal), piece.finishing),
                     piece.setup, before)
    except ValueError as error:
        raise cannot_be_finished(piece.finishing, error) from None
    takes = max(0.0, wanted * (before.weight / after.weight - 1))
    return Reserve(takes if given is None else given, takes)


def cannot_be_finished(finishing: Finishing, error: ValueError) -> Refused:
    """Return the refusal of a bow that cannot be computed once edges, sides and faces are finished; it names
    the first of them that work is asked for on.
    """
    field, what = "last_paper", "faces are finished, " + in_both("thickness", finishing.faces) + " off each"
    if finishing.radius > finishing.radius_before:
        field, what = "edge_radius", "edges reach in by " + in_both("length", finishing.radius)
    elif finishing.width > 0:
        field, what = "edge_width", "limbs are narrower by " + in_both("length", finishing.width)
    return Refused(field, "The bow cannot be computed once its " + what + ": " + str(error) + ". Ask for "
                   "less, and check the sections of both limbs.")


def require_room(bow: MeasuredBow, finishing: Finishing, glass: float, removal: float = 0.0) -> None:
    """Raise Refused where the limbs are too slight for the finishing asked for.

    glass: on the face that has less of it [m]. removal: off the thickness before [m].
    """
    if finishing.faces >= glass:
        raise Refused("last_paper", "Finish sanding from that paper would take "
                      + in_both("thickness", finishing.faces) + " off each face, and there is glass of "
                      + in_both("thickness", glass) + ". Begin with a finer paper, or mend the scratch "
                      "depth.")
    narrowest = min([each.width for limb in bow.stations for each in limb])
    if finishing.width >= narrowest / 2:
        raise Refused("edge_width", "That takes half of the limb's width or more where it is "
                      + in_both("length", narrowest) + " wide. Take less off the sides.")
    most = most_reach(bow, finishing, removal)
    for field, radius in (("edge_radius", finishing.radius), ("edge_now", finishing.radius_before)):
        if radius > most:
            raise Refused(field, "A radius of " + in_both("length", radius) + " is more than half of the "
                          "limb where it is thinnest or narrowest: at most " + in_both("length", most)
                          + " here. Make it smaller, or check the sections.")


def most_reach(bow: MeasuredBow, finishing: Finishing, removal: float = 0.0) -> float:
    """Return the largest radius that the limbs have room for once sides and faces are finished [m]."""
    widths = [each.width for limb in bow.stations for each in limb]
    thicknesses = [each.thickness for limb in bow.stations for each in limb]
    return float(min(min(widths) - finishing.width, min(thicknesses) - removal - 2 * finishing.faces) / 2)


def cube_rule(piece: Workpiece, share: float) -> float:
    """Return what the rule of thumb (weight goes with thickness cubed) would take all along."""
    thicknesses = [each.thickness for stations in piece.bow.stations for each in stations]
    return float(sum(thicknesses) / len(thicknesses) * (1 - share ** (1 / 3)))
