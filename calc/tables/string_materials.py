"""String materials: strength of a strand, stretch, and the tips that bear them."""

from calc.quantities import STANDARD_GRAVITY


class Material:
    """One material.

    strand_strength [N]: breaking force of one strand. stretch [1]: relative, at a load the source does not
    state, so no stiffness follows from it. plain_tips: whether an old bow, or tips without reinforcement,
    bear it (common practice).
    """

    def __init__(
        self, id: str, name: str, strand_strength: float, stretch: float, plain_tips: bool, source: str,
        status: str,
    ) -> None:
        self.id = id
        self.name = name
        self.strand_strength = strand_strength
        self.stretch = stretch
        self.plain_tips = plain_tips
        self.source = source
        self.status = status


def _material(id: str, name: str, kilograms: float, stretch: float, plain_tips: bool) -> Material:
    return Material(id, name, kilograms * STANDARD_GRAVITY, stretch, plain_tips,
                    "string-materials-article", "read second-hand")


MATERIALS = (
    _material("polyester", "Polyester", 22.5, 0.026, True),
    _material("aramid", "Aramid or liquid-crystal polymer, low stretch", 31.8, 0.008, False),
    _material("polyethylene", "High-modulus polyethylene, low stretch", 45.5, 0.010, False),
)


def find(id: str) -> Material:
    """Return the material with this id.

    Args:
        id: of a row of MATERIALS.

    Returns:
        the row.

    Raises:
        ValueError: no material has this id.

    Source: string-materials-article.
    """
    for material in MATERIALS:
        if material.id == id:
            return material
    raise ValueError("no string material is called " + id)
