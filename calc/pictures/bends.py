"""How far each stretch of a drawn limb bends in a picture, beside what it should."""

import math

from calc.numerics.normal import NORMAL_95, spread
from calc.outcome import OK, WATCH, Check, Column, Table, amount, check, sentence
from calc.pictures.bow import LIMB_NAMES, Photographed
from calc.pictures.picture import Reading, weighed
from calc.quantities import INCH

SIX_AT_ONCE = 2.63
"""Standard errors beyond which one of six differences lies by chance in one case of twenty."""


OFFSET_ERROR = INCH / 64
"""Standard error of an offset of the unstrung shape, by rule or by picture (common practice)."""


class Stretch:
    """One stretch of a limb [deg]: how far it bends in the picture, and how far it should; error: of the
    difference, with that of its shape at rest.
    """

    def __init__(self, limb: str, name: str, bent: Reading, computed: float, length: float) -> None:
        self.limb = limb
        self.name = name
        self.bent = bent
        self.computed = computed
        self.error = spread([bent.error, math.degrees(math.sqrt(6.0) * OFFSET_ERROR / length)])

    @property
    def more(self) -> float:
        """Return how much more than computed it bends [deg]."""
        return self.bent.value - self.computed

    @property
    def is_off(self) -> bool:
        """Return whether that is more, either way, than the marks' errors explain."""
        return abs(self.more) > SIX_AT_ONCE * self.error


def stretches_of(
    bow: Photographed, names: tuple[str, ...], ends: tuple[float, ...],
    limbs: list[tuple[list[float], list[float]]],
) -> list[Stretch]:
    """Return the stretches of both limbs.

    Args:
        bow: as it stands drawn in the picture.
        names: of the stretches.
        ends: where they begin and end, of a limb's length from the fadeout.
        limbs: of each limb, how far each stretch should bend and how far it is curved at rest [rad].
    """
    found = []
    for which, (computed, rest) in enumerate(limbs):
        course = bow.courses[which]
        if course is None:
            raise ValueError("too few marks along a limb for its shape")
        angles = [bow.frame.angle(which, course.part_of_length(end)) for end in ends]
        length = bow.frame.length(which).value
        for index, name in enumerate(names):
            turned = weighed(bow.marks, [(math.degrees(1.0), angles[index + 1]),
                                         (-math.degrees(1.0), angles[index])])
            bent = Reading(bow.marks, turned.value - math.degrees(rest[index]), turned.shift)
            found.append(Stretch(LIMB_NAMES[which], name, bent, math.degrees(computed[index]),
                                 (ends[index + 1] - ends[index]) * length))
    return found


def whole_bend(bow: Photographed, stretches: list[Stretch], limb: str) -> tuple[Reading, float]:
    """Return how far a whole limb bends in the picture and how far it should [deg]."""
    own = [each for each in stretches if each.limb == limb]
    return weighed(bow.marks, [(1.0, each.bent) for each in own]), sum([each.computed for each in own])


def bend_checks(stretches: list[Stretch]) -> tuple[Check, ...]:
    """Return where a limb bends too much or too little."""
    found = []
    for each in stretches:
        if each.is_off:
            place = "The " + each.name + " stretch of the " + each.limb + " limb bends {} "
            if each.more > 0:
                text = place + ("more than computed, give or take {}: too much. Nothing comes off there, and "
                                "look for a crack or a loose lamination.")
            else:
                text = place + "less than computed, give or take {}: too little. It is stiff there."
            found.append(check("bend-" + each.limb + "-" + each.name, WATCH, sentence(
                text, amount("angle", abs(each.more)), amount("angle", NORMAL_95 * each.error))))
    if not found:
        found.append(check("bend", OK, "Each stretch of both limbs bends as computed, as far as the errors "
                           "tell."))
    return tuple(found)


def bend_table(stretches: list[Stretch]) -> Table:
    """Return how far each stretch bends, with half of its 95 % range, beside what is computed."""
    return Table(
        "bend", "How far each stretch bends: three tenths of a limb each; behind it half of the 95 % range",
        (Column("limb", "Limb", "text"), Column("stretch", "Stretch", "text"),
         Column("bent", "Bends", "angle"), Column("bent_error", "±", "angle"),
         Column("computed", "Computed", "angle"),
         Column("more", "More than computed", "angle")),
        tuple([(each.limb, each.name, each.bent.value, NORMAL_95 * each.error, each.computed, each.more)
               for each in stretches]))
