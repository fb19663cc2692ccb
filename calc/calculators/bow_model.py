"""Bow model: a bow computed as it bends, from bench measures, and what sanding a stretch of it does."""


from calc.bows.cautions import GLASS_DUST
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
from calc.bows.readings import CURVE_AS_IT_CAME
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
    Shares,
    bending_shares,
    read,
)
from calc.mechanics.bow.working import surface_strains
from calc.mechanics.draw_curve import (
    Curve,
    curve_from_readings,
    energy_to,
    stacking_onset,
)
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
    effect = None
    if sanding is not None and sanded_depth is not None:
        least = glass_to_stay(build, least_glass or 0.0, glass_new, (came_back, came_belly))
        effect = yield from in_part(0.75, 0.95, _effect(model, sanded_limb, sanding, sanded_depth, least,
                                                        strokes_since or 0))
    strains = _strains(model)
    shares = _shares(model.fit.calibration.bow, setup.draw)
    yield 0.95
    return Outcome(
        headline=_headline(model, weight, curve, effect, pairs),
        values=_values(model, curve, strains, effect, pairs),
        checks=model_checks(model, weight, strains, pairs, curve, effect),
        tables=(curve_table(model, curve, pairs), work_table(model, strains, shares)),
        charts=(curve_chart(curve, effect, pairs, beyond), strain_chart(model, strains)),
        drawings=(bow_shapes(model, draw_length),),
        assumptions=ASSUMPTIONS,
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
    model: Modelled, limb: str, sanding: Sanding, depth: float, least: tuple[float, float], strokes_since: int
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
    curve = yield from _curve(model, bow)
    build = model.bow.build
    left = build.back - depth * (1 - sanding.belly_share), build.belly - depth * sanding.belly_share
    return Effect(state.weight, state.tiller, curve, left, least, strokes_since)


def _shares(bow: Bow, draw: float) -> Shares:
    try:
        return bending_shares(bow, draw)
    except ValueError as error:
        raise cannot_be_drawn(draw, error) from None


def _strains(model: Modelled) -> tuple[tuple[float, ...], tuple[float, ...]]:
    drawn, bow = model.fit.calibration.state.drawn, model.bow
    return (surface_strains(drawn.upper, bow.stations[0], bow.build),
            surface_strains(drawn.lower, bow.stations[1], bow.build))


# What is said --------------------------------------------------------------------


def _headline(
    model: Modelled,
    weight: float,
    curve: Curve,
    effect: Effect | None,
    pairs: tuple[tuple[float, float], ...],
) -> Sentence:
    state = model.fit.calibration.state
    if effect is not None and effect_check(model, effect).level == STOP:
        return sentence(
            "Do not sand that: it leaves {} of glass on the back and {} on the belly, less than may stay. "
            "Draw weight would fall by {}.",
            amount("thickness", effect.left[0]), amount("thickness", effect.left[1]),
            amount("force", weight - effect.weight))
    if effect is not None:
        return sentence(
            "Sanding that stretch takes {} of draw weight and moves tiller by {}, to {} and {}.",
            amount("force", weight - effect.weight), amount("length", effect.tiller - state.tiller),
            amount("force", effect.weight), amount("length", effect.tiller))
    stored = energy_to(curve, curve.draws[-1])
    if pairs:
        return sentence("The computed bow meets your readings to {} and stores {} at {}.",
                        amount("force", model.fit.misfit), amount("energy", stored), amount("force", weight))
    return sentence("The computed bow stores {} at {}; no readings were given to check its curve against.",
                    amount("energy", stored), amount("force", weight))


def _values(
    model: Modelled,
    curve: Curve,
    strains: tuple[tuple[float, ...], tuple[float, ...]],
    effect: Effect | None,
    pairs: tuple[tuple[float, float], ...],
) -> tuple[tuple[str, float | None], ...]:
    calibration = model.fit.calibration
    braced = calibration.state.braced
    end = curve.draws[-1]
    onset = stacking_onset(curve, STACKING_FACTOR)
    return (
        ("weight", calibration.state.weight),
        ("tiller", calibration.state.tiller),
        ("misfit", model.fit.misfit if pairs else None),
        ("upper_factor", calibration.upper_factor),
        ("lower_factor", calibration.lower_factor),
        ("profile_scale", model.fit.amount if model.fitted else None),
        ("stored_energy", energy_to(curve, end)),
        ("fullness", energy_to(curve, end) / (curve.forces[-1] * (end - curve.draws[0]))),
        ("stacking_onset", None if onset is None else onset + model.beyond),
        ("string_length", braced.string_length),
        ("string_tension", braced.tension),
        ("contact", model.bow.profile.length - braced.contact_upper),
        ("peak_strain", max(max(strains[0]), max(strains[1]))),
        ("sanded_weight_change", None if effect is None else effect.weight - calibration.state.weight),
        ("sanded_tiller_change", None if effect is None else effect.tiller - calibration.state.tiller),
        ("sanded_back_glass", None if effect is None else effect.left[0]),
        ("sanded_belly_glass", None if effect is None else effect.left[1]),
    )


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
        group("Lay-up", *layup_inputs()),
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
    ),
    results=(
        result("weight", "Weight, computed", "force"),
        result("tiller", "Tiller, computed", "length"),
        result("misfit", "Computed less read, root mean square", "force"),
        result("upper_factor", "Upper limb, measured over reckoned stiffness", "ratio"),
        result("lower_factor", "Lower limb, measured over reckoned stiffness", "ratio"),
        result("profile_scale", "The family's offsets, scaled by", "ratio"),
        result("stored_energy", "Stored energy", "energy"),
        result("fullness", "Energy over weight times stroke", "ratio", "50 % is a straight line."),
        result("stacking_onset", "Stacking begins at", "length", "Slope 1.25 times the middle third's."),
        result("string_length", "String length, unstretched", "length"),
        result("string_tension", "String tension, braced", "force"),
        result("contact", "String lies on the tip, braced, over", "length"),
        result("peak_strain", "Largest strain at a face", "ratio"),
        result("sanded_weight_change", "Weight, by that sanding", "force"),
        result("sanded_tiller_change", "Tiller, by that sanding", "length"),
        result("sanded_back_glass", "Back glass left there, thinnest", "thickness"),
        result("sanded_belly_glass", "Belly glass left there, thinnest", "thickness"),
    ),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes",
             "wood-handbook"),
    example="An invented 64 in recurve of 53 lb at 28 in, read at nine draws, before its lower limb is "
            "sanded.",
    compute=compute,
)
