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
            "brace_height", "Brace height", "length", default="8 1/4 in", low="3 in", high="12 in",
            usual=("6 in", "9 1/2 in"), help="From the string to the deepest point of the grip's throat.",
        ),
        bow,
        riser,
    )


def bow_and_riser(when: tuple[str, tuple[str, ...]] | None = None) -> tuple[Input, Input]:
    """Return the inputs for bow length and riser length."""
    return (
        quantity(
            "bow_length", "Bow length", "length", default="64 in", low="40 in", high="80 in",
            usual=("48 in", "72 in"), help="Nock to nock, along the belly of the unstrung bow.", when=when,
        ),
        quantity(
            "riser_length", "Riser length", "length", default="19 in", low="6 in", high="34 in",
            usual=("12 in", "26 in"), help="Fadeout to fadeout, where the limbs begin to bend.", when=when,
        ),
    )
