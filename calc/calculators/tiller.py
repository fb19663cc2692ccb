"""Tiller: how far out, which limb is stiff, what to take from it, what that costs."""

from calc.calculators.bow import measures, reading_inputs, tiller_sensitivity
from calc.drawings.braced import tiller_drawing
from calc.fields import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Axis,
    Calculator,
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
    choice,
    group,
    quantity,
    result,
    sentence,
)
from calc.mechanics.lever import weight_share_per_stiffness_lost
from calc.quantities import INCH

BANDS = (("split", INCH / 8, INCH / 4), ("under", 0.0, INCH / 8))
"""Hold, least and most of upper minus lower (common practice)."""

CORRECTABLE = 3 * INCH / 8
"""A tiller error that can be taken out while weight comes down (common practice)."""

READING_STEP = INCH / 32
MOST_STIFFNESS = 0.3
"""Beyond this share of a limb's stiffness a first-order estimate means nothing."""


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
) -> Outcome:
    """Return how far tiller is out and what would bring it in."""
    low, high = _band(hold, own_low, own_high)
    difference = upper - lower
    sensitivity = tiller_sensitivity(measured, from_string_end, brace_height, bow_length, riser_length)
    change = _change_to(difference, low, high, (low + high) / 2)
    share = abs(change) / sensitivity
    take_from = "neither" if change == 0 else "upper" if change > 0 else "lower"
    cost = draw_weight * share * weight_share_per_stiffness_lost()
    return Outcome(
        _headline(difference, low, high, take_from, share, cost),
        (
            ("difference", difference),
            ("target_low", low),
            ("target_high", high),
            ("stiff_limb", _stiff_limb(difference)),
            ("take_from", take_from),
            ("tiller_change", change),
            ("stiffness_change", -share),
            ("weight_cost", cost),
            ("weight_after", draw_weight - cost),
            ("sensitivity", sensitivity / 100),
        ),
        _checks(difference, change, share),
        (_aims(difference, low, high, draw_weight, sensitivity),),
        (_chart(difference, take_from, sensitivity, low, high),),
        (tiller_drawing(amount("length", upper), amount("length", lower), take_from),),
        ASSUMPTIONS,
    )


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


def _change_to(difference: float, low: float, high: float, aim: float) -> float:
    """Return the change of tiller to reach an aim, 0 while it is in the band."""
    if low - READING_STEP / 2 <= difference <= high + READING_STEP / 2:
        return 0.0
    return aim - difference


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
    difference: float, low: float, high: float, take_from: str, share: float, cost: float
) -> Sentence:
    words = _words_of(difference)
    band = (amount("length", low), amount("length", high))
    if take_from == "neither":
        return sentence(words.template + ", inside the target of {} to {}: leave it.",
                        *(tuple(words.amounts) + band))
    end = (", outside the target of {} to {}. Take about {} of its stiffness from the " + take_from
           + " limb; that costs about {} of draw weight.")
    return sentence(words.template + end,
                    *(tuple(words.amounts) + band + (amount("ratio", share), amount("force", cost))))


def _checks(difference: float, change: float, share: float) -> tuple[Check, ...]:
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
    if share > MOST_STIFFNESS:
        found.append(check("first-order", STOP, sentence(
            "An estimate of the first order means nothing beyond {} of a limb's stiffness: do not work "
            "from this figure.", amount("ratio", MOST_STIFFNESS, 0))))
    return tuple(found)


def _aims(difference: float, low: float, high: float, draw_weight: float, sensitivity: float) -> Table:
    near, far = (low, high) if difference < low else (high, low)
    rows = []
    for name, aim in (("Near edge of the band", near), ("Middle of the band", (low + high) / 2),
                      ("Far edge of the band", far)):
        share = abs(_change_to(difference, low, high, aim)) / sensitivity
        rows.append((name, aim, share, draw_weight * share * weight_share_per_stiffness_lost()))
    return Table("aims", "What each aim asks for", (
        Column("aim", "Aim", TEXT), Column("tiller", "Tiller", "length"),
        Column("stiffness", "Stiffness to take", "ratio"), Column("weight", "Weight it costs", "force"),
    ), tuple(rows))


def _chart(difference: float, take_from: str, sensitivity: float, low: float, high: float) -> Chart:
    direction = -1 if take_from == "lower" else 1
    furthest = max(0.05, 1.2 * max(abs(low - difference), abs(high - difference)) / sensitivity)
    shares = [furthest * step / 4 for step in range(5)]
    tillers = [difference + direction * sensitivity * share for share in shares]
    limb = "upper" if direction > 0 else "lower"
    return Chart(
        "tiller", "Tiller as stiffness comes off the " + limb + " limb",
        Axis("Stiffness taken", "ratio"), Axis("Upper minus lower", "length"),
        (
            Line("Tiller", "line", shares, tillers),
            Line("Least of the target", "line", [0.0, furthest], [low, low]),
            Line("Most of the target", "line", [0.0, furthest], [high, high]),
        ),
    )


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "A first-order estimate: two rigid limbs on elastic hinges, a straight string that does not stretch, "
    "limbs alike but for the difference. A recurve's tips and its reflex are not in it.",
    "Stiffness comes off the whole working length of the limb evenly; taking it near the fadeout moves "
    "tiller more, near the tip less.",
    "The target bands are common practice. The aim is the middle of the band; take less than planned, "
    "flex the limbs 20 to 30 short draws, measure again.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Inspect the bow before it is strung, use a stringer, and never dry-fire it. A strung bow holds enough "
    "energy to maim: eye protection on, nobody in line with the limbs.",
    "Glass dust harms lungs and skin: wet sanding or extraction, a fitting respirator, gloves, long sleeves.",
    "Never sand through the glass. If in doubt, stop and ask somebody experienced.",
)

_RANGE = ("4 in", "12 in")

CALCULATOR = Calculator(
    "tiller",
    "Tiller",
    "Says how far tiller is out, which limb is stiff, and what it takes to bring it in.",
    (
        group(
            "The two distances",
            quantity("upper", "Upper tiller distance", "length", "7 3/16 in", "2 in", "16 in", _RANGE,
                     "From the string, square to it, to the belly of the upper limb.",
                     "Bow braced, hanging free, with its own string."),
            quantity("lower", "Lower tiller distance", "length", "7 7/16 in", "2 in", "16 in", _RANGE,
                     "The same on the lower limb, taken in the same way."),
            *reading_inputs(),
        ),
        group(
            "The target",
            choice("hold", "Hold on the string",
                   (("split", "Split finger: upper larger by 1/8 to 1/4 in (3 to 6 mm)"),
                    ("under", "Three fingers under: upper larger by 0 to 1/8 in (0 to 3 mm)"),
                    ("own", "A target of my own"))),
            quantity("own_low", "Least of the target", "length", "1/8 in", "-1 in", "1 in",
                     ("-1/8 in", "1/2 in"), "Upper minus lower; negative if the lower shall be larger.",
                     when=("hold", ("own",))),
            quantity("own_high", "Most of the target", "length", "1/4 in", "-1 in", "1 in",
                     ("-1/8 in", "1/2 in"), "Upper minus lower.", when=("hold", ("own",))),
        ),
        measures(
            quantity("draw_weight", "Draw weight", "force", "50 lb", "5 lb", "150 lb", ("20 lb", "80 lb"),
                     "At the marked draw length, from a checked scale."),
        ),
    ),
    (
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
    CAUTIONS,
    ("bench-practice", "lever-estimate"),
    "An invented 60 in recurve of 50 lb, shot split finger, whose lower distance is the larger by 1/4 in.",
    compute,
)
