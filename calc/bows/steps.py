"""Long work on a bow in steps, each of which says how far it is (0 to 1)."""

from calc.bows.measured import cannot_be_drawn
from calc.mechanics.bow.bow import Bow

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator
    from typing import TypeVar

    T = TypeVar("T")


def in_part(start: float, end: float, work: "Generator[float, None, T]") -> "Generator[float, None, T]":
    """Run a part of the work, its progress told as from start to end of the whole."""
    while True:
        try:
            part = next(work)
        except StopIteration as finished:
            found: T = finished.value
            return found
        yield start + (end - start) * part


def drawn_steps(
    bow: Bow, brace_height: float, draw: float, pieces: int
) -> "Generator[float, None, tuple[tuple[float, ...], tuple[float, ...]]]":
    """Return distances from the pivot point, from brace to draw [m], and the forces at them [N].

    Raises:
        Refused: the bow cannot be drawn so far.
    """
    distances = [brace_height + (draw - brace_height) * i / pieces for i in range(pieces + 1)]
    forces = [0.0]
    if bow.braced is None or bow.braced.height != brace_height:
        bow.brace(brace_height)
    try:
        for drawn in bow.curve_steps(distances[1:]):
            forces.append(drawn.force)
            yield len(forces) / len(distances)
    except ValueError as error:
        raise cannot_be_drawn(draw, error) from None
    return tuple(distances), tuple(forces)
