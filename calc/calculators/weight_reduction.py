"""Weight reduction: what to take off each limb so that weight and tiller arrive together."""


from calc.bows.cautions import GLASS_DUST
from calc.bows.edging import FEW_RADII, edge_costs, edge_table, usual_profiles
from calc.bows.gone import Past, gone_since, thinner, weight_as_it_came
from calc.bows.inputs import (
    SANDING,
    THE_BOW,
    belly_share,
    layup_inputs,
    least_glass,
    measures,
    reading_inputs,
    section_group,
    shape_group,
    stated_draw,
    stretch,
)
from calc.bows.measured import calibrated, glass_to_stay, measured_bow, setup_of
from calc.bows.planning import answering_before, reduced, sanding_on
from calc.bows.range_tables import causes_drawings, causes_tables, what_counts
from calc.bows.ranges import Planned, Ranges, range_steps
from calc.bows.reading_errors import ReadingErrors, band, give_or_take, how_well_read, with_range
from calc.bows.reduction_checks import (
    reduction_checks,
    thinnest,
    whole_drop,
)
from calc.bows.reduction_tables import (
    SHAVING,
    Stage,
    feel_table,
    middle_section,
    removal_chart,
    stages_table,
    station_table,
)
from calc.bows.steps import drawn_steps, in_part
from calc.bows.targets import (
    edge_inputs,
    finish_sanding,
    target_tiller,
    target_weight,
)
from calc.bows.workpiece import Reserve, Workpiece, cube_rule, most_reach, reserve_of
from calc.declaring import (
    Calculator,
    group,
    quantity,
    result,
)
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.reduction import Reduction
from calc.mechanics.bow.tuning import (
    BowState,
    Calibration,
    read,
)
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    Axis,
    Chart,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    sentence,
)
from calc.quantities import INCH, POUND_FORCE, ROUNDING

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

STAGE_SHARE = 0.6
"""Of what is left to take, how much one stage takes (common practice: less than planned)."""

STAGES = 3

SPLIT_SHIFTS = 0.002 * INCH
"""Off one limb and onto the other, by how much a plan may shift once the shape is measured, on invented
recurves."""

CURVE_POINTS = 9


def compute(
    weight_now: float,
    weight_came: float | None,
    weight_read: float | None,
    weight_wanted: float,
    draw_length: float,
    tiller_now: float,
    tiller_wanted: float,
    measured: str,
    from_string_end: float | None,
    reserve: float | None,
    edge_radius: float,
    edge_now: float,
    edge_width: float,
    last_paper: str,
    finish_paper: str,
    scratch: float,
    weight_error: float,
    tiller_error: float,
    thickness_error: float,
    glass_error: float,
    core_error: float,
    zone_start: float,
    zone_end: float,
    feather: float,
    belly_share: float,
    least_glass: float,
    upper_stations: tuple[tuple[float, ...], ...],
    lower_stations: tuple[tuple[float, ...], ...],
    glass_back: float,
    glass_belly: float,
    glass_new: float | None,
    came_back: float | None,
    came_belly: float | None,
    strokes_since: int,
    core: str,
    core_modulus: float | None,
    glass_modulus: float,
    brace_height: float,
    bow_length: float,
    riser_length: float,
    family: str,
    profile: tuple[tuple[float, ...], ...],
    throat: float | None,
    string_stiffness: float,
) -> "Generator[float, None, Outcome]":
    """Return the removal on each limb that meets weight and tiller together."""
    if weight_wanted > weight_now:
        raise Refused("weight_wanted", "The weight wanted is more than the weight now: taking material off "
                      "only brings weight down. Swap the two, or mend one.")
    came = weight_as_it_came(weight_now, weight_came, weight_read)
    bow = measured_bow(
        bow_length=bow_length, riser_length=riser_length, brace_height=brace_height, throat=throat,
        family=family, profile=profile, glass_back=glass_back, glass_belly=glass_belly,
        glass_modulus=glass_modulus, core=core, core_modulus=core_modulus, upper_stations=upper_stations,
        lower_stations=lower_stations, string_stiffness=string_stiffness,
    )
    finishing = Finishing(edge_radius, edge_now, edge_width,
                          finish_sanding(last_paper, finish_paper, scratch))
    setup = setup_of(draw_length, brace_height, measured, from_string_end)
    sanding = sanding_on(zone_start, zone_end, feather, belly_share, bow.profile.length)
    least = glass_to_stay(bow.build, least_glass, glass_new, (came_back, came_belly))
    yield 0.05
    gone = None
    if strokes_since > 0 and (weight_read or came) > weight_now:
        gone = gone_since(bow, setup, sanding, weight_read or came, weight_now, tiller_now)
        bow = thinner(bow, sanding, gone)
    as_read = (weight_read or came) if strokes_since > 0 else weight_now
    past = Past(came, weight_came is not None or weight_read is not None, strokes_since, gone,
                glass_new is not None or (came_back is not None and came_belly is not None)
                or came <= as_read * (1 + ROUNDING))
    calibration = calibrated(bow.bow(), setup, weight_now, "tiller_now", tiller_now)
    factors = (calibration.upper_factor, calibration.lower_factor)
    piece = Workpiece(bow, setup, sanding, factors, least, finishing)
    yield 0.25
    kept = reserve_of(piece, calibration.state, weight_now, weight_wanted, reserve)
    aim = min(weight_now, weight_wanted + kept.kept)
    answering = answering_before(piece, calibration.state)
    reduction = yield from in_part(0.3, 0.5, reduced(piece, calibration.state, answering, aim, weight_wanted,
                                                     tiller_wanted))
    stages = yield from in_part(0.5, 0.6, _stages(piece, calibration.state, reduction))
    planned = Planned(bow, setup, factors, sanding, (reduction.upper, reduction.lower), calibration.state,
                      reduction.state, answering)
    errors = ReadingErrors(weight_error, tiller_error, thickness_error, glass_error, core_error)
    ranges = yield from in_part(0.6, 0.8, range_steps(planned, errors, not (reduction.too_heavy
                                                                            or reduction.off_tiller)))
    beyond = draw_length - setup.draw
    curves = yield from in_part(0.8, 1.0, _curves(piece, calibration, reduction, beyond, ranges))
    return Outcome(
        headline=_headline(reduction, draw_length, ranges),
        values=_values(piece, reduction, weight_now, weight_wanted, kept, past, ranges),
        checks=reduction_checks(piece, reduction, weight_now, weight_wanted, kept, past, aim, tiller_wanted,
                                ranges),
        tables=(stages_table(reduction, stages),) + causes_tables(ranges) + (
            station_table(piece, reduction),
            feel_table(reduction),
            _edges(piece, reduction),
        ),
        charts=(curves, removal_chart(piece, reduction)),
        drawings=(middle_section(piece, reduction),) + causes_drawings(ranges),
        assumptions=_assumptions(draw_length, calibration, piece, last_paper, finish_paper, bool(profile),
                                 ranges),
    )


# The bow -------------------------------------------------------------------------


def _stages(piece: Workpiece, near: BowState, reduction: Reduction) -> "Generator[float, None, list[Stage]]":
    """Return what the bow comes to after each stage."""
    stages = []
    done = 0.0
    for stage in range(STAGES - 1):
        done += STAGE_SHARE * (1 - done)
        near = read(piece.sanded(done * reduction.upper, done * reduction.lower), piece.setup, near)
        stages.append(Stage(done, near))
        yield (stage + 1) / STAGES
    stages.append(Stage(1.0, reduction.state))
    return stages


def _edges(piece: Workpiece, reduction: Reduction) -> Table:
    """Return what edges will cost the planned bow once its faces are done."""
    removals = reduction.upper, reduction.lower
    work = Finishing(piece.finishing.radius_before, piece.finishing.radius_before, 0.0, 0.0)

    def state_of(edges: Finishing) -> BowState:
        return read(piece.bow.bow(piece.factors, piece.sanding, removals, edges), piece.setup,
                    reduction.state)

    return edge_table(edge_costs(state_of, reduction.state, work, usual_profiles(work, FEW_RADII),
                                 thinnest(piece, reduction), most_reach(piece.bow, work, max(removals))))


def _curves(
    piece: Workpiece, calibration: Calibration, reduction: Reduction, beyond_pivot: float,
    ranges: Ranges | None,
) -> "Generator[float, None, Chart]":
    """Return weight against draw before and after, draws in the marked way."""
    lines: list[Line] = []
    for name, bow in (("Now", calibration.bow), ("Then", reduction.state.braced.bow)):
        distances, forces = yield from in_part(
            len(lines) / 2, (len(lines) + 1) / 2,
            drawn_steps(bow, piece.setup.brace_height, piece.setup.draw, CURVE_POINTS))
        lines.append(Line(name, "line", [distance + beyond_pivot for distance in distances], forces))
    if ranges is not None:
        lines += band(lines[-1], ranges.weight / reduction.state.weight)
    return Chart("curve", "Weight against draw, now and then", Axis("Draw", "length"),
                 Axis("Weight", "force"), tuple(lines))


# What is said --------------------------------------------------------------------


def _headline(reduction: Reduction, draw_length: float, ranges: Ranges | None) -> Sentence:
    take = sentence("Take {} off the thickness of the upper limb and {} off the lower",
                    amount("thickness", reduction.upper), amount("thickness", reduction.lower))
    if reduction.upper == 0 and reduction.lower == 0:
        take = sentence("Take nothing off the faces")
    state = reduction.state
    weight = with_range("force", state.weight, None if ranges is None else ranges.weight)
    tiller = with_range("length", state.tiller, None if ranges is None else ranges.tiller)
    if reduction.too_heavy or reduction.off_tiller:
        end = (": the nearest that can be reached is about " + weight.template + " at {} with tiller at "
               + tiller.template + ".")
    else:
        end = (", in stages: weight comes to about " + weight.template + " at {} and tiller to "
               + tiller.template + " together.")
    return sentence(take.template + end, *(tuple(take.amounts) + tuple(weight.amounts) + (
        amount("length", draw_length),) + tuple(tiller.amounts)))


def _values(
    piece: Workpiece, reduction: Reduction, weight_now: float, weight_wanted: float, reserve: Reserve,
    past: Past, ranges: Ranges | None,
) -> tuple[tuple[str, float | None], ...]:
    belly = piece.sanding.belly_share
    back_left, belly_left = thinnest(piece, reduction)
    weight = reduction.state.weight
    removals = None if ranges is None else ranges.removals
    return (
        ("upper_removal", reduction.upper),
        ("upper_removal_error", None if removals is None else NORMAL_95 * removals[0]),
        ("upper_belly", reduction.upper * belly),
        ("upper_back", reduction.upper * (1 - belly)),
        ("lower_removal", reduction.lower),
        ("lower_removal_error", None if removals is None else NORMAL_95 * removals[1]),
        ("lower_belly", reduction.lower * belly),
        ("lower_back", reduction.lower * (1 - belly)),
        ("predicted_weight", weight),
        ("predicted_weight_error", None if ranges is None else NORMAL_95 * ranges.weight),
        ("predicted_tiller", reduction.state.tiller),
        ("predicted_tiller_error", None if ranges is None else NORMAL_95 * ranges.tiller),
        ("weight_change", weight - weight_now),
        ("reserve", reserve.kept),
        ("edges_take", reserve.takes),
        ("weight_after_edges", weight - reserve.kept),
        ("whole_drop", whole_drop(past, weight_wanted)),
        ("belly_glass_left", belly_left),
        ("belly_glass_error", None if ranges is None else NORMAL_95 * ranges.glass[1]),
        ("back_glass_left", back_left),
        ("back_glass_error", None if ranges is None else NORMAL_95 * ranges.glass[0]),
        ("cube_rule", cube_rule(piece, weight / weight_now)),
    )


def _assumptions(
    draw_length: float, calibration: Calibration, piece: Workpiece, last_paper: str, finish_paper: str,
    measured_shape: bool, ranges: Ranges | None,
) -> tuple[Sentence | str, ...]:
    return (
        sentence("Both weights are at the same draw, {}, stated in the marked way; computed weight and "
                 "tiller were set to yours by one stiffness factor a limb: {} upper, {} lower.",
                 amount("length", draw_length), amount("number", calibration.upper_factor),
                 amount("number", calibration.lower_factor)),
        "The bow is computed as it bends: rigid riser, each limb's stiffness from its measured sections, "
        "glass and core about the neutral axis, which shifts as glass comes off; the string may lie on a "
        "recurved tip. Slow drawing, no friction, no twist.",
        _shape_assumption(measured_shape),
        sentence("What edges and finish sanding take is worked out on this bow: all four edges rounded to "
                 "{} along the whole limb, and {} off each face from " + last_paper.upper() + " to "
                 + finish_paper.upper() + ", every paper taking out the scratches of the one before.",
                 amount("length", piece.finishing.radius), amount("thickness", piece.finishing.faces, 4)),
        sentence("At the bench {} to {} for each {} is quoted (from memory, common practice); taking glass, "
                 "the stiffest layer, costs more than such a rule says.", amount("thickness", 2 * SHAVING),
                 amount("thickness", 4 * SHAVING), amount("force", POUND_FORCE)),
    ) + what_counts(ranges)


def _shape_assumption(measured: bool) -> Sentence | str:
    if measured:
        return ("The unstrung shape runs smoothly through the offsets measured, and is taken to be the same "
                "on both limbs.")
    return sentence(
        "The unstrung shape is not measured: the family's stands in for it. What comes off both limbs "
        "together hardly depends on it. The split between them may shift by up to {}, and tiller by up to "
        "half of the change asked, more on limbs of much reflex: measure the shape, or read tiller early and "
        "often.", amount("thickness", SPLIT_SHIFTS))


CAUTIONS: tuple[Sentence | str, ...] = (
    "Inspect the bow before it is strung or sanded: a crack across a limb, lifted glass or a delamination "
    "ends the job.",
    "Never sand through the glass. Take less than planned, flex the limbs 20 to 30 short draws, measure, go "
    "on; the first full draw after it from a distance on a tiller stand, with eye protection.",
    GLASS_DUST,
    "Glass thickness is often guessed wrong: look at the edge of the limb with a lens, at several places.",
)


CALCULATOR = Calculator(
    id="weight-reduction",
    title="Weight reduction",
    purpose="Says what to take off each limb so that draw weight and tiller arrive at their targets "
            "together.",
    groups=(
        group(
            "Weight",
            quantity("weight_now", "Draw weight now", "force", default="53 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="From a checked scale."),
            quantity("weight_came", "Draw weight as the bow came", "force", default="", low="5 lb",
                     high="150 lb", usual=("20 lb", "80 lb"),
                     help="Once you have taken some off. Empty: as now.", optional=True),
            *target_weight("", "Empty: worked out from the edges and papers below."),
            stated_draw(),
        ),
        group(
            "Tiller, upper minus lower distance",
            quantity("tiller_now", "Tiller now", "length", default="5/16 in", low="-1 1/2 in",
                     high="1 1/2 in", usual=("-3/8 in", "1/2 in"),
                     help="Negative where the upper distance is the smaller."),
            target_tiller(),
            *reading_inputs(),
        ),
        group(
            "Where material comes off",
            *stretch(),
            belly_share(),
            *least_glass(),
            quantity("weight_read", "Draw weight when they were read", "force", default="", low="5 lb",
                     high="150 lb", usual=("20 lb", "80 lb"),
                     help="Tells what strokes since have taken. Empty: as the bow came.", optional=True),
            under=SANDING,
        ),
        group("Edges and finish sanding", *edge_inputs(), under=SANDING),
        how_well_read(),
        section_group(),
        group("Lay-up", *layup_inputs(), under=THE_BOW),
        measures(),
        shape_group(),
    ),
    results=(
        result("upper_removal", "Off the upper limb's thickness", "thickness"),
        give_or_take("upper_removal_error", "thickness"),
        result("upper_belly", "of it from the upper belly", "thickness"),
        result("upper_back", "of it from the upper back", "thickness"),
        result("lower_removal", "Off the lower limb's thickness", "thickness"),
        give_or_take("lower_removal_error", "thickness"),
        result("lower_belly", "of it from the lower belly", "thickness"),
        result("lower_back", "of it from the lower back", "thickness"),
        result("predicted_weight", "Weight after the faces", "force"),
        give_or_take("predicted_weight_error", "force"),
        result("predicted_tiller", "Tiller after the faces", "length"),
        give_or_take("predicted_tiller_error", "length"),
        result("weight_change", "Change of weight", "force"),
        result("reserve", "Weight kept for edges and finish sanding", "force"),
        result("edges_take", "Edges and finish sanding take, by the model", "force"),
        result("weight_after_edges", "Weight after the edges too", "force"),
        result("whole_drop", "The whole job takes, of the weight as it came", "ratio"),
        result("belly_glass_left", "Belly glass left, thinnest", "thickness"),
        give_or_take("belly_glass_error", "thickness"),
        result("back_glass_left", "Back glass left, thinnest", "thickness"),
        give_or_take("back_glass_error", "thickness"),
        result("cube_rule", "The simple cube rule would take", "thickness",
               "Stiffness with thickness cubed, one material, tiller left out."),
    ),
    acted_on=("upper_removal", "lower_removal", "predicted_weight", "belly_glass_left"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes", "grit-sizes",
             "scratch-and-grain", "wood-handbook"),
    example="An invented 64 in recurve that comes down from 53 lb to 45 lb at 28 in, its lower limb a little "
            "stiff.",
    first=("weight_now", "weight_wanted", "tiller_now", "tiller_wanted"),
    compute=compute,
    takes_off=True,
)
