"""Families of finish with typical figures."""

from calc.lookups.declare import column, lookup, row
from calc.quantities import show
from calc.tables.finish_families import FAMILIES, FinishFamily


def _row(family: FinishFamily) -> tuple[object, ...]:
    return (family.name, family.volume_solids, family.recoat_from, family.recoat_to, family.cure,
            show(family.least_temperature, "temperature", "imperial") + ", "
            + show(family.least_temperature, "temperature", "metric", 0), family.note)


LOOKUP = lookup(
    "finish-families",
    "Families of finish, typical figures",
    "For planning until the maker's sheet is at hand: products of one family differ by more than families "
    "do. Times are for 25 °C (77 °F). After the end of the recoat window the film must be sanded dull first; "
    "where none stands, a coat bites at any time or is sanded anyway.",
    (column("Family"), column("Solids by volume", "ratio", decimals=0),
     column("Recoat from", "hours", decimals=0), column("Recoat until", "hours", decimals=0),
     column("Cure before stringing", "days", decimals=0),
     column("Not below"), column("Mind")),
    tuple([row(_row(each), each.source, each.status) for each in FAMILIES]),
)
