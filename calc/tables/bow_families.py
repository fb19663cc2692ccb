"""Families of laminated bows by their unstrung shape. Invented, typical shapes, to start from when a bow has
not been measured; not any maker's bow."""


class BowFamily:
    """A family of bows.

    throat [1]: how far the fadeouts lie behind the grip's throat, over the limb's length. profile: pairs of
    distance from the fadeout along a straight edge and offset from it toward the belly (negative: toward the
    back), both over the limb's length.
    """

    def __init__(self, id: str, name: str, throat: float, profile: tuple[tuple[float, float], ...]) -> None:
        self.id = id
        self.name = name
        self.throat = throat
        self.profile = profile


FAMILIES = (
    BowFamily(
        "recurve",
        "Recurve",
        0.03,
        ((0.30, 0.025), (0.60, 0.035), (0.78, 0.010), (0.90, -0.060), (0.96, -0.140)),
    ),
    BowFamily(
        "reflex-deflex",
        "Longbow with reflex and deflex",
        0.025,
        ((0.30, 0.028), (0.60, 0.028), (0.80, -0.005), (0.99, -0.055)),
    ),
    BowFamily("straight", "Straight longbow", 0.0, ((0.5, 0.0), (1.0, 0.0))),
)


def find(id: str) -> BowFamily:
    """Return the family with this id.

    Args:
        id: of a row of FAMILIES.

    Returns:
        The family.

    Raises:
        ValueError: no family has this id.

    Source: family-shapes
    """
    for family in FAMILIES:
        if family.id == id:
            return family
    raise ValueError("no family of bows is called " + id)
