"""How far an arrow's match may be out, from how well bow and arrow were read: to first order."""

from calc.bows.arrow_bow import Stroke
from calc.bows.arrow_shot import Arrow, Shot
from calc.bows.reading_errors import TITLE, weight_error
from calc.declaring import RULE, Group, group, quantity
from calc.drawings.causes import causes_drawing
from calc.numerics.normal import NORMAL_95, spread
from calc.outcome import TEXT, WATCH, Amount, Check, Column, Drawing, Table, amount, check, sentence


class Reading:
    """A reading with its standard error, and what one of it does to the spine wanted [N], the shaft's own
    [N], the speed [m/s] and the mass that moves with the arrow [kg].
    """

    def __init__(
        self, name: str, error: Amount, wanted: float = 0.0, spine: float = 0.0, speed: float = 0.0,
        moving: float = 0.0,
    ) -> None:
        self.name = name
        self.error = error
        self.wanted = wanted
        self.spine = spine
        self.speed = speed
        self.moving = moving


class ArrowErrors:
    """One standard error each: of a weight [N], the draw [m], the energy [1], the shaft's spine [1], an
    arrow's mass [kg], a speed read [1] and a moving mass that is stated or foretold [1].
    """

    def __init__(
        self, weight: float, draw: float, energy: float, spine: float, mass: float, speed: float,
        moving: float,
    ) -> None:
        self.weight = weight
        self.draw = draw
        self.energy = energy
        self.spine = spine
        self.mass = mass
        self.speed = speed
        self.moving = moving


class ArrowRanges:
    """Readings, and the standard errors that they make together, as in `Reading`; of the shaft's spine less
    the one wanted too.
    """

    def __init__(self, readings: list[Reading]) -> None:
        self.readings = readings
        self.wanted = spread([each.wanted for each in readings])
        self.spine = spread([each.spine for each in readings])
        self.gap = spread([each.spine - each.wanted for each in readings])
        self.speed = spread([each.speed for each in readings])
        self.moving = spread([each.moving for each in readings])


class Tested:
    """The arrow of a chronograph's reading [kg], and whether the bow was read before the work."""

    def __init__(self, mass: float, before: bool) -> None:
        self.mass = mass
        self.before = before


def arrow_ranges(
    errors: ArrowErrors, stroke: Stroke, shots: tuple[Shot, Shot], arrow: Arrow, spine: float, middle: float,
    moving: float, slope: float | None, tested: Tested | None,
) -> ArrowRanges:
    """Return how far spine, speed and moving mass may be out.

    An energy that is a share too large makes the moving mass of a chronograph's reading too large as well;
    what is left of it in the speed goes with how much heavier the arrow is than the one of the reading.

    Args:
        errors: one standard error each.
        stroke: of the bow after the work.
        shots: from the bow before and after the work.
        arrow: that is shot.
        spine, middle [N]: of the shaft, and in the middle of the range.
        moving [kg]: with the arrow.
        slope [N/m]: where the curve is assumed, else None.
        tested: what a chronograph read, if it did.
    """
    before, after = shots
    peak, length = after.draw_weight, stroke.draws[-1] - stroke.draws[0]
    carried = arrow.mass + moving
    found = []

    def bow(name: str, error: Amount, weight: float, energy: float, then: float) -> None:
        """Add a reading: its share of the weight, of the energy now and of that at the chronograph."""
        gained = 0.0 if tested is None else then * (tested.mass + moving)
        found.append(Reading(name, error, middle * weight, 0.0,
                             after.speed * (energy - gained / carried) / 2, gained))

    by_weight = errors.weight / (peak if slope is not None else after.weight)
    is_before = tested is not None and tested.before
    bow("The bow's weight", amount("force", errors.weight, 2), by_weight, by_weight,
        0.0 if is_before else by_weight)
    if is_before:
        was = errors.weight / (before.draw_weight if slope is not None else before.weight)
        bow("The bow's weight before", amount("force", errors.weight, 2), 0.0, 0.0, was)
    if slope is not None:
        by_draw = slope * errors.draw / peak
        worth = by_draw + errors.draw / length
    else:
        steep = (stroke.forces[-1] - stroke.forces[-2]) / (stroke.draws[-1] - stroke.draws[-2])
        by_draw = steep * errors.draw / peak
        worth = peak * errors.draw / after.energy
    bow("The archer's draw", amount("length", errors.draw), by_draw, worth, worth)
    bow("The energy under the curve", amount("ratio", errors.energy), 0.0, errors.energy, errors.energy)
    found.append(Reading("The shaft's spine", amount("ratio", errors.spine), spine=spine * errors.spine))
    pace = after.speed / carried / 2
    found.append(Reading("The arrow's mass", amount("mass", errors.mass), speed=-pace * errors.mass))
    if tested is None:
        off = moving * errors.moving
        found.append(Reading("What moves with the arrow", amount("ratio", errors.moving, 0),
                             speed=-pace * off, moving=off))
    else:
        off = 2 * errors.speed * (tested.mass + moving)
        found.append(Reading("The speed read", amount("ratio", errors.speed), speed=pace * off, moving=-off))
        found.append(Reading("The mass of the arrow of the reading", amount("mass", errors.mass),
                             speed=pace * errors.mass, moving=-errors.mass))
    return ArrowRanges(found)


# What is shown -------------------------------------------------------------------


def _by_size(ranges: ArrowRanges) -> list[tuple[Reading, float]]:
    """Return readings with the larger of their shares of the ranges of the match and of the speed."""
    shares = []
    for each in ranges.readings:
        of_gap = ((each.spine - each.wanted) / ranges.gap) ** 2 if ranges.gap > 0 else 0.0
        of_speed = (each.speed / ranges.speed) ** 2 if ranges.speed > 0 else 0.0
        shares.append(max(of_gap, of_speed))
    order = sorted([(-share, place) for place, share in enumerate(shares)])
    return [(ranges.readings[place], shares[place]) for _, place in order]


def ranges_table(ranges: ArrowRanges) -> Table:
    """Return what makes the ranges, the most first."""
    return Table("causes", "What makes the ranges: measure the first of these again first", (
        Column("cause", "Reading", TEXT), Column("error", "One standard error", TEXT),
        Column("spine", "Of it in spine", "force"), Column("speed", "Of it in speed", "speed"),
        Column("share", "Share of a range", "ratio"),
    ), tuple([(each.name, each.error, abs(each.spine - each.wanted), abs(each.speed), share)
              for each, share in _by_size(ranges)]))


def ranges_drawing(ranges: ArrowRanges) -> Drawing:
    """Return a bar for what each reading does to the match of shaft and bow."""
    bars = []
    for each, _ in _by_size(ranges):
        gap = abs(each.spine - each.wanted)
        if gap > 0:
            bars.append((each.name, amount("force", gap, 2), gap))
    return causes_drawing(bars, "the match of shaft and bow")


def doubt_checks(low: float, high: float, spine: float, ranges: ArrowRanges) -> tuple[Check, ...]:
    """Return a caution where the readings cannot tell whether the shaft lies in its range [N]."""
    slack = NORMAL_95 * ranges.gap
    nearest = min(abs(spine - low), abs(spine - high))
    if nearest > slack:
        return ()
    inside = low <= spine <= high
    return (check("spine-doubt", WATCH, sentence(
        "Whether this shaft lies " + ("inside" if inside else "outside") + " the range cannot be told from "
        "these readings: it lies {} from the range's edge, and shaft and range together are read to {} "
        "either way. Read first again what stands first in the table of what makes the ranges.",
        amount("force", nearest), amount("force", slack))),)


# What is asked -------------------------------------------------------------------


def how_arrows_are_read() -> Group:
    """Return the group of the errors that a match leans on."""
    return group(
        TITLE,
        weight_error(),
        quantity("draw_error", "Error of the archer's draw", "length", default="1/4 in", low="0 in",
                 high="2 in", usual=("1/16 in", "1/2 in"), help="From shot to shot, and of the reading.",
                 role=RULE),
        quantity("energy_error", "Doubt about the energy", "ratio", default="2 %", low="0 %", high="15 %",
                 usual=("0.5 %", "5 %"), help="What the draw-force curve may have wrong.", role=RULE),
        quantity("spine_error", "Error of the shaft's spine", "ratio", default="2 %", low="0 %", high="25 %",
                 usual=("0.5 %", "5 %"), help="Of a tester, and from side to side of the shaft. Where only "
                 "its wood is known the scatter of that wood counts instead.", role=RULE),
        quantity("mass_error", "Error of an arrow's mass", "mass", default="2 gr", low="0 gr", high="50 gr",
                 usual=("0.2 gr", "10 gr"), help="Of the scale, and from arrow to arrow.", role=RULE),
        quantity("speed_error", "Error of a speed read", "ratio", default="1 %", low="0 %", high="5 %",
                 usual=("0.2 %", "2 %"), help="Of the mean of the shots that were read.",
                 when=("losses", ("chronograph", "chronograph_before")), role=RULE),
        quantity("moving_error", "Doubt about the moving mass", "ratio", default="20 %", low="0 %",
                 high="80 %", usual=("10 %", "40 %"), help="Of what was stated, not read.",
                 when=("losses", ("estimate",)), role=RULE),
        note="One standard error each: two readings in three lie within it.",
    )
