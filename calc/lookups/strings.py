"""String materials and the tips that bear them."""

from calc.lookups.declare import column, lookup, row
from calc.tables.string_materials import MATERIALS, Material


def _cells(material: Material) -> tuple[object, ...]:
    tips = "every tip, old bows too" if material.plain_tips else "only tips reinforced for it; no old bow"
    return (material.name, material.strand_strength, material.strand_strength, material.stretch, tips)


LOOKUP = lookup(
    "strings",
    "String materials",
    "Breaking force of one new strand. The load of the stretch is not stated in the source. Which tips bear "
    "a material is common practice.",
    (column("Material"), column("One strand breaks at", "force", "imperial", 0),
     column("Breaks at, metric", "force", "metric", 0), column("Stretch", "ratio"), column("Tips")),
    tuple([row(_cells(each), each.source, each.status) for each in MATERIALS]),
)
