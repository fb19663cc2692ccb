"""What to mix for each coat of a finish: base, hardener and thinner, and how long a mix lasts."""

import math
from collections import namedtuple

from calc.declaring import (
    RULE,
    Group,
    Result,
    choice,
    group,
    quantity,
    result,
)
from calc.outcome import (
    OK,
    TEXT,
    WATCH,
    Check,
    Column,
    Refused,
    Table,
    amount,
    check,
    link_with,
    sentence,
)
from calc.quantities import ROUNDING, show_number
from calc.shop.film import mixed_volumes, parts_by_volume, time_factor_doubling
from calc.tables.finish_families import POT_LIFE_REFERENCE, find

MIXED = ("two-part-urethane", "catalysed-lacquer")
"""Families that can come as two parts which set once they are mixed."""

VOLUME = "volume"
WEIGHT = "weight"

Can = namedtuple("Can", "by parts densities pot_life pot_life_at")
"""What stands on the can about mixing; None for what was not given.

by: VOLUME or WEIGHT. parts: of base and hardener. densities [kg/m^3]: of base, hardener and thinner.
pot_life [s] at the temperature pot_life_at [degC].
"""

Laid = namedtuple("Laid", "name product volume start end")
"""A coat when it is laid: its product, the volume it takes [m^3], its moments [s]."""

Mix = namedtuple("Mix", "number coat product volume")
"""What is mixed for one coat, the rest in cup and gun with it; coats of one number share a mix."""


def parts_of(family: str, can: Can) -> tuple[float, float] | None:
    """Return base and hardener in parts by volume.

    Args:
        family: an id of the table of families.
        can: what stands on it.

    Returns:
        (1, 0) where there is no hardener; None where the can's ratio is wanted and was not given.

    Raises:
        Refused: half a ratio, or one by weight without densities.
    """
    part_a, part_b = can.parts
    if part_a is None and part_b is None:
        return None if family == MIXED[0] else (1.0, 0.0)
    if part_a is None or part_b is None:
        raise Refused("part_a" if part_a is None else "part_b",
                      "The ratio on the can has two numbers: give both, or leave both empty.")
    return by_volume(can.by, (part_a, part_b), can.densities[:2], "A and B")


def by_volume(
    by: str, parts: tuple[float, float], densities: tuple[float | None, float | None], names: str
) -> tuple[float, float]:
    """Return a ratio of two parts by volume.

    Args:
        by: VOLUME or WEIGHT, which the ratio is given by.
        parts: of base and hardener.
        densities [kg/m^3]: of both, None where not given.
        names: what the two are called.

    Raises:
        Refused: a ratio by weight without densities.
    """
    if by == VOLUME:
        return parts
    density_a, density_b = densities
    if density_a is None or density_b is None:
        raise Refused("density_a" if density_a is None else "density_b",
                      "A ratio by weight needs the densities of " + names + ", from the same sheet: give "
                      "both, or take the ratio by volume.")
    return parts_by_volume(parts[0], parts[1], density_a, density_b)


def pot_life_here(family: str, can: Can, temperature: float, doubling: float) -> float | None:
    """Return how long a mix lasts in this shop, by the rule that times double for each step colder.

    Args:
        family: an id of the table of families.
        can: what stands on it; the family's pot life stands in for one that was not given.
        temperature [degC]: of the shop.
        doubling [K]: by how much colder times double.

    Returns:
        [s] pot life, None where nothing sets in the pot or nobody said when.
    """
    if family not in MIXED:
        return None
    stated = find(family).pot_life if can.pot_life is None else can.pot_life
    if stated is None:
        return None
    return float(stated * time_factor_doubling(temperature, can.pot_life_at, doubling))


def mixes_of(laid: list[Laid], left_over: float) -> list[Mix]:
    """Return what is mixed for each coat; coats that are laid while one mix lasts get its number.

    Args:
        laid: coats in the order in which they are laid.
        left_over [m^3]: stays in cup and gun at each coat.
    """
    mixes: list[Mix] = []
    number, mixed_at, before = 0, 0, None
    for each in laid:
        lasts = each.product.pot_life
        if before is not each.product or lasts is None or each.end - mixed_at > lasts:
            number += 1
            mixed_at, before = each.start, each.product
        mixes.append(Mix(number, each.name, each.product, each.volume + left_over))
    return mixes


def measured(mix: Mix) -> tuple[float | None, float | None, float | None]:
    """Return base, hardener and thinner of a mix [m^3], the first two None where their ratio is not known."""
    known = mix.product.parts
    parts = known or (1.0, 0.0)
    base, hardener, thinner = mixed_volumes(mix.volume, parts[0], parts[1], mix.product.reducer)
    return (base, hardener, thinner) if known else (None, None, thinner)


def mix_values(
    mix: Mix | None, densities: tuple[float | None, float | None, float | None], pot_life: float | None
) -> tuple[tuple[str, float | str | None], ...]:
    """Return what to measure out for one coat, by volume and by weight, as results."""
    volumes = (None, None, None) if mix is None else measured(mix)
    masses = [mass_of(volume, density) for volume, density in zip(volumes, densities)]
    hardener = bool(volumes[1])
    told = (0, 1, 2) if hardener else (0, 2)
    return (
        ("mix_coat", None if mix is None else mix.volume),
        ("mix_a", volumes[0]),
        ("mix_b", volumes[1] if hardener else None),
        ("mix_thinner", volumes[2]),
        ("weigh_a", masses[0]),
        ("weigh_b", masses[1] if hardener else None),
        ("weigh_thinner", masses[2]),
        ("by_volume", ratio_told([volumes[part] for part in told])),
        ("by_weight", ratio_told([masses[part] for part in told])),
        ("pot_life", pot_life),
    )


def mass_of(volume: float | None, density: float | None) -> float | None:
    """Return the mass of a volume [kg]; None where one of the two is not known."""
    return None if volume is None or density is None else volume * density


def ratio_told(parts: list[float | None]) -> str | None:
    """Return parts of a mix as a ratio, 100 of the first; None where one of them is not known."""
    first = parts[0]
    others = [each for each in parts[1:] if each is not None]
    if not first or len(others) < len(parts) - 1:
        return None
    return " : ".join(["100"] + [show_number(100.0 * each / first, 1) for each in others])


# What is said --------------------------------------------------------------------


def room_check(mix: "Mix | None") -> tuple[Check, ...]:
    """Return where the solvent of one coat goes on to.

    Nowhere from what sets by a hardener: what that gives off no time clears by these figures.

    Args:
        mix: of one coat; None if none is to come.
    """
    if mix is None or mix.product.family.id in MIXED:
        return ()
    figures = [("agent", "solvent"), ("liquid_from", "coat"),
               ("coat_volume", show_number(mix.volume * 1e6, 1) + " mL"),
               ("coat_solids", show_number(mix.product.solids * 100, 1) + " %"),
               ("coat_reducer", show_number(mix.product.reducer * 100, 1) + " %")]
    return (check("room", OK, sentence(
        "What evaporates of one coat goes on to {}: how long your room takes, and how near it comes to what "
        "burns and harms.", link_with("Clear air", "clear-air", figures))),)


def mixing_checks(mixes: list[Mix], coat_time: float) -> tuple[Check, ...]:
    """Return what to mind where a product sets in the pot.

    Args:
        mixes: of one product, coat by coat.
        coat_time [s]: that a coat takes from mixing to cleaning up.
    """
    if not mixes or mixes[0].product.family.id not in MIXED:
        return ()
    product = mixes[0].product
    found = []
    if product.parts is None:
        found.append(check("ratio", WATCH, "How much hardener goes to how much A stands on the can: type it "
                           "in, and both are measured out for each coat. A wrong ratio stays soft or brittle "
                           "for good."))
    if product.pot_life is None:
        if product.parts is not None and product.parts[1] > 0:
            found.append(check("pot-life", WATCH, "How long a mix lasts stands on the can: type it in. Until "
                               "then mix for one coat only."))
        return tuple(found)
    lasts, takes = amount("hours", product.pot_life), amount("hours", coat_time)
    if coat_time > product.pot_life + ROUNDING:
        lots = math.ceil(coat_time / product.pot_life - ROUNDING)
        found.append(check("pot-life", WATCH, sentence(
            "A mix lasts about {} in this shop, and one coat takes {}: mix it in {} lots of {}, each when "
            "the one before is used up.", lasts, takes, str(lots),
            amount("mix_volume", mixes[0].volume / lots))))
        return tuple(found)
    alone = mixes[-1].number - mixes[0].number == len(mixes) - 1
    found.append(check("pot-life", OK, sentence(
        "A mix lasts about {} in this shop, and one coat takes {}. " + (
            "Mix anew for each coat: by the next one it has set." if alone else
            "Coats with the same number of mix below are laid while one lasts; the others need a new one."),
        lasts, takes)))
    return tuple(found)


def mixing_table(mixes: list[Mix]) -> Table:
    """Return what to measure out coat by coat, and the sum of it."""
    split = [measured(each) for each in mixes]
    hardener = any(bool(each[1]) for each in split)
    lines = [(str(mix.number), mix.coat, parts[0], parts[1] or None, parts[2], mix.volume)
             for mix, parts in zip(mixes, split)]
    lines.append(("", "Together", _sum([each[0] for each in split]),
                  _sum([each[1] for each in split]) if hardener else None,
                  _sum([each[2] for each in split]), _sum([each.volume for each in mixes])))
    columns = [
        Column("mix", "Mix", TEXT), Column("coat", "Coat", TEXT), Column("a", "Product, or A", "mix_volume"),
        Column("b", "Hardener B", "mix_volume"), Column("thinner", "Thinner", "mix_volume"),
        Column("together", "Together", "mix_volume"),
    ]
    shared = len({each.number for each in mixes}) < len(mixes)
    left_out = ([] if hardener else ["b"]) + ([] if shared else ["mix"])
    kept = [place for place, each in enumerate(columns) if each.id not in left_out]
    return Table("mixing", "To measure out for each coat, the rest in cup and gun with it",
                 tuple([columns[place] for place in kept]),
                 tuple([tuple([line[place] for place in kept]) for line in lines]))


def cup_table(mix: Mix, densities: tuple[float | None, float | None, float | None]) -> Table | None:
    """Return one coat poured into one cup, part upon part: to which mark, and what a scale shows then.

    None where the ratio of base and hardener is not known.
    """
    parts = measured(mix)
    names = ("Product, or A", "Hardener B", "Thinner")
    lines: list[tuple[str, float, float, float | None, float | None]] = []
    mark, shown = 0.0, 0.0
    weighed = True
    for name, volume, density in zip(names, parts, densities):
        if volume is None:
            return None
        if not volume:
            continue
        mark += volume
        mass = mass_of(volume, density)
        weighed = weighed and mass is not None
        shown += mass or 0.0
        lines.append((name, volume, mark, mass, shown if weighed else None))
    columns = (Column("part", "Pour in", TEXT), Column("volume", "Of it", "mix_volume"),
               Column("mark", "Fill the cup up to", "mix_volume"), Column("mass", "By weight", "mix_mass"),
               Column("scale", "The scale shows", "mix_mass"))
    kept = len(columns) if any(line[3] is not None for line in lines) else 3
    return Table("cup", "One coat in one cup, part upon part", columns[:kept],
                 tuple([line[:kept] for line in lines]))


def _sum(parts: list[float | None]) -> float | None:
    known = [each for each in parts if each is not None]
    return sum(known) if len(known) == len(parts) else None


# Declarations --------------------------------------------------------------------


def mixing_group() -> Group:
    """Return the questions that the can answers."""
    return group(
        "Mixing, from the can",
        choice("parts_by", "Ratio of A to B is", ((VOLUME, "By volume"), (WEIGHT, "By weight")),
               when=("family", MIXED)),
        quantity("part_a", "Parts of A", "number", default="", low="0.1", high="1000", usual=("1", "100"),
                 help="The base. Both empty: not measured out.", optional=True, when=("family", MIXED)),
        quantity("part_b", "Parts of B", "number", default="", low="0.01", high="1000", usual=("0.01", "100"),
                 help="The hardener.", optional=True, when=("family", MIXED)),
        quantity("pot_life", "A mix lasts", "hours", default="", low="0.05 h", high="240 h",
                 usual=("0.25 h", "48 h"), help="Empty: about 2 h for two-part urethane.", optional=True,
                 when=("family", MIXED)),
        quantity("pot_life_at", "Stated at", "temperature", default=POT_LIFE_REFERENCE, low="40 °F",
                 high="110 °F", usual=("68 °F", "77 °F"), help="The warmth that stands beside it.",
                 when=("family", MIXED), role=RULE),
        quantity("density_a", "Density of the product, or of A", "liquid_density", default="", low="4 lb/gal",
                 high="20 lb/gal", usual=("6 lb/gal", "12 lb/gal"),
                 help="From its sheet, to weigh it out; empty: by volume only.", optional=True),
        quantity("density_b", "Density of B", "liquid_density", default="", low="4 lb/gal", high="20 lb/gal",
                 usual=("7 lb/gal", "11 lb/gal"), optional=True, when=("family", MIXED)),
        quantity("density_thinner", "Density of the thinner", "liquid_density", default="", low="4 lb/gal",
                 high="20 lb/gal", usual=("6 lb/gal", "9 lb/gal"), optional=True),
    )


MIXING_RESULTS: tuple[Result, ...] = (
    result("mix_coat", "To mix for one coat", "mix_volume", "The rest in cup and gun with it."),
    result("mix_a", "of it product, or A", "mix_volume"),
    result("mix_b", "of it hardener B", "mix_volume"),
    result("mix_thinner", "of it thinner", "mix_volume"),
    result("weigh_a", "Weigh out of product, or A", "mix_mass"),
    result("weigh_b", "Weigh out of hardener B", "mix_mass"),
    result("weigh_thinner", "Weigh out of thinner", "mix_mass"),
    result("by_volume", "Ratio by volume, A to B to thinner", TEXT,
           "Product to thinner where there is no hardener; 100 of the first."),
    result("by_weight", "Ratio by weight, A to B to thinner", TEXT, "The same on a scale."),
    result("pot_life", "A mix lasts, in this shop", "hours", "By the same rule as drying times."),
)
