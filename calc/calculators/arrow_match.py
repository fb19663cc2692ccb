"""Arrow match: shaft stiffness, mass, balance and flight for a bow before and after its weight changed.

Stiffness is compared with a range in both standard tests; frequency, mass and balance stand beside it.
No single number says that an arrow suits a bow.
"""


from calc.bows import arrow_bow, arrow_checks
from calc.bows.arrow_bow import MARKED_DRAW
from calc.bows.arrow_checks import assumptions_for, moving_mass_checks
from calc.bows.arrow_limbs import Sections, foretold_checks, foretold_steps, limbs_group
from calc.bows.arrow_ranges import (
    ArrowErrors,
    ArrowRanges,
    Tested,
    arrow_ranges,
    doubt_checks,
    how_arrows_are_read,
    ranges_drawing,
    ranges_table,
)
from calc.bows.arrow_shot import (
    Arrow,
    Feathers,
    Shaft,
    Shot,
    arrow_of,
    deflection_of,
    shot_of,
    swing_of,
    tube_shaft,
    virtual_mass_of,
    wooden_shaft,
)
from calc.bows.arrow_spine import build_table, causes_of, practice_checks, wanted_spine
from calc.bows.arrow_tables import (
    arrow_shape,
    comparison,
    conventions,
    force_chart,
    speed_chart,
)
from calc.bows.reading_errors import give_or_take
from calc.declaring import (
    RULE,
    Calculator,
    choice,
    group,
    quantity,
    result,
    switch,
)
from calc.mechanics.arrow import flight, shaft
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    Amount,
    Check,
    Outcome,
    Sentence,
    amount,
    sentence,
)
from calc.tables import woods

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator


def compute(
    old_weight: float,
    new_weight: float,
    draw_length: float,
    brace_height: float,
    curve: str,
    slope: float,
    fullness: float,
    readings: tuple[tuple[float, float], ...],
    old_readings: tuple[tuple[float, float], ...],
    reading_error: float,
    bow_length: float,
    riser_length: float,
    family: str,
    shaft_known: str,
    spine: float,
    deflection: float,
    species: str,
    wood_modulus: float,
    wood_density: float,
    diameter: float,
    tube_wall: float,
    tube_modulus: float,
    tube_density: float,
    shaft_mass: float,
    length: float,
    point_mass: float,
    insert_mass: float,
    nock_mass: float,
    feather_mass: float,
    feather_start: float,
    feather_length: float,
    string_material: str,
    window: str,
    count_length: bool,
    length_power: float,
    count_point: bool,
    point_share: float,
    count_string: bool,
    string_share: float,
    count_window: bool,
    window_share: float,
    losses: str,
    virtual_mass: float,
    test_mass: float,
    test_speed: float,
    upper_stations: tuple[tuple[float, ...], ...] | None,
    lower_stations: tuple[tuple[float, ...], ...] | None,
    limb_bow_length: float | None,
    limb_riser_length: float | None,
    limb_family: str,
    limb_glass: float | None,
    glass_density: float,
    core_density: float,
    string_mass: float,
    weight_error: float,
    draw_error: float,
    energy_error: float,
    spine_error: float,
    mass_error: float,
    speed_error: float,
    moving_error: float,
) -> "Generator[float, None, Outcome]":
    """Find how an arrow goes with a bow at its old and at its new weight.

    Inputs that another choice makes needless come as None.
    """
    if shaft_known == "species":
        wood = woods.find(species)
        bare = wooden_shaft(wood.modulus, wood.density, diameter, length)
    elif shaft_known == "wood":
        bare = wooden_shaft(wood_modulus, wood_density, diameter, length)
    elif shaft_known == "tube":
        bare = tube_shaft(tube_modulus, tube_density, diameter, tube_wall, length)
    elif shaft_known == "spine_weight":
        bare = Shaft(shaft.flexural_rigidity_from_spine_weight(spine), shaft_mass)
    else:
        test = shaft.TEST_28_INCH if shaft_known == "deflection_28" else shaft.TEST_26_INCH
        bare = Shaft(shaft.flexural_rigidity_from_deflection(deflection, test), shaft_mass)
    arrow = arrow_of(bare, length, point_mass + insert_mass, nock_mass,
                     Feathers(feather_mass, feather_start, feather_start + feather_length))
    swing = swing_of(arrow)

    doubts: tuple[Check, ...] = ()
    if curve == "read":
        old, new, doubts = arrow_bow.read_strokes(old_readings, readings, old_weight, new_weight, draw_length,
                                                  brace_height, reading_error)
    elif curve == "computed":
        new = arrow_bow.computed_stroke(draw_length, brace_height, new_weight, family, bow_length,
                                        riser_length)
        old = arrow_bow.scaled(new, old_weight / new_weight)
    else:
        new = arrow_bow.assumed_stroke(draw_length, brace_height, new_weight, slope, fullness)
        old = arrow_bow.scaled(new, old_weight / new_weight)
    foretold = None
    if losses == "limbs" or upper_stations or lower_stations:
        known = Sections((limb_bow_length, limb_riser_length), (upper_stations or (), lower_stations or ()),
                         limb_glass, (glass_density, core_density), limb_family, string_mass)
        foretold = yield from foretold_steps(known, new_weight, draw_length, brace_height, string_material)
    by_chronograph = losses in ("chronograph", "chronograph_before")
    if foretold is not None and losses == "limbs":
        virtual_mass, moving_error = foretold.at(arrow.mass), foretold.error
    elif by_chronograph:
        virtual_mass = virtual_mass_of(new if losses == "chronograph" else old, test_mass, test_speed)
    after = shot_of(new_weight, new, virtual_mass, arrow.mass)
    before = shot_of(old_weight, old, virtual_mass, arrow.mass)
    draw_weight = after.draw_weight

    causes = causes_of(length, point_mass + insert_mass, string_material, window,
                       (count_length, count_point, count_string, count_window),
                       (length_power, point_share, string_share, window_share))
    wanted_before = wanted_spine(before.draw_weight, causes)
    wanted = wanted_spine(draw_weight, causes)
    spine_weight = shaft.spine_weight(bare.rigidity)
    scatter = woods.MODULUS_SCATTER if shaft_known == "species" else spine_error
    ranges = arrow_ranges(
        ArrowErrors(weight_error, draw_error, energy_error, scatter, mass_error, speed_error, moving_error),
        new, (before, after), arrow, spine_weight, (wanted[0] + wanted[1]) / 2, virtual_mass,
        slope if curve == "assumed" else None,
        Tested(test_mass, losses == "chronograph_before") if by_chronograph else None)
    return Outcome(
        headline=_headline(after, wanted, spine_weight, arrow, ranges),
        values=(
            ("weight_at_draw", draw_weight),
            ("wanted_low", wanted[0]),
            ("wanted_high", wanted[1]),
            ("spine_pounds", spine_weight),
            ("spine_deflection_28", shaft.static_deflection(bare.rigidity, shaft.TEST_28_INCH)),
            ("spine_deflection_26", shaft.static_deflection(bare.rigidity, shaft.TEST_26_INCH)),
            ("rigidity", bare.rigidity),
            ("arrow_mass", arrow.mass),
            ("mass_per_weight", flight.mass_per_draw_weight(arrow.mass, draw_weight)),
            ("balance_forward", arrow.forward),
            ("balance_point", arrow.balance_point),
            ("first_frequency", swing.frequency),
            ("stroke_time", after.stroke_time),
            ("swings", swing.frequency * after.stroke_time),
            ("stored_energy", after.energy),
            ("curve_fullness", after.fullness),
            ("moving_mass", virtual_mass),
            ("efficiency", flight.efficiency(arrow.mass, virtual_mass)),
            ("speed", after.speed),
            ("kinetic_energy", after.kinetic_energy),
            ("momentum", after.momentum),
            ("wanted_error", NORMAL_95 * ranges.wanted),
            ("spine_pounds_error", NORMAL_95 * ranges.spine),
            ("arrow_speed_error", NORMAL_95 * ranges.speed),
            ("moving_mass_error", NORMAL_95 * ranges.moving),
        ),
        checks=(
            arrow_checks.mass_check(flight.mass_per_draw_weight(arrow.mass, draw_weight)),
            arrow_checks.spine_check(wanted[0], wanted[1], spine_weight),
            arrow_checks.balance_check(arrow.forward),
            arrow_checks.length_check(length, draw_length),
        ) + arrow_checks.draw_checks(draw_length, MARKED_DRAW)
        + doubt_checks(wanted[0], wanted[1], spine_weight, ranges)
        + practice_checks(draw_weight, causes)
        + arrow_checks.string_checks(string_material)
        + arrow_checks.species_checks(species, spine_weight)
        + arrow_checks.efficiency_checks(flight.efficiency(arrow.mass, virtual_mass))
        + doubts + arrow_bow.fullness_checks(max(before.fullness, after.fullness))
        + moving_mass_checks(by_chronograph, virtual_mass, test_mass)
        + foretold_checks(foretold, losses == "limbs", virtual_mass, ranges.moving, arrow.mass,
                          after.speed),
        tables=(
            comparison(before, after, wanted_before, wanted, arrow, swing),
            conventions(wanted_before, wanted, bare),
            build_table(new_weight, draw_weight, arrow_bow.standing_of_weight(curve, bool(readings)), causes),
            ranges_table(ranges),
        ),
        charts=(force_chart(old, new, readings or (), old_readings or (),
                            None if curve == "read" else weight_error / new_weight),
                speed_chart(before, after, virtual_mass, arrow, ranges.speed / after.speed)),
        drawings=(arrow_shape(arrow, swing), ranges_drawing(ranges)),
        assumptions=arrow_bow.curve_assumptions(curve, bool(readings and old_readings)) + ASSUMPTIONS
                    + assumptions_for(species),
    )


# What is said ----------------------------------------------------------------


def _headline(
    after: Shot, wanted: tuple[float, float], spine_weight: float, arrow: Arrow, ranges: ArrowRanges
) -> Sentence:
    low, high = wanted
    place = "within"
    off: tuple[Amount, ...] = ()
    if spine_weight > high:
        place, off = "{} stiffer than", (amount("force", spine_weight - high),)
    elif spine_weight < low:
        place, off = "{} weaker than", (amount("force", low - spine_weight),)
    amounts = (amount("force", spine_weight), amount("force", NORMAL_95 * ranges.spine)) + off + (
        amount("force", low), amount("force", high), amount("force", after.draw_weight),
        amount("thickness", deflection_of(high)), amount("thickness", deflection_of(low)),
        amount("force", NORMAL_95 * ranges.wanted),
        amount("mass", arrow.mass), amount("mass_per_force", arrow.mass / after.draw_weight))
    return sentence(
        "This shaft of {} spine, give or take {}, is " + place + " the {} to {} that the trade would try "
        "with a bow of {} at this draw ({} to {} in the 28 in test), itself read to {} either way. The arrow "
        "weighs {}, {}.", *amounts)


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The range of stiffness is a place to start: draw weight as spine weight, corrected by rules that are "
    "common practice and were never published as a standard, in proportion to the weight. It says nothing of "
    "the loose, the rest or the archer.",
    "Speed, energy and time are estimates. They stand or fall with the mass that moves with the arrow and "
    "with the draw-force curve.",
    "The shaft counts as one slender beam from the nock's throat to its front end, as stiff all along, with "
    "the nock as a mass at the rear, point and insert as one at the front, and the feathers spread evenly "
    "over their length.",
    "The ranges hold in 95 of 100 cases where the errors are as said under “How well you read” and do not "
    "hang together; the trade's rules may be further out than that.",
    "How often the shaft swings while the string pushes it is for comparing bows and arrows; no value of it "
    "is right or wrong.",
)


CAUTIONS: tuple[Sentence | str, ...] = (
    "Look over every arrow before every shot: bend it, listen to it, turn it, and break any shaft that is "
    "cracked, splintered or dented. A shaft that breaks on release goes through the bow hand.",
    "Never dry-fire a bow, and never shoot an arrow lighter than the bow is made for: energy that no arrow "
    "takes stays in the limbs. After any repair or removal draw and shoot first from a distance on a stand, "
    "with eye protection.",
    "Change one thing at a time, and shoot at a safe butt with nobody in front of the line.",
)

_WOOD = ("species", "wood")
_BY_CHRONOGRAPH = ("losses", ("chronograph", "chronograph_before"))
_KNOWN = ("spine_weight", "deflection_28", "deflection_26")

CALCULATOR = Calculator(
    id="arrow-match",
    title="Arrow match",
    purpose="Compares an arrow with a bow before and after its weight changed: stiffness, mass, balance and "
            "flight.",
    groups=(
        group(
            "The bow at this archer's draw",
            quantity("old_weight", "Weight at 28 in before", "force", default="53 lb", low="10 lb",
                     high="150 lb", usual=("20 lb", "80 lb"),
                     help="Before the work; the same as after if nothing changed."),
            quantity("new_weight", "Weight at 28 in after", "force", default="45 lb", low="10 lb",
                     high="150 lb", usual=("20 lb", "80 lb"), help="From a checked scale."),
            quantity("draw_length", "Archer's draw length", "length", default="27 in", low="18 in",
                     high="34 in", usual=("24 in", "30 in"),
                     help="From the nocking point to the grip's pivot point, plus 1 3/4 in (44 mm)."),
            quantity("brace_height", "Brace height", "length", default="8 1/4 in", low="3 in", high="12 in",
                     usual=("6 in", "9 1/2 in"),
                     help="From the string to the deepest point of the grip's throat."),
            choice("window", "Window is cut", (
                ("centre", "To centre"), ("before", "Before centre, or there is none"),
                ("past", "Past centre"),
            )),
            choice("string_material", "String", (
                ("polyester", "Polyester"), ("low_stretch", "Low-stretch HMPE"),
            )),
        ),
        arrow_bow.curve_group(),
        group(
            "The shaft",
            choice("shaft_known", "What is known of it", (
                ("spine_weight", "Its spine weight, as on wooden shafts"),
                ("deflection_28", "How far it bends: 1.94 lb (880 g) on 28 in (711 mm)"),
                ("deflection_26", "How far it bends: 2 lb (907 g) on 26 in (660 mm)"),
                ("species", "Its wood and diameter"),
                ("wood", "Its diameter, stiffness and density"),
                ("tube", "A tube: its diameter, wall, stiffness and density"),
            ), role=RULE),
            quantity("spine", "Spine weight", "force", default="50 lb", low="10 lb", high="200 lb",
                     usual=("25 lb", "100 lb"), help="26 divided by the bend in inches of the 26 in test.",
                     when=("shaft_known", ("spine_weight",))),
            quantity("deflection", "Bend in the test", "thickness", default="0.500 in", low="0.1 in",
                     high="3 in", usual=("0.25 in", "1.2 in"),
                     help="A shaft marked 500 bends 0.500 in (12.70 mm) in the 28 in test.",
                     when=("shaft_known", ("deflection_28", "deflection_26"))),
            choice("species", "Wood", tuple([(id, woods.find(id).name) for id in woods.SHAFT_WOODS]),
                   help="Means of the species, clear wood at 12 % moisture.",
                   when=("shaft_known", ("species",))),
            quantity("wood_modulus", "Stiffness of the wood", "modulus", default="1.8 Mpsi", low="0.3 Mpsi",
                     high="4 Mpsi", usual=("0.8 Mpsi", "2.6 Mpsi"), help="Elastic modulus along the grain.",
                     when=("shaft_known", ("wood",))),
            quantity("wood_density", "Density of the wood", "density", default="29 lb/ft3", low="8 lb/ft3",
                     high="80 lb/ft3", usual=("20 lb/ft3", "50 lb/ft3"), when=("shaft_known", ("wood",))),
            quantity("diameter", "Shaft diameter", "thickness", default="11/32 in", low="0.15 in",
                     high="0.6 in", usual=("0.18 in", "0.41 in"), help="Outside, at the middle.",
                     when=("shaft_known", _WOOD + ("tube",))),
            quantity("tube_wall", "Wall of the tube", "thickness", default="0.016 in", low="0.004 in",
                     high="0.2 in", usual=("0.01 in", "0.06 in"), when=("shaft_known", ("tube",))),
            quantity("tube_modulus", "Stiffness of the tube", "modulus", default="10.4 Mpsi", low="1 Mpsi",
                     high="60 Mpsi", usual=("8 Mpsi", "30 Mpsi"),
                     help="About 10.4 Mpsi (72 GPa) for aluminium alloy (from memory).",
                     when=("shaft_known", ("tube",))),
            quantity("tube_density", "Density of the tube", "density", default="2.8 g/cm3", low="0.5 g/cm3",
                     high="9 g/cm3", usual=("1.4 g/cm3", "3 g/cm3"),
                     help="About 175 lb/ft3 (2.8 g/cm3) for aluminium alloy (from memory).",
                     when=("shaft_known", ("tube",))),
            quantity("shaft_mass", "Mass of the bare shaft", "mass", default="305 gr", low="40 gr",
                     high="1500 gr", usual=("150 gr", "600 gr"),
                     help="Cut to length, without nock, feathers, insert and point.",
                     when=("shaft_known", _KNOWN)),
        ),
        group(
            "The arrow",
            quantity("length", "Shaft length", "length", default="28 1/4 in", low="18 in", high="38 in",
                     usual=("25 in", "33 in"),
                     help="From the nock's throat to the front end of the shaft, the point left out."),
            quantity("point_mass", "Point", "mass", default="125 gr", low="10 gr", high="600 gr",
                     usual=("70 gr", "250 gr")),
            quantity("insert_mass", "Insert", "mass", default="0 gr", low="0 gr", high="300 gr",
                     usual=("0 gr", "100 gr"), help="0 for a point glued on."),
            quantity("nock_mass", "Nock", "mass", default="10 gr", low="0 gr", high="100 gr",
                     usual=("0 gr", "25 gr"), help="0 for a nock cut into the shaft."),
            quantity("feather_mass", "Feathers", "mass", default="28 gr", low="0 gr", high="150 gr",
                     usual=("5 gr", "50 gr"), help="With glue, thread and any wrap or lacquer at the rear."),
            quantity("feather_start", "Feathers begin", "length", default="1 in", low="0 in", high="4 in",
                     usual=("1/2 in", "2 in"), help="From the nock's throat to their rear end."),
            quantity("feather_length", "Length of the feathers", "length", default="4 in", low="1/2 in",
                     high="10 in", usual=("2 in", "6 in"), help="Along the shaft."),
        ),
        group(
            "What the stiffness answers to",
            switch("count_length", "The shaft", default=True,
                   help="A longer one wants to be stiffer.", role=RULE),
            quantity("length_power", "Power of the shaft's length", "number", default="2.8", low="0",
                     high="5", usual=("2", "4"),
                     help="2 by buckling, 3 to 4 by its swing; 2.8 is a tenth more for 1 in (25 mm) "
                          "beyond 28 in (711 mm).", role=RULE),
            switch("count_point", "The point", default=True,
                   help="A heavier one, with its insert, wants a stiffer shaft.", role=RULE),
            quantity("point_share", "Share for a point a fifth heavier", "ratio", default="10 %", low="0 %",
                     high="20 %", usual=("5 %", "15 %"),
                     help="Of the spine, for 25 gr (1.6 g) beyond 125 gr (8.1 g).", role=RULE),
            switch("count_string", "The string", default=True,
                   help="A low-stretch one wants a stiffer shaft.", role=RULE),
            quantity("string_share", "Share for a low-stretch string", "ratio", default="10 %", low="0 %",
                     high="30 %", usual=("5 %", "15 %"), help="Of the spine.", role=RULE),
            switch("count_window", "The window", default=True,
                   help="One cut before centre wants a weaker shaft, one past it a stiffer one.", role=RULE),
            quantity("window_share", "Share for the window", "ratio", default="10 %", low="0 %", high="30 %",
                     usual=("5 %", "20 %"), help="Of the spine, either way of centre.", role=RULE),
            note="Common practice, not a standard: every shop has its own figures. Each can be edited or "
                 "switched off.",
        ),
        group(
            "The shot",
            choice("losses", "What moves with the arrow", (
                ("estimate", "A mass that I state"),
                ("limbs", "Foretold from the limbs"),
                ("chronograph", "By chronograph, after the work"),
                ("chronograph_before", "By chronograph, before the work"),
            ), role=RULE),
            quantity("virtual_mass", "Mass that moves with the arrow", "mass", default="150 gr", low="0 gr",
                     high="1000 gr", usual=("80 gr", "300 gr"),
                     help="The share of limbs and string, as if it flew with the arrow.",
                     when=("losses", ("estimate",)), role=RULE),
            quantity("test_mass", "Arrow of the reading", "mass", default="468 gr", low="100 gr",
                     high="1500 gr", usual=("250 gr", "800 gr"), help="Complete arrow.",
                     when=_BY_CHRONOGRAPH),
            quantity("test_speed", "Speed read", "speed", default="158 ft/s", low="40 ft/s", high="350 ft/s",
                     usual=("110 ft/s", "220 ft/s"), help="This bow, drawn to this archer's draw.",
                     when=_BY_CHRONOGRAPH),
        ),
        limbs_group(),
        how_arrows_are_read(),
    ),
    results=(
        result("weight_at_draw", "Weight at this draw", "force"),
        result("wanted_low", "Least spine to look for", "force", "Bow after the work."),
        result("wanted_high", "Most spine to look for", "force"),
        give_or_take("wanted_error", "force"),
        result("spine_pounds", "Spine weight of this shaft", "force"),
        give_or_take("spine_pounds_error", "force"),
        result("spine_deflection_28", "Bend in the 28 in test", "thickness"),
        result("spine_deflection_26", "Bend in the 26 in test", "thickness"),
        result("rigidity", "Bending stiffness E I", "rigidity"),
        result("arrow_mass", "Arrow mass", "mass"),
        result("mass_per_weight", "Arrow mass per weight", "mass_per_force"),
        result("balance_forward", "Balance ahead of the middle", "ratio", "AMO definition."),
        result("balance_point", "Balance point from the nock", "length"),
        result("first_frequency", "First bending frequency", "frequency"),
        result("stroke_time", "Time on the string", "short_time"),
        result("swings", "Swings in that time", "number"),
        result("stored_energy", "Energy stored", "energy"),
        result("curve_fullness", "Energy over weight times stroke", "ratio", "50 % is a straight line."),
        result("moving_mass", "Mass that moves with the arrow", "mass"),
        give_or_take("moving_mass_error", "mass"),
        result("efficiency", "Share of the energy that the arrow takes", "ratio"),
        result("speed", "Speed", "speed"),
        give_or_take("arrow_speed_error", "speed"),
        result("kinetic_energy", "Energy of the arrow", "energy"),
        result("momentum", "Momentum", "momentum"),
    ),
    acted_on=("wanted_low", "wanted_high", "spine_pounds", "mass_per_weight"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "amo-forward-of-centre", "astm-d2555", "astm-f1544", "astm-f1832",
             "astm-f2031", "beam-theory", "bench-practice", "elastica", "family-shapes",
             "fritsch-carlson-1980", "isotonic-regression", "reinsch-1967", "rheingans-1947",
             "shaft-stock-survey", "spine-weight-rule", "tapley-virtual-mass", "tuijn-kooi-1992",
             "wood-handbook", "wood-property-page"),
    example="An invented 64 in recurve brought down from 53 to 45 lb at 28 in, its archer's draw of 27 in, "
            "and the cedar arrows that flew well from it before.",
    first=("new_weight", "draw_length", "length", "point_mass"),
    compute=compute,
)
