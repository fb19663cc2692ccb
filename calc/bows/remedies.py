"""What brings a string back to the middle of its limbs: how much of it, and what it costs."""

import math

from calc.bows.line import (
    EDGE,
    GROOVE,
    RECKONED,
    REMEDIES,
    TORSION_KNOWN,
    WEDGE,
    Line,
    Moves,
    Stretch,
    Variant,
)
from calc.bows.measured import MeasuredBow
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.limb import STATIONS, sanded_share
from calc.mechanics.bow.thinning import section_at, section_rigidity
from calc.mechanics.bow.tuning import Calibration, Setup, read
from calc.numerics.normal import spread
from calc.quantities import INCH, ROUNDING

READING = INCH / 64
"""Nobody reads an offset finer: less than this counts as in the middle."""

STEP = {GROOVE: INCH / 64, WEDGE: INCH / 1000, EDGE: INCH / 64}
MOST = {GROOVE: 6, WEDGE: 4, EDGE: 4}
"""Steps of each remedy: a groove by no more than 3/32 in; a limb no more than 0.004 in thinner at one edge,
and no more than 1/16 in narrower on one side (common practice)."""

TRIED = {WEDGE: 4 * INCH / 1000, EDGE: INCH / 16}
"""With which the cost in weight and tiller is worked out; less of it costs that much less."""


class Seen:
    """What was read on one limb [m]: offset and height of the string, at fadeout and tip."""

    def __init__(self, fadeout: tuple[float, float], tip: tuple[float, float]) -> None:
        self.fadeout = fadeout
        self.tip = tip

    def moved(self, fadeout: float, tip: float) -> "Seen":
        """Return the readings after the string has moved [m]."""
        return Seen((self.fadeout[0] + fadeout, self.fadeout[1]), (self.tip[0] + tip, self.tip[1]))

    def twist(self) -> float:
        """Return the lean near the tip less that at the fadeout [deg]."""
        return math.degrees(math.atan2(*self.tip) - math.atan2(*self.fadeout))

    def doubt(self) -> float:
        """Return how far the twist may be out by what cannot be read [deg]."""
        return math.degrees(READING / self.tip[1] + READING / self.fadeout[1])


class Limits:
    """What is accepted: offset [m] at the fadeout and twist [deg]."""

    def __init__(self, offset: float, twist: float) -> None:
        self.offset = offset
        self.twist = twist

    def excess(self, seen: Seen) -> float:
        """Return by which part a limb is out, its offset or its twist, whichever is more; 0 within [1]."""
        return max(0.0, self.most(seen) - 1.0 - ROUNDING)

    def most(self, seen: Seen) -> float:
        """Return offset or twist over what is accepted, whichever is more [1]."""
        return max(abs(seen.fadeout[0]) / self.offset, abs(seen.twist()) / self.twist)


class Range:
    """What is expected, and the least and most of it with what is not known."""

    def __init__(self, middle: float, low: float, high: float) -> None:
        self.middle = middle
        self.low = low
        self.high = high


class Remedy:
    """So much [m] of a remedy on a limb, at its side "left" or "right".

    Where it brings the string, offset [m] and twist [deg]; what it takes of weight [N] and tiller [m]; glass
    left [m] at the edge, None where it takes none; whether the limb is then within what is accepted and the
    other still is, if it was; and what would be read on both limbs after.
    """

    def __init__(
        self, which: int, kind: str, amount: float, side: str, offset: Range, twist: Range,
        cost: tuple[float, float], glass: float | None, within: bool, after: list[Seen]
    ) -> None:
        self.which = which
        self.kind = kind
        self.amount = amount
        self.side = side
        self.offset = offset
        self.twist = twist
        self.weight, self.tiller = cost
        self.glass = glass
        self.within = within
        self.after = after


class Bench:
    """A calibrated bow whose string's line is to be mended."""

    def __init__(
        self, bow: MeasuredBow, setup: Setup, calibration: Calibration, stretch: Stretch, line: Line,
        least: tuple[float, float], variants: list[tuple[Variant, Variant]]
    ) -> None:
        """least: glass that must stay on back and belly [m]. variants: the bow as it may be where it was not
        read, pair by pair.
        """
        self.bow = bow
        self.setup = setup
        self.calibration = calibration
        self.stretch = stretch
        self.glass = bow.build.belly if stretch.face == "belly" else bow.build.back
        self.room = max(0.0, self.glass - (least[1] if stretch.face == "belly" else least[0]))
        self.moves = line.moves(RECKONED) or {}
        pairs = [(Variant(torsion=1.0 - TORSION_KNOWN), Variant(torsion=1.0 + TORSION_KNOWN))] + variants
        self.others = [[line.moves(each) for each in pair] for pair in pairs] if self.moves else []

    def most(self, kind: str) -> int:
        """Return how many steps of a remedy there may be."""
        if kind != WEDGE:
            return MOST[kind]
        return min(MOST[WEDGE], int(self.room / STEP[WEDGE] + ROUNDING))

    def cost(self, which: int, kind: str) -> tuple[float, float]:
        """Return what a metre of a remedy on a limb takes of weight [N/m] and adds to tiller [1]."""
        if kind == GROOVE:
            return 0.0, 0.0
        tried, sanding = TRIED[kind], self.stretch.sanding
        if kind == WEDGE:
            tried = min(tried, 0.5 * self.glass)
        belly_share = 1.0 if self.stretch.face == "belly" else 0.0
        left = []
        for i in range(STATIONS):
            place = self.bow.profile.length * i / (STATIONS - 1)
            section = section_at(self.bow.stations[which], place)
            taken = tried * sanded_share(sanding, place)
            if kind == EDGE:
                left.append(1.0 - taken / section.width)
            else:
                left.append(section_rigidity(section, self.bow.build, 0.5 * taken, belly_share)
                            / section_rigidity(section, self.bow.build, 0.0, belly_share))
        before = self.calibration.bow
        limbs = [before.upper, before.lower]
        limbs[which] = limbs[which].stiffened(left)
        state = read(Bow(limbs[0], limbs[1], before.pivot, before.string_stiffness), self.setup,
                     self.calibration.state)
        return ((state.weight - self.calibration.state.weight) / tried,
                (state.tiller - self.calibration.state.tiller) / tried)


def toward(seen: Seen, limits: Limits) -> float:
    """Return to which side the string has to move over a limb, right 1 or left -1: away from what is out
    most.
    """
    by_offset, by_twist = seen.fadeout[0] / limits.offset, seen.twist() / limits.twist
    off = by_offset if abs(by_offset) > abs(by_twist) else by_twist
    return -1.0 if off > 0.0 else 1.0


def remedies(
    bench: Bench, which: int, seen: tuple[Seen, Seen], limits: Limits
) -> list[Remedy]:
    """Return every amount of every remedy on one limb that moves the string to the side where it belongs.

    Raises:
        ValueError: the bow cannot be computed with what a remedy takes.
    """
    found = []
    for kind in REMEDIES:
        steps = bench.most(kind)
        if not steps:
            continue
        moves = bench.moves[(which, kind)]
        others = [[each[(which, kind)] for each in pair if each is not None] for pair in bench.others]
        sign = toward(seen[which], limits) * (1.0 if moves.fadeout[which] > 0.0 else -1.0)
        weight, tiller = bench.cost(which, kind)
        for step in range(1, steps + 1):
            amount = step * STEP[kind]
            found.append(_remedy(bench, which, kind, sign * amount, moves, others, seen, limits,
                                 (weight * amount, tiller * amount)))
    return found


def _remedy(
    bench: Bench, which: int, kind: str, signed: float, moves: Moves, others: list[list[Moves]],
    seen: tuple[Seen, Seen], limits: Limits, cost: tuple[float, float]
) -> Remedy:
    after = [_moved(seen[i], moves, signed, i) for i in (0, 1)]
    own = after[which]
    may_be = [[_moved(seen[which], each, signed, which) for each in pair] for pair in others]
    excess = [limits.excess(each[1 - which]) for each in (seen, after)]
    within = limits.excess(own) == 0.0 and (excess[0] > 0.0 or excess[1] == 0.0)
    return Remedy(
        which, kind, abs(signed), "right" if signed > 0.0 else "left",
        _range(own.fadeout[0], [[each.fadeout[0] for each in pair] for pair in may_be], READING),
        _range(own.twist(), [[each.twist() for each in pair] for pair in may_be], own.doubt()),
        cost, bench.glass - abs(signed) if kind == WEDGE else None, within, after,
    )


def _moved(seen: Seen, moves: Moves, signed: float, which: int) -> Seen:
    return seen.moved(signed * moves.fadeout[which], signed * moves.tip[which])


def _range(middle: float, pairs: list[list[float]], read: float) -> Range:
    """Return what is expected with what it may be: pairs that do not depend on one another, and reading."""
    less = [max([0.0] + [middle - each for each in pair]) for pair in pairs]
    more = [max([0.0] + [each - middle for each in pair]) for pair in pairs]
    return Range(middle, middle - spread(less) - read, middle + spread(more) + read)


def least_of(found: list[Remedy], kind: str) -> Remedy | None:
    """Return the least of one kind of remedy that is enough, if any is."""
    for each in found:
        if each.kind == kind and each.within:
            return each
    return None
