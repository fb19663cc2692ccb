"""Woods for cores, risers and shafts."""

from calc.lookups.declare import column, lookup, row
from calc.tables.woods import SHAFT_SAMPLES, WOODS, Wood


def _cells(wood: Wood, note: str) -> tuple[object, ...]:
    name = wood.name[0].upper() + wood.name[1:] + note
    return (name, wood.density, wood.modulus, wood.modulus, wood.bending_strength, wood.bending_strength,
            wood.moisture)


LOOKUP = lookup(
    "woods",
    "Wood: density, stiffness, strength along the grain",
    "Means of clear, straight-grained pieces. Single pieces scatter: in the one table that tells it, the "
    "modulus of one species had a standard deviation of 19 %. Where two published samples of a riser "
    "wood disagree, the lower strength stands here. Port Orford cedar stands here twice: the "
    "handbook's own row is 3 % stiffer than the row of another page that was read.",
    (column("Wood"), column("Density", "density"), column("Modulus", "modulus", "imperial"),
     column("Modulus, metric", "modulus"), column("Modulus of rupture", "stress", "imperial"),
     column("Modulus of rupture, metric", "stress", decimals=0), column("Moisture")),
    tuple([row(_cells(each, ""), each.source, each.status) for each in WOODS]
          + [row(_cells(each, " (sample of 1947)"), each.source, each.status) for each in SHAFT_SAMPLES]),
)
