"""Clear air: how long dust and vapour stay, what a fan has to move, vapour against its flammable limit."""


from calc.declaring import (
    RULE,
    TRIAL,
    Calculator,
    choice,
    group,
    names_of,
    quantity,
    result,
)
from calc.outcome import (
    STOP,
    Check,
    Outcome,
    Sentence,
    amount,
    sentence,
)
from calc.shop.air import (
    air_changes,
    clearing_time,
    dilution_flow,
    dust_layer_depth,
    face_flow,
    mass_concentration,
)
from calc.shop.film import solvent_in
from calc.tables.booths import face_speed
from calc.tables.respirators import NEEDS
from calc.tables.solvents import SOLVENTS
from calc.ventilation.checks import air_checks
from calc.ventilation.layer import layer_checks, layer_inputs
from calc.ventilation.mixture import (
    MIXTURE,
    bounds_of,
    limit_of,
    mixture_input,
    mixture_table,
    molar_mass_of,
    parts_of,
)
from calc.ventilation.tables import clearing_chart, clearing_table, limit_tables, respirator_table
from calc.ventilation.vapour import (
    EXPLODES,
    EXPLODES_WITHOUT_FAN,
    NEVER_CLEARED,
    Air,
    Vapour,
    danger_of,
    fire_of,
    flow_for_an_hour,
    given_off,
    strictest_bound,
    until_below,
    vapour_of,
)


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
    mixture: tuple[tuple[str, float], ...] | None,
    liquid_from: str | None,
    liquid: float | None,
    coat_volume: float | None,
    coat_solids: float | None,
    coat_reducer: float | None,
    wash: float | None,
    minutes: float | None,
    room_temperature: float | None,
    limit_share: float | None,
    dust_depth: float | None,
    dust_share: float | None,
    bulk_density: float | None,
    booth: str,
    booth_width: float | None,
    booth_height: float | None,
    draught: str | None,
) -> Outcome:
    """Return clearing times, fan sizes and vapour shares, with what they do not say."""
    room = length * width * height
    fresh = (flow or 0.0) if known == "flow" else (changes or 0.0) * room
    rate = air_changes(fresh, room)
    vapour, parts = None, None
    evaporates = liquid
    if liquid_from == COAT:
        evaporates = solvent_in(coat_volume or 0.0, coat_solids or 1.0, coat_reducer or 0.0) + (wash or 0.0)
    if solvent == MIXTURE and evaporates is not None and minutes is not None and room_temperature is not None:
        parts = parts_of(mixture or (), room_temperature)
        vapour = given_off("the mixture", limit_of(parts), molar_mass_of(parts), bounds_of(parts),
                           evaporates * sum([each.vapour for each in parts]), minutes, fresh, room,
                           mixing_factor)
    elif agent == "solvent":
        vapour = vapour_of(solvent, density, molar_mass, lower_limit, breathing_limit, evaporates, minutes,
                           room_temperature, fresh, room, mixing_factor)
    booth_flow = _booth_flow(booth, booth_width, booth_height, draught)
    share = limit_share or 0.25
    air = Air(rate, mixing_factor, fresh, room)
    layer = layer_checks(agent, length * width, bulk_density, dust_depth, dust_share)
    checks = layer + air_checks(vapour, share, agent, air, booth_flow)
    clears = agent != NEVER_CLEARED
    return Outcome(
        headline=_headline(air, checks, vapour, share),
        values=_minutes(rate, mixing_factor, clears) + (
            ("air_changes", rate),
            ("air_flow", fresh),
            ("room", room),
            ("booth_flow", booth_flow),
        ) + _vapour_values(vapour, share, air, room_temperature) + (
            ("liquid", None if vapour is None else evaporates),
            ("layer_depth", None if bulk_density is None else dust_layer_depth(bulk_density)),
        ),
        checks=checks,
        tables=(() if vapour is None or parts is None else (mixture_table(parts, vapour),))
               + limit_tables(agent, vapour, air) + ((clearing_table(rate, mixing_factor),) if clears else ())
               + (respirator_table(agent),),
        charts=(clearing_chart(rate, mixing_factor),) if clears else (),
        assumptions=_assumptions(mixing_factor, vapour),
    )


# Reading the inputs together -----------------------------------------------------


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
    danger = None if vapour is None else danger_of(vapour)
    if vapour is not None and danger is not None and "breathing" in stops:
        return sentence(
            "Do not do it this way: even well mixed, the vapour comes to {}, and {} is dangerous to life or "
            "health at once.", amount("concentration", vapour.end), danger.text)
    if "layer" in stops:
        return sentence("Stop and clean first: the dust that lies in this room counts as a danger of "
                        "explosion.")
    if "fan" in stops:
        return sentence(
            "Do not count on this fan: it would take more than a day for 99 % of what is in the air to go. "
            "{} would do it in an hour.", amount("flow", flow_for_an_hour(air)))
    clears = sentence(
        "Once nothing more is given off, 99 % of what is in the air has gone after about {} and 99.9 % after "
        "{}.",
        amount("minutes", clearing_time(air.rate, 0.01, air.mixing_factor), 0),
        amount("minutes", clearing_time(air.rate, 0.001, air.mixing_factor), 0))
    return clears if vapour is None else _vapour_headline(air, vapour, clears)


def _vapour_headline(air: Air, vapour: Vapour, clears: Sentence) -> Sentence:
    strictest = strictest_bound(vapour)
    if strictest is None or vapour.end <= strictest.set_share():
        return clears
    return Sentence(
        "The vapour comes to {}, above the lowest limit shown for breathing, {} ({}). It is below that about "
        "{} after the last of it has evaporated. " + clears.template,
        (amount("concentration", vapour.end), strictest.text, strictest.body,
         amount("minutes", until_below(air, vapour, strictest), 0)) + clears.amounts)


def _vapour_values(
    vapour: Vapour | None, share: float, air: Air, temperature: float | None
) -> tuple[tuple[str, float | None], ...]:
    if vapour is None or temperature is None:
        return tuple([(name, None) for name in ("lower_limit", "vapour_end", "vapour_mass", "vapour_still",
                                                "share_of_limit", "dilution_flow", "breathing_lowest",
                                                "minutes_breathing")])
    strictest = strictest_bound(vapour)
    return (
        ("lower_limit", vapour.limit),
        ("vapour_end", vapour.end),
        ("vapour_mass", mass_concentration(vapour.end, vapour.molar_mass, temperature)),
        ("vapour_still", vapour.still),
        ("share_of_limit", vapour.end / vapour.limit),
        ("dilution_flow", dilution_flow(vapour.rate, share * vapour.limit, air.mixing_factor)),
        ("breathing_lowest", None if strictest is None else strictest.set_share()),
        ("minutes_breathing", None if strictest is None else until_below(air, vapour, strictest)),
    )


def _fire_headline(vapour: Vapour, share: float) -> Sentence:
    found = fire_of(vapour, share)
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


_VAPOUR = ("agent", ("solvent",))
_BOOTH = ("booth", ("large", "small"))
_OWN = ("solvent", ("own",))
TYPED, COAT = "typed", "coat"
_TYPED, _COAT = ("liquid_from", (TYPED,)), ("liquid_from", (COAT,))

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
            choice("solvent", "Solvent", names_of(SOLVENTS) + (
                       (MIXTURE, "A mixture"), ("own", "Another, from its data sheet")),
                   help="Of a mixture whose parts you do not know: the one nearest to its limit.",
                   when=_VAPOUR,
                   default="butyl-acetate"),
            mixture_input(),
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
            choice("liquid_from", "How much evaporates", ((TYPED, "I give the liquid"),
                                                          (COAT, "From one coat of the finish")),
                   when=_VAPOUR, role=TRIAL),
            quantity("liquid", "Liquid that evaporates", "volume", default="3 fl oz", low="0.01 fl oz",
                     high="5 gal", usual=("0.1 fl oz", "32 fl oz"),
                     help="Solvent in the finish, the reducer and the gun wash.", when=_TYPED),
            quantity("coat_volume", "Mixed for one coat", "mix_volume", default="0.85 fl oz",
                     low="0.01 fl oz", high="5 gal", usual=("0.2 fl oz", "10 fl oz"),
                     help="As the page Finish gives it: all of it evaporates in the room, spray that missed "
                          "as well.", when=_COAT, role=TRIAL),
            quantity("coat_solids", "Solids of the product by volume", "ratio", default="45 %", low="3 %",
                     high="100 %", usual=("8 %", "75 %"), when=_COAT),
            quantity("coat_reducer", "Reducer, of the product's volume", "ratio", default="10 %", low="0 %",
                     high="200 %", usual=("0 %", "50 %"), when=_COAT),
            quantity("wash", "Gun wash that evaporates with it", "volume", default="0 fl oz", low="0 fl oz",
                     high="1 gal", usual=("0 fl oz", "8 fl oz"), when=_COAT, role=TRIAL),
            quantity("minutes", "Over how long", "minutes", default="15 min", low="1 min", high="1440 min",
                     usual=("5 min", "480 min"), when=_VAPOUR),
            quantity("room_temperature", "Room temperature", "temperature", default="70 °F", low="30 °F",
                     high="120 °F", usual=("50 °F", "95 °F"), when=_VAPOUR),
            quantity("limit_share", "Share of the flammable limit not to pass", "ratio", default="10 %",
                     low="1 %", high="25 %", usual=("1 %", "25 %"),
                     help="A safety factor of 10. Above 25 % codes speak of a spraying area.", when=_VAPOUR,
                     role=RULE),
        ),
        group("Dust that lies", *layer_inputs()),
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
        result("liquid", "Liquid that evaporates", "mix_volume"),
        result("layer_depth", "Dust lies no deeper than", "thickness",
               "Over more than 5 % of the floor a deeper layer counts as a danger."),
    ),
    acted_on=("minutes_99", "minutes_999", "minutes_breathing", "share_of_limit"),
    cautions=CAUTIONS,
    sources=("acgih-limits", "additive-limits", "cdc-air-changes", "exponential-decay", "haz-map-butanol",
             "iarc-wood-dust", "ideal-gas", "le-chatelier", "niosh-formaldehyde", "niosh-hdi",
             "niosh-idlh", "niosh-mdi", "niosh-naphtha", "niosh-tdi", "one-part-isocyanate",
             "ontario-cyanoacrylate", "oregon-isocyanate-samples", "oregon-polyisocyanate",
             "osha-chemical-data", "osha-combustible-dust", "osha-respirators", "osha-spraying-area",
             "osha-wood-dust", "solvent-flammability", "spray-booth-velocities", "steady-dilution",
             "volume-solids"),
    example="An invented shop of 18 by 14 by 9 ft with a fan of 600 cfm, in which 3 fl oz of solvent "
            "evaporate in a quarter of an hour.",
    first=("length", "width", "height", "flow", "changes", "agent", "solvent", "mixture", "density",
           "molar_mass", "lower_limit", "breathing_limit", "liquid", "coat_volume"),
    compute=compute,
)
