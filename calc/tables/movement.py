"""How much woods swell and shrink across the grain with their moisture."""

from collections import namedtuple

Movement = namedtuple("Movement", "id name radial tangential source status")
"""One wood.

radial, tangential [1]: relative change per unit of moisture content, from the heart outward and along the
rings. source: key of the bibliography; status as defined there, that of the row's weaker figure.
"""

_PER_CENT = 100


def _row(id: str, name: str, radial: float, tangential: float, source: str = "wood-handbook-movement",
         status: str = "read") -> Movement:
    """Return a row from the handbook's figures, which are for a per cent of moisture."""
    return Movement(id, name, radial * _PER_CENT, tangential * _PER_CENT, source, status)


def _by_shrinkage(id: str, name: str, radial: float, tangential: float) -> Movement:
    """Return a row from the shrinkage from green to dry, in per cent: a 28th of it for each of moisture."""
    return Movement(id, name, radial / 28, tangential / 28, "wood-handbook-shrinkage", "from memory")


MOVEMENTS = (
    _row("sugar-maple", "sugar (hard) maple", 0.00165, 0.00353),
    _row("red-maple", "red maple", 0.00137, 0.00289),
    _row("yellow-birch", "yellow birch", 0.00256, 0.00338),
    _row("sweet-birch", "sweet birch", 0.00256, 0.00338),
    _row("paper-birch", "paper birch", 0.00219, 0.00304),
    _row("white-ash", "white ash", 0.00169, 0.00274),
    _row("black-cherry", "black cherry", 0.00126, 0.00248),
    _row("black-walnut", "black walnut", 0.00190, 0.00274),
    _row("slippery-elm", "slippery (red) elm", 0.00169, 0.00315),
    _row("rock-elm", "rock elm", 0.00165, 0.00285),
    _row("black-locust", "black locust", 0.00158, 0.00252),
    _row("basswood", "basswood", 0.00230, 0.00330),
    _row("beech", "American beech", 0.00190, 0.00431),
    _row("red-oak", "red oak", 0.00158, 0.00369),
    _row("white-oak", "white oak", 0.00180, 0.00365),
    _row("pecan", "pecan hickory", 0.00169, 0.00315),
    _row("hickory", "true hickory", 0.00259, 0.00411, "wood-movement-pages", "from memory"),
    _row("teak", "teak", 0.00101, 0.00186, "wood-movement-pages", "from memory"),
    _row("mahogany", "mahogany", 0.00172, 0.00238, "wood-movement-pages", "from memory"),
    _by_shrinkage("indian-rosewood", "Indian rosewood", 2.7, 5.8),
    _by_shrinkage("brazilian-rosewood", "Brazilian rosewood", 2.9, 4.6),
    _by_shrinkage("bubinga", "bubinga", 5.8, 8.4),
)


def find(id: str) -> Movement:
    """Return the wood with this id.

    Raises:
        ValueError: no wood has this id.
    """
    for wood in MOVEMENTS:
        if wood.id == id:
            return wood
    raise ValueError("no wood is called " + id)
