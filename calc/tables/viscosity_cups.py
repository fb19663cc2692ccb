"""Cups whose running time tells how thin a liquid is, each with its equation and the times it holds for."""

from collections import namedtuple

Cup = namedtuple("Cup", "id name slope offset least most standard source status")
"""One cup: v = slope (t - offset), slope [m^2/s^2], offset [s]; least and most [s]: the times it is for."""

SQUARE_MILLIMETRE = 1e-6
FORD_STANDARD = "ASTM D1200"
ZAHN_STANDARD = "ASTM D4212"


def _cup(id: str, name: str, slope: float, offset: float, least: float, most: float, standard: str) -> Cup:
    return Cup(id, name, slope * SQUARE_MILLIMETRE, offset, least, most, standard, "viscosity-cups",
               "read second-hand")


CUPS = (
    _cup("ford-1", "Ford cup 1", 0.49, 35.0, 55, 100, FORD_STANDARD),
    _cup("ford-2", "Ford cup 2", 1.44, 18.0, 40, 100, FORD_STANDARD),
    _cup("ford-3", "Ford cup 3", 2.31, 6.58, 20, 100, FORD_STANDARD),
    _cup("ford-4", "Ford cup 4", 3.85, 4.49, 20, 100, FORD_STANDARD),
    _cup("ford-5", "Ford cup 5", 12.1, 2.00, 20, 100, FORD_STANDARD),
    _cup("zahn-1", "Zahn cup 1", 1.1, 29.0, 35, 80, ZAHN_STANDARD),
    _cup("zahn-2", "Zahn cup 2", 3.5, 14.0, 20, 80, ZAHN_STANDARD),
    _cup("zahn-3", "Zahn cup 3", 11.7, 7.5, 20, 80, ZAHN_STANDARD),
    _cup("zahn-4", "Zahn cup 4", 14.8, 5.0, 20, 80, ZAHN_STANDARD),
    _cup("zahn-5", "Zahn cup 5", 23.0, 0.0, 20, 80, ZAHN_STANDARD),
)


def find(id: str) -> Cup:
    """Return the cup with this id.

    Raises:
        ValueError: no cup has this id.
    """
    for cup in CUPS:
        if cup.id == id:
            return cup
    raise ValueError("no cup is called " + id)
