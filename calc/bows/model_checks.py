"""What is said of a computed bow: how well it meets the readings, where it works too hard, the glass left."""

from calc.bows.checks import calibration_check, glass_check
from calc.bows.model import Effect, Modelled
from calc.bows.range_tables import by_range
from calc.bows.stacking import Stacking, judgement_check
from calc.mechanics.bow.fitting import BEST, LIMIT, Fit
from calc.mechanics.bow.working import hardest
from calc.mechanics.draw_curve import Curve, stacking_onset
from calc.outcome import OK, WATCH, Check, amount, check, sentence

HINGE = 1.5
"""Strain over the mean of the limb's middle from which a place is pointed out (common practice)."""

STACKING_FACTOR = 1.25

GOOD_MISFIT = 0.03
"""Root mean square misfit over the weight up to which the curve is called well met."""


def model_checks(
    model: Modelled,
    weight: float,
    strains: tuple[tuple[float, ...], tuple[float, ...]],
    pairs: tuple[tuple[float, float], ...],
    curve: Curve,
    effect: Effect | None,
    stacking: Stacking | None,
) -> tuple[Check, ...]:
    """Return all checks of a computed bow, and of a stretch sanded where one was.

    stacking: what readings say of it, None where too few do.
    """
    factors = (model.fit.calibration.upper_factor, model.fit.calibration.lower_factor)
    checks = [calibration_check(factors), _misfit_check(model, weight, pairs)]
    if model.fit.end != BEST:
        checks.append(_scale_check(model.fit))
    if effect is not None:
        checks.append(effect_check(model, effect))
    for name, limb, shape in (("upper", strains[0], model.fit.calibration.state.drawn.upper),
                              ("lower", strains[1], model.fit.calibration.state.drawn.lower)):
        place, ratio = hardest(limb)
        if ratio > HINGE:
            checks.append(check("works-" + name, WATCH, sentence(
                "The " + name + " limb works hardest {} from the fadeout, {} times its middle: take nothing "
                "off there, and look for a thin place or a wrong reading.",
                amount("length", shape.arc_length[place]), amount("number", ratio))))
    if stacking is not None:
        checks.append(judgement_check(stacking.judgement, stacking.rises, stacking.over))
    elif stacking_onset(curve, STACKING_FACTOR) is not None:
        checks.append(check("stacking", WATCH, "The computed curve stacks near the end of the draw. Whether "
                            "the bow does cannot be told without readings at two other draws or more, and "
                            "their error."))
    return tuple(checks)


def effect_check(model: Modelled, effect: Effect) -> Check:
    """Return whether enough glass stays once the stretch is sanded."""
    return by_range(glass_check(model.bow.build, effect.least, effect.left, effect.strokes_since),
                    effect.least, effect.left, effect.ranges)


def _scale_check(fit: Fit) -> Check:
    if fit.end == LIMIT:
        return check("scale", WATCH, sentence(
            "The family's offsets were scaled by {}, which is as far as it goes: the bow is of another "
            "shape. Measure its unstrung shape, and check the readings.", amount("ratio", fit.amount, 0)))
    return check("scale", WATCH, sentence(
        "The family's offsets were scaled by {}. With more change the readings might be met better, but no "
        "such bow can be computed: measure the unstrung shape, and check throat and brace height.",
        amount("ratio", fit.amount, 0)))


def _misfit_check(model: Modelled, weight: float, pairs: tuple[tuple[float, float], ...]) -> Check:
    if not pairs:
        return check("misfit", WATCH, "No readings of weight at other draws were given, so that nothing says "
                     "how well the computed curve meets the bow. Four or more also fit the family's "
                     "shape to it, unless that is straight.")
    worst = max([abs(each) for each in model.fit.calibration.misfits])
    amounts = (amount("force", model.fit.misfit), amount("force", worst))
    if model.fit.misfit <= GOOD_MISFIT * weight:
        return check("misfit", OK, sentence(
            "The computed curve meets the readings to {} on the mean, {} at worst.", *amounts))
    return check("misfit", WATCH, sentence(
        "The computed curve misses the readings by {} on the mean, {} at worst: measure the unstrung shape, "
        "and check the scale and where draw is measured from.", *amounts))
