"""Weight reduction: what to take off each limb so that weight and tiller arrive together."""

from collections import namedtuple

from calc.calculators.bow import measures, reading_inputs, tiller_sensitivity
from calc.drawings.section import section_drawing
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
    Drawing,
    Input,
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
    rows,
    sentence,
)
from calc.mechanics.thinning import (
    Build,
    Station,
    most_removal,
    removal_for,
    section_at,
    section_rigidity,
    sections_along,
    tip_stiffness,
)
from calc.quantities import INCH, POUND_FORCE
from calc.tables.woods import find as find_wood

USUAL_DROP = 0.20
"""More than this share of the weight asks for a warning (common practice)."""

STAGE_SHARE = 0.6
"""Of what is left to take, how much one stage takes (common practice: less than planned)."""

STAGES = 3
SHAVING = INCH / 1000
NEAR_WEIGHT = 0.05 * POUND_FORCE
NEAR_TILLER = INCH / 64
ROUNDING = 1e-9

Limb = namedtuple("Limb", "name stations sections length build belly_share most stiffness")
Plan = namedtuple("Plan", "upper lower")
"""What comes off each limb's thickness [m]."""


def compute(
    weight_now: float,
    weight_wanted: float,
    draw_length: float,
    tiller_now: float,
    tiller_wanted: float,
    measured: str,
    from_string_end: float | None,
    reserve: float,
    belly_share: float,
    least_glass: float,
    glass_back: float,
    glass_belly: float,
    glass_new: float | None,
    glass_modulus: float,
    core: str,
    core_modulus: float | None,
    upper_stations: tuple[tuple[float, float, float], ...],
    lower_stations: tuple[tuple[float, float, float], ...],
    brace_height: float,
    bow_length: float,
    riser_length: float,
) -> Outcome:
    """Return the removal on each limb that meets weight and tiller together."""
    if weight_wanted > weight_now:
        raise Refused("weight_wanted", "The weight wanted is more than the weight now: taking material off "
                      "only brings weight down. Swap the two, or mend one.")
    sensitivity = tiller_sensitivity(measured, from_string_end, brace_height, bow_length, riser_length)
    build = Build(glass_back, glass_belly, glass_modulus, _core_modulus(core, core_modulus))
    least = (least_glass * (glass_new or glass_back), least_glass * (glass_new or glass_belly))
    most = most_removal(build, belly_share, least[0], least[1])
    length = (bow_length - riser_length) / 2
    limbs = (
        _limb("upper", upper_stations, length, build, belly_share, most),
        _limb("lower", lower_stations, length, build, belly_share, most),
    )
    aim = min(weight_now, weight_wanted + reserve)
    change = tiller_wanted - tiller_now
    plan = _plan(limbs, aim / weight_now, change / sensitivity)
    weight, tiller = _predict(limbs, plan, weight_now, tiller_now, sensitivity)
    return Outcome(
        _headline(plan, aim, weight, tiller, tiller_wanted),
        _values(limbs, plan, weight_now, weight, tiller, reserve),
        _checks(limbs, plan, weight_now, weight_wanted, reserve, weight, aim, tiller, tiller_wanted, least),
        (
            _stages_table(limbs, plan, weight_now, tiller_now, sensitivity),
            _station_table(limbs, plan),
            _feel_table(limbs, weight_now, tiller_now, sensitivity),
        ),
        (_chart(limbs, plan),),
        (_drawing(limbs, plan),),
        _assumptions(draw_length),
    )


# The plan ----------------------------------------------------------------------


def _plan(limbs: tuple[Limb, Limb], weight_share: float, imbalance: float) -> Plan:
    """Return the removals for a share of the weight and a relative lead of the lower limb's stiffness.

    Where glass would get too thin, tiller is kept and weight stays higher;
    where a limb would have to gain stiffness, weight is kept and tiller stays off.
    """
    half = imbalance / 2
    floors = [_share_left(limb, limb.most) for limb in limbs]
    share = weight_share
    if abs(half) < 1:
        share = max(share, floors[0] / (1 - half), floors[1] / (1 + half))
    upper, lower = share * (1 - half), share * (1 + half)
    if max(upper, lower) > 1:
        other = min(1.0, 2 * share - 1)
        upper, lower = (1.0, other) if upper > lower else (other, 1.0)
    removals = [
        limb.most if wanted <= floor else removal_for(wanted, limb.sections, limb.build,
                                                                      limb.belly_share, limb.most)
        for limb, wanted, floor in zip(limbs, (upper, lower), floors)
    ]
    return Plan(removals[0], removals[1])


def _share_left(limb: Limb, removal: float) -> float:
    """Return the share of a limb's stiffness that is left after a removal."""
    return tip_stiffness(limb.sections, limb.build, removal, limb.belly_share) / limb.stiffness


def _predict(
    limbs: tuple[Limb, Limb], plan: Plan, weight_now: float, tiller_now: float, sensitivity: float
) -> tuple[float, float]:
    """Return draw weight and tiller after the removals."""
    upper, lower = _share_left(limbs[0], plan.upper), _share_left(limbs[1], plan.lower)
    mean = (upper + lower) / 2
    return weight_now * mean, tiller_now + sensitivity * (lower - upper) / mean


# Reading the inputs together -----------------------------------------------------


def _core_modulus(core: str, own: float | None) -> float:
    if core != "own":
        return find_wood(core).modulus
    if own is None:
        raise Refused("core_modulus", "Give the modulus of the core, or choose its wood from the list.")
    return own


def _limb(
    name: str,
    typed: tuple[tuple[float, float, float], ...],
    length: float,
    build: Build,
    belly_share: float,
    most: float,
) -> Limb:
    stations = _stations(name + "_stations", typed, length, build)
    sections = sections_along(stations, length)
    stiffness = tip_stiffness(sections, build)
    return Limb(name, stations, sections, length, build, belly_share, most, stiffness)


def _stations(
    field: str, typed: tuple[tuple[float, float, float], ...], length: float, build: Build
) -> tuple[Station, ...]:
    stations = tuple([Station(row[0], row[1], row[2]) for row in typed])
    for index, each in enumerate(stations):
        if index and each.position <= stations[index - 1].position:
            raise Refused(field, "Each station must lie further from the fadeout than the one before it: "
                          "put the rows in order.", index, "position")
        if each.position > length:
            raise Refused(field, "This station lies beyond the nock: half of bow length less riser length "
                          "is all that the limb has. Check the distance, or the bow's length.",
                          index, "position")
        if each.thickness <= 1.2 * (build.back + build.belly):
            raise Refused(field, "This section has hardly any room for a core between its two layers of "
                          "glass. Check the thickness and the glass.", index, "thickness")
    return stations


# What is said --------------------------------------------------------------------


def _headline(plan: Plan, aim: float, weight: float, tiller: float, tiller_wanted: float) -> Sentence:
    take = sentence("Take {} off the thickness of the upper limb and {} off the lower",
                    amount("thickness", plan.upper), amount("thickness", plan.lower))
    if plan.upper == 0 and plan.lower == 0:
        take = sentence("Take nothing off the faces")
    if abs(weight - aim) <= NEAR_WEIGHT and abs(tiller - tiller_wanted) <= NEAR_TILLER:
        end = ", in stages: weight comes to about {} and tiller to {} together."
    else:
        end = ": the nearest that can be reached is about {} with tiller at {}."
    return sentence(take.template + end,
                    *(tuple(take.amounts) + (amount("force", weight), amount("length", tiller))))


def _values(
    limbs: tuple[Limb, Limb], plan: Plan, weight_now: float, weight: float, tiller: float, reserve: float
) -> tuple[tuple[str, float], ...]:
    belly = limbs[0].belly_share
    build = limbs[0].build
    return (
        ("upper_removal", plan.upper),
        ("upper_belly", plan.upper * belly),
        ("upper_back", plan.upper * (1 - belly)),
        ("lower_removal", plan.lower),
        ("lower_belly", plan.lower * belly),
        ("lower_back", plan.lower * (1 - belly)),
        ("predicted_weight", weight),
        ("predicted_tiller", tiller),
        ("weight_change", weight - weight_now),
        ("weight_after_edges", weight - reserve),
        ("belly_glass_left", build.belly - max(plan) * belly),
        ("back_glass_left", build.back - max(plan) * (1 - belly)),
        ("cube_rule", _cube_rule(limbs, weight / weight_now)),
    )


def _cube_rule(limbs: tuple[Limb, Limb], share: float) -> float:
    """Return what the rule of thumb (stiffness goes with thickness cubed) would take."""
    thicknesses = [each.thickness for limb in limbs for each in limb.stations]
    return float(sum(thicknesses) / len(thicknesses) * (1 - share ** (1 / 3)))


def _checks(
    limbs: tuple[Limb, Limb],
    plan: Plan,
    weight_now: float,
    weight_wanted: float,
    reserve: float,
    weight: float,
    aim: float,
    tiller: float,
    tiller_wanted: float,
    least: tuple[float, float],
) -> tuple[Check, ...]:
    found = [_glass_check(limbs[0], plan, least), _drop_check(weight_now, weight_wanted)]
    if abs(weight - aim) > NEAR_WEIGHT:
        found.append(check("weight-reached", STOP, sentence(
            "The weight cannot come down to {} within the glass that must stay; {} is as near as it gets "
            "with tiller kept. Do not go on through the glass.",
            amount("force", aim), amount("force", weight))))
    if abs(tiller - tiller_wanted) > NEAR_TILLER:
        found.append(check("tiller-reached", STOP, sentence(
            "Tiller cannot come to {} at this weight, since one limb would have to gain stiffness; {} is as "
            "near as it gets. A lower weight would allow it.",
            amount("length", tiller_wanted), amount("length", tiller))))
    if weight_wanted + reserve > weight_now:
        found.append(check("reserve", WATCH, sentence(
            "The weight to lose, {}, is less than the reserve for edge sanding, {}: take no weight off the "
            "faces, and let the edges bring it down.",
            amount("force", weight_now - weight_wanted), amount("force", reserve))))
    return tuple(found)


def _glass_check(limb: Limb, plan: Plan, least: tuple[float, float]) -> Check:
    if limb.build.back < least[0] or limb.build.belly < least[1]:
        return check("glass", STOP, sentence(
            "The glass is already thinner than may stay: {} on the back and {} on the belly against {} and "
            "{}. Take nothing off it; hand the bow to somebody experienced, or to the wall.",
            amount("thickness", limb.build.back), amount("thickness", limb.build.belly),
            amount("thickness", least[0]), amount("thickness", least[1])))
    back = limb.build.back - max(plan) * (1 - limb.belly_share)
    belly = limb.build.belly - max(plan) * limb.belly_share
    return check("glass", OK, sentence(
        "Glass left at the thinnest: {} on the back and {} on the belly; no less than {} and {} may stay.",
        amount("thickness", back), amount("thickness", belly),
        amount("thickness", least[0]), amount("thickness", least[1])))


def _drop_check(weight_now: float, weight_wanted: float) -> Check:
    drop = 1 - weight_wanted / weight_now
    if drop > USUAL_DROP + ROUNDING:
        return check("drop", WATCH, sentence(
            "A drop of {} is more than the {} that is ordinary on an old bow: ask whether another bow would "
            "serve the owner better.", amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))
    return check("drop", OK, sentence("A drop of {} is ordinary on an old bow.", amount("ratio", drop)))


def _stages_table(
    limbs: tuple[Limb, Limb], plan: Plan, weight_now: float, tiller_now: float, sensitivity: float
) -> Table:
    lines = []
    done = 0.0
    for stage in range(STAGES):
        done = 1.0 if stage == STAGES - 1 else done + STAGE_SHARE * (1 - done)
        so_far = Plan(plan.upper * done, plan.lower * done)
        weight, tiller = _predict(limbs, so_far, weight_now, tiller_now, sensitivity)
        lines.append((str(stage + 1), so_far.upper, so_far.lower, weight, tiller))
    return Table("stages", "Stages: after each, flex the limbs 20 to 30 short draws, measure, then go on", (
        Column("stage", "Stage", TEXT), Column("upper", "Off the upper so far", "thickness"),
        Column("lower", "Off the lower so far", "thickness"), Column("weight", "Weight expected", "force"),
        Column("tiller", "Tiller expected", "length"),
    ), tuple(lines))


def _station_table(limbs: tuple[Limb, Limb], plan: Plan) -> Table:
    lines = []
    for limb, removal in zip(limbs, plan):
        for each in limb.stations:
            left = section_rigidity(each, limb.build, removal, limb.belly_share)
            share = left / section_rigidity(each, limb.build, 0.0, limb.belly_share)
            lines.append((limb.name, each.position, each.thickness, each.thickness - removal,
                          limb.build.back - removal * (1 - limb.belly_share),
                          limb.build.belly - removal * limb.belly_share, share))
    return Table("stations", "Each station before and after", (
        Column("limb", "Limb", TEXT), Column("position", "From the fadeout", "length"),
        Column("before", "Thickness now", "thickness"), Column("after", "Thickness then", "thickness"),
        Column("back", "Back glass then", "thickness"), Column("belly", "Belly glass then", "thickness"),
        Column("share", "Stiffness left", "ratio"),
    ), tuple(lines))


def _feel_table(
    limbs: tuple[Limb, Limb], weight_now: float, tiller_now: float, sensitivity: float
) -> Table:
    lines = []
    for name, shaving in (("upper", Plan(SHAVING, 0.0)), ("lower", Plan(0.0, SHAVING)),
                          ("both", Plan(SHAVING, SHAVING))):
        if max(shaving) > limbs[0].most:
            continue
        weight, tiller = _predict(limbs, shaving, weight_now, tiller_now, sensitivity)
        lines.append((name, SHAVING, weight - weight_now, tiller - tiller_now))
    return Table("feel", "What a thousandth of an inch does", (
        Column("limb", "Off which limb", TEXT), Column("removal", "Taken off", "thickness"),
        Column("weight", "Weight", "force"), Column("tiller", "Tiller", "thickness"),
    ), tuple(lines))


def _chart(limbs: tuple[Limb, Limb], plan: Plan) -> Chart:
    lines = []
    for limb, removal in zip(limbs, plan):
        places = [each.position for each in limb.stations]
        now = [each.thickness for each in limb.stations]
        lines.append(Line(limb.name + " limb now", "line", places, now))
        lines.append(Line(limb.name + " limb then", "points", places, [each - removal for each in now]))
    return Chart("thickness", "Thickness along the limbs, now and then",
                 Axis("From the fadeout", "length"), Axis("Thickness", "thickness"), tuple(lines))


def _drawing(limbs: tuple[Limb, Limb], plan: Plan) -> Drawing:
    limb = limbs[0] if plan.upper >= plan.lower else limbs[1]
    removal = max(plan)
    middle = section_at(limb.stations, limb.length / 2)
    title = "Section at the middle of the " + limb.name + " limb"
    return section_drawing(title, middle.thickness, limb.build,
                           removal * (1 - limb.belly_share), removal * limb.belly_share)


def _assumptions(draw_length: float) -> tuple[Sentence | str, ...]:
    return (
        sentence("Both weights are at the same draw, {}.", amount("length", draw_length)),
        "Each limb's stiffness follows from its measured sections: glass and core about the neutral axis, "
        "which shifts as glass comes off. Material comes off evenly along the whole limb.",
        "Weight and tiller follow from the limbs' stiffness by a first-order estimate: two limbs as levers "
        "on elastic hinges. Expect the direction and the size, not the last half pound.",
        "Edges stay as they are until the reserve is used; rounding corners and sanding finish takes weight "
        "too, about 1 lb (common practice).",
        "The moduli are typical figures. An error in them changes the removal little, since only ratios "
        "count; an error in a thickness counts threefold.",
    )


CAUTIONS: tuple[Sentence | str, ...] = (
    "Inspect the bow before it is strung or sanded: a crack across a limb, lifted glass or a delamination "
    "ends the job.",
    "Never sand through the glass. Take less than planned, flex the limbs 20 to 30 short draws, measure, go "
    "on; the first full draw after it from a distance on a tiller stand, with eye protection.",
    "Glass dust harms lungs and skin: wet sanding or extraction, a fitting respirator, gloves, long sleeves.",
    "Glass thickness is often guessed wrong: look at the edge of the limb with a lens, at several places.",
)


def _station_columns() -> tuple[Input, Input, Input]:
    return (
        quantity("position", "Distance from the fadeout", "length", "6 in", "0 in", "40 in"),
        quantity("width", "Width", "length", "1 1/2 in", "1/4 in", "3 in", ("3/8 in", "2 1/4 in")),
        quantity("thickness", "Thickness", "thickness", "0.350 in", "0.060 in", "1.2 in",
                 ("0.150 in", "0.700 in")),
    )


CALCULATOR = Calculator(
    "weight-reduction",
    "Weight reduction",
    "Says what to take off each limb so that draw weight and tiller arrive at their targets together.",
    (
        group(
            "Weight",
            quantity("weight_now", "Draw weight now", "force", "58 lb", "5 lb", "150 lb", ("20 lb", "80 lb"),
                     "From a checked scale."),
            quantity("weight_wanted", "Draw weight wanted", "force", "48 lb", "5 lb", "150 lb",
                     ("20 lb", "70 lb"), "The finished bow, at the same draw."),
            quantity("draw_length", "Draw at which both are stated", "length", "28 in", "16 in", "34 in",
                     ("24 in", "31 in"),
                     "The marked standard is 28 in, 1 3/4 in of it beyond the pivot point."),
            quantity("reserve", "Weight kept for the edges", "force", "1 lb", "0 lb", "5 lb",
                     ("1/2 lb", "2 lb"), "Left on for edge sanding and finish sanding."),
        ),
        group(
            "Tiller, upper minus lower distance",
            quantity("tiller_now", "Tiller now", "length", "-1/16 in", "-1 1/2 in", "1 1/2 in",
                     ("-3/8 in", "1/2 in"), "Negative where the upper distance is the smaller."),
            quantity("tiller_wanted", "Tiller wanted", "length", "3/16 in", "-1 in", "1 in",
                     ("-1/8 in", "3/8 in"),
                     "Split finger 1/8 to 1/4 in, three fingers under 0 to 1/8 in."),
            *reading_inputs(),
        ),
        group(
            "The limbs' sections",
            rows("upper_stations", "Upper limb", _station_columns(),
                 "2in:1.72in:0.410in;8in:1.60in:0.375in;14in:1.30in:0.340in;20in:0.80in:0.310in", 3, 8,
                 "At least three places from fadeout to tip.",
                 "Thickness with a micrometer, over both glass layers, in the middle of the width."),
            rows("lower_stations", "Lower limb", _station_columns(),
                 "2in:1.72in:0.412in;8in:1.60in:0.378in;14in:1.30in:0.342in;20in:0.80in:0.310in", 3, 8,
                 "The same places on the lower limb."),
        ),
        group(
            "Lay-up",
            quantity("glass_back", "Glass on the back", "thickness", "0.045 in", "0.010 in", "0.120 in",
                     ("0.025 in", "0.065 in"), "As it is now, read at the limb's edge with a lens."),
            quantity("glass_belly", "Glass on the belly", "thickness", "0.045 in", "0.010 in", "0.120 in",
                     ("0.025 in", "0.065 in"), "As it is now."),
            quantity("glass_new", "Glass when the bow was new", "thickness", "", "0.010 in", "0.120 in",
                     ("0.025 in", "0.065 in"), "If it has been sanded before; empty: as it is now.",
                     optional=True),
            quantity("least_glass", "Share of the glass that must stay", "ratio", "60 %", "30 %", "100 %",
                     ("50 %", "90 %"), "Of the glass when new, on each face. An assumption to edit."),
            quantity("belly_share", "Share taken from the belly", "ratio", "60 %", "0 %", "100 %",
                     ("50 %", "75 %"), "Slightly more from the belly glass than from the back."),
            choice("core", "Core",
                   (("sugar-maple", "Hard maple"), ("red-maple", "Red maple"),
                    ("yellow-birch", "Yellow birch"), ("white-ash", "White ash"),
                    ("black-cherry", "Black cherry"),
                    ("shagbark-hickory", "Hickory"), ("own", "Another, by its modulus"))),
            quantity("core_modulus", "Modulus of the core", "modulus", "1.8 Mpsi", "0.3 Mpsi", "4 Mpsi",
                     ("1 Mpsi", "2.5 Mpsi"), "Along the grain.", when=("core", ("own",))),
            quantity("glass_modulus", "Modulus of the glass", "modulus", "39 GPa", "15 GPa", "60 GPa",
                     ("35 GPa", "46 GPa"), "Along the fibres; 38 to 45 GPa is typical of bow glass."),
        ),
        measures(),
    ),
    (
        result("upper_removal", "Off the upper limb's thickness", "thickness"),
        result("upper_belly", "of it from the upper belly", "thickness"),
        result("upper_back", "of it from the upper back", "thickness"),
        result("lower_removal", "Off the lower limb's thickness", "thickness"),
        result("lower_belly", "of it from the lower belly", "thickness"),
        result("lower_back", "of it from the lower back", "thickness"),
        result("predicted_weight", "Weight after the faces", "force"),
        result("predicted_tiller", "Tiller after the faces", "length"),
        result("weight_change", "Change of weight", "force"),
        result("weight_after_edges", "Weight after the edges too", "force"),
        result("belly_glass_left", "Belly glass left, thinnest", "thickness"),
        result("back_glass_left", "Back glass left, thinnest", "thickness"),
        result("cube_rule", "The simple cube rule would take", "thickness",
               "Stiffness with thickness cubed, one material, tiller left out."),
    ),
    CAUTIONS,
    ("beam-theory", "bench-practice", "lever-estimate", "wood-handbook"),
    "An invented 60 in recurve that comes down from 58 lb to 48 lb at 28 in, its upper limb a little stiff.",
    compute,
)
