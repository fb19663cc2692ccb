"""Tracking: where the string lies on each limb, how far the limb is twisted, which side is strong."""


from calc.bows.inputs import (
    THE_BOW,
    family_choice,
    layup_inputs,
    least_glass,
    section_group,
    shape_group,
)
from calc.bows.lengths import bow_lengths
from calc.bows.line import Stretch
from calc.bows.measured import (
    draw_from_pivot,
    glass_to_stay,
    measured_bow,
    require_stretch,
)
from calc.bows.mending import (
    Mending,
    mending,
    mending_checks,
    mending_values,
    mending_words,
    wedge_shown,
)
from calc.bows.remedies import READING, Limits, Seen
from calc.bows.remedy_words import remedy_tables, side_of, stick_checks
from calc.bows.unmeasured import Stood, lacking_checks, stood_in
from calc.declaring import (
    RULE,
    TRIAL,
    Calculator,
    Input,
    choice,
    group,
    lacked,
    quantity,
    result,
)
from calc.drawings.tracking import tracking_drawing
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.tuning import Setup
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Check,
    Column,
    Outcome,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.shop.tracking import groove_angle, lean

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

FAR_OUT = 3.0
"""Beyond this many times what practice accepts, sanding is not the way (common practice)."""


class Reading:
    """What was read off one limb [m]."""

    def __init__(
        self, name: str, offset_riser: float, height_riser: float, offset_tip: float, height_tip: float,
        groove_outer: float, groove_inner: float, groove_length: float
    ) -> None:
        self.name = name
        self.offset_riser = offset_riser
        self.height_riser = height_riser
        self.offset_tip = offset_tip
        self.height_tip = height_tip
        self.groove_outer = groove_outer
        self.groove_inner = groove_inner
        self.groove_length = groove_length


class Lean:
    """How the string leans on one limb at both ends, the twist, the groove's angle, and the strong side."""

    def __init__(
        self, limb: Reading, lean_riser: float, lean_tip: float, twist: float, groove: float, strong: str
    ) -> None:
        self.limb = limb
        self.lean_riser = lean_riser
        self.lean_tip = lean_tip
        self.twist = twist
        self.groove = groove
        self.strong = strong


def compute(
    upper_offset_tip: float,
    upper_height_tip: float,
    upper_offset_riser: float,
    upper_height_riser: float,
    upper_groove_outer: float,
    upper_groove_inner: float,
    lower_offset_tip: float,
    lower_height_tip: float,
    lower_offset_riser: float,
    lower_height_riser: float,
    lower_groove_outer: float,
    lower_groove_inner: float,
    groove_length: float,
    most_offset: float,
    most_twist: float,
    most_groove: float,
    reckon: str,
    weight: float | None,
    draw_length: float | None,
    brace_height: float | None,
    bow_length: float | None,
    riser_length: float | None,
    family: str | None,
    upper_stations: tuple[tuple[float, ...], ...] | None,
    lower_stations: tuple[tuple[float, ...], ...] | None,
    glass_back: float | None,
    glass_belly: float | None,
    core: str | None,
    core_modulus: float | None,
    glass_modulus: float | None,
    glass_shear: float | None,
    profile: tuple[tuple[float, ...], ...] | None,
    throat: float | None,
    string_stiffness: float | None,
    upper_unstrung: float | None,
    upper_sticks: float | None,
    lower_unstrung: float | None,
    lower_sticks: float | None,
    worked_from: float | None,
    worked_to: float | None,
    face: str | None,
    least_glass: float | None,
    glass_new: float | None,
    came_back: float | None,
    came_belly: float | None,
    strokes_since: int | None,
) -> "Generator[float, None, Outcome]":
    """Return twist and strong side of both limbs, whether practice accepts them, and what mends them."""
    limits = (most_offset, most_twist, most_groove)
    upper = _finding(Reading("upper", upper_offset_riser, upper_height_riser, upper_offset_tip,
                             upper_height_tip, upper_groove_outer, upper_groove_inner, groove_length))
    lower = _finding(Reading("lower", lower_offset_riser, lower_height_riser, lower_offset_tip,
                             lower_height_tip, lower_groove_outer, lower_groove_inner, groove_length))
    both = (upper, lower)
    mended: Mending | None = None
    stood: Stood | None = None
    if (reckon == "yes" and bow_length is not None and riser_length is not None and family is not None
            and upper_stations is not None and lower_stations is not None and core is not None
            and glass_modulus is not None and glass_shear is not None and profile is not None
            and string_stiffness is not None and worked_from is not None and worked_to is not None
            and face is not None and least_glass is not None):
        stood = stood_in(
            (bow_length, riser_length), (upper_stations, lower_stations), (glass_back, glass_belly), core,
            family, weight, draw_length, brace_height, (upper_height_riser, lower_height_riser), throat)
        bow = measured_bow(
            bow_length=bow_length, riser_length=riser_length, brace_height=stood.brace_height, throat=throat,
            family=stood.family, profile=profile, glass_back=stood.glass[0], glass_belly=stood.glass[1],
            glass_modulus=glass_modulus, core=stood.core, core_modulus=core_modulus,
            upper_stations=stood.stations[0], lower_stations=stood.stations[1],
            string_stiffness=string_stiffness,
        )
        stretch = _stretch(worked_from, worked_to, face, bow.profile.length)
        draw = draw_from_pivot("draw_length", stood.draw_length, stood.brace_height)
        least = glass_to_stay(bow.build, least_glass, glass_new, (came_back, came_belly))
        mended = yield from mending(
            bow, Setup(stood.brace_height, draw, None), stood.weight, stretch, glass_shear, least,
            (_seen(upper.limb), _seen(lower.limb)), Limits(most_offset, most_twist), stood.variants)
    sticks = (stick_checks(0, _seen(upper.limb), upper_unstrung, upper_sticks)
              + stick_checks(1, _seen(lower.limb), lower_unstrung, lower_sticks))
    section = None if mended is None else wedge_shown(mended)
    return Outcome(
        headline=_headline(both, limits, mended),
        values=(
            ("upper_twist", upper.twist),
            ("lower_twist", lower.twist),
            ("upper_strong", upper.strong),
            ("lower_strong", lower.strong),
            ("upper_lean_riser", upper.lean_riser),
            ("lower_lean_riser", lower.lean_riser),
            ("upper_groove", upper.groove),
            ("lower_groove", lower.groove),
        ) + mending_values(mended),
        checks=_checks(both, limits) + sticks + (
            () if mended is None or stood is None else mending_checks(
                mended, strokes_since or 0, stood.glass_read)) + lacking_checks(reckon == "yes", stood),
        tables=(_table(both),) + (
            () if mended is None or not mended.found else remedy_tables(mended.found)),
        drawings=(tracking_drawing([_drawn(each, index, mended) for index, each in enumerate(both)]),)
                 + (() if section is None else (section,)),
        assumptions=ASSUMPTIONS + (() if mended is None else MODEL_ASSUMPTIONS),
    )


def _seen(limb: Reading) -> Seen:
    return Seen((limb.offset_riser, limb.height_riser), (limb.offset_tip, limb.height_tip))


def _stretch(start: float, end: float, face: str, length: float) -> Stretch:
    """Return the stretch to be worked, feathered over a quarter of it at both ends."""
    require_stretch("worked_to", start, end, length)
    return Stretch(Sanding(start, end, (end - start) / 4, 1.0 if face == "belly" else 0.0), face)


def _drawn(
    each: Lean, index: int, mended: Mending | None
) -> tuple[str, float, float, float, tuple[float, float] | None]:
    """Return what is drawn of a limb: name, offsets, twist, and the offsets after the remedy."""
    limb = each.limb
    after = None if mended is None else mended.after(index)
    return limb.name, limb.offset_riser, limb.offset_tip, each.twist, after


def _finding(limb: Reading) -> Lean:
    at_riser = lean(limb.offset_riser, limb.height_riser)
    at_tip = lean(limb.offset_tip, limb.height_tip)
    twist = at_tip - at_riser
    smallest = lean(READING, limb.height_tip)
    strong = "neither" if abs(twist) < smallest else "left" if twist > 0 else "right"
    return Lean(limb, at_riser, at_tip, twist,
                groove_angle(limb.groove_outer, limb.groove_inner, limb.groove_length), strong)


# What is said ----------------------------------------------------------------


def _outside(each: Lean, limits: tuple[float, float, float]) -> bool:
    offset, twist, _ = limits
    return abs(each.limb.offset_riser) > offset + ROUNDING or abs(each.twist) > twist + ROUNDING


def _far_out(each: Lean, limits: tuple[float, float, float]) -> bool:
    return abs(each.twist) > FAR_OUT * limits[1] + ROUNDING


def _groove_out(each: Lean, limits: tuple[float, float, float]) -> bool:
    return abs(each.groove) > limits[2] + ROUNDING


def _points_at_riser(both: tuple[Lean, ...], limits: tuple[float, float, float]) -> bool:
    first, second = both[0].limb.offset_riser, both[1].limb.offset_riser
    return min(abs(first), abs(second)) > limits[0] + ROUNDING and first * second > 0


def _headline(
    both: tuple[Lean, ...], limits: tuple[float, float, float], mended: Mending | None
) -> Sentence:
    """Say what to do in its order: look for damage, then grooves, then the riser, then the limbs; and what
    the model has as the least.
    """
    told = _told(both, limits)
    least = None if mended is None else mending_words(mended)
    if least is None:
        return told
    return sentence(told.template + " " + least.template, *told.amounts, *least.amounts)


def _told(both: tuple[Lean, ...], limits: tuple[float, float, float]) -> Sentence:
    causes = [_cause(each) for each in both if _far_out(each, limits)]
    grooves = [_groove_step(each) for each in both if _groove_out(each, limits)]
    riser = [sentence("sight along the riser, since at both fadeouts the string lies to the same side")
             ] if _points_at_riser(both, limits) else []
    limbs = [] if causes else [_limb_step(each) for each in both if _outside(each, limits)]
    steps = [part for part in (causes, grooves, riser, limbs) if part]
    if not steps:
        return sentence("The string lies where practice wants it on both limbs ({} and {} of twist): leave "
                        "them.", amount("angle", abs(both[0].twist)), amount("angle", abs(both[1].twist)))
    told = [_joined(part) for part in steps]
    words = [_capital(each.template) for each in told]
    for index in range(1, len(words)):
        words[index] = "Measure again; if the string is still off, " + told[index].template
    return sentence(" ".join([each + "." for each in words]), *[given for each in told
                                                                for given in each.amounts])


def _joined(parts: list[Sentence]) -> Sentence:
    return sentence("; ".join([each.template for each in parts]),
                    *[given for each in parts for given in each.amounts])


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _cause(each: Lean) -> Sentence:
    return sentence("the " + each.limb.name + " limb is twisted by {}, more than sanding should put right: "
                    "look for the cause", amount("angle", abs(each.twist)))


def _groove_step(each: Lean) -> Sentence:
    return sentence("the " + each.limb.name + " groove points {} to the " + side_of(each.groove)
                    + ": put it right first, with a few file strokes in the groove",
                    amount("angle", abs(each.groove)))


def _limb_step(each: Lean) -> Sentence:
    twist = amount("angle", abs(each.twist))
    if each.strong == "neither":
        return sentence("the " + each.limb.name + " limb is twisted by {} only, and the string still lies "
                        "off it: look at the riser and the other limb first", twist)
    return sentence("the " + each.limb.name + " limb is twisted by {}, its " + each.strong
                    + " side is the strong one, and material comes off there", twist)


def _checks(both: tuple[Lean, ...], limits: tuple[float, float, float]) -> tuple[Check, ...]:
    found = []
    for each in both:
        found += _limb_checks(each, limits)
    if _points_at_riser(both, limits):
        found.append(check("riser", WATCH, "At both fadeouts the string lies to the same side. That is as "
                           "much the riser, or how limbs meet it, as the limbs: sight along it before you "
                           "sand."))
    return tuple(found)


def _limb_checks(each: Lean, limits: tuple[float, float, float]) -> list[Check]:
    most_offset, most_twist, most_groove = limits
    name = each.limb.name
    found = []
    if _far_out(each, limits):
        found.append(check(name + "-twist", STOP, sentence(
            "The " + name + " limb is twisted by {}, more than sanding should put right: look for lifted "
            "glass, a parted lamination or a bow that was strung by stepping through.",
            amount("angle", abs(each.twist)))))
    elif abs(each.twist) > most_twist + ROUNDING:
        found.append(check(name + "-twist", WATCH, sentence(
            "The " + name + " limb is twisted by {}; practice accepts {}. Draw it only if edges, fadeouts "
                            "and taps of that limb left no doubt in the inspection and the string lies at no "
                            "edge of a groove; look again after each set of pulls.",
                            amount("angle", abs(each.twist)),
            amount("angle", most_twist))))
    else:
        found.append(check(name + "-twist", OK, sentence(
            "The " + name + " limb's twist of {} is within {}.", amount("angle", abs(each.twist)),
            amount("angle", most_twist))))
    offset = each.limb.offset_riser
    if abs(offset) > most_offset + ROUNDING:
        found.append(check(name + "-offset", WATCH, sentence(
            "At the " + name + " fadeout the string lies {} to the " + side_of(offset)
            + " of the middle; practice accepts {}.", amount("length", abs(offset)),
            amount("length", most_offset))))
    if _groove_out(each, limits):
        found.append(check(name + "-groove", WATCH, sentence(
            "The " + name + " groove points {} to the " + side_of(each.groove)
            + " of the limb's middle line; practice accepts {}. It may be what leads the string aside: a few "
            "file strokes in the groove, not the limb.", amount("angle", abs(each.groove)),
            amount("angle", most_groove))))
    return found


def _table(both: tuple[Lean, ...]) -> Table:
    lines = []
    for each in both:
        lines.append((each.limb.name, each.lean_riser, each.lean_tip, each.twist, each.strong))
    return Table("limbs", "Both limbs; to the right is positive", (
        Column("limb", "Limb", TEXT), Column("riser", "Lean at the fadeout", "angle"),
        Column("tip", "Lean near the tip", "angle"), Column("twist", "Twist", "angle"),
        Column("strong", "Strong side", TEXT),
    ), tuple(lines))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Seen from the belly, upper tip up, by the archer's right and left for both limbs.",
    "Twist is the lean of the limb's face against the string near the tip less that at the fadeout. It holds "
    "where the middle of the limb lies in the plane of the string; a limb bent sideways adds to it.",
    "Offsets are from the middle of the limb's width. An offset of less than 1/64 in near the tip cannot be "
    "told from none.",
    "What practice accepts has no published source: edit it.",
)

MODEL_ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Remedies: each limb is a slender rod of its sections, calibrated to weight and tiller; it bends, bends "
    "sideways and twists without warping, held firm at the fadeout. The string is straight from tip to tip, "
    "and leaves each limb where the bow model says. Small movements: each adds to what was read.",
    "Torsional stiffness is reckoned from the shear modulus of the glass and a shear modulus of the core of "
    "7 % of its modulus (from memory). The ranges take it a quarter less and a quarter more, and each offset "
    "as far out as it can be read.",
    "The string's own loops, a silencer and a limb that creeps are not in it. A groove is taken to move as a "
    "whole; where the string sits above the middle of the limb makes a difference of about 5 %.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "The string moves toward the side that material is taken from, so material comes off the strong side, "
    "the one the string lies away from. Do it in the wide part of the limb, not near the tip, where it "
    "changes the distance from groove to edge.",
    "By the model that holds for the belly and for the edge; a wedge off the back moves the string away from "
    "the edge that it is deepest at. So take it off one face, measure, and go on if the string moved so.",
    "Inspect the bow before it is strung. Use a stringer: stepping through twists limbs. While you sight "
    "along a strung bow, eye protection on, and your face out of the plane of the limbs.",
    "A braced limb is never bent back or heated straight on the strung bow.",
    "Even strokes, a few at a time, flex 20 to 30 short draws, measure weight, tiller and string together. "
    "Glass dust: wet sanding or extraction, respirator, gloves.",
)


def _limb_inputs(name: str, tip: str, riser: str, tiller: str, groove: str) -> tuple[Input, ...]:
    title = name[0].upper() + name[1:]
    return (
        quantity(name + "_offset_tip", title + ": offset near the tip", "length", default=tip, low="-1 in",
                 high="1 in", usual=("-1/4 in", "1/4 in"),
                 help="String from the middle of the limb, where it has just left it; left is negative."),
        quantity(name + "_height_tip", title + ": height there", "length", default="2 1/8 in", low="1/2 in",
                 high="8 in", usual=("1 in", "4 in"), help="From the belly to the string."),
        quantity(name + "_offset_riser", title + ": offset at the fadeout", "length", default=riser,
                 low="-1 1/2 in", high="1 1/2 in", usual=("-3/8 in", "3/8 in"), help="Left is negative."),
        quantity(name + "_height_riser", title + ": height there", "length", default=tiller, low="2 in",
                 high="12 in", usual=("5 in", "9 in"), help="The tiller distance."),
        quantity(name + "_groove_outer", title + ": groove off the middle at the nock", "thickness",
                 default="0 in", low="-1/2 in", high="1/2 in", usual=("-1/16 in", "1/16 in"),
                 help="Half of left edge distance less right."),
        quantity(name + "_groove_inner", title + ": groove off the middle at its inner end",
                 "thickness", default=groove,
                 low="-1/2 in", high="1/2 in", usual=("-1/16 in", "1/16 in"), help="Likewise."),
    )


def _stick_inputs(name: str) -> tuple[Input, ...]:
    title = name[0].upper() + name[1:]
    return (
        quantity(name + "_unstrung", title + ": twist unstrung", "angle", default="", low="-20°", high="20°",
                 usual=("-4°", "4°"), optional=True,
                 help="Between a stick at the fadeout and one near the tip. Positive: its right end is the "
                      "nearer to you."),
        quantity(name + "_sticks", title + ": twist braced", "angle", default="", low="-20°", high="20°",
                 usual=("-4°", "4°"), optional=True, help="The same, strung."),
    )


def _drawn_to() -> tuple[Input, ...]:
    return (
        quantity("weight", "Draw weight", "force", default="53 lb", low="5 lb", high="150 lb",
                 usual=("20 lb", "80 lb"), help="From a checked scale."),
        quantity("draw_length", "Draw at which it is read", "length", default="28 in", low="14 in",
                 high="34 in", usual=("24 in", "31 in"),
                 help="In the marked way: from the pivot point plus 1 3/4 in (44 mm)."),
    )


_RECKONED = ("reckon", ("yes",))

CALCULATOR = Calculator(
    id="tracking",
    title="Tracking",
    purpose="Says how far each limb is twisted under the string, which side is strong, what practice "
            "accepts, and how much of which remedy brings the string back.",
    groups=(
        group("Upper limb, from the belly, tip up",
              *_limb_inputs("upper", "1/64 in", "0 in", "7 5/8 in", "0 in")),
        group("Lower limb, the same right and left",
              *_limb_inputs("lower", "-3/32 in", "-1/32 in", "7 5/16 in", "-0.012 in")),
        group(
            "Grooves, and what is accepted",
            quantity("groove_length", "Length of a groove", "length", default="1 1/2 in", low="1/4 in",
                     high="8 in", usual=("1/2 in", "4 in"),
                     help="Between the two places where it was measured."),
            quantity("most_offset", "Offset accepted at the fadeout", "length", default="1/8 in",
                     low="1/64 in", high="1 in", usual=("1/16 in", "1/4 in"),
                     help="Common practice; edit it.", role=RULE),
            quantity("most_twist", "Twist accepted", "angle", default="2°", low="0.2°", high="20°",
                     usual=("1°", "4°"), help="Common practice; edit it.", role=RULE),
            quantity("most_groove", "Groove out of line accepted", "angle", default="1°", low="0.1°",
                     high="10°", usual=("0.5°", "2°"), help="Common practice; edit it.", role=RULE),
        ),
        group(
            "What would mend it",
            choice("reckon", "Work out remedies by the bow model", (
                ("yes", "Yes, from the bow's measures"), ("no", "No, only what was read")), role=TRIAL),
            quantity("worked_from", "Worked from", "length", default="2 in", low="0 in", high="35 in",
                     help="Where a wedge or an edge comes off: distance from the fadeout.", when=_RECKONED,
                     role=TRIAL),
            quantity("worked_to", "Worked to", "length", default="14 in", low="1 in", high="40 in",
                     help="Distance from the fadeout; the wide part of the limb.", when=_RECKONED,
                     role=TRIAL),
            choice("face", "Face that takes a wedge", (("belly", "Belly"), ("back", "Back")), when=_RECKONED,
                   help="Off the back it works the other way round.", role=TRIAL),
            *least_glass(_RECKONED),
        ),
        group(
            "The bow",
            *lacked(_drawn_to() + bow_lengths() + (family_choice(),), _RECKONED),
            under=THE_BOW,
        ),
        group("The limbs' sections", *lacked(section_group().inputs, _RECKONED), under=THE_BOW),
        group(
            "Lay-up", *lacked(layup_inputs(), _RECKONED),
            quantity("glass_shear", "Shear modulus of the glass", "modulus", default="0.58 Mpsi",
                     low="0.15 Mpsi", high="1.5 Mpsi", usual=("0.43 Mpsi", "0.75 Mpsi"),
                     help="In the plane of the face; 0.43 to 0.73 Mpsi (3 to 5 GPa) is usual of glass whose "
                          "fibres run along.",
                     when=_RECKONED, role=RULE),
            under=THE_BOW,
        ),
        group("Unstrung shape", *lacked(shape_group().inputs, _RECKONED), under=THE_BOW),
        group(
            "Twist by two sticks, if you read it",
            *_stick_inputs("upper"), *_stick_inputs("lower"),
        ),
    ),
    results=(
        result("upper_twist", "Twist of the upper limb", "angle",
               "Fadeout to tip; positive: the string lies to the right of the limb near the tip."),
        result("lower_twist", "Twist of the lower limb", "angle"),
        result("upper_strong", "Strong side, upper", TEXT, "Take material from this side."),
        result("lower_strong", "Strong side, lower", TEXT),
        result("upper_lean_riser", "Lean at the upper fadeout", "angle"),
        result("lower_lean_riser", "Lean at the lower fadeout", "angle"),
        result("upper_groove", "Upper groove out of line", "angle"),
        result("lower_groove", "Lower groove out of line", "angle"),
        result("remedy", "Least remedy by the model", TEXT, "For the limb that is out most."),
        result("remedy_offset", "String at that fadeout then", "thickness"),
        result("remedy_twist", "Twist of that limb then", "angle"),
        result("remedy_weight", "Weight, by that remedy", "force"),
        result("remedy_tiller", "Tiller, by that remedy", "thickness"),
        result("groove_moves", "1/32 in (0.8 mm) of its groove moves the string at the fadeout by",
               "thickness"),
        result("wedge_moves", "A wedge of 0.004 in (0.10 mm) does by", "thickness",
               "Negative: away from the edge that it is deepest at."),
        result("edge_moves", "An edge narrower by 1/16 in (1.6 mm) does by", "thickness"),
        result("torsion_needed", "Torsional stiffness that the limbs need, of that reckoned", "ratio"),
    ),
    acted_on=("upper_strong", "lower_strong", "remedy", "remedy_offset"),
    cautions=CAUTIONS,
    sources=("bench-practice", "beam-theory", "elastica", "family-shapes", "geometry",
             "saint-venant-torsion", "wood-handbook"),
    example="An invented 64 in recurve whose string lies to the left of its lower limb, straight on the "
            "upper.",
    first=("upper_offset_tip", "upper_offset_riser", "lower_offset_tip", "lower_offset_riser"),
    compute=compute,
    takes_off=True,
)
