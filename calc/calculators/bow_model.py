"""Bow model: a bow computed as it bends, from bench measures, and what sanding a stretch of it does."""


from calc.bows.cautions import GLASS_DUST
from calc.bows.inputs import (
    THE_BOW,
    belly_share,
    layup_inputs,
    least_glass,
    measures,
    reading_inputs,
    section_group,
    shape_group,
)
from calc.bows.measured import (
    MeasuredBow,
    calibrated,
    cannot_be_drawn,
    glass_to_stay,
    has_offsets,
    in_both,
    measured_bow,
    require_stretch,
    setup_of,
    unstrung_shape,
)
from calc.bows.model import Effect, Modelled
from calc.bows.model_checks import STACKING_FACTOR, effect_check, model_checks
from calc.bows.model_tables import bow_shapes, curve_chart, curve_table, strain_chart, work_table
from calc.bows.range_tables import causes_drawings, causes_tables, least_left, what_counts
from calc.bows.ranges import Planned, range_steps
from calc.bows.reading_errors import (
    ReadingErrors,
    give_or_take,
    how_well_read,
    reading_error,
    with_range,
)
from calc.bows.readings import CURVE_AS_IT_CAME
from calc.bows.stacking import Stacking, onset_told, stacking_read
from calc.bows.steps import drawn_steps, in_part
from calc.declaring import (
    TRIAL,
    Calculator,
    choice,
    group,
    quantity,
    result,
    rows,
)
from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.fitting import (
    BEST,
    Fit,
    fit_steps,
    root_mean_square,
)
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.thinning import Build, most_removal
from calc.mechanics.bow.tuning import (
    Calibration,
    Shares,
    bending_shares,
    read,
)
from calc.mechanics.bow.working import surface_strains
from calc.mechanics.draw_curve import (
    Curve,
    curve_from_readings,
    energy_to,
)
from calc.mechanics.likely_curve import likely_energy
from calc.numerics.normal import NORMAL_95
from calc.outcome import (
    STOP,
    Outcome,
    Refused,
    Sentence,
    amount,
    sentence,
)
from calc.quantities import INCH, ROUNDING

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

CURVE_POINTS = 20
FEWEST_TO_FIT = 4
"""Readings from which the unstrung shape of the family is scaled to fit them."""

FEWEST_TO_JUDGE = 2
"""Readings, besides the weight, from which it is judged whether the bow stacks."""

SCALES = (1.0, 1.15)
LEAST_SCALE, MOST_SCALE = 0.5, 1.5


def compute(
    weight: float,
    draw_length: float,
    tiller: float,
    measured: str,
    from_string_end: float | None,
    readings: tuple[tuple[float, ...], ...],
    brace_height: float,
    bow_length: float,
    riser_length: float,
    family: str,
    profile: tuple[tuple[float, ...], ...],
    throat: float | None,
    string_stiffness: float,
    upper_stations: tuple[tuple[float, ...], ...],
    lower_stations: tuple[tuple[float, ...], ...],
    glass_back: float,
    glass_belly: float,
    core: str,
    core_modulus: float | None,
    glass_modulus: float,
    sanded_limb: str,
    sanded_from: float | None,
    sanded_to: float | None,
    sanded_depth: float | None,
    belly_share: float | None,
    least_glass: float | None,
    glass_new: float | None,
    came_back: float | None,
    came_belly: float | None,
    strokes_since: int | None,
    weight_error: float,
    tiller_error: float,
    thickness_error: float,
    glass_error: float,
    core_error: float,
    reading_error: float,
) -> "Generator[float, None, Outcome]":
    """Return the computed bow: its curve, tiller, shapes, and the effect of sanding a stretch."""
    as_family = measured_bow(
        bow_length=bow_length, riser_length=riser_length, brace_height=brace_height, throat=throat,
        family=family, profile=profile, glass_back=glass_back, glass_belly=glass_belly,
        glass_modulus=glass_modulus, core=core, core_modulus=core_modulus, upper_stations=upper_stations,
        lower_stations=lower_stations, string_stiffness=string_stiffness,
    )
    length, build = as_family.profile.length, as_family.build
    setup = setup_of(draw_length, brace_height, measured, from_string_end)
    beyond = draw_length - setup.draw
    pairs = _reading_pairs(readings, brace_height, setup.draw, beyond)
    sanding = _sanding(sanded_limb, sanded_from, sanded_to, sanded_depth, belly_share, build, length)

    def bow_of(scale: float) -> MeasuredBow:
        return as_family.reshaped(unstrung_shape(family, profile, length, scale))

    yield 0.05
    calibration = calibrated(as_family.bow(), setup, weight, "tiller", tiller, pairs)
    to_fit = len(pairs) >= FEWEST_TO_FIT and not profile and has_offsets(family)
    if to_fit:
        search = fit_steps(lambda scale: bow_of(scale).bow(), SCALES, LEAST_SCALE, MOST_SCALE, setup,
                           weight, tiller, pairs, calibration)
        fit = yield from in_part(0.05, 0.55, search)
    else:
        fit = Fit(1.0, calibration, root_mean_square(calibration.misfits), BEST)
        yield 0.55
    model = Modelled(bow_of(fit.amount), setup, fit, to_fit, beyond)
    curve = yield from in_part(0.55, 0.75, _curve(model, fit.calibration.bow))
    yield 0.75
    errors = ReadingErrors(weight_error, tiller_error, thickness_error, glass_error, core_error)
    effect = None
    if sanding is not None and sanded_depth is not None:
        least = glass_to_stay(build, least_glass or 0.0, glass_new, (came_back, came_belly))
        effect = yield from in_part(0.75, 0.95, _effect(model, sanded_limb, sanding, sanded_depth, least,
                                                        strokes_since or 0, errors))
    strains = _strains(model)
    shares = _shares(model.fit.calibration, setup.draw)
    stacking = _stacking(readings, (draw_length, weight), brace_height + beyond, reading_error)
    stored = _stored(curve, draw_length, stacking, weight_error / weight)
    changes = None if effect is None else effect.changes
    yield 0.95
    return Outcome(
        headline=_headline(model, weight, effect, pairs, stored),
        values=_values(model, curve, strains, effect, pairs, stacking, errors, stored),
        checks=model_checks(model, weight, strains, pairs, curve, effect, stacking),
        tables=(curve_table(model, curve, pairs), work_table(model, strains, shares))
               + causes_tables(changes),
        charts=(curve_chart(curve, effect, pairs, beyond, weight_error / weight),
                strain_chart(model, strains)),
        drawings=(bow_shapes(model, draw_length),) + causes_drawings(changes, "the change of weight"),
        assumptions=ASSUMPTIONS + (() if effect is None else what_counts(changes)),
    )


# The bow -------------------------------------------------------------------------


def _reading_pairs(
    readings: tuple[tuple[float, ...], ...], brace_height: float, draw: float, beyond: float
) -> tuple[tuple[float, float], ...]:
    """Return readings as (draw from the pivot point, weight)."""
    pairs = []
    before = brace_height + 0.25 * INCH
    for index, row in enumerate(readings):
        distance = row[0] - beyond
        if distance <= before:
            raise Refused("readings", "Draw must rise from row to row and begin beyond the braced string; it "
                          "is stated in the marked way.", index, "draw")
        if distance > draw + 2 * INCH:
            raise Refused("readings", "This reading lies more than 2 in (51 mm) beyond the draw at which the "
                          "weight is stated: state the weight at the longest draw.", index, "draw")
        pairs.append((distance, row[1]))
        before = distance
    return tuple(pairs)


def _sanding(
    limb: str,
    start: float | None,
    end: float | None,
    depth: float | None,
    belly_share: float | None,
    build: Build,
    length: float,
) -> Sanding | None:
    if limb == "none" or start is None or end is None or depth is None or belly_share is None:
        return None
    require_stretch("sanded_to", start, end, length)
    through = most_removal(build, belly_share, 0.0, 0.0)
    if depth >= through * (1 - ROUNDING):
        raise Refused("sanded_depth", "That goes through the glass: so shared between back and belly, the "
                      "depth must be less than " + in_both("thickness", through) + "; you gave "
                      + in_both("thickness", depth) + ". Sand less.")
    return Sanding(start, end, (end - start) / 4, belly_share)


def _curve(model: Modelled, bow: Bow) -> "Generator[float, None, Curve]":
    """Return the draw-force curve of a braced bow, draws from the pivot point."""
    distances, forces = yield from drawn_steps(bow, model.setup.brace_height, model.setup.draw, CURVE_POINTS)
    return curve_from_readings(distances, forces, tuple([0.0] * len(forces)))


def _effect(
    model: Modelled, limb: str, sanding: Sanding, depth: float, least: tuple[float, float],
    strokes_since: int, errors: ReadingErrors,
) -> "Generator[float, None, Effect]":
    """Return what the bow comes to once a stretch is sanded."""
    factors = (model.fit.calibration.upper_factor, model.fit.calibration.lower_factor)
    removals = (depth if limb in ("upper", "both") else 0.0, depth if limb in ("lower", "both") else 0.0)
    bow = model.bow.bow(factors, sanding, removals)
    try:
        state = read(bow, model.setup, model.fit.calibration.state)
    except ValueError as error:
        raise Refused("sanded_depth", "The bow cannot be computed once " + in_both("thickness", depth)
                      + " is off that stretch: " + str(error) + ". Sand less.") from None
    curve = yield from in_part(0.0, 0.4, _curve(model, bow))
    planned = Planned(model.bow, model.setup, factors, sanding, removals, model.fit.calibration.state, state)
    ranges = yield from in_part(0.4, 1.0, range_steps(planned, errors, False))
    build = model.bow.build
    left = build.back - depth * (1 - sanding.belly_share), build.belly - depth * sanding.belly_share
    changes = None if ranges is None or depth == 0 else ranges.of_change()
    return Effect(state.weight, state.tiller, curve, left, least, strokes_since, ranges, changes)


def _stacking(
    readings: tuple[tuple[float, ...], ...], weight: tuple[float, float], start: float, error: float
) -> Stacking | None:
    """Return what readings and the weight, both as (draw, weight), say of stacking; None where they are too
    few.
    """
    known = sorted([(row[0], row[1]) for row in readings] + [weight])
    if len(readings) < FEWEST_TO_JUDGE or error <= 0 or known[-1][1] <= 0:
        return None
    return stacking_read(known, start, error, STACKING_FACTOR)


def _shares(calibration: Calibration, draw: float) -> Shares:
    try:
        return bending_shares(calibration.bow, draw, calibration.state.drawn)
    except ValueError as error:
        raise cannot_be_drawn(draw, error) from None


def _stored(
    curve: Curve, draw_length: float, stacking: Stacking | None, off: float
) -> tuple[float, float]:
    """Return the energy stored, with its standard error [J]: by the readings, or that of the weight alone.

    off [1]: standard error of the weight.
    """
    energy = energy_to(curve, curve.draws[-1])
    return energy, off * energy if stacking is None else likely_energy(stacking.likely, draw_length)[1]


def _strains(model: Modelled) -> tuple[tuple[float, ...], tuple[float, ...]]:
    drawn, bow = model.fit.calibration.state.drawn, model.bow
    return (surface_strains(drawn.upper, bow.stations[0], bow.build),
            surface_strains(drawn.lower, bow.stations[1], bow.build))


# What is said --------------------------------------------------------------------


def _headline(
    model: Modelled,
    weight: float,
    effect: Effect | None,
    pairs: tuple[tuple[float, float], ...],
    stored: tuple[float, float],
) -> Sentence:
    if effect is not None:
        return _effect_said(model, weight, effect)
    energy = with_range("energy", stored[0], stored[1])
    if pairs:
        return sentence("The computed bow meets your readings to {} and stores " + energy.template
                        + " at {}.", *((amount("force", model.fit.misfit),) + energy.amounts
                                       + (amount("force", weight),)))
    return sentence("The computed bow stores " + energy.template + " at {}; no readings were given to check "
                    "its curve against.", *(energy.amounts + (amount("force", weight),)))


def _effect_said(model: Modelled, weight: float, effect: Effect) -> Sentence:
    lost, changes = weight - effect.weight, effect.changes
    if effect_check(model, effect).level == STOP:
        left = effect.left
        certain = left[0] < effect.least[0] - ROUNDING or left[1] < effect.least[1] - ROUNDING
        if not certain and effect.ranges is not None:
            left = least_left(left, effect.ranges.glass)
        return sentence(
            "Do not sand that: it " + ("leaves" if certain else "may leave") + " {} of glass on the back and "
            "{} on the belly, less than may stay. Draw weight would fall by {}.",
            amount("thickness", left[0]), amount("thickness", left[1]), amount("force", lost))
    less = with_range("force", lost, None if changes is None else changes.weight)
    moved = with_range("length", effect.tiller - model.fit.calibration.state.tiller,
                       None if changes is None else changes.tiller)
    return sentence("Sanding that stretch takes " + less.template + " of draw weight and moves tiller by "
                    + moved.template + ", to {} and {}.", *(less.amounts + moved.amounts + (
                        amount("force", effect.weight), amount("length", effect.tiller))))


def _values(
    model: Modelled,
    curve: Curve,
    strains: tuple[tuple[float, ...], tuple[float, ...]],
    effect: Effect | None,
    pairs: tuple[tuple[float, float], ...],
    stacking: Stacking | None,
    errors: ReadingErrors,
    stored: tuple[float, float],
) -> tuple[tuple[str, float | None], ...]:
    calibration = model.fit.calibration
    braced = calibration.state.braced
    end = curve.draws[-1]
    changes = None if effect is None else effect.changes
    return (
        ("weight", calibration.state.weight),
        ("computed_weight_error", NORMAL_95 * errors.weight),
        ("tiller", calibration.state.tiller),
        ("computed_tiller_error", NORMAL_95 * errors.tiller),
        ("misfit", model.fit.misfit if pairs else None),
        ("upper_factor", calibration.upper_factor),
        ("lower_factor", calibration.lower_factor),
        ("profile_scale", model.fit.amount if model.fitted else None),
        ("stored_energy", stored[0]),
        ("stored_energy_error", NORMAL_95 * stored[1]),
        ("fullness", stored[0] / (curve.forces[-1] * (end - curve.draws[0]))),
        ("stacking_onset", _onset(curve, stacking, model.beyond)),
        ("stacking_probability", None if stacking is None else stacking.judgement.probability),
        ("string_length", braced.string_length),
        ("string_tension", braced.tension),
        ("contact", model.bow.profile.length - braced.contact_upper),
        ("peak_strain", max(max(strains[0]), max(strains[1]))),
        ("sanded_weight_change", None if effect is None else effect.weight - calibration.state.weight),
        ("sanded_weight_change_error", None if changes is None else NORMAL_95 * changes.weight),
        ("sanded_tiller_change", None if effect is None else effect.tiller - calibration.state.tiller),
        ("sanded_tiller_change_error", None if changes is None else NORMAL_95 * changes.tiller),
        ("sanded_back_glass", None if effect is None else effect.left[0]),
        ("sanded_back_glass_error", None if changes is None else NORMAL_95 * changes.glass[0]),
        ("sanded_belly_glass", None if effect is None else effect.left[1]),
        ("sanded_belly_glass_error", None if changes is None else NORMAL_95 * changes.glass[1]),
    )


def _onset(curve: Curve, stacking: Stacking | None, beyond: float) -> float | None:
    """Return from which draw on it stacks, in the marked way [m]: by the readings, else as computed."""
    if stacking is not None:
        return stacking.onset
    computed = onset_told(curve, None, STACKING_FACTOR)
    return None if computed is None else computed + beyond


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Slow drawing in one plane: rigid riser, slender limbs that do not twist, no friction. The string may "
    "lie on a recurved tip and stretches as stated.",
    "Both limbs have the same unstrung shape. Where it is not measured the family's stands in, its offsets "
    "scaled to the readings if there are four or more; tiller of a recurve depends on that shape strongly.",
    "Each limb's stiffness is reckoned from its sections and set to the measured weight and tiller by one "
    "factor a limb.",
    "Sanding is feathered over a quarter of the stretch at both ends and is taken not to change the unstrung "
    "shape.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "A computed bow says nothing of cracks, glue or fatigue. Inspect the real one, and prove it from a "
    "distance.",
    "Take less than the model says, flex the limbs 20 to 30 short draws, measure, and calibrate again.",
    GLASS_DUST,
)

_SANDED = ("sanded_limb", ("upper", "lower", "both"))

CALCULATOR = Calculator(
    id="bow-model",
    title="Bow model",
    purpose="Computes a bow as it bends, from bench measures: draw curve, tiller, shape, and what sanding "
            "does.",
    groups=(
        group(
            "On the bench",
            quantity("weight", "Draw weight", "force", default="53 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="From a checked scale."),
            quantity("draw_length", "Draw at which it is read", "length", default="28 in", low="14 in",
                     high="34 in", usual=("24 in", "31 in"),
                     help="In the marked way: from the pivot point plus 1 3/4 in (44 mm)."),
            quantity("tiller", "Tiller", "length", default="5/16 in", low="-1 1/2 in", high="1 1/2 in",
                     usual=("-3/8 in", "1/2 in"), help="Upper minus lower distance."),
            *reading_inputs(),
            rows("readings", "Weight at other draws", (
                quantity("draw", "Draw", "length", default="20 in", low="6 in", high="36 in",
                         usual=("9 in", "32 in")),
                quantity("weight", "Weight", "force", default="30 lb", low="0 lb", high="200 lb",
                         usual=("0 lb", "90 lb")),
            ), default=CURVE_AS_IT_CAME.rsplit(";", 1)[0], fewest=0, most=40,
                 help="May be empty. Four or more are fitted."),
        ),
        measures(),
        section_group(),
        group("Lay-up", *layup_inputs(), under=THE_BOW),
        shape_group(),
        group(
            "Try sanding a stretch",
            choice("sanded_limb", "Limb to sand", (
                ("upper", "Upper limb"), ("lower", "Lower limb"), ("both", "Both limbs"),
                ("none", "Neither")), default="lower", role=TRIAL),
            quantity("sanded_from", "From", "length", default="6 in", low="0 in", high="35 in",
                     help="Distance from the fadeout.", when=_SANDED, role=TRIAL),
            quantity("sanded_to", "To", "length", default="14 in", low="1 in", high="40 in",
                     help="Distance from the fadeout.", when=_SANDED, role=TRIAL),
            quantity("sanded_depth", "Depth", "thickness", default="0.006 in", low="0 in", high="0.100 in",
                     usual=("0 in", "0.020 in"),
                     help="Off the total thickness, in the middle of the stretch.", when=_SANDED, role=TRIAL),
            belly_share(_SANDED),
            *least_glass(_SANDED),
        ),
        how_well_read(reading_error()),
    ),
    results=(
        result("weight", "Weight, computed", "force"),
        give_or_take("computed_weight_error", "force"),
        result("tiller", "Tiller, computed", "length"),
        give_or_take("computed_tiller_error", "length"),
        result("misfit", "Computed less read, root mean square", "force"),
        result("upper_factor", "Upper limb, measured over reckoned stiffness", "ratio"),
        result("lower_factor", "Lower limb, measured over reckoned stiffness", "ratio"),
        result("profile_scale", "The family's offsets, scaled by", "ratio"),
        result("stored_energy", "Stored energy", "energy"),
        give_or_take("stored_energy_error", "energy"),
        result("fullness", "Energy over weight times stroke", "ratio", "50 % is a straight line."),
        result("stacking_onset", "Stacking begins at", "length",
               "Slope 1.25 times the middle third's. By your readings; by the computed curve if they are too "
               "few."),
        result("stacking_probability", "Probability that it stacks", "ratio", "By your readings."),
        result("string_length", "String length, unstretched", "length"),
        result("string_tension", "String tension, braced", "force"),
        result("contact", "String lies on the tip, braced, over", "length"),
        result("peak_strain", "Largest strain at a face", "ratio"),
        result("sanded_weight_change", "Weight, by that sanding", "force"),
        give_or_take("sanded_weight_change_error", "force"),
        result("sanded_tiller_change", "Tiller, by that sanding", "length"),
        give_or_take("sanded_tiller_change_error", "length"),
        result("sanded_back_glass", "Back glass left there, thinnest", "thickness"),
        give_or_take("sanded_back_glass_error", "thickness"),
        result("sanded_belly_glass", "Belly glass left there, thinnest", "thickness"),
        give_or_take("sanded_belly_glass_error", "thickness"),
    ),
    acted_on=("weight", "tiller", "misfit"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes",
             "wood-handbook"),
    example="An invented 64 in recurve of 53 lb at 28 in, read at nine draws, before its lower limb is "
            "sanded.",
    first=("weight", "tiller", "sanded_limb", "sanded_from", "sanded_to", "sanded_depth"),
    compute=compute,
    takes_off=True,
)
