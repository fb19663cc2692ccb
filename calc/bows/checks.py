"""What is said of a bow by every calculator that works one out."""


from calc.mechanics.bow.thinning import Build
from calc.outcome import (
    OK,
    STOP,
    WATCH,
    Check,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING

STRANGE_FACTOR = 1.5
"""Measured over reckoned stiffness from which the measures are doubted."""



def glass_check(
    build: Build,
    least: tuple[float, float],
    left: tuple[float, float],
    strokes_since: int = 0,
    gone: float | None = None,
) -> Check:
    """Return whether enough glass stays: now and left of it at the thinnest, on back and belly [m].

    Never OK on glass that was read before strokes. gone: estimate of what they took off the thickness, which
    is in `build` and `left` already [m].
    """
    found = _glass_check(build, least, left)
    if strokes_since == 0 or found.level == STOP:
        return found
    strokes = amount("strokes", float(strokes_since))
    if gone is None:
        return check("glass", WATCH, sentence(
            "Glass and sections were read before {} strokes, and what those took is not known here: by the "
            "old readings {} would be left on the back and {} on the belly, by now less. Measure both before "
            "you go on; no less than {} and {} may stay.",
            strokes, amount("thickness", left[0]), amount("thickness", left[1]),
            amount("thickness", least[0]), amount("thickness", least[1])))
    return check("glass", WATCH, sentence(
        "Glass and sections were read before {} strokes. By the weight lost since, about {} of thickness has "
        "gone from each limb; the plan would then leave about {} of glass on the back and {} on the belly, "
        "and no less than {} and {} may stay. Measure before you go on.",
        strokes, amount("thickness", gone), amount("thickness", left[0]), amount("thickness", left[1]),
        amount("thickness", least[0]), amount("thickness", least[1])))


def _glass_check(build: Build, least: tuple[float, float], left: tuple[float, float]) -> Check:
    if build.back < least[0] - ROUNDING or build.belly < least[1] - ROUNDING:
        return check("glass", STOP, sentence(
            "The glass is already thinner than may stay: {} on the back and {} on the belly against {} and "
            "{}. Take nothing off it; hand the bow to somebody experienced, or to the wall.",
            amount("thickness", build.back), amount("thickness", build.belly),
            amount("thickness", least[0]), amount("thickness", least[1])))
    amounts = (amount("thickness", left[0]), amount("thickness", left[1]),
               amount("thickness", least[0]), amount("thickness", least[1]))
    if left[0] < least[0] - ROUNDING or left[1] < least[1] - ROUNDING:
        return check("glass", STOP, sentence(
            "Too little glass is left at the thinnest: {} on the back and {} on the belly; no less than {} "
            "and {} may stay. Take less, or share it otherwise between back and belly.", *amounts))
    return check("glass", OK, sentence(
        "Glass left at the thinnest: {} on the back and {} on the belly; no less than {} and {} may stay.",
        *amounts))


def calibration_check(factors: tuple[float, float]) -> Check:
    """Return how well the sections explain the bow: what stands beside every prediction from them."""
    text = "Against the stiffness reckoned from its sections, the upper limb measures {} and the lower {}"
    amounts = (amount("ratio", factors[0]), amount("ratio", factors[1]))
    if min(factors) > 1 / STRANGE_FACTOR and max(factors) < STRANGE_FACTOR:
        return check("calibration", OK, sentence(text + "; the model is set to what was measured.", *amounts))
    return check("calibration", WATCH, sentence(
        text + ": check thickness, glass, shape and the scale before you trust the model.", *amounts))
