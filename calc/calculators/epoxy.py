"""Epoxy: how much to mix for a joint, by volume and by weight, and how long it gives you here."""

from calc.declaring import (
    RULE,
    TRIAL,
    Calculator,
    choice,
    count,
    group,
    quantity,
    result,
)
from calc.finishes.mixing import VOLUME, WEIGHT, by_volume, mass_of, ratio_told
from calc.outcome import (
    OK,
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
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING, parse
from calc.shop.film import mixed_volumes, time_factor_doubling, volume_to_mix

MOST_RATIO_ERROR = 0.05
"""Of the smaller part: what a scale or a syringe may be out by (common practice)."""

FAHRENHEIT = (55, 60, 65, 70, 75, 80, 85, 90)


class Measured:
    """What is measured out: volumes [m^3] and masses [kg] of resin and hardener, masses None if not known."""

    def __init__(
        self, volume: float, parts: tuple[float, float], densities: tuple[float | None, float | None]
    ) -> None:
        self.volume = volume
        self.resin, self.hardener, _ = mixed_volumes(volume, parts[0], parts[1], 0.0)
        self.resin_mass = mass_of(self.resin, densities[0])
        self.hardener_mass = mass_of(self.hardener, densities[1])


class Times:
    """Pot life, open time, clamp time and cure at one warmth [s]."""

    def __init__(self, pot: float, open_time: float, clamp: float, cure: float, factor: float) -> None:
        self.pot = pot * factor
        self.open = open_time * factor
        self.clamp = clamp * factor
        self.cure = cure * factor


def compute(
    length: float,
    width: float,
    pieces: int,
    film: float,
    waste: float,
    parts_by: str,
    part_a: float,
    part_b: float,
    density_a: float | None,
    density_b: float | None,
    resolution: float,
    pot_life: float,
    open_time: float,
    clamp_time: float,
    cure: float,
    label_at: float,
    temperature: float,
    least_temperature: float,
    doubling: float,
    work_time: float,
) -> Outcome:
    """Return what to mix and the times in this shop."""
    area = length * width * pieces
    densities = density_a, density_b
    parts = by_volume(parts_by, (part_a, part_b), densities, "resin and hardener")
    measured = Measured(volume_to_mix(area, film, 1.0 - waste), parts, densities)
    factor = time_factor_doubling(temperature, label_at, doubling)
    times = Times(pot_life, open_time, clamp_time, cure, factor)
    by_warmth = []
    for fahrenheit in FAHRENHEIT:
        warmth = parse(str(fahrenheit) + " F", "temperature")
        by_warmth.append((warmth, Times(pot_life, open_time, clamp_time, cure,
                                        time_factor_doubling(warmth, label_at, doubling))))
    checks = (_cold_check(temperature, least_temperature), _time_check(times, work_time)) + _measure_checks(
        measured, resolution)
    return Outcome(
        headline=_headline(checks, measured, times),
        values=(
            ("area", area),
            ("mix", measured.volume),
            ("resin", measured.resin),
            ("hardener", measured.hardener),
            ("resin_mass", measured.resin_mass),
            ("hardener_mass", measured.hardener_mass),
            ("by_volume", ratio_told([measured.resin, measured.hardener])),
            ("by_weight", ratio_told([measured.resin_mass, measured.hardener_mass])),
            ("pot_life_here", times.pot),
            ("open_here", times.open),
            ("clamp_here", times.clamp),
            ("cure_here", times.cure),
            ("time_factor", factor),
        ),
        checks=checks,
        tables=(_warmth_table(by_warmth),),
        charts=(_warmth_chart(by_warmth),),
        assumptions=ASSUMPTIONS,
    )


# What is said --------------------------------------------------------------------


def _headline(checks: tuple[Check, ...], measured: Measured, times: Times) -> Sentence:
    stops = [each.id for each in checks if each.level == STOP]
    if "too-cold" in stops:
        return sentence("Do not glue here: it is too cold, and the joint may never cure.")
    if "time" in stops:
        return sentence("Do not mix yet: the work takes longer than the glue stays open, {} here.",
                        amount("minutes", min(times.pot, times.open), 0))
    told: list[Amount] = [amount("mix_volume", measured.volume), amount("mix_volume", measured.resin),
                          amount("mix_volume", measured.hardener)]
    weights = ""
    if measured.resin_mass is not None and measured.hardener_mass is not None:
        weights = ", by weight {} and {}"
        told += [amount("mix_mass", measured.resin_mass), amount("mix_mass", measured.hardener_mass)]
    told += [amount("minutes", times.open, 0), amount("hours", times.clamp)]
    return sentence("Mix {}: {} of resin and {} of hardener" + weights + ". It stays open for {} here; leave "
                    "the clamps on for {}.", *told)


def _cold_check(temperature: float, least: float) -> Check:
    shown = (amount("temperature", temperature), amount("temperature", least))
    if temperature < least - ROUNDING:
        return check("too-cold", STOP, sentence(
            "It is {} here, below the {} that the sheet asks for: the joint may stay soft for good. Warm "
            "room, wood and glue first.", *shown))
    return check("too-cold", OK, sentence("It is {} here, no colder than the {} of the sheet.", *shown))


def _time_check(times: Times, work: float) -> Check:
    shown = (amount("minutes", work, 0), amount("minutes", times.pot, 0), amount("minutes", times.open, 0))
    if work > min(times.pot, times.open) * (1 + ROUNDING):
        return check("time", STOP, sentence(
            "The work takes {}; here the mix lasts {} in the cup and {} spread out. A slower hardener, a "
            "cooler room, smaller lots, or a second pair of hands.", *shown))
    return check("time", OK, sentence(
        "The work takes {}; here the mix lasts {} in the cup and {} spread out.", *shown))


def _measure_checks(measured: Measured, resolution: float) -> tuple[Check, ...]:
    if measured.resin_mass is None or measured.hardener_mass is None:
        return (check("measure", WATCH, "Without densities the parts can be measured by volume only: use "
                      "syringes, one for each, and never swap them."),)
    smaller = min(measured.resin_mass, measured.hardener_mass)
    if resolution > MOST_RATIO_ERROR * smaller * (1 + ROUNDING):
        return (check("measure", WATCH, sentence(
            "A scale that shows {} is too coarse for {} of the smaller part: it can be out by more than 5 %. "
            "Mix more, at least {} in all, or use syringes.", amount("mix_mass", resolution),
            amount("mix_mass", smaller),
            amount("mix_volume", measured.volume * resolution / (MOST_RATIO_ERROR * smaller)))),)
    return (check("measure", OK, sentence(
        "A scale that shows {} is fine enough for {} of the smaller part.", amount("mix_mass", resolution),
        amount("mix_mass", smaller))),)


def _warmth_table(by_warmth: list[tuple[float, Times]]) -> Table:
    return Table("warmth", "The same glue by the warmth of the shop", (
        Column("temperature", "Shop and wood", TEXT), Column("pot", "In the cup", "minutes"),
        Column("open", "Spread, still open", "minutes"), Column("clamp", "Clamps on", "hours"),
        Column("cure", "Full strength", "days"),
    ), tuple([(amount("temperature", warmth), times.pot, times.open, times.clamp, times.cure)
              for warmth, times in by_warmth]))


def _warmth_chart(by_warmth: list[tuple[float, Times]]) -> Chart:
    warmths = [warmth for warmth, _ in by_warmth]
    return Chart("warmth", "How long it lasts by the warmth of the shop",
                 Axis("Shop and wood", "temperature"), Axis("Lasts", "minutes"), (
                     Line("in the cup", "line", warmths, [times.pot for _, times in by_warmth]),
                     Line("spread out", "line", warmths, [times.open for _, times in by_warmth]),
                 ))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Times double for each step colder, by the rule of thumb for two-part products. It stops holding in the "
    "cold.",
    "The label's pot life is for the amount it names, often 100 g. More in one cup warms itself and sets "
    "sooner, by half and more; poured out flat it lasts longer.",
    "Volumes are taken to add up when the parts are mixed. The film is that of both faces together, before "
    "clamping; some of it is squeezed out, and should be.",
    "Film, waste and the error of 5 % are common practice, to edit. The maker's sheet comes first.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Resin and hardener make allergic for life, through the skin above all. Nitrile gloves, fresh air, eye "
    "protection; read section 8 of both safety data sheets. Never clean skin with solvent.",
    "A large mix in a cup can boil, smoke and burn. Mix small, spread at once, put what is left in a metal "
    "can outdoors.",
    "Keep a bow below 50 °C (120 °F), whatever the sheet says about curing with heat.",
    "A wrong ratio stays soft for good: weigh or measure each part, stir two minutes, scrape the walls.",
    "Glue makes no parted limb safe. Inspect, and make the first full draw from a distance.",
)

CALCULATOR = Calculator(
    id="epoxy",
    title="Epoxy",
    purpose="Tells how much epoxy to mix for a joint, by volume and by weight, and how long it stays open "
            "and clamped in this shop.",
    groups=(
        group(
            "The joint",
            quantity("length", "Length of the joint", "length", default="6 in", low="1/16 in", high="80 in",
                     usual=("1/2 in", "36 in"), role=TRIAL),
            quantity("width", "Its width", "length", default="1 3/8 in", low="1/32 in", high="40 in",
                     usual=("1/4 in", "4 in"), role=TRIAL),
            count("pieces", "Joints of that size", default=1, low=1, high=40, role=TRIAL),
            quantity("film", "Glue laid on, both faces together", "film", default="10 mil", low="1 mil",
                     high="100 mil", usual=("6 mil", "20 mil"),
                     help="Common practice: 10 mil (0.25 mm) on tight faces, more on rough ones.", role=RULE),
            quantity("waste", "Left in cup, syringe and squeezed out", "ratio", default="40 %", low="0 %",
                     high="90 %", usual=("20 %", "70 %"), help="Of what is mixed.", role=RULE),
            quantity("work_time", "Spreading and clamping take", "minutes", default="15 min", low="1 min",
                     high="600 min", usual=("3 min", "60 min"), help="From the first stir.", role=TRIAL),
        ),
        group(
            "From the label",
            choice("parts_by", "Ratio of resin to hardener is",
                   ((VOLUME, "By volume"), (WEIGHT, "By weight")), role=RULE),
            quantity("part_a", "Parts of resin", "number", default="2", low="0.1", high="1000",
                     usual=("1", "100"), role=RULE),
            quantity("part_b", "Parts of hardener", "number", default="1", low="0.01", high="1000",
                     usual=("0.2", "100"), role=RULE),
            quantity("density_a", "Density of the resin", "liquid_density", default="9.6 lb/gal",
                     low="4 lb/gal", high="20 lb/gal", usual=("8.5 lb/gal", "13 lb/gal"),
                     help="To weigh it out; empty: by volume only.", optional=True, role=RULE),
            quantity("density_b", "Density of the hardener", "liquid_density", default="8.1 lb/gal",
                     low="4 lb/gal", high="20 lb/gal", usual=("7.5 lb/gal", "13 lb/gal"), optional=True,
                     role=RULE),
            quantity("pot_life", "Lasts in the cup", "minutes", default="30 min", low="1 min",
                     high="1440 min", usual=("3 min", "240 min"), role=RULE),
            quantity("open_time", "Stays open when spread", "minutes", default="60 min", low="1 min",
                     high="2880 min", usual=("3 min", "480 min"),
                     help="Also called assembly time.", role=RULE),
            quantity("clamp_time", "Clamps on for", "hours", default="12 h", low="0.05 h", high="240 h",
                     usual=("0.5 h", "48 h"), role=RULE),
            quantity("cure", "Full strength after", "days", default="5 d", low="0.02 d", high="60 d",
                     usual=("0.5 d", "14 d"), role=RULE),
            quantity("label_at", "These times are for", "temperature", default="77 °F", low="40 °F",
                     high="120 °F", usual=("68 °F", "77 °F"), role=RULE),
            quantity("least_temperature", "Not below", "temperature", default="60 °F", low="30 °F",
                     high="100 °F", usual=("50 °F", "70 °F"), help="The least the sheet allows.", role=RULE),
            note="The figures here are those of an invented slow epoxy. Type those of your own label.",
        ),
        group(
            "The shop",
            quantity("temperature", "Shop and wood", "temperature", default="70 °F", low="32 °F",
                     high="110 °F", usual=("55 °F", "90 °F")),
            quantity("resolution", "The scale shows steps of", "mix_mass", default="0.1 g", low="0.001 g",
                     high="20 g", usual=("0.01 g", "1 g"), role=RULE),
            quantity("doubling", "Times double for each", "temperature_difference", default="18 °F",
                     low="5 °F", high="50 °F", usual=("12 °F", "25 °F"), help="Degrees colder.", role=RULE),
        ),
    ),
    results=(
        result("area", "Area of all joints", "area"),
        result("mix", "To mix", "mix_volume", "What is left over with it."),
        result("resin", "of it resin", "mix_volume"),
        result("hardener", "of it hardener", "mix_volume"),
        result("resin_mass", "Weigh out of resin", "mix_mass"),
        result("hardener_mass", "Weigh out of hardener", "mix_mass"),
        result("by_volume", "Ratio by volume", TEXT, "Resin to hardener, 100 of resin."),
        result("by_weight", "Ratio by weight", TEXT),
        result("pot_life_here", "Lasts in the cup, here", "minutes"),
        result("open_here", "Stays open when spread, here", "minutes"),
        result("clamp_here", "Clamps on for, here", "hours"),
        result("cure_here", "Full strength after, here", "days"),
        result("time_factor", "Times are longer by", "number", "Than on the label."),
    ),
    acted_on=("mix", "resin_mass", "hardener_mass", "pot_life_here", "clamp_here"),
    cautions=CAUTIONS,
    sources=("bench-practice", "cure-doubling", "geometry", "pot-life-halving", "volume-solids"),
    example="The invented overlay of 1 3/8 by 6 in for the riser, with an invented slow epoxy of 2 to 1 by "
            "volume, at 70 °F.",
    first=("length", "width", "pieces", "temperature"),
    compute=compute,
)
