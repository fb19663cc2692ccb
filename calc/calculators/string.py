"""String: length from the bow's length, strands from strength, material against the tips."""

from calc.declaring import (
    COUNT,
    RULE,
    Calculator,
    choice,
    count,
    group,
    quantity,
    result,
    switch,
)
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
from calc.quantities import INCH, POUND_FORCE
from calc.shop import strings
from calc.tables import string_materials

RECURVE_SHORTER = (3 * INCH, 4 * INCH)
"""Recurve strings are found this much shorter than the marked bow (string-shorter-than-marked)."""

NO_STRING = tuple([(id, None) for id in ("strands", "strand_strength", "string_strength", "factor_reached",
                                         "stretch", "strands_bundle", "cut_length", "twists", "take_up",
                                         "yarn")])
"""What is told of a string that must not be made."""

ENDLESS = "endless"
LOOPS = ((ENDLESS, "Endless, loops served"), ("two", "Laid in two bundles (Flemish twist)"),
         ("three", "Laid in three bundles (Flemish twist)"))
BUNDLES = {ENDLESS: 2, "two": 2, "three": 3}
"""An endless string has two halves: every turn round the posts makes two strands."""

THROAT = 1.5 * INCH
SERVING_END = 6 * INCH
"""Of string served below a loop, and of thread held back at each end of a serving (common practice)."""

CHART_WEIGHTS = tuple([pounds * POUND_FORCE for pounds in range(20, 84, 4)])


def compute(
    bow_length: float,
    pattern: str,
    own_shorter: float | None,
    draw_weight: float,
    material: str,
    factor: float,
    fewest: int,
    tips: str,
    old: bool,
    loops: str,
    loop_allowance: float | None,
    twist_pitch: float,
    string_diameter: float,
    loop_upper: float | None,
    loop_lower: float | None,
    serving_above: float,
    serving_below: float,
    serving_thread: float,
) -> Outcome:
    """Return length, strands and whether the material suits the tips."""
    length, least, most = _lengths(bow_length, pattern, own_shorter)
    stuff = string_materials.find(material)
    bundles = BUNDLES[loops]
    strands = strings.strands_for(draw_weight, factor, stuff.strand_strength, fewest, bundles)
    suits = _suits(stuff, tips, old)
    made = Making(loops, length, strands, loop_allowance or 0.0, twist_pitch, string_diameter)
    return Outcome(
        headline=_headline(stuff, made, draw_weight) if suits
                 else _refusal(length, draw_weight, factor, fewest, bundles),
        values=(
            ("length", length),
            ("length_least", least),
            ("length_most", most),
            ("standard_length", strings.standard_string_length(bow_length)),
        ) + (_string_values(stuff, strands, draw_weight) + _making_values(made) if suits else NO_STRING),
        checks=(_tips_check(stuff, tips, old), _length_check(pattern))
               + ((_strands_check(strands, fewest, factor, bundles),) if suits else ()),
        tables=(_materials_table(draw_weight, factor, fewest, tips, old, bundles),) + ((
            _making_table(stuff, draw_weight, factor, fewest),
            _serving_table(made, (loop_upper or 0.0, loop_lower or 0.0), serving_above + serving_below,
                           serving_thread)) if suits else ()),
        charts=(_chart(factor, fewest, bundles),),
        assumptions=ASSUMPTIONS,
    )


def _string_values(
    stuff: string_materials.Material, strands: int, draw_weight: float
) -> tuple[tuple[str, float | None], ...]:
    strength = strands * stuff.strand_strength
    return (("strands", strands), ("strand_strength", stuff.strand_strength), ("string_strength", strength),
            ("factor_reached", strength / draw_weight), ("stretch", stuff.stretch))


class Making:
    """How the string is made: loops, length [m], strands, allowance at each end [m], pitch of the twist [m],
    diameter [m].
    """

    def __init__(
        self, loops: str, length: float, strands: int, allowance: float, pitch: float, diameter: float
    ) -> None:
        self.loops = loops
        self.length = length
        self.strands = strands
        self.diameter = diameter
        self.bundles = BUNDLES[loops]
        self.twists = length / pitch
        self.take_up = strings.twist_take_up(length, diameter, pitch)
        self.cut = None if loops == ENDLESS else length + self.take_up + 2 * allowance
        self.posts = length + self.take_up
        self.yarn = strands * (self.posts if self.cut is None else self.cut)


def _headline(stuff: string_materials.Material, made: Making, draw_weight: float) -> Sentence:
    strength = made.strands * stuff.strand_strength
    how = ("; lay " + str(made.strands // 2) + " turns round posts {} apart") if made.cut is None else (
        "; cut them {} and lay " + str(made.bundles) + " bundles of " + str(made.strands // made.bundles))
    return sentence(
        "Make the string {} long, of {} strands of " + _lower(stuff.name) + how
        + ". They break at {} when new, {} times the draw weight.",
        amount("length", made.length), str(made.strands),
        amount("length", made.posts if made.cut is None else made.cut), amount("force", strength, 0),
        amount("number", strength / draw_weight, 1))


def _making_values(made: Making) -> tuple[tuple[str, float | None], ...]:
    return (("strands_bundle", made.strands // made.bundles), ("cut_length", made.cut),
            ("twists", made.twists), ("take_up", made.take_up), ("yarn", made.yarn))


def _making_table(
    stuff: string_materials.Material, draw_weight: float, factor: float, fewest: int
) -> Table:
    """Return the strands by the kind of loops."""
    lines = []
    for id, name in LOOPS:
        bundles = BUNDLES[id]
        strands = strings.strands_for(draw_weight, factor, stuff.strand_strength, fewest, bundles)
        lines.append((name, bundles, strands, strands // bundles))
    return Table("making", "Strands by the kind of loops, of " + _lower(stuff.name), (
        Column("loops", "Loops", TEXT), Column("bundles", "Bundles", COUNT),
        Column("strands", "Strands", COUNT), Column("each", "In each bundle", COUNT),
    ), tuple(lines))


def _serving_table(
    made: Making, loops: tuple[float, float], centre: float, thread: float
) -> Table:
    """Return what is served, and the thread that it takes."""
    ends = 2 * SERVING_END
    lines = []
    if made.loops == ENDLESS:
        for name, loop in zip(("Upper loop and its throat", "Lower loop and its throat"), loops):
            served = 2 * loop + THROAT
            lines.append((name, served, strings.serving_thread_length(served, made.diameter, thread) + ends))
    lines.append(("Middle, where the arrow nocks", centre,
                  strings.serving_thread_length(centre, made.diameter, thread) + ends))
    return Table("serving", "Serving", (
        Column("place", "Where", TEXT), Column("served", "Served over", "length"),
        Column("thread", "Thread, its ends with it", "room_length"),
    ), tuple(lines))


def _refusal(length: float, draw_weight: float, factor: float, fewest: int, bundles: int) -> Sentence:
    polyester = string_materials.find("polyester")
    strands = strings.strands_for(draw_weight, factor, polyester.strand_strength, fewest, bundles)
    return sentence(
        "Do not make this string. These tips bear polyester only: {} strands of it, {} long, which break at "
        "{} when new.", str(strands), amount("length", length),
        amount("force", strands * polyester.strand_strength, 0))


def _lower(name: str) -> str:
    return name[0].lower() + name[1:]


def _lengths(
    bow_length: float, pattern: str, own: float | None
) -> tuple[float, float | None, float | None]:
    """Return the length to make, and the shortest and longest that strings in use are found to have.

    A difference of one's own has no range.
    """
    least, most = bow_length - RECURVE_SHORTER[1], bow_length - RECURVE_SHORTER[0]
    if pattern == "standard":
        return strings.standard_string_length(bow_length), least, most
    elif pattern == "recurve":
        return (least + most) / 2, least, most
    elif own is None:
        raise Refused("own_shorter", "Give how much shorter than the bow your string is.")
    else:
        return bow_length - own, None, None


def _suits(material: string_materials.Material, tips: str, old: bool) -> bool:
    return material.plain_tips or (tips == "reinforced" and not old)


def _tips_check(material: string_materials.Material, tips: str, old: bool) -> Check:
    if material.plain_tips:
        return check("tips", OK, "Polyester suits every tip: its stretch is what an old bow was made for.")
    if _suits(material, tips, old):
        return check("tips", WATCH, "Low-stretch strings belong only on tips that their maker reinforced for "
                     "them. If you do not know that for certain, use polyester.")
    reason = "an old bow" if tips == "reinforced" else "tips without reinforcement"
    return check("tips", STOP, "No low-stretch string on " + reason + ": it stops the limbs harder than the "
                 "tips were made for, and can cut through them or tear them off. Polyester only.")


def _length_check(pattern: str) -> Check:
    if pattern == "recurve":
        return check("length", WATCH, sentence(
            "Recurve strings are found {} to {} shorter than the marked bow. Start in the middle, brace with "
            "a stringer, and twist to the brace height the bow was made for.",
            amount("length", RECURVE_SHORTER[0]), amount("length", RECURVE_SHORTER[1])))
    if pattern == "standard":
        return check("length", WATCH, sentence(
            "This is the length of the standard string under its test load, the longest to expect in use: "
            "strings on recurves are found {} to {} shorter than the marked bow. The brace height decides.",
            amount("length", RECURVE_SHORTER[0]), amount("length", RECURVE_SHORTER[1])))
    return check("length", OK, "The brace height decides: brace with a stringer, and twist to it.")


def _strands_check(strands: int, fewest: int, factor: float, bundles: int) -> Check:
    if strands < fewest + bundles:
        return check("strands", OK, "The fewest strands that fit the nock decide, not the strength.")
    return check("strands", OK, sentence(
        "The strength decides: {} times the draw weight, rounded up to a multiple of " + str(bundles)
        + " so that all bundles are alike.", amount("number", factor, 1)))


def _materials_table(
    draw_weight: float, factor: float, fewest: int, tips: str, old: bool, bundles: int
) -> Table:
    lines = []
    for each in string_materials.MATERIALS:
        strands = strings.strands_for(draw_weight, factor, each.strand_strength, fewest, bundles)
        lines.append((each.name, each.strand_strength, each.stretch, strands, strands * each.strand_strength,
                      "yes" if _suits(each, tips, old) else "no"))
    return Table("materials", "Materials for this draw weight and these tips", (
        Column("material", "Material", TEXT), Column("strand", "One strand breaks at", "force"),
        Column("stretch", "Stretch, load not stated", "ratio"), Column("strands", "Strands", COUNT),
        Column("strength", "All of them", "force"), Column("suits", "For these tips", TEXT),
    ), tuple(lines))


def _chart(factor: float, fewest: int, bundles: int) -> Chart:
    lines = []
    for each in string_materials.MATERIALS:
        counts = [float(strings.strands_for(weight, factor, each.strand_strength, fewest, bundles))
                  for weight in CHART_WEIGHTS]
        lines.append(Line(each.name.split(",")[0], "line", list(CHART_WEIGHTS), counts))
    return Chart("strands", "Strands by draw weight, for this factor",
                 Axis("Draw weight", "force"), Axis("Strands", "strokes"), tuple(lines))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Strength is the breaking force of new, straight strands. Knots of the loops, twist, wear and the knock "
    "of the shot are in the factor.",
    "The factor and the fewest strands are common practice, to edit. At brace and in the shot the string "
    "pulls with several times the force that is felt in the fingers.",
    "Length is over both loops, stretched. The marked length of a bow is that of its standard string plus "
    "3 in; an unmarked bow is measured nock to nock along the belly.",
    "Cut length counts the twist by the helix and your allowance at the ends. A first string tells more than "
    "any sum: note what it came to, and change the allowance.",
    "The stretch is as published; at what load is not stated, so nothing is worked out from it.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Old bows, and tips without reinforcement: polyester only. If nobody knows, it is an old bow.",
    "A string that is too long falls off a recurve's tips; one that is too short braces the bow too high and "
    "overloads it. Use a stringer, and look at both loops in both grooves before you let go.",
    "A frayed or cut strand ends a string's life. Loops must fit the grooves and slide on the limb without "
    "force.",
    "Never dry-fire. First full draw with a new string from a distance, with eye protection.",
)

CALCULATOR = Calculator(
    id="string",
    title="String",
    purpose="Says how long a string the bow takes, how many strands, and which material its tips bear.",
    groups=(
        group(
            "The bow",
            quantity("bow_length", "Bow length as marked", "length", default="64 in", low="36 in",
                     high="84 in", usual=("48 in", "72 in"), help="Unmarked: nock to nock along the belly."),
            choice("pattern", "Length by",
                   (("standard", "The standard: 3 in shorter than marked"),
                    ("recurve", "What recurve strings are found to be: 3 to 4 in shorter"),
                    ("own", "A difference of my own")), default="recurve", role=RULE),
            quantity("own_shorter", "Shorter than the bow by", "length", default="3 1/2 in", low="1 in",
                     high="8 in", usual=("2 1/2 in", "5 in"), when=("pattern", ("own",)), role=RULE),
            quantity("draw_weight", "Draw weight", "force", default="42 1/2 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="At the archer's draw."),
            choice("tips", "Tips",
                   (("plain", "Without reinforcement, or not known"),
                    ("reinforced", "Reinforced by the maker for low-stretch strings"))),
            switch("old", "An old bow", default=True, help="Or one of unknown age."),
        ),
        group(
            "The string",
            choice("material", "Material",
                   tuple([(each.id, each.name) for each in string_materials.MATERIALS])),
            quantity("factor", "Strength over draw weight", "number", default="12", low="4", high="30",
                     usual=("8", "20"), help="Common practice; edit it.", role=RULE),
            count("fewest", "Fewest strands", default=10, low=4, high=24,
                  help="For a string thick enough to fit the nock. Common practice.", role=RULE),
        ),
        group(
            "How it is made",
            choice("loops", "Loops", LOOPS, default="two", role=RULE),
            quantity("loop_allowance", "Allowance at each end", "length", default="9 in", low="3 in",
                     high="20 in", usual=("6 in", "12 in"),
                     help="For the loop and the tail that is laid back. Common practice; your jig decides.",
                     when=("loops", ("two", "three")), role=RULE),
            quantity("twist_pitch", "One twist in", "length", default="1 1/2 in", low="1/4 in", high="20 in",
                     usual=("3/4 in", "3 in"),
                     help="Of the finished string. Common practice: 1 to 2 in (25 to 51 mm).", role=RULE),
            quantity("string_diameter", "Thickness of the string", "thickness", default="0.090 in",
                     low="0.020 in", high="0.250 in", usual=("0.060 in", "0.130 in"), help="Before serving.",
                     measure="Caliper, closed lightly over the waxed string.", role=RULE),
            quantity("loop_upper", "Upper loop, inside length", "length", default="1 3/4 in", low="1/4 in",
                     high="6 in", usual=("1 in", "3 in"), help="It slides down the limb.",
                     when=("loops", (ENDLESS,)), role=RULE),
            quantity("loop_lower", "Lower loop, inside length", "length", default="1 1/4 in", low="1/4 in",
                     high="6 in", usual=("3/4 in", "2 in"), when=("loops", (ENDLESS,)), role=RULE),
            quantity("serving_above", "Middle serving, above the nocking point", "length", default="3 in",
                     low="0 in", high="12 in", usual=("2 in", "4 in"), role=RULE),
            quantity("serving_below", "Middle serving, below it", "length", default="5 in", low="0 in",
                     high="12 in", usual=("3 in", "6 in"), role=RULE),
            quantity("serving_thread", "Thickness of the serving thread", "thickness", default="0.021 in",
                     low="0.008 in", high="0.050 in", usual=("0.014 in", "0.030 in"), role=RULE),
        ),
    ),
    results=(
        result("length", "String length", "length", "Over both loops, stretched."),
        result("length_least", "Shortest to expect in use", "length",
               "By what recurve strings are found to be; not told for a difference of your own."),
        result("length_most", "Longest to expect in use", "length"),
        result("standard_length", "By the standard", "length", "Marked bow length less 3 in."),
        result("strands", "Strands", COUNT, "A multiple of the bundles."),
        result("strand_strength", "One strand breaks at", "force"),
        result("string_strength", "All strands together", "force"),
        result("factor_reached", "Strength over draw weight", "number"),
        result("stretch", "Stretch as published", "ratio"),
        result("strands_bundle", "Strands in each bundle", COUNT, "Endless: turns round the posts."),
        result("cut_length", "Cut each strand to", "length", "Loops, tails and twist with it."),
        result("twists", "Twists in the finished string", "number"),
        result("take_up", "Twist shortens it by", "length"),
        result("yarn", "String material in all", "room_length"),
    ),
    acted_on=("length", "strands", "cut_length", "twists"),
    cautions=CAUTIONS,
    sources=("amo-bow-length", "bench-practice", "geometry", "string-materials-article",
             "string-shorter-than-marked"),
    example="An invented old 64 in recurve that pulls 42 1/2 lb at its archer's draw, its tips without "
            "reinforcement.",
    first=("bow_length", "draw_weight", "tips", "old", "material"),
    compute=compute,
)
