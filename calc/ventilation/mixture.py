"""A mixture of solvents as one vapour: Le Chatelier for fire, the sum of shares of limits for breathing."""

from collections import namedtuple

from calc.declaring import Input, choice, names_of, quantity, rows
from calc.outcome import TEXT, Amount, Column, Refused, Table, amount
from calc.shop.air import mixture_limit, vapour_volume
from calc.tables.exposure_limits import DANGER, limits_of
from calc.tables.solvents import SOLVENTS
from calc.tables.solvents import find as find_solvent
from calc.ventilation.vapour import Bound, Vapour, share_of_level

MIXTURE = "mixture"

Part = namedtuple("Part", "solvent share vapour")
"""One solvent: its row, its share of the liquid [1], its vapour for one volume of the liquid [1]."""


def parts_of(mixed: tuple[tuple[str, float], ...], temperature: float) -> list[Part]:
    """Return the solvents of a mixture; their shares need not come to one."""
    total = sum([share for _, share in mixed])
    if total <= 0:
        raise Refused("mixture", "The shares of the mixture come to nothing. Give at least one above 0 %.")
    found = []
    for id, share in mixed:
        solvent = find_solvent(id)
        liquid = share / total
        found.append(Part(solvent, liquid,
                          vapour_volume(liquid, solvent.density, solvent.molar_mass, temperature)))
    return found


def vapour_share(part: Part, parts: list[Part]) -> float:
    """Return a solvent's share of the vapour [1]."""
    return float(part.vapour / sum([each.vapour for each in parts]))


def limit_of(parts: list[Part]) -> float:
    """Return the lower flammable limit of the vapour, by Le Chatelier [1]."""
    return mixture_limit(tuple([vapour_share(each, parts) for each in parts]),
                         tuple([each.solvent.lower_limit for each in parts]))


def molar_mass_of(parts: list[Part]) -> float:
    """Return the mean molar mass of the vapour [kg/mol]."""
    return sum([vapour_share(each, parts) * float(each.solvent.molar_mass) for each in parts])


def bounds_of(parts: list[Part]) -> tuple[Bound, ...]:
    """Return for each body the share of the whole vapour at which the shares of its limits come to one.

    What is dangerous at once is no sum: there the first solvent that reaches its own figure counts.
    """
    bodies: list[str] = []
    for each in parts:
        bodies += [limit.body for limit in limits_of(each.solvent.id) if limit.body not in bodies]
    found = []
    for body in bodies:
        known = [(each, _lowest(each, body)) for each in parts]
        held = [(vapour_share(each, parts), lowest) for each, lowest in known if lowest is not None]
        if not held:
            continue
        if body == DANGER:
            share = min([lowest / part for part, lowest in held])
        else:
            share = mixture_limit(tuple([part for part, _ in held]), tuple([lowest for _, lowest in held]))
        without = [each.solvent.name for each, lowest in known if lowest is None]
        found.append(Bound(body, amount("concentration", share), "", share,
                           "of the mixture" + ("" if not without else ", nothing known of "
                                               + ", ".join(without))))
    return tuple(found)


def _lowest(part: Part, body: str) -> float | None:
    """Return the lowest figure of a body for one solvent, as a share of the air [1]."""
    shares = [share_of_level(level, part.solvent.molar_mass)
              for limit in limits_of(part.solvent.id) if limit.body == body for level in limit.levels]
    known = [each for each in shares if each is not None]
    return min(known) if known else None


def mixture_table(parts: list[Part], vapour: Vapour) -> Table:
    """Return what each solvent comes to in the room, and how much of its own limits that is."""
    lines = []
    for each in parts:
        share = vapour.end * vapour_share(each, parts)
        figures = [(lowest, limit.body) for limit in limits_of(each.solvent.id)
                   for lowest in (_lowest(each, limit.body),) if lowest is not None]
        lowest = min(figures) if figures else None
        lines.append((each.solvent.name, each.share, vapour_share(each, parts),
                      amount("concentration", share), share / each.solvent.lower_limit,
                      None if lowest is None else share / lowest[0],
                      Amount(TEXT, "", None) if lowest is None else lowest[1]))
    return Table("mixture", "The mixture, solvent by solvent", (
        Column("solvent", "Solvent", TEXT), Column("liquid", "Of the liquid", "ratio"),
        Column("vapour", "Of the vapour", "ratio"), Column("room", "In the room", "concentration"),
        Column("fire", "Of its flammable limit", "ratio"),
        Column("breathing", "Of its lowest figure for breathing", "ratio"), Column("body", "Set by", TEXT),
    ), tuple(lines))


def mixture_input() -> Input:
    """Return the question about what is mixed."""
    return rows("mixture", "What is in it", (
        choice("solvent", "Solvent", names_of(SOLVENTS)),
        quantity("share", "Share of the liquid", "ratio", default="50 %", low="0 %", high="100 %"),
    ), default="butyl-acetate:50%;xylene:30%;mek:20%", fewest=1, most=8,
        help="Of what evaporates, by section 3 of the data sheet. What is missing to 100 % is left out: the "
             "shares count in proportion.", when=("solvent", (MIXTURE,)))
