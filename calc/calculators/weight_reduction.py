"""Weight reduction: what to take off each limb so that weight and tiller arrive together."""

from collections import namedtuple

from calc.bows.cautions import GLASS_DUST
from calc.bows.checks import calibration_check, glass_check
from calc.bows.inputs import (
    belly_share,
    layup_inputs,
    least_glass,
    measures,
    reading_inputs,
    section_group,
    shape_group,
)
from calc.bows.measured import (
    BenchBow,
    bench_bow,
    build_of,
    calibrated,
    cannot_be_drawn,
    draw_from_pivot,
    glass_to_stay,
    in_both,
    limb_length,
    require_stretch,
    stations_of,
    unstrung_shape,
)
from calc.bows.targets import (
    edge_inputs,
    finish_sanding,
    target_tiller,
    target_weight,
)
from calc.declaring import (
    RULE,
    Calculator,
    group,
    quantity,
    result,
)
from calc.drawings.section import section_drawing
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.laminate import rigidity_shares
from calc.mechanics.bow.limb import Sanding, sanded_share
from calc.mechanics.bow.reduction import Reduction, reduction_steps
from calc.mechanics.bow.thinning import (
    Build,
    Station,
    layers_of,
    most_removal,
    section_at,
    section_rigidity,
    thinned,
)
from calc.mechanics.bow.tuning import (
    Bench,
    Calibration,
    State,
    read,
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
    Drawing,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH, POUND_FORCE, ROUNDING
from calc.tables import practice

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator
    from typing import TypeVar

    T = TypeVar("T")

USUAL_DROP = practice.find("weight-drop").high
"""More than this share of the weight asks for a warning (common practice)."""

STAGE_SHARE = 0.6
"""Of what is left to take, how much one stage takes (common practice: less than planned)."""

STAGES = 3
MOST_STEPS = 40
GONE_MET = 1e-4
"""Of the weight, in finding what has gone since the glass was read."""

SHORT = 0.1 * POUND_FORCE
"""A reserve shorter than this is not pointed out."""

SHAVING = INCH / 1000
CURVE_POINTS = 9
Task = namedtuple("Task", "bow bench sanding factors most least finishing")
"""The measured bow, how it is read, where it is sanded, each limb's stiffness over the reckoned one, the most
that may come off a limb with the glass that has to stay [m], and what edges and finish sanding take after."""

Past = namedtuple("Past", "came told strokes gone floor_known")
"""Weight as the bow came [N] and whether it was told, strokes since glass and sections were read, the
thickness [m] that they took off each limb by the weight lost, None where that is not known, and whether the
glass that must stay is reckoned from that of the untouched bow."""

Reserve = namedtuple("Reserve", "kept takes")
"""Weight left on for edges and finish sanding, and what they will take by the model [N]."""

Stage = namedtuple("Stage", "share state")


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
    came = _weight_as_it_came(weight_now, weight_came, weight_read)
    length = limb_length(bow_length, riser_length)
    build = build_of(glass_back, glass_belly, glass_modulus, core, core_modulus)
    stations = (stations_of("upper_stations", upper_stations, length, build),
                stations_of("lower_stations", lower_stations, length, build))
    shape = unstrung_shape(family, profile, length)
    bow = bench_bow(bow_length, riser_length, brace_height, throat, shape, family, build, stations,
                    string_stiffness)
    finishing = Finishing(edge_radius, edge_now, edge_width,
                          finish_sanding(last_paper, finish_paper, scratch))
    draw = draw_from_pivot("draw_length", draw_length, brace_height)
    bench = Bench(brace_height, draw, None if measured == "fadeout" else from_string_end)
    sanding = _sanding(zone_start, zone_end, feather, belly_share, length)
    least = glass_to_stay(build, least_glass, glass_new, (came_back, came_belly))
    yield 0.05
    gone = None
    if strokes_since > 0 and (weight_read or came) > weight_now:
        gone = _gone_since(bow, bench, sanding, weight_read or came, weight_now, tiller_now)
        bow = _thinner(bow, sanding, gone)
    as_read = (weight_read or came) if strokes_since > 0 else weight_now
    past = Past(came, weight_came is not None or weight_read is not None, strokes_since, gone,
                glass_new is not None or (came_back is not None and came_belly is not None)
                or came <= as_read * (1 + ROUNDING))
    calibration = calibrated(bow.bow(), bench, weight_now, "tiller_now", tiller_now)
    factors = (calibration.upper_factor, calibration.lower_factor)
    most = most_removal(bow.build, belly_share, least[0] + finishing.faces, least[1] + finishing.faces)
    task = Task(bow, bench, sanding, factors, most, least, finishing)
    yield 0.25
    kept = _reserve(task, calibration.state, weight_now, weight_wanted, reserve)
    aim = min(weight_now, weight_wanted + kept.kept)
    reduction = yield from _in_part(0.3, 0.7, _reduced(task, aim, weight_wanted, tiller_wanted))
    stages = yield from _in_part(0.7, 0.8, _stages(task, calibration.state, reduction))
    curves = yield from _in_part(0.8, 1.0, _curves(task, calibration, reduction, draw_length - draw))
    return Outcome(
        headline=_headline(reduction, draw_length),
        values=_values(task, reduction, weight_now, weight_wanted, kept, past),
        checks=_checks(task, reduction, weight_now, weight_wanted, kept, past, aim, tiller_wanted),
        tables=(
            _stages_table(reduction, stages),
            _station_table(task, reduction),
            _feel_table(reduction),
        ),
        charts=(curves, _chart(task, reduction)),
        drawings=(_drawing(task, reduction),),
        assumptions=_assumptions(draw_length, calibration, task, last_paper, finish_paper),
    )


def _in_part(
    start: float, end: float, work: "Generator[float, None, T]"
) -> "Generator[float, None, T]":
    """Run a part of the work, its progress told as from start to end of the whole."""
    while True:
        try:
            part = next(work)
        except StopIteration as finished:
            return finished.value
        yield start + (end - start) * part


# The bow -------------------------------------------------------------------------


def _sanding(start: float, end: float, feather: float, belly_share: float, length: float) -> Sanding:
    stop = length - end
    require_stretch("zone_end", start, stop, length)
    if 2 * feather >= stop - start:
        raise Refused("feather", "Feathering at both ends must leave room between them: less than "
                      + in_both("length", (stop - start) / 2) + " each on this stretch; you gave "
                      + in_both("length", feather) + ". Make it shorter, or the stretch longer.")
    return Sanding(start, stop, feather, belly_share)


def _weight_as_it_came(now: float, came: float | None, read: float | None) -> float:
    """Return the weight as the bow came [N]: now, where nothing else is known.

    Raises:
        Refused: a weight of before is less than the weight now, or that of the reading more than the first.
    """
    for field, words, weight in (("weight_came", "as the bow came", came),
                                 ("weight_read", "when the glass was read", read)):
        if weight is not None and weight < now * (1 - ROUNDING):
            raise Refused(field, "The weight " + words + ", " + in_both("force", weight)
                          + ", is less than the weight now, " + in_both("force", now)
                          + ": sanding only takes. Mend one, or leave it empty.")
    if came is not None and read is not None and read > came * (1 + ROUNDING):
        raise Refused("weight_read", "The weight when the glass was read is more than the bow had as it "
                      "came: mend one of them.")
    return came or read or now


def _gone_since(
    bow: BenchBow, bench: Bench, sanding: Sanding, before: float, now: float, tiller: float
) -> float:
    """Return what came off both limbs' thickness, alike, by the weight lost since they were measured [m].

    Raises:
        Refused: all the glass there was would not explain it.
    """
    calibration = calibrated(bow.bow(), bench, before, "tiller_now", tiller)
    factors = (calibration.upper_factor, calibration.lower_factor)
    through = most_removal(bow.build, sanding.belly_share, 0.0, 0.0) * (1 - 1e-6)

    def weight_with(gone: float) -> float:
        return float(read(bow.bow(factors, sanding, (gone, gone)), bench, calibration.state).weight)

    low, high = (0.0, before), (through, _weight_or_none(weight_with, through))
    if high[1] > now:
        raise Refused("weight_read", "More weight has gone since the glass was read than all of it would "
                      "give: check both weights, and measure the glass.")
    for _ in range(MOST_STEPS):
        part = (low[1] - now) / (low[1] - high[1])
        gone = low[0] + min(0.9, max(0.1, part)) * (high[0] - low[0])
        weight = _weight_or_none(weight_with, gone)
        if abs(weight - now) <= GONE_MET * now:
            return gone
        low, high = ((gone, weight), high) if weight > now else (low, (gone, weight))
    return high[0]


def _weight_or_none(weight_with: "Callable[[float], float]", gone: float) -> float:
    """Return a weight, none where the bow can no longer be computed."""
    try:
        return weight_with(gone)
    except ValueError:
        return 0.0


def _thinner(bow: BenchBow, sanding: Sanding, gone: float) -> BenchBow:
    """Return the measured bow with what has gone since taken off its sections and its glass."""
    stations = []
    for limb in bow.stations:
        stations.append(tuple([
            Station(each.position, each.width, each.thickness - gone * sanded_share(sanding, each.position))
            for each in limb]))
    _, build = thinned(bow.stations[0][0], bow.build, gone, sanding.belly_share)
    return BenchBow(bow.profile, bow.base, (stations[0], stations[1]), build, bow.string_stiffness)


def _reserve(task: Task, near: State, now: float, wanted: float, given: float | None) -> Reserve:
    """Return what to leave on for edges and finish sanding: the weight given, or else what they will take.

    They are taken off the bow about as thin as the plan leaves it, by the rule of thumb.

    Raises:
        Refused: edges or papers ask for more than the limbs have.
    """
    removal = min(task.most, max(0.0, _cube_rule(task, wanted / now)))
    _require_room(task, removal)
    try:
        before = read(_sanded(task, removal, removal), task.bench, near)
        after = read(task.bow.bow(task.factors, task.sanding, (removal, removal), task.finishing),
                     task.bench, before)
    except ValueError as error:
        raise Refused("edge_radius", "The bow cannot be computed once its edges are rounded to "
                      + in_both("length", task.finishing.radius) + ": " + str(error)
                      + ". Ask for less, and check the sections of both limbs.") from None
    takes = max(0.0, wanted * (before.weight / after.weight - 1))
    return Reserve(takes if given is None else given, takes)


def _require_room(task: Task, removal: float) -> None:
    """Raise Refused where the limbs are too slight for the finishing asked for."""
    finishing, build, share = task.finishing, task.bow.build, task.sanding.belly_share
    glass = min(build.back - removal * (1 - share), build.belly - removal * share)
    if finishing.faces >= glass:
        raise Refused("last_paper", "Finish sanding from that paper would take "
                      + in_both("thickness", finishing.faces) + " off each face, and there is glass of "
                      + in_both("thickness", glass) + ". Begin with a finer paper, or mend the scratch "
                      "depth.")
    widths = [each.width for limb in task.bow.stations for each in limb]
    thicknesses = [each.thickness for limb in task.bow.stations for each in limb]
    if finishing.width >= min(widths) / 2:
        raise Refused("edge_width", "That takes half of the limb's width or more where it is "
                      + in_both("length", min(widths)) + " wide. Take less off the sides.")
    most = min(min(widths) - finishing.width, min(thicknesses) - removal - 2 * finishing.faces) / 2
    for field, radius in (("edge_radius", finishing.radius), ("edge_now", finishing.radius_before)):
        if radius > most:
            raise Refused(field, "A radius of " + in_both("length", radius) + " is more than half of the "
                          "limb where it is thinnest or narrowest: at most " + in_both("length", most)
                          + " here. Make it smaller, or check the sections.")


def _sanded(task: Task, upper: float, lower: float) -> Bow:
    return task.bow.bow(task.factors, task.sanding, (upper, lower))


def _reduced(
    task: Task, aim: float, weight_wanted: float, tiller_wanted: float
) -> "Generator[float, None, Reduction]":
    """Return the removals that bring the bow to its targets, or nearest to them.

    Raises:
        Refused: a bow on the way there cannot be computed.
    """
    try:
        return (yield from reduction_steps(
            lambda upper, lower: _sanded(task, upper, lower), task.bench, aim, tiller_wanted, task.most))
    except ValueError as error:
        problem = str(error)
    raise Refused("weight_wanted", "On the way to " + in_both("force", weight_wanted) + " with a tiller of "
                  + in_both("length", tiller_wanted) + " lies a bow that cannot be computed: " + problem
                  + ". Ask for less change, and check the sections of both limbs.")


def _stages(task: Task, near: State, reduction: Reduction) -> "Generator[float, None, list[Stage]]":
    """Return what the bow comes to after each stage."""
    stages = []
    done = 0.0
    for stage in range(STAGES):
        done = 1.0 if stage == STAGES - 1 else done + STAGE_SHARE * (1 - done)
        near = read(_sanded(task, done * reduction.upper, done * reduction.lower), task.bench, near)
        stages.append(Stage(done, near))
        yield (stage + 1) / STAGES
    return stages


def _curves(
    task: Task, calibration: Calibration, reduction: Reduction, beyond_pivot: float
) -> "Generator[float, None, Chart]":
    """Return weight against draw before and after, draws in the marked way."""
    brace, draw = task.bench.brace_height, task.bench.draw
    distances = [brace + (draw - brace) * i / CURVE_POINTS for i in range(CURVE_POINTS + 1)]
    marked = [distance + beyond_pivot for distance in distances]
    lines: list[Line] = []
    for name, bow in (("Now", calibration.bow), ("Then", _sanded(task, reduction.upper, reduction.lower))):
        bow.brace(brace)
        forces = [0.0]
        try:
            for drawn in bow.curve_steps(distances[1:]):
                forces.append(drawn.force)
                yield (len(lines) + len(forces) / len(distances)) / 2
        except ValueError as error:
            raise cannot_be_drawn(draw, error) from None
        lines.append(Line(name, "line", marked, forces))
    return Chart("curve", "Weight against draw, now and then", Axis("Draw", "length"),
                 Axis("Weight", "force"), tuple(lines))


# What is said --------------------------------------------------------------------


def _headline(reduction: Reduction, draw_length: float) -> Sentence:
    take = sentence("Take {} off the thickness of the upper limb and {} off the lower",
                    amount("thickness", reduction.upper), amount("thickness", reduction.lower))
    if reduction.upper == 0 and reduction.lower == 0:
        take = sentence("Take nothing off the faces")
    if reduction.too_heavy or reduction.off_tiller:
        end = ": the nearest that can be reached is about {} at {} with tiller at {}."
    else:
        end = ", in stages: weight comes to about {} at {} and tiller to {} together."
    state = reduction.state
    return sentence(take.template + end, *(tuple(take.amounts) + (
        amount("force", state.weight), amount("length", draw_length), amount("length", state.tiller))))


def _values(
    task: Task, reduction: Reduction, weight_now: float, weight_wanted: float, reserve: Reserve, past: Past
) -> tuple[tuple[str, float], ...]:
    belly = task.sanding.belly_share
    back_left, belly_left = _thinnest(task, reduction)
    weight = reduction.state.weight
    return (
        ("upper_removal", reduction.upper),
        ("upper_belly", reduction.upper * belly),
        ("upper_back", reduction.upper * (1 - belly)),
        ("lower_removal", reduction.lower),
        ("lower_belly", reduction.lower * belly),
        ("lower_back", reduction.lower * (1 - belly)),
        ("predicted_weight", weight),
        ("predicted_tiller", reduction.state.tiller),
        ("weight_change", weight - weight_now),
        ("reserve", reserve.kept),
        ("edges_take", reserve.takes),
        ("weight_after_edges", weight - reserve.kept),
        ("whole_drop", _whole_drop(past, weight_wanted)),
        ("belly_glass_left", belly_left),
        ("back_glass_left", back_left),
        ("cube_rule", _cube_rule(task, weight / weight_now)),
    )


def _cube_rule(task: Task, share: float) -> float:
    """Return what the rule of thumb (weight goes with thickness cubed) would take all along."""
    thicknesses = [each.thickness for stations in task.bow.stations for each in stations]
    return float(sum(thicknesses) / len(thicknesses) * (1 - share ** (1 / 3)))


def _checks(
    task: Task,
    reduction: Reduction,
    weight_now: float,
    weight_wanted: float,
    reserve: Reserve,
    past: Past,
    aim: float,
    tiller_wanted: float,
) -> tuple[Check, ...]:
    found = [
        _glass_stays(task, reduction, past),
        _drop_check(past, weight_now, weight_wanted),
        calibration_check(task.factors),
    ]
    if reduction.too_heavy:
        found.append(_weight_check(reduction, aim))
    if reduction.off_tiller:
        found.append(_tiller_check(reduction, tiller_wanted))
    found += _reserve_checks(task, reserve, weight_wanted)
    if weight_wanted + reserve.kept > weight_now:
        found.append(check("reserve", WATCH, sentence(
            "The weight to lose, {}, is less than the reserve for edge sanding, {}: take no weight off the "
            "faces, and let the edges bring it down.",
            amount("force", weight_now - weight_wanted), amount("force", reserve.kept))))
    return tuple(found)


def _glass_stays(task: Task, reduction: Reduction, past: Past) -> Check:
    """Return whether enough glass stays; never OK where the readings or the least that may stay are stale."""
    found = glass_check(task.bow.build, task.least, _thinnest(task, reduction), past.strokes, past.gone)
    if found.level != OK or past.floor_known:
        return found
    back, belly = _thinnest(task, reduction)
    return check("glass", WATCH, sentence(
        "Glass left at the thinnest: {} on the back and {} on the belly. How much of the glass as the bow "
        "came that is, nobody said: give it, or the least that may stay sinks with every stroke.",
        amount("thickness", back), amount("thickness", belly)))


def _reserve_checks(task: Task, reserve: Reserve, weight_wanted: float) -> list[Check]:
    """Return whether what is kept covers what edges and finish sanding will take."""
    short = reserve.takes - reserve.kept
    if short <= SHORT:
        return []
    return [check("reserve-short", WATCH, sentence(
        "Rounding the edges to {} and finish sanding will take about {}, and {} is kept for them: the bow "
        "would end near {}. Keep more, or round less.", amount("length", task.finishing.radius),
        amount("force", reserve.takes), amount("force", reserve.kept),
        amount("force", weight_wanted - short)))]


def _weight_check(reduction: Reduction, aim: float) -> Check:
    end = " is as near as it gets. " if reduction.off_tiller else " is as near as it gets with tiller kept. "
    return check("weight-reached", STOP, sentence(
        "The weight cannot come down to {} within the glass that must stay; {}" + end
        + "Do not go on through the glass.",
        amount("force", aim), amount("force", reduction.state.weight)))


def _tiller_check(reduction: Reduction, tiller_wanted: float) -> Check:
    amounts = (amount("length", tiller_wanted), amount("length", reduction.state.tiller))
    if reduction.too_heavy:
        return check("tiller-reached", STOP, sentence(
            "Nor can tiller come to {} within that glass: one limb has no more to give, and the other would "
            "have to gain stiffness. {} is as near as it gets.", *amounts))
    end = ("A lower weight would allow it." if reduction.lower_weight_helps
           else "No lower weight would allow it within the glass that must stay.")
    return check("tiller-reached", STOP, sentence(
        "Tiller cannot come to {} at this weight, since one limb would have to gain stiffness; {} is as near "
        "as it gets. " + end, *amounts))


def _thinnest(task: Task, reduction: Reduction) -> tuple[float, float]:
    """Return the glass left on back and belly at the thinnest place once the faces are finished [m]."""
    build, belly_share, faces = task.bow.build, task.sanding.belly_share, task.finishing.faces
    most = max(reduction.upper, reduction.lower)
    return build.back - most * (1 - belly_share) - faces, build.belly - most * belly_share - faces


def _whole_drop(past: Past, weight_wanted: float) -> float:
    """Return what the whole job takes, of the weight as the bow came."""
    return float(1 - weight_wanted / past.came)


def _drop_check(past: Past, weight_now: float, weight_wanted: float) -> Check:
    drop = _whole_drop(past, weight_wanted)
    if past.came > weight_now * (1 + ROUNDING):
        amounts = (amount("ratio", drop), amount("force", past.came), amount("force", weight_wanted),
                   amount("ratio", 1 - weight_now / past.came))
        if drop > USUAL_DROP + ROUNDING:
            return check("drop", WATCH, sentence(
                "The whole job takes {}, from {} as it came to {}; {} has gone already. More than {} is not "
                "ordinary on an old bow: ask whether another bow would serve the owner better.",
                *amounts, amount("ratio", USUAL_DROP, 0)))
        return check("drop", OK, sentence(
            "The whole job takes {}, from {} as it came to {}; {} has gone already. That is ordinary on an "
            "old bow.", *amounts))
    if past.strokes > 0 and not past.told and drop <= USUAL_DROP + ROUNDING:
        return check("drop", WATCH, sentence(
            "From now on the plan takes {}, but strokes have been done before. Give the weight as the bow "
            "came: up to {} in all is ordinary on an old bow.",
            amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))
    if drop > USUAL_DROP + ROUNDING:
        return check("drop", WATCH, sentence(
            "A drop of {} is more than the {} that is ordinary on an old bow: ask whether another bow would "
            "serve the owner better.", amount("ratio", drop), amount("ratio", USUAL_DROP, 0)))
    return check("drop", OK, sentence("A drop of {} is ordinary on an old bow.", amount("ratio", drop)))


def _stages_table(reduction: Reduction, stages: list[Stage]) -> Table:
    lines = []
    for number, stage in enumerate(stages):
        lines.append((str(number + 1), stage.share * reduction.upper, stage.share * reduction.lower,
                      stage.state.weight, stage.state.tiller))
    return Table("stages", "Stages: after each, flex the limbs 20 to 30 short draws, measure, then go on", (
        Column("stage", "Stage", TEXT), Column("upper", "Off the upper so far", "thickness"),
        Column("lower", "Off the lower so far", "thickness"), Column("weight", "Weight expected", "force"),
        Column("tiller", "Tiller expected", "length"),
    ), tuple(lines))


def _limbs(task: Task, reduction: Reduction) -> tuple[tuple[str, tuple[Station, ...], float], ...]:
    return (
        ("upper", task.bow.stations[0], reduction.upper),
        ("lower", task.bow.stations[1], reduction.lower),
    )


def _station_table(task: Task, reduction: Reduction) -> Table:
    lines = []
    build, belly_share = task.bow.build, task.sanding.belly_share
    for name, stations, removal in _limbs(task, reduction):
        for each in stations:
            taken = removal * sanded_share(task.sanding, each.position)
            share = (section_rigidity(each, build, taken, belly_share)
                     / section_rigidity(each, build, 0.0, belly_share))
            lines.append((name, each.position, each.thickness, each.thickness - taken,
                          build.back - taken * (1 - belly_share), build.belly - taken * belly_share, share,
                          _glass_share(each, build)))
    return Table("stations", "Each station before and after", (
        Column("limb", "Limb", TEXT), Column("position", "From the fadeout", "length"),
        Column("before", "Thickness now", "thickness"), Column("after", "Thickness then", "thickness"),
        Column("back", "Back glass then", "thickness"), Column("belly", "Belly glass then", "thickness"),
        Column("share", "Stiffness left", "ratio"), Column("glass", "Of it now from glass", "ratio"),
    ), tuple(lines))


def _glass_share(station: Station, build: Build) -> float:
    """Return the part of a section's stiffness that its two layers of glass carry."""
    back, _, belly = rigidity_shares(layers_of(station, build))
    return back + belly


def _feel_table(reduction: Reduction) -> Table:
    (weight_upper, weight_lower), (tiller_upper, tiller_lower) = reduction.rates
    lines = []
    shaving = amount("thickness", SHAVING, 3)
    for limb, weight, tiller in (("upper", weight_upper, tiller_upper), ("lower", weight_lower, tiller_lower),
                                 ("both", weight_upper + weight_lower, tiller_upper + tiller_lower)):
        lines.append((limb, shaving, amount("force", weight * SHAVING, 2), tiller * SHAVING))
    return Table("feel", sentence("What the first {} does", shaving), (
        Column("limb", "Off which limb", TEXT), Column("removal", "Taken off", "thickness"),
        Column("weight", "Weight", "force"), Column("tiller", "Tiller", "thickness"),
    ), tuple(lines))


def _chart(task: Task, reduction: Reduction) -> Chart:
    lines = []
    for name, stations, removal in _limbs(task, reduction):
        places = [each.position for each in stations]
        now = [each.thickness for each in stations]
        then = [each.thickness - removal * sanded_share(task.sanding, each.position) for each in stations]
        lines.append(Line(name + " limb now", "line", places, now))
        lines.append(Line(name + " limb then", "points", places, then))
    return Chart("thickness", "Thickness along the limbs, now and then",
                 Axis("From the fadeout", "length"), Axis("Thickness", "thickness"), tuple(lines))


def _drawing(task: Task, reduction: Reduction) -> Drawing:
    which = 0 if reduction.upper >= reduction.lower else 1
    name, stations, removal = _limbs(task, reduction)[which]
    middle = section_at(stations, task.bow.profile.length / 2)
    belly_share = task.sanding.belly_share
    taken = removal * sanded_share(task.sanding, middle.position)
    title = "Section at the middle of the " + name + " limb"
    return section_drawing(title, middle.thickness, task.bow.build,
                           taken * (1 - belly_share), taken * belly_share)


def _assumptions(
    draw_length: float, calibration: Calibration, task: Task, last_paper: str, finish_paper: str
) -> tuple[Sentence | str, ...]:
    return (
        sentence("Both weights are at the same draw, {}, stated in the marked way; computed weight and "
                 "tiller were set to yours by one stiffness factor a limb: {} upper, {} lower.",
                 amount("length", draw_length), amount("number", calibration.upper_factor),
                 amount("number", calibration.lower_factor)),
        "The bow is computed as it bends: rigid riser, each limb's stiffness from its measured sections, "
        "glass and core about the neutral axis, which shifts as glass comes off; the string may lie on a "
        "recurved tip. Slow drawing, no friction, no twist.",
        "Where the unstrung shape is not measured, the family's stands in for it. The removal depends on it "
        "little, the draw curve more.",
        sentence("What edges and finish sanding take is worked out on this bow: all four edges rounded to "
                 "{} along the whole limb, and {} off each face from " + last_paper.upper() + " to "
                 + finish_paper.upper() + ", every paper taking out the scratches of the one before.",
                 amount("length", task.finishing.radius), amount("thickness", task.finishing.faces, 4)),
        sentence("An error in a thickness counts threefold. At the bench {} to {} for each {} is quoted "
                 "(from memory, common practice); taking glass, the stiffest layer, costs more than such a "
                 "rule says.", amount("thickness", 2 * SHAVING), amount("thickness", 4 * SHAVING),
                 amount("force", POUND_FORCE)),
    )


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
            quantity("weight_now", "Draw weight now", "force", "53 lb", "5 lb", "150 lb", ("20 lb", "80 lb"),
                     "From a checked scale."),
            quantity("weight_came", "Draw weight as the bow came", "force", "", "5 lb", "150 lb",
                     ("20 lb", "80 lb"), "Once you have taken some off. Empty: as now.", optional=True),
            *target_weight("", "Empty: worked out from the edges and papers below."),
            quantity("draw_length", "Draw at which both are stated", "length", "28 in", "16 in", "34 in",
                     ("24 in", "31 in"),
                     "The marked standard is 28 in, 1 3/4 in of it beyond the pivot point."),
        ),
        group(
            "Tiller, upper minus lower distance",
            quantity("tiller_now", "Tiller now", "length", "5/16 in", "-1 1/2 in", "1 1/2 in",
                     ("-3/8 in", "1/2 in"), "Negative where the upper distance is the smaller."),
            target_tiller(),
            *reading_inputs(),
        ),
        group(
            "Where material comes off",
            quantity("zone_start", "Left alone at the fadeout", "length", "1 in", "0 in", "12 in",
                     ("1/2 in", "4 in"), "From the fadeout; the glass must run thick into the riser.",
                     role=RULE),
            quantity("zone_end", "Left alone at the tip", "length", "4 in", "0 in", "20 in",
                     ("2 in", "8 in"), "From the nock, along the limb.", role=RULE),
            quantity("feather", "Feathered over", "length", "2 in", "0 in", "8 in", ("1 in", "4 in"),
                     "At both ends of the sanded stretch, inside it.", role=RULE),
            belly_share(),
            *least_glass(),
            quantity("weight_read", "Draw weight when they were read", "force", "", "5 lb", "150 lb",
                     ("20 lb", "80 lb"), "Tells what strokes since have taken. Empty: as the bow came.",
                     optional=True),
        ),
        group("Edges and finish sanding", *edge_inputs()),
        section_group(),
        group("Lay-up", *layup_inputs()),
        measures(),
        shape_group(),
    ),
    results=(
        result("upper_removal", "Off the upper limb's thickness", "thickness"),
        result("upper_belly", "of it from the upper belly", "thickness"),
        result("upper_back", "of it from the upper back", "thickness"),
        result("lower_removal", "Off the lower limb's thickness", "thickness"),
        result("lower_belly", "of it from the lower belly", "thickness"),
        result("lower_back", "of it from the lower back", "thickness"),
        result("predicted_weight", "Weight after the faces", "force"),
        result("predicted_tiller", "Tiller after the faces", "length"),
        result("weight_change", "Change of weight", "force"),
        result("reserve", "Weight kept for edges and finish sanding", "force"),
        result("edges_take", "Edges and finish sanding take, by the model", "force"),
        result("weight_after_edges", "Weight after the edges too", "force"),
        result("whole_drop", "The whole job takes, of the weight as it came", "ratio"),
        result("belly_glass_left", "Belly glass left, thinnest", "thickness"),
        result("back_glass_left", "Back glass left, thinnest", "thickness"),
        result("cube_rule", "The simple cube rule would take", "thickness",
               "Stiffness with thickness cubed, one material, tiller left out."),
    ),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes", "grit-sizes",
             "scratch-and-grain", "wood-handbook"),
    example="An invented 64 in recurve that comes down from 53 lb to 45 lb at 28 in, its lower limb a little "
            "stiff.",
    compute=compute,
)
