"""The main lengths of a bow, declared once for all that ask for them."""

from calc.declaring import Input, quantity
from calc.quantities import INCH

BEYOND_PIVOT = 1.75 * INCH
"""How much of a draw stated in the marked way lies beyond the pivot point (AMO)."""


def bow_lengths() -> tuple[Input, Input, Input]:
    """Return the inputs for brace height, bow length and riser length."""
    bow, riser = bow_and_riser()
    return (
        quantity(
            "brace_height", "Brace height", "length", "8 1/4 in", "3 in", "12 in", ("6 in", "9 1/2 in"),
            "From the string to the deepest point of the grip's throat.",
        ),
        bow,
        riser,
    )


def bow_and_riser(when: tuple[str, tuple[str, ...]] | None = None) -> tuple[Input, Input]:
    """Return the inputs for bow length and riser length."""
    return (
        quantity(
            "bow_length", "Bow length", "length", "64 in", "40 in", "80 in", ("48 in", "72 in"),
            "Nock to nock, along the belly of the unstrung bow.", when=when,
        ),
        quantity(
            "riser_length", "Riser length", "length", "19 in", "6 in", "34 in", ("12 in", "26 in"),
            "Fadeout to fadeout, where the limbs begin to bend.", when=when,
        ),
    )
