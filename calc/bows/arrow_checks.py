"""What the arrow calculator warns of: mass, stiffness, balance, length, draw, string."""

from calc.outcome import (
    OK,
    STOP,
    WATCH,
    Check,
    Sentence,
    amount,
    check,
    sentence,
)
from calc.quantities import INCH, ROUNDING
from calc.tables import practice, woods

READING_ERROR = 0.01
"""Share of a chronograph's speed to tell by how much one reading can mislead."""

LEAST_MASS = practice.find("arrow-never").low
LOW_MASS = practice.find("arrow-light").low
USUAL_MASS = practice.find("arrow-usual").high
"""Arrow mass per draw weight: never below, watch below, usual up to (common practice)."""

BALANCE_USUAL = (practice.find("balance").low, practice.find("balance").high)
CLEAR_OF_BOW = INCH / 2
"""How far ahead of its middle an arrow usually balances, and the least of shaft beyond full draw (common
practice)."""

BEST_EFFICIENCY = 0.85
LEAST_EFFICIENCY = 0.5
"""More and less of the stored energy than bows of this kind give to an arrow (from memory: 60 to 80 %)."""

SLACK = 1 + ROUNDING
"""So that a value typed as exactly the limit is on its good side whatever its last bits."""


def mass_check(mass_per_weight: float) -> Check:
    """Return whether the arrow is heavy enough for the bow [kg/N]."""
    shown = amount("mass_per_force", mass_per_weight)
    if mass_per_weight * SLACK < LEAST_MASS:
        return check("mass", STOP, sentence(
            "The arrow weighs {}. Never shoot less than {}: it is close to a dry fire and can break the bow "
            "(common practice; bows are rated for speed at that mass).",
            shown, amount("mass_per_force", LEAST_MASS)))
    if mass_per_weight * SLACK < LOW_MASS:
        return check("mass", WATCH, sentence(
            "The arrow weighs {}. Below {} it is too light for an old bow, and for hunting (common "
            "practice).", shown, amount("mass_per_force", LOW_MASS)))
    if mass_per_weight <= USUAL_MASS * SLACK:
        return check("mass", OK, sentence(
            "The arrow weighs {}, inside the usual {} to {} (common practice).", shown,
            amount("mass_per_force", LOW_MASS), amount("mass_per_force", USUAL_MASS)))
    return check("mass", OK, sentence(
        "The arrow weighs {}, above the usual {} to {} (common practice): slower, and kind to the bow.",
        shown, amount("mass_per_force", LOW_MASS), amount("mass_per_force", USUAL_MASS)))


def spine_check(low: float, high: float, spine_weight: float) -> Check:
    """Return whether the shaft is inside the range of spine weights [N]."""
    if low <= spine_weight * SLACK and spine_weight <= high * SLACK:
        return check("spine", OK, "The shaft's stiffness is inside the range that the trade would choose. "
                     "Shooting it decides.")
    if spine_weight > high:
        return check("spine", WATCH, sentence(
            "The shaft is {} stiffer than the range that the trade would choose. A heavier point brings them "
            "nearer; shooting it decides.", amount("force", spine_weight - high)))
    return check("spine", WATCH, sentence(
        "The shaft is {} weaker than the range that the trade would choose. A lighter point brings them "
        "nearer, or a shorter shaft where the draw allows it; shooting it decides.",
        amount("force", low - spine_weight)))


def balance_check(forward: float) -> Check:
    """Return whether the arrow balances where arrows do, as a part of its length."""
    least, most = BALANCE_USUAL
    shown = amount("ratio", forward)
    bounds = (amount("ratio", least, 0), amount("ratio", most, 0))
    if least <= forward * SLACK and forward <= most * SLACK:
        return check("balance", OK, sentence(
            "It balances {} of its length ahead of the middle, inside the usual {} to {} (common practice).",
            shown, *bounds))
    word = "little" if forward < least else "much"
    return check("balance", WATCH, sentence(
        "It balances {} of its length ahead of the middle: " + word + ", where {} to {} is usual (common "
        "practice).", shown, *bounds))


def length_check(length: float, draw_length: float) -> Check:
    """Return whether the shaft is long enough for the draw [m]."""
    if length * SLACK < draw_length:
        return check("length", STOP, sentence(
            "The shaft is {} shorter than the draw: its point would come inside the bow, leave the shelf "
            "and strike the hand.", amount("length", draw_length - length)))
    if length * SLACK < draw_length + CLEAR_OF_BOW:
        return check("length", WATCH, sentence(
            "The shaft reaches only {} beyond full draw; {} is the least that practice leaves.",
            amount("length", max(0.0, length - draw_length)), amount("length", CLEAR_OF_BOW)))
    return check("length", OK, sentence(
        "The shaft reaches {} beyond full draw.", amount("length", length - draw_length)))


def draw_checks(draw_length: float, marked_draw: float) -> tuple[Check, ...]:
    """Return a caution where the draw is longer than the one the bow is marked for [m]."""
    if draw_length <= marked_draw * SLACK:
        return ()
    return (check("draw", WATCH, sentence(
        "This draw is beyond the {} at which the bow is marked. Draw an old bow further only if it was made "
        "for it, and measure its weight there: many stack.", amount("length", marked_draw))),)


def string_checks(material: str) -> tuple[Check, ...]:
    """Return a stop where the string is one that old tips do not bear."""
    if material != "low_stretch":
        return ()
    return (check("string", STOP, "A low-stretch string belongs only on tips that were made for it. On an "
                  "old bow without reinforced tips use polyester (common practice)."),)


def species_checks(species: str | None, spine_weight: float) -> tuple[Check, ...]:
    """Return a caution where the stiffness is only that of a species."""
    if species is None:
        return ()
    scatter = woods.MODULUS_SCATTER
    return (check("species", WATCH, sentence(
        "The stiffness is a mean of the species. Single pieces scatter by about {}: two thirds of them lie "
        "from {} to {}. Bend the shaft in hand before you cut it.", amount("ratio", scatter, 0),
        amount("force", spine_weight * (1 - scatter)), amount("force", spine_weight * (1 + scatter)))),)


def efficiency_checks(efficiency: float) -> tuple[Check, ...]:
    """Return a caution where the arrow takes more or less of the energy than arrows do."""
    if LEAST_EFFICIENCY <= efficiency <= BEST_EFFICIENCY:
        return ()
    word = "less" if efficiency > BEST_EFFICIENCY else "more"
    return (check("efficiency", WATCH, sentence(
        "The arrow would take {} of the stored energy. Bows of this kind give " + word + " (from memory: 60 "
        "to 80 %): check the mass that moves with the arrow, or the chronograph reading.",
        amount("ratio", efficiency))),)


def moving_mass_checks(
    by_chronograph: bool, virtual_mass: float, test_mass: float | None
) -> tuple[Check, ...]:
    """Return how far one chronograph reading can be trusted."""
    if not by_chronograph or test_mass is None:
        return ()
    return (check("moving-mass", OK, sentence(
        "By this one reading {} moves with the arrow: an estimate. An error of {} in the speed read changes "
        "it by {}, and what is wrong with the draw-force curve goes into it too.",
        amount("mass", virtual_mass), amount("ratio", READING_ERROR, 0),
        amount("mass", 2 * READING_ERROR * (test_mass + virtual_mass)))),)


def assumptions_for(species: str | None) -> tuple[Sentence | str, ...]:
    """Return what a species' figures assume."""
    if species is None:
        return ()
    wood = woods.find(species)
    return (sentence(
        wood.name[:1].upper() + wood.name[1:] + " is taken at {} and {} (" + wood.status + ").",
        amount("density", wood.density), amount("modulus", wood.modulus)),)
