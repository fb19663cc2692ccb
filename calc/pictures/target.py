"""The printed sheet of dots: where they lie on it, for the drawing to print and for reading a photograph."""

from calc.quantities import INCH

HALF_WIDTH = 4.5 * INCH
HALF_HEIGHT = 3 * INCH
"""Both fit a letter sheet and an A4 sheet, lying on its side, with room for a printer's margins."""

DOTS = (
    ("a", "A, upper left", (-HALF_WIDTH, HALF_HEIGHT)),
    ("b", "B, upper right", (HALF_WIDTH, HALF_HEIGHT)),
    ("c", "C, lower right", (HALF_WIDTH, -HALF_HEIGHT)),
    ("d", "D, lower left", (-HALF_WIDTH, -HALF_HEIGHT)),
    ("m", "M, the middle", (0.0, 0.0)),
)
"""(id, name, place from the sheet's middle [m]: to the right, up)."""


def dot_place(id: str) -> tuple[float, float]:
    """Return the place of a dot from the middle of its sheet [m]: to the right, up.

    Raises:
        ValueError: no dot has this id.
    """
    for dot, _, place in DOTS:
        if dot == id:
            return place
    raise ValueError("no dot of the sheet is called " + id)
