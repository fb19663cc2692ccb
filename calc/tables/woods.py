"""Woods for shafts and limb cores: weight and stiffness along the grain, from published tables.

A species is a mean. In the one table that gives its scatter, the modulus of single pieces of Port Orford
cedar had a standard deviation of 19 % and the density of 9 %: measure the shaft in hand when it matters.
"""

from collections import namedtuple

from calc.quantities import POUND, PSI

Wood = namedtuple("Wood", "id name density modulus bending_strength moisture source status")
"""One wood.

density [kg/m^3]: as it is in use, water included. modulus [Pa] along the grain. bending_strength [Pa] or
None. moisture: what state the figures are for. source: key of the bibliography; status as defined there,
that of the row's weakest figure. Where published samples of a riser wood disagree, the lower strength
stands.
"""

SHAFT_WOODS = (
    "port-orford-cedar", "port-orford-cedar-handbook", "sitka-spruce", "douglas-fir", "western-larch",
    "western-hemlock", "white-ash", "yellow-birch", "sweet-birch", "paper-birch", "sugar-maple",
)
"""Those of which arrow shafts are made."""

CORE_WOODS = (("sugar-maple", "Hard maple"), ("red-maple", "Red maple"), ("yellow-birch", "Yellow birch"),
              ("white-ash", "White ash"), ("black-cherry", "Black cherry"), ("shagbark-hickory", "Hickory"))
"""Those of limb cores, by the names that bowyers use."""

RISER_WOODS = ("sugar-maple", "yellow-birch", "black-cherry", "black-walnut", "slippery-elm",
               "indian-rosewood", "brazilian-rosewood", "bubinga")
"""Those of risers."""

SHEAR_OVER_MODULUS = 0.07
"""Shear modulus along the grain over the modulus, of hardwoods: 0.05 to 0.11 in the handbook's table of
elastic ratios (wood-handbook, from memory)."""

MODULUS_SCATTER = 0.19  # standard deviation over mean, single pieces of one species (astm-d2555)

_LB_PER_FT3 = POUND / 0.3048**3
_WATER = 1000.0  # kg/m^3
_IN_USE = 1.12
"""Mass at 12 % moisture over dry mass."""

_DRY = "12 % moisture"
_AS_TESTED = "air-dry sample, moisture not stated"


def _handbook(
    id: str, name: str, specific_gravity: float, modulus: float, bending_strength: float | None = None,
    status: str = "read second-hand",
) -> Wood:
    """Return a row of the handbook, whose specific gravity is dry mass over volume at 12 % moisture."""
    density = specific_gravity * _IN_USE * _WATER
    return Wood(id, name, density, modulus, bending_strength, _DRY, "wood-handbook", status)


def _sample(id: str, name: str, pounds_per_cubic_foot: float, psi: float) -> Wood:
    """Return a row of the 1947 table of shaft woods, in its own units."""
    return Wood(id, name, pounds_per_cubic_foot * _LB_PER_FT3, psi * PSI, None, _AS_TESTED,
                "rheingans-1947", "read")


WOODS = (
    Wood("port-orford-cedar", "Port Orford cedar", 465.0, 11.35e9, 84.8e6, _DRY,
         "wood-property-page", "read second-hand"),
    _handbook("port-orford-cedar-handbook", "Port Orford cedar, the handbook's own row", 0.43, 1.70e6 * PSI,
              12_700 * PSI, "from memory"),
    _handbook("sitka-spruce", "Sitka spruce", 0.40, 10.8e9, 70e6, "from memory"),
    _handbook("douglas-fir", "Douglas-fir", 0.48, 13.4e9, 85e6),
    _handbook("western-larch", "western larch", 0.52, 12.9e9, 13_000 * PSI),
    _handbook("western-hemlock", "western hemlock", 0.45, 1.63e6 * PSI, 11_300 * PSI),
    _handbook("white-ash", "white ash", 0.60, 1.74e6 * PSI),
    _handbook("yellow-birch", "yellow birch", 0.62, 2.01e6 * PSI, 114e6),
    _handbook("sweet-birch", "sweet birch", 0.65, 2.17e6 * PSI),
    _handbook("paper-birch", "paper birch", 0.55, 1.59e6 * PSI),
    _handbook("sugar-maple", "sugar (hard) maple", 0.63, 12.6e9, 109e6),
    _handbook("red-maple", "red maple", 0.54, 1.64e6 * PSI),
    _handbook("black-cherry", "black cherry", 0.50, 1.49e6 * PSI, 12_300 * PSI),
    _handbook("black-walnut", "black walnut", 0.55, 1.68e6 * PSI, 14_600 * PSI),
    _handbook("slippery-elm", "slippery (red) elm", 0.53, 1.49e6 * PSI, 13_000 * PSI, "from memory"),
    _handbook("shagbark-hickory", "shagbark hickory", 0.72, 2.16e6 * PSI),
    _handbook("pignut-hickory", "pignut hickory", 0.75, 2.26e6 * PSI),
    _handbook("black-locust", "black locust", 0.69, 2.05e6 * PSI),
    _handbook("basswood", "basswood", 0.37, 1.46e6 * PSI),
    _handbook("rock-elm", "rock elm", 0.63, 1.54e6 * PSI),
    Wood("indian-rosewood", "Indian rosewood", 780.0, 1.78e6 * PSI, 16_920 * PSI, _DRY,
         "forest-service-techsheet", "read"),
    Wood("brazilian-rosewood", "Brazilian rosewood", 900.0, 1.88e6 * PSI, 19_000 * PSI, _DRY,
         "wood-strength-pages", "from memory"),
    Wood("bubinga", "bubinga", 800.0, 2.48e6 * PSI, 22_600 * PSI, _DRY,
         "wood-strength-pages", "from memory"),
)

SHAFT_SAMPLES = (
    _sample("spruce-no-1", "spruce, best sample", 27.1, 2_280_000),
    _sample("sitka-spruce-1947", "Sitka spruce", 24.7, 1_830_000),
    _sample("port-orford-cedar-1947", "Port Orford cedar", 29.2, 2_380_000),
    _sample("yellow-cedar-1947", "yellow cedar", 31.0, 2_020_000),
    _sample("cottonwood-1947", "cottonwood", 24.0, 1_073_000),
    _sample("birch-1947", "common birch", 36.7, 2_480_000),
    _sample("western-red-cedar-1947", "western red cedar", 22.0, 886_000),
    _sample("redwood-1947", "redwood", 24.0, 1_024_000),
)


def find(id: str) -> Wood:
    """Return the wood with this id.

    Args:
        id: of a row of WOODS or SHAFT_SAMPLES.

    Returns:
        the row.

    Raises:
        ValueError: no wood has this id.

    Source: wood-handbook; wood-property-page; rheingans-1947.
    """
    for wood in WOODS + SHAFT_SAMPLES:
        if wood.id == id:
            return wood
    raise ValueError("no wood is called " + id)


def specific_gravity(wood: Wood) -> float:
    """Return a wood's dry mass over its volume at 12 % moisture, as the handbook counts it.

    Args:
        wood: of WOODS.

    Returns:
        [1] specific gravity.

    Source: wood-handbook.
    """
    return float(wood.density) / (_IN_USE * _WATER)
