"""What is said of work on the edges of a bow: its glass, what it leaves, its tiller."""

from calc.bows.checks import calibration_check
from calc.bows.edging import NEAR_ENOUGH
from calc.bows.measured import MeasuredBow
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.tuning import BowState
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import INCH, ROUNDING
from calc.tables import practice

USUAL_RESERVE = practice.find("edge-reserve").high
"""More than this is not left to the edges (common practice)."""

TILLER_KEPT = INCH / 32
"""By how much edges may move tiller (common practice)."""


class EdgePlan:
    """A bow with its edges before and after.

    now, wanted: weights [N]. work: as asked for, its radius the one to try. before: read with its faces
    finished and its edges as they are. glass: the face with less of it among those edged, once finished [m].
    reach: what brings the bow to the weight wanted [m], None where nothing is to take or nothing takes it.
    after: read with it, else as before. to_take: left to the edges [N]. in_glass: weight that a radius as
    deep as the glass takes [N], None where there is no room for it. tried: read with the radius to try.
    """

    def __init__(
        self, bow: MeasuredBow, factors: tuple[float, float], now: float, wanted: float, work: Finishing,
        before: BowState, glass: float, reach: float | None, after: BowState, in_glass: float | None,
        tried: BowState,
    ) -> None:
        self.bow = bow
        self.factors = factors
        self.now = now
        self.wanted = wanted
        self.work = work
        self.before = before
        self.glass = glass
        self.reach = reach
        self.after = after
        self.to_take = before.weight - wanted
        self.in_glass = in_glass
        self.tried = tried

    def done(self) -> bool:
        """Return whether nothing is left to the edges."""
        return self.to_take <= NEAR_ENOUGH * self.wanted

    def reaches_core(self) -> bool:
        """Return whether the edges that it takes run out through the glass, or none take it."""
        return not self.done() and (self.reach is None or not shows_glass(self.reach, self.glass))


def shows_glass(reach: float, glass: float) -> bool:
    """Return whether glass is left at the very edge; at a reach as deep as the glass there is none."""
    return reach < glass * (1 - ROUNDING)


def edge_checks(plan: EdgePlan, tiller_now: float) -> tuple[Check, ...]:
    """Return all checks of work on the edges."""
    found = [_core_check(plan)]
    if not shows_glass(plan.work.radius, plan.glass):
        found.append(check("tried-core", STOP, sentence(
            "The radius to try, {}, reaches through the glass, {}, into the core: the glass would run out to "
            "nothing and splinter.", amount("length", plan.work.radius), amount("thickness", plan.glass))))
    if plan.done():
        found.append(check("weight", WATCH, sentence(
            "Nothing is left for the edges: with the faces finished the bow comes to {}, and {} is wanted. "
            "Break the sharp corner only, with five strokes of P320 an edge: a sharp edge of glass cuts and "
            "splinters.", amount("force", plan.before.weight), amount("force", plan.wanted))))
    if plan.now - plan.wanted > USUAL_RESERVE * (1 + ROUNDING):
        found.append(check("edge-reserve", WATCH, sentence(
            "{} are to come off; no more than {} is usually left to edges and finish sanding. Take the rest "
            "off the faces first.", amount("force", plan.now - plan.wanted), amount("force", USUAL_RESERVE))))
    moved = plan.after.tiller - tiller_now
    if abs(moved) > TILLER_KEPT * (1 + ROUNDING):
        found.append(check("edge-tiller", WATCH, sentence(
            "Tiller moves by {}, to {}; edges are to leave it within {}. Share them otherwise between the "
            "limbs.", amount("length", moved), amount("length", plan.after.tiller),
            amount("length", TILLER_KEPT))))
    found.append(calibration_check(plan.factors))
    return tuple(found)


def _core_check(plan: EdgePlan) -> Check:
    """Return whether the edges stay within the glass."""
    glass = amount("thickness", plan.glass)
    if not plan.reaches_core():
        reach = plan.reach or plan.work.radius_before
        return check("core", OK, sentence(
            "The edges stay within the glass: {} of {} is left at the very edge.",
            amount("thickness", max(0.0, plan.glass - reach)), glass))
    if plan.reach is None:
        start = sentence("No edges that the limbs have room for take it. ")
    else:
        start = sentence("A reach of {} goes through the glass into the core: the glass would run out to "
                         "nothing there and splinter. ", amount("length", plan.reach))
    if plan.in_glass is None:
        end = sentence("Stay well within the glass, {}, and take the rest off the faces, evenly, or leave it "
                       "on.", glass)
    else:
        end = sentence("As deep as the glass, {}, edges would take {}: stay well within that, and take the "
                       "rest off the faces, evenly, or leave it on.", glass,
                       amount("force", plan.in_glass, 2))
    return check("core", STOP, sentence(start.template + end.template,
                                        *(tuple(start.amounts) + tuple(end.amounts))))
