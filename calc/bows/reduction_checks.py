"""What is said of a plan to bring a bow down: its glass, its reserve, its targets, and the whole job."""

from calc.bows.checks import calibration_check, glass_check
from calc.bows.gone import Past
from calc.bows.range_tables import by_range
from calc.bows.ranges import Ranges
from calc.bows.workpiece import Reserve, Workpiece
from calc.mechanics.bow.reduction import Reduction
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import POUND_FORCE, ROUNDING
from calc.tables import practice

USUAL_DROP = practice.find("weight-drop").high
"""More than this share of the weight asks for a warning (common practice)."""

SHORT = 0.1 * POUND_FORCE
"""A reserve shorter than this is not pointed out."""


def glass_stays(piece: Workpiece, reduction: Reduction, past: Past, ranges: Ranges | None) -> Check:
    """Return whether enough glass stays; never OK where the readings or the least that may stay are stale."""
    back, belly = left = thinnest(piece, reduction)
    found = by_range(glass_check(piece.bow.build, piece.least, left, past.strokes, past.gone), piece.least,
                     left, ranges)
    if found.level != OK or past.floor_known:
        return found
    return check("glass", WATCH, sentence(
        "Glass left at the thinnest: {} on the back and {} on the belly. How much of the glass as the bow "
        "came that is, nobody said: give it, or the least that may stay sinks with every stroke.",
        amount("thickness", back), amount("thickness", belly)))


def reserve_checks(piece: Workpiece, reserve: Reserve, weight_wanted: float) -> list[Check]:
    """Return whether what is kept covers what edges and finish sanding will take."""
    short = reserve.takes - reserve.kept
    if short <= SHORT:
        return []
    return [check("reserve-short", WATCH, sentence(
        "Rounding the edges to {} and finish sanding will take about {}, and {} is kept for them: the bow "
        "would end near {}. Keep more, or round less.", amount("length", piece.finishing.radius),
        amount("force", reserve.takes), amount("force", reserve.kept),
        amount("force", weight_wanted - short)))]


def weight_check(reduction: Reduction, aim: float) -> Check:
    """Return that the weight wanted is out of reach."""
    end = " is as near as it gets. " if reduction.off_tiller else " is as near as it gets with tiller kept. "
    return check("weight-reached", STOP, sentence(
        "The weight cannot come down to {} within the glass that must stay; {}" + end
        + "Do not go on through the glass.",
        amount("force", aim), amount("force", reduction.state.weight)))


def tiller_check(reduction: Reduction, tiller_wanted: float) -> Check:
    """Return that the tiller wanted is out of reach, and whether a lower weight would help."""
    amounts = (amount("length", tiller_wanted), amount("length", reduction.state.tiller))
    if reduction.too_heavy:
        return check("tiller-reached", STOP, sentence(
            "Nor can tiller come to {} within that glass: one limb has no more to give, and the other would "
            "have to gain stiffness. {} is as near as it gets.", *amounts))
    end = ("A lower weight would allow it." if reduction.lower_weight_helps
           else "No lower weight would allow it within the glass that must stay.")
    return check("tiller-reached", STOP, sentence(
        "Tiller cannot come to {} at this weight, since one limb would have to gain stiffness; {} is as near "
        "as it gets. " + end, *amounts))


def thinnest(piece: Workpiece, reduction: Reduction) -> tuple[float, float]:
    """Return the glass left on back and belly at the thinnest place once the faces are finished [m]."""
    build, belly_share, faces = piece.bow.build, piece.sanding.belly_share, piece.finishing.faces
    most = max(reduction.upper, reduction.lower)
    return build.back - most * (1 - belly_share) - faces, build.belly - most * belly_share - faces


def whole_drop(past: Past, weight_wanted: float) -> float:
    """Return what the whole job takes, of the weight as the bow came."""
    return float(1 - weight_wanted / past.came)


def drop_check(past: Past, weight_now: float, weight_wanted: float) -> Check:
    """Return how much the whole job takes beside what is ordinary."""
    drop = whole_drop(past, weight_wanted)
    if past.came > weight_now * (1 + ROUNDING):
        amounts = (amount("ratio", drop), amount("force", past.came), amount("force", weight_wanted),
                   amount("ratio", 1 - weight_now / past.came))
        if drop > USUAL_DROP + ROUNDING:
            return check("drop", WATCH, sentence(
                "The whole job takes {}, from {} as it came to {}; {} has gone already. More than {} is not "
                "ordinary on an old bow: ask whether another bow would serve the owner better.",
                *amounts, amount("ratio", USUAL_DROP, 0)))
        return check("drop", OK, sentence(
            "The whole job takes {}, from {} as it came to {}; {} has gone already. That is ordinary on an "
            "old bow.", *amounts))
    if past.strokes > 0 and not past.told and drop <= USUAL_DROP + ROUNDING:
        return check("drop", WATCH, sentence(
            "From now on the plan takes {}, but strokes have been done before. Give the weight as the bow "
            "came: up to {} in all is ordinary on an old bow.",
            amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))
    if drop > USUAL_DROP + ROUNDING:
        return check("drop", WATCH, sentence(
            "A drop of {} is more than the {} that is ordinary on an old bow: ask whether another bow would "
            "serve the owner better.", amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))
    return check("drop", OK, sentence("A drop of {} is ordinary on an old bow.", amount("ratio", drop)))


def reduction_checks(
    piece: Workpiece,
    reduction: Reduction,
    weight_now: float,
    weight_wanted: float,
    reserve: Reserve,
    past: Past,
    aim: float,
    tiller_wanted: float,
    ranges: Ranges | None,
) -> tuple[Check, ...]:
    """Return all checks of a plan."""
    found = [
        glass_stays(piece, reduction, past, ranges),
        drop_check(past, weight_now, weight_wanted),
        calibration_check(piece.factors),
    ]
    if reduction.too_heavy:
        found.append(weight_check(reduction, aim))
    if reduction.off_tiller:
        found.append(tiller_check(reduction, tiller_wanted))
    found += reserve_checks(piece, reserve, weight_wanted)
    if weight_wanted + reserve.kept > weight_now:
        found.append(check("reserve", WATCH, sentence(
            "The weight to lose, {}, is less than the reserve for edge sanding, {}: take no weight off the "
            "faces, and let the edges bring it down.",
            amount("force", weight_now - weight_wanted), amount("force", reserve.kept))))
    return tuple(found)
