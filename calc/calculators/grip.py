"""Grip: what a slimmed throat or a hole near it leaves, as stress at full draw against the wood's strength.

A screen, not a certificate: static bending of sound, straight-grained wood.
"""

import math
from collections import namedtuple

from calc.calculators.bow_lengths import bow_lengths
from calc.drawings.grip import grip_drawing
from calc.fields import (
    OK,
    RULE,
    STOP,
    TEXT,
    WATCH,
    Calculator,
    Check,
    Column,
    Input,
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
    rows,
    sentence,
)
from calc.mechanics import riser, sections
from calc.quantities import INCH
from calc.tables import woods

BEYOND_PIVOT = 1.75 * INCH
"""Draw is measured to this far beyond the pivot point (amo-draw-length)."""

RISER_WOODS = ("sugar-maple", "yellow-birch", "black-cherry", "black-walnut", "slippery-elm",
               "indian-rosewood", "brazilian-rosewood", "bubinga")

MODULUS_AND_AREA = {"rounded": (math.pi / 32, math.pi / 4), "square": (1 / 6, 1.0)}
"""Of each shape: section modulus over width times depth squared, area over width times depth."""

MUCH_LESS = 0.75
"""A margin that falls below this share of what it was is worth saying."""

Station = namedtuple("Station", "height before after")
Size = namedtuple("Size", "width depth")
Pull = namedtuple("Pull", "force angle reach tension thrust")
Hole = namedtuple("Hole", "runs diameter height from_back")
Finding = namedtuple("Finding", "name height size before after hole least equal")
"""One section: stress before and after [Pa], least depth for the factor and for the margin it had [m]."""


def compute(
    draw_weight: float,
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
) -> Outcome:
    """Return stress and margin of every section before and after."""
    strength = _strength(wood, own_strength)
    pull = _pull(draw_weight, draw_length, between, brace_height, bow_length, riser_length)
    places = _stations(before, after)
    drilled = None if hole == "none" else Hole(hole, hole_diameter, hole_height, hole_from_back)
    found = [_finding("section " + str(index + 1), place, shape, pull, strength / factor)
             for index, place in enumerate(places)]
    if drilled is not None:
        found.append(_at_hole(places, drilled, shape, pull))
    worst = _weakest(found)
    had, has = strength / max([each.before for each in found]), strength / worst.after
    plain = _weakest([each for each in found if each.hole is None])
    return Outcome(
        _headline(worst, had, has, factor),
        (
            ("margin_after", has),
            ("margin_before", had),
            ("weakest", worst.name),
            ("stress_after", worst.after),
            ("stress_before", max([each.before for each in found])),
            ("strength", strength),
            ("stress_allowed", strength / factor),
            ("least_depth", plain.least),
            ("equal_depth", plain.equal),
            ("string_angle", pull.angle),
            ("string_tension", pull.tension),
            ("throat_moment", riser.bending_moment(pull.force, pull.angle, pull.reach, 0.0, 0.0)),
        ),
        (_margin_check(had, has, factor), _loss_check(had, has), SCREEN),
        (_stress_table(found, strength), _depth_table(found)),
        (),
        (grip_drawing(worst.name, shape == "rounded", worst.size.before, worst.size.after, worst.hole),),
        _assumptions(wood, between),
    )


# Forces ----------------------------------------------------------------------


def _strength(wood: str, own: float | None) -> float:
    if wood == "own":
        return own or 0.0
    return float(woods.find(wood).bending_strength)


def _pull(
    force: float, draw_length: float, between: float | None, brace_height: float, bow_length: float,
    riser_length: float,
) -> Pull:
    reach = draw_length - BEYOND_PIVOT
    if between is not None:
        angle = 90.0 - between / 2
    else:
        try:
            angle = riser.string_angle_at_draw(bow_length, riser_length, brace_height, reach)
        except ValueError:
            raise Refused("draw_length", "A bow of these measures cannot be drawn so far. Check draw, brace "
                          "height, bow length and riser length.") from None
    tension = riser.string_tension(force, angle)
    return Pull(force, angle, reach, tension, tension * math.cos(math.radians(angle)))


def _moment(pull: Pull, height: float, depth: float) -> float:
    return riser.bending_moment(pull.force, pull.angle, pull.reach, height, depth / 2)


# Sections --------------------------------------------------------------------


def _stations(
    before: tuple[tuple[float, float, float], ...], after: tuple[tuple[float, float], ...]
) -> tuple[Station, ...]:
    if len(before) != len(after):
        raise Refused("after", "Give as many sections after the work as before it, in the same order; there "
                      "are " + str(len(before)) + " before and " + str(len(after)) + " after.")
    found: list[Station] = []
    for index, (height, width, depth) in enumerate(before):
        new = Size(*after[index])
        number = str(index + 1)
        if found and height <= found[-1].height:
            raise Refused("before", "Section " + number + " must lie further from the throat than the one "
                          "ahead of it: put the sections in order.", index, "height")
        if new.width > width:
            raise Refused("after", "Section " + number + " is wider after than before: swap the two.",
                          index, "width")
        if new.depth > depth:
            raise Refused("after", "Section " + number + " is deeper after than before: swap the two.",
                          index, "depth")
        found.append(Station(height, Size(width, depth), new))
    return tuple(found)


def _section(shape: str, size: Size) -> sections.Section:
    if shape == "rounded":
        area = sections.ellipse_area(size.width, size.depth)
        second_moment = sections.ellipse_second_moment_of_area(size.width, size.depth)
    else:
        area = sections.rectangle_area(size.width, size.depth)
        second_moment = sections.rectangle_second_moment_of_area(size.width, size.depth)
    return sections.Section(area, second_moment, size.depth / 2)


def _stress(section: sections.Section, pull: Pull, height: float, depth: float) -> float:
    """Return the largest stress: the bending stress at the farther face and the thrust of the string."""
    modulus = sections.section_modulus(section.second_moment_of_area, section.distance_to_face)
    return _moment(pull, height, depth) / modulus + pull.thrust / section.area


def _finding(name: str, place: Station, shape: str, pull: Pull, allowed: float) -> Finding:
    if _moment(pull, place.height, 0.0) <= 0:
        raise Refused("before", "A section lies so far from the throat that the string's line passes over "
                      "it. Check the distances.")
    before = _stress(_section(shape, place.before), pull, place.height, place.before.depth)
    after = _stress(_section(shape, place.after), pull, place.height, place.after.depth)
    return Finding(name, place.height, place, before, after, None,
                   _depth_for(allowed, place, shape, pull), _depth_for(before, place, shape, pull))


def _depth_for(stress: float, place: Station, shape: str, pull: Pull) -> float:
    """Return the depth at the width afterwards that has this stress: the root of a quadratic in depth.

    stress ks w h^2 = m0 + m1 h + thrust ks / ka h, with ks and ka of the shape.
    """
    width = place.after.width
    ks, ka = MODULUS_AND_AREA[shape]
    m0 = _moment(pull, place.height, 0.0)
    slope = (_moment(pull, place.height, 2 * width) - m0) / (2 * width) + pull.thrust * ks / ka
    lead = stress * ks * width
    return float((slope + math.sqrt(slope**2 + 4 * lead * m0)) / (2 * lead))


def _at_hole(places: tuple[Station, ...], hole: Hole, shape: str, pull: Pull) -> Finding:
    before = _between(places, hole.height, 1)
    after = _between(places, hole.height, 2)
    from_middle = after.depth / 2 - hole.from_back if hole.runs == "side" else 0.0
    try:
        net = sections.without_strip(_section(shape, after), *(_strip(shape, after, hole, from_middle)))
    except ValueError:
        raise Refused("hole_diameter", "The hole does not fit inside the section there, or leaves nearly "
                      "nothing of it. Check its diameter and where its middle lies.") from None
    if _moment(pull, hole.height, 0.0) <= 0:
        raise Refused("hole_height", "The hole lies so far from the throat that the string's line passes "
                      "over it. Check the distance.")
    return Finding(
        "the hole", hole.height, Station(hole.height, before, after),
        _stress(_section(shape, before), pull, hole.height, before.depth),
        _stress(net, pull, hole.height, after.depth), (hole.runs, hole.diameter, from_middle), None, None,
    )


def _strip(shape: str, size: Size, hole: Hole, from_middle: float) -> tuple[float, float, float]:
    """Return width, depth and offset of what a hole takes out of a section, never less than it does."""
    if hole.runs == "depth":
        return hole.diameter, size.depth, 0.0
    nearest = max(0.0, abs(from_middle) - hole.diameter / 2)
    chord = math.sqrt(max(0.0, 1 - (2 * nearest / size.depth) ** 2)) if shape == "rounded" else 1.0
    return size.width * chord, hole.diameter, from_middle


def _between(places: tuple[Station, ...], height: float, which: int) -> Size:
    """Return a size read off straight lines between sections; beyond the ends the nearest holds."""
    if height <= places[0].height:
        return Size(*places[0][which])
    for lower, upper in zip(places, places[1:]):
        if height <= upper.height:
            part = (height - lower.height) / (upper.height - lower.height)
            return Size(lower[which].width + part * (upper[which].width - lower[which].width),
                        lower[which].depth + part * (upper[which].depth - lower[which].depth))
    return Size(*places[-1][which])


def _weakest(found: list[Finding]) -> Finding:
    worst = found[0]
    for each in found:
        if each.after > worst.after:
            worst = each
    return worst


# What is said ----------------------------------------------------------------


def _headline(worst: Finding, before: float, after: float, factor: float) -> Sentence:
    verdict = ("less than the {} you ask for: leave more wood." if after < factor
               else "and you ask for {}.")
    return sentence(
        "At full draw the most strained place ({}, {} from the throat) takes {}: the wood's strength is {} "
        "times that, " + verdict + " Before the work it was {} times.",
        worst.name, amount("length", worst.height), amount("stress", worst.after), amount("number", after, 1),
        amount("number", factor, 1), amount("number", before, 1))


def _margin_check(before: float, after: float, factor: float) -> Check:
    if before < factor:
        return check("margin", STOP, sentence(
            "Even before the work the margin is {}, less than the {} you ask for. Take nothing off.",
            amount("number", before, 1), amount("number", factor, 1)))
    if after < factor:
        return check("margin", STOP, sentence(
            "The margin would be {}, less than the {} you ask for. Leave more wood, or another place for the "
            "hole.", amount("number", after, 1), amount("number", factor, 1)))
    return check("margin", OK, sentence(
        "The margin is {}; you ask for {}.", amount("number", after, 1), amount("number", factor, 1)))


def _loss_check(before: float, after: float) -> Check:
    share = after / before
    if share < MUCH_LESS:
        return check("loss", WATCH, sentence(
            "The work takes away {} of the margin the bow has lived with. That margin was proved by years of "
            "shooting; what is left is not.", amount("ratio", 1 - share, 0)))
    return check("loss", OK, sentence("The work leaves {} of the margin that was there.",
                                      amount("ratio", min(share, 1.0), 0)))


SCREEN = check("screen", WATCH, "This is a screen, not a certificate. It knows nothing of cracks, knots, "
               "slanting grain, old glue lines, rot, heat or the knock of the shot. If it says no, do not. "
               "If it says yes, inspect, go slowly, and draw the bow the first time from a distance.")


def _stress_table(found: list[Finding], strength: float) -> Table:
    lines = [(each.name, each.height, each.before, each.after, strength / each.after) for each in found]
    return Table("sections", "Stress in each section at full draw", (
        Column("place", "Section", TEXT), Column("height", "From the throat", "length"),
        Column("before", "Before", "stress"), Column("after", "After", "stress"),
        Column("margin", "Margin after", "number"),
    ), tuple(lines))


def _depth_table(found: list[Finding]) -> Table:
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
        quantity("width", "Width", "length", "1 1/4 in", "1/2 in", "4 in", ("7/8 in", "2 1/2 in")),
        quantity("depth", "Depth", "length", "2 in", "1/2 in", "5 in", ("1 1/4 in", "4 in")),
    )


CALCULATOR = Calculator(
    "grip",
    "Grip",
    "Says what margin against breaking a slimmed grip, a window or a hole near it leaves at full draw.",
    (
        group(
            "The sections",
            choice("shape", "Shape of the sections",
                   (("rounded", "Rounded, like an oval"), ("square", "Square, edges hardly broken")),
                   "Rounded is on the safe side."),
            rows("before", "Before the work",
                 (quantity("height", "From the throat", "length", "0 in", "0 in", "10 in", ("0 in", "8 in")),
                  ) + _size_columns(),
                 "0 in:1 1/4 in:2 in;1 1/2 in:1 3/8 in:2 1/8 in;3 in:1 1/4 in:2 3/8 in", 1, 6,
                 "Width from side to side, depth from belly to back. From the throat outward.",
                 "Calipers; the least width and depth at each place. Above or below the throat alike."),
            rows("after", "After the work", _size_columns(),
                 "1 1/8 in:1 7/8 in;1 1/4 in:2 in;1 1/4 in:2 3/8 in", 1, 6,
                 "The same sections in the same order, with the wood that will be left."),
        ),
        group(
            "A hole near by",
            choice("hole", "The worst hole",
                   (("none", "None"), ("side", "From side to side"), ("depth", "From the back or the belly")),
                   "Blind or through: counted as if it went through."),
            quantity("hole_diameter", "Its diameter", "length", "3/8 in", "1/16 in", "1 1/2 in",
                     ("1/8 in", "1/2 in"), when=("hole", ("side", "depth"))),
            quantity("hole_height", "Its distance from the throat", "length", "3 in", "0 in", "10 in",
                     ("0 in", "8 in"), when=("hole", ("side", "depth"))),
            quantity("hole_from_back", "Its middle from the back face", "length", "1 1/8 in", "1/16 in",
                     "4 in", ("3/8 in", "3 in"), when=("hole", ("side",))),
        ),
        group(
            "The wood",
            choice("wood", "Wood of the riser",
                   tuple([(id, woods.find(id).name[0].upper() + woods.find(id).name[1:])
                          for id in RISER_WOODS]) + (("own", "Another, by its strength"),)),
            quantity("own_strength", "Modulus of rupture", "stress", "15000 psi", "2000 psi", "40000 psi",
                     ("8000 psi", "25000 psi"), "Bending strength along the grain.", when=("wood", ("own",))),
            quantity("factor", "Margin to keep", "number", "4", "1.5", "20", ("3", "8"),
                     "Strength over stress at full draw. An assumption to edit.", role=RULE),
        ),
        group(
            "The bow",
            quantity("draw_weight", "Draw weight at this draw", "force", "48 lb", "5 lb", "150 lb",
                     ("20 lb", "80 lb"), "From a checked scale."),
            quantity("draw_length", "Draw length", "length", "28 in", "16 in", "34 in", ("24 in", "31 in"),
                     "To 1 3/4 in beyond the pivot point."),
            quantity("between", "Angle between the halves of the string", "angle", "", "60°", "170°",
                     ("90°", "135°"), "At the nock, on a photograph of the full draw; empty: estimated.",
                     optional=True),
            *bow_lengths(),
        ),
    ),
    (
        result("margin_after", "Margin after the work", "number", "Strength over stress, weakest section."),
        result("margin_before", "Margin before it", "number"),
        result("weakest", "Most strained section", TEXT),
        result("stress_after", "Stress there at full draw", "stress"),
        result("stress_before", "Largest stress before", "stress"),
        result("strength", "Strength of the wood", "stress", "Modulus of rupture."),
        result("stress_allowed", "Stress with the margin to keep", "stress"),
        result("least_depth", "Least depth of the weakest section", "thickness",
               "At its width afterwards, for the margin to keep; holes left out."),
        result("equal_depth", "Depth that keeps its old margin", "thickness", "At its width afterwards."),
        result("string_angle", "String from the line of the bow", "angle", "At full draw."),
        result("string_tension", "Tension of the string", "force", "At full draw."),
        result("throat_moment", "Bending moment at the throat", "moment", "At the pivot point."),
    ),
    CAUTIONS,
    ("amo-draw-length", "beam-theory", "bench-practice", "forest-service-techsheet", "lever-estimate",
     "wood-handbook", "wood-strength-pages"),
    "An invented 62 in recurve of 48 lb with a maple riser, its throat slimmed by 1/8 in both ways.",
    compute,
)
