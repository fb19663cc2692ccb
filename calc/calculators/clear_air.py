"""Clear air: how long dust and vapour stay, what a fan has to move, vapour against its flammable limit."""

from collections import namedtuple

from calc.declaring import (
    RULE,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.outcome import (
    STOP,
    TEXT,
    WATCH,
    Amount,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Refused,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.shop.air import (
    air_changes,
    clearing_time,
    dilution_flow,
    face_flow,
    mass_concentration,
    rising_share,
    share_from_mass_concentration,
    share_left,
    time_until_below,
    vapour_volume,
)
from calc.tables.booths import face_speed
from calc.tables.exposure_limits import DANGER, MASS, PPM, Level, limits_of
from calc.tables.respirators import NEEDS, need_for
from calc.tables.respirators import find as find_respirator
from calc.tables.solvents import SOLVENTS
from calc.tables.solvents import find as find_solvent

NEVER_CLEARED = "isocyanate"
"""No clearing time is given for it: a trace can harm, and only the product's data sheet says how long."""

EXPLODES = "explodes"
TOO_MUCH = "too much"
EXPLODES_WITHOUT_FAN = "explodes without the fan"
NEEDS_FAN = "needs the fan"
BELOW = "below"

LIMITS_AT = 25.0
"""degC at which limits for breathing are stated."""

HOUR = 3600.0
SLOW = 4 * HOUR
HOPELESS = 24 * HOUR
"""Above these times to lose 99 % a fan is slow, or too small to wait for (common practice)."""

LEFT = (0.1, 0.01, 0.001)
CHART_POINTS = 25

Vapour = namedtuple("Vapour", "name limit molar_mass volume rate end still bounds")
"""limit [1] lower flammable; volume [m^3] of pure vapour; rate [m^3/s]; end, still [1]: share of the room's
air when all has evaporated, with the fan and without; bounds: what is published for breathing."""

Bound = namedtuple("Bound", "body text averaging share recorded")
"""One published figure for breathing. share [1]: by volume, None where none is set."""

Air = namedtuple("Air", "rate mixing_factor flow room")
"""rate [1/s]: air changes; flow [m^3/s]; room [m^3]."""

OWN_SHEET = "Your data sheet"


def compute(
    length: float,
    width: float,
    height: float,
    known: str,
    flow: float | None,
    changes: float | None,
    mixing_factor: float,
    agent: str,
    solvent: str | None,
    density: float | None,
    molar_mass: float | None,
    lower_limit: float | None,
    breathing_limit: float | None,
    liquid: float | None,
    minutes: float | None,
    room_temperature: float | None,
    limit_share: float | None,
    booth: str,
    booth_width: float | None,
    booth_height: float | None,
    draught: str | None,
) -> Outcome:
    """Return clearing times, fan sizes and vapour shares, with what they do not say."""
    room = length * width * height
    fresh = (flow or 0.0) if known == "flow" else (changes or 0.0) * room
    rate = air_changes(fresh, room)
    vapour = None
    if agent == "solvent":
        vapour = _vapour(solvent, density, molar_mass, lower_limit, breathing_limit, liquid, minutes,
                         room_temperature, fresh, room, mixing_factor)
    booth_flow = _booth_flow(booth, booth_width, booth_height, draught)
    share = limit_share or 0.25
    air = Air(rate, mixing_factor, fresh, room)
    checks = _checks(vapour, share, agent, air, booth_flow)
    clears = agent != NEVER_CLEARED
    return Outcome(
        headline=_headline(air, checks, vapour, share),
        values=_minutes(rate, mixing_factor, clears) + (
            ("air_changes", rate),
            ("air_flow", fresh),
            ("room", room),
            ("booth_flow", booth_flow),
        ) + _vapour_values(vapour, share, air, room_temperature),
        checks=checks,
        tables=_limit_tables(agent, vapour, air) + ((_clearing_table(rate, mixing_factor),) if clears else ())
               + (_respirator_table(agent),),
        charts=(_chart(rate, mixing_factor),) if clears else (),
        assumptions=_assumptions(mixing_factor, vapour),
    )


# Reading the inputs together -----------------------------------------------------


def _vapour(
    solvent: str | None,
    density: float | None,
    molar_mass: float | None,
    lower_limit: float | None,
    breathing_limit: float | None,
    liquid: float | None,
    seconds: float | None,
    temperature: float | None,
    flow: float,
    room: float,
    mixing_factor: float,
) -> Vapour:
    if solvent is None or liquid is None or seconds is None or temperature is None:
        raise ValueError("a solvent needs its amount, time and temperature")
    if solvent == "own":
        if density is None or molar_mass is None or lower_limit is None:
            raise Refused("density", "Give density, molar mass and lower flammable limit from the safety "
                          "data sheet, or choose a solvent from the list.")
        name = "the solvent"
        bounds = _own_bound(breathing_limit)
    else:
        known = find_solvent(solvent)
        name, lower_limit = known.name, known.lower_limit
        density, molar_mass = known.density, known.molar_mass
        bounds = _bounds(solvent, molar_mass)
    volume = vapour_volume(liquid, density, molar_mass, temperature)
    if volume > room:
        raise Refused("liquid", "This much liquid becomes more vapour than the room holds. Check the amount "
                      "and its unit.")
    rate = volume / seconds
    return Vapour(name, lower_limit, molar_mass, volume, rate,
                  rising_share(rate, flow, room, seconds, mixing_factor), volume / room, bounds)


def _own_bound(limit: float | None) -> tuple[Bound, ...]:
    if limit is None:
        return ()
    return (Bound(OWN_SHEET, amount("concentration", limit), "as it says", limit, "as typed"),)


def _bounds(agent: str, molar_mass: float | None) -> tuple[Bound, ...]:
    """Return each published figure by itself, as a share of the air where the molar mass makes it one."""
    found = []
    for limit in limits_of(agent):
        for level in limit.levels:
            share = None if molar_mass is None else _share_of(level, molar_mass)
            found.append(Bound(limit.body, level.text, level.over or limit.averaging, share,
                               limit.recorded + ", " + limit.status))
    return tuple(found)


def _share_of(level: Level, molar_mass: float) -> float | None:
    if level.number is None:
        return None
    if level.unit == PPM:
        return level.number * 1e-6
    if level.unit == MASS:
        return share_from_mass_concentration(level.number * 1e-6, molar_mass, LIMITS_AT)
    raise ValueError("a level has no unit that is known: " + level.text)


def _strictest(vapour: Vapour) -> Bound | None:
    """Return the published figure that is reached first; None where none is known."""
    found = None
    for each in vapour.bounds:
        if each.share is not None and (found is None or each.share < found.share):
            found = each
    return found


def _danger(vapour: Vapour) -> Bound | None:
    """Return the figure at which life or health is in danger at once; None where none is known."""
    for each in vapour.bounds:
        if each.body == DANGER and each.share is not None:
            return each
    return None


def _booth_flow(booth: str, width: float | None, height: float | None, draught: str | None) -> float | None:
    if booth == "none" or width is None or height is None or draught is None:
        return None
    return face_flow(width, height, face_speed(draught, booth).design)


# What is said --------------------------------------------------------------------


def _minutes(rate: float, mixing_factor: float, clears: bool) -> tuple[tuple[str, float | None], ...]:
    return tuple([(id, clearing_time(rate, left, mixing_factor) if clears else None)
                  for id, left in (("minutes_99", 0.01), ("minutes_999", 0.001), ("minutes_90", 0.1))])


def _headline(air: Air, checks: tuple[Check, ...], vapour: Vapour | None, share: float) -> Sentence:
    stops = [each.id for each in checks if each.level == STOP]
    if "isocyanate" in stops:
        return sentence(
            "No clearing time holds for isocyanate. Keep everybody out, fan on, for as long as the data "
            "sheet of the product says.")
    if vapour is not None and "fire" in stops:
        return _fire_headline(vapour, share)
    danger = None if vapour is None else _danger(vapour)
    if vapour is not None and danger is not None and "breathing" in stops:
        return sentence(
            "Do not do it this way: even well mixed, the vapour comes to {}, and {} is dangerous to life or "
            "health at once.", amount("concentration", vapour.end), danger.text)
    if "fan" in stops:
        return sentence(
            "Do not count on this fan: it would take more than a day for 99 % of what is in the air to go. "
            "{} would do it in an hour.", amount("flow", _flow_for_an_hour(air)))
    clears = sentence(
        "Once nothing more is given off, 99 % of what is in the air has gone after about {} and 99.9 % after "
        "{}.",
        amount("minutes", clearing_time(air.rate, 0.01, air.mixing_factor), 0),
        amount("minutes", clearing_time(air.rate, 0.001, air.mixing_factor), 0))
    return clears if vapour is None else _vapour_headline(air, vapour, clears)


def _vapour_headline(air: Air, vapour: Vapour, clears: Sentence) -> Sentence:
    strictest = _strictest(vapour)
    if strictest is None or vapour.end <= strictest.share:
        return clears
    return Sentence(
        "The vapour comes to {}, above the lowest limit shown for breathing, {} ({}). It is below that about "
        "{} after the last of it has evaporated. " + clears.template,
        (amount("concentration", vapour.end), strictest.text, strictest.body,
         amount("minutes", _until_below(air, vapour, strictest), 0)) + clears.amounts)


def _until_below(air: Air, vapour: Vapour, bound: Bound) -> float:
    return time_until_below(vapour.end, bound.share, air.rate, air.mixing_factor)


def _flow_for_an_hour(air: Air) -> float:
    """Return the fresh air that takes 99 % out of this room in an hour."""
    return air.flow * clearing_time(air.rate, 0.01, air.mixing_factor) / HOUR


def _vapour_values(
    vapour: Vapour | None, share: float, air: Air, temperature: float | None
) -> tuple[tuple[str, float | None], ...]:
    if vapour is None or temperature is None:
        return tuple([(name, None) for name in ("lower_limit", "vapour_end", "vapour_mass", "vapour_still",
                                                "share_of_limit", "dilution_flow", "breathing_lowest",
                                                "minutes_breathing")])
    strictest = _strictest(vapour)
    return (
        ("lower_limit", vapour.limit),
        ("vapour_end", vapour.end),
        ("vapour_mass", mass_concentration(vapour.end, vapour.molar_mass, temperature)),
        ("vapour_still", vapour.still),
        ("share_of_limit", vapour.end / vapour.limit),
        ("dilution_flow", dilution_flow(vapour.rate, share * vapour.limit, air.mixing_factor)),
        ("breathing_lowest", None if strictest is None else strictest.share),
        ("minutes_breathing", None if strictest is None else _until_below(air, vapour, strictest)),
    )


def _checks(
    vapour: Vapour | None, share: float, agent: str, air: Air, booth_flow: float | None
) -> tuple[Check, ...]:
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
    figures = (amount("air_changes", air.rate), amount("flow", _flow_for_an_hour(air)))
    if time > HOPELESS:
        return [check("fan", STOP, sentence(
            "This fan is too small for the room: {} is next to a closed door, and 99 % would take more than "
            "a day. No wait makes up for that. {} would do it in an hour.", *figures))]
    if time > SLOW:
        return [check("fan", WATCH, sentence(
            "This fan is slow for the room: at {} it takes half a day or so for 99 % to go. {} would do it "
            "in an hour.", *figures))]
    return []


def _fire(vapour: Vapour, share: float) -> str:
    """Return how the vapour stands against its limit and the share of it that is not to be passed."""
    ceiling = share * vapour.limit * (1 + ROUNDING)
    if vapour.end >= vapour.limit:
        return EXPLODES
    if vapour.end > ceiling:
        return TOO_MUCH
    if vapour.still >= vapour.limit:
        return EXPLODES_WITHOUT_FAN
    if vapour.still > ceiling:
        return NEEDS_FAN
    return BELOW


def _fire_headline(vapour: Vapour, share: float) -> Sentence:
    found = _fire(vapour, share)
    limit = amount("concentration", vapour.limit)
    if found == EXPLODES:
        return sentence("Do not do this: the air of the whole room can explode. Even well mixed, the vapour "
                        "comes to {}, and it burns from {}.", amount("concentration", vapour.end), limit)
    if found == EXPLODES_WITHOUT_FAN:
        return sentence("Do not do this: should the fan stop, the air of the whole room can explode. The "
                        "vapour comes to {} then, and it burns from {}.",
                        amount("concentration", vapour.still), limit)
    return sentence("Do not do it this way: even well mixed, the vapour comes to {}, above {}, the {} of its "
                    "flammable limit set here.", amount("concentration", vapour.end),
                    amount("concentration", share * vapour.limit), amount("ratio", share, 0))


def _fire_check(vapour: Vapour, share: float) -> Check:
    found = _fire(vapour, share)
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
    strictest, danger = _strictest(vapour), _danger(vapour)
    if danger is not None and vapour.end >= danger.share:
        return check("breathing", STOP, sentence(
            "Even well mixed, the vapour comes to {}; {} is dangerous to life or health at once (NIOSH). No "
            "filter is for that. Do not do it this way: less at a time, much more air, or outdoors.",
            peak, danger.text))
    if strictest is None:
        return check("breathing", WATCH, sentence(
            "Nothing is known here of what may be breathed of this solvent: section 8 of its safety data "
            "sheet says it. The flammable limit is about fire alone: at {} the room can be many times over "
            "what may be breathed.", peak))
    if vapour.end <= strictest.share:
        return check("breathing", WATCH, sentence(
            "Well mixed, {} is no more than the lowest figure shown for breathing, {} ({}). Near gun, cup "
            "and floor it is many times that, and a limit is for a healthy adult: still no room to be in "
            "without need. The flammable limit is about fire alone.", peak, strictest.text, strictest.body))
    return check("breathing", WATCH, sentence(
        "At {} the room is at {} times the lowest figure shown for breathing, {} ({}): nobody is in it "
        "without the respirator that the data sheet names, until about {} after the last has evaporated. The "
        "flammable limit is about fire alone."
        + _danger_words(vapour, danger),
        peak, amount("number", vapour.end / strictest.share, 1), strictest.text, strictest.body,
        amount("minutes", _until_below(air, vapour, strictest), 0), *_danger_amounts(vapour, danger)))


def _danger_words(vapour: Vapour, danger: Bound | None) -> str:
    if danger is None or vapour.still < danger.share:
        return ""
    return " Should the fan stop, it comes to {}; {} is dangerous to life or health at once."


def _danger_amounts(vapour: Vapour, danger: Bound | None) -> tuple[Amount | str, ...]:
    if danger is None or vapour.still < danger.share:
        return ()
    return (amount("concentration", vapour.still), danger.text)


def _clearing_table(rate: float, mixing_factor: float) -> Table:
    lines = [(Amount("ratio", 1 - left, None), clearing_time(rate, left),
              clearing_time(rate, left, mixing_factor)) for left in LEFT]
    return Table("clearing", "Time until a share has gone", (
        Column("gone", "Gone", "ratio"), Column("perfect", "Air mixed at once", "minutes"),
        Column("real", "With your mixing factor", "minutes"),
    ), tuple(lines))


def _respirator_table(agent: str) -> Table:
    lines = []
    for id in need_for(agent).families:
        each = find_respirator(id)
        lines.append((each.name, str(each.assigned_factor), each.status))
    return Table("respirators", "Respirator families to read about, with the protection factor assigned", (
        Column("family", "Family", TEXT), Column("factor", "Assigned factor", TEXT),
        Column("status", "How far read", TEXT),
    ), tuple(lines))


def _limit_tables(agent: str, vapour: Vapour | None, air: Air) -> tuple[Table, ...]:
    if vapour is not None:
        return _compared_limits(vapour, air)
    limits = limits_of(agent)
    if not limits:
        return ()
    lines = []
    for limit in limits:
        for level in limit.levels:
            lines.append((limit.stuff + ", " + limit.body, level.text, level.over or limit.averaging,
                          limit.recorded + ", " + limit.status))
    return (Table("limits", "Published limits for breathing, for information", (
        Column("body", "What, set by", TEXT), Column("value", "Limit", TEXT),
        Column("averaging", "Averaged over", TEXT), Column("status", "Set down here", TEXT),
    ), tuple(lines)),)


def _compared_limits(vapour: Vapour, air: Air) -> tuple[Table, ...]:
    if not vapour.bounds:
        return ()
    lines = []
    for each in vapour.bounds:
        lines.append((each.body, _with_averaging(each), _below_after(air, vapour, each), each.recorded))
    return (Table("limits", "The room's peak beside what is published for breathing " + vapour.name, (
        Column("body", "Set by", TEXT), Column("value", "Limit", TEXT),
        Column("below", "Below it after", "minutes"), Column("status", "Set down here", TEXT),
    ), tuple(lines)),)


def _with_averaging(bound: Bound) -> Amount | str:
    if isinstance(bound.text, Amount) or not bound.averaging or bound.averaging in bound.text:
        return bound.text
    return bound.text + ", " + bound.averaging


def _below_after(air: Air, vapour: Vapour, bound: Bound) -> Amount | None:
    """Return the minutes until the room is below a figure, or in words that it is not above."""
    if bound.share is None:
        return None
    if vapour.end <= bound.share:
        return Amount(TEXT, "not above", None)
    return amount("minutes", _until_below(air, vapour, bound), 0)


def _chart(rate: float, mixing_factor: float) -> Chart:
    span = clearing_time(rate, 0.01, mixing_factor)
    times = [span * index / (CHART_POINTS - 1) for index in range(CHART_POINTS)]
    lines = [Line("with your mixing factor", "line", times,
                  [share_left(rate, time, mixing_factor) for time in times])]
    if mixing_factor > 1:
        lines.append(Line("air mixed at once", "line", times, [share_left(rate, time) for time in times]))
    return Chart("clearing", "What is left in the air", Axis("Time", "minutes"), Axis("Left", "ratio"),
                 tuple(lines))


def _assumptions(mixing_factor: float, vapour: Vapour | None) -> tuple[Sentence | str, ...]:
    found: list[Sentence | str] = [
        "Nothing is given off any more, the air that comes in is clean, and the flow is what really passes: "
        "filters that load up and closed doors cut it.",
        sentence("A mixing factor of {}: 1 is a room mixed at once, 3 a usual shop, up to 10 one with dead "
                 "corners. It is an estimate.", amount("number", mixing_factor, 1)),
        "Dust that has settled is not in this reckoning, and is stirred up again by a broom or a hose.",
    ]
    if vapour is not None:
        found += [
            "The vapour is an ideal gas, given off at a steady pace and mixed with all air of the room.",
            "The peak is compared with each limit as if it lasted: a limit over a shift may be passed for "
            "some minutes, one at any time may not.",
            "Density and molar mass of the solvents are handbook figures from memory; the flammable limit is "
            "the lowest one read.",
        ]
    return tuple(found)


CAUTIONS: tuple[Sentence | str, ...] = (
    "This is arithmetic about a room and not a verdict on its safety. Only a measurement in the breathing "
    "zone says what you breathe.",
    "The safety data sheet, the local code for spraying and the fire authority come first. A room where "
    "vapour can pass 25 % of the lower flammable limit counts as a spraying area, with its rules for wiring "
    "and fans.",
    "Isocyanate (two-part urethane, and some one-part ones: section 3 of the data sheet) needs supplied air "
    "and training. No filter worn on the face is suggested here for it, and dust masks do nothing against "
    "vapour of any kind.",
    "Acid-catalysed lacquer gives off formaldehyde. Above its limit NIOSH lists breathing apparatus, or "
    "supplied air with a bottle to get out on, and nothing with cartridges.",
    "A respirator works only if it fits, is tested and has the right filter. Draw dust and vapour off at the "
    "source first.",
    "Fine wood dust in the air or in a layer can explode; oily rags can catch fire by themselves: into "
    "water, or a closed metal can.",
)


def _solvent_choices() -> tuple[tuple[str, str], ...]:
    return tuple([(each.id, each.name[0].upper() + each.name[1:]) for each in SOLVENTS]
                 + [("own", "Another, from its data sheet")])


_VAPOUR = ("agent", ("solvent",))
_BOOTH = ("booth", ("large", "small"))
_OWN = ("solvent", ("own",))

CALCULATOR = Calculator(
    id="clear-air",
    title="Clear air",
    purpose="Tells how long a room takes to clear, what a fan has to move, and how vapour stands against its "
            "flammable limit.",
    groups=(
        group(
            "Room",
            quantity("length", "Room length", "room_length", default="18 ft", low="3 ft", high="200 ft",
                     usual=("6 ft", "60 ft")),
            quantity("width", "Room width", "room_length", default="14 ft", low="3 ft", high="200 ft",
                     usual=("6 ft", "60 ft")),
            quantity("height", "Room height", "room_length", default="9 ft", low="4 ft", high="60 ft",
                     usual=("7 ft", "16 ft")),
            choice("known", "What is known of the air", (("flow", "What the fan moves"),
                                                         ("changes", "Air changes an hour")), role=RULE),
            quantity("flow", "Fresh air", "flow", default="600 cfm", low="5 cfm", high="50000 cfm",
                     usual=("50 cfm", "10000 cfm"),
                     help="To the outside and made up from it; a filter that blows back cleans dust, not "
                          "vapour.", when=("known", ("flow",))),
            quantity("changes", "Air changes", "air_changes", default="6 per hour", low="0.1 per hour",
                     high="200 per hour", usual=("0.5 per hour", "60 per hour"),
                     help="A closed room has about half of one.", when=("known", ("changes",))),
            quantity("mixing_factor", "Mixing factor", "number", default="3", low="1", high="10",
                     usual=("1", "10"),
                     help="1 mixes at once, 3 is a usual shop, 10 has dead corners. An assumption to edit.",
                     role=RULE),
        ),
        group(
            "In the air",
            choice("agent", "What is in the air", tuple([(each.agent, each.name) for each in NEEDS])),
            choice("solvent", "Solvent", _solvent_choices(),
                   help="Of a mixture the one that comes nearest to its limit: try each.", when=_VAPOUR,
                   default="butyl-acetate"),
            quantity("density", "Density of the liquid", "density", default="0.87 g/cm3", low="0.5 g/cm3",
                     high="2 g/cm3", usual=("0.65 g/cm3", "1.5 g/cm3"), when=_OWN),
            quantity("molar_mass", "Molar mass", "molar_mass", default="100 g/mol", low="15 g/mol",
                     high="500 g/mol", usual=("30 g/mol", "250 g/mol"), when=_OWN),
            quantity("lower_limit", "Lower flammable limit", "concentration", default="1 %", low="0.1 %",
                     high="20 %", usual=("0.5 %", "10 %"),
                     help="Also called LEL; in section 9 of the data sheet. It is no health limit.",
                     when=_OWN),
            quantity("breathing_limit", "Limit for breathing", "concentration", default="", low="0.001 ppm",
                     high="10000 ppm", usual=("1 ppm", "1000 ppm"),
                     help="The lowest in section 8 of the data sheet; empty if it gives none.", optional=True,
                     when=_OWN),
            quantity("liquid", "Liquid that evaporates", "volume", default="3 fl oz", low="0.01 fl oz",
                     high="5 gal", usual=("0.1 fl oz", "32 fl oz"),
                     help="Solvent in the finish, the reducer and the gun wash.", when=_VAPOUR),
            quantity("minutes", "Over how long", "minutes", default="15 min", low="1 min", high="1440 min",
                     usual=("5 min", "480 min"), when=_VAPOUR),
            quantity("room_temperature", "Room temperature", "temperature", default="70 °F", low="30 °F",
                     high="120 °F", usual=("50 °F", "95 °F"), when=_VAPOUR),
            quantity("limit_share", "Share of the flammable limit not to pass", "ratio", default="10 %",
                     low="1 %", high="25 %", usual=("1 %", "25 %"),
                     help="A safety factor of 10. Above 25 % codes speak of a spraying area.", when=_VAPOUR,
                     role=RULE),
        ),
        group(
            "Spray booth",
            choice("booth", "Booth", (("none", "None"), ("small", "Small, for one bow"),
                                      ("large", "Large, walk-in"))),
            quantity("booth_width", "Width of its open face", "room_length", default="4 ft", low="1 ft",
                     high="40 ft", usual=("2 ft", "20 ft"), when=_BOOTH),
            quantity("booth_height", "Height of its open face", "room_length", default="4 ft", low="1 ft",
                     high="20 ft", usual=("2 ft", "12 ft"), when=_BOOTH),
            choice("draught", "Draught across its face", (("quiet", "Up to 50 ft/min"),
                                                          ("draughty", "Up to 100 ft/min")), when=_BOOTH),
        ),
    ),
    results=(
        result("minutes_99", "Until 99 % has gone", "minutes"),
        result("minutes_999", "Until 99.9 % has gone", "minutes"),
        result("minutes_90", "Until 90 % has gone", "minutes"),
        result("air_changes", "Air changes", "air_changes"),
        result("air_flow", "Fresh air", "flow"),
        result("room", "Volume of the room", "room_volume"),
        result("booth_flow", "Fan for the booth's face", "flow", "Face area times the published face speed."),
        result("lower_limit", "Lower flammable limit", "concentration", "About fire; no health limit."),
        result("vapour_end", "Vapour in the room at the end", "concentration", "With the fan, well mixed."),
        result("vapour_mass", "the same as mass", "mass_concentration"),
        result("vapour_still", "Vapour without the fan", "concentration"),
        result("share_of_limit", "Share of the flammable limit", "ratio"),
        result("dilution_flow", "Fresh air for work without end", "flow",
               "Keeps a steady pace of evaporation below the share set."),
        result("breathing_lowest", "Lowest figure shown for breathing", "concentration",
               "No permission: a limit is for healthy adults."),
        result("minutes_breathing", "Until below that figure", "minutes",
               "From the moment that the last has evaporated; nothing if it is not above."),
    ),
    cautions=CAUTIONS,
    sources=("acgih-limits", "cdc-air-changes", "exponential-decay", "haz-map-butanol", "ideal-gas",
             "iarc-wood-dust", "niosh-formaldehyde", "niosh-hdi", "niosh-idlh", "niosh-mdi", "niosh-naphtha",
             "niosh-tdi", "one-part-isocyanate", "ontario-cyanoacrylate", "oregon-isocyanate-samples",
             "oregon-polyisocyanate", "osha-chemical-data", "osha-respirators", "osha-spraying-area",
             "osha-wood-dust", "solvent-flammability", "spray-booth-velocities", "steady-dilution"),
    example="An invented shop of 18 by 14 by 9 ft with a fan of 600 cfm, in which 3 fl oz of solvent "
            "evaporate in a quarter of an hour.",
    compute=compute,
)
