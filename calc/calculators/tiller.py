"""Tiller: how far out, which limb is stiff, what to take from it, what that costs."""

import math
from collections import namedtuple

from calc.bows.cautions import GLASS_DUST
from calc.bows.inputs import measures, reading_inputs
from calc.bows.measured import (
    family_limb,
    in_both,
    require_brace,
    require_reading_place,
)
from calc.bows.reading_errors import give_or_take, how_strokes_are_read, with_range
from calc.declaring import (
    RULE,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.drawings.braced import tiller_drawing
from calc.drawings.causes import causes_drawing
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.tiller import TillerCurve, ratio_for, tiller_by_stiffness
from calc.numerics.normal import NORMAL_95, spread
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Drawing,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH
from calc.tables import practice

_SPLIT = practice.find("tiller-split")
_UNDER = practice.find("tiller-under")

BANDS = (("split", _SPLIT.low, _SPLIT.high), ("under", _UNDER.low, _UNDER.high))
"""Hold, least and most of upper minus lower (common practice)."""

CORRECTABLE = practice.find("tiller-correctable").high
"""A tiller error that can be taken out while weight comes down (common practice)."""

READING_STEP = INCH / 32
MOST_STIFFNESS = 0.3
"""No limb is asked for more than this share of its stiffness."""

CHART_STEPS = 10

MIDDLE_SHARE = 0.42
"""Of the bow's length, from the string's end: further in is the middle of the string."""

Fix = namedtuple("Fix", "aim change share weight")
"""An aim for tiller, the change of tiller to it [m], the share of the working limb's stiffness to take, and
the draw weight afterwards [N]; share and weight None where the model does not reach it."""

Errors = namedtuple("Errors", "share by_tiller by_weight")
"""Standard error of the share to take [1], and what those of tiller and of the weight now do to the draw
weight afterwards [N]; None where nothing is to be taken or it is not known."""


def compute(
    upper: float,
    lower: float,
    measured: str,
    from_string_end: float | None,
    hold: str,
    own_low: float | None,
    own_high: float | None,
    draw_weight: float,
    brace_height: float,
    bow_length: float,
    riser_length: float,
    family: str,
    weight_error: float,
    tiller_error: float,
) -> Outcome:
    """Return how far tiller is out and what would bring it in."""
    low, high = _band(hold, own_low, own_high)
    difference = upper - lower
    from_end = None if measured == "fadeout" else from_string_end
    curve = _tiller_curve(family, bow_length, riser_length, brace_height, from_end)
    now = ratio_for(curve, difference)
    fix = _fix(curve, difference, now, low, high, (low + high) / 2, draw_weight)
    take_from = "neither" if fix.change == 0 else "upper" if fix.change > 0 else "lower"
    cost = None if fix.weight is None else draw_weight - fix.weight
    errors = _errors(curve, fix, now, draw_weight, weight_error, tiller_error)
    checks = (_checks(difference, fix.change, fix.share)
              + _doubts(difference, low, high, fix.change, tiller_error))
    stopped = STOP in [each.level for each in checks]
    return Outcome(
        headline=_headline(difference, low, high, take_from, fix.share, None if stopped else cost, errors),
        values=(
            ("difference", difference),
            ("difference_error", NORMAL_95 * tiller_error),
            ("target_low", low),
            ("target_high", high),
            ("stiff_limb", _stiff_limb(difference)),
            ("take_from", take_from),
            ("tiller_change", fix.change),
            ("stiffness_change", None if fix.share is None else -fix.share),
            ("stiffness_change_error", _half(errors.share)),
            ("weight_cost", cost),
            ("weight_after", fix.weight),
            ("weight_after_error", _half(_after(errors))),
            ("sensitivity", curve.slope_at(0.0) / 100),
        ),
        checks=checks,
        tables=(_aims(curve, difference, now, low, high, draw_weight),),
        charts=(_chart(curve, now or 0.0, take_from, low, high, tiller_error),),
        drawings=(tiller_drawing(amount("length", upper), amount("length", lower),
                                 "neither" if stopped else take_from),) + _causes(errors),
        assumptions=ASSUMPTIONS,
    )


_last_curve: tuple[object, TillerCurve] | None = None


def _tiller_curve(
    family: str, bow_length: float, riser_length: float, brace_height: float, from_end: float | None
) -> TillerCurve:
    """Return tiller against stiffness for a bow of these measures; kept until they change."""
    global _last_curve
    key = (family, bow_length, riser_length, brace_height, from_end)
    if _last_curve is None or _last_curve[0] != key:
        limb = family_limb(family, bow_length, riser_length)
        require_brace(brace_height, limb.length)
        require_reading_place(from_end, Bow(limb, limb), brace_height)
        if from_end is not None and from_end > MIDDLE_SHARE * bow_length:
            raise Refused("from_string_end", "The distances are taken where tiller hardly shows, near the "
                          "middle of the string: measure at the fadeouts.")
        try:
            curve = tiller_by_stiffness(limb, brace_height, from_end)
        except ValueError as error:
            raise Refused("brace_height", "A bow of these measures cannot be braced to "
                          + in_both("length", brace_height) + ": " + str(error)
                          + ". Check brace height, lengths and family.") from None
        _last_curve = (key, curve)
    return _last_curve[1]


def _fix(
    curve: TillerCurve, difference: float, now: float | None, low: float, high: float, aim: float,
    draw_weight: float
) -> Fix:
    """Return what brings tiller to an aim; nothing while it is in the band.

    now: the logarithm of lower over upper stiffness that goes with the difference, None where none does.
    """
    if low - READING_STEP / 2 <= difference <= high + READING_STEP / 2:
        return Fix(difference, 0.0, 0.0, draw_weight)
    then = ratio_for(curve, aim)
    if now is None or then is None:
        return Fix(aim, aim - difference, None, None)
    share = 1 - math.exp(-abs(then - now))
    return Fix(aim, aim - difference, share, draw_weight * math.sqrt(1 - share))


def _errors(
    curve: TillerCurve, fix: Fix, now: float | None, draw_weight: float, weight_error: float,
    tiller_error: float,
) -> Errors:
    """Return how far the answer may be out, to first order."""
    if fix.share is None or fix.change == 0 or now is None:
        return Errors(None, None, None)
    left = 1 - fix.share
    share = left * tiller_error / abs(curve.slope_at(now))
    return Errors(share, draw_weight * share / (2 * math.sqrt(left)), weight_error * math.sqrt(left))


def _after(errors: Errors) -> float | None:
    """Return the standard error of the draw weight afterwards [N]."""
    return None if errors.share is None else spread([errors.by_tiller, errors.by_weight])


def _half(error: float | None) -> float | None:
    return None if error is None else NORMAL_95 * error


def _doubts(difference: float, low: float, high: float, change: float, error: float) -> tuple[Check, ...]:
    """Return that tiller may already lie in the band, before anything is taken."""
    apart = max(low - difference, difference - high)
    if change == 0 or apart >= NORMAL_95 * error:
        return ()
    return (check("doubt", WATCH, sentence(
        "Tiller may already be in the band: it lies {} outside, and readings are out by up to {}. Read both "
        "distances again, twice each, before you take anything.",
        amount("length", apart), amount("length", NORMAL_95 * error))),)


def _causes(errors: Errors) -> tuple[Drawing, ...]:
    """Return what each reading does to the weight afterwards, the most first; nothing where not known."""
    if errors.share is None:
        return ()
    found = [("The tiller now", amount("force", errors.by_tiller, 2), errors.by_tiller),
             ("The weight now", amount("force", errors.by_weight, 2), errors.by_weight)]
    if errors.by_weight > errors.by_tiller:
        found.reverse()
    return (causes_drawing(found),)


def _band(hold: str, own_low: float | None, own_high: float | None) -> tuple[float, float]:
    for name, low, high in BANDS:
        if hold == name:
            return low, high
    if own_low is None or own_high is None:
        raise Refused("own_low", "Give both ends of your own target.")
    if own_low > own_high:
        raise Refused("own_high", "The most of your own target must not be less than its least: "
                      "swap the two, or mend the sign.")
    return own_low, own_high


def _stiff_limb(difference: float) -> str:
    if abs(difference) < READING_STEP / 2:
        return "neither"
    return "lower" if difference > 0 else "upper"


def _words_of(difference: float) -> Sentence:
    if abs(difference) < READING_STEP / 2:
        return sentence("The two distances are equal")
    word = "larger" if difference > 0 else "smaller"
    return sentence("The upper distance is {} " + word + " than the lower", amount("length", abs(difference)))


def _headline(
    difference: float, low: float, high: float, take_from: str, share: float, cost: float | None,
    errors: Errors,
) -> Sentence:
    """Return what to do; cost: in draw weight, None where a check says to stop."""
    words = _words_of(difference)
    amounts = tuple(words.amounts) + (amount("length", low), amount("length", high))
    if take_from == "neither":
        return sentence(words.template + ", inside the target of {} to {}: leave it.", *amounts)
    outside = words.template + ", outside the target of {} to {}. "
    if cost is None:
        return sentence(outside + "Look for a cause first, and sand nothing before it is found.", *amounts)
    take = with_range("ratio", share, errors.share)
    return sentence(
        outside + "Take about " + take.template + " of its stiffness from the " + take_from + " limb; that "
        "costs about {} of draw weight.", *(amounts + take.amounts + (amount("force", cost),)))


def _checks(difference: float, change: float, share: float | None) -> tuple[Check, ...]:
    stiff = _stiff_limb(difference)
    found = []
    if change == 0:
        found.append(check("band", OK, "Tiller is in the target band."))
    elif abs(difference) <= CORRECTABLE + READING_STEP / 2:
        found.append(check("band", WATCH, sentence(
            "Tiller wants {} of change. A difference of up to {} can be taken out while weight comes down "
            "(common practice).", amount("length", abs(change)), amount("length", CORRECTABLE))))
    else:
        found.append(check("band", STOP, sentence(
            "The difference of {} is more than the {} that is usually put right by sanding. Look for a "
            "cause first: lifted glass, a crack, twist, a slipped or uneven string loop, a wrong reading.",
            amount("length", abs(difference)), amount("length", CORRECTABLE))))
    if change != 0 and stiff not in ("neither", "upper" if change > 0 else "lower"):
        found.append(check("which", WATCH, "The " + stiff + " limb has the smaller distance and is the "
                           "stiffer, yet the target asks for more of that difference: material comes off "
                           "the other limb."))
    if share is None or share > MOST_STIFFNESS:
        found.append(check("too-much", STOP, sentence(
            "No limb gives up more than {} of its stiffness for tiller: something else is wrong, or the "
            "readings are.", amount("ratio", MOST_STIFFNESS, 0))))
    return tuple(found)


def _aims(
    curve: TillerCurve, difference: float, now: float | None, low: float, high: float, draw_weight: float
) -> Table:
    near, far = (low, high) if difference < low else (high, low)
    lines = []
    for name, aim in (("Near edge of the band", near), ("Middle of the band", (low + high) / 2),
                      ("Far edge of the band", far)):
        fix = _fix(curve, difference, now, low, high, aim, draw_weight)
        cost = None if fix.weight is None else draw_weight - fix.weight
        lines.append((name, aim, fix.share, cost))
    return Table("aims", "What each aim asks for", (
        Column("aim", "Aim", TEXT), Column("tiller", "Tiller", "length"),
        Column("stiffness", "Stiffness to take", "ratio"), Column("weight", "Weight it costs", "force"),
    ), tuple(lines))


def _chart(
    curve: TillerCurve, now: float, take_from: str, low: float, high: float, tiller_error: float
) -> Chart:
    direction = -1 if take_from == "lower" else 1
    room = (curve.ratios[-1] - now) if direction > 0 else (now - curve.ratios[0])
    furthest = min(room, math.log(1 / (1 - MOST_STIFFNESS)))
    shares = []
    tillers = []
    for step in range(CHART_STEPS + 1):
        ratio = furthest * step / CHART_STEPS
        shares.append(1 - math.exp(-ratio))
        place = now + direction * ratio
        tillers.append(curve.tiller_at(min(max(place, curve.ratios[0]), curve.ratios[-1])))
    limb = "upper" if direction > 0 else "lower"
    half = NORMAL_95 * tiller_error
    return Chart(
        "tiller", "Tiller as stiffness comes off the " + limb + " limb",
        Axis("Stiffness taken", "ratio"), Axis("Upper minus lower", "length"),
        (
            Line("Tiller", "line", shares, tillers),
            Line("Tiller, at least", "line", shares, [each - half for each in tillers]),
            Line("Tiller, at most", "line", shares, [each + half for each in tillers]),
            Line("Least of the target", "line", [0.0, shares[-1]], [low, low]),
            Line("Most of the target", "line", [0.0, shares[-1]], [high, high]),
        ),
    )


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The bow is computed as it bends: a rigid riser, two limbs of the family's unstrung shape, alike but for "
    "their stiffness, a string that does not stretch. Recurves answer about twice as strongly as straight "
    "bows.",
    "Stiffness comes off the whole working length of the limb evenly. Half of the draw weight rests on each "
    "limb.",
    "The ranges hold in 95 of 100 cases where the errors are as said under “How well you read”. They do not "
    "hold the family's shape, which stands in for that of your bow.",
    "The target bands are common practice. The aim is the middle of the band; take less than planned, "
    "flex the limbs 20 to 30 short draws, measure again.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Inspect the bow before it is strung, use a stringer, and never dry-fire it. A strung bow holds enough "
    "energy to maim: eye protection on, nobody in line with the limbs.",
    GLASS_DUST,
    "Never sand through the glass. If in doubt, stop and ask somebody experienced.",
)

_RANGE = ("4 in", "12 in")

CALCULATOR = Calculator(
    id="tiller",
    title="Tiller",
    purpose="Says how far tiller is out, which limb is stiff, and what it takes to bring it in.",
    groups=(
        group(
            "The two distances",
            quantity("upper", "Upper tiller distance", "length", default="7 5/8 in", low="2 in", high="16 in",
                     usual=_RANGE, help="From the string, square to it, to the belly of the upper limb.",
                     measure="Bow braced, hanging free, with its own string."),
            quantity("lower", "Lower tiller distance", "length", default="7 5/16 in", low="2 in",
                     high="16 in", usual=_RANGE, help="The same on the lower limb, taken in the same way."),
            *reading_inputs(),
        ),
        group(
            "The target",
            choice("hold", "Hold on the string",
                   (("split", "Split finger: upper larger by 1/8 to 1/4 in (3 to 6 mm)"),
                    ("under", "Three fingers under: upper larger by 0 to 1/8 in (0 to 3 mm)"),
                    ("own", "A target of my own")), default="under"),
            quantity("own_low", "Least of the target", "length", default="1/8 in", low="-1 in", high="1 in",
                     usual=("-1/8 in", "1/2 in"),
                     help="Upper minus lower; negative if the lower shall be larger.",
                     when=("hold", ("own",)), role=RULE),
            quantity("own_high", "Most of the target", "length", default="1/4 in", low="-1 in", high="1 in",
                     usual=("-1/8 in", "1/2 in"), help="Upper minus lower.", when=("hold", ("own",)),
                     role=RULE),
        ),
        measures(
            quantity("draw_weight", "Draw weight", "force", default="53 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="At the marked draw length, from a checked scale."),
        ),
        how_strokes_are_read(),
    ),
    results=(
        result("difference", "Upper minus lower", "length"),
        give_or_take("difference_error", "length"),
        result("target_low", "Least of the target", "length"),
        result("target_high", "Most of the target", "length"),
        result("stiff_limb", "Stiffer limb", TEXT, "The one with the smaller distance."),
        result("take_from", "Take material from", TEXT, "The limb to work on to reach the target."),
        result("tiller_change", "Change of tiller wanted", "length", "To the middle of the target."),
        result("stiffness_change", "Change of that limb's stiffness", "ratio", "Negative: to be taken off."),
        give_or_take("stiffness_change_error", "ratio"),
        result("weight_cost", "Draw weight it costs", "force"),
        result("weight_after", "Draw weight afterwards", "force"),
        give_or_take("weight_after_error", "force"),
        result("sensitivity", "Tiller per 1 % of one limb's stiffness", "thickness"),
    ),
    acted_on=("take_from", "stiffness_change", "difference", "weight_after"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "bench-practice", "elastica", "family-shapes", "least-squares"),
    example="An invented 64 in recurve of 53 lb, shot three fingers under, whose upper distance is the "
            "larger by 5/16 in.",
    first=("upper", "lower", "hold", "own_low", "own_high"),
    compute=compute,
    takes_off=True,
)
