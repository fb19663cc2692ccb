"""What is said of vapour and of a room's air: fire, breathing, the fan."""

from calc.outcome import STOP, WATCH, Amount, Check, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop.air import clearing_time
from calc.tables.respirators import need_for
from calc.ventilation.vapour import (
    EXPLODES,
    EXPLODES_WITHOUT_FAN,
    HOUR,
    NEEDS_FAN,
    NEVER_CLEARED,
    TOO_MUCH,
    Air,
    Bound,
    Vapour,
    danger_of,
    fire_of,
    flow_for_an_hour,
    strictest_bound,
    until_below,
)

SLOW = 4 * HOUR

HOPELESS = 24 * HOUR
"""Above these times to lose 99 % a fan is slow, or too small to wait for (common practice)."""


def air_checks(
    vapour: Vapour | None, share: float, agent: str, air: Air, booth_flow: float | None
) -> tuple[Check, ...]:
    """Return what is said of the agent, the fan, fire and breathing."""
    found: list[Check] = []
    if agent == NEVER_CLEARED:
        found += [
            check("isocyanate", STOP,
                  "Nothing here tells when isocyanate has gone, so no minutes are given. Out, and "
                  "everybody else too, for as long as the data sheet of the product says."),
            check("monomer", WATCH,
                  "A reading below the limit of the monomer clears no spray: its mist is mostly "
                  "polyisocyanate. Of 562 samples at spray work in Oregon 6 % were above that state's limit "
                  "for HDI monomer and 42 % above its 1 mg/m3 for HDI polyisocyanate."),
        ]
    if agent == "formaldehyde":
        found.append(check("still-given-off", WATCH,
                           "Acid-catalysed lacquer goes on giving off formaldehyde for days. The minutes "
                           "count only from when it has stopped: no drying bow hangs where people are."))
    if vapour is not None:
        found += [_fire_check(vapour, share), _breathing_check(vapour, air)]
    if agent != NEVER_CLEARED:
        found += _fan_checks(air)
    if booth_flow is not None and air.flow < booth_flow * (1 - ROUNDING):
        found.append(check("booth", WATCH, sentence(
            "The booth's face asks for {} and the fan moves {}: too little to carry spray away from the "
            "painter.", amount("flow", booth_flow), amount("flow", air.flow))))
    found.append(check("respirator", WATCH, need_for(agent).text))
    return tuple(found)


def _fan_checks(air: Air) -> list[Check]:
    time = clearing_time(air.rate, 0.01, air.mixing_factor)
    figures = (amount("air_changes", air.rate), amount("flow", flow_for_an_hour(air)))
    if time > HOPELESS:
        return [check("fan", STOP, sentence(
            "This fan is too small for the room: {} is next to a closed door, and 99 % would take more than "
            "a day. No wait makes up for that. {} would do it in an hour.", *figures))]
    if time > SLOW:
        return [check("fan", WATCH, sentence(
            "This fan is slow for the room: at {} it takes half a day or so for 99 % to go. {} would do it "
            "in an hour.", *figures))]
    return []


def _fire_check(vapour: Vapour, share: float) -> Check:
    found = fire_of(vapour, share)
    numbers = (amount("concentration", vapour.end), amount("concentration", share * vapour.limit),
               amount("ratio", share, 0))
    still, limit = amount("concentration", vapour.still), amount("concentration", vapour.limit)
    if found == EXPLODES:
        return check("fire", STOP, sentence(
            "The air of the whole room can explode: well mixed, the vapour comes to {}, and it burns from "
            "{}. Do not do it: far less at a time, far longer, or outdoors.", numbers[0], limit))
    if found == TOO_MUCH:
        return check("fire", STOP, sentence(
            "Even well mixed, the vapour comes to {}, above {}, the {} of the lower flammable limit set "
            "here. Do not do it this way: less at a time, longer, or much more air.", *numbers))
    if found == EXPLODES_WITHOUT_FAN:
        return check("fire", STOP, sentence(
            "Only the fan keeps the vapour at {}: should it stop, the room comes to {}, burns from {}, and "
            "can explode as a whole. Do not do it this way: less at a time.", numbers[0], still, limit))
    if found == NEEDS_FAN:
        return check("fire", WATCH, sentence(
            "Only the fan keeps the vapour at {}: without it the room comes to {}, above {}, the {} of the "
            "lower flammable limit set here.", numbers[0], still, numbers[1], numbers[2]))
    return check("fire", WATCH, sentence(
        "Well mixed, the vapour comes to {}, against {}, the {} of the lower flammable limit set here. Near "
        "gun, cup and floor it is many times denser and can burn there: no spark, flame or ordinary fan "
        "motor.", *numbers))


def _breathing_check(vapour: Vapour, air: Air) -> Check:
    peak = amount("concentration", vapour.end)
    strictest, danger = strictest_bound(vapour), danger_of(vapour)
    if danger is not None and vapour.end >= danger.set_share():
        return check("breathing", STOP, sentence(
            "Even well mixed, the vapour comes to {}; {} is dangerous to life or health at once (NIOSH). No "
            "filter is for that. Do not do it this way: less at a time, much more air, or outdoors.",
            peak, danger.text))
    if strictest is None:
        return check("breathing", WATCH, sentence(
            "Nothing is known here of what may be breathed of this solvent: section 8 of its safety data "
            "sheet says it. The flammable limit is about fire alone: at {} the room can be many times over "
            "what may be breathed.", peak))
    if vapour.end <= strictest.set_share():
        return check("breathing", WATCH, sentence(
            "Well mixed, {} is no more than the lowest figure shown for breathing, {} ({}). Near gun, cup "
            "and floor it is many times that, and a limit is for a healthy adult: still no room to be in "
            "without need. The flammable limit is about fire alone.", peak, strictest.text, strictest.body))
    return check("breathing", WATCH, sentence(
        "At {} the room is at {} times the lowest figure shown for breathing, {} ({}): nobody is in it "
        "without the respirator that the data sheet names, until about {} after the last has evaporated. The "
        "flammable limit is about fire alone."
        + _danger_words(vapour, danger),
        peak, amount("number", vapour.end / strictest.set_share(), 1), strictest.text, strictest.body,
        amount("minutes", until_below(air, vapour, strictest), 0), *_danger_amounts(vapour, danger)))


def _danger_words(vapour: Vapour, danger: Bound | None) -> str:
    if danger is None or vapour.still < danger.set_share():
        return ""
    return " Should the fan stop, it comes to {}; {} is dangerous to life or health at once."


def _danger_amounts(vapour: Vapour, danger: Bound | None) -> tuple[Amount | str, ...]:
    if danger is None or vapour.still < danger.set_share():
        return ()
    return (amount("concentration", vapour.still), danger.text)
