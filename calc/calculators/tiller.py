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
from calc.declaring import (
    RULE,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.drawings.braced import tiller_drawing
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.tiller import TillerCurve, ratio_for, tiller_by_stiffness
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
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
) -> Outcome:
    """Return how far tiller is out and what would bring it in."""
    low, high = _band(hold, own_low, own_high)
    difference = upper - lower
    from_end = None if measured == "fadeout" else from_string_end
    curve = _tiller_curve(family, bow_length, riser_length, brace_height, from_end)
    fix = _fix(curve, difference, low, high, (low + high) / 2, draw_weight)
    take_from = "neither" if fix.change == 0 else "upper" if fix.change > 0 else "lower"
    cost = None if fix.weight is None else draw_weight - fix.weight
    checks = _checks(difference, fix.change, fix.share)
    stopped = STOP in [each.level for each in checks]
    return Outcome(
        headline=_headline(difference, low, high, take_from, fix.share, None if stopped else cost),
        values=(
            ("difference", difference),
            ("target_low", low),
            ("target_high", high),
            ("stiff_limb", _stiff_limb(difference)),
            ("take_from", take_from),
            ("tiller_change", fix.change),
            ("stiffness_change", None if fix.share is None else -fix.share),
            ("weight_cost", cost),
            ("weight_after", fix.weight),
            ("sensitivity", curve.slope_at(0.0) / 100),
        ),
        checks=checks,
        tables=(_aims(curve, difference, low, high, draw_weight),),
        charts=(_chart(curve, difference, take_from, low, high),),
        drawings=(tiller_drawing(amount("length", upper), amount("length", lower),
                                 "neither" if stopped else take_from),),
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
    curve: TillerCurve, difference: float, low: float, high: float, aim: float, draw_weight: float
) -> Fix:
    """Return what brings tiller to an aim; nothing while it is in the band."""
    if low - READING_STEP / 2 <= difference <= high + READING_STEP / 2:
        return Fix(difference, 0.0, 0.0, draw_weight)
    now, then = ratio_for(curve, difference), ratio_for(curve, aim)
    if now is None or then is None:
        return Fix(aim, aim - difference, None, None)
    share = 1 - math.exp(-abs(then - now))
    return Fix(aim, aim - difference, share, draw_weight * math.sqrt(1 - share))


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
    difference: float, low: float, high: float, take_from: str, share: float, cost: float | None
) -> Sentence:
    """Return what to do; cost: in draw weight, None where a check says to stop."""
    words = _words_of(difference)
    amounts = tuple(words.amounts) + (amount("length", low), amount("length", high))
    if take_from == "neither":
        return sentence(words.template + ", inside the target of {} to {}: leave it.", *amounts)
    outside = words.template + ", outside the target of {} to {}. "
    if cost is None:
        return sentence(outside + "Look for a cause first, and sand nothing before it is found.", *amounts)
    return sentence(
        outside + "Take about {} of its stiffness from the " + take_from + " limb; that costs about {} of "
        "draw weight.", *(amounts + (amount("ratio", share), amount("force", cost))))


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


def _aims(curve: TillerCurve, difference: float, low: float, high: float, draw_weight: float) -> Table:
    near, far = (low, high) if difference < low else (high, low)
    lines = []
    for name, aim in (("Near edge of the band", near), ("Middle of the band", (low + high) / 2),
                      ("Far edge of the band", far)):
        fix = _fix(curve, difference, low, high, aim, draw_weight)
        cost = None if fix.weight is None else draw_weight - fix.weight
        lines.append((name, aim, fix.share, cost))
    return Table("aims", "What each aim asks for", (
        Column("aim", "Aim", TEXT), Column("tiller", "Tiller", "length"),
        Column("stiffness", "Stiffness to take", "ratio"), Column("weight", "Weight it costs", "force"),
    ), tuple(lines))


def _chart(curve: TillerCurve, difference: float, take_from: str, low: float, high: float) -> Chart:
    direction = -1 if take_from == "lower" else 1
    now = ratio_for(curve, difference) or 0.0
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
    return Chart(
        "tiller", "Tiller as stiffness comes off the " + limb + " limb",
        Axis("Stiffness taken", "ratio"), Axis("Upper minus lower", "length"),
        (
            Line("Tiller", "line", shares, tillers),
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
    ),
    results=(
        result("difference", "Upper minus lower", "length"),
        result("target_low", "Least of the target", "length"),
        result("target_high", "Most of the target", "length"),
        result("stiff_limb", "Stiffer limb", TEXT, "The one with the smaller distance."),
        result("take_from", "Take material from", TEXT, "The limb to work on to reach the target."),
        result("tiller_change", "Change of tiller wanted", "length", "To the middle of the target."),
        result("stiffness_change", "Change of that limb's stiffness", "ratio", "Negative: to be taken off."),
        result("weight_cost", "Draw weight it costs", "force"),
        result("weight_after", "Draw weight afterwards", "force"),
        result("sensitivity", "Tiller per 1 % of one limb's stiffness", "thickness"),
    ),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "bench-practice", "elastica", "family-shapes"),
    example="An invented 64 in recurve of 53 lb, shot three fingers under, whose upper distance is the "
            "larger by 5/16 in.",
    compute=compute,
)
