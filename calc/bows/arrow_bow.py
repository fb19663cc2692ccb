"""The draw-force curve behind the arrow calculator: assumed, read off a scale, or computed."""

from calc.bows.inputs import family_choice
from calc.bows.lengths import BEYOND_PIVOT, bow_and_riser
from calc.bows.measured import family_limb, require_brace
from calc.bows.reading_errors import reading_error
from calc.bows.readings import (
    FATTEST,
    beyond_readings,
    curve_of,
    reading_rows,
    weight_on,
)
from calc.declaring import (
    RULE,
    Group,
    choice,
    group,
    quantity,
)
from calc.mechanics import draw_curve
from calc.mechanics.bow.bow import Bow
from calc.mechanics.draw_curve import Curve, force_at, monotone_slopes
from calc.outcome import (
    WATCH,
    Check,
    Refused,
    Sentence,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

MARKED_DRAW = 28 * INCH
STROKE_STEPS = 40
COMPUTED_DRAWS = 14
FEWEST_READINGS = 3
AGREEMENT = 0.03
"""Share of a stated weight by which a reading at the same draw may differ before it is said."""


class Stroke:
    """Force [N] along the draw [m], at equal steps from brace to the archer's full draw."""

    def __init__(self, draws: tuple[float, ...], forces: tuple[float, ...]) -> None:
        self.draws = draws
        self.forces = forces


def full_stroke(draw_length: float, brace_height: float) -> tuple[float, ...]:
    """Return the draws of a stroke, stated in the marked way [m]."""
    start = brace_height + BEYOND_PIVOT
    return tuple([start + (draw_length - start) * step / STROKE_STEPS for step in range(STROKE_STEPS)]
                 + [draw_length])


def scaled(stroke: Stroke, factor: float) -> Stroke:
    """Return the same stroke with all forces larger by a factor."""
    return Stroke(stroke.draws, tuple([force * factor for force in stroke.forces]))


# Assumed ---------------------------------------------------------------------


def assumed_stroke(
    draw_length: float, brace_height: float, weight: float, slope: float, fullness: float
) -> Stroke:
    """Return the stroke of a stated fullness, its peak on a straight line from the weight at 28 in."""
    draws = full_stroke(draw_length, brace_height)
    peak = _on_the_slope(draw_length, weight, slope)
    _, forces = draw_curve.assumed_draw_curve(peak, draws[-1] - draws[0], fullness, STROKE_STEPS)
    return Stroke(draws, forces)


def _on_the_slope(draw_length: float, weight: float, slope: float) -> float:
    try:
        return draw_curve.draw_weight_at(draw_length, weight, MARKED_DRAW, slope)
    except ValueError:
        raise Refused("slope", "With this slope the bow would pull nothing at the archer's draw. Measure the "
                      "weight at two draws: the slope is what it differs by, over what they differ by."
                      ) from None


# Computed --------------------------------------------------------------------


def computed_stroke(
    draw_length: float,
    brace_height: float,
    weight: float,
    family: str,
    bow_length: float,
    riser_length: float,
) -> Stroke:
    """Return the stroke of a bow of these measures that has the weight at 28 in."""
    reach = max(MARKED_DRAW, draw_length)
    key = (family, bow_length, riser_length, brace_height, reach)
    curve = _kept("computed", key, lambda: _computed_curve(family, bow_length, riser_length, brace_height,
                                                           reach))
    factor = weight / force_at(curve, MARKED_DRAW)
    draws = full_stroke(draw_length, brace_height)
    return Stroke(draws, tuple([force_at(curve, draw) * factor for draw in draws]))


def _computed_curve(
    family: str, bow_length: float, riser_length: float, brace_height: float, reach: float
) -> Curve:
    """Return the draw curve of a family bow, its force in no unit: it is proportional to the stiffness."""
    limb = family_limb(family, bow_length, riser_length)
    require_brace(brace_height, limb.length)
    try:
        draws, forces = _drawn(Bow(limb, limb), brace_height, reach)
    except ValueError as error:
        raise Refused("curve", "A bow of this family, these lengths and this brace height cannot be "
                      "computed: " + str(error) + ". Check them, or choose another way to the curve."
                      ) from None
    return Curve(draws, forces, monotone_slopes(draws, forces))


def _drawn(bow: Bow, brace_height: float, reach: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return draws, stated in the marked way, and the forces at them from brace to the furthest."""
    bow.brace(brace_height)
    span = reach - BEYOND_PIVOT - brace_height
    draws = [brace_height + BEYOND_PIVOT]
    forces = [0.0]
    for drawn in bow.curve_steps([brace_height + span * step / COMPUTED_DRAWS
                                  for step in range(1, COMPUTED_DRAWS + 1)]):
        draws.append(drawn.distance + BEYOND_PIVOT)
        forces.append(drawn.force)
    draws[-1] = reach
    return tuple(draws), tuple(forces)


# Read ------------------------------------------------------------------------


def read_strokes(
    old_readings: tuple[tuple[float, float], ...],
    new_readings: tuple[tuple[float, float], ...],
    old_weight: float,
    new_weight: float,
    draw_length: float,
    brace_height: float,
    error: float,
) -> tuple[Stroke, Stroke, tuple[Check, ...]]:
    """Return the strokes before and after the work, and what is doubtful in the readings.

    A stroke without readings is the other one in the ratio of the weights.
    """
    old, old_doubts = _read_stroke("old_readings", "before", old_readings, old_weight, draw_length,
                                   brace_height, error)
    new, new_doubts = _read_stroke("readings", "after", new_readings, new_weight, draw_length, brace_height,
                                   error)
    doubts = old_doubts + new_doubts
    if old is not None and new is not None:
        return old, new, doubts
    if new is not None:
        return scaled(new, old_weight / new_weight), new, doubts
    if old is not None:
        return old, scaled(old, new_weight / old_weight), doubts
    raise Refused("readings", "Give readings of weight at draw, from after the work or from before it, or "
                  "choose another way to the curve.")


def _read_stroke(
    field: str,
    when: str,
    readings: tuple[tuple[float, float], ...],
    weight: float,
    draw_length: float,
    brace_height: float,
    error: float,
) -> tuple[Stroke | None, tuple[Check, ...]]:
    """Return the stroke along the curve through readings, if there are any, and what is doubtful in them."""
    if not readings:
        return None, ()
    if len(readings) < FEWEST_READINGS:
        raise Refused(field, "A curve needs three readings or more: add rows, or clear the table.")
    curve = _kept(field, (readings, brace_height, error),
                  lambda: curve_of(field, readings, brace_height + BEYOND_PIVOT, error))
    beyond = beyond_readings("draw_length", curve.draws[0], curve.draws[-1], draw_length)
    draws = full_stroke(draw_length, brace_height)
    forces = tuple([weight_on(curve, draw) for draw in draws])
    if not forces[-1] > 0:
        raise Refused(field, "By these readings the bow pulls nothing at the archer's draw: check the draws "
                      "and the scale.")
    return Stroke(draws, forces), _doubts(when, curve, beyond, weight)


def _doubts(when: str, curve: Curve, beyond: float, weight: float) -> tuple[Check, ...]:
    """Return what is doubtful in the readings from before or after the work."""
    found = []
    if curve.draws[0] < MARKED_DRAW <= curve.draws[-1]:
        read = force_at(curve, MARKED_DRAW)
        if abs(read - weight) > AGREEMENT * weight:
            found.append(check("stated-" + when, WATCH, sentence(
                "The readings " + when + " the work give {} at {}, where {} was stated: check which is "
                "right.", amount("force", read), amount("length", MARKED_DRAW), amount("force", weight))))
    if beyond > 0:
        found.append(check("beyond-" + when, WATCH, sentence(
            "This draw lies {} beyond the last reading " + when + " the work, on a straight line from it: a "
            "stacking bow pulls more. Never draw a bow further than it has been proved for.",
            amount("length", beyond))))
    return tuple(found)


# What is kept ----------------------------------------------------------------

_curves: dict[str, tuple[object, Curve]] = {}


def _kept(name: str, key: object, make: "Callable[[], Curve]") -> Curve:
    """Return the curve last made under a name, made anew where its key has changed."""
    if name not in _curves or _curves[name][0] != key:
        _curves[name] = (key, make())
    return _curves[name][1]


# What is said ----------------------------------------------------------------


def fullness_checks(fullness: float) -> tuple[Check, ...]:
    """Return a caution where a curve is fuller than any of these bows."""
    if fullness <= FATTEST:
        return ()
    return (check("fullness", WATCH, "The curve is fuller than any recurve or longbow: check the readings, "
                  "the brace height and where draw is measured from."),)


_SCALED = (
    "The bow before and the bow after are taken to have one curve, all forces in the ratio of the two "
    "weights, as when both limbs lose the same share of stiffness everywhere; and one mass that moves with "
    "the arrow."
)


def curve_assumptions(source: str, both_read: bool) -> tuple[Sentence | str, ...]:
    """Return what a source of the curve assumes."""
    if source == "assumed":
        return (
            sentence("The draw-force curve is a stand-in: a stated fullness, and near {} a straight slope.",
                     amount("length", MARKED_DRAW)),
            _SCALED,
        )
    elif source == "computed":
        return (
            sentence("The draw-force curve is computed for a bow of this family with your lengths, an "
                     "invented taper of its limbs and a string that does not stretch, and brought to your "
                     "weight at {}. Your own limbs may be fuller or stack sooner: readings are better.",
                     amount("length", MARKED_DRAW)),
            _SCALED,
        )
    elif source == "read":
        taken = ("Weight, energy and time come from your readings, taken while drawing slowly and smoothed "
                 "no further than the scale's error. The weight is nothing at brace.")
        return (taken, "One mass moves with the arrow before and after.") if both_read else (taken, _SCALED)
    else:
        raise ValueError("a curve must be assumed, computed or read, got " + source)


def standing_of_weight(source: str, after_read: bool) -> str:
    """Return where the weight at the archer's draw, after the work, comes from."""
    if source == "assumed":
        return "by the assumed slope"
    elif source == "computed":
        return "by the computed curve"
    elif source == "read":
        return "by your readings" if after_read else "by readings before the work, scaled"
    else:
        raise ValueError("a curve must be assumed, computed or read, got " + source)


# What is asked ---------------------------------------------------------------


_ASSUMED = ("curve", ("assumed",))
_READ = ("curve", ("read",))
_COMPUTED = ("curve", ("computed",))


def curve_group() -> Group:
    """Return the group of inputs that say where the draw-force curve comes from."""
    bow, riser = bow_and_riser(_COMPUTED)
    return group(
        "The draw-force curve",
        choice("curve", "Where it comes from", (
            ("assumed", "Assumed, by its fullness"),
            ("read", "My readings of weight at draw"),
            ("computed", "Computed for a bow like this"),
        ), help="It gives the energy, the weight at this draw and the time on the string.", role=RULE),
        quantity("slope", "Weight gained per draw", "force_per_length", default="2.4 lb/in", low="0.5 lb/in",
                 high="8 lb/in", usual=("1.5 lb/in", "3.5 lb/in"),
                 help="For each further inch or millimetre near 28 in (711 mm), after the work.",
                 when=_ASSUMED, role=RULE),
        quantity("fullness", "Fullness of the draw-force curve", "ratio", default="57 %", low="40 %",
                 high="66 %", usual=("48 %", "61 %"),
                 help="Stored energy over weight times stroke: 50 % for a straight line, 58 to 60 % on four "
                      "measured recurves.", when=_ASSUMED, role=RULE),
        reading_rows("readings", "Readings after the work", "", 0,
                     "In order of draw, stated in the marked way. Empty if there are none yet: those from "
                     "before are then scaled.", _READ),
        reading_rows("old_readings", "Readings before the work", "", 0,
                     "Empty if none were taken: those from after are then scaled.", _READ),
        reading_error(_READ),
        bow,
        riser,
        family_choice(_COMPUTED),
    )
