"""Next batch: the plan learnt anew from each reading, and the largest batch that is still safe."""

import math

from calc.bows.cautions import GLASS_DUST
from calc.bows.checks import calibration_check
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
from calc.bows.learning import (
    BACK,
    BELLY,
    FIRST_PAPER,
    LOWER,
    TILLER,
    UPPER,
    WEIGHT,
    Batch,
    Model,
    Told,
    after_batch,
    first_belief,
    foretold,
    glass_again,
    glass_row,
    limb_again,
    model_of,
    with_paper,
)
from calc.bows.measured import calibrated, glass_to_stay, measured_bow, setup_of
from calc.bows.next_checks import Newest, Step, foretold_checks, last_read, step_checks
from calc.bows.next_step import Aim, Left, Risk, left_of, next_of, risk_of
from calc.bows.next_tables import HUNDRED, batch_table, by_face, papers_table, told_tables, weight_chart
from calc.bows.planning import answering_before, reduced, sanding_on
from calc.bows.ranges import Planned, range_steps
from calc.bows.reading_errors import ReadingErrors, give_or_take, how_well_read, with_range
from calc.bows.steps import in_part
from calc.bows.stroke_inputs import log_rows
from calc.bows.stroke_log import SAME, papers_of
from calc.bows.targets import edge_inputs, finish_sanding, target_tiller, target_weight
from calc.bows.workpiece import Workpiece, reserve_of
from calc.declaring import RULE, TRIAL, Calculator, choice, group, quantity, result
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.tuning import Calibration
from calc.numerics.belief import Belief, product, variance
from calc.numerics.normal import NORMAL_95
from calc.numerics.roots import solved
from calc.outcome import Outcome, Refused, Sentence, amount, sentence
from calc.tables.grits import PAPERS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

    Log = tuple[tuple[float, float, float, float, str], ...]

LEAST_PLANNED = 0.03
"""Of the first weight: the plan by which the bow is learnt takes at least as much."""


def compute(
    log: "Log",
    next_paper: str,
    upper_lost: float | None,
    lower_lost: float | None,
    glass_now_back: float | None,
    glass_now_belly: float | None,
    weight_wanted: float,
    reserve: float | None,
    tiller_wanted: float,
    risk: float,
    hundred: float,
    scatter: float,
    draw_length: float,
    measured: str,
    from_string_end: float | None,
    zone_start: float,
    zone_end: float,
    feather: float,
    belly_share: float,
    least_glass: float,
    glass_new: float | None,
    came_back: float | None,
    came_belly: float | None,
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
    upper_stations: tuple[tuple[float, ...], ...],
    lower_stations: tuple[tuple[float, ...], ...],
    glass_back: float,
    glass_belly: float,
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
    """Return the next batch, learnt from all readings so far, beginning with the computed bow."""
    first, tiller = log[0][2], log[0][3]
    if weight_wanted > first:
        raise Refused("weight_wanted", "The weight wanted is more than that of the first row: taking "
                      "material off only brings weight down. Mend one of them.")
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
    calibration = calibrated(bow.bow(), setup, first, "log", tiller)
    factors = (calibration.upper_factor, calibration.lower_factor)
    piece = Workpiece(bow, setup, sanding, factors, least, finishing)
    yield 0.25
    kept = reserve_of(piece, calibration.state, first, weight_wanted, reserve)
    aim = Aim(weight_wanted + kept.kept, tiller_wanted, piece.most,
              (bow.build.back - finishing.faces, bow.build.belly - finishing.faces), least, belly_share)
    errors = ReadingErrors(weight_error, tiller_error, thickness_error, glass_error, core_error)
    model, stiffer = yield from in_part(0.3, 0.9, _model(
        piece, calibration, min(aim.weight, (1 - LEAST_PLANNED) * first), weight_wanted, tiller_wanted,
        errors, scatter, len(profile) >= 5))
    names, papers = papers_of(log)
    belief, told = _learnt(model, log, papers, hundred / HUNDRED)
    newest, before = last_read(told), belief
    for limb, name, lost in ((UPPER, "upper", upper_lost), (LOWER, "lower", lower_lost)):
        if lost is not None:
            again = limb_again(model, before, limb, lost)
            newest.append(Newest("lost-" + name, "thickness lost by the " + name + " limb", "thickness",
                                 again.spoken(before)))
            belief = again.taught(belief)
    for face, name, read, then in ((BACK, "back", glass_now_back, glass_back),
                                   (BELLY, "belly", glass_now_belly, glass_belly)):
        if read is not None:
            again = glass_again(model, before, face, aim.share_of(face), read, then)
            newest.append(Newest("glass-" + name, "glass on the " + name, "thickness", again.spoken(before)))
            belief = again.taught(belief)
    beyond = [each for each in newest if each.spoken.beyond]
    used = [len([each for each in told if each.batch.paper == paper
                 and each.batch.upper + each.batch.lower > 0]) for paper in range(len(names))]
    paper = papers[-1]
    if next_paper != SAME:
        names, followed = papers_of(log + ((0.0, 0.0, first, tiller, next_paper),))
        paper = followed[-1]
        if paper == len(used):
            belief = with_paper(belief, math.exp(belief.mean[FIRST_PAPER + papers[-1]]))
            used.append(0)
    yield 0.95
    left = left_of(model, belief, aim, paper)
    unread = used[paper] == 0
    batch, danger = next_of(model, belief, aim, left, paper, risk, unread)
    if beyond:
        batch = Batch(0.0, 0.0, paper, 0.0, 0.0)
        danger = risk_of(model, belief, aim, batch)
    step = _step(model, belief, left, batch, danger, unread)
    each = math.exp(belief.mean[FIRST_PAPER + paper])
    after = None if step.none else foretold(model, belief, batch)
    learnt_factors = _factors(belief, factors, stiffer)
    return Outcome(
        headline=_headline(step, aim, beyond, names[paper]),
        values=_values(model, belief, aim, step, after, each, learnt_factors, kept.kept),
        checks=foretold_checks(told, newest) + step_checks(model, belief, aim, step, risk, bool(beyond))
               + (calibration_check((learnt_factors[0][0], learnt_factors[1][0])),),
        tables=(batch_table(step.batch, belly_share, each, left),) + told_tables(told) + (
            papers_table(belief, names, used),),
        charts=(weight_chart(first, told, after, aim.weight),),
        assumptions=ASSUMPTIONS,
    )


# What is learnt ------------------------------------------------------------------


def _model(
    piece: Workpiece, calibration: Calibration, weight: float, weight_wanted: float, tiller: float,
    errors: ReadingErrors, scatter: float, measured_shape: bool,
) -> "Generator[float, None, tuple[Model, tuple[tuple[float, float], tuple[float, float]]]]":
    """Return the computed bow for learning, by a plan for a weight, and how the limbs' stiffness moves it.

    Raises:
        Refused: nothing may come off the glass, or a bow on the way cannot be computed.
    """
    answering = answering_before(piece, calibration.state)
    reduction = yield from in_part(0.0, 0.5, reduced(piece, calibration.state, answering, weight,
                                                     weight_wanted, tiller))
    if reduction.upper + reduction.lower <= 0:
        raise Refused("glass_belly", "The glass is at the least that may stay, finish sanding included: "
                      "nothing may come off it. Take nothing off, or read the glass again at several places.")
    planned = Planned(piece.bow, piece.setup, piece.factors, piece.sanding,
                      (reduction.upper, reduction.lower), calibration.state, reduction.state, answering)
    ranges = yield from in_part(0.5, 1.0, range_steps(planned, errors, False))
    if ranges is None:
        raise Refused("log", "A bow much like the one of the first row cannot be computed: check its "
                      "weight and tiller, and the measures of the bow.")
    return model_of(planned, reduction, ranges, errors, scatter, measured_shape), ranges.stiffer


def _learnt(model: Model, log: "Log", papers: list[int], takes: float) -> tuple[Belief, list[Told]]:
    """Return what is believed after all rows of the log, and what was foretold of each but the first."""
    belief = with_paper(first_belief(model), takes)
    known, told = 1, []
    for row, paper in zip(log[1:], papers[1:]):
        if paper == known:
            belief = with_paper(belief, math.exp(belief.mean[FIRST_PAPER + known - 1]))
            known += 1
        belief, said = after_batch(model, belief, Batch(row[0], row[1], paper, row[2], row[3]))
        told.append(said)
    return belief, told


def _step(model: Model, belief: Belief, left: Left, batch: Batch, risk: Risk, unread: bool) -> Step:
    weight, tiller = model.reading(belief.mean)
    end = list(belief.mean)
    end[UPPER] += left.removals[0]
    end[LOWER] += left.removals[1]
    return Step((weight[0], math.sqrt(variance(belief, weight[1]))),
                (tiller[0], math.sqrt(variance(belief, tiller[1]))), model.reading(end)[1][0], left,
                (batch.upper, batch.lower), risk, unread)


def _factors(
    belief: Belief, factors: tuple[float, float], stiffer: tuple[tuple[float, float], tuple[float, float]]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the limbs' stiffness factors as learnt, each with its standard error."""
    parts = [solved(stiffer[0], stiffer[1], (1.0, 0.0)), solved(stiffer[0], stiffer[1], (0.0, 1.0))]
    found = []
    for limb in (0, 1):
        row = [0.0] * len(belief.mean)
        for place, part in ((WEIGHT, parts[0]), (TILLER, parts[1])):
            row[place] = 0.0 if part is None else part[limb] * factors[limb]
        found.append((factors[limb] + product(row, belief.mean), math.sqrt(variance(belief, row))))
    return found[0], found[1]


# What is said --------------------------------------------------------------------


def _headline(step: Step, aim: Aim, beyond: list[Newest], paper: str) -> Sentence:
    if beyond:
        first = beyond[0]
        return sentence("The " + first.name + " is {} " + first.word + " than foretold, beyond what the "
                        "errors allow: measure again before the next stroke.",
                        amount(first.kind, first.apart))
    weight = with_range("force", step.weight[0], step.weight[1])
    if step.none:
        return sentence("Stop: weight is at " + weight.template + ", the aim of the faces at {}. No batch "
                        "is within the risk that you allow.",
                        *(tuple(weight.amounts) + (amount("force", aim.weight),)))
    return sentence("Do {} strokes on the upper limb and {} on the lower with " + paper + ", flex the limbs, "
                    "and measure: weight is at " + weight.template + ", and {} are left to the aim of {}.",
                    *((amount("strokes", step.batch[0]), amount("strokes", step.batch[1]))
                      + tuple(weight.amounts)
                      + (amount("force", step.weight[0] - aim.weight), amount("force", aim.weight))))


def _values(
    model: Model, belief: Belief, aim: Aim, step: Step, after: Told | None, each: float,
    factors: tuple[tuple[float, float], tuple[float, float]], reserve: float,
) -> tuple[tuple[str, float | None], ...]:
    upper, lower = [by_face(strokes, aim.belly_share) for strokes in step.batch]
    paper_error = belief.error(len(belief.mean) - 1 if after is None else FIRST_PAPER + after.batch.paper)
    glass = []
    for place, face in ((0, BACK), (1, BELLY)):
        row = glass_row(model, belief, face, aim.share_of(face))
        glass.append((aim.glass[place] + product(row, belief.mean), math.sqrt(variance(belief, row))))
    return (
        ("upper_batch", step.batch[0]),
        ("upper_batch_belly", upper[0]),
        ("upper_batch_back", upper[1]),
        ("lower_batch", step.batch[1]),
        ("lower_batch_belly", lower[0]),
        ("lower_batch_back", lower[1]),
        ("batch_risk", step.risk.whole),
        ("weight_now", step.weight[0]),
        ("weight_now_error", NORMAL_95 * step.weight[1]),
        ("tiller_now", step.tiller[0]),
        ("tiller_now_error", NORMAL_95 * step.tiller[1]),
        ("weight_next", None if after is None else after.weight.foretold),
        ("weight_next_least", None if after is None else after.weight.low),
        ("weight_next_most", None if after is None else after.weight.high),
        ("tiller_next", None if after is None else after.tiller.foretold),
        ("tiller_next_least", None if after is None else after.tiller.low),
        ("tiller_next_most", None if after is None else after.tiller.high),
        ("upper_left", step.left.strokes[0]),
        ("upper_left_error", NORMAL_95 * step.left.errors[0]),
        ("lower_left", step.left.strokes[1]),
        ("lower_left_error", NORMAL_95 * step.left.errors[1]),
        ("upper_removal_left", step.left.removals[0]),
        ("lower_removal_left", step.left.removals[1]),
        ("upper_off", belief.mean[UPPER]),
        ("upper_off_error", NORMAL_95 * belief.error(UPPER)),
        ("lower_off", belief.mean[LOWER]),
        ("lower_off_error", NORMAL_95 * belief.error(LOWER)),
        ("hundred_take", HUNDRED * each),
        ("hundred_take_least", HUNDRED * each * math.exp(-NORMAL_95 * paper_error)),
        ("hundred_take_most", HUNDRED * each * math.exp(NORMAL_95 * paper_error)),
        ("back_glass_left", glass[0][0]),
        ("back_glass_left_error", NORMAL_95 * glass[0][1]),
        ("belly_glass_left", glass[1][0]),
        ("belly_glass_left_error", NORMAL_95 * glass[1][1]),
        ("upper_factor", factors[0][0]),
        ("upper_factor_error", NORMAL_95 * factors[0][1]),
        ("lower_factor", factors[1][0]),
        ("lower_factor_error", NORMAL_95 * factors[1][1]),
        ("reserve", reserve),
    )


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The bow is computed as on Weight reduction, from the measures and the glass that it had when the log "
    "began, and set to the first row. What that expects is set right by each row in turn, as far as the "
    "errors stated make one of them more likely wrong than the other.",
    "Of a paper without a reading, a stroke may take three times what is likely, or a third of it, and no "
    "more than half of the largest batch is done with it (common practice). A stroke takes alike from either "
    "limb and either face, within the scatter stated.",
    "Tiller may change by up to half more or less than computed where the family's shape stands in for "
    "a measured one, and by a tenth where five offsets or more were measured. The log tells which.",
    "The risk is that of the bow itself ending below the aim or the glass below its least, each limb and "
    "face sanded alike all along. It does not hold what the model leaves out, nor a stroke miscounted.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Flex the limbs 20 to 30 short draws before each reading, with eye protection, and look the bow over "
    "for cracks and lifted glass each time. A reading that is not as foretold may be a limb that gives way.",
    "Never sand through the glass: what is left is reckoned from readings, so check it at the edge as you "
    "go, at several places.",
    "The numbers bow to practice: where somebody experienced would stop, stop.",
    GLASS_DUST,
)

CALCULATOR = Calculator(
    id="next-batch",
    title="Next batch",
    purpose="Learns from every reading how your bow answers, and says the largest next batch that is safe "
            "for weight and glass.",
    groups=(
        group(
            "Log",
            log_rows(1),
            choice("next_paper", "Paper of the next batch", (
                (SAME, "same as the last"), ("new", "new sheet of the last"),
            ) + tuple([(grade, grade.upper()) for grade in PAPERS]), role=TRIAL),
            quantity("upper_lost", "Thickness lost, upper limb", "thickness", default="", low="0 in",
                     high="0.2 in", usual=("0 in", "0.04 in"), optional=True,
                     help="Over the whole log, in the middle of the sanded stretch. Empty: not measured.",
                     measure="Micrometer on marked places, before the first stroke and now."),
            quantity("lower_lost", "Thickness lost, lower limb", "thickness", default="", low="0 in",
                     high="0.2 in", usual=("0 in", "0.04 in"), optional=True,
                     help="The same on the lower limb."),
            quantity("glass_now_back", "Back glass read now", "thickness", default="", low="0.005 in",
                     high="0.120 in", usual=("0.025 in", "0.065 in"), optional=True,
                     help="At the thinnest place. Empty: not read since the log began."),
            quantity("glass_now_belly", "Belly glass read now", "thickness", default="", low="0.005 in",
                     high="0.120 in", usual=("0.025 in", "0.065 in"), optional=True,
                     help="The same on the belly."),
        ),
        group(
            "Targets",
            *target_weight("", "Empty: worked out from the edges and papers below."),
            target_tiller(),
            quantity("risk", "Risk that you allow", "ratio", default="2.5 %", low="0.1 %", high="25 %",
                     usual=("0.5 %", "10 %"),
                     help="Of one batch: to end below the weight, or below the glass that must stay.",
                     role=RULE),
        ),
        group(
            "Strokes",
            quantity("hundred", "100 strokes take, before any reading", "thickness", default="0.004 in",
                     low="0.0002 in", high="0.1 in", usual=("0.001 in", "0.02 in"),
                     help="Off a limb's thickness, with the first paper. Taken to be right within three "
                          "times either way; the log tells.", role=RULE),
            quantity("scatter", "Scatter of a batch", "ratio", default="10 %", low="0 %", high="50 %",
                     usual=("0 %", "25 %"),
                     help="One standard error of what a batch takes beside others on the same paper.",
                     role=RULE),
            under=SANDING,
        ),
        group("Where material comes off", *stretch(), belly_share(), *least_glass()[:4], under=SANDING),
        group("Edges and finish sanding", *edge_inputs(), under=SANDING),
        how_well_read(),
        group("Weight and tiller", stated_draw(), *reading_inputs(), under=THE_BOW),
        section_group(),
        group("Lay-up when the log began", *layup_inputs(), under=THE_BOW),
        measures(),
        shape_group(),
    ),
    results=(
        result("upper_batch", "Next batch on the upper limb", "strokes"),
        result("upper_batch_belly", "of it on the upper belly", "strokes"),
        result("upper_batch_back", "of it on the upper back", "strokes"),
        result("lower_batch", "Next batch on the lower limb", "strokes"),
        result("lower_batch_belly", "of it on the lower belly", "strokes"),
        result("lower_batch_back", "of it on the lower back", "strokes"),
        result("batch_risk", "Risk of that batch", "ratio",
               "Of ending below the weight, or below the glass that must stay; where there is none, of now."),
        result("weight_now", "Weight now, by all readings", "force"),
        give_or_take("weight_now_error", "force"),
        result("tiller_now", "Tiller now, by all readings", "length"),
        give_or_take("tiller_now_error", "length"),
        result("weight_next", "Weight to be read after the batch", "force"),
        result("weight_next_least", "at least", "force", "Lower end of the 95 % range of the reading."),
        result("weight_next_most", "at most", "force", "Upper end of the 95 % range of the reading."),
        result("tiller_next", "Tiller to be read after the batch", "length"),
        result("tiller_next_least", "at least", "length", "Lower end of the 95 % range of the reading."),
        result("tiller_next_most", "at most", "length", "Upper end of the 95 % range of the reading."),
        result("upper_left", "Strokes left on the upper", "strokes"),
        give_or_take("upper_left_error", "strokes"),
        result("lower_left", "Strokes left on the lower", "strokes"),
        give_or_take("lower_left_error", "strokes"),
        result("upper_removal_left", "Still to come off the upper limb's thickness", "thickness"),
        result("lower_removal_left", "Still to come off the lower limb's thickness", "thickness"),
        result("upper_off", "Off the upper limb since the first row", "thickness"),
        give_or_take("upper_off_error", "thickness"),
        result("lower_off", "Off the lower limb since the first row", "thickness"),
        give_or_take("lower_off_error", "thickness"),
        result("hundred_take", "100 strokes with the next paper take", "thickness"),
        result("hundred_take_least", "at least", "thickness", "Lower end of the 95 % range."),
        result("hundred_take_most", "at most", "thickness", "Upper end of the 95 % range."),
        result("back_glass_left", "Back glass now, once finished", "thickness"),
        give_or_take("back_glass_left_error", "thickness"),
        result("belly_glass_left", "Belly glass now, once finished", "thickness"),
        give_or_take("belly_glass_left_error", "thickness"),
        result("upper_factor", "Stiffness of the upper limb, of that reckoned", "ratio"),
        give_or_take("upper_factor_error", "ratio"),
        result("lower_factor", "Stiffness of the lower limb, of that reckoned", "ratio"),
        give_or_take("lower_factor_error", "ratio"),
        result("reserve", "Weight kept for edges and finish sanding", "force"),
    ),
    acted_on=("upper_batch", "lower_batch", "batch_risk"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes", "grit-sizes",
             "least-squares", "scratch-and-grain", "wood-handbook"),
    example="The log of an invented 64 in recurve on its way from 53 lb to 45 lb at 28 in, with a change of "
            "paper.",
    first=("log", "weight_wanted"),
    compute=compute,
    takes_off=True,
)
