"""Grip: what a slimmed throat or a hole near it leaves, as stress at full draw against the wood's strength.

A screen, not a certificate: static bending of sound, straight-grained wood.
"""

import math

from calc.bows.grip_sections import (
    Hole,
    Load,
    Strength,
    pull_of,
    scaled,
    stations_of_grip,
    strength_at,
    strength_at_hole,
    weakest,
)
from calc.bows.lengths import bow_lengths
from calc.declaring import (
    RULE,
    Calculator,
    Input,
    choice,
    group,
    names_of,
    quantity,
    result,
    rows,
)
from calc.drawings.grip import grip_drawing
from calc.drawings.template import template_svg
from calc.mechanics import riser, sections
from calc.outcome import (
    OK,
    STOP,
    SVG,
    TEXT,
    WATCH,
    Check,
    Column,
    File,
    Outcome,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH, ROUNDING, show
from calc.tables import woods

RULE_STEP = INCH / 32

HANDLE_OVER_HAND = 0.197
"""Diameter of the handle that suits a hand, over the hand's length (handle-over-hand)."""

NEAR_HAND = 0.15
"""How far a grip's girth may be from that before it is worth saying (common practice)."""

MUCH_LESS = 0.75
"""A margin that falls below this share of what it was is worth saying."""


class Margins:
    """Strength over stress: before the work at the weight the bow has lived with and at the weight of today
    or to come, and after the work at the latter."""

    def __init__(self, lived: float, before: float, after: float) -> None:
        self.lived = lived
        self.before = before
        self.after = after


def compute(
    draw_weight: float,
    lived_weight: float | None,
    draw_length: float,
    between: float | None,
    brace_height: float,
    bow_length: float,
    riser_length: float,
    wood: str,
    own_strength: float | None,
    factor: float,
    shape: str,
    before: tuple[tuple[float, float, float], ...],
    after: tuple[tuple[float, float], ...],
    hole: str,
    hole_diameter: float | None,
    hole_height: float | None,
    hole_from_back: float | None,
    hand_length: float | None,
) -> Outcome:
    """Return stress and margin of every section before and after, each at its own draw weight."""
    strength = _strength(wood, own_strength)
    pull = pull_of(draw_weight, draw_length, between, brace_height, bow_length, riser_length)
    lived = pull if lived_weight is None else scaled(pull, lived_weight / draw_weight)
    places = stations_of_grip(before, after)
    drilled = None if hole == "none" else Hole(hole, hole_diameter, hole_height, hole_from_back)
    found = [strength_at("section " + str(index + 1), place, shape, lived, pull, strength / factor)
             for index, place in enumerate(places)]
    if drilled is not None:
        found.append(strength_at_hole(places, drilled, shape, lived, pull))
    worst = weakest(found)
    had, has = strength / max([each.before for each in found]), strength / worst.after
    margins = Margins(had, had * lived.force / pull.force, has)
    plain = weakest([each for each in found if each.hole is None])
    girth = _girth(shape, plain.size.after.width, plain.size.after.depth)
    suits = None if hand_length is None else math.pi * HANDLE_OVER_HAND * hand_length
    return Outcome(
        headline=_headline(worst, plain, margins, lived, pull, factor),
        values=(
            ("margin_after", margins.after),
            ("margin_before", margins.lived),
            ("weakest", worst.name),
            ("stress_after", worst.after),
            ("stress_before", max([each.before for each in found])),
            ("strength", strength),
            ("stress_allowed", strength / factor),
            ("least_depth", plain.least),
            ("leave_depth", leave_of(plain.least)),
            ("equal_depth", plain.equal),
            ("girth_after", girth),
            ("girth_hand", suits),
            ("string_angle", math.degrees(pull.angle)),
            ("string_tension", pull.tension),
            ("throat_moment", riser.bending_moment(pull.force, pull.angle, pull.reach, 0.0, 0.0)),
        ),
        checks=(_margin_check(margins, factor), _loss_check(margins, lived, pull), SCREEN)
               + _weights_check(lived_weight, lived, pull) + _hand_checks(hand_length, suits, girth),
        tables=(_stress_table(found, strength), _depth_table(found)),
        drawings=(grip_drawing(worst.name, shape == "rounded", worst.size.before, worst.size.after,
                               worst.hole),),
        files=(File("grip-template.svg", "Sections to print at one to one", SVG, template_svg(
            shape == "rounded", [_to_print(each) for each in found if each.hole is None])),),
        assumptions=_assumptions(wood, between),
    )


# Forces ----------------------------------------------------------------------


def _strength(wood: str, own: float | None) -> float:
    if wood == "own":
        return own or 0.0
    return float(woods.find(wood).bending_strength)


# Sections --------------------------------------------------------------------


# What is said ----------------------------------------------------------------


def leave_of(least: float) -> float:
    """Return a depth that a rule shows, no less than the least [m]."""
    return math.ceil(least / RULE_STEP - ROUNDING) * RULE_STEP


def _girth(shape: str, width: float, depth: float) -> float:
    return sections.ellipse_girth(width, depth) if shape == "rounded" else 2.0 * (width + depth)


def _to_print(each: Strength) -> tuple[str, float, float, float, float]:
    """Return a section for the sheet: as planned where that is enough, else the least that must stay."""
    before, after = each.size.before, each.size.after
    depth = min(before.depth, max(after.depth, leave_of(each.least)))
    return (each.name + ", " + show(each.height, "length") + " from the throat", before.width, before.depth,
            after.width, depth)


def _hand_checks(hand: float | None, suits: float | None, girth: float) -> tuple[Check, ...]:
    """Return whether a girth is near the one that suits the hand."""
    if hand is None or suits is None:
        return ()
    shown = (amount("length", girth), amount("length", suits), amount("length", hand))
    if abs(girth / suits - 1.0) <= NEAR_HAND + ROUNDING:
        return (check("hand", OK, sentence(
            "{} round is near the {} that suits a hand of {}.", *shown)),)
    way = "thicker" if girth > suits else "thinner"
    return (check("hand", WATCH, sentence(
        "{} round is " + way + " than the {} that suits a hand of {}. Comfort never goes before the wood: "
        "the depth to leave stands.", *shown)),)


def _headline(
    worst: Strength, plain: Strength, margins: Margins, lived: Load, pull: Load, factor: float
) -> Sentence:
    verdict = ("less than the {} you ask for: leave more wood." if margins.after < factor
               else "and you ask for {}.")
    weights = () if lived.force == pull.force else (amount("force", lived.force),)
    lead = (sentence("Take nothing off. ") if margins.before < factor else sentence(
        "Leave {} of depth or more at " + plain.name + ", where it is {} wide. ",
        amount("length", leave_of(plain.least)), amount("length", plain.size.after.width)))
    return sentence(
        lead.template
        + "At full draw the most strained place ({}, {} from the throat) takes {}: the wood's strength is {} "
        "times that, " + verdict + " Before the work" + (", at {}," if weights else "")
        + " it was {} times.",
        *lead.amounts, worst.name, amount("length", worst.height), amount("stress", worst.after),
        amount("number", margins.after, 1), amount("number", factor, 1),
        *weights, amount("number", margins.lived, 1))


def _margin_check(margins: Margins, factor: float) -> Check:
    if margins.after >= factor:
        return check("margin", OK, sentence(
            "The margin is {}; you ask for {}.", amount("number", margins.after, 1),
            amount("number", factor, 1)))
    if margins.before < factor:
        return check("margin", STOP, sentence(
            "Even before the work the margin is {}, less than the {} you ask for. Take nothing off.",
            amount("number", margins.before, 1), amount("number", factor, 1)))
    return check("margin", STOP, sentence(
        "The margin would be {}, less than the {} you ask for. Leave more wood, or another place for the "
        "hole.", amount("number", margins.after, 1), amount("number", factor, 1)))


def _loss_check(margins: Margins, lived: Load, pull: Load) -> Check:
    """Return what the work does to the margin the bow has lived with, and what it does at one weight."""
    share = margins.after / margins.lived
    level = WATCH if share < MUCH_LESS else OK
    if lived.force == pull.force:
        told = sentence("At {} before and after, the work takes away {} of the margin.",
                        amount("force", pull.force), amount("ratio", max(0.0, 1 - share), 0))
    else:
        word = "less" if share < 1 else "more"
        told = sentence(
            "From {} at {} before the work to {} at {} after it, the margin is {} " + word + " than the one "
            "the bow has lived with. At {} alone the work would take away {}.",
            amount("number",
                   margins.lived, 1), amount("force", lived.force), amount("number", margins.after, 1),
            amount("force", pull.force), amount("ratio", abs(1 - share), 0), amount("force", pull.force),
            amount("ratio", max(0.0, 1 - margins.after / margins.before), 0))
    if level == WATCH:
        return check("loss", WATCH, sentence(
            told.template + " The old margin was proved by years of shooting; what is left is not.",
            *told.amounts))
    return check("loss", OK, told)


def _weights_check(lived_weight: float | None, lived: Load, pull: Load) -> tuple[Check, ...]:
    """Return what one should know of the weights that the comparison rests on."""
    if lived_weight is None:
        return (check("lived", WATCH, "The margin before the work is worked out at the same weight as after "
                                      "it. If the bow has been shot at another weight, give that too."),)
    if pull.force > lived.force:
        return (check("lived", WATCH, sentence(
            "The bow has lived with {} and is to be drawn at {}: the riser has never borne that. Nothing is "
            "taken off such a riser on the strength of this page.", amount("force", lived.force),
            amount("force", pull.force))),)
    return ()


SCREEN = check("screen", WATCH, "This is a screen, not a certificate. It knows nothing of cracks, knots, "
               "slanting grain, old glue lines, rot, heat or the knock of the shot. If it says no, do not. "
               "If it says yes, inspect, go slowly, and draw the bow the first time from a distance.")


def _stress_table(found: list[Strength], strength: float) -> Table:
    lines = [(each.name, each.height, each.before, each.after, strength / each.after) for each in found]
    return Table("sections", "Stress in each section at full draw", (
        Column("place", "Section", TEXT), Column("height", "From the throat", "length"),
        Column("before", "Before", "stress"), Column("after", "After", "stress"),
        Column("margin", "Margin after", "number"),
    ), tuple(lines))


def _depth_table(found: list[Strength]) -> Table:
    lines = [(each.name, each.size.after.depth, each.least, each.equal) for each in found
             if each.hole is None]
    return Table("depths", "What depth must stay, at the width afterwards", (
        Column("place", "Section", TEXT), Column("depth", "Depth after", "thickness"),
        Column("least", "For the margin to keep", "thickness"),
        Column("equal", "For the margin it had", "thickness"),
    ), tuple(lines))


def _assumptions(wood: str, between: float | None) -> tuple[Sentence | str, ...]:
    found: list[Sentence | str] = []
    if between is None:
        found.append("The string's angle follows from the bow's measures with limbs as levers on hinges. "
                     "Where a recurve unrolls there is more tension: measure the angle on a photograph.")
    found += [
        "The string pulls on the bow alone: its tension times its distance from the section's middle bends "
        "it, and its thrust presses on it. Both halves are drawn alike.",
        "Every section is solid wood of one kind. Glass or limb wood running over it is not counted and "
        "would help; parted layers would not.",
        "The string lies in the middle plane. A window cut far to one side adds sideways bending, some per "
        "cent, which is not counted.",
    ]
    if wood == "own":
        found.append("The strength is yours.")
    else:
        row = woods.find(wood)
        found.append(sentence(
            "Strength of " + row.name + ": {}, clear, straight-grained, at 12 % moisture ("
            + row.status + "). Single pieces scatter, and an old riser may be weaker.",
            amount("stress", row.bending_strength)))
    found.append("The factor is an assumption to edit: it stands for shock, scatter of the wood, slanting "
                 "grain and age. No standard gives one for a bow.")
    return tuple(found)


CAUTIONS: tuple[Sentence | str, ...] = (
    "A riser that breaks at full draw does it a hand's breadth from your face. After any slimming or "
    "drilling, the first full draw is on a tiller stand, from a distance, with eye protection.",
    "Unstring the bow before you take wood off. Look at the grain on both sides first: where it runs out "
    "across the throat, leave the throat as it is.",
    "Wood dust harms lungs, that of some tropical woods the skin too: extraction, a fitting respirator.",
    "The stress of the shot, of a fall, or of a dry fire is larger than that of a quiet full draw.",
)


def _size_columns() -> tuple[Input, Input]:
    return (
        quantity("width", "Width", "length", default="1 1/4 in", low="1/2 in", high="4 in",
                 usual=("7/8 in", "2 1/2 in")),
        quantity("depth", "Depth", "length", default="2 in", low="1/2 in", high="5 in",
                 usual=("1 1/4 in", "4 in")),
    )


CALCULATOR = Calculator(
    id="grip",
    title="Grip",
    purpose="Says what margin against breaking a slimmed grip, a window or a hole near it leaves at full "
            "draw.",
    groups=(
        group(
            "The sections",
            choice("shape", "Shape of the sections",
                   (("rounded", "Rounded, like an oval"), ("square", "Square, edges hardly broken")),
                   help="Rounded is on the safe side."),
            rows("before", "Before the work",
                 (quantity("height", "From the throat", "length", default="0 in", low="0 in", high="10 in",
                           usual=("0 in", "8 in")),
                  ) + _size_columns(),
                 default="0 in:1 3/16 in:2 1/4 in;1 3/4 in:1 5/16 in:2 3/8 in;3 1/4 in:1 3/16 in:2 1/2 in",
                 fewest=1, most=6,
                 help="Width from side to side, depth from belly to back. From the throat outward.",
                 measure="Calipers; the least width and depth at each place. Above or below the throat "
                         "alike."),
            rows("after", "After the work", _size_columns(),
                 default="1 1/16 in:2 1/16 in;1 3/16 in:2 1/4 in;1 3/16 in:2 1/2 in", fewest=1, most=6,
                 help="The same sections in the same order, with the wood that will be left."),
        ),
        group(
            "A hole near by",
            choice("hole", "The worst hole",
                   (("none", "None"), ("side", "From side to side"), ("depth", "From the back or the belly")),
                   help="Blind or through: counted as if it went through."),
            quantity("hole_diameter", "Its diameter", "length", default="5/16 in", low="1/16 in",
                     high="1 1/2 in", usual=("1/8 in", "1/2 in"), when=("hole", ("side", "depth"))),
            quantity("hole_height", "Its distance from the throat", "length", default="2 3/4 in", low="0 in",
                     high="10 in", usual=("0 in", "8 in"), when=("hole", ("side", "depth"))),
            quantity("hole_from_back", "Its middle from the back face", "length", default="1 3/8 in",
                     low="1/16 in", high="4 in", usual=("3/8 in", "3 in"), when=("hole", ("side",))),
        ),
        group(
            "The wood",
            choice("wood", "Wood of the riser",
                   names_of([woods.find(id) for id in woods.RISER_WOODS])
                   + (("own", "Another, by its strength"),),
                   default="black-walnut"),
            quantity("own_strength", "Modulus of rupture", "stress", default="15000 psi", low="2000 psi",
                     high="40000 psi", usual=("8000 psi", "25000 psi"),
                     help="Bending strength along the grain.", when=("wood", ("own",))),
            quantity("factor", "Margin to keep", "number", default="4", low="1.5", high="20",
                     usual=("3", "8"), help="Strength over stress at full draw. An assumption to edit.",
                     role=RULE),
        ),
        group(
            "The hand",
            quantity("hand_length", "Length of the archer's hand", "length", default="", low="4 in",
                     high="11 in", usual=("6 in", "9 in"),
                     help="From the crease of the wrist to the tip of the middle finger. Empty: not judged.",
                     measure="Palm up, fingers straight, on a rule.", optional=True),
        ),
        group(
            "The bow",
            quantity("draw_weight", "Draw weight at this draw", "force", default="42 1/2 lb", low="5 lb",
                     high="150 lb", usual=("20 lb", "80 lb"),
                     help="After all work, on riser and limbs; by a checked scale."),
            quantity("lived_weight", "Weight it has lived with, at this draw", "force", default="50 lb",
                     low="5 lb", high="150 lb", usual=("20 lb", "80 lb"),
                     help="As it came, before limbs or riser were touched. Empty: the same.", optional=True),
            quantity("draw_length", "Draw length", "length", default="27 in", low="16 in", high="34 in",
                     usual=("24 in", "31 in"), help="To 1 3/4 in (44 mm) beyond the pivot point."),
            quantity("between", "Angle between the halves of the string", "angle", default="", low="60°",
                     high="170°", usual=("90°", "135°"),
                     help="At the nock, on a photograph of the full draw; empty: estimated.", optional=True),
            *bow_lengths(),
        ),
    ),
    results=(
        result("margin_after", "Margin after the work", "number", "Strength over stress, weakest section."),
        result("margin_before", "Margin before it", "number", "At the weight it has lived with."),
        result("weakest", "Most strained section", TEXT),
        result("stress_after", "Stress there at full draw", "stress"),
        result("stress_before", "Largest stress before", "stress", "At that weight."),
        result("strength", "Strength of the wood", "stress", "Modulus of rupture."),
        result("stress_allowed", "Stress with the margin to keep", "stress"),
        result("least_depth", "Least depth of the weakest section", "thickness",
               "At its width afterwards, for the margin to keep; holes left out."),
        result("leave_depth", "Leave there at least", "length",
               "The same, up to the next 1/32 in of a rule."),
        result("girth_after", "Girth there after the work", "length"),
        result("girth_hand", "Girth that suits the hand", "length",
               "Of a round handle of 0.197 of the hand's length."),
        result("equal_depth", "Depth that keeps its old margin", "thickness", "At its width afterwards."),
        result("string_angle", "String from the line of the bow", "angle", "At full draw."),
        result("string_tension", "Tension of the string", "force", "At full draw."),
        result("throat_moment", "Bending moment at the throat", "moment", "At the pivot point."),
    ),
    acted_on=("weakest", "least_depth", "leave_depth", "margin_after"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "forest-service-techsheet", "geometry",
             "handle-over-hand", "lever-estimate",
             "wood-handbook", "wood-strength-pages"),
    example="An invented 64 in recurve brought down from 50 to 42 1/2 lb at its archer's draw of 27 in, with "
            "a riser of black walnut, its throat to be slimmed.",
    first=("shape", "before", "after"),
    compute=compute,
    takes_off=True,
)
