"""What work on the edges of a measured bow costs, and how much of it takes off what is left to lose."""

from calc.bows.measured import MeasuredBow
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.tuning import BowState
from calc.numerics.roots import crossing
from calc.outcome import TEXT, Amount, Axis, Chart, Column, Line, Table, amount
from calc.quantities import INCH

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    StateOf = Callable[[Finishing], BowState]

BROKEN = INCH / 64
FEW_RADII = (INCH / 32, INCH / 16)
RADII = (INCH / 32, 3 * INCH / 64, INCH / 16)
OFF_EACH_SIDE = INCH / 32

NEAR_ENOUGH = 1e-6
"""Of the weight wanted: how near a radius that is looked for has to bring the bow."""

class EdgeCost:
    """What a profile of the edges costs: its name, how far it reaches in on face and side [m], the weight it
    takes [N], by how much it moves tiller [m], and the glass left at the very edge [m]."""

    def __init__(self, name: str, reach: float, weight: float, tiller: float, glass: float) -> None:
        self.name = name
        self.reach = reach
        self.weight = weight
        self.tiller = tiller
        self.glass = glass


def edged(bow: MeasuredBow, factors: tuple[float, float], finishing: Finishing, limbs: str) -> Bow:
    """Return a bow with the edges and sides of both limbs finished, or of one; the faces of both are."""
    papers = Finishing(finishing.radius_before, finishing.radius_before, 0.0, finishing.faces)
    return Bow(bow.limb(0, factors[0], finishing=papers if limbs == "lower" else finishing),
               bow.limb(1, factors[1], finishing=papers if limbs == "upper" else finishing),
               string_stiffness=bow.string_stiffness)


def with_reach(finishing: Finishing, reach: float, flat: bool | None = None) -> Finishing:
    """Return the same work with another radius, or a flat."""
    return Finishing(reach, finishing.radius_before, finishing.width, finishing.faces,
                     finishing.flat if flat is None else flat, finishing.faces_edged, finishing.start,
                     finishing.end)


def with_width(finishing: Finishing, width: float) -> Finishing:
    """Return the same work with the edges left as they are, and so much off the width."""
    return Finishing(finishing.radius_before, finishing.radius_before, width, finishing.faces, False,
                     finishing.faces_edged, finishing.start, finishing.end)


def glass_at_edge(glass: tuple[float, float], finishing: Finishing) -> float:
    """Return the glass left at the very edge of the faces that are edged [m], 0 where the core shows.

    glass: on back and belly before the faces are finished [m].
    """
    return max(0.0, _thinner_glass(glass, finishing) - max(finishing.radius, finishing.radius_before))


def _thinner_glass(glass: tuple[float, float], finishing: Finishing) -> float:
    back, belly = glass[0] - finishing.faces, glass[1] - finishing.faces
    if finishing.faces_edged == "both":
        return min(back, belly)
    return back if finishing.faces_edged == "back" else belly


def usual_profiles(work: Finishing, radii: tuple[float, ...]) -> list[tuple[str, Finishing]]:
    """Return edges broken, rounded to radii [m], and left square with width off each side, by name.

    work: where it is done, and what the edges are now.
    """
    return ([("broken: a flat", with_reach(work, BROKEN, True))]
            + [("rounded", with_reach(work, radius, False)) for radius in radii]
            + [("square, so much off each side", with_width(work, work.width + 2 * OFF_EACH_SIDE))])


def edge_costs(
    state_of: "StateOf", before: BowState, work: Finishing, asked: list[tuple[str, Finishing]],
    glass: tuple[float, float], most: float,
) -> list[EdgeCost]:
    """Return what profiles of edges cost a bow: those it has room for, that take something and leave a bow.

    state_of: reads the bow with work on its edges done. before: read with none of it. work: what the edges
    are now. asked: profiles by name. glass: on back and belly [m]. most: largest radius that there is room
    for [m].
    """
    costs = [EdgeCost("as they are", work.radius_before, 0.0, 0.0,
                      glass_at_edge(glass, with_reach(work, work.radius_before)))]
    for name, each in asked:
        if each.radius <= most and (each.radius > work.radius_before or each.width > work.width):
            try:
                after = state_of(each)
            except ValueError:
                continue
            cut = each.radius > work.radius_before
            costs.append(EdgeCost(name, each.radius if cut else (each.width - work.width) / 2,
                                  before.weight - after.weight, after.tiller - before.tiller,
                                  glass_at_edge(glass, each)))
    return costs


def edge_table(costs: list[EdgeCost]) -> Table:
    """Return profiles of edges with what each costs."""
    return Table("edges", "What edges cost", (
        Column("profile", "Edges", TEXT), Column("reach", "Reaching in", "length"),
        Column("weight", "Takes", "force"), Column("tiller", "Moves tiller by", "length"),
        Column("glass", "Glass at the very edge", "thickness"),
    ), tuple([(each.name, each.reach, _hundredths(each.weight), each.tiller, each.glass) for each in costs]))


def edge_chart(costs: list[EdgeCost], found: float | None, takes: float) -> Chart:
    """Return the weight that rounded edges take against their radius, and the radius that was looked for."""
    points = [(each.reach, each.weight) for each in costs if each.name in ("as they are", "rounded")]
    lines = [Line("rounded", "line", [reach for reach, _ in points], [weight for _, weight in points])]
    if found is not None:
        lines.append(Line("what is left to take", "points", [found], [takes]))
    return Chart("edges", "What edges take, by how far they reach in", Axis("Reaching in", "length"),
                 Axis("Takes", "force"), tuple(lines))


def _hundredths(weight: float) -> Amount:
    return amount("force", weight, 2)


def reach_for(
    state_of: "StateOf", work: Finishing, before: BowState, wanted: float, most: float
) -> float | None:
    """Return the radius, or the reach of a flat, that brings a bow to a weight [m]; None where none does.

    state_of: as for `edge_costs`. before: read with the edges as they are. most: largest to be tried [m].
    """
    def lack(square: float) -> float:
        return state_of(with_reach(work, square**0.5)).weight - wanted

    return _found(lack, work.radius_before**2, most**2, before.weight - wanted, wanted, 0.5)


def width_for(
    state_of: "StateOf", work: Finishing, before: BowState, wanted: float, most: float
) -> float | None:
    """Return the further width, off both sides together, that brings a bow to a weight with its edges as they
    are [m]; None where up to `most` [m] does not."""
    def lack(width: float) -> float:
        return state_of(with_width(work, work.width + width)).weight - wanted

    return _found(lack, 0.0, most, before.weight - wanted, wanted, 1.0)


def _found(
    lack: "Callable[[float], float]", low: float, high: float, at_low: float, wanted: float, power: float
) -> float | None:
    """Return the place where nothing is lacking any more, to a power; None where that lies beyond the end."""
    if high <= low:
        return None
    at_high = lack(high)
    if at_high > 0.0:
        return None
    return float(crossing((low, high), (at_low, at_high), lack, NEAR_ENOUGH * wanted) ** power)
