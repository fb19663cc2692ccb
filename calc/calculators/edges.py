"""Edges: how far to round or flatten the edges of both limbs so that the last pound comes off with them."""


from calc.bows.cautions import GLASS_DUST
from calc.bows.edge_checks import EdgePlan, edge_checks
from calc.bows.edging import (
    NEAR_ENOUGH,
    RADII,
    edge_chart,
    edge_costs,
    edge_table,
    edged,
    glass_at_edge,
    reach_for,
    usual_profiles,
    width_for,
    with_reach,
)
from calc.bows.inputs import (
    THE_BOW,
    layup_inputs,
    measures,
    reading_inputs,
    section_group,
    shape_group,
    stated_draw,
)
from calc.bows.measured import (
    MeasuredBow,
    calibrated,
    measured_bow,
    require_stretch,
    setup_of,
)
from calc.bows.targets import finish_sanding, sides_and_papers
from calc.bows.workpiece import cannot_be_finished, most_reach, require_room
from calc.declaring import RULE, TRIAL, Calculator, choice, group, quantity, result
from calc.mechanics.bow.edges import FADE, Finishing
from calc.mechanics.bow.tuning import BowState, Setup, read
from calc.outcome import Outcome, Refused, Sentence, amount, sentence

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator

WIDEST = 0.2
"""Of the narrowest width, how much of it is tried to come off the sides instead."""

_FACES = (("both", "All four of a limb"), ("belly", "The belly's two"), ("back", "The back's two"))
_LIMBS = (("both", "Both"), ("upper", "Upper only"), ("lower", "Lower only"))
_SHAPES = (("round", "Rounded to a radius"), ("flat", "A flat at 45 degrees"))


def compute(
    weight_now: float,
    weight_wanted: float,
    draw_length: float,
    tiller_now: float,
    measured: str,
    from_string_end: float | None,
    shape: str,
    faces: str,
    limbs: str,
    edge_radius: float,
    edges_from: float,
    edges_to: float,
    edge_now: float,
    edge_width: float,
    last_paper: str,
    finish_paper: str,
    scratch: float,
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
    """Return how far to take the edges, and what usual profiles of them cost."""
    if weight_wanted > weight_now:
        raise Refused("weight_wanted", "The weight wanted is more than the weight now: edges only bring it "
                      "down. Swap the two, or mend one.")
    bow = measured_bow(
        bow_length=bow_length, riser_length=riser_length, brace_height=brace_height, throat=throat,
        family=family, profile=profile, glass_back=glass_back, glass_belly=glass_belly,
        glass_modulus=glass_modulus, core=core, core_modulus=core_modulus, upper_stations=upper_stations,
        lower_stations=lower_stations, string_stiffness=string_stiffness,
    )
    length = bow.profile.length
    require_stretch("edges_to", edges_from, length - edges_to, length)
    work = Finishing(edge_radius, edge_now, edge_width, finish_sanding(last_paper, finish_paper, scratch),
                     shape == "flat", faces, edges_from, length - edges_to)
    glass = glass_back, glass_belly
    require_room(bow, work, min(glass))
    setup = setup_of(draw_length, brace_height, measured, from_string_end)
    yield 0.05
    calibration = calibrated(bow.bow(), setup, weight_now, "tiller_now", tiller_now)
    factors = calibration.upper_factor, calibration.lower_factor
    state_of = _reader(bow, factors, setup, limbs, calibration.state)
    yield 0.3
    most = most_reach(bow, work)
    plan = _plan(bow, factors, state_of, weight_now, weight_wanted, work, most)
    yield 0.6
    profiles = usual_profiles(work, RADII) + [("full round", with_reach(work, most, False))]
    costs = edge_costs(state_of, plan.before, work, profiles, glass, most)
    yield 0.8
    return Outcome(
        headline=_headline(plan, draw_length, faces, limbs),
        values=_values(plan, tiller_now, _width_instead(plan, state_of), glass),
        checks=edge_checks(plan, tiller_now),
        tables=(edge_table(costs),),
        charts=(edge_chart(costs, None if work.flat else plan.reach, plan.to_take),),
        assumptions=_assumptions(plan, last_paper, finish_paper),
    )


def _reader(
    bow: MeasuredBow, factors: tuple[float, float], setup: Setup, limbs: str, near: BowState
) -> "Callable[[Finishing], BowState]":
    """Return what reads the bow with work on its edges done."""
    def state_of(work: Finishing) -> BowState:
        try:
            return read(edged(bow, factors, work, limbs), setup, near)
        except ValueError as error:
            raise cannot_be_finished(work, error) from None
    return state_of


def _plan(
    bow: MeasuredBow, factors: tuple[float, float], state_of: "Callable[[Finishing], BowState]", now: float,
    wanted: float, work: Finishing, most: float,
) -> EdgePlan:
    """Return the edges that bring the bow to its weight, looked for within the glass first."""
    before = state_of(with_reach(work, work.radius_before))
    back, belly = bow.build.back - work.faces, bow.build.belly - work.faces
    glass = {"both": min(back, belly), "back": back, "belly": belly}[work.faces_edged]
    reach = in_glass = None
    if before.weight > wanted * (1 + NEAR_ENOUGH):
        if work.radius_before < glass <= most:
            in_glass = before.weight - state_of(with_reach(work, glass)).weight
        within = in_glass is not None and in_glass >= before.weight - wanted
        reach = reach_for(state_of, work, before, wanted, glass if within else most)
    after = before if reach is None else state_of(with_reach(work, reach))
    return EdgePlan(bow, factors, now, wanted, work, before, glass, reach, after, in_glass, state_of(work))


def _width_instead(plan: EdgePlan, state_of: "Callable[[Finishing], BowState]") -> float | None:
    if plan.done():
        return None
    narrowest = min([each.width for limb in plan.bow.stations for each in limb]) - plan.work.width
    try:
        return width_for(state_of, plan.work, plan.before, plan.wanted, WIDEST * narrowest)
    except Refused:
        return None  # nobody asked for so narrow a limb


# What is said --------------------------------------------------------------------


def _headline(plan: EdgePlan, draw_length: float, faces: str, limbs: str) -> Sentence:
    if plan.done():
        return sentence("Leave the edges as they are, but for their sharp corner: with the faces finished "
                        "the bow comes to {} at {}.", amount("force", plan.before.weight),
                        amount("length", draw_length))
    if plan.reach is None or plan.reaches_core():
        return sentence("Edges cannot take the last {}: stay within the glass, {}.",
                        amount("force", plan.to_take, 2), amount("thickness", plan.glass))
    edges = {"both": "all four edges", "belly": "both edges of the belly",
             "back": "both edges of the back"}[faces]
    limb = {"both": "both limbs", "upper": "the upper limb", "lower": "the lower limb"}[limbs]
    how = "Take a flat of {} to " if plan.work.flat else "Round to a radius of {} "
    return sentence(how + edges + " of " + limb + ": that takes the last {}, weight comes to {} at {} and "
                    "tiller to {}.", amount("thickness", plan.reach), amount("force", plan.to_take, 2),
                    amount("force", plan.after.weight), amount("length", draw_length),
                    amount("length", plan.after.tiller))


def _values(
    plan: EdgePlan, tiller_now: float, width: float | None, glass: tuple[float, float]
) -> tuple[tuple[str, float | None], ...]:
    within = not plan.reaches_core()
    return (
        ("reach", plan.reach if within else None),
        ("to_take", max(0.0, plan.to_take)),
        ("faces_take", plan.now - plan.before.weight),
        ("weight_after", plan.after.weight if within else None),
        ("tiller_after", plan.after.tiller if within else None),
        ("tiller_change", plan.after.tiller - tiller_now if within else None),
        ("glass_left", glass_at_edge(glass, with_reach(plan.work, plan.reach or plan.work.radius_before))
         if within else None),
        ("width_instead", width),
        ("most_in_glass", plan.in_glass),
        ("tried_takes", plan.before.weight - plan.tried.weight),
        ("tried_weight", plan.tried.weight),
        ("tried_tiller", plan.tried.tiller),
        ("tried_glass", glass_at_edge(glass, plan.work)),
    )


def _assumptions(plan: EdgePlan, last_paper: str, finish_paper: str) -> tuple[Sentence | str, ...]:
    return (
        "The bow is computed as it bends, from its sections with their corners cut away; one stiffness "
        "factor a limb sets weight and tiller to yours. Slow drawing, no friction, no twist.",
        sentence("Finish sanding from " + last_paper.upper() + " to " + finish_paper.upper() + " takes {} "
                 "off each face, and comes with the edges.", amount("thickness", plan.work.faces, 4)),
        sentence("Both edges of a face are alike, in full over the stretch given; beyond it they go back "
                 "to nothing over {}. A rounder edge stays as it is.", amount("length", FADE)),
        "A flat reaches in as far on the face as on the side; seen square on it is 1.4 times as wide.",
        "Glass counts as one thickness a face all along. Where it is thinner the core shows sooner: look at "
        "the edge with a lens at several places, and go by the thinnest.",
    )


CAUTIONS: tuple[Sentence | str, ...] = (
    "Bow unstrung. A fresh edge of glass is as sharp as a knife and lifts needles: gloves that fit, goggles, "
    "strokes from outside into the glass.",
    GLASS_DUST,
    "Take half of it, all edges alike, flex the limbs 20 to 30 short draws, measure, and go on; the first "
    "full draw after it from a distance, with eye protection.",
    "Rounding makes no weak limb sound, and a splinter is glued before its edge is rounded.",
)

CALCULATOR = Calculator(
    id="edges",
    title="Edges",
    purpose="Says how far to round or flatten the limbs' edges so that they take the last of the weight.",
    groups=(
        group(
            "Weight and tiller",
            quantity("weight_now", "Draw weight now", "force", default="45.7 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="From a checked scale, the faces done."),
            quantity("weight_wanted", "Draw weight wanted", "force", default="45 lb", low="5 lb",
                     high="150 lb", usual=("20 lb", "70 lb"), help="The finished bow, at the same draw."),
            stated_draw(),
            quantity("tiller_now", "Tiller now", "length", default="1/16 in", low="-1 1/2 in",
                     high="1 1/2 in", usual=("-3/8 in", "1/2 in"),
                     help="Upper minus lower distance, negative where the upper is the smaller."),
            *reading_inputs(),
        ),
        group(
            "The edges",
            choice("shape", "Shape", _SHAPES, role=RULE),
            choice("faces", "Which edges", _FACES, role=TRIAL),
            choice("limbs", "Which limb", _LIMBS, help="One limb alone moves tiller.", role=TRIAL),
            quantity("edge_radius", "Radius to try", "length", default="1/32 in", low="0 in", high="1/4 in",
                     usual=("1/64 in", "3/32 in"), help="Of a flat: how far it reaches in on face and side.",
                     role=TRIAL),
            quantity("edges_from", "In full from, off the fadeout", "length", default="0 in", low="0 in",
                     high="20 in", usual=("0 in", "4 in"), help="0: they go on over the riser's ramp.",
                     role=RULE),
            quantity("edges_to", "In full to, off the nock", "length", default="2 in", low="0 in",
                     high="20 in", usual=("1 in", "6 in"), help="Strokes end before the tip overlay.",
                     role=RULE),
            *sides_and_papers(),
        ),
        section_group((
            "2 in:1 5/8 in:0.285 in;7 in:1 9/16 in:0.268 in;13 in:1 3/8 in:0.252 in;19 in:13/16 in:0.247 in",
            "2 in:1 5/8 in:0.289 in;7 in:1 9/16 in:0.269 in;13 in:1 3/8 in:0.253 in;19 in:13/16 in:0.250 in",
        )),
        group("Lay-up", *layup_inputs("0.037 in", "0.034 in"), under=THE_BOW),
        measures(),
        shape_group(),
    ),
    results=(
        result("reach", "Radius, or reach of a flat, that takes it", "thickness"),
        result("to_take", "Left to the edges", "force"),
        result("faces_take", "Finish sanding, and width, take before", "force"),
        result("weight_after", "Weight with it", "force"),
        result("tiller_after", "Tiller with it", "length"),
        result("tiller_change", "Tiller moves by", "length"),
        result("glass_left", "Glass at the very edge with it", "thickness"),
        result("width_instead", "Or width off both sides together, edges as they are", "thickness"),
        result("most_in_glass", "Most that edges as deep as the glass take", "force"),
        result("tried_takes", "The radius to try takes", "force"),
        result("tried_weight", "Weight with that", "force"),
        result("tried_tiller", "Tiller with that", "length"),
        result("tried_glass", "Glass at the very edge with that", "thickness"),
    ),
    acted_on=("reach", "weight_after", "tiller_after", "glass_left"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "bench-practice", "elastica", "family-shapes", "geometry",
             "grit-sizes", "scratch-and-grain", "wood-handbook"),
    example="An invented 64 in recurve whose faces are done: 45.7 lb at 28 in, and 45 lb is agreed.",
    first=("weight_now", "weight_wanted", "tiller_now", "faces", "limbs", "edge_radius"),
    compute=compute,
    takes_off=True,
)
