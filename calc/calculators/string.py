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
                                         "stretch")])
"""What is told of a string that must not be made."""

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
) -> Outcome:
    """Return length, strands and whether the material suits the tips."""
    length, least, most = _lengths(bow_length, pattern, own_shorter)
    stuff = string_materials.find(material)
    strands = strings.strands_for(draw_weight, factor, stuff.strand_strength, fewest)
    suits = _suits(stuff, tips, old)
    return Outcome(
        headline=_headline(stuff, length, strands, draw_weight) if suits
                 else _refusal(length, draw_weight, factor, fewest),
        values=(
            ("length", length),
            ("length_least", least),
            ("length_most", most),
            ("standard_length", strings.standard_string_length(bow_length)),
        ) + (_string_values(stuff, strands, draw_weight) if suits else NO_STRING),
        checks=(_tips_check(stuff, tips, old), _length_check(pattern))
               + ((_strands_check(strands, fewest, factor),) if suits else ()),
        tables=(_materials_table(draw_weight, factor, fewest, tips, old),),
        charts=(_chart(factor, fewest),),
        assumptions=ASSUMPTIONS,
    )


def _string_values(
    stuff: string_materials.Material, strands: int, draw_weight: float
) -> tuple[tuple[str, float | None], ...]:
    strength = strands * stuff.strand_strength
    return (("strands", strands), ("strand_strength", stuff.strand_strength), ("string_strength", strength),
            ("factor_reached", strength / draw_weight), ("stretch", stuff.stretch))


def _headline(stuff: string_materials.Material, length: float, strands: int, draw_weight: float) -> Sentence:
    strength = strands * stuff.strand_strength
    return sentence(
        "Make the string {} long, of {} strands of " + _lower(stuff.name)
        + ". They break at {} when new, {} times the draw weight.",
        amount("length", length), str(strands), amount("force", strength, 0),
        amount("number", strength / draw_weight, 1))


def _refusal(length: float, draw_weight: float, factor: float, fewest: int) -> Sentence:
    polyester = string_materials.find("polyester")
    strands = strings.strands_for(draw_weight, factor, polyester.strand_strength, fewest)
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


def _strands_check(strands: int, fewest: int, factor: float) -> Check:
    if strands <= fewest + 1:
        return check("strands", OK, "The fewest strands that fit the nock decide, not the strength.")
    return check("strands", OK, sentence(
        "The strength decides: {} times the draw weight, rounded up to an even count so that two bundles are "
        "alike.", amount("number", factor, 1)))


def _materials_table(draw_weight: float, factor: float, fewest: int, tips: str, old: bool) -> Table:
    lines = []
    for each in string_materials.MATERIALS:
        strands = strings.strands_for(draw_weight, factor, each.strand_strength, fewest)
        lines.append((each.name, each.strand_strength, each.stretch, strands, strands * each.strand_strength,
                      "yes" if _suits(each, tips, old) else "no"))
    return Table("materials", "Materials for this draw weight and these tips", (
        Column("material", "Material", TEXT), Column("strand", "One strand breaks at", "force"),
        Column("stretch", "Stretch, load not stated", "ratio"), Column("strands", "Strands", COUNT),
        Column("strength", "All of them", "force"), Column("suits", "For these tips", TEXT),
    ), tuple(lines))


def _chart(factor: float, fewest: int) -> Chart:
    lines = []
    for each in string_materials.MATERIALS:
        counts = [float(strings.strands_for(weight, factor, each.strand_strength, fewest))
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
    ),
    results=(
        result("length", "String length", "length", "Over both loops, stretched."),
        result("length_least", "Shortest to expect in use", "length",
               "By what recurve strings are found to be; not told for a difference of your own."),
        result("length_most", "Longest to expect in use", "length"),
        result("standard_length", "By the standard", "length", "Marked bow length less 3 in."),
        result("strands", "Strands", COUNT, "Always even."),
        result("strand_strength", "One strand breaks at", "force"),
        result("string_strength", "All strands together", "force"),
        result("factor_reached", "Strength over draw weight", "number"),
        result("stretch", "Stretch as published", "ratio"),
    ),
    cautions=CAUTIONS,
    sources=("amo-bow-length", "bench-practice", "string-materials-article", "string-shorter-than-marked"),
    example="An invented old 64 in recurve that pulls 42 1/2 lb at its archer's draw, its tips without "
            "reinforcement.",
    compute=compute,
)
