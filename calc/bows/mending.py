"""A string that lies aside: the limb that is out most, and the least that brings it back."""

from calc.bows.checks import glass_check
from calc.bows.line import EDGE, GROOVE, TORSION_KNOWN, WEDGE, Line, Stretch, Torsion, Variant
from calc.bows.measured import MeasuredBow, calibrated
from calc.bows.remedies import Bench, Limits, Remedy, Seen, least_of, remedies
from calc.bows.remedy_words import NAMES, buckling_check, chosen, remedy_check, remedy_words, side_of
from calc.drawings.wedge import Cut, wedge_drawing
from calc.mechanics.bow.across import axis_tilt, wedge_shift
from calc.mechanics.bow.thinning import layers_of, section_at
from calc.mechanics.bow.tuning import Setup
from calc.outcome import STOP, Check, Drawing, Refused, Sentence, amount, sentence
from calc.quantities import INCH, ROUNDING
from calc.tables.woods import SHEAR_OVER_MODULUS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

SHOWN = ((GROOVE, INCH / 32), (WEDGE, 4 * INCH / 1000), (EDGE, INCH / 16))
"""How much of each remedy is told by what it moves."""


class Mending:
    """What the model has to say.

    torsion_needed [1]: least share of the torsional stiffness. worst: the limb out most. moves [m]: of the
    string at its fadeout, by `SHOWN`. found: remedies for the limbs that are out, or for the worst where none
    is; empty where limbs may turn over. best: for each limb the least that is enough.
    """

    def __init__(
        self, bench: Bench, seen: tuple[Seen, Seen], limits: Limits, torsion_needed: float, worst: int,
        moves: tuple[float, ...], found: list[Remedy], least: tuple[float, float]
    ) -> None:
        self.bench = bench
        self.seen = seen
        self.limits = limits
        self.torsion_needed = torsion_needed
        self.worst = worst
        self.moves = moves
        self.found = found
        self.least = least
        self.best = [self._best(which) for which in (0, 1)]

    def _best(self, which: int) -> Remedy | None:
        if self.limits.excess(self.seen[which]) == 0.0:
            return None
        return chosen([each for each in self.found if each.which == which])

    def after(self, which: int) -> tuple[float, float] | None:
        """Return offsets at fadeout and tip of a limb [m] after the least remedy for the worst limb."""
        best = self.best[self.worst]
        if best is None:
            return None
        return best.after[which].fadeout[0], best.after[which].tip[0]


def mending(
    bow: MeasuredBow, setup: Setup, weight: float, stretch: Stretch, glass_shear: float,
    least: tuple[float, float], seen: tuple[Seen, Seen], limits: Limits,
    variants: list[tuple[Variant, Variant]]
) -> "Generator[float, None, Mending]":
    """Return what the model has to say; least: glass that must stay on back and belly [m]; variants: the bow
    as it may be where it was not read.

    Raises:
        Refused: the bow cannot be computed.
    """
    yield 0.05
    tiller = seen[0].fadeout[1] - seen[1].fadeout[1]
    calibration = calibrated(bow.bow(), setup, weight, "upper_height_riser", tiller)
    yield 0.5
    factors = calibration.upper_factor, calibration.lower_factor
    torsion = Torsion(glass_shear, SHEAR_OVER_MODULUS * bow.build.core_modulus)
    line = Line(bow, calibration.state, factors, torsion, stretch, (seen[0].tip[1], seen[1].tip[1]))
    needed = line.least_torsion()
    yield 0.7
    bench = Bench(bow, setup, calibration, stretch, line, least, variants)
    worst = 0 if limits.most(seen[0]) >= limits.most(seen[1]) else 1
    if needed > 1.0 - TORSION_KNOWN + ROUNDING:
        return Mending(bench, seen, limits, needed, worst, (), [], least)
    moves = tuple([size * bench.moves[(worst, kind)].fadeout[worst] for kind, size in SHOWN])
    out = [which for which in (0, 1) if limits.excess(seen[which]) > 0.0] or [worst]
    found: list[Remedy] = []
    for which in out:
        try:
            found += remedies(bench, which, seen, limits)
        except ValueError as error:
            raise Refused("worked_to", "The bow cannot be computed once that stretch is worked: " + str(error)
                          + ". Choose another stretch.") from None
        yield 0.7 + 0.1 * (which + 1)
    return Mending(bench, seen, limits, needed, worst, moves, found, least)


def wedge_shown(mended: Mending) -> Drawing | None:
    """Return the section with the least wedge that is enough for the limb out most, else the deepest tried.

    None where no wedge is: the limbs may turn over, or the glass gives none.
    """
    wedges = [each for each in mended.found if each.kind == WEDGE and each.which == mended.worst]
    if not wedges:
        return None
    each = least_of(wedges, WEDGE) or wedges[-1]
    bow, stretch = mended.bench.bow, mended.bench.stretch
    section = section_at(bow.stations[each.which], 0.5 * (stretch.sanding.start + stretch.sanding.end))
    layers = layers_of(section, bow.build)
    return wedge_drawing(Cut(NAMES[each.which], each.amount, each.side, stretch.face), section, bow.build,
                         axis_tilt(section.width, layers, each.amount, stretch.face),
                         wedge_shift(section.width, layers, each.amount, stretch.face))


def mending_values(mended: Mending | None) -> tuple[tuple[str, float | str | None], ...]:
    """Return the values of the results that the model gives, None where it gives none."""
    best = None if mended is None else mended.best[mended.worst]
    moves: tuple[float | None, ...] = (None, None, None)
    if mended is not None and mended.moves:
        moves = mended.moves
    return (
        ("remedy", None if mended is None else _named(mended)),
        ("remedy_offset", None if best is None else best.offset.middle),
        ("remedy_twist", None if best is None else best.twist.middle),
        ("remedy_weight", None if best is None else best.weight),
        ("remedy_tiller", None if best is None else best.tiller),
        ("groove_moves", moves[0]),
        ("wedge_moves", moves[1]),
        ("edge_moves", moves[2]),
        ("torsion_needed", None if mended is None else mended.torsion_needed),
    )


def _named(mended: Mending) -> str:
    best = mended.best[mended.worst]
    if best is not None:
        return best.kind + ", " + best.side
    if mended.found and mended.limits.excess(mended.seen[mended.worst]) == 0.0:
        return "none needed"
    return "none found"


def mending_words(mended: Mending) -> Sentence | None:
    """Return what the model adds to the headline, if it does."""
    if not mended.found:
        return sentence("By the model a limb may turn over: do not draw the bow.")
    steps = [remedy_words(each, mended.bench.stretch.face) for each in mended.best if each is not None]
    if not steps:
        return None
    each = mended.best[mended.worst]
    words = "; ".join([step.template for step in steps])
    given = [one for step in steps for one in step.amounts]
    if each is None:
        return sentence("By the model the least is: " + words + ".", *given)
    return sentence("By the model the least is: " + words + "; at the fadeout the string is then {} to the "
                    + side_of(each.offset.middle) + ", with {} of twist.", *given,
                    amount("thickness", abs(each.offset.middle)), amount("angle", abs(each.twist.middle)))


def mending_checks(mended: Mending, strokes_since: int, glass_read: bool) -> tuple[Check, ...]:
    """Return the checks that the model gives; glass_read: whether the glass was, so that it can be judged."""
    standing = buckling_check(mended.torsion_needed)
    if standing.level == STOP:
        return (standing,)
    bench, found = mended.bench, [standing]
    for which in (0, 1):
        found.append(remedy_check(which, mended.seen[which], mended.limits,
                                  [each for each in mended.found if each.which == which], bench))
    if not glass_read:
        return tuple(found)
    left = [bench.bow.build.back, bench.bow.build.belly]
    for each in mended.best:
        if each is not None and each.glass is not None:
            left[1 if bench.stretch.face == "belly" else 0] = each.glass
    found.append(glass_check(bench.bow.build, mended.least, (left[0], left[1]), strokes_since))
    return tuple(found)
