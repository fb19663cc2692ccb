"""What is said of a finish: its films, its gloss, its schedule."""

from calc.finishes.coats import LIMB_FILM
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop.schedule import Planned
from calc.tables.finish_families import FinishFamily
from calc.tables.gloss import levels_at, sheen_decides


def gloss_text(gloss: float, sheen: float | None) -> str:
    """Return the levels that the readings of gloss and sheen allow."""
    names = [each.id + " " + each.name for each in levels_at(gloss, sheen)]
    return " or ".join(names) if names else "no level: the two readings do not go together"


def film_checks(
    family: FinishFamily, seal: FinishFamily, film: float, wet_most: float | None
) -> tuple[Check, ...]:
    """Return what is said of the dry film beside what is usual and what makers allow."""
    if not family.makes_film:
        return _oil_checks(seal)
    found = []
    if family.film_cap is not None and film > family.film_cap[0] * (1 + ROUNDING):
        stop = film > family.film_cap[1] * (1 + ROUNDING)
        found.append(check("cap", STOP if stop else WATCH, sentence(
            "A dry film of {} is more than many makers of " + family.name + " allow, which is {} to {} for "
            "all coats: it can crack.", amount("film", film), amount("film", family.film_cap[0]),
            amount("film", family.film_cap[1]))))
    if film > LIMB_FILM.high * (1 + ROUNDING):
        thinner = "" if wet_most is None else " Lay each coat at most {} wet there, or fewer coats."
        found.append(check("limb-film", WATCH, sentence(
            "A dry film of {} is more than the {} to {} that is usual on limbs: finish bends badly, and its "
            "mass slows the limb." + thinner, amount("film", film), amount("film", LIMB_FILM.low),
            amount("film", LIMB_FILM.high), *([] if wet_most is None else [amount("film", wet_most)]))))
    else:
        found.append(check("limb-film", OK, sentence(
            "A dry film of {} is no more than is usual on limbs, {} to {}.", amount("film", film),
            amount("film", LIMB_FILM.low), amount("film", LIMB_FILM.high))))
    return tuple(found)


def _oil_checks(seal: FinishFamily) -> tuple[Check, ...]:
    found = [check("oil", WATCH, "Hand-rubbed oil is for bare wood. On glass it does not hold: only the "
                   "riser is reckoned here, and the limbs need another finish. It leaves hardly a film, so "
                   "none is counted.")]
    if seal.makes_film:
        found.append(check("oil-seal", WATCH, "A seal coat of " + seal.name + " keeps the oil out of the "
                           "wood: leave it off, or choose a finish that lies on top."))
    return tuple(found)


def other_checks(planned: list[Planned], gloss: float, sheen: float | None) -> tuple[Check, ...]:
    """Return what is said of the recoat windows and of the gloss."""
    found = [_window_check(planned)]
    if sheen is None and sheen_decides(gloss):
        found.append(check("gloss", WATCH, sentence(
            "A gloss of {} at 60 degrees can be either of two levels; the sheen, read at 85 degrees, "
            "decides.", amount("gloss", gloss))))
    return tuple(found)


def _window_check(planned: list[Planned]) -> Check:
    to_come = [each for each in planned if each.step.done is None]
    late = [each.step.name for each in to_come if each.late]
    if late:
        return check("window", WATCH, "The recoat window closes before the next coat can go on. Dull the "
                     "film before: " + ", ".join([name[0].lower() + name[1:] for name in late]) + ".")
    if not to_come:
        return check("window", OK, "Nothing is to come any more.")
    which = "Every coat to come" if len(to_come) < len(planned) else "Every coat"
    return check("window", OK, which + " falls within its recoat window and within working hours.")
